//! No two things told of one field contradict each other: thousands of fields noted at random, each asked in every way.
//!
//! The pairs are those of [`contradictions`]; each is named by what the two say. Seeds are fixed, so that a failure names
//! its field.

use crate::advice_fixture;

use advice_fixture::{field, good, id, layer, pan, pit, roll, says, sound_subsoil};
use chrono::{DateTime, Days, FixedOffset, NaiveDate};
use pitface_core::advice::after_dig::Verdict;
use pitface_core::advice::ground::{Areas, ground_work};
use pitface_core::advice::machine::Terms;
use pitface_core::advice::sampling::Next;
use pitface_core::advice::{Obstacle, Readiness, Stance, Sureness, What, ZoneCall};
use pitface_core::answer::FieldAnswer;
use pitface_core::record::{
    AfterDig, Buried, BuriedLine, Call, Extent, FaceMoisture, FieldNotes, Machine, Pass, Pit, PlaceKind,
    Position, RollOutcome, Sign, Signs, TextureNote, Unknown, Wings, Zone,
};
use pitface_core::soil::texture::TextureGroup;
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};

/// Fields asked.
const FIELDS: u64 = 3_000;

/// A row of numbers that looks random and is the same for each seed (Marsaglia 2003: xorshift).
struct Chance(u64);

impl Chance {
    fn below(&mut self, many: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) as usize % many
    }

    fn one_in(&mut self, many: usize) -> bool {
        self.below(many) == 0
    }

    fn of<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.below(all.len())]
    }

    fn maybe<T: Copy>(&mut self, many: usize, all: &[T]) -> Option<T> {
        self.one_in(many).then(|| self.of(all))
    }
}

fn day(after: u64) -> NaiveDate {
    NaiveDate::from_ymd_opt(2025, 8, 1).unwrap().checked_add_days(Days::new(after)).unwrap()
}

fn time(day: NaiveDate) -> DateTime<FixedOffset> {
    day.and_hms_opt(9, 0, 0).unwrap().and_utc().fixed_offset()
}

fn any_signs(chance: &mut Chance) -> Signs {
    let mut signs = chance.of(&[good(), pan(), pan(), sound_subsoil(), Signs::default()]);
    for &sign in Sign::ALL {
        if chance.one_in(4) {
            let answer = (!chance.one_in(3)).then(|| chance.below(sign.answers().len()));
            signs.set(sign, answer);
        }
    }
    signs
}

fn any_pit(number: u64, chance: &mut Chance) -> Pit {
    let place = if number == 0 && !chance.one_in(5) {
        PlaceKind::Reference
    } else {
        chance.of(&[PlaceKind::Open, PlaceKind::Open, PlaceKind::Headland, PlaceKind::Wheeling])
    };
    let bottom_mm = 230 + 10 * chance.below(20) as u32;
    let layers = if place == PlaceKind::Reference && !chance.one_in(4) {
        vec![layer(0, 250, good()), layer(250, 500, sound_subsoil())]
    } else {
        vec![
            layer(0, 200, any_signs(chance)),
            layer(200, bottom_mm, any_signs(chance)),
            layer(bottom_mm, bottom_mm + 150, any_signs(chance)),
        ]
    };
    let dug_to_mm = Some(layers.last().unwrap().bottom_mm);
    let face =
        chance.of(&[None, Some(FaceMoisture::Moist), Some(FaceMoisture::Moist), Some(FaceMoisture::Wet)]);
    let mut noted = Pit { dug_to_mm, face, ..pit(10 + number, place, layers) };
    noted.dug = (!chance.one_in(6)).then(|| time(day(chance.below(30) as u64)));
    noted.at = (!chance.one_in(3)).then(|| Position {
        longitude_deg: 2.5 + 0.0001 * chance.below(60) as f64,
        latitude_deg: 54.5 + 0.0001 * chance.below(40) as f64,
        accuracy_m: Some(3.0),
    });
    for depth_mm in [0, bottom_mm - 50, bottom_mm + 30] {
        if !chance.one_in(3) {
            let outcomes = [RollOutcome::ShortLengths, RollOutcome::ShortLengths, RollOutcome::Thread];
            noted.rolls.push(roll(depth_mm, chance.of(&outcomes)));
        }
    }
    noted
}

