//! A phone's shell with nothing of a phone: opens a session, taps what is shown.

use pitface_bindings::{
    PitfaceError, ScreenKind, Session, ShownBlock, ShownButton, ShownDoes, ShownRow, ShownScreen,
};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use tempfile::TempDir;

/// A field of the demo.
pub fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("cli/demo").join(format!("{name}.notes.json"))
}

pub fn open(folder: &Path) -> Result<Arc<Session>, PitfaceError> {
    let path = folder.display().to_string();
    Session::open(path.clone(), path, Some("en-GB".to_owned()), 60)
}

/// A folder with English chosen and a field taken in; the screen is that of the field.
pub fn with_field(name: &str) -> (TempDir, Arc<Session>) {
    let folder = tempfile::tempdir().unwrap();
    let session = open(folder.path()).unwrap();
    let screen = session.screen().unwrap();
    tap(&session, &screen, "English");
    take_in(&session, &demo(name));
    (folder, session)
}

/// Opens a notes file and takes it in, where it says anything new.
pub fn take_in(session: &Session, file: &Path) -> ShownScreen {
    let screen = session.import_file(file.display().to_string()).unwrap();
    let takes = |does: &ShownDoes| matches!(does, ShownDoes::Act { act } if act == r#""take_in""#);
    if screen.next.as_ref().is_some_and(|button| takes(&button.does)) {
        assert!(!screen.saved, "it is shown first");
        return session.tap(r#""take_in""#.to_owned()).unwrap();
    }
    screen
}

/// Everything that can be tapped, with its label; what cannot now is left out.
pub fn tappable(screen: &ShownScreen) -> Vec<(String, ShownDoes)> {
    let rows = rows(screen).into_iter().map(|row| (row.title, row.does));
    let buttons = buttons(screen).into_iter().filter(|button| button.enabled);
    rows.chain(buttons.map(|button| (button.label, button.does))).collect()
}

/// All rows of a screen.
pub fn rows(screen: &ShownScreen) -> Vec<ShownRow> {
    let rows = screen.blocks.iter().filter_map(|block| match block {
        ShownBlock::Ways { rows, .. } => Some(rows.clone()),
        _ => None,
    });
    rows.flatten().collect()
}

/// All buttons of a screen, from the top.
pub fn buttons(screen: &ShownScreen) -> Vec<ShownButton> {
    let answers = screen.blocks.iter().filter_map(|block| match block {
        ShownBlock::Question { answers, .. } => Some(answers.clone()),
        _ => None,
    });
    let above = screen.back.iter().chain(&screen.menu).cloned();
    above.chain(answers.flatten()).chain(screen.next.clone()).chain(screen.tools.clone()).collect()
}

/// Everything that is said on a screen, but for its buttons, each text by itself.
pub fn texts(screen: &ShownScreen) -> Vec<String> {
    let answer = screen.answer.iter().flat_map(|answer| [answer.text.clone(), answer.line.clone()]);
    let blocks = screen.blocks.iter().flat_map(|block| match block {
        ShownBlock::Text { text } | ShownBlock::Question { text, .. } => vec![text.clone()],
        ShownBlock::Lines { section } => [vec![section.heading.clone()], section.lines.clone()].concat(),
        ShownBlock::Ways { heading, rows } => {
            let told = rows.iter().flat_map(|row| [vec![row.title.clone()], row.lines.clone()].concat());
            [heading.clone()].into_iter().chain(told).collect()
        }
        ShownBlock::Photos { photos } => photos.iter().map(|photo| photo.label.clone()).collect(),
        ShownBlock::Picture { .. } | ShownBlock::Typing { .. } => Vec::new(),
    });
    let more = screen
        .more
        .iter()
        .flat_map(|section| [vec![section.heading.clone()], section.lines.clone()].concat());
    let said = answer.chain(blocks).chain([screen.caution.clone()]).chain(more);
    said.filter(|text| !text.is_empty()).collect()
}

/// The acts that can be tapped.
pub fn acts(screen: &ShownScreen) -> Vec<(String, String)> {
    let act = |(label, does)| match does {
        ShownDoes::Act { act } => Some((label, act)),
        _ => None,
    };
    tappable(screen).into_iter().filter_map(act).collect()
}

/// Taps what bears this label.
#[track_caller]
pub fn tap(session: &Session, screen: &ShownScreen, label: &str) -> ShownScreen {
    let found = acts(screen).into_iter().rfind(|(its, _)| its == label);
    let Some((_, act)) = found else { panic!("no {label:?} among {:?}", tappable(screen)) };
    session.tap(act).unwrap()
}

/// Enters a line of text where one is asked for.
#[track_caller]
pub fn type_in(session: &Session, screen: &ShownScreen, text: &str) -> ShownScreen {
    let act = screen.blocks.iter().find_map(|block| match block {
        ShownBlock::Typing { act, .. } => Some(act.clone()),
        _ => None,
    });
    session.r#type(act.unwrap(), text.to_owned()).unwrap()
}

/// The field's id, by what handing it over asks for.
pub fn field_id(session: &Session) -> String {
    let mut screen = session.screen().unwrap();
    while screen.kind != ScreenKind::Field {
        screen = session.back().unwrap().unwrap();
    }
    let place = acts(&screen).into_iter().find_map(|(_, act)| {
        let at = act.find(r#""field":""#)? + r#""field":""#.len();
        Some(act[at..at + 36].to_owned())
    });
    place.unwrap()
}

/// Returns what is noted in a field, as its file says it.
pub fn noted(session: &Session, field: &str) -> String {
    let folder = tempfile::tempdir().unwrap();
    let path = session.export_field(field.to_owned(), folder.path().display().to_string()).unwrap();
    std::fs::read_to_string(path).unwrap()
}
