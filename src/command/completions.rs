//! `completions`: prints a script with which a shell completes commands and options.

use super::terminal;
use super::{Failure, Outcome};
use clap_complete::Shell;

/// Prints the script of a shell, made of the command's own definition.
pub fn completions(shell: Shell, mut command: clap::Command) -> Result<Outcome, Failure> {
    let name = command.get_name().to_owned();
    let mut script = Vec::new();
    clap_complete::generate(shell, &mut command, name, &mut script);
    terminal::say(&String::from_utf8_lossy(&script));
    Ok(Outcome::Done)
}
