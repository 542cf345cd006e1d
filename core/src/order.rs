//! Putting lists in order. The standard library's sort is written out anew for every kind of item and order, 7 kB of machine code
//! a time in the library that goes on a phone; here it is written out once. Our lists are short: nobody waits for it.

use std::cmp::Ordering;

/// Sorts by an order; equal items stay as they stand.
pub(crate) fn sort_by<T>(list: &mut [T], mut order: impl FnMut(&T, &T) -> Ordering) {
    let mut places: Vec<usize> = (0..list.len()).collect();
    sort_places(&mut places, &mut |one, other| order(&list[one], &list[other]));
    for place in 0..list.len() {
        // What belongs here may have been swapped away: then it is where the other half of that swap came from.
        let mut from = places[place];
        while from < place {
            from = places[from];
        }
        list.swap(place, from);
    }
}

/// Sorts by a key; equal items stay as they stand.
pub(crate) fn sort_by_key<T, K: Ord>(list: &mut [T], key: impl Fn(&T) -> K) {
    sort_by(list, |one, other| key(one).cmp(&key(other)));
}

/// Sorts numbers, the least first.
pub(crate) fn sort_numbers(list: &mut [f64]) {
    sort_by(list, f64::total_cmp);
}

fn sort_places(places: &mut [usize], order: &mut dyn FnMut(usize, usize) -> Ordering) {
    places.sort_by(|&one, &other| order(one, other));
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn it_sorts_as_the_standard_library_does(list in prop::collection::vec((0_u8..8, any::<u8>()), 0..200)) {
            let (mut ours, mut theirs) = (list.clone(), list);
            sort_by_key(&mut ours, |item| item.0);
            theirs.sort_by_key(|item| item.0);
            prop_assert_eq!(ours, theirs);
        }
    }
}
