//! What is to be done where a pit was dug: the sentence, the face beside the reference, and where it leads.

use super::super::deleting::entry;
use super::super::field::ways_to_note;
use super::super::{Act, Block, Does, Place, Row, Screen, ScreenKind, Section, World};
use super::headline::{Says, headline, says};
use super::next::{looks_left, next_step, show_tool};
use super::remark::{self, remark_tool};
use super::{AtPit, roll, wide_face};
use crate::advice::{Stance, ZoneCall};
use crate::picture::{Icon, icon};
use crate::record::RecordId;
use crate::words::{FaceText, Heading, PitText};

pub(in crate::screen) fn show(field: RecordId, pit: RecordId, world: &World) -> Option<Screen> {
    let at = AtPit::of(field, pit, world)?;
    let mut shown = at.screen(Place::Call { field, pit }, ScreenKind::Call, world);
    shown.awake = false;
    shown.menu.extend(entry(&at.answer.notes, pit, world));
    shown.answer = Some(headline(&at, world));
    let looks = looks_left(&at, world);
    let call = match says(&at) {
        Says::Call(call) => Some(call),
        _ => None,
    };
    shown.picture = wide_face(&at, call.and_then(|call| call.tip), true, world);
    if let Some(call) = call {
        let words = world.words;
        let hangs = words.hangs_on(at.answer.changes(call.zone));
        let sure = [hangs, Some(words.sure_of_face(call)), words.sure_of_ground(call)];
        shown.blocks.extend(sure.into_iter().flatten().map(Block::Text));
        let now = call.cautions_now().first();
        shown.caution = now.map_or_else(String::new, |&caution| words.of(caution));
    }
    shown.blocks.extend(super::super::photos::thumbnails(field, at.pit, world));
    shown.blocks.push(Block::Ways { heading: String::new(), rows: ways(&at, looks, world) });
    if let Some(call) = call {
        shown.blocks.extend(ways_to_note(&at.answer, Some(call.zone), world));
    }
    shown.blocks.push(layers(&at, world));
    shown.tools.push(remark_tool(&at, None, world));
    let (next, show) = (next_step(&at, looks, world), show_tool(&at, world));
    if next.does != show.does {
        shown.tools.push(show);
    }
    shown.next = Some(next);
    shown.more = match call {
        Some(call) => told(call, &at, world),
        None => told_of_layers(&at, world),
    };
    let own = remark::told(at.pit, None).map(|text| world.words.remark(&text));
    let remarks = own.into_iter().chain(remarks(&at, world));
    shown.more.extend(section(world, Heading::Note, remarks));
    Some(shown)
}

/// Everything that belongs to a call, to be unfolded.
fn told(call: &ZoneCall, at: &AtPit, world: &World) -> Vec<Section> {
    let words = world.words;
    let sure = [Some(words.how_sure(call)), call.tip.map(|tip| words.tip_sentences(&tip))];
    let mut more: Vec<Section> =
        section(world, Heading::HowSure, sure.into_iter().flatten()).into_iter().collect();
    let reasons = [Stance::For, Stance::Against, Stance::Note].into_iter().filter_map(|stance| {
        let whys = call.reasons.iter().filter(|why| why.stance == stance).map(|why| words.why(why));
        section(world, Heading::from(stance), whys)
    });
    more.extend(reasons);
    let loss = call.rooting_loss.as_ref().map(|loss| words.rooting_loss(loss));
    more.extend(section(world, Heading::RootingDepth, loss));
    let change = at.answer.changes(call.zone).iter().map(|change| words.change(change));
    more.extend(section(world, Heading::WouldChange, change));
    more.extend(section(world, Heading::Cautions, call.cautions.iter().map(|&caution| words.of(caution))));
    more.extend(section(world, Heading::FollowUp, call.follow_up.iter().map(|&step| words.of(step))));
    more
}

