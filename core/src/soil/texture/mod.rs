//! Texture classes and groups.

mod feel;
mod fractions;
mod uk;
mod usda;

pub use feel::{FeelScheme, Felt, FeltTexture, Rub};
pub use fractions::Fractions;

use crate::record::codes::codes;

codes!(
    /// The triangle a texture class belongs to.
    TextureScheme {
        /// USDA: sand 2 to 0.05 mm, silt to 0.002 mm.
        Usda = "usda",
        /// UK (SSEW / ADAS): silt-sand cut at 0.06 mm.
        Uk = "uk",
    }
);
codes!(
    /// Texture classes of either scheme.
    TextureClass {
        Sand = "sand",
        LoamySand = "loamy_sand",
        SandyLoam = "sandy_loam",
        Loam = "loam",
        SiltLoam = "silt_loam",
        Silt = "silt",
        SandySiltLoam = "sandy_silt_loam",
        SandyClayLoam = "sandy_clay_loam",
        ClayLoam = "clay_loam",
        SiltyClayLoam = "silty_clay_loam",
        SandyClay = "sandy_clay",
        SiltyClay = "silty_clay",
        Clay = "clay",
    }
);
codes!(
    /// Groups of texture classes that behave alike when a face is read.
    TextureGroup {
        /// Sand and loamy sand.
        Sand = "sand",
        /// Sandy loam.
        Light = "light",
        /// Silt, silt loam, sandy silt loam.
        Silty = "silty",
        /// Loam and the clay loams.
        Medium = "medium",
        /// The clays.
        Heavy = "heavy",
    }
);

/// A class of a scheme.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Texture {
    /// The scheme.
    pub scheme: TextureScheme,
    /// The class.
    pub class: TextureClass,
}

impl Texture {
    /// The group the class falls into.
    pub const fn group(self) -> TextureGroup {
        match self.class {
            TextureClass::Sand | TextureClass::LoamySand => TextureGroup::Sand,
            TextureClass::SandyLoam => TextureGroup::Light,
            TextureClass::Silt | TextureClass::SiltLoam | TextureClass::SandySiltLoam => TextureGroup::Silty,
            TextureClass::Loam
            | TextureClass::SandyClayLoam
            | TextureClass::ClayLoam
            | TextureClass::SiltyClayLoam => TextureGroup::Medium,
            TextureClass::SandyClay | TextureClass::SiltyClay | TextureClass::Clay => TextureGroup::Heavy,
        }
    }
    /// The class of a scheme by its name in snake case. The sand-bearing classes of USDA may carry the size
    /// of their sand (`fine_sandy_loam`, `loamy_very_fine_sand`), which is dropped; `None` for a class the
    /// scheme does not have.
    pub fn parse(scheme: TextureScheme, name: &str) -> Option<Self> {
        let class = TextureClass::from_code(name)
            .or_else(|| (scheme == TextureScheme::Usda).then(|| without_sand_size(name)).flatten())?;
        scheme.has(class).then_some(Self { scheme, class })
    }
}

/// The USDA classes that are divided by the size of their sand, as written before and after that size.
const DIVIDED: [(&str, &str, TextureClass); 4] = [
    ("", "_sand", TextureClass::Sand),
    ("loamy_", "_sand", TextureClass::LoamySand),
    ("", "_loamy_sand", TextureClass::LoamySand),
    ("", "_sandy_loam", TextureClass::SandyLoam),
];

/// The class of a USDA name less the size of its sand.
fn without_sand_size(name: &str) -> Option<TextureClass> {
    let size_of = |before, after| name.strip_prefix(before).and_then(|rest: &str| rest.strip_suffix(after));
    DIVIDED.into_iter().find_map(|(before, after, class)| {
        let size = size_of(before, after)?;
        ["very_fine", "fine", "coarse"].contains(&size).then_some(class)
    })
}

impl TextureScheme {
    /// Returns whether the scheme has this class.
    pub const fn has(self, class: TextureClass) -> bool {
        match class {
            TextureClass::SandySiltLoam => matches!(self, Self::Uk),
            TextureClass::Loam | TextureClass::Silt => matches!(self, Self::Usda),
            _ => true,
        }
    }
}

/// Where a point of a triangle lies.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Placed {
    /// In one class.
    Inside(TextureClass),
    /// On the edge between these classes, in the order of [`TextureClass::ALL`].
    Edge(Vec<TextureClass>),
}

/// The class of measured fractions. They are taken as measured with the scheme's own cut between silt and
/// sand (0.05 mm USDA, 0.06 mm UK): nothing is converted.
///
/// The rules of USDA own their edges, so a point of it always lies inside a class.
pub fn place(scheme: TextureScheme, fractions: Fractions) -> Placed {
    match scheme {
        TextureScheme::Usda => Placed::Inside(usda::class(fractions)),
        TextureScheme::Uk => uk::place(fractions),
    }
}
