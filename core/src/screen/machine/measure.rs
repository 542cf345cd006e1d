//! One measure of a machine; its answer saves it and leads back to the machine.

use super::{MachineAct, Measured, worked};
use crate::picture::Icon;
use crate::record::codes::codes;
use crate::record::{Drive, Machine, RecordId};
use crate::screen::bar::{blank, choice, tool};
use crate::screen::grid::{Grid, Marked};
use crate::screen::step::{COARSE, FINE, Notch};
use crate::screen::{Act, Block, Button, Headline, Place, Screen, ScreenKind, World};
use crate::words::{Caption, Words, WorkText};

codes!(
    /// A measure that is asked for on a screen of its own.
    Measure {
        Legs = "legs",
        Spacing = "spacing",
        Foot = "foot",
        Wings = "wings",
        WingLift = "wing_lift",
        Leading = "leading",
        LeadingDepth = "leading_depth",
        Reach = "reach",
        Slowest = "slowest",
        /// After the slowest.
        Fastest = "fastest",
        Power = "power",
        /// After the power.
        Drive = "drive",
        Mass = "mass",
        Name = "name",
    }
);

// What is offered first; tools lead to every other value. Our judgement.
const LEGS: std::ops::RangeInclusive<u32> = 1..=18;
const LONGEST_MM: u32 = 3_000;
const LIKELY_SPACING_MM: u32 = 950;
const LIKELY_FOOT_MM: u32 = 170;
const LIKELY_WINGS_MM: u32 = 350;
const LIKELY_LIFT_MM: u32 = 150;
const LIKELY_LEADING_MM: u32 = 200;
const LIKELY_REACH_MM: u32 = 800;
/// Speeds: so many, so far apart, from so much on, km/h.
const SPEEDS_KMH: (u32, f64, f64) = (18, 0.5, 2.0);
const POWERS_KW: [u32; 18] =
    [50, 60, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200, 220, 250, 280, 320];
const POWER_STEP_KW: f64 = 5.0;
const MASSES_KG: [u32; 12] =
    [3_000, 4_000, 5_000, 6_000, 7_000, 8_000, 9_000, 10_000, 11_000, 12_000, 14_000, 16_000];
const MASS_STEP_KG: u32 = 250;

/// What a length is asked as: question, steps, what is likely, what stands there, what an answer says, and whether it can
/// be taken away.
#[derive(Clone, Copy)]
struct Length {
    question: WorkText,
    notch: Notch,
    likely_mm: u32,
    noted_mm: Option<u32>,
    of: fn(Option<u32>) -> Option<Measured>,
    none: Option<(Caption, Measured)>,
}

/// The screen of one measure being made.
struct Asked<'a> {
    machine: &'a Machine,
    words: &'a Words,
    screen: Screen,
}

pub(in crate::screen) fn show(
    field: RecordId,
    machine: RecordId,
    (measure, with, from_mm): (Measure, Option<u32>, Option<u32>),
    world: &World,
) -> Option<Screen> {
    let (notes, words) = (world.notes(field)?, world.words);
    let machine = notes.machines.iter().find(|its| its.id == machine)?;
    let place = Place::Measure { field, machine: machine.id, measure, with, from_mm };
    let mut screen = blank(place, ScreenKind::Machine, words.name(&machine.name), world);
    screen.caution = words.label(WorkText::MeasureStopped);
    if worked(notes, machine.id) {
        screen.caution = words.label(Caption::SetAnew);
    }
    let mut asked = Asked { machine, words, screen };
    match measure {
        Measure::Legs => asked.legs(),
        Measure::Leading => asked.leading(),
        Measure::Slowest => asked.slowest(),
        Measure::Fastest => asked.fastest(with),
        Measure::Power => asked.power(),
        Measure::Drive => asked.drive(with),
        Measure::Mass => asked.mass(),
        Measure::Name => asked.name(),
        _ => {
            let length = length(measure, machine)?;
            asked.length(length, from_mm);
        }
    }
    Some(asked.screen)
}

