//! Works through written rows as a knitter would, block after block, and tells where they do not come out.

mod again;
mod ahead;
mod apart;
mod begin;
mod chart;
mod dashes;
mod held;
mod join;
mod knitter;
mod markers;
mod pace;
mod past;
mod piece_names;
mod pieces;
mod row;
mod shape;
mod sides;
mod spells;
mod usual;

use super::fault::Fault;
use super::statement::Written;
use super::tree::Span;
use knitter::Knitter;
use std::collections::HashMap;
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
    // Where each mistake of a place stands among those told.
    let mut places = HashMap::new();
    for size in 0..sizes {
        let mut knitter = Knitter::new(blocks, size);
        knitter.work();
        for (block, at, fault) in knitter.told {
            let told = &mut followed.told;
            let place = (block, at.start, at.end, discriminant(&fault));
            let index = *places.entry(place).or_insert(told.len());
            match told.get_mut(index) {
                // Told again of a row that is worked several times.
                Some(told) if told.sizes.last().is_some_and(|(last, _)| *last == size) => {}
                Some(told) => told.sizes.push((size, fault)),
                None => told.push(Told { block, at, sizes: vec![(size, fault)] }),
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
