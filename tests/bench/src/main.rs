//! Measures Pitface against floors of the same run and prints a table; nothing passes or fails by the clock.
//! `cargo run --release -p pitface-bench`, with `-- --short` for a quick look.

mod border;
mod case;
mod field;
mod floor;
mod growth;
mod jvm;
mod measure;
mod table;

use std::error::Error;

fn main() -> Result<(), Box<dyn Error>> {
    let short = std::env::args().any(|argument| argument == "--short");
    // Beside the binary, so that what is synced goes to the same disk as everything else and not to memory.
    let beside = std::env::current_exe()?;
    let folder = tempfile::tempdir_in(beside.parent().ok_or("the binary has no folder")?)?;
    let size = if short { case::Size::SHORT } else { case::Size::FULL };
    println!("{} pits in the large store, {} rounds\n", size.pits, size.rounds);
    let mut rows = case::all(folder.path(), &size)?;
    rows.extend(border::all(folder.path(), size.rounds)?);
    let through_jna = border::through_jna(folder.path(), size.rounds).map(|more| rows.extend(more));
    table::print(&rows);
    if let Err(why) = through_jna {
        println!("NOT measured through JNA: {why} (it needs bash android/test and bash tests/bench/library)");
    }
    table::print_sizes(&border::sizes(folder.path())?);
    if let Err(why) = growth::print(folder.path()) {
        println!("NOT measured how time and memory grow: {why}");
    }
    Ok(())
}
