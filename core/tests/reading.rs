//! What must always hold when a face is read, whatever was seen.

use crate::common;

use common::{field, layer, pit, step};
use pitface_core::reading::{FaceLayer, LayerReading, layers, read_field};
use pitface_core::record::{
    Cause, ChannelsSeen, ClodInWater, ComesAway, Condition, FieldNotes, Layer, Patches, Pit, PlaceKind,
    PoresSeen, Resistance, RootsSeen, Sign, Signs, Smell,
};
use proptest::prelude::*;

fn notes(pits: Vec<Pit>) -> FieldNotes {
    FieldNotes::new(field(), pits)
}

fn read(pits: Vec<Pit>) -> Vec<Vec<LayerReading>> {
    read_field(&notes(pits)).pits.into_iter().map(|pit| pit.layers).collect()
}

fn bounds(layers: &[FaceLayer]) -> Vec<(u32, u32)> {
    layers.iter().map(|layer| (layer.top_mm, layer.bottom_mm)).collect()
}

fn walk(steps: &[(u32, ComesAway)]) -> Pit {
    let mut pit = pit(PlaceKind::Open);
    pit.walk = steps.iter().map(|&(to_mm, comes_away)| step(to_mm, Some(comes_away), None)).collect();
    pit
}

#[test]
fn equal_neighbouring_steps_join_and_a_thin_pan_of_one_step_stays() {
    use ComesAway::{Crumbs, FlatPlates, RoundedLumps};
    let pit = walk(&[
        (50, Crumbs),
        (100, Crumbs),
        (150, Crumbs),
        (200, RoundedLumps),
        (250, FlatPlates),
        (300, RoundedLumps),
        (350, RoundedLumps),
    ]);
    let layers = layers(&pit, &field());
    assert_eq!(bounds(&layers), [(0, 150), (150, 200), (200, 250), (250, 350)]);
    assert_eq!(layers[2].signs.comes_away, Some(FlatPlates));
}

#[test]
fn resistance_goes_on_until_it_changes() {
    let mut pit = walk(&[]);
    pit.walk = vec![
        step(50, Some(ComesAway::Crumbs), Some(Resistance::SlipsIn)),
        step(100, Some(ComesAway::Crumbs), None),
        step(150, Some(ComesAway::Crumbs), Some(Resistance::HardPush)),
        step(200, Some(ComesAway::Crumbs), None),
    ];
    let layers = layers(&pit, &field());
    assert_eq!(bounds(&layers), [(0, 100), (100, 200)]);
    assert_eq!(layers[1].signs.resistance, Some(Resistance::HardPush));
}

#[test]
fn looks_given_by_hand_keep_what_the_walk_saw_and_move_its_boundaries() {
    use ComesAway::{Crumbs, FlatPlates, RoundedLumps};
    let mut pit = walk(&[(200, Crumbs), (300, FlatPlates), (450, RoundedLumps)]);
    let roots = Signs { roots: Some(RootsSeen::Sideways), ..Signs::default() };
    pit.layers = vec![layer(210, 280, roots)];
    let layers = layers(&pit, &field());
    assert_eq!(bounds(&layers), [(0, 210), (210, 280), (280, 450)], "slivers go to the neighbour");
    assert_eq!(layers[1].signs.comes_away, Some(FlatPlates));
    assert_eq!(layers[1].signs.roots, Some(RootsSeen::Sideways));
}

/// What the field is like decides what a sign says.
#[test]
fn tillage_depth_stones_and_soft_plates_bear_on_the_signs() {
    use pitface_core::reading::{Clue, Lies};
    let dense = Signs {
        comes_away: Some(ComesAway::FlatPlates),
        resistance: Some(Resistance::Stops),
        ..Signs::default()
    };
    let read = |change: &dyn Fn(&mut pitface_core::record::Field), (top_mm, bottom_mm): (u32, u32)| {
        let mut notes = notes(vec![with_layers(PlaceKind::Open, vec![layer(top_mm, bottom_mm, dense)])]);
        change(&mut notes.field);
        read_field(&notes).pits.remove(0).layers.remove(0)
    };
    let lies = |layer: &LayerReading| layer.evidence.get(Clue::Lies);
    // A pan lies at the depth of the tool: at 23 cm below a plough, not below a cultivator set to 10 cm.
    assert_eq!(lies(&read(&|_| {}, (230, 300))), Some(Lies::WorkedBand as usize));
    assert_eq!(lies(&read(&|field| field.tillage_mm = Some(100), (230, 300))), Some(Lies::Subsoil as usize));
    assert_eq!(
        lies(&read(&|field| field.tillage_mm = Some(250), (230, 300))),
        Some(Lies::WorkedBand as usize)
    );
    // Stones stop the knife, not the soil.
    let stony = read(&|field| field.stony = Some(true), (230, 300));
    assert_eq!(
        (stony.evidence.get(Clue::Resistance), stony.signs.resistance),
        (None, Some(Resistance::Stops))
    );
    // Frost plates are near the surface; deeper ones are none.
    let soft = |depths| read(&|field| field.plates_soft = Some(true), depths);
    assert_eq!(soft((0, 80)).evidence.get(Clue::ComesAway), None);
    assert_eq!(soft((230, 300)).evidence.get(Clue::ComesAway), Some(ComesAway::FlatPlates as usize));
}

fn any_of<T: Copy + std::fmt::Debug + 'static>(list: &'static [T]) -> impl Strategy<Value = Option<T>> {
    prop::option::of(prop::sample::select(list))
}

