//! Dry bulk density and what is made of it.

use super::{ClassTable, above, from};

const JONES: &str =
    "Jones, Spoor & Thomasson 2003, Soil Tillage Res. 73:131-143, packing density (value from memory)";
const FORST: &str = "Ld classes of the German soil mapping guide as quoted by forst-rast.de";
const KA4: &str = "German soil mapping guide, 4th ed. (KA4, 1994), dry bulk density, as quoted by HU Berlin";

pub(super) const TABLES: &[ClassTable] = &[
    ClassTable {
        id: "packing_density_clay",
        what: "packing density, bulk density + 0.009 per percent clay",
        unit: "g/cm3",
        rows: &[from(0.0, "low", JONES), from(1.40, "medium", JONES), above(1.75, "high", JONES)],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "packing_density_clay_silt",
        what: "packing density, bulk density + 0.005 per percent clay + 0.001 per percent silt",
        unit: "g/cm3",
        rows: &[
            from(0.0, "class_1", FORST),
            from(1.30, "class_2", FORST),
            from(1.55, "class_3", FORST),
            from(1.75, "class_4", FORST),
            from(1.95, "class_5", FORST),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "dry_density_ka4",
        what: "dry bulk density",
        unit: "g/cm3",
        rows: &[
            from(0.0, "very_low", KA4),
            from(1.25, "low", KA4),
            from(1.45, "medium", KA4),
            from(1.65, "high", KA4),
            above(1.85, "very_high", KA4),
        ],
        end: f64::INFINITY,
    },
];
