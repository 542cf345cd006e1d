//! Handing over and taking in: who a device is, what came, what is missing, versions of one value.

use super::cells::{CELLS, Show};
use super::{Words, capital};
use crate::harmless::name;
use crate::merge::DeviceId;
use crate::merge::plan::Missing;
use crate::store::{Belongs, Came, Cell, Kind, Leaving, Partner, Vouched, Vouching, Waiting, photo_name};
use chrono::{NaiveDate, NaiveDateTime, Timelike};
use ciborium::Value;
use fluent::{FluentArgs, fluent_args};
use std::collections::BTreeSet;

/// Who wrote something, and when by that device's clock, in local time.
#[derive(Debug, Clone, Copy)]
pub struct Wrote<'a> {
    /// The device.
    pub device: DeviceId,
    /// How its holder calls themselves; empty if not said.
    pub holder: &'a str,
    /// When; `None` if that is no time.
    pub when: Option<NaiveDateTime>,
}

/// Devices.
impl Words {
    /// A device by its holder and fingerprint: `Ann (1a2b-3c4d-5e6f-7a8b-9c0d)`, or `device 1a2b-…`. Brackets are the fingerprint's
    /// alone. To be compared, it stands on a line without anybody's text.
    pub fn device(&self, device: DeviceId, holder: &str) -> String {
        let holder = name(holder).replace(['(', ')'], "");
        let id = if holder.trim().is_empty() { "merge-device" } else { "merge-device_named" };
        self.say_with(id, &fluent_args!["device" => device.to_string(), "holder" => holder])
    }

    /// A device by its holder alone, with what it is to this one and how many of its edits are here. Its fingerprint stands above it,
    /// on a line of its own.
    pub fn partner(&self, partner: &Partner, is_this: bool, signs: bool) -> String {
        let holder = name(&partner.holder);
        let unnamed = holder.trim().is_empty();
        let args = fluent_args![
            "who" => if unnamed { self.say("merge-unnamed") } else { holder.into_owned() },
            "state" => self.partner_is(partner, is_this, signs),
            "edits" => partner.edits,
        ];
        capital(self.say_with("partner-line", &args))
    }

    /// Says what a device is to this one.
    pub(super) fn partner_is(&self, partner: &Partner, is_this: bool, signs: bool) -> String {
        self.say(match partner {
            _ if is_this => "partner-own",
            Partner { own: true, .. } => "partner-earlier",
            Partner { accepted: true, .. } => "partner-accepted",
            Partner { refused_ms: Some(_), .. } => "partner-refused",
            _ if signs => "partner-waits",
            _ => "partner-unsigned",
        })
    }

    /// Says that a device which is not known wants to be accepted, and what to do.
    pub fn stranger(&self, device: DeviceId, holder: &str) -> String {
        self.of_device("came_in-stranger", device, holder)
    }

    /// Says that a device was copied, and what to do.
    pub fn copied(&self, device: DeviceId, holder: &str) -> String {
        self.of_device("came_in-copied", device, holder)
    }

    /// Says that a device's clock is wrong, and what to do.
    pub fn clock_wrong(&self, device: DeviceId, holder: &str) -> String {
        self.of_device("came_in-clock_wrong", device, holder)
    }

    /// Says what one device says in the name of another, whether that is used, and what to do.
    pub fn vouching(&self, vouching: &Vouching, partners: &[Partner]) -> String {
        let who = |device: DeviceId| self.device(device, holder(partners, device));
        let args = fluent_args![
            "who" => who(vouching.signer), "device" => who(vouching.device), "last" => vouching.last,
        ];
        capital(self.say_with(
            match vouching.standing {
                Vouched::Believed => "vouching-believed",
                Vouched::Asks => "vouching-asks",
                Vouched::ThisDevice => "vouching-this_device",
                Vouched::Accepted => "vouching-accepted",
                Vouched::WentOn => "vouching-went_on",
            },
            &args,
        ))
    }

    /// Says that a device is refused from now on, and how many bundles that waited went.
    pub fn refused_now(&self, device: DeviceId, holder: &str, bundles: u64) -> String {
        let args = fluent_args!["who" => self.device(device, holder), "bundles" => bundles];
        capital(self.say_with("partner-refused_now", &args))
    }

    /// Says that what one device says in the name of another is believed from now on.
    pub fn believed_now(&self, signer: DeviceId, holder: &str, device: DeviceId) -> String {
        let args = fluent_args!["who" => self.device(signer, holder), "device" => device.to_string()];
        capital(self.say_with("partner-believed_now", &args))
    }

