//! What a screen shows, by rank: its answer, its picture, its blocks, its one next step, its tools. Words are ready and
//! drawings are shapes. A shell gives each rank its own look and lays it out; it decides sizes and places, nothing else.
//!
//! From the top: title with the way back and the menu; [`Headline`]; [`Picture`]; [`Block`]s; caution; next step; tools;
//! what is folded. Always in sight are the headline, every answer of the blocks' questions, the next step and the tools:
//! the picture shrinks before they do, and what scrolls is the rest.

use super::{Act, Ask, Place};
use crate::picture::{Drawing, Point};
use crate::record::codes::codes;

codes!(
    /// Which screen it is, for what a shell does differently.
    ScreenKind {
        /// The language, on the first start.
        Welcome = "welcome",
        Fields = "fields",
        Field = "field",
        StartPit = "start_pit",
        KnifeWalk = "knife_walk",
        NextLook = "next_look",
        Layers = "layers",
        Roll = "roll",
        Call = "call",
        Machine = "machine",
        /// A pass, and what comes of the holes behind it.
        Pass = "pass",
        /// One hole behind the machine, reading by reading.
        AfterDig = "after_dig",
        /// For the farmer: large, nothing to operate; a tap anywhere goes back.
        Show = "show",
        Photos = "photos",
        HandOver = "hand_over",
        /// Everything handed over and taken in, and the other devices.
        Partners = "partners",
        /// A value of which several versions stand, or a record deleted while somebody went on with it.
        Versions = "versions",
        /// Own details: name, hand, units, language.
        Own = "own",
        /// A place pointed out on the plan, in steps of buttons.
        OnPlan = "on_plan",
        /// Whether a record is to be deleted; or what was deleted here, to bring it back.
        Deleting = "deleting",
    }
);

/// One screen.
#[derive(Debug, Clone, PartialEq)]
pub struct Screen {
    /// Where it is; kept by a shell as text, to come back to it.
    pub place: Place,
    /// Which screen.
    pub kind: ScreenKind,
    /// Its title, short: one line at the very top.
    pub title: String,
    /// Back to where one came from, beside the title.
    pub back: Option<Button>,
    /// Rare things, behind one button beside the title.
    pub menu: Vec<Button>,
    /// What the screen says, at display size.
    pub answer: Option<Headline>,
    /// What it shows, as large as is left over.
    pub picture: Option<Picture>,
    /// What is asked, and where it leads, in order.
    pub blocks: Vec<Block>,
    /// What to heed in what is done now, one line above the next step. Empty for none.
    pub caution: String,
    /// The one thing worth doing now, filled and wide; there is one or none. With the act of a [`Block::Typing`] of its screen
    /// it enters what stands there.
    pub next: Option<Button>,
    /// The tools at the very bottom, icon with word, undo first; mirrored for the left hand.
    pub tools: Vec<Button>,
    /// Reasons, cautions in full, figures: folded, each under its heading.
    pub more: Vec<Section>,
    /// A short sentence on what the last tap did or could not do; read out at once. Empty for none.
    pub told: String,
    /// The screen is to be kept awake: a face is being read.
    pub awake: bool,
    /// Positions are wanted while it is shown.
    pub wants_position: bool,
    /// What keys at the side of the phone do, where they are to answer; else they are left alone.
    pub keys: Option<Keys>,
}

/// What a screen says: one sentence that is never below the fold.
#[derive(Debug, Clone, PartialEq)]
pub struct Headline {
    /// The sentence, at display size.
    pub text: String,
    /// Its sign, left of it.
    pub sign: Option<Drawing>,
    /// One line of reason under it. Empty for none.
    pub line: String,
}

/// Acts of the keys that set the volume elsewhere; a button on a headset does as the upper one.
#[derive(Debug, Clone, PartialEq)]
pub struct Keys {
    /// Louder.
    pub up: Act,
    /// Softer.
    pub down: Act,
}

/// What a screen shows, and what a finger on it does. Each touch has a button or a way of the same screen that does the
/// same: for one hand, and for whoever does not see it.
#[derive(Debug, Clone, PartialEq)]
pub struct Picture {
    /// What is seen; lies over the photo where there is one, in the photo's own proportions.
    pub drawing: Drawing,
    /// Under the drawing: the photo with this SHA-256, in hexadecimal.
    pub photo: Option<String>,
    /// Its title.
    pub title: String,
    /// All of it in words.
    pub description: String,
    /// Where it stands.
    pub stand: Stand,
    /// Places on it that do something, the uppermost last.
    pub touches: Vec<Touch>,
    /// What a finger anywhere else on it does; the point goes with the act.
    pub anywhere: Option<Act>,
    /// It may be made larger and moved, by fingers and by buttons.
    pub zooms: bool,
}

codes!(
    /// Where a picture stands.
    Stand {
        /// Above the blocks, as wide as the screen.
        Wide = "wide",
        /// A strip at the side of the blocks, from the headline to the next step.
        Strip = "strip",
    }
);

/// A place on a picture that does something.
#[derive(Debug, Clone, PartialEq)]
pub struct Touch {
    /// Left edge, points of the drawing.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
    /// Its name, for whoever hears it.
    pub label: String,
    /// What a finger on it does. The point where the finger was lifted goes with an act.
    pub does: Does,
    /// It is drawn along with the finger, upwards and downwards, and does what it does when let go.
    pub drags: bool,
}

/// A drawing with its spoken description.
#[derive(Debug, Clone, PartialEq)]
pub struct Pictured {
    /// The shapes.
    pub drawing: Drawing,
    /// Its title.
    pub title: String,
    /// All of it in words.
    pub description: String,
}

