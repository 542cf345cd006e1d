//! Single values: what each may be, and what is said where it is something else.

use super::cursor::{Book, Object, found};
use super::guess::nearest;
use super::length::{self, Length};
use crate::harmless::wrong_with_name;
use crate::record::{PhotoMark, RecordId, remark};
use chrono::{DateTime, Datelike, FixedOffset, NaiveDate};
use serde_json::Value;
use std::ops::RangeInclusive;

/// A value at its place.
pub struct Node<'a> {
    /// Where it stands.
    pub at: String,
    /// What stands there.
    pub value: Value,
    book: &'a Book<'a>,
}

/// Years that a date of a field can have; a year with a digit missing is outside. Our judgement.
const YEARS: RangeInclusive<i32> = 1900..=2199;

/// Fastest speed believed of a machine that loosens, as its record has it.
const FASTEST_KMH: f64 = 20.0;
/// Speeds that a guess at the unit must land in. Our judgement.
const USUAL_KMH: RangeInclusive<f64> = 2.0..=15.0;
/// Other units of speed that give numbers above [`FASTEST_KMH`], each with its km/h.
const OTHER_SPEEDS: [(&str, f64); 2] = [("m/min", 0.06), ("m/h", 0.001)];

impl<'a> Node<'a> {
    /// A value at its place.
    pub fn new(at: String, value: Value, book: &'a Book<'a>) -> Self {
        Self { at, value, book }
    }

    /// Notes what is wrong with it.
    pub fn fault(&self, wrong: impl Into<String>, todo: impl Into<String>) {
        self.book.fault(self.at.clone(), wrong, todo);
    }

