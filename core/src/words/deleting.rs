//! What goes along with what is deleted, and what is on this phone alone.

use super::Words;
use crate::screen::Hanging;
use crate::store::{Kind, Named, NobodyElse, WentAway};
use chrono::{NaiveDate, NaiveDateTime};
use fluent::fluent_args;

impl Words {
    /// The entry of a menu that leads to the question: `Delete pit 3 …`
    pub fn delete_entry(&self, of: &Named) -> String {
        super::capital(self.say_with("deleting-entry", &fluent_args!["what" => self.place_named(of)]))
    }

    /// The question itself: `Delete pit 3?`
    pub fn delete_asked(&self, of: &Named) -> String {
        super::capital(self.say_with("deleting-asked", &fluent_args!["what" => self.place_named(of)]))
    }

    /// Says what deleting would take away, before it is done: `Pit 3 goes, with 5 steps and one photo. Undo brings it back.`
    pub fn would_go(&self, hanging: &Hanging) -> Vec<String> {
        if !hanging.kept_by.is_empty() {
            return vec![self.machine_kept(hanging)];
        }
        let args =
            fluent_args!["what" => self.place_named(&hanging.of), "along" => self.counted(&hanging.along)];
        let id = if hanging.along.is_empty() { "deleting-goes" } else { "deleting-goes_with" };
        let mut told = vec![super::capital(self.say_with(id, &args))];
        let compared = fluent_args!["count" => hanging.compared];
        told.extend((hanging.compared > 0).then(|| self.say_with("deleting-compared", &compared)));
        told
    }

    /// Says that it is deleted, and how it comes back.
    pub fn deleted_now(&self, hanging: &Hanging) -> String {
        let args =
            fluent_args!["what" => self.place_named(&hanging.of), "along" => self.counted(&hanging.along)];
        let id = if hanging.along.is_empty() { "deleting-gone" } else { "deleting-gone_with" };
        super::capital(self.say_with(id, &args))
    }

    /// Says that a machine stays because passes were made with it.
    pub fn machine_kept(&self, hanging: &Hanging) -> String {
        let passes: Vec<String> = hanging.kept_by.iter().map(ToString::to_string).collect();
        let args = fluent_args![
            "what" => self.place_named(&hanging.of), "count" => passes.len(), "passes" => self.and(&passes),
        ];
        super::capital(self.say_with("deleting-machine_kept", &args))
    }

    /// A record that was deleted here, for a list: `Long Sedge, pit 3, deleted on 12 Sep 2026, 10:30`. `when` is local.
    pub fn went_away(&self, gone: &WentAway, when: Option<NaiveDateTime>) -> String {
        let what = self.in_its_field(&gone.of);
        self.say_with("deleting-was", &fluent_args!["what" => what, "when" => self.when(when)])
    }

    /// Says that a record is back: `Long Sedge, pit 3: back again.`
    pub fn brought_back(&self, gone: &WentAway) -> String {
        super::capital(self.say_with("deleting-back", &fluent_args!["what" => self.in_its_field(&gone.of)]))
    }

    /// A record with the name of its field before it.
    fn in_its_field(&self, of: &Named) -> String {
        let place = self.place_named(of);
        let is_field = of.field.is_empty() || of.kind == Kind::Field;
        if is_field { place } else { self.comma(&[self.name(&of.field), place]) }
    }

    /// Says what is on this phone alone, and since which day; nothing where others have all of it. `since` is local.
    pub fn nobody_else(&self, nobody_else: &NobodyElse, since: Option<NaiveDate>) -> Option<String> {
        let since = since.filter(|_| nobody_else.fields > 0)?;
        let what = self.holes(nobody_else);
        let id = if what.is_empty() { "alone-details" } else { "alone" };
        let args = fluent_args!["day" => self.date(since), "what" => what, "fields" => nobody_else.fields];
        Some(self.say_with(id, &args))
    }

    /// The same in a few words, for a button.
    pub fn nobody_else_short(&self, nobody_else: &NobodyElse) -> Option<String> {
        let what = self.holes(nobody_else);
        let id = if what.is_empty() { "alone-short_details" } else { "alone-short" };
        (nobody_else.fields > 0).then(|| self.say_with(id, &fluent_args!["what" => what]))
    }

    /// Pits and passes, as far as there are any.
    fn holes(&self, nobody_else: &NobodyElse) -> String {
        let holes = [(Kind::Pit, nobody_else.pits), (Kind::Pass, nobody_else.passes)];
        self.counted(&holes.into_iter().filter(|(_, count)| *count > 0).collect())
    }
}
