//! Putting a text on the system's clipboard, through the system's own program.

use std::io::{ErrorKind, Write};
use std::process::{Command, Stdio};

/// The programs that do it, with their arguments; the first that is there and can.
const PROGRAMS: [(&str, &[&str]); 4] =
    [("wl-copy", &[]), ("xclip", &["-selection", "clipboard"]), ("pbcopy", &[]), ("clip", &[])];

/// Puts a text on the clipboard.
///
/// # Errors
/// One sentence, if no program is there that can.
pub fn copy(text: &str) -> Result<(), String> {
    let mut failed = Vec::new();
    for (program, arguments) in PROGRAMS {
        match through(program, arguments, text) {
            Ok(()) => return Ok(()),
            Err(error) if error.kind() == ErrorKind::NotFound => {}
            Err(error) => failed.push(format!("`{program}` could not put the text on the clipboard ({error})")),
        }
    }
    let why = if failed.is_empty() {
        "there is no program here that puts a text on the clipboard (`wl-copy` or `xclip`)".to_owned()
    } else {
        failed.join("; ")
    };
    Err(format!("{why}; leave `--copy` out, and copy what is printed"))
}

fn through(program: &str, arguments: &[&str], text: &str) -> std::io::Result<()> {
    // Some of them stay behind to hand the text on, and would keep our own output open.
    let mut started = Command::new(program)
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()?;
    let written = started.stdin.take().map_or(Ok(()), |mut to| to.write_all(&bytes(program, text)));
    let status = started.wait()?;
    if !status.success() {
        return Err(std::io::Error::other(status.to_string()));
    }
    written
}

/// Returns a text as a program takes it: UTF-8, but for `clip`, which knows UTF-16 by its mark (from memory).
fn bytes(program: &str, text: &str) -> Vec<u8> {
    match program {
        "clip" => std::iter::once(0xfeff).chain(text.encode_utf16()).flat_map(u16::to_le_bytes).collect(),
        _ => text.as_bytes().to_vec(),
    }
}
