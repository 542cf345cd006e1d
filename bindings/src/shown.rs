//! A screen as a shell gets it: one flat record by rank, with words ready, drawings as shapes and acts as text.
//!
//! A shell gives each rank its own look, told apart at arm's length and in grey: an answer not given (outlined tile), an
//! answer given (tinted tile, thick edge, tick), the next step (filled), a way (row with chevron), a tool (icon with
//! word), and what is off (no edge, faded words). Always in sight are the title, the answer, every answer of the questions,
//! the caution, the next step and the tools; the picture shrinks first, and what scrolls is the rest.

pub use pitface_core::screen::own::Light;
pub use pitface_core::screen::{ScreenKind, Section, Stand};

use pitface_core::merge::DeviceId;
use pitface_core::picture::Drawing;
use pitface_core::screen::{
    Act, Ask, Block, Button, Does, Headline, Keys, Own, Picture, Row, Screen, Thumbnail, Touch,
};
use pitface_core::words::{Caption, Words};

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
    /// Whether a record is to be deleted; or what was deleted here, to bring it back.
    Deleting,
}

/// Whether screens are dark on light.
#[uniffi::remote(Enum)]
pub enum Light {
    /// As the phone is set.
    Phone,
    /// Dark on light, for the sun.
    Day,
    /// Light on dark.
    Dark,
}

/// One screen with everything it shows, from the top. A shell lays it out and sends back what was tapped; it decides
/// sizes and places, nothing else.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
#[expect(clippy::struct_excessive_bools, reason = "each is a thing of its own for a shell to heed")]
pub struct ShownScreen {
    /// Which screen.
    pub kind: ScreenKind,
    /// Its title: one line at the very top.
    pub title: String,
    /// Beside the title: back to where one came from.
    pub back: Option<ShownButton>,
    /// Behind one button beside the title: rare things. Empty: no such button.
    pub menu: Vec<ShownButton>,
    /// What the screen says, at display size.
    pub answer: Option<ShownHeadline>,
    /// What it shows, as large as is left over.
    pub picture: Option<ShownPicture>,
    /// What is asked, and where it leads, in order.
    pub blocks: Vec<ShownBlock>,
    /// What to heed in what is done now: one line above the next step. Empty for none.
    pub caution: String,
    /// The one thing worth doing now: filled, wide, at least 56 dp high. Where its act is that of a line to be typed on this
    /// screen, it enters the line: `type` with what stands there.
    pub next: Option<ShownButton>,
    /// The tools at the very bottom, icon with word, at least 64 dp wide; from the left in this order for the right hand,
    /// mirrored for the left one.
    pub tools: Vec<ShownButton>,
    /// What is folded behind one row at the end of the blocks, each part under its heading.
    pub more: Vec<Section>,
    /// What that row says. Empty where nothing is folded.
    pub more_label: String,
    /// A short sentence on what the last tap did or could not do; shown and read out at once. Empty for none.
    pub told: String,
    /// The last tap saved something, and it is on the disk: time for a short buzz.
    pub saved: bool,
    /// Keep the screen awake: a face is being read.
    pub awake: bool,
    /// Positions are wanted while it is shown: send them by `fix`, one a second is enough.
    pub wants_position: bool,
    /// Mirror the tools for the left hand.
    pub left_handed: bool,
    /// Whether it is dark on light; as the phone is set by default.
    pub light: Light,
    /// Language of all texts, an ISO 639-1 tag: for whatever reads them out.
    pub language: String,
    /// What the volume keys do; nothing where they are to be left alone.
    #[uniffi(default = None)]
    pub keys: Option<ShownKeys>,
}

/// What a screen says.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownHeadline {
    /// The sentence.
    pub text: String,
    /// Its sign, before it.
    pub sign: Option<Drawing>,
    /// One line of reason under it, of second rank. Empty for none.
    pub line: String,
}

