//! What the store refuses before anything is written: values that the record types say no record has.
//!
//! Only what can never be right. What is unfinished while it is being noted is let in: layers that leave a gap, the first
//! readings of an after-dig, the first places of a ring or a line.

use super::StoreError;
use crate::error::Fault;
use crate::record::{
    AfterDig, BuriedLine, Field, FieldNotes, Layer, Machine, OrganicMatter, Part, PartShape, Pass, Person,
    Photo, PhotoMark, Pit, Position, RecordId, Roll, Step,
};
use std::collections::HashSet;

/// A record that can be looked over.
pub(super) trait Check {
    /// The first thing wrong with it; `at` names it.
    fn check(&self, at: &str) -> Result<(), Fault>;
}

/// Notes as a whole: each record, and no id twice.
pub(super) fn notes(notes: &FieldNotes) -> Result<(), StoreError> {
    let mut ids = HashSet::new();
    check_field(&notes.field, &mut ids)?;
    for (place, pit) in notes.pits.iter().enumerate() {
        check_pit(pit, &format!("pits[{place}]"), &mut ids)?;
    }
    check_list(&notes.machines, |machine| machine.id, "", "machines", &mut ids)?;
    for (place, pass) in notes.passes.iter().enumerate() {
        check_pass(pass, &format!("passes[{place}]"), &mut ids)?;
    }
    Ok(())
}

/// A field with what is marked on it.
pub(super) fn field(field: &Field) -> Result<(), StoreError> {
    Ok(check_field(field, &mut HashSet::new())?)
}

/// A pass with everything in it.
pub(super) fn pass(pass: &Pass) -> Result<(), StoreError> {
    Ok(check_pass(pass, "pass", &mut HashSet::new())?)
}

/// A pit with everything in it.
pub(super) fn pit(pit: &Pit) -> Result<(), StoreError> {
    Ok(check_pit(pit, "pit", &mut HashSet::new())?)
}

fn check_field(field: &Field, ids: &mut HashSet<RecordId>) -> Result<(), Fault> {
    field.check("field")?;
    once(field.id, "field", ids)?;
    check_list(&field.parts, |part| part.id, "field.", "parts", ids)?;
    check_list(&field.lines, |line| line.id, "field.", "lines", ids)
}

fn check_pass(pass: &Pass, at: &str, ids: &mut HashSet<RecordId>) -> Result<(), Fault> {
    pass.check(at)?;
    once(pass.id, at, ids)?;
    let within = format!("{at}.");
    check_list(&pass.rolls, |roll| roll.id, &within, "rolls", ids)?;
    check_list(&pass.after_digs, |dig| dig.id, &within, "after_digs", ids)
}

fn check_pit(pit: &Pit, at: &str, ids: &mut HashSet<RecordId>) -> Result<(), Fault> {
    pit.check(at)?;
    once(pit.id, at, ids)?;
    let within = format!("{at}.");
    check_list(&pit.walk, |step| step.id, &within, "walk", ids)?;
    check_list(&pit.layers, |layer| layer.id, &within, "layers", ids)?;
    check_list(&pit.rolls, |roll| roll.id, &within, "rolls", ids)?;
    check_list(&pit.photos, |photo| photo.id, &within, "photos", ids)
}

fn check_list<R: Check>(
    list: &[R],
    id: fn(&R) -> RecordId,
    within: &str,
    name: &str,
    ids: &mut HashSet<RecordId>,
) -> Result<(), Fault> {
    for (place, record) in list.iter().enumerate() {
        let at = format!("{within}{name}[{place}]");
        record.check(&at)?;
        once(id(record), &at, ids)?;
    }
    Ok(())
}

fn once(id: RecordId, at: &str, ids: &mut HashSet<RecordId>) -> Result<(), Fault> {
    let todo = "give each record an id of its own";
    if ids.insert(id) { Ok(()) } else { Err(Fault::new(at, format!("the id {id} stands twice"), todo)) }
}

fn named(name: &str, at: &str) -> Result<(), Fault> {
    let is_blank = name.trim().is_empty();
    if is_blank { Err(Fault::new(format!("{at}.name"), "the name is empty", "give a name")) } else { Ok(()) }
}

fn on_the_globe(longitude_deg: f64, latitude_deg: f64, at: &str) -> Result<(), Fault> {
    if (-180.0..=180.0).contains(&longitude_deg) && (-90.0..=90.0).contains(&latitude_deg) {
        return Ok(());
    }
    let wrong = format!("longitude {longitude_deg}, latitude {latitude_deg} lies off the globe");
    Err(Fault::new(at, wrong, "give degrees: longitude -180 to 180, latitude -90 to 90"))
}

