//! The commands, a file each. A command asks the core, and gives back its whole answer or every fault found.

mod behind;
mod boundary;
mod bring_back;
mod check;
mod class;
mod completions;
mod demo;
mod draw;
mod fields;
mod ground;
mod hand_over;
mod history;
mod join;
mod look;
mod manual;
mod new;
mod next;
mod page;
mod partners;
mod read;
mod redact;
mod roll;
mod sample;
mod schema;
mod set;
mod settle;
mod tables;
mod take_in;
mod texture;
mod tip;
mod undo;
mod whereto;
mod write_notes;

use crate::argument::Shown;
use crate::said::Said;
use crate::trouble::Trouble;
use clap::Subcommand;

/// What can be asked.
#[derive(Subcommand)]
pub enum Command {
    /// Reads an invented estate, with every call among its fields, and writes its drawings and its store.
    Demo(demo::Demo),
    /// Reads notes files: layers, kinds with shares, reasons, the next look, and the call for each zone.
    Read(read::Read),
    /// The next look in each pit, and whether another pit is worth digging.
    Next(next::Next),
    /// What two roll tests say: dry enough to loosen or not.
    Roll(roll::Roll),
    /// A weighed ring of soil and a pushed cone: density, air, roots, and where they say nothing.
    Sample(sample::Sample),
    /// The texture class, from fractions or by feel.
    Texture(texture::Texture),
    /// The class of a value in a handbook's table; without arguments, the tables there are.
    Class(class::Class),
    /// The tip depth that clears layers with these bottoms, one a pit.
    Tip(tip::Tip),
    /// A machine set for a tip depth: critical depth, spacing, what it loosens, draught, power, fuel, cost.
    Set(Box<set::Set>),
    /// What holes dug behind the machine say of each pass: done or not, why, and what to change.
    Behind(behind::Behind),
    /// Where to dig next: zone, place, distance and bearing, and how far each zone is settled.
    Where(whereto::Where),
    /// Outlines and lines out of files of other programs: what there is, and one taken into a field.
    Boundary(boundary::Boundary),
    /// The zones with their hectares, what working the harmed ones takes, and what that saves.
    Ground(ground::Ground),
    /// Draws the pits of a field: SVG files and its sheet.
    Draw(draw::Draw),
    /// A page to keep or print: a field's sheet, its driver's card, or an overview of several fields.
    Page(page::Page),
    /// Writes fields for other programs: GeoJSON, a GeoPackage and CSV.
    Tables(tables::Tables),
    /// Hands over what a store has: into a file, or into a folder that several share.
    HandOver(hand_over::HandOver),
    /// Takes in what others handed over, and accepts their devices.
    TakeIn(take_in::TakeIn),
    /// What is inside a bundle file, whether it holds, and what it lacks. Needs no store.
    Look(look::Look),
    /// Values that two people wrote without knowing of each other, and what one deleted while another went on.
    Settle(settle::Settle),
    /// Names, positions and remarks, to be taken out of every copy.
    Redact(redact::Redact),
    /// What happened in a store, by whom and when: its saves, the latest first.
    History(history::History),
    /// Takes back the last save made here.
    Undo(undo::Undo),
    /// What is deleted in a store; with numbers, brings it back.
    BringBack(bring_back::BringBack),
    /// Says that two fields of a store are one, or takes a field apart again.
    Join(join::Join),
    /// The devices a store knows of, what is missing from them, and what nobody else has yet.
    Partners(partners::Partners),
    /// The fields of a store.
    Fields(fields::Fields),
    /// Writes notes files from a store, with ids.
    Write(write_notes::Write),
    /// Whether a store and its photos are as they were written, and how to mend them.
    Check(check::Check),
    /// A notes file to begin with: everything that may be noted stands in it as comments.
    New(new::New),
    /// The JSON Schema of the notes file, or of what a command answers with --json.
    Schema(schema::Schema),
    /// What a shell needs to complete commands and options.
    Completions(completions::Completions),
    /// The help as pages of a manual (man).
    Manual(manual::Manual),
}

impl Command {
    /// Does it.
    pub fn run(self, shown: &Shown) -> Result<Said, Trouble> {
        Ok(match self {
            Self::Demo(demo) => demo.run(shown)?.into(),
            Self::Read(read) => read.run(shown)?.into(),
            Self::Next(next) => next.run(shown)?.into(),
            Self::Roll(roll) => roll.run(shown).into(),
            Self::Sample(sample) => sample.run(shown)?.into(),
            Self::Texture(texture) => texture.run(shown)?.into(),
            Self::Class(class) => class.run(shown)?.into(),
            Self::Tip(tip) => tip.run(shown)?.into(),
            Self::Set(set) => set.run(shown)?.into(),
            Self::Behind(behind) => behind.run(shown)?.into(),
            Self::Where(place) => place.run(shown)?.into(),
            Self::Boundary(boundary) => boundary.run(shown)?.into(),
            Self::Ground(ground) => ground.run(shown)?.into(),
            Self::Draw(draw) => draw.run(shown)?.into(),
            Self::Page(page) => page.run(shown)?.into(),
            Self::Tables(tables) => tables.run(shown)?.into(),
            Self::HandOver(hand_over) => hand_over.run(shown)?.into(),
            Self::TakeIn(take_in) => take_in.run(shown)?.into(),
            Self::Look(look) => look.run(shown)?.into(),
            Self::Settle(settle) => settle.run(shown)?.into(),
            Self::Redact(redact) => redact.run(shown)?.into(),
            Self::History(history) => history.run(shown)?.into(),
            Self::Undo(undo) => undo.run(shown)?.into(),
            Self::BringBack(back) => back.run(shown)?.into(),
            Self::Join(join) => join.run(shown)?.into(),
            Self::Partners(partners) => partners.run(shown)?.into(),
            Self::Check(check) => check.run(shown)?.into(),
            Self::Completions(completions) => completions.run().into(),
            Self::Manual(manual) => manual.run()?.into(),
            Self::Fields(fields) => fields.run(shown)?.into(),
            Self::Write(write) => write.run()?.into(),
            Self::New(new) => new.run()?.into(),
            Self::Schema(schema) => schema.run().into(),
        })
    }
}
