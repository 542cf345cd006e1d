//! The measures of a machine, each set by buttons; every tap saves.

use super::super::bar::{act_button, asked, choice, empty, main_button};
use super::super::step::{COARSE, FINE, Notch};
use super::super::{Act, Button, Doing, Draft, Known, Place, ScreenKind, World};
use super::{MachineAct, Measured, worked};
use crate::record::{Drive, Machine, RecordId};
use crate::words::{Caption, Words};

// What is offered where nothing is noted yet; steps lead to every other value. Our judgement.
const WINGS_MM: [u32; 6] = [150, 200, 250, 300, 350, 400];
const LIFTS_MM: [u32; 6] = [30, 40, 50, 60, 80, 100];
const LEADING_MM: [u32; 6] = [100, 120, 150, 180, 200, 250];
const REACHES_MM: [u32; 6] = [350, 400, 450, 500, 550, 600];
const SPEEDS_KMH: [[f64; 2]; 4] = [[3.0, 6.0], [4.0, 7.0], [5.0, 8.0], [6.0, 10.0]];
const POWERS_KW: [u32; 12] = [60, 75, 90, 110, 125, 140, 160, 180, 200, 230, 260, 300];
const MASSES_KG: [u32; 8] = [4_000, 5_000, 6_000, 7_000, 8_000, 9_000, 10_000, 12_000];
const MASS_STEP_KG: u32 = 250;
const SPEED_STEP_KMH: f64 = 0.5;
const POWER_STEP_KW: f64 = 10.0;

/// One machine's form.
struct Form<'a> {
    machine: &'a Machine,
    words: &'a Words,
    /// Power told of a tractor of which it is not said yet what pulls.
    power_kw: Option<u32>,
    field: RecordId,
}

pub(in crate::screen) fn show(
    field: RecordId,
    machine: RecordId,
    power_kw: Option<u32>,
    world: &World,
) -> Option<Draft> {
    let (notes, words) = (world.notes(field)?, world.words);
    let machine = notes.machines.iter().find(|its| its.id == machine)?;
    let place = Place::Measures { field, machine: machine.id, power_kw };
    let mut screen = empty(place, ScreenKind::Machine, world.words.name(&machine.name), world);
    screen.known.push(Known::Sentence(words.machine_measures(machine)));
    if worked(notes, machine.id) {
        screen.known.push(Known::Line(words.label(Caption::SetAnew)));
    }
    screen.known.push(Known::Line(words.label(Caption::MeasuredFirst)));
    let form = Form { machine, words, power_kw, field };
    let name = Doing::Typing {
        label: words.label(Caption::MachineName),
        value: machine.name.clone(),
        act: MachineAct::Name.into(),
    };
    screen.doing.push(name);
    screen.doing.extend(form.tractor());
    screen.doing.extend(form.speed());
    screen.doing.extend(form.reach());
    screen.doing.extend(form.leading());
    screen.doing.extend(form.wings());
    screen.doing.extend(form.feet_and_legs());
    let set = Act::Go(Place::Machine { field, machine: Some(machine.id) });
    screen.bar.main = Some(main_button(words.label(Caption::MachineDone), set));
    Some(screen)
}

