//! `pitface boundary`: outlines and lines out of files of other programs.

use crate::argument::{Shown, millimetres};
use crate::input;
use crate::json::merged;
use crate::keep::{Kept, new_id, now_ms, sound};
use crate::trouble::Trouble;
use crate::write::Folder;
use crate::{Answer, device};
use clap::Args;
use pitface_core::boundary::{self, Area, Course, FromFile, LARGEST_BYTES, misplaced, places_of};
use pitface_core::error::Fault;
use pitface_core::merge::Signer as _;
use pitface_core::place::MixUp;
use pitface_core::record::{Buried, BuriedLine, FieldNotes, LineSort, RecordId, Unknown, notes};
use pitface_core::store::{Store, StoreError, read_geopackage};
use pitface_core::words::Words;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};

/// Square metres in a hectare.
const HECTARE_M2: f64 = 10_000.0;

/// Out of which file, and what of it goes where.
#[derive(Args)]
#[command(
    after_help = "Without --into or --store it lists what the file holds and writes nothing. A zipped shapefile has its .shp, .dbf and .prj of one name in it. \
    Degrees on WGS 84 and ETRS89, UTM and other transverse Mercator grids on either, and web Mercator are read; anything else is refused. \
    An outline has no holes: mark what is not farmed as a part of the field."
)]
pub struct Boundary {
    /// A file of another program: GeoJSON, KML, KMZ, GPX, a zipped shapefile or a GeoPackage.
    file: PathBuf,
    /// Take area N of the list as the field's outline; the only area if left out.
    #[arg(long, value_name = "N", conflicts_with_all = ["line", "every_line"])]
    area: Option<usize>,
    /// Take line N of the list as a line of what lies buried; several as 1,2,5.
    #[arg(long, value_name = "N,…", requires = "kind", value_delimiter = ',')]
    line: Vec<usize>,
    /// Take all lines of the list, as of a drainage plan.
    #[arg(long, requires = "kind", conflicts_with = "line")]
    every_line: bool,
    /// What lies along the lines: `drain`, `mole_drain` or `service`.
    #[arg(long, value_name = "KIND", value_parser = Buried::CODES.to_vec())]
    kind: Option<String>,
    /// What they are made of or carry, of drains or services.
    #[arg(long, value_name = "SORT", requires = "kind", value_parser = LineSort::CODES.to_vec())]
    sort: Option<String>,
    /// Depth to their top: 800, 80cm or 31in (a bare number is millimetres).
    #[arg(long, value_name = "DEPTH", requires = "kind", value_parser = millimetres)]
    depth: Option<u32>,
    /// The notes file of the field. It is left as it is; the notes with what was taken go to --out, or to standard output.
    #[arg(long, value_name = "FIELD.notes.json")]
    into: Option<PathBuf>,
    /// The new notes file to write; nothing is replaced.
    #[arg(long, value_name = "NEW.notes.json", requires = "into")]
    out: Option<PathBuf>,
    /// Save it in a field of this store.
    #[arg(long, value_name = "STORE", conflicts_with = "into")]
    store: Option<PathBuf>,
    /// Which field of the store, by its name or id; the only one if left out.
    #[arg(long, value_name = "NAME|ID", requires = "store")]
    field: Option<String>,
    /// The file has latitude before longitude.
    #[arg(long)]
    swapped: bool,
    /// Take it though it lies far from everything else noted of the field.
    #[arg(long)]
    anyway: bool,
}

