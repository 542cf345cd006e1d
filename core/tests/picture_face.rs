//! The drawing of a face says what the record says, and can be read whatever the layers and the words.

use crate::drawing_support;

use drawing_support::{Extent, TOUCH, extent, of_role, texts};
use pitface_core::picture::{
    Drawing, Face, FaceLayer, FacePicture, Mark, PHONE_WIDTH, Point, Role, Ruler, Shape, Tip, face, low_face,
};
use pitface_core::reading::{KINDS, LayerReading, PitReading};
use pitface_core::record::{Cause, ChannelsSeen, Condition, FaceMoisture, Patches, RootsSeen, Signs};
use pitface_core::units::LengthUnit;
use proptest::prelude::*;

const HATCHES: [(Condition, Role); 4] = [
    (Condition::Open, Role::HatchOpen),
    (Condition::Firm, Role::HatchFirm),
    (Condition::Tight, Role::HatchTight),
    (Condition::Shut, Role::HatchShut),
];

/// Where the read layers lie, in the order drawn.
fn tones(drawing: &Drawing) -> Vec<Extent> {
    let tone = |role| matches!(role, Role::SoilOpen | Role::SoilFirm | Role::SoilTight | Role::SoilShut);
    drawing.shapes.iter().filter(|shape| tone(shape.role())).map(extent).collect()
}

fn is_hatch(shape: &Shape) -> bool {
    HATCHES.iter().any(|&(_, role)| role == shape.role())
}

fn points(shape: &Shape) -> &[Point] {
    match shape {
        Shape::Polyline { points, .. } => points,
        other => panic!("a line of several points was expected, not {other:?}"),
    }
}

fn layer(top_mm: u32, bottom_mm: u32, condition: Condition) -> FaceLayer {
    FaceLayer {
        top_mm,
        bottom_mm,
        condition: Some(condition),
        roots: None,
        channels: None,
        patches: None,
        word: condition.code().to_owned(),
        notes: vec![],
    }
}

fn picture(layers: Vec<FaceLayer>) -> FacePicture {
    let dug_to_mm = layers.last().map_or(400, |layer| layer.bottom_mm);
    FacePicture {
        faces: vec![Face { title: "Headland".into(), dug_to_mm, layers, tip: None }],
        ruler: Ruler::down_to(dug_to_mm, LengthUnit::Centimetres, "cm".into()),
        text_scale: 1.0,
    }
}

/// An Open layer to 200 mm over a Tight one to 300 mm, changed; and where the Tight one lies.
fn pan(change: impl Fn(&mut FaceLayer, &mut FaceLayer)) -> (Drawing, Extent) {
    let (mut upper, mut lower) = (layer(0, 200, Condition::Open), layer(200, 300, Condition::Tight));
    change(&mut upper, &mut lower);
    let drawing = face(&picture(vec![upper, lower]));
    let pan = tones(&drawing)[1];
    (drawing, pan)
}

#[test]
fn every_condition_has_a_hatching_of_its_own_kind() {
    for (condition, role) in HATCHES {
        let drawing = face(&picture(vec![layer(0, 300, condition)]));
        let hatches = of_role(&drawing, role);
        assert!(!hatches.is_empty());
        for shape in hatches {
            let fits = match (condition, shape) {
                (Condition::Open, Shape::Circle { radius, .. }) => *radius < 2.0,
                (Condition::Firm, Shape::Line { from, to, .. }) => {
                    ((from.x - to.x) - (to.y - from.y)).abs() < TOUCH && to.y > from.y
                }
                (Condition::Tight, Shape::Line { from, to, .. }) => {
                    (from.y - to.y).abs() < TOUCH && to.x - from.x < 12.0
                }
                (Condition::Shut, Shape::Rectangle { width, height, .. }) => *width > 100.0 && *height > 3.0,
                _ => false,
            };
            assert!(fits, "{condition:?}: {shape:?}");
        }
    }
}

