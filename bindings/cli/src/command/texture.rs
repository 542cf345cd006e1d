//! `pitface texture`: a texture class from measured fractions or by feel.

use crate::Answer;
use crate::argument::{Shown, code_of, millimetres};
use crate::trouble::Trouble;
use clap::{Args, ValueEnum};
use pitface_core::soil::texture::{
    FeelScheme, Felt, Fractions, Placed, Rub, Texture as Class, TextureScheme, place,
};
use serde_json::json;

/// What was measured or felt.
#[derive(Args)]
pub struct Texture {
    /// Sand in percent by mass.
    #[arg(
        long,
        value_name = "PERCENT",
        requires = "silt",
        requires = "clay",
        required_unless_present = "feel"
    )]
    sand: Option<f64>,
    /// Silt in percent by mass.
    #[arg(long, value_name = "PERCENT", requires = "sand")]
    silt: Option<f64>,
    /// Clay in percent by mass.
    #[arg(long, value_name = "PERCENT", requires = "sand")]
    clay: Option<f64>,
    /// Triangle the fractions were measured for: sand ends at 0.05 mm (usda) or 0.06 mm (uk).
    #[arg(long, default_value = "usda", value_parser = code_of!(TextureScheme), conflicts_with = "feel")]
    scheme: TextureScheme,
    /// What moist, kneaded soil makes in the hand (Thien 1979); a ribbon wants its length and the grit.
    #[arg(long, value_enum, conflicts_with_all = ["sand", "silt", "clay"])]
    feel: Option<Feel>,
    /// Length at which the ribbon breaks: 30, 30mm, 3cm or 1in.
    #[arg(long, value_name = "LENGTH", value_parser = millimetres, required_if_eq("feel", "ribbon"))]
    ribbon_mm: Option<u32>,
    /// How a very wet pinch feels when rubbed.
    #[arg(long, value_parser = code_of!(Rub), required_if_eq("feel", "ribbon"))]
    grit: Option<Rub>,
}

/// What it makes.
#[derive(Clone, Copy, ValueEnum)]
#[value(rename_all = "snake_case")]
enum Feel {
    /// No ball.
    NoBall,
    /// A ball, but no ribbon.
    Ball,
    /// A ribbon.
    Ribbon,
}

impl Texture {
    /// Names it.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        match self.feel {
            Some(feel) => Ok(self.felt(feel, shown)),
            None => self.measured(shown),
        }
    }

    fn felt(&self, feel: Feel, shown: &Shown) -> Answer {
        let felt = match (feel, self.ribbon_mm, self.grit) {
            (Feel::NoBall, ..) => Felt::NoBall,
            (Feel::Ribbon, Some(length_mm), Some(rub)) => Felt::Ribbon { length_mm, rub },
            (Feel::Ball | Feel::Ribbon, ..) => Felt::BallNoRibbon,
        };
        let named = FeelScheme::Thien1979.texture(felt);
        let class = named.texture;
        Answer::new(
            format!("{}\n", shown.words().texture_sentence(class)),
            json!({ "scheme": class.scheme, "class": class.class, "group": class.group(), "by": named.by }),
        )
    }

    fn measured(&self, shown: &Shown) -> Result<Answer, Trouble> {
        let [sand, silt, clay] = [self.sand, self.silt, self.clay].map(Option::unwrap_or_default);
        let fractions = Fractions::new(sand, silt, clay).map_err(Trouble::of_arguments)?;
        let (words, scheme) = (shown.words(), self.scheme);
        Ok(match place(scheme, fractions) {
            Placed::Inside(class) => {
                let texture = Class { scheme, class };
                Answer::new(
                    format!("{}\n", words.texture_sentence(texture)),
                    json!({ "scheme": scheme, "class": class, "group": texture.group() }),
                )
            }
            Placed::Edge(classes) => Answer::new(
                format!("{}\n", words.texture_edge(scheme, &classes)),
                json!({ "scheme": scheme, "class": null, "edge_of": classes }),
            ),
        })
    }
}