/// What is taken.
enum Taken<'a> {
    Outline(&'a Area),
    Lines(Vec<&'a Course>, Buried, Option<u32>),
}

impl Boundary {
    /// Lists, or takes.
    pub fn run(self, shown: &Shown) -> Result<Answer, Trouble> {
        let words = shown.words();
        let found = self.read()?;
        let head = format!("{}: {}", self.file.display(), words.boundary_file(&found));
        let mut answer = self.json(&found);
        if self.into.is_none() && self.store.is_none() {
            if self.area.is_some() || self.kind.is_some() {
                let todo = "name the notes file with --into, or a store with --store";
                return Err(Trouble::of_arguments(Fault::new("", "nothing says where it shall go", todo)));
            }
            let text =
                std::iter::once(head).chain(words.boundary_lines(&found)).collect::<Vec<_>>().join("\n");
            return Ok(Answer::new(text + "\n", answer));
        }
        let taken = self.chosen(&found)?;
        let (said, into) = match (&self.into, &self.store) {
            (Some(into), _) => {
                let mut notes = sound(into)?.notes;
                let said = self.put(&taken, &mut notes, &words)?;
                answer["taken"] = told(&taken, &notes);
                let text = notes::write(&notes);
                let Some(out) = &self.out else {
                    answer["notes"] = serde_json::from_str(&text).unwrap_or_default();
                    return Ok(Answer { remarks: said + "\n", ..Answer::new(text, answer) });
                };
                write_new(out, &text)?;
                (said, out)
            }
            (None, store) => {
                let store = store.as_deref().unwrap_or(Path::new(""));
                let (said, notes) = self.save(&taken, store, &words)?;
                answer["taken"] = told(&taken, &notes);
                return Ok(Answer::new(format!("{head}\n{said}\n"), answer));
            }
        };
        let written = json!({ "written": [into.display().to_string()] });
        Ok(Answer::new(format!("{head}\n{said}\n{}\n", into.display()), merged(answer, written)))
    }

    fn read(&self) -> Result<FromFile, Trouble> {
        let failed = |fault| Trouble::one(&self.file, fault);
        let bytes = input::of_another_program(&self.file, LARGEST_BYTES)?;
        if boundary::is_geopackage(&bytes) {
            return read_geopackage(&self.file, self.swapped).map_err(failed);
        }
        let name = self.file.file_name().unwrap_or_default().to_string_lossy();
        boundary::read(&name, &bytes, self.swapped).map_err(failed)
    }

    fn chosen<'a>(&self, found: &'a FromFile) -> Result<Taken<'a>, Trouble> {
        let wrong = |what: &str, wrong: String| {
            let todo = format!(
                "see `pitface boundary {}` for what there is, and choose with {what} N",
                self.file.display()
            );
            Err(Trouble::one(&self.file, Fault::new("", wrong, todo)))
        };
        if let Some(kind) = self.kind.as_deref().and_then(Buried::from_code) {
            let numbers = if self.every_line { (1..=found.lines.len()).collect() } else { self.line.clone() };
            if numbers.is_empty() {
                return wrong("--line", "nothing says which lines to take".into());
            }
            let mut lines = Vec::new();
            for number in numbers {
                match number.checked_sub(1).and_then(|at| found.lines.get(at)) {
                    Some(line) => lines.push(line),
                    None => return wrong("--line", format!("there is no line {number} in it")),
                }
            }
            return Ok(Taken::Lines(lines, kind, self.depth));
        }
        let area = match (self.area, found.areas.as_slice()) {
            (Some(number), areas) => match number.checked_sub(1).and_then(|at| areas.get(at)) {
                Some(area) => area,
                None => return wrong("--area", format!("there is no area {number} in it")),
            },
            (None, [area]) => area,
            (None, []) => return wrong("--line", "there is no area in it, only lines".into()),
            (None, areas) => return wrong("--area", format!("there are {} areas in it", areas.len())),
        };
        let failed = |fault: pitface_core::place::OutlineFault| Fault::new("", fault.wrong(), fault.todo());
        area.outline().map_err(|fault| Trouble::one(&self.file, failed(fault)))?;
        Ok(Taken::Outline(area))
    }

    /// Puts it into the notes of a field; what is said of it.
    fn put(&self, taken: &Taken, notes: &mut FieldNotes, words: &Words) -> Result<String, Trouble> {
        let each: Vec<&Vec<[f64; 2]>> = match taken {
            Taken::Outline(area) => vec![&area.ring],
            Taken::Lines(lines, ..) => lines.iter().map(|line| &line.along).collect(),
        };
        let around = places_of(notes);
        let far = each.into_iter().find_map(|places| misplaced(places, &around));
        if let Some(far) = far.filter(|_| !self.anyway) {
            let kilometres = (far.distance_m / 1000.0).round();
            let wrong = format!("this lies {kilometres} km from everything noted of {}", notes.field.name);
            let todo = match far.mix_up {
                Some(MixUp::Swapped) => {
                    "with longitude and latitude swapped it would not: try --swapped".to_owned()
                }
                Some(mix_up) => format!("{}; {}", mix_up.wrong(), mix_up.todo()),
                None => "choose another area, or take it all the same with --anyway".to_owned(),
            };
            return Err(Trouble::one(&self.file, Fault::new("", wrong, todo)));
        }
        let field = &mut notes.field;
        Ok(match taken {
            Taken::Outline(area) => {
                let before =
                    pitface_core::place::Outline::new(&field.outline).ok().map(|outline| outline.area_m2());
                field.outline.clone_from(&area.ring);
                words.boundary_outline_taken(&field.name, area, before)
            }
            Taken::Lines(lines, kind, depth_mm) => {
                let sort = self.sort_of()?;
                let (kind, depth_mm) = (*kind, *depth_mm);
                let mut said = Vec::new();
                for line in lines {
                    let (id, along, unknown) = (new_id(), line.along.clone(), Unknown::new());
                    field.lines.push(BuriedLine { id, kind, along, depth_mm, sort, unknown });
                    said.push(words.boundary_lines_taken(&field.name, kind, std::slice::from_ref(line)));
                }
                said.join("\n")
            }
        })
    }

    /// The sort of the line, which goes with its kind.
    fn sort_of(&self) -> Result<Option<LineSort>, Trouble> {
        let Some(sort) = self.sort.as_deref().and_then(LineSort::from_code) else { return Ok(None) };
        let kind = sort.kind().code();
        if self.kind.as_deref() == Some(kind) {
            return Ok(Some(sort));
        }
        let wrong = format!("{} is no sort of this kind", sort.code());
        Err(Trouble::of_arguments(Fault::new(
            "--sort",
            wrong,
            format!("give --kind {kind}, or leave it out"),
        )))
    }

    fn save(&self, taken: &Taken, path: &Path, words: &Words) -> Result<(String, FieldNotes), Trouble> {
        let failed = |error: StoreError| Trouble::of_said(path, &error);
        let field: RecordId = Kept::open(path)?.one(self.field.as_deref())?.id;
        let mut store = Store::open_existing(path, device::lasting()?.device()).map_err(failed)?;
        let mut notes = store.load_notes(field).map_err(failed)?;
        let said = self.put(taken, &mut notes, words)?;
        store.save_field(&notes.field, now_ms()).map_err(failed)?;
        Ok((said, notes))
    }

    fn json(&self, found: &FromFile) -> Value {
        let areas = (1..).zip(&found.areas).map(|(number, area)| {
            json!({
                "number": number,
                "name": area.name,
                "part": area.part.map(|(part, _)| part),
                "parts": area.part.map(|(_, parts)| parts),
                "hectares": area.area_m2 / HECTARE_M2,
                "corners": area.ring.len(),
                "holes": area.holes,
                "holes_hectares": area.holes_m2 / HECTARE_M2,
                "from_line": area.from_line,
                "ring": area.ring,
            })
        });
        let lines = (1..).zip(&found.lines).map(|(number, line)| {
            json!({ "number": number, "name": line.name, "length_m": line.length_m, "along": line.along })
        });
        json!({
            "format": 1,
            "file": self.file.display().to_string(),
            "kind": found.format.code(),
            "system_stated": found.system_stated,
            "was_metres": found.system.is_metres(),
            "was_etrs89": found.system.is_etrs(),
            "areas": areas.collect::<Vec<_>>(),
            "lines": lines.collect::<Vec<_>>(),
            "points": found.points,
        })
    }
}

fn told(taken: &Taken, notes: &FieldNotes) -> Value {
    let field = &notes.field.name;
    match taken {
        Taken::Outline(area) => json!({ "field": field, "outline_hectares": area.area_m2 / HECTARE_M2 }),
        Taken::Lines(lines, kind, depth_mm) => {
            let length_m: f64 = lines.iter().map(|line| line.length_m).sum();
            json!({ "field": field, "line": kind.code(), "lines": lines.len(), "length_m": length_m, "depth_mm": depth_mm })
        }
    }
}

fn write_new(out: &Path, text: &str) -> Result<(), Trouble> {
    if std::fs::symlink_metadata(out).is_ok() {
        return Err(Trouble::one(out, Fault::new("", "this is there already", "name a new file")));
    }
    let Some(name) = out.file_name() else {
        return Err(Trouble::one(out, Fault::new("", "this names no file", "name a new file")));
    };
    let parent = out.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut folder = Folder::open(parent)?;
    folder.add(&name.to_string_lossy(), text.as_bytes())?;
    folder.finish().map(drop)
}
