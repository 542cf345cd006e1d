//! What a notes file brings or would bring, what happened in a store, and what is deleted.

use super::{Words, Wrote};
use crate::record::RecordId;
use crate::store::{Belongs, Cell, Change, Did, Kind, LastSave, ReadIn, SaveTold};
use fluent::fluent_args;
use std::collections::BTreeMap;

/// Things of one sort that are told one by one; the rest are counted.
const TOLD: usize = 12;

/// How what a file brought is told where a shell knows more: where records belong, and who made them.
pub struct Around<'a> {
    /// Where a record belongs.
    pub belongs: &'a dyn Fn(RecordId) -> Option<Belongs>,
    /// Who made the record of this place among the missing ones, in local time.
    pub made: &'a dyn Fn(usize) -> Option<Wrote<'a>>,
}

impl Words {
    /// Says what a notes file brought (or, `yet` false, would bring), a line or more each; the first names the field.
    pub fn read_in(&self, came: &ReadIn, field: &str, yet: bool, around: &Around) -> Vec<String> {
        let mut lines = vec![self.brought(came, field, yet)];
        lines.extend(self.changes("read_in-changed", &came.changed, around));
        lines.extend(self.changes("read_in-versions", &came.versions, around));
        if !came.deleted.is_empty() {
            lines.push(self.say_with("read_in-deleted", &fluent_args!["count" => came.deleted.len()]));
        }
        for _ in &came.same_name {
            lines.push(self.say_with("read_in-same_name", &fluent_args!["field" => field]));
        }
        lines
    }

    /// Says what a notes file brought earlier and no longer says, or what of it was removed.
    pub fn missing(&self, came: &ReadIn, around: &Around) -> Vec<String> {
        let missing = &came.missing;
        if missing.is_empty() {
            return Vec::new();
        }
        let mut lines = vec![self.say(if came.removed { "missing-removed" } else { "missing" })];
        for (at, record) in missing.records.iter().enumerate().take(TOLD) {
            let place = (around.belongs)(record.record).map(|of| self.belongs(&of)).unwrap_or_default();
            let (who, when) = match (around.made)(at) {
                Some(wrote) => (self.device(wrote.device, wrote.holder), self.when(wrote.when)),
                None => (String::new(), self.when(None)),
            };
            let args = fluent_args!["place" => place, "who" => who, "when" => when];
            let id = if record.removable { "missing-record" } else { "missing-touched" };
            lines.push(self.say_with(id, &args));
        }
        for (Change { record, cell }, untouched) in missing.cells.iter().take(TOLD) {
            let place = (around.belongs)(*record).map(|of| self.belongs(&of)).unwrap_or_default();
            let args = fluent_args!["place" => place, "cell" => self.cell(*cell)];
            lines.push(
                self.say_with(if *untouched { "missing-value" } else { "missing-value_touched" }, &args),
            );
        }
        let more = missing.records.len().saturating_sub(TOLD) + missing.cells.len().saturating_sub(TOLD);
        lines.extend(self.more(more));
        lines
    }

    /// How one has removed what is missing: the option with its word.
    pub fn remove_missing(&self, word: &str) -> String {
        self.say_with("missing-remove", &fluent_args!["word" => word])
    }

    /// A save: its number, who saved and when, in which fields and what.
    pub fn save_told(&self, number: usize, wrote: &Wrote, fields: &[String], save: &SaveTold) -> String {
        // One record is named; of many only how many there are says something.
        let is_one = |named: &&LastSave| {
            named.others == 0 && !(named.did == Did::Made && named.of.kind == Kind::Field)
        };
        let parts: Vec<String> = match save.named.as_ref().filter(is_one) {
            Some(named) if save.undid => {
                vec![self.say_with("history-undid_named", &fluent_args!["what" => self.save_named(named)])]
            }
            Some(named) => vec![self.save_named(named)],
            None => self.counts(save),
        };
        let args = fluent_args![
            "number" => number, "who" => self.device(wrote.device, wrote.holder), "when" => self.when(wrote.when),
            "fields" => self.comma(fields), "what" => parts.join("; "),
        ];
        self.say_with(if fields.is_empty() { "history-line_alone" } else { "history-line" }, &args)
    }

