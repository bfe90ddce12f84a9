//! `generate DIR COUNT [SEED]`: lays out a studio of any size for measuring, the same for the same seed.
//!
//! Entries are of about 3 KB and linked to each other as a real studio's are: a quarter patterns, three in ten projects, seven
//! in twenty notes, one in twenty yarns, and the rest people and techniques, with six plain pages. There are no pictures, and nothing
//! in it is wrong. DIR must be new or empty.
#![allow(
    clippy::disallowed_methods,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a tool for measuring that is given numbers, not a writer's files"
)]

mod entries;
mod kinds;
mod prose;
mod random;

use kinds::Kinds;
use random::Random;
use std::error::Error;
use std::fs;
use std::path::Path;

// Lengths and weights are drawn at random, so checks of how likely they are would only tell of the drawing.
const STUDIO: &str = "title: A studio for measuring\n\
summary: As many entries as were asked for.\n\
url: https://studio.example/\n\
designer: Nobody Inparticular\n\
language: en-GB\n\
units: metric\n\
margin: 10%\n\
checks: { yardage-unlikely: off, sample-over: off }\n";

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let (folder, count, seed) = match arguments.as_slice() {
        [folder, count] => (folder, count.parse()?, 1),
        [folder, count, seed] => (folder, count.parse()?, seed.parse()?),
        _ => return Err("usage: generate DIR COUNT [SEED]".into()),
    };
    write(Path::new(folder), count, seed)
}

fn write(folder: &Path, count: usize, seed: u64) -> Result<(), Box<dyn Error>> {
    fs::create_dir_all(folder)?;
    if fs::read_dir(folder)?.next().is_some() {
        return Err(format!("`{}` is not empty", folder.display()).into());
    }
    fs::write(folder.join("studio.yaml"), STUDIO)?;
    let (list, kinds) = Kinds::of(count);
    let mut bytes = 0;
    for (number, (kind, of_kind)) in list.into_iter().enumerate() {
        let text = entries::entry(kind, of_kind, &kinds, &mut Random::new(seed, number));
        let path = folder.join(kinds::file(kind, of_kind));
        if let Some(parent) = path.parent() {
            fs::create_dir_all(parent)?;
        }
        bytes += text.len();
        fs::write(path, text)?;
    }
    println!("{count} entries of {} bytes on average", bytes.checked_div(count).unwrap_or(0));
    Ok(())
}
