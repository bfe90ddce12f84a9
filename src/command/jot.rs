//! `jot`: begins this week's note.

use super::terminal;
use super::{Failure, Outcome, studio};
use crate::catalogue::{Eyes, View};
use crate::entry::Kind;
use crate::entry::value::Date;
use crate::finding::any_error;
use crate::reckon::jot::{jotted, note_of};
use crate::render::jot;
use crate::source::FilePath;
use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::path::Path;

/// Writes the beginning of a day's note, unless there is a note of that day.
pub fn jot(named: Option<&Path>, day: Date) -> Result<Outcome, Failure> {
    let disk = studio::find(named)?;
    let joined = crate::join(&disk, View { today: day, eyes: Eyes::Designer })
        .map_err(|error| format!("cannot read the studio in `{}`: {error}", disk.root().display()))?;
    // A note with a mistake in it is no entry, and is that day's note all the same.
    let is_of =
        |path: &&FilePath| path.folder() == Some(Kind::Note.folder()) && Date::leading(path.stem()) == Some(day);
    let unread = joined.texts.texts.keys().find(is_of);
    if let Some(there) = note_of(&joined.catalogue, day).map(|note| &note.origin.file).or(unread) {
        return Ok(is_there(there.as_str()));
    }
    let jotted = jotted(&joined.catalogue);
    let path = jot::path(&jotted);
    let file = disk.root().join(&path);
    let doing = |error: io::Error| Failure(format!("cannot write `{}`: {error}", file.display()));
    if let Some(parent) = file.parent() {
        fs::create_dir_all(parent).map_err(doing)?;
    }
    match OpenOptions::new().write(true).create_new(true).open(&file) {
        Ok(mut file) => file.write_all(jot::text(&jotted).as_bytes()).map_err(doing)?,
        Err(error) if error.kind() == io::ErrorKind::AlreadyExists => return Ok(is_there(&path)),
        Err(error) => return Err(doing(error)),
    }
    if any_error(&joined.findings) {
        terminal::complain(
            "the studio has errors, so something may be missing in the note; `ballband proof` tells them",
        );
    }
    terminal::say(&format!(
        "began `{path}`, which nobody sees yet\nwrite it, mend what is under `worked on`, and take out `ready: false` when readers may have it\n"
    ));
    Ok(Outcome::Done)
}

fn is_there(path: &str) -> Outcome {
    terminal::say(&format!("`{path}` is there already, so nothing was written\n"));
    Outcome::Done
}
