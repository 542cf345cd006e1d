//! Pages put together from words and pictures.

mod page;

pub use page::{Figure, GENERATOR, Page, PageEntry, Section, page};