/// Acts of the volume keys; a button on a headset does as the upper one. Given to `tap` as they are; opaque.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownKeys {
    /// Volume up.
    pub up: String,
    /// Volume down.
    pub down: String,
}

/// What a screen shows, and what a finger on it does. Nothing can be touched that no button of the screen does too.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownPicture {
    /// The shapes; over the photo where there is one, in its proportions.
    pub drawing: Drawing,
    /// Under the drawing: the photo with this hash; its file is given by `photo_path`.
    pub photo: Option<String>,
    /// Its title.
    pub title: String,
    /// All of it in words: for whoever does not see it.
    pub description: String,
    /// Where it stands.
    pub stand: Stand,
    /// Places that do something, the uppermost last.
    pub touches: Vec<ShownTouch>,
    /// An act for `touch` with the point anywhere else on it.
    pub anywhere: Option<String>,
    /// It may be made larger and moved, by fingers and by buttons.
    pub zooms: bool,
}

/// Where a picture stands.
#[uniffi::remote(Enum)]
pub enum Stand {
    /// Above the blocks, as wide as the screen.
    Wide,
    /// A strip at the side of the blocks, away from the thumb, from the headline to the next step.
    Strip,
}

/// A place on a picture that does something; points of the drawing.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownTouch {
    /// Left edge.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// Its name, for whoever hears it.
    pub label: String,
    /// What a finger on it does; an act goes to `touch` with the point where the finger was lifted.
    pub does: ShownDoes,
    /// It goes along with the finger, upwards and downwards, and does what it does when let go.
    pub drags: bool,
}

/// A piece of what is asked, said, or leads somewhere.
#[derive(Debug, Clone, PartialEq, uniffi::Enum)]
pub enum ShownBlock {
    /// A question with its answers.
    Question {
        /// The question; empty where the answer line asks it.
        text: String,
        /// Answers in a row, 1 to 6; fewer where a word would not fit.
        columns: u8,
        /// The answers, in order.
        answers: Vec<ShownButton>,
    },
    /// Rows that lead somewhere.
    Ways {
        /// What stands above. Empty for none.
        heading: String,
        /// The rows, in order.
        rows: Vec<ShownRow>,
    },
    /// Small pictures of photos, side by side.
    Photos {
        /// The photos, in order.
        photos: Vec<ShownThumbnail>,
    },
    /// A further drawing, as high as its width makes it.
    Picture {
        /// The drawing.
        picture: ShownPicture,
    },
    /// A sentence of second rank.
    Text {
        /// The words.
        text: String,
    },
    /// Lines under a heading; the heading may be empty.
    Lines {
        /// The lines.
        section: Section,
    },
    /// Text to be typed; nothing else needs a keyboard.
    Typing {
        /// What is typed.
        label: String,
        /// What stands there.
        value: String,
        /// Given to `type` with the text when it is entered.
        act: String,
        /// It may have several lines.
        long: bool,
    },
}

/// Lines under a heading.
#[uniffi::remote(Record)]
pub struct Section {
    /// What stands above.
    pub heading: String,
    /// Its lines.
    pub lines: Vec<String>,
}

/// A small picture of a photo.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownThumbnail {
    /// Its hash; its file is given by `photo_path`.
    pub photo: String,
    /// What it shows.
    pub label: String,
    /// What a tap on it does.
    pub does: ShownDoes,
}

/// A row of a list, as wide as the screen and at least 64 dp high, with a chevron at its end.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownRow {
    /// A sign before it.
    pub icon: Option<Drawing>,
    /// Its name, set strong.
    pub title: String,
    /// Lines under it: what stands there now.
    pub lines: Vec<String>,
    /// What a tap on it does.
    pub does: ShownDoes,
}

