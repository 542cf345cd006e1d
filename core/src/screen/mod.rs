//! One record a screen with everything it shows, and what each tap means: the app without its shell.
//!
//! [`show`] makes a [`Screen`] from a [`Place`] and a [`World`]; [`tap`] turns an [`Act`] into records to be saved and the
//! place to go to. Both are pure. A shell draws what is in the record, sends back the act that was tapped, and does what
//! only the platform can ([`Ask`]); what it must never do is decide anything about soil, places, time or records.

mod act;
mod apart;
mod bar;
pub mod behind;
pub mod boundary;
mod deleted;
mod deleting;
pub mod drawn;
pub mod example;
pub mod field;
mod grid;
mod hand_over;
mod incoming;
pub mod machine;
mod model;
pub mod on_plan;
pub mod own;
mod part;
pub mod partners;
mod photo_scale;
pub mod photos;
pub mod pit;
mod show;
mod step;
mod trail;
mod world;

pub use act::{Act, Ask, Done, Edit, Place};
pub use deleting::{Hanging, hanging};
pub use incoming::Incoming;
pub use model::{
    Block, Button, Does, Headline, Input, Keys, Picture, Pictured, Row, Screen, ScreenKind, Section, Stand,
    Thumbnail, Touch,
};
pub use trail::Trail;
pub use world::{Own, World};

use crate::error::Fault;
use crate::record::RecordId;

/// Returns what stands at a place. A place whose record is gone shows the one above it.
pub fn show(place: Place, world: &World) -> Screen {
    let shown: Option<Screen> = match place {
        Place::Welcome => Some(own::welcome(world)),
        Place::Own => Some(own::show(world)),
        Place::Setting { setting } => Some(own::show_one(setting, world)),
        Place::Fields => Some(field::list::list(world)),
        Place::FoundFields { sought } => Some(field::list::found(sought, world)),
        Place::StartField => Some(field::list::start(world)),
        Place::Details { field } => field::details::show(field, world),
        Place::Detail { field, detail } => field::detail::show(field, detail, world),
        Place::Lines { field, line } => field::buried::show(field, line, world),
        Place::Line { field, line, asked } => field::line::show(field, line, asked, world),
        Place::Outline { field } => field::outline::show(field, world),
        Place::Field { field } => field::show(field, world),
        Place::Pits { field } => field::show_pits(field, world),
        Place::StartPit { field, pit } => pit::start::show(field, pit, world),
        Place::KnifeWalk { field, pit } => pit::walk::show(field, pit, false, world),
        Place::HoleEnds { field, pit } => pit::walk::show(field, pit, true, world),
        Place::Moisture { field, pit } => pit::moisture::show(field, pit, world),
        Place::NextLook { field, pit } => pit::look::show(field, pit, world),
        Place::Layers { field, pit, layer, clue } => pit::layers::show(field, pit, (layer, clue), world),
        Place::Roll { field, pit } => pit::roll::show(field, pit, None, world),
        Place::RollOf { field, pit, surface } => pit::roll::show(field, pit, Some(surface), world),
        Place::Remark { field, pit, layer } => pit::remark::show(field, pit, layer, world),
        Place::Call { field, pit } => pit::call::show(field, pit, world),
        Place::OnPlan { field, pit } => on_plan::show(field, pit, world),
        Place::Photos { field, pit } => photos::show(field, pit, world),
        Place::PhotoScale { field, pit, photo, zero, known_mm } => {
            photo_scale::show(field, (pit, photo), (zero, known_mm), world)
        }
        Place::Photo { field, pit, photo } => photos::show_one(field, pit, photo, world),
        Place::Machine { field, machine } => machine::show(field, machine, world),
        Place::NewMachine { field, legs, spacing_mm, foot_width_mm } => {
            machine::show_new(field, [legs, spacing_mm, foot_width_mm], world)
        }
        Place::SetFor { field, machine, zone } => machine::show_set(field, machine, Some(zone), world),
        Place::Measure { field, machine, measure, with, from_mm } => {
            machine::show_measure(field, machine, (measure, with, from_mm), world)
        }
        Place::Pass { field, pass } => behind::show(field, pass, world),
        Place::NewPass { field, machine, zone } => behind::show_new(field, machine, zone, world),
        Place::PassDetail { field, pass, detail, from_mm } => {
            behind::show_detail(field, pass, (detail, from_mm), world)
        }
        Place::AfterDig { field, pass, dig } => behind::show_dig(field, pass, dig, world),
        Place::InHole { field, pass, dig, step, from_mm } => {
            behind::show_step(field, (pass, dig), (step, from_mm), world)
        }
        Place::Show { field, pit } => show::show(field, pit, world),
        Place::HandOver { field } => hand_over::show(field, world),
        Place::Deleting { field, record } => deleting::show(field, record, world),
        Place::WentAway => Some(deleted::show(world)),
        Place::Partners => Some(partners::show(world)),
        Place::Partner { device } => partners::show_one(device, world),
        Place::Versions { field, pit, number } => partners::show_versions(field, pit, number, world),
        Place::Personal { number } => partners::show_personal(number, world),
        Place::Regretted { number } => partners::show_regretted(number, world),
        Place::Incoming => incoming::show(world),
        Place::Boundary { field, chosen } => boundary::show(field, chosen, world),
        Place::OneField { field, other } => incoming::show_two(field, other, world),
    };
    match shown {
        Some(shown) => apart::told_apart(example::marked(partners::marked(shown, world), world)),
        None => show(place.above().unwrap_or(Place::Fields), world),
    }
}

/// Returns what a tap at a place means, with what goes with it. `new_id` makes ids.
///
/// # Errors
/// What is wrong with what was typed, or that the record tapped on is gone; in words of the chosen language where
/// somebody has to read it, nothing saved.
pub fn tap(
    place: Place,
    act: &Act,
    input: Input,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    done(place, act, input, world, new_id).map(|done| example::nothing_saved(place, done, world))
}

fn done(
    place: Place,
    act: &Act,
    input: Input,
    world: &World,
    new_id: &mut dyn FnMut() -> RecordId,
) -> Result<Done, Fault> {
    let Input { text, .. } = input;
    match act {
        Act::Go(place) => Ok(Done::go(*place)),
        Act::Undo => Ok(Done::save(Edit::Undo, place)),
        Act::Redo => Ok(Done::save(Edit::Redo, place)),
        Act::Delete { record } => deleting::delete(place, *record, world),
        Act::BringBack { record } => Ok(deleted::bring_back(place, *record, world)),
        Act::Own(act) => own::tap(place, act, text, world),
        Act::Field(act) => field::tap(place, *act, input, world, new_id),
        Act::Pit(act) => pit::tap(place, act, input, world, new_id),
        Act::OnPlan(act) => on_plan::tap(place, act, input, world),
        Act::Photo(act) => photos::tap(place, act, input, world),
        Act::Machine(act) => machine::tap(place, act, text, world, new_id),
        Act::Behind(act) => behind::tap(place, act, world, new_id),
        Act::Partners(act) => partners::tap(place, *act, world),
        Act::Boundary(act) => boundary::tap(place, *act, world, new_id),
        Act::TakeIn => Ok(incoming::take_in()),
        Act::Join { field, other } => incoming::join(*field, *other, world),
    }
}
