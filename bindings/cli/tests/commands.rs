//! Every command once, and what it answers.

use crate::support;

use serde_json::{Value, json};
use sha2::{Digest as _, Sha256};
use support::{ONE_PIT, Place, Ran, without_ids};

#[test]
fn read_tells_layers_kinds_reasons_next_look_and_the_call_of_each_zone() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let told = place.good(&["read", &notes]);
    for part in [
        "Loosening the headland is justified",
        "Kinds it may be",
        "What would change it",
        "Next look",
        "How sure",
        "Rule set",
    ] {
        assert!(told.contains(part), "{part} is missing in\n{told}");
    }
}

#[test]
fn read_answers_in_inches_where_asked() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let told = place.good(&["read", &notes, "--units", "in"]);
    assert!(told.contains("\u{a0}in") && !told.contains("\u{a0}cm"), "{told}");
}

#[test]
fn read_as_json_has_the_shape_other_programs_rely_on() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let answer = place.json(&["read", &notes]);
    assert_eq!([&answer["format"], &answer["rules"]], [&json!(1), &json!(pitface_core::RULES)]);
    let field = place.field(&["read", &notes]);
    assert_eq!([&field["field"], &field["pits"][2]["number"]], [&json!("Mere Piece"), &json!(3)]);
    // Ids made for one reading are of no use to anybody.
    assert_eq!([&field["field_id"], &field["pits"][2]["id"]], [&Value::Null, &Value::Null]);
    let layer = &field["pits"][2]["layers"][1];
    assert_eq!([&layer["top_mm"], &layer["bottom_mm"]], [&json!(200), &json!(270)]);
    assert_eq!([&layer["condition"], &layer["cause"]], [&json!("shut"), &json!("pressed")]);
    assert!(layer["share"].as_f64().is_some_and(|share| share > 0.5 && share <= 1.0));
    let reason = &layer["reasons"][0];
    assert!(reason["clue"].is_string() && reason["answer"].is_string() && reason["decibans"].is_number());
    let kinds: f64 =
        layer["kinds"].as_array().unwrap().iter().filter_map(|kind| kind["share"].as_f64()).sum();
    assert!((kinds - 1.0).abs() < 1e-9);
    let look = &field["pits"][5]["next_look"];
    assert!(look["clue"].is_string() && look["top_mm"].is_u64() && look["gain"].is_number());

    let headland = &field["zones"]["headland"];
    assert_eq!(headland["call"], "loosen");
    let tip = headland["tip_mm"].as_array().unwrap();
    assert!(tip.len() == 2 && tip[0].as_u64() < tip[1].as_u64());
    assert_eq!(headland["cleared_share"], 0.8);
    for list in ["reasons", "cautions", "would_change"] {
        assert!(headland[list].as_array().is_some_and(|list| !list.is_empty()), "{list}");
    }
    assert!(headland["sure"].is_string() && headland["share"].is_number());
    assert_eq!(field["zones"]["open"]["tip_mm"], Value::Null);
    assert!(field["whole"]["call"].is_string());
}

#[test]
fn several_files_give_several_fields() {
    let place = Place::new();
    let (one, other) = (place.notes("mere_piece"), place.notes("fox_heath"));
    let both = place.json(&["read", &one, &other]);
    assert_eq!(both["fields"][0]["field"], "Mere Piece");
    assert_eq!(both["fields"][1]["field"], "Fox Heath");
    assert_eq!(both["fields"][1], place.field(&["read", &other]));
}

#[test]
fn keys_nobody_knows_are_told_and_stop_nothing() {
    let place = Place::new();
    let notes =
        place.file("a.notes.json", &ONE_PIT.replace("\"dug_to_mm\"", "\"weather\": \"dry\", \"dug_to_mm\""));
    let ran = place.run(&["read", &notes]);
    assert_eq!(ran.code, Some(0));
    assert!(ran.err.starts_with("a.notes.json: pits[0].weather: "), "{}", ran.err);
}

#[test]
fn next_asks_the_question_of_each_pit_and_whether_to_dig_another() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    let told = place.good(&["next", &notes]);
    assert!(told.contains('?') && told.contains("Dig next"), "{told}");
    let next = place.field(&["next", &notes]);
    assert_eq!(next["pits"].as_array().map(Vec::len), Some(6));
    assert!(next["pits"][5]["next_look"]["clue"].is_string());
    // The place, the reason and the stop are those of `where`.
    assert!(next["next"]["zone"].is_string() && next["next"]["why"].is_string());
    assert_eq!(next["next"], place.field(&["where", &notes])["next"]);
}