/// The measures that are lengths.
fn length(measure: Measure, machine: &Machine) -> Option<Length> {
    let none = |measured| Some((Caption::NotNoted, measured));
    Some(match measure {
        Measure::Spacing => Length {
            question: WorkText::SpacingQuestion,
            notch: COARSE,
            likely_mm: LIKELY_SPACING_MM,
            noted_mm: Some(machine.spacing_mm),
            of: |mm| mm.map(Measured::SpacingMm),
            none: None,
        },
        Measure::Foot => Length {
            question: WorkText::FootQuestion,
            notch: FINE,
            likely_mm: LIKELY_FOOT_MM,
            noted_mm: Some(machine.foot_width_mm),
            of: |mm| mm.map(Measured::FootWidthMm),
            none: None,
        },
        Measure::Wings => Length {
            question: WorkText::WingsQuestion,
            notch: FINE,
            likely_mm: LIKELY_WINGS_MM,
            noted_mm: machine.wings.map(|wings| wings.width_mm),
            of: |mm| Some(Measured::WingsMm(mm)),
            none: Some((Caption::NoneFitted, Measured::WingsMm(None))),
        },
        Measure::WingLift => Length {
            question: WorkText::WingLiftQuestion,
            notch: FINE,
            likely_mm: LIKELY_LIFT_MM,
            noted_mm: machine.wings?.lift_mm,
            of: |mm| Some(Measured::LiftMm(mm)),
            none: none(Measured::LiftMm(None)),
        },
        Measure::LeadingDepth => Length {
            question: WorkText::LeadingDepthQuestion,
            notch: FINE,
            likely_mm: LIKELY_LEADING_MM,
            noted_mm: machine.leading?.depth_mm,
            of: |depth_mm| Some(Measured::Leading { fitted: true, depth_mm }),
            none: none(Measured::Leading { fitted: true, depth_mm: None }),
        },
        Measure::Reach => Length {
            question: WorkText::ReachQuestion,
            notch: COARSE,
            likely_mm: LIKELY_REACH_MM,
            noted_mm: machine.reach_mm,
            of: |mm| Some(Measured::ReachMm(mm)),
            none: none(Measured::ReachMm(None)),
        },
        _ => return None,
    })
}

