//! A machine set for a depth, told and drawn: both languages, both systems of units, phone width.

use pitface_core::advice::machine::{
    DraughtSoil, LayerDepths, Price, Setting, SideSlope, Work, compare, set,
};
use pitface_core::picture::machine::{KeyMark, SectionPicture, section};
use pitface_core::picture::{Ruler, Shape, Spoken, Theme, svg, text_width};
use pitface_core::record::{Drive, LeadingTines, Machine, RecordId, RollOutcome, SpeedRange, Tractor, Wings};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};

fn machine(legs: u32) -> Machine {
    Machine {
        id: RecordId::new(0, [0; 10]),
        name: "Yard subsoiler".into(),
        legs,
        spacing_mm: 600,
        foot_width_mm: 80,
        wings: Some(Wings { width_mm: 300, lift_mm: Some(60) }),
        leading: None,
        working_width_mm: None,
        speed: None,
        reach_mm: None,
        tractor: Some(Tractor { power_kw: 120.0, drive: Drive::FrontAssist }),
        tractor_mass_kg: None,
        unknown: serde_json::Map::default(),
    }
}

fn work() -> Work {
    let layer = Some(LayerDepths { top_mm: 220, bottom_mm: 300 });
    let price = Some(Price::PerHectare { cost: 79.47 });
    Work { layer, price, grain_price_per_t: Some(160.0), ..Work::new(350, DraughtSoil::Medium, 6.0) }
}

/// Machines and work that between them draw and say everything there is.
fn settings() -> Vec<(Machine, Work, Setting)> {
    let leading = Some(LeadingTines { depth_mm: Some(160) });
    let speed = Some(SpeedRange { lo_kmh: 4.0, hi_kmh: 5.0 });
    let list = vec![
        (machine(3), work()),
        (machine(1), work()),
        (machine(2), Work { layer: None, ..work() }),
        (Machine { spacing_mm: 500, leading, ..machine(7) }, work()),
        (Machine { spacing_mm: 380, foot_width_mm: 60, ..machine(11) }, work()),
        (Machine { wings: None, foot_width_mm: 40, ..machine(5) }, work()),
        (Machine { wings: None, spacing_mm: 1_000, leading, ..machine(3) }, work()),
        (Machine { speed, reach_mm: Some(300), tractor: None, ..machine(3) }, work()),
        (machine(3), Work { roll: Some(RollOutcome::Thread), ..work() }),
        (machine(9), work()),
    ];
    list.into_iter()
        .map(|(machine, work)| {
            let setting = set(&machine, &work).unwrap_or_else(|faults| panic!("{faults:?}"));
            (machine, work, setting)
        })
        .collect()
}

fn picture(words: &Words, (machine, work, setting): &(Machine, Work, Setting)) -> SectionPicture {
    let key = words.section_key(machine, work, setting);
    SectionPicture::of(machine, work, setting, key, |depth_mm| {
        Ruler::down_to(depth_mm, words.unit(), words.unit_sign())
    })
}

fn all_words() -> Vec<Words> {
    let units = [LengthUnit::Centimetres, LengthUnit::Inches];
    let languages = Language::ALL.iter();
    languages.flat_map(|&language| units.map(|unit| Words::new(language, unit))).collect()
}

#[test]
fn a_setting_is_told_from_depth_to_money() {
    let words = Words::new(Language::English, LengthUnit::Centimetres);
    let (machine, work, setting) = &settings()[0];
    let said = words.setting(machine, work, setting).join("\n").replace('\u{a0}', " ");
    for expected in [
        "Tips at 35 cm.",
        "lies at 40 cm or deeper: 5 times its width without wings, and nobody says how much deeper with them. \
         The tips run above critical depth.",
        "Spacing 60 cm: it fits (published for this depth: 52.5–70 cm).",
        "with sides of 45–60°, 81–89 % of the ground is loosened, with ridges of 15–26 cm",
        "not broken over the full width at 30 cm: that takes a spacing of at most 35.7–40 cm",
        "Whether its wheels grip is not told: the mass of the tractor is not known, so weigh it.",
        "Draught 28 (14–42) kN after ASABE D497",
        "by the straight part-load line at full throttle",
        "Ground worked: 0.918 ha/h.",
        "It pays from 0.497 t/ha of grain more.",
    ] {
        assert!(said.contains(expected), "{expected} is not in\n{said}");
    }
}

