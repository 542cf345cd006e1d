//! Two phones that hand over to each other: strangers, versions, deletions, photos, damage, a phone that was lost.

use crate::support;

use pitface_bindings::{ScreenKind, Session, ShownBlock, ShownDoes, ShownRow, ShownScreen};
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use support::{demo, field_id, noted, rows, tap, tappable, texts};
use tempfile::TempDir;

struct Phone {
    folder: TempDir,
    session: Arc<Session>,
}

impl Phone {
    /// A phone whose holder calls themselves so.
    fn of(name: &str) -> Self {
        let folder = tempfile::tempdir().unwrap();
        for part in ["notes", "key", "handed"] {
            std::fs::create_dir(folder.path().join(part)).unwrap();
        }
        let session = open(folder.path());
        tap(&session, &session.screen().unwrap(), "English");
        let phone = Self { folder, session };
        let own = phone.go(&json!({ "setting": { "setting": "name" } }));
        support::type_in(&phone.session, &own, name);
        phone
    }

    /// Two who know each other, with the same field; and the field's id.
    fn pair() -> (Self, Self, String) {
        let (ann, ben) = (Self::of("Ann"), Self::of("Ben"));
        support::take_in(&ann.session, &demo("mere_piece"));
        let field = field_id(&ann.session);
        ben.take_in(&ann.hand_over(true));
        ben.accept("Ann");
        ann.take_in(&ben.hand_over(true));
        ann.accept("Ben");
        (ann, ben, field)
    }

    fn go(&self, place: &Value) -> ShownScreen {
        self.act(&json!({ "go": place }))
    }

    fn act(&self, act: &Value) -> ShownScreen {
        self.session.tap(act.to_string()).unwrap()
    }

    fn path(&self, part: &str) -> PathBuf {
        self.folder.path().join(part)
    }

    /// The main button of the screen of the partners.
    fn hand_over(&self, with_photos: bool) -> PathBuf {
        let screen = self.go(&json!("partners"));
        let asked = tappable(&screen).into_iter().rev().find_map(|(_, does)| match does {
            ShownDoes::ShareBundle { to, with_photos: its } if its == with_photos => Some(to),
            _ => None,
        });
        self.export(asked.unwrap(), with_photos).unwrap()
    }

    fn export(&self, to: Option<String>, with_photos: bool) -> Option<PathBuf> {
        let handed = self.path("handed").display().to_string();
        let ready = self.session.export_bundle(to, with_photos, handed).unwrap();
        assert_eq!(
            ready.path.is_some(),
            ready.screen.told.starts_with("The file is ready"),
            "{:?}",
            ready.screen.told
        );
        ready.path.map(PathBuf::from)
    }

    fn take_in(&self, file: &Path) -> ShownScreen {
        self.session.import_file(file.display().to_string()).unwrap()
    }

    /// Accepts whoever waits under this name, from the row on.
    fn accept(&self, name: &str) -> ShownScreen {
        let screen = self.go(&json!("partners"));
        let waiting = row(&screen, name);
        let ShownDoes::Act { act } = waiting.does else { panic!("{waiting:?}") };
        let stranger = self.session.tap(act).unwrap();
        assert_eq!(stranger.kind, ScreenKind::Partners);
        let label = stranger.next.clone().unwrap().label;
        assert_eq!(label, format!("The same: accept {}", waiting.title));
        tap(&self.session, &stranger, &label)
    }

    /// Puts a detail of the field so, at its own screen.
    fn sets(&self, field: &str, detail: &str, label: &str) {
        let screen = self.go(&json!({ "detail": { "field": field, "detail": detail } }));
        assert!(tap(&self.session, &screen, label).saved, "{label}");
    }

    fn noted(&self, field: &str) -> Value {
        serde_json::from_str(&noted(&self.session, field)).unwrap()
    }
}

fn open(folder: &Path) -> Arc<Session> {
    let path = |part| folder.join(part).display().to_string();
    Session::open(path("notes"), path("key"), Some("en-GB".to_owned()), 60).unwrap()
}

