//! How deep crops root in open soil, and what a pan cuts off.

/// A crop of the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rooting {
    /// Plain names it goes by; the first is its own.
    pub names: &'static [&'static str],
    /// Depth it roots to where nothing stops it.
    pub depth_mm: u32,
    /// Where the depth comes from.
    pub source: &'static str,
}

const FAO_56: &str =
    "Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, table 22, middle of the range";

const fn crop(names: &'static [&'static str], depth_mm: u32) -> Rooting {
    Rooting { names, depth_mm, source: FAO_56 }
}

/// The crops with a known rooting depth.
pub const CROPS: &[Rooting] = &[
    crop(&["wheat"], 1250),
    crop(&["winter grain", "winter grains", "winter cereal", "winter cereals"], 1650),
    crop(&["barley"], 1250),
    crop(&["oats", "oat"], 1250),
    crop(&["maize", "grain maize"], 1350),
    crop(&["silage maize", "forage maize", "fodder maize"], 1000),
    crop(&["sugar beet", "beet", "beets"], 950),
    crop(&["table beet", "beetroot", "red beet"], 800),
    crop(&["potato", "potatoes"], 500),
    crop(&["peas", "pea"], 800),
    crop(&["onion", "onions"], 450),
    crop(&["carrot", "carrots"], 750),
    crop(&["cabbage", "cabbages"], 650),
    crop(&["flax", "linseed"], 1250),
    crop(&["alfalfa", "lucerne"], 1750),
    crop(&["pasture", "grass", "ley", "grassland"], 1000),
    crop(&["sunflower", "sunflowers"], 1150),
    crop(&["radish"], 400),
];

/// The crop meant by plain words: the one with the longest name of which every word is there, in any order
/// (`winter wheat` is wheat, `maize for silage` is silage maize). `None` for a crop that is not on the list.
pub fn of(words: &str) -> Option<&'static Rooting> {
    let words = words.to_lowercase();
    let has = |wanted: &str| words.split(|c: char| !c.is_alphanumeric()).any(|word| word == wanted);
    let named = CROPS.iter().flat_map(|crop| crop.names.iter().map(move |name| (*name, crop)));
    named
        .filter(|(name, _)| name.split(' ').all(has))
        .max_by_key(|(name, _)| name.split(' ').count())
        .map(|(_, crop)| crop)
}

/// Whether plain words name grass or another standing ley: what cattle tread and no plough mends.
pub fn is_grass(words: &str) -> bool {
    /// Names of what is grazed or mown for years. Common practice, no source.
    const STANDING: [&str; 9] =
        ["grass", "grassland", "ley", "pasture", "meadow", "lucerne", "alfalfa", "clover", "sward"];
    let words = words.to_lowercase();
    words
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| STANDING.contains(&word) || word.ends_with("grass"))
}

impl Rooting {
    /// Share of its rooting depth that lies below a pan with its top at `pan_top_mm`, 0 to 1.
    pub fn share_cut_off(&self, pan_top_mm: u32) -> f64 {
        f64::from(self.depth_mm.saturating_sub(pan_top_mm)) / f64::from(self.depth_mm)
    }
}
