//! The plan of a field: outline, headland, tramlines, marked parts, what lies buried, pits, after-digs and where to dig
//! next. North is always up. Input is plain data in metres east and north of any place; words come in ready.

mod draw;
mod fill;
mod frame;
mod ground;
mod key;
mod marks;
mod of;
mod room;

pub use draw::{LaidOut, MarkOn, lay_out, plan};

use super::layout::{BASE_LINE, LINE_HEIGHT, text_width};
use super::shape::{Anchor, Point, Role, Shape};
use crate::place::Compass;
use crate::record::codes::codes;
use crate::record::{Buried, Call, Condition, PlaceKind, Zone};
use frame::bounds;

/// A place in the field: metres `[east, north]` of any one place.
pub type Spot = [f64; 2];

/// What is drawn of a field.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanPicture {
    /// Edge of the field, without the closing repeat; empty if nobody has walked it.
    pub outline: Vec<Spot>,
    /// Corners of an edge that is not closed yet, in the order they were noted.
    pub corners: Vec<Spot>,
    /// Inner edges of the headland strip.
    pub headland: Vec<Vec<Spot>>,
    /// Tramlines.
    pub tramlines: Vec<Vec<Spot>>,
    /// Gateways and patches.
    pub parts: Vec<PlanPart>,
    /// Drains, mole drains and services as marked.
    pub buried: Vec<PlanLine>,
    /// Pits in the order they are told in.
    pub pits: Vec<PlanPit>,
    /// Holes dug behind the machine.
    pub after_digs: Vec<PlanAfterDig>,
    /// Where to dig next.
    pub next: Option<Spot>,
    /// Where one stands.
    pub own: Option<Spot>,
    /// Calls by which the ground is filled, each zone with its sign; a zone without one counts as not dug. `None` leaves
    /// the ground in the tones of its parts.
    pub calls: Option<Vec<(Zone, Call)>>,
    /// Ground that is shown in any case: so many metres to each side of a place.
    pub around: Option<(Spot, f64)>,
    /// Greatest height of the field's ground, points.
    pub tallest: f64,
    /// Words; see [`crate::words::Words::plan_words`].
    pub words: PlanWords,
    /// Size of text against the usual one, 1.0 to 2.0; values outside are taken as the nearest.
    pub text_scale: f64,
}

/// A marked part.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanPart {
    /// Its edge, without the closing repeat.
    pub ring: Vec<Spot>,
    /// The zone it is.
    pub zone: Zone,
    /// What is written in or beside it; may be empty.
    pub label: String,
}

/// A line of what lies buried.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanLine {
    /// What lies there.
    pub kind: Buried,
    /// Its course.
    pub along: Vec<Spot>,
}

/// A pit.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanPit {
    /// Where it was dug, if that is known.
    pub at: Option<Spot>,
    /// Its number as it is told: `1`.
    pub number: String,
    /// Condition of its worst layer; `None` = not judged.
    pub condition: Option<Condition>,
    /// Kind of place.
    pub place: PlaceKind,
}

/// A hole dug behind the machine.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanAfterDig {
    /// Where it was dug, if that is known.
    pub at: Option<Spot>,
    /// What it is called: `A1`.
    pub label: String,
}

/// The words of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanWords {
    /// Letter of the north arrow.
    pub north: String,
    /// Unit of the scale bar, and how many metres it has.
    pub unit: (String, f64),
    /// The word beside the next place to dig.
    pub next: String,
    /// Letter on the lines of each kind.
    pub letters: Vec<(Buried, String)>,
    /// Short calls of the zones that are no marked part, written into them where they fit.
    pub zones: Vec<(Zone, String)>,
    /// Lines of text right under the plan, such as which pits are not on it.
    pub notes: Vec<String>,
    /// The key, in order.
    pub key: Vec<PlanKeyLine>,
}

impl PlanWords {
    /// No words: letters, notes and key left out, the scale in metres.
    pub fn none() -> Self {
        Self {
            north: String::new(),
            unit: ("m".into(), 1.0),
            next: String::new(),
            letters: Vec::new(),
            zones: Vec::new(),
            notes: Vec::new(),
            key: Vec::new(),
        }
    }
}