/// The area hatched, roughly: what print shows as grey.
#[test]
fn denser_soil_is_hatched_denser() {
    let area = |shape: &Shape| match shape {
        Shape::Circle { radius, .. } => std::f64::consts::PI * radius * radius,
        Shape::Line { from, to, role } => (from.x - to.x).hypot(from.y - to.y) * role.stroke_width(),
        Shape::Rectangle { width, height, .. } => width * height,
        other => panic!("{other:?} is no hatching"),
    };
    let inks = HATCHES.map(|(condition, role)| {
        let drawing = face(&picture(vec![layer(0, 300, condition)]));
        of_role(&drawing, role).into_iter().map(area).sum::<f64>()
    });
    assert!(inks.windows(2).all(|pair| pair[1] > 1.5 * pair[0]), "{inks:?}");
}

#[test]
fn an_unreadable_face_shows_its_layers_without_hatching() {
    let plain = |top, bottom| FaceLayer { condition: None, ..layer(top, bottom, Condition::Open) };
    let drawing = face(&picture(vec![plain(0, 150), plain(150, 400)]));
    assert!(!drawing.shapes.iter().any(is_hatch));
    assert!(of_role(&drawing, Role::SoilPlain).len() >= 2);
    assert!(!of_role(&drawing, Role::Boundary).is_empty());
}

#[test]
fn roots_right_through_go_from_top_to_bottom() {
    let (drawing, pan) = pan(|_, pan| pan.roots = Some(RootsSeen::Through));
    assert!(!of_role(&drawing, Role::Root).is_empty());
    for root in of_role(&drawing, Role::Root) {
        let line = points(root);
        assert!((line[0].y - pan.top).abs() < TOUCH && (line[line.len() - 1].y - pan.bottom).abs() < TOUCH);
        assert!(line.windows(2).all(|pair| pair[1].y > pair[0].y), "always downwards");
        assert!(line.iter().all(|at| (at.x - line[0].x).abs() < 4.0), "nearly straight");
    }
}

#[test]
fn roots_in_cracks_are_angular() {
    let (drawing, _) = pan(|_, pan| pan.roots = Some(RootsSeen::InCracks));
    assert!(!of_role(&drawing, Role::Root).is_empty());
    for root in of_role(&drawing, Role::Root) {
        let slope = |pair: &[Point]| (pair[1].x - pair[0].x) / (pair[1].y - pair[0].y);
        let slopes: Vec<f64> = points(root).windows(2).map(slope).collect();
        assert!(slopes.windows(2).any(|pair| (pair[1] - pair[0]).abs() > 0.7), "sharp corners: {slopes:?}");
    }
}

#[test]
fn roots_turned_sideways_run_level_along_the_top_of_the_layer() {
    let (drawing, pan) = pan(|upper, pan| {
        upper.roots = Some(RootsSeen::Through);
        pan.roots = Some(RootsSeen::Sideways);
    });
    let roots = of_role(&drawing, Role::Root);
    let turned: Vec<&[Point]> =
        roots.into_iter().map(points).filter(|line| line[0].y >= pan.top - TOUCH).collect();
    assert!(!turned.is_empty());
    for line in turned {
        let flat = line.windows(2).filter(|pair| (pair[0].y - pair[1].y).abs() < TOUCH);
        let level: f64 = flat.map(|pair| (pair[1].x - pair[0].x).abs()).sum();
        assert!(level > 6.0, "{level} points level");
        assert!(line.iter().all(|at| at.y < pan.top + (pan.bottom - pan.top) / 2.0), "stays at the top");
    }
}

#[test]
fn stopped_roots_and_cut_off_channels_end_at_the_top_of_the_layer() {
    let (drawing, pan) = pan(|_, pan| {
        pan.roots = Some(RootsSeen::Stopped);
        pan.channels = Some(ChannelsSeen::CutOff);
    });
    for role in [Role::Root, Role::ChannelWall] {
        let shapes = of_role(&drawing, role);
        assert!(!shapes.is_empty());
        for shape in shapes {
            let bottom = extent(shape).bottom;
            assert!(
                bottom <= pan.top + 1.0 && bottom > pan.top - 5.0,
                "{role:?} ends at {bottom}, not {}",
                pan.top
            );
        }
    }
}

