//! What holds for any notes.

use crate::store_support;

use pitface_core::record::{AfterDig, BuriedLine, Field, FieldNotes, Machine, Part, Pass};
use proptest::prelude::*;
use store_support::passes::{any_after_dig, any_line, any_machine, any_part};
use store_support::{NOW_MS, any_layer, any_notes, any_step, id, is_missing, new_store};

/// Lists without their order.
fn sorted(mut notes: FieldNotes) -> FieldNotes {
    notes.field.parts.sort_by_key(|part| part.id);
    notes.field.lines.sort_by_key(|line| line.id);
    notes.machines.sort_by_key(|machine| machine.id);
    notes.passes.sort_by_key(|pass| pass.id);
    for pass in &mut notes.passes {
        pass.rolls.sort_by_key(|roll| roll.id);
        pass.after_digs.sort_by_key(|dig| dig.id);
    }
    notes.pits.sort_by_key(|pit| pit.id);
    for pit in &mut notes.pits {
        pit.walk.sort_by_key(|step| step.id);
        pit.layers.sort_by_key(|layer| layer.id);
        pit.rolls.sort_by_key(|roll| roll.id);
        pit.photos.sort_by_key(|photo| photo.id);
    }
    notes
}

/// Other notes on the same records: each record of the first takes over what the second says, as far as it goes.
fn changed(first: &FieldNotes, second: &FieldNotes) -> FieldNotes {
    let mut notes = second.clone();
    notes.field.id = first.field.id;
    notes.pits.truncate(first.pits.len());
    for (pit, old) in notes.pits.iter_mut().zip(&first.pits) {
        pit.id = old.id;
        pit.walk.truncate(old.walk.len());
        pit.walk.iter_mut().zip(&old.walk).for_each(|(step, old)| step.id = old.id);
        (pit.layers, pit.rolls, pit.photos) = (old.layers.clone(), old.rolls.clone(), old.photos.clone());
        pit.walk.extend_from_slice(&old.walk[pit.walk.len()..]);
        pit.walk.reverse();
    }
    notes.pits.extend_from_slice(&first.pits[notes.pits.len()..]);
    notes.pits.reverse();
    over(&mut notes.field.parts, &first.field.parts, |part, old| part.id = old.id);
    over(&mut notes.field.lines, &first.field.lines, |line, old| line.id = old.id);
    over(&mut notes.machines, &first.machines, |machine, old| machine.id = old.id);
    over(&mut notes.passes, &first.passes, |pass, old| {
        pass.id = old.id;
        over(&mut pass.rolls, &old.rolls, |roll, old| roll.id = old.id);
        over(&mut pass.after_digs, &old.after_digs, |dig, old| dig.id = old.id);
    });
    notes
}

