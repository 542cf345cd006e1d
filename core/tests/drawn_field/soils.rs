//! The soils that fields are drawn from: half of them sound, each with the calls that its source gives.

use pitface_core::record::{Call, FaceMoisture, PlaceKind, RollOutcome};
use pitface_core::soil::texture::TextureGroup;

/// A soil in words.
#[derive(Clone, Copy)]
pub struct Soil {
    pub name: &'static str,
    /// Calls that are right or could be defended.
    pub calls: &'static [Call],
    /// Whether nothing is wrong with it.
    pub sound: bool,
    pub textures: &'static [TextureGroup],
    pub organic_matter_percent: f64,
    pub crop: &'static str,
    pub drains_mm: Option<u32>,
    pub place: PlaceKind,
    pub face: FaceMoisture,
    /// Layers of the reference pit; none = no reference was dug.
    pub reference: &'static [&'static str],
    /// Faces of the pits of concern, one of which each pit has.
    pub faces: &'static [&'static [&'static str]],
    /// Roll at the surface and below the last layer but one.
    pub roll: Option<(RollOutcome, RollOutcome)>,
    pub source: &'static str,
}

const TOP: &str = "60-120 crumbs slips_in|firm_push many many|some through none earthy";
const BODY: &str = "120-180 rounded_lumps slips_in|firm_push some|many some|many through none earthy|none";
const DEEP: &str = "180-240 rounded_lumps firm_push some some|many through|in_cracks none none";
const PAN: &str = "50-110 flat_plates hard_push|stops none|few cut_off|none sideways|stopped none|few none";
const GOOD: &[&str] = &[TOP, BODY, DEEP];

const PLAIN: Soil = Soil {
    name: "plain",
    calls: &[Call::LeaveIt],
    sound: true,
    textures: &[TextureGroup::Medium, TextureGroup::Light],
    organic_matter_percent: 2.8,
    crop: "winter wheat",
    drains_mm: None,
    place: PlaceKind::Open,
    face: FaceMoisture::Moist,
    reference: GOOD,
    faces: &[GOOD],
    roll: None,
    source: "",
};

/// Sound soils, and as many that are not.
const HALF: usize = 10;

const SOUND: [Soil; HALF] = [
    Soil { name: "loam in good heart", source: "Ball et al. 2007, classes 1 and 2", ..PLAIN },
    Soil {
        name: "firm, rooted, with worm holes",
        faces: &[&[
            TOP,
            "120-180 rounded_lumps|sharp_blocks firm_push|hard_push some|few some through|in_cracks none none|earthy",
            DEEP,
        ]],
        source: "middle class: no published method acts on it",
        ..PLAIN
    },
    Soil {
        name: "old plough sole that roots pass",
        faces: &[&[
            TOP,
            BODY,
            "30-60 sharp_blocks|rounded_lumps hard_push some some through none none",
            DEEP,
        ]],
        source: "middle class: roots and channels pass",
        ..PLAIN
    },
    Soil {
        name: "loess, massive below",
        textures: &[TextureGroup::Silty],
        reference: &[TOP, BODY, "200-260 one_mass slips_in|firm_push some many|some through none none"],
        faces: &[&[TOP, BODY, "200-260 one_mass slips_in|firm_push some many|some through none none"]],
        source: "Saxon state office: massive is normal for loess subsoil",
        ..PLAIN
    },
    Soil {
        name: "loose sand without channels",
        textures: &[TextureGroup::Sand],
        organic_matter_percent: 1.6,
        reference: &[
            TOP,
            "180-220 loose_grains slips_in some some|none through none none",
            "200-260 loose_grains slips_in some none through none none",
        ],
        faces: &[&[
            TOP,
            "180-220 loose_grains|rounded_lumps slips_in some some|none through none none",
            "200-260 loose_grains slips_in|firm_push some none through none none",
        ]],
        source: "Saxon state office: single grain is normal for sand",
        ..PLAIN
    },
    Soil {
        name: "clay in blocks, roots in the cracks",
        textures: &[TextureGroup::Heavy],
        organic_matter_percent: 4.0,
        reference: &[
            TOP,
            "140-180 sharp_blocks firm_push|hard_push some|few some in_cracks|through none none",
            "220-280 sharp_blocks hard_push|firm_push few some in_cracks none|few none",
        ],
        faces: &[&[
            TOP,
            "140-180 sharp_blocks firm_push|hard_push some|few some in_cracks|through none none",
            "220-280 sharp_blocks hard_push|firm_push few some in_cracks none|few none",
        ]],
        source: "prisms and blocks with roots down the faces are sound; clay cracks by itself",
        ..PLAIN
    },
    Soil {
        name: "dense till below, the same everywhere",
        reference: &[
            TOP,
            BODY,
            "60-80 rounded_lumps firm_push some some through none none",
            "200-260 one_mass|sharp_blocks hard_push few some|none in_cracks few none",
        ],
        faces: &[&[
            TOP,
            BODY,
            "60-80 rounded_lumps firm_push some some through none none",
            "200-260 one_mass|sharp_blocks hard_push few some|none in_cracks few none",
        ]],
        source: "Schneider & Don 2019: dense ground is natural at 2.7 to 1; the same in the reference",
        ..PLAIN
    },
    Soil {
        name: "old colours in rooted ground",
        reference: &[TOP, BODY, "200-260 rounded_lumps firm_push some some|many through clear none"],
        faces: &[&[TOP, BODY, "200-260 rounded_lumps firm_push some some|many through clear none"]],
        source: "WRB 2022: relict colours stay when the water has gone",
        ..PLAIN
    },
    Soil {
        name: "black fen, soft below",
        textures: &[TextureGroup::Medium, TextureGroup::Silty],
        organic_matter_percent: 22.0,
        reference: &[TOP, TOP, BODY, "180-240 one_mass slips_in some some through none|few none"],
        faces: &[&[TOP, TOP, BODY, "180-240 one_mass slips_in some some through none|few none"]],
        source: "drained peat: water and crops, no steel",
        ..PLAIN
    },
    Soil {
        name: "sound headland, a little firmer",
        place: PlaceKind::Headland,
        faces: &[&[
            "60-100 rounded_lumps firm_push some some through none earthy",
            "140-180 rounded_lumps|sharp_blocks firm_push some some through|in_cracks none none",
            DEEP,
        ]],
        source: "middle class on the headland",
        ..PLAIN
    },
];

