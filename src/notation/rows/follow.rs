//! Works through written rows as a knitter would, block after block, and tells where they do not come out.

use super::count::{Fault, Needle, Outcome, Reading, count};
use super::tree::{Again, Doing, How, Item, Number, Repeated, Rows, Span, Statement, Written};
use std::collections::BTreeMap;
use std::mem::discriminant;

/// A mistake in one place, with the figures of every size that has it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// Which block, counted from 0.
    pub block: usize,
    /// Where in the block's text.
    pub at: Span,
    /// The sizes, counted from 0, each with what is wrong in it; never empty.
    pub sizes: Vec<(usize, Fault)>,
}

/// How many stitches there are behind a statement, for each size; `None` where that is not known.
pub type Seen = Vec<Option<i64>>;

/// What comes of working through rows.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Followed {
    /// What does not come out, by block and place.
    pub told: Vec<Told>,
    /// The stitches behind every statement of every block.
    pub counts: Vec<Vec<Seen>>,
}

/// Works through blocks in every size. The count goes on from one block to the next; "Cast on" begins anew.
pub fn follow(blocks: &[Written], sizes: usize) -> Followed {
    let unknown = |block: &Written| vec![vec![None; sizes]; block.statements.len()];
    let mut followed = Followed { told: Vec::new(), counts: blocks.iter().map(unknown).collect() };
    for size in 0..sizes {
        let mut knitter = Knitter::new(blocks, size);
        knitter.work();
        for (block, at, fault) in knitter.told {
            let same = |told: &&mut Told| {
                let kind = told.sizes.first().map(|(_, first)| discriminant(first));
                told.block == block && told.at == at && kind == Some(discriminant(&fault))
            };
            match followed.told.iter_mut().find(same) {
                // Told again of a row that is worked several times.
                Some(told) if told.sizes.last().is_some_and(|(last, _)| *last == size) => {}
                Some(told) => told.sizes.push((size, fault)),
                None => followed.told.push(Told { block, at, sizes: vec![(size, fault)] }),
            }
        }
        for ((block, statement), total) in knitter.after {
            let seen = followed.counts.get_mut(block).and_then(|block| block.get_mut(statement));
            if let Some(place) = seen.and_then(|seen| seen.get_mut(size)) {
                *place = total;
            }
        }
    }
    followed.told.sort_by_key(|told| (told.block, told.at.start, told.at.end));
    followed
}

/// A statement by its block and its place in it.
type Id = (usize, usize);

/// The most rows that are worked, repeats included; beyond, the count is given up.
const MOST_ROWS: usize = 20_000;

/// The most steps all rows together may take; nobody's pattern comes near.
const MOST_STEPS: u64 = 2_000_000;

/// One who works through the rows in one size.
struct Knitter<'a> {
    blocks: &'a [Written],
    size: usize,
    needle: Needle,
    /// Numbered rows since the numbers last began anew.
    rows: BTreeMap<u32, Id>,
    /// The row that stands for every other one, and its number.
    others: Option<(u32, Id)>,
    /// Rows that are read and not yet worked: a label may name one that comes after the next.
    waiting: Vec<(u32, Id)>,
    /// The rows worked, the last one last; nothing for one without a list of stitches.
    history: Vec<Option<Id>>,
    /// What the last row added, where that is known.
    last_change: Option<i64>,
    /// Words that lost the count and have not been told of.
    lost_at: Option<(usize, Span)>,
    steps: u64,
    told: Vec<(usize, Span, Fault)>,
    after: BTreeMap<Id, Option<i64>>,
}

impl<'a> Knitter<'a> {
    fn new(blocks: &'a [Written], size: usize) -> Self {
        Self {
            blocks,
            size,
            needle: Needle::UNKNOWN,
            rows: BTreeMap::new(),
            others: None,
            waiting: Vec::new(),
            history: Vec::new(),
            last_change: None,
            lost_at: None,
            steps: 0,
            told: Vec::new(),
            after: BTreeMap::new(),
        }
    }

