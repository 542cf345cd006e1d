//! The plan of a field shows what it is given, nothing lies over anything else, and it can be told without being seen.

use crate::drawing_support;

use drawing_support::{TOUCH, extent, fault, of_role, texts};
use pitface_core::picture::plan::{
    Lie, PlanAfterDig, PlanLine, PlanMark, PlanPart, PlanPicture, PlanPit, PlanWords, Spot, plan,
};
use pitface_core::picture::{Drawing, PHONE_WIDTH, Role, Shape, Spoken, Theme, svg};
use pitface_core::place::{Compass, Walk};
use pitface_core::record::{Buried, Condition, PlaceKind, Zone};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, PlanTold, Words, ZoneTold};
use proptest::prelude::*;

const SQUARE: [Spot; 4] = [[0.0, 0.0], [300.0, 0.0], [300.0, 200.0], [0.0, 200.0]];
const INNER: [Spot; 4] = [[24.0, 24.0], [276.0, 24.0], [276.0, 176.0], [24.0, 176.0]];

fn english() -> Words {
    Words::new(Language::English, LengthUnit::Centimetres)
}

fn all_words() -> Vec<Words> {
    let units = [LengthUnit::Centimetres, LengthUnit::Inches];
    Language::ALL.iter().flat_map(|&language| units.map(|unit| Words::new(language, unit))).collect()
}

fn pit(number: u32, at: Spot, condition: Option<Condition>) -> PlanPit {
    PlanPit { at: Some(at), number: number.to_string(), condition, place: PlaceKind::Open }
}

/// A field with one of everything.
fn field() -> PlanPicture {
    let gateway = vec![[280.0, 0.0], [300.0, 0.0], [300.0, 20.0], [280.0, 20.0]];
    let patch = vec![[200.0, 60.0], [240.0, 60.0], [240.0, 90.0], [200.0, 90.0]];
    PlanPicture {
        outline: SQUARE.to_vec(),
        headland: vec![INNER.to_vec()],
        tramlines: vec![vec![[100.0, 0.0], [100.0, 200.0]], vec![[130.0, 0.0], [130.0, 200.0]]],
        parts: vec![
            PlanPart { ring: gateway, zone: Zone::Gateway, label: "Gateway: loosen".into() },
            PlanPart { ring: patch, zone: Zone::Patch, label: "Wet hole".into() },
        ],
        buried: vec![
            PlanLine { kind: Buried::Drain, along: vec![[0.0, 180.0], [300.0, 150.0]] },
            PlanLine { kind: Buried::MoleDrain, along: vec![[60.0, -80.0], [60.0, 120.0]] },
            PlanLine { kind: Buried::Service, along: vec![[-900.0, 40.0], [180.0, 45.0], [190.0, 900.0]] },
        ],
        pits: vec![
            PlanPit { place: PlaceKind::Reference, ..pit(1, [150.0, 100.0], Some(Condition::Open)) },
            PlanPit { place: PlaceKind::Headland, ..pit(2, [12.0, 100.0], Some(Condition::Tight)) },
            pit(3, [290.0, 180.0], Some(Condition::Shut)),
            pit(4, [120.0, 170.0], Some(Condition::Firm)),
            pit(5, [220.0, 75.0], None),
            PlanPit { at: None, ..pit(6, [0.0, 0.0], Some(Condition::Firm)) },
            pit(7, [90_000.0, 0.0], None),
        ],
        after_digs: vec![PlanAfterDig { at: Some([14.0, 98.0]), label: "A1".into() }],
        next: Some([250.0, 130.0]),
        ..PlanPicture::empty()
    }
}

/// The field with its words.
fn told(words: &Words, picture: PlanPicture) -> (PlanPicture, String) {
    let zones = [Zone::Headland, Zone::Open].map(|zone| ZoneTold { zone, hectares: Some(1.25), call: None });
    let walk = Walk { distance_m: 137.0, bearing_deg: 47.0 };
    let told =
        PlanTold { field: "Long Sedge", hectares: Some(6.0), zones: &zones, next_from: Some(("1", walk)) };
    let description = words.describe_plan(&picture, &told);
    let zones = vec![(Zone::Open, "Leave it".to_owned()), (Zone::Headland, "Loosen".to_owned())];
    let spoken = PlanWords { zones, ..words.plan_words(&picture, &told) };
    (PlanPicture { words: spoken, ..picture }, description)
}