fn all_on_the_globe(places: &[[f64; 2]], at: &str) -> Result<(), Fault> {
    for (place, [longitude, latitude]) in places.iter().enumerate() {
        on_the_globe(*longitude, *latitude, &format!("{at}[{place}]"))?;
    }
    Ok(())
}

fn positioned(position: Option<Position>, at: &str) -> Result<(), Fault> {
    let Some(position) = position else { return Ok(()) };
    on_the_globe(position.longitude_deg, position.latitude_deg, &format!("{at}.at"))?;
    match position.accuracy_m {
        Some(metres) if !(metres >= 0.0 && metres.is_finite()) => {
            let wrong = format!("{metres} m is no radius");
            Err(Fault::new(format!("{at}.accuracy_m"), wrong, "give metres, 0 or more"))
        }
        _ => Ok(()),
    }
}

/// The first of a record's own faults.
fn first(faults: Vec<Fault>, at: &str) -> Result<(), Fault> {
    match faults.into_iter().next() {
        Some(fault) => Err(Fault::new(format!("{at}.{}", fault.at), fault.wrong, fault.todo)),
        None => Ok(()),
    }
}

impl Check for Field {
    fn check(&self, at: &str) -> Result<(), Fault> {
        named(&self.name, at)?;
        all_on_the_globe(&self.outline, &format!("{at}.outline"))?;
        match self.organic_matter {
            Some(OrganicMatter::Percent(percent)) if !(0.0..=100.0).contains(&percent) => {
                let wrong = format!("{percent} is no percentage");
                Err(Fault::new(format!("{at}.organic_matter"), wrong, "give 0 to 100"))
            }
            _ => Ok(()),
        }
    }
}

impl Check for Pit {
    fn check(&self, at: &str) -> Result<(), Fault> {
        positioned(self.at, at)
    }
}

impl Check for Step {
    fn check(&self, _: &str) -> Result<(), Fault> {
        Ok(())
    }
}

impl Check for Layer {
    fn check(&self, at: &str) -> Result<(), Fault> {
        let layer = [(self.top_mm, Some(self.bottom_mm))];
        crate::record::depth::check(&layer)
            .map_err(|fault| Fault::new(at, fault.to_string(), "give a bottom below the top"))
    }
}

impl Check for Roll {
    fn check(&self, _: &str) -> Result<(), Fault> {
        Ok(())
    }
}

impl Check for Photo {
    fn check(&self, at: &str) -> Result<(), Fault> {
        let outside = |mark: &PhotoMark| mark.from_left.max(mark.from_top) > PhotoMark::WHOLE;
        if let Some(place) = self.marks.iter().position(outside) {
            let todo = "count in ten-thousandths of the picture's width and height, 0 to 10000";
            return Err(Fault::new(format!("{at}.marks[{place}]"), "this lies outside the picture", todo));
        }
        let is_hex = |byte: u8| matches!(byte, b'0'..=b'9' | b'a'..=b'f');
        if self.sha256.len() == 64 && self.sha256.bytes().all(is_hex) {
            return Ok(());
        }
        let wrong = format!("{:?} is no SHA-256", self.sha256);
        Err(Fault::new(format!("{at}.sha256"), wrong, "give 64 lower-case hex digits"))
    }
}

impl Check for Person {
    fn check(&self, at: &str) -> Result<(), Fault> {
        named(&self.name, at)
    }
}

impl Check for Machine {
    fn check(&self, at: &str) -> Result<(), Fault> {
        first(self.faults(), at)
    }
}

impl Check for Pass {
    fn check(&self, at: &str) -> Result<(), Fault> {
        first(self.faults(), at)
    }
}

impl Check for AfterDig {
    fn check(&self, at: &str) -> Result<(), Fault> {
        positioned(self.at, at)
    }
}

impl Check for Part {
    fn check(&self, at: &str) -> Result<(), Fault> {
        match &self.shape {
            PartShape::Ring(ring) => all_on_the_globe(ring, &format!("{at}.ring"))?,
            PartShape::Circle { middle, .. } => on_the_globe(middle[0], middle[1], &format!("{at}.at"))?,
        }
        first(self.faults(), at)
    }
}

impl Check for BuriedLine {
    fn check(&self, at: &str) -> Result<(), Fault> {
        all_on_the_globe(&self.along, &format!("{at}.along"))
    }
}
