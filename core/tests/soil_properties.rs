//! What must hold of every table and rule of the soil room, and what bad input is told.

use pitface_core::error::Fault;
use pitface_core::record::{FaceMoisture, RollOutcome};
use pitface_core::soil::class::{self, ClassTable};
use pitface_core::soil::density::{PackingFormula, ParticleSize, air_filled, packing, root_room};
use pitface_core::soil::resistance::{Cone, ConeSays, SubsoilTexture};
use pitface_core::soil::ring::{MadeOf, Ring, RingReading};
use pitface_core::soil::roll::{self, RollMeaning};
use pitface_core::soil::rooting;
use pitface_core::soil::texture::{FeelScheme, Felt, Fractions, Placed, Rub, TextureScheme, place};
use pitface_core::soil::texture::{TextureClass, TextureGroup};
use pitface_core::units::LengthUnit;
use pitface_core::words::{Language, Words};
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

    /// More soil in the ring never leaves more air, and never makes it better for roots.
    #[test]
    fn a_denser_ring_is_never_better(dry in 100.0..170.0_f64, more in 0.0..20.0_f64, water in 0.0..20.0_f64, clay in 0..60_u32, sand in 0..40_u32) {
        let [clay, sand] = [clay, sand].map(f64::from);
        let of = |dry_g: f64| ring(100.0, Some(dry_g + water), dry_g, (sand, clay));
        let (one, denser) = (of(dry), of(dry + more));
        prop_assert!(denser.pores <= one.pores);
        let air = |reading: &RingReading| reading.moisture.map(|moisture| moisture.air.share);
        prop_assert!(air(&denser) <= air(&one));
        prop_assert!(denser.roots.map(|roots| roots.room as usize) >= one.roots.map(|roots| roots.room as usize));
        for (one, denser) in one.packing.iter().zip(&denser.packing) {
            prop_assert!(denser.class.number >= one.class.number);
        }
        let adds_up = one.moisture.map(|moisture| moisture.by_volume + moisture.air.share + one.fine_g_per_cm3 / 2.65);
        prop_assert!(adds_up.is_some_and(|whole| (whole - 1.0).abs() < 0.001), "{adds_up:?}");
    }

    /// Stones of the density of all particles take room and nothing else: the fine earth between them is as it would be alone.
    #[test]
    fn stones_change_nothing_for_the_earth_between_them(dry in 100.0..170.0_f64, stones_cm3 in 0.0..60.0_f64) {
        let alone = ring(100.0, Some(dry + 20.0), dry, (40.0, 20.0));
        let stones_g = stones_cm3 * 2.65;
        let given = Ring { volume_cm3: 100.0 + stones_cm3, wet_g: Some(dry + stones_g + 20.0), dry_g: dry + stones_g, stones_g: Some(stones_g) };
        let among = given.reading(MadeOf::default()).unwrap();
        prop_assert!((alone.fine_g_per_cm3 - among.fine_g_per_cm3).abs() < 0.0101);
        let water = |reading: &RingReading| reading.moisture.map_or(0.0, |moisture| moisture.by_volume);
        prop_assert!((water(&alone) - water(&among)).abs() < 0.0011);
    }

    /// Whatever the moisture, a harder push never says that roots can push where a softer one did not, and only moist soil says
    /// anything of loosening.
    #[test]
    fn a_harder_push_is_never_better(mpa in 0.0..6.0_f64, more in 0.0..4.0_f64, stony: bool) {
        for moisture in FaceMoisture::ALL.iter().copied().map(Some).chain([None]) {
            let of = |mpa| Cone { mpa, moisture, stony, subsoil: Some(SubsoilTexture::Sand) }.reading().unwrap();
            let (soft, hard) = (of(mpa), of(mpa + more));
            prop_assert!(soft.says == ConeSays::RootsCanPush || hard.says != ConeSays::RootsCanPush);
            prop_assert!(soft.says != ConeSays::HardForRoots || hard.says == ConeSays::HardForRoots);
            prop_assert_eq!(hard.loosening.is_some(), moisture == Some(FaceMoisture::Moist) && !stony);
            let need = |reading: &pitface_core::soil::resistance::ConeReading| reading.loosening.map(|loosening| loosening.need as usize);
            prop_assert!(need(&soft) <= need(&hard));
        }
    }
}

