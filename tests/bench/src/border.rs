//! The border to the shells: a tap and a screen through the session, beside the same work done in the core alone.

use crate::field::mapped_json;
use crate::jvm::Jvm;
use crate::measure::{in_turn, interleaved, timed};
use crate::table::{Bar, Bytes, Row};
use pitface_bindings::{Session, ShownScreen, UniFfiTag};
use pitface_core::answer::Answers;
use pitface_core::record::{FieldNotes, RecordId, Resistance};
use pitface_core::screen::partners::Partners;
use pitface_core::screen::pit::PitAct;
use pitface_core::screen::{Act, Edit, Input, Own, Place, World, show, tap};
use pitface_core::store::{DeviceId, Store};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::hint::black_box;
use std::path::Path;
use std::time::Duration;
use uniffi::Lower;

/// Pits of the field.
const PITS: usize = 50;
/// A frame at 60 Hz: the bar of a screen.
const FRAME: Duration = Duration::from_millis(16);
const NOW_MS: u64 = 1_767_225_600_000;

/// The places and acts that are measured, as a shell sends them.
pub struct Sent {
    /// Goes to the field.
    pub field: String,
    /// Goes to the knife walk of the last pit.
    pub walk: String,
    /// Two answers to one question there, each saved: tapped in turn, each tap changes one value of one step.
    pub answers: [String; 2],
}

/// A session on the field, standing at its last pit's knife walk.
pub struct Tapped {
    /// The session.
    pub session: std::sync::Arc<Session>,
    /// What is sent to it.
    pub sent: Sent,
}

/// The answers tapped in turn.
const ANSWERS: [Resistance; 2] = [Resistance::FirmPush, Resistance::HardPush];

impl Tapped {
    /// Opens a session in `folder`, which is made, and takes the field in.
    pub fn open(folder: &Path, notes: &FieldNotes) -> Result<Self, Box<dyn Error>> {
        std::fs::create_dir_all(folder)?;
        let file = folder.join("many.notes.json");
        std::fs::write(&file, pitface_core::record::notes::write(notes))?;
        let session = Session::open(
            folder.display().to_string(),
            folder.display().to_string(),
            Some("en".to_owned()),
            60,
        )?;
        session.tap(r#"{"own":{"language":"en"}}"#.to_owned())?;
        session.import_file(file.display().to_string())?;
        session.tap(serde_json::to_string(&Act::TakeIn)?)?;
        let (field, walk) = places(notes);
        let sent = Sent {
            field: serde_json::to_string(&Act::Go(field))?,
            walk: serde_json::to_string(&Act::Go(walk))?,
            answers: [answer(0)?, answer(1)?],
        };
        session.tap(sent.walk.clone())?;
        Ok(Self { session, sent })
    }
}

fn answer(at: usize) -> serde_json::Result<String> {
    serde_json::to_string(&Act::from(PitAct::Knife(ANSWERS[at % ANSWERS.len()])))
}

fn places(notes: &FieldNotes) -> (Place, Place) {
    let field = notes.field.id;
    let pit = notes.pits[notes.pits.len() - 1].id;
    (Place::Field { field }, Place::KnifeWalk { field, pit })
}

/// All photos are here.
static NONE_MISSING: BTreeSet<String> = BTreeSet::new();

/// The same field, held by hand: what a program on top of the core would do that is no shell.
struct Alone {
    store: Store,
    notes: FieldNotes,
    answers: Answers,
    words: Words,
    own: Own,
    partners: Partners,
    now_ms: u64,
}

impl Alone {
    fn open(path: &Path, notes: FieldNotes) -> Result<Self, Box<dyn Error>> {
        let mut store = Store::create_or_open(path, DeviceId([9; 16]))?;
        store.save_notes(&notes, NOW_MS)?;
        let words = Words::new(Language::English, LengthUnit::Centimetres);
        let own = Own {
            name: String::new(),
            left_handed: false,
            volume_keys: false,
            language: Some(Language::English),
            unit: LengthUnit::Centimetres,
            light: pitface_core::screen::own::Light::Phone,
        };
        let partners = Partners::none(DeviceId([9; 16]));
        Ok(Self { store, notes, answers: Answers::default(), words, own, partners, now_ms: NOW_MS })
    }

    fn world(&self) -> World<'_> {
        World {
            own: &self.own,
            words: &self.words,
            fields: std::slice::from_ref(&self.notes),
            answers: &self.answers,
            fix: None,
            position_refused: false,
            photos_missing: &NONE_MISSING,
            incoming: None,
            boundary: None,
            partners: &self.partners,
            now: chrono::DateTime::UNIX_EPOCH.fixed_offset(),
            letters: 1.0,
            photo_size: None,
            back: None,
            passed_over: const { &BTreeMap::new() },
            undo: None,
            redo: None,
            went_away: &[],
        }
    }

    fn show(&self, place: Place) {
        drop(black_box(show(place, &self.world())));
    }

