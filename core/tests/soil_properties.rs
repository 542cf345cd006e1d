//! What must hold of every table and rule of the soil room, and what bad input is told.

use pitface_core::error::Fault;
use pitface_core::record::RollOutcome;
use pitface_core::soil::class::{self, ClassTable};
use pitface_core::soil::density::{PackingFormula, ParticleSize, air_filled, packing, root_room};
use pitface_core::soil::fragments::{Fragments, modifier};
use pitface_core::soil::munsell::{Munsell, contrast};
use pitface_core::soil::roll::{self, RollMeaning};
use pitface_core::soil::score::{Score, ScoreScheme, ScoredLayer, block};
use pitface_core::soil::subsoil_score::{self, Seen};
use pitface_core::soil::texture::{FeelScheme, Felt, Fractions, Placed, Rub, TextureScheme, place};
use pitface_core::soil::texture::{TextureClass, TextureGroup};
use pitface_core::soil::{counts, rooting};
use proptest::prelude::*;

fn any_table() -> impl Strategy<Value = &'static ClassTable> {
    prop::sample::select(class::schemes().collect::<Vec<_>>())
}

#[test]
fn every_table_is_sound() {
    let mut ids: Vec<_> = class::schemes().map(|table| table.id).collect();
    for table in class::schemes() {
        assert!(
            !table.source().is_empty() && !table.unit.is_empty() && !table.what.is_empty(),
            "{}",
            table.id
        );
        assert!(table.rows[0].inclusive && table.rows[0].limit <= table.end, "{}", table.id);
        for pair in table.rows.windows(2) {
            let starts = |row: &class::Row| (row.limit, !row.inclusive);
            assert!(starts(&pair[0]) < starts(&pair[1]), "{}: {pair:?}", table.id);
        }
        let mut classes: Vec<_> = table.rows.iter().map(|row| row.class).collect();
        classes.sort_unstable();
        classes.dedup();
        assert_eq!(classes.len(), table.rows.len(), "{}", table.id);
        let plain =
            |name: &str| name.chars().all(|c| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_');
        assert!(plain(table.id) && classes.iter().all(|class| plain(class)), "{}", table.id);
    }
    ids.sort_unstable();
    ids.dedup();
    assert_eq!(ids.len(), class::schemes().count(), "two tables with one name");
}

#[test]
fn the_lower_limit_belongs_to_the_class_unless_the_source_says_more_than() {
    for table in class::schemes() {
        for (index, row) in table.rows.iter().enumerate() {
            let at = table.class_of(row.limit).unwrap();
            assert_eq!(
                at.number,
                if row.inclusive { index + 1 } else { index },
                "{} at {}",
                table.id,
                row.limit
            );
            let just_above = table.class_of(row.limit.next_up()).unwrap().number;
            let ends_here = table.rows.get(index + 1).is_some_and(|next| next.limit <= row.limit);
            assert_eq!(just_above, if ends_here { index + 2 } else { index + 1 }, "{}", table.id);
        }
    }
}

proptest! {
    #[test]
    fn a_class_never_falls_as_its_value_rises(table in any_table(), low in 0.0..1000.0_f64, more in 0.0..1000.0_f64) {
        let number = |value| table.class_of(value).map(|class| class.number).ok();
        if let (Some(of_low), Some(of_high)) = (number(low), number(low + more)) {
            prop_assert!(of_low <= of_high);
        }
    }

    #[test]
    fn a_value_lies_between_the_limits_of_its_class(table in any_table(), value in 0.0..1000.0_f64) {
        if let Ok(class) = table.class_of(value) {
            prop_assert!(class.lower <= value && class.upper.is_none_or(|upper| value <= upper));
            prop_assert_eq!(class.scheme, table.id);
        } else {
            prop_assert!(value < table.rows[0].limit || value > table.end);
        }
    }

    #[test]
    fn every_point_of_the_uk_triangle_is_placed(sand in 0..=100_000_u32, share in 0.0..=1.0_f64) {
        let sand = f64::from(sand) / 1000.0;
        let clay = (100.0 - sand) * share;
        let placed = place(TextureScheme::Uk, Fractions::new(sand, 100.0 - sand - clay, clay).unwrap());
        let classes = match placed {
            Placed::Inside(class) => vec![class],
            Placed::Edge(classes) => {
                prop_assert!(classes.len() >= 2);
                classes
            }
        };
        prop_assert!(classes.iter().all(|&class| TextureScheme::Uk.has(class)));
    }

    #[test]
    fn contrast_is_the_same_from_either_side(pages in (0..3_usize, 0..3_usize), chips in prop::array::uniform4(1..8_u8)) {
        let hue = ["7.5YR", "10YR", "2.5Y"];
        let chip = |page: usize, value: u8, chroma: u8| {
            Munsell::parse(&format!("{} {value}/{chroma}", hue[page])).unwrap()
        };
        let (one, other) = (chip(pages.0, chips[0], chips[1]), chip(pages.1, chips[2], chips[3]));
        prop_assert_eq!(contrast(one, other), contrast(other, one));
    }

    #[test]
    fn splitting_a_layer_or_turning_the_order_changes_no_score(
        bounds in prop::collection::btree_set(10..800_u32, 3..6), halves in prop::collection::vec(2..=10_u8, 6), cut in 1..9_u32,
    ) {
        let bounds: Vec<u32> = bounds.into_iter().collect();
        let layers: Vec<ScoredLayer> = bounds
            .windows(2)
            .zip(&halves)
            .map(|(pair, &half)| ScoredLayer { top_mm: pair[0], bottom_mm: pair[1], value: f64::from(half) / 2.0 })
            .collect();
        let whole = block(ScoreScheme::Guimaraes2011, &layers).unwrap();
        let mut turned: Vec<ScoredLayer> = layers.iter().rev().copied().collect();
        let first = turned[0];
        let cut_mm = first.top_mm + (first.bottom_mm - first.top_mm) * cut / 9;
        if cut_mm > first.top_mm && cut_mm < first.bottom_mm {
            turned[0].bottom_mm = cut_mm;
            turned.push(ScoredLayer { top_mm: cut_mm, ..first });
        }
        let split = block(ScoreScheme::Guimaraes2011, &turned).unwrap();
        prop_assert!((whole.mean.value() - split.mean.value()).abs() < 1e-9);
        prop_assert_eq!(whole.limiting, split.limiting);
        prop_assert!(whole.limiting.value >= whole.mean.value() - 1e-9);
    }
}

#[test]
fn a_longer_ribbon_never_has_less_clay() {
    let clay = |class: TextureClass| match class {
        TextureClass::SandyClay | TextureClass::Clay | TextureClass::SiltyClay => 3,
        TextureClass::SandyClayLoam | TextureClass::ClayLoam | TextureClass::SiltyClayLoam => 2,
        _ => 1,
    };
    for &rub in Rub::ALL {
        let at = |length_mm| FeelScheme::Thien1979.texture(Felt::Ribbon { length_mm, rub }).texture.class;
        assert!((1..120).all(|length_mm| clay(at(length_mm)) <= clay(at(length_mm + 1))));
        assert_eq!((clay(at(1)), clay(at(120))), (1, 3));
    }
}

#[test]
fn soil_that_does_not_hold_together_is_never_dry_enough() {
    let any_roll = || RollOutcome::ALL.iter().copied().map(Some).chain([None]);
    for surface in any_roll() {
        for at_depth in any_roll() {
            let of_sand = roll::reading(Some(TextureGroup::Sand), surface, at_depth).together;
            assert!(
                !matches!(of_sand, RollMeaning::Right | RollMeaning::DryAllowed),
                "{surface:?} {at_depth:?}"
            );
            for texture in TextureGroup::ALL.iter().copied().map(Some).chain([None]) {
                let together = roll::reading(texture, surface, at_depth).together;
                let plastic = [surface, at_depth].contains(&Some(RollOutcome::Thread));
                assert_eq!(together == RollMeaning::TooWet, plastic, "{texture:?} {surface:?} {at_depth:?}");
                if at_depth == Some(RollOutcome::WillNotHold) && !plastic {
                    assert_eq!(together, RollMeaning::NotApplicable);
                }
            }
        }
    }
}

#[test]
fn every_crop_answers_to_its_own_names() {
    for crop in rooting::CROPS {
        for name in crop.names {
            assert_eq!(rooting::of(name), Some(crop), "{name}");
        }
    }
}

/// Bad input, and what it is told: what is wrong and what to do.
#[test]
fn faults_say_what_is_wrong_and_what_to_do() {
    let layer = |top_mm, bottom_mm, value| ScoredLayer { top_mm, bottom_mm, value };
    let scores = |layers: &[ScoredLayer]| block(ScoreScheme::Guimaraes2011, layers).err();
    let stones = |gravel, cobbles| modifier(Fragments { gravel, cobbles, ..Fragments::default() }).err();
    let table: Vec<(Option<Fault>, &str)> = vec![
        (
            Fractions::new(40.0, 40.0, 30.0).err(),
            "sand, silt and clay add up to 110 percent; give the shares",
        ),
        (Fractions::new(0.4, 0.4, 0.2).err(), "sand, silt and clay add up to 1 percent; give the shares"),
        (
            Fractions::new(-1.0, 61.0, 40.0).err(),
            "sand: -1 is no share in percent; give a number from 0 to 100",
        ),
        (Fractions::new(40.0, f64::NAN, 20.0).err(), "silt: NaN is no share in percent"),
        (Fractions::new(0.0, 0.0, 101.0).err(), "clay: 101 is no share in percent"),
        (
            class::of("stiffness", 1.0).err(),
            "there is no scheme \"stiffness\"; use one of rupture_force_moist_usda",
        ),
        (
            class::of("penetration_usda", -0.1).err(),
            "penetration_usda has no class for -0.1 MPa; give penetration",
        ),
        (class::of("penetration_usda", f64::NAN).err(), "penetration_usda has no class for NaN MPa"),
        (class::of("penetration_usda", f64::INFINITY).err(), "penetration_usda has no class for inf MPa"),
        (class::of("mottle_amount_fao", 101.0).err(), "from 0 to 100 percent"),
        (class::of("fragment_size_fao", 1.0).err(), "give size of rock fragments from 2 mm up"),
        (
            packing(PackingFormula::Clay, 1450.0, 20.0, 40.0).err(),
            "1450 g/cm3; give g/cm3, above 0 and below 2.65",
        ),
        (
            packing(PackingFormula::ClaySilt, 1.4, 60.0, 60.0).err(),
            "clay and silt: 120 is no share in percent",
        ),
        (root_room(ParticleSize::Sandy, 0.0).err(), "no soil has a dry bulk density of 0 g/cm3"),
        (
            air_filled(1.5, 33.0).err(),
            "water: 33 of the volume is water, but 0.434 of it is pores; give water",
        ),
        (
            Munsell::parse("brown").err(),
            "\"brown\" is no Munsell notation of a soil colour; write hue, value",
        ),
        (Munsell::parse("11YR 4/3").err(), "\"11YR 4/3\" is no Munsell notation"),
        (Munsell::parse("10YR 4").err(), "\"10YR 4\" is no Munsell notation"),
        (Munsell::parse("").err(), "\"\" is no Munsell notation"),
        (Munsell::parse("10YR 40/3").err(), "\"10YR 40/3\" is no Munsell notation"),
        (Munsell::parse("N 5/2").err(), "\"N 5/2\" is no Munsell notation"),
        (stones(80.0, 40.0), "fragment_amount_usda has no class for 120 percent"),
        (stones(-5.0, 40.0), "fragments: -5 is no share in percent; give each as percent of the volume"),
        (counts::worms_per_m2(16, 200, 0).err(), "block: it has no area; give its width and length"),
        (counts::root_area_percent(3, -1.0, 100.0).err(), "diameter: -1 is no size; give a number above 0"),
        (
            Score::new(ScoreScheme::Guimaraes2011, 5.5).err(),
            "score: 5.5 is not on the scale guimaraes_2011; give",
        ),
        (Score::new(ScoreScheme::Peerlkamp1959, 0.0).err(), "give a number from 9 (best) to 1 (worst)"),
        (scores(&[]), "layers: there is no layer; give at least one"),
        (
            scores(&[layer(0, 100, 2.0), layer(120, 250, 3.0)]),
            "layers: no layer covers 100 to 120 mm; let each",
        ),
        (scores(&[layer(0, 120, 2.0), layer(100, 250, 3.0)]), "layers: two layers cover 100 to 120 mm"),
        (scores(&[layer(0, 100, 7.0)]), "score: 7 is not on the scale"),
        (subsoil_score::score(&[]).err(), "nothing was looked at"),
        (
            subsoil_score::score(&[Seen::PoresThroughout, Seen::RootsNone]).err(),
            "roots: roots_none leads away from the column the looks before lead to; look again",
        ),
        (
            subsoil_score::score(&[Seen::RootsNone, Seen::RootsInCracks]).err(),
            "roots: both roots_none and roots_in_cracks are given; give one answer a look",
        ),
    ];
    for (fault, said) in table {
        let fault = fault.unwrap_or_else(|| panic!("no fault, wanted: {said}")).to_string();
        assert!(fault.contains(said), "\"{fault}\" does not say \"{said}\"");
    }
}
