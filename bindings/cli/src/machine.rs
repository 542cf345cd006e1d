//! Which of a field's machines is meant.

use crate::field::FieldRead;
use crate::trouble::Trouble;
use pitface_core::error::Fault;
use pitface_core::record::Machine;

/// The machine of this name, or the only one.
///
/// # Errors
/// None of this name, none at all, or several to choose from.
pub fn machine_of(field: &FieldRead, name: Option<&str>) -> Result<Machine, Trouble> {
    let notes = &field.notes;
    let names: Vec<&str> = notes.machines.iter().map(|machine| machine.name.as_str()).collect();
    let found = match (name, notes.machines.as_slice()) {
        (Some(name), machines) => machines.iter().find(|machine| machine.name == name),
        (None, [only]) => Some(only),
        (None, _) => None,
    };
    found.cloned().ok_or_else(|| {
        let wrong = match name {
            Some(name) => format!("there is no machine called {name}"),
            None if names.is_empty() => "there is no machine in it".to_owned(),
            None => "there are several machines".to_owned(),
        };
        let todo = if names.is_empty() {
            "add it under \"machines\"".to_owned()
        } else {
            format!("name one with --machine: {}", names.join(", "))
        };
        Trouble::one(&field.origin.called, Fault::new("machines", wrong, todo))
    })
}
