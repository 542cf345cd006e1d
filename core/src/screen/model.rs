//! What a screen shows: everything in it, in order, with words ready and drawings as shapes. A shell lays it out and
//! sends back what was tapped; it decides sizes and places, nothing else.

use super::{Act, Ask, Place};
use crate::picture::Drawing;
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
    }
);

/// One screen.
#[derive(Debug, Clone, PartialEq)]
pub struct Screen {
    /// Where it is; kept by a shell as text, to come back to it.
    pub place: Place,
    /// Which screen.
    pub kind: ScreenKind,
    /// Its title, in the words of the screen.
    pub title: String,
    /// What is known: the upper part, in order.
    pub known: Vec<Known>,
    /// What the thumb does: the lower part, in order, the most used last (nearest to the thumb).
    pub doing: Vec<Doing>,
    /// What is known matters more than what the thumb does: where there is not room for both, it has the larger part.
    pub known_first: bool,
    /// The bar at the very bottom.
    pub bar: Bar,
    /// A short sentence on what the last tap did or could not do; read out at once. Empty for none.
    pub told: String,
    /// The screen is to be kept awake: a face is being read.
    pub awake: bool,
    /// Positions are wanted while it is shown.
    pub wants_position: bool,
    /// What keys at the side of the phone do, where they are to answer; else they are left alone.
    pub keys: Option<Keys>,
}

/// Acts of the keys that set the volume elsewhere; a button on a headset does as the upper one.
#[derive(Debug, Clone, PartialEq)]
pub struct Keys {
    /// Louder.
    pub up: Act,
    /// Softer.
    pub down: Act,
}

/// A piece of what is known.
#[derive(Debug, Clone, PartialEq)]
pub enum Known {
    /// What matters, set large.
    Sentence(String),
    /// Further text.
    Line(String),
    /// A drawing with what is said of it to whoever does not see it.
    Drawing(Pictured),
    /// A list under a heading; the heading may be empty.
    Section {
        /// What stands above.
        heading: String,
        /// Its lines.
        lines: Vec<String>,
    },
    /// Rows that lead somewhere.
    Rows(Vec<Row>),
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

/// A row of a list, wide and at least 64 dp high.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// Its name, set strong.
    pub title: String,
    /// Lines under it.
    pub lines: Vec<String>,
    /// What a tap on it does.
    pub does: Does,
}

/// A piece of what the thumb does.
#[derive(Debug, Clone, PartialEq)]
pub enum Doing {
    /// A question or heading above what follows.
    Question(String),
    /// Buttons side by side, so many in a row.
    Choices {
        /// Buttons in a row, 1 to 6.
        columns: u8,
        /// The buttons, in order.
        buttons: Vec<Button>,
    },
    /// One line of text to be typed; nothing else needs a keyboard.
    Typing {
        /// What is typed.
        label: String,
        /// What stands there.
        value: String,
        /// What entering it does; the text goes with it.
        act: Act,
    },
}

/// A button.
#[derive(Debug, Clone, PartialEq)]
pub struct Button {
    /// What stands on it.
    pub label: String,
    /// A second, smaller line; may be empty.
    pub note: String,
    /// What it answers, where others of its screen are called alike: not shown, only spoken. Empty where label and note
    /// say it.
    pub about: String,
    /// A drawing of what is seen, above or beside the label.
    pub drawing: Option<Drawing>,
    /// What it does.
    pub does: Does,
    /// How large.
    pub size: Size,
    /// It is the answer given.
    pub chosen: bool,
    /// It can be tapped now.
    pub enabled: bool,
}

codes!(
    /// How large a button is.
    Size {
        /// At least 48 dp: rarely used.
        Small = "small",
        /// At least 64 dp.
        Usual = "usual",
        /// The one most used on its screen: larger than the rest.
        Large = "large",
    }
);

/// What a tap does: something the core does at once, or something only the platform can.
#[derive(Debug, Clone, PartialEq)]
pub enum Does {
    /// Sent back to the core.
    Act(Act),
    /// Done by the platform; its result comes back in a call of its own.
    Ask(Ask),
}

/// The bar at the very bottom; mirrored for the left hand.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Bar {
    /// Takes back the last tap.
    pub undo: Option<Button>,
    /// The one main action, wide.
    pub main: Option<Button>,
    /// Back to where one came from.
    pub back: Option<Button>,
}

impl Button {
    /// A usual button that can be tapped.
    pub fn new(label: impl Into<String>, does: Does) -> Self {
        Self {
            label: label.into(),
            note: String::new(),
            about: String::new(),
            drawing: None,
            does,
            size: Size::Usual,
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
    /// All its buttons: those of the lower part in order, then those of the bar.
    pub fn buttons(&self) -> impl Iterator<Item = &Button> {
        let choices = self.doing.iter().flat_map(|doing| match doing {
            Doing::Choices { buttons, .. } => buttons.as_slice(),
            Doing::Question(_) | Doing::Typing { .. } => &[],
        });
        choices.chain([&self.bar.undo, &self.bar.main, &self.bar.back].into_iter().flatten())
    }
}
