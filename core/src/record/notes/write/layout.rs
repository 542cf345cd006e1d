//! How a JSON value is laid out: short things on one line.

use serde_json::Value;

/// Widest line, save where one value alone is wider.
const WIDTH: usize = 120;
/// Spaces a level.
const INDENT: usize = 2;

/// Writes a value: on one line where it fits behind what stands there already, else its members a line each.
pub fn lay_out(value: &Value, level: usize, used: usize, text: &mut String) {
    let mut line = String::new();
    one_line(value, &mut line);
    let (open, close, members): (char, char, Vec<(String, &Value)>) = match value {
        Value::Array(list) if !list.is_empty() => {
            ('[', ']', list.iter().map(|member| (String::new(), member)).collect())
        }
        Value::Object(map) if !map.is_empty() => {
            ('{', '}', map.iter().map(|(key, member)| (quoted(key), member)).collect())
        }
        _ => return text.push_str(&line),
    };
    if level > 0 && used + line.chars().count() <= WIDTH {
        return text.push_str(&line);
    }
    let inner = (level + 1) * INDENT;
    text.push(open);
    for (place, (key, member)) in members.into_iter().enumerate() {
        text.push_str(if place == 0 { "\n" } else { ",\n" });
        text.push_str(&" ".repeat(inner));
        text.push_str(&key);
        lay_out(member, level + 1, inner + key.chars().count(), text);
    }
    text.push('\n');
    text.push_str(&" ".repeat(level * INDENT));
    text.push(close);
}

fn quoted(key: &str) -> String {
    format!("{}: ", Value::from(key))
}

fn one_line(value: &Value, text: &mut String) {
    match value {
        Value::Array(list) => {
            text.push('[');
            for (place, member) in list.iter().enumerate() {
                text.push_str(if place == 0 { "" } else { ", " });
                one_line(member, text);
            }
            text.push(']');
        }
        Value::Object(map) => {
            text.push('{');
            for (place, (key, member)) in map.iter().enumerate() {
                text.push_str(if place == 0 { "" } else { ", " });
                text.push_str(&quoted(key));
                one_line(member, text);
            }
            text.push('}');
        }
        other => text.push_str(&other.to_string()),
    }
}
