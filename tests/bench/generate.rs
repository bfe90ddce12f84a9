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
mod studio;

use std::error::Error;
use std::fs;
use std::path::Path;

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
    let mut bytes = 0;
    for (path, text) in studio::files(count, seed) {
        let path = folder.join(path);
        if let Some(parent) = path.parent() {
            fs::create_dir_all(parent)?;
        }
        bytes += text.len();
        fs::write(path, text)?;
    }
    println!("{count} entries of {} bytes on average", bytes.checked_div(count).unwrap_or(0));
    Ok(())
}
