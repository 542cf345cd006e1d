//! Published cases of the soil room; each with its source in the data file.

use pitface_core::record::{FaceMoisture, RollOutcome, TextureNote};
use pitface_core::soil::available_water::holds;
use pitface_core::soil::density::{PackingFormula, ParticleSize, RootRoom};
use pitface_core::soil::resistance::{self, Cone, ConeSays, LooseningNeed, SubsoilTexture};
use pitface_core::soil::ring::{MadeOf, Ring};
use pitface_core::soil::roll::{self, RollMeaning};
use pitface_core::soil::texture::{
    FeelScheme, Felt, Fractions, Placed, Rub, Texture, TextureClass, TextureGroup, TextureScheme, place,
};
use pitface_core::soil::{class, density, rooting};
use serde_json::Value;

/// The cases of one list of a data file; every list of these tests has some.
fn cases(file: &str, list: &str) -> Vec<Value> {
    let mut file: Value = serde_json::from_str(file).unwrap_or_default();
    let Value::Array(cases) = file[list].take() else { panic!("there is no list {list}") };
    assert!(!cases.is_empty() && cases.iter().all(|case| case["source"].is_string()), "{list}");
    cases
}

fn number(case: &Value, key: &str) -> f64 {
    case[key].as_f64().unwrap_or_else(|| panic!("{key} of {case}"))
}

fn whole(case: &Value, key: &str) -> u32 {
    let number = case[key].as_u64().and_then(|number| u32::try_from(number).ok());
    number.unwrap_or_else(|| panic!("{key} of {case}"))
}

fn text<'a>(case: &'a Value, key: &str) -> &'a str {
    case[key].as_str().unwrap_or_else(|| panic!("{key} of {case}"))
}

/// The value of a code by the list's own reader.
fn code<T>(case: &Value, key: &str, from_code: impl Fn(&str) -> Option<T>) -> T {
    from_code(text(case, key)).unwrap_or_else(|| panic!("{key} of {case}"))
}

fn near(found: f64, wanted: f64, within: f64, case: &Value) {
    assert!((found - wanted).abs() <= within, "{found} for {case}");
}

const TEXTURE: &str = include_str!("../../tests/vectors/texture.json");
const CLASSES: &str = include_str!("../../tests/vectors/classes.json");
const PHYSICS: &str = include_str!("../../tests/vectors/physics.json");
const MOISTURE: &str = include_str!("../../tests/vectors/moisture.json");
const ROOTING: &str = include_str!("../../tests/vectors/rooting.json");

fn fractions(case: &Value) -> Fractions {
    let fractions = Fractions::new(number(case, "sand"), number(case, "silt"), number(case, "clay"));
    fractions.unwrap_or_else(|fault| panic!("{fault}"))
}

#[test]
fn textures_from_fractions() {
    for case in cases(TEXTURE, "fractions") {
        let usda = code(&case, "usda", TextureClass::from_code);
        assert_eq!(place(TextureScheme::Usda, fractions(&case)), Placed::Inside(usda), "{case}");
        let names = case["uk"].as_array().unwrap();
        let uk: Vec<_> =
            names.iter().map(|name| TextureClass::from_code(name.as_str().unwrap()).unwrap()).collect();
        let wanted = if let [class] = uk[..] { Placed::Inside(class) } else { Placed::Edge(uk) };
        assert_eq!(place(TextureScheme::Uk, fractions(&case)), wanted, "{case}");
    }
}

#[test]
fn the_average_of_a_class_is_of_that_class() {
    for case in cases(TEXTURE, "centroids") {
        let usda = code(&case, "usda", TextureClass::from_code);
        assert_eq!(place(TextureScheme::Usda, fractions(&case)), Placed::Inside(usda), "{case}");
    }
}

#[test]
fn the_whole_triangle_has_the_published_number_of_points_a_class() {
    let mut points = vec![0; TextureClass::ALL.len()];
    for sand in 0..=100 {
        for clay in 0..=100 - sand {
            let share = |percent: i32| f64::from(percent);
            let at = Fractions::new(share(sand), share(100 - sand - clay), share(clay)).unwrap();
            let Placed::Inside(class) = place(TextureScheme::Usda, at) else { panic!("an edge at {at:?}") };
            points[class as usize] += 1;
        }
    }
    for case in cases(TEXTURE, "sweep") {
        let class = code(&case, "usda", TextureClass::from_code);
        assert_eq!(points[class as usize], whole(&case, "points"), "{case}");
    }
    assert_eq!(points.iter().sum::<u32>(), 5151);
}

