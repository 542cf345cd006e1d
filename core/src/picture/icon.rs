//! Icons of our own: strokes and dots on a square of 24 points, beside the word they stand for and never alone.

use super::shape::{Drawing, Point, Role, Shape};
use crate::record::Call;
use crate::record::codes::codes;

/// Side of an icon, points.
pub const ICON_SIDE: f64 = 24.0;

codes!(
    /// What an icon stands for: tools, ways, and the calls.
    Icon {
        Undo = "undo",
        Redo = "redo",
        Photo = "photo",
        Remark = "remark",
        /// The large view for the farmer.
        Show = "show",
        /// A page that can be handed over.
        Page = "page",
        Machine = "machine",
        /// A pit, and digging one.
        Pit = "pit",
        /// The reference pit.
        Reference = "reference",
        Plan = "plan",
        /// The edge of a field.
        Edge = "edge",
        /// What lies buried.
        Buried = "buried",
        Layers = "layers",
        Roll = "roll",
        /// The hole behind the machine.
        Behind = "behind",
        HandOver = "hand_over",
        OpenFile = "open_file",
        /// Other people's devices.
        Partners = "partners",
        /// Own details.
        Own = "own",
        Delete = "delete",
        Skip = "skip",
        /// Less of something: less deep, smaller.
        Less = "less",
        /// More of it.
        More = "more",
        LeaveIt = "leave_it",
        RootsFirst = "roots_first",
        Loosen = "loosen",
        Wait = "wait",
        DrainFirst = "drain_first",
        DigAgain = "dig_again",
        AskSpecialist = "ask_specialist",
    }
);

impl From<Call> for Icon {
    /// The sign of a call.
    fn from(call: Call) -> Self {
        match call {
            Call::LeaveIt => Self::LeaveIt,
            Call::RootsFirst => Self::RootsFirst,
            Call::Loosen => Self::Loosen,
            Call::Wait => Self::Wait,
            Call::DrainFirst => Self::DrainFirst,
            Call::DigAgain => Self::DigAgain,
            Call::AskSpecialist => Self::AskSpecialist,
        }
    }
}

/// A stroke: the corners of a line in the square.
type Stroke = &'static [(f64, f64)];
/// A dot: centre and radius.
type Dot = (f64, f64, f64);

/// The surface of the ground, above what is drawn in it.
const SURFACE: Stroke = &[(3.0, 7.0), (21.0, 7.0)];

