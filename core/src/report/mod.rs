//! Pages put together from words and pictures.

mod on_photo;
mod page;

pub use on_photo::{OnPhoto, on_photo};
pub use page::{Figure, GENERATOR, Page, PageEntry, Section, page};
