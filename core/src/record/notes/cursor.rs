//! Takes values out of a JSON object one key at a time, and remembers where each fault stands.

use crate::error::Fault;
use crate::record::codes::Coded;
use crate::record::{RecordId, Unknown};
use chrono::{DateTime, FixedOffset, NaiveDate};
use serde_json::{Map, Value};
use std::collections::HashSet;
use std::ops::RangeInclusive;

/// What is gathered while a file is read.
pub struct Gathered<'a> {
    /// Every fault found.
    pub faults: Vec<Fault>,
    /// Places of unknown keys.
    pub unknown_keys: Vec<String>,
    new_id: &'a mut dyn FnMut() -> RecordId,
    ids: HashSet<RecordId>,
}

impl<'a> Gathered<'a> {
    /// Nothing yet; `new_id` makes the ids the file lacks.
    pub fn new(new_id: &'a mut dyn FnMut() -> RecordId) -> Self {
        Self { faults: Vec::new(), unknown_keys: Vec::new(), new_id, ids: HashSet::new() }
    }

    /// Notes a fault.
    pub fn fault(&mut self, at: impl Into<String>, wrong: impl Into<String>, todo: impl Into<String>) {
        self.faults.push(Fault::new(at, wrong, todo));
    }

    /// A new id for a record the file gives none.
    pub fn new_id(&mut self) -> RecordId {
        (self.new_id)()
    }
}

/// One JSON object at its place.
pub struct Cursor {
    place: String,
    left: Map<String, Value>,
}

/// How a value is called when it is not what was wanted.
fn sort_of(value: &Value) -> String {
    match value {
        Value::Null => "nothing".into(),
        Value::Bool(value) => format!("{value}"),
        Value::Number(number) => format!("{number}"),
        Value::String(text) => format!("\"{text}\""),
        Value::Array(_) => "a list".into(),
        Value::Object(_) => "an object".into(),
    }
}

impl Cursor {
    /// A cursor over an object; a fault where it is none.
    pub fn new(value: Value, place: &str, gathered: &mut Gathered) -> Option<Self> {
        if let Value::Object(left) = value {
            return Some(Self { place: place.into(), left });
        }
        gathered.fault(place, format!("{} stands where an object belongs", sort_of(&value)), "write { … }");
        None
    }

    /// Place of a key below this object.
    pub fn at(&self, key: &str) -> String {
        if self.place.is_empty() { key.into() } else { format!("{}.{key}", self.place) }
    }

    /// Whether a key is there and not `null`.
    pub fn has(&self, key: &str) -> bool {
        self.left.get(key).is_some_and(|value| !value.is_null())
    }

    /// Takes a key as it is; `null` counts as absent.
    pub fn take(&mut self, key: &str) -> Option<Value> {
        self.left.shift_remove(key).filter(|value| !value.is_null())
    }

    /// Takes a key that must be there.
    pub fn need(&mut self, key: &str, what: &str, gathered: &mut Gathered) -> Option<Value> {
        let value = self.take(key);
        if value.is_none() {
            gathered.fault(self.at(key), format!("{what} is missing"), format!("give \"{key}\""));
        }
        value
    }

    /// Takes a list of objects, empty where the key is absent.
    pub fn list(&mut self, key: &str, gathered: &mut Gathered) -> Vec<Self> {
        let place = self.at(key);
        match self.take(key) {
            None => Vec::new(),
            Some(Value::Array(values)) => values
                .into_iter()
                .enumerate()
                .filter_map(|(index, value)| Self::new(value, &format!("{place}[{index}]"), gathered))
                .collect(),
            Some(other) => {
                gathered.fault(
                    place,
                    format!("{} stands where a list belongs", sort_of(&other)),
                    "write [ … ]",
                );
                Vec::new()
            }
        }
    }

    /// Takes a value of a closed list.
    pub fn code<T: Coded>(&mut self, key: &str, gathered: &mut Gathered) -> Option<T> {
        let value = self.take(key)?;
        let found = value.as_str().and_then(T::from_code);
        if found.is_none() {
            let near = value.as_str().and_then(|text| nearest(text, T::CODES));
            let todo = match near {
                Some(code) => format!("did you mean \"{code}\"? It is one of {}", T::CODES.join(", ")),
                None => format!("use one of {}", T::CODES.join(", ")),
            };
            gathered.fault(self.at(key), format!("{} is no known answer", sort_of(&value)), todo);
        }
        found
    }

    /// Takes a length in whole millimetres within a range.
    pub fn mm(&mut self, key: &str, range: &RangeInclusive<u32>, gathered: &mut Gathered) -> Option<u32> {
        let value = self.take(key)?;
        let number = value.as_f64();
        let whole =
            number.filter(|number| number.fract() == 0.0 && *number >= 0.0).map(|number| number as u32);
        if let Some(length_mm) = whole.filter(|length_mm| range.contains(length_mm)) {
            return Some(length_mm);
        }
        let found = sort_of(&value);
        let (wrong, todo) = match number {
            None => {
                (format!("{found} is no number"), "give whole millimetres, without quotes or unit".into())
            }
            Some(number) if number < 0.0 => (
                format!("{found} mm lies above the surface"),
                "depths and widths count from 0 upwards".into(),
            ),
            Some(number) if number.fract() != 0.0 => {
                (format!("{found} is not a whole number of millimetres"), "round it".into())
            }
            Some(number) => (
                format!("{found} mm is not between {} and {} mm", range.start(), range.end()),
                unit_guess(number, range),
            ),
        };
        gathered.fault(self.at(key), wrong, todo);
        None
    }

