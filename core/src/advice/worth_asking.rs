//! Which of the things that can be noted of a field are worth asking for now: those that bear on what is told, found by
//! trying what people usually answer.

use super::belongs::{ACROSS_FROM_PERCENT, WASHES_FROM_PERCENT};
use super::{FieldAdvice, ZoneCall, advise_on};
use crate::place::FieldMap;
use crate::reading::{FieldReading, read_field};
use crate::record::codes::codes;
use crate::record::{Field, FieldNotes, Zone};
use chrono::{Days, NaiveDate};

codes!(
    /// What can be asked of a field as a whole.
    FieldInput {
        /// Depth to which it is tilled every year.
        Tillage = "tillage",
        /// Whether stones stop the knife.
        Stony = "stony",
        /// Whether plates near the surface part at a touch.
        PlatesSoft = "plates_soft",
        /// How steep it is.
        Slope = "slope",
        /// When the next crop is sown.
        NextSown = "next_sown",
        /// What it is.
        NextCrop = "next_crop",
    }
);

codes!(
    /// What an answer can change, the weightiest first.
    BearsOn {
        /// The call of a zone.
        Call = "call",
        /// Its tip depth.
        Tip = "tip",
        /// A caution that bears on what is done now.
        Caution = "caution",
    }
);

/// Something worth asking of a field.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct WorthAsking {
    /// What is asked.
    pub input: FieldInput,
    /// The weightiest that an answer changes.
    pub bears_on: BearsOn,
    /// The zones in which it does.
    pub zones: Vec<Zone>,
}

/// Depths of tillage that are tried, in millimetres: shallow, and ploughed deep. Common practice, no source.
const TILLED_MM: [u32; 3] = [100, 200, 300];
/// Days from today to the next sowing that are tried: soon, in two or three months, next year. Our judgement.
const SOWN_IN_DAYS: [u64; 3] = [14, 45, 300];
/// Crops that are tried: one that stays and roots deep, and one that does neither. Our judgement.
const SOWN: [&str; 2] = ["grass", "onions"];

/// Sets one answer.
type Set = Box<dyn Fn(&mut Field)>;

/// Returns what is worth asking of a field, the weightiest first. `reading` and `map` are those of the same notes; without a day
/// nothing is asked about time.
pub(crate) fn worth_asking(
    notes: &FieldNotes,
    reading: &FieldReading,
    map: &FieldMap,
    today: Option<NaiveDate>,
) -> Vec<WorthAsking> {
    let mut worth: Vec<WorthAsking> = FieldInput::ALL
        .iter()
        .filter_map(|&input| {
            let told: Vec<FieldAdvice> = answers(&notes.field, input, today)
                .iter()
                .map(|set| {
                    let mut tried = notes.clone();
                    set(&mut tried.field);
                    // What is asked about the future changes nothing that was read.
                    let read = is_of_the_face(input).then(|| read_field(&tried));
                    advise_on(&tried, read.as_ref().unwrap_or(reading), map, today).0
                })
                .collect();
            let (bears_on, zones) = differing(&told)?;
            Some(WorthAsking { input, bears_on, zones })
        })
        .collect();
    crate::order::sort_by_key(&mut worth, |worth| (worth.bears_on, worth.input));
    worth
}

/// Returns whether an answer bears on how a face is read.
const fn is_of_the_face(input: FieldInput) -> bool {
    matches!(input, FieldInput::Tillage | FieldInput::Stony | FieldInput::PlatesSoft)
}

/// Returns what people usually answer; none where it has been answered.
fn answers(field: &Field, input: FieldInput, today: Option<NaiveDate>) -> Vec<Set> {
    fn all<T: Copy + 'static>(
        values: &[T],
        open: bool,
        set: impl Fn(&mut Field, T) + Copy + 'static,
    ) -> Vec<Set> {
        let values = values.iter().filter(|_| open);
        values.map(|&value| Box::new(move |field: &mut Field| set(field, value)) as Set).collect()
    }
    match input {
        FieldInput::Tillage => {
            all(&TILLED_MM, field.tillage_mm.is_none(), |field, mm| field.tillage_mm = Some(mm))
        }
        FieldInput::Stony => {
            all(&[false, true], field.stony.is_none(), |field, stony| field.stony = Some(stony))
        }
        FieldInput::PlatesSoft => {
            all(&[false, true], field.plates_soft.is_none(), |field, soft| field.plates_soft = Some(soft))
        }
        FieldInput::Slope => {
            let slopes = [0, ACROSS_FROM_PERCENT, WASHES_FROM_PERCENT];
            all(&slopes, field.slope_percent.is_none(), |field, slope| field.slope_percent = Some(slope))
        }
        FieldInput::NextSown => {
            let Some(today) = today else { return Vec::new() };
            let days: Vec<NaiveDate> =
                SOWN_IN_DAYS.iter().filter_map(|&days| today.checked_add_days(Days::new(days))).collect();
            all(&days, field.next_sown.is_none(), |field, day| field.next_sown = Some(day))
        }
        FieldInput::NextCrop => {
            all(&SOWN, field.next_crop.is_none(), |field, crop| field.next_crop = Some(crop.into()))
        }
    }
}

/// The weightiest in which some of these differ, and in which zones.
fn differing(told: &[FieldAdvice]) -> Option<(BearsOn, Vec<Zone>)> {
    let first = told.first()?;
    let in_zones = |same: fn(&ZoneCall, &ZoneCall) -> bool| -> Vec<Zone> {
        let zones = first.zones.iter().filter(|call| {
            let others = told.iter().flat_map(|advice| &advice.zones).filter(|its| its.zone == call.zone);
            !others.into_iter().all(|other| same(call, other))
        });
        zones.map(|call| call.zone).collect()
    };
    let weighed: [(BearsOn, Vec<Zone>); 3] = [
        (BearsOn::Call, in_zones(|one, other| one.call == other.call)),
        (BearsOn::Tip, in_zones(|one, other| one.tip == other.tip)),
        (BearsOn::Caution, in_zones(|one, other| one.cautions_now() == other.cautions_now())),
    ];
    weighed.into_iter().find(|(_, zones)| !zones.is_empty())
}
