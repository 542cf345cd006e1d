//! Structure units, boundaries between layers, cracks and seals.

use super::{ClassTable, above, from};

const FAO_50: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 50; USDA-NRCS, National Soil Information System";
const NZ: &str = "New Zealand Soil Description Handbook, draft 3rd ed.";
const FAO_24: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 24";
const NASIS_BOUNDARY: &str = "USDA-NRCS, National Soil Information System, boundary distinctness";
const FAO_SEAL: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., table 20";
const FAO_CRACK: &str = "FAO 2006, Guidelines for Soil Description, 4th ed., surface cracks";

pub(super) const TABLES: &[ClassTable] = &[
    ClassTable {
        id: "structure_size_granular",
        what: "size of granular units",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", FAO_50),
            from(1.0, "fine", FAO_50),
            from(2.0, "medium", FAO_50),
            from(5.0, "coarse", FAO_50),
            from(10.0, "very_coarse", FAO_50),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "structure_size_platy",
        what: "thickness of plates",
        unit: "mm",
        rows: &[
            from(0.0, "very_thin", FAO_50),
            from(1.0, "thin", FAO_50),
            from(2.0, "medium", FAO_50),
            from(5.0, "thick", FAO_50),
            from(10.0, "very_thick", FAO_50),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "structure_size_prismatic",
        what: "width of prisms, columns and wedges",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", FAO_50),
            from(10.0, "fine", FAO_50),
            from(20.0, "medium", FAO_50),
            from(50.0, "coarse", FAO_50),
            from(100.0, "very_coarse", FAO_50),
            from(500.0, "extremely_coarse", FAO_50),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "structure_size_blocky",
        what: "size of blocks",
        unit: "mm",
        rows: &[
            from(0.0, "very_fine", FAO_50),
            from(5.0, "fine", FAO_50),
            from(10.0, "medium", FAO_50),
            from(20.0, "coarse", FAO_50),
            from(50.0, "very_coarse", FAO_50),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "structure_grade_nz",
        what: "share of the material in structure units",
        unit: "percent",
        rows: &[
            from(0.0, "structureless", NZ),
            from(15.0, "weak", NZ),
            from(25.0, "moderate", NZ),
            above(75.0, "strong", NZ),
        ],
        end: 100.0,
    },
    ClassTable {
        id: "boundary_fao",
        what: "thickness of the transition between two layers",
        unit: "mm",
        rows: &[
            from(0.0, "abrupt", FAO_24),
            from(20.0, "clear", FAO_24),
            from(50.0, "gradual", FAO_24),
            above(150.0, "diffuse", FAO_24),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "boundary_usda",
        what: "thickness of the transition between two layers",
        unit: "mm",
        rows: &[
            from(0.0, "very_abrupt", NASIS_BOUNDARY),
            from(5.0, "abrupt", NASIS_BOUNDARY),
            from(20.0, "clear", NASIS_BOUNDARY),
            from(50.0, "gradual", NASIS_BOUNDARY),
            from(150.0, "diffuse", NASIS_BOUNDARY),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "crack_width_fao",
        what: "width of cracks at the surface",
        unit: "mm",
        rows: &[
            from(0.0, "fine", FAO_CRACK),
            from(10.0, "medium", FAO_CRACK),
            from(20.0, "wide", FAO_CRACK),
            from(50.0, "very_wide", FAO_CRACK),
            above(100.0, "extremely_wide", FAO_CRACK),
        ],
        end: f64::INFINITY,
    },
    ClassTable {
        id: "surface_seal_fao",
        what: "thickness of the surface seal",
        unit: "mm",
        rows: &[
            from(0.0, "none", FAO_SEAL),
            above(0.0, "thin", FAO_SEAL),
            from(2.0, "medium", FAO_SEAL),
            from(5.0, "thick", FAO_SEAL),
            above(20.0, "very_thick", FAO_SEAL),
        ],
        end: f64::INFINITY,
    },
];
