//! Every published table that turns one number into a class, and the one look-up over them.
//!
//! The same word means different numbers in different handbooks, so a class is only ever given together with
//! its scheme. Limits are lower inclusive and upper exclusive, except where the source says "more than".

mod density;
mod ground;
mod living;
mod strength;
mod structure;

use crate::error::Fault;

/// One class of a table: where it starts.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// Its lower limit, in the table's unit.
    pub limit: f64,
    /// Whether the limit itself belongs to it.
    pub inclusive: bool,
    /// The class in snake case.
    pub class: &'static str,
    /// Where limit and class come from.
    pub source: &'static str,
}

/// A class that starts at this limit.
const fn from(limit: f64, class: &'static str, source: &'static str) -> Row {
    Row { limit, inclusive: true, class, source }
}

/// A class for what is more than this limit.
const fn above(limit: f64, class: &'static str, source: &'static str) -> Row {
    Row { limit, inclusive: false, class, source }
}

impl Row {
    fn starts_by(&self, value: f64) -> bool {
        value > self.limit || self.inclusive && value >= self.limit
    }
}

/// One scheme's classes of one thing, from the lowest up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassTable {
    /// Our name of the scheme, in snake case.
    pub id: &'static str,
    /// What is measured or counted.
    pub what: &'static str,
    /// Its unit.
    pub unit: &'static str,
    /// The classes.
    pub rows: &'static [Row],
    /// Highest value the table is for; infinite where it has none.
    pub end: f64,
}

impl ClassTable {
    /// The sources of the rows, each once.
    pub fn source(&self) -> String {
        let mut sources: Vec<&str> = Vec::new();
        for row in self.rows {
            if !sources.contains(&row.source) {
                sources.push(row.source);
            }
        }
        sources.join("; ")
    }

    /// The class of a value.
    ///
    /// # Errors
    /// A value that is no number, or that the table is not for.
    pub fn class_of(&self, value: f64) -> Result<ClassOf, Fault> {
        let index = self.rows.iter().rposition(|row| row.starts_by(value));
        let Some(index) = index.filter(|_| value.is_finite() && value <= self.end) else {
            let (low, unit) = (self.rows.first().map_or(0.0, |row| row.limit), self.unit);
            let todo = if self.end.is_finite() {
                format!("give {} from {low} to {} {unit}", self.what, self.end)
            } else {
                format!("give {} from {low} {unit} up", self.what)
            };
            return Err(Fault::new("", format!("{} has no class for {value} {unit}", self.id), todo));
        };
        let row = self.rows[index];
        let upper = self.rows.get(index + 1).map_or(self.end, |next| next.limit);
        Ok(ClassOf {
            scheme: self.id,
            class: row.class,
            number: index + 1,
            lower: row.limit,
            upper: upper.is_finite().then_some(upper),
            unit: self.unit,
            source: row.source,
        })
    }
}

/// A class with the scheme it is of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ClassOf {
    /// The scheme.
    pub scheme: &'static str,
    /// The class in snake case.
    pub class: &'static str,
    /// Its place in the scheme, 1 = lowest.
    pub number: usize,
    /// Its lower limit.
    pub lower: f64,
    /// Its upper limit; `None` where it has none.
    pub upper: Option<f64>,
    /// Unit of the limits.
    pub unit: &'static str,
    /// Source of the class and its lower limit.
    pub source: &'static str,
}

/// Every table, subject by subject.
pub fn schemes() -> impl Iterator<Item = &'static ClassTable> {
    [strength::TABLES, structure::TABLES, living::TABLES, ground::TABLES, density::TABLES]
        .into_iter()
        .flatten()
}

/// The class of a value in a scheme.
///
/// # Errors
/// A scheme that is not known, a value that is no number, or one the scheme is not for.
pub fn of(scheme_id: &str, value: f64) -> Result<ClassOf, Fault> {
    let Some(table) = schemes().find(|table| table.id == scheme_id) else {
        let known: Vec<&str> = schemes().map(|table| table.id).collect();
        let todo = format!("use one of {}", known.join(", "));
        return Err(Fault::new("", format!("there is no scheme \"{scheme_id}\""), todo));
    };
    table.class_of(value)
}
