//! One machine set for what is to be loosened.

use super::{Measure, rows::rows};
use crate::advice::ZoneCall;
use crate::advice::machine::{
    Model, Setting, SpacingFit, Terms, TractorFit, WhyNot, Work, set, work_in_zone,
};
use crate::picture::Icon;
use crate::picture::Ruler;
use crate::picture::machine::{SectionPicture, key, section};
use crate::record::{Machine, RecordId, Zone};
use crate::screen::bar::{blank, main_button, tool};
use crate::screen::deleting::entry;
use crate::screen::{
    Act, Block, Does, Headline, Picture, Pictured, Place, Row, Screen, ScreenKind, Section, Touch, World,
};
use crate::words::{Caption, Detail, Heading, Words, WorkText};

/// Whether a setting fits, or what keeps it from it: the first that does not.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Fit {
    /// It is not to be worked, whatever the machine.
    NotToBeWorked,
    /// The machine does not get down to it.
    Short,
    /// The tractor is too weak.
    Weak,
    /// The legs stand too far apart.
    Wide,
    /// It fits.
    Fits,
}

impl Fit {
    pub fn of(setting: &Setting) -> Self {
        let weak = setting.traction.as_ref().is_some_and(|traction| traction.fit == TractorFit::NotEnough);
        let wide = match &setting.spacing {
            Model::Applies(spacing) | Model::AppliesIfAboveCritical(spacing) => {
                spacing.fit == SpacingFit::TooWide
            }
            Model::DoesNotApply(_) => false,
        };
        match setting.within_reach {
            _ if !setting.not_to_be_worked.is_empty() => Self::NotToBeWorked,
            Some(false) => Self::Short,
            _ if weak => Self::Weak,
            _ if wide => Self::Wide,
            _ => Self::Fits,
        }
    }

    pub fn headline(self, setting: &Setting, work: &Work, words: &Words) -> String {
        match self {
            Self::NotToBeWorked => words.label(WorkText::NotToBeWorked),
            Self::Short => words.short_headline(setting),
            Self::Weak => words.label(WorkText::NotEnoughPower),
            Self::Wide => words.label(WorkText::SpacingTooWide),
            Self::Fits => words.set_headline(setting, work.speed_kmh),
        }
    }
}

pub(in crate::screen) fn show(
    field: RecordId,
    machine: RecordId,
    zone: Option<Zone>,
    world: &World,
) -> Option<Screen> {
    let (answer, words) = (world.answer(field)?, world.words);
    let machine = answer.notes.machines.iter().find(|its| its.id == machine)?;
    let place = match zone {
        Some(zone) => Place::SetFor { field, machine: machine.id, zone },
        None => Place::Machine { field, machine: Some(machine.id) },
    };
    let mut screen = blank(place, ScreenKind::Machine, words.name(&machine.name), world);
    screen.menu.extend(entry(&answer.notes, machine.id, world));
    let calls: Vec<&ZoneCall> = answer.to_loosen().collect();
    let call = match zone {
        Some(zone) => calls.iter().find(|call| call.zone == zone),
        None => calls.first(),
    };
    let mut setting = None;
    if let Some(call) = call {
        setting = for_zone(&mut screen, (field, &answer.notes.field), call, machine, world);
    } else {
        screen.answer = Some(Headline {
            line: words.label(Caption::NothingToLoosen),
            ..Headline::new(words.label(WorkText::NothingToSet))
        });
    }
    let [deciding, further] = rows(field, machine, setting.as_ref(), words);
    screen.blocks.insert(0, deciding);
    let others = calls.iter().filter(|other| call.is_none_or(|call| other.zone != call.zone));
    let others: Vec<Row> = others
        .map(|other| Row {
            icon: None,
            title: words.label(other.zone),
            lines: other.tip.iter().map(|tip| words.set_for(other.zone, tip)).collect(),
            does: Does::Act(Act::Go(Place::SetFor { field, machine: machine.id, zone: other.zone })),
        })
        .collect();
    if !others.is_empty() {
        screen.blocks.insert(1, Block::Ways { heading: words.label(Heading::Zones), rows: others });
    }
    screen.blocks.push(further);
    let zone = call.map(|call| call.zone);
    let pass = Act::Go(Place::NewPass { field, machine: Some(machine.id), zone });
    let fits = setting.as_ref().is_some_and(|setting| Fit::of(setting) != Fit::NotToBeWorked);
    if fits {
        screen.next = Some(main_button(words.label(WorkText::NotePass), pass));
    } else {
        screen.tools.push(tool(Icon::Behind, words.label(WorkText::NotePass), pass));
    }
    Some(screen)
}

