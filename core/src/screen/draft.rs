//! A screen in its first form, what is known above what the thumb does, and how it becomes one by rank. Screens that are
//! still made so are to be made by rank themselves; with the last of them this file goes.

use super::Act;
use super::{Block, Button, Headline, Keys, Picture, Pictured, Place, Row, Screen, ScreenKind, Section};

/// A screen in its first form.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Draft {
    pub place: Place,
    pub kind: ScreenKind,
    pub title: String,
    pub known: Vec<Known>,
    pub doing: Vec<Doing>,
    pub known_first: bool,
    pub bar: Bar,
    pub told: String,
    pub awake: bool,
    pub wants_position: bool,
    pub keys: Option<Keys>,
}

/// A piece of what is known.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Known {
    Sentence(String),
    Line(String),
    Drawing(Pictured),
    Section { heading: String, lines: Vec<String> },
    Rows(Vec<Row>),
}

/// A piece of what the thumb does.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Doing {
    Question(String),
    Choices { columns: u8, buttons: Vec<Button> },
    Typing { label: String, value: String, act: Act },
}

/// Undo, the main action, back.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Bar {
    pub undo: Option<Button>,
    pub main: Option<Button>,
    pub back: Option<Button>,
}

impl From<Draft> for Screen {
    fn from(draft: Draft) -> Self {
        let (mut answer, mut picture, mut blocks) = (None, None, Vec::new());
        for known in draft.known {
            match known {
                Known::Sentence(text) if answer.is_none() => answer = Some(Headline::new(text)),
                Known::Sentence(text) | Known::Line(text) => blocks.push(Block::Text(text)),
                Known::Drawing(pictured) if picture.is_none() => picture = Some(Picture::from(pictured)),
                Known::Drawing(pictured) => blocks.push(Block::Drawing(pictured.into())),
                Known::Section { heading, lines } => blocks.push(Block::Section(Section { heading, lines })),
                Known::Rows(rows) => blocks.push(Block::Ways { heading: String::new(), rows }),
            }
        }
        let mut asked = String::new();
        for doing in draft.doing {
            match doing {
                Doing::Question(question) => {
                    if !asked.is_empty() {
                        blocks.push(Block::Text(std::mem::take(&mut asked)));
                    }
                    asked = question;
                }
                Doing::Choices { columns, buttons } => {
                    let text = std::mem::take(&mut asked);
                    blocks.push(Block::Question { text, columns, answers: buttons });
                }
                Doing::Typing { label, value, act } => {
                    blocks.push(Block::Typing { label, value, act, long: false });
                }
            }
        }
        if !asked.is_empty() {
            blocks.push(Block::Text(asked));
        }
        Self {
            place: draft.place,
            kind: draft.kind,
            title: draft.title,
            back: draft.bar.back,
            menu: Vec::new(),
            answer,
            picture,
            blocks,
            caution: String::new(),
            next: draft.bar.main,
            tools: draft.bar.undo.into_iter().collect(),
            more: Vec::new(),
            told: draft.told,
            awake: draft.awake,
            wants_position: draft.wants_position,
            keys: draft.keys,
        }
    }
}

/// How large a button was to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Size {
    Small,
    Large,
}

impl Button {
    /// The same in another size.
    #[must_use]
    pub(super) fn sized(self, size: Size) -> Self {
        Self { strong: size == Size::Large, ..self }
    }
}
