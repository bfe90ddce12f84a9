//! All files of the studio for measuring.

use super::entries;
use super::kinds::{Kinds, file};
use super::random::Random;

// Lengths and weights are drawn at random, so checks of how likely they are would only tell of the drawing.
const STUDIO: &str = "title: A studio for measuring\n\
summary: As many entries as were asked for.\n\
url: https://studio.example/\n\
designer: Nobody Inparticular\n\
language: en-GB\n\
units: metric\n\
margin: 10%\n\
checks: { yardage-unlikely: off, sample-over: off }\n";

/// Returns the path and the text of each file, `studio.yaml` first.
pub fn files(count: usize, seed: u64) -> impl Iterator<Item = (String, String)> {
    let (list, kinds) = Kinds::of(count);
    let entries = list.into_iter().enumerate().map(move |(number, (kind, of_kind))| {
        let text = entries::entry(kind, of_kind, &kinds, &mut Random::new(seed, number));
        (file(kind, of_kind), text)
    });
    std::iter::once(("studio.yaml".to_owned(), STUDIO.to_owned())).chain(entries)
}