fn says(drawing: &Drawing, wanted: &str) -> bool {
    texts(drawing).iter().any(|(text, _)| *text == wanted)
}

#[test]
fn one_of_everything_is_drawn_named_and_kept_apart() {
    for words in all_words() {
        for text_scale in [1.0, 1.4, 2.0] {
            let (picture, _) = told(&words, PlanPicture { text_scale, ..field() });
            let drawing = plan(&picture);
            assert_eq!(fault(&drawing), None, "{:?} at {text_scale}", words.language());
            for number in ["1", "2", "3", "4", "5", "A1"] {
                assert!(says(&drawing, number), "{number} at {text_scale}");
            }
            assert!(!says(&drawing, "6") && !says(&drawing, "7"), "they are not on the plan");
            for (_, letter) in &picture.words.letters {
                assert!(says(&drawing, letter), "{letter} at {text_scale}");
            }
            assert!(says(&drawing, "N"));
            let marks: Vec<PlanMark> = picture.words.key.iter().map(|line| line.mark).collect();
            for mark in PlanMark::ALL {
                assert!(marks.contains(mark), "{mark:?} has no line in the key");
            }
        }
    }
}

#[test]
fn words_of_the_zones_stand_where_they_fit_and_are_left_out_where_not() {
    let (picture, _) = told(&english(), field());
    assert!(says(&plan(&picture), "Leave it"));
    let narrow = vec![[12.0, 12.0], [288.0, 12.0], [288.0, 188.0], [12.0, 188.0]];
    let narrow = PlanPicture { headland: vec![narrow], ..picture.clone() };
    assert!(!says(&plan(&narrow), "Loosen"), "the strip is too narrow for it");
    let wide = vec![[60.0, 60.0], [240.0, 60.0], [240.0, 140.0], [60.0, 140.0]];
    assert!(says(&plan(&PlanPicture { headland: vec![wide], ..picture }), "Loosen"));
}

#[test]
fn what_is_not_on_the_plan_is_listed_under_it() {
    let (picture, _) = told(&english(), field());
    assert_eq!(picture.pits_left_out(), ["6", "7"]);
    assert_eq!(picture.words.notes.len(), 1);
    assert!(picture.words.notes[0].ends_with("6, 7"), "{:?}", picture.words.notes);
    // A pit far off does not make the field small.
    let drawing = plan(&picture);
    let ring = of_role(&drawing, Role::Outline).into_iter().map(extent).map(|edge| edge.right - edge.left);
    assert!(ring.fold(0.0, f64::max) > PHONE_WIDTH * 0.8);
}

#[test]
fn the_kinds_of_lines_differ_in_their_dashes() {
    let dashes = Buried::ALL.iter().map(|&kind| {
        let buried = vec![PlanLine { kind, along: vec![[10.0, 100.0], [290.0, 100.0]] }];
        let picture = PlanPicture { outline: SQUARE.to_vec(), buried, ..PlanPicture::empty() };
        let drawing = plan(&picture);
        let length = |shape: &Shape| (extent(shape).right - extent(shape).left).round();
        let mut lengths: Vec<f64> = of_role(&drawing, Role::Ink)
            .into_iter()
            .filter(|shape| matches!(shape, Shape::Line { .. }))
            .map(length)
            .take(12)
            .collect();
        lengths.sort_by(f64::total_cmp);
        lengths.dedup();
        lengths
    });
    let dashes: Vec<Vec<f64>> = dashes.collect();
    assert!(dashes.iter().all(|dashes| !dashes.is_empty()));
    assert!(dashes[0] != dashes[1] && dashes[1] != dashes[2] && dashes[0] != dashes[2], "{dashes:?}");
}