#[test]
fn what_was_not_there_or_not_looked_at_is_not_drawn() {
    let looked = |layer: &mut FaceLayer| {
        layer.roots = Some(RootsSeen::NoneToJudge);
        layer.channels = Some(ChannelsSeen::None);
        layer.patches = Some(Patches::None);
    };
    for drawing in [pan(|_, _| ()).0, pan(|upper, pan| [upper, pan].into_iter().for_each(looked)).0] {
        for role in [Role::Root, Role::ChannelWall, Role::PatchRust, Role::PatchGrey] {
            assert!(of_role(&drawing, role).is_empty(), "{role:?}");
        }
    }
}

#[test]
fn more_seen_is_more_drawn_and_stays_in_its_layer() {
    let count = |role: Role, change: &dyn Fn(&mut FaceLayer)| {
        let (drawing, pan) = pan(|_, layer| change(layer));
        let shapes = of_role(&drawing, role);
        let room = Extent { top: pan.top - 1.0, bottom: pan.bottom + 1.0, ..pan };
        assert!(shapes.iter().all(|shape| room.holds(&extent(shape))), "{role:?} inside {room:?}");
        shapes.len()
    };
    let channels = |seen| count(Role::ChannelHollow, &move |layer| layer.channels = Some(seen));
    assert!(channels(ChannelsSeen::Many) > channels(ChannelsSeen::Some));
    let patches = |seen| count(Role::PatchEdge, &move |layer| layer.patches = Some(seen));
    assert!(patches(Patches::Clear) > patches(Patches::Few));
    assert!(patches(Patches::Few) > 0);
}

#[test]
fn the_ruler_covers_the_depth() {
    for unit in [LengthUnit::Centimetres, LengthUnit::Inches] {
        let mut picture = picture(vec![layer(0, 470, Condition::Firm)]);
        picture.ruler = Ruler::down_to(470, unit, "unit".into());
        let drawing = face(&picture);
        let ground = tones(&drawing)[0];
        let covers = |shape: &Shape| {
            let ruler = extent(shape);
            ruler.top <= ground.top && ruler.bottom >= ground.bottom
        };
        assert!(of_role(&drawing, Role::Ruler).into_iter().any(covers));
        assert!(texts(&drawing).iter().any(|(text, _)| *text == "0"));
    }
    let numbers = |unit| {
        let marks = Ruler::down_to(470, unit, String::new()).marks;
        marks.into_iter().map(|mark| mark.text).filter(|text| !text.is_empty()).collect::<Vec<_>>()
    };
    assert_eq!(numbers(LengthUnit::Centimetres), ["0", "10", "20", "30", "40"]);
    assert_eq!(numbers(LengthUnit::Inches), ["0", "4", "8", "12", "16"]);
}

#[test]
fn a_crowded_ruler_leaves_out_texts_and_keeps_their_marks() {
    let mut picture = picture(vec![layer(0, 400, Condition::Firm)]);
    picture.text_scale = 2.0;
    let mark = |cm: u32| Mark { depth_mm: 10 * cm, text: cm.to_string() };
    picture.ruler.marks = (0..=40).map(mark).collect();
    check_layout(&picture).expect("no text lies over another");
    let drawing = face(&picture);
    assert!(of_role(&drawing, Role::Ruler).len() > 40);
    assert!(texts(&drawing).len() < 40);
}

#[test]
fn depths_lie_to_scale_and_a_tip_range_shows_both_its_ends() {
    let mut picture = picture(vec![layer(0, 200, Condition::Open), layer(200, 400, Condition::Tight)]);
    picture.faces[0].tip = Some(Tip { lo_mm: 300, hi_mm: 325, label: "tip".into() });
    let drawing = face(&picture);
    let layers = tones(&drawing);
    let per_mm = (layers[1].bottom - layers[0].top) / 400.0;
    let depth = |shape: &Shape| match shape {
        Shape::Line { from, to, .. } if (from.y - to.y).abs() < TOUCH => {
            Some(((from.y - layers[0].top) / per_mm).round() as u32)
        }
        _ => None,
    };
    assert_eq!(of_role(&drawing, Role::Tip).into_iter().filter_map(depth).collect::<Vec<_>>(), [300, 325]);
}

