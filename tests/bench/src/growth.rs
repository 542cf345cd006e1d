//! How time grows with the pits of a field, and memory with the number of fields, of the command line as it is run: the program is started, reads notes
//! files and answers as JSON. Shown, never judged.

use crate::field::mapped_json;
use std::error::Error;
use std::fs::{self, File};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Pits of one field, the largest last.
const PITS: [usize; 3] = [100, 1_000, 3_000];
/// Most that ten times the pits may take.
const TENFOLD: f64 = 12.0;
/// Fields of one run.
const FIELDS: [usize; 2] = [200, 2_000];
/// Pits of each of them.
const FIELD_PITS: usize = 6;
/// Most that ten times the fields may take of memory.
const MEMORY: f64 = 3.0;
/// Runs of which the fastest counts.
const RUNS: usize = 3;
/// How often the memory of the running program is looked at.
const LOOK: Duration = Duration::from_millis(2);

/// The questions that are asked.
const QUESTIONS: [&str; 4] = ["read", "next", "where", "draw"];

/// Measures and prints.
///
/// # Errors
/// The program is not built beside this one, or cannot be run.
pub fn print(folder: &Path) -> Result<(), Box<dyn Error>> {
    let program = std::env::current_exe()?.with_file_name("pitface");
    if !program.exists() {
        return Err("the program is not built (cargo build --release -p pitface)".into());
    }
    println!(
        "\n{:<10} {:>10} {:>10} {:>10} {:>8} {:>8}  bar",
        "pits", PITS[0], PITS[1], PITS[2], "x 10", "x 3"
    );
    // What ten times costs twelve times, three times costs this many times.
    let threefold = TENFOLD.powf(3.0_f64.log10());
    for question in QUESTIONS {
        let mut took = Vec::new();
        for pits in PITS {
            let notes = folder.join(format!("{pits}.notes.json"));
            fs::write(&notes, mapped_json(pits))?;
            let runs = (0..RUNS)
                .map(|_| run(&program, folder, question, std::slice::from_ref(&notes)).map(|ran| ran.took));
            took.push(runs.collect::<Result<Vec<_>, _>>()?.into_iter().min().unwrap_or_default());
        }
        let ratio = |one: usize, other: usize| took[other].as_secs_f64() / took[one].as_secs_f64();
        let met = ratio(0, 1) <= TENFOLD && ratio(1, 2) <= threefold;
        println!(
            "{question:<10} {:>7} ms {:>7} ms {:>7} ms {:>7.1}x {:>7.1}x  <= {TENFOLD} x, {threefold:.1} x {}",
            took[0].as_millis(),
            took[1].as_millis(),
            took[2].as_millis(),
            ratio(0, 1),
            ratio(1, 2),
            if met { "met" } else { "missed" },
        );
    }
    let mut memory = Vec::new();
    for fields in FIELDS {
        let files = (0..fields).map(|number| {
            let file = folder.join(format!("field-{number}.notes.json"));
            fs::write(&file, mapped_json(FIELD_PITS)).map(|()| file)
        });
        let files: Vec<PathBuf> = files.collect::<Result<_, _>>()?;
        memory.push(run(&program, folder, "read", &files)?.memory_kb);
    }
    let ratio = memory[1] as f64 / memory[0] as f64;
    println!(
        "memory of reading {} and {} fields: {} and {} kB, {ratio:.2} x  <= {MEMORY} x {}",
        FIELDS[0],
        FIELDS[1],
        memory[0],
        memory[1],
        if ratio <= MEMORY { "met" } else { "missed" },
    );
    Ok(())
}

struct Ran {
    took: Duration,
    /// The most it had in memory, where the system tells (Linux).
    memory_kb: u64,
}

fn run(program: &Path, folder: &Path, question: &str, files: &[PathBuf]) -> Result<Ran, Box<dyn Error>> {
    let mut command = Command::new(program);
    command
        .args(["--json", question])
        .args(files)
        .stdin(Stdio::null())
        .stdout(File::create(folder.join("answer"))?);
    if question == "draw" {
        command.arg("--out").arg(folder.join("drawn"));
    }
    let began = Instant::now();
    let mut running = command.spawn()?;
    let (mut memory_kb, status) = (0, format!("/proc/{}/status", running.id()));
    let ended = loop {
        memory_kb = most_in_memory(&status).max(memory_kb);
        if let Some(ended) = running.try_wait()? {
            break ended;
        }
        std::thread::sleep(LOOK);
    };
    if !ended.success() {
        return Err(format!("pitface {question} ended with {ended}").into());
    }
    Ok(Ran { took: began.elapsed(), memory_kb })
}

/// `VmHWM` of a process.
fn most_in_memory(status: &str) -> u64 {
    let text = fs::read_to_string(status).unwrap_or_default();
    let line = text.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    line.and_then(|rest| rest.split_whitespace().next()?.parse().ok()).unwrap_or(0)
}
