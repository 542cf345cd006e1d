//! One pit as evidence for its zone: which of its layers decides, and whether the pit can be judged at all.

use super::call::What;
use super::regret::{
    LAYER_CALLS, REGRET, REGRET_WITHOUT_STEEL, RegretTable, expected_by, least, least_doing,
};
use super::{steel, water};
use crate::reading::{
    CLASH_DECIBANS, Clue, KINDS, Kind, LayerReading, PitReading, Table, camps, conflict, is_readable,
};
use crate::record::{Call, Cause, Condition, FaceMoisture, Field, Pit, RootsSeen};
use crate::soil::texture::TextureGroup;

/// A pit must be this deep before anything is advised from it: a topsoil alone can mislead (published pit methods
/// for the subsoil ask for 40 cm; Ball et al. 2015, value from memory).
pub const DEEP_ENOUGH_MM: u32 = 400;
/// Where a harmed layer was found and ends well above, a hole this deep will do (FAS Scotland 2024; ADAS: 30 to 40 cm).
const DEEP_ENOUGH_BELOW_HARM_MM: u32 = 300;
/// How much of the ground under a harmed layer must be seen then. Our judgement.
const SEEN_BELOW_HARM_MM: u32 = 150;
/// How much deeper to dig where a harmed layer's bottom was not seen: one step of the knife walk.
const ONE_STEP_MM: u32 = 50;
/// Without roots a layer on light soil counts as Pressed from this share of Pressed and Settled. Our judgement.
const CLEARLY_PRESSED: f64 = 0.95;

/// The signs that tell how a layer is: without one of them there are too few. Our judgement; colours and smell tell of
/// water, a piece in water of cement.
pub const TELLING: [Clue; 5] = [Clue::ComesAway, Clue::Resistance, Clue::Pores, Clue::Channels, Clue::Roots];

/// A pit with what it says.
#[derive(Debug, Clone)]
pub struct PitView<'a> {
    /// As noted.
    pub pit: &'a Pit,
    /// As read.
    pub reading: &'a PitReading,
    /// The layer that decides; `None` where the face was not noted.
    pub limiting: Option<Limiting>,
    /// Bottom of the deepest layer that a loosening would be for.
    harmed_bottom_mm: Option<u32>,
    /// Water that stands through the profile.
    pub water: Option<What>,
    /// What keeps it from being judged.
    pub barred: Option<What>,
}

/// The layer that decides a pit's call.
#[derive(Debug, Clone)]
pub struct Limiting {
    /// Index in the reading.
    pub index: usize,
    /// Its call.
    pub call: Call,
    /// The call is to dig again because roots must tell and there were none to see.
    pub needs_roots: bool,
    /// Expected regret of each of [`LAYER_CALLS`].
    pub expected: [f64; LAYER_CALLS.len()],
    /// Why no tine is for this layer; `None` where one may be.
    pub no_steel: Option<What>,
    /// Depth near which the layer ends, and beyond which its call would be another.
    pub hangs_on_mm: Option<u32>,
    /// The call rests on the layer being dense by nature: were it pressed, it would be another.
    pub rests_on_nature: bool,
}

impl Limiting {
    /// Returns what it would be best to do on what was seen, were there no more to see.
    pub fn doing(&self) -> Call {
        if self.needs_roots { Call::DigAgain } else { LAYER_CALLS[least_doing(&self.expected)] }
    }

    /// The regret table that holds for the layer.
    pub fn table(&self) -> &'static RegretTable {
        table_for(self.no_steel.as_ref())
    }
}

impl<'a> PitView<'a> {
    /// Looks at one pit of a field.
    pub fn of(pit: &'a Pit, reading: &'a PitReading, field: &Field) -> Self {
        let limiting = limiting(&reading.layers, field);
        let harmed_bottom_mm = harmed_bottom_mm(&reading.layers, field);
        let water = water::stands_through(reading);
        let mut view = Self { pit, reading, limiting, harmed_bottom_mm, water, barred: None };
        view.barred = view.barred();
        view
    }

    /// The deciding layer, where the pit can be judged.
    pub fn judged(&self) -> Option<(&Limiting, &'a LayerReading)> {
        if self.barred.is_some() {
            return None;
        }
        let limiting = self.limiting.as_ref()?;
        Some((limiting, self.reading.layers.get(limiting.index)?))
    }

