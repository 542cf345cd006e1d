//! The published decision cases: what each source says comes out, and does not hang on the exact sizes in the table
//! of clues.

mod advice_fixture;

use advice_fixture::{good, layer, notes, pit, reference, roll, signs, sound_subsoil};
use pitface_core::advice::{Readiness, What, ZoneCall, advise};
use pitface_core::reading::{Table, read_field_with};
use pitface_core::record::{
    Call, FieldNotes, OrganicMatter, OrganicMatterLevel, Pit, PlaceKind, RollOutcome, Sign, TextureNote, Zone,
};
use pitface_core::soil::texture::TextureGroup;
use proptest::prelude::Rng;
use proptest::test_runner::{RngAlgorithm, TestRng};

struct Case {
    name: &'static str,
    source: &'static str,
    notes: FieldNotes,
    zone: Zone,
    call: Call,
}

fn on(texture: TextureGroup, mut notes: FieldNotes) -> FieldNotes {
    notes.field.texture = Some(TextureNote::Group(texture));
    notes
}

/// Dense layer from 200 to 280 mm, plates, roots sideways; rolled at 300 mm.
fn dense_layer(outcome: RollOutcome) -> FieldNotes {
    let dense = signs(&[
        (Sign::ComesAway, "flat_plates"),
        (Sign::Resistance, "hard_push"),
        (Sign::Roots, "sideways"),
    ]);
    let layers = vec![layer(0, 200, good()), layer(200, 280, dense), layer(280, 450, sound_subsoil())];
    let rolls = vec![roll(50, RollOutcome::ShortLengths), roll(300, outcome)];
    notes(vec![reference(), Pit { rolls, ..pit(1, PlaceKind::Open, layers) }])
}

fn below(words: &[(Sign, &str)]) -> FieldNotes {
    let layers = || vec![layer(0, 250, good()), layer(250, 500, signs(words))];
    let deep = |number, place| Pit { dug_to_mm: Some(500), ..pit(number, place, layers()) };
    notes(vec![deep(900, PlaceKind::Reference), deep(1, PlaceKind::Open)])
}

/// Massive from 50 to 300 mm, the same in the reference pit.
fn slumped(roots: &str, place: PlaceKind) -> FieldNotes {
    let massive = signs(&[
        (Sign::ComesAway, "one_mass"),
        (Sign::Resistance, "hard_push"),
        (Sign::Pores, "few"),
        (Sign::Roots, roots),
    ]);
    let layers = || vec![layer(0, 50, good()), layer(50, 300, massive), layer(300, 450, sound_subsoil())];
    let mut notes = notes(vec![pit(900, PlaceKind::Reference, layers()), pit(1, place, layers())]);
    notes.field.organic_matter = Some(OrganicMatter::Level(OrganicMatterLevel::Low));
    on(TextureGroup::Light, notes)
}

