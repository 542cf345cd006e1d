//! Handing everything over and taking in: the other devices, what is missing of them, and values of which several stand.

mod known;
mod personal;
mod show;
mod versions;

pub use known::{Checkup, Partners};
pub(super) use personal::show_personal;
pub(super) use show::{not_carried_note, show, show_one};
pub(super) use versions::{local, marked, show_regretted, show_versions, versions_line};

use super::bar::gone;
use super::{Act, Done, Edit, Place, World};
use crate::error::Fault;
use crate::merge::DeviceId;
use crate::record::RecordId;
use crate::store::Cell;
use serde::{Deserialize, Serialize};

/// What can be tapped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PartnersAct {
    /// Something about another device is decided.
    Decide(Decided),
    /// Of a value of which several versions stand, this one holds.
    Settle {
        /// The record.
        record: RecordId,
        /// Its cell, by number.
        cell: u16,
        /// The version, by its place in the list, the latest first.
        version: u16,
    },
    /// A record that was deleted while somebody went on with it comes back.
    BringBack(RecordId),
    /// It stays deleted.
    StayDeleted(RecordId),
    /// A name or a position goes out of every copy.
    TakeOut {
        /// The record.
        record: RecordId,
        /// Its cell, by number.
        cell: u16,
    },
}

/// What is decided of another device; nothing of it is an edit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Decided {
    /// What this device signs is taken in from now on.
    Accept(DeviceId),
    /// Nothing more of this device is taken in.
    Refuse(DeviceId),
    /// What one device says in the name of another is believed, as far as it is here.
    Believe {
        /// Who says it.
        signer: DeviceId,
        /// In whose name.
        device: DeviceId,
    },
    /// What waits for a word or an update is thrown away.
    EmptyWaiting,
}

impl From<PartnersAct> for Act {
    fn from(act: PartnersAct) -> Self {
        Self::Partners(act)
    }
}

pub(super) fn tap(place: Place, act: PartnersAct, world: &World) -> Result<Done, Fault> {
    let words = world.words;
    let gone = || gone(words);
    Ok(match act {
        // What comes of it is told once it is done.
        PartnersAct::Decide(decided) => Done { decided: Some(decided), ..Done::go(Place::Partners) },
        PartnersAct::Settle { record, cell, version } => {
            let cell = Cell::from_number(cell);
            let found = world.partners.versions.iter().find(|(_, of)| (of.record, of.cell) == (record, cell));
            let (belongs, of) = found.ok_or_else(gone)?;
            let version = of.versions.get(usize::from(version)).ok_or_else(gone)?;
            let told = words.settled_on(&words.belongs(belongs), cell, &version.value);
            let edit = Edit::Settle { record, cell, value: version.value.clone() };
            Done { told, ..Done::save(edit, versions::after_one(place, world)) }
        }
        PartnersAct::TakeOut { record, cell } => {
            let cell = Cell::from_number(cell);
            world
                .partners
                .personal
                .iter()
                .find(|(_, of)| (of.record, of.cell) == (record, cell))
                .ok_or_else(gone)?;
            // What comes of it is told once it is done.
            Done { take_out: Some((record, cell)), ..Done::go(Place::Personal { number: None }) }
        }
        PartnersAct::BringBack(record) | PartnersAct::StayDeleted(record) => {
            let found = world.partners.regretted.iter().find(|(_, of)| of.record == record);
            let (belongs, _) = found.ok_or_else(gone)?;
            let back = matches!(act, PartnersAct::BringBack(_));
            let told = words.regret_settled(&words.belongs(belongs), back);
            let edit = if back { Edit::BringBack { record } } else { Edit::StayDeleted { record } };
            Done { told, ..Done::save(edit, place) }
        }
    })
}
