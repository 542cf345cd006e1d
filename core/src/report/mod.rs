//! Pages put together from words and pictures.

mod page;

pub use page::{Figure, Page, PageEntry, Section, page};
