//! What would change a call, and that it is true.

use crate::advice_fixture;

use advice_fixture::{
    call_of, fit_to_loosen, good, id, layer, notes, open, pan, pan_pit, pit, reference, roll, signs,
    sound_pit, sound_subsoil,
};
use pitface_core::advice::{Change, ChangedAnswer, changes};
use pitface_core::reading::Clue;
use pitface_core::record::{
    Call, FaceMoisture, FieldNotes, Pit, PlaceKind, RollOutcome, RootsSeen, Sign, Zone,
};

/// A layer that could be pressed or settled: hard and massive, nothing else looked at.
fn unclear() -> FieldNotes {
    let hard = signs(&[(Sign::ComesAway, "one_mass"), (Sign::Resistance, "hard_push")]);
    let layers = vec![layer(0, 220, good()), layer(220, 290, hard), layer(290, 450, sound_subsoil())];
    notes(vec![reference(), pit(1, PlaceKind::Open, layers)])
}

/// The notes with the answers of a change set in the pits of open ground, all of which are given as layers here.
fn changed(notes: &FieldNotes, change: &Change) -> FieldNotes {
    let mut notes = notes.clone();
    for pit in notes.pits.iter_mut().filter(|pit| pit.place == PlaceKind::Open) {
        for answer in &change.answers {
            match *answer {
                ChangedAnswer::Clue { top_mm, bottom_mm, clue, answer } => {
                    let sign = Sign::ALL[clue as usize];
                    let layers = pit.layers.iter_mut();
                    let mut deciding =
                        layers.filter(|layer| (layer.top_mm, layer.bottom_mm) == (top_mm, bottom_mm));
                    let Some(deciding) = deciding.next() else {
                        panic!("no layer from {top_mm} to {bottom_mm}")
                    };
                    deciding.signs.set(sign, Some(answer));
                }
                ChangedAnswer::Roll { surface, roll: outcome } => {
                    pit.rolls.retain(|roll| (roll.depth_mm <= 100) != surface);
                    pit.rolls.push(roll(if surface { 0 } else { 330 }, outcome));
                }
                _ => panic!("none of these fields has such a lever"),
            }
        }
    }
    notes
}

#[test]
fn what_is_said_to_change_the_call_does() {
    let cases = [unclear(), fit_to_loosen(), notes(vec![reference(), sound_pit(1, PlaceKind::Open)])];
    let mut told = 0;
    for notes in cases {
        let now = open(&notes).call;
        for change in changes(&notes, Zone::Open) {
            assert_ne!(change.call, now);
            if change.answers.iter().all(|answer| !is_of_the_field(answer)) {
                assert_eq!(open(&changed(&notes, &change)).call, change.call, "{change:?}");
                told += 1;
            }
        }
    }
    assert!(told >= 5, "{told}");
}

/// Pits of open ground with one sign told one step off, in every way there is: where that of the only pit turns the call
/// between work and none, that is said, and nothing else is. One of three pits turns none: on the way lies another hole.
#[test]
fn a_call_hangs_on_an_answer_next_to_what_was_noted_of_its_only_pit() {
    let (mut hung, mut asked) = ([0, 0], 0);
    let each = |sign: Sign| sign.answers().iter().copied();
    let all = each(Sign::ComesAway).flat_map(|comes| {
        each(Sign::Resistance).flat_map(move |hard| {
            let roots = each(Sign::Roots).filter(|roots| *roots != "none_to_judge");
            roots.map(move |roots| (comes, hard, roots))
        })
    });
    for (comes, hard, roots) in all {
        let mut alone = fit_to_loosen();
        let seen = [(Sign::ComesAway, comes), (Sign::Resistance, hard), (Sign::Roots, roots)];
        for (sign, code) in seen {
            alone.pits[1].layers[1].signs.set(sign, sign.answers().iter().position(|its| *its == code));
        }
        let mut beside = alone.clone();
        // One pit speaks for steel, one against it: the third decides.
        beside.pits.push(Pit { id: id(77), dug_to_mm: Some(460), ..fit_to_loosen().pits[1].clone() });
        beside.pits.push(sound_pit(78, PlaceKind::Open));
        asked += 1;
        for (pits, notes) in [alone, beside].iter().enumerate() {
            let told = changes(notes, Zone::Open).into_iter().find(|change| change.hangs);
            let turning: Vec<_> =
                one_step_off(notes).filter(|off| turns(open(notes).call, open(off).call)).collect();
            assert_eq!(told.is_some(), !turning.is_empty(), "{comes}, {hard}, {roots}: {told:?}");
            if let Some(told) = told {
                let off = changed(notes, &told);
                assert!(turning.contains(&off) && open(&off).call == told.call, "{told:?}");
                hung[pits] += 1;
            }
        }
    }
    println!("of {asked} fields {} with one pit and {} with three hang on an answer", hung[0], hung[1]);
    assert!(hung[0] > 0 && hung[0] < asked && hung[1] == 0, "{hung:?} of {asked}");
}

/// Returns whether a field is worked under one of two calls and not under the other; to dig again is no call that one could get wrong.
fn turns(one: Call, other: Call) -> bool {
    let keeps_steel_out = |call: Call| matches!(call, Call::LeaveIt | Call::RootsFirst);
    let same = one == other || (keeps_steel_out(one) && keeps_steel_out(other));
    !same && ![one, other].contains(&Call::DigAgain)
}