/// Strokes and dots of an icon.
#[expect(clippy::too_many_lines, reason = "a table, a row an icon")]
const fn parts(icon: Icon) -> (&'static [Stroke], &'static [Dot]) {
    match icon {
        Icon::Undo => (
            &[
                &[(9.0, 4.0), (4.0, 9.0), (9.0, 14.0)],
                &[(4.0, 9.0), (15.0, 9.0), (19.0, 12.0), (19.0, 17.0), (15.0, 20.0), (10.0, 20.0)],
            ],
            &[],
        ),
        Icon::Redo => (
            &[
                &[(15.0, 4.0), (20.0, 9.0), (15.0, 14.0)],
                &[(20.0, 9.0), (9.0, 9.0), (5.0, 12.0), (5.0, 17.0), (9.0, 20.0), (14.0, 20.0)],
            ],
            &[],
        ),
        Icon::Photo => (
            &[&[
                (3.0, 7.0),
                (8.0, 7.0),
                (10.0, 4.0),
                (14.0, 4.0),
                (16.0, 7.0),
                (21.0, 7.0),
                (21.0, 19.0),
                (3.0, 19.0),
                (3.0, 7.0),
            ]],
            &[(12.0, 13.0, 3.5)],
        ),
        Icon::Remark => (
            &[
                &[(4.0, 20.0), (5.5, 15.0), (16.0, 4.5), (19.5, 8.0), (9.0, 18.5), (4.0, 20.0)],
                &[(13.5, 7.0), (17.0, 10.5)],
            ],
            &[],
        ),
        Icon::Show => (
            &[
                &[(3.0, 4.0), (21.0, 4.0), (21.0, 16.0), (3.0, 16.0), (3.0, 4.0)],
                &[(12.0, 16.0), (7.0, 21.0)],
                &[(12.0, 16.0), (17.0, 21.0)],
                &[(7.0, 10.0), (17.0, 10.0)],
            ],
            &[],
        ),
        Icon::Page => (
            &[
                &[(6.0, 3.0), (15.0, 3.0), (19.0, 7.0), (19.0, 21.0), (6.0, 21.0), (6.0, 3.0)],
                &[(9.0, 11.0), (16.0, 11.0)],
                &[(9.0, 15.0), (16.0, 15.0)],
            ],
            &[],
        ),
        Icon::Machine => (
            &[
                &[(3.0, 6.0), (21.0, 6.0)],
                &[(7.0, 6.0), (7.0, 16.0), (4.0, 20.0)],
                &[(16.0, 6.0), (16.0, 16.0), (13.0, 20.0)],
            ],
            &[],
        ),
        Icon::Pit => (&[&[(2.0, 7.0), (7.0, 7.0), (7.0, 19.0), (17.0, 19.0), (17.0, 7.0), (22.0, 7.0)]], &[]),
        Icon::Reference => (
            &[
                &[(2.0, 10.0), (7.0, 10.0), (7.0, 20.0), (17.0, 20.0), (17.0, 10.0), (22.0, 10.0)],
                &[(12.0, 10.0), (12.0, 3.0)],
                &[(12.0, 7.0), (9.0, 4.0)],
                &[(12.0, 7.0), (15.0, 4.0)],
            ],
            &[],
        ),
        Icon::Plan => (
            &[
                &[(4.0, 6.0), (15.0, 3.0), (21.0, 10.0), (18.0, 20.0), (6.0, 18.0), (4.0, 6.0)],
                &[(4.8, 11.0), (19.8, 14.0)],
            ],
            &[],
        ),
        Icon::Edge => (
            &[&[(5.0, 18.0), (7.0, 6.0), (18.0, 5.0), (20.0, 16.0)]],
            &[(5.0, 18.0, 2.0), (7.0, 6.0, 2.0), (18.0, 5.0, 2.0), (20.0, 16.0, 2.0)],
        ),
        Icon::Buried => (
            &[
                SURFACE,
                &[(5.0, 15.0), (19.0, 15.0)],
                &[(5.0, 18.0), (19.0, 18.0)],
                &[(12.0, 7.0), (12.0, 12.0)],
            ],
            &[],
        ),
        Icon::Layers => (
            &[
                &[(5.0, 4.0), (19.0, 4.0), (19.0, 20.0), (5.0, 20.0), (5.0, 4.0)],
                &[(5.0, 9.0), (19.0, 10.0)],
                &[(5.0, 15.0), (19.0, 14.0)],
            ],
            &[],
        ),
        Icon::Roll => {
            (&[&[(4.0, 15.0), (10.0, 9.0), (20.0, 6.0)], &[(5.0, 18.0), (11.0, 12.0), (21.0, 9.0)]], &[])
        }
        Icon::Behind => {
            (&[SURFACE, &[(5.0, 11.0), (8.0, 18.0), (12.0, 12.0), (16.0, 18.0), (19.0, 11.0)]], &[])
        }
        Icon::HandOver => (
            &[
                &[(4.0, 14.0), (4.0, 20.0), (20.0, 20.0), (20.0, 14.0)],
                &[(12.0, 15.0), (12.0, 3.0)],
                &[(7.0, 8.0), (12.0, 3.0), (17.0, 8.0)],
            ],
            &[],
        ),
        Icon::OpenFile => (
            &[
                &[(4.0, 14.0), (4.0, 20.0), (20.0, 20.0), (20.0, 14.0)],
                &[(12.0, 3.0), (12.0, 15.0)],
                &[(7.0, 10.0), (12.0, 15.0), (17.0, 10.0)],
            ],
            &[],
        ),
        Icon::Partners => (
            &[
                &[(3.0, 19.0), (4.0, 14.0), (10.0, 14.0), (11.0, 19.0)],
                &[(13.0, 19.0), (14.0, 14.0), (20.0, 14.0), (21.0, 19.0)],
            ],
            &[(7.0, 9.0, 3.0), (17.0, 9.0, 3.0)],
        ),
        Icon::Own => (&[&[(5.0, 20.0), (6.0, 14.0), (18.0, 14.0), (19.0, 20.0)]], &[(12.0, 7.5, 4.0)]),
        Icon::Delete => (
            &[
                &[(4.0, 6.0), (20.0, 6.0)],
                &[(9.0, 6.0), (9.0, 3.5), (15.0, 3.5), (15.0, 6.0)],
                &[(6.0, 6.0), (7.0, 20.5), (17.0, 20.5), (18.0, 6.0)],
            ],
            &[],
        ),
        Icon::Skip => {
            (&[&[(5.0, 5.0), (12.0, 12.0), (5.0, 19.0)], &[(12.0, 5.0), (19.0, 12.0), (12.0, 19.0)]], &[])
        }
        Icon::Less => (&[&[(5.0, 12.0), (19.0, 12.0)]], &[]),
        Icon::More => (&[&[(5.0, 12.0), (19.0, 12.0)], &[(12.0, 5.0), (12.0, 19.0)]], &[]),
        Icon::LeaveIt => (&[SURFACE, &[(7.0, 14.0), (11.0, 18.0), (18.0, 11.0)]], &[]),
        Icon::RootsFirst => (
            &[
                SURFACE,
                &[(12.0, 2.5), (12.0, 20.0)],
                &[(12.0, 11.0), (6.0, 16.0)],
                &[(12.0, 11.0), (18.0, 16.0)],
            ],
            &[],
        ),
        Icon::Loosen => (
            &[
                SURFACE,
                &[(12.0, 2.5), (12.0, 19.0)],
                &[(12.0, 19.0), (8.0, 21.0)],
                &[(12.0, 19.0), (4.0, 11.0)],
                &[(12.0, 19.0), (20.0, 11.0)],
            ],
            &[],
        ),
        Icon::Wait => (
            &[
                &[(6.0, 3.0), (18.0, 3.0)],
                &[(6.0, 21.0), (18.0, 21.0)],
                &[(7.0, 3.0), (7.0, 7.0), (17.0, 17.0), (17.0, 21.0)],
                &[(17.0, 3.0), (17.0, 7.0), (7.0, 17.0), (7.0, 21.0)],
            ],
            &[],
        ),
        Icon::DrainFirst => (
            &[
                SURFACE,
                &[(8.0, 10.0), (8.0, 14.0)],
                &[(12.0, 10.0), (12.0, 14.0)],
                &[(16.0, 10.0), (16.0, 14.0)],
            ],
            &[(12.0, 18.5, 2.5)],
        ),
        Icon::DigAgain => (
            &[
                &[(12.0, 3.0), (12.0, 13.0)],
                &[(9.0, 3.0), (15.0, 3.0)],
                &[(7.5, 13.0), (16.5, 13.0), (16.0, 18.0), (12.0, 21.5), (8.0, 18.0), (7.5, 13.0)],
            ],
            &[],
        ),
        Icon::AskSpecialist => (
            &[&[
                (8.0, 8.5),
                (9.0, 5.0),
                (12.0, 3.5),
                (15.0, 5.0),
                (16.0, 8.0),
                (14.0, 11.0),
                (12.0, 13.0),
                (12.0, 15.5),
            ]],
            &[(12.0, 19.5, 1.6)],
        ),
    }
}

/// An icon as shapes, [`ICON_SIDE`] wide and high, without a ground.
pub fn icon(icon: Icon) -> Drawing {
    let (strokes, dots) = parts(icon);
    let stroke = |stroke: &Stroke| Shape::Polyline {
        role: Role::Outline,
        points: stroke.iter().map(|&(x, y)| Point::new(x, y)).collect(),
    };
    let dot = |&(x, y, radius): &Dot| Shape::Circle { role: Role::Ink, centre: Point::new(x, y), radius };
    let shapes = strokes.iter().map(stroke).chain(dots.iter().map(dot)).collect();
    Drawing { width: ICON_SIDE, height: ICON_SIDE, shapes }
}
