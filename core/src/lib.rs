//! The core of Pitface: what a person with a spade notes, what it means, and what is to be done.
//!
//! Data flows one way: a tap becomes a [`record`], the [`store`] keeps it, [`reading`] and
//! [`advice`] are pure functions of the records, [`picture`], [`words`] and [`report`] show the
//! result. The core has no clock, no random source and (outside [`store`]) no file access: they
//! come in as arguments. The call is never stored as truth; it is recomputed by the rule set
//! named [`RULES`].
//!
//! | room | what may be in it |
//! |---|---|
//! | [`harmless`] | text of others made fit to be shown |
//! | [`units`] | lengths shown to people, and nothing else |
//! | [`record`] | plain data as noted in the field, its codes, depth logic and the notes file |
//! | [`soil`] | handbook tables and rules that know nothing of a pit |
//! | [`place`] | positions and zones of a field |
//! | [`reading`] | one pit's face: steps to layers, kinds of layer, reasons, the next look |
//! | [`advice`] | from read pits to calls, depth, cautions and follow-up |
//! | [`answer`] | a field with everything that follows from its notes, made in one place and kept |
//! | [`boundary`] | outlines and lines in files of other programs; pure bytes |
//! | [`store`] | the append-only log; the only room with SQL |
//! | [`merge`] | edits as they travel: the bundle, its chain and signature; pure bytes |
//! | [`picture`] | drawings as shapes with roles; the SVG writer |
//! | [`words`] | sentences in the chosen language; the only room that knows languages |
//! | [`screen`] | one record a screen with everything it shows; what a tap means |
//! | [`tables`] | notes and calls as rows for other programs: GeoJSON, CSV |
//! | [`report`] | pages put together from words and pictures |

pub mod advice;
pub mod answer;
pub mod boundary;
pub mod error;
pub mod harmless;
pub mod merge;
mod order;
pub mod picture;
pub mod place;
pub mod reading;
pub mod record;
pub mod report;
pub mod screen;
pub mod soil;
pub mod store;
pub mod tables;
pub mod units;
pub mod words;

/// The rule set by which readings and calls are computed; kept with whatever is shown or handed over.
pub const RULES: &str = "2026.3";
