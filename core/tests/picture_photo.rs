//! A photo gets a scale: what marks say of depths, against a pinhole camera of the test's own and cases worked out by another
//! library (`tests/vectors/photo.json`, checked again by `tests/outside/test_photo.py`), and the layers drawn over it.

use pitface_core::picture::photo::{PhotoSize, Scale, ScaleFault, on_photo};
use pitface_core::picture::{Face, FaceLayer, PHONE_WIDTH, Point, Role, Ruler, Shape, Tip};
use pitface_core::record::PhotoMark;
use pitface_core::units::LengthUnit;
use proptest::prelude::*;
use serde_json::Value;

const UPRIGHT: PhotoSize = PhotoSize { width_px: 3000, height_px: 4000 };

fn mark(from_left: u32, from_top: u32, depth_mm: u32) -> PhotoMark {
    PhotoMark { from_left, from_top, depth_mm }
}

#[test]
fn two_touches_give_scale_and_tilt() {
    // An upright tape: 0 at a tenth of the height, 500 mm at nine tenths, 3200 pixels below.
    let scale = Scale::of(UPRIGHT, &[mark(5_000, 1_000, 0), mark(5_000, 9_000, 500)]).unwrap();
    assert_eq!(scale.depth_mm(5_000, 5_000), Some(250));
    assert_eq!(scale.depth_mm(0, 5_000), Some(250), "all across the picture");
    assert_eq!(scale.depth_mm(5_000, 500), None, "above the surface");
    assert!(scale.tilt_deg().abs() < 1e-9);
    assert!((scale.pixel_mm() - 500.0 / 3200.0).abs() < 1e-9);
    // The same tape leaning by atan(3/4): 900 pixels across, 1200 down, 300 mm in 1500 pixels.
    let leaning = Scale::of(UPRIGHT, &[mark(6_000, 2_000, 100), mark(3_000, 5_000, 400)]).unwrap();
    assert!((leaning.tilt_deg() - 36.869_897_6).abs() < 1e-6, "{}", leaning.tilt_deg());
    assert!((leaning.pixel_mm() - 0.2).abs() < 1e-9);
    // Square to the tape from its upper end, 300 pixels right and 225 down: the same depth.
    assert_eq!(leaning.depth_mm(7_000, 2_562), Some(100));
}

#[test]
fn a_picture_on_its_side_or_its_head_has_its_depths_all_the_same() {
    let head = Scale::of(UPRIGHT, &[mark(5_000, 9_000, 0), mark(5_000, 1_000, 500)]).unwrap();
    assert_eq!((head.depth_mm(5_000, 3_000), head.tilt_deg().abs().round()), (Some(375), 180.0));
    let side = Scale::of(UPRIGHT, &[mark(1_000, 5_000, 0), mark(9_000, 5_000, 400)]).unwrap();
    assert_eq!((side.depth_mm(3_000, 0), side.tilt_deg().round()), (Some(100), -90.0));
}

#[test]
fn marks_that_give_no_scale_say_why() {
    let fault = |marks: &[PhotoMark]| Scale::of(UPRIGHT, marks).unwrap_err();
    let (top, end) = (mark(2_000, 1_000, 0), mark(2_000, 8_000, 400));
    assert_eq!(fault(&[]), ScaleFault::Count { marks: 0 });
    assert_eq!(fault(&[top, end, top]), ScaleFault::Count { marks: 3 });
    assert_eq!(fault(&[top, mark(2_000, 10_001, 400)]), ScaleFault::Outside);
    assert_eq!(fault(&[top, mark(2_000, 8_000, 0)]), ScaleFault::SameDepth { mark: 0 });
    assert_eq!(fault(&[top, mark(2_000, 1_300, 400)]), ScaleFault::TooClose { mark: 0 });
    let pair = |left: u32| [mark(left, 1_000, 0), mark(left, 8_000, 400)];
    assert_eq!(fault(&[top, end, mark(2_010, 1_000, 0), mark(2_010, 8_000, 400)]), ScaleFault::OnOneLine);
    assert_eq!(fault(&[top, end, pair(7_000)[0], mark(7_000, 8_000, 0)]), ScaleFault::SameDepth { mark: 2 });
    let crossed = [top, mark(8_000, 8_000, 400), mark(8_000, 1_000, 0), end];
    assert_eq!(fault(&crossed), ScaleFault::Crossed);
    let no_size = PhotoSize { width_px: 0, height_px: 10 };
    assert_eq!(Scale::of(no_size, &[top, end]).unwrap_err(), ScaleFault::Outside);
}

