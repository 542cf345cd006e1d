//! The core's own SVG of every drawing that a walk through screens meets, beside those that another shell wrote of the same
//! walk: `ios/test` compares the two by pixels. `drawings FOLDER`: in it `notes` and `key` as that shell left them, and `acts`, one a line.

use pitface_bindings::{Drawing, Session, ShownBlock, ShownButton, ShownScreen, Theme};
use pitface_core::picture::{Spoken, svg};
use std::path::PathBuf;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).ok_or("drawings FOLDER")?);
    let inside = |name: &str| folder.join(name).display().to_string();
    let session = Session::open(inside("notes"), inside("key"), Some("en".to_owned()), 60)?;
    let spoken = Spoken { language: "en", title: "", description: "" };
    let mut number = 0;
    for act in std::fs::read_to_string(folder.join("acts"))?.lines() {
        for drawing in drawings(&session.tap(act.to_owned())?) {
            for (theme, name) in [(Theme::Light, "light"), (Theme::Dark, "dark")] {
                std::fs::write(
                    folder.join(format!("core-{number}-{name}.svg")),
                    svg(drawing, theme, &spoken),
                )?;
            }
            number += 1;
        }
    }
    println!("{number} drawings");
    Ok(())
}

/// In the order in which the other shell writes them: pictures, the sign of the answer, buttons, rows.
fn drawings(screen: &ShownScreen) -> Vec<&Drawing> {
    let mut found: Vec<&Drawing> = screen.picture.iter().map(|picture| &picture.drawing).collect();
    found.extend(screen.blocks.iter().filter_map(|block| match block {
        ShownBlock::Picture { picture } => Some(&picture.drawing),
        _ => None,
    }));
    found.extend(screen.answer.iter().filter_map(|answer| answer.sign.as_ref()));
    let asked = screen.blocks.iter().filter_map(|block| match block {
        ShownBlock::Question { answers, .. } => Some(answers),
        _ => None,
    });
    let buttons = screen
        .menu
        .iter()
        .chain(asked.flatten())
        .chain(&screen.back)
        .chain(&screen.next)
        .chain(&screen.tools);
    found.extend(buttons.filter_map(|button: &ShownButton| button.drawing.as_ref()));
    let rows = screen.blocks.iter().filter_map(|block| match block {
        ShownBlock::Ways { rows, .. } => Some(rows),
        _ => None,
    });
    found.extend(rows.flatten().filter_map(|row| row.icon.as_ref()));
    found
}