prop_compose! {
    fn any_signs()(
        comes_away in any_of(ComesAway::ALL), resistance in any_of(Resistance::ALL),
        pores in any_of(PoresSeen::ALL), channels in any_of(ChannelsSeen::ALL),
        roots in any_of(RootsSeen::ALL), patches in any_of(Patches::ALL),
        smell in any_of(Smell::ALL), clod_in_water in any_of(ClodInWater::ALL),
    ) -> Signs {
        Signs { comes_away, resistance, pores, channels, roots, patches, smell, clod_in_water }
    }
}

/// Layers from the surface down.
fn any_layers() -> impl Strategy<Value = Vec<Layer>> {
    prop::collection::vec((1_u32..6, any_signs()), 1..6).prop_map(|parts| {
        let mut top_mm = 0;
        parts
            .into_iter()
            .map(|(steps, signs)| {
                let bottom_mm = top_mm + 50 * steps;
                let layer = layer(top_mm, bottom_mm, signs);
                top_mm = bottom_mm;
                layer
            })
            .collect()
    })
}

fn any_place() -> impl Strategy<Value = PlaceKind> {
    prop::sample::select(PlaceKind::ALL)
}

fn with_layers(place: PlaceKind, layers: Vec<Layer>) -> Pit {
    Pit { layers, ..pit(place) }
}

/// Signs with an order for roots, each answer with the next worse ones.
const WORSE: [(Sign, &[(usize, usize)]); 6] = [
    (Sign::Resistance, &[(0, 1), (1, 2), (2, 3)]),
    (Sign::Pores, &[(0, 1), (1, 2), (2, 3)]),
    (Sign::Channels, &[(0, 1), (1, 2), (1, 3)]),
    (Sign::Roots, &[(0, 1), (1, 2), (2, 3)]),
    (Sign::Patches, &[(0, 1), (1, 2)]),
    (Sign::Smell, &[(0, 1), (1, 2)]),
];

fn pressed_share(layer: &LayerReading) -> f64 {
    pitface_core::reading::KINDS
        .iter()
        .zip(layer.shares)
        .filter(|(kind, _)| kind.cause == Cause::Pressed)
        .map(|(_, share)| share)
        .sum()
}

fn is_a_reading(layer: &LayerReading) -> bool {
    (layer.shares.iter().sum::<f64>() - 1.0).abs() < 1e-9
        && layer.shares.iter().all(|share| share.is_finite() && *share >= 0.0)
        && layer.reasons.iter().all(|reason| reason.decibans.is_finite())
        && (layer.condition != Condition::Open || layer.cause == Cause::Natural)
}

proptest! {
    #[test]
    fn every_face_reads(place in any_place(), layers in any_layers()) {
        for layer in &read(vec![with_layers(place, layers)])[0] {
            prop_assert!(is_a_reading(layer), "{:?}", layer);
        }
    }

    #[test]
    fn a_sign_worse_for_roots_never_improves_the_condition(
        layers in any_layers(), reference in any_layers(), at in any::<prop::sample::Index>(),
    ) {
        let at = at.index(layers.len());
        for (sign, steps) in WORSE {
            for &(better, worse) in steps {
                let condition = |answer: usize| {
                    let mut changed = layers.clone();
                    changed[at].signs.set(sign, Some(answer));
                    let middle_mm = u32::midpoint(changed[at].top_mm, changed[at].bottom_mm);
                    let pits = vec![
                        with_layers(PlaceKind::Reference, reference.clone()),
                        with_layers(PlaceKind::Open, changed),
                    ];
                    read(pits)[1]
                        .iter()
                        .find(|layer| layer.top_mm <= middle_mm && middle_mm < layer.bottom_mm)
                        .map(|layer| layer.condition)
                };
                prop_assert!(condition(worse) >= condition(better), "{}", sign.code());
            }
        }
    }

    #[test]
    fn order_of_entry_changes_nothing(layers in any_layers(), reference in any_layers()) {
        let pits = vec![with_layers(PlaceKind::Reference, reference), with_layers(PlaceKind::Open, layers)];
        let mut reversed = pits.clone();
        reversed.reverse();
        for pit in &mut reversed {
            pit.layers.reverse();
        }
        let mut again = read(reversed);
        again.reverse();
        prop_assert_eq!(read(pits), again);
    }

    #[test]
    fn a_layer_split_in_two_equal_ones_changes_nothing(
        layers in any_layers(), at in any::<prop::sample::Index>(),
    ) {
        let at = at.index(layers.len());
        let mut split = layers.clone();
        let middle_mm = u32::midpoint(split[at].top_mm, split[at].bottom_mm);
        let mut lower = split[at].clone();
        split[at].bottom_mm = middle_mm;
        lower.top_mm = middle_mm;
        split.insert(at + 1, lower);
        prop_assert_eq!(
            read(vec![with_layers(PlaceKind::Headland, layers)]),
            read(vec![with_layers(PlaceKind::Headland, split)])
        );
    }

    #[test]
    fn a_reference_that_reads_the_same_never_raises_pressed(layers in any_layers()) {
        let alone = read(vec![with_layers(PlaceKind::Open, layers.clone())]);
        let compared = read(vec![
            with_layers(PlaceKind::Open, layers.clone()),
            with_layers(PlaceKind::Reference, layers),
        ]);
        for (alone, compared) in alone[0].iter().zip(&compared[0]) {
            prop_assert!(pressed_share(compared) <= pressed_share(alone) + 1e-12);
            prop_assert_eq!(compared.condition, alone.condition);
        }
    }

    #[test]
    fn more_reference_pits_of_the_same_kind_change_nothing(layers in any_layers(), reference in any_layers()) {
        let one = vec![with_layers(PlaceKind::Open, layers), with_layers(PlaceKind::Reference, reference.clone())];
        let mut two = one.clone();
        two.push(with_layers(PlaceKind::Reference, reference));
        prop_assert_eq!(&read(one)[0], &read(two)[0]);
    }
}
