//! `pitface roll`: what two roll tests say, one of soil from the surface and one from the depth to be worked.

use crate::Answer;
use crate::argument::{Shown, code_of};
use clap::Args;
use clap::builder::{PossibleValuesParser, TypedValueParser};
use pitface_core::record::RollOutcome;
use pitface_core::soil::roll::reading;
use pitface_core::soil::texture::{Texture, TextureClass, TextureGroup, TextureScheme};
use serde_json::json;

/// What the rolls did.
#[derive(Args)]
pub struct Roll {
    /// Soil from the surface.
    #[arg(long, value_name = "CODE", value_parser = code_of!(RollOutcome))]
    surface: RollOutcome,
    /// Soil from the depth to be worked.
    #[arg(long, value_name = "CODE", value_parser = code_of!(RollOutcome))]
    at_depth: RollOutcome,
    /// Texture, a class or a group of them: sand rolls at no moisture, so that the test says nothing of it.
    #[arg(long, value_name = "TEXTURE", value_parser = group_parser())]
    texture: Option<TextureGroup>,
}

fn group_parser() -> impl TypedValueParser<Value = TextureGroup> {
    let groups = TextureGroup::CODES.iter().filter(|code| !TextureClass::CODES.contains(code));
    PossibleValuesParser::new(TextureClass::CODES.iter().chain(groups)).try_map(|code| {
        // A class falls into the same group in either scheme.
        let class = TextureClass::from_code(&code)
            .map(|class| Texture { scheme: TextureScheme::Usda, class }.group());
        class.or_else(|| TextureGroup::from_code(&code)).ok_or_else(|| format!("no texture: {code}"))
    })
}

impl Roll {
    /// Says what that means.
    pub fn run(self, shown: &Shown) -> Answer {
        let says = reading(self.texture, Some(self.surface), Some(self.at_depth));
        let told = shown.words().roll_sentence(&says);
        Answer::new(
            format!("{told}\n"),
            json!({ "surface": says.surface, "at_depth": says.at_depth, "together": says.together }),
        )
    }
}