fn any_machine(chance: &mut Chance) -> Machine {
    Machine {
        id: id(500),
        name: "any".into(),
        legs: 3,
        spacing_mm: 500,
        foot_width_mm: chance.of(&[30, 60, 90]),
        wings: chance.maybe(2, &[Wings { width_mm: 250, lift_mm: None }]),
        leading: None,
        working_width_mm: None,
        speed: None,
        reach_mm: chance.maybe(2, &[250, 350, 450, 600]),
        tractor: None,
        tractor_mass_kg: None,
        unknown: Unknown::new(),
    }
}

fn any_pass(chance: &mut Chance) -> Pass {
    let done = (!chance.one_in(4)).then(|| day(chance.below(40) as u64));
    let firm: [&[u32]; 4] = [&[], &[340, 340, 335, 340], &[220, 225, 220, 225], &[340, 260, 250, 340]];
    let firm_mm = chance.of(&firm).to_vec();
    let dug = done.map(|done| time(done.checked_add_days(Days::new(chance.of(&[0, 1, 200]))).unwrap()));
    let digs = (!chance.one_in(4)).then(|| AfterDig { dug, firm_mm, ..AfterDig::new(id(401)) });
    Pass {
        zone: chance.of(&[None, Some(Zone::Open), Some(Zone::Headland)]),
        extent: chance.of(&[None, Some(Extent::Zone), Some(Extent::Zone), Some(Extent::TrialStrip)]),
        done,
        tip_mm: chance.maybe(2, &[320, 350]),
        rolls: chance
            .maybe(3, &[RollOutcome::Thread, RollOutcome::Crumbles])
            .map(|its| roll(340, its))
            .into_iter()
            .collect(),
        after_digs: digs.into_iter().collect(),
        ..Pass::new(id(400))
    }
}

fn any_notes(chance: &mut Chance) -> FieldNotes {
    let mut field = field();
    field.texture = Some(TextureNote::Group(chance.of(TextureGroup::ALL)));
    field.last_loosened =
        chance.maybe(4, &[day(0), day(20), day(45), NaiveDate::from_ymd_opt(2024, 9, 1).unwrap()]);
    field.last_rain = chance.maybe(6, &[day(5), day(30)]);
    field.drains_mm = chance.maybe(3, &[450, 550, 800]);
    field.mole_drains_mm = chance.maybe(6, &[420, 550]);
    field.services_mm = chance.maybe(6, &[450, 900, 1_200]);
    field.services_leave = chance.maybe(4, &[true]);
    field.services_asked_on = chance.maybe(4, &[day(0), NaiveDate::from_ymd_opt(2023, 1, 1).unwrap()]);
    field.services_asked = field.services_asked_on.map(|_| "the network".to_owned());
    field.services_clearance_mm = chance.maybe(4, &[100, 700]);
    field.reach_mm = chance.maybe(4, &[300, 400, 500]);
    field.deep_clay_anyway = chance.maybe(4, &[true]);
    if chance.one_in(2) {
        field.outline = vec![[2.5, 54.5], [2.506, 54.5], [2.506, 54.504], [2.5, 54.504]];
        field.headland_mm = chance.maybe(2, &[15_000]);
    }
    if chance.one_in(4) {
        let kind = chance.of(&[Buried::Drain, Buried::Service]);
        let along = vec![[2.5, 54.502], [2.506, 54.502]];
        let depth_mm = chance.maybe(2, &[600, 1_000]);
        field.lines.push(BuriedLine {
            id: id(300),
            kind,
            along,
            depth_mm,
            sort: None,
            unknown: Unknown::new(),
        });
    }
    let pits = (0..=chance.below(6) as u64).map(|number| any_pit(number, chance)).collect();
    let machines = if chance.one_in(2) { vec![any_machine(chance)] } else { Vec::new() };
    let passes = if chance.one_in(2) { vec![any_pass(chance)] } else { Vec::new() };
    FieldNotes { machines, passes, ..FieldNotes::new(field, pits) }
}

