//! The clues of one layer gathered: its signs, and what its place, neighbours, field and the reference pit say.

use super::clue::{Below, Clue, Lies, Since};
use super::face::FaceLayer;
use super::reference;
use crate::record::{ComesAway, FaceMoisture, Field, OrganicMatter, OrganicMatterLevel, Pit, Sign};
use crate::soil::texture::TextureGroup;
use chrono::{Months, NaiveDate};

/// The answer of each clue, `None` = not known; indexed by [`Clue`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Evidence {
    answers: [Option<u8>; Clue::ALL.len()],
    /// Texture group, which some rows of the table depend on.
    pub texture: Option<TextureGroup>,
}

impl Evidence {
    /// Evidence of nothing.
    pub const NONE: Self = Self { answers: [None; Clue::ALL.len()], texture: None };

    /// Answer of a clue, an index into [`Clue::answers`].
    pub fn get(&self, clue: Clue) -> Option<usize> {
        self.answers[clue as usize].map(usize::from)
    }

    /// The same with one clue answered otherwise. A texture answer also selects the rows for that texture.
    #[must_use]
    pub fn with(mut self, clue: Clue, answer: Option<usize>) -> Self {
        self.answers[clue as usize] = answer.map(|answer| answer as u8);
        if clue == Clue::Texture {
            self.texture = answer.and_then(|answer| TextureGroup::ALL.get(answer).copied());
        }
        self
    }

    /// Every clue that is known, with its answer.
    pub fn known(&self) -> impl Iterator<Item = (Clue, usize)> + '_ {
        Clue::ALL.iter().filter_map(|&clue| Some((clue, self.get(clue)?)))
    }
}

/// Organic matter below this is low, and from [`ORGANIC_MATTER_HIGH_PERCENT`] on high, in percent by mass.
/// Our judgement, for arable topsoils.
const ORGANIC_MATTER_LOW_PERCENT: f64 = 2.0;
/// See [`ORGANIC_MATTER_LOW_PERCENT`].
const ORGANIC_MATTER_HIGH_PERCENT: f64 = 4.0;
/// How long a loosening or heavy traffic counts as recent. Our judgement.
const RECENT_MONTHS: u32 = 24;

/// Gathers the clues of a layer.
pub fn gather(
    layers: &[FaceLayer],
    index: usize,
    pit: &Pit,
    field: &Field,
    references: &[Vec<FaceLayer>],
) -> Evidence {
    let said = |layer: &FaceLayer| said_by(layer, pit, field);
    let layer = &said(&layers[index]);
    let mut evidence = Evidence::NONE;
    let mut note = |clue: Clue, answer: Option<usize>| evidence = evidence.with(clue, answer);
    for &sign in Sign::ALL {
        note(sign.into(), layer.signs.get(sign));
    }
    note(Clue::Texture, layer.texture.map(|group| group as usize));
    note(Clue::OrganicMatter, field.organic_matter.map(|matter| level(matter) as usize));
    note(Clue::Place, Some(pit.place as usize));
    note(Clue::Lies, lies(layer, field).map(|lies| lies as usize));
    note(Clue::Below, below(layer, layers.get(index + 1).map(said).as_ref()).map(|below| below as usize));
    note(Clue::Reference, reference::versus(layer, references).map(|versus| versus as usize));
    let dug = pit.dug.map(|time| time.date_naive());
    note(Clue::LastLoosened, since(field.last_loosened, dug).map(|since| since as usize));
    note(Clue::LastTraffic, since(field.last_traffic, dug).map(|since| since as usize));
    evidence
}

/// Frost makes plates down to here, mostly: the top few inches (US extension text; Humboldt University, Berlin).
const FROST_MM: u32 = 100;

/// Returns what a layer says. In a wet face the knife goes in anywhere, and among stones nowhere: its resistance says nothing
/// (too wet or too dry a face biases a reading: European soil visual assessment, JRC; stony soil is judged by the fine
/// earth alone). Plates that frost made are no sign of wheels. Roots and colours stay what they are.
fn said_by(layer: &FaceLayer, pit: &Pit, field: &Field) -> FaceLayer {
    let mut layer = *layer;
    if pit.face == Some(FaceMoisture::Wet) || field.stony == Some(true) {
        layer.signs.resistance = None;
    }
    let plates = layer.signs.comes_away == Some(ComesAway::FlatPlates);
    if plates && field.plates_soft == Some(true) && layer.bottom_mm <= FROST_MM {
        layer.signs.comes_away = None;
    }
    layer
}

/// The level an amount of organic matter counts as.
pub fn level(matter: OrganicMatter) -> OrganicMatterLevel {
    match matter {
        OrganicMatter::Level(level) => level,
        OrganicMatter::Percent(percent) if percent < ORGANIC_MATTER_LOW_PERCENT => OrganicMatterLevel::Low,
        OrganicMatter::Percent(percent) if percent < ORGANIC_MATTER_HIGH_PERCENT => {
            OrganicMatterLevel::Medium
        }
        OrganicMatter::Percent(_) => OrganicMatterLevel::High,
    }
}

/// A pan lies at the tillage depth or as much as a step of the knife below it. Our judgement.
const BELOW_TILLAGE_MM: u32 = 50;

/// Depths that part surface, worked ground and subsoil, in millimetres: usual plough and cultivation depths,
/// common practice, no source.
mod worked {
    /// A layer that ends here belongs to the surface.
    pub const SURFACE_MM: u32 = 100;
    /// A layer that begins below the worked depth lies in the subsoil; this where none is noted.
    pub const DEEPEST_MM: u32 = 300;
}

/// Where a layer lies: by the depth of tillage as noted, else by the usual one. One from the surface down through two
/// thirds of it fills most of the worked depth; a pan that tillage made begins at it, or a step of the knife below.
fn lies(layer: &FaceLayer, field: &Field) -> Option<Lies> {
    let deepest_mm =
        field.tillage_mm.map_or(worked::DEEPEST_MM, |set_mm| set_mm.saturating_add(BELOW_TILLAGE_MM));
    let most_mm = field.tillage_mm.unwrap_or(worked::DEEPEST_MM) * 2 / 3;
    if layer.bottom_mm <= worked::SURFACE_MM {
        Some(Lies::Surface)
    } else if layer.top_mm >= deepest_mm {
        Some(Lies::Subsoil)
    } else if layer.top_mm >= worked::SURFACE_MM {
        Some(Lies::WorkedBand)
    } else if layer.bottom_mm >= most_mm {
        Some(Lies::WholeWorked)
    } else {
        None
    }
}

fn below(layer: &FaceLayer, under: Option<&FaceLayer>) -> Option<Below> {
    let (here, there) = (layer.signs.resistance?, under?.signs.resistance?);
    Some(if there < here { Below::Easier } else { Below::NotEasier })
}

fn since(then: Option<NaiveDate>, now: Option<NaiveDate>) -> Option<Since> {
    let (then, now) = (then?, now?);
    let still_recent = then.checked_add_months(Months::new(RECENT_MONTHS))?;
    (then <= now).then_some(if now < still_recent { Since::Recent } else { Since::LongAgo })
}
