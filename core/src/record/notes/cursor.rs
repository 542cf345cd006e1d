//! Goes through a file's objects key by key, knows at every moment where it stands, and gathers what is wrong.

use super::COMMENT;
use super::json::below;
use super::value::Node;
use crate::error::Fault;
use crate::record::{RecordId, Unknown};
use serde_json::Value;
use std::cell::RefCell;
use std::collections::HashMap;
use std::mem;

/// What is gathered while a file is read.
struct Gathered<'a> {
    faults: Vec<Fault>,
    unknown_keys: Vec<String>,
    ids: HashMap<RecordId, String>,
    new_id: &'a mut dyn FnMut() -> RecordId,
}

/// The gathering, shared by everything that goes through the same file.
pub struct Book<'a>(RefCell<Gathered<'a>>);

impl<'a> Book<'a> {
    /// An empty one; `new_id` makes the ids that the file lacks.
    pub fn new(new_id: &'a mut dyn FnMut() -> RecordId) -> Self {
        let (faults, unknown_keys, ids) = (Vec::new(), Vec::new(), HashMap::new());
        Self(RefCell::new(Gathered { faults, unknown_keys, ids, new_id }))
    }

    /// Notes a fault.
    pub fn fault(&self, at: impl Into<String>, wrong: impl Into<String>, todo: impl Into<String>) {
        self.0.borrow_mut().faults.push(Fault::new(at, wrong, todo));
    }

    /// All faults and the places of all unknown keys.
    pub fn close(&self) -> (Vec<Fault>, Vec<String>) {
        let gathered = &mut *self.0.borrow_mut();
        (mem::take(&mut gathered.faults), mem::take(&mut gathered.unknown_keys))
    }

    fn new_id(&self) -> RecordId {
        (self.0.borrow_mut().new_id)()
    }

    /// Claims an id for the record at a place; the place that has it already, if any.
    fn claim(&self, id: RecordId, at: &str) -> Option<String> {
        self.0.borrow_mut().ids.insert(id, at.to_owned())
    }
}

/// One object of the file; its keys are taken out one by one, and what is left at the end is unknown.
pub struct Object<'a> {
    /// Where it stands.
    pub at: String,
    left: Unknown,
    book: &'a Book<'a>,
}

impl<'a> Object<'a> {
    /// An object at its place.
    pub fn new(at: String, left: Unknown, book: &'a Book<'a>) -> Self {
        Self { at, left, book }
    }

    /// Place of one of its keys.
    pub fn below(&self, key: &str) -> String {
        below(&self.at, key)
    }

    /// Returns whether the key is there.
    pub fn has(&self, key: &str) -> bool {
        self.left.contains_key(key)
    }

    /// Takes what stands under a key. `null` is a fault: it may mean "not looked" as well as "none".
    pub fn take(&mut self, key: &str) -> Option<Node<'a>> {
        let value = self.left.shift_remove(key)?;
        let at = self.below(key);
        if value.is_null() {
            let todo =
                "leave the key out where nobody looked; where there was none to see, use the word for it";
            self.book.fault(at, "`null` does not tell \"not looked\" from \"none\"", todo);
            return None;
        }
        Some(Node::new(at, value, self.book))
    }

    /// Takes what must be there; `what` says what is missing.
    pub fn need(&mut self, key: &str, what: &str) -> Option<Node<'a>> {
        if !self.has(key) {
            self.book.fault(self.below(key), format!("{what} is missing"), format!("add the key \"{key}\""));
        }
        self.take(key)
    }

    /// Takes a list of objects; empty where the key is absent.
    pub fn objects(&mut self, key: &str) -> Vec<Self> {
        let nodes = self.take(key).map(Node::list).unwrap_or_default();
        nodes.into_iter().filter_map(Node::object).collect()
    }

    /// How many members the list under a key has, 0 without the key; `None` where no list stands there.
    pub fn count(&self, key: &str) -> Option<usize> {
        self.left.get(key).map_or(Some(0), |value| value.as_array().map(Vec::len))
    }

    /// Takes the record's id, or makes one.
    pub fn id(&mut self) -> RecordId {
        let at = self.below("id");
        let Some(id) = self.take("id").and_then(Node::id) else { return self.book.new_id() };
        if let Some(first) = self.book.claim(id, &at) {
            let todo = "leave one of the two out: a new one is given to that record";
            self.book.fault(at, format!("{id} is also the id at {first}"), todo);
        }
        id
    }

    /// Returns what is left: unknown keys, reported unless they are comments, and kept.
    pub fn rest(self) -> Unknown {
        let told = self.left.keys().filter(|key| !key.starts_with(COMMENT));
        let places = told.map(|key| self.below(key));
        self.book.0.borrow_mut().unknown_keys.extend(places);
        self.left
    }
}

/// Returns what a value is, in a few words.
pub fn found(value: &Value) -> String {
    match value {
        Value::Array(_) => "a list".into(),
        Value::Object(_) => "an object".into(),
        Value::String(text) if text.chars().count() > 60 => {
            format!("`{}…`", text.chars().take(60).collect::<String>())
        }
        Value::String(text) => format!("`{text}`"),
        Value::Null | Value::Bool(_) | Value::Number(_) => format!("`{value}`"),
    }
}
