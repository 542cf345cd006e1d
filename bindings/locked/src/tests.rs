use super::opened::MOST_WORK;
use super::{Locking, Opened, Refused, WORK, as_meant, is_locked, lock, lock_with, unlock};
use proptest::prelude::*;
use std::io::{Cursor, Read as _, Seek as _, SeekFrom, Write as _};

const WORD: &str = "turf lark beet mill";
/// Enough to see that it works; the tests open hundreds of files.
const LITTLE_WORK: u8 = 2;

fn small() -> Vec<u8> {
    lock_with(b"PITB and what follows", WORD, LITTLE_WORK).unwrap()
}

#[test]
fn what_was_locked_is_opened_with_the_same_word_alone() {
    let locked = lock(b"PITB and what follows", WORD).unwrap();
    assert!(is_locked(&locked) && !is_locked(b"PITB"));
    assert_eq!(unlock(&locked, WORD).unwrap(), b"PITB and what follows");
    assert_eq!(unlock(&locked, &format!(" {WORD}\n")).unwrap(), b"PITB and what follows");
    for wrong in ["turf lark beet mil", "Turf lark beet mill", ""] {
        assert_eq!(unlock(&locked, wrong), Err(Refused::WrongWord), "{wrong}");
    }
    let header = String::from_utf8_lossy(&locked[..80]).into_owned();
    assert!(header.lines().nth(1).unwrap().ends_with(&format!(" {WORK}")), "{header}");
    assert!(!locked.windows(4).any(|window| window == b"PITB"));
    assert_ne!(lock(b"PITB and what follows", WORD).unwrap(), locked);
}

#[test]
fn a_short_word_is_refused() {
    for short in ["", "turf", "   turf lark    ", "elevenchars", "  elevenchars \n"] {
        assert_eq!(lock(b"PITB", short), Err(Refused::TooShort), "{short}");
    }
    // Characters, not bytes.
    assert_eq!(lock(b"PITB", "äöüäöüäöüäö"), Err(Refused::TooShort));
    assert!(lock(b"PITB", "äöüäöüäöüäöü").is_ok());
}

#[test]
fn a_word_is_one_however_it_was_typed() {
    let locked = lock_with(b"PITB", "Grünland fünf Rüben", LITTLE_WORK).unwrap();
    for typed in [
        "\u{feff}Grünland fünf Rüben",              // a byte-order mark
        "Gru\u{308}nland fu\u{308}nf Ru\u{308}ben", // accents apart, as some keyboards give them
        " Grünland  fünf\tRüben\r\n",               // blanks
        "Grünland\u{a0}fünf\u{3000}Rüben",          // blanks of other widths
    ] {
        assert_eq!(unlock(&locked, typed).as_deref(), Ok(b"PITB".as_slice()), "{typed:?}");
    }
    assert_eq!(unlock(&locked, "grünland fünf rüben"), Err(Refused::WrongWord));
    // Full-width letters and a ligature are the plain ones (Unicode NFKC).
    assert_eq!(as_meant("ｔｕｒｆ ﬁeld"), "turf field");
}

#[test]
fn what_was_locked_by_the_earlier_rule_still_opens() {
    // Until then only the ends of a word were trimmed: what stood between stayed as it was.
    for before in ["turf  lark   beet mill", "Gru\u{308}nland fu\u{308}nf", "\u{feff}turf lark beet"] {
        let locked = locked_before(b"PITB", before);
        assert_eq!(unlock(&locked, before).as_deref(), Ok(b"PITB".as_slice()), "{before:?}");
        assert_eq!(unlock(&locked, "something else"), Err(Refused::WrongWord));
    }
}

/// A file as it was locked when only the ends of a word were trimmed.
fn locked_before(bytes: &[u8], word: &str) -> Vec<u8> {
    let mut recipient = age::scrypt::Recipient::new(age::secrecy::SecretString::from(word.trim().to_owned()));
    recipient.set_work_factor(LITTLE_WORK);
    let encryptor = age::Encryptor::with_recipients(std::iter::once(&recipient as _)).unwrap();
    let mut locked = Vec::new();
    let mut inside = encryptor.wrap_output(&mut locked).unwrap();
    inside.write_all(bytes).unwrap();
    inside.finish().unwrap();
    locked
}

#[test]
fn a_locked_file_is_read_from_any_place_as_the_file_itself() {
    let content: Vec<u8> = (0..300_000_u32).map(|at| (at / 7 % 251) as u8).collect();
    let mut locking = Locking::with(Vec::new(), WORD, LITTLE_WORK).unwrap();
    content.chunks(7_001).for_each(|piece| locking.write_all(piece).unwrap());
    let locked = locking.finish().unwrap();
    let mut opened = Opened::open(Cursor::new(&locked), WORD).unwrap();
    let mut whole = Vec::new();
    opened.read_to_end(&mut whole).unwrap();
    assert!(whole == content);
    for at in [0, 65_535, 65_536, 131_072, 262_143, 3, 299_999] {
        opened.seek(SeekFrom::Start(at)).unwrap();
        let mut byte = [0];
        opened.read_exact(&mut byte).unwrap();
        assert_eq!(byte[0], content[at as usize], "{at}");
    }
    opened.rewind().unwrap();
    whole.clear();
    opened.read_to_end(&mut whole).unwrap();
    assert!(whole == content);
    // A block that was changed is told when it is come to, not before.
    let mut changed = locked;
    let at = changed.len() - 70_000;
    changed[at] ^= 1;
    let mut opened = Opened::open(Cursor::new(&changed), WORD).unwrap();
    let told = opened.read_to_end(&mut whole).unwrap_err().to_string();
    assert_eq!(told, Refused::Damaged.to_string());
}