/// Ink of a pit's square in print, shape by shape: only the hatching tells the conditions apart.
#[test]
fn print_without_tone_still_tells_conditions_apart() {
    let hatches = [Role::HatchOpen, Role::HatchFirm, Role::HatchTight, Role::HatchShut];
    let ink = |shape: &Shape| match shape {
        Shape::Circle { radius, .. } => std::f64::consts::PI * radius * radius,
        Shape::Line { role, from, to } => (from.x - to.x).hypot(from.y - to.y) * role.stroke_width(),
        Shape::Rectangle { width, height, .. } => width * height,
        other => panic!("{other:?} is no hatching"),
    };
    for place in [PlaceKind::Open, PlaceKind::Reference] {
        let inks = Condition::ALL.iter().zip(hatches).map(|(&condition, role)| {
            let pits = vec![PlanPit { place, ..pit(1, [150.0, 100.0], Some(condition)) }];
            let drawing = plan(&PlanPicture { outline: SQUARE.to_vec(), pits, ..PlanPicture::empty() });
            for other in hatches.into_iter().filter(|&other| other != role) {
                assert!(of_role(&drawing, other).is_empty());
            }
            let strokes = of_role(&drawing, role);
            assert!(strokes.len() > 1, "{condition:?}");
            strokes.into_iter().map(ink).sum::<f64>()
        });
        let inks: Vec<f64> = inks.collect();
        assert!(inks.windows(2).all(|pair| pair[1] > 1.25 * pair[0]), "{place:?}: {inks:?}");
    }
    let pits = vec![pit(1, [150.0, 100.0], None)];
    let drawing = plan(&PlanPicture { outline: SQUARE.to_vec(), pits, ..PlanPicture::empty() });
    assert!(hatches.iter().all(|&role| of_role(&drawing, role).is_empty()), "not judged is empty");
}

#[test]
fn a_reference_pit_has_a_double_frame() {
    let frames = |place| {
        let pits = vec![PlanPit { place, ..pit(1, [150.0, 100.0], None) }];
        let drawing = plan(&PlanPicture { pits, ..PlanPicture::empty() });
        of_role(&drawing, Role::Outline).len()
    };
    assert_eq!((frames(PlaceKind::Reference), frames(PlaceKind::Wheeling)), (2, 1));
}

#[test]
fn north_is_up_and_east_is_right_at_one_scale() {
    let picture =
        PlanPicture { outline: SQUARE.to_vec(), next: Some([290.0, 190.0]), ..PlanPicture::empty() };
    let drawing = plan(&picture);
    let field = extent(of_role(&drawing, Role::Outline)[0]);
    let next = extent(of_role(&drawing, Role::Tip)[0]);
    assert!(
        next.left > f64::midpoint(field.left, field.right)
            && next.bottom < f64::midpoint(field.top, field.bottom)
    );
    let stroke = Role::Outline.stroke_width();
    let (across, down) = (field.right - field.left - stroke, field.bottom - field.top - stroke);
    assert!((across / down - 1.5).abs() < TOUCH, "{across} by {down}");
}

#[test]
fn the_scale_bar_is_as_long_as_it_says() {
    for (unit, metres) in [("m", 1.0), ("yd", 0.9144)] {
        let words = PlanWords { unit: (unit.into(), metres), ..PlanWords::none() };
        let drawing = plan(&PlanPicture { outline: SQUARE.to_vec(), words, ..PlanPicture::empty() });
        let field = extent(of_role(&drawing, Role::Outline)[0]);
        let points_per_m = (field.right - field.left - Role::Outline.stroke_width()) / 300.0;
        let bars = of_role(&drawing, Role::Ruler).into_iter().map(extent);
        let bar = bars.map(|bar| bar.right - bar.left).fold(0.0, f64::max) - Role::Ruler.stroke_width();
        let said =
            texts(&drawing).into_iter().find_map(|(text, _)| text.strip_suffix(unit)).unwrap().to_owned();
        let number: f64 = said.trim_end_matches('\u{a0}').parse().unwrap();
        assert!((bar - number * metres * points_per_m).abs() < 0.01, "{bar} for {said} {unit}");
    }
}

