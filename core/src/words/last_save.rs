//! What an undo would take back and a redo would bring again, in one short sentence.

use super::Words;
use super::cells::Show;
use super::merging::row;
use crate::store::{Did, Kind, LastSave, Named, Written};
use fluent::fluent_args;

/// Most values of a record that are told of it.
const VALUES_TOLD: usize = 2;

/// Most letters of a value that are told: a remark may have a thousand.
const LETTERS_TOLD: usize = 40;

impl Words {
    /// Says what a save wrote, without its field, for the note of a button: `pit 3, 20–25 cm: flat plates`.
    pub fn save_named(&self, save: &LastSave) -> String {
        let what = match save.did {
            Did::Deleted => self.say("saved-deleted"),
            Did::Joined => self.say("saved-joined"),
            Did::BroughtBack => self.say("saved-back"),
            Did::Made | Did::Changed => self.written(save),
        };
        let args =
            fluent_args!["place" => self.place_named(&save.of), "what" => what, "count" => save.others];
        self.say_with(if save.others == 0 { "saved-one" } else { "saved-more" }, &args)
    }

    /// The same with the name of its field before it.
    pub fn save_named_with_field(&self, save: &LastSave) -> String {
        let named = self.save_named(save);
        if save.of.field.is_empty() || save.of.kind == Kind::Field {
            return named;
        }
        self.comma(&[self.name(&save.of.field), named])
    }

    /// Says what undo does now, to be read out: `Take back: pit 3, 20–25 cm: flat plates`.
    pub fn undo(&self, save: &LastSave) -> String {
        self.say_with("saved-undo", &fluent_args!["what" => self.save_named(save)])
    }

    /// Says what redo does now, to be read out.
    pub fn redo(&self, save: &LastSave) -> String {
        self.say_with("saved-redo", &fluent_args!["what" => self.save_named(save)])
    }

    /// Says that a save was taken back; `None`: that there was none.
    pub fn undone(&self, save: Option<&LastSave>) -> String {
        match save {
            Some(save) => {
                self.say_with("taken-back", &fluent_args!["what" => self.save_named_with_field(save)])
            }
            None => self.say("taken-back_nothing"),
        }
    }

    /// Says that a save stands again; `None`: that no undo was there to be taken back.
    pub fn redone(&self, save: Option<&LastSave>) -> String {
        match save {
            Some(save) => {
                self.say_with("taken-again", &fluent_args!["what" => self.save_named_with_field(save)])
            }
            None => self.say("taken-again_nothing"),
        }
    }

    /// A record as people find it: `pit 3, 20–25 cm`.
    pub fn place_named(&self, of: &Named) -> String {
        let number = |id: &str, number: Option<usize>, kind: Kind| {
            number.map_or_else(
                || self.kind_of_record(kind),
                |number| self.say_with(id, &fluent_args!["number" => number]),
            )
        };
        let own_name = || {
            let kind = self.kind_of_record(of.kind);
            if of.name.trim().is_empty() {
                return kind;
            }
            self.say_with("saved-named", &fluent_args!["kind" => kind, "name" => of.name.as_str()])
        };
        let hole = || match of.pass {
            Some(_) => number("saved-pass_named", of.pass, Kind::Pass),
            None => number("belongs-pit", of.pit, Kind::Pit),
        };
        let in_hole = |what: String| self.comma(&[hole(), what]);
        match (of.kind, of.top_mm, of.bottom_mm) {
            (Kind::Field, ..) => self.name(&of.field),
            (Kind::Pit, ..) => number("belongs-pit", of.pit, Kind::Pit),
            (Kind::Pass, ..) => number("saved-pass_named", of.pass, Kind::Pass),
            (Kind::AfterDig, ..) => number("saved-after_dig", of.after_dig, Kind::AfterDig),
            (Kind::Step | Kind::Layer, Some(top_mm), Some(bottom_mm)) => {
                in_hole(self.depth_range(top_mm, bottom_mm))
            }
            (Kind::Roll | Kind::Photo, Some(at_mm), _) => {
                let args = fluent_args!["kind" => self.kind_of_record(of.kind), "depth" => self.depth(at_mm)];
                in_hole(self.say_with("saved-at", &args))
            }
            (Kind::Step | Kind::Layer | Kind::Roll | Kind::Photo, ..) => {
                in_hole(self.kind_of_record(of.kind))
            }
            (Kind::Machine | Kind::Part | Kind::Person | Kind::BuriedLine, ..) => own_name(),
        }
    }

    /// Says what stands in a record that was made or changed.
    fn written(&self, save: &LastSave) -> String {
        let is_code = |written: &Written| matches!(row(written.cell), Some((.., Show::Code(_))));
        // Of a new field no single value says more than its name.
        let is_new = save.did == Did::Made && save.of.kind == Kind::Field;
        let is_told = |written: &&Written| {
            !is_new && written.before != written.after && (save.did == Did::Changed || is_code(written))
        };
        let told: Vec<&Written> = save.wrote.iter().filter(is_told).collect();
        let value = |written: &&Written| {
            let value: String = self.cell_value(written.cell, &written.after);
            let mut letters = value.chars();
            let mut short: String = letters.by_ref().take(LETTERS_TOLD).collect();
            if letters.next().is_some() {
                short.push('…');
            }
            let is_absent = written.after == [0xf6];
            if is_code(written) && !is_absent {
                return short;
            }
            let args = fluent_args!["cell" => self.cell(written.cell), "value" => short];
            self.say_with("saved-value", &args)
        };
        let mut values: Vec<String> = told.iter().take(VALUES_TOLD).map(value).collect();
        if told.len() > VALUES_TOLD {
            values.push("…".to_owned());
        }
        match (values.is_empty(), save.did) {
            (false, _) => self.comma(&values),
            (true, Did::Made) => self.say("saved-new"),
            (true, _) => self.say("saved-place"),
        }
    }
}
