//! The help: commands in groups, and examples that can be typed as they stand after `pitface demo --out out`.

use clap::Command;
use std::fmt::Write as _;

/// What belongs together, in the order in which somebody new needs it.
const GROUPS: &[(&str, &[&str])] = &[
    (
        "A field, from its notes file or from a store",
        &["read", "next", "where", "behind", "ground", "draw", "page", "tables", "boundary"],
    ),
    ("At the hole and the machine, without notes", &["roll", "texture", "sample", "class", "tip", "set"]),
    (
        "A store",
        &[
            "fields",
            "write",
            "history",
            "join",
            "undo",
            "bring-back",
            "settle",
            "redact",
            "partners",
            "check",
        ],
    ),
    ("Between people", &["hand-over", "take-in", "look"]),
    ("To begin with", &["demo", "new", "schema", "completions", "manual"]),
];

/// Wider than this no line of the help is, however wide the terminal.
const WIDTH: usize = 100;

/// Commands that stand in no group.
const REST: &str = "More";

/// Examples of each command.
const EXAMPLES: &[(&str, &[&str])] = &[
    ("demo", &["pitface demo --out out"]),
    (
        "read",
        &[
            "pitface read out/mere_piece.notes.json",
            "pitface read out/mere_piece.notes.json out/fox_heath.notes.json --language de --units in",
            "pitface read out/mere_piece.notes.json --store out/kept.pitface",
            "pitface --json read - <out/mere_piece.notes.json",
            "pitface read --store out/estate.pitface --field \"Fox Heath\"",
        ],
    ),
    (
        "next",
        &[
            "pitface next out/mere_piece.notes.json",
            "pitface next --store out/estate.pitface --field \"Mere Piece\"",
        ],
    ),
    (
        "where",
        &[
            "pitface where out/lapwing_ground.notes.json",
            "pitface where out/lapwing_ground.notes.json --at 2.5160 54.4960",
        ],
    ),
    ("behind", &["pitface behind out/lapwing_ground.notes.json"]),
    (
        "ground",
        &[
            "pitface ground out/lapwing_ground.notes.json --machine \"winged feet, 50 cm apart\" \\\n    --cost-per-hour 95 --fuel-price 0.75",
        ],
    ),
    ("draw", &["pitface draw out/mere_piece.notes.json --out out/drawings --theme print"]),
    (
        "page",
        &[
            "pitface page out/mere_piece.notes.json --out out/sheet.html",
            "pitface page out/mere_piece.notes.json --out out/sheet.pdf --paper letter",
            "pitface page out/mere_piece.notes.json --card --out out/card.html",
            "pitface page --store out/estate.pitface --out out/estate.html",
        ],
    ),
    (
        "tables",
        &[
            "pitface tables out/lapwing_ground.notes.json out/mere_piece.notes.json --out out/tables",
            "pitface tables --store out/estate.pitface --out out/tables",
            "pitface tables out/lapwing_ground.notes.json --out out/terminal --also shapefile,task-data",
        ],
    ),
    (
        "boundary",
        &[
            "pitface boundary out/tables/fields.gpkg",
            "pitface boundary out/tables/fields.geojson --area 1 --into out/mere_piece.notes.json \\\n    --anyway --out out/bounded.notes.json",
        ],
    ),
    ("roll", &["pitface roll --surface crumbles --at-depth short_lengths --texture sandy_loam"]),
    (
        "texture",
        &[
            "pitface texture --sand 40 --silt 42 --clay 18 --scheme uk",
            "pitface texture --feel ribbon --ribbon-mm 30 --grit neither",
        ],
    ),
    (
        "sample",
        &[
            "pitface sample --ring 50 51 --wet 188 --dry 155 --sand 40 --silt 42 --clay 18",
            "pitface sample --cone 3MPa --moisture moist --subsoil sand",
        ],
    ),
    ("class", &["pitface class", "pitface class rupture_force_moist_usda 30"]),
    ("tip", &["pitface tip 280 310 330 --clear 0.8 --drains 60cm"]),
    (
        "set",
        &[
            "pitface set --tip 35cm --layer 22cm 30cm --foot 80 --wings 300 --legs 3 --spacing 60cm \\\n    --speed 6 --soil medium --draw out/section.svg",
            "pitface set --from out/lapwing_ground.notes.json --machine \"winged feet, 50 cm apart\" \\\n    --zone gateway",
        ],
    ),
    ("hand-over", &["pitface hand-over out/estate.pitface --out out/estate.pitb --holder Walker"]),
    ("look", &["pitface look out/estate.pitb"]),
    ("take-in", &["pitface take-in out/another.pitface out/estate.pitb"]),
    ("partners", &["pitface partners out/estate.pitface"]),
    ("settle", &["pitface settle out/estate.pitface"]),
    ("check", &["pitface check out/estate.pitface"]),
    ("history", &["pitface history out/estate.pitface --last 5"]),
    ("join", &["pitface join out/estate.pitface \"Fox Heath\" \"Far Drove\""]),
    ("redact", &["pitface redact out/estate.pitface"]),
    ("undo", &["pitface undo out/estate.pitface", "pitface undo out/estate.pitface --redo"]),
    ("bring-back", &["pitface bring-back out/estate.pitface"]),
    ("fields", &["pitface fields out/estate.pitface"]),
    (
        "write",
        &[
            "pitface write out/estate.pitface --out out/notes",
            "pitface write out/estate.pitface --field \"Fox Heath\"",
        ],
    ),
    ("new", &["pitface new out/starling_field.notes.json"]),
    ("schema", &["pitface schema", "pitface schema read"]),
    ("completions", &["pitface completions bash >out/pitface.bash"]),
    ("manual", &["pitface manual --out out/man"]),
];

