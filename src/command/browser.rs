//! Opening the browser.

use std::process::{Command, Stdio};

/// Opens an address in the reader's own browser, without waiting for it.
///
/// # Errors
/// One sentence, if the system's opener could not be started; the preview goes on without.
pub fn open(address: &str) -> Result<(), String> {
    let (opener, before): (&str, &[&str]) = if cfg!(target_os = "macos") {
        ("open", &[])
    } else if cfg!(windows) {
        // `start` is a word of the shell; its first quoted argument would be a window's title.
        ("cmd", &["/C", "start", ""])
    } else {
        ("xdg-open", &[])
    };
    let started = Command::new(opener)
        .args(before)
        .arg(address)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn();
    match started {
        Ok(mut opener) => {
            // Waited for aside, so that no ended process is left in the system's list.
            std::thread::spawn(move || opener.wait());
            Ok(())
        }
        Err(error) => {
            Err(format!("the browser could not be opened with `{opener}` ({error}); open {address} yourself"))
        }
    }
}
