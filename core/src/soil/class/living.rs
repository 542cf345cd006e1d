//! Roots, pores, worms.

use super::{ClassTable, above, from};

const FAO_80: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 80";
const ISO: &str = "ISO 25177, as quoted by the New Zealand Soil Description Handbook, draft 3rd ed.";
const NASIS_ROOTS: &str = "USDA-NRCS, National Soil Information System, roots";
const NONE: &str = "our judgement: a count of zero is recorded as none";
const FAO_60: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 60";
const FAO_62: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 62";
const FAO_63: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 63";
const NSSH: &str = "USDA-NRCS, National Soil Survey Handbook, 618.51";
const FAO_2008: &str =
    "Shepherd, Stagnari, Pisante & Benites 2008, FAO field guide for annual crops (value from memory)";
const SHEPHERD: &str = "Shepherd 2000, field guide for cropping (value from memory)";
const GWCT: &str = "Game & Wildlife Conservation Trust, farmer clusters: mean of 5 blocks";
const BELOW: &str = "our judgement: the source names only what reaches its marks";

/// The unit area of USDA is 1 cm² for what is under 2 mm, 1 dm² up to 10 mm, 1 m² above.
pub(super) const TABLES: &[ClassTable] = &[
    ClassTable {
        id: "root_count_fine_fao",
        what: "number of roots thinner than 2 mm",
        unit: "per dm2",
        rows: &[
            from(0.0, "none", FAO_80),
            above(0.0, "very_few", FAO_80),
            from(20.0, "few", FAO_80),
            from(50.0, "common", FAO_80),
            above(200.0, "many", FAO_80),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "root_count_thick_fao",
        what: "number of roots thicker than 2 mm",
        unit: "per dm2",
        rows: &[
            from(0.0, "none", FAO_80),
            above(0.0, "very_few", FAO_80),
            from(2.0, "few", FAO_80),
            from(5.0, "common", FAO_80),
            above(20.0, "many", FAO_80),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "root_size_fao",
        what: "thickness of roots",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", ISO),
            from(0.5, "fine", ISO),
            from(2.0, "medium", ISO),
            above(5.0, "coarse", ISO),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "root_size_usda",
        what: "thickness of roots",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", NASIS_ROOTS),
            from(1.0, "fine", NASIS_ROOTS),
            from(2.0, "medium", NASIS_ROOTS),
            from(5.0, "coarse", NASIS_ROOTS),
            from(10.0, "very_coarse", NASIS_ROOTS),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "root_quantity_usda",
        what: "number of roots of one size",
        unit: "per unit area",
        rows: &[
            from(0.0, "none", NONE),
            above(0.0, "few", NASIS_ROOTS),
            from(1.0, "common", NASIS_ROOTS),
            from(5.0, "many", NASIS_ROOTS),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "root_quantity_split_usda",
        what: "number of roots of one size, few divided",
        unit: "per unit area",
        rows: &[
            from(0.0, "none", NONE),
            above(0.0, "very_few", NASIS_ROOTS),
            from(0.2, "moderately_few", NASIS_ROOTS),
            from(1.0, "common", NASIS_ROOTS),
            from(5.0, "many", NASIS_ROOTS),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "pore_count_fine_fao",
        what: "number of voids narrower than 2 mm",
        unit: "per dm2",
        rows: &[
            from(0.0, "none", FAO_63),
            above(0.0, "very_few", FAO_63),
            from(20.0, "few", FAO_63),
            from(50.0, "common", FAO_63),
            above(200.0, "many", FAO_63),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "pore_count_wide_fao",
        what: "number of voids wider than 2 mm",
        unit: "per dm2",
        rows: &[
            from(0.0, "none", FAO_63),
            above(0.0, "very_few", FAO_63),
            from(2.0, "few", FAO_63),
            from(5.0, "common", FAO_63),
            above(20.0, "many", FAO_63),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "pore_size_fao",
        what: "diameter of voids",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", FAO_62),
            from(0.5, "fine", FAO_62),
            from(2.0, "medium", FAO_62),
            from(5.0, "coarse", FAO_62),
            from(20.0, "very_coarse", FAO_62),
        ],
        end: 50.0,
    },
    ClassTable {
        id: "porosity_by_area_fao",
        what: "share of a face taken by voids",
        unit: "percent",
        rows: &[
            from(0.0, "very_low", FAO_60),
            from(2.0, "low", FAO_60),
            from(5.0, "medium", FAO_60),
            from(15.0, "high", FAO_60),
            above(40.0, "very_high", FAO_60),
        ],
        end: 100.0,
    },
    ClassTable {
        id: "pore_size_usda",
        what: "diameter of pores",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", NSSH),
            from(1.0, "fine", NSSH),
            from(2.0, "medium", NSSH),
            from(5.0, "coarse", NSSH),
            from(10.0, "very_coarse", NSSH),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "pore_quantity_usda",
        what: "number of pores of one size",
        unit: "per unit area",
        rows: &[
            from(0.0, "none", NONE),
            above(0.0, "few", NSSH),
            from(1.0, "common", NSSH),
            from(5.0, "many", NSSH),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "pore_continuity_usda",
        what: "vertical length of pores wider than 0.5 mm",
        unit: "mm",
        rows: &[from(0.0, "low", NSSH), from(10.0, "moderate", NSSH), from(100.0, "high", NSSH)],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "worms_fao_2008",
        what: "earthworms in a cube of 200 mm",
        unit: "per cube",
        rows: &[from(0.0, "poor", FAO_2008), from(15.0, "moderate", FAO_2008), above(30.0, "good", FAO_2008)],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "worms_shepherd_2000",
        what: "earthworms in a cube of 200 mm",
        unit: "per cube",
        rows: &[from(0.0, "poor", SHEPHERD), from(4.0, "moderate", SHEPHERD), above(8.0, "good", SHEPHERD)],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "worms_farmer_clusters",
        what: "earthworms in a block of 200 by 200 by 300 mm, mean of 5",
        unit: "per block",
        rows: &[from(0.0, "below_good", BELOW), from(10.0, "good", GWCT), from(15.0, "excellent", GWCT)],
        end: f64::INFINITY,
    },
];
