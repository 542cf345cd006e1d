//! The section behind a machine and the pair of before and after show what was measured and what stayed.

use crate::drawing_support;

use drawing_support::{TOUCH, extent, fault, of_role, texts};
use pitface_core::advice::machine::LayerDepths;
use pitface_core::picture::machine::{BehindPicture, BehindWords, KeyMark, behind, pair};
use pitface_core::picture::{Drawing, Face, FaceLayer, Point, Role, Ruler, Shape, Spoken, Theme, svg};
use pitface_core::record::Condition;
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
use proptest::prelude::*;

const RIDGE: [u32; 5] = [350, 330, 200, 340, 350];
const BROKEN: [u32; 5] = [350, 340, 345, 340, 350];

fn english() -> Words {
    Words::new(Language::English, LengthUnit::Centimetres)
}

fn all_words() -> Vec<Words> {
    let units = [LengthUnit::Centimetres, LengthUnit::Inches];
    Language::ALL.iter().flat_map(|&language| units.map(|unit| Words::new(language, unit))).collect()
}

fn hole(words: &Words, readings_mm: &[u32]) -> BehindPicture {
    with_words(
        words,
        BehindPicture {
            readings_mm: readings_mm.to_vec(),
            spacing_mm: 600,
            tip_mm: Some(350),
            target_mm: 300,
            layer: Some(LayerDepths { top_mm: 220, bottom_mm: 300 }),
            slots_mm: vec![350, 340, 300],
            ruler: Ruler { unit: String::new(), marks: vec![] },
            words: BehindWords::default(),
            text_scale: 1.0,
        },
    )
}

fn with_words(words: &Words, picture: BehindPicture) -> BehindPicture {
    let ruler = Ruler::down_to(picture.depth_mm(), words.unit(), words.unit_sign());
    BehindPicture { words: words.behind_words(&picture), ruler, ..picture }
}

fn pit() -> Face {
    let layer = |top_mm, bottom_mm, condition: Condition| FaceLayer {
        top_mm,
        bottom_mm,
        condition: Some(condition),
        roots: None,
        channels: None,
        patches: None,
        word: condition.code().to_owned(),
        notes: vec!["a note".into()],
    };
    let layers = vec![
        layer(0, 220, Condition::Open),
        layer(220, 300, Condition::Tight),
        layer(300, 450, Condition::Firm),
    ];
    Face { title: String::new(), dug_to_mm: 450, layers, tip: None }
}

/// The floor as drawn: the large line, not the sample of the key.
fn floor(drawing: &Drawing) -> Vec<Point> {
    let lines = of_role(drawing, Role::Measured).into_iter();
    let points = lines.filter_map(|shape| match shape {
        Shape::Polyline { points, .. } => Some(points.clone()),
        _ => None,
    });
    points.max_by_key(Vec::len).unwrap_or_else(|| panic!("no floor is drawn"))
}

#[test]
fn readings_lie_to_scale_at_equal_steps() {
    let drawing = behind(&hole(&english(), &RIDGE));
    let floor = floor(&drawing);
    assert_eq!(floor.len(), RIDGE.len());
    let step = floor[1].x - floor[0].x;
    assert!(floor.windows(2).all(|pair| (pair[1].x - pair[0].x - step).abs() < TOUCH));
    let points_per_mm = (floor[0].y - floor[2].y) / 150.0;
    for (at, mm) in floor.iter().zip(RIDGE) {
        let wanted = floor[2].y + (f64::from(mm) - 200.0) * points_per_mm;
        assert!((at.y - wanted).abs() < TOUCH, "{mm} mm");
    }
    // Slopes are true: one scale both ways.
    assert!((step / 150.0 - points_per_mm).abs() < TOUCH);
    let tip = of_role(&drawing, Role::Tip).into_iter().map(extent).next().unwrap();
    assert!((f64::midpoint(tip.top, tip.bottom) - floor[0].y).abs() < TOUCH, "tips at 350 mm, too");
    for number in ["35", "33", "20", "34"] {
        assert!(texts(&drawing).iter().any(|(text, _)| *text == number), "{number}");
    }
}

#[test]
fn what_stayed_is_hatched_below_the_floor_and_only_there() {
    let drawing = behind(&hole(&english(), &RIDGE));
    let floor = floor(&drawing);
    let height = |x: f64| {
        let pair = floor.windows(2).find(|pair| x <= pair[1].x).unwrap_or(&floor[3..]);
        pair[0].y + (pair[1].y - pair[0].y) * (x - pair[0].x) / (pair[1].x - pair[0].x)
    };
    let bottom = floor[0].y;
    let mut left = 0;
    for shape in &drawing.shapes {
        match shape {
            Shape::Line { role: Role::HatchTight | Role::HatchFirm, from, to } if from.y < bottom => {
                left += 1;
                for at in [from, to] {
                    assert!(at.y > height(at.x), "{shape:?} lies in loosened ground");
                }
            }
            Shape::Circle { role: Role::HatchOpen, centre, .. } if centre.y < bottom => {
                assert!(centre.y < height(centre.x), "{shape:?} lies in firm ground");
            }
            _ => {}
        }
    }
    assert!(left > 4, "{left} strokes");
    let broken = behind(&hole(&english(), &BROKEN));
    assert!(of_role(&broken, Role::HatchTight).is_empty(), "nothing of the layer is left");
}

