//! Texture classes and groups.

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
}

impl Texture {
    /// The class of a scheme by its name in snake case; USDA names may carry `coarse_`, `fine_` or `very_fine_`.
    pub fn parse(scheme: TextureScheme, name: &str) -> Option<Self> {
        let plain = match scheme {
            TextureScheme::Usda => ["very_fine_", "fine_", "coarse_"]
                .iter()
                .find_map(|prefix| name.strip_prefix(prefix))
                .unwrap_or(name),
            TextureScheme::Uk => name,
        };
        let class = TextureClass::from_code(plain)?;
        let only_in = match class {
            TextureClass::SandySiltLoam => Some(TextureScheme::Uk),
            TextureClass::Loam | TextureClass::Silt => Some(TextureScheme::Usda),
            _ => None,
        };
        only_in.is_none_or(|only| only == scheme).then_some(Self { scheme, class })
    }
}