    /// Says what waits here; nothing where nothing does.
    pub fn waits(&self, waiting: &Waiting) -> Option<String> {
        let args = fluent_args![
            "bundles" => waiting.bundles, "files" => waiting.files, "size" => waiting.bytes.div_ceil(1000),
        ];
        (waiting.bytes > 0).then(|| self.say_with("waits", &args))
    }

    /// Says that what waited was thrown away.
    pub fn emptied(&self, waited: &Waiting) -> String {
        let args = fluent_args!["bundles" => waited.bundles, "files" => waited.files];
        self.say_with("waits-emptied", &args)
    }

    /// Says that a device answers for what one whose key is lost wrote.
    pub fn vouches(&self, signer: DeviceId, holder: &str, lost: DeviceId) -> String {
        let args = fluent_args!["who" => self.device(signer, holder), "device" => lost.to_string()];
        capital(self.say_with("vouches", &args))
    }

    fn of_device(&self, id: &str, device: DeviceId, holder: &str) -> String {
        capital(self.say_with(id, &fluent_args!["who" => self.device(device, holder)]))
    }
}

/// What came and what went.
impl Words {
    /// How many edits came.
    pub fn came_in(&self, edits: u64) -> String {
        self.say_with("came_in", &fluent_args!["edits" => edits])
    }

    /// How many photos came.
    pub fn photos_came_in(&self, photos: usize) -> String {
        self.say_with("came_in-photos", &fluent_args!["photos" => photos])
    }

    /// Says that photos were not kept because nothing here names them.
    pub fn photos_unnamed(&self, photos: usize) -> String {
        self.say_with("came_in-photos_unnamed", &fluent_args!["photos" => photos])
    }

    /// Which pieces of a photo did not fit together, one sentence for each file that is known to have brought some; `whole` if the photo
    /// is here all the same.
    pub fn photo_wrong(&self, photo: &str, files: &BTreeSet<String>, whole: bool) -> Vec<String> {
        if files.is_empty() && !whole {
            return vec![self.say_with("came_in-photo_wrong", &fluent_args!["photo" => brief(photo)])];
        }
        let id = if whole { "came_in-photo_wrong_before" } else { "came_in-photo_wrong_in" };
        let of_file = |file| self.say_with(id, &fluent_args!["photo" => brief(photo), "file" => file]);
        files.iter().map(String::as_str).map(of_file).collect()
    }

    /// Says that edits are missing, and what to do.
    pub fn edits_missing(&self, missing: &Missing, holder: &str) -> String {
        let one = missing.first == missing.last;
        let id = if one { "came_in-missing_one" } else { "came_in-missing" };
        self.say_with(id, &self.range_of(missing, holder))
    }

    /// All that is to be told of what came, `partners` being all that are known now; one sentence or more each.
    pub fn came(&self, came: &Came, partners: &[Partner]) -> Vec<String> {
        let taken = &came.taken;
        let holder = |device: DeviceId| holder(partners, device);
        let only_held = taken.held && taken.edits == 0 && taken.known == 0;
        let photos = (!came.photos.is_empty()).then(|| self.photos_came_in(came.photos.len()));
        let unnamed =
            (!came.photos_unnamed.is_empty()).then(|| self.photos_unnamed(came.photos_unnamed.len()));
        (!only_held)
            .then(|| self.came_in(taken.edits))
            .into_iter()
            .chain(photos)
            .chain(taken.held.then(|| self.bundle_held()))
            .chain(taken.strangers.iter().map(|device| self.stranger(*device, holder(*device))))
            .chain(
                taken
                    .refused
                    .iter()
                    .map(|device| self.of_device("came_in-refused", *device, holder(*device))),
            )
            .chain(
                taken
                    .no_room
                    .iter()
                    .map(|device| self.of_device("came_in-no_room", *device, holder(*device))),
            )
            .chain(taken.vouchings.iter().map(|vouching| self.vouching(vouching, partners)))
            .chain(taken.missing.iter().map(|missing| self.edits_missing(missing, holder(missing.device))))
            .chain(taken.copied.iter().map(|device| self.copied(*device, holder(*device))))
            .chain(taken.clock_wrong.iter().map(|device| self.clock_wrong(*device, holder(*device))))
            .chain(came.photos_wrong.iter().flat_map(|(photo, files)| {
                self.photo_wrong(&photo_name(photo), files, came.photos.contains(photo))
            }))
            .chain(unnamed)
            .chain((taken.unknown_parts > 0).then(|| {
                self.say_with("came_in-unknown_parts", &fluent_args!["parts" => taken.unknown_parts])
            }))
            .collect()
    }