#[test]
fn every_theme_is_well_formed_and_carries_the_description() {
    for words in all_words() {
        let (picture, description) = told(&words, field());
        for theme in [Theme::Light, Theme::Dark, Theme::Print, Theme::Page] {
            let title = words.plan_title("Long <Sedge>");
            let spoken =
                Spoken { language: words.language().code(), title: &title, description: &description };
            let written = svg(&plan(&picture), theme, &spoken);
            let document = roxmltree::Document::parse(&written).expect("well-formed");
            let named = |name| {
                document.descendants().find(|node| node.has_tag_name(("http://www.w3.org/2000/svg", name)))
            };
            assert_eq!(named("title").and_then(|node| node.text()), Some(title.as_str()));
            assert_eq!(named("desc").and_then(|node| node.text()), Some(description.as_str()));
        }
    }
}

#[test]
fn the_description_names_everything_drawn() {
    let (_, said) = told(&english(), field());
    let said = said.replace('\u{a0}', " ");
    for expected in [
        "Plan of Long Sedge, 6.00 ha, north up.",
        "Headland, 1.25 ha.",
        "2 tramlines.",
        "Gateway: loosen, in the south-east.",
        "Marked patch in the east: Wet hole.",
        "Pit 1, reference pit, in the middle: open.",
        "Pit 2, on the headland, in the west: tight.",
        "Pit 3, on open ground, in the north-east: shut.",
        "Pit 5, on open ground, in the east: not judged.",
        "Pit 6, on open ground, not on the plan: firm.",
        "Pit 7, on open ground, not on the plan: not judged.",
        "Dug behind the machine, A1: in the west.",
        "a drain from the north-west to the north-east",
        "a mole drain from the south-west to the west",
        "a service line from the south-west to the north",
        "Dig next in the east, 140 m north-east of pit 1.",
    ] {
        assert!(said.contains(expected), "{expected} is not in\n{said}");
    }
    for words in all_words() {
        let (picture, said) = told(&words, field());
        let key = picture.words.key.into_iter().map(|line| line.text);
        for text in key.chain(picture.words.notes).chain([said]) {
            assert!(!text.contains('{') && !text.is_empty(), "{text}");
        }
    }
    let drain = |north| PlanLine { kind: Buried::Drain, along: vec![[0.0, north], [300.0, north]] };
    let drains =
        told(&english(), PlanPicture { buried: (90..110).map(f64::from).map(drain).collect(), ..field() }).1;
    assert!(drains.contains("Not to be dug on: 20 drains from the west to the east."), "{drains}");
    let nothing = told(&english(), PlanPicture::empty()).1;
    assert!(nothing.contains("The edge of the field is not noted."), "{nothing}");
}

#[test]
fn directions_and_distances_are_said_in_both_languages_and_units() {
    let walk = Walk { distance_m: 137.0, bearing_deg: 47.0 };
    let said = |language, unit| Words::new(language, unit).walk_to(walk).replace('\u{a0}', " ");
    assert_eq!(said(Language::English, LengthUnit::Centimetres), "Walk 140 m to the north-east.");
    assert_eq!(said(Language::English, LengthUnit::Inches), "Walk 150 yd to the north-east.");
    assert_eq!(said(Language::German, LengthUnit::Centimetres), "140 m nach Nordosten gehen.");
    let here = Walk { distance_m: 1.0, bearing_deg: 0.0 };
    assert_eq!(english().walk_to(here), "You are there.");
    assert_eq!(english().compass(181.0), "south");
    assert_eq!(Words::new(Language::German, LengthUnit::Centimetres).compass(-45.0), "Nordwesten");
}

#[test]
fn a_field_has_parts_by_thirds_and_a_narrow_one_none_across() {
    let picture = PlanPicture { outline: SQUARE.to_vec(), ..PlanPicture::empty() };
    assert_eq!(picture.lie([150.0, 100.0]), Lie::Middle);
    assert_eq!(picture.lie([10.0, 190.0]), Lie::Towards(Compass::NorthWest));
    assert_eq!(
        picture.lie([150.0, -500.0]),
        Lie::Towards(Compass::South),
        "beyond the edge is still that way"
    );
    let narrow =
        PlanPicture { outline: vec![[0.0, 0.0], [10.0, 0.0], [10.0, 300.0]], ..PlanPicture::empty() };
    assert_eq!(narrow.lie([0.0, 290.0]), Lie::Towards(Compass::North));
}

