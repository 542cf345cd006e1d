//! Strangers and insiders: what nobody is made to believe, what is taken from whom, and how much of it may lie here.

use crate::merge_forge;
use crate::merge_support;

use merge_forge::{Forged, file};
use merge_support::{Phone, key, sealer, texts};
use pitface_core::merge::{FileWriter, Part, PartKind, Signer, read_file};
use pitface_core::store::{Store, StoreError, Vouched, Waiting};
use std::collections::BTreeSet;

fn name(phone: &Phone) -> String {
    phone.store.fields().unwrap()[0].name.clone()
}

/// Ann and Ben, who have the same; and Mal, whom both accepted, with a bundle in Ann's name.
fn ann_ben_and_a_forgery() -> (Phone, Phone, Phone) {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    ben.take_in(&ann.hand_over());
    let mut copy = ann.copied();
    copy.rename(field, "forged");
    let mal = copy.restored_with_key(3);
    for phone in [&mut ann, &mut ben] {
        phone.trust(3);
    }
    (ann, ben, mal)
}

#[test]
fn nobody_writes_in_the_name_of_a_device_that_is_accepted_or_is_this_one() {
    let (mut ann, mut ben, mut mal) = ann_ben_and_a_forgery();
    let forged = mal.hand_over();
    for (phone, standing) in [(&mut ben, Vouched::Accepted), (&mut ann, Vouched::ThisDevice)] {
        let taken = phone.take_in(&forged);
        assert_eq!(taken.edits, 0);
        assert!(taken.copied.is_empty(), "the victim is not told to do anything about a key");
        let standings: Vec<Vouched> = taken.vouchings.iter().map(|vouching| vouching.standing).collect();
        assert_eq!(standings, [standing]);
        assert_eq!(name(phone), "Long Sedge");
        assert_eq!(phone.store.conflicts().unwrap(), []);
        let believed = phone.store.believe(key(3).device(), key(1).device(), 1_770_000_000_000);
        assert!(matches!(believed, Err(StoreError::NotToBelieve(Some(_)))), "{believed:?}");
        phone.store.check().unwrap();
    }
    // What Ann goes on to write is hers, and comes in as ever.
    let field = ann.store.fields().unwrap()[0].id;
    ann.rename(field, "Sedge");
    ben.take_in(&ann.hand_over());
    assert_eq!(name(&ben), "Sedge");
    assert_eq!(ben.store.vouchings().unwrap()[0].standing, Vouched::WentOn);
    ben.lost(1);
    let believed = ben.store.believe(key(3).device(), key(1).device(), 1_770_000_000_000);
    assert!(matches!(believed, Err(StoreError::NotToBelieve(Some(Vouched::WentOn)))), "{believed:?}");
}

#[test]
fn a_yes_counts_as_far_as_it_was_seen_and_who_answered_stays_visible() {
    let (mut ann, mut ben, mut mal) = ann_ben_and_a_forgery();
    ben.lost(1);
    ben.take_in(&mal.hand_over());
    assert_eq!(name(&ben), "Long Sedge");
    ben.believe_all();
    assert_eq!(name(&ben), "forged");
    let seen = ben.store.vouchings().unwrap();
    assert_eq!((seen[0].signer, seen[0].device, seen[0].standing), (mal.id(), ann.id(), Vouched::Believed));
    // More in Ann's name asks again.
    let field = ann.store.fields().unwrap()[0].id;
    let mut longer = ann.copied();
    longer.rename(field, "forged");
    let now = longer.now();
    longer.store.undo(now).unwrap();
    let mut longer = longer.restored_with_key(3);
    let asks = ben.take_in(&longer.hand_over()).vouchings;
    assert!(asks.iter().any(|vouching| vouching.standing == Vouched::Asks), "{asks:?}");
    // Accepted again, it speaks for itself alone.
    ben.trust(1);
    assert!(ben.store.vouchings().unwrap().iter().all(|vouching| vouching.standing != Vouched::Asks));
    ben.store.check().unwrap();
}