#[test]
fn textures_by_feel_with_the_key_named() {
    for case in cases(TEXTURE, "feel") {
        let felt = match (case["ball"].as_bool().unwrap(), case["ribbon_mm"].is_null()) {
            (false, _) => Felt::NoBall,
            (true, true) => Felt::BallNoRibbon,
            (true, false) => {
                Felt::Ribbon { length_mm: whole(&case, "ribbon_mm"), rub: code(&case, "rub", Rub::from_code) }
            }
        };
        let by = code(&case, "by", FeelScheme::from_code);
        let texture = by.texture(felt);
        assert_eq!((texture.by, texture.texture.class.code()), (by, text(&case, "usda")), "{case}");
        assert_eq!(texture.texture.scheme, TextureScheme::Usda);
    }
}

#[test]
fn names_of_textures() {
    for case in cases(TEXTURE, "names") {
        let scheme = code(&case, "scheme", TextureScheme::from_code);
        let class = case["class"].as_str().map(|name| TextureClass::from_code(name).unwrap());
        let texture = class.map(|class| Texture { scheme, class });
        assert_eq!(Texture::parse(scheme, text(&case, "name")), texture, "{case}");
    }
}

#[test]
fn classes_of_numbers_by_scheme() {
    for case in cases(CLASSES, "cases") {
        let class = class::of(text(&case, "scheme"), number(&case, "value")).unwrap();
        assert_eq!((class.scheme, class.class), (text(&case, "scheme"), text(&case, "class")), "{case}");
        if case["number"].is_u64() {
            assert_eq!(class.number, whole(&case, "number") as usize, "{case}");
        }
    }
}

/// Every limit of every table, from or above which a class begins.
#[test]
fn limits_of_every_table_of_classes() {
    let limits = cases(CLASSES, "limits");
    assert_eq!(limits.len(), class::schemes().count(), "a table stands in one place only");
    for (case, table) in limits.iter().zip(class::schemes()) {
        assert_eq!(text(case, "scheme"), table.id);
        let how = |inclusive| if inclusive { "from" } else { "above" };
        let starts: Vec<Value> = table
            .rows
            .iter()
            .map(|row| serde_json::json!([row.limit, how(row.inclusive), row.class]))
            .collect();
        let stated = case["starts"].as_array().into_iter().flatten();
        assert_eq!(stated.clone().count(), starts.len(), "{}", table.id);
        for (stated, start) in stated.zip(&starts) {
            let is_near = stated[0]
                .as_f64()
                .zip(start[0].as_f64())
                .is_some_and(|(one, other)| (one - other).abs() < 1e-9);
            assert!(
                is_near && (&stated[1], &stated[2]) == (&start[1], &start[2]),
                "{}: {start}, not {stated}",
                table.id
            );
        }
        assert_eq!(text(case, "source"), table.source(), "{}", table.id);
    }
}

#[test]
fn packing_density_by_both_formulas() {
    for case in cases(PHYSICS, "packing") {
        let formula = code(&case, "formula", PackingFormula::from_code);
        let [bulk, clay, silt] = ["bulk_density", "clay", "silt"].map(|key| number(&case, key));
        let packing = density::packing(formula, bulk, clay, silt).unwrap();
        near(packing.g_per_cm3, number(&case, "value"), 1e-9, &case);
        assert_eq!(
            (packing.class.class, packing.class.scheme),
            (text(&case, "class"), formula.code()),
            "{case}"
        );
    }
}

#[test]
fn densities_at_which_roots_stop_and_soil_settles() {
    for case in cases(PHYSICS, "root_room") {
        let size = code(&case, "particle_size", ParticleSize::from_code);
        let room = density::root_room(size, number(&case, "bulk_density")).unwrap();
        assert_eq!(room, code(&case, "roots", RootRoom::from_code), "{case}");
    }
    for case in cases(PHYSICS, "settling") {
        let size = code(&case, "particle_size", ParticleSize::from_code);
        let settles = density::settles_when_wetted(size, number(&case, "bulk_density")).unwrap();
        assert_eq!(Some(settles), case["settles"].as_bool(), "{case}");
    }
}

#[test]
fn pores_and_the_air_in_them() {
    for case in cases(PHYSICS, "porosity") {
        let porosity = density::total_porosity(number(&case, "bulk_density")).unwrap();
        near(porosity * 100.0, number(&case, "percent"), 0.05, &case);
    }
    for case in cases(PHYSICS, "air") {
        let air = density::air_filled(number(&case, "bulk_density"), number(&case, "water")).unwrap();
        near(air.share * 100.0, number(&case, "percent"), 0.1, &case);
        assert_eq!(Some(air.roots_lack_air), case["roots_lack_air"].as_bool(), "{case}");
    }
}