/// A pit without a call of its own: what it reads as, layer by layer.
fn told_of_layers(at: &AtPit, world: &World) -> Vec<Section> {
    let layers = at.reading().layers.iter().map(|layer| world.words.describe_layer(layer));
    section(world, Heading::Layers, layers).into_iter().collect()
}

fn section(world: &World, heading: Heading, lines: impl IntoIterator<Item = String>) -> Option<Section> {
    let lines: Vec<String> = lines.into_iter().collect();
    (!lines.is_empty()).then(|| Section { heading: world.words.label(heading), lines })
}

/// Returns what is to be said of where it lies, of other people who read the same hole, and of pictures that are not here.
fn remarks(at: &AtPit, world: &World) -> Vec<String> {
    let words = world.words;
    let lies = at.answer.map.remarks(at.pit);
    let lies = lies.iter().map(|remark| words.place_remark(at.number(), at.pit.place, remark));
    let several = at.answer.readers();
    let here = several.filter(|several| several.holes.iter().any(|hole| hole.contains(&at.index)));
    let readers = here.map(|several| words.several_readers(several, &at.answer.notes.pits));
    let pictures = super::super::photos::missing(std::slice::from_ref(at.pit), world);
    lies.chain(readers.into_iter().flatten()).chain(pictures).collect()
}

fn ways(at: &AtPit, looks: usize, world: &World) -> Vec<Row> {
    let words = world.words;
    let (field, pit) = (at.field, at.pit.id);
    let row = |of: Icon, title: String, line: String, place: Place| Row {
        icon: Some(icon(of)),
        title,
        lines: [line].into_iter().filter(|line| !line.is_empty()).collect(),
        does: Does::Act(Act::Go(place)),
    };
    let walked = at.pit.walk.iter().filter(|step| step.comes_away.is_some()).map(|step| step.to_mm).max();
    let walked = walked.map_or_else(|| words.label(PitText::NotLooked), |to_mm| words.depth_range(0, to_mm));
    let mut rows =
        vec![row(Icon::Layers, words.label(Heading::KnifeWalk), walked, Place::KnifeWalk { field, pit })];
    if looks > 0 {
        let title = words.label(Heading::NextLook);
        rows.push(row(Icon::Layers, title, words.looks_to_see(looks, None), Place::NextLook { field, pit }));
    }
    rows.extend(roll::rolls(at).into_iter().map(|(surface, depth_mm, rolled)| {
        let line = rolled.map_or_else(|| words.label(FaceText::NotRolled), |its| words.label(its.roll));
        row(Icon::Roll, words.soil_from(depth_mm), line, Place::RollOf { field, pit, surface })
    }));
    let photos = words.photos_count(at.pit.photos.len());
    rows.push(row(Icon::Photo, words.label(PitText::Photos), photos, Place::Photos { field, pit }));
    let place = Place::StartPit { field, pit: Some(pit) };
    rows.push(row(Icon::Plan, words.label(PitText::Place), words.label(at.pit.place), place));
    if at.answer.call_at(at.index).is_some_and(|call| call.tip.is_some()) {
        let machine = Place::Machine { field, machine: None };
        rows.push(row(Icon::Machine, words.label(PitText::Machine), String::new(), machine));
    }
    let another = Place::StartPit { field, pit: None };
    rows.push(row(Icon::Pit, words.label(PitText::DigNext), String::new(), another));
    rows
}

/// The layers, as they are touched on the face.
fn layers(at: &AtPit, world: &World) -> Block {
    let all = Row {
        icon: Some(icon(Icon::Layers)),
        title: world.words.label(FaceText::AllLayers),
        lines: Vec::new(),
        does: Does::Act(Act::Go(super::walk::layers_of(at.field, at.pit.id))),
    };
    let rows = [all].into_iter().chain(super::faces::layer_rows(at, world)).collect();
    Block::Ways { heading: world.words.label(Heading::Layers), rows }
}