    fn work(&mut self) {
        for (block, written) in self.blocks.iter().enumerate() {
            for (at, statement) in written.statements.iter().enumerate() {
                self.statement((block, at), statement);
            }
            self.work_waiting();
        }
    }

    fn get(&self, id: Id) -> Option<&'a Statement> {
        self.blocks.get(id.0)?.statements.get(id.1)
    }

    fn tell(&mut self, block: usize, at: Span, fault: Fault) {
        self.told.push((block, at, fault));
    }

    fn statement(&mut self, id: Id, statement: &'a Statement) {
        if let Doing::Row { label: Some(label), .. } = &statement.doing
            && (!label.numbers.is_empty() || label.others.is_some())
        {
            let first = label.numbers.first().copied().unwrap_or(0);
            if first == 1 && self.rows.contains_key(&1) {
                self.work_waiting();
                self.rows.clear();
                self.others = None;
            }
            for number in &label.numbers {
                self.rows.entry(*number).or_insert(id);
                self.waiting.push((*number, id));
            }
            if let Some(number) = label.others {
                self.others = Some((number, id));
            }
            return;
        }
        if statement.doing != Doing::Aside {
            self.work_waiting();
        }
        match &statement.doing {
            Doing::Row { items, label } => {
                if items.is_empty() && label.is_none() && statement.trouble.is_none() {
                    self.stated(id, statement, id.0 > 0 && id.1 == 0);
                } else {
                    self.row(id, statement, true);
                }
            }
            Doing::CastOn(number) => {
                self.needle = Needle::of(number.of(self.size));
                self.rows.clear();
                self.others = None;
                self.history.clear();
                (self.last_change, self.lost_at) = (None, None);
                self.stated(id, statement, false);
            }
            Doing::PutAside(number) => {
                let number = number.of(self.size);
                if let Some(total) = self.needle.total {
                    let after = total - number;
                    if after < 0 {
                        self.tell(id.0, statement.at.clone(), Fault::Short { by: -after, had: total });
                    }
                    self.needle = if after < 0 { Needle::UNKNOWN } else { Needle::of(after) };
                }
                self.stated(id, statement, false);
            }
            Doing::Repeat(repeated) => self.repeat(id, statement, repeated),
            Doing::Plain => {
                self.history.push(None);
                self.last_change = Some(0);
                self.needle.here = self.needle.total;
                self.stated(id, statement, false);
            }
            Doing::Established => {
                if self.last_change != Some(0) {
                    self.lose(id.0, statement.at.clone(), statement.trouble.is_some());
                }
                self.history.push(None);
                self.stated(id, statement, false);
            }
            Doing::Unsaid => {
                self.lose(id.0, statement.at.clone(), statement.trouble.is_some());
                self.last_change = None;
                self.stated(id, statement, false);
            }
            Doing::BindOff => {
                self.needle = Needle::UNKNOWN;
                self.lost_at = None;
                self.stated(id, statement, false);
            }
            Doing::Heading => {
                self.rows.clear();
                self.others = None;
            }
            Doing::Aside => self.stated(id, statement, false),
        }
        if statement.doing != Doing::Aside {
            self.after.insert(id, self.needle.total);
        }
    }

    /// The count is lost at some words; what was told of already is not told again.
    fn lose(&mut self, block: usize, at: Span, told: bool) {
        if self.needle.total.is_some() && !told {
            self.lost_at = Some((block, at));
        }
        self.needle = Needle::UNKNOWN;
    }

    /// Works the numbered rows that were read, in the order of their numbers.
    fn work_waiting(&mut self) {
        let mut rows = std::mem::take(&mut self.waiting);
        if let Some((number, id)) = self.others {
            let from = rows.iter().map(|(row, _)| *row).min().unwrap_or(0);
            let to = rows.iter().map(|(row, _)| *row).max().unwrap_or(0);
            for row in (from..=to).filter(|row| row % 2 == number % 2) {
                if !rows.iter().any(|(other, _)| *other == row) {
                    rows.push((row, id));
                }
            }
        }
        rows.sort_by_key(|(number, _)| *number);
        for at in 0..rows.len() {
            let Some((_, id)) = rows.get(at).copied() else { return };
            let last = !rows.iter().skip(at + 1).any(|(_, other)| *other == id);
            if let Some(statement) = self.get(id) {
                self.row(id, statement, last);
                self.after.insert(id, self.needle.total);
            }
        }
    }

    /// The items of a row, those of another where it says so.
    fn items(&mut self, id: Id, statement: &'a Statement, depth: usize) -> Option<&'a [Item]> {
        let Doing::Row { items, .. } = &statement.doing else { return None };
        let [Item::SameAs { row, at }] = items.as_slice() else { return Some(items) };
        match self.numbered(*row).filter(|other| *other != id).and_then(|other| Some((other, self.get(other)?))) {
            Some((other, named)) if depth < 8 => self.items(other, named, depth + 1),
            _ => {
                self.tell(id.0, at.clone(), Fault::NoRow { row: *row });
                None
            }
        }
    }

    fn numbered(&self, row: u32) -> Option<Id> {
        let others = || self.others.filter(|(number, _)| number % 2 == row % 2).map(|(_, id)| id);
        self.rows.get(&row).copied().or_else(others)
    }

    /// Works one row, and holds it against what it says of itself if it is worked for the last time.
    fn row(&mut self, id: Id, statement: &'a Statement, last: bool) {
        self.history.push(Some(id));
        if let Some((block, at)) = self.lost_at.take() {
            self.tell(block, at, Fault::Unknown);
        }
        if statement.trouble.is_some() {
            self.needle = Needle::UNKNOWN;
            self.last_change = None;
            self.stated(id, statement, false);
            return;
        }
        let Some(items) = self.items(id, statement, 0) else {
            self.needle = Needle::UNKNOWN;
            return;
        };
        if let [Item::Unsaid { as_before, .. }] = items {
            // As the rows before: none the more if they add none.
            if !as_before || self.last_change != Some(0) {
                self.lose(id.0, statement.at.clone(), false);
            }
            self.stated(id, statement, false);
            return;
        }
        let outcome = self.outcome(items);
        let unfit = outcome.faults.iter().any(|(fault, _)| unfit(*fault));
        for (fault, at) in outcome.faults {
            self.tell(id.0, at, fault);
        }
        if let (Some(says), Some(is), false) = (change(statement, self.size), outcome.change, unfit) {
            let rows = match &statement.doing {
                Doing::Row { label: Some(label), .. } => label.numbers.len(),
                _ => 1,
            };
            // A note on several rows may be of each or of all.
            let all = i64::try_from(rows).ok().map(|rows| is.saturating_mul(rows));
            if last && says != is && all != Some(says) {
                let at = statement.change.as_ref().map_or_else(|| statement.at.clone(), |change| change.by.at.clone());
                self.tell(id.0, at, Fault::Change { says, is });
            }
        }
        if let (Some(at), None) = (outcome.unsaid, &statement.stated) {
            self.lose(id.0, at, false);
        }
        self.needle = outcome.after;
        self.last_change = outcome.change;
        if last {
            self.stated(id, statement, false);
        }
    }

    /// Works items on what is on the needle; a pattern that takes for ever is given up.
    fn outcome(&mut self, items: &[Item]) -> Outcome {
        if self.steps > MOST_STEPS {
            return Outcome::default();
        }
        let outcome = outcome(items, self.needle, self.size);
        self.steps += u64::from(outcome.steps);
        outcome
    }

    /// Holds the count against what is said of it; an unknown one is then known.
    fn stated(&mut self, id: Id, statement: &Statement, section: bool) {
        let Some(says) = statement.stated.as_ref().and_then(|stated| stated.values.get(self.size).copied()) else {
            return;
        };
        match self.needle.total {
            Some(is) if is != says => {
                let at = statement.stated.as_ref().map_or_else(|| statement.at.clone(), |stated| stated.at.clone());
                let fault = if section { Fault::Section { says, is } } else { Fault::Stated { says, is } };
                self.tell(id.0, at, fault);
                // Which of the two is right nobody knows, so nothing that follows is held against either.
                self.needle = Needle::UNKNOWN;
            }
            Some(_) => {}
            None => {
                self.needle = Needle::of(says);
                self.lost_at = None;
            }
        }
    }

    fn repeat(&mut self, id: Id, statement: &'a Statement, repeated: &Repeated) {
        let Some(rows) = self.repeated_rows(id, repeated) else {
            self.lose(id.0, statement.at.clone(), true);
            self.stated(id, statement, false);
            return;
        };
        let before = self.needle;
        match &repeated.again {
            Again::More(number) => self.passes(id, repeated, &rows, number.of(self.size)),
            Again::Times(number) => {
                let times = number.of(self.size);
                let told = self.told.len();
                self.passes(id, repeated, &rows, times);
                let says = statement.stated.as_ref().and_then(|stated| stated.values.get(self.size).copied());
                let wrong = self.told.len() > told || says.zip(self.needle.total).is_some_and(|(says, is)| says != is);
                if wrong && times > 0 {
                    let (kept, needle) = (self.told.split_off(told), self.needle);
                    self.needle = before;
                    self.passes(id, repeated, &rows, times - 1);
                    let fits = self.told.len() == told && says.is_some() && says == self.needle.total;
                    if fits {
                        self.tell(id.0, number.at.clone(), Fault::InAll { times });
                    } else {
                        self.told.truncate(told);
                        self.told.extend(kept);
                        self.needle = needle;
                    }
                }
            }
            Again::UntilStitches(number) => self.until_stitches(id, &rows, number),
            Again::Unsaid => {
                self.passes(id, repeated, &rows, 1);
                if self.needle.total != before.total {
                    self.needle = before;
                    self.lose(id.0, statement.at.clone(), false);
                }
            }
        }
        self.stated(id, statement, false);
    }

    /// The rows that are worked again; nothing, and told, where one of them is not there.
    fn repeated_rows(&mut self, id: Id, repeated: &Repeated) -> Option<Vec<Option<Id>>> {
        match &repeated.rows {
            Rows::Last(number) => {
                let start = self.history.len().checked_sub(usize::try_from(*number).ok()?)?;
                Some(self.history.get(start..)?.to_vec())
            }
            Rows::Numbered(numbers) => {
                let mut all = Vec::new();
                for number in numbers {
                    match self.numbered(*number) {
                        Some(row) => all.push(Some(row)),
                        None => {
                            self.tell(id.0, repeated.at.clone(), Fault::NoRow { row: *number });
                            return None;
                        }
                    }
                }
                Some(all)
            }
        }
    }

    /// Works rows once more; returns what was on the needle before the first that does not fit.
    fn pass(&mut self, rows: &[Option<Id>]) -> Result<(), i64> {
        for row in rows {
            let Some(id) = *row else { continue };
            let Some(statement) = self.get(id) else { continue };
            let told = self.told.len();
            let items = if statement.trouble.is_some() { None } else { self.items(id, statement, 0) };
            self.told.truncate(told);
            let before = self.needle;
            match items {
                Some([Item::Unsaid { as_before: true, .. }]) if self.last_change == Some(0) => {}
                Some(items) => {
                    let outcome = self.outcome(items);
                    self.needle = outcome.after;
                    self.last_change = outcome.change;
                    if outcome.faults.iter().any(|(fault, _)| unfit(*fault)) {
                        return Err(before.here.unwrap_or(0));
                    }
                }
                None => self.needle = Needle::UNKNOWN,
            }
        }
        Ok(())
    }

    fn passes(&mut self, id: Id, repeated: &Repeated, rows: &[Option<Id>], times: i64) {
        // A first working that does not fit was told of where it stands.
        let mut worked = 0;
        for pass in 1..=times {
            let before = self.needle;
            if before == Needle::UNKNOWN {
                break;
            }
            worked += rows.len();
            if worked > MOST_ROWS || self.steps > MOST_STEPS {
                self.lost_at = Some((id.0, repeated.at.clone()));
                self.needle = Needle::UNKNOWN;
                break;
            }
            if let Err(had) = self.pass(rows) {
                self.tell(id.0, repeated.at.clone(), Fault::Again { pass, had });
                self.needle = Needle::UNKNOWN;
                break;
            }
            if self.needle == before {
                break;
            }
        }
        self.history.extend(rows.iter().copied());
    }

    fn until_stitches(&mut self, id: Id, rows: &[Option<Id>], number: &Number) {
        let wanted = number.of(self.size);
        let Some(first) = self.needle.total else {
            self.needle = Needle::of(wanted);
            return;
        };
        let falls = first > wanted;
        let mut worked = 0;
        while let Some(total) = self.needle.total {
            if total == wanted {
                return;
            }
            worked += rows.len().max(1);
            let passed = if falls { total < wanted } else { total > wanted };
            let before = self.needle;
            if passed || self.pass(rows).is_err() || self.needle == before || worked > MOST_ROWS {
                self.tell(id.0, number.at.clone(), Fault::Missed { wanted, is: total });
                self.needle = Needle::UNKNOWN;
            }
        }
    }
}