/// The notes with one noted sign of the second layer of one pit of open ground one step off.
fn one_step_off(notes: &FieldNotes) -> impl Iterator<Item = FieldNotes> {
    let pits = 1..notes.pits.len();
    let signs = move |pit: usize| Sign::ALL.iter().map(move |&sign| (pit, sign));
    pits.flat_map(signs).flat_map(move |(pit, sign)| {
        let seen = notes.pits[pit].layers[1].signs.get(sign);
        let none = (sign == Sign::Roots).then_some(RootsSeen::NoneToJudge as usize);
        let near = (0..sign.answers().len()).filter(move |answer| {
            seen.is_some_and(|seen| seen.abs_diff(*answer) == 1) && Some(*answer) != none
        });
        near.map(move |answer| {
            let mut off = notes.clone();
            off.pits[pit].layers[1].signs.set(sign, Some(answer));
            off
        })
    })
}

fn is_of_the_field(answer: &ChangedAnswer) -> bool {
    matches!(answer, ChangedAnswer::Clue { clue, .. } if *clue as usize >= Sign::ALL.len())
}

#[test]
fn a_thread_changes_a_loosening_to_waiting_and_short_lengths_change_it_back() {
    let told = changes(&fit_to_loosen(), Zone::Open);
    assert!(told.iter().any(|change| change.call == Call::Wait));
    let mut wet = fit_to_loosen();
    wet.pits[1].rolls = vec![roll(0, RollOutcome::ShortLengths), roll(310, RollOutcome::Thread)];
    let told = changes(&wet, Zone::Open);
    let dry = [ChangedAnswer::Roll { surface: false, roll: RollOutcome::ShortLengths }];
    assert!(told.iter().any(|change| change.answers == dry && change.call == Call::Loosen), "{told:?}");
}

#[test]
fn single_answers_come_before_pairs_and_each_question_stands_once() {
    for notes in [unclear(), fit_to_loosen()] {
        let told = changes(&notes, Zone::Open);
        assert!(!told.is_empty() && told.len() <= 3);
        let sizes: Vec<usize> = told.iter().map(|change| change.answers.len()).collect();
        assert!(sizes.iter().all(|size| *size == sizes[0]), "{told:?}");
        if sizes[0] == 1 {
            let mut asked: Vec<String> = told
                .iter()
                .map(|change| match change.answers[0] {
                    ChangedAnswer::Clue { clue, .. } => clue.code().to_string(),
                    ChangedAnswer::Roll { surface, .. } => format!("roll {surface}"),
                    other => format!("{other:?}"),
                })
                .collect();
            asked.sort();
            asked.dedup();
            assert_eq!(asked.len(), told.len());
        }
    }
}

/// Pairs are told only where no single answer of any sign does it.
#[test]
fn where_pairs_are_told_no_single_sign_would_do() {
    let pits = vec![reference(), sound_pit(1, PlaceKind::Open)];
    let notes = notes(pits);
    let now = open(&notes).call;
    let told = changes(&notes, Zone::Open);
    if told.first().is_some_and(|change| change.answers.len() == 2) {
        for &sign in Sign::ALL {
            for answer in 0..sign.answers().len() {
                let mut other = notes.clone();
                other.pits[1].layers[1].signs.set(sign, Some(answer));
                assert_eq!(open(&other).call, now, "{} {answer}", sign.code());
            }
        }
    }
    assert!(!told.is_empty());
}

#[test]
fn a_face_that_cannot_be_read_is_changed_by_no_answer() {
    let mut dry = fit_to_loosen();
    dry.pits[1].face = Some(FaceMoisture::Dry);
    assert_eq!(changes(&dry, Zone::Open), []);
    assert_eq!(changes(&dry, Zone::Headland), []);
}

#[test]
fn where_roots_are_needed_roots_are_what_would_change_it() {
    let rootless = signs(&[
        (Sign::ComesAway, "sharp_blocks"),
        (Sign::Resistance, "hard_push"),
        (Sign::Pores, "none"),
        (Sign::Roots, "none_to_judge"),
    ]);
    let mut notes = unclear();
    notes.pits[1].layers[1].signs = rootless;
    notes.field.texture = None;
    assert_eq!(open(&notes).call, Call::DigAgain);
    let roots = |change: &Change| matches!(change.answers[0], ChangedAnswer::Clue { clue: Clue::Roots, .. });
    assert!(changes(&notes, Zone::Open).iter().any(roots));
}

#[test]
fn it_holds_for_the_whole_field_and_for_pits_given_by_their_walk() {
    use pitface_core::record::{ComesAway, Resistance, Step, Unknown};
    let mut notes = unclear();
    let step = |to_mm, comes_away, resistance| Step {
        id: id(5),
        to_mm,
        comes_away: Some(comes_away),
        resistance: Some(resistance),
        unknown: Unknown::new(),
    };
    notes.pits[1] = Pit {
        layers: Vec::new(),
        walk: vec![
            step(220, ComesAway::Crumbs, Resistance::SlipsIn),
            step(290, ComesAway::OneMass, Resistance::HardPush),
            step(450, ComesAway::RoundedLumps, Resistance::FirmPush),
        ],
        ..notes.pits[1].clone()
    };
    for zone in [Zone::Open, Zone::Whole] {
        let now = call_of(&notes, zone).call;
        let told = changes(&notes, zone);
        assert!(!told.is_empty() && told.iter().all(|change| change.call != now), "{zone:?} {told:?}");
    }
}

#[test]
fn many_pits_are_changed_at_once() {
    let mut pits = vec![reference()];
    pits.extend((1..=12).map(|number| pan_pit(number, PlaceKind::Open, 280)));
    let told = changes(&notes(pits), Zone::Open);
    assert!(!told.is_empty(), "{:?}", pan());
}