    /// Returns what the tap means, saved, noted, and the screen after it.
    fn tap(&mut self, place: Place, met: Resistance) -> Result<(), Box<dyn Error>> {
        self.now_ms += 1;
        let id = RecordId::new(self.now_ms, [3; 10]);
        let done = tap(place, &PitAct::Knife(met).into(), Input::default(), &self.world(), &mut || id)?;
        for edit in &done.edits {
            let Edit::Step { pit, step } = edit else { return Err("the tap saved something else".into()) };
            let saved = self.store.save_step(*pit, step, self.now_ms)?;
            if saved.changes.is_empty() {
                return Err("the tap changed nothing".into());
            }
            let pit = self.notes.pits.iter_mut().find(|own| own.id == *pit).ok_or("no such pit")?;
            match pit.walk.iter_mut().find(|own| own.id == step.id) {
                Some(own) => own.clone_from(step),
                None => pit.walk.push(step.clone()),
            }
        }
        self.show(done.place);
        Ok(())
    }
}

/// All rows, measured in `folder`; `rounds` of a quick measurement.
pub fn all(folder: &Path, rounds: usize) -> Result<Vec<Row>, Box<dyn Error>> {
    let notes = many_pits()?;
    let (field, walk) = places(&notes);
    let Tapped { session, sent } = Tapped::open(&folder.join("session"), &notes)?;
    let mut alone = Alone::open(&folder.join("alone.pitface"), notes)?;
    let rounds = rounds / 5;
    let (mut through, mut by_hand) = (0, 0);
    let (mut tapped, mut by_core) = (Ok(()), Ok(()));
    let saving = interleaved(
        rounds,
        || {
            through += 1;
            let shown = session.tap(sent.answers[through % 2].clone());
            tapped = std::mem::replace(&mut tapped, Ok(())).and(shown.map(|shown| assert!(shown.saved)));
        },
        || {
            by_hand += 1;
            let saved = alone.tap(walk, ANSWERS[by_hand % 2]);
            by_core = std::mem::replace(&mut by_core, Ok(())).and(saved);
        },
    );
    tapped?;
    by_core?;
    let shown = interleaved(rounds, || drop(black_box(session.screen())), || alone.show(walk));
    session.tap(sent.field)?;
    let field_shown = interleaved(rounds, || drop(black_box(session.screen())), || alone.show(field));
    Ok(vec![
        Row {
            what: "a saving tap through the session",
            floor: "the same tap in the core alone",
            measured: saving,
            bar: Bar::Within(FRAME),
        },
        Row {
            what: "a knife walk shown by it",
            floor: "the same screen in the core alone",
            measured: shown,
            bar: Bar::Within(FRAME),
        },
        Row {
            what: "a field of 50 pits shown by it",
            floor: "the same screen in the core alone",
            measured: field_shown,
            bar: Bar::Within(FRAME),
        },
    ])
}

/// The same through JNA, beside a session in Rust.
///
/// # Errors
/// What is missing where there is no Kotlin side, or what went wrong there.
pub fn through_jna(folder: &Path, rounds: usize) -> Result<Vec<Row>, Box<dyn Error>> {
    let notes = many_pits()?;
    let Tapped { session, sent } = Tapped::open(&folder.join("rust"), &notes)?;
    // One session at a time holds a folder: this one is let go before the Java opens it.
    drop(Tapped::open(&folder.join("jna"), &notes)?);
    let mut jvm = Jvm::start(&folder.join("jna"))?;
    let mut fault = None;
    let mut row = |what, acts: [&str; 2], saves: bool| {
        let (mut there, mut here) = (0, 0);
        let measured = in_turn(
            rounds / 5,
            || {
                there += 1;
                let took = jvm.send(acts[there % 2]).and_then(|took| match took.saved {
                    saved if saved == saves => Ok(took.time),
                    saved => Err(format!("{what}: saved is {saved}").into()),
                });
                took.unwrap_or_else(|error| {
                    fault.get_or_insert(error);
                    Duration::ZERO
                })
            },
            || {
                here += 1;
                timed(&mut || {
                    drop(black_box(match acts[here % 2] {
                        "" => session.screen(),
                        act => session.tap(act.to_owned()),
                    }));
                })
            },
        );
        Row { what, floor: "the same through the session in Rust", measured, bar: Bar::Within(FRAME) }
    };
    let rows = vec![
        row("a saving tap through JNA", [&sent.answers[0], &sent.answers[1]], true),
        row("a knife walk shown through JNA", ["", ""], false),
        row("a field of 50 pits through JNA", [&sent.field, &sent.field], false),
    ];
    fault.map_or(Ok(rows), Err)
}

/// How large the records of both screens are, as they cross.
pub fn sizes(folder: &Path) -> Result<Vec<Bytes>, Box<dyn Error>> {
    let Tapped { session, sent } = Tapped::open(&folder.join("sizes"), &many_pits()?)?;
    let walk = session.screen()?;
    let field = session.tap(sent.field)?;
    let bytes = |what, screen: ShownScreen| Bytes {
        what,
        bytes: <ShownScreen as Lower<UniFfiTag>>::lower_into_rust_buffer(screen).destroy_into_vec().len(),
    };
    Ok(vec![bytes("record of a knife walk", walk), bytes("record of a field of 50 pits", field)])
}

/// The field, with an outline and a place for every pit, so that its screen has a plan. The last pit is still being walked: a step more
/// is saved alone, and not with the depth of the hole.
pub fn many_pits() -> Result<FieldNotes, Box<dyn Error>> {
    let mut notes = crate::case::read(0, &mapped_json(PITS))?;
    if let Some(pit) = notes.pits.last_mut() {
        pit.dug_to_mm = None;
    }
    Ok(notes)
}
