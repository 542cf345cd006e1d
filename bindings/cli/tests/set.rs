//! `pitface set`: a machine and a tip depth.

use crate::support;

use serde_json::json;
use support::Place;

const MACHINE: [&str; 18] = [
    "set",
    "--tip",
    "35cm",
    "--layer",
    "22cm",
    "30cm",
    "--foot",
    "80",
    "--wings",
    "300",
    "--legs",
    "3",
    "--spacing",
    "60cm",
    "--speed",
    "6",
    "--soil",
    "medium",
];

fn with(more: &[&'static str]) -> Vec<&'static str> {
    [&MACHINE, more].concat()
}

#[test]
fn depth_spacing_draught_and_cautions_are_told() {
    let told = Place::new().good(&with(&["--tractor", "120", "--drive", "front_assist", "--cost", "79.47"]));
    for part in [
        "tips run above critical depth",
        "it fits",
        "not broken over the full width",
        "ASABE D497",
        "enough",
        "part-load",
        "79.47",
        "Cautions",
        "keys out",
    ] {
        assert!(told.contains(part), "{part} is missing in\n{told}");
    }
}

#[test]
fn as_json_every_figure_has_its_range_or_the_reason_it_is_missing() {
    let place = Place::new();
    let answer = place.json(&with(&["--cost", "79.47", "--grain-price", "160"]));
    assert_eq!(answer["rules"], "2026.3");
    let setting = &answer["setting"];
    assert_eq!(setting["critical"], json!({ "lo_mm": 400, "hi_mm": null }));
    assert_eq!(setting["place"], "above");
    assert_eq!(setting["spacing"]["value"]["fit"], "fits");
    assert_eq!(setting["layer"]["value"]["full_width"], false);
    assert_eq!(setting["layer"]["value"]["widest_if_flat_mm"], 400);
    let draught = |end: &str| setting["draught_kn"][end].as_f64().unwrap();
    assert!((draught("hi") / draught("mid") - 1.5).abs() < 1e-9);
    assert_eq!(setting["fuel"], json!({ "model": "does_not_apply", "value": "no_tractor" }));
    assert!((setting["break_even_t_per_ha"]["value"]["mid"].as_f64().unwrap() - 0.497).abs() < 0.001);
}

#[test]
fn below_critical_depth_nothing_is_said_to_be_loosened() {
    let place = Place::new();
    let answer = place.json(&with(&["--against", "foot=45", "wings=none"]));
    assert_eq!(
        answer["other"]["ground"],
        json!({ "model": "does_not_apply", "value": "below_critical_depth" })
    );
    assert_eq!(answer["compared"][0]["measure"], "share");
    assert_eq!(answer["compared"][0]["other"]["model"], "does_not_apply");
    let told = place.good(&with(&["--against", "foot=45", "wings=none"]));
    assert!(told.contains("against not told (below critical depth"), "{told}");
}

#[test]
fn what_is_not_named_stays_as_it_is_in_the_other_setting() {
    let place = Place::new();
    let more = [
        "--surface",
        "soft",
        "--tractor",
        "120",
        "--drive",
        "four_wheel",
        "--against",
        "speed=3mph",
        "wings=none",
    ];
    let answer = place.json(&with(&more));
    let power = |setting: &str, part: &str| answer[setting][part]["mid"].as_f64().unwrap();
    let needed = answer["other"]["traction"]["needed_pto_kw"]["mid"].as_f64().unwrap();
    assert!((needed * 0.70 - power("other", "drawbar_kw")).abs() < 1e-9, "still on soft ground");
    assert!(power("other", "draught_kn") < power("setting", "draught_kn"));
}

#[test]
fn us_customary_in_and_out() {
    let place = Place::new();
    let us = [
        "set",
        "--tip",
        "14in",
        "--foot",
        "3in",
        "--legs",
        "5",
        "--spacing",
        "24in",
        "--speed",
        "5mph",
        "--soil",
        "coarse",
        "--tractor",
        "160hp",
        "--drive",
        "front_assist",
        "--cost",
        "32.16/ac",
        "--units",
        "in",
    ];
    let told = place.good(&us).replace('\u{a0}', " ");
    // Five shanks at 24 in and 5 mph: 5.2 acres an hour (Iowa State University PM 696).
    for part in ["Ground worked: 5.2 (", "32.16 /ac", "lbf", "144 hp"] {
        assert!(told.contains(part), "{part} is missing in\n{told}");
    }
}

#[test]
fn a_section_is_drawn_whole() {
    let place = Place::new();
    let told = place.good(&with(&["--draw", "section.svg", "--theme", "print", "--language", "de"]));
    assert!(told.contains("section.svg") && told.contains("kritische"));
    let drawn = std::fs::read_to_string(place.path("section.svg")).unwrap();
    assert!(drawn.starts_with("<svg") && drawn.trim_end().ends_with("</svg>") && drawn.contains("Zinken"));
}

#[test]
fn who_measured_the_soil_gets_the_draught_of_a_tine() {
    let told = Place::new().good(&with(&["--cohesion", "10", "--friction", "30"]));
    assert!(told.contains("McKyes and Ali 1977"), "{told}");
}

#[test]
fn what_cannot_be_so_is_refused_with_what_to_do() {
    let place = Place::new();
    for (more, part) in [
        (["--tractor", "120"], "--drive"),
        (["--lift", "60"], "--wings"),
        (["--slope", "95"], "20 to 80"),
        (["--against", "hitch=3"], "hitch"),
        (["--against", "spacing"], "NAME=VALUE"),
    ] {
        let without_wings: Vec<&str> = if more[0] == "--lift" {
            MACHINE.iter().copied().filter(|part| *part != "--wings" && *part != "300").chain(more).collect()
        } else {
            with(&more)
        };
        let told = place.bad(&without_wings);
        assert!(told.contains(part), "{part} is missing in {told}");
    }
}