#[track_caller]
fn row(screen: &ShownScreen, begins: &str) -> ShownRow {
    let found = rows(screen).into_iter().find(|row| row.title.starts_with(begins));
    found.unwrap_or_else(|| panic!("no {begins:?} among {:?}", rows(screen)))
}

fn said(screen: &ShownScreen) -> String {
    texts(screen).join("\n")
}

fn notes_of_buttons(screen: &ShownScreen) -> Vec<[String; 2]> {
    let answers = screen.blocks.iter().filter_map(|block| match block {
        ShownBlock::Question { answers, .. } => Some(answers.clone()),
        _ => None,
    });
    answers.flatten().map(|button| [button.label, button.note]).collect()
}

#[test]
fn a_stranger_waits_until_the_signs_are_compared() {
    let (ann, ben) = (Phone::of("Ann"), Phone::of("Ben"));
    support::take_in(&ann.session, &demo("mere_piece"));
    let field = field_id(&ann.session);
    let file = ann.hand_over(true);

    let screen = ben.take_in(&file);
    assert_eq!((screen.kind, screen.told.as_str()), (ScreenKind::Partners, "Taken in: nothing new."));
    assert!(!rows(&ben.go(&json!("fields"))).iter().any(|row| row.title == "Mere Piece"));
    let waiting = row(&ben.go(&json!("partners")), "Ann (");
    assert_eq!(waiting.lines, ["waits to be accepted, no edits here"]);
    // The signs that Ann's phone shows of itself.
    let own = said(&ann.go(&json!("partners")));
    assert!(own.contains("This phone is that of Ann. Others accept it by these signs:"), "{own}");
    let signs = waiting.title.trim_start_matches("Ann (").trim_end_matches(')');
    assert!(own.lines().any(|line| line == signs), "alone on a line: {own}");

    let screen = ben.accept("Ann");
    assert!(screen.told.starts_with("Ann (") && screen.told.contains("Taken in: "), "{}", screen.told);
    assert_eq!(row(&ben.go(&json!("fields")), "Mere Piece").title, "Mere Piece");
    assert_eq!(ben.noted(&field), ann.noted(&field));
    // Taken in again it is nothing new.
    assert_eq!(ben.take_in(&file).told, "Taken in: nothing new.");
}

#[test]
fn what_nobody_else_has_is_counted_at_home_until_it_is_heard_of() {
    let (ann, ben, field) = Phone::pair();
    let home = |phone: &Phone| {
        let menu = phone.go(&json!("fields")).menu;
        menu.into_iter().map(|button| [button.label, button.note]).collect::<Vec<_>>()
    };
    assert_eq!(home(&ann)[1], ["Hand over, take in", ""]);
    ann.sets(&field, "texture", "Medium");
    assert_eq!(home(&ann)[1][1], "details nobody else has");
    ben.take_in(&ann.hand_over(true));
    assert_eq!(home(&ann)[1][1], "details nobody else has");
    ann.take_in(&ben.hand_over(true));
    assert_eq!(home(&ann)[1][1], "");
}

#[test]
fn two_versions_stand_where_they_are_until_one_is_tapped() {
    let (ann, ben, field) = Phone::pair();
    ann.sets(&field, "texture", "Medium");
    ben.sets(&field, "texture", "Heavy");
    ann.take_in(&ben.hand_over(true));

    let at_field = ann.go(&json!({ "field": { "field": field } }));
    let marked = rows(&at_field)[0].clone();
    assert_eq!(marked.title, "Mere Piece: one value in several versions");
    let ShownDoes::Act { act } = marked.does else { panic!("{marked:?}") };
    let screen = ann.session.tap(act).unwrap();
    assert_eq!(screen.kind, ScreenKind::Versions);
    let buttons = notes_of_buttons(&screen);
    assert_eq!(buttons.iter().map(|[label, _]| label.as_str()).collect::<Vec<_>>(), ["Heavy", "Medium"]);
    assert!(buttons[0][1].starts_with("Ben (") && buttons[1][1].starts_with("Ann ("), "{buttons:?}");

    // A restart comes back to the question.
    drop(screen);
    let screen = tap(&ann.session, &ann.session.screen().unwrap(), "Medium");
    assert!(screen.saved && screen.told.ends_with("medium stands from now on."), "{}", screen.told);
    assert_eq!(screen.kind, ScreenKind::Field);
    assert!(!rows(&screen).iter().any(|row| row.title.contains("several versions")));
    // Undo takes back what was shown before.
    ann.act(&json!("undo"));
    assert_eq!(ann.noted(&field)["field"]["texture"], "heavy");

    ben.take_in(&ann.hand_over(true));
    assert_eq!(ben.noted(&field), ann.noted(&field));
    assert!(!said(&ben.go(&json!("partners"))).contains("settled"));
}