/// Whether a fault keeps a row from being worked as it stands.
fn unfit(fault: Fault) -> bool {
    !matches!(fault, Fault::InAll { .. } | Fault::BoundOff { .. })
}

/// What a row is said to add.
fn change(statement: &Statement, size: usize) -> Option<i64> {
    let change = statement.change.as_ref()?;
    let by = change.by.values.get(size).copied()?;
    Some(if change.less { -by } else { by })
}

/// Works a row in whichever reading fits; one that is not the usual is told of.
fn outcome(items: &[Item], needle: Needle, size: usize) -> Outcome {
    let usual = count(items, needle, size, Reading::More);
    if usual.faults.is_empty() {
        return usual;
    }
    if let Some((times, at)) = again(items) {
        let mut other = count(items, needle, size, Reading::InAll);
        if other.faults.is_empty() {
            other.faults.push((Fault::InAll { times: times.of(size) }, at));
            return other;
        }
    }
    if let (Some(&(Fault::LeftOver { left, .. }, _)), true) = (usual.faults.first(), usual.bound > 0)
        && left == usual.bound
    {
        // In some houses the stitch that is left from binding off is the first of the next ones.
        let at = usual.faults.first().map_or(0..0, |(_, at)| at.clone());
        let total = needle.total.zip(once_change(items, size)).map(|(total, change)| total.saturating_add(change));
        let after = total.map_or(Needle::UNKNOWN, Needle::of);
        let faults = vec![(Fault::BoundOff { stitches: left }, at)];
        return Outcome { after, change: once_change(items, size), faults, ..usual };
    }
    usual
}

fn once_change(items: &[Item], size: usize) -> Option<i64> {
    super::count::once(items, size, Reading::More).map(|counts| counts.leaves.saturating_sub(counts.takes))
}

/// The first repeat whose times may be meant in two ways.
fn again(items: &[Item]) -> Option<(&Number, Span)> {
    items.iter().find_map(|item| match item {
        Item::Repeat { how: How::Again(number), .. } => Some((number, number.at.clone())),
        Item::Repeat { items, .. } => again(items),
        _ => None,
    })
}