/// Returns what the deciding reason of a call is.
fn lead(call: &ZoneCall) -> Option<&What> {
    call.reasons.iter().find(|why| why.stance == Stance::For).map(|why| &why.what)
}

const fn is_buried(what: &What) -> bool {
    matches!(what, What::TooNear { .. } | What::DepthUnknown { .. })
}

/// Every pair of outputs that say otherwise, of one zone.
fn of_zone(answer: &FieldAnswer, call: &ZoneCall) -> Vec<&'static str> {
    let works = matches!(call.call, Call::Loosen | Call::Wait);
    let says = |test: fn(&What) -> bool| says(call, test);
    let wet = says(|what| matches!(what, What::Rolled { roll: RollOutcome::Thread, .. }));
    let rolled = says(|what| matches!(what, What::Rolled { surface: false, .. }));
    let work = ground_work(
        &answer.notes.field,
        &answer.advice,
        &Areas::of(&answer.map),
        answer.notes.machines.first(),
        &Terms::default(),
    );
    let worked = work.unwrap().zones.into_iter().find(|zone| zone.zone == call.zone);
    let last_dug = |zone: Zone| {
        let stands = |pit: &&Pit| pitface_core::advice::stands_for(&answer.map, pit) == Some(zone);
        answer.notes.pits.iter().filter(stands).filter_map(|pit| pit.dug).max()
    };
    let proved = answer.notes.passes.iter().zip(&answer.passes).any(|(pass, said)| {
        let here = pass.zone.is_none_or(|zone| zone == call.zone);
        let since = pass.done.zip(last_dug(call.zone)).is_none_or(|(done, dug)| done >= dug.date_naive());
        here && since && pass.extent == Some(Extent::Zone) && said.verdict == Some(Verdict::Done)
    });
    let english = Words::new(Language::English, LengthUnit::Centimetres);
    let pairs = [
        ("a tip depth, and no work", call.tip.is_some() && !works),
        ("work, and no tip depth", works && call.tip.is_none()),
        ("loosen, and a thread that counts", call.call == Call::Loosen && wet),
        ("fit, and no roll at the tips", {
            call.call == Call::Loosen && call.readiness == Readiness::Fit && !rolled
        }),
        ("roll first, and a roll at the tips", {
            matches!(call.readiness, Readiness::RollFirst { .. }) && rolled
        }),
        ("to be worked, and something buried in the way", works && says(is_buried)),
        ("something buried in the way, and another lead", {
            call.call == Call::AskSpecialist && says(is_buried) && !lead(call).is_some_and(is_buried)
        }),
        ("to be worked, and no machine that does", {
            works && says(|what| matches!(what, What::NoMachine { .. } | What::BeyondReach { .. }))
        }),
        ("to be worked, and clay too deep", works && says(|what| matches!(what, What::DeepClay { .. }))),
        ("dig again, and sure", call.call == Call::DigAgain && call.sure != Sureness::CannotSay),
        ("acted on, and less than likely", {
            !matches!(call.call, Call::DigAgain | Call::AskSpecialist) && call.sure == Sureness::CannotSay
        }),
        ("one pit, and sure of the ground", call.ground.pits < 2 && call.ground.sure == Sureness::Sure),
        ("more pits agree than were judged", call.ground.agree > call.ground.pits),
        ("worked and proved done, and to be loosened", proved && works),
        ("ground worked, and a call that leaves it", {
            worked
                .as_ref()
                .is_some_and(|zone| zone.tip.is_some() != call.tip.is_some() || zone.call != Some(call.call))
        }),
        ("a cable on the worked ground, and not a word of it", {
            works
                && answer.notes.field.services_mm.is_some()
                && !says(|what| {
                    matches!(what, What::Service { .. } | What::TooNear { obstacle: Obstacle::Services, .. })
                })
        }),
        ("a promise of safety", english.call_sentence(call).contains("safe")),
    ];
    pairs.into_iter().filter(|(_, holds)| *holds).map(|(pair, _)| pair).collect()
}