#[test]
fn the_next_save_settles_too() {
    let (ann, ben, field) = Phone::pair();
    ann.sets(&field, "texture", "Medium");
    ben.sets(&field, "texture", "Heavy");
    ann.take_in(&ben.hand_over(true));
    assert!(said(&ann.go(&json!("partners"))).contains("To be settled"));
    ann.sets(&field, "texture", "Light");
    assert!(!said(&ann.go(&json!("partners"))).contains("To be settled"));
}

#[test]
fn what_was_deleted_while_another_went_on_is_asked_about() {
    let (ann, ben, field) = Phone::pair();
    let pits = |phone: &Phone| phone.noted(&field)["pits"].as_array().unwrap().len();
    for back in [true, false] {
        let many = pits(&ann);
        // A new pit, known to both; one takes it back, the other goes on with it.
        let screen = ann.go(&json!({ "start_pit": { "field": field, "pit": null } }));
        tap(&ann.session, &screen, "Open ground");
        ben.take_in(&ann.hand_over(true));
        ann.take_in(&ben.hand_over(true));
        ann.act(&json!("undo"));
        let pit = ben.noted(&field)["pits"][many]["id"].as_str().unwrap().to_owned();
        let screen = ben.go(&json!({ "start_pit": { "field": field, "pit": pit } }));
        tap(&ben.session, &screen, "Headland");
        ann.take_in(&ben.hand_over(true));
        assert_eq!(pits(&ann), many);
        let screen = ann.go(&json!({ "regretted": { "number": 0 } }));
        assert_eq!(screen.kind, ScreenKind::Versions, "{}", said(&ann.go(&json!("partners"))));
        tap(&ann.session, &screen, if back { "Bring it back" } else { "Leave it deleted" });
        let left = said(&ann.go(&json!("partners")));
        assert!(!left.contains("Deleted"), "{back}: {left}");
        ben.take_in(&ann.hand_over(true));
        assert_eq!(pits(&ann), many + usize::from(back));
        assert_eq!(ben.noted(&field), ann.noted(&field));
    }
}

/// A JPEG with a camera's notes, if there are any, and data that has no marker in it.
fn jpeg(notes: &[u8], data: impl Iterator<Item = u8>) -> Vec<u8> {
    let length = notes.len() as u8 + 2;
    let notes = if notes.is_empty() { Vec::new() } else { [&[0xff, 0xe1, 0, length], notes].concat() };
    let data = [0xff, 0xda, 0, 2].into_iter().chain(data).chain([0xff, 0xd9]);
    [0xff, 0xd8].into_iter().chain(notes).chain(data).collect()
}

