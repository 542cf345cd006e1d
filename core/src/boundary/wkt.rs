//! The reference system beside a shapefile: well-known text (OGC 01-009, and as ESRI writes it).

use super::mercator::TransverseMercator;
use super::{Metres, System};
use crate::error::Fault;

/// Brackets in brackets; no definition has more.
const DEEPEST: usize = 16;
/// Names of datums, letters and digits only: those of WGS 84, and those of ETRS89.
const WGS_84: [&str; 3] = ["wgs1984", "wgs84", "worldgeodeticsystem1984"];
const ETRS_89: [&str; 3] = ["etrs1989", "etrs89", "europeanterrestrialreferencesystem1989"];
/// A degree, and by how much a file may have rounded it.
const DEGREE: f64 = 0.017_453_292_519_943_295;
const ROUNDED: f64 = 1e-9;

const SAVE_IN_WGS_84: &str = "save it from the other program in WGS 84 (EPSG:4326)";

/// A keyword with what stands in its brackets.
#[derive(Debug, Default)]
struct Node<'a> {
    word: &'a str,
    text: Option<&'a str>,
    number: Option<f64>,
    inner: Vec<Self>,
}

impl Node<'_> {
    fn all(&self, word: &'static str) -> impl Iterator<Item = &Self> {
        self.inner.iter().filter(move |inner| inner.word.eq_ignore_ascii_case(word))
    }

    fn one(&self, word: &'static str) -> Option<&Self> {
        self.all(word).next()
    }

    fn parameter(&self, name: &str) -> Option<f64> {
        let named = |inner: &&Self| inner.text.is_some_and(|text| text.eq_ignore_ascii_case(name));
        self.all("PARAMETER").find(named)?.number
    }
}

/// The system that a definition names.
///
/// # Errors
/// It is none of those read here; named, with what to do.
pub(crate) fn system(definition: &str) -> Result<System, Fault> {
    let (node, _) = parsed(definition, 0)
        .ok_or_else(|| Fault::new("", "its reference system cannot be read", SAVE_IN_WGS_84))?;
    let node = match node.word.to_ascii_uppercase().as_str() {
        "COMPD_CS" => node.inner.into_iter().next().unwrap_or_default(),
        _ => node,
    };
    known(&node).ok_or_else(|| {
        let name: String = node.text.unwrap_or("without a name").chars().take(80).collect();
        Fault::new("", format!("its reference system ({name}) is not read here"), SAVE_IN_WGS_84)
    })
}

fn known(node: &Node) -> Option<System> {
    match node.word.to_ascii_uppercase().as_str() {
        "GEOGCS" => {
            let (is_etrs, _) = ground(node)?;
            Some(if is_etrs { System::Etrs89 } else { System::Wgs84 })
        }
        "PROJCS" => {
            let (is_etrs, flattening) = ground(node.one("GEOGCS")?)?;
            let metres_a_unit = node.one("UNIT")?.number.filter(|unit| *unit > 0.0)?;
            let metres = grid(node, flattening, metres_a_unit)?;
            Some(if is_etrs { System::EtrsMetres(metres) } else { System::Metres(metres) })
        }
        _ => None,
    }
}

/// Returns whether degrees are those of ETRS89, and the flattening of their ellipsoid; `None` for any other ground.
fn ground(node: &Node) -> Option<(bool, f64)> {
    let datum = node.one("DATUM")?;
    let name: String = datum.text?.to_lowercase().chars().filter(char::is_ascii_alphanumeric).collect();
    let is = |names: &[&str]| {
        names.iter().any(|known| name.strip_prefix('d').unwrap_or(&name) == *known || name == *known)
    };
    let is_etrs = is(&ETRS_89);
    if !is_etrs && !is(&WGS_84) {
        return None;
    }
    let at_greenwich = node.one("PRIMEM").is_none_or(|prime| prime.number == Some(0.0));
    let degrees =
        node.one("UNIT").is_none_or(|unit| unit.number.is_some_and(|size| (size - DEGREE).abs() < ROUNDED));
    let flattening = if is_etrs { super::mercator::GRS_80 } else { super::mercator::WGS_84 };
    (at_greenwich && degrees).then_some((is_etrs, flattening))
}

fn grid(node: &Node, flattening: f64, metres_a_unit: f64) -> Option<Metres> {
    let method = node.one("PROJECTION")?.text?.to_lowercase();
    let parameter = |name: &str| node.parameter(name);
    match method.as_str() {
        "transverse_mercator" | "gauss_kruger" => Some(Metres::Transverse(TransverseMercator {
            flattening,
            middle_deg: parameter("Central_Meridian")?,
            origin_deg: parameter("Latitude_Of_Origin").unwrap_or(0.0),
            scale: parameter("Scale_Factor").filter(|scale| *scale > 0.0)?,
            false_easting_m: parameter("False_Easting")? * metres_a_unit,
            false_northing_m: parameter("False_Northing")? * metres_a_unit,
            metres_a_unit,
        })),
        "mercator_auxiliary_sphere" | "popular_visualisation_pseudo_mercator" => {
            let plain = ["Central_Meridian", "False_Easting", "False_Northing", "Standard_Parallel_1"];
            let plain = plain.iter().all(|name| parameter(name).unwrap_or(0.0) == 0.0);
            (plain && (metres_a_unit - 1.0).abs() < ROUNDED).then_some(Metres::Web)
        }
        _ => None,
    }
}

/// A keyword with its brackets at the beginning of a text, and what stands behind it.
fn parsed(text: &str, depth: usize) -> Option<(Node<'_>, &str)> {
    let text = text.trim_start();
    let end = text.find(['[', '(']).filter(|_| depth < DEEPEST)?;
    let word = text[..end].trim();
    if word.is_empty() || !word.bytes().all(|letter| letter.is_ascii_alphanumeric() || letter == b'_') {
        return None;
    }
    let mut node = Node { word, ..Node::default() };
    let mut rest = &text[end + 1..];
    loop {
        rest = rest.trim_start();
        match rest.bytes().next()? {
            b']' | b')' => return Some((node, &rest[1..])),
            b',' => rest = &rest[1..],
            b'"' => {
                let end = rest[1..].find('"')?;
                node.text = node.text.or(Some(&rest[1..=end]));
                rest = &rest[end + 2..];
            }
            _ => {
                let end = rest.find([',', ']', ')', '[', '('])?;
                if matches!(rest.as_bytes()[end], b'[' | b'(') {
                    let (inner, after) = parsed(rest, depth + 1)?;
                    node.inner.push(inner);
                    rest = after;
                } else {
                    // The first number counts; a word such as NORTH is none.
                    let number = rest[..end].trim().parse::<f64>().ok().filter(|number| number.is_finite());
                    node.number = node.number.or(number);
                    rest = &rest[end..];
                }
            }
        }
    }
}
