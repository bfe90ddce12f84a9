//! The `ballband` command.

use std::process::ExitCode;

fn main() -> ExitCode {
    ballband::command::run()
}
