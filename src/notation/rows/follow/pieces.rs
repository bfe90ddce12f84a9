//! Stitches that are off the needle, by the piece they are of: "for left sleeve", or what stands above the piece.

use super::super::tree::{Item, Number};
use super::knitter::Knitter;
use crate::measure::SizeRun;

/// The most groups of stitches whose sums are looked at.
pub(super) const MOST: usize = 8;

/// The most groups that are kept; nobody's garment has as many.
const MOST_GROUPS: usize = 64;

/// Stitches that are off the needle.
#[derive(Clone, Debug)]
struct Group {
    /// What they are of.
    of: Option<String>,
    stitches: i64,
    /// Whether words put them aside; else they are of a piece that was left as another was cast on.
    aside: bool,
}

/// All stitches that are off the needle.
#[derive(Clone, Debug, Default)]
pub(super) struct Held {
    groups: Vec<Group>,
    /// Whether there are others whose number nobody knows.
    unsaid: bool,
    /// Whether a sentence has brought some back since the last piece was begun.
    pub(super) back: bool,
}

impl Held {
    /// Keeps stitches that words put aside.
    pub(super) fn put(&mut self, of: Option<&str>, stitches: i64) {
        self.groups.push(Group { of: of.map(str::to_owned), stitches, aside: true });
        self.bound();
    }

    /// Keeps in mind that words put stitches aside without saying how many.
    pub(super) fn put_unsaid(&mut self) {
        self.unsaid = true;
    }

    /// Keeps the stitches of a piece as another one is begun.
    pub(super) fn leave(&mut self, of: &str, stitches: i64) {
        self.groups.push(Group { of: Some(of.to_owned()), stitches, aside: false });
        self.bound();
    }

    /// Says what the stitches are of that were put aside last.
    pub(super) fn name_last(&mut self, of: Option<&str>) {
        if let (Some(last), Some(of)) = (self.groups.last_mut(), of) {
            last.of = Some(of.to_owned());
        }
        self.bound();
    }

    /// Lets go of the first group of a piece that has more of them than are looked at, and of all where there are too many.
    fn bound(&mut self) {
        let Some(last) = self.groups.last() else { return };
        let same: Vec<usize> =
            (0..).zip(&self.groups).filter(|(_, group)| group.of == last.of).map(|(at, _)| at).collect();
        if let Some(first) = same.first().filter(|_| same.len() > MOST + 1) {
            self.groups.remove(*first);
        }
        if self.groups.len() > MOST_GROUPS {
            self.groups.clear();
            self.unsaid = true;
        }
    }

    /// Whether so many were put aside of which nobody said what they are of.
    fn has_unnamed(&self, stitches: i64) -> bool {
        self.groups.iter().any(|group| group.of.is_none() && group.stitches == stitches)
    }

    /// The groups of a piece.
    fn of(&self, piece: &str) -> Vec<i64> {
        let those = |is: &dyn Fn(&str) -> bool| -> Vec<i64> {
            self.groups.iter().filter(|group| group.of.as_deref().is_some_and(is)).map(|group| group.stitches).collect()
        };
        let same = those(&|of| words(of).eq(words(piece)));
        if same.is_empty() { those(&|of| is_of(of, piece)) } else { same }
    }

    /// Where so many stitches are none that are off the needle, the nearest that are; `piece` is what they are said to be of.
    pub(super) fn unlike(&self, says: i64, piece: Option<&str>) -> Option<i64> {
        let named = piece.map(|piece| self.of(piece)).filter(|groups| !groups.is_empty());
        let groups = match named {
            Some(groups) => groups,
            None if self.groups.iter().any(|group| group.aside) => {
                self.groups.iter().map(|group| group.stitches).collect()
            }
            None => return None,
        };
        if self.unsaid || groups.len() > MOST || sums(&groups).contains(&says) {
            return None;
        }
        groups.into_iter().min_by_key(|group| group.abs_diff(says))
    }
}

impl Knitter<'_> {
    /// Another piece is cast on: that of the heading above it.
    pub(super) fn begin_piece(&mut self) {
        if let (Some(piece), Some(total @ 1..)) = (&self.piece, self.needle.total) {
            self.held.leave(piece, total);
        }
        self.piece = self.heading.clone();
        self.held.back = false;
    }

    /// The same row with the stitches of named pieces as they are: on the needle, or where they wait. Nothing where none is named.
    pub(super) fn with_pieces(&self, items: &[Item]) -> Option<Vec<Item>> {
        items.iter().any(names_piece).then(|| items.iter().map(|item| self.with_piece(item)).collect())
    }

    fn with_piece(&self, item: &Item) -> Item {
        match item {
            Item::Piece { number, of, at } => {
                let on_needle =
                    |number: Number| Item::Work { takes: 1, leaves: 1, times: number, binds: false, at: at.clone() };
                let groups = self.held.of(of);
                let only = match groups.as_slice() {
                    [only] => Some(*only),
                    _ => None,
                };
                let live = self
                    .needle
                    .total
                    .filter(|total| *total > 0 && self.piece.as_deref().is_some_and(|piece| is_of(piece, of)));
                match (number, live, only) {
                    (Some(number), None, _) if !groups.is_empty() || self.held.has_unnamed(number.of(self.size)) => {
                        Item::FromHold { number: number.clone(), of: Some(of.clone()), at: at.clone() }
                    }
                    (Some(number), ..) => on_needle(number.clone()),
                    (None, Some(live), _) => on_needle(one(live, at.end)),
                    (None, None, Some(only)) => {
                        Item::FromHold { number: one(only, at.end), of: Some(of.clone()), at: at.clone() }
                    }
                    (None, None, None) => Item::Unsaid { as_before: false, at: at.clone() },
                }
            }
            Item::Repeat { items, how, at } => {
                let items = items.iter().map(|item| self.with_piece(item)).collect();
                Item::Repeat { items, how: how.clone(), at: at.clone() }
            }
            other => other.clone(),
        }
    }

    /// How many stitches a piece has that is off the needle or on it, where that is certain.
    pub(super) fn stitches_of(&self, piece: &str) -> Option<i64> {
        match (self.held.of(piece).as_slice(), &self.piece) {
            ([only], _) => Some(*only),
            ([], Some(live)) if is_of(live, piece) => self.needle.total,
            _ => None,
        }
    }
}

fn one(number: i64, at: usize) -> Number {
    Number { values: SizeRun::one(number), at: at..at }
}

fn names_piece(item: &Item) -> bool {
    match item {
        Item::Piece { .. } => true,
        Item::Repeat { items, .. } => items.iter().any(names_piece),
        _ => false,
    }
}

/// Whether words that name a piece mean this one: every one of them is in its name.
fn is_of(name: &str, said: &str) -> bool {
    words(said).all(|word| words(name).any(|other| other == word))
}

/// The words of a name in small letters and without the s of several.
fn words(name: &str) -> impl Iterator<Item = String> + '_ {
    let all = name.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    all.map(|word| word.to_lowercase().trim_end_matches('s').to_owned())
}

/// What any of several groups come to together.
fn sums(groups: &[i64]) -> Vec<i64> {
    let mut sums = vec![0];
    for group in groups {
        let more: Vec<i64> = sums.iter().map(|sum: &i64| sum.saturating_add(*group)).collect();
        sums.extend(more);
    }
    sums
}