/// A piece of what is asked, said, or leads somewhere.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// A question with its answers.
    Question {
        /// The question; empty where the headline asks it.
        text: String,
        /// Answers in a row, 1 to 6; fewer where a word would not fit.
        columns: u8,
        /// The answers, in order.
        answers: Vec<Button>,
    },
    /// Rows that lead somewhere.
    Ways {
        /// What stands above. Empty for none.
        heading: String,
        /// The rows, in order.
        rows: Vec<Row>,
    },
    /// Small pictures of photos.
    Photos(Vec<Thumbnail>),
    /// A further drawing, as high as its width makes it.
    Drawing(Picture),
    /// A sentence of second rank.
    Text(String),
    /// Lines under a heading; the heading may be empty.
    Section(Section),
    /// Text to be typed, or spoken into the keyboard.
    Typing {
        /// What is typed.
        label: String,
        /// What stands there.
        value: String,
        /// What entering it does; the text goes with it.
        act: Act,
        /// It may have several lines.
        long: bool,
    },
}

/// Lines under a heading.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// What stands above.
    pub heading: String,
    /// Its lines.
    pub lines: Vec<String>,
}

/// A small picture of a photo.
#[derive(Debug, Clone, PartialEq)]
pub struct Thumbnail {
    /// SHA-256 of the photo, in hexadecimal.
    pub photo: String,
    /// What it shows, also for whoever does not see it.
    pub label: String,
    /// What a tap on it does.
    pub does: Does,
}

/// A row of a list, wide and at least 64 dp high, with a chevron at its end.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// A sign before it.
    pub icon: Option<Drawing>,
    /// Its name, set strong.
    pub title: String,
    /// Lines under it: what stands there now.
    pub lines: Vec<String>,
    /// What a tap on it does.
    pub does: Does,
}

/// A button. Where it stands on the screen gives it its look.
#[derive(Debug, Clone, PartialEq)]
pub struct Button {
    /// What stands on it.
    pub label: String,
    /// A second, smaller line; may be empty. Of one that cannot be tapped: why.
    pub note: String,
    /// What it answers, where others of its screen are called alike: not shown, only spoken. Empty where label and note
    /// say it.
    pub about: String,
    /// A drawing of what is seen, or its icon.
    pub drawing: Option<Drawing>,
    /// What it does.
    pub does: Does,
    /// The answer most given on its screen: larger than the rest.
    pub strong: bool,
    /// It is the answer given.
    pub chosen: bool,
    /// It can be tapped now.
    pub enabled: bool,
}

/// What a tap does: something the core does at once, or something only the platform can.
#[derive(Debug, Clone, PartialEq)]
pub enum Does {
    /// Sent back to the core.
    Act(Act),
    /// Done by the platform; its result comes back in a call of its own.
    Ask(Ask),
}

/// What goes with an act.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Input<'a> {
    /// What was typed, for an act of [`Block::Typing`].
    pub text: Option<&'a str>,
    /// Where a finger was lifted, in points of the drawing, for an act of a [`Picture`].
    pub point: Option<Point>,
}

impl<'a> Input<'a> {
    /// Something typed.
    pub const fn typed(text: &'a str) -> Self {
        Self { text: Some(text), point: None }
    }

    /// A finger lifted.
    pub const fn at(point: Point) -> Self {
        Self { text: None, point: Some(point) }
    }
}

impl From<Pictured> for Picture {
    /// A picture that nothing on it can be done with.
    fn from(Pictured { drawing, title, description }: Pictured) -> Self {
        Self {
            drawing,
            photo: None,
            title,
            description,
            stand: Stand::Wide,
            touches: Vec::new(),
            anywhere: None,
            zooms: false,
        }
    }
}

impl Headline {
    /// A sentence alone.
    pub fn new(text: impl Into<String>) -> Self {
        Self { text: text.into(), sign: None, line: String::new() }
    }
}

impl Button {
    /// A button that can be tapped.
    pub fn new(label: impl Into<String>, does: Does) -> Self {
        Self {
            label: label.into(),
            note: String::new(),
            about: String::new(),
            drawing: None,
            does,
            strong: false,
            chosen: false,
            enabled: true,
        }
    }

    /// Its name as it is read out, for whoever does not see what stands around it.
    pub fn spoken(&self) -> String {
        let parts = [&self.label, &self.note, &self.about].map(String::as_str);
        parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(". ")
    }
}

impl Screen {
    /// All its buttons, from the top: back, menu, answers in order, next step, tools.
    pub fn buttons(&self) -> impl Iterator<Item = &Button> {
        let answers = self.blocks.iter().flat_map(|block| match block {
            Block::Question { answers, .. } => answers.as_slice(),
            _ => &[],
        });
        self.back.iter().chain(&self.menu).chain(answers).chain(&self.next).chain(&self.tools)
    }

    /// All its rows, in order.
    pub fn rows(&self) -> impl Iterator<Item = &Row> {
        self.blocks.iter().flat_map(|block| match block {
            Block::Ways { rows, .. } => rows.as_slice(),
            _ => &[],
        })
    }

    /// All its pictures: the one under the answer, then those among the blocks.
    pub fn pictures(&self) -> impl Iterator<Item = &Picture> {
        let blocks = self.blocks.iter().filter_map(|block| match block {
            Block::Drawing(picture) => Some(picture),
            _ => None,
        });
        self.picture.iter().chain(blocks)
    }
}