#[test]
fn a_thread_at_either_depth_means_wait() {
    let place = Place::new();
    let roll = |surface, at_depth| {
        let said = place.json(&["roll", "--surface", surface, "--at-depth", at_depth]);
        said["together"].as_str().map(str::to_owned)
    };
    assert_eq!(roll("thread", "short_lengths").as_deref(), Some("too_wet"));
    assert_eq!(roll("crumbles", "thread").as_deref(), Some("too_wet"));
    assert_eq!(roll("crumbles", "short_lengths").as_deref(), Some("right"));
    let told = place.good(&["roll", "--surface", "crumbles", "--at-depth", "thread"]);
    assert_eq!(told, "Too wet at depth: wait.\n");
}

/// Two megapascals are the start of "high" in USDA's classes of penetration; sand just under the plough layer was held to need
/// loosening from 4.3 on (Petelkau and Rogasik 1994).
#[test]
fn a_cone_tells_roots_from_loosening_and_says_when_it_says_nothing() {
    let place = Place::new();
    let moist = ["sample", "--cone", "3MPa", "--moisture", "moist", "--subsoil", "sand"];
    let cone = &place.json(&moist)["cone"];
    assert_eq!(
        (&cone["says"], &cone["loosening"]["need"]),
        (&"hard_for_roots".into(), &"not_indicated".into())
    );
    let told = place.good(&["sample", "--cone", "350psi", "--moisture", "dry", "--units", "in"]);
    assert!(told.starts_with("350\u{a0}psi in dry soil says nothing"), "{told}");
}

/// 1 - 1.55 / 2.65 - 0.33 leaves 8.5 % air; fine-loamy soil holds roots back from 1.60 g/cm3 (National Soil Survey Handbook,
/// figure 618-A2).
#[test]
fn a_ring_tells_air_and_roots() {
    let place = Place::new();
    let ring = [
        "sample", "--volume", "100", "--wet", "188", "--dry", "155", "--sand", "40", "--silt", "42",
        "--clay", "18",
    ];
    let said = &place.json(&ring)["ring"];
    assert_eq!((&said["air"]["share"], &said["air"]["roots_lack_air"]), (&0.085.into(), &true.into()));
    assert_eq!(said["roots"]["room"], "free");
    let told = place.good(&ring).replace('\u{a0}', " ");
    assert!(told.contains("41.5 % of the volume: 33 % water (21.3 % by mass), 8.5 % air"), "{told}");
    assert!(told.contains("less than 10 %"), "{told}");
}

#[test]
fn sand_that_cracks_is_not_called_dry() {
    let place = Place::new();
    let arguments =
        ["roll", "--surface", "short_lengths", "--at-depth", "short_lengths", "--texture", "loamy_sand"];
    assert_eq!(place.json(&arguments)["together"], "not_applicable");
    assert!(place.good(&arguments).contains("does not roll"));
}

#[test]
fn texture_from_fractions_and_by_feel() {
    let place = Place::new();
    let usda = place.json(&["texture", "--sand", "40", "--silt", "42", "--clay", "18"]);
    assert_eq!([&usda["scheme"], &usda["class"]], [&json!("usda"), &json!("loam")]);
    let edge = place.json(&["texture", "--sand", "40", "--silt", "42", "--clay", "18", "--scheme", "uk"]);
    assert_eq!(edge["edge_of"], json!(["sandy_silt_loam", "clay_loam"]));
    let felt = place.json(&["texture", "--feel", "ribbon", "--ribbon-mm", "60", "--grit", "smooth"]);
    assert_eq!([&felt["class"], &felt["by"]], [&json!("silty_clay"), &json!("thien_1979")]);
    assert_eq!(place.json(&["texture", "--feel", "no_ball"])["class"], "sand");
    assert_eq!(place.json(&["texture", "--feel", "ball"])["class"], "loamy_sand");
}

#[test]
fn a_class_comes_with_its_scheme_and_source() {
    let place = Place::new();
    let firm = place.json(&["class", "rupture_force_moist_usda", "30"]);
    assert_eq!(firm["class"], "firm");
    let slightly_firm = place.json(&["class", "rupture_force_nz", "30"]);
    assert_eq!(slightly_firm["class"], "slightly_firm");
    assert!(firm["source"].as_str().is_some_and(|source| source.contains("USDA")));
    let all = place.json(&["class"]);
    assert!(all["schemes"].as_array().is_some_and(|schemes| schemes.len() > 20));
    assert!(place.good(&["class"]).contains("penetration_usda"));
}

