//! The `ballband` command.

use std::process::ExitCode;

/// A site is made of very many small texts on all threads; this allocator takes a quarter off the time (see tests/bench).
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    ballband::command::run()
}
