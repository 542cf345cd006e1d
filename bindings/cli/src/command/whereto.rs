//! `pitface where`: where the next pit tells most, how far it is to walk, and how far each zone is settled.

use crate::Answer;
use crate::argument::Shown;
use crate::asked::OneField;
use crate::field::FieldRead;
use crate::json::{self, merged};
use crate::told::{Entry, Section};
use crate::trouble::Trouble;
use crate::{keep, told};
use clap::Args;
use pitface_core::advice::sampling::{At, Next, Plan, ZoneGround};
use pitface_core::advice::{NextDig, next_dig};
use pitface_core::error::Fault;
use pitface_core::place::{Walk, walk};
use pitface_core::words::{Heading, WalkFrom, Words};
use serde_json::{Value, json};

/// Which field, from where, and what is to be told.
#[derive(Args)]
pub struct Where {
    #[command(flatten)]
    asked: OneField,
    /// Where you stand, in degrees (WGS 84); the last pit dug if left out.
    #[arg(long, value_names = ["LONGITUDE", "LATITUDE"], num_args = 2, allow_negative_numbers = true)]
    at: Option<Vec<f64>>,
    #[command(flatten)]
    plan: PlanArguments,
}

/// What the pits are to tell, and at what risk.
#[derive(Args)]
#[command(next_help_heading = "What is to be told, and at what risk")]
struct PlanArguments {
    /// Share of the ground harmed from which loosening pays.
    #[arg(long, value_name = "SHARE", default_value_t = Plan::default().worth_share)]
    worth: f64,
    /// With this share harmed or less, loosening must not be called for.
    #[arg(long, value_name = "SHARE", default_value_t = Plan::default().sound_share)]
    sound: f64,
    /// With this share harmed or more, it must be.
    #[arg(long, value_name = "SHARE", default_value_t = Plan::default().harmed_share)]
    harmed: f64,
    /// Accepted chance of loosening sound ground.
    #[arg(long, value_name = "CHANCE", default_value_t = Plan::default().loosened_wrongly)]
    loosened_wrongly: f64,
    /// Accepted chance of leaving harmed ground.
    #[arg(long, value_name = "CHANCE", default_value_t = Plan::default().left_wrongly)]
    left_wrongly: f64,
    /// What a pit costs, in hectares of loosening.
    #[arg(long, value_name = "HECTARES", default_value_t = Plan::default().pit_costs_ha)]
    pit_costs: f64,
    /// Most pits in one zone.
    #[arg(long, value_name = "N", default_value_t = Plan::default().most_pits)]
    most_pits: u32,
    /// Confidence of the interval shown.
    #[arg(long, value_name = "CHANCE", default_value_t = Plan::default().confidence)]
    confidence: f64,
}

impl PlanArguments {
    fn plan(&self) -> Plan {
        Plan {
            worth_share: self.worth,
            sound_share: self.sound,
            harmed_share: self.harmed,
            loosened_wrongly: self.loosened_wrongly,
            left_wrongly: self.left_wrongly,
            pit_costs_ha: self.pit_costs,
            most_pits: self.most_pits,
            confidence: self.confidence,
        }
    }
}

impl Where {
    /// Looks for the place.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let plan = self.plan.plan();
        let here = self.here()?;
        let field = self.asked.read()?;
        let ground = field.ground();
        let dig = next_dig(&ground, &field.advice, &plan).map_err(|fault| {
            Trouble::of_arguments(Fault::new("", "the plan cannot be worked with", fault.to_string()))
        })?;
        let way = way_to(&dig.next, here, &field);
        let walk_json = way.as_ref().map(|(_, walk)| *walk);
        let zones = ground.zones.iter().map(|zone| words.zone_share(zone, &plan));
        let entry = Entry {
            heading: words.name(&field.notes.field.name),
            sentence: words.next_pit_sentence(&dig.next, way),
            paragraphs: told_why(&words, &dig).chain(words.next_pit_details(&dig.next)).collect(),
            sections: vec![
                Section { heading: words.label(Heading::Zones), lines: zones.collect() },
                Section { heading: words.label(Heading::Note), lines: told::places(&words, &field) },
            ],
        };
        let told = json!({
            "next": next_json(&dig, walk_json),
            "zones": ground.zones.iter().map(|zone| zone_json(zone, &plan)).collect::<Vec<_>>(),
            "plan": plan,
        });
        let json = json::fields(vec![merged(json::head(&field), told)]);
        Ok(Answer { remarks: keep::remarks(&field), ..Answer::new(told::text(&words, &[entry]), json) })
    }

    fn here(&self) -> Result<Option<[f64; 2]>, Trouble> {
        let Some(at) = self.at.as_deref() else { return Ok(None) };
        let place = <[f64; 2]>::try_from(at).ok();
        let on_globe = |[longitude, latitude]: &[f64; 2]| longitude.abs() <= 180.0 && latitude.abs() <= 90.0;
        place.filter(on_globe).map(Some).ok_or_else(|| {
            let todo = "give longitude (-180 to 180), then latitude (-90 to 90), in degrees";
            Trouble::of_arguments(Fault::new("at", "this is no place on the globe", todo))
        })
    }
}

/// Why it is to be dug.
pub fn told_why(words: &Words, dig: &NextDig) -> impl Iterator<Item = String> {
    dig.why.map(|why| words.of(why)).into_iter()
}

/// The way to the place: from where the walker stands, else from the last pit that has a position.
pub fn way_to(next: &Next, here: Option<[f64; 2]>, field: &FieldRead) -> Option<(WalkFrom, Walk)> {
    let Next::Pit { at: At::Place(place), .. } = *next else { return None };
    if let Some(here) = here {
        return Some((WalkFrom::Here, walk(here, place)));
    }
    let (number, from) = field.last_pit()?;
    Some((WalkFrom::Pit(number), walk(from, place)))
}

pub fn next_json(dig: &NextDig, way: Option<Walk>) -> Value {
    let told = match dig.next {
        Next::Behind { zone } => json!({ "dig": "behind", "zone": zone }),
        Next::Reference => json!({ "dig": "reference" }),
        Next::Stop => json!({ "dig": "stop" }),
        Next::Pit { zone, at, at_stake_ha, still_expected } => {
            let (place, found) = match at {
                At::Place(place) => (Some(place), "here"),
                At::ByEye => (None, "by_eye"),
                At::NowhereClear => (None, "nowhere_clear"),
            };
            json!({
                "dig": "pit", "zone": zone, "place": found, "at": place,
                "distance_m": way.map(|way| way.distance_m), "bearing_deg": way.map(|way| way.bearing_deg),
                "at_stake_ha": at_stake_ha, "still_expected": still_expected,
            })
        }
    };
    merged(told, json!({ "why": dig.why }))
}

fn zone_json(zone: &ZoneGround, plan: &Plan) -> Value {
    json!({
        "zone": zone.zone,
        "area_ha": zone.area_ha,
        "pits": zone.count.pits,
        "harmed": zone.count.harmed,
        "share": zone.count.share(plan.confidence),
        "settled": zone.verdict(plan),
    })
}
