//! Deleting: what goes along with a record, what names it, and what a tap does. Everything that is deleted can be taken back.

use super::bar::{act_button, blank, gone, tool};
use super::{Act, Block, Button, Done, Edit, Headline, Place, Screen, ScreenKind, World};
use crate::error::Fault;
use crate::picture::{Icon, icon};
use crate::record::{FieldNotes, Pass, Pit, RecordId};
use crate::store::{Kind, Named};
use crate::words::FieldText;
use std::collections::BTreeMap;

/// A record that is to be deleted, with what hangs on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hanging {
    /// The record.
    pub of: Named,
    /// What goes along, by kind; only what there is.
    pub along: BTreeMap<Kind, usize>,
    /// Numbers of the passes that were made with it, if it is a machine: they keep it, and it cannot be deleted.
    pub kept_by: Vec<usize>,
    /// How many holes behind the machine are compared with it, if it is a pit.
    pub compared: usize,
}

/// Returns what hangs on a record of a field; `None` if the field has no such record.
pub fn hanging(notes: &FieldNotes, record: RecordId) -> Option<Hanging> {
    let field = &notes.field;
    let of = |kind: Kind| Named {
        record,
        kind,
        field: field.name.clone(),
        pit: None,
        pass: None,
        after_dig: None,
        name: String::new(),
        top_mm: None,
        bottom_mm: None,
    };
    let alone = |of: Named| Hanging { of, along: BTreeMap::new(), kept_by: Vec::new(), compared: 0 };
    if field.id == record {
        return Some(Hanging { along: of_field(notes), ..alone(of(Kind::Field)) });
    }
    for (pit, number) in notes.pits.iter().zip(1..) {
        let in_pit = |kind: Kind| Named { pit: Some(number), ..of(kind) };
        if pit.id == record {
            let digs = notes.passes.iter().flat_map(|pass| &pass.after_digs);
            let compared = digs.filter(|dig| dig.before == Some(record)).count();
            return Some(Hanging { along: of_pit(pit), compared, ..alone(in_pit(Kind::Pit)) });
        }
        if let Some(at) = pit.walk.iter().position(|step| step.id == record) {
            let top_mm = at.checked_sub(1).map_or(0, |above| pit.walk[above].to_mm);
            let bottom_mm = Some(pit.walk[at].to_mm);
            return Some(alone(Named { top_mm: Some(top_mm), bottom_mm, ..in_pit(Kind::Step) }));
        }
        if let Some(layer) = pit.layers.iter().find(|layer| layer.id == record) {
            let (top_mm, bottom_mm) = (Some(layer.top_mm), Some(layer.bottom_mm));
            return Some(alone(Named { top_mm, bottom_mm, ..in_pit(Kind::Layer) }));
        }
        if let Some(roll) = pit.rolls.iter().find(|roll| roll.id == record) {
            return Some(alone(Named { top_mm: Some(roll.depth_mm), ..in_pit(Kind::Roll) }));
        }
        if let Some(photo) = pit.photos.iter().find(|photo| photo.id == record) {
            return Some(alone(Named { top_mm: photo.depth_mm, ..in_pit(Kind::Photo) }));
        }
    }
    let mut digs = 0;
    for (pass, number) in notes.passes.iter().zip(1..) {
        let in_pass = |kind: Kind| Named { pass: Some(number), ..of(kind) };
        if pass.id == record {
            return Some(Hanging { along: of_pass(pass), ..alone(in_pass(Kind::Pass)) });
        }
        if let Some(roll) = pass.rolls.iter().find(|roll| roll.id == record) {
            return Some(alone(Named { top_mm: Some(roll.depth_mm), ..in_pass(Kind::Roll) }));
        }
        if let Some(at) = pass.after_digs.iter().position(|dig| dig.id == record) {
            return Some(alone(Named { after_dig: Some(digs + at + 1), ..in_pass(Kind::AfterDig) }));
        }
        digs += pass.after_digs.len();
    }
    if let Some(machine) = notes.machines.iter().find(|machine| machine.id == record) {
        let with_it = notes.passes.iter().zip(1..).filter(|(pass, _)| pass.machine == Some(record));
        let kept_by = with_it.map(|(_, number)| number).collect();
        return Some(Hanging { kept_by, ..alone(Named { name: machine.name.clone(), ..of(Kind::Machine) }) });
    }
    if let Some(part) = field.parts.iter().find(|part| part.id == record) {
        return Some(alone(Named { name: part.name.clone().unwrap_or_default(), ..of(Kind::Part) }));
    }
    field.lines.iter().any(|line| line.id == record).then(|| alone(of(Kind::BuriedLine)))
}