fn cases() -> Vec<Case> {
    use RollOutcome::{Crumbles, ShortLengths, Thread};
    let plough_sole = signs(&[
        (Sign::ComesAway, "flat_plates"),
        (Sign::Resistance, "hard_push"),
        (Sign::Channels, "cut_off"),
        (Sign::Roots, "stopped"),
    ]);
    let sole = vec![layer(0, 220, good()), layer(220, 270, plough_sole), layer(270, 450, sound_subsoil())];
    let hard_dry =
        signs(&[(Sign::ComesAway, "one_mass"), (Sign::Resistance, "stops"), (Sign::ClodInWater, "holds")]);
    let cemented = vec![layer(0, 250, good()), layer(250, 350, hard_dry), layer(350, 450, sound_subsoil())];
    let dense_base = vec![layer(0, 230, good()), layer(230, 250, plough_sole)];
    let alone = {
        let mut notes = dense_layer(ShortLengths);
        notes.pits.remove(0);
        notes.pits[0].place = PlaceKind::Headland;
        notes
    };
    let case = |name, source, notes, call| Case { name, source, notes, zone: Zone::Open, call };
    let loess = [
        (Sign::ComesAway, "one_mass"),
        (Sign::Resistance, "slips_in"),
        (Sign::Channels, "many"),
        (Sign::Roots, "through"),
    ];
    let sand = [(Sign::ComesAway, "loose_grains"), (Sign::Resistance, "slips_in"), (Sign::Roots, "through")];
    vec![
        case("too wet at depth", "Tasmanian state guide; AHDB", dense_layer(Thread), Call::Wait),
        case("right at depth", "Tasmanian state guide", dense_layer(ShortLengths), Call::Loosen),
        case("dry at depth", "Tasmanian state guide", dense_layer(Crumbles), Call::Loosen),
        case("loess subsoil", "Saxon state office", on(TextureGroup::Silty, below(&loess)), Call::LeaveIt),
        case("sand subsoil", "Saxon state office", on(TextureGroup::Sand, below(&sand)), Call::LeaveIt),
        case(
            "plough sole",
            "Saxon state office",
            notes(vec![reference(), pit(1, PlaceKind::Open, sole)]),
            Call::Loosen,
        ),
        case(
            "slumped",
            "derived from published signs",
            slumped("through", PlaceKind::Open),
            Call::RootsFirst,
        ),
        Case {
            zone: Zone::Wheelings,
            ..case(
                "bare stubble",
                "Guimarães et al. 2011 on timing",
                slumped("none_to_judge", PlaceKind::Wheeling),
                Call::DigAgain,
            )
        },
        case(
            "holds in water",
            "FAO 2006, table 72",
            notes(vec![reference(), pit(1, PlaceKind::Open, cemented)]),
            Call::AskSpecialist,
        ),
        Case {
            zone: Zone::Whole,
            ..case("headland alone", "good and bad place rule, Ball et al. 2015", alone, Call::DigAgain)
        },
        case(
            "dense at the base",
            "Ball et al. 2015; Emmet-Booth et al. 2019",
            notes(vec![reference(), Pit { dug_to_mm: Some(250), ..pit(1, PlaceKind::Open, dense_base) }]),
            Call::DigAgain,
        ),
    ]
}

fn call_by(table: &Table, case: &Case) -> ZoneCall {
    let advice = advise(&case.notes, &read_field_with(&case.notes, table));
    advice.zones.into_iter().find(|call| call.zone == case.zone).unwrap_or(advice.whole)
}

#[test]
fn the_published_cases_come_out_as_stated() {
    for case in cases() {
        let call = call_by(Table::standard(), &case);
        println!("{:<18} {:<16} {:.2}  ({})", case.name, call.call.code(), call.share, case.source);
        assert_eq!(call.call, case.call, "{} ({}): {:#?}", case.name, case.source, call.reasons);
    }
}

#[test]
fn the_tip_runs_305_to_330_mm_below_a_layer_that_ends_at_280() {
    let case = &cases()[1];
    let call = call_by(Table::standard(), case);
    let tip = call.tip.map(|tip| (tip.lo_mm, tip.hi_mm));
    assert_eq!((tip, call.readiness), (Some((305, 330)), Readiness::Fit));
}

#[test]
fn a_dense_base_asks_for_400_mm_first() {
    let case = cases().into_iter().last();
    let what = case.map(|case| call_by(Table::standard(), &case).reasons[0].what.clone());
    assert_eq!(what, Some(What::TooShallow { dug_to_mm: 250, need_mm: 400 }));
}

#[test]
fn they_still_do_when_every_size_in_the_table_is_off_by_a_fifth() {
    const TABLES: usize = 1_000;
    let mut random = TestRng::from_seed(RngAlgorithm::ChaCha, &[11; 32]);
    let mut factor = || 0.8 + 0.4 * (random.next_u64() >> 11) as f64 / (1u64 << 53) as f64;
    let cases = cases();
    let mut kept = vec![0; cases.len()];
    for _ in 0..TABLES {
        let table = Table::standard().perturbed(&mut factor);
        for (kept, case) in kept.iter_mut().zip(&cases) {
            *kept += usize::from(call_by(&table, case).call == case.call);
        }
    }
    for (kept, case) in kept.iter().zip(&cases) {
        println!("{:<18} {kept} of {TABLES}", case.name);
        assert!(*kept * 100 >= TABLES * 95, "{}: {kept} of {TABLES}", case.name);
    }
}
