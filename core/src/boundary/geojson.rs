//! GeoJSON (RFC 7946), and its form of 2008 that could name another reference system.

use super::{Gathered, System, named};
use crate::error::Fault;
use serde_json::Value;

/// What to do about a file that cannot be followed.
const SAVE_ANEW: &str = "save it from the other program as GeoJSON (RFC 7946)";

/// A place, rings and the like.
type Line = Vec<[f64; 2]>;

pub(super) fn read(text: &str, gathered: &mut Gathered) -> Result<(), Fault> {
    let file: Value = serde_json::from_str(text)
        .map_err(|error| Fault::new("", format!("this is no JSON ({error})"), SAVE_ANEW))?;
    gathered.in_system(system(&file["crs"])?);
    top(&file, gathered)
}

/// The reference system; WGS 84 where none is named.
fn system(crs: &Value) -> Result<System, Fault> {
    if crs.is_null() {
        return Ok(System::Wgs84);
    }
    let name = crs["properties"]["name"].as_str().unwrap_or_default();
    let code = name.rsplit(':').next().unwrap_or_default();
    let known = match code {
        "CRS84" | "CRS84h" => Some(System::Wgs84),
        _ => code.parse().ok().and_then(System::of_epsg),
    };
    known.ok_or_else(|| {
        let wrong =
            format!("its reference system `{}` is not read here", name.chars().take(80).collect::<String>());
        Fault::new("crs", wrong, "save it from the other program in WGS 84 (EPSG:4326)")
    })
}

fn top(file: &Value, gathered: &mut Gathered) -> Result<(), Fault> {
    match file["type"].as_str() {
        Some("FeatureCollection") => {
            let features = file["features"].as_array();
            let features = features
                .ok_or_else(|| Fault::new("features", "the list of features is missing", SAVE_ANEW))?;
            for (index, one) in features.iter().enumerate() {
                feature(one, &format!("features[{index}]"), gathered)?;
            }
            Ok(())
        }
        Some("Feature") => feature(file, "", gathered),
        Some("Topology") => Err(Fault::new("", "this is TopoJSON, not GeoJSON", SAVE_ANEW)),
        Some(_) => geometry(file, None, "geometry", gathered),
        None => Err(Fault::new("type", "this is no GeoJSON: nothing says what it is", SAVE_ANEW)),
    }
}

fn feature(feature: &Value, at: &str, gathered: &mut Gathered) -> Result<(), Fault> {
    let text = |value: &Value| match value {
        Value::String(text) => Some(text.clone()),
        Value::Number(number) => Some(number.to_string()),
        _ => None,
    };
    let columns = feature["properties"].as_object().into_iter().flatten();
    let columns = columns.filter_map(|(column, value)| Some((column.as_str(), text(value)?)));
    let name = named::of(columns).or_else(|| text(&feature["id"]));
    let at = if at.is_empty() { "geometry".to_owned() } else { format!("{at}.geometry") };
    geometry(&feature["geometry"], name.as_deref(), &at, gathered)
}

fn geometry(geometry: &Value, name: Option<&str>, at: &str, gathered: &mut Gathered) -> Result<(), Fault> {
    if geometry.is_null() {
        return Ok(());
    }
    let coordinates = &geometry["coordinates"];
    let at_all = format!("{at}.coordinates");
    match geometry["type"].as_str().unwrap_or_default() {
        "Polygon" => gathered.polygon(name, None, &lines(coordinates, &at_all)?, &at_all),
        "MultiPolygon" => {
            let all = members(coordinates, &at_all)?.iter().map(|rings| lines(rings, &at_all));
            gathered.polygons(name, &all.collect::<Result<Vec<_>, _>>()?, &at_all)
        }
        "LineString" => gathered.line(name, &line(coordinates, &at_all)?, &at_all),
        "MultiLineString" => {
            lines(coordinates, &at_all)?.iter().try_for_each(|line| gathered.line(name, line, &at_all))
        }
        "Point" => {
            gathered.points(1);
            Ok(())
        }
        "MultiPoint" => {
            gathered.points(members(coordinates, &at_all)?.len());
            Ok(())
        }
        "GeometryCollection" => {
            let all = members(&geometry["geometries"], &format!("{at}.geometries"))?;
            let mut each = all.iter().enumerate();
            each.try_for_each(|(index, one)| {
                self::geometry(one, name, &format!("{at}.geometries[{index}]"), gathered)
            })
        }
        other => {
            let wrong = format!("`{}` is no kind of geometry", other.chars().take(40).collect::<String>());
            Err(Fault::new(format!("{at}.type"), wrong, SAVE_ANEW))
        }
    }
}

fn members<'a>(value: &'a Value, at: &str) -> Result<&'a [Value], Fault> {
    let list = value.as_array().map(Vec::as_slice);
    list.ok_or_else(|| Fault::new(at, "no list of coordinates stands here", SAVE_ANEW))
}

fn lines(value: &Value, at: &str) -> Result<Vec<Line>, Fault> {
    members(value, at)?.iter().map(|one| line(one, at)).collect()
}

fn line(value: &Value, at: &str) -> Result<Line, Fault> {
    members(value, at)?.iter().map(|one| place(one, at)).collect()
}

/// A place; a height behind it is left out.
fn place(value: &Value, at: &str) -> Result<[f64; 2], Fault> {
    let number = |at: usize| value.get(at).and_then(Value::as_f64);
    let place = number(0).zip(number(1)).map(|(x, y)| [x, y]);
    place.ok_or_else(|| {
        let found: String = value.to_string().chars().take(60).collect();
        Fault::new(
            at,
            format!("`{found}` is not a position"),
            "a position is [longitude, latitude], two numbers",
        )
    })
}