    /// Says that a file of a newer version is kept for later.
    pub fn bundle_held(&self) -> String {
        self.say("came_in-held")
    }

    /// Says what was handed over.
    pub fn handed_over(&self, bundles: u64, photos: usize) -> String {
        self.say_with("handed_over", &fluent_args!["bundles" => bundles, "photos" => photos])
    }

    /// Says that there was nothing to hand over.
    pub fn nothing_to_hand_over(&self) -> String {
        self.say("handed_over-nothing")
    }

    /// Says that what was handed over is locked.
    pub fn handed_over_locked(&self) -> String {
        self.say("handed_over-locked")
    }

    /// Says what became of the photos that were to go: how many go without the notes a camera made in them, how many stay because these cannot be taken
    /// out. Nothing where there is neither.
    pub fn photos_leaving(&self, leaving: &Leaving) -> Vec<String> {
        let told = [("handed_over-stripped", leaving.stripped), ("handed_over-stay", leaving.stay.len())];
        let told = told.into_iter().filter(|(_, photos)| *photos > 0);
        told.map(|(id, photos)| self.say_with(id, &fluent_args!["photos" => photos])).collect()
    }

    /// Says that the key could not be read, where its file is now, and what follows.
    pub fn key_set_aside(&self, file: &str) -> String {
        self.say_with("key-set_aside", &fluent_args!["file" => file])
    }

    /// Says what whoever gets chosen fields has of them.
    pub fn handed_over_chosen(&self) -> String {
        self.say("handed_over-chosen")
    }

    /// How many of this device's files in a shared folder were made one.
    pub fn gathered(&self, files: usize) -> String {
        if files == 0 {
            return self.say("handed_over-gathered_already");
        }
        self.say_with("handed_over-gathered", &fluent_args!["files" => files])
    }

    /// How many edits made here no other device is known to have.
    pub fn not_carried(&self, edits: u64) -> String {
        if edits == 0 {
            return self.say("handed_over-carried");
        }
        self.say_with("handed_over-waiting", &fluent_args!["edits" => edits])
    }

    /// How many of the photos that records name are here.
    pub fn photos_here(&self, here: usize, named: usize) -> String {
        self.say_with("handed_over-photos", &fluent_args!["here" => here, "named" => named])
    }

    fn range_of<'a>(&self, missing: &Missing, holder: &str) -> FluentArgs<'a> {
        fluent_args![
            "who" => self.device(missing.device, holder), "first" => missing.first, "last" => missing.last,
        ]
    }
}

/// What a file of bundles holds.
impl Words {
    /// Says that a file is locked.
    pub fn locked_inside(&self) -> String {
        self.say("inside-locked")
    }

    /// A bundle that holds: whose edits, which, sealed when and with what program.
    pub fn bundle_inside(&self, wrote: &Wrote, first: u64, last: u64, program: &str) -> String {
        let args = fluent_args![
            "who" => self.device(wrote.device, wrote.holder), "first" => first, "last" => last,
            "when" => self.when(wrote.when), "program" => program,
        ];
        capital(self.say_with(if first > last { "inside-seen" } else { "inside-part" }, &args))
    }

    /// A bundle that does not hold. Why is English, as all faults are.
    pub fn bundle_broken(&self, why: &str) -> String {
        self.say_with("inside-broken", &fluent_args!["why" => why])
    }

    /// A photo in a file, with its pieces; whether its hash holds is known only of a whole one.
    pub fn photo_inside(
        &self,
        photo: &str,
        size_bytes: u64,
        pieces: [u64; 2],
        holds: Option<bool>,
    ) -> String {
        let [here, pieces] = pieces;
        let args = fluent_args![
            "photo" => brief(photo), "size" => size_bytes.div_ceil(1000), "here" => here, "pieces" => pieces,
        ];
        let id = match holds {
            None => "inside-photo",
            Some(true) => "inside-photo_whole",
            Some(false) => "inside-photo_wrong",
        };
        self.say_with(id, &args)
    }

    /// A part that this version does not know.
    pub fn unknown_inside(&self, kind: u16, size_bytes: u64) -> String {
        let args = fluent_args!["kind" => kind, "size" => size_bytes.div_ceil(1000)];
        self.say_with("inside-unknown", &args)
    }

    /// Edits that a file does not bring, though others in it follow on them.
    pub fn gap_inside(&self, missing: &Missing, holder: &str) -> String {
        self.say_with("inside-gap", &self.range_of(missing, holder))
    }

    /// Says that a file brings all it needs.
    pub fn no_gap_inside(&self) -> String {
        self.say("inside-no_gap")
    }
}