#[test]
fn the_same_in_acres_gallons_and_horsepower() {
    let words = Words::new(Language::English, LengthUnit::Inches);
    let (machine, work, setting) = &settings()[0];
    let said = words.setting(machine, work, setting).join("\n").replace('\u{a0}', " ");
    for expected in ["hp", "lbf", "gal/ac", "ac/h", "Cost 32.16 /ac", "443 lb/ac"] {
        assert!(said.contains(expected), "{expected} is not in\n{said}");
    }
    for metric in [" cm", "kW", "kN", "/ha"] {
        assert!(!said.contains(metric), "{metric} is in\n{said}");
    }
}

#[test]
fn what_hangs_on_the_trial_strip_and_what_is_not_told_say_so() {
    let words = Words::new(Language::English, LengthUnit::Centimetres);
    let all = settings();
    let told = |index: usize| {
        let (machine, work, setting) = &all[index];
        words.setting(machine, work, setting).join("\n")
    };
    assert!(told(4).contains("Only if the trial strip shows the tips above critical depth: By the figure"));
    assert!(!told(5).contains("of the ground is loosened"));
    assert!(told(5).starts_with("Tips at 35\u{a0}cm.\nThis is not to be worked: below critical depth"));
    assert!(told(5).contains("How much is loosened is not told: below critical depth"));
    assert!(told(7).contains("it does not get to") && told(7).contains("not among the speeds"));
    assert!(told(8).contains("smears and does not break") && !told(8).contains("of the ground is loosened"));
}

#[test]
fn nothing_is_left_unsaid_in_any_language() {
    for words in all_words() {
        for setting in settings() {
            let (machine, work, set) = &setting;
            let mut said = words.setting(machine, work, set);
            said.push(words.describe_section(machine, work, set));
            said.extend(words.section_key(machine, work, set).into_iter().map(|line| line.text));
            said.extend(words.compared(&compare(set, &settings()[0].2)));
            for text in said {
                assert!(!text.contains('{') && !text.is_empty(), "{text}");
            }
        }
    }
}

#[test]
fn the_section_is_spoken() {
    let words = Words::new(Language::English, LengthUnit::Centimetres);
    let (machine, work, setting) = &settings()[0];
    let said = words.describe_section(machine, work, setting).replace('\u{a0}', " ");
    assert!(
        said.starts_with("Section across the machine: 3 legs, 60 cm apart, tips at 35 cm. The layer"),
        "{said}"
    );
    let (machine, work, setting) = &settings()[1];
    assert!(words.describe_section(machine, work, setting).contains("one leg"));
}

#[test]
fn loosened_ground_is_drawn_only_where_the_model_holds() {
    use pitface_core::picture::Role;
    let words = Words::new(Language::English, LengthUnit::Centimetres);
    for setting in settings() {
        let drawing = section(&picture(&words, &setting));
        let loosened =
            drawing.shapes.iter().any(|shape| matches!(shape, Shape::Polygon { role: Role::SoilOpen, .. }));
        assert_eq!(loosened, setting.2.ground.value().is_some());
    }
}

/// Upright strokes of the large drawing, as depths in millimetres from the surface of the section, each with how far across it is
/// from the nearest leg.
fn strokes(picture: &SectionPicture) -> Vec<(f64, f64, f64)> {
    use pitface_core::picture::Role;
    let drawing = section(picture);
    let frame = drawing.shapes.iter().rev().find_map(|shape| match shape {
        Shape::Polyline { role: Role::Outline, points }
            if points.len() == 5 && points[0] == points[4] && points[1].x - points[0].x > 150.0 =>
        {
            Some(points.clone())
        }
        _ => None,
    });
    let Some(frame) = frame else { panic!("the section has no frame") };
    let per_mm = (frame[1].x - frame[0].x) / (f64::from(picture.legs.min(2)) * f64::from(picture.spacing_mm));
    let lines = drawing.shapes.iter().filter_map(|shape| match shape {
        Shape::Line { role: Role::Boundary, from, to } if from.x.to_bits() == to.x.to_bits() => {
            Some((from, to))
        }
        _ => None,
    });
    lines
        .filter(|(from, to)| from.y >= frame[0].y && to.y <= frame[2].y)
        .map(|(from, to)| {
            let across = (from.x - frame[0].x) / per_mm % f64::from(picture.spacing_mm);
            let depth = |y: f64| (y - frame[0].y) / per_mm;
            ((across - f64::from(picture.spacing_mm) / 2.0).abs(), depth(from.y), depth(to.y))
        })
        .collect()
}