/// The program's arguments with their help.
pub fn dressed(program: Command) -> Command {
    let mut program = program.arg_required_else_help(true).max_term_width(WIDTH);
    // `--cost -5` is a cost that cannot be, not an option called 5.
    program = program.mut_subcommands(|command| command.allow_negative_numbers(true));
    for (name, examples) in EXAMPLES {
        if program.find_subcommand(name).is_some() {
            program = program.mut_subcommand(name, |command| with_examples(command, examples));
        }
    }
    let template = format!(
        "{{about}}\n\n{{usage-heading}} {{usage}}\n\n{}Options:\n{{options}}\n\n{}",
        grouped(&program),
        "Help on a command, with examples: pitface help COMMAND. To begin with: pitface demo --out out",
    );
    program.help_template(template)
}

fn with_examples(command: Command, examples: &[&str]) -> Command {
    let mut text = command.get_after_help().map(|text| format!("{text}\n\n")).unwrap_or_default();
    text.push_str(if examples.len() == 1 { "Example:" } else { "Examples:" });
    for example in examples {
        let _ = write!(text, "\n  {example}");
    }
    command.after_help(text)
}

/// The commands, a line each, by groups.
fn grouped(program: &Command) -> String {
    let all: Vec<&Command> = program.get_subcommands().collect();
    let width = all.iter().map(|command| command.get_name().len()).max().unwrap_or(0);
    let in_groups: Vec<&str> = GROUPS.iter().flat_map(|(_, names)| names.iter().copied()).collect();
    let rest: Vec<&str> =
        all.iter().map(|command| command.get_name()).filter(|name| !in_groups.contains(name)).collect();
    let mut text = String::new();
    for (heading, names) in GROUPS.iter().copied().chain([(REST, rest.as_slice())]) {
        let commands: Vec<&&Command> =
            names.iter().filter_map(|name| all.iter().find(|command| command.get_name() == *name)).collect();
        if commands.is_empty() {
            continue;
        }
        let _ = writeln!(text, "{heading}:");
        for command in commands {
            let about = command.get_about().map(ToString::to_string).unwrap_or_default();
            let _ = writeln!(text, "  {:<width$}  {about}", command.get_name());
        }
        text.push('\n');
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory as _;

    #[test]
    fn every_command_stands_in_a_group_and_has_an_example() {
        for command in crate::Pitface::command().get_subcommands() {
            let name = command.get_name();
            assert!(GROUPS.iter().any(|(_, names)| names.contains(&name)), "{name} stands in no group");
            assert!(EXAMPLES.iter().any(|(its, _)| *its == name), "{name} has no example");
        }
    }
}
