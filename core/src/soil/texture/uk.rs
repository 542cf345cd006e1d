//! The texture triangle of the UK (Soil Survey of England and Wales / ADAS), silt-sand cut at 0.06 mm.

use super::fractions::{Fractions, PERCENT};
use super::{Placed, TextureClass};

/// A corner of a class: clay and silt in percent (sand is the rest).
type Corner = (i64, i64);

/// The classes by their corners, going round. Source of every row: vertices of the SSEW triangle as collected
/// by Moeys, "The soil texture wizard" (scheme `UK.SSEW.TT`).
const CLASSES: [(TextureClass, &[Corner]); 11] = [
    (TextureClass::Sand, &[(10, 0), (0, 0), (0, 15)]),
    (TextureClass::LoamySand, &[(15, 0), (10, 0), (0, 15), (0, 30)]),
    (TextureClass::SandyLoam, &[(18, 0), (15, 0), (0, 30), (0, 50), (18, 32)]),
    (TextureClass::SiltLoam, &[(18, 62), (0, 80), (0, 100), (18, 82)]),
    (TextureClass::SandySiltLoam, &[(18, 32), (0, 50), (0, 80), (18, 62)]),
    (TextureClass::SandyClayLoam, &[(30, 0), (18, 0), (18, 32), (30, 20)]),
    (TextureClass::ClayLoam, &[(35, 20), (30, 20), (18, 32), (18, 62), (35, 45)]),
    (TextureClass::SiltyClayLoam, &[(35, 45), (18, 62), (18, 82), (35, 65)]),
    (TextureClass::SandyClay, &[(55, 0), (30, 0), (30, 20), (35, 20)]),
    (TextureClass::SiltyClay, &[(55, 45), (35, 45), (35, 65)]),
    (TextureClass::Clay, &[(100, 0), (55, 0), (35, 20), (35, 45), (55, 45)]),
];

/// The class a point lies in, or the classes whose common edge or corner it lies on: the source does not say
/// which of them owns it.
pub(super) fn place(fractions: Fractions) -> Placed {
    let touched: Vec<TextureClass> = TextureClass::ALL
        .iter()
        .copied()
        .filter(|wanted| CLASSES.iter().any(|(class, corners)| class == wanted && holds(corners, fractions)))
        .collect();
    match touched[..] {
        [class] => Placed::Inside(class),
        _ => Placed::Edge(touched),
    }
}

/// Returns whether the point lies in the class or on its outline. All classes are convex: the point is never on
/// different sides of two of their edges.
fn holds(corners: &[Corner], point: Fractions) -> bool {
    let next = corners.iter().cycle().skip(1);
    let sides = corners.iter().zip(next).map(|(&from, &to)| side(from, to, point));
    let (mut left, mut right) = (false, false);
    for side in sides {
        left |= side > 0;
        right |= side < 0;
    }
    !(left && right)
}

/// Which side of the line between two corners the point lies on; 0 is on it.
const fn side(from: Corner, to: Corner, point: Fractions) -> i64 {
    let (clay, silt) = (point.clay() - from.0 * PERCENT, point.silt() - from.1 * PERCENT);
    (to.0 - from.0) * silt - (to.1 - from.1) * clay
}