/// With 300 mm wings at 350 mm and legs 600 mm apart, sides of 60 degrees leave a ridge of 260 mm and those of 45 degrees one of
/// 150 (worked by hand: half of the gap times the tangent).
#[test]
fn what_hangs_on_the_slope_lies_between_steep_and_flat_sides() {
    let words = Words::new(Language::English, LengthUnit::Centimetres);
    let picture = picture(&words, &settings()[2]);
    let drawn = strokes(&picture);
    assert!(drawn.len() > 12, "{drawn:?}");
    for (across, top, bottom) in &drawn {
        let beyond = (across - 150.0).max(0.0);
        let [steep, flat] = [60.0_f64, 45.0].map(|degrees| 350.0 - beyond * degrees.to_radians().tan());
        assert!(
            *top >= steep - 1.0 && *bottom <= flat + 1.0 && top < bottom,
            "{across}: {top} to {bottom}, {steep} to {flat}"
        );
        assert!(top - steep < 6.0 && flat - bottom < 6.0, "{across}: {top} to {bottom}, {steep} to {flat}");
    }
    let key: Vec<String> = picture.key.iter().map(|line| line.text.replace('\u{a0}', " ")).collect();
    assert!(
        key.contains(&"Ridge between the tines, 15–26 cm by the slope of the sides".to_owned()),
        "{key:?}"
    );
    let known =
        SectionPicture { loosened: picture.loosened.map(|slope| SideSlope::known(slope.steep)), ..picture };
    assert!(strokes(&known).is_empty());
}

#[test]
fn everything_stays_on_the_paper_and_every_mark_has_its_line() {
    for words in all_words() {
        for setting in settings() {
            for text_scale in [1.0, 2.0] {
                let picture = SectionPicture { text_scale, ..picture(&words, &setting) };
                let drawing = section(&picture);
                for shape in &drawing.shapes {
                    let inside = |x: f64, y: f64| {
                        assert!((0.0..=drawing.width).contains(&x), "{shape:?}");
                        assert!((0.0..=drawing.height).contains(&y), "{shape:?}");
                    };
                    match shape {
                        Shape::Rectangle { left, top, width, height, .. } => {
                            inside(*left, *top);
                            inside(left + width, top + height);
                        }
                        Shape::Circle { centre, .. } => inside(centre.x, centre.y),
                        Shape::Polygon { points, .. } | Shape::Polyline { points, .. } => {
                            for at in points {
                                inside(at.x, at.y);
                            }
                        }
                        Shape::Line { from, to, .. } => {
                            inside(from.x, from.y);
                            inside(to.x, to.y);
                        }
                        Shape::Text { at, size, strong, text, anchor, .. } => {
                            let width = text_width(text, *size, *strong);
                            let left = if anchor.code() == "end" { at.x - width } else { at.x };
                            inside(left, at.y);
                            inside(left + width, at.y);
                        }
                    }
                }
                let has = |mark| picture.key.iter().any(|line| line.mark == mark);
                assert!(has(KeyMark::Tip) && has(KeyMark::Critical));
                assert_eq!(has(KeyMark::Layer), picture.layer.is_some());
                assert_eq!(has(KeyMark::Leading), picture.leading_mm.is_some());
                assert_eq!(has(KeyMark::Note), setting.2.ground.value().is_none());
                assert_eq!(has(KeyMark::HangsOnSlope), setting.2.ground.value().is_some());
            }
        }
    }
}

#[test]
fn every_section_is_well_formed_in_every_theme() {
    let words = Words::new(Language::English, LengthUnit::Centimetres);
    for setting in settings() {
        for theme in [Theme::Light, Theme::Dark, Theme::Print] {
            let description = words.describe_section(&setting.0, &setting.1, &setting.2);
            let spoken = Spoken { language: "en", title: &words.section_title(), description: &description };
            let drawn = svg(&section(&picture(&words, &setting)), theme, &spoken);
            let document = roxmltree::Document::parse(&drawn).unwrap();
            assert!(document.descendants().filter(roxmltree::Node::is_element).count() > 20);
        }
    }
}
