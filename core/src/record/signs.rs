//! The signs looked for in a layer: the typed record, and each sign by name and answer for rules that go
//! over all of them.

use super::codes::codes;
use super::{ChannelsSeen, ClodInWater, ComesAway, Patches, PoresSeen, Resistance, RootsSeen, Smell};

codes!(
    /// A sign that can be looked at in a layer.
    Sign {
        ComesAway = "comes_away",
        Resistance = "resistance",
        Pores = "pores",
        Channels = "channels",
        Roots = "roots",
        Patches = "patches",
        Smell = "smell",
        ClodInWater = "clod_in_water",
    }
);

/// What was seen in one layer; `None` = not looked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct Signs {
    /// How the soil comes away.
    pub comes_away: Option<ComesAway>,
    /// What the knife meets.
    pub resistance: Option<Resistance>,
    /// Pores on a broken face.
    pub pores: Option<PoresSeen>,
    /// Worm and old root channels.
    pub channels: Option<ChannelsSeen>,
    /// What the roots do.
    pub roots: Option<RootsSeen>,
    /// Rust or grey patches.
    pub patches: Option<Patches>,
    /// Smell.
    pub smell: Option<Smell>,
    /// An air-dry piece in water.
    pub clod_in_water: Option<ClodInWater>,
}

/// Goes over the signs once, so that name, type and place stand in one list.
macro_rules! each_sign {
    ($($sign:ident => $field:ident: $list:ident,)+) => {
        impl Sign {
            /// The codes of the answers this sign can have.
            pub const fn answers(self) -> &'static [&'static str] {
                match self { $(Self::$sign => $list::CODES,)+ }
            }
        }
        impl Signs {
            /// Index into [`Sign::answers`] of what was seen.
            pub fn get(&self, sign: Sign) -> Option<usize> {
                match sign { $(Sign::$sign => self.$field.map(|value| value as usize),)+ }
            }
            /// Sets a sign by the index of its answer; an index past the list, or `None`, makes it "not looked".
            pub fn set(&mut self, sign: Sign, answer: Option<usize>) {
                match sign { $(Sign::$sign => {
                    self.$field = answer.and_then(|index| $list::ALL.get(index).copied());
                })+ }
            }
        }
    };
}
each_sign! {
    ComesAway => comes_away: ComesAway,
    Resistance => resistance: Resistance,
    Pores => pores: PoresSeen,
    Channels => channels: ChannelsSeen,
    Roots => roots: RootsSeen,
    Patches => patches: Patches,
    Smell => smell: Smell,
    ClodInWater => clod_in_water: ClodInWater,
}

impl Signs {
    /// These signs, with whatever `over` has looked at in place of them.
    #[must_use]
    pub fn overlaid(mut self, over: &Self) -> Self {
        for &sign in Sign::ALL {
            if let Some(answer) = over.get(sign) {
                self.set(sign, Some(answer));
            }
        }
        self
    }
}
