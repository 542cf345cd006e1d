//! How the polygons and lines of any file become areas and lines: on the globe, without repeats, each with its size.

use super::{Area, Course, Format, FromFile, MOST_CORNERS, System};
use crate::error::Fault;
use crate::harmless::typed_name;
use crate::place::walk;
use geo::{GeodesicArea, LineString, Polygon};

/// A line is taken to run round where its ends lie closer together than this share of its length. Our judgement.
const RUNS_ROUND: f64 = 0.05;
/// A line with fewer places encloses nothing.
const FEWEST_ROUND: usize = 4;

/// What to do about a file without areas and lines.
pub(super) const NOTHING: &str = "save the field's boundary from the other program as a polygon or a line";

/// What was found so far.
pub(crate) struct Gathered {
    system: System,
    stated: bool,
    swapped: bool,
    areas: Vec<Area>,
    lines: Vec<Course>,
    points: usize,
}

impl Gathered {
    /// Nothing yet; `swapped` where the file is known to have latitude first.
    pub fn new(swapped: bool) -> Self {
        let (areas, lines) = (Vec::new(), Vec::new());
        Self { system: System::Wgs84, stated: false, swapped, areas, lines, points: 0 }
    }

    /// From here on coordinates are in this system, as the file says or as its format does.
    pub fn in_system(&mut self, system: System) {
        (self.system, self.stated) = (system, true);
    }

    /// The same where nothing says so.
    pub fn in_unstated(&mut self, system: System) {
        (self.system, self.stated) = (system, false);
    }

    /// A polygon: its outer ring, then holes, x before y; `at` is where it stands in the file.
    pub fn polygon(
        &mut self,
        name: Option<&str>,
        part: Option<(usize, usize)>,
        rings: &[Vec<[f64; 2]>],
        at: &str,
    ) -> Result<(), Fault> {
        let Some((outer, holes)) = rings.split_first() else { return Ok(()) };
        let ring = open(self.placed(outer, at)?);
        if ring.len() < 3 {
            return Ok(());
        }
        let mut cut = (0, 0.0);
        for hole in holes {
            let hole = open(self.placed(hole, at)?);
            if hole.len() >= 3 {
                cut = (cut.0 + 1, cut.1 + area_m2(&hole));
            }
        }
        let area_m2 = area_m2(&ring);
        let (holes, holes_m2) = cut;
        self.areas.push(Area { name: told(name), part, ring, area_m2, holes, holes_m2, from_line: false });
        Ok(())
    }

    /// Polygons of one record.
    pub fn polygons(
        &mut self,
        name: Option<&str>,
        polygons: &[Vec<Vec<[f64; 2]>>],
        at: &str,
    ) -> Result<(), Fault> {
        for (index, rings) in polygons.iter().enumerate() {
            let part = (polygons.len() > 1).then_some((index + 1, polygons.len()));
            self.polygon(name, part, rings, at)?;
        }
        Ok(())
    }

    /// A line; where it runs round, also the area within.
    pub fn line(&mut self, name: Option<&str>, places: &[[f64; 2]], at: &str) -> Result<(), Fault> {
        let mut along = self.placed(places, at)?;
        along.dedup();
        if along.len() < 2 {
            return Ok(());
        }
        let length_m = along.windows(2).map(|pair| walk(pair[0], pair[1]).distance_m).sum();
        let gap_m = walk(along[0], along[along.len() - 1]).distance_m;
        if along.len() >= FEWEST_ROUND && gap_m <= RUNS_ROUND * length_m {
            let ring = open(along.clone());
            let area_m2 = area_m2(&ring);
            let (name, part) = (told(name), None);
            self.areas.push(Area { name, part, ring, area_m2, holes: 0, holes_m2: 0.0, from_line: true });
        }
        self.lines.push(Course { name: told(name), along, length_m });
        Ok(())
    }

    /// Single points, which mark no ground.
    pub fn points(&mut self, count: usize) {
        self.points += count;
    }

    /// All of it.
    ///
    /// # Errors
    /// There is neither an area nor a line.
    pub fn close(self, format: Format) -> Result<FromFile, Fault> {
        let Self { system, stated, areas, lines, points, .. } = self;
        if areas.is_empty() && lines.is_empty() {
            let wrong = match points {
                0 => "there is no area and no line in it".to_owned(),
                _ => format!("there are {points} points in it, but no area and no line"),
            };
            return Err(Fault::new("", wrong, NOTHING));
        }
        Ok(FromFile { format, system, system_stated: stated, areas, lines, points })
    }

    fn placed(&self, places: &[[f64; 2]], at: &str) -> Result<Vec<[f64; 2]>, Fault> {
        if places.len() > MOST_CORNERS {
            let wrong = format!("{} places stand in one line; {MOST_CORNERS} are the most", places.len());
            return Err(Fault::new(at, wrong, "simplify it in the program it comes from"));
        }
        let turned = |&[x, y]: &[f64; 2]| if self.swapped { [y, x] } else { [x, y] };
        places.iter().map(turned).map(|place| self.system.placed(place, self.stated, at)).collect()
    }
}

/// A name as it may be kept.
fn told(name: Option<&str>) -> Option<String> {
    name.map(typed_name).filter(|name| !name.is_empty())
}

/// A ring without repeats.
fn open(mut ring: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    ring.dedup();
    while ring.len() > 1 && ring.first() == ring.last() {
        ring.pop();
    }
    ring
}

fn area_m2(ring: &[[f64; 2]]) -> f64 {
    Polygon::new(LineString::from(ring.to_vec()), Vec::new()).geodesic_area_signed().abs()
}
