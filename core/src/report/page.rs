//! One page that needs nothing else: no script, nothing fetched, readable on a phone, in the dark and on paper.

use crate::picture::{escape, style_sheet};
use std::fmt::Write as _;

/// A page; every string comes in ready and is escaped here, save the drawings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// Language of the words, as in BCP 47 (`en`, `de`).
    pub language: String,
    /// Title.
    pub title: String,
    /// Paragraphs under the title.
    pub lead: Vec<String>,
    /// What the page is made of, in order.
    pub entries: Vec<PageEntry>,
    /// Small print at the end.
    pub closing: Vec<String>,
}

/// One entry, such as a field or a zone of it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PageEntry {
    /// What it is about.
    pub heading: String,
    /// What matters, in one sentence, set large.
    pub sentence: String,
    /// Further paragraphs under the sentence.
    pub paragraphs: Vec<String>,
    /// Drawings.
    pub figures: Vec<Figure>,
    /// What follows the drawings: reasons for and against, cautions, what would change it.
    pub sections: Vec<Section>,
}

/// A drawing on a page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure {
    /// The drawing as [`crate::picture::svg`] writes it; in [`crate::picture::Theme::Page`] it follows the page
    /// into the dark and onto paper. Goes in as it is.
    pub svg: String,
    /// Line under it; may be empty.
    pub caption: String,
}

/// A list under a heading of its own; left out when it has no lines.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Section {
    /// Heading; may be empty.
    pub heading: String,
    /// Lines.
    pub lines: Vec<String>,
}

/// Colours come from the drawings' style sheet. On paper the print colours hold and an entry's drawing stays whole.
const STYLE: &str = "\
*{box-sizing:border-box}\n\
body{margin:0 auto;max-width:44rem;padding:1rem;background:var(--paper);color:var(--ink);\
font:1.0625rem/1.5 system-ui,sans-serif;overflow-wrap:break-word;-webkit-text-size-adjust:100%;text-size-adjust:100%}\n\
h1{font-size:1.6rem;line-height:1.2;margin:.5rem 0 1rem}\n\
h2{font-size:1.2rem;line-height:1.3;margin:0 0 .5rem}\n\
h3{font-size:1rem;margin:1.25rem 0 .25rem}\n\
p{margin:0 0 .5rem}\n\
article{border-top:2px solid var(--ink);padding:1.25rem 0 1.5rem}\n\
.sentence{font-size:1.375rem;line-height:1.35;font-weight:600;margin:0 0 .75rem}\n\
figure{margin:1rem 0}\n\
figure svg{display:block;width:100%;max-width:30rem;height:auto}\n\
figcaption,.closing{color:var(--faint_ink);font-size:.9375rem}\n\
ul{margin:0;padding:0 0 0 1.25rem}\n\
li{margin:.25rem 0}\n\
@media (max-width:30rem){figure{margin:1rem -1rem}figcaption{padding:0 1rem}}\n\
@media print{body{max-width:none;padding:0;font-size:11pt}article{padding:1rem 0}\
figure,.sentence,li{break-inside:avoid}h2,h3{break-after:avoid}figure svg{max-width:11cm}}\n";

/// By this line a page is known to be one of ours, which may be written anew.
pub const GENERATOR: &str = "<meta name=\"generator\" content=\"Pitface\"/>";

/// Writes a page as HTML that is also well-formed XML.
pub fn page(page: &Page) -> String {
    let mut out = format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\"/>\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\"/>\n{GENERATOR}\n\
         <title>{}</title>\n<style>\n{}{STYLE}</style>\n</head>\n<body>\n<main>\n",
        escape(&page.language),
        escape(&page.title),
        style_sheet(),
    );
    element(&mut out, "h1", "", &page.title);
    page.lead.iter().for_each(|text| element(&mut out, "p", "", text));
    page.entries.iter().for_each(|one| entry(&mut out, one));
    out.push_str("</main>\n");
    if !page.closing.is_empty() {
        out.push_str("<footer class=\"closing\">\n");
        page.closing.iter().for_each(|text| element(&mut out, "p", "", text));
        out.push_str("</footer>\n");
    }
    out.push_str("</body>\n</html>\n");
    out
}

fn entry(out: &mut String, entry: &PageEntry) {
    out.push_str("<article>\n");
    element(out, "h2", "", &entry.heading);
    element(out, "p", "sentence", &entry.sentence);
    entry.paragraphs.iter().for_each(|text| element(out, "p", "", text));
    for figure in &entry.figures {
        let _ = writeln!(out, "<figure>\n{}", figure.svg.trim_end());
        element(out, "figcaption", "", &figure.caption);
        out.push_str("</figure>\n");
    }
    for section in entry.sections.iter().filter(|section| !section.lines.is_empty()) {
        element(out, "h3", "", &section.heading);
        out.push_str("<ul>\n");
        section.lines.iter().for_each(|text| element(out, "li", "", text));
        out.push_str("</ul>\n");
    }
    out.push_str("</article>\n");
}

/// An element with text; nothing for an empty text.
fn element(out: &mut String, name: &str, class: &str, text: &str) {
    if text.is_empty() {
        return;
    }
    let class = if class.is_empty() { String::new() } else { format!(" class=\"{class}\"") };
    let _ = writeln!(out, "<{name}{class}>{}</{name}>", escape(text));
}
