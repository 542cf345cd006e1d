//! The tags of a PDF: what each piece of a leaf is, in the order it is read.

use krilla::tagging::{BBox, Identifier, Node, TagGroup, TagKind, TagTree};

/// The number of a tag.
pub type TagNumber = usize;

/// All tags; those of the highest rank have none above them.
#[derive(Default)]
pub struct Tree {
    tags: Vec<Tag>,
    top: Vec<TagNumber>,
}

struct Tag {
    kind: TagKind,
    under: Vec<TagNumber>,
    marks: Vec<Identifier>,
}

impl Tree {
    /// A tag under another, or of the highest rank.
    pub fn add(&mut self, above: Option<TagNumber>, kind: impl Into<TagKind>) -> TagNumber {
        let number = self.tags.len();
        self.tags.push(Tag { kind: kind.into(), under: Vec::new(), marks: Vec::new() });
        match above {
            Some(above) => self.tags[above].under.push(number),
            None => self.top.push(number),
        }
        number
    }

    /// How far it has come, to go back to.
    pub fn mark(&self) -> (usize, usize) {
        (self.tags.len(), self.top.len())
    }

    /// Forgets the parts of the highest rank since a mark.
    pub fn back_to(&mut self, (tags, top): (usize, usize)) {
        self.tags.truncate(tags);
        self.top.truncate(top);
    }

    /// Something drawn belongs to a tag.
    pub fn drawn(&mut self, tag: TagNumber, mark: Identifier) {
        self.tags[tag].marks.push(mark);
    }

    /// A figure stands here.
    pub fn stands(&mut self, tag: TagNumber, at: BBox) {
        if let TagKind::Figure(figure) = &mut self.tags[tag].kind {
            figure.set_bbox(Some(at));
        }
    }

    /// The tags as the writer takes them.
    pub fn written(mut self, language: &str) -> TagTree {
        let mut tree = TagTree::new().with_lang(Some(language.to_owned()));
        for number in std::mem::take(&mut self.top) {
            tree.push(self.group(number));
        }
        tree
    }

    fn group(&mut self, number: TagNumber) -> TagGroup {
        let Tag { kind, under, marks } = &mut self.tags[number];
        let (under, marks) = (std::mem::take(under), std::mem::take(marks));
        let mut children: Vec<Node> = marks.into_iter().map(Node::from).collect();
        let kind = kind.clone();
        children.extend(under.into_iter().map(|number| Node::from(self.group(number))));
        TagGroup::with_children(kind, children)
    }
}