/// A button. Where it stands on the screen gives it its look.
#[derive(Debug, Clone, PartialEq, uniffi::Record)]
pub struct ShownButton {
    /// What stands on it.
    pub label: String,
    /// A second, smaller line; may be empty. Of one that is off: why.
    pub note: String,
    /// A drawing of what is seen, above or beside the label; of a tool its icon.
    pub drawing: Option<Drawing>,
    /// What it does.
    pub does: ShownDoes,
    /// The answer most given on its screen: larger than the rest.
    pub strong: bool,
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
    /// Write the sheet of the field, or its driver's card, by `export_page` with these two and hand it to another program or
    /// person.
    SharePage {
        /// Id of the field.
        field: String,
        /// The card in place of the sheet.
        card: bool,
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
    pub own: &'a Own,
    pub words: &'a Words,
}

impl ShownScreen {
    pub(crate) fn new(screen: Screen, around: Around) -> Self {
        let folded = !screen.more.is_empty();
        Self {
            kind: screen.kind,
            title: screen.title,
            back: screen.back.map(Into::into),
            menu: all(screen.menu),
            answer: screen.answer.map(Into::into),
            picture: screen.picture.map(Into::into),
            blocks: all(screen.blocks),
            caution: screen.caution,
            next: screen.next.map(Into::into),
            tools: all(screen.tools),
            more: screen.more,
            more_label: if folded { around.words.label(Caption::More) } else { String::new() },
            told: if around.told.is_empty() { screen.told } else { around.told },
            saved: around.saved,
            awake: screen.awake,
            wants_position: screen.wants_position,
            left_handed: around.own.left_handed,
            light: around.own.light,
            language: around.words.language().code().to_owned(),
            keys: screen.keys.map(|Keys { up, down }| ShownKeys { up: act_text(&up), down: act_text(&down) }),
        }
    }
}

fn all<T, S: From<T>>(all: Vec<T>) -> Vec<S> {
    all.into_iter().map(Into::into).collect()
}

impl From<Headline> for ShownHeadline {
    fn from(Headline { text, sign, line }: Headline) -> Self {
        Self { text, sign, line }
    }
}

impl From<Picture> for ShownPicture {
    fn from(picture: Picture) -> Self {
        let Picture { drawing, photo, title, description, stand, touches, anywhere, zooms } = picture;
        let anywhere = anywhere.as_ref().map(act_text);
        Self { drawing, photo, title, description, stand, touches: all(touches), anywhere, zooms }
    }
}

impl From<Touch> for ShownTouch {
    fn from(Touch { left, top, width, height, label, does, drags }: Touch) -> Self {
        Self { left, top, width, height, label, does: does.into(), drags }
    }
}

impl From<Block> for ShownBlock {
    fn from(block: Block) -> Self {
        match block {
            Block::Question { text, columns, answers } => {
                Self::Question { text, columns, answers: all(answers) }
            }
            Block::Ways { heading, rows } => Self::Ways { heading, rows: all(rows) },
            Block::Photos(photos) => Self::Photos { photos: all(photos) },
            Block::Drawing(picture) => Self::Picture { picture: picture.into() },
            Block::Text(text) => Self::Text { text },
            Block::Section(section) => Self::Lines { section },
            Block::Typing { label, value, act, long } => {
                Self::Typing { label, value, act: act_text(&act), long }
            }
        }
    }
}

impl From<Thumbnail> for ShownThumbnail {
    fn from(Thumbnail { photo, label, does }: Thumbnail) -> Self {
        Self { photo, label, does: does.into() }
    }
}

impl From<Row> for ShownRow {
    fn from(Row { icon, title, lines, does }: Row) -> Self {
        Self { icon, title, lines, does: does.into() }
    }
}

impl From<Button> for ShownButton {
    fn from(button: Button) -> Self {
        let spoken = if button.about.is_empty() { String::new() } else { button.spoken() };
        let Button { label, note, drawing, does, strong, chosen, enabled, .. } = button;
        Self { label, note, drawing, does: does.into(), strong, chosen, enabled, spoken }
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
            Does::Ask(Ask::SharePage { field, card }) => Self::SharePage { field: field.to_string(), card },
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
