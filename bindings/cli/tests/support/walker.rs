//! Walkers with a laptop and a store each, who hand over to each other.

use super::{ONE_PIT, Place};
use pitface_core::record::notes;
use pitface_core::store::{DeviceId, Store, photo_name};
use serde_json::Value;
use sha2::{Digest, Sha256};

/// Name of everybody's store.
pub const STORE: &str = "notes.pitface";

/// Somebody with a laptop of their own.
pub struct Walker {
    pub name: &'static str,
    pub place: Place,
}

impl Walker {
    pub fn new(name: &'static str) -> Self {
        Self { name, place: Place::new() }
    }

    /// Notes one field.
    pub fn notes(&self, notes: &str) {
        let file = self.place.file("field.notes.json", notes);
        self.place.good(&["read", &file, "--store", STORE]);
    }

    /// Measures the first pit of Long Sedge again, whoever dug it: in a file with the ids that the store has.
    pub fn measures_again(&self, mm: u32) {
        let mut notes = self.of_copy(|store| {
            let fields = store.fields().unwrap();
            let field = fields.iter().find(|field| field.name == "Long Sedge").unwrap();
            store.load_notes(field.id).unwrap()
        });
        notes.pits[0].dug_to_mm = Some(mm);
        let file = self.place.file("with_ids.notes.json", &notes::write(&notes));
        self.place.good(&["read", &file, "--store", STORE]);
    }

    /// Notes a field without the pits that it had, and has them removed.
    pub fn removes_all_pits(&self, notes: &str) {
        let file = self.place.file("field.notes.json", notes);
        let listed = self.place.json(&["read", &file, "--store", STORE]);
        let word = listed["fields"][0]["read_in"]["missing"]["word"].as_str().unwrap();
        self.place.good(&["read", &file, "--store", STORE, "--remove-missing", word]);
    }

    pub fn fingerprint(&self) -> String {
        let told = self.place.json(&["partners", STORE]);
        let own =
            told["partners"].as_array().unwrap().iter().find(|partner| partner["this"] == true).unwrap();
        own["device"].as_str().unwrap().to_owned()
    }

    /// Hands over to a folder and takes in what is there. Tells whether there was something new.
    pub fn share(&self, folder: &str) -> bool {
        self.share_with(folder, &[])
    }

    /// The same with more options.
    pub fn share_with(&self, folder: &str, more: &[&str]) -> bool {
        let arguments = [&["hand-over", STORE, "--folder", folder, "--holder", self.name], more].concat();
        let told = self.place.json(&arguments);
        !told["written"].is_null() || told["taken_in"]["edits"] != 0
    }

    pub fn accept(&self, other: &Self) -> Value {
        self.place.json(&["take-in", STORE, "--accept", &other.fingerprint()])
    }

    /// A file with all it has, outside its own folder.
    pub fn hand_over(&self, name: &str, more: &[&str]) -> String {
        self.place.good(&[&["hand-over", STORE, "--out", name, "--holder", self.name], more].concat());
        self.place.path(name).display().to_string()
    }

    /// The hash over all that its store has now. Of a copy: looking leaves no trace.
    pub fn digest(&self) -> [u8; 32] {
        self.of_copy(|store| store.digest().unwrap())
    }

    fn of_copy<T>(&self, asks: impl FnOnce(&Store) -> T) -> T {
        let copy = self.place.path("copy.pitface");
        std::fs::copy(self.place.path(STORE), &copy).unwrap();
        let answer = asks(&Store::open_existing(&copy, DeviceId([9; 16])).unwrap());
        std::fs::remove_file(copy).unwrap();
        answer
    }
}

/// All share until nobody has anything new.
pub fn share_all(walkers: &[&Walker], folder: &str) {
    let rounds = (0..6).position(|_| walkers.iter().filter(|walker| walker.share(folder)).count() == 0);
    assert!(rounds.is_some(), "they never come to rest");
}

pub fn dug_to(mm: u32) -> String {
    ONE_PIT.replace("\"dug_to_mm\": 450", &format!("\"dug_to_mm\": {mm}"))
}

/// Two who accepted each other, and have the same.
pub fn pair() -> (Walker, Walker) {
    let (ann, ben) = (Walker::new("Ann"), Walker::new("Ben"));
    ann.notes(ONE_PIT);
    let file = ann.hand_over("all.pitb", &[]);
    let ann_is = ann.fingerprint();
    let told = ben.place.json(&["take-in", STORE, &file, "--accept", &ann_is]);
    assert_ne!(told["edits"], 0);
    assert_eq!(told["strangers"], Value::Array(Vec::new()));
    let file = ben.hand_over("all.pitb", &[]);
    ann.place.good(&["take-in", STORE, &file]);
    ann.accept(&ben);
    assert_eq!(ann.digest(), ben.digest());
    (ann, ben)
}

/// A photo of two pieces, in the folder beside the store, and notes that name it.
pub fn with_photo(walker: &Walker) -> (String, Vec<u8>) {
    let picture = (0..1_499_992_u32).map(|at| (at / 3 % 251) as u8);
    // A JPEG with nothing in it but data.
    let bytes: Vec<u8> =
        [0xff, 0xd8, 0xff, 0xda, 0, 2].into_iter().chain(picture).chain([0xff, 0xd9]).collect();
    photo_noted(walker, &bytes)
}

/// A photo with these bytes, in the folder beside the store, and notes that name it.
pub fn photo_noted(walker: &Walker, bytes: &[u8]) -> (String, Vec<u8>) {
    let name = photo_name(&Sha256::digest(bytes).into());
    std::fs::create_dir_all(walker.place.path("photos")).unwrap();
    std::fs::write(walker.place.path("photos").join(&name), bytes).unwrap();
    let photo = format!(
        r#""photos": [{{"sha256": "{name}", "size_bytes": {}, "media_type": "image/jpeg"}}]"#,
        bytes.len()
    );
    walker.notes(&ONE_PIT.replace("\"rolls\":", &format!("{photo}, \"rolls\":")));
    (name, bytes.to_vec())
}