/// The old records with what the new ones say, in the other order.
fn over<R: Clone>(new: &mut Vec<R>, old: &[R], take_id: impl Fn(&mut R, &R)) {
    new.truncate(old.len());
    new.iter_mut().zip(old).for_each(|(new, old)| take_id(new, old));
    new.extend_from_slice(&old[new.len()..]);
    new.reverse();
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn saved_is_loaded_and_rebuilt_is_the_same(first in any_notes(), second in any_notes()) {
        let (_folder, mut store) = new_store();
        store.save_notes(&first, NOW_MS).unwrap();
        prop_assert_eq!(&store.load_notes(first.field.id).unwrap(), &first);
        let second = changed(&first, &second);
        store.save_notes(&second, NOW_MS).unwrap();
        prop_assert_eq!(&store.load_notes(first.field.id).unwrap(), &second);
        let sound = store.check().unwrap();
        store.rebuild().unwrap();
        prop_assert_eq!(store.check().unwrap(), sound);
        prop_assert_eq!(&store.load_notes(first.field.id).unwrap(), &second);
    }

    #[test]
    fn undo_leads_back_step_by_step_to_the_exact_earlier_notes(
        first in any_notes(), second in any_notes(), tap in any_step(), layer in any_layer(),
        machine in any_machine(), dig in any_after_dig(), part in any_part(), line in any_line(),
    ) {
        let (_folder, mut store) = new_store();
        let field = first.field.id;
        let mut states = vec![];
        store.save_notes(&first, NOW_MS).unwrap();
        states.push(store.load_notes(field).unwrap());
        // A save that changes nothing is none, and is not to be undone.
        store.save_notes(&first, NOW_MS).unwrap();
        let second = changed(&first, &second);
        if !store.save_notes(&second, NOW_MS).unwrap().changes.is_empty() {
            states.push(store.load_notes(field).unwrap());
        }
        if let Some(pit) = second.pits.first() {
            store.save_step(pit.id, &tap, NOW_MS).unwrap();
            states.push(store.load_notes(field).unwrap());
            // Undone and saved otherwise: the undone save is no step of the way back any more.
            prop_assert!(store.undo(NOW_MS).unwrap().is_some());
            states.pop();
            prop_assert_eq!(&store.load_notes(field).unwrap(), states.last().unwrap());
            store.save_step(pit.id, &tap, NOW_MS).unwrap();
            states.push(store.load_notes(field).unwrap());
            store.save_layer(pit.id, &pitface_core::record::Layer { id: id(7), ..layer }, NOW_MS).unwrap();
            states.push(store.load_notes(field).unwrap());
            store.delete_record(pit.id, NOW_MS).unwrap();
            states.push(store.load_notes(field).unwrap());
        }
        store.save_machine(field, &Machine { id: id(2), ..machine }, NOW_MS).unwrap();
        states.push(store.load_notes(field).unwrap());
        store.save_part(field, &Part { id: id(3), ..part }, NOW_MS).unwrap();
        states.push(store.load_notes(field).unwrap());
        store.save_line(field, &BuriedLine { id: id(4), ..line }, NOW_MS).unwrap();
        states.push(store.load_notes(field).unwrap());
        if let Some(pass) = second.passes.first() {
            store.save_after_dig(pass.id, &AfterDig { id: id(5), ..dig }, NOW_MS).unwrap();
            states.push(store.load_notes(field).unwrap());
            store.delete_record(pass.id, NOW_MS).unwrap();
            states.push(store.load_notes(field).unwrap());
        }
        while let Some(state) = states.pop() {
            prop_assert_eq!(store.load_notes(field).unwrap(), state);
            prop_assert!(store.undo(NOW_MS).unwrap().is_some());
        }
        prop_assert!(is_missing(&store.load_notes(field)));
        prop_assert_eq!(store.undo(NOW_MS).unwrap(), None);
        store.check().unwrap();
    }

    #[test]
    fn order_of_saving_different_records_decides_the_order_of_lists_only(
        notes in any_notes(), seed in any::<u64>(),
    ) {
        let (_folder, mut store) = new_store();
        let field = notes.field.id;
        let bare_field = Field { parts: vec![], lines: vec![], ..notes.field.clone() };
        let bare = FieldNotes { unknown: notes.unknown.clone(), ..FieldNotes::new(bare_field, vec![]) };
        store.save_notes(&bare, NOW_MS).unwrap();
        let (mut machines, mut passes) = (notes.machines.clone(), notes.passes.clone());
        shuffle(&mut machines, seed);
        shuffle(&mut passes, seed);
        for pass in &passes {
            let bare = Pass { rolls: vec![], after_digs: vec![], ..pass.clone() };
            store.save_pass(field, &bare, NOW_MS).unwrap();
            for dig in &pass.after_digs { store.save_after_dig(pass.id, dig, NOW_MS).unwrap(); }
            for roll in &pass.rolls { store.save_roll(pass.id, roll, NOW_MS).unwrap(); }
        }
        for machine in &machines { store.save_machine(field, machine, NOW_MS).unwrap(); }
        for line in &notes.field.lines { store.save_line(field, line, NOW_MS).unwrap(); }
        for part in &notes.field.parts { store.save_part(field, part, NOW_MS).unwrap(); }
        // Each pit bare and then its parts, pits and parts in an order given by the seed.
        let mut pits = notes.pits.clone();
        shuffle(&mut pits, seed);
        for mut pit in pits {
            let (mut walk, layers, rolls, photos) = (
                std::mem::take(&mut pit.walk),
                std::mem::take(&mut pit.layers),
                std::mem::take(&mut pit.rolls),
                std::mem::take(&mut pit.photos),
            );
            store.save_pit(notes.field.id, &pit, NOW_MS).unwrap();
            shuffle(&mut walk, seed);
            for photo in &photos { store.save_photo(pit.id, photo, NOW_MS).unwrap(); }
            for step in &walk { store.save_step(pit.id, step, NOW_MS).unwrap(); }
            for roll in &rolls { store.save_roll(pit.id, roll, NOW_MS).unwrap(); }
            for layer in &layers { store.save_layer(pit.id, layer, NOW_MS).unwrap(); }
        }
        prop_assert_eq!(sorted(store.load_notes(notes.field.id).unwrap()), sorted(notes.clone()));
        // And saving the whole sets the order.
        store.save_notes(&notes, NOW_MS).unwrap();
        prop_assert_eq!(store.load_notes(notes.field.id).unwrap(), notes);
    }
}

fn shuffle<T>(list: &mut [T], seed: u64) {
    for place in (1..list.len()).rev() {
        let other = seed.wrapping_mul(place as u64 | 1) % (place as u64 + 1);
        list.swap(place, usize::try_from(other).unwrap());
    }
}
