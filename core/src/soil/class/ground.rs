//! Mottles and stones.

use super::{ClassTable, above, from};

const FAO_32: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 32";
const FAO_33: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 33";
const MOTTLE_AMOUNT: &str =
    "USDA-NRCS, Soil Survey Manual, quantity of redoximorphic features (value from memory)";
const NONE: &str = "our judgement: an amount of zero is recorded as none";
const MOTTLE_SIZE: &str = "USDA-NRCS, National Soil Information System, size of redoximorphic features";
const FAO_26: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 26";
const FAO_SIZE: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., sizes of rock fragments";
const FAO_BOULDERS: &str =
    "FAO 2006, Guidelines for Soil Description, 4th ed., sizes of rock fragments (value from memory)";
const NSSH: &str = "USDA-NRCS, National Soil Survey Handbook, 618.90";

pub(super) const TABLES: &[ClassTable] = &[
    ClassTable {
        id: "mottle_amount_fao",
        what: "share of a face taken by mottles",
        unit: "percent",
        rows: &[
            from(0.0, "none", FAO_32),
            above(0.0, "very_few", FAO_32),
            from(2.0, "few", FAO_32),
            from(5.0, "common", FAO_32),
            from(15.0, "many", FAO_32),
            above(40.0, "abundant", FAO_32),
        ],
        end: 100.0,
    },
    ClassTable {
        id: "mottle_amount_usda",
        what: "share of a face taken by mottles",
        unit: "percent",
        rows: &[
            from(0.0, "none", NONE),
            above(0.0, "few", MOTTLE_AMOUNT),
            from(2.0, "common", MOTTLE_AMOUNT),
            from(20.0, "many", MOTTLE_AMOUNT),
        ],
        end: 100.0,
    },
    ClassTable {
        id: "mottle_size_fao",
        what: "size of mottles",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", FAO_33),
            from(2.0, "fine", FAO_33),
            from(6.0, "medium", FAO_33),
            above(20.0, "coarse", FAO_33),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "mottle_size_usda",
        what: "size of mottles",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", MOTTLE_SIZE),
            from(0.25, "fine", MOTTLE_SIZE),
            from(2.0, "medium", MOTTLE_SIZE),
            from(5.0, "coarse", MOTTLE_SIZE),
            from(20.0, "very_coarse", MOTTLE_SIZE),
            from(76.0, "extremely_coarse", MOTTLE_SIZE),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "fragment_amount_fao",
        what: "share of the volume taken by rock fragments",
        unit: "percent",
        rows: &[
            from(0.0, "none", FAO_26),
            above(0.0, "very_few", FAO_26),
            from(2.0, "few", FAO_26),
            from(5.0, "common", FAO_26),
            from(15.0, "many", FAO_26),
            from(40.0, "abundant", FAO_26),
            above(80.0, "dominant", FAO_26),
        ],
        end: 100.0,
    },
    ClassTable {
        id: "fragment_size_fao",
        what: "size of rock fragments",
        unit: "mm",
        rows: &[
            from(2.0, "fine_gravel", FAO_SIZE),
            from(6.0, "medium_gravel", FAO_SIZE),
            from(20.0, "coarse_gravel", FAO_SIZE),
            from(60.0, "stones", FAO_SIZE),
            from(200.0, "boulders", FAO_BOULDERS),
            above(600.0, "large_boulders", FAO_BOULDERS),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "fragment_amount_usda",
        what: "share of the volume taken by rock fragments",
        unit: "percent",
        rows: &[
            from(0.0, "no_modifier", NSSH),
            from(15.0, "plain", NSSH),
            from(35.0, "very", NSSH),
            from(60.0, "extremely", NSSH),
            from(90.0, "in_lieu", NSSH),
        ],
        end: 100.0,
    },
];