    /// An object.
    pub fn object(self) -> Option<Object<'a>> {
        match self.value {
            Value::Object(map) => Some(Object::new(self.at, map, self.book)),
            other => {
                let wrong = format!("{} stands where an object belongs", found(&other));
                self.book.fault(self.at, wrong, "write {\"key\": value, …}");
                None
            }
        }
    }

    /// A list, its members each at their place; empty after a fault.
    pub fn list(self) -> Vec<Self> {
        match self.value {
            Value::Array(values) => {
                let member = |(index, value)| Self::new(format!("{}[{index}]", self.at), value, self.book);
                values.into_iter().enumerate().map(member).collect()
            }
            other => {
                let wrong = format!("{} stands where a list belongs", found(&other));
                self.book.fault(self.at, wrong, "write […], also around a single one");
                Vec::new()
            }
        }
    }

    /// A value of a closed list.
    pub fn choice<T: Copy>(self, codes: &'static [&'static str], values: &[T]) -> Option<T> {
        let word = self.value.as_str();
        let place = word.and_then(|word| codes.iter().position(|code| *code == word));
        if place.is_none() {
            self.not_one_of(codes);
        }
        place.and_then(|place| values.get(place).copied())
    }

    /// Notes that it is not one of a list's codes.
    pub fn not_one_of(&self, codes: &[&'static str]) {
        let meant = self.value.as_str().and_then(|word| nearest(word, codes));
        let meant = meant.map_or(String::new(), |code| format!("did you mean {code}? "));
        let wrong = format!("{} is not one of the known codes", found(&self.value));
        self.fault(wrong, format!("{meant}use one of: {}", codes.join(", ")));
    }

    /// A length in whole millimetres.
    pub fn mm(self, length: &Length) -> Option<u32> {
        let taken = match &self.value {
            Value::Number(number) => length.take(number),
            other => Err((format!("{} is not a number", found(other)), NUMBER_ONLY.into())),
        };
        taken.map_err(|(wrong, todo)| self.fault(wrong, todo)).ok()
    }

    /// A whole number of at least one.
    pub fn count(self, what: &str) -> Option<u64> {
        let count = self.value.as_u64().filter(|count| *count > 0);
        if count.is_none() {
            self.fault(format!("{} is not {what}", found(&self.value)), "write a whole number above 0");
        }
        count
    }

    /// Lengths in whole millimetres; none where one of them is wrong.
    pub fn all_mm(self, length: &Length) -> Option<Vec<u32>> {
        let read: Vec<Option<u32>> = self.list().into_iter().map(|node| node.mm(length)).collect();
        read.into_iter().collect()
    }

    /// A speed over the ground in km/h.
    pub fn speed_kmh(self) -> Option<f64> {
        let number = self.value.as_f64();
        let speed = number.filter(|kmh| *kmh > 0.0 && *kmh <= FASTEST_KMH);
        if speed.is_none() {
            let meant = number.and_then(|number| {
                OTHER_SPEEDS.iter().find_map(|(unit, kmh)| {
                    let meant = (number * kmh * 10.0).round() / 10.0;
                    USUAL_KMH
                        .contains(&meant)
                        .then(|| format!("did you mean {meant}, from {number} {unit}? "))
                })
            });
            let wrong = format!("{} is not a speed of such work", found(&self.value));
            let most = "write km/h as a bare number, above 0 and up to 20";
            self.fault(wrong, format!("{}{most}", meant.unwrap_or_default()));
        }
        speed
    }

    /// The power of an engine in kW.
    pub fn power_kw(self) -> Option<f64> {
        let power = self.value.as_f64();
        if power.is_none() {
            self.fault(format!("{} is not a power", found(&self.value)), "write kW as a bare number");
        }
        power
    }

    /// A radius in metres.
    pub fn radius_m(self) -> Option<f64> {
        let radius_m = self.value.as_f64().filter(|radius_m| *radius_m > 0.0);
        if radius_m.is_none() {
            let todo = "write metres as a number above 0, or leave it out where it is not known";
            self.fault(format!("{} is not a radius", found(&self.value)), todo);
        }
        radius_m
    }

    /// A text that says something.
    pub fn text(self) -> Option<String> {
        self.text_or("write it, or leave the key out")
    }

    /// A text that must be there and say something.
    pub fn needed_text(self) -> Option<String> {
        self.text_or("write what belongs there")
    }

    fn text_or(self, todo: &str) -> Option<String> {
        match self.value.as_str() {
            Some(text) if !text.trim().is_empty() => match wrong_with_name(text) {
                None => return Some(text.into()),
                Some(wrong) => self.fault(wrong, "write it shorter, on one line"),
            },
            Some(_) => self.fault("the text is empty", todo),
            None => {
                self.fault(format!("{} is not a text", found(&self.value)), "write words in double quotes");
            }
        }
        None
    }

    /// Returns what else is to be said of a record.
    pub fn remark(self) -> Option<String> {
        let Some(text) = self.value.as_str() else {
            self.fault(format!("{} is not a text", found(&self.value)), "write words in double quotes");
            return None;
        };
        match remark::wrong_with(text) {
            None => return Some(text.into()),
            Some(wrong) => self.fault(wrong, remark::TODO),
        }
        None
    }

    /// True or false.
    pub fn flag(self) -> Option<bool> {
        let flag = self.value.as_bool();
        if flag.is_none() {
            let todo = "write true or false, without quotes";
            self.fault(format!("{} is neither true nor false", found(&self.value)), todo);
        }
        flag
    }

    /// A day (ISO 8601).
    pub fn day(self) -> Option<NaiveDate> {
        let text = self.value.as_str().unwrap_or_default();
        let day = (text.len() == 10).then(|| NaiveDate::parse_from_str(text, "%Y-%m-%d").ok()).flatten();
        let day = day.filter(|day| YEARS.contains(&day.year()));
        if day.is_none() {
            let todo = "write year-month-day, such as \"2025-09-12\" (ISO 8601)";
            self.fault(format!("{} is not a day", found(&self.value)), todo);
        }
        day
    }

    /// A time with its offset (ISO 8601); seconds may be left out.
    pub fn time(self) -> Option<DateTime<FixedOffset>> {
        let text = self.value.as_str().unwrap_or_default();
        let time = DateTime::parse_from_rfc3339(text)
            .or_else(|_| DateTime::parse_from_str(text, "%Y-%m-%dT%H:%M%:z"))
            .ok()
            .filter(|time| YEARS.contains(&time.year()));
        if time.is_none() {
            let todo = "write day, time and offset, such as \"2025-09-12T10:30:00+01:00\" (ISO 8601)";
            self.fault(format!("{} is not a time with its offset", found(&self.value)), todo);
        }
        time
    }

    /// A record's id.
    pub fn id(self) -> Option<RecordId> {
        let id = self.value.as_str().and_then(RecordId::parse);
        if id.is_none() {
            let todo = "leave the id out: the record is given a new one";
            self.fault(format!("{} is not a UUID of version 7", found(&self.value)), todo);
        }
        id
    }

    /// SHA-256 as 64 lower-case hex digits.
    pub fn sha256(self) -> Option<String> {
        let is_hex = |text: &&str| {
            text.len() == 64 && text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
        };
        let digest = self.value.as_str().filter(is_hex).map(str::to_owned);
        if digest.is_none() {
            let todo = "write the SHA-256 of the photo's bytes as 64 hex digits, lower case";
            self.fault(format!("{} is not a SHA-256", found(&self.value)), todo);
        }
        digest
    }

    /// A mark on a photo, `[from_left, from_top, depth_mm]`.
    pub fn photo_mark(self) -> Option<PhotoMark> {
        let numbers: Option<Vec<u64>> =
            self.value.as_array().and_then(|list| list.iter().map(Value::as_u64).collect());
        let share = |part: u64| u32::try_from(part).ok().filter(|part| *part <= PhotoMark::WHOLE);
        let Some(&[from_left, from_top, depth]) = numbers.as_deref() else {
            let todo = "write [from left, from top, depth in mm], such as [4200, 800, 0]";
            self.fault(format!("`{}` is not a mark on a photo", self.value), todo);
            return None;
        };
        let (Some(from_left), Some(from_top)) = (share(from_left), share(from_top)) else {
            let todo = "count from the upper left corner in ten-thousandths of the picture's width and height, 0 to 10000";
            self.fault(format!("[{from_left}, {from_top}] lies outside the picture"), todo);
            return None;
        };
        let depth = Self::new(format!("{}[2]", self.at), depth.into(), self.book);
        Some(PhotoMark { from_left, from_top, depth_mm: depth.mm(&length::DEPTH_FROM_SURFACE)? })
    }

    /// A place on the globe, `[longitude, latitude]` in degrees.
    pub fn position(self) -> Option<[f64; 2]> {
        let numbers: Option<Vec<f64>> =
            self.value.as_array().and_then(|list| list.iter().map(Value::as_f64).collect());
        let Some(&[longitude, latitude]) = numbers.as_deref() else {
            let shown = if self.value.is_object() { found(&self.value) } else { format!("`{}`", self.value) };
            let todo = "write [longitude, latitude] in degrees, such as [2.5125, 54.4921]";
            self.fault(format!("{shown} is not a position"), todo);
            return None;
        };
        if longitude.abs() <= 180.0 && latitude.abs() <= 90.0 {
            return Some([longitude, latitude]);
        }
        let todo = if longitude.abs() <= 90.0 && latitude.abs() <= 180.0 {
            format!("longitude comes first: did you mean [{latitude}, {longitude}]?")
        } else if longitude.abs() > 360.0 || latitude.abs() > 360.0 {
            "write degrees (WGS 84), not the metres of a map grid".into()
        } else {
            "longitude runs from -180 to 180, latitude from -90 to 90 degrees".into()
        };
        self.fault(format!("[{longitude}, {latitude}] is not on the globe"), todo);
        None
    }
}

/// What to do about a length that is no number.
const NUMBER_ONLY: &str = "write whole millimetres as a bare number, without quotes or unit";