/// Returns what a ring of this volume says, with sand and clay in percent.
fn ring(volume_cm3: f64, wet_g: Option<f64>, dry_g: f64, (sand, clay): (f64, f64)) -> RingReading {
    let fractions = Fractions::new(sand, 100.0 - sand - clay, clay).ok();
    let given = Ring { volume_cm3, wet_g, dry_g, stones_g: None };
    given.reading(MadeOf { fractions, particle_size: None }).unwrap_or_else(|faults| panic!("{faults:?}"))
}

/// A ring of 5 cm by 5.1 cm holds 100.1 cm³.
#[test]
fn a_round_ring_has_the_volume_of_a_cylinder() {
    assert!((Ring::round_cm3(50, 51) - 100.138).abs() < 0.001);
}

/// More clay than 30 % can look harmless by density alone (Mueller and others 2013), less cannot.
#[test]
fn much_clay_is_told_to_hide() {
    assert!(ring(100.0, None, 120.0, (10.0, 30.5)).clay_may_hide);
    assert!(!ring(100.0, None, 120.0, (10.0, 30.0)).clay_may_hide);
}

/// A hair more water than pores is what ring and scales are off by; a lot more is a tin that was weighed along.
#[test]
fn a_full_ring_is_full_and_not_refused() {
    let of = |wet_g| {
        Ring { volume_cm3: 100.0, wet_g: Some(wet_g), dry_g: 140.0, stones_g: None }
            .reading(MadeOf::default())
    };
    let full = of(189.0).unwrap().moisture.unwrap();
    assert!(full.air.share.abs() < 1e-12 && full.air.roots_lack_air);
    assert!(of(191.0).is_err());
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
fn a_crop_is_known_in_both_languages_and_told_in_that_of_the_reader() {
    let of = |crop: &str| rooting::of(crop).map(|crop| crop.depth_mm);
    // As the Bavarian list of land-use codes of 2016 writes them; depths by Allen et al. 1998, table 22.
    assert_eq!(of("Winterweizen"), of("winter wheat"));
    assert_eq!(of("Zuckerrüben"), of("sugar beet"));
    assert_eq!(of("Kartoffeln nach Zwischenfrucht"), of("potatoes"));
    assert_eq!(of("Ölrettich"), None, "it is no small radish");
    assert!(rooting::is_grass("Kleegras") && rooting::is_grass("Weide") && !rooting::is_grass("Grassamen"));
    let words = |language| Words::new(language, LengthUnit::Centimetres);
    let (english, german) = (words(Language::English), words(Language::German));
    assert_eq!(german.crop("winter wheat"), "Weizen");
    assert_eq!(german.crop("Winterweizen"), "Winterweizen");
    assert_eq!(english.crop("Zuckerrüben"), "sugar beet");
    assert_eq!(english.crop("quinoa"), "quinoa");
}

#[test]
fn every_crop_answers_to_its_own_names() {
    for crop in rooting::CROPS {
        for name in crop.names.iter().chain(crop.german) {
            assert_eq!(rooting::of(name), Some(crop), "{name}");
        }
    }
}

/// Bad input, and what it is told: what is wrong and what to do.
#[test]
fn faults_say_what_is_wrong_and_what_to_do() {
    let ring = |volume_cm3, wet_g, dry_g, stones_g| {
        let faults = Ring { volume_cm3, wet_g, dry_g, stones_g }.reading(MadeOf::default()).err();
        faults.and_then(|faults| faults.into_iter().next())
    };
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
        (ring(0.0, None, 140.0, None), "ring: it has no inside (0 cm3); give its volume"),
        (ring(100.0, None, -1.0, None), "dry: -1 g is no mass; give the dried soil in grams"),
        (ring(100.0, Some(130.0), 140.0, None), "wet: 130 g is less than the 140 g left when dry; give both"),
        (ring(100.0, None, 140.0, Some(140.0)), "stones: 140 g of stones are not part of 140 g of dry soil"),
        (
            ring(100.0, None, 280.0, Some(270.0)),
            "stones: stones alone fill 102 of 100 cm3; look at ring and stones",
        ),
        (ring(100.0, None, 270.0, None), "no soil has a dry bulk density of 2.7 g/cm3"),
        (
            ring(100.0, Some(240.0), 140.0, None),
            "wet: 100 % of the volume would be water, but only 47 % of it is pores",
        ),
        (
            Cone { mpa: -1.0, moisture: None, stony: false, subsoil: None }.reading().err(),
            "penetration_usda has no class for -1 MPa",
        ),
    ];
    for (fault, said) in table {
        let fault = fault.unwrap_or_else(|| panic!("no fault, wanted: {said}")).to_string();
        assert!(fault.contains(said), "\"{fault}\" does not say \"{said}\"");
    }
}
