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