#[test]
fn the_tip_runs_below_the_layer_and_keeps_clear_of_drains() {
    let place = Place::new();
    let tip = place.json(&["tip", "28cm"]);
    assert_eq!(tip["tip_mm"], json!([305, 330]));
    assert_eq!(tip["in_the_way"], json!([]));
    let near = place.json(&["tip", "280", "310", "330", "--drains", "40cm"]);
    assert_eq!(near["in_the_way"][0]["obstacle"], "drains");
    let short = place.json(&["tip", "280", "--reach", "300"]);
    assert_eq!(short["in_the_way"][0]["what"], "beyond_reach");
}

#[test]
fn draw_writes_a_picture_a_pit_and_a_page() {
    let place = Place::new();
    let notes = place.notes("mere_piece");
    place.good(&["draw", &notes, "--out", "drawings"]);
    let names = place.names("drawings");
    // A hole behind the machine, six pits, the plan, the page.
    assert_eq!(names.len(), 9, "{names:?}");
    assert_eq!(names[1], "mere_piece-pit-1.svg");
    let svg = std::fs::read_to_string(place.path("drawings/mere_piece-pit-3.svg")).unwrap();
    assert!(svg.starts_with("<svg") && svg.contains("<desc>") && svg.contains("run at 32 to"));
    let page = std::fs::read_to_string(place.path("drawings/mere_piece.html")).unwrap();
    // The plan and the face that decided, six pits, the hole and its key.
    assert_eq!(page.matches("<svg").count(), 10);
}

#[test]
fn page_writes_the_sheet_of_a_field_its_card_or_an_overview_and_only_over_a_page() {
    let place = Place::new();
    let [mere, sedge] = ["mere_piece", "long_sedge"].map(|stem| place.notes(stem));
    let read = |name: &str| std::fs::read_to_string(place.path(name)).unwrap();
    let said = place.json(&["page", &mere, "--out", "made/sheet.html"]);
    assert_eq!(said["written"][0], "made/sheet.html");
    assert!(read("made/sheet.html").contains("<h1>Mere Piece</h1>"));
    // The same bytes, whoever asks for them.
    place.good(&["draw", &mere, "--out", "drawn"]);
    assert_eq!(read("made/sheet.html"), read("drawn/mere_piece.html"));
    place.good(&["page", &mere, "--card", "--out", "made/sheet.html"]);
    assert!(read("made/sheet.html").contains("<h1>Driver's card: Mere Piece</h1>"));
    place.good(&["page", &mere, &sedge, "--out", "estate.html"]);
    let estate = read("estate.html");
    assert!(estate.contains("<h1>estate</h1>") && estate.contains("<h1>Long Sedge</h1>"));
    assert!(
        place.bad(&["page", &sedge, "--card", "--out", "card.html"]).contains("nothing is to be loosened")
    );
    assert!(
        place
            .bad(&["page", &mere, &sedge, "--card", "--out", "card.html"])
            .contains("a card is of one field")
    );
    assert!(place.bad(&["page", &mere, "--out", &mere]).contains("stands where this file goes"));
    assert!(!place.path("card.html").exists());
}

#[test]
fn page_writes_pdf_by_its_ending_the_same_at_every_run_and_only_over_a_pdf_of_its_own() {
    let place = Place::new();
    let mere = place.notes("mere_piece");
    let read = |name: &str| std::fs::read(place.path(name)).unwrap();
    assert_eq!(place.json(&["page", &mere, "--out", "sheet.pdf"])["written"][0], "sheet.pdf");
    let first = read("sheet.pdf");
    assert!(first.starts_with(b"%PDF-1.7"));
    place.good(&["page", &mere, "--out", "sheet.pdf"]);
    assert_eq!(first, read("sheet.pdf"));
    place.good(&["page", &mere, "--card", "--paper", "letter", "--out", "sheet.pdf"]);
    assert_ne!(first, read("sheet.pdf"));
    place.good(&["page", &mere, "--out", "sheet.html"]);
    std::fs::write(place.path("theirs.pdf"), b"%PDF-1.4 somebody's").unwrap();
    std::fs::rename(place.path("sheet.html"), place.path("page.pdf")).unwrap();
    for stands in ["theirs.pdf", "page.pdf"] {
        let said = place.bad(&["page", &mere, "--out", stands]);
        assert!(said.contains("stands where this file goes"), "{said}");
    }
    let said = place.bad(&["page", &mere, "--out", "sheet.html", "--paper", "letter"]);
    assert!(said.contains("HTML has no paper of its own"), "{said}");
}

