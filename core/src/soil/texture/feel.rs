//! Texture by feel: ball, ribbon, rub.

use super::{Texture, TextureClass, TextureScheme};
use crate::record::codes::codes;

codes!(
    /// The key by which a texture was felt; the lengths that part its ribbons belong to it.
    FeelScheme {
        /// Thien 1979; gives classes of USDA.
        Thien1979 = "thien_1979",
    }
);

codes!(
    /// How a very wet pinch feels when rubbed.
    Rub {
        /// Grit outweighs.
        Gritty = "gritty",
        /// Neither outweighs.
        Neither = "neither",
        /// Silky smoothness outweighs.
        Smooth = "smooth",
    }
);

/// What moist, kneaded soil does in the hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Felt {
    /// It makes no ball.
    NoBall,
    /// It makes a ball, but pressed between thumb and finger no ribbon.
    BallNoRibbon,
    /// It makes a ribbon.
    Ribbon {
        /// Length at which the ribbon breaks under its own weight; 0 is no ribbon.
        length_mm: u32,
        /// How a wet pinch of it feels.
        rub: Rub,
    },
}

/// A texture with the key it was felt by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FeltTexture {
    /// The key.
    pub by: FeelScheme,
    /// The class, of the scheme that the key leads to.
    pub texture: Texture,
}

/// Rows of a key: ribbons from this length on, and the classes by [`Rub`], in its order.
type Ribbons = [(u32, [TextureClass; 3])];

/// Thien 1979, J. Agron. Educ. 8:54-55 (value from memory; the 25 and 50 mm also in the New Zealand Soil
/// Description Handbook, draft 3rd ed.). "25 to 50" and "50 or longer": each length belongs to the longer
/// row.
const THIEN_1979: &Ribbons = &[
    (0, [TextureClass::SandyLoam, TextureClass::Loam, TextureClass::SiltLoam]),
    (25, [TextureClass::SandyClayLoam, TextureClass::ClayLoam, TextureClass::SiltyClayLoam]),
    (50, [TextureClass::SandyClay, TextureClass::Clay, TextureClass::SiltyClay]),
];

impl FeelScheme {
    const fn ribbons(self) -> &'static Ribbons {
        match self {
            Self::Thien1979 => THIEN_1979,
        }
    }

    /// The texture by this key.
    pub fn texture(self, felt: Felt) -> FeltTexture {
        let class = match felt {
            Felt::NoBall => TextureClass::Sand,
            Felt::BallNoRibbon | Felt::Ribbon { length_mm: 0, .. } => TextureClass::LoamySand,
            Felt::Ribbon { length_mm, rub } => {
                let mut row = self.ribbons()[0].1;
                for &(from_mm, classes) in self.ribbons() {
                    if length_mm >= from_mm {
                        row = classes;
                    }
                }
                row[rub as usize]
            }
        };
        FeltTexture { by: self, texture: Texture { scheme: TextureScheme::Usda, class } }
    }
}
