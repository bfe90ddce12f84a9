//! Stitches that are off the needle, by the piece they are of: "for left sleeve", or what stands above the piece.

use super::super::tree::{Item, Number};
use super::knitter::Knitter;
use super::piece_names::{copies, is_of};
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
    /// Whether it is certain what they are of: those taken out of a piece may be of another.
    sure: bool,
}

/// Stitches of one piece or of several that are alike.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Pieces {
    pub(super) stitches: i64,
    pub(super) copies: usize,
}

/// The pieces that words may mean which name one.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Named {
    /// On the needle.
    pub(super) live: Option<Pieces>,
    /// Off it.
    pub(super) held: Vec<Pieces>,
}

impl Named {
    pub(super) fn is_empty(&self) -> bool {
        self.live.is_none() && self.held.is_empty()
    }

    /// How many pieces they are.
    pub(super) fn copies(&self) -> usize {
        self.held.iter().chain(&self.live).map(|pieces| pieces.copies).sum()
    }

    /// The stitches of each.
    pub(super) fn stitches(&self) -> Vec<i64> {
        let mut all = each(&self.held);
        all.extend(self.live.iter().flat_map(|live| each(std::slice::from_ref(live))));
        all
    }
}

/// The stitches of each of several pieces.
fn each(pieces: &[Pieces]) -> Vec<i64> {
    pieces.iter().flat_map(|pieces| std::iter::repeat_n(pieces.stitches, pieces.copies)).collect()
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
    /// Keeps stitches that words put aside; `sure` is whether it is certain what they are of.
    pub(super) fn put(&mut self, of: Option<&str>, stitches: i64, sure: bool) {
        self.groups.push(Group { of: of.map(str::to_owned), stitches, aside: true, sure: sure && of.is_some() });
        self.bound();
    }

    /// Keeps in mind that words put stitches aside without saying how many.
    pub(super) fn put_unsaid(&mut self) {
        self.unsaid = true;
    }

    /// Keeps the stitches of a piece as another one is begun.
    pub(super) fn leave(&mut self, of: &str, stitches: i64) {
        self.groups.push(Group { of: Some(of.to_owned()), stitches, aside: false, sure: true });
        self.bound();
    }

    /// Says what the stitches are of that were put aside last.
    pub(super) fn name_last(&mut self, of: Option<&str>) {
        if let (Some(last), Some(of)) = (self.groups.last_mut(), of) {
            last.of = Some(of.to_owned());
            last.sure = true;
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

    /// The stitches that words put aside, where they are one group.
    pub(super) fn only(&self) -> Option<i64> {
        let mut aside = self.groups.iter().filter(|group| group.aside);
        aside.next().filter(|_| aside.next().is_none() && !self.unsaid).map(|group| group.stitches)
    }

    /// Whether nothing is known to be off the needle.
    pub(super) fn is_empty(&self) -> bool {
        self.groups.is_empty() && !self.unsaid
    }

    /// Whether there are others whose number nobody knows.
    pub(super) fn is_unsaid(&self) -> bool {
        self.unsaid
    }

    /// How surely any is meant by words that name a piece.
    fn sureness(&self, piece: &str) -> Option<u8> {
        self.groups.iter().filter_map(|group| is_of(group.of.as_deref()?, piece)).max()
    }

    /// Whether no stitches were taken out of a piece and put aside.
    fn is_whole(&self, piece: &str) -> bool {
        let of = |group: &&Group| group.of.as_deref().is_some_and(|of| is_of(of, piece).is_some());
        self.groups.iter().filter(of).all(|group| group.sure)
    }

    /// The groups of a piece, as surely meant as any, or as one that is meant so surely already.
    fn of(&self, piece: &str, least: Option<u8>) -> Vec<Pieces> {
        let sure = |group: &Group| group.of.as_deref().and_then(|of| is_of(of, piece));
        let best = self.groups.iter().filter_map(sure).chain(least).max();
        let those = self.groups.iter().filter(|group| best.is_some() && sure(group) == best);
        those.map(|group| Pieces { stitches: group.stitches, copies: group.of.as_deref().map_or(1, copies) }).collect()
    }

    /// Where so many stitches are none that are off the needle, the nearest that are; `piece` is what they are said to be of.
    pub(super) fn unlike(&self, says: i64, piece: Option<&str>) -> Option<i64> {
        let named = piece.map(|piece| self.of(piece, None)).filter(|groups| !groups.is_empty());
        let groups = match named {
            Some(groups) => each(&groups),
            // Another piece than those that are known may have been put aside in words that say nothing of it.
            None if self.groups.iter().any(|group| group.aside && (piece.is_none() || !group.sure)) => {
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
                let Named { live, held: groups } = self.named_pieces(of);
                let live = live.map(|live| live.stitches);
                let only = match groups.as_slice() {
                    [only] => Some(only.stitches),
                    _ => None,
                };
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

    /// The pieces that words may mean which name one.
    pub(super) fn named_pieces(&self, said: &str) -> Named {
        let live = self.piece.as_deref().zip(self.needle.total.filter(|total| *total > 0));
        let live = live.and_then(|(piece, stitches)| Some((is_of(piece, said)?, stitches, copies(piece))));
        let sure = live.map(|(sure, ..)| sure);
        let live = live.filter(|_| self.held.sureness(said) <= sure);
        let live = live.map(|(_, stitches, copies)| Pieces { stitches, copies });
        Named { live, held: self.held.of(said, sure) }
    }

    /// How many stitches a piece came to as a whole, where that is certain.
    pub(super) fn whole_of(&self, piece: &str) -> Option<i64> {
        self.held.is_whole(piece).then(|| self.stitches_of(piece)).flatten()
    }

    /// How many stitches a piece has that is off the needle or on it, where that is certain.
    pub(super) fn stitches_of(&self, piece: &str) -> Option<i64> {
        let Named { live, held } = self.named_pieces(piece);
        match (held.as_slice(), live) {
            ([only], _) => Some(only.stitches),
            ([], live) => live.map(|live| live.stitches),
            _ => None,
        }
    }
}

/// A number of all sizes.
pub(super) fn one(number: i64, at: usize) -> Number {
    Number { values: SizeRun::one(number), at: at..at }
}

pub(super) fn names_piece(item: &Item) -> bool {
    match item {
        Item::Piece { .. } => true,
        Item::Repeat { items, .. } => items.iter().any(names_piece),
        _ => false,
    }
}

/// What any of several groups come to together.
pub(super) fn sums(groups: &[i64]) -> Vec<i64> {
    let mut sums = vec![0];
    for group in groups {
        let more: Vec<i64> = sums.iter().map(|sum: &i64| sum.saturating_add(*group)).collect();
        sums.extend(more);
    }
    sums
}
