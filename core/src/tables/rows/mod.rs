//! What goes into the tables: each column with its name and where its cells come from.

mod ground;
mod hole;
mod pass;

use super::{Cell, Column, Holds, Row, Shape, Shapes, Table};
use crate::answer::FieldAnswer;
use crate::record::{Position, RecordId, TextureNote};
use chrono::{DateTime, FixedOffset, NaiveDate};

/// A field on its way into rows.
#[derive(Clone, Copy)]
pub struct FieldTold<'a> {
    /// The field with all that follows from its notes.
    pub answer: &'a FieldAnswer,
    /// Whether a record's id lasts; one that was made for this reading alone says nothing to anybody.
    pub lasts: &'a dyn Fn(RecordId) -> bool,
}

/// The fields as tables: `fields`, `zones`, `parts`, `lines`, `pits`, `steps`, `layers`, `rolls`, `passes`, `after_digs`, in
/// this order, also where there is nothing to put into one. Fields are numbered from 1 as given; pits, passes and
/// after-digs from 1 as noted, in each field.
pub fn tables(fields: &[FieldTold]) -> Vec<Table> {
    ground::tables(fields).into_iter().chain(hole::tables(fields)).chain(pass::tables(fields)).collect()
}

/// Something of a field, on its way into a row.
struct Line<'a, T> {
    field: &'a FieldTold<'a>,
    /// Number of the field.
    number: usize,
    item: T,
}

impl<T> Line<'_, T> {
    /// A record's id, where it lasts.
    fn id(&self, id: RecordId) -> Option<String> {
        (self.field.lasts)(id).then(|| id.to_string())
    }
}

/// The items of all fields, each with its field.
fn lines<'a, T>(
    fields: &'a [FieldTold<'a>],
    items: impl Fn(&'a FieldTold<'a>) -> Vec<T>,
) -> Vec<Line<'a, T>> {
    let numbered = fields.iter().zip(1..);
    numbered
        .flat_map(|(field, number)| items(field).into_iter().map(move |item| Line { field, number, item }))
        .collect()
}

/// Columns, each with where its cells come from.
struct Columns<'a, T>(Vec<Told<'a, T>>);

struct Told<'a, T> {
    column: Column,
    cell: Box<dyn Fn(&T) -> Cell + 'a>,
}

impl<'a, T: 'a> Columns<'a, T> {
    fn told<V: 'a>(
        mut self,
        name: &'static str,
        holds: Holds,
        get: impl Fn(&T) -> Option<V> + 'a,
        cell: fn(V) -> Cell,
    ) -> Self {
        let cell = move |item: &T| get(item).map_or(Cell::Empty, cell);
        let column = Column { name: name.into(), holds, links: false, lists: &[] };
        self.0.push(Told { column, cell: Box::new(cell) });
        self
    }

    fn text(self, name: &'static str, get: impl Fn(&T) -> Option<String> + 'a) -> Self {
        self.told(name, Holds::Text, get, Cell::Text)
    }

    /// Codes, with the lists of words that they may come from.
    fn code(
        self,
        name: &'static str,
        lists: &'static [&'static str],
        get: impl Fn(&T) -> Option<&'static str> + 'a,
    ) -> Self {
        let mut columns = self.told(name, Holds::Text, get, |code| Cell::Text(code.to_owned()));
        columns.0.iter_mut().rev().take(1).for_each(|told| told.column.lists = lists);
        columns
    }

    fn time(self, name: &'static str, get: impl Fn(&T) -> Option<DateTime<FixedOffset>> + 'a) -> Self {
        self.told(name, Holds::Text, get, |time| Cell::Text(time.to_rfc3339()))
    }

    fn day(self, name: &'static str, get: impl Fn(&T) -> Option<NaiveDate> + 'a) -> Self {
        self.told(name, Holds::Day, get, |day| Cell::Text(day.to_string()))
    }

    fn mm(self, name: &'static str, get: impl Fn(&T) -> Option<u32> + 'a) -> Self {
        self.told(name, Holds::Whole, get, |mm| Cell::Whole(mm.into()))
    }

    fn count(self, name: &'static str, get: impl Fn(&T) -> Option<usize> + 'a) -> Self {
        self.told(name, Holds::Whole, get, |count| i64::try_from(count).map_or(Cell::Empty, Cell::Whole))
    }

    fn number(self, name: &'static str, get: impl Fn(&T) -> Option<f64> + 'a) -> Self {
        let cell = |number: f64| if number.is_finite() { Cell::Number(number) } else { Cell::Empty };
        self.told(name, Holds::Number, get, cell)
    }

    fn flag(self, name: &'static str, get: impl Fn(&T) -> Option<bool> + 'a) -> Self {
        self.told(name, Holds::Flag, get, Cell::Flag)
    }

    fn lengths(self, name: &'static str, get: impl Fn(&T) -> Vec<u32> + 'a) -> Self {
        let get = move |item: &T| Some(get(item)).filter(|lengths| !lengths.is_empty());
        self.told(name, Holds::Lengths, get, Cell::Lengths)
    }

    /// That the columns so far only say what a row belongs to.
    fn links(mut self) -> Self {
        self.0.iter_mut().for_each(|told| told.column.links = true);
        self
    }
}

/// The columns by which every row says which field it belongs to.
fn of_field<'a, T: 'a>() -> Columns<'a, Line<'a, T>> {
    Columns(Vec::new())
        .count("field_number", |line: &Line<T>| Some(line.number))
        .text("field", |line| Some(line.field.answer.notes.field.name.clone()))
        .text("field_id", |line| line.id(line.field.answer.notes.field.id))
        .links()
}

/// A texture's class or group, and the scheme of a class.
fn texture(note: TextureNote) -> (&'static str, Option<&'static str>) {
    match note {
        TextureNote::Class(texture) => (texture.class.code(), Some(texture.scheme.code())),
        TextureNote::Group(group) => (group.code(), None),
    }
}

fn point(at: Option<Position>) -> Option<Shape> {
    at.map(|at| Shape::Point([at.longitude_deg, at.latitude_deg]))
}

/// What a table is put together from.
struct Plan<'a, T> {
    name: &'static str,
    shapes: Option<Shapes>,
    within: &'static [&'static str],
    columns: Columns<'a, Line<'a, T>>,
}

impl<'a, T> Plan<'a, T> {
    /// The table, one row a line.
    fn fill(
        self,
        lines: &[Line<'a, T>],
        id: impl Fn(&Line<'a, T>) -> Option<RecordId>,
        shape: impl Fn(&Line<'a, T>) -> Option<Shape>,
        of: impl Fn(&Line<'a, T>) -> Option<(&'static str, usize)>,
    ) -> Table {
        let row = |line: &Line<'a, T>| Row {
            id: id(line).and_then(|id| line.id(id)),
            of: of(line),
            shape: shape(line),
            cells: self.columns.0.iter().map(|told| (told.cell)(line)).collect(),
        };
        Table {
            name: self.name,
            shapes: self.shapes,
            within: self.within,
            rows: lines.iter().map(row).collect(),
            columns: self.columns.0.into_iter().map(|told| told.column).collect(),
        }
    }
}
