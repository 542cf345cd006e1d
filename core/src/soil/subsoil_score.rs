//! The subsoil flow chart of Ball and others 2015, Soil Tillage
//! Res. 148:85-96: five looks, each of which leaves some of five columns. A cross-reference only.

use crate::error::Fault;
use crate::record::codes::codes;

codes!(
    /// The five looks, in the chart's order.
    Look {
        Mottling = "mottling",
        Strength = "strength",
        Porosity = "porosity",
        Roots = "roots",
        Aggregates = "aggregates",
    }
);

codes!(
    /// What is seen at a look.
    Seen {
        MottlesNoneOrFaint = "mottles_none_or_faint",
        MottlesWellDefined = "mottles_well_defined",
        FragmentsEasily = "fragments_easily",
        HardToPenetrate = "hard_to_penetrate",
        WedgesHardToExtract = "wedges_hard_to_extract",
        PoresThroughout = "pores_throughout",
        PoresWithDenserZones = "pores_with_denser_zones",
        PoresOutsideAggregates = "pores_outside_aggregates",
        /// Fewer than 5 in 100 cm².
        PoresVeryFew = "pores_very_few",
        PoresNone = "pores_none",
        RootsThroughout = "roots_throughout",
        RootsInCracks = "roots_in_cracks",
        RootsDistorted = "roots_distorted",
        RootsNone = "roots_none",
        RoundedFriable = "rounded_friable",
        SubangularSlightlyRough = "subangular_slightly_rough",
        LargeAngularRough = "large_angular_rough",
        /// Also single grain.
        DenseMix = "dense_mix",
        SmoothDense = "smooth_dense",
    }
);

/// Look and columns of each [`Seen`], in its order. Source of every row: the chart of 2015.
const CHART: [(Look, u8, u8); Seen::ALL.len()] = [
    (Look::Mottling, 1, 3),
    (Look::Mottling, 4, 5),
    (Look::Strength, 1, 2),
    (Look::Strength, 3, 3),
    (Look::Strength, 4, 5),
    (Look::Porosity, 1, 1),
    (Look::Porosity, 2, 2),
    (Look::Porosity, 3, 3),
    (Look::Porosity, 4, 4),
    (Look::Porosity, 5, 5),
    (Look::Roots, 1, 2),
    (Look::Roots, 3, 3),
    (Look::Roots, 4, 4),
    (Look::Roots, 5, 5),
    (Look::Aggregates, 1, 1),
    (Look::Aggregates, 2, 2),
    (Look::Aggregates, 3, 3),
    (Look::Aggregates, 4, 4),
    (Look::Aggregates, 5, 5),
];

impl Seen {
    /// The look it answers.
    pub const fn look(self) -> Look {
        CHART[self as usize].0
    }
}

/// The columns that everything seen leaves, lowest and highest; the same where they leave one. 1 is best, 5
/// worst.
///
/// # Errors
/// Nothing seen, two answers to one look, or looks that lead to different columns.
pub fn score(seen: &[Seen]) -> Result<(u8, u8), Fault> {
    if seen.is_empty() {
        return Err(Fault::new("", "nothing was looked at", "give what was seen at one look at least"));
    }
    let (mut low, mut high) = (1, 5);
    for (index, &answer) in seen.iter().enumerate() {
        if let Some(before) = seen[..index].iter().find(|before| before.look() == answer.look()) {
            let wrong = format!("both {} and {} are given", before.code(), answer.code());
            return Err(Fault::new(answer.look().code(), wrong, "give one answer a look"));
        }
        let (_, from, to) = CHART[answer as usize];
        (low, high) = (low.max(from), high.min(to));
        if low > high {
            let wrong = format!("{} leads away from the column the looks before lead to", answer.code());
            return Err(Fault::new(
                answer.look().code(),
                wrong,
                "look again, or give no score for this layer",
            ));
        }
    }
    Ok((low, high))
}
