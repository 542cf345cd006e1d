//! XML of either kind: KML or GPX, by the name of its root.

use super::{Format, Gathered, gpx, kml};
use crate::error::Fault;
use roxmltree::{Document, Node, ParsingOptions};

/// As many elements and texts are read; each takes a few times its own bytes. Our judgement.
const MOST_NODES: u32 = 1_000_000;

/// Elements in elements; the parser goes down one call each, and no program nests deeper. Our judgement.
const DEEPEST: usize = 128;

/// What to do about a file that cannot be followed.
pub(super) const SAVE_ANEW: &str = "save it anew from the program it comes from";

pub(super) fn read(text: &str, gathered: &mut Gathered) -> Result<Format, Fault> {
    if deepest(text) > DEEPEST {
        return Err(Fault::new("", "its elements are nested deeper than any program nests them", SAVE_ANEW));
    }
    // No document type: it could make a small file large, and neither kind has one.
    let options = ParsingOptions { allow_dtd: false, nodes_limit: MOST_NODES };
    let file = Document::parse_with_options(text, options)
        .map_err(|error| Fault::new("", format!("this is no XML that can be read ({error})"), SAVE_ANEW))?;
    let root = file.root_element();
    match root.tag_name().name() {
        "kml" => kml::read(root, gathered).map(|()| Format::Kml),
        "gpx" => gpx::read(root, gathered).map(|()| Format::Gpx),
        other => {
            let other: String = other.chars().take(40).collect();
            let wrong = format!("this is XML of another kind (`{other}`)");
            Err(Fault::new("", wrong, "give KML or GPX, or another kind of file that is read here"))
        }
    }
}

/// The children of a name, whatever their namespace: files in the wild have none, or an old one.
pub(super) fn children<'a, 'input>(
    node: Node<'a, 'input>,
    name: &'static str,
) -> impl Iterator<Item = Node<'a, 'input>> {
    node.children().filter(move |child| child.tag_name().name() == name)
}

/// The text of a child.
pub(super) fn text(node: Node, name: &'static str) -> Option<String> {
    let text = children(node, name).next()?.text()?.trim().to_owned();
    (!text.is_empty()).then_some(text)
}

/// How deep elements are nested, without parsing: of a text that is no XML any number, of one that is at least the right one.
fn deepest(text: &str) -> usize {
    let (mut depth, mut most) = (0_usize, 0);
    let mut rest = text;
    while let Some(at) = rest.find('<') {
        rest = &rest[at + 1..];
        let past = |end: &str| rest.find(end).map_or("", |at| &rest[at + end.len()..]);
        if rest.starts_with("!--") {
            rest = past("-->");
        } else if rest.starts_with("![CDATA[") {
            rest = past("]]>");
        } else if rest.starts_with('/') {
            depth = depth.saturating_sub(1);
        } else if !rest.starts_with(['?', '!']) {
            let end = tag_end(rest);
            if !rest[..end].ends_with('/') {
                depth += 1;
                most = most.max(depth);
            }
            rest = &rest[end..];
        }
    }
    most
}

/// Where the sign stands that ends a tag, past what is in quotes.
fn tag_end(tag: &str) -> usize {
    let mut quote = None;
    for (at, letter) in tag.bytes().enumerate() {
        match (quote, letter) {
            (None, b'>') => return at,
            (None, b'"' | b'\'') => quote = Some(letter),
            (Some(open), _) if open == letter => quote = None,
            _ => {}
        }
    }
    tag.len()
}
