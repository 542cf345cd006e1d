//! Who is who where a notes file says no ids: a record is looked for only among those that the same file brought, under the
//! same parent. One that is unchanged is found first, then one of the same name (machines), then the most alike; what shares
//! too little with all of them is new.

use super::cells::{Cell, Kind};
use super::said::{Digest, Digests, Said};
use super::sources::Base;
use crate::record::RecordId;
use std::collections::{BTreeMap, BTreeSet, HashMap};

/// Share of what is said of two records that has to be the same for one to be the other, in percent. Our judgement: a step of which one of
/// two answers was corrected is still that step.
const ALIKE_PERCENT: usize = 50;

/// The same for a pit or a pass, unless it stands in the same place of a list that is as long as it was. Our judgement: two pits of one field
/// share most of their walk, and one dug instead of another must not become that one.
const WHOLE_ALIKE_PERCENT: usize = 75;

/// Cells that name other records: those may have got an id for this reading alone.
const NAMES_OTHERS: [Cell; 2] = [Cell::PASS_MACHINE, Cell::AFTER_DIG_BEFORE];

/// The ids that the records of a file have here, by those `made` for this reading. `None`: the file is now of another field than before.
pub(super) fn matched(
    said: &[Said],
    made: &BTreeSet<RecordId>,
    base: &Base,
) -> Option<BTreeMap<RecordId, RecordId>> {
    let (field, known) = (said.first()?.record, base.field?);
    let taken = said.iter().map(|said| said.record).filter(|record| !made.contains(record)).collect();
    let file = Tree::of(said.iter().map(|said| (said.record, said.parent, said.kind, said.digests())));
    let mut order: Vec<_> = base.records.iter().collect();
    order.sort_by_key(|(record, known)| (known.rank, **record));
    let here = Tree::of(
        order.into_iter().map(|(record, known)| (*record, known.parent, known.kind, known.cells.clone())),
    );
    let mut matching = Matching { file: &file, here: &here, made, taken, given: BTreeMap::new() };
    if field != known {
        if !made.contains(&field) {
            return None;
        }
        matching.give(field, known);
    }
    matching.children(field, known);
    let is_it = !made.contains(&field)
        || matching.given.len() > 1
        || file.named(field, Cell::FIELD_NAME) == here.named(known, Cell::FIELD_NAME);
    is_it.then_some(matching.given)
}

/// Records with what hangs on them.
struct Tree {
    children: HashMap<RecordId, Vec<(RecordId, Kind)>>,
    own: HashMap<RecordId, Digests>,
}

impl Tree {
    fn of(records: impl Iterator<Item = (RecordId, Option<RecordId>, Kind, Digests)>) -> Self {
        let mut tree = Self { children: HashMap::new(), own: HashMap::new() };
        for (record, parent, kind, digests) in records {
            if let Some(parent) = parent {
                tree.children.entry(parent).or_default().push((record, kind));
            }
            tree.own.insert(record, digests);
        }
        tree
    }

    fn list(&self, parent: RecordId, kind: Kind) -> Vec<RecordId> {
        let children = self.children.get(&parent).into_iter().flatten();
        children.filter(|(_, other)| *other == kind).map(|(record, _)| *record).collect()
    }

    fn named(&self, record: RecordId, cell: Cell) -> Option<Digest> {
        self.own.get(&record)?.get(&cell.number()).copied()
    }

    /// All that is said of a record and of what hangs on it, sorted; not its place.
    fn content(&self, record: RecordId) -> Vec<(u16, Digest)> {
        let own = self.own.get(&record).into_iter().flatten().map(|(cell, digest)| (*cell, *digest));
        let own = own.filter(|(cell, _)| {
            let cell = Cell::from_number(*cell);
            cell != Cell::PARENT && !NAMES_OTHERS.contains(&cell)
        });
        let children = self.children.get(&record).into_iter().flatten();
        let mut content: Vec<_> = own.chain(children.flat_map(|(child, _)| self.content(*child))).collect();
        content.sort_unstable();
        content
    }
}

struct Matching<'a> {
    file: &'a Tree,
    here: &'a Tree,
    made: &'a BTreeSet<RecordId>,
    /// Ids that are somebody's already.
    taken: BTreeSet<RecordId>,
    given: BTreeMap<RecordId, RecordId>,
}

