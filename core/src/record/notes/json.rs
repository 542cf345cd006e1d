//! From text to JSON values, with the place of what is malformed. A key given twice would silently lose the
//! first of the two, so it is a fault.

use crate::error::Fault;
use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Map, Value};
use std::cell::RefCell;
use std::fmt;

/// Parses a text, byte order mark tolerated.
///
/// # Errors
/// The first place where it is not JSON, or every key that stands twice.
pub fn parse(text: &str) -> Result<Value, Vec<Fault>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        let todo = "write one object: {\"pitface\": 1, \"field\": {…}, \"pits\": […]}";
        return Err(vec![Fault::new("", "the file is empty", todo)]);
    }
    let twice = RefCell::new(Vec::new());
    let mut parser = serde_json::Deserializer::from_str(text);
    let value = Seed { at: String::new(), twice: &twice }
        .deserialize(&mut parser)
        .and_then(|value| parser.end().map(|()| value))
        .map_err(|error| vec![malformed(&error, text)])?;
    let twice = twice.into_inner();
    if twice.is_empty() { Ok(value) } else { Err(twice) }
}

/// Place of a key in the object at a place.
pub fn below(at: &str, key: &str) -> String {
    if at.is_empty() { key.to_owned() } else { format!("{at}.{key}") }
}

/// What to do about malformed JSON: a part of the parser's message, or the character it met, and the advice.
const ADVICE: [(&str, char, &str); 11] = [
    ("trailing comma", '\0', "remove the comma before the closing bracket"),
    ("trailing characters", '\0', "end the file with the brace that closes its one object"),
    ("EOF", '\0', "the file ends too early: close what is open, or fetch the whole file again"),
    ("", '\'', "write text in double quotes"),
    ("", '/', "JSON knows no comments: remove it"),
    ("", '#', "JSON knows no comments: remove it"),
    ("key must be a string", '\0', "write each key in double quotes"),
    (
        "expected `,`",
        '\0',
        "put a comma between what stands before and what follows; no unit stands behind a number",
    ),
    ("control character", '\0', "close the text with a double quote on the same line"),
    ("expected value", '\0', "write a number, a text in double quotes, true, false, a list or an object"),
    ("recursion limit", '\0', "nest lists and objects less deep"),
];

fn malformed(error: &serde_json::Error, text: &str) -> Fault {
    let message = error.to_string();
    let wrong = message.split(" at line ").next().unwrap_or_default();
    let met = text
        .lines()
        .nth(error.line().saturating_sub(1))
        .and_then(|line| line.get(error.column().saturating_sub(1)..)?.chars().next());
    let todo = ADVICE
        .iter()
        .find(
            |(part, character, _)| {
                if part.is_empty() { met == Some(*character) } else { wrong.contains(part) }
            },
        )
        .map_or("mend the text there", |(_, _, advice)| advice);
    // A line break where none may be is counted to the line it opens.
    let at = match error.column() {
        0 => format!("end of line {}", error.line().saturating_sub(1)),
        column => format!("line {}, column {column}", error.line()),
    };
    Fault::new(at, format!("this is not JSON: {wrong}"), todo)
}

/// Builds a value and notes the keys that stand twice.
struct Seed<'a> {
    at: String,
    twice: &'a RefCell<Vec<Fault>>,
}

impl<'de> DeserializeSeed<'de> for Seed<'_> {
    type Value = Value;

    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Seed<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }

    fn visit_unit<E: Error>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E: Error>(self, value: bool) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_u64<E: Error>(self, value: u64) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_str<E: Error>(self, value: &str) -> Result<Value, E> {
        Ok(value.into())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Value, A::Error> {
        let mut values = Vec::new();
        let seed = |index| Seed { at: format!("{}[{index}]", self.at), twice: self.twice };
        while let Some(value) = list.next_element_seed(seed(values.len()))? {
            values.push(value);
        }
        Ok(values.into())
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Value, A::Error> {
        let mut map = Map::new();
        while let Some(key) = object.next_key::<String>()? {
            let at = below(&self.at, &key);
            let value = object.next_value_seed(Seed { at: at.clone(), twice: self.twice })?;
            if map.insert(key, value).is_some() {
                let fault =
                    Fault::new(at, "this key stands twice in its object", "keep one, or merge the two");
                self.twice.borrow_mut().push(fault);
            }
        }
        Ok(map.into())
    }
}