/// What a check found.
impl Words {
    /// Says that all is sound.
    pub fn checked_sound(&self, edits: usize, cells: usize, photos: u64) -> String {
        self.say_with("checked-sound", &fluent_args!["edits" => edits, "cells" => cells, "photos" => photos])
    }

    /// Edits that are damaged, and what to do.
    pub fn checked_damaged(&self, damaged: &Missing, holder: &str) -> String {
        capital(self.say_with("checked-damaged", &self.range_of(damaged, holder)))
    }

    /// The same where there is nothing to be done about it here.
    pub fn edits_damaged(&self, damaged: &Missing, holder: &str) -> String {
        capital(self.say_with("checked-edits", &self.range_of(damaged, holder)))
    }

    /// Says that the current cells were made anew.
    pub fn checked_cells(&self) -> String {
        self.say("checked-cells")
    }

    /// A damaged photo, told by its name, and whether it was mended.
    pub fn checked_photo(&self, photo: &str, mended: bool) -> String {
        let args = fluent_args!["photo" => brief(photo)];
        self.say_with(if mended { "checked-photo_mended" } else { "checked-photo" }, &args)
    }

    /// Says that photos which records name are not here.
    pub fn checked_photos_missing(&self, photos: usize) -> String {
        self.say_with("checked-photos_missing", &fluent_args!["photos" => photos])
    }
}

/// Versions of one value, and what was deleted while somebody went on with it.
impl Words {
    /// How many cells have several versions.
    pub fn versions(&self, cells: usize) -> String {
        self.say_with("versions", &fluent_args!["count" => cells])
    }

    /// Which cell of what it is that has versions.
    pub fn versions_title(&self, number: usize, place: &str, cell: Cell) -> String {
        let args = fluent_args!["number" => number, "place" => place, "cell" => self.cell(cell)];
        self.say_with("versions-title", &args)
    }

    /// A version: its value, who wrote it and when.
    pub fn version(&self, number: usize, cell: Cell, value: &[u8], wrote: &Wrote, shown: bool) -> String {
        let args = fluent_args![
            "number" => number,
            "value" => self.cell_value(cell, value),
            "who" => self.device(wrote.device, wrote.holder),
            "when" => self.when(wrote.when),
        ];
        self.say_with(if shown { "versions-shown" } else { "versions-line" }, &args)
    }

    /// Says that one version stands from now on.
    pub fn settled_on(&self, place: &str, cell: Cell, value: &[u8]) -> String {
        let value = self.cell_value(cell, value);
        let args = fluent_args!["place" => place, "cell" => self.cell(cell), "value" => value];
        self.say_with("versions-settled", &args)
    }

    /// How many records were deleted while somebody went on with them.
    pub fn regretted(&self, records: usize) -> String {
        self.say_with("regretted", &fluent_args!["count" => records])
    }

    /// One of them: who deleted it and when, and who wrote what meanwhile.
    pub fn regretted_line(
        &self,
        number: usize,
        place: &str,
        deleted: &Wrote,
        others: &[(Cell, Wrote)],
    ) -> String {
        let others: Vec<String> = others
            .iter()
            .map(|(cell, wrote)| {
                let who = self.device(wrote.device, wrote.holder);
                let args =
                    fluent_args!["who" => who, "when" => self.when(wrote.when), "cell" => self.cell(*cell)];
                self.say_with("regretted-one", &args)
            })
            .collect();
        let args = fluent_args![
            "number" => number, "place" => place, "who" => self.device(deleted.device, deleted.holder),
            "when" => self.when(deleted.when), "others" => self.and(&others),
        ];
        self.say_with("regretted-line", &args)
    }

    /// The same in few words: who deleted it, and who went on with it.
    pub fn regretted_short(&self, place: &str, deleted: &Wrote, others: &[(Cell, Wrote)]) -> String {
        let who = |wrote: &Wrote| self.device(wrote.device, wrote.holder);
        let others: Vec<String> = others.iter().map(|(_, wrote)| who(wrote)).collect();
        let args = fluent_args!["place" => place, "who" => who(deleted), "others" => self.and(&others)];
        self.say_with("regretted-short", &args)
    }

    /// Says that a record is back, or stays deleted.
    pub fn regret_settled(&self, place: &str, back: bool) -> String {
        let args = fluent_args!["place" => place];
        self.say_with(if back { "regretted-back" } else { "regretted-stays" }, &args)
    }

