//! The table: ours beside the peers of the same run, the bar, and whether it is met.

/// One row.
pub struct Row {
    /// What.
    pub what: String,
    /// Ours, automerge, loro, yrs, plain SQLite; `None` where there is nothing to measure.
    pub measured: [Option<f64>; 5],
    /// What the bar is, in words, and the number that ours may reach.
    pub bar: Option<(&'static str, f64)>,
}

/// Prints the table.
pub fn print(rows: &[Row]) {
    println!(
        "{:<40}{:>11}{:>11}{:>11}{:>11}{:>11}  {:<46} met",
        "", "ours", "automerge", "loro", "yrs", "sqlite", "bar"
    );
    for Row { what, measured, bar } in rows {
        print!("{what:<40}");
        for number in measured {
            print!("{:>11}", number.map_or_else(|| "-".to_owned(), short));
        }
        match (bar, measured[0]) {
            (Some((words, limit)), Some(ours)) => {
                let bar = format!("{words} = {}", short(*limit));
                println!("  {bar:<46} {}", if ours <= *limit { "met" } else { "not met" });
            }
            _ => println!(),
        }
    }
}

fn short(number: f64) -> String {
    match number {
        0.0 => "0".to_owned(),
        ..1.0 => format!("{number:.3}"),
        ..100.0 => format!("{number:.1}"),
        _ => format!("{number:.0}"),
    }
}
