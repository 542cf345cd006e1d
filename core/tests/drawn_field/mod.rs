//! Fields drawn at random from descriptions of soil, with the call that published rules give. No figure here comes from
//! the table of clues: a layer is described in the words of its source, with the answers a walker may give beside each
//! other, and every answer may be missing or one step off.

pub mod soils;

use chrono::{DateTime, FixedOffset};
use pitface_core::record::{
    Call, FaceMoisture, FieldNotes, Layer, OrganicMatter, Pit, PlaceKind, RecordId, Roll, RollOutcome, Sign,
    Signs, TextureNote, Unknown,
};
use soils::Soil;

/// Chance that a sign was not looked at, and that it was read one step off, by a walker of ordinary care.
const MISSING: f64 = 0.10;
/// See [`MISSING`].
const ONE_OFF: f64 = 0.08;

/// A seeded source of chance (splitmix64).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15))
    }

    /// Evenly from 0 to 1.
    pub fn unit(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn below(&mut self, end: usize) -> usize {
        (self.unit() * end as f64) as usize
    }

    fn of<'a, T>(&mut self, list: &'a [T]) -> &'a T {
        &list[self.below(list.len())]
    }
}

/// A field with its truth.
pub struct Drawn {
    pub notes: FieldNotes,
    pub soil: &'static Soil,
}

impl Drawn {
    /// Returns whether a call of the zone with the concern is right, or could be defended.
    pub fn is_right(&self, call: Call) -> bool {
        self.soil.calls.contains(&call)
    }

    /// Returns whether it would do harm: steel where none is wanted.
    pub fn is_harmful(&self, call: Call) -> bool {
        call == Call::Loosen && !self.is_right(call)
    }
}

/// Draws a field of a soil: a reference unless the soil has none, and two to four pits of concern. `careless` multiplies
/// how often a sign is missing or off: 1 for ordinary care.
pub fn draw(soil: &'static Soil, careless: f64, chance: &mut Chance) -> Drawn {
    let mut ids = 0;
    let mut id = || {
        ids += 1;
        RecordId::new(ids, [3; 10])
    };
    let mut notes = FieldNotes::new(pitface_core::record::Field::new(id(), soil.name), Vec::new());
    let field = &mut notes.field;
    field.texture = Some(TextureNote::Group(*chance.of(soil.textures)));
    field.organic_matter = Some(OrganicMatter::Percent(soil.organic_matter_percent));
    field.crop_now = Some(soil.crop.into());
    field.drains_mm = soil.drains_mm;
    let dug: Option<DateTime<FixedOffset>> = DateTime::parse_from_rfc3339("2025-04-03T09:30:00+01:00").ok();
    let mut pit = |place: PlaceKind, face: &[&str], chance: &mut Chance| {
        let mut top_mm = 0;
        let layers: Vec<Layer> = face
            .iter()
            .map(|text| {
                let (thick_mm, signs) = layer(text, careless, chance);
                let layer = Layer {
                    id: id(),
                    top_mm,
                    bottom_mm: top_mm + thick_mm,
                    signs,
                    texture: None,
                    remark: None,
                    unknown: Unknown::new(),
                };
                top_mm += thick_mm;
                layer
            })
            .collect();
        Pit {
            dug,
            by: Some(format!("walker {}", layers[0].id)),
            dug_to_mm: Some(top_mm),
            face: Some(soil.face),
            layers,
            ..Pit::new(id(), place)
        }
    };
    if !soil.reference.is_empty() {
        let mut reference = pit(PlaceKind::Reference, soil.reference, chance);
        // Water comes and goes; the good place was dug on the same day, and is only dry where it drains.
        reference.face = Some(if soil.face == FaceMoisture::Wet { FaceMoisture::Moist } else { soil.face });
        notes.pits.push(reference);
    }
    for _ in 0..2 + chance.below(3) {
        let face = chance.of(soil.faces);
        let mut concern = pit(soil.place, face, chance);
        let rolls = soil.roll.iter().flat_map(|&(surface, tip)| {
            let tip_mm = concern.layers.iter().rev().nth(1).map_or(300, |layer| layer.bottom_mm + 30);
            [(20, surface), (tip_mm, tip)]
        });
        let rolls: Vec<(u32, RollOutcome)> = rolls.collect();
        concern.rolls = rolls
            .into_iter()
            .map(|(depth_mm, roll)| Roll { id: concern.id, depth_mm, roll, unknown: Unknown::new() })
            .collect();
        notes.pits.push(concern);
    }
    Drawn { notes, soil }
}

/// A layer by its words: thickness range, then how it comes away, resistance, pores, channels, roots, patches, smell;
/// `|` parts answers that are as likely, `-` stands for one that was not looked at.
fn layer(text: &str, careless: f64, chance: &mut Chance) -> (u32, Signs) {
    let mut words = text.split_whitespace();
    let thick = words
        .next()
        .and_then(|range| range.split_once('-'))
        .map(|(lo, hi)| (lo.parse::<u32>(), hi.parse::<u32>()));
    let Some((Ok(lo), Ok(hi))) = thick else { panic!("no thickness: {text}") };
    let thick_mm = lo + (chance.unit() * f64::from(hi - lo + 1)) as u32;
    let mut signs = Signs::default();
    for (&sign, word) in Sign::ALL.iter().zip(words) {
        let answers: Vec<&str> = word.split('|').collect();
        let word = *chance.of(&answers);
        if word == "-" || chance.unit() < MISSING * careless {
            continue;
        }
        let answer = sign.answers().iter().position(|code| *code == word);
        let Some(mut answer) = answer else { panic!("{} {word}", sign.code()) };
        if chance.unit() < ONE_OFF * careless {
            let up = chance.unit() < 0.5;
            // The order of the answers is that of the list; the fourth channel and the fifth root are no step.
            let last = match sign {
                Sign::Channels => 2,
                Sign::Roots => 3,
                _ => sign.answers().len() - 1,
            };
            if answer <= last {
                answer = if up { (answer + 1).min(last) } else { answer.saturating_sub(1) };
            }
        }
        signs.set(sign, Some(answer));
    }
    (thick_mm, signs)
}
