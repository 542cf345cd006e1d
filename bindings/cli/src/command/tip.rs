//! `pitface tip`: bottoms of the layers in, tip depth out.

use crate::Answer;
use crate::argument::{Shown, millimetres};
use crate::trouble::Trouble;
use clap::Args;
use pitface_core::RULES;
use pitface_core::advice::{CLEARED_SHARE, Stance, Why, fitted, tip_depth};
use pitface_core::error::Fault;
use pitface_core::record::{Field, RecordId, notes};
use serde_json::{Map, json};
use std::path::Path;

/// What was measured.
#[derive(Args)]
pub struct Tip {
    /// Depth of the harmed layer's bottom, one a pit: 300, 300mm, 30cm or 12in (a bare number is millimetres).
    #[arg(required = true, value_name = "BOTTOM", value_parser = bottom)]
    bottoms: Vec<u32>,
    /// Share of the ground to be cleared, between 0 and 1.
    #[arg(long, value_name = "SHARE", default_value_t = CLEARED_SHARE, value_parser = share)]
    clear: f64,
    /// Depth to the top of the pipe drains or their fill.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    drains: Option<u32>,
    /// Depth to the top of the mole drains.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    mole_drains: Option<u32>,
    /// Depth to the shallowest cable or pipe.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    services: Option<u32>,
    /// Clearance to keep above all of these.
    #[arg(long, value_name = "LENGTH", value_parser = millimetres)]
    clearance: Option<u32>,
    /// Deepest tip depth the machine reaches.
    #[arg(long, value_name = "DEPTH", value_parser = millimetres)]
    reach: Option<u32>,
}

/// Shallower than a step of the knife walk no layer ends; what is, was meant in another unit.
const SHALLOWEST_MM: u32 = 50;

fn bottom(text: &str) -> Result<u32, String> {
    let mm = millimetres(text)?;
    if mm < SHALLOWEST_MM {
        return Err(format!(
            "no layer ends at {mm} mm; a bare number is read as millimetres, or write {text}cm"
        ));
    }
    Ok(mm)
}

fn share(text: &str) -> Result<f64, String> {
    let share: f64 = text.parse().map_err(|_| "not a number; write a share such as 0.8".to_owned())?;
    if share > 0.0 && share < 1.0 {
        Ok(share)
    } else {
        Err("no share between 0 and 1; write 0.8 for 80 %".into())
    }
}

impl Tip {
    /// Works it out.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let field = self.field().map_err(|faults| Trouble::of_file(Path::new("arguments"), faults))?;
        let tip = tip_depth(&self.bottoms, self.clear).ok_or_else(|| {
            Trouble::of_arguments(Fault::new("", "no layer to break", "give the bottom of a harmed layer"))
        })?;
        let (tip, in_the_way) = fitted(&field, tip);
        let mut text = words.tip_sentences(&tip) + "\n";
        let told = in_the_way.iter().map(|what| Why { stance: Stance::Against, what: what.clone() });
        told.for_each(|why| text = format!("{text}{}\n", words.why(&why)));
        let json = json!({
            "rules": RULES,
            "tip_mm": [tip.lo_mm, tip.hi_mm],
            "bottom_mm": tip.bottom_mm,
            "cleared_share": tip.cleared_share,
            "pits": tip.pits,
            "confidence": tip.confidence,
            "in_the_way": in_the_way,
        });
        Ok(Answer::new(text, json))
    }

    /// A field with nothing but these depths, read as a notes file would be: the same values are refused.
    fn field(&self) -> Result<Field, Vec<Fault>> {
        let depths = [
            ("drains_mm", self.drains),
            ("mole_drains_mm", self.mole_drains),
            ("services_mm", self.services),
            ("clearance_mm", self.clearance),
            ("reach_mm", self.reach),
        ];
        let mut field = Map::from_iter([("name".to_owned(), json!("tip"))]);
        field.extend(depths.into_iter().filter_map(|(key, depth)| Some((key.to_owned(), json!(depth?)))));
        let text = json!({ "pitface": notes::VERSION, "field": field }).to_string();
        let read = notes::read(&text, &mut || RecordId::new(0, [0; 10]));
        read.map(|read| read.notes.field)
    }
}