/// Counts of what there is, without what there is none of.
fn counted<const KINDS: usize>(counts: [(Kind, usize); KINDS]) -> BTreeMap<Kind, usize> {
    counts.into_iter().filter(|(_, count)| *count > 0).collect()
}

fn of_pit(pit: &Pit) -> BTreeMap<Kind, usize> {
    counted([
        (Kind::Step, pit.walk.len()),
        (Kind::Layer, pit.layers.len()),
        (Kind::Roll, pit.rolls.len()),
        (Kind::Photo, pit.photos.len()),
    ])
}

fn of_pass(pass: &Pass) -> BTreeMap<Kind, usize> {
    counted([(Kind::Roll, pass.rolls.len()), (Kind::AfterDig, pass.after_digs.len())])
}

/// Of a field only what people would miss by name: a list of everything is read by nobody.
fn of_field(notes: &FieldNotes) -> BTreeMap<Kind, usize> {
    counted([
        (Kind::Pit, notes.pits.len()),
        (Kind::Photo, notes.pits.iter().map(|pit| pit.photos.len()).sum()),
        (Kind::Machine, notes.machines.len()),
        (Kind::Pass, notes.passes.len()),
        (Kind::AfterDig, notes.passes.iter().map(|pass| pass.after_digs.len()).sum()),
        (Kind::Part, notes.field.parts.len()),
        (Kind::BuriedLine, notes.field.lines.len()),
    ])
}

/// The way of a menu to the question whether a record is to go.
pub(super) fn entry(notes: &FieldNotes, record: RecordId, world: &World) -> Option<Button> {
    let of = hanging(notes, record)?.of;
    let place = Place::Deleting { field: notes.field.id, record };
    Some(tool(Icon::Delete, world.words.delete_entry(&of), Act::Go(place)))
}

/// The question, with what would go along; of a machine in use why it stays.
pub(super) fn show(field: RecordId, record: RecordId, world: &World) -> Option<Screen> {
    let words = world.words;
    let hanging = hanging(world.notes(field)?, record)?;
    let place = Place::Deleting { field, record };
    let mut shown = blank(place, ScreenKind::Deleting, words.name(&hanging.of.field), world);
    let stays = !hanging.kept_by.is_empty();
    let text = if stays { words.of(FieldText::InUse) } else { words.delete_asked(&hanging.of) };
    let mut told = words.would_go(&hanging).into_iter();
    let line = told.next().unwrap_or_default();
    shown.answer = Some(Headline { text, sign: Some(icon(Icon::Delete)), line });
    shown.blocks.extend(told.map(Block::Text));
    shown.next = (!stays).then(|| act_button(words.label(FieldText::Delete), Act::Delete { record }));
    Some(shown)
}

/// Returns what a tap on *delete* does, once what goes along was told. A machine that a pass was made with stays.
pub(super) fn delete(place: Place, record: RecordId, world: &World) -> Result<Done, Fault> {
    let words = world.words;
    let found = world.fields.iter().find_map(|notes| Some((notes, hanging(notes, record)?)));
    let Some((notes, hanging)) = found else { return Err(gone(words)) };
    if !hanging.kept_by.is_empty() {
        return Err(Fault::new("", words.machine_kept(&hanging), ""));
    }
    let place = left_after(place, notes, &hanging.of);
    let told = words.deleted_now(&hanging);
    Ok(Done { told, ..Done::save(Edit::Delete { record }, place) })
}

/// Where one is once a record is gone: where one was, or above it.
fn left_after(place: Place, notes: &FieldNotes, of: &Named) -> Place {
    let field = notes.field.id;
    let pit = of.pit.and_then(|number| notes.pits.get(number - 1)).map(|pit| pit.id);
    let pass = of.pass.and_then(|number| notes.passes.get(number - 1)).map(|pass| pass.id);
    match (of.kind, pit) {
        (Kind::Field, _) => Place::Fields,
        (Kind::Pit, _) => Place::Field { field },
        (Kind::Part, _) => Place::Outline { field },
        (Kind::Layer, Some(pit)) => Place::Layers { field, pit, layer: None, clue: None },
        (Kind::Roll, Some(pit)) => Place::Call { field, pit },
        (Kind::Machine, _) => Place::Machine { field, machine: None },
        (Kind::Pass, _) => Place::Pass { field, pass: None },
        (Kind::AfterDig | Kind::Roll, _) => Place::Pass { field, pass },
        (Kind::BuriedLine, _) => Place::Lines { field, line: None },
        _ => place,
    }
}
