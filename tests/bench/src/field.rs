//! An invented field with as many pits as asked for: every third harmed, some signs not looked at.

use std::fmt::Write as _;

/// Its notes file. `number` makes fields differ.
pub fn notes_json(number: usize, pits: usize) -> String {
    let mut text = format!(
        r#"{{"pitface": 1, "field": {{"name": "Field {number}", "texture": "sandy_loam", "organic_matter": "low",
            "last_crop": "winter wheat", "drains_mm": 900, "reach_mm": 500}}, "pits": ["#
    );
    for pit in 0..pits {
        let comma = if pit == 0 { "" } else { "," };
        let _ = write!(text, "{comma}{}", pit_json(pit));
    }
    text.push_str("]}");
    text
}

/// The same on a piece of ground with an outline, a headland and tramlines, every pit in a place of its own: what a plan shows.
pub fn mapped_json(pits: usize) -> String {
    const GROUND: &str = r#""outline": [[2.508, 54.4995], [2.514, 54.4995], [2.5143, 54.502], [2.509, 54.5023]],
        "headland_mm": 16000, "tramline_mm": 24000, "texture": "#;
    let text = notes_json(0, pits).replacen(r#""texture": "#, GROUND, 1);
    let mut parts = text.split(r#"{"place": "#);
    let mut mapped = parts.next().unwrap_or_default().to_owned();
    for (pit, part) in parts.enumerate() {
        let (east, north) = (pit % 10, pit / 10);
        let at = [2.5093 + 0.0005 * east as f64, 54.4998 + 0.0004 * north as f64];
        let _ = write!(mapped, r#"{{"at": [{:.4}, {:.4}], "accuracy_m": 3, "place": {part}"#, at[0], at[1]);
    }
    mapped
}

fn pit_json(pit: usize) -> String {
    let place = match pit {
        0 => "reference",
        _ if pit.is_multiple_of(3) => "headland",
        _ => "open",
    };
    let harmed = place == "headland";
    // Boundaries wander, so that no pit is the twin of another.
    let pan_mm = 250 + 5 * (pit % 10);
    let steps: Vec<String> = (1..=9)
        .map(|step| {
            let to_mm = 50 * step;
            let in_pan = harmed && (200..=300).contains(&to_mm);
            let (comes_away, resistance) =
                if in_pan { ("flat_plates", "hard_push") } else { ("crumbs", "slips_in") };
            format!(r#"{{"to_mm": {to_mm}, "comes_away": "{comes_away}", "resistance": "{resistance}"}}"#)
        })
        .collect();
    let roots = if harmed { "sideways" } else { "through" };
    format!(
        r#"{{"place": "{place}", "dug_to_mm": 450, "face": "moist", "walk": [{}],
            "layers": [{{"top_mm": 0, "bottom_mm": 150, "roots": "through"}},
                       {{"top_mm": 150, "bottom_mm": {pan_mm}, "roots": "{roots}", "channels": "some"}},
                       {{"top_mm": {pan_mm}, "bottom_mm": 450, "pores": "some"}}],
            "rolls": [{{"depth_mm": 330, "roll": "short_lengths"}}, {{"depth_mm": 0, "roll": "crumbles"}}]}}"#,
        steps.join(", ")
    )
}