    /// Bottom of the deepest harmed layer, where the pit can be judged.
    pub fn harmed_bottom_mm(&self) -> Option<u32> {
        self.judged()?;
        self.harmed_bottom_mm
    }

    /// Top of that layer, or of the pressed ones that lie on it without a gap.
    pub fn harmed_top_mm(&self) -> Option<u32> {
        let bottom_mm = self.harmed_bottom_mm()?;
        let pressed = self.reading.layers.iter().rev().filter(|layer| is_pressed(layer));
        Some(pressed.fold(
            bottom_mm,
            |top_mm, layer| {
                if layer.bottom_mm == top_mm { layer.top_mm } else { top_mm }
            },
        ))
    }

    /// Returns whether its signs clash.
    pub fn clashes(&self) -> bool {
        matches!(self.barred, Some(What::SignsClash { .. }))
    }

    /// The gates a single pit has to pass, in their order.
    fn barred(&self) -> Option<What> {
        let dug_to_mm = self.reading.dug_to_mm;
        let call = self.limiting.as_ref().map(|limiting| limiting.call);
        if let Some(face) = self.pit.face.filter(|_| !is_readable(self.pit)) {
            // A wet face still shows plates and roots that turn; it does not show that a layer is sound.
            let shows_harm = face == FaceMoisture::Wet && call == Some(Call::Loosen);
            if !shows_harm {
                return Some(What::FaceUnreadable { face });
            }
        }
        if call.is_none() {
            return Some(What::SignsTooFew { top_mm: 0, bottom_mm: dug_to_mm, missing: TELLING.to_vec() });
        }
        let ends_above = |bottom_mm: u32| {
            dug_to_mm >= DEEP_ENOUGH_BELOW_HARM_MM.max(bottom_mm.saturating_add(SEEN_BELOW_HARM_MM))
        };
        let found_mm =
            self.reading.layers.iter().filter(|layer| is_pressed(layer)).map(|layer| layer.bottom_mm);
        if dug_to_mm < DEEP_ENOUGH_MM && !found_mm.max().is_some_and(ends_above) {
            return Some(What::TooShallow { dug_to_mm, need_mm: DEEP_ENOUGH_MM });
        }
        let unseen =
            self.harmed_bottom_mm.filter(|bottom_mm| call == Some(Call::Loosen) && *bottom_mm >= dug_to_mm);
        unseen
            .map(|bottom_mm| What::TooShallow { dug_to_mm, need_mm: bottom_mm.saturating_add(ONE_STEP_MM) })
            .or_else(|| clash(&self.reading.layers))
    }
}

/// The uppermost layer whose signs clash.
fn clash(layers: &[LayerReading]) -> Option<What> {
    let table = Table::standard();
    let layer = layers.iter().find(|layer| conflict(&layer.evidence, table) >= CLASH_DECIBANS)?;
    let LayerReading { top_mm, bottom_mm, .. } = *layer;
    Some(What::SignsClash { top_mm, bottom_mm, signs: camps(&layer.evidence, table) })
}

fn table_for(no_steel: Option<&What>) -> &'static RegretTable {
    if no_steel.is_some() { &REGRET_WITHOUT_STEEL } else { &REGRET }
}

/// The regret table for one layer of a field: whether a tine may be for it.
pub fn regrets_of(layer: &LayerReading, field: &Field) -> &'static RegretTable {
    table_for(steel::ruled_out(layer, field).as_ref())
}

fn best_by(table: &RegretTable, shares: &[f64; KINDS.len()]) -> Call {
    LAYER_CALLS[least(&expected_by(table, shares))]
}

/// Returns whether a layer is Pressed, and Tight or Shut.
fn is_pressed(layer: &LayerReading) -> bool {
    let doing = LAYER_CALLS[least_doing(&expected_by(&REGRET, &layer.shares))];
    layer.condition >= Condition::Tight && (layer.cause == Cause::Pressed || doing == Call::Loosen)
        || best_by(&REGRET, &layer.shares) == Call::Loosen
}

/// Returns whether a layer is one that a loosening would be for: pressed, and not ruled out for a tine.
fn is_harmed(layer: &LayerReading, field: &Field) -> bool {
    is_pressed(layer) && steel::ruled_out(layer, field).is_none()
}