#[test]
fn photos_go_along_and_come_back_when_they_rot() {
    let (ann, ben, field) = Phone::pair();
    let pit = ann.noted(&field)["pits"][0]["id"].as_str().unwrap().to_owned();
    let taken = ann.path("taken.jpg");
    let data = (0..3_000_000_u32).map(|byte| (byte.wrapping_mul(2_654_435_761) >> 13) as u8 & 0xfe);
    let picture = jpeg(&[], data);
    // The camera notes where; that stays where it is.
    std::fs::write(
        &taken,
        jpeg(b"Exif\0\0 54.4960 N 2.5160 E", picture[6..picture.len() - 2].iter().copied()),
    )
    .unwrap();
    let path = taken.display().to_string();
    ann.session.photo_taken(field.clone(), pit, None, path, "image/jpeg".into()).unwrap();

    let told = ben.take_in(&ann.hand_over(false)).told;
    assert!(!told.contains("Photos"), "{told}");
    assert!(said(&ben.go(&json!("partners"))).contains("Photos here: 0 of 1"));
    assert!(ben.take_in(&ann.hand_over(true)).told.contains("Photos that came: 1."));
    let [photo] = &std::fs::read_dir(ben.path("notes/photos"))
        .unwrap()
        .map(|file| file.unwrap().path())
        .collect::<Vec<_>>()[..]
    else {
        panic!("not one photo")
    };
    assert_eq!(std::fs::read(photo).unwrap(), picture);
    assert_eq!(ben.session.check().unwrap(), None);

    // One bit of it turns over, silently.
    let mut rotten = picture.clone();
    rotten[1_234_567] ^= 4;
    std::fs::write(photo, &rotten).unwrap();
    let found = ben.session.check().unwrap().unwrap();
    assert_eq!(found.kind, ScreenKind::Partners);
    assert!(said(&found).contains("A photo on this phone is damaged."), "{}", said(&found));
    // What is damaged is not handed on.
    let handed = ben.path("handed").display().to_string();
    let ready = ben.session.export_bundle(None, true, handed).unwrap();
    assert_eq!(ready.screen.told, "The file is ready, without photos. Damaged photos that stayed out: 1.");
    assert!(std::fs::metadata(ready.path.unwrap()).unwrap().len() < 1_000_000);
    ben.take_in(&ann.hand_over(true));
    assert_eq!(std::fs::read(photo).unwrap(), picture);
    assert!(!said(&ben.go(&json!("partners"))).contains("damaged"));
    assert_eq!(ben.session.check().unwrap(), None);
}

#[test]
fn edits_that_rotted_are_told_and_the_rest_goes_on() {
    let ann = Phone::of("Ann");
    support::take_in(&ann.session, &demo("mere_piece"));
    assert_eq!(ann.session.check().unwrap(), None);
    let Phone { folder, session } = ann;
    drop(session);
    let store = folder.path().join("notes/notes.pitface");
    let mut bytes = std::fs::read(&store).unwrap();
    let name = b"Mere Piece";
    let places: Vec<usize> =
        (0..bytes.len() - name.len()).filter(|at| bytes[*at..].starts_with(name)).collect();
    assert!(places.len() >= 2, "among the edits and among the current values: {places:?}");
    for at in places {
        bytes[at] = b'D';
    }
    std::fs::write(&store, bytes).unwrap();

    let ann = Phone { session: open(folder.path()), folder };
    assert!(ann.session.check().unwrap().is_some());
    let told = said(&ann.go(&json!("partners")));
    assert!(told.contains("The notes on this phone are damaged. Hand over what there is"), "{told}");
    assert!(told.contains(": edits 1 to ") && told.contains(" are not as they were written."), "{told}");
    assert_eq!(row(&ann.go(&json!("fields")), "Dere").title, "Dere Piece");
}

#[test]
fn photos_of_a_stranger_come_with_the_acceptance() {
    let (ann, ben) = (Phone::of("Ann"), Phone::of("Ben"));
    support::take_in(&ann.session, &demo("mere_piece"));
    let field = field_id(&ann.session);
    let pit = ann.noted(&field)["pits"][0]["id"].as_str().unwrap().to_owned();
    let taken = ann.path("taken.jpg");
    std::fs::write(&taken, jpeg(&[], 0..100)).unwrap();
    let path = taken.display().to_string();
    ann.session.photo_taken(field, pit, None, path, "image/jpeg".into()).unwrap();
    ben.take_in(&ann.hand_over(true));
    let waiting = || std::fs::read_dir(ben.path("notes/waiting")).unwrap().count();
    assert_eq!(waiting(), 1);
    let told = ben.accept("Ann").told;
    assert!(told.contains("Photos that came: 1."), "{told}");
    assert!(said(&ben.go(&json!("partners"))).contains("Photos here: 1 of 1"));
    assert_eq!(waiting(), 0);
}