#[test]
fn what_another_library_reckons_comes_out_here() {
    let table: Value = serde_json::from_str(include_str!("../../tests/vectors/photo.json")).unwrap();
    let number = |value: &Value| u32::try_from(value.as_u64().unwrap()).unwrap();
    for case in table["cases"].as_array().unwrap() {
        let size = PhotoSize { width_px: number(&case["size"][0]), height_px: number(&case["size"][1]) };
        let marks = case["marks"].as_array().unwrap();
        let marks: Vec<_> =
            marks.iter().map(|it| mark(number(&it[0]), number(&it[1]), number(&it[2]))).collect();
        let scale = Scale::of(size, &marks).unwrap();
        for touch in case["touches"].as_array().unwrap() {
            let depth = scale.depth_mm(number(&touch[0]), number(&touch[1]));
            let expected = touch[2].as_u64().map(|depth| depth as u32);
            assert_eq!(depth, expected, "{}: {touch}", case["name"]);
        }
    }
}

/// A pinhole camera before a face that is the plane z = 0, x to the right and y down in mm; the camera stands at the given place
/// and is turned about its three axes. Gives the picture's place in units of the width, `None` behind it.
fn seen(at: [f64; 3], [yaw, pitch, roll]: [f64; 3], zoom: f64, [x, y]: [f64; 2]) -> Option<[f64; 2]> {
    let from = [x - at[0], y - at[1], -at[2]];
    let (sin, cos) = yaw.sin_cos();
    let turned = [cos * from[0] + sin * from[2], from[1], -sin * from[0] + cos * from[2]];
    let (sin, cos) = pitch.sin_cos();
    let turned = [turned[0], cos * turned[1] + sin * turned[2], -sin * turned[1] + cos * turned[2]];
    let (sin, cos) = roll.sin_cos();
    let turned = [cos * turned[0] - sin * turned[1], sin * turned[0] + cos * turned[1], turned[2]];
    (turned[2] > 100.0)
        .then(|| [0.5 + zoom * turned[0] / turned[2], 2.0 / 3.0 + zoom * turned[1] / turned[2]])
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 512, max_global_rejects: 50_000, ..ProptestConfig::default() })]

    /// Four touches undo what a camera that looked askew did to the depths. The touches are whole ten-thousandths, 0.3 mm of
    /// such a face, so depths between them are found to 3 mm.
    #[test]
    fn four_touches_undo_the_perspective(
        across in -400.0..400.0_f64, height in -600.0..500.0_f64, away in 700.0..1500.0_f64,
        yaw in -0.5..0.5_f64, pitch in -0.4..0.4_f64, roll in -0.4..0.4_f64,
        right in 350.0..600.0_f64, deep in 300.0..600.0_f64,
        share in 0.0..1.0_f64, depth in 0.0..1.0_f64,
    ) {
        let camera = |place| seen([across, height, -away], [yaw, pitch, roll], 0.8, place);
        let touch = |place: [f64; 2]| {
            let [x, y] = camera(place)?;
            let parts = [x, y * 0.75].map(|part| part * 10_000.0);
            parts.iter().all(|part| (0.0..=10_000.0).contains(part)).then(|| parts.map(|part| part.round() as u32))
        };
        let places = [[-right, 0.0], [-right, deep], [right, 0.0], [right, deep]];
        let touches: Option<Vec<_>> = places.into_iter().map(touch).collect();
        let asked = touch([right * (2.0 * share - 1.0), deep * depth]);
        prop_assume!(touches.is_some() && asked.is_some());
        let (touches, [left, top]) = (touches.unwrap(), asked.unwrap());
        let marks: Vec<_> = touches.iter().zip(places).map(|(at, [_, depth])| mark(at[0], at[1], depth.round() as u32)).collect();
        let scale = Scale::of(UPRIGHT, &marks).unwrap();
        let found = scale.depth_mm(left, top).map_or(0.0, f64::from);
        prop_assert!((found - deep * depth).abs() <= 3.0, "{found} for {}", deep * depth);
        let deeper_first = [marks[1], marks[0], marks[3], marks[2]];
        prop_assert_eq!(Scale::of(UPRIGHT, &deeper_first).unwrap().depth_mm(left, top), scale.depth_mm(left, top));
    }

    /// Whatever is touched gives a drawing inside the picture, or says why not.
    #[test]
    fn whatever_is_touched_is_drawn_inside_the_picture(
        touches in prop::collection::vec((0..=10_000_u32, 0..=10_000_u32, 0..=1_000_u32), 0..6),
        width_px in 1..5_000_u32, height_px in 1..5_000_u32, text in 0.0..4.0_f64,
    ) {
        let marks: Vec<_> = touches.iter().map(|&(left, top, depth)| mark(left, top, depth)).collect();
        let size = PhotoSize { width_px, height_px };
        if let Ok(drawing) = on_photo(size, &marks, &face(), &Ruler::down_to(1_000, LengthUnit::Centimetres, "cm".into()), text) {
            for shape in &drawing.shapes {
                if let Shape::Line { role: Role::Boundary | Role::Tip, from, to } = shape {
                    for end in [from, to] {
                        prop_assert!((-1e-6..=drawing.width + 1e-6).contains(&end.x), "{shape:?}");
                        prop_assert!((-1e-6..=drawing.height + 1e-6).contains(&end.y), "{shape:?}");
                    }
                }
            }
        }
    }
}