#[test]
fn a_pdf_is_made_of_names_in_any_script() {
    let place = Place::new();
    let notes = std::fs::read_to_string(place.path(&place.notes("mere_piece"))).unwrap();
    let long = "\u{1f469}\u{200d}\u{1f33e} 麦田 שדה Ünïcodé ".repeat(2);
    std::fs::write(place.path("far.notes.json"), notes.replacen("Mere Piece", long.trim(), 1)).unwrap();
    place.good(&["page", "far.notes.json", "--out", "far.pdf"]);
    assert!(std::fs::read(place.path("far.pdf")).unwrap().starts_with(b"%PDF-"));
}

#[test]
fn a_photo_with_a_scale_is_drawn_over_where_its_file_lies() {
    let place = Place::new();
    // A JPEG of 300 by 400 that says where it was taken; no picture in it.
    let notes_of_camera = b"Exif\0\0 54.4960 N 2.5160 E";
    let camera = [&[0xff, 0xe1, 0, notes_of_camera.len() as u8 + 2], notes_of_camera.as_slice()].concat();
    let frame = [0xff, 0xc0, 0, 11, 8, 1, 0x90, 1, 0x2c, 1, 1, 0x11, 0, 0xff, 0xd9];
    let jpeg = [&[0xff, 0xd8], camera.as_slice(), &frame].concat();
    let name = format!("{:x}", Sha256::digest(&jpeg));
    std::fs::create_dir(place.path("photos")).unwrap();
    std::fs::write(place.path("photos").join(&name), &jpeg).unwrap();
    let notes = |marks: &str| {
        let photo = format!(
            r#"{{"sha256": "{name}", "size_bytes": {}, "media_type": "image/jpeg", "marks": {marks}}}"#,
            jpeg.len()
        );
        let text = ONE_PIT.replacen(r#""place":"#, &format!(r#""photos": [{photo}], "place":"#), 1);
        place.file("one.notes.json", &text)
    };
    let file = notes("[[2000, 1000, 0], [2000, 9000, 400]]");
    place.good(&["draw", &file, "--out", "drawn"]);
    let svg = std::fs::read_to_string(place.path("drawn/one-pit-1-photo-1.svg")).unwrap();
    assert!(svg.contains("viewBox=\"0 0 360 480\"") && svg.contains("<image "), "{svg}");
    // /9j/ is how every JPEG begins in base64; what the camera noted is not in it.
    assert!(svg.contains("href=\"data:image/jpeg;base64,/9j/wAAL"), "{svg}");
    let page = std::fs::read_to_string(place.path("drawn/one.html")).unwrap();
    assert!(page.contains("<image ") && page.contains("<figcaption>Photo of "), "{page}");
    place.good(&["draw", &file, "--out", "drawn"]);
    let told = Ran::of(&mut place.command(&["draw", &notes("[[2000, 1000, 0]]"), "--out", "other"])).err;
    assert!(
        told.ends_with(
            "pits[0].photos[0].marks: One place gives no scale. Touch another depth on the tape.\n"
        ),
        "{told}"
    );
    assert!(!place.path("other/one-pit-1-photo-1.svg").exists());
}

#[test]
fn the_demo_writes_notes_drawings_page_and_store_with_every_call_among_its_zones() {
    let place = Place::new();
    let demo = place.json(&["demo", "--out", "estate"]);
    let fields = demo["fields"].as_array().unwrap();
    assert!(fields.len() >= 5);
    let zones = fields.iter().flat_map(|field| field["zones"].as_object().unwrap().values());
    let mut calls: Vec<&str> = zones.filter_map(|zone| zone["call"].as_str()).collect();
    calls.sort_unstable();
    calls.dedup();
    let every = ["ask_specialist", "dig_again", "drain_first", "leave_it", "loosen", "roots_first", "wait"];
    assert_eq!(calls, every);
    let names = place.names("estate");
    let written: Vec<String> =
        demo["written"].as_array().unwrap().iter().map(|path| path.as_str().unwrap().to_owned()).collect();
    assert_eq!(written.len(), names.len());
    let wanted = [
        "index.html",
        "estate.pitface",
        "mere_piece.html",
        "mere_piece-card.html",
        "mere_piece.notes.json",
        "mere_piece-pit-1.svg",
    ];
    for name in wanted {
        assert!(names.iter().any(|written| written == name), "{name}");
    }
    // What it wrote is read as it was.
    let read = without_ids(place.field(&["read", "estate/mere_piece.notes.json"]));
    assert!(fields.iter().any(|field| without_ids(field.clone()) == read));
}