#[test]
fn two_with_the_same_files_and_the_same_decisions_show_the_same() {
    let (mut ann, _, mut mal) = ann_ben_and_a_forgery();
    let (first, vouched) = (ann.hand_over(), mal.hand_over());
    let decided = |phone: &mut Phone| {
        (1..=3).for_each(|seed| phone.trust(seed));
        phone.lost(1);
        phone.credulous = true;
    };
    let (mut one, mut other) = (Phone::new(4), Phone::new(5));
    decided(&mut one);
    for file in [&first, &vouched] {
        one.take_in(file);
    }
    for file in [&vouched, &first] {
        other.take_in(file);
    }
    decided(&mut other);
    other.believe_all();
    other.take_in(&first);
    assert_eq!(one.store.digest().unwrap(), other.store.digest().unwrap());
}

#[test]
fn of_a_lost_phone_what_it_sealed_before_comes_in_and_later_does_not() {
    let (mut ann, mut ben) = Phone::pair();
    let field = ann.new_field("Long Sedge");
    ben.take_in(&ann.hand_over());
    ann.rename(field, "before");
    let before = ann.hand_over();
    let lost_ms = ann.now();
    ann.rename(field, "after");
    let after = ann.hand_over_what(&before);
    assert_eq!(ben.store.refuse(ann.id(), Some(lost_ms)).unwrap(), 0);
    let taken = ben.take_in(&after);
    assert_eq!((taken.edits, taken.refused), (0, BTreeSet::from([ann.id()])));
    assert!(taken.strangers.is_empty() && ben.take_in(&before).refused.is_empty());
    assert_eq!(name(&ben), "before");
    assert!(texts(&ben.hand_over()).contains("before"), "and it is handed on");
    // Without a day nothing more comes in, and what is here stays.
    ben.store.refuse(ann.id(), None).unwrap();
    ann.set_clock(-3_600_000_000);
    ann.rename(field, "with the clock set back");
    assert_eq!(ben.take_in(&ann.hand_over()).refused, BTreeSet::from([ann.id()]));
    assert_eq!(name(&ben), "before");
    // Accepted again, it comes with the next file.
    ben.trust(1);
    ben.take_in(&ann.hand_over());
    assert_eq!(ben.store.digest().unwrap(), ann.store.digest().unwrap());
    let own = ben.store.refuse(ben.id(), None);
    assert!(matches!(own, Err(StoreError::OwnDevice)), "{own:?}");
}

#[test]
fn a_stranger_who_is_refused_is_dropped_and_does_not_come_up_again() {
    let (mut ann, mut ben) = (Phone::new(1), Phone::new(2));
    ann.new_field("Long Sedge");
    let file = ann.hand_over();
    assert_eq!(ben.take_in(&file).strangers.len(), 1);
    assert_eq!(ben.store.waiting().unwrap().bundles, 1);
    assert_eq!(ben.store.refuse(ann.id(), None).unwrap(), 1);
    assert_eq!(ben.store.waiting().unwrap(), Waiting::default());
    let again = ben.take_in(&file);
    assert_eq!((again.strangers.len(), again.refused.len()), (0, 1));
}

#[test]
fn an_old_bundle_brings_back_no_earlier_name_of_a_holder() {
    let (mut ann, mut ben) = Phone::pair();
    let signer = key(1);
    let hand_over = |ann: &mut Phone, holder: &str| {
        let now_ms = ann.now();
        ann.new_field("Long Sedge");
        ann.store.seal(&pitface_core::store::Sealer { holder, ..sealer(&signer, now_ms) }).unwrap();
        let mut file = FileWriter::new(Vec::new());
        ann.store.hand_over(None, &mut file).unwrap();
        file.end().unwrap()
    };
    let old = hand_over(&mut ann, "Ann Reed");
    // The clock was set back meanwhile: the edits tell what is later.
    ann.set_clock(-3_600_000);
    let new = hand_over(&mut ann, "Ann");
    let holder = |phone: &Phone| phone.store.holder(signer.device()).unwrap().unwrap();
    for files in [[&old, &new], [&new, &old]] {
        for file in files {
            ben.take_in(file);
        }
        assert_eq!(holder(&ben), "Ann");
    }
    ann.take_in(&old);
    assert_eq!(holder(&ann), "Ann", "nor here");
}

