//! A screen as a shell gets it: one flat record with words ready, drawings as shapes and acts as text.

pub use pitface_core::screen::{ScreenKind, Size};

use pitface_core::merge::DeviceId;
use pitface_core::picture::Drawing;
use pitface_core::screen::{Act, Ask, Button, Does, Doing, Keys, Known, Pictured, Row, Screen};
use pitface_core::words::Words;

/// Which screen it is, for what a shell does differently.
#[uniffi::remote(Enum)]
pub enum ScreenKind {
    /// The language, on the first start.
    Welcome,
    /// All fields.
    Fields,
    /// One field.
    Field,
    /// A pit from its place to the hole dug.
    StartPit,
    /// Down the face with the knife.
    KnifeWalk,
    /// The one question most worth answering.
    NextLook,
    /// The layers of a face.
    Layers,
    /// The roll test.
    Roll,
    /// What is to be done.
    Call,
    /// The machines of a field, or one of them.
    Machine,
    /// A pass, and what comes of the holes behind it.
    Pass,
    /// One hole behind the machine, reading by reading.
    AfterDig,
    /// For the farmer; large, nothing to operate; a tap anywhere goes back.
    Show,
    /// Photos of a pit.
    Photos,
    /// A field handed over or taken in.
    HandOver,
    /// Everything handed over and taken in, and the other devices.
    Partners,
    /// A value of which several versions stand, or a record deleted while somebody went on with it.
    Versions,
    /// Own details: name, hand, units, language.
    Own,
    /// A place pointed out on the plan, in steps of buttons.
    OnPlan,
}

/// How large a button is.
#[uniffi::remote(Enum)]
pub enum Size {
    /// At least 48 dp: rarely used.
    Small,
    /// At least 64 dp.
    Usual,
    /// The one most used on its screen: larger than the rest.
    Large,
}

/// One screen with everything it shows. A shell lays it out and sends back what was tapped; it decides sizes and
/// places, nothing else.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
#[expect(clippy::struct_excessive_bools, reason = "each is a thing of its own for a shell to heed")]
pub struct ShownScreen {
    /// Which screen.
    pub kind: ScreenKind,
    /// Its title.
    pub title: String,
    /// What is known: the upper part, in order.
    pub known: Vec<ShownKnown>,
    /// What the thumb does: the lower part, in order, the most used last (nearest to the thumb).
    pub doing: Vec<ShownDoing>,
    /// In the bar at the very bottom: takes back the last tap.
    pub undo: Option<ShownButton>,
    /// In the bar: the one main action, wide.
    pub main: Option<ShownButton>,
    /// In the bar: back to where one came from.
    pub back: Option<ShownButton>,
    /// A short sentence on what the last tap did or could not do; shown and read out at once. Empty for none.
    pub told: String,
    /// The last tap saved something, and it is on the disk: time for a short buzz.
    pub saved: bool,
    /// Keep the screen awake: a face is being read.
    pub awake: bool,
    /// Positions are wanted while it is shown: send them by `fix`, one a second is enough.
    pub wants_position: bool,
    /// Mirror the bar for the left hand.
    pub left_handed: bool,
    /// Language of all texts, an ISO 639-1 tag: for whatever reads them out.
    pub language: String,
    /// What the volume keys do; nothing where they are to be left alone.
    #[uniffi(default = None)]
    pub keys: Option<ShownKeys>,
    /// What is known matters more than what the thumb does: where there is not room for both, it has the larger part.
    #[uniffi(default = false)]
    pub known_first: bool,
}

/// Acts of the volume keys; a button on a headset does as the upper one. Given to `tap` as they are; opaque.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownKeys {
    /// Volume up.
    pub up: String,
    /// Volume down.
    pub down: String,
}

/// A piece of what is known.
#[derive(Debug, Clone, PartialEq, uniffi::Enum)]
pub enum ShownKnown {
    /// What matters, set large.
    Sentence {
        /// The words.
        text: String,
    },
    /// Further text.
    Line {
        /// The words.
        text: String,
    },
    /// A drawing with what is said of it to whoever does not see it.
    Picture {
        /// The shapes.
        drawing: Drawing,
        /// Its title.
        title: String,
        /// All of it in words.
        description: String,
    },
    /// A list under a heading; the heading may be empty.
    Section {
        /// What stands above.
        heading: String,
        /// Its lines.
        lines: Vec<String>,
    },
    /// Rows that lead somewhere.
    Rows {
        /// The rows, in order.
        rows: Vec<ShownRow>,
    },
}

/// A row of a list, as wide as the screen and at least 64 dp high.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownRow {
    /// Its name, set strong.
    pub title: String,
    /// Lines under it.
    pub lines: Vec<String>,
    /// What a tap on it does.
    pub does: ShownDoes,
}

/// A piece of what the thumb does.
#[derive(Debug, Clone, PartialEq, uniffi::Enum)]
pub enum ShownDoing {
    /// A question or heading above what follows.
    Question {
        /// The words.
        text: String,
    },
    /// Buttons side by side.
    Choices {
        /// Buttons in a row, 1 to 6.
        columns: u8,
        /// The buttons, in order.
        buttons: Vec<ShownButton>,
    },
    /// One line of text to be typed; nothing else needs a keyboard.
    Typing {
        /// What is typed.
        label: String,
        /// What stands there.
        value: String,
        /// Given to `type` with the text when it is entered.
        act: String,
    },
}

