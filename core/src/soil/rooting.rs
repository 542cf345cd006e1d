//! How deep crops root in open soil, and what a pan cuts off.

/// A crop of the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rooting {
    /// Plain names it goes by; the first is its own.
    pub names: &'static [&'static str],
    /// The same in German, as official lists of crops write them (Bavarian land-use codes 2016; vegetables from memory).
    pub german: &'static [&'static str],
    /// Depth it roots to where nothing stops it.
    pub depth_mm: u32,
    /// Where the depth comes from.
    pub source: &'static str,
}

const FAO_56: &str =
    "Allen, Pereira, Raes & Smith 1998, FAO Irrigation and Drainage Paper 56, table 22, middle of the range";

const fn crop(names: &'static [&'static str], german: &'static [&'static str], depth_mm: u32) -> Rooting {
    Rooting { names, german, depth_mm, source: FAO_56 }
}

/// The crops with a known rooting depth.
pub const CROPS: &[Rooting] = &[
    crop(
        &["wheat"],
        &[
            "Weizen",
            "Winterweizen",
            "Sommerweizen",
            "Weichweizen",
            "Winterweichweizen",
            "Sommerweichweizen",
            "Hartweizen",
            "Dinkel",
            "Winterdinkel",
        ],
        1250,
    ),
    crop(&["winter grain", "winter grains", "winter cereal", "winter cereals"], &["Wintergetreide"], 1650),
    crop(&["barley"], &["Gerste", "Wintergerste", "Sommergerste", "Braugerste"], 1250),
    crop(&["oats", "oat"], &["Hafer", "Sommerhafer", "Winterhafer"], 1250),
    crop(&["maize", "grain maize"], &["Mais", "Körnermais"], 1350),
    crop(&["silage maize", "forage maize", "fodder maize"], &["Silomais", "Silagemais"], 1000),
    crop(&["sugar beet", "beet", "beets"], &["Zuckerrüben", "Zuckerrübe", "Rüben"], 950),
    crop(&["table beet", "beetroot", "red beet"], &["Rote Bete", "Rote Rüben"], 800),
    crop(&["potato", "potatoes"], &["Kartoffeln", "Kartoffel"], 500),
    crop(&["peas", "pea"], &["Erbsen", "Körnererbsen", "Futtererbsen"], 800),
    crop(&["onion", "onions"], &["Zwiebeln", "Zwiebel"], 450),
    crop(&["carrot", "carrots"], &["Möhren", "Karotten"], 750),
    crop(&["cabbage", "cabbages"], &["Kohl", "Weißkohl", "Rotkohl"], 650),
    crop(&["flax", "linseed"], &["Lein", "Öllein", "Faserlein", "Faserflachs"], 1250),
    crop(&["alfalfa", "lucerne"], &["Luzerne"], 1750),
    crop(
        &["pasture", "grass", "ley", "grassland"],
        &["Grünland", "Dauergrünland", "Weide", "Mähweide", "Wiese", "Ackergras", "Feldgras", "Gras"],
        1000,
    ),
    crop(&["sunflower", "sunflowers"], &["Sonnenblumen", "Sonnenblume"], 1150),
    crop(&["radish"], &["Radieschen"], 400),
];

/// The crop meant by plain words: the one with the longest name of which every word is there, in any order
/// (`winter wheat` is wheat, `maize for silage` is silage maize, `Winterweizen` is wheat). `None` for a crop that is not on the list.
pub fn of(words: &str) -> Option<&'static Rooting> {
    let words = words.to_lowercase();
    let has = |wanted: &str| words.split(|c: char| !c.is_alphanumeric()).any(|word| word == wanted);
    let named = CROPS
        .iter()
        .flat_map(|crop| crop.names.iter().chain(crop.german).map(move |name| (name.to_lowercase(), crop)));
    named
        .filter(|(name, _)| name.split(' ').all(has))
        .max_by_key(|(name, _)| name.split(' ').count())
        .map(|(_, crop)| crop)
}

/// Returns whether plain words name grass or another standing ley: what cattle tread and no plough mends.
pub fn is_grass(words: &str) -> bool {
    /// Names of what is grazed or mown for years. Common practice, no source.
    const STANDING: [&str; 17] = [
        "grass",
        "grassland",
        "ley",
        "pasture",
        "meadow",
        "lucerne",
        "alfalfa",
        "clover",
        "sward",
        "grünland",
        "dauergrünland",
        "wiese",
        "weide",
        "mähweide",
        "luzerne",
        "klee",
        "gras",
    ];
    let words = words.to_lowercase();
    words
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| STANDING.contains(&word) || word.ends_with("grass") || word.ends_with("gras"))
}

impl Rooting {
    /// Returns whether plain words name it as one language has it, German or else English.
    pub fn is_named(&self, words: &str, german: bool) -> bool {
        let words = words.to_lowercase();
        let has = |wanted: &str| words.split(|c: char| !c.is_alphanumeric()).any(|word| word == wanted);
        let names = if german { self.german } else { self.names };
        names.iter().any(|name| name.to_lowercase().split(' ').all(has))
    }

    /// Share of its rooting depth that lies below a pan with its top at `pan_top_mm`, 0 to 1.
    pub fn share_cut_off(&self, pan_top_mm: u32) -> f64 {
        f64::from(self.depth_mm.saturating_sub(pan_top_mm)) / f64::from(self.depth_mm)
    }
}