#[test]
fn only_what_the_other_lacks_is_written_for_it() {
    let (ann, ben, field) = Phone::pair();
    ben.take_in(&ann.hand_over(true));
    ann.take_in(&ben.hand_over(true));
    let screen = ann.go(&json!("partners"));
    let ShownDoes::Act { act } = row(&screen, "Ben (").does else { panic!("no act") };
    let screen = ann.session.tap(act).unwrap();
    let Some(ShownDoes::ShareBundle { to, with_photos: true }) = screen.next.map(|main| main.does) else {
        panic!("nothing to hand over by")
    };
    assert!(to.is_some());
    ann.sets(&field, "texture", "Medium");
    let all = std::fs::metadata(ann.hand_over(true)).unwrap().len();
    let file = ann.export(to, true).unwrap();
    let few = std::fs::metadata(&file).unwrap().len();
    assert!(few * 3 < all, "{few} of {all} bytes");
    ben.take_in(&file);
    assert_eq!(ben.noted(&field), ann.noted(&field));
}

#[test]
fn a_damaged_file_is_refused_and_changes_nothing() {
    let (ann, ben, field) = Phone::pair();
    ann.sets(&field, "texture", "Medium");
    let file = ann.hand_over(true);
    let bytes = std::fs::read(&file).unwrap();
    let before = ben.noted(&field);
    for (at, told) in [
        (bytes.len() / 2, "Not taken in: the file was damaged on its way. Have it sent again."),
        // No bundle by its first byte, and no text either.
        (0, "Not taken in: the file cannot be read."),
    ] {
        let mut broken = bytes.clone();
        broken[at] ^= 1;
        std::fs::write(&file, &broken).unwrap();
        let screen = ben.take_in(&file);
        assert_eq!(screen.told, told);
        assert!(!screen.saved);
        assert_eq!(ben.noted(&field), before);
    }
    std::fs::write(&file, "age-encryption.org/v1\n-> scrypt").unwrap();
    assert!(ben.take_in(&file).told.starts_with("Not taken in: the file is locked with a team word"));
    std::fs::write(&file, &bytes[..bytes.len() - 1]).unwrap();
    assert_eq!(ben.take_in(&file).told, "Not taken in: the file ends in the middle. Have it sent again.");
    std::fs::write(&file, &bytes).unwrap();
    ben.take_in(&file);
    assert_eq!(ben.noted(&field), ann.noted(&field));
}

#[test]
fn a_team_word_locks_what_leaves_and_opens_what_comes() {
    let (ann, ben, field) = Phone::pair();
    let word = |phone: &Phone, text: &str| {
        phone.go(&json!("own"));
        phone.session.r#type(json!({ "own": "team_word" }).to_string(), text.into()).unwrap()
    };
    let short = word(&ann, "turf");
    assert!(short.told.contains("needs twelve letters"), "{}", short.told);
    assert!(word(&ann, " turf  lark beet mill ").told.contains("is kept on this phone"));
    ann.sets(&field, "texture", "Medium");
    let file = ann.hand_over(true);
    let bytes = std::fs::read(&file).unwrap();
    assert!(bytes.starts_with(b"age-encryption.org/v1\n"));
    let setting = ann.go(&json!({ "setting": { "setting": "team_word" } }));
    assert!(said(&setting).contains("A team word is set"));

    assert!(ben.take_in(&file).told.contains("locked with a team word. Set it under own details"));
    word(&ben, "turf lark beet hill");
    assert!(ben.take_in(&file).told.contains("does not open the file"));
    word(&ben, "turf lark beet mill");
    assert!(ben.take_in(&file).told.starts_with("Taken in"));
    assert_eq!(ben.noted(&field), ann.noted(&field));
    // Damaged on its way, it is refused as any other.
    let damaged = ben.path("damaged.pitb");
    let mut broken = bytes.clone();
    *broken.last_mut().unwrap() ^= 1;
    std::fs::write(&damaged, &broken).unwrap();
    let told = ben.take_in(&damaged).told;
    assert_eq!(told, "Not taken in: the file was damaged on its way. Have it sent again.");

    // It outlives the app, beside the key and nowhere else.
    let Phone { folder, session } = ann;
    drop(session);
    let ann = Phone { session: open(folder.path()), folder };
    let setting = ann.go(&json!({ "setting": { "setting": "team_word" } }));
    assert!(said(&setting).contains("A team word is set"));
    for entry in std::fs::read_dir(ann.path("notes")).unwrap() {
        let bytes = std::fs::read(entry.unwrap().path()).unwrap_or_default();
        assert!(!bytes.windows(9).any(|window| window == b"turf lark"));
    }
    let told = ann.session.tap(json!({ "own": "forget_team_word" }).to_string()).unwrap().told;
    assert!(told.contains("is forgotten here"), "{told}");
    assert!(std::fs::read(ann.hand_over(true)).unwrap().starts_with(b"PITB"));
}

