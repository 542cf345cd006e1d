//! A table of bad notes files: every fault is told at its place, with what is wrong and what to do, word by word.

use crate::notes_support;

use notes_support::counting_ids;
use pitface_core::error::Fault;
use pitface_core::record::notes;
use serde_json::{Value, json};

fn table() -> Value {
    serde_json::from_str(include_str!("../../tests/vectors/bad_inputs.json")).unwrap()
}

/// The text of a case: its own, or the good file with some values set and some keys removed.
fn text(case: &Value, good: &Value) -> String {
    if let Some(text) = case["text"].as_str() {
        return text.to_owned();
    }
    let mut file = good.clone();
    for (pointer, value) in case["set"].as_object().into_iter().flatten() {
        let (parent, key) = pointer.rsplit_once('/').unwrap();
        match file.pointer_mut(parent).unwrap() {
            Value::Array(list) => list[key.parse::<usize>().unwrap()] = value.clone(),
            object => object[key] = value.clone(),
        }
    }
    for pointer in case["remove"].as_array().into_iter().flatten() {
        let (parent, key) = pointer.as_str().unwrap().rsplit_once('/').unwrap();
        let removed = file.pointer_mut(parent).and_then(Value::as_object_mut).unwrap().shift_remove(key);
        assert!(removed.is_some(), "{pointer} is there to be removed");
    }
    file.to_string()
}

fn as_json(faults: &[Fault]) -> Value {
    faults.iter().map(|fault| json!({"at": fault.at, "wrong": fault.wrong, "todo": fault.todo})).collect()
}

#[test]
fn the_file_that_the_cases_break_is_good() {
    let read = notes_support::read(&table()["good"].to_string());
    assert!(read.unknown_keys.is_empty());
}

#[test]
fn every_fault_of_every_case_is_told_word_by_word() {
    let table = table();
    let cases = table["cases"].as_array().unwrap();
    assert!(cases.len() >= 45);
    let mut differ = Vec::new();
    for case in cases {
        let told = match notes::read(&text(case, &table["good"]), &mut counting_ids()) {
            Ok(_) => json!("it was read"),
            Err(faults) => as_json(&faults),
        };
        if told != case["faults"] {
            differ.push(format!("{}\n  told     {told}\n  expected {}", case["name"], case["faults"]));
        }
    }
    assert!(differ.is_empty(), "{}", differ.join("\n"));
}
