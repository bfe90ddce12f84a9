//! `blurb`: prints the text to paste under a note's video.

use super::{Failure, Outcome, clipboard, studio, terminal};
use crate::catalogue::{Catalogue, View};
use crate::entry::value::Date;
use crate::entry::{Entry, Key, Kind, Note, Outlet, Reference};
use crate::finding::{any_error, nearest};
use crate::page::{PictureSizes, Shown};
use crate::render::blurb::{self, ForOutlets};
use clap::Args;
use std::path::Path;

/// What the help of the command ends with.
pub const EXAMPLES: &str = "Examples:
  ballband blurb > under-the-video.txt
  ballband blurb 12 --outlet video --copy
  ballband blurb 2026-11-20-reeds

What must be said of gifts, loans and links by which you earn, in which words and where, differs from country to
country and from one video host to another: read the rules that hold for you, and set the words under `disclosure`.";

/// What is asked.
#[derive(Debug, Args)]
pub struct Asked {
    /// The note: its key, which is the name of its file, its number or its day; the latest, ready or not, if not given.
    note: Option<String>,
    /// Only for this outlet of `studio.yaml`.
    #[arg(long, value_name = "NAME")]
    outlet: Option<String>,
    /// Put the text on the clipboard and do not print it.
    #[arg(long)]
    copy: bool,
    /// What readers can follow on this day; today, or the note's day if that is later, if not given.
    #[arg(long, value_name = "DATE", value_parser = super::date)]
    as_of: Option<Date>,
}

/// Prints or copies the text, and tells beside it how long it is and what was left out.
pub fn blurb(named: Option<&Path>, asked: &Asked, today: Date) -> Result<Outcome, Failure> {
    let disk = studio::find(named)?;
    let joined = crate::join(&disk, View::of_readers(asked.as_of.unwrap_or(today)))
        .map_err(|error| format!("cannot read the studio in `{}`: {error}", disk.root().display()))?;
    let catalogue = &joined.catalogue;
    let (entry, note) = find(catalogue, asked.note.as_deref())?;
    let outlets = outlets(catalogue, asked.outlet.as_deref())?;
    if asked.copy && outlets.len() > 1 {
        let names: Vec<String> = outlets.iter().map(|(name, _)| format!("`--outlet \"{name}\"`")).collect();
        return Err(Failure(format!("the clipboard takes one text: add {}", names.join(" or "))));
    }
    if any_error(&joined.findings) {
        terminal::complain("the studio has errors, so a line may be missing or wrong; `ballband proof` tells them");
    }
    let sizes = PictureSizes::new();
    let shown = Shown::for_one(catalogue, &sizes);
    if entry.common.ready == Some(false) {
        terminal::complain(&format!("`{}` is not ready: its own address leads nowhere until it is", entry.id));
    }
    let texts = blurb::blurbs(&shown, entry, note, &outlets);
    for (at, text) in texts.iter().enumerate() {
        if asked.copy {
            clipboard::copy(&text.blurb.text)?;
        }
        if at > 0 {
            terminal::say("\n");
        }
        terminal::tell(&beside(text, asked.copy));
        if !asked.copy {
            terminal::say(&text.blurb.text);
        }
    }
    Ok(Outcome::Done)
}

/// Returns what is told beside a text: how long it is for each outlet, and what it lacks.
fn beside(text: &ForOutlets, copied: bool) -> String {
    let mut told = String::new();
    for (name, size) in &text.outlets {
        told.push_str(&format!("{name}: {size}{}\n", if copied { "; copied" } else { "" }));
    }
    for lack in text.blurb.lacks() {
        told.push_str(&format!("  {lack}\n"));
    }
    told
}

/// How many notes are offered for a beginning that several keys have, the latest first.
const MOST_NAMED: usize = 3;

fn named<'a>(keys: impl Iterator<Item = &'a str>) -> String {
    keys.map(|key| format!("`{key}`")).collect::<Vec<_>>().join(" or ")
}

/// Returns a note by its key, its number or its day; the latest by its day if none is named.
fn find<'a>(catalogue: &'a Catalogue, written: Option<&str>) -> Result<(&'a Entry, &'a Note), Failure> {
    let notes = || catalogue.of_kind(Kind::Note).iter().filter_map(|entry| Some((entry, entry.note()?)));
    let Some(written) = written else {
        let latest = notes().max_by_key(|(entry, note)| (note.date, entry.id.clone()));
        return latest.ok_or_else(|| Failure("there is no note yet; the first one goes into `journal`".to_owned()));
    };
    let key = written.strip_prefix("note:").unwrap_or(written);
    let of = |key: Key| catalogue.entry(&Reference { kind: Kind::Note, key });
    let by_key = Key::new(key).and_then(of).and_then(|entry| Some((entry, entry.note()?)));
    let number = written.parse::<u32>().ok();
    let mut numbered = notes().filter(|(_, note)| number.is_some() && note.number == number);
    if let Some(found) = by_key.or_else(|| numbered.next()) {
        return match numbered.next() {
            Some((second, _)) if by_key.is_none() => Err(Failure(format!(
                "two notes have the number {written}: name `{}` or `{}`",
                found.0.id.key, second.id.key
            ))),
            _ => Ok(found),
        };
    }
    let day = Date::parse(key);
    let of_day: Vec<_> = notes().filter(|(_, note)| day.is_some() && note.date == day).collect();
    if let [one] = of_day.as_slice() {
        return Ok(*one);
    }
    let keys = || catalogue.of_kind(Kind::Note).iter().map(|entry| entry.id.key.as_str());
    let begin: Vec<&str> = keys().filter(|known| known.starts_with(key)).collect();
    let help = match (of_day.as_slice(), begin.as_slice(), nearest(key, keys())) {
        ([_, ..], _, _) => {
            let names = named(of_day.iter().map(|(entry, _)| entry.id.key.as_str()));
            return Err(Failure(format!("{} notes are of {key}: name {names}", of_day.len())));
        }
        (_, [_, ..], _) => format!("did you mean {}?", named(begin.iter().rev().take(MOST_NAMED).copied())),
        (_, _, Some(near)) => format!("did you mean `{near}`?"),
        (_, _, None) => "name the key of one, which is the name of its file, its number or its day".to_owned(),
    };
    Err(Failure(format!("there is no note `{key}`; {help}")))
}

/// Returns the outlets asked for.
fn outlets(catalogue: &Catalogue, wanted: Option<&str>) -> Result<Vec<(String, Outlet)>, Failure> {
    let all = blurb::outlets(&catalogue.studio);
    let Some(wanted) = wanted else { return Ok(all) };
    let names = || all.iter().map(|(name, _)| name.as_str());
    let help = match nearest(wanted, names()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("there is {}", names().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")),
    };
    let found: Vec<_> = all.iter().filter(|(name, _)| name == wanted).cloned().collect();
    if found.is_empty() { Err(Failure(format!("there is no outlet `{wanted}`; {help}"))) } else { Ok(found) }
}
