//! A page as HTML: every text escaped, every element closed, well-formed as XML too.

use super::page::{Block, Group, Line, Page, Row};
use super::style::STYLE;
use crate::picture::photo::photo_svg;
use crate::picture::{Spoken, Theme, escape, style_sheet, svg};
use std::fmt::Write as _;

/// By this line a page is known to be one of ours, which may be written anew.
pub const GENERATOR: &str = "<meta name=\"generator\" content=\"Pitface\"/>";
/// A photo without notes is always of this kind: only JPEG can be looked through for them.
const JPEG: &str = "image/jpeg";

impl Page {
    /// The page as HTML that needs nothing else: no script, nothing fetched.
    pub fn html(&self) -> String {
        let mut html = Html { text: String::new(), language: self.language.code() };
        for block in &self.blocks {
            html.block(block);
        }
        format!(
            "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\"/>\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n{GENERATOR}\n\
             <title>{}</title>\n<style>\n{}{STYLE}</style>\n</head>\n<body>\n<main>\n{}</main>\n</body>\n</html>\n",
            self.language.code(),
            escape(&self.title),
            style_sheet(),
            html.text,
        )
    }
}

impl Group {
    /// Its element and class; a class may be empty.
    const fn html(&self) -> (&'static str, &'static str) {
        match self {
            Self::Article => ("article", ""),
            Self::Card => ("article", "card"),
            Self::Details => ("article", "details"),
            Self::Head => ("header", ""),
            Self::Section => ("section", ""),
            Self::Years => ("section", "years"),
            Self::Hole => ("section", "hole"),
            Self::HoleAlone => ("section", "hole alone"),
            Self::Boxes => ("section", "boxes"),
            Self::Pictures => ("div", "pictures"),
            Self::Columns => ("div", "columns"),
            Self::Pits => ("div", "pits"),
            Self::Closing => ("div", "closing"),
            Self::Anchor(_) => ("div", ""),
        }
    }
}

impl Line {
    const fn html(self) -> (&'static str, &'static str) {
        match self {
            Self::Title => ("h1", ""),
            Self::Heading => ("h2", ""),
            Self::PitHeading => ("h3", ""),
            Self::Sentence => ("p", "sentence"),
            Self::Meta => ("p", "meta"),
            Self::Plain => ("p", ""),
        }
    }
}

struct Html {
    text: String,
    language: &'static str,
}

impl Html {
    fn block(&mut self, block: &Block) {
        match block {
            Block::Group(Group::Anchor(id), blocks) => {
                let _ = writeln!(self.text, "<div id=\"{}\">", escape(id));
                for block in blocks {
                    self.block(block);
                }
                self.end("div");
            }
            Block::Group(group, blocks) => {
                let (name, class) = group.html();
                self.within(name, class, |html| blocks.iter().for_each(|block| html.block(block)));
            }
            Block::Text(line, text) => {
                let (name, class) = line.html();
                self.text(name, class, text);
            }
            Block::List(lines) => {
                self.within("ul", "", |html| lines.iter().for_each(|line| html.text("li", "", line)));
            }
            Block::Table { caption, heads, rows } => self.table(caption, heads, rows),
            Block::Figure { drawing, photo, title, description, caption } => {
                let spoken = Spoken { language: self.language, title, description };
                let svg = match photo {
                    Some(photo) => photo_svg(drawing, photo, JPEG, Theme::Page, &spoken),
                    None => svg(drawing, Theme::Page, &spoken),
                };
                self.within("figure", "", |html| {
                    html.text.push_str(&svg);
                    html.text("figcaption", "", caption);
                });
            }
        }
    }

    /// An element with a class around what `within` writes; an empty class is left out.
    fn within(&mut self, name: &str, class: &str, within: impl FnOnce(&mut Self)) {
        self.begin(name, class);
        self.text.push('\n');
        within(self);
        self.end(name);
    }

    /// An element with text; nothing for an empty text.
    fn text(&mut self, name: &str, class: &str, text: &str) {
        if !text.is_empty() {
            self.begin(name, class);
            self.text.push_str(&escape(text));
            self.end(name);
        }
    }

    fn table(&mut self, caption: &str, heads: &[String], rows: &[Row]) {
        self.within("table", "", |html| {
            html.text("caption", "", caption);
            html.within("thead", "", |html| {
                html.within("tr", "", |html| {
                    for head in heads {
                        html.cell("th scope=\"col\"", &escape(head));
                    }
                });
            });
            html.within("tbody", "", |html| {
                for Row { address, cells } in rows {
                    html.within("tr", "", |html| {
                        for (index, cell) in cells.iter().enumerate() {
                            let head = index == 0 && !cell.is_empty();
                            let cell = escape(cell);
                            let cell = match address {
                                Some(address) if head => {
                                    format!("<a href=\"{}\">{cell}</a>", escape(address))
                                }
                                _ => cell,
                            };
                            // On a narrow page the cells of a row stand below each other, each with its head.
                            if head {
                                html.cell("th scope=\"row\"", &cell);
                            } else {
                                html.cell(&format!("td data-head=\"{}\"", escape(&heads[index])), &cell);
                            }
                        }
                    });
                }
            });
        });
    }

    /// A cell of a table, empty too; what is within is escaped already.
    fn cell(&mut self, opening: &str, within: &str) {
        let name = opening.split(' ').next().unwrap_or(opening);
        let _ = writeln!(self.text, "<{opening}>{within}</{name}>");
    }

    fn begin(&mut self, name: &str, class: &str) {
        let class = if class.is_empty() { String::new() } else { format!(" class=\"{class}\"") };
        let _ = write!(self.text, "<{name}{class}>");
    }

    fn end(&mut self, name: &str) {
        let _ = writeln!(self.text, "</{name}>");
    }
}
