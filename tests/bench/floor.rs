//! `floor STUDIO SITE OUT`: the least that any program must do to make that site of that studio, and how long it takes.
//!
//! It reads the studio's texts, parses their YAML and turns their Markdown into HTML with the crates that ballband uses, on as
//! many threads, and writes to OUT, which must be new, as many files of the same sizes as SITE holds. It works out nothing and
//! links nothing. The walk over SITE to learn the sizes is not counted.
#![allow(
    clippy::disallowed_methods,
    clippy::indexing_slicing,
    clippy::print_stdout,
    reason = "a tool for measuring that is given numbers, not a writer's files"
)]

use pulldown_cmark::{Options, Parser, html};
use rayon::prelude::*;
use std::collections::BTreeSet;
use std::error::Error;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::time::Instant;
use walkdir::WalkDir;

/// The folder of our own records in a made site; what is in it is no page.
const RECORDS: &str = ".ballband";

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<PathBuf> = std::env::args_os().skip(1).map(PathBuf::from).collect();
    let [studio, site, out] = arguments.as_slice() else {
        return Err("usage: floor STUDIO SITE OUT".into());
    };
    let wanted = sizes(site)?;
    // The threads are begun before the clock: a process that begins anew pays for that once, not for every stage.
    rayon::broadcast(|_| ());

    let start = Instant::now();
    let texts = read(studio)?;
    let read_at = start.elapsed();
    texts.par_iter().try_for_each(|text| parse(front(text)))?;
    let parsed_at = start.elapsed();
    let pages: Vec<String> = texts.par_iter().map(|text| markdown(body(text))).collect();
    let rendered_at = start.elapsed();
    write(out, &wanted)?;
    let all = start.elapsed();

    // The HTML is kept to here, as a program that writes it must.
    let html: usize = pages.iter().map(String::len).sum();
    println!(
        "{:.1} ms: read {:.1}, yaml {:.1}, markdown {:.1}, write {:.1} ({} texts, {html} bytes of HTML, {} files)",
        all.as_secs_f64() * 1e3,
        read_at.as_secs_f64() * 1e3,
        (parsed_at - read_at).as_secs_f64() * 1e3,
        (rendered_at - parsed_at).as_secs_f64() * 1e3,
        (all - rendered_at).as_secs_f64() * 1e3,
        texts.len(),
        wanted.len(),
    );
    Ok(())
}

/// Returns the path and size of each file of a made site.
fn sizes(site: &Path) -> Result<Vec<(PathBuf, usize)>, Box<dyn Error>> {
    let mut sizes = Vec::new();
    for entry in WalkDir::new(site).into_iter().filter_entry(|entry| entry.file_name() != RECORDS) {
        let entry = entry?;
        if entry.file_type().is_file() {
            let size = usize::try_from(entry.metadata()?.len())?;
            sizes.push((entry.path().strip_prefix(site)?.to_path_buf(), size));
        }
    }
    Ok(sizes)
}

fn read(studio: &Path) -> Result<Vec<String>, Box<dyn Error>> {
    let mut paths = Vec::new();
    for entry in WalkDir::new(studio) {
        let entry = entry?;
        let is_text = entry.path().extension().is_some_and(|extension| extension == "md" || extension == "yaml");
        if entry.file_type().is_file() && is_text {
            paths.push(entry.into_path());
        }
    }
    Ok(paths.par_iter().map(fs::read_to_string).collect::<io::Result<_>>()?)
}

/// Returns a file's YAML: what stands between its first two `---` lines, or all of it.
fn front(text: &str) -> &str {
    text.strip_prefix("---\n").and_then(|rest| rest.split_once("\n---\n")).map_or(text, |(front, _)| front)
}

/// Returns a file's Markdown: what stands after its second `---` line.
fn body(text: &str) -> &str {
    text.strip_prefix("---\n").and_then(|rest| rest.split_once("\n---\n")).map_or("", |(_, body)| body)
}

fn parse(yaml: &str) -> Result<(), serde_yaml::Error> {
    serde_yaml::from_str::<serde_yaml::Value>(yaml).map(|value| drop(std::hint::black_box(value)))
}

fn markdown(text: &str) -> String {
    let options = Options::ENABLE_TABLES | Options::ENABLE_FOOTNOTES | Options::ENABLE_HEADING_ATTRIBUTES;
    let mut page = String::with_capacity(text.len() * 3 / 2);
    html::push_html(&mut page, Parser::new_ext(text, options));
    page
}

fn write(out: &Path, wanted: &[(PathBuf, usize)]) -> io::Result<()> {
    let largest = wanted.iter().map(|(_, size)| *size).max().unwrap_or(0);
    let filler = vec![b'x'; largest];
    let folders: BTreeSet<PathBuf> =
        wanted.iter().filter_map(|(path, _)| path.parent()).map(|folder| out.join(folder)).collect();
    for folder in &folders {
        fs::create_dir_all(folder)?;
    }
    wanted.par_iter().try_for_each(|(path, size)| fs::write(out.join(path), &filler[..*size]))
}
