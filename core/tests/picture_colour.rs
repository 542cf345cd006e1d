//! Colours hold what they promise: text and lines can be read in the sun, tones stay apart for everybody.

use pitface_core::picture::{Colour, Role, Theme};

const THEMES: [Theme; 3] = [Theme::Light, Theme::Dark, Theme::Print];
const SOILS: [Role; 5] = [Role::SoilPlain, Role::SoilOpen, Role::SoilFirm, Role::SoilTight, Role::SoilShut];
const TONES: [Role; 4] = [Role::SoilOpen, Role::SoilFirm, Role::SoilTight, Role::SoilShut];

/// Red, green and blue as light, 0 to 1 (sRGB, IEC 61966-2-1; the form WCAG 2.2 uses).
fn light(colour: Colour) -> [f64; 3] {
    [colour.red, colour.green, colour.blue].map(|value| {
        let value = f64::from(value) / 255.0;
        if value <= 0.04045 { value / 12.92 } else { ((value + 0.055) / 1.055).powf(2.4) }
    })
}

/// Relative luminance (WCAG 2.2).
fn luminance([red, green, blue]: [f64; 3]) -> f64 {
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/// Contrast ratio (WCAG 2.2), 1 to 21.
fn contrast(one: f64, other: f64) -> f64 {
    (one.max(other) + 0.05) / (one.min(other) + 0.05)
}

fn between(theme: Theme, one: Role, other: Role) -> f64 {
    let of = |role| luminance(light(theme.colour(role)));
    contrast(of(one), of(other))
}

#[derive(Debug, Clone, Copy)]
enum Sight {
    Full,
    Deuteranopia,
    Protanopia,
}

fn times(matrix: [[f64; 3]; 3], [a, b, c]: [f64; 3]) -> [f64; 3] {
    matrix.map(|[x, y, z]| x * a + y * b + z * c)
}

/// The light a dichromat cannot tell from this one (Viénot, Brettel and Mollon 1999; value from memory).
fn seen(sight: Sight, rgb: [f64; 3]) -> [f64; 3] {
    const TO_CONES: [[f64; 3]; 3] =
        [[17.8824, 43.5161, 4.11935], [3.45565, 27.1554, 3.86714], [0.029_956_6, 0.184_309, 1.467_09]];
    const FROM_CONES: [[f64; 3]; 3] = [
        [0.080_944_447_9, -0.130_504_409, 0.116_721_066],
        [-0.010_248_533_5, 0.054_019_326_6, -0.113_614_708],
        [-0.000_365_296_938, -0.004_121_614_69, 0.693_511_405],
    ];
    let [long, middle, short] = times(TO_CONES, rgb);
    match sight {
        Sight::Full => rgb,
        Sight::Deuteranopia => times(FROM_CONES, [long, 0.494_207 * long + 1.248_27 * short, short]),
        Sight::Protanopia => times(FROM_CONES, [2.023_44 * middle - 2.525_81 * short, middle, short]),
    }
    .map(|value| value.clamp(0.0, 1.0))
}

#[test]
fn the_formulas_give_the_known_ends() {
    assert!((between(Theme::Print, Role::Ink, Role::Paper) - 21.0).abs() < 1e-9);
    for sight in [Sight::Deuteranopia, Sight::Protanopia] {
        let grey = seen(sight, [0.5; 3]);
        assert!(grey.iter().all(|value| (value - 0.5).abs() < 0.01), "grey looks the same to all: {grey:?}");
        let [red, green, _] = seen(sight, [0.2, 0.6, 0.1]);
        assert!((red - green).abs() < 0.05, "{sight:?} cannot tell red from green: {red} {green}");
    }
}

#[test]
fn text_and_lines_stand_at_seven_to_one_on_every_ground_they_are_drawn_on() {
    let mut pairs: Vec<(Role, Role)> = vec![
        (Role::HatchOpen, Role::SoilOpen),
        (Role::HatchFirm, Role::SoilFirm),
        (Role::HatchTight, Role::SoilTight),
        (Role::HatchShut, Role::SoilShut),
        (Role::Root, Role::Casing),
        (Role::Tip, Role::Casing),
        (Role::Ink, Role::Casing),
        (Role::Measured, Role::Casing),
        (Role::Measured, Role::Paper),
        (Role::FaintInk, Role::SoilPlain),
        (Role::ChannelWall, Role::ChannelHollow),
    ];
    let on_paper =
        [Role::Ink, Role::FaintInk, Role::Tip, Role::Ruler, Role::Leader, Role::Outline, Role::Boundary];
    pairs.extend(on_paper.map(|role| (role, Role::Paper)));
    for ground in SOILS {
        let on_soil =
            [Role::Measured, Role::Outline, Role::Boundary, Role::Root, Role::ChannelWall, Role::PatchEdge];
        pairs.extend(on_soil.map(|role| (role, ground)));
    }
    for theme in THEMES {
        for &(role, ground) in &pairs {
            let ratio = between(theme, role, ground);
            assert!(ratio >= 7.0, "{theme:?}: {role:?} on {ground:?} is {ratio:.2} : 1");
        }
    }
}

#[test]
fn soil_tones_stay_apart_in_lightness_for_every_eye_and_denser_is_darker() {
    for theme in [Theme::Light, Theme::Dark] {
        for sight in [Sight::Full, Sight::Deuteranopia, Sight::Protanopia] {
            let tones = TONES.map(|role| luminance(seen(sight, light(theme.colour(role)))));
            for (pair, roles) in tones.windows(2).zip(TONES.windows(2)) {
                let ratio = contrast(pair[0], pair[1]);
                assert!(pair[0] > pair[1], "{theme:?}, {sight:?}: {roles:?}");
                assert!(ratio >= 1.2, "{theme:?}, {sight:?}: {roles:?} stand at {ratio:.2} : 1");
            }
        }
    }
}

#[test]
fn the_tip_line_stays_blue_for_every_eye() {
    for theme in [Theme::Light, Theme::Dark] {
        for sight in [Sight::Full, Sight::Deuteranopia, Sight::Protanopia] {
            let blueness = |role| {
                let [red, _, blue] = seen(sight, light(theme.colour(role)));
                blue - red
            };
            assert!(blueness(Role::Tip) > blueness(Role::Root) + 0.05, "{theme:?}, {sight:?}");
        }
    }
}

#[test]
fn print_is_black_on_white() {
    for &role in Role::ALL {
        let shown = Theme::Print.colour(role).to_string();
        assert!(shown == "#000000" || shown == "#ffffff", "{role:?} prints as {shown}");
    }
}
