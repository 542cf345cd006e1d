//! Where bundles that arrive belong: which go on from what is there, which are there already, which part from it as another copy
//! of their device, and which must wait for what.
//!
//! The edits of a device form a **line**; where two copies of a device wrote under its name, the line of the one parts from
//! that of the other. A bundle can be used when the edits before it are there and so are all its witness names; bundles
//! that name each other are used together.

use super::{Chain, DeviceId, EditName, Header, Witness};
use std::collections::{BTreeMap, BTreeSet};

/// A line of edits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Line {
    /// Whose.
    pub device: DeviceId,
    /// The line it parts from (its place in [`Plan::lines`]), if it is that of another copy.
    pub from: Option<usize>,
    /// Its first own sequence; what is before it belongs to the line it parts from.
    pub first: u64,
    /// Its last sequence.
    pub last: u64,
}

/// The place of the line that has the edit at a sequence of a line: itself, or one that it parts from.
pub fn line_at(lines: &[Line], line: usize, sequence: u64) -> usize {
    match lines[line] {
        Line { from: Some(from), first, .. } if sequence < first => line_at(lines, from, sequence),
        _ => line,
    }
}

/// A bundle that arrived.
#[derive(Debug, Clone, Copy)]
pub struct Arrival<'a> {
    /// Its header.
    pub header: &'a Header,
    /// The chain at each of its edits.
    pub chains: &'a [Chain],
}

impl Arrival<'_> {
    /// The chain at a sequence, if it tells it.
    pub(crate) fn chain_at(&self, sequence: u64) -> Option<Chain> {
        match (sequence + 1).checked_sub(self.header.first)? {
            0 => Some(self.header.before),
            count => self.chains.get(count as usize - 1).copied(),
        }
    }
}

/// What becomes of an arrival.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fate {
    /// It goes into a line.
    Used {
        /// The line's place in [`Plan::lines`].
        line: usize,
        /// The sequence of its first edit that is new; past its last if all were there.
        from: u64,
        /// The line of each entry of its witness.
        witness: Vec<usize>,
    },
    /// It waits for edits.
    Waits(Missing),
}

/// Edits that are missing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct Missing {
    /// Whose.
    pub device: DeviceId,
    /// First missing sequence.
    pub first: u64,
    /// Last missing sequence.
    pub last: u64,
}

/// What to do with all arrivals.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Plan {
    /// The lines that were known, as they go on, then those that begin.
    pub lines: Vec<Line>,
    /// The fate of each arrival, in the order given.
    pub fates: Vec<Fate>,
}

/// Plans the use of arrivals over the lines that are there. `chain_at` tells the chain of a known line (by its place) at a sequence it
/// has of its own.
///
/// # Errors
/// Whatever `chain_at` reports.
pub fn plan<E>(
    known: &[Line],
    arrivals: &[Arrival],
    mut chain_at: impl FnMut(usize, u64) -> Result<Chain, E>,
) -> Result<Plan, E> {
    let mut out: BTreeMap<usize, Missing> = BTreeMap::new();
    loop {
        let mut growing = Growing::new(known, arrivals, &mut chain_at);
        growing.place_all(&out)?;
        let mut lacking = BTreeMap::new();
        for (at, arrival) in arrivals.iter().enumerate() {
            if growing.placed[at].is_some() {
                for witness in &arrival.header.witness {
                    if growing.find(witness)?.is_none() {
                        lacking.insert(at, growing.missing(witness.name));
                    }
                }
            }
        }
        if lacking.is_empty() {
            return growing.into_plan(&out);
        }
        out.extend(lacking);
    }
}

/// Lines as arrivals are put to their ends.
struct Growing<'a, F> {
    lines: Vec<Line>,
    by_device: BTreeMap<DeviceId, BTreeSet<usize>>,
    /// How far each known line goes in the store; 0 for a new one.
    stored: Vec<u64>,
    /// For each line, what was put to its end: last sequence there, and the arrival.
    ends: Vec<BTreeMap<u64, usize>>,
    arrivals: &'a [Arrival<'a>],
    /// Line and first new sequence of each arrival that has a place.
    placed: Vec<Option<(usize, u64)>>,
    chain_at: &'a mut F,
}