    fn counts(&self, save: &SaveTold) -> Vec<String> {
        [
            ("history-made", &save.made),
            ("history-changed", &save.changed),
            ("history-deleted", &save.deleted),
            ("history-back", &save.brought_back),
        ]
        .into_iter()
        .filter(|(_, counts)| !counts.is_empty())
        .map(|(id, counts)| self.say_with(id, &fluent_args!["what" => self.counted(counts)]))
        .chain(save.joined.then(|| self.say("history-joined")))
        .chain(save.undid.then(|| self.say("history-undid")))
        .collect()
    }

    /// Says that nothing happened yet.
    pub fn nothing_saved(&self) -> String {
        self.say("history-nothing")
    }

    /// How many records are deleted.
    pub fn deleted(&self, records: usize) -> String {
        self.say_with("deleted", &fluent_args!["count" => records])
    }

    /// One of them: where it belongs, who deleted it and when.
    pub fn deleted_line(&self, number: usize, place: &str, wrote: &Wrote) -> String {
        let args = fluent_args![
            "number" => number, "place" => place, "who" => self.device(wrote.device, wrote.holder),
            "when" => self.when(wrote.when),
        ];
        self.say_with("deleted-line", &args)
    }

    /// Says that two records are one field now, of which both people's pits are shown.
    pub fn joined(&self, field: &str, pits: usize) -> String {
        self.say_with("joined", &fluent_args!["field" => field, "pits" => pits])
    }

    /// Says that they are one already.
    pub fn joined_already(&self, field: &str) -> String {
        self.say_with("joined-already", &fluent_args!["field" => field])
    }

    /// Says that a field is taken apart into its records.
    pub fn taken_apart(&self, records: usize) -> String {
        self.say_with("joined-apart", &fluent_args!["count" => records])
    }

    /// A value of a record that is one field with others and says it otherwise: that one is not shown.
    pub fn joined_hidden(&self, cell: Cell, shown: &[u8], hidden: &[u8]) -> String {
        let args = fluent_args![
            "cell" => self.cell(cell), "shown" => self.cell_value(cell, shown), "hidden" => self.cell_value(cell, hidden),
        ];
        self.say_with("joined-hidden", &args)
    }

    fn brought(&self, came: &ReadIn, field: &str, yet: bool) -> String {
        let mut added: BTreeMap<Kind, usize> = BTreeMap::new();
        for (_, kind) in &came.added {
            *added.entry(*kind).or_default() += 1;
        }
        if came.is_nothing_new() {
            return self.say_with("read_in-nothing", &fluent_args!["field" => field]);
        }
        let args = fluent_args![
            "field" => field, "added" => self.counted(&added), "changed" => came.changed.len() + came.versions.len(),
        ];
        let id = match (yet, added.is_empty()) {
            (true, true) => "read_in-only_changed",
            (true, false) => "read_in",
            (false, true) => "read_in-would_change",
            (false, false) => "read_in-would",
        };
        self.say_with(id, &args)
    }

    fn changes(&self, id: &str, changes: &[Change], around: &Around) -> Vec<String> {
        let line = |change: &Change| {
            let place = (around.belongs)(change.record).map(|of| self.belongs(&of)).unwrap_or_default();
            self.say_with(id, &fluent_args!["place" => place, "cell" => self.cell(change.cell)])
        };
        let mut lines: Vec<String> = changes.iter().take(TOLD).map(line).collect();
        lines.extend(self.more(changes.len().saturating_sub(TOLD)));
        lines
    }

    fn more(&self, count: usize) -> Option<String> {
        (count > 0).then(|| self.say_with("read_in-more", &fluent_args!["count" => count]))
    }

    /// `3 pits, 12 steps`.
    pub(super) fn counted(&self, counts: &BTreeMap<Kind, usize>) -> String {
        let told: Vec<String> = counts
            .iter()
            .map(|(kind, count)| self.say_with(counted(*kind), &fluent_args!["count" => *count]))
            .collect();
        self.and(&told)
    }
}

const fn counted(kind: Kind) -> &'static str {
    match kind {
        Kind::Field => "count-field",
        Kind::Pit => "count-pit",
        Kind::Step => "count-step",
        Kind::Layer => "count-layer",
        Kind::Roll => "count-roll",
        Kind::Photo => "count-photo",
        Kind::Person => "count-person",
        Kind::Machine => "count-machine",
        Kind::Pass => "count-pass",
        Kind::AfterDig => "count-after_dig",
        Kind::Part => "count-part",
        Kind::BuriedLine => "count-line",
    }
}
