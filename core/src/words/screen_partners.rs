//! What stands on the screens of handing over and taking in.

use super::{Words, Wrote, capital};
use crate::merge::{Damage, DeviceId};
use crate::record::codes::codes;
use crate::store::{Cell, Partner, Personal};
use fluent::fluent_args;

codes!(
    /// A fixed text of these screens.
    PartnerText {
        Title = "title",
        Everything = "everything",
        WithPhotos = "with_photos",
        NotesAlone = "notes_alone",
        NobodyYet = "nobody_yet",
        Others = "others",
        Waiting = "waiting",
        Lacking = "lacking",
        OnlyLacking = "only_lacking",
        Compare = "compare",
        AcceptMeans = "accept_means",
        SameSigns = "same_signs",
        Refuse = "refuse",
        RefuseMeans = "refuse_means",
        AnswersFor = "answers_for",
        Believe = "believe",
        EmptyWaiting = "empty_waiting",
        StoreDamaged = "store_damaged",
        ToSettle = "to_settle",
        Versions = "versions",
        BothKept = "both_kept",
        WhichHolds = "which_holds",
        Regretted = "regretted",
        WhatHolds = "what_holds",
        BringBack = "bring_back",
        StayDeleted = "stay_deleted",
        NamesAndPlaces = "names_and_places",
        RegrettedShort = "regretted_short",
        Personal = "personal",
        NothingPersonal = "nothing_personal",
        TakeOut = "take_out",
        TakeOutMeans = "take_out_means",
        TakeOutCannot = "take_out_cannot",
        NotesFile = "notes_file",
        NothingGoes = "nothing_goes",
        TakeIn = "take_in",
        AreTheyOne = "are_they_one",
        OneField = "one_field",
        OneFieldMeans = "one_field_means",
    }
);

impl Words {
    /// Whose this device is; the signs by which others tell it stand below, on a line of their own.
    pub fn this_device(&self, holder: &str) -> String {
        let id = if holder.trim().is_empty() { "partner-this" } else { "partner-this_named" };
        self.say_with(id, &fluent_args!["holder" => holder])
    }

    /// Says what a device is to this one, and how many of its edits are here.
    pub fn partner_state(&self, partner: &Partner) -> String {
        let args = fluent_args!["state" => self.partner_is(partner, false, true), "edits" => partner.edits];
        self.say_with("partner-state", &args)
    }

    /// Says that two fields have one name.
    pub fn same_name(&self, field: &str) -> String {
        self.say_with("partner-same_name", &fluent_args!["field" => field])
    }

    /// The button that accepts a device.
    pub fn accept(&self, who: &str) -> String {
        self.say_with("partner-accept", &fluent_args!["who" => who])
    }

    /// Says that a device is accepted now.
    pub fn accepted(&self, device: DeviceId, holder: &str) -> String {
        capital(self.say_with("partner-accepted_now", &fluent_args!["who" => self.device(device, holder)]))
    }

    /// Says that a file is ready to be handed over, with so many photos; and that some are damaged and stay here.
    pub fn bundle_ready(&self, photos: usize, damaged: usize) -> String {
        let ready = self.say_with("bundle-ready", &fluent_args!["photos" => photos]);
        if damaged == 0 {
            return ready;
        }
        self.say_with("bundle-without", &fluent_args!["ready" => ready, "damaged" => damaged])
    }

    /// Says that a file of bundles is not taken in, why, and what to do.
    pub fn bundle_refused(&self, damage: &Damage) -> String {
        self.say(match damage {
            Damage::NotABundle => "bundle-none",
            Damage::CutOff => "bundle-cut_off",
            Damage::Damaged(_) => "bundle-damaged",
            Damage::TooLarge(_) => "bundle-too_large",
            Damage::Forged => "bundle-forged",
            Damage::Newer(_) => "came_in-held",
        })
    }

    /// Says that no more files of newer versions are kept, and what to do.
    pub fn too_much_waits(&self) -> String {
        self.say("bundle-too_much_waits")
    }

    /// Says that two devices show the same signs, so that neither can be accepted.
    pub fn same_fingerprint(&self) -> String {
        self.say("partner-same_fingerprint")
    }

    /// Says that a file is locked, and what to do.
    pub fn bundle_locked(&self) -> String {
        self.say("bundle-locked")
    }

    /// Says that the word set here does not open a file, and what to do.
    pub fn bundle_wrong_word(&self) -> String {
        self.say("bundle-wrong_word")
    }

    /// How many records only a newer version can show.
    pub fn not_shown(&self, records: usize) -> String {
        self.say_with("partner-not_shown", &fluent_args!["records" => records])
    }

    /// How many photos on this phone are damaged, and what to do.
    pub fn photos_damaged(&self, count: usize) -> String {
        self.say_with("partner-photos_damaged", &fluent_args!["count" => count])
    }

    /// By whom a name or a position was written, how often.
    pub fn personal(&self, of: &Personal) -> String {
        self.say_with("personal-values", &fluent_args!["here" => of.here, "others" => of.others])
    }

    /// Says that a name or a position was taken out of what is kept here, how many values, and what is to be done.
    pub fn taken_out(&self, name: &str, values: u64) -> String {
        self.say_with("personal-taken_out", &fluent_args!["name" => name, "values" => values])
    }

    /// Which value of what has several versions.
    pub fn versions_of(&self, place: &str, cell: Cell) -> String {
        self.say_with("versions-of", &fluent_args!["place" => place, "cell" => self.cell(cell)])
    }

    /// Where several values have several versions.
    pub fn versions_in(&self, place: &str, count: usize) -> String {
        self.say_with("versions-in", &fluent_args!["place" => place, "count" => count])
    }

    /// How many values here have several versions.
    pub fn versions_here(&self, count: usize) -> String {
        self.say_with("versions-here", &fluent_args!["count" => count])
    }

    /// A version on its button.
    pub fn version_label(&self, cell: Cell, value: &[u8]) -> String {
        capital(self.cell_value(cell, value))
    }

    /// Who wrote a version, and when.
    pub fn wrote(&self, wrote: &Wrote) -> String {
        let args = fluent_args![
            "who" => self.device(wrote.device, wrote.holder), "when" => self.when(wrote.when),
        ];
        self.say_with("versions-wrote", &args)
    }

    /// The button to the next one of several: `the next (1 of 3)`.
    pub fn next_version(&self, number: usize, count: usize) -> String {
        self.say_with("versions-next", &fluent_args!["number" => number, "count" => count])
    }
}