#[test]
fn a_key_that_cannot_be_read_is_told_and_kept() {
    let ann = Phone::of("Ann");
    let Phone { folder, session } = ann;
    drop(session);
    let key = folder.path().join("key/key");
    std::fs::write(&key, b"no key").unwrap();
    let ann = Phone { session: open(folder.path()), folder };
    let told = ann.session.screen().unwrap().told;
    assert!(told.contains("cannot be read and was set aside"), "{told}");
    assert_eq!(std::fs::read(key.with_extension("unreadable-1")).unwrap(), b"no key");
    assert_eq!(ann.session.screen().unwrap().told, "", "it is told once");
}

#[test]
fn a_phone_whose_notes_come_from_a_backup_writes_as_another_and_answers_for_the_old_one() {
    let (ann, ben, field) = Phone::pair();
    ann.sets(&field, "texture", "Medium");
    // The notes were backed up; the key never is.
    let restored = Phone::of("Ann");
    let Phone { folder, session } = restored;
    drop(session);
    for file in ["notes.pitface", "own.json"] {
        let from = ann.path("notes").join(file);
        std::fs::copy(from, folder.path().join("notes").join(file)).unwrap();
    }
    let wal = ann.path("notes").join("notes.pitface-wal");
    if wal.exists() {
        std::fs::copy(wal, folder.path().join("notes/notes.pitface-wal")).unwrap();
    }
    let old = said(&ann.go(&json!("partners")));
    let restored = Phone { session: open(folder.path()), folder };
    let new = said(&restored.go(&json!("partners")));
    let signs = |text: &str| {
        let (_, after) = text.split_once("Others accept it by these signs:\n").unwrap();
        after.lines().next().unwrap().to_owned()
    };
    let (old, new) = (signs(&old), signs(&new));
    assert_ne!(old, new);
    restored.sets(&field, "organic_matter", "Low");

    ben.take_in(&restored.hand_over(true));
    let told = ben.accept("Ann").told;
    assert!(told.contains("answers for edits of Ann (") && told.contains("They wait."), "{told}");
    assert_ne!(ben.noted(&field)["field"]["texture"], "medium", "nobody has said yes");
    let device = |signs: &str| {
        let rows = rows(&ben.go(&json!("partners")));
        let row =
            rows.into_iter().find(|row| row.title.starts_with("Ann (") && row.title.contains(signs)).unwrap();
        let ShownDoes::Act { act } = row.does else { panic!("{:?}", row.title) };
        ben.session.tap(act).unwrap()
    };
    let told = tap(&ben.session, &device(&old), "Refuse this device").told;
    assert!(told.contains("is refused from now on"), "{told}");
    let told = tap(&ben.session, &device(&new), "I know that it was so: believe it").told;
    assert!(told.contains("is believed.") && told.contains("Taken in: "), "{told}");
    assert_eq!(ben.noted(&field), restored.noted(&field));
    assert_eq!(ben.noted(&field)["field"]["texture"], "medium");
}

#[test]
fn nothing_noted_is_nothing_to_hand_over() {
    let ann = Phone::of("Ann");
    let handed = ann.path("handed").display().to_string();
    let ready = ann.session.export_bundle(None, true, handed.clone()).unwrap();
    assert_eq!(ready.path, None);
    assert_eq!(ready.screen.told, "There is nothing to hand over that is not there yet.");
    assert_eq!(std::fs::read_dir(ann.path("handed")).unwrap().count(), 0);
    assert!(ann.session.export_bundle(Some("xyz".into()), true, handed).is_err());
    assert!(ann.session.export_bundle(None, true, ann.path("none").display().to_string()).is_err());
}