/// A button.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownButton {
    /// What stands on it.
    pub label: String,
    /// A second, smaller line; may be empty.
    pub note: String,
    /// A drawing of what is seen, above or beside the label.
    pub drawing: Option<Drawing>,
    /// What it does.
    pub does: ShownDoes,
    /// How large.
    pub size: Size,
    /// It is the answer given.
    pub chosen: bool,
    /// It can be tapped now.
    pub enabled: bool,
    /// Its name for whoever hears it, where others of the screen are called alike; empty where label and note are enough.
    #[uniffi(default = "")]
    pub spoken: String,
}

/// What a tap does: something the core does at once, or something only the platform can.
#[derive(Debug, Clone, PartialEq, uniffi::Enum)]
pub enum ShownDoes {
    /// Give it to `tap` as it is; opaque.
    Act {
        /// JSON; of no meaning to a shell.
        act: String,
    },
    /// Take a photo; give it to `photo_taken` with these three.
    TakePhoto {
        /// Id of the field.
        field: String,
        /// Id of the pit.
        pit: String,
        /// Depth on the face its middle shows, millimetres.
        depth_mm: Option<u32>,
    },
    /// Write the field's notes file by `export_field` and hand it to another program or person.
    ShareField {
        /// Id of the field.
        field: String,
    },
    /// Write everything noted here by `export_bundle` with these two, show its screen, and hand the file to another program
    /// or person.
    ShareBundle {
        /// Id of the device it is for; nothing: for anybody.
        to: Option<String>,
        /// Photos go along.
        with_photos: bool,
    },
    /// Let a file be chosen that somebody handed over; give it to `import_file`.
    OpenFile,
    /// Ask for the permission to read the position; tell a refusal by `position_refused`.
    AllowPosition,
}

/// What a screen does not say itself.
pub(crate) struct Around<'a> {
    pub told: String,
    pub saved: bool,
    pub left_handed: bool,
    pub words: &'a Words,
}

impl ShownScreen {
    pub(crate) fn new(screen: Screen, around: Around) -> Self {
        Self {
            kind: screen.kind,
            title: screen.title,
            known: screen.known.into_iter().map(Into::into).collect(),
            doing: screen.doing.into_iter().map(Into::into).collect(),
            undo: screen.bar.undo.map(Into::into),
            main: screen.bar.main.map(Into::into),
            back: screen.bar.back.map(Into::into),
            told: if around.told.is_empty() { screen.told } else { around.told },
            saved: around.saved,
            awake: screen.awake,
            wants_position: screen.wants_position,
            left_handed: around.left_handed,
            language: around.words.language().code().to_owned(),
            known_first: screen.known_first,
            keys: screen.keys.map(|Keys { up, down }| ShownKeys { up: act_text(&up), down: act_text(&down) }),
        }
    }
}

impl From<Known> for ShownKnown {
    fn from(known: Known) -> Self {
        match known {
            Known::Sentence(text) => Self::Sentence { text },
            Known::Line(text) => Self::Line { text },
            Known::Drawing(Pictured { drawing, title, description }) => {
                Self::Picture { drawing, title, description }
            }
            Known::Section { heading, lines } => Self::Section { heading, lines },
            Known::Rows(rows) => Self::Rows { rows: rows.into_iter().map(Into::into).collect() },
        }
    }
}

impl From<Row> for ShownRow {
    fn from(Row { title, lines, does }: Row) -> Self {
        Self { title, lines, does: does.into() }
    }
}

impl From<Doing> for ShownDoing {
    fn from(doing: Doing) -> Self {
        match doing {
            Doing::Question(text) => Self::Question { text },
            Doing::Choices { columns, buttons } => {
                Self::Choices { columns, buttons: buttons.into_iter().map(Into::into).collect() }
            }
            Doing::Typing { label, value, act } => Self::Typing { label, value, act: act_text(&act) },
        }
    }
}

impl From<Button> for ShownButton {
    fn from(button: Button) -> Self {
        let spoken = if button.about.is_empty() { String::new() } else { button.spoken() };
        let Button { label, note, drawing, does, size, chosen, enabled, .. } = button;
        Self { label, note, drawing, does: does.into(), size, chosen, enabled, spoken }
    }
}

impl From<Does> for ShownDoes {
    fn from(does: Does) -> Self {
        match does {
            Does::Act(act) => Self::Act { act: act_text(&act) },
            Does::Ask(Ask::TakePhoto { field, pit, depth_mm }) => {
                Self::TakePhoto { field: field.to_string(), pit: pit.to_string(), depth_mm }
            }
            Does::Ask(Ask::ShareField { field }) => Self::ShareField { field: field.to_string() },
            Does::Ask(Ask::ShareBundle { to, with_photos }) => {
                Self::ShareBundle { to: to.map(DeviceId::to_hex), with_photos }
            }
            Does::Ask(Ask::OpenFile) => Self::OpenFile,
            Does::Ask(Ask::AllowPosition) => Self::AllowPosition,
        }
    }
}

/// An act as text. Writing plain enums of ids, codes and numbers cannot fail; an empty text would be told as no act.
fn act_text(act: &Act) -> String {
    serde_json::to_string(act).unwrap_or_default()
}