#[test]
fn what_nobody_signed_is_not_kept_and_what_is_signed_has_an_end() {
    let (mut ann, mut ben) = Phone::pair();
    ann.new_field("Long Sedge");
    let all = ann.hand_over();
    let parts = read_file(&all).unwrap();
    let ballast = Part::write(PartKind::Other(0x8001), &vec![7; 5 << 20]);
    let taken = ben.take_in(&file(&[parts[0].bytes, &ballast]));
    assert_eq!((taken.unknown_parts, taken.edits > 0), (1, true));
    assert_eq!(read_file(&ben.hand_over()).unwrap().len(), 2, "one bundle of each");
    let forged = Forged::of(parts[0].content, 1);
    let raw = forged.listed()[0].as_array().unwrap()[4].as_integer().unwrap().try_into().unwrap();
    let edits = (1, 1, 1, raw, forged.sections.clone());
    let with = |bytes: usize| {
        let more = (9, 0, 0, bytes as u64, vec![7; bytes]);
        file(&[forged.clone().with_sections(&[edits.clone(), more]).part()])
    };
    let mut cat = Phone::new(4);
    cat.trust(1);
    let now = cat.now();
    let refused = cat.store.take_in(&with((1 << 20) + 1), now).unwrap_err();
    assert!(refused.to_string().contains("more than 1 MiB"), "{refused}");
    assert!(cat.take_in(&with(1 << 20)).edits > 0);
}

#[test]
fn who_is_not_accepted_fills_no_disk() {
    let mut ben = Phone::new(2);
    let mut full = 0;
    for seed in 10..15 {
        let mut mal = Phone::in_memory(seed);
        mal.new_field("x");
        let all = mal.hand_over();
        let forged = Forged::of(read_file(&all).unwrap()[0].content, seed);
        let raw = forged.listed()[0].as_array().unwrap()[4].as_integer().unwrap().try_into().unwrap();
        let edits = (1, 1, 1, raw, forged.sections.clone());
        let ballast = |number: u8| (9, 0, 0, 1 << 20, vec![number; 1 << 20]);
        let parts =
            (0..20).map(|number| forged.clone().with_sections(&[edits.clone(), ballast(number)]).part());
        full += ben.take_in(&file(&parts.collect::<Vec<_>>())).no_room.len();
    }
    let waiting = ben.store.waiting().unwrap();
    assert!(full == 5 && waiting.bytes <= 64 << 20, "{full}, {waiting:?}");
    // A file of a newer version can be from anybody.
    let newer = |number: u8| {
        let part = Part::write(PartKind::Other(0x8001), &vec![number; 20 << 20]);
        file(&[merge_forge::with_version(&part, 2, 0)])
    };
    let now = ben.now();
    let held: Vec<_> = (0..5).map(|number| ben.store.take_in(&newer(number), now)).collect();
    assert!(held[0].as_ref().is_ok_and(|taken| taken.held));
    assert!(matches!(held[4], Err(StoreError::TooMuchWaits)), "{held:?}");
    assert!(ben.store.empty_waiting().unwrap().bytes > 64 << 20);
    assert_eq!(ben.store.waiting().unwrap(), Waiting::default());
    ben.store.check().unwrap();
}

#[test]
fn two_devices_that_show_the_same_are_both_left_alone() {
    let (mut ann, mut ben) = (Phone::new(1), Phone::new(2));
    ann.new_field("Long Sedge");
    ben.take_in(&ann.hand_over());
    let shown = ann.id().to_string();
    assert_eq!(shown.len(), 24, "80 bits in groups of four: {shown}");
    let (_folder, path) = ben.closed();
    let mut alike = ann.id().0;
    alike[15] ^= 1;
    rusqlite::Connection::open(&path)
        .unwrap()
        .execute(
            "INSERT INTO signers (id, key, holder) VALUES (?1, ?2, 'Ann')",
            rusqlite::params![alike, [9_u8; 32]],
        )
        .unwrap();
    let mut store = Store::open_existing(&path, key(2).device()).unwrap();
    let refused = store.accept(ann.id(), 1_770_000_000_000).unwrap_err().to_string();
    assert!(refused.contains(&shown), "{refused}");
    assert!(store.fields().unwrap().is_empty());
}
