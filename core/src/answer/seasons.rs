//! A field over the years: what its pits showed in each zone, what was called, what was loosened, and whether it held.
//!
//! Nothing of it is stored. The call of an earlier year is made anew, by the rules of today, on what was noted up to the
//! last pit of that year.

use super::FieldAnswer;
use crate::advice::after_dig::{Lasting, Verdict};
use crate::advice::{covers, recent_loosening, stands_for};
use crate::record::{Call, Condition, Extent, FieldNotes, Pass, Zone};
use chrono::{Datelike, NaiveDate};
use std::collections::BTreeSet;

/// A zone over the years.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ZoneYears {
    /// The zone.
    pub zone: Zone,
    /// Years in which something was dug or done there, the oldest first; two or more.
    pub years: Vec<ZoneYear>,
}

/// What was found and done in a zone in a calendar year.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ZoneYear {
    /// The year.
    pub year: i32,
    /// The call on the pits of that year, before what was done after them; in the last year of the field, as it stands.
    pub call: Option<Call>,
    /// The pit of that year with the worst layer, by its place in the notes; of several the one where it is thickest.
    pub pit: Option<usize>,
    /// How many pits of the zone were dug.
    pub pits: usize,
    /// The loosening: of all of the zone before that of a strip, of several the last.
    pub loosened: Option<Loosened>,
    /// What holes a season on say of a loosening.
    pub held: Option<HeldOn>,
}

/// A loosening.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Loosened {
    /// Tip depth; `None` = not noted.
    pub tip_mm: Option<u32>,
    /// Only a strip was worked.
    pub strip: bool,
    /// What holes of the same season say.
    pub verdict: Option<Verdict>,
}

/// Holes a season on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HeldOn {
    /// Whether the loosening has held.
    pub lasting: Lasting,
    /// Mean depth to firm soil in them; `None` without readings.
    pub firm_mm: Option<u32>,
}

impl FieldAnswer {
    /// The zones that were found harmed or were worked, over the years; empty where the notes tell of one year alone.
    pub fn seasons(&self) -> Vec<ZoneYears> {
        let FieldNotes { field: _, pits, passes, .. } = &self.notes;
        let dug = pits.iter().filter_map(|pit| pit.dug).map(|dug| dug.year());
        let worked = passes.iter().filter_map(|pass| pass.done).map(|done| done.year());
        let later = passes.iter().flat_map(|pass| &pass.after_digs).filter_map(|dig| dig.dug);
        let own = recent_loosening(&self.notes).map(|day| day.year());
        let years: BTreeSet<i32> = dug.chain(worked).chain(later.map(|dug| dug.year())).chain(own).collect();
        let Some(last) = years.last().copied().filter(|_| years.len() > 1) else { return Vec::new() };
        let earlier = years.iter().filter(|year| **year < last);
        let then: Vec<(i32, Self)> = earlier.filter_map(|&year| Some((year, self.in_year(year)?))).collect();
        let call = |zone: Zone, year: i32| {
            let answer = if year == last {
                Some(self)
            } else {
                then.iter().find(|(its, _)| *its == year).map(|(_, answer)| answer)
            };
            answer?.call_of(zone).map(|call| call.call)
        };
        let zones = Zone::ALL.iter().filter(|zone| **zone != Zone::Whole);
        let told = zones.map(|&zone| {
            let of = |&year: &i32| self.zone_year(zone, year);
            let mut all: Vec<ZoneYear> = years.iter().map(of).filter(ZoneYear::says).collect();
            for its in all.iter_mut().filter(|its| its.pits > 0 || its.year == last) {
                its.call = call(zone, its.year);
            }
            ZoneYears { zone, years: all }
        });
        told.filter(|told| told.years.len() > 1 && told.years.iter().any(|year| self.is_of_work(year)))
            .collect()
    }