#[test]
fn resistance_against_roots_and_loosening() {
    for case in cases(PHYSICS, "psi") {
        near(resistance::mpa_from_psi(number(&case, "psi")), number(&case, "mpa"), 0.0005, &case);
        near(resistance::psi_from_mpa(number(&case, "mpa")), number(&case, "psi"), 0.1, &case);
    }
    for case in cases(PHYSICS, "cone") {
        let cone = Cone {
            mpa: number(&case, "mpa"),
            moisture: case["moisture"].as_str().map(|code| FaceMoisture::from_code(code).unwrap()),
            stony: case["stony"] == true,
            subsoil: case["subsoil"].as_str().map(|code| SubsoilTexture::from_code(code).unwrap()),
        };
        let reading = cone.reading().unwrap();
        assert_eq!(reading.says, code(&case, "says", ConeSays::from_code), "{case}");
        let need = reading.loosening.map(|loosening| loosening.need);
        assert_eq!(need.map(LooseningNeed::code), case["need"].as_str(), "{case}");
    }
}

#[test]
fn a_ring_weighed_wet_and_dry() {
    for case in cases(PHYSICS, "rings") {
        let given = |key: &str| case[key].as_f64();
        let ring = Ring {
            volume_cm3: number(&case, "volume_cm3"),
            wet_g: given("wet_g"),
            dry_g: number(&case, "dry_g"),
            stones_g: given("stones_g"),
        };
        let fractions = case["clay"].is_number().then(|| fractions(&case));
        let reading = ring.reading(MadeOf { fractions, particle_size: None }).unwrap();
        near(reading.whole_g_per_cm3, number(&case, "density"), 0.005, &case);
        near(reading.fine_g_per_cm3, given("fine_density").unwrap_or(reading.whole_g_per_cm3), 0.005, &case);
        near(reading.pores * 100.0, number(&case, "pores_percent"), 0.5, &case);
        assert_eq!(reading.moisture.is_some(), case["water_by_volume_percent"].is_number(), "{case}");
        if let Some(moisture) = reading.moisture {
            near(moisture.by_mass * 100.0, number(&case, "water_by_mass_percent"), 0.5, &case);
            near(moisture.by_volume * 100.0, number(&case, "water_by_volume_percent"), 0.5, &case);
            near(moisture.air.share * 100.0, number(&case, "air_percent"), 0.5, &case);
        }
        let stones = reading.stones.map(|stones| (stones.share * 100.0, stones.class.class));
        if let Some((percent, class)) = stones {
            near(percent, number(&case, "stones_percent"), 0.05, &case);
            assert_eq!(class, text(&case, "stones_class"), "{case}");
        }
        let roots = reading.roots.map(|roots| roots.room.code());
        assert_eq!(roots, case["roots"].as_str(), "{case}");
        let packing: Vec<&str> = reading.packing.iter().map(|packing| packing.class.class).collect();
        assert_eq!(serde_json::json!(packing), case["packing"], "{case}");
    }
}

#[test]
fn particle_sizes_of_measured_fractions() {
    for case in cases(PHYSICS, "particle_sizes") {
        let size = ParticleSize::of(fractions(&case));
        assert_eq!(size, code(&case, "particle_size", ParticleSize::from_code), "{case}");
    }
}

#[test]
fn two_roll_tests_together() {
    for case in cases(MOISTURE, "rolls") {
        let texture =
            case["texture"].as_str().map(|name| Texture::parse(TextureScheme::Usda, name).unwrap().group());
        let [surface, at_depth] = ["surface", "at_depth"]
            .map(|key| case[key].as_str().map(|code| RollOutcome::from_code(code).unwrap()));
        let together = roll::reading(texture, surface, at_depth).together;
        assert_eq!(together, code(&case, "together", RollMeaning::from_code), "{case}");
    }
}

#[test]
fn water_that_soil_holds_for_crops() {
    for case in cases(MOISTURE, "holds") {
        let texture = match case["group"].as_str() {
            Some(group) => TextureNote::Group(TextureGroup::from_code(group).unwrap()),
            None => TextureNote::Class(Texture {
                scheme: TextureScheme::Usda,
                class: code(&case, "texture", TextureClass::from_code),
            }),
        };
        let held = holds(texture);
        // An inch in a foot is 83.3 mm in a metre.
        near(held.least_mm_per_m, number(&case, "least") * 1000.0 / 12.0, 1e-9, &case);
        near(held.most_mm_per_m, number(&case, "most") * 1000.0 / 12.0, 1e-9, &case);
    }
}

#[test]
fn rooting_depths_in_plain_words() {
    for case in cases(ROOTING, "cases") {
        let crop = rooting::of(text(&case, "words"));
        assert_eq!(crop.map(|crop| u64::from(crop.depth_mm)), case["depth_mm"].as_u64(), "{case}");
        if let Some(crop) = crop {
            near(crop.share_cut_off(whole(&case, "pan_top_mm")), number(&case, "share"), 0.001, &case);
        }
    }
}