fn face() -> Face {
    let layer = |top_mm: u32, bottom_mm: u32, word: &str| FaceLayer {
        top_mm,
        bottom_mm,
        condition: None,
        roots: None,
        channels: None,
        patches: None,
        word: word.into(),
        notes: Vec::new(),
    };
    let layers = vec![layer(0, 200, "Open"), layer(200, 300, "Tight"), layer(300, 450, "Firm")];
    let tip = Some(Tip { lo_mm: 350, hi_mm: 350, label: "35 cm".into() });
    Face { title: String::new(), dug_to_mm: 450, layers, tip }
}

#[test]
fn layers_are_drawn_where_they_lie_each_line_on_a_light_band() {
    let marks = [mark(2_000, 1_000, 0), mark(2_000, 9_000, 400)];
    let ruler = Ruler::down_to(400, LengthUnit::Centimetres, "cm".into());
    let drawing = on_photo(UPRIGHT, &marks, &face(), &ruler, 1.0).unwrap();
    assert_eq!((drawing.width, drawing.height), (PHONE_WIDTH, 480.0));
    // 400 mm are 384 points, from 48 down; the layer's bottom at 450 mm lies at 480, the lower edge.
    let at = |role: Role| -> Vec<f64> {
        let lines = drawing.shapes.iter().filter_map(|shape| match shape {
            Shape::Line { role: its, from, to } if *its == role => {
                assert!((from.y - to.y).abs() < 1e-9 && from.x.abs() < 1e-9 && (to.x - 360.0).abs() < 1e-9);
                Some(from.y.round())
            }
            _ => None,
        });
        lines.collect()
    };
    assert_eq!(at(Role::Boundary), [48.0, 240.0, 336.0, 480.0]);
    assert_eq!(at(Role::Tip), [384.0]);
    for (index, shape) in drawing.shapes.iter().enumerate() {
        let before = index.checked_sub(1).map(|before| &drawing.shapes[before]);
        match shape {
            Shape::Line { role, from, .. } if *role != Role::Casing => {
                let Some(Shape::Line { role, from: under, .. }) = before else {
                    panic!("no band under {shape:?}")
                };
                assert_eq!((*role, under), (Role::Casing, from));
            }
            Shape::Text { at: Point { x, y }, .. } => {
                let on_plate = drawing.shapes[..index].iter().any(|under| {
                    matches!(under, Shape::Rectangle { role: Role::Casing, left, top, width, height }
                        if (*left..=left + width).contains(x) && (*top..=top + height).contains(y))
                });
                assert!(on_plate, "no plate under {shape:?}");
            }
            _ => {}
        }
    }
    let words: Vec<&str> = drawing
        .shapes
        .iter()
        .filter_map(|shape| if let Shape::Text { text, .. } = shape { Some(text.as_str()) } else { None })
        .collect();
    assert_eq!(words, ["0", "10", "20", "30", "40", "Open", "Tight", "35 cm", "Firm"]);
}