    /// Takes a number within a range.
    pub fn number(
        &mut self,
        key: &str,
        range: &RangeInclusive<f64>,
        unit: &str,
        gathered: &mut Gathered,
    ) -> Option<f64> {
        let value = self.take(key)?;
        let number = value.as_f64().filter(|number| range.contains(number));
        if number.is_none() {
            let wrong =
                format!("{} is not a number between {} and {}", sort_of(&value), range.start(), range.end());
            gathered.fault(self.at(key), wrong, format!("give {unit} as a number"));
        }
        number
    }

    /// Takes a text that is not empty.
    pub fn text(&mut self, key: &str, gathered: &mut Gathered) -> Option<String> {
        let value = self.take(key)?;
        match value.as_str().map(str::trim) {
            Some(text) if !text.is_empty() => Some(text.into()),
            _ => {
                gathered.fault(
                    self.at(key),
                    format!("{} is no text", sort_of(&value)),
                    "write words in quotes",
                );
                None
            }
        }
    }

    /// Takes true or false.
    pub fn boolean(&mut self, key: &str, gathered: &mut Gathered) -> Option<bool> {
        let value = self.take(key)?;
        if value.as_bool().is_none() {
            gathered.fault(
                self.at(key),
                format!("{} is neither true nor false", sort_of(&value)),
                "write true or false",
            );
        }
        value.as_bool()
    }

    /// Takes a day.
    pub fn date(&mut self, key: &str, gathered: &mut Gathered) -> Option<NaiveDate> {
        let value = self.take(key)?;
        let date = value.as_str().and_then(|text| NaiveDate::parse_from_str(text, "%Y-%m-%d").ok());
        if date.is_none() {
            let todo = "write year-month-day as in \"2026-09-12\" (ISO 8601)";
            gathered.fault(self.at(key), format!("{} is no day", sort_of(&value)), todo);
        }
        date
    }

    /// Takes a time with its offset.
    pub fn time(&mut self, key: &str, gathered: &mut Gathered) -> Option<DateTime<FixedOffset>> {
        let value = self.take(key)?;
        let time = value.as_str().and_then(|text| DateTime::parse_from_rfc3339(text).ok());
        if time.is_none() {
            let todo = "write it with its offset as in \"2026-09-12T10:30:00+01:00\" (ISO 8601)";
            gathered.fault(self.at(key), format!("{} is no time", sort_of(&value)), todo);
        }
        time
    }

    /// Takes the record's id, or makes one.
    pub fn id(&mut self, gathered: &mut Gathered) -> RecordId {
        let Some(value) = self.take("id") else { return gathered.new_id() };
        match value.as_str().and_then(RecordId::parse) {
            Some(id) if gathered.ids.insert(id) => id,
            Some(id) => {
                gathered.fault(
                    self.at("id"),
                    format!("{id} is the id of two records"),
                    "leave one of them out",
                );
                id
            }
            None => {
                let todo = "leave it out, or give a UUID of version 7";
                gathered.fault(self.at("id"), format!("{} is no id", sort_of(&value)), todo);
                gathered.new_id()
            }
        }
    }

    /// What is left: unknown keys, reported and kept.
    pub fn rest(self, gathered: &mut Gathered) -> Unknown {
        gathered.unknown_keys.extend(self.left.keys().map(|key| self.at(key)));
        self.left
    }
}

/// Which unit was meant, where another one would fit the range.
fn unit_guess(number: f64, range: &RangeInclusive<u32>) -> String {
    let fits =
        |mm: f64| mm.fract() == 0.0 && mm >= f64::from(*range.start()) && mm <= f64::from(*range.end());
    let (low, high) = (f64::from(*range.start()), f64::from(*range.end()));
    if number < low && fits(number * 10.0) {
        return format!("if {number} cm was meant, write {}", number * 10.0);
    }
    if number > high && fits(number / 10.0) {
        return format!(
            "a length in tenths of a millimetre? {number} mm is {} m; check the unit",
            number / 1000.0
        );
    }
    "check the unit: lengths are whole millimetres".into()
}

/// The code most like a text, where it is close enough to be a slip.
fn nearest(text: &str, codes: &[&'static str]) -> Option<&'static str> {
    let plain = text.trim().to_lowercase().replace([' ', '-'], "_");
    let best = codes.iter().map(|code| (slips(&plain, code), *code)).min()?;
    (best.0 <= 2 && best.0 < best.1.len()).then_some(best.1)
}

/// Letters to add, drop or change to get from one word to the other (Levenshtein 1966).
fn slips(from: &str, to: &str) -> usize {
    let to: Vec<char> = to.chars().collect();
    let mut row: Vec<usize> = (0..=to.len()).collect();
    for (at, letter) in from.chars().enumerate() {
        let mut corner = row[0];
        row[0] = at + 1;
        for (column, other) in to.iter().enumerate() {
            let changed = corner + usize::from(letter != *other);
            corner = row[column + 1];
            row[column + 1] = changed.min(corner + 1).min(row[column] + 1);
        }
    }
    row[to.len()]
}
