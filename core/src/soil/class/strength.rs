//! What force soil withstands.

use super::{ClassTable, above, from};

const NASIS: &str = "USDA-NRCS, National Soil Information System, rupture resistance, blocklike specimen";
const NASIS_PENETRATION: &str = "USDA-NRCS, National Soil Information System, penetration resistance";
const NASIS_PLASTICITY: &str = "USDA-NRCS, National Soil Information System, plasticity, and New Zealand Soil Description Handbook, draft 3rd ed.";
const NZ: &str = "New Zealand Soil Description Handbook, draft 3rd ed.";
const NZ_GAP: &str =
    "New Zealand Soil Description Handbook, draft 3rd ed.: 3100 to 4000; our judgement for the gap from 3000";

/// What takes 3 J or more (very rigid, indurated) is not told by force; what gives no specimen is loose.
pub(super) const TABLES: &[ClassTable] = &[
    ClassTable {
        id: "rupture_force_moist_usda",
        what: "force that breaks a moist 25 to 30 mm cube",
        unit: "N",
        rows: &[
            from(0.0, "very_friable", NASIS),
            from(8.0, "friable", NASIS),
            from(20.0, "firm", NASIS),
            from(40.0, "very_firm", NASIS),
            from(80.0, "extremely_firm", NASIS),
            from(160.0, "slightly_rigid", NASIS),
            from(800.0, "rigid", NASIS),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "rupture_force_dry_usda",
        what: "force that breaks a dry 25 to 30 mm cube",
        unit: "N",
        rows: &[
            from(0.0, "soft", NASIS),
            from(8.0, "slightly_hard", NASIS),
            from(20.0, "moderately_hard", NASIS),
            from(40.0, "hard", NASIS),
            from(80.0, "very_hard", NASIS),
            from(160.0, "extremely_hard", NASIS),
            from(800.0, "rigid", NASIS),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "rupture_force_cemented_usda",
        what: "force that breaks an air-dry 25 to 30 mm cube after an hour in water",
        unit: "N",
        rows: &[
            from(0.0, "noncoherent", NASIS),
            from(8.0, "extremely_weakly", NASIS),
            from(20.0, "very_weakly", NASIS),
            from(40.0, "weakly", NASIS),
            from(80.0, "moderately", NASIS),
            from(160.0, "strongly", NASIS),
            from(800.0, "very_strongly", NASIS),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "rupture_force_nz",
        what: "force that breaks a 30 mm cube",
        unit: "N",
        rows: &[
            from(0.0, "very_weak", NZ),
            from(8.0, "weak", NZ),
            from(20.0, "slightly_firm", NZ),
            from(40.0, "firm", NZ),
            from(75.0, "very_firm", NZ),
            from(150.0, "hard", NZ),
            above(800.0, "very_hard", NZ),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "penetration_usda",
        what: "penetration resistance",
        unit: "MPa",
        rows: &[
            from(0.0, "extremely_low", NASIS_PENETRATION),
            from(0.01, "very_low", NASIS_PENETRATION),
            from(0.1, "low", NASIS_PENETRATION),
            from(1.0, "moderate", NASIS_PENETRATION),
            from(2.0, "high", NASIS_PENETRATION),
            from(4.0, "very_high", NASIS_PENETRATION),
            from(8.0, "extremely_high", NASIS_PENETRATION),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "penetration_nz",
        what: "penetration resistance, flat 6 mm tip, near field capacity",
        unit: "kPa",
        rows: &[
            from(0.0, "class_1", NZ),
            from(500.0, "class_2", NZ),
            from(1000.0, "class_3", NZ),
            from(1500.0, "class_4", NZ),
            from(2200.0, "class_5", NZ),
            from(3000.0, "class_6", NZ_GAP),
            above(4000.0, "class_7", NZ),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "plasticity_usda_nz",
        what: "thickness of the thinnest 40 mm long roll that carries itself",
        unit: "mm",
        rows: &[
            from(0.0, "very_plastic", NASIS_PLASTICITY),
            above(2.0, "moderately_plastic", NASIS_PLASTICITY),
            above(4.0, "slightly_plastic", NASIS_PLASTICITY),
            above(6.0, "nonplastic", NASIS_PLASTICITY),
        ],
        end: f64::INFINITY,
    },
];