/// Returns what a zone asks of the machine, and whether it does that.
fn for_zone(
    screen: &mut Screen,
    (field, noted): (RecordId, &crate::record::Field),
    call: &ZoneCall,
    machine: &Machine,
    world: &World,
) -> Option<Setting> {
    let words = world.words;
    let tip = call.tip.as_ref().map(|tip| words.tip_range(tip)).unwrap_or_default();
    let asked = words.asked_of_it(call.zone, &tip);
    let work = match work_in_zone(noted, call, machine, &Terms::default()) {
        Ok(work) => work,
        Err(why) => {
            screen.answer = Some(Headline {
                line: words.cannot_set(why),
                ..Headline::new(words.label(WorkText::NotSetYet))
            });
            if why == WhyNot::NoTexture {
                let texture = Place::Detail { field, detail: Detail::Texture };
                screen.next = Some(main_button(words.label(WorkText::SayTexture), Act::Go(texture)));
            }
            return None;
        }
    };
    let Ok(setting) = set(machine, &work) else {
        screen.answer = Some(Headline {
            line: words.label(Caption::Faulty),
            ..Headline::new(words.label(WorkText::NotSetYet))
        });
        return None;
    };
    let fit = Fit::of(&setting);
    let line = match fit {
        Fit::NotToBeWorked => words.why_not(&setting.not_to_be_worked),
        _ => asked,
    };
    screen.answer = Some(Headline { line, ..Headline::new(fit.headline(&setting, &work, words)) });
    let lines = words.section_key(machine, &work, &setting);
    screen.picture = Some(drawn(field, machine, &work, &setting, world));
    let drawing = key(&lines, world.letters);
    let texts: Vec<String> = lines.into_iter().map(|line| line.text).collect();
    let pictured = Pictured { drawing, title: words.section_title(), description: texts.join(". ") };
    screen.blocks.push(Block::Drawing(pictured.into()));
    let results = words.spacing_and_layer(machine, work.layer, &setting);
    for (heading, line) in
        [Caption::LayerResult, Caption::SpacingResult].into_iter().zip(results.iter().rev())
    {
        screen.more.push(Section { heading: words.label(heading), lines: vec![line.clone()] });
    }
    let all = words.setting(machine, &work, &setting).into_iter().filter(|line| !results.contains(line));
    screen.more.push(Section { heading: words.label(Caption::AllResults), lines: all.collect() });
    // What this ground asks for comes before what goes for every machine.
    let of_ground = call.cautions_now();
    let of_machine = setting.cautions.iter().filter(|caution| !of_ground.contains(caution));
    let cautions: Vec<String> =
        of_ground.iter().chain(of_machine).map(|&caution| words.of(caution)).collect();
    screen.caution = cautions.first().cloned().unwrap_or_default();
    if !cautions.is_empty() {
        screen.more.push(Section { heading: words.label(Heading::Cautions), lines: cautions });
    }
    Some(setting)
}

/// The section across the machine; a finger on a part of it opens its measure.
fn drawn(field: RecordId, machine: &Machine, work: &Work, setting: &Setting, world: &World) -> Picture {
    let words = world.words;
    let ruler = |depth_mm| Ruler::down_to(depth_mm, words.unit(), words.unit_sign());
    let mut picture = SectionPicture::of(machine, work, setting, Vec::new(), ruler);
    picture.text_scale = world.letters;
    let drawing = section(&picture);
    // Legs and their spacing above, the feet below, as they stand in the drawing.
    let half = drawing.height / 2.0;
    let part = |top: f64, text: WorkText, measure: Measure| Touch {
        left: 0.0,
        top,
        width: drawing.width,
        height: half,
        label: words.label(text),
        does: Does::Act(Act::Go(Place::Measure {
            field,
            machine: machine.id,
            measure,
            with: None,
            from_mm: None,
        })),
        drags: false,
    };
    let touches =
        vec![part(0.0, WorkText::Spacing, Measure::Spacing), part(half, WorkText::Foot, Measure::Foot)];
    let pictured = Pictured {
        drawing,
        title: words.section_title(),
        description: words.describe_section(machine, work, setting),
    };
    Picture { touches, ..pictured.into() }
}