#[test]
fn nothing_to_draw_and_odd_input_do_no_harm() {
    assert_eq!(fault(&plan(&PlanPicture::empty())), None);
    let odd = [f64::NAN, f64::INFINITY];
    let (picture, said) = told(
        &english(),
        PlanPicture {
            outline: vec![odd, [0.0, 0.0]],
            headland: vec![vec![odd], vec![]],
            tramlines: vec![vec![odd, [1.0, 1.0], [2e9, 1.0]], vec![]],
            parts: vec![PlanPart { ring: vec![odd; 3], zone: Zone::Patch, label: "odd".into() }],
            buried: vec![PlanLine { kind: Buried::Drain, along: vec![odd, [5.0, 5.0], [1e12, 0.0]] }],
            pits: vec![pit(1, odd, None), pit(2, [0.0, 0.0], None)],
            next: Some(odd),
            text_scale: f64::NAN,
            ..PlanPicture::empty()
        },
    );
    assert!(!said.contains('{'), "{said}");
    let drawing = plan(&picture);
    assert!(drawing.height.is_finite() && drawing.shapes.len() < 2_000, "{}", drawing.shapes.len());
    let written = svg(&drawing, Theme::Light, &Spoken { language: "en", title: "", description: "" });
    assert!(!written.contains("NaN") && !written.contains("inf"), "{written}");
}

fn any_pits(count: std::ops::Range<usize>) -> impl Strategy<Value = Vec<PlanPit>> {
    let one =
        (0.0..300.0_f64, 0.0..200.0_f64, 0..5_usize, prop::sample::select(PlaceKind::ALL), 3.0..40.0_f64);
    prop::collection::vec(one, count).prop_map(|pits| {
        let pits = pits.into_iter().enumerate();
        pits.map(|(index, (east, north, condition, place, crowd))| {
            // Some of them close together.
            let at = if crowd < 15.0 { [100.0 + east / crowd, 100.0 + north / crowd] } else { [east, north] };
            PlanPit { place, ..pit(index as u32 + 1, at, Condition::ALL.get(condition).copied()) }
        })
        .collect()
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn up_to_twenty_pits_all_have_their_number_and_no_text_lies_over_another(
        pits in any_pits(0..21),
        next in prop::option::of((0.0..300.0_f64, 0.0..200.0_f64)),
        text_scale in 1.0..2.0_f64,
        stretch in prop::sample::select(vec![[1.0, 1.0], [0.2, 3.0], [3.0, 0.3]]),
        with_outline in any::<bool>(),
    ) {
        let to = |[east, north]: Spot| [east * stretch[0], north * stretch[1]];
        let pits: Vec<PlanPit> = pits.into_iter().map(|pit| PlanPit { at: pit.at.map(to), ..pit }).collect();
        let outline = if with_outline { SQUARE.map(to).to_vec() } else { Vec::new() };
        let headland = if with_outline { vec![INNER.map(to).to_vec()] } else { Vec::new() };
        let next = next.map(|(east, north)| to([east, north]));
        let (picture, _) = told(&english(), PlanPicture { outline, headland, pits, next, text_scale, ..PlanPicture::empty() });
        let drawing = plan(&picture);
        prop_assert_eq!(fault(&drawing), None);
        for pit in &picture.pits {
            prop_assert!(says(&drawing, &pit.number), "{} has lost its number", pit.number);
        }
        let edges = of_role(&drawing, Role::Outline).into_iter().map(extent);
        for square in edges.filter(|edge| (edge.right - edge.left).max(edge.bottom - edge.top) < 30.0) {
            let over = texts(&drawing).into_iter().find(|(_, room)| room.overlaps(&square));
            prop_assert!(over.is_none(), "{over:?} lies over a pit at {square:?}");
        }
    }

    #[test]
    fn more_pits_are_all_drawn_and_numbers_give_way(pits in any_pits(21..90), text_scale in 1.0..2.0_f64) {
        let count = pits.len();
        let picture = PlanPicture { outline: SQUARE.to_vec(), pits, text_scale, ..PlanPicture::empty() };
        let drawing = plan(&picture);
        prop_assert_eq!(fault(&drawing), None);
        prop_assert!(of_role(&drawing, Role::Outline).len() > count);
    }
}