codes!(
    /// A mark of the plan that the key explains.
    PlanMark {
        /// Ground inside the headland, or all of a field without one.
        Ground = "ground",
        Headland = "headland",
        Tramline = "tramline",
        Gateway = "gateway",
        Patch = "patch",
        Drain = "drain",
        MoleDrain = "mole_drain",
        Service = "service",
        /// A pit with its worst layer Open; and so on.
        Open = "open",
        Firm = "firm",
        Tight = "tight",
        Shut = "shut",
        /// A pit that is not judged.
        NotJudged = "not_judged",
        /// The double frame of a reference pit.
        Reference = "reference",
        AfterDig = "after_dig",
        Next = "next",
        /// Words without a mark.
        Note = "note",
    }
);

impl PlanMark {
    /// Returns whether it marks ground or what lies buried in it, and nothing that was dug.
    pub const fn is_ground(self) -> bool {
        matches!(
            self,
            Self::Ground
                | Self::Headland
                | Self::Tramline
                | Self::Gateway
                | Self::Patch
                | Self::Drain
                | Self::MoleDrain
                | Self::Service
        )
    }
}

/// One line of the key.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PlanKeyLine {
    /// The mark.
    pub mark: PlanMark,
    /// What it means here.
    pub text: String,
}

/// Where in a field a place lies: towards a point of the compass, or in the middle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lie {
    /// The middle third both ways.
    Middle,
    /// Towards a point of the compass.
    Towards(Compass),
}

impl PlanPicture {
    /// A plan of nothing.
    pub fn empty() -> Self {
        Self {
            outline: Vec::new(),
            corners: Vec::new(),
            headland: Vec::new(),
            tramlines: Vec::new(),
            parts: Vec::new(),
            buried: Vec::new(),
            pits: Vec::new(),
            after_digs: Vec::new(),
            next: None,
            own: None,
            calls: None,
            around: None,
            tallest: TALLEST,
            words: PlanWords::none(),
            text_scale: 1.0,
        }
    }

    /// Numbers of the pits that are not on the plan: without a position, or with one far from the field.
    pub fn pits_left_out(&self) -> Vec<&str> {
        let out = self.pits.iter().filter(|pit| self.shown(pit.at).is_none());
        out.map(|pit| pit.number.as_str()).collect()
    }

    /// Names of the after-digs that are not on it, in the same way.
    pub fn after_digs_left_out(&self) -> Vec<&str> {
        let out = self.after_digs.iter().filter(|dig| self.shown(dig.at).is_none());
        out.map(|dig| dig.label.as_str()).collect()
    }

    /// The place, if the plan shows it.
    pub fn shown(&self, at: Option<Spot>) -> Option<Spot> {
        at.filter(|&at| bounds(self).holds(at))
    }

    /// Where in the field a place lies: by thirds of its extent from west to east and from south to north. A field
    /// too small across one way for thirds is all middle that way.
    pub fn lie(&self, at: Spot) -> Lie {
        let field = frame::extent(self);
        let third = |axis: usize| {
            let (lo, hi) = (field.lo[axis], field.hi[axis]);
            if hi - lo < SMALLEST_PARTED_M {
                return 0.0;
            }
            (((at[axis] - lo) / (hi - lo) * 3.0).floor().clamp(0.0, 2.0)) - 1.0
        };
        let (east, north) = (third(0), third(1));
        if east == 0.0 && north == 0.0 {
            Lie::Middle
        } else {
            Lie::Towards(Compass::of(f64::atan2(east, north).to_degrees()))
        }
    }

    /// The call a zone is filled by.
    fn call(&self, zone: Zone) -> Option<Call> {
        self.calls.iter().flatten().find(|(of, _)| *of == zone).map(|(_, call)| *call)
    }

    /// Size of text against the usual one.
    fn scale_of_text(&self) -> f64 {
        if self.text_scale.is_nan() { 1.0 } else { self.text_scale.clamp(1.0, 2.0) }
    }
}

/// Least extent of a field that has parts a person would name, metres. Our judgement.
const SMALLEST_PARTED_M: f64 = 15.0;

/// Greatest height of a field's ground, points: by eye at phone width.
pub const TALLEST: f64 = 400.0;
/// The same where a sentence and a button have to stand beside it on a phone.
pub const LOW: f64 = 240.0;

/// A line of text that starts at the upper left corner of its line.
fn text(role: Role, left: f64, top: f64, size: f64, strong: bool, text: &str) -> Shape {
    let at = Point::new(left, top + size * BASE_LINE);
    Shape::Text { role, at, anchor: Anchor::Start, size, strong, text: text.to_owned() }
}

/// Width and height of a line of text.
fn text_room(text: &str, size: f64, strong: bool) -> (f64, f64) {
    (text_width(text, size, strong), size * LINE_HEIGHT)
}