#[test]
fn two_faces_stand_side_by_side_on_one_scale_and_below_each_other_in_large_type() {
    let one = picture(vec![layer(0, 200, Condition::Open), layer(200, 400, Condition::Firm)]).faces.remove(0);
    let other =
        picture(vec![layer(0, 200, Condition::Open), layer(200, 300, Condition::Shut)]).faces.remove(0);
    let faces = vec![one, other];
    let ruler = Ruler::down_to(400, LengthUnit::Centimetres, "cm".into());
    let drawn =
        |text_scale| tones(&face(&FacePicture { faces: faces.clone(), ruler: ruler.clone(), text_scale }));
    let same = |one: f64, other: f64| (one - other).abs() < TOUCH;

    let beside = drawn(1.0);
    assert!(same(beside[0].top, beside[2].top));
    assert!(same(beside[0].bottom, beside[2].bottom), "200 mm lie level in both");
    assert!(beside[0].right < beside[2].left);

    let below = drawn(2.0);
    assert!(below[2].top > below[1].bottom);
    assert!(same(below[0].left, below[2].left));
}

#[test]
fn a_read_pit_becomes_a_face_and_a_dry_or_wet_one_is_not_hatched() {
    let read = LayerReading {
        top_mm: 200,
        bottom_mm: 300,
        signs: Signs { roots: Some(RootsSeen::Sideways), patches: Some(Patches::Few), ..Signs::default() },
        texture: None,
        evidence: pitface_core::reading::Evidence::NONE,
        shares: [0.0; KINDS.len()],
        condition: Condition::Tight,
        cause: Cause::Unclear,
        share: 0.7,
        reasons: vec![],
    };
    let words =
        |layer: &LayerReading| (layer.condition.code().to_owned(), vec![layer.cause.code().to_owned()]);
    let face = |moisture| {
        let pit = PitReading { face: moisture, dug_to_mm: 450, layers: vec![read.clone()] };
        Face::of(&pit, "Headland".into(), None, words)
    };
    for moisture in [None, Some(FaceMoisture::Moist)] {
        let layers = face(moisture).layers;
        assert_eq!((layers[0].top_mm, layers[0].bottom_mm), (200, 300));
        assert_eq!(layers[0].condition, Some(Condition::Tight));
        assert_eq!((layers[0].roots, layers[0].channels), (Some(RootsSeen::Sideways), None));
        assert_eq!(
            (layers[0].word.as_str(), layers[0].notes.as_slice()),
            ("tight", ["unclear".to_owned()].as_slice())
        );
    }
    for moisture in [FaceMoisture::Dry, FaceMoisture::Wet] {
        assert_eq!(face(Some(moisture)).layers[0].condition, None);
    }
}

#[test]
fn nothing_to_draw_is_an_empty_sheet_and_odd_input_does_no_harm() {
    let ruler = Ruler { unit: String::new(), marks: vec![] };
    let nothing = FacePicture { faces: vec![], ruler, text_scale: f64::NAN };
    assert_eq!(face(&nothing).shapes.len(), 1);

    let mut odd = picture(vec![
        layer(300, 300, Condition::Open),
        layer(400, 100, Condition::Firm),
        layer(50, 400, Condition::Tight),
        layer(0, u32::MAX, Condition::Shut),
    ]);
    odd.ruler = Ruler::down_to(u32::MAX, LengthUnit::Inches, "a very long word for a unit of length".into());
    odd.faces[0].tip = Some(Tip { lo_mm: u32::MAX, hi_mm: 0, label: String::new() });
    let drawing = face(&odd);
    assert!(drawing.height.is_finite() && drawing.shapes.len() < 5_000, "{}", drawing.shapes.len());
}

fn words() -> impl Strategy<Value = String> {
    "[A-Za-zäöüß0-9–]{1,14}( [a-zW0-9]{1,9}){0,2}"
}

prop_compose! {
    fn any_layer()(
        thick in 10_u32..300,
        condition in prop::option::weighted(0.9, prop::sample::select(Condition::ALL)),
        roots in prop::option::of(prop::sample::select(RootsSeen::ALL)),
        channels in prop::option::of(prop::sample::select(ChannelsSeen::ALL)),
        patches in prop::option::of(prop::sample::select(Patches::ALL)),
        word in words(),
        notes in prop::collection::vec(words(), 0..3),
    ) -> FaceLayer {
        FaceLayer { top_mm: 0, bottom_mm: thick, condition, roots, channels, patches, word, notes }
    }
}

