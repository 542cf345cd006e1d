//! Sheets, cards and the overview of the invented estate: well-formed, whole, and saying what the answer says.

use crate::common;

use chrono::{Months, NaiveDate};
use common::id;
use pitface_core::advice::after_dig::{Lasting, Verdict};
use pitface_core::answer::{FieldAnswer, HeldOn, Loosened};
use pitface_core::record::{Call, FieldNotes, Pass, Pit, Zone, notes};
use pitface_core::report::{Listed, card, overview, overview_with_sheets, sheet};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, PageText, Words};
use std::path::Path;

const SVG: &str = "http://www.w3.org/2000/svg";

const ESTATE: [&str; 9] = [
    "far_drove",
    "fox_heath",
    "heron_close",
    "kiln_ground",
    "lapwing_ground",
    "long_sedge",
    "mere_piece",
    "sluice_ground",
    "withy_bottom",
];

fn noted(stem: &str) -> FieldNotes {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../bindings/cli/demo/{stem}.notes.json"));
    let text = std::fs::read_to_string(file).expect("a file of the demo");
    notes::read(&text, &mut id).expect("sound").notes
}

fn answer(stem: &str) -> FieldAnswer {
    FieldAnswer::of(noted(stem), None)
}

fn english() -> Words {
    Words::new(Language::English, LengthUnit::Centimetres)
}

fn parsed(page: &str) -> roxmltree::Document<'_> {
    let options = roxmltree::ParsingOptions { allow_dtd: true, ..Default::default() };
    roxmltree::Document::parse_with_options(page, options).expect("well-formed")
}

/// Elements of a name, in order.
fn all<'a>(
    document: &'a roxmltree::Document<'a>,
    name: &'a str,
) -> impl Iterator<Item = roxmltree::Node<'a, 'a>> {
    document.descendants().filter(move |node| node.is_element() && node.tag_name().name() == name)
}

fn texts(document: &roxmltree::Document, name: &str) -> Vec<String> {
    all(document, name).map(|node| node.descendants().filter_map(|node| node.text()).collect()).collect()
}

/// What holds of every page.
fn sound(page: &str, language: &str) {
    assert!(page.starts_with("<!DOCTYPE html>\n"));
    let document = parsed(page);
    assert_eq!(document.root_element().attribute("lang"), Some(language));
    for foreign in ["<script", "<link", "<img", "url(", "@import", "src=", "http-equiv"] {
        assert!(!page.contains(foreign), "{foreign}");
    }
    for wanted in ["prefers-color-scheme:dark", "@media print", "width=device-width"] {
        assert!(page.contains(wanted), "{wanted}");
    }
    for svg in all(&document, "svg") {
        assert_eq!(svg.attribute("role"), Some("img"));
        for name in ["title", "desc"] {
            let told =
                svg.children().find(|node| node.tag_name().name() == name).and_then(|node| node.text());
            assert!(told.is_some_and(|told| !told.is_empty()), "a drawing without its {name}");
        }
    }
    assert!(texts(&document, "th").iter().all(|head| !head.is_empty()), "a head of a table says nothing");
    let body = all(&document, "main").next().expect("a main part");
    let mut level = 0;
    for node in body.descendants().filter(roxmltree::Node::is_element) {
        if let Some(next) =
            node.tag_name().name().strip_prefix('h').and_then(|level| level.parse::<u32>().ok())
        {
            assert!(next <= level + 1, "a heading is left out before {:?}", node.text());
            level = next;
        }
        let own: String =
            node.children().filter(roxmltree::Node::is_text).filter_map(|node| node.text()).collect();
        assert!(!own.contains(['{', '}']) && !own.contains("  "), "{own:?}");
    }
}

#[test]
fn every_page_of_the_estate_is_sound_in_every_language_and_unit() {
    for &language in Language::ALL {
        for unit in [LengthUnit::Centimetres, LengthUnit::Inches] {
            let words = Words::new(language, unit);
            for stem in ESTATE {
                let answer = answer(stem);
                sound(&sheet(&words, &answer, &|_| None).html(), language.code());
                let card = card(&words, &answer).map(|card| card.html());
                assert_eq!(card.is_some(), answer.to_loosen().next().is_some(), "{stem}");
                if let Some(card) = card {
                    sound(&card, language.code());
                }
            }
        }
    }
}