    /// Returns whether a year tells of harm or of a depth that was worked.
    fn is_of_work(&self, year: &ZoneYear) -> bool {
        let harmed = year.pit.is_some_and(|pit| self.worst(pit).0 >= Some(Condition::Tight));
        harmed || year.held.is_some() || year.loosened.is_some_and(|done| done.tip_mm.is_some())
    }

    /// The field as it stood once the pits of a year were dug, before it was worked for them; `None` without a pit.
    fn in_year(&self, year: i32) -> Option<Self> {
        let dug = self.notes.pits.iter().filter_map(|pit| pit.dug).map(|dug| dug.date_naive());
        let day = dug.filter(|day| day.year() == year).max()?;
        let mut notes = self.notes.clone();
        notes.pits.retain(|pit| pit.dug.is_some_and(|dug| dug.date_naive() <= day));
        notes.passes.retain(|pass| pass.done.is_some_and(|done| done < day));
        for pass in &mut notes.passes {
            pass.after_digs.retain(|dig| dig.dug.is_some_and(|dug| dug.date_naive() <= day));
        }
        notes.field.last_loosened = notes.field.last_loosened.filter(|loosened| *loosened < day);
        Some(Self::after(self, notes, None))
    }

    fn zone_year(&self, zone: Zone, year: i32) -> ZoneYear {
        let FieldNotes { pits, passes, .. } = &self.notes;
        let dug = |index: &usize| {
            let pit = &pits[*index];
            pit.dug.is_some_and(|dug| dug.year() == year) && stands_for(&self.map, pit) == Some(zone)
        };
        let its: Vec<usize> = (0..pits.len()).filter(dug).collect();
        let pit = its.iter().copied().rev().max_by_key(|&index| self.worst(index));
        let covering = || passes.iter().zip(&self.passes).filter(|(pass, _)| covers(pass, zone));
        let in_year = |day: &NaiveDate| day.year() == year;
        let is_strip = |pass: &Pass| pass.extent == Some(Extent::TrialStrip);
        let done = covering().filter(|(pass, _)| pass.done.as_ref().is_some_and(in_year));
        let of_pass = done.max_by_key(|(pass, _)| (!is_strip(pass), pass.done)).map(|(pass, said)| {
            Loosened { tip_mm: pass.tip_mm, strip: is_strip(pass), verdict: said.verdict }
        });
        let own = recent_loosening(&self.notes).filter(in_year);
        let loosened = of_pass.or(own.map(|_| Loosened { tip_mm: None, strip: false, verdict: None }));
        let held = covering().filter_map(|(pass, said)| {
            let later = pass
                .after_digs
                .iter()
                .zip(&said.digs)
                .filter(|(dig, told)| told.season_on && dig.dug.is_some_and(|dug| dug.year() == year));
            let later: Vec<_> = later.collect();
            let readings: Vec<u32> = later.iter().flat_map(|(dig, _)| dig.firm_mm.iter().copied()).collect();
            let sum: u32 = readings.iter().sum();
            let firm_mm = sum.checked_div(u32::try_from(readings.len()).ok()?);
            let lasting = said.held.filter(|_| !later.is_empty())?.lasting;
            Some((pass.done, HeldOn { lasting, firm_mm }))
        });
        let held = held.max_by_key(|(done, _)| *done).map(|(_, held)| held);
        ZoneYear { year, call: None, pit, pits: its.len(), loosened, held }
    }

    /// The worst condition in a pit, and how thick its layers of it are.
    fn worst(&self, pit: usize) -> (Option<Condition>, u32) {
        let layers = &self.reading.pits[pit].layers;
        let worst = layers.iter().map(|layer| layer.condition).max();
        let thick = layers.iter().filter(|layer| Some(layer.condition) == worst);
        (worst, thick.map(|layer| layer.bottom_mm.saturating_sub(layer.top_mm)).sum())
    }
}

impl ZoneYear {
    /// Returns whether anything was dug or done.
    const fn says(&self) -> bool {
        self.pit.is_some() || self.loosened.is_some() || self.held.is_some()
    }
}
