//! `pitface ground`: the zones of a field with their hectares and calls, what working the harmed ones takes, and what is
//! saved against working all of it.

use super::set::Prices;
use crate::Answer;
use crate::argument::Shown;
use crate::asked::OneField;
use crate::field::FieldRead;
use crate::json::merged;
use crate::machine::machine_of;
use crate::told::{Entry, Section};
use crate::trouble::Trouble;
use crate::{json, keep, told};
use clap::Args;
use pitface_core::advice::ground::{Areas, GroundWork, ground_work};
use pitface_core::advice::machine::Terms;
use pitface_core::record::Machine;
use pitface_core::words::{Heading, Words};
use serde_json::{Value, json};
use std::path::Path;

/// Which field, worked with what.
#[derive(Args)]
pub struct Ground {
    #[command(flatten)]
    asked: OneField,
    /// The machine, by its name in the notes; the only one if left out.
    #[arg(long, value_name = "NAME")]
    machine: Option<String>,
    #[command(flatten)]
    prices: Prices,
}

impl Ground {
    /// Goes over the ground.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let faults = self.prices.faults();
        if !faults.is_empty() {
            return Err(Trouble::of_file(Path::new("arguments"), faults));
        }
        let terms = Terms { price: self.prices.price(), ..Terms::default() };
        let field = self.asked.read()?;
        let machine = chosen(&field, self.machine.as_deref())?;
        let work = worked(&field, machine.as_ref(), &terms)?;
        let entry = told_ground(&words, &field, &work, machine.as_ref());
        let json = ground_json(&field, &work, machine.as_ref());
        let answer = Answer::new(told::text(&words, &[entry]), json::fields(vec![json]));
        Ok(Answer { remarks: keep::remarks(&field), ..answer })
    }
}

/// The machine asked for; without a name the only one, or none where there is none or a choice.
fn chosen(field: &FieldRead, name: Option<&str>) -> Result<Option<Machine>, Trouble> {
    if name.is_none() && field.notes.machines.len() != 1 {
        return Ok(None);
    }
    machine_of(field, name).map(Some)
}

fn worked(field: &FieldRead, machine: Option<&Machine>, terms: &Terms) -> Result<GroundWork, Trouble> {
    let areas = Areas::of(&field.map);
    ground_work(&field.notes.field, &field.advice, &areas, machine, terms)
        .map_err(|faults| Trouble::of_file(&field.origin.called, faults))
}

/// The field's ground in words: a line a zone, then what it takes and saves, then where pits lie.
pub fn told_ground(words: &Words, field: &FieldRead, work: &GroundWork, machine: Option<&Machine>) -> Entry {
    let call_of = |zone| field.advice.zones.iter().find(|call| call.zone == zone);
    let zones = work.zones.iter().map(|zone| words.ground_line(zone, call_of(zone.zone)));
    Entry {
        heading: words.name(&field.notes.field.name),
        sentence: words.whole_sentence(&field.advice),
        paragraphs: words.ground(work, machine),
        sections: vec![
            Section { heading: words.label(Heading::Zones), lines: zones.collect() },
            Section { heading: words.label(Heading::Note), lines: told::places(words, field) },
        ],
    }
}

fn ground_json(field: &FieldRead, work: &GroundWork, machine: Option<&Machine>) -> Value {
    let places: Vec<Value> = (0..field.notes.pits.len()).map(|index| json::place(field, index)).collect();
    let told = json!({ "machine": machine.map(|machine| &machine.name), "pits": places });
    merged(merged(json::head(field), told), json!(work))
}
