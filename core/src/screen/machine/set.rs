//! One machine set for what is to be loosened.

use super::super::bar::{act_button, empty, main_button};
use super::super::behind::BehindAct;
use super::super::{Act, Doing, Draft, Known, Pictured, Place, ScreenKind, World};
use crate::advice::ZoneCall;
use crate::advice::machine::{Setting, Terms, Work, set, work_in_zone};
use crate::picture::Ruler;
use crate::picture::machine::{SectionPicture, section};
use crate::record::{Field, Machine, RecordId};
use crate::words::{Caption, Heading, Words};

pub(super) fn show(field: RecordId, machine: RecordId, world: &World) -> Option<Draft> {
    let (answer, words) = (world.answer(field)?, world.words);
    let machine = answer.notes.machines.iter().find(|its| its.id == machine)?;
    let place = Place::Machine { field, machine: Some(machine.id) };
    let mut screen = empty(place, ScreenKind::Machine, words.name(&machine.name), world);
    let calls: Vec<&ZoneCall> = answer.to_loosen().collect();
    screen.known =
        calls.iter().flat_map(|call| for_zone(&answer.notes.field, call, machine, words)).collect();
    if calls.is_empty() {
        screen.known.push(Known::Sentence(words.label(Caption::NothingToLoosen)));
    }
    screen.known.push(Known::Line(words.machine_measures(machine)));
    let measures = Place::Measures { field, machine: machine.id, power_kw: None };
    let measures = act_button(words.label(Caption::Measures), Act::Go(measures));
    screen.doing.push(Doing::Choices { columns: 1, buttons: vec![measures] });
    let zone = if let [call] = calls[..] { Some(call.zone) } else { None };
    let pass = BehindAct::NewPass { machine: Some(machine.id), zone };
    let mut pass = main_button(words.label(Caption::NewPass), pass);
    pass.strong = false;
    screen.bar.main = Some(pass);
    Some(screen)
}

fn for_zone(field: &Field, call: &ZoneCall, machine: &Machine, words: &Words) -> Vec<Known> {
    let mut known = Vec::new();
    known.extend(call.tip.as_ref().map(|tip| Known::Sentence(words.set_for(call.zone, tip))));
    known.push(Known::Line(words.call_sentence(call)));
    let work = match work_in_zone(field, call, machine, &Terms::default()) {
        Ok(work) => work,
        Err(why) => {
            known.push(Known::Line(words.cannot_set(why)));
            return known;
        }
    };
    let Ok(setting) = set(machine, &work) else {
        known.push(Known::Line(words.label(Caption::Faulty)));
        return known;
    };
    let results = words.spacing_and_layer(machine, work.layer, &setting);
    for (heading, line) in [Caption::SpacingResult, Caption::LayerResult].into_iter().zip(results.clone()) {
        known.push(Known::Section { heading: words.label(heading), lines: vec![line] });
    }
    known.push(Known::Drawing(drawn(machine, &work, &setting, words)));
    let lines = words.setting(machine, &work, &setting);
    let lines = lines.into_iter().filter(|line| !results.contains(line)).collect();
    known.push(Known::Section { heading: words.label(Caption::AllResults), lines });
    let lines = setting.cautions.iter().map(|&caution| words.of(caution)).collect();
    known.push(Known::Section { heading: words.label(Heading::Cautions), lines });
    known
}

fn drawn(machine: &Machine, work: &Work, setting: &Setting, words: &Words) -> Pictured {
    let key = words.section_key(machine, work, setting);
    let ruler = |depth_mm| Ruler::down_to(depth_mm, words.unit(), words.unit_sign());
    Pictured {
        drawing: section(&SectionPicture::of(machine, work, setting, key, ruler)),
        title: words.section_title(),
        description: words.describe_section(machine, work, setting),
    }
}