prop_compose! {
    fn any_face()(
        mut layers in prop::collection::vec(any_layer(), 0..13),
        title in words(),
        tip in prop::option::of((50_u32..600, 0_u32..50, words())),
    ) -> Face {
        let mut depth_mm = 0;
        for layer in &mut layers {
            layer.top_mm = depth_mm;
            depth_mm += layer.bottom_mm;
            layer.bottom_mm = depth_mm;
        }
        let tip = tip.map(|(lo_mm, range, label)| Tip { lo_mm, hi_mm: lo_mm + range, label });
        Face { title, dug_to_mm: depth_mm, layers, tip }
    }
}

fn check_layout(picture: &FacePicture) -> Result<(), TestCaseError> {
    let drawing = face(picture);
    let sheet = Extent { left: 0.0, top: 0.0, right: PHONE_WIDTH, bottom: drawing.height };
    let texts = texts(&drawing);
    let lines: Vec<Extent> = drawing
        .shapes
        .iter()
        .filter(|shape| matches!(shape, Shape::Line { .. } | Shape::Polyline { .. }) && !is_hatch(shape))
        .map(extent)
        .collect();
    for (index, (text, room)) in texts.iter().enumerate() {
        prop_assert!(sheet.holds(room), "{text:?} leaves the sheet: {room:?}");
        for (other, taken) in &texts[..index] {
            prop_assert!(!room.overlaps(taken), "{text:?} lies over {other:?}");
        }
        // The outline of each face is among the lines, so no text lies over a face either.
        for line in &lines {
            prop_assert!(!room.overlaps(line), "{text:?} at {room:?} lies over a line at {line:?}");
        }
    }
    let tones = tones(&drawing);
    let read = picture.faces.iter().flat_map(|face| &face.layers).filter_map(|layer| layer.condition);
    prop_assert_eq!(tones.len(), read.count());
    let hatches: Vec<Extent> = drawing.shapes.iter().filter(|shape| is_hatch(shape)).map(extent).collect();
    for tone in &tones {
        prop_assert!(hatches.iter().any(|hatch| tone.holds(hatch)), "a layer without hatching: {tone:?}");
    }
    for hatch in hatches {
        prop_assert!(tones.iter().any(|tone| tone.holds(&hatch)), "hatching leaves its layer: {hatch:?}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn labels_never_overlap_and_hatching_stays_in_its_layer(
        faces in prop::collection::vec(any_face(), 1..3),
        text_scale in 1.0..2.0_f64,
        inches in any::<bool>(),
    ) {
        let unit = if inches { LengthUnit::Inches } else { LengthUnit::Centimetres };
        check_layout(&FacePicture { faces, ruler: Ruler::down_to(4_000, unit, "cm".into()), text_scale })?;
    }

    #[test]
    fn ten_thin_layers_can_be_read_at_twice_the_size(mut layers in prop::collection::vec(any_layer(), 10)) {
        for (index, layer) in layers.iter_mut().enumerate() {
            (layer.top_mm, layer.bottom_mm) = (30 * index as u32, 30 * index as u32 + 30);
        }
        let mut picture = picture(layers);
        picture.text_scale = 2.0;
        check_layout(&picture)?;
    }
}

#[test]
fn a_low_face_leaves_room_below_it_and_says_the_same() {
    let layers = vec![
        layer(0, 210, Condition::Open),
        layer(210, 290, Condition::Shut),
        layer(290, 500, Condition::Firm),
    ];
    let picture = picture(layers);
    let (tall, low) = (face(&picture), low_face(&picture));
    assert!(low.height < tall.height * 0.75, "{} {}", low.height, tall.height);
    assert_eq!(texts(&low).len(), texts(&tall).len());
    let (tall, low) = (tones(&tall), tones(&low));
    assert_eq!(low.len(), tall.len());
    assert!(low.windows(2).all(|pair| pair[0].bottom <= pair[1].top + TOUCH), "one below the other");
}