#[test]
fn every_changed_bit_is_refused() {
    let locked = small();
    for at in 0..locked.len() {
        for bit in 0..8 {
            let mut changed = locked.clone();
            changed[at] ^= 1 << bit;
            assert!(unlock(&changed, WORD).is_err(), "byte {at}, bit {bit}");
        }
    }
}

#[test]
fn every_cut_and_every_byte_too_many_is_refused() {
    let locked = small();
    for end in 0..locked.len() {
        assert!(unlock(&locked[..end], WORD).is_err(), "{end}");
    }
    assert!(unlock(&[&locked[..], b"\0"].concat(), WORD).is_err());
    assert!(unlock(&[&locked[..], &locked[..]].concat(), WORD).is_err());
}

#[test]
fn a_cut_between_blocks_is_refused() {
    // The content is sealed in blocks of 64 KiB, each with 16 bytes of its own; the last says that it is.
    const BLOCK: usize = 65_536;
    let content: Vec<u8> = (0..3 * BLOCK).map(|at| (at % 251) as u8).collect();
    let locked = lock_with(&content, WORD, LITTLE_WORK).unwrap();
    assert_eq!(unlock(&locked, WORD).unwrap(), content);
    let last = locked.len() - BLOCK - 16;
    assert_eq!(unlock(&locked[..last], WORD), Err(Refused::Damaged));
    let twice_the_last = [&locked[..], &locked[last..]].concat();
    assert_eq!(unlock(&twice_the_last, WORD), Err(Refused::Damaged));
}

#[test]
fn a_file_that_asks_for_too_much_work_is_refused_at_once() {
    let locked = small();
    let (before, after) = split_at_work(&locked);
    for work in ["19", "22", "30", "63", "64", "255"] {
        let changed = [before, work.as_bytes(), after].concat();
        let refused = unlock(&changed, WORD).unwrap_err();
        assert_eq!(refused, Refused::TooMuchWork(work.parse().unwrap()), "{work}");
    }
    for work in ["256", "999999999999999999999", "-1", "016", "x"] {
        assert!(unlock(&[before, work.as_bytes(), after].concat(), WORD).is_err(), "{work}");
    }
    let most = MOST_WORK.to_string();
    assert_eq!(unlock(&[before, most.as_bytes(), after].concat(), WORD), Err(Refused::WrongWord));
}

/// A locked file before and after the number that says how much work it is.
fn split_at_work(locked: &[u8]) -> (&[u8], &[u8]) {
    let ends: Vec<usize> = (0..locked.len()).filter(|at| locked[*at] == b'\n').take(2).collect();
    let begins = locked[..ends[1]].iter().rposition(|byte| *byte == b' ').unwrap() + 1;
    (&locked[..begins], &locked[ends[1]..])
}

#[test]
fn a_made_up_header_does_not_keep_the_reader_busy() {
    // A hundred thousand recipients, each with the most work that is allowed.
    let locked = small();
    let line = locked.iter().position(|byte| *byte == b'\n').unwrap() + 1;
    let end = locked.windows(4).position(|window| window == b"\n---").unwrap() + 1;
    let mut changed = locked[..line].to_vec();
    (0..100_000).for_each(|_| changed.extend(&locked[line..end]));
    changed.extend(&locked[end..]);
    assert_eq!(unlock(&changed, WORD), Err(Refused::OtherKey));
    // Some that would fit: with a pass phrase there is one and no other.
    let twice = [&locked[..end], &locked[line..end], &locked[end..]].concat();
    assert_eq!(unlock(&twice, WORD), Err(Refused::Damaged));
    let endless = [b"age-encryption.org/v1\n".as_slice(), &vec![b'-'; 4 << 20]].concat();
    assert!(unlock(&endless, WORD).is_err());
}

#[test]
fn a_file_for_a_key_is_told_apart() {
    let key = age::x25519::Identity::generate().to_public();
    let locked = age::encrypt(&key, b"PITB").unwrap();
    assert_eq!(unlock(&locked, WORD), Err(Refused::OtherKey));
    assert_eq!(unlock(b"PITB and what follows", WORD), Err(Refused::NotLocked));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn any_bytes_come_back(content in prop::collection::vec(any::<u8>(), 0..200_000), word in ".{12,40}") {
        prop_assume!(super::long_enough(&word).is_ok());
        let locked = lock_with(&content, &word, LITTLE_WORK).unwrap();
        prop_assert_eq!(unlock(&locked, &word).unwrap(), content);
    }

    #[test]
    fn whatever_begins_like_a_locked_file_gives_an_answer(rest in prop::collection::vec(any::<u8>(), 0..2_000)) {
        prop_assert!(unlock(&[b"age-encryption.org/v1\n".as_slice(), &rest].concat(), WORD).is_err());
    }
}
