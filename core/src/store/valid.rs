//! What the store refuses before anything is written: values that the record types say no record has.
//!
//! Only what can never be right. Layers that leave a gap while they are being noted are let in.

use super::StoreError;
use crate::error::Fault;
use crate::record::{Field, FieldNotes, Layer, OrganicMatter, Person, Photo, Pit, RecordId, Roll, Step};
use std::collections::HashSet;

/// A record that can be looked over.
pub(super) trait Check {
    /// The first thing wrong with it; `at` names it.
    fn check(&self, at: &str) -> Result<(), Fault>;
}

/// Notes as a whole: each record, and no id twice.
pub(super) fn notes(notes: &FieldNotes) -> Result<(), StoreError> {
    notes.field.check("field")?;
    let mut ids = HashSet::from([notes.field.id]);
    for (place, pit) in notes.pits.iter().enumerate() {
        check_pit(pit, &format!("pits[{place}]"), &mut ids)?;
    }
    Ok(())
}

/// A pit with everything in it.
pub(super) fn pit(pit: &Pit) -> Result<(), StoreError> {
    Ok(check_pit(pit, "pit", &mut HashSet::new())?)
}

fn check_pit(pit: &Pit, at: &str, ids: &mut HashSet<RecordId>) -> Result<(), Fault> {
    pit.check(at)?;
    once(pit.id, at, ids)?;
    check_list(&pit.walk, |step| step.id, at, "walk", ids)?;
    check_list(&pit.layers, |layer| layer.id, at, "layers", ids)?;
    check_list(&pit.rolls, |roll| roll.id, at, "rolls", ids)?;
    check_list(&pit.photos, |photo| photo.id, at, "photos", ids)
}

fn check_list<R: Check>(
    list: &[R],
    id: fn(&R) -> RecordId,
    at: &str,
    name: &str,
    ids: &mut HashSet<RecordId>,
) -> Result<(), Fault> {
    for (place, record) in list.iter().enumerate() {
        let at = format!("{at}.{name}[{place}]");
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

impl Check for Field {
    fn check(&self, at: &str) -> Result<(), Fault> {
        named(&self.name, at)?;
        for (place, [longitude, latitude]) in self.outline.iter().enumerate() {
            on_the_globe(*longitude, *latitude, &format!("{at}.outline[{place}]"))?;
        }
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
        let Some(position) = self.at else { return Ok(()) };
        on_the_globe(position.longitude_deg, position.latitude_deg, &format!("{at}.at"))?;
        match position.accuracy_m {
            Some(metres) if !(metres >= 0.0 && metres.is_finite()) => {
                let wrong = format!("{metres} m is no radius");
                Err(Fault::new(format!("{at}.accuracy_m"), wrong, "give metres, 0 or more"))
            }
            _ => Ok(()),
        }
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