impl<'a, E, F: FnMut(usize, u64) -> Result<Chain, E>> Growing<'a, F> {
    fn new(known: &[Line], arrivals: &'a [Arrival<'a>], chain_at: &'a mut F) -> Self {
        let mut by_device: BTreeMap<_, BTreeSet<_>> = BTreeMap::new();
        for (at, line) in known.iter().enumerate() {
            by_device.entry(line.device).or_default().insert(at);
        }
        Self {
            lines: known.to_vec(),
            by_device,
            stored: known.iter().map(|line| line.last).collect(),
            ends: vec![BTreeMap::new(); known.len()],
            arrivals,
            placed: vec![None; arrivals.len()],
            chain_at,
        }
    }

    /// Gives every arrival that can have one its place; a device's in their order, so that one round mostly does.
    fn place_all(&mut self, out: &BTreeMap<usize, Missing>) -> Result<(), E> {
        let mut left: Vec<usize> = (0..self.arrivals.len()).filter(|at| !out.contains_key(at)).collect();
        left.sort_by_key(|at| {
            let header = self.arrivals[*at].header;
            (header.device, header.first, header.last, header.after)
        });
        loop {
            let mut waiting = Vec::new();
            for &at in &left {
                if !self.place(at)? {
                    waiting.push(at);
                }
            }
            if waiting.len() == left.len() {
                return Ok(());
            }
            left = waiting;
        }
    }

    fn place(&mut self, at: usize) -> Result<bool, E> {
        let arrival = self.arrivals[at];
        let header = arrival.header;
        // Of the lines it goes on from, the one it follows furthest.
        let mut best: Option<(u64, usize)> = None;
        for line in self.by_device.get(&header.device).cloned().unwrap_or_default() {
            if self.chain(line, header.first - 1)? == Some(header.before) {
                let reach = self.common(line, &arrival)?;
                if best.is_none_or(|(longest, _)| reach > longest) {
                    best = Some((reach, line));
                }
            }
        }
        let (reach, line) = match best {
            Some(best) => best,
            None if header.first == 1 && !self.by_device.contains_key(&header.device) => {
                (0, self.begin(Line { device: header.device, from: None, first: 1, last: 0 }))
            }
            None => return Ok(false),
        };
        let line = if reach < header.last && reach < self.lines[line].last {
            let parts = Line { device: header.device, from: Some(line), first: reach + 1, last: reach };
            self.begin(parts)
        } else {
            line
        };
        if reach < header.last {
            self.lines[line].last = header.last;
            self.ends[line].insert(header.last, at);
        }
        self.placed[at] = Some((line, reach + 1));
        Ok(true)
    }

    fn begin(&mut self, line: Line) -> usize {
        let at = self.lines.len();
        self.by_device.entry(line.device).or_default().insert(at);
        self.lines.push(line);
        self.stored.push(0);
        self.ends.push(BTreeMap::new());
        at
    }

    /// The last sequence up to which a line and an arrival are the same; that before the arrival, at least.
    fn common(&mut self, line: usize, arrival: &Arrival) -> Result<u64, E> {
        let (mut same, mut other) =
            (arrival.header.first - 1, arrival.header.last.min(self.lines[line].last) + 1);
        while other - same > 1 {
            // The far end first: mostly all of it is the same.
            let middle = if other == arrival.header.last.min(self.lines[line].last) + 1 {
                other - 1
            } else {
                same.midpoint(other)
            };
            if self.chain(line, middle)? == arrival.chain_at(middle) {
                same = middle;
            } else {
                other = middle;
            }
        }
        Ok(same)
    }

    /// The chain of a line at a sequence; `None` if it does not go that far.
    fn chain(&mut self, line: usize, sequence: u64) -> Result<Option<Chain>, E> {
        let Line { device, from, first, last } = self.lines[line];
        if sequence == 0 {
            return Ok(Some(Chain::start(device)));
        }
        if sequence > last {
            return Ok(None);
        }
        match from {
            Some(from) if sequence < first => return self.chain(from, sequence),
            _ => {}
        }
        if sequence <= self.stored[line] {
            return (self.chain_at)(line, sequence).map(Some);
        }
        let end = self.ends[line].range(sequence..).next();
        Ok(end.and_then(|(_, at)| self.arrivals[*at].chain_at(sequence)))
    }

    /// The line that a witness speaks of.
    fn find(&mut self, witness: &Witness) -> Result<Option<usize>, E> {
        let EditName { device, sequence } = witness.name;
        for line in self.by_device.get(&device).cloned().unwrap_or_default() {
            if self.chain(line, sequence)? == Some(witness.chain) {
                return Ok(Some(line));
            }
        }
        Ok(None)
    }

    /// Returns what is missing up to an edit. If the line goes that far, it is that of another copy, of which nothing may be here.
    fn missing(&self, name: EditName) -> Missing {
        let lines = self.by_device.get(&name.device);
        let last = lines.into_iter().flatten().map(|line| self.lines[*line].last).max().unwrap_or(0);
        let first = if last < name.sequence { last + 1 } else { 1 };
        Missing { device: name.device, first, last: name.sequence }
    }

    fn into_plan(mut self, out: &BTreeMap<usize, Missing>) -> Result<Plan, E> {
        let mut fates = Vec::new();
        for (at, arrival) in self.arrivals.iter().enumerate() {
            let fate = match (out.get(&at), self.placed[at]) {
                (Some(missing), _) => Fate::Waits(*missing),
                (None, Some((line, from))) => {
                    let mut witness = Vec::new();
                    for named in &arrival.header.witness {
                        witness.extend(self.find(named)?);
                    }
                    Fate::Used { line, from, witness }
                }
                (None, None) => {
                    let before = arrival.header.first - 1;
                    Fate::Waits(self.missing(EditName { device: arrival.header.device, sequence: before }))
                }
            };
            fates.push(fate);
        }
        Ok(Plan { lines: self.lines, fates })
    }
}
