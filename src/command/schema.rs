//! `proof --schema`: writes the JSON Schemas that help an editor, and nothing else.

use super::terminal;
use super::{Failure, Outcome};
use crate::entry::schema::{MARK, files};
use std::fs;
use std::io::ErrorKind;
use std::path::Path;

/// Writes every schema into a folder and says so.
pub fn proof(folder: &Path) -> Result<Outcome, Failure> {
    let count = write(folder)?;
    terminal::say(&format!("{count} schemas in `{}`\n", folder.display()));
    Ok(Outcome::Done)
}

/// Writes every schema into a folder, which is made if it is not there; returns how many there are.
///
/// A file that has the name of one and was not written by us is left as it is, and then none is written.
pub fn write(folder: &Path) -> Result<usize, Failure> {
    let files = files();
    for (name, _) in &files {
        let file = folder.join(name);
        if !is_free(&file) {
            return Err(Failure(format!(
                "`{}` was not written by ballband, so no schema was written; move it away or name another folder",
                file.display()
            )));
        }
    }
    let doing = |what: &str, error: std::io::Error| {
        Failure(format!("cannot {what} `{}`: {error}; name a folder for the schemas", folder.display()))
    };
    fs::create_dir_all(folder).map_err(|error| doing("make the folder", error))?;
    for (name, text) in &files {
        fs::write(folder.join(name), text).map_err(|error| doing("write into", error))?;
    }
    Ok(files.len())
}

/// Returns whether a schema may be written here: there is nothing yet, or an earlier schema.
fn is_free(file: &Path) -> bool {
    match fs::read(file) {
        Ok(bytes) => {
            let schema: Option<serde_json::Value> = serde_json::from_slice(&bytes).ok();
            let comment = schema.as_ref().and_then(|schema| schema.get("$comment")?.as_str());
            comment.is_some_and(|comment| comment.starts_with(MARK))
        }
        // A folder that is none is told of when it cannot be made.
        Err(error) => matches!(error.kind(), ErrorKind::NotFound | ErrorKind::NotADirectory),
    }
}
