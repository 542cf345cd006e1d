//! HTML written piece by piece: every text escaped, every element closed, well-formed as XML too.

use super::style::STYLE;
use crate::picture::{Spoken, Theme, escape, style_sheet, svg};
use crate::screen::Pictured;
use crate::words::Words;
use std::fmt::Write as _;

/// By this line a page is known to be one of ours, which may be written anew.
pub const GENERATOR: &str = "<meta name=\"generator\" content=\"Pitface\"/>";

/// A page being written.
#[derive(Debug, Default)]
pub(super) struct Html(String);

impl Html {
    /// An element with a class around what `within` writes; an empty class is left out.
    pub fn within(&mut self, name: &str, class: &str, within: impl FnOnce(&mut Self)) {
        self.begin(name, class);
        self.0.push('\n');
        within(self);
        self.end(name);
    }

    /// An element with text; nothing for an empty text.
    pub fn text(&mut self, name: &str, class: &str, text: &str) {
        if !text.is_empty() {
            self.begin(name, class);
            self.0.push_str(&escape(text));
            self.end(name);
        }
    }

    /// A part with a heading and a list; nothing without lines.
    pub fn part(&mut self, heading: &str, lines: &[String]) {
        if !lines.is_empty() {
            self.within("section", "", |html| {
                html.text("h2", "", heading);
                html.list(lines);
            });
        }
    }

    /// A list; nothing without lines.
    pub fn list(&mut self, lines: &[String]) {
        if !lines.is_empty() {
            self.within("ul", "", |html| {
                for line in lines {
                    html.text("li", "", line);
                }
            });
        }
    }

    /// A table; of each row the first cell is its head, if it says something.
    pub fn table(&mut self, caption: &str, heads: &[String], rows: &[Vec<String>]) {
        self.table_of(caption, heads, |html| {
            for row in rows {
                html.within("tr", "", |html| {
                    for (index, cell) in row.iter().enumerate() {
                        if index == 0 && !cell.is_empty() {
                            html.cell("th scope=\"row\"", cell);
                        } else {
                            html.cell_under(&heads[index], cell);
                        }
                    }
                });
            }
        });
    }

    /// The same whose rows each lead to an address of ours: address, name, and the other cells.
    pub fn linked_table<'a>(
        &mut self,
        caption: &str,
        heads: &[String],
        rows: impl Iterator<Item = (&'a str, String, Vec<String>)>,
    ) {
        self.table_of(caption, heads, |html| {
            for (address, name, cells) in rows {
                html.within("tr", "", |html| {
                    let (address, name) = (escape(address), escape(&name));
                    let _ = writeln!(html.0, "<th scope=\"row\"><a href=\"{address}\">{name}</a></th>");
                    for (cell, head) in cells.iter().zip(&heads[1..]) {
                        html.cell_under(head, cell);
                    }
                });
            }
        });
    }

    fn table_of(&mut self, caption: &str, heads: &[String], rows: impl FnOnce(&mut Self)) {
        self.within("table", "", |html| {
            html.text("caption", "", caption);
            html.within("thead", "", |html| {
                html.within("tr", "", |html| {
                    for head in heads {
                        html.cell("th scope=\"col\"", head);
                    }
                });
            });
            html.within("tbody", "", rows);
        });
    }

    /// A cell that knows its head: on a narrow page the cells of a row stand below each other.
    fn cell_under(&mut self, head: &str, text: &str) {
        let _ = writeln!(self.0, "<td data-head=\"{}\">{}</td>", escape(head), escape(text));
    }

    /// A cell of a table, empty too.
    fn cell(&mut self, opening: &str, text: &str) {
        let name = opening.split(' ').next().unwrap_or(opening);
        let _ = writeln!(self.0, "<{opening}>{}</{name}>", escape(text));
    }

    /// A place that a way leads to, around what `within` writes.
    pub fn anchored(&mut self, id: &str, within: impl FnOnce(&mut Self)) {
        let _ = writeln!(self.0, "<div id=\"{}\">", escape(id));
        within(self);
        self.end("div");
    }

    /// A drawing with a line under it; the line may be empty.
    pub fn figure(&mut self, words: &Words, pictured: &Pictured, caption: &str) {
        let spoken = Spoken {
            language: words.language().code(),
            title: &pictured.title,
            description: &pictured.description,
        };
        self.figure_of(&svg(&pictured.drawing, Theme::Page, &spoken), caption);
    }

    /// The same of a drawing that is SVG already; goes in as it is.
    pub fn figure_of(&mut self, svg: &str, caption: &str) {
        self.within("figure", "", |html| {
            html.0.push_str(svg);
            html.text("figcaption", "", caption);
        });
    }

    /// The whole page; its language is that of the words.
    pub fn page(self, words: &Words, title: &str) -> String {
        format!(
            "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\"/>\n\
             <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n{GENERATOR}\n\
             <title>{}</title>\n<style>\n{}{STYLE}</style>\n</head>\n<body>\n<main>\n{}</main>\n</body>\n</html>\n",
            words.language().code(),
            escape(title),
            style_sheet(),
            self.0,
        )
    }

    fn begin(&mut self, name: &str, class: &str) {
        let class = if class.is_empty() { String::new() } else { format!(" class=\"{class}\"") };
        let _ = write!(self.0, "<{name}{class}>");
    }

    fn end(&mut self, name: &str) {
        let _ = writeln!(self.0, "</{name}>");
    }
}
