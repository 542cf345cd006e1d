//! The same through JNA: a Java beside this process (`Border.kt`) that is told act by act what to do.
//!
//! `bash android/test` leaves the compiled Kotlin behind and `bash tests/bench/library` the library as it goes on a phone; without
//! them nothing is measured here, and that is said.

use std::error::Error;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::time::Duration;

/// A session held by a Java.
pub struct Jvm {
    child: Child,
    acts: Option<ChildStdin>,
    answers: BufReader<ChildStdout>,
}

/// What a call there came to.
pub struct Took {
    /// From call to answer, in Kotlin.
    pub time: Duration,
    /// The tap was saved.
    pub saved: bool,
}

impl Jvm {
    /// Starts a Java on the session's `folder`.
    pub fn start(folder: &Path) -> Result<Self, Box<dyn Error>> {
        let built = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../android/target");
        let beside = std::env::current_exe()?;
        let libraries = beside.ancestors().nth(2).ok_or("the binary has no folder")?.join("shell");
        let classpath = built.join("classpath.txt");
        let border = built.join("test-classes/org/pitface/BorderKt.class");
        let library = libraries.join("libpitface_bindings.so");
        for needed in [&border, &classpath, &library] {
            if !needed.exists() {
                return Err(format!("{} is missing", needed.display()).into());
            }
        }
        let classpath = std::fs::read_to_string(classpath)?;
        let folders =
            [built.join("classes"), built.join("test-classes")].map(|path| path.display().to_string());
        let mut child = Command::new("java")
            .arg("-Djna.encoding=UTF-8")
            .arg(format!("-Djna.library.path={}", libraries.display()))
            .args(["-cp", &format!("{}:{classpath}", folders.join(":"))])
            .arg("org.pitface.BorderKt")
            .arg(folder)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()?;
        let acts = child.stdin.take();
        let answers = BufReader::new(child.stdout.take().ok_or("the Java has no output")?);
        Ok(Self { child, acts, answers })
    }

    /// Sends an act, or nothing for the screen again.
    pub fn send(&mut self, act: &str) -> Result<Took, Box<dyn Error>> {
        writeln!(self.acts.as_mut().ok_or("the Java has ended")?, "{act}")?;
        let mut answer = String::new();
        self.answers.read_line(&mut answer)?;
        let (nanos, saved) =
            answer.trim().split_once(' ').ok_or("the Java has ended; what it said is above")?;
        Ok(Took { time: Duration::from_nanos(nanos.parse()?), saved: saved == "true" })
    }
}

impl Drop for Jvm {
    fn drop(&mut self) {
        // Without input it ends.
        self.acts = None;
        let _ = self.child.wait();
    }
}
