//! One pit as evidence for its zone: which of its layers decides, and whether the pit can be judged at all.

use super::call::What;
use super::regret::{LAYER_CALLS, best, expected, least};
use crate::reading::{KINDS, Kind, LayerReading, PitReading, is_readable};
use crate::record::{Call, Cause, Condition, Pit, RootsSeen};
use crate::soil::texture::TextureGroup;

/// A pit must be this deep before anything is advised from it: a topsoil alone can mislead (published pit methods
/// for the subsoil ask for 40 cm; Ball et al. 2015, value from memory).
pub const DEEP_ENOUGH_MM: u32 = 400;
/// How much deeper to dig where a harmed layer's bottom was not seen: one step of the knife walk.
const ONE_STEP_MM: u32 = 50;
/// Without roots a layer on light soil counts as Pressed from this share of Pressed and Settled. Our judgement.
const CLEARLY_PRESSED: f64 = 0.95;

/// A pit with what it says.
#[derive(Debug, Clone)]
pub struct PitView<'a> {
    /// As noted.
    pub pit: &'a Pit,
    /// As read.
    pub reading: &'a PitReading,
    /// The layer that decides; `None` where the face was not noted.
    pub limiting: Option<Limiting>,
    /// What keeps it from being judged.
    pub barred: Option<What>,
}

/// The layer that decides a pit's call.
#[derive(Debug, Clone, Copy)]
pub struct Limiting {
    /// Index in the reading.
    pub index: usize,
    /// Its call.
    pub call: Call,
    /// The call is to dig again because roots must tell and there were none to see.
    pub needs_roots: bool,
    /// Expected regret of each of [`LAYER_CALLS`].
    pub expected: [f64; LAYER_CALLS.len()],
}

impl<'a> PitView<'a> {
    /// Looks at one pit.
    pub fn of(pit: &'a Pit, reading: &'a PitReading) -> Self {
        let limiting = limiting(&reading.layers);
        let barred = barred(pit, reading, limiting);
        Self { pit, reading, limiting, barred }
    }

    /// The deciding layer, where the pit can be judged.
    pub fn judged(&self) -> Option<(Limiting, &'a LayerReading)> {
        if self.barred.is_some() {
            return None;
        }
        let limiting = self.limiting?;
        Some((limiting, self.reading.layers.get(limiting.index)?))
    }

    /// Bottom of the deepest harmed layer, where the pit can be judged.
    pub fn harmed_bottom_mm(&self) -> Option<u32> {
        self.judged()?;
        harmed_bottom_mm(&self.reading.layers)
    }

    /// Top of that layer, or of the harmed ones that lie on it without a gap.
    pub fn harmed_top_mm(&self) -> Option<u32> {
        let bottom_mm = self.harmed_bottom_mm()?;
        let harmed = self.reading.layers.iter().rev().filter(|layer| is_harmed(layer));
        Some(harmed.fold(
            bottom_mm,
            |top_mm, layer| {
                if layer.bottom_mm == top_mm { layer.top_mm } else { top_mm }
            },
        ))
    }
}

/// Whether a layer is one that a loosening would be for: Pressed, and Tight or Shut.
fn is_harmed(layer: &LayerReading) -> bool {
    (layer.cause == Cause::Pressed && layer.condition >= Condition::Tight)
        || best(&layer.shares) == Call::Loosen
}

fn harmed_bottom_mm(layers: &[LayerReading]) -> Option<u32> {
    layers.iter().filter(|layer| is_harmed(layer)).map(|layer| layer.bottom_mm).max()
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
fn limiting(layers: &[LayerReading]) -> Option<Limiting> {
    let calls = layers.iter().enumerate().map(|(index, layer)| {
        let expected = expected(&layer.shares);
        let call = LAYER_CALLS[least(&expected)];
        let needs_roots = needs_roots(layer, call);
        Limiting { index, call: if needs_roots { Call::DigAgain } else { call }, needs_roots, expected }
    });
    calls.reduce(|one, other| {
        let order = rank(other.call).cmp(&rank(one.call)).then(other.expected[0].total_cmp(&one.expected[0]));
        if order.is_gt() { other } else { one }
    })
}

/// The gates a single pit has to pass, in their order.
fn barred(pit: &Pit, reading: &PitReading, limiting: Option<Limiting>) -> Option<What> {
    if let Some(face) = pit.face.filter(|_| !is_readable(pit)) {
        return Some(What::FaceUnreadable { face });
    }
    let dug_to_mm = reading.dug_to_mm;
    if dug_to_mm < DEEP_ENOUGH_MM {
        return Some(What::TooShallow { dug_to_mm, need_mm: DEEP_ENOUGH_MM });
    }
    let Some(limiting) = limiting else {
        return Some(What::SignsTooFew { top_mm: 0, bottom_mm: dug_to_mm });
    };
    let unseen = harmed_bottom_mm(&reading.layers)
        .filter(|bottom_mm| limiting.call == Call::Loosen && *bottom_mm >= dug_to_mm);
    unseen.map(|bottom_mm| What::TooShallow { dug_to_mm, need_mm: bottom_mm.saturating_add(ONE_STEP_MM) })
}

/// On light soil the roots of the last crop tell pressed from settled (common practice, no source). Where none
/// were left to see, nothing is to be said, unless other signs tell that it is pressed, or either of the two would
/// give the same call.
fn needs_roots(layer: &LayerReading, call: Call) -> bool {
    let light = match layer.texture {
        None | Some(TextureGroup::Sand | TextureGroup::Light | TextureGroup::Silty) => true,
        Some(TextureGroup::Medium | TextureGroup::Heavy) => false,
    };
    let open_question = matches!(call, Call::Loosen | Call::RootsFirst | Call::DigAgain);
    light
        && open_question
        && layer.signs.roots == Some(RootsSeen::NoneToJudge)
        && !clearly_pressed(&layer.shares)
        && best(&as_if_all(&layer.shares, Cause::Settled, Cause::Pressed))
            != best(&as_if_all(&layer.shares, Cause::Pressed, Cause::Settled))
}

/// Whether Settled is as good as ruled out, were the layer Tight or Shut.
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