/// Every pair of outputs that say otherwise, of the field as a whole.
fn contradictions(answer: &FieldAnswer) -> Vec<&'static str> {
    let zones = &answer.advice.zones;
    let mut found: Vec<&str> = zones.iter().flat_map(|call| of_zone(answer, call)).collect();
    let any = |call: Call| zones.iter().any(|zone| zone.call == call);
    let open = answer.call_of(Zone::Open);
    let whole = &answer.advice.whole;
    let next = answer.next().unwrap();
    let next_zone = match next.next {
        Next::Pit { zone, .. } | Next::Behind { zone } => Some(zone),
        Next::Reference | Next::Stop => None,
    };
    let behind = |call: &ZoneCall| matches!(lead(call), Some(What::Behind { .. }));
    let pairs = [
        ("a zone to be dug again, and enough pits", any(Call::DigAgain) && next.next == Next::Stop),
        ("no more pits, and a reason for one", (next.next == Next::Stop) != next.why.is_none()),
        ("dig behind the machine, and the zone's call does not", {
            matches!(next.next, Next::Behind { .. })
                && !next_zone.and_then(|zone| answer.call_of(zone)).is_some_and(behind)
        }),
        ("the whole loosened, and open ground not", {
            whole.call == Call::Loosen && open.is_some_and(|open| open.call != Call::Loosen)
        }),
        ("the whole left, and a zone loosened without a word of it", {
            whole.call == Call::LeaveIt
                && any(Call::Loosen)
                && !says(whole, |what| matches!(what, What::ZonesDiffer { .. }))
        }),
        ("zones said to be loosened, and others are", {
            whole.reasons.iter().any(|why| match &why.what {
                What::ZonesDiffer { loosen } => loosen
                    .iter()
                    .any(|&zone| answer.call_of(zone).is_none_or(|call| call.call != Call::Loosen)),
                _ => false,
            })
        }),
    ];
    found.extend(pairs.into_iter().filter(|(_, holds)| *holds).map(|(pair, _)| pair));
    found
}

#[test]
fn no_two_outputs_of_thousands_of_fields_contradict() {
    let mut calls = [0; Call::ALL.len()];
    let mut last: Option<FieldAnswer> = None;
    for seed in 1..=FIELDS {
        let mut chance = Chance(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15));
        let notes = any_notes(&mut chance);
        let today = chance.maybe(2, &[day(30), day(31), day(300)]);
        let answer = FieldAnswer::of(notes.clone(), today);
        assert_eq!(contradictions(&answer), Vec::<&str>::new(), "seed {seed}: {:#?}", answer.advice);
        for call in &answer.advice.zones {
            calls[call.call as usize] += 1;
        }
        // An answer made out of the one before is the same as one made anew.
        if let Some(before) = last {
            let mut edited = before.notes.clone();
            edited.pits.clone_from(&notes.pits);
            let [after, anew] =
                [FieldAnswer::after(&before, edited.clone(), today), FieldAnswer::of(edited, today)];
            assert_eq!((after.reading, after.advice), (anew.reading, anew.advice), "seed {seed}");
        }
        last = Some(answer);
    }
    // A test that never meets a call says nothing of it.
    assert!(calls.iter().all(|count| *count >= 10), "{calls:?}");
}