#[test]
fn a_sheet_has_a_line_a_zone_with_call_depth_hectares_and_sureness() {
    let (words, answer) = (english(), answer("mere_piece"));
    let page = sheet(&words, &answer, &|_| None).html();
    let document = parsed(&page);
    let rows: Vec<String> = texts(&document, "tr").into_iter().skip(1).collect();
    assert_eq!(rows.len(), 3, "{rows:?}");
    for (call, row) in answer.advice.zones.iter().zip(&rows) {
        assert!(row.contains(&words.label(call.zone)) && row.contains(&words.label(call.call)), "{row}");
        assert!(row.contains(&words.sureness(call.ground.sure, call.ground.share)), "{row}");
        assert!(call.tip.is_none_or(|tip| row.contains(&words.tip_range(&tip))), "{row}");
    }
    let hectares = answer.map.area_m2(Zone::Headland).expect("an outline and a headland") / 10_000.0;
    assert!(rows[1].contains(&words.ground_ha(hectares)), "{}", rows[1]);
    // Nobody drew the gateway.
    assert!(page.contains("Not on the plan: Gateway: Wait."));
    assert!(page.contains(pitface_core::RULES));
}

#[test]
fn a_sheet_says_the_call_before_the_drawings_and_the_reasons_after_them() {
    let page = sheet(&english(), &answer("mere_piece"), &|_| None).html();
    let place = |text: &str| page.find(text).unwrap_or_else(|| panic!("{text}"));
    let order = [
        "<h1>Mere Piece",
        "Work only the headland",
        "<svg",
        "<table>",
        "<h2>First",
        "<h2>Why",
        "<h2>The pits in detail",
    ];
    assert!(order.windows(2).all(|pair| place(pair[0]) < place(pair[1])));
}

#[test]
fn text_of_others_is_text_on_every_page() {
    let mut notes = noted("mere_piece");
    let nasty = "</h1><script>alert(1)</script> & \"x\"";
    notes.field.name = nasty.into();
    notes.field.remark = Some(nasty.into());
    notes.pits[0].by = Some(nasty.into());
    notes.machines[0].name = nasty.into();
    let (words, answer) = (english(), FieldAnswer::of(notes, None));
    let pages = [
        sheet(&words, &answer, &|_| None).html(),
        card(&words, &answer).expect("ground to loosen").html(),
        overview_with_sheets(&words, nasty, &[&answer], &|_, _| None).html(),
    ];
    for page in &pages {
        sound(page, "en");
        assert!(texts(&parsed(page), "h1").iter().any(|title| title.contains("<script>")));
    }
}

#[test]
fn a_card_says_how_deep_what_lies_there_and_has_room_for_readings() {
    let (words, answer) = (english(), answer("lapwing_ground"));
    let page = card(&words, &answer).expect("the gateway is to be loosened").html();
    // The plain feet left the layer in places; the winged ones did it.
    for said in ["33–35\u{a0}cm", "winged feet, 50 cm apart", "Service, 90\u{a0}cm deep", "dig behind it"] {
        assert!(page.contains(said), "{said}");
    }
    assert!(!page.contains(&words.of(PageText::NothingNoted)));
    assert!(!page.contains("tightest layer"), "pits are of no use to a driver");
    let boxes = texts(&parsed(&page), "tr").len();
    assert_eq!(boxes, 2 + 3, "a head and a zone, a head and two lines to fill in");
}

#[test]
fn a_card_never_says_that_nothing_lies_there() {
    let mut notes = noted("lapwing_ground");
    notes.field.lines.clear();
    (notes.field.drains_mm, notes.field.mole_drains_mm, notes.field.services_mm) = (None, None, None);
    let words = english();
    let page = card(&words, &FieldAnswer::of(notes, None)).expect("ground to loosen").html();
    assert!(page.contains(&words.of(PageText::NothingNoted)));
}

#[test]
fn an_overview_puts_work_first_and_leads_to_every_sheet() {
    let words = english();
    let answers = ESTATE.map(answer);
    let sheets = ESTATE.map(|stem| format!("{stem}.html"));
    let fields: Vec<Listed> =
        answers.iter().zip(&sheets).map(|(answer, sheet)| Listed { answer, sheet }).collect();
    let page = overview(&words, "Ellmoor estate", &fields).html();
    sound(&page, "en");
    let document = parsed(&page);
    let ways: Vec<&str> = all(&document, "a").filter_map(|way| way.attribute("href")).collect();
    assert_eq!(ways.len(), ESTATE.len());
    let place = |stem: &str| ways.iter().position(|way| *way == format!("{stem}.html")).expect(stem);
    assert!(place("mere_piece") < place("withy_bottom") && place("withy_bottom") < place("long_sedge"));
    assert!(page.contains("9 fields, 94.2\u{a0}ha"), "{page}");
    // In one file every way leads to a place in it.
    let whole = overview_with_sheets(&words, "Ellmoor estate", &answers.each_ref(), &|_, _| None).html();
    sound(&whole, "en");
    let document = parsed(&whole);
    for way in all(&document, "a").filter_map(|way| way.attribute("href")) {
        assert!(document.descendants().any(|node| node.attribute("id") == way.strip_prefix('#')), "{way}");
    }
}

