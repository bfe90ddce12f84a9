//! `start`: lays out a new studio.

use super::schema;
use super::terminal;
use super::{Failure, Outcome};
use crate::entry::schema::FOLDER;
use std::fs;
use std::path::Path;

macro_rules! content {
    ($($path:literal),* $(,)?) => { &[$( ($path, include_bytes!(concat!("../../content/", $path))), )*] };
}

/// The studio that is laid out: paths and contents. A test compares the list with the folder.
pub static CONTENT: &[(&str, &[u8])] = content!(
    "studio.yaml",
    "yarns.yaml",
    "people.yaml",
    "patterns/first-hat.md",
    "patterns/bank-mittens.md",
    "projects/rainy-day-hat.md",
    "projects/two-socks.md",
    "journal/2026-10-16-one-and-a-half.md",
    "techniques/closing-a-crown.md",
    "pages/about.md",
);

/// Writes the explained studio into a new or empty folder, with the schemas that its files name for an editor.
pub fn start(folder: &Path) -> Result<Outcome, Failure> {
    let doing = |what: &str, error: std::io::Error| Failure(format!("cannot {what} `{}`: {error}", folder.display()));
    if folder.exists() {
        let mut inside = fs::read_dir(folder).map_err(|error| doing("look into", error))?;
        if inside.next().is_some() {
            return Err(Failure(format!(
                "`{}` is not empty, so nothing was written; name a new folder",
                folder.display()
            )));
        }
    }
    for (path, bytes) in CONTENT {
        let file = folder.join(path);
        if let Some(parent) = file.parent() {
            fs::create_dir_all(parent).map_err(|error| doing("make folders in", error))?;
        }
        fs::write(&file, bytes).map_err(|error| doing("write into", error))?;
    }
    schema::write(&folder.join(FOLDER))?;
    terminal::say(&format!(
        "laid out a studio in `{0}`\nlook through its files with the site beside you: ballband watch --open --studio {0}\n\
         make the site as it is to be published: ballband make --studio {0}\n",
        folder.display()
    ));
    Ok(Outcome::Done)
}