impl Form<'_> {
    /// A button for a measure; it cannot be tapped where the machine could not be so.
    fn measured(&self, label: String, to: Option<Measured>) -> Option<Button> {
        let to = to?;
        let enabled = to.of(self.machine).faults().is_empty();
        Some(Button { enabled, ..act_button(label, to) })
    }

    /// Less and more of a measure, with what takes it away.
    fn around(
        &self,
        (what, value): (Caption, String),
        step: &str,
        [less, more]: [Option<Measured>; 2],
        none: Option<(Caption, Measured)>,
    ) -> Vec<Doing> {
        let question = self.words.asked(&self.words.label(what), &value);
        let less = self.measured(self.words.step_less(step), less);
        let more = self.measured(self.words.step_more(step), more);
        let none = none.map(|(label, to)| act_button(self.words.label(label), to));
        let buttons: Vec<Button> = [less, none, more].into_iter().flatten().collect();
        asked(question, 3, buttons)
    }

    /// The same for a length; nothing noted offers the usual ones.
    fn length(
        &self,
        what: Caption,
        value_mm: Option<u32>,
        (notch, offered): (Notch, &[u32]),
        of: impl Fn(Option<u32>) -> Measured,
    ) -> Vec<Doing> {
        let (words, unit) = (self.words, self.words.unit());
        let Some(mm) = value_mm else {
            let question = words.asked(&words.label(what), &words.of(Caption::NotNoted));
            let near = FINE.offered(offered, unit).into_iter();
            let buttons = near.filter_map(|mm| self.measured(words.depth(mm), Some(of(Some(mm))))).collect();
            return asked(question, 6, buttons);
        };
        let sides = notch.around(mm, unit, 1..=5_000).map(|mm| mm.map(|mm| of(Some(mm))));
        let none = Some((Caption::NotNoted, of(None)));
        self.around((what, words.depth(mm)), &words.depth(notch.step_mm(unit)), sides, none)
    }

    fn feet_and_legs(&self) -> Vec<Doing> {
        let (machine, words, unit) = (self.machine, self.words, self.words.unit());
        let fixed = |what, notch: Notch, mm: u32, of: fn(u32) -> Measured| {
            let sides = notch.around(mm, unit, 1..=5_000).map(|mm| mm.map(of));
            self.around((what, words.depth(mm)), &words.depth(notch.step_mm(unit)), sides, None)
        };
        let mut doing = fixed(Caption::FootWidth, FINE, machine.foot_width_mm, Measured::FootWidthMm);
        doing.extend(fixed(Caption::Spacing, COARSE, machine.spacing_mm, Measured::SpacingMm));
        let less = machine.legs.checked_sub(1).map(Measured::Legs);
        let more = machine.legs.checked_add(1).map(Measured::Legs);
        doing.extend(self.around((Caption::Legs, machine.legs.to_string()), "1", [less, more], None));
        doing
    }

    fn wings(&self) -> Vec<Doing> {
        let words = self.words;
        let Some(wings) = self.machine.wings else {
            let question = words.asked(&words.label(Caption::Wings), &words.of(Caption::NoneFitted));
            let offered = FINE.offered(&WINGS_MM, words.unit()).into_iter();
            let buttons = offered
                .filter_map(|mm| self.measured(words.depth(mm), Some(Measured::WingsMm(Some(mm)))))
                .collect();
            return asked(question, 6, buttons);
        };
        let sides = FINE.around(wings.width_mm, words.unit(), 1..=5_000);
        let sides = sides.map(|mm| mm.map(|mm| Measured::WingsMm(Some(mm))));
        let step = words.depth(FINE.step_mm(words.unit()));
        let none = Some((Caption::NoneFitted, Measured::WingsMm(None)));
        let lift = self.length(Caption::Lift, wings.lift_mm, (FINE, &LIFTS_MM), Measured::LiftMm);
        let width = self.around((Caption::Wings, words.depth(wings.width_mm)), &step, sides, none);
        [lift, width].concat()
    }

    fn leading(&self) -> Vec<Doing> {
        let (words, leading) = (self.words, self.machine.leading);
        let fitted = |fitted| Measured::Leading { fitted, depth_mm: None };
        let depth_mm = leading.and_then(|leading| leading.depth_mm);
        let buttons = vec![
            choice(words.label(Caption::NoneFitted), fitted(false), leading.is_none()),
            choice(
                words.label(Caption::Fitted),
                Measured::Leading { fitted: true, depth_mm },
                leading.is_some(),
            ),
        ];
        let depth = leading.map(|leading| {
            let of = |depth_mm| Measured::Leading { fitted: true, depth_mm };
            self.length(Caption::LeadingDepth, leading.depth_mm, (FINE, &LEADING_MM), of)
        });
        [depth.unwrap_or_default(), asked(words.label(Caption::Leading), 2, buttons)].concat()
    }

    fn reach(&self) -> Vec<Doing> {
        self.length(Caption::Reach, self.machine.reach_mm, (COARSE, &REACHES_MM), Measured::ReachMm)
    }

    fn speed(&self) -> Vec<Doing> {
        let words = self.words;
        let to = |lo, hi| Some(Measured::SpeedKmh(Some([lo, hi])));
        let Some(speed) = self.machine.speed else {
            let offered = SPEEDS_KMH.iter();
            let buttons =
                offered.filter_map(|&[lo, hi]| self.measured(words.speeds(lo, hi), to(lo, hi))).collect();
            let what = words.label(Caption::PassSpeed);
            return asked(words.asked(&what, &words.of(Caption::NotNoted)), 2, buttons);
        };
        let (lo, hi, step) = (speed.lo_kmh, speed.hi_kmh, words.speed(SPEED_STEP_KMH));
        let none = Some((Caption::NotNoted, Measured::SpeedKmh(None)));
        let slowest = [to(lo - SPEED_STEP_KMH, hi), to(lo + SPEED_STEP_KMH, hi)];
        let fastest = [to(lo, hi - SPEED_STEP_KMH), to(lo, hi + SPEED_STEP_KMH)];
        let slowest = self.around((Caption::Slowest, words.speed(lo)), &step, slowest, none);
        [slowest, self.around((Caption::Fastest, words.speed(hi)), &step, fastest, none)].concat()
    }

    fn mass(&self) -> Vec<Doing> {
        let words = self.words;
        let to = |kg| Some(Measured::MassKg(Some(kg)));
        let Some(kg) = self.machine.tractor_mass_kg else {
            let question = words.asked(&words.label(Caption::TractorMass), &words.of(Caption::NotNoted));
            let offered = MASSES_KG.iter().filter_map(|&kg| self.measured(words.mass_of(kg), to(kg)));
            return asked(question, 4, offered.collect());
        };
        let sides = [to(kg.saturating_sub(MASS_STEP_KG)), to(kg.saturating_add(MASS_STEP_KG))];
        let none = Some((Caption::NotNoted, Measured::MassKg(None)));
        self.around((Caption::TractorMass, words.mass_of(kg)), &words.mass_of(MASS_STEP_KG), sides, none)
    }

    fn tractor(&self) -> Vec<Doing> {
        let words = self.words;
        let drives = |power_kw: f64, now: Option<Drive>| {
            let drive = |&drive: &Drive| {
                choice(words.label(drive), Measured::Tractor { power_kw, drive }, now == Some(drive))
            };
            asked(words.label(Caption::Drive), 2, Drive::ALL.iter().map(drive).collect())
        };
        if let Some(tractor) = self.machine.tractor {
            let drive = tractor.drive;
            let to = |power_kw| Some(Measured::Tractor { power_kw, drive });
            let sides = [to(tractor.power_kw - POWER_STEP_KW), to(tractor.power_kw + POWER_STEP_KW)];
            let none = Some((Caption::NotNoted, Measured::NoTractor));
            let power = (Caption::Power, words.power_of(tractor.power_kw));
            let power = self.around(power, &words.power_of(POWER_STEP_KW), sides, none);
            return [self.mass(), drives(tractor.power_kw, Some(tractor.drive)), power].concat();
        }
        let offered = POWERS_KW.iter().map(|&kw| {
            let to = Place::Measures { field: self.field, machine: self.machine.id, power_kw: Some(kw) };
            choice(words.power_of(f64::from(kw)), Act::Go(to), self.power_kw == Some(kw))
        });
        let question = words.asked(&words.label(Caption::Power), &words.of(Caption::NotNoted));
        let power = asked(question, 4, offered.collect());
        let drive = self.power_kw.map(|kw| drives(f64::from(kw), None));
        [power, drive.unwrap_or_default()].concat()
    }
}
