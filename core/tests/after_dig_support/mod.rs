//! One pass with one hole behind it, in a few words.

use chrono::{Days, NaiveDate};
use pitface_core::advice::after_dig::{DigAdvice, PassAdvice, look_behind};
use pitface_core::advice::{CLEARED_SHARE, Stance, What, Why, advise, tip_depth};
use pitface_core::reading::{Kind, read_field};
use pitface_core::record::{
    AfterDig, Cause, Clods, Condition, Extent, FeetSeen, Field, FieldNotes, Lift, Machine, Pass, PlatesLeft,
    Profile, RecordId, Roll, RollOutcome, Smear, SpeedRange, TextureNote, Unknown, Wings,
};
use pitface_core::soil::texture::TextureGroup;
use serde::Deserialize;

/// The machine of a case.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct GivenMachine {
    legs: u32,
    spacing_mm: u32,
    foot_width_mm: u32,
    wings_mm: Option<u32>,
    speed_kmh: (f64, f64),
}

/// What is noted of a pass and its hole. Codes as in notes files.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Given {
    pub tip_mm: Option<u32>,
    pub layer_bottom_mm: Option<u32>,
    pub layer_top_mm: Option<u32>,
    pub controlled_traffic: Option<bool>,
    pub firm_mm: Vec<u32>,
    pub slots_mm: Vec<u32>,
    pub profile: Option<String>,
    pub smear: Option<String>,
    pub lift: Option<String>,
    pub clods: Option<String>,
    pub subsoil_up: Option<bool>,
    pub plates: Option<String>,
    pub feet: Option<String>,
    pub old_slots: Option<bool>,
    pub roll: Option<String>,
    pub speed_kmh: Option<f64>,
    pub sand: bool,
    pub driven_on_after: Option<u64>,
    pub machine: Option<GivenMachine>,
}

pub fn id(number: u64) -> RecordId {
    RecordId::new(number, [6; 10])
}

pub fn day() -> NaiveDate {
    NaiveDate::from_ymd_opt(2025, 9, 1).expect("a day")
}

fn code<T>(from: fn(&str) -> Option<T>, word: Option<&String>) -> Option<T> {
    word.map(|word| from(word).unwrap_or_else(|| panic!("no such code: {word}")))
}

impl Given {
    pub fn machine(&self) -> Option<Machine> {
        self.machine.as_ref().map(|given| Machine {
            id: id(1),
            name: "legs".into(),
            legs: given.legs,
            spacing_mm: given.spacing_mm,
            foot_width_mm: given.foot_width_mm,
            wings: given.wings_mm.map(|width_mm| Wings { width_mm, lift_mm: None }),
            leading: None,
            working_width_mm: None,
            speed: Some(SpeedRange { lo_kmh: given.speed_kmh.0, hi_kmh: given.speed_kmh.1 }),
            reach_mm: None,
            tractor: None,
            tractor_mass_kg: None,
            unknown: Unknown::new(),
        })
    }

    pub fn dig(&self) -> AfterDig {
        AfterDig {
            firm_mm: self.firm_mm.clone(),
            slots_mm: self.slots_mm.clone(),
            profile: code(Profile::from_code, self.profile.as_ref()),
            smear: code(Smear::from_code, self.smear.as_ref()),
            lift: code(Lift::from_code, self.lift.as_ref()),
            clods: code(Clods::from_code, self.clods.as_ref()),
            subsoil_up: self.subsoil_up,
            plates: code(PlatesLeft::from_code, self.plates.as_ref()),
            feet: code(FeetSeen::from_code, self.feet.as_ref()),
            old_slots: self.old_slots,
            ..AfterDig::new(id(3))
        }
    }

    pub fn pass(&self) -> Pass {
        let depth_mm = self.tip_mm.unwrap_or(0);
        let roll = code(RollOutcome::from_code, self.roll.as_ref());
        Pass {
            machine: self.machine.as_ref().map(|_| id(1)),
            extent: Some(Extent::TrialStrip),
            done: Some(day()),
            tip_mm: self.tip_mm,
            speed_kmh: self.speed_kmh,
            driven_on: self.driven_on_after.and_then(|days| day().checked_add_days(Days::new(days))),
            rolls: roll
                .map(|roll| Roll { id: id(4), depth_mm, roll, unknown: Unknown::new() })
                .into_iter()
                .collect(),
            after_digs: vec![self.dig()],
            ..Pass::new(id(2))
        }
    }

    pub fn notes(&self) -> FieldNotes {
        let mut field = Field::new(id(9), "Long Sedge");
        field.texture = self.sand.then_some(TextureNote::Group(TextureGroup::Sand));
        field.controlled_traffic = self.controlled_traffic;
        let mut notes = FieldNotes::new(field, Vec::new());
        notes.machines = self.machine().into_iter().collect();
        notes.passes = vec![self.pass()];
        notes
    }
}

/// Returns what is told of every pass of some notes, with a layer of the whole field down to this depth.
pub fn behind(notes: &FieldNotes, layer_bottom_mm: Option<u32>) -> Vec<PassAdvice> {
    behind_layer(notes, None, layer_bottom_mm)
}

/// The same where the layer's top may be known.
pub fn behind_layer(
    notes: &FieldNotes,
    layer_top_mm: Option<u32>,
    layer_bottom_mm: Option<u32>,
) -> Vec<PassAdvice> {
    let reading = read_field(notes);
    let mut advice = advise(notes, &reading);
    if let Some(bottom_mm) = layer_bottom_mm {
        advice.whole.tip = tip_depth(&[bottom_mm], CLEARED_SHARE);
        advice.whole.reasons.extend(layer_top_mm.map(|top_mm| {
            let kind = Kind { condition: Condition::Shut, cause: Cause::Pressed };
            let what = What::Layer { pit: 1, top_mm, bottom_mm, kind, share: 0.9, reasons: Vec::new() };
            Why { stance: Stance::For, what }
        }));
    }
    look_behind(notes, &reading, &advice)
}

/// The one pass of a case.
pub fn told(given: &Given) -> PassAdvice {
    behind_layer(&given.notes(), given.layer_top_mm, given.layer_bottom_mm).remove(0)
}

/// Its one hole.
pub fn hole(given: &Given) -> DigAdvice {
    told(given).digs.remove(0)
}
