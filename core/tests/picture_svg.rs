//! SVG is well-formed, self-contained and says what they were given.

use pitface_core::picture::{Role, Shape, Spoken, Theme, answer, roll, svg};
use pitface_core::reading::Clue;
use pitface_core::record::{RollOutcome, Sign};
use std::collections::BTreeSet;

const NASTY: &str = "a < b & \"c\" 'd' > e \u{1}\u{fffe} ü ]]>";
const CLEAN: &str = "a < b & \"c\" 'd' > e  ü ]]>";

fn spoken() -> Spoken<'static> {
    Spoken { language: "en", title: NASTY, description: "Tight from 20 to 30 cm" }
}

fn texts<'a>(document: &'a roxmltree::Document, name: &str) -> Vec<&'a str> {
    let nodes = document.descendants().filter(|node| node.is_element() && node.tag_name().name() == name);
    nodes.filter_map(|node| node.text()).collect()
}

#[test]
fn svg_is_well_formed_and_carries_the_spoken_description() {
    for theme in [Theme::Light, Theme::Dark, Theme::Print, Theme::Page] {
        for &outcome in RollOutcome::ALL {
            let written = svg(&roll(outcome), theme, &spoken());
            let document = roxmltree::Document::parse(&written).expect("well-formed");
            let root = document.root_element();
            assert_eq!(root.tag_name().namespace(), Some("http://www.w3.org/2000/svg"));
            assert_eq!(root.attribute("role"), Some("img"));
            assert_eq!(root.attribute("lang"), Some("en"));
            let first = root.first_element_child().expect("has children");
            assert_eq!(
                (first.tag_name().name(), first.text()),
                ("title", Some(CLEAN)),
                "the title comes first"
            );
            assert_eq!(texts(&document, "desc"), ["Tight from 20 to 30 cm"]);
        }
    }
}

#[test]
fn svg_draws_every_shape_in_order() {
    let drawing = roll(RollOutcome::WillNotHold);
    let written = svg(&drawing, Theme::Light, &spoken());
    let circles = drawing.shapes.iter().filter(|shape| matches!(shape, Shape::Circle { .. })).count();
    assert!(circles > 10);
    assert_eq!(written.matches("<circle").count(), circles);
    let place = |role| written.find(&Theme::Light.colour(role).to_string());
    assert!(
        place(Role::Paper).is_some() && place(Role::Paper) < place(Role::Outline),
        "the paper lies below"
    );
}

#[test]
fn a_theme_changes_colours_and_nothing_else() {
    let drawing = roll(RollOutcome::Thread);
    let uncoloured = |theme: Theme| {
        let written = svg(&drawing, theme, &spoken());
        Role::ALL.iter().fold(written, |text, &role| text.replace(&theme.colour(role).to_string(), "#"))
    };
    assert_eq!(uncoloured(Theme::Light), uncoloured(Theme::Dark));
    assert_ne!(svg(&drawing, Theme::Light, &spoken()), svg(&drawing, Theme::Dark, &spoken()));
}

#[test]
fn answers_look_different_in_print_and_stay_on_their_sheet() {
    let mut seen = BTreeSet::new();
    for &sign in Sign::ALL.iter().filter(|&&sign| sign != Sign::Smell) {
        for index in 0..sign.answers().len() {
            let drawing = answer(Clue::from(sign), index).expect("drawn");
            let on_sheet =
                |x: f64, y: f64| (0.0..=drawing.width).contains(&x) && (0.0..=drawing.height).contains(&y);
            for shape in &drawing.shapes {
                let inside = match shape {
                    Shape::Rectangle { left, top, width, height, .. } => {
                        on_sheet(*left, *top) && on_sheet(left + width, top + height)
                    }
                    Shape::Circle { centre: at, radius, .. } => {
                        on_sheet(at.x - radius, at.y - radius) && on_sheet(at.x + radius, at.y + radius)
                    }
                    Shape::Polygon { points, .. } | Shape::Polyline { points, .. } => {
                        points.iter().all(|at| on_sheet(at.x, at.y))
                    }
                    Shape::Line { from, to, .. } => on_sheet(from.x, from.y) && on_sheet(to.x, to.y),
                    Shape::Text { .. } => false,
                };
                assert!(inside, "{sign:?} {index}: {shape:?}");
            }
            let printed = svg(&drawing, Theme::Print, &spoken());
            assert!(seen.insert((sign, printed)), "{sign:?} {index} looks like another answer");
        }
    }
}