#[test]
fn the_ridge_is_measured_from_the_floor_of_the_tine_lines() {
    let ridge =
        |readings: &[u32]| hole(&english(), readings).ridge().map(|ridge| (ridge.height_mm, ridge.at));
    assert_eq!(ridge(&RIDGE), Some((150, 0.5)));
    assert_eq!(ridge(&[350, 200, 300, 340, 350]), Some((150, 0.25)));
    for none in [&BROKEN[..], &[300, 400, 300], &[], &[300], &[300, 300]] {
        assert_eq!(ridge(none), None, "{none:?}");
    }
}

#[test]
fn all_that_is_drawn_is_named_in_the_key_and_spoken() {
    let words = english();
    let picture = hole(&words, &RIDGE);
    let said = words.describe_behind(&picture).replace('\u{a0}', " ");
    for expected in [
        "from tine line to tine line over 60 cm. Depth to firm ground: 35, 33, 20, 34, 35 cm.",
        "A ridge 15 cm high stands in the middle.",
        "Some ground stayed firm above the depth aimed at, 30 cm.",
        "Part of the layer at 22 to 30 cm is left.",
        "The tips were set to 35 cm.",
        "Bottoms of the slots from left to right: 35, 34, 30 cm.",
    ] {
        assert!(said.contains(expected), "{expected} is not in\n{said}");
    }
    let has = |picture: &BehindPicture, mark| picture.words.key.iter().any(|line| line.mark == mark);
    for mark in
        [KeyMark::Floor, KeyMark::Loosened, KeyMark::LayerLeft, KeyMark::Ridge, KeyMark::Tip, KeyMark::Slots]
    {
        assert!(has(&picture, mark), "{mark:?}");
    }
    let broken = hole(&words, &BROKEN);
    assert!(
        !has(&broken, KeyMark::LayerLeft) && !has(&broken, KeyMark::Stayed) && !has(&broken, KeyMark::Ridge)
    );
    assert!(words.describe_behind(&broken).contains("no reading met firm ground"));
    let unlooked = words.describe_behind(&hole(&words, &[]));
    assert!(unlooked.contains("Nothing is measured yet.") && !unlooked.contains("ridge"), "{unlooked}");
    for words in all_words() {
        for readings in [&RIDGE[..], &BROKEN, &[]] {
            let picture = hole(&words, readings);
            let key = picture.words.key.iter().map(|line| line.text.clone());
            let said = words.describe_behind(&picture);
            for text in
                key.chain([words.describe_pair("Pit.", &said), words.behind_title(), words.pair_title()])
            {
                assert!(!text.contains('{') && !text.is_empty(), "{text}");
            }
        }
    }
}

#[test]
fn before_and_after_share_one_depth_scale() {
    let words = english();
    let drawing = pair(&pit(), &hole(&words, &RIDGE), &words.pair_words());
    assert_eq!(fault(&drawing), None);
    let floor = floor(&drawing);
    let points_per_mm = (floor[0].y - floor[2].y) / 150.0;
    // The Tight layer of the pit: 220 to 300 mm.
    let tones = of_role(&drawing, Role::SoilTight).into_iter();
    let tight = tones.filter(|shape| matches!(shape, Shape::Rectangle { .. })).map(extent).next().unwrap();
    assert!((tight.top - (floor[2].y + 20.0 * points_per_mm)).abs() < TOUCH);
    assert!((tight.bottom - (floor[2].y + 100.0 * points_per_mm)).abs() < TOUCH);
    assert!(tight.right < floor[0].x, "beside each other");
    for told in ["Before", "After", "tight, a note", "Widths are drawn at another scale than depths."] {
        assert!(texts(&drawing).iter().any(|(text, _)| *text == told), "{told}");
    }
}

#[test]
fn every_theme_is_well_formed() {
    for words in all_words() {
        for readings in [&RIDGE[..], &BROKEN, &[]] {
            let picture = hole(&words, readings);
            let description = words.describe_behind(&picture);
            let title = words.behind_title();
            let spoken =
                Spoken { language: words.language().code(), title: &title, description: &description };
            for drawing in [behind(&picture), pair(&pit(), &picture, &words.pair_words())] {
                for theme in [Theme::Light, Theme::Dark, Theme::Print] {
                    let written = svg(&drawing, theme, &spoken);
                    roxmltree::Document::parse(&written).expect("well-formed");
                    assert!(!written.contains("NaN"));
                }
            }
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn nothing_leaves_the_sheet_and_no_text_lies_over_another(
        readings in prop::collection::vec(0_u32..700, 0..24),
        slots in prop::collection::vec(0_u32..700, 0..12),
        spacing_mm in 0_u32..1_500,
        target_mm in 0_u32..600,
        layer in prop::option::of((0_u32..400, 0_u32..200)),
        tip_mm in prop::option::of(0_u32..700),
        text_scale in 1.0..2.0_f64,
        language in prop::sample::select(Language::ALL),
        inches in any::<bool>(),
    ) {
        let unit = if inches { LengthUnit::Inches } else { LengthUnit::Centimetres };
        let words = Words::new(language, unit);
        let layer = layer.map(|(top_mm, thick)| LayerDepths { top_mm, bottom_mm: top_mm + thick });
        let picture = BehindPicture {
            slots_mm: slots,
            spacing_mm,
            target_mm,
            layer,
            tip_mm,
            text_scale,
            ..hole(&words, &readings)
        };
        let picture = with_words(&words, picture);
        prop_assert_eq!(fault(&behind(&picture)), None);
        prop_assert_eq!(fault(&pair(&pit(), &picture, &words.pair_words())), None);
    }
}
