//! What leaves for people: the sheet of a field, put together from words and pictures.

mod behind;
mod card;
mod details;
mod html;
mod on_photo;
mod overview;
mod page;
mod seasons;
mod sheet;
mod style;

pub use behind::{hole_name, holes_behind};
pub use card::card;
pub use html::GENERATOR;
pub use on_photo::{OnPhoto, on_photo};
pub use overview::{Listed, overview, overview_with_sheets};
pub use page::{Block, Group, Line, Page, Row};
pub use sheet::{PhotoFile, sheet};
