//! A notes file to begin with: sound as it stands, with every key that may be noted beside it as a comment. What the comments say is what the
//! schema says, so that neither can be untrue without the other.

use super::write::lay_out;
use super::{COMMENT, SCHEMA, VERSION};
use serde_json::{Map, Value, json};

/// What the comment at the head says.
const HEAD: &str = "Lengths are whole millimetres, depths count down from the surface. Keys that begin with // are comments: take the \
    // off a key and put what you saw in place of its text. Leave out what nobody looked at; that is never the same as none.";

/// How deep comments go into comments: a pass has after-digs, an after-dig has lists.
const DEEPEST: usize = 4;

/// The text of a notes file for a field of this name.
pub fn starting(name: &str) -> String {
    let schema: Value = serde_json::from_str(SCHEMA).unwrap_or_default();
    let explained = |part: &str, noted: Value| with_comments(&schema, &schema["$defs"][part], noted);
    let pits = [explained("pit", json!({"place": "reference"})), json!({"place": "open"})];
    let mut file = json!({"pitface": VERSION});
    file[COMMENT] = HEAD.into();
    file["field"] = explained("field", json!({"name": name}));
    file["pits"] = pits.to_vec().into();
    let mut text = String::new();
    lay_out(&with_comments(&schema, &schema, file), 0, 0, &mut text);
    text.push('\n');
    text
}

/// An object with what else may be noted in it, as comments.
fn with_comments(schema: &Value, described: &Value, noted: Value) -> Value {
    let Value::Object(mut object) = noted else { return noted };
    for (key, described) in keys(described).filter(|(key, _)| *key != "pitface") {
        // What the file has already explains itself, but for the codes there are.
        let has_text = object.get(key).is_none_or(Value::is_string);
        if has_text {
            object.insert(format!("{COMMENT} {key}"), explained(schema, described, 0));
        }
    }
    object.into()
}

/// The keys of an object but for its id, which is made by itself, each with its description.
fn keys(described: &Value) -> impl Iterator<Item = (&str, &Value)> {
    let keys = described["properties"].as_object().into_iter().flatten();
    keys.map(|(key, described)| (key.as_str(), described)).filter(|(key, _)| *key != "id")
}

/// Returns what may stand under a key: in words, or as an object of words where it is one.
fn explained(schema: &Value, described: &Value, depth: usize) -> Value {
    let meant = meant(schema, described);
    let items = &meant["items"];
    if !items.is_null() && self::meant(schema, items)["properties"].is_object() && depth < DEEPEST {
        return json!([explained(schema, items, depth + 1)]);
    }
    if meant["properties"].is_object() && depth < DEEPEST {
        let keys =
            keys(meant).map(|(key, described)| (key.to_owned(), explained(schema, described, depth + 1)));
        return keys.collect::<Map<_, _>>().into();
    }
    let said = |described: &'_ Value| described["description"].as_str().map(str::to_owned);
    let codes: Vec<&str> = meant["enum"].as_array().into_iter().flatten().filter_map(Value::as_str).collect();
    if codes.is_empty() {
        // Of a day, a time or a place both what is meant and how it is written.
        let both = [said(described), said(meant)].into_iter().flatten();
        let mut both: Vec<String> = both.collect();
        both.dedup();
        return both.join(" ").into();
    }
    let own = said(described).or_else(|| said(meant)).unwrap_or_default();
    format!("{own} One of: {}.", codes.join(", ")).into()
}

/// Returns what a reference points to.
fn meant<'a>(schema: &'a Value, described: &'a Value) -> &'a Value {
    let name = described["$ref"].as_str().and_then(|link| link.strip_prefix("#/$defs/"));
    name.map_or(described, |name| &schema["$defs"][name])
}

#[cfg(test)]
#[allow(clippy::unwrap_used, reason = "a test may fail")]
mod tests {
    use super::*;
    use crate::record::RecordId;
    use crate::record::notes::{read, write};

    fn read_again(text: &str) -> (Vec<String>, String) {
        let mut count = 0;
        let read = read(text, &mut || {
            count += 1;
            RecordId::new(count, [0; 10])
        });
        let read = read.unwrap();
        (read.unknown_keys, write(&read.notes))
    }

    #[test]
    fn it_is_sound_and_its_comments_are_kept_and_not_told() {
        let text = starting("Long Sedge");
        let (unknown_keys, again) = read_again(&text);
        assert_eq!(unknown_keys, [] as [&str; 0]);
        assert!(again.contains("\"// drains_mm\": \"Depth to the top of the pipe drains"), "{again}");
    }

    #[test]
    fn it_names_every_key_there_is() {
        fn all_keys(value: &Value, found: &mut Vec<String>) {
            if let Some(properties) = value["properties"].as_object() {
                found.extend(properties.keys().filter(|key| *key != "id").cloned());
            }
            let inner = value.as_object().into_iter().flat_map(Map::values);
            inner.chain(value.as_array().into_iter().flatten()).for_each(|inner| all_keys(inner, found));
        }
        let (text, mut keys) = (starting("Long Sedge"), Vec::new());
        all_keys(&serde_json::from_str(SCHEMA).unwrap(), &mut keys);
        assert!(keys.len() > 80, "{}", keys.len());
        for key in keys {
            assert!(
                text.contains(&format!("\"{key}\":")) || text.contains(&format!("\"// {key}\":")),
                "{key}"
            );
        }
    }
}
