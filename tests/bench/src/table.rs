//! The table: what was measured, its floor of the same run, and the bar. Nothing fails by the clock.

use crate::measure::Measured;
use std::time::Duration;

/// What a row is held against.
pub enum Bar {
    /// Ours takes at most this long.
    Within(Duration),
    /// Ours takes at most this many times the floor.
    Times(f64),
    /// Only shown.
    None,
}

/// One row.
pub struct Row {
    /// What ours is.
    pub what: &'static str,
    /// What the floor is.
    pub floor: &'static str,
    /// Medians.
    pub measured: Measured,
    /// The bar.
    pub bar: Bar,
}

/// A size beside the times.
pub struct Bytes {
    /// What is measured.
    pub what: &'static str,
    /// How large it is.
    pub bytes: usize,
}

/// Prints sizes.
pub fn print_sizes(sizes: &[Bytes]) {
    println!();
    for Bytes { what, bytes } in sizes {
        println!("{what:<34} {bytes:>11} bytes");
    }
}

/// Prints the table.
pub fn print(rows: &[Row]) {
    println!("{:<34} {:>11} {:>11} {:>8}  {:<20} floor", "median of", "ours", "floor", "ratio", "bar");
    for Row { what, floor, measured, bar } in rows {
        let (bar, met) = match *bar {
            Bar::Within(limit) => (format!("<= {}", short(limit)), Some(measured.ours <= limit)),
            Bar::Times(limit) => (format!("<= {limit} x"), Some(measured.ratio() <= limit)),
            Bar::None => ("-".to_owned(), None),
        };
        let verdict = met.map_or("", |met| if met { "met" } else { "missed" });
        println!(
            "{what:<34} {:>11} {:>11} {:>7.2}x  {:<20} {floor}",
            short(measured.ours),
            short(measured.floor),
            measured.ratio(),
            format!("{bar} {verdict}"),
        );
    }
}

fn short(time: Duration) -> String {
    let micros = time.as_secs_f64() * 1e6;
    if micros < 1_000.0 { format!("{micros:.1} µs") } else { format!("{:.2} ms", micros / 1_000.0) }
}
