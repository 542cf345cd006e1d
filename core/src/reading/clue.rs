//! Everything that can speak for or against a kind of layer: the signs looked at, and what follows from
//! the layer's place, its neighbours, the reference pit and the field.

use crate::record::codes::codes;
use crate::record::{OrganicMatterLevel, PlaceKind, Sign};
use crate::soil::texture::TextureGroup;

codes!(
    /// One clue. The first eight are the [`Sign`]s, in their order.
    Clue {
        ComesAway = "comes_away",
        Resistance = "resistance",
        Pores = "pores",
        Channels = "channels",
        Roots = "roots",
        Patches = "patches",
        Smell = "smell",
        ClodInWater = "clod_in_water",
        /// Texture group of the layer.
        Texture = "texture",
        /// Organic matter of the field's topsoil.
        OrganicMatter = "organic_matter",
        /// Kind of place.
        Place = "place",
        /// Where in the profile the layer lies.
        Lies = "lies",
        /// Resistance of the layer just below, against this one.
        Below = "below",
        /// The same depth in the reference pit, against this layer.
        Reference = "reference",
        /// Time since the last loosening.
        LastLoosened = "last_loosened",
        /// Time since heavy wheels last ran here.
        LastTraffic = "last_traffic",
    }
);
codes!(
    /// Where a layer lies.
    Lies {
        /// Ends within the upper 100 mm.
        Surface = "surface",
        /// From the surface (top within 100 mm) through most of the worked depth.
        WholeWorked = "whole_worked",
        /// A band at or just below the worked depth.
        WorkedBand = "worked_band",
        /// Below any worked depth.
        Subsoil = "subsoil",
    }
);
codes!(
    /// The layer just below.
    Below {
        /// The knife goes in easier.
        Easier = "easier",
        /// No difference, or harder.
        NotEasier = "not_easier",
    }
);
codes!(
    /// This layer against the same depth of the reference pit.
    Versus {
        /// Two classes worse for roots than in the reference, and more.
        FarWorse = "far_worse",
        /// Worse for roots than in the reference, by less.
        Worse = "worse",
        /// It reads the same, or better.
        Same = "same",
    }
);
codes!(
    /// Time since, at the day of the pit.
    Since {
        /// Within two years.
        Recent = "recent",
        /// Longer ago.
        LongAgo = "long_ago",
    }
);

impl Clue {
    /// The codes of the answers this clue can have.
    pub const fn answers(self) -> &'static [&'static str] {
        match self {
            Self::ComesAway => Sign::ComesAway.answers(),
            Self::Resistance => Sign::Resistance.answers(),
            Self::Pores => Sign::Pores.answers(),
            Self::Channels => Sign::Channels.answers(),
            Self::Roots => Sign::Roots.answers(),
            Self::Patches => Sign::Patches.answers(),
            Self::Smell => Sign::Smell.answers(),
            Self::ClodInWater => Sign::ClodInWater.answers(),
            Self::Texture => TextureGroup::CODES,
            Self::OrganicMatter => OrganicMatterLevel::CODES,
            Self::Place => PlaceKind::CODES,
            Self::Lies => Lies::CODES,
            Self::Below => Below::CODES,
            Self::Reference => Versus::CODES,
            Self::LastLoosened | Self::LastTraffic => Since::CODES,
        }
    }
}

impl From<Sign> for Clue {
    fn from(sign: Sign) -> Self {
        Self::ALL[sign as usize]
    }
}