#[test]
fn a_zone_is_told_over_the_years_with_what_was_found_done_and_held() {
    let answer = answer("lapwing_ground");
    let [told] = &answer.seasons()[..] else {
        panic!("the headland alone was worked: {:?}", answer.seasons())
    };
    assert_eq!(told.zone, Zone::Headland);
    let [then, now] = &told.years[..] else { panic!("{:?}", told.years) };
    // Dug in May, loosened in August; dug behind again the May after. What the pits called for is not what stands today.
    assert_eq!((then.year, then.call, then.pits), (2025, Some(Call::Loosen), 3));
    let done = Loosened { tip_mm: Some(330), strip: false, verdict: Some(Verdict::Done) };
    assert_eq!((then.loosened, then.held), (Some(done), None));
    assert_eq!((now.year, now.call, now.pit, now.loosened), (2026, Some(Call::LeaveIt), None, None));
    // The mean of its eleven readings, 3375 mm in all.
    assert_eq!(now.held, Some(HeldOn { lasting: Lasting::Held, firm_mm: Some(306) }));
    let page = sheet(&english(), &answer, &|_| None).html();
    assert_eq!(page.matches("<title>Headland over the years</title>").count(), 1);
    let said = "2025: called Loosen; the worst of 3 pits: Shut 21–29\u{a0}cm; Loosened to 33\u{a0}cm: done. \
                2026: called Leave it; It has held, loose to 30.6\u{a0}cm on average.";
    assert!(page.contains(said) && page.contains(&english().of(PageText::CalledToday)));
}

#[test]
fn one_year_and_a_loosening_long_ago_are_no_seasons() {
    // Dug and run over in 2026; the loosening of 2015 is past what any of them lasts.
    assert_eq!(answer("mere_piece").seasons(), []);
    let mut notes = noted("mere_piece");
    notes.field.last_loosened = "2024-09-10".parse().ok();
    let told = FieldAnswer::of(notes, None).seasons();
    assert!(!told.is_empty());
    for zone in told {
        let unknown = Loosened { tip_mm: None, strip: false, verdict: None };
        assert_eq!((zone.years[0].year, zone.years[0].call), (2024, None));
        assert_eq!(zone.years[0].loosened, Some(unknown));
    }
}

#[test]
fn many_years_stand_in_rows_and_on_the_paper() {
    let mut notes = noted("lapwing_ground");
    for years in 1..8 {
        let later = |day: NaiveDate| day.checked_add_months(Months::new(12 * years));
        for pit in &noted("lapwing_ground").pits {
            let dug = pit.dug.and_then(|dug| dug.checked_add_months(Months::new(12 * years)));
            notes.pits.push(Pit { id: id(), dug, ..pit.clone() });
        }
        let pass = noted("lapwing_ground").passes.remove(2);
        notes.passes.push(Pass { id: id(), done: pass.done.and_then(later), after_digs: Vec::new(), ..pass });
    }
    let answer = FieldAnswer::of(notes, None);
    for &language in Language::ALL {
        let words = Words::new(language, LengthUnit::Inches);
        let page = sheet(&words, &answer, &|_| None).html();
        sound(&page, language.code());
        let document = parsed(&page);
        let title = words.seasons_title(Zone::Headland);
        let drawn =
            all(&document, "svg").find(|svg| svg.descendants().any(|node| node.text() == Some(&title)));
        let drawn = drawn.expect("the headland");
        let number = |node: roxmltree::Node, name: &str| -> f64 {
            node.attribute(name).and_then(|text| text.parse().ok()).expect(name)
        };
        let (width, height) = (number(drawn, "width"), number(drawn, "height"));
        let texts: Vec<_> = drawn.descendants().filter(|node| node.has_tag_name((SVG, "text"))).collect();
        for year in 2025..=2032 {
            let year = year.to_string();
            assert_eq!(texts.iter().filter(|text| text.text() == Some(&year)).count(), 1, "{year}");
        }
        for text in texts {
            let (x, y) = (number(text, "x"), number(text, "y"));
            assert!((0.0..width).contains(&x) && (0.0..height).contains(&y), "{:?}", text.text());
        }
    }
}

#[test]
fn a_page_of_fifty_pits_can_be_sent() {
    let mut notes = noted("lapwing_ground");
    let pits = notes.pits.clone();
    for number in 8..50_u8 {
        let mut pit = pits[usize::from(number) % pits.len()].clone();
        pit.id = id();
        pit.dug = pit.dug.map(|dug| dug + chrono::Duration::minutes(number.into()));
        notes.pits.push(pit);
    }
    let page = sheet(&english(), &FieldAnswer::of(notes, None), &|_| None).html();
    sound(&page, "en");
    assert!(page.contains("Pit 50, "));
    assert!(page.len() <= 400_000, "{} bytes", page.len());
}
