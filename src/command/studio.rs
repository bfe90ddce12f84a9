//! Finds the studio a command is about.

use super::Failure;
use crate::source::disk::{Disk, MARK};
use std::path::Path;

/// Returns the studio that was named, or the nearest one at or above the current folder.
pub fn find(named: Option<&Path>) -> Result<Disk, Failure> {
    if let Some(folder) = named {
        let disk = Disk::at(folder);
        if disk.is_studio() {
            return Ok(disk);
        }
        let why = if folder.is_dir() {
            format!("`{}` is no studio: it holds no `{MARK}`", folder.display())
        } else {
            format!("there is no folder `{}`", folder.display())
        };
        return Err(Failure(format!("{why}; name a studio's folder, or lay one out with `ballband start DIR`")));
    }
    let here = std::env::current_dir()?;
    Disk::find(&here).ok_or_else(|| {
        Failure(format!("there is no studio in `{}` or above it: no `{MARK}`; name one with `--studio DIR`, or lay one out with `ballband start DIR`", here.display()))
    })
}