const FIT: Option<(RollOutcome, RollOutcome)> = Some((RollOutcome::Crumbles, RollOutcome::ShortLengths));
const HARMED: [Soil; HALF] = [
    Soil {
        name: "plough pan, fit",
        calls: &[Call::Loosen],
        sound: false,
        faces: &[&[TOP, BODY, PAN, DEEP]],
        roll: FIT,
        source: "Saxon state office: plates, roots, channels; Tasmanian guide: rolls in short lengths",
        ..PLAIN
    },
    Soil {
        name: "plough pan, a thread at the tip",
        calls: &[Call::Wait],
        sound: false,
        faces: &[&[TOP, BODY, PAN, DEEP]],
        roll: Some((RollOutcome::ShortLengths, RollOutcome::Thread)),
        source: "Tasmanian guide: a thread is too wet",
        ..PLAIN
    },
    Soil {
        name: "pan deep in clay",
        calls: &[Call::RootsFirst, Call::LeaveIt],
        sound: false,
        textures: &[TextureGroup::Heavy],
        faces: &[&[TOP, "200-240 sharp_blocks firm_push some some through none none", PAN, DEEP]],
        roll: FIT,
        source: "Tasmanian guide: over 300 mm in clay mostly does not pay",
        ..PLAIN
    },
    Soil {
        name: "slumped silt, poor in organic matter",
        calls: &[Call::RootsFirst, Call::LeaveIt],
        sound: false,
        textures: &[TextureGroup::Silty, TextureGroup::Light],
        organic_matter_percent: 1.4,
        reference: &["250-300 one_mass firm_push few|some some through none none", DEEP],
        faces: &[&["250-300 one_mass firm_push few|some some through none none", DEEP]],
        source: "Daniells 2012: the whole tilled layer sets, roots and organic matter mend it",
        ..PLAIN
    },
    Soil {
        name: "pressed headland",
        calls: &[Call::Loosen],
        sound: false,
        place: PlaceKind::Headland,
        faces: &[&[
            "60-100 rounded_lumps firm_push some some through none none",
            "100-150 sharp_blocks hard_push few|some some|none in_cracks none none",
            PAN,
            DEEP,
        ]],
        roll: FIT,
        source: "Emmet-Booth et al. 2019: headlands worse; Saxon state office on the signs",
        ..PLAIN
    },
    Soil {
        name: "drowned, the good place dry",
        calls: &[Call::DrainFirst],
        sound: false,
        face: FaceMoisture::Wet,
        faces: &[&[
            TOP,
            "140-180 one_mass slips_in none|few none stopped|sideways clear sour",
            "200-260 one_mass slips_in none none stopped clear sour|none",
        ]],
        source: "WRB 2022: grey down through the profile; AHDB: drains before steel",
        ..PLAIN
    },
    Soil {
        name: "cemented layer",
        calls: &[Call::AskSpecialist],
        sound: false,
        faces: &[&[TOP, BODY, "60-100 one_mass stops none|few none stopped none none holds", DEEP]],
        source: "FAO 2006, table 72: what is cemented does not slake",
        ..PLAIN
    },
    Soil {
        name: "rain crust over sound soil",
        calls: &[Call::LeaveIt, Call::RootsFirst],
        sound: false,
        textures: &[TextureGroup::Silty, TextureGroup::Light],
        faces: &[&[
            "10-30 flat_plates|one_mass hard_push few|none none through|sideways none none",
            BODY,
            BODY,
            DEEP,
        ]],
        source: "AHDB: a crust is broken before drilling, never with a deep tine",
        ..PLAIN
    },
    Soil {
        name: "trodden ley",
        calls: &[Call::RootsFirst],
        sound: false,
        organic_matter_percent: 5.0,
        crop: "grazed ryegrass ley",
        faces: &[&[
            "25-45 rounded_lumps firm_push some some through none earthy",
            "55-90 flat_plates|sharp_blocks hard_push few|none cut_off|some sideways few none",
            BODY,
            DEEP,
        ]],
        source: "AHDB healthy grassland; Drewry 2006: rest mends the top 10 to 15 cm",
        ..PLAIN
    },
    Soil {
        name: "pan in the field, no reference",
        calls: &[Call::DigAgain],
        sound: false,
        reference: &[],
        faces: &[&[TOP, BODY, PAN, DEEP]],
        roll: FIT,
        source: "SRUC method page: a good and a bad place",
        ..PLAIN
    },
];

/// Every soil, sound ones first.
pub static SOILS: [Soil; 2 * HALF] = {
    let mut all = [PLAIN; 2 * HALF];
    let mut at = 0;
    while at < HALF {
        all[at] = SOUND[at];
        all[at + HALF] = HARMED[at];
        at += 1;
    }
    all
};