impl Matching<'_> {
    fn give(&mut self, made: RecordId, known: RecordId) {
        self.taken.insert(known);
        self.given.insert(made, known);
    }

    /// The records of the lists of one parent, and of what hangs on them.
    fn children(&mut self, parent: RecordId, known: RecordId) {
        const LISTS: [Kind; 11] = [
            Kind::Part,
            Kind::BuriedLine,
            Kind::Pit,
            Kind::Step,
            Kind::Layer,
            Kind::Roll,
            Kind::Photo,
            Kind::Machine,
            Kind::Pass,
            Kind::AfterDig,
            Kind::Person,
        ];
        for kind in LISTS {
            self.list(kind, self.file.list(parent, kind), self.here.list(known, kind));
        }
        for (child, _) in self.file.children.get(&parent).into_iter().flatten() {
            let is = self.given.get(child).copied().unwrap_or(*child);
            if self.here.own.contains_key(&is) {
                self.children(*child, is);
            }
        }
    }

    fn list(&mut self, kind: Kind, file: Vec<RecordId>, here: Vec<RecordId>) {
        let as_long = file.len() == here.len();
        let mut new: Vec<_> =
            file.into_iter().enumerate().filter(|(_, record)| self.made.contains(record)).collect();
        let mut old: Vec<_> =
            here.into_iter().enumerate().filter(|(_, record)| !self.taken.contains(record)).collect();
        let content = |tree: &Tree, list: &[(usize, RecordId)]| -> HashMap<RecordId, Vec<(u16, Digest)>> {
            list.iter().map(|(_, record)| (*record, tree.content(*record))).collect()
        };
        let (says, said) = (content(self.file, &new), content(self.here, &old));
        self.equal(
            &mut new,
            &mut old,
            |record| says.get(&record).cloned(),
            |record| said.get(&record).cloned(),
        );
        if kind == Kind::Machine {
            let (file, here) = (self.file, self.here);
            self.equal(
                &mut new,
                &mut old,
                |record| file.named(record, Cell::MACHINE_NAME),
                |record| here.named(record, Cell::MACHINE_NAME),
            );
        }
        let mut pairs = Vec::new();
        for (at, record) in &new {
            for (was_at, known) in &old {
                let (one, other) = (&says[record], &said[known]);
                let percent = 100 * shared(one, other) / one.len().max(other.len()).max(1);
                let whole = matches!(kind, Kind::Pit | Kind::Pass) && !(as_long && at == was_at);
                if percent >= if whole { WHOLE_ALIKE_PERCENT } else { ALIKE_PERCENT } {
                    pairs.push((usize::MAX - percent, at.abs_diff(*was_at), *at, *was_at, *record, *known));
                }
            }
        }
        pairs.sort_unstable();
        for (.., record, known) in pairs {
            if !self.given.contains_key(&record) && !self.taken.contains(&known) {
                self.give(record, known);
            }
        }
        // Parts of one pit or pass: as many are left here as there, so they are those, one after the other.
        new.retain(|(_, record)| !self.given.contains_key(record));
        old.retain(|(_, known)| !self.taken.contains(known));
        if new.len() == old.len()
            && matches!(kind, Kind::Step | Kind::Layer | Kind::Roll | Kind::Photo | Kind::AfterDig)
        {
            for ((_, record), (_, known)) in new.into_iter().zip(old) {
                self.give(record, known);
            }
        }
    }

    /// Gives each record the first free one that is equal in something.
    fn equal<T: std::hash::Hash + Eq>(
        &mut self,
        new: &mut Vec<(usize, RecordId)>,
        old: &mut Vec<(usize, RecordId)>,
        of_new: impl Fn(RecordId) -> Option<T>,
        of_old: impl Fn(RecordId) -> Option<T>,
    ) {
        let mut free: HashMap<T, Vec<RecordId>> = HashMap::new();
        for (_, known) in old.iter().rev() {
            if let Some(key) = of_old(*known) {
                free.entry(key).or_default().push(*known);
            }
        }
        new.retain(|(_, record)| {
            let known = of_new(*record).and_then(|key| free.get_mut(&key)?.pop());
            if let Some(known) = known {
                self.give(*record, known);
            }
            known.is_none()
        });
        old.retain(|(_, known)| !self.taken.contains(known));
    }
}

/// How many items two sorted lists share.
fn shared<T: Ord>(one: &[T], other: &[T]) -> usize {
    let (mut at, mut count) = (0, 0);
    for item in one {
        while other.get(at).is_some_and(|next| next < item) {
            at += 1;
        }
        if other.get(at) == Some(item) {
            (at, count) = (at + 1, count + 1);
        }
    }
    count
}