impl Asked<'_> {
    /// An answer; it cannot be tapped where the machine could not be so.
    fn answer(&self, label: String, to: Measured, chosen: bool) -> Button {
        choice(label, to, chosen).enabled_if(to.of(self.machine).faults().is_empty())
    }

    fn ask(&mut self, question: WorkText, line: String) {
        self.screen.answer = Some(Headline { line, ..Headline::new(self.words.label(question)) });
    }

    fn question(&mut self, columns: u8, answers: Vec<Button>) {
        self.screen.blocks.push(Block::Question { text: String::new(), columns, answers });
    }

    fn none(&mut self, label: Caption, to: Measured) {
        self.screen.tools.push(tool(Icon::Skip, self.words.label(label), to));
    }

    /// Elsewhere with something carried along.
    fn carried(&self, measure: Measure, with: u32) -> Act {
        let Some(field) = self.screen.place.field() else { return Act::Go(self.screen.place) };
        let machine = self.machine.id;
        Act::Go(Place::Measure { field, machine, measure, with: Some(with), from_mm: None })
    }

    fn length(&mut self, length: Length, from_mm: Option<u32>) {
        let (words, unit) = (self.words, self.words.unit());
        let Length { question, notch, likely_mm, noted_mm, of, none } = length;
        self.ask(question, words.in_unit());
        let grid = Grid::new((notch, unit), LONGEST_MM, likely_mm, noted_mm, from_mm);
        let marked = Marked { chosen_mm: noted_mm, likely_mm: None };
        let here = self.screen.place;
        let act = |mm: u32| of(Some(mm)).map_or(Act::Go(here), Act::from);
        let mut block = grid.question(marked, &words.label(question), words, act);
        if let Block::Question { answers, .. } = &mut block {
            for answer in answers {
                let crate::screen::Does::Act(Act::Machine(MachineAct::Measured(to))) = &answer.does else {
                    continue;
                };
                answer.enabled = to.of(self.machine).faults().is_empty();
            }
        }
        self.screen.blocks.push(block);
        let moved = |from_mm| match here {
            Place::Measure { field, machine, measure, with, .. } => {
                Act::Go(Place::Measure { field, machine, measure, with, from_mm: Some(from_mm) })
            }
            _ => Act::Go(here),
        };
        self.screen.tools.extend(grid.moved([WorkText::Smaller, WorkText::Larger], words, moved));
        if let Some((label, to)) = none {
            self.none(label, to);
        }
    }

    fn legs(&mut self) {
        self.ask(WorkText::LegsQuestion, String::new());
        let now = self.machine.legs;
        let mut legs: Vec<u32> = LEGS.collect();
        legs.extend(Some(now).filter(|now| !LEGS.contains(now)));
        let answers =
            legs.iter().map(|&legs| self.answer(legs.to_string(), Measured::Legs(legs), legs == now));
        let answers = answers.collect();
        self.question(6, answers);
    }

    fn leading(&mut self) {
        self.ask(WorkText::LeadingQuestion, String::new());
        let depth_mm = self.machine.leading.and_then(|leading| leading.depth_mm);
        let fitted = self.machine.leading.is_some();
        let of = |fitted, depth_mm| Measured::Leading { fitted, depth_mm };
        let answers = vec![
            self.answer(self.words.label(Caption::NoneFitted), of(false, None), !fitted),
            self.answer(self.words.label(Caption::Fitted), of(true, None), fitted && depth_mm.is_none()),
        ];
        self.question(2, answers);
        if let Some(depth_mm) = depth_mm {
            let label = self.words.named(&self.words.label(Caption::Fitted), &self.words.depth(depth_mm));
            let kept = self.answer(label, of(true, Some(depth_mm)), true);
            if let Some(Block::Question { answers, .. }) = self.screen.blocks.last_mut() {
                answers.push(kept);
            }
        }
    }

    /// Speeds as numbers; `of` is what one answers.
    fn speeds(&self, given_kmh: Option<f64>, of: impl Fn(f64) -> Act) -> Vec<Button> {
        let (count, step, first) = SPEEDS_KMH;
        let kmh = |number: u32| first + f64::from(number) * step;
        let button = |kmh: f64| {
            let given = given_kmh.is_some_and(|given| (given - kmh).abs() < step / 4.0);
            choice(self.words.speed_number(kmh), of(kmh), given).about(self.words.speed(kmh))
        };
        (0..count).map(kmh).map(button).collect()
    }

    fn slowest(&mut self) {
        let words = self.words;
        self.ask(WorkText::SlowestQuestion, words.in_kmh());
        let slowest = self.machine.speed.map(|speed| speed.lo_kmh);
        let answers = self.speeds(slowest, |kmh| self.carried(Measure::Fastest, tenths(kmh)));
        self.question(6, answers);
        self.none(Caption::NotNoted, Measured::SpeedKmh(None));
    }

    fn fastest(&mut self, slowest_tenths: Option<u32>) {
        let words = self.words;
        let noted = self.machine.speed;
        let slowest_kmh = slowest_tenths.map(|tenths| f64::from(tenths) / 10.0);
        let slowest_kmh = slowest_kmh.or(noted.map(|speed| speed.lo_kmh)).unwrap_or(SPEEDS_KMH.2);
        self.ask(WorkText::FastestQuestion, words.in_kmh());
        let fastest = noted.map(|speed| speed.hi_kmh);
        let mut answers = self.speeds(fastest, |kmh| Measured::SpeedKmh(Some([slowest_kmh, kmh])).into());
        let (_, step, first) = SPEEDS_KMH;
        for (number, answer) in answers.iter_mut().enumerate() {
            answer.enabled = first + number as f64 * step >= slowest_kmh;
        }
        self.question(6, answers);
    }

    fn power(&mut self) {
        let words = self.words;
        let tractor = self.machine.tractor;
        self.ask(WorkText::PowerQuestion, String::new());
        let button = |kw: u32| {
            let chosen = tractor.is_some_and(|tractor| (tractor.power_kw - f64::from(kw)).abs() < 0.5);
            choice(words.power_of(f64::from(kw)), self.carried(Measure::Drive, kw), chosen)
        };
        let answers = POWERS_KW.iter().map(|&kw| button(kw)).collect();
        self.question(3, answers);
        if let Some(tractor) = tractor {
            let step = words.power_of(POWER_STEP_KW);
            let to = |power_kw| Measured::Tractor { power_kw, drive: tractor.drive };
            let less = to((tractor.power_kw - POWER_STEP_KW).max(1.0));
            self.screen.tools.push(tool(Icon::Less, words.step_less(&step), less));
            let more = to(tractor.power_kw + POWER_STEP_KW);
            self.screen.tools.push(tool(Icon::More, words.step_more(&step), more));
            self.none(Caption::NotNoted, Measured::NoTractor);
        }
    }

    fn drive(&mut self, power_kw: Option<u32>) {
        let words = self.words;
        let tractor = self.machine.tractor;
        self.ask(WorkText::DriveQuestion, String::new());
        let power_kw = power_kw.map(f64::from).or(tractor.map(|tractor| tractor.power_kw));
        let Some(power_kw) = power_kw else { return self.power() };
        let now = tractor.map(|tractor| tractor.drive);
        let button = |&drive: &Drive| {
            self.answer(words.label(drive), Measured::Tractor { power_kw, drive }, now == Some(drive))
        };
        let answers = Drive::ALL.iter().map(button).collect();
        self.question(1, answers);
    }

    fn mass(&mut self) {
        let words = self.words;
        self.ask(WorkText::MassQuestion, String::new());
        let now = self.machine.tractor_mass_kg;
        let answers = MASSES_KG
            .iter()
            .map(|&kg| self.answer(words.mass_of(kg), Measured::MassKg(Some(kg)), now == Some(kg)));
        let answers = answers.collect();
        self.question(3, answers);
        if let Some(kg) = now {
            let step = words.mass_of(MASS_STEP_KG);
            let less = Measured::MassKg(Some(kg.saturating_sub(MASS_STEP_KG).max(MASS_STEP_KG)));
            self.screen.tools.push(tool(Icon::Less, words.step_less(&step), less));
            let more = Measured::MassKg(Some(kg.saturating_add(MASS_STEP_KG)));
            self.screen.tools.push(tool(Icon::More, words.step_more(&step), more));
        }
        self.none(Caption::NotNoted, Measured::MassKg(None));
    }

    fn name(&mut self) {
        self.ask(WorkText::NameQuestion, String::new());
        self.screen.caution = String::new();
        self.screen.blocks.push(Block::Typing {
            label: self.words.label(Caption::MachineName),
            value: self.machine.name.clone(),
            act: MachineAct::Name.into(),
            long: false,
        });
    }
}

fn tenths(kmh: f64) -> u32 {
    (kmh * 10.0).round() as u32
}