fn harmed_bottom_mm(layers: &[LayerReading], field: &Field) -> Option<u32> {
    layers.iter().filter(|layer| is_harmed(layer, field)).map(|layer| layer.bottom_mm).max()
}

/// How much a layer's call weighs in its pit. What steel cannot mend stands above all; a clear case for loosening
/// stands though another layer is unclear; an unclear layer stands above what roots mend.
fn rank(call: Call) -> u8 {
    match call {
        Call::AskSpecialist => 4,
        Call::Loosen => 3,
        Call::RootsFirst => 1,
        Call::LeaveIt => 0,
        Call::DigAgain | Call::Wait | Call::DrainFirst => 2,
    }
}

/// The layer whose call ranks highest; of equal ones the one worst to leave, then the uppermost.
fn limiting(layers: &[LayerReading], field: &Field) -> Option<Limiting> {
    let calls = layers.iter().enumerate().map(|(index, layer)| {
        let no_steel = steel::ruled_out(layer, field);
        let table = table_for(no_steel.as_ref());
        let expected = expected_by(table, &layer.shares);
        let call = LAYER_CALLS[least(&expected)];
        let needs_roots = needs_roots(layer, call, table);
        let call = if needs_roots { Call::DigAgain } else { call };
        let rests_on_nature = best_by(table, &if_pressed(&layer.shares)) != best_by(table, &layer.shares);
        let hangs_on_mm = steel::limit_near(layer, field)
            .filter(|_| best_by(&REGRET, &layer.shares) != best_by(&REGRET_WITHOUT_STEEL, &layer.shares));
        Limiting { index, call, needs_roots, expected, no_steel, hangs_on_mm, rests_on_nature }
    });
    calls.reduce(|one, other| {
        let order = rank(other.call).cmp(&rank(one.call)).then(other.expected[0].total_cmp(&one.expected[0]));
        if order.is_gt() { other } else { one }
    })
}

/// On light soil the roots of the last crop tell pressed from settled (common practice, no source). Where none
/// were left to see, nothing is to be said, unless other signs tell that it is pressed, or either of the two would
/// give the same call.
fn needs_roots(layer: &LayerReading, call: Call, table: &RegretTable) -> bool {
    let light = match layer.texture {
        None | Some(TextureGroup::Sand | TextureGroup::Light | TextureGroup::Silty) => true,
        Some(TextureGroup::Medium | TextureGroup::Heavy) => false,
    };
    let open_question = matches!(call, Call::Loosen | Call::RootsFirst | Call::DigAgain);
    light
        && open_question
        && layer.signs.roots == Some(RootsSeen::NoneToJudge)
        && !clearly_pressed(&layer.shares)
        && best_by(table, &as_if_all(&layer.shares, Cause::Settled, Cause::Pressed))
            != best_by(table, &as_if_all(&layer.shares, Cause::Pressed, Cause::Settled))
}

/// Returns whether Settled is as good as ruled out, were the layer Tight or Shut.
fn clearly_pressed(shares: &[f64; KINDS.len()]) -> bool {
    let of = |cause: Cause| -> f64 {
        let kinds = KINDS.iter().zip(shares);
        kinds
            .filter(|(kind, _)| kind.cause == cause && kind.condition >= Condition::Tight)
            .map(|(_, share)| share)
            .sum()
    };
    let (pressed, settled) = (of(Cause::Pressed), of(Cause::Settled));
    pressed >= CLEARLY_PRESSED * (pressed + settled)
}

/// The shares with what is Tight or Shut by nature taken for pressed.
fn if_pressed(shares: &[f64; KINDS.len()]) -> [f64; KINDS.len()] {
    let pressed = as_if_all(shares, Cause::Natural, Cause::Pressed);
    std::array::from_fn(
        |kind| {
            if KINDS[kind].condition >= Condition::Tight { pressed[kind] } else { shares[kind] }
        },
    )
}

/// The shares with all that stands on one cause put on another, condition by condition.
fn as_if_all(shares: &[f64; KINDS.len()], from: Cause, to: Cause) -> [f64; KINDS.len()] {
    std::array::from_fn(|kind| {
        let Kind { condition, cause } = KINDS[kind];
        let other = KINDS.iter().position(|other| other.condition == condition && other.cause == from);
        if cause == from {
            0.0
        } else if cause == to {
            shares[kind] + other.map_or(0.0, |other| shares[other])
        } else {
            shares[kind]
        }
    })
}