    /// Where a record belongs: `Long Sedge, pit 3, layer`.
    pub fn belongs(&self, of: &Belongs) -> String {
        let mut told = vec![self.name(&of.field_name)];
        for kind in &of.kinds {
            told.push(match (kind, of.pit_number) {
                (Kind::Field | Kind::Person, _) => continue,
                (Kind::Pit, Some(number)) => self.say_with("belongs-pit", &fluent_args!["number" => number]),
                _ => self.kind_of_record(*kind),
            });
        }
        let told = self.comma(&told);
        let gone = of.pit.is_some() && of.pit_number.is_none();
        if gone { self.say_with("belongs-gone", &fluent_args!["what" => told]) } else { told }
    }

    /// How a cell is called.
    pub fn cell(&self, cell: Cell) -> String {
        row(cell).map_or_else(|| self.say("cell_name-newer"), |(_, id, _)| self.say(id))
    }

    /// Says what stands in a cell, as people read it.
    pub fn cell_value(&self, cell: Cell, value: &[u8]) -> String {
        let Ok(value) = ciborium::from_reader::<Value, _>(value) else { return self.say("cell_value-other") };
        match (row(cell).map(|(.., show)| show), &value) {
            (_, Value::Null) => self.say("cell_value-none"),
            (Some(Show::Length), _) => self.lengths(&value, Self::depth),
            (Some(Show::Width), _) => self.lengths(&value, Self::width),
            (Some(Show::Code(list)), Value::Text(code)) => self.code(list, code),
            (Some(Show::Code(_)), Value::Float(percent)) => self.percent(percent / 100.0),
            (Some(Show::Texture), Value::Text(code)) => self.code("texture", code),
            (Some(Show::Texture), Value::Array(items)) => {
                let class = items.last().and_then(Value::as_text).unwrap_or_default();
                self.code("texture_class", class)
            }
            (Some(Show::Places), Value::Array(items)) => {
                let places = items.last().and_then(Value::as_array).map_or(items.len(), Vec::len);
                let pairs = items.iter().all(|item| item.as_array().is_some_and(|item| item.len() == 2));
                let count = if pairs { items.len() } else { places };
                self.say_with("cell_value-places", &fluent_args!["count" => count])
            }
            (Some(Show::Marks), Value::Array(marks)) => {
                self.say_with("cell_value-places", &fluent_args!["count" => marks.len()])
            }
            _ => self.plain(&value),
        }
    }

    /// A moment: day and time.
    pub fn when(&self, when: Option<NaiveDateTime>) -> String {
        let Some(when) = when else { return self.say("cell_value-other") };
        let time = format!("{:02}:{:02}", when.hour(), when.minute());
        self.say_with("versions-when", &fluent_args!["day" => self.date(when.date()), "time" => time])
    }

    /// The word of a code, or the code itself if this version has none for it.
    fn code(&self, list: &str, code: &str) -> String {
        let id = format!("{list}-{code}");
        if self.bundle.has_message(&id) { self.say(&id) } else { code.to_owned() }
    }

    fn lengths(&self, value: &Value, written: fn(&Self, u32) -> String) -> String {
        match value {
            Value::Integer(mm) => {
                u32::try_from(*mm).map_or_else(|_| self.plain(value), |mm| written(self, mm))
            }
            Value::Array(items) => {
                let items: Vec<String> = items.iter().map(|item| self.lengths(item, written)).collect();
                self.comma(&items)
            }
            _ => self.plain(value),
        }
    }

    fn plain(&self, value: &Value) -> String {
        match value {
            Value::Null => self.say("cell_value-none"),
            Value::Bool(true) => self.say("cell_value-yes"),
            Value::Bool(false) => self.say("cell_value-no"),
            Value::Integer(number) => i128::from(*number).to_string(),
            Value::Float(number) => number.to_string(),
            Value::Text(text) => match text.parse::<NaiveDate>() {
                Ok(day) => self.date(day),
                Err(_) => text.clone(),
            },
            Value::Bytes(_) => self.say("cell_value-record"),
            Value::Array(items) => {
                let items: Vec<String> = items.iter().map(|item| self.plain(item)).collect();
                self.comma(&items)
            }
            _ => self.say("cell_value-other"),
        }
    }
}

/// How the holder of a device calls themselves.
fn holder(partners: &[Partner], device: DeviceId) -> &str {
    partners.iter().find(|other| other.device == device).map_or("", |other| other.holder.as_str())
}

pub(super) fn row(cell: Cell) -> Option<&'static (&'static str, &'static str, Show)> {
    let name = cell.name()?;
    CELLS.iter().find(|(cell, ..)| *cell == name)
}

/// Enough of a photo's name to tell it from others.
fn brief(photo: &str) -> String {
    photo.chars().take(8).collect()
}
