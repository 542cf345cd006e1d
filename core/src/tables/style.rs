//! How a map program draws the layers when it opens them: hatching by call, lines by what lies along them, words beside.
//!
//! The styles are written in QML, the form in which QGIS keeps a style in the table `layer_styles` of a GeoPackage. Its symbols and
//! settings were read off files that QGIS 3.22 wrote and read; whatever else opens the file sees one more table.

use crate::record::{Buried, Call};
use crate::units::UnitSystem;
use std::fmt::Write as _;

/// How one layer is drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LayerStyle {
    /// The table it is for.
    pub table: &'static str,
    /// The style as a QML document.
    pub qml: String,
}

/// Ink of outlines and hatching: dark earth, which stays apart from fields and woods of a background map and in grey.
const INK: &str = "74,56,40,255";
/// Ink of what lies buried.
const BURIED_INK: &str = "20,20,20,255";
/// Width of lines of a hatching and of outlines, mm on the screen or paper.
const THIN_MM: f64 = 0.3;
const OUTLINE_MM: f64 = 0.6;

/// What fills ground.
enum Fill {
    Bare,
    /// Lines in these directions, degrees, so many mm apart.
    Lines(&'static [u32], f64),
    /// Dots.
    Dots,
}

/// The hatching of a call: the patterns of the plan (`picture::plan`), so that a map reads as the sheet does. What is left alone is bare.
const fn fill_of(call: Call) -> Fill {
    match call {
        Call::LeaveIt => Fill::Bare,
        Call::RootsFirst => Fill::Lines(&[90], 3.0),
        Call::Loosen => Fill::Lines(&[45], 2.0),
        Call::Wait => Fill::Lines(&[135], 4.0),
        Call::DrainFirst => Fill::Lines(&[0], 2.0),
        Call::DigAgain => Fill::Dots,
        Call::AskSpecialist => Fill::Lines(&[45, 135], 4.0),
    }
}

/// How lines of a kind are broken, and their width.
const fn line_of(kind: Buried) -> (&'static str, f64) {
    match kind {
        Buried::Drain => ("dash", 0.6),
        Buried::MoleDrain => ("dot", 0.6),
        Buried::Service => ("solid", 1.0),
    }
}

/// The styles of the layers, for tables whose codes have words beside them ([`super::labelled`]) and whose measures are in these
/// units ([`super::in_units`]). `label` gives the word of a list for a code, `not_dug` stands for ground without a call.
pub fn styles(
    label: impl Fn(&str, &str) -> Option<String>,
    not_dug: &str,
    units: UnitSystem,
) -> Vec<LayerStyle> {
    let calls = Call::ALL.iter().map(|&call| (call.code(), label("call", call.code()), fill(&fill_of(call))));
    let calls = calls.chain([("", Some(not_dug.to_owned()), fill(&Fill::Bare))]);
    let kinds = Buried::ALL.iter().map(|&kind| {
        let (broken, width_mm) = line_of(kind);
        (kind.code(), label("buried", kind.code()), stroke(broken, width_mm))
    });
    let (depth, tips) = match units {
        UnitSystem::Metric => {
            let cm = |column: &str| format!("round(\"{column}_mm\" / 10.0, 1)");
            let tips = (cm("tip_least"), cm("tip_most"));
            (format!("{} || ' cm'", cm("depth")), format!("{} || '–' || {} || ' cm'", tips.0, tips.1))
        }
        UnitSystem::UsCustomary => {
            let inches = |column: &str| format!("round(\"{column}_in\", 1)");
            let tips = (inches("tip_least"), inches("tip_most"));
            (format!("{} || ' in'", inches("depth")), format!("{} || '–' || {} || ' in'", tips.0, tips.1))
        }
    };
    let zone = format!("coalesce(\"call_label\" || ' ' || {tips}, \"call_label\", \"zone_label\")");
    let line = format!("coalesce(\"kind_label\" || ' ' || {depth}, \"kind_label\")");
    [
        ("fields", single("fill", &outline("solid", OUTLINE_MM)), "\"field\"".to_owned()),
        ("zones", categorised("fill", "call", calls), zone),
        ("parts", single("fill", &outline("dash", THIN_MM)), "coalesce(\"name\", \"zone_label\")".to_owned()),
        ("lines", categorised("line", "kind", kinds), line),
        ("pits", single("marker", &marker("circle")), "\"pit\"".to_owned()),
        ("after_digs", single("marker", &marker("square")), "\"after_dig\"".to_owned()),
    ]
    .into_iter()
    .map(|(table, drawn, words)| LayerStyle { table, qml: document(table, &drawn, &words) })
    .collect()
}

fn document(table: &str, drawn: &str, words: &str) -> String {
    // Beside a place, within ground, along a line (QGIS: around point, horizontal, parallel).
    let placement = match table {
        "pits" | "after_digs" => 0,
        "lines" => 2,
        _ => 4,
    };
    format!(
        "<!DOCTYPE qgis PUBLIC 'http://mrcc.com/qgis.dtd' 'SYSTEM'>\n\
         <qgis version=\"3.22\" styleCategories=\"Symbology|Labeling\">{drawn}\
         <labeling type=\"simple\"><settings calloutType=\"simple\">\
         <text-style fieldName=\"{}\" isExpression=\"1\" fontSize=\"9\" fontSizeUnit=\"Point\" textColor=\"0,0,0,255\">\
         <text-buffer bufferDraw=\"1\" bufferSize=\"1\" bufferColor=\"255,255,255,255\"/></text-style>\
         <placement placement=\"{placement}\"/><rendering drawLabels=\"1\"/></settings></labeling>\
         <blendMode>0</blendMode></qgis>\n",
        escaped(words)
    )
}

fn single(kind: &str, layers: &str) -> String {
    let symbol = symbol("0", kind, layers);
    format!("<renderer-v2 type=\"singleSymbol\"><symbols>{symbol}</symbols></renderer-v2>")
}

fn categorised<'a>(
    kind: &str,
    column: &str,
    each: impl Iterator<Item = (&'a str, Option<String>, String)>,
) -> String {
    let (mut categories, mut symbols) = (String::new(), String::new());
    for (at, (code, label, layers)) in each.enumerate() {
        let label = escaped(label.as_deref().unwrap_or(code));
        let _ = write!(
            categories,
            "<category value=\"{code}\" label=\"{label}\" symbol=\"{at}\" render=\"true\"/>"
        );
        symbols += &symbol(&at.to_string(), kind, &layers);
    }
    format!(
        "<renderer-v2 type=\"categorizedSymbol\" attr=\"{column}\"><categories>{categories}</categories>\
         <symbols>{symbols}</symbols></renderer-v2>"
    )
}

fn symbol(name: &str, kind: &str, layers: &str) -> String {
    // A symbol within a layer is named after the symbol that it is in.
    let layers = layers.replace("{name}", name);
    format!("<symbol name=\"{name}\" type=\"{kind}\" alpha=\"1\">{layers}</symbol>")
}

fn layer(class: &str, options: &[(&str, &str)], inside: &str) -> String {
    let option = |(name, value): &(&str, &str)| {
        format!("<Option name=\"{name}\" value=\"{value}\" type=\"QString\"/>")
    };
    let options: String = options.iter().map(option).collect();
    format!(
        "<layer class=\"{class}\" enabled=\"1\" pass=\"0\" locked=\"0\"><Option type=\"Map\">{options}</Option>{inside}</layer>"
    )
}

fn fill(fill: &Fill) -> String {
    let pattern = match fill {
        Fill::Bare => String::new(),
        Fill::Dots => {
            layer("SimpleFill", &[("color", INK), ("style", "dense6"), ("outline_style", "no")], "")
        }
        Fill::Lines(directions, apart_mm) => {
            let apart = apart_mm.to_string();
            let lines = directions.iter().enumerate().map(|(at, direction)| {
                let direction = direction.to_string();
                let line = format!(
                    "<symbol name=\"@{{name}}@{at}\" type=\"line\" alpha=\"1\">{}</symbol>",
                    stroke("solid", THIN_MM)
                );
                layer("LinePatternFill", &[("angle", &direction), ("distance", &apart)], &line)
            });
            lines.collect()
        }
    };
    pattern + &outline("solid", THIN_MM)
}

fn outline(broken: &str, width_mm: f64) -> String {
    let width = width_mm.to_string();
    let options =
        [("style", "no"), ("outline_color", INK), ("outline_style", broken), ("outline_width", &width)];
    layer("SimpleFill", &options, "")
}

fn stroke(broken: &str, width_mm: f64) -> String {
    let width = width_mm.to_string();
    let ink = if width_mm > THIN_MM { BURIED_INK } else { INK };
    layer("SimpleLine", &[("line_color", ink), ("line_style", broken), ("line_width", &width)], "")
}

fn marker(form: &str) -> String {
    let options = [
        ("name", form),
        ("color", "255,255,255,255"),
        ("outline_color", INK),
        ("outline_width", "0.5"),
        ("size", "3"),
    ];
    layer("SimpleMarker", &options, "")
}

/// Text as it stands in an attribute of XML.
fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}
