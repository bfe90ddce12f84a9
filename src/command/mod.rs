//! The edge: one file a command. Each finds the studio, walks the stages, prints, and chooses an exit status.
//!
//! Exit status: 0 done, 1 the studio has errors, 2 the command itself could not be done.
#![allow(
    clippy::disallowed_methods,
    reason = "the terminal, the clock and the current folder are read here and handed on as values"
)]

mod blurb;
mod browser;
mod clipboard;
mod completions;
mod count;
mod interrupt;
mod jot;
mod links;
mod make;
mod manual;
mod need;
mod proof;
mod schema;
mod start;
mod studio;
mod terminal;
mod watch;
mod written;

use crate::entry::value::Date;
use clap::{CommandFactory, Parser, Subcommand};
use std::path::PathBuf;
use std::process::ExitCode;

/// What an exit status means, for the help and the manual.
const STATUS: &str =
    "Exit status: 0 done; 1 the studio has errors, and nothing was written; 2 the command could not be done.";

/// Makes a linked web site of a knitwear designer's patterns, projects, yarns and weekly notes.
#[derive(Debug, Parser)]
#[command(name = "ballband", version, about, after_help = STATUS, max_term_width = 100, arg_required_else_help = true)]
struct Arguments {
    /// The studio's folder; the nearest one with a `studio.yaml`, here or above, if not given.
    #[arg(long, global = true, value_name = "DIR")]
    studio: Option<PathBuf>,

    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Lay out a new studio with a few explained entries.
    #[command(after_help = "Example:\n  ballband start my-studio")]
    Start {
        /// The folder to make; it must be new or empty.
        dir: PathBuf,
    },
    /// Write the site; nothing is touched if the studio has an error.
    #[command(after_help = "Example:\n  ballband make --to site --as-of 2026-11-25")]
    Make {
        /// The site's folder; `site` in the studio if not given.
        #[arg(long, value_name = "DIR")]
        to: Option<PathBuf>,
        /// Make the site as it is on this day; today if not given.
        #[arg(long, value_name = "DATE", value_parser = date)]
        as_of: Option<Date>,
    },
    /// Show the site and the desk on this machine while you write, and again at each save.
    #[command(after_help = "Example:\n  ballband watch --open")]
    Watch(watch::Watched),
    /// Read everything for what is wrong or does not agree; exits with 1 on an error.
    #[command(
        after_help = "Example:\n  ballband proof --format json\n  ballband proof --links\n  ballband proof --schema .schemas"
    )]
    Proof {
        /// For people, or one JSON object a line.
        #[arg(long, value_enum, default_value_t = proof::Format::Text)]
        format: proof::Format,
        /// Read the studio as it is on this day; today if not given.
        #[arg(long, value_name = "DATE", value_parser = date)]
        as_of: Option<Date>,
        /// Ask every address elsewhere whether it is still there; good answers are kept for a week.
        #[arg(long)]
        links: bool,
        /// Read nothing, and write the schemas that help an editor into this folder.
        #[arg(long, value_name = "DIR", conflicts_with_all = ["format", "as_of", "links"])]
        schema: Option<PathBuf>,
    },
    /// Begin this week's note: what is on the needles, what was finished, and the headings of the last one.
    #[command(after_help = "Example:\n  ballband jot\n  ballband jot --date 2026-11-27")]
    Jot {
        /// The note's day; today if not given.
        #[arg(long, value_name = "DATE", value_parser = date)]
        date: Option<Date>,
    },
    /// Print the yarn to buy for a pattern, published or not, and which size to make.
    #[command(after_help = need::EXAMPLES)]
    Need(need::Asked),
    /// Print the text to paste under a note's video: chapters, links and how you came by things, cut to what it takes.
    #[command(after_help = blurb::EXAMPLES)]
    Blurb(blurb::Asked),
    /// Work out stitches, rows, evenly spread changes and shaping, for one size or a run of them.
    #[command(subcommand)]
    Count(count::Asked),
    /// Print a script with which a shell completes commands and options.
    #[command(after_help = "Example:\n  ballband completions fish > ~/.config/fish/completions/ballband.fish")]
    Completions {
        /// The shell.
        shell: clap_complete::Shell,
    },
    /// Print the manual as a page for `man`.
    #[command(after_help = "Example:\n  ballband manual > ballband.1 && man ./ballband.1")]
    Manual,
}

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Outcome {
    /// It did what was asked.
    Done,
    /// The studio has errors.
    Errors,
}

/// Why a command could not be done: one sentence for the person who gave it.
#[derive(Debug)]
struct Failure(String);

impl<T: std::fmt::Display> From<T> for Failure {
    fn from(why: T) -> Self {
        Self(why.to_string())
    }
}

/// Runs the command of the process's own arguments.
pub fn run() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(error) => {
            // Help and version are no mistakes; nothing can be done about a terminal that is gone.
            let _ = error.print();
            return ExitCode::from(if error.use_stderr() { 2 } else { 0 });
        }
    };
    let studio = arguments.studio.as_deref();
    let outcome = match arguments.command {
        Command::Start { dir } => start::start(&dir),
        Command::Make { to, as_of } => make::make(studio, to.as_deref(), as_of.unwrap_or_else(today)),
        Command::Watch(how) => watch::watch(studio, &how),
        Command::Proof { schema: Some(folder), .. } => schema::proof(&folder),
        Command::Proof { format, as_of, links, schema: None } => {
            let asked = links.then(today);
            proof::proof(studio, format, as_of.unwrap_or_else(today), asked)
        }
        Command::Jot { date } => jot::jot(studio, date.unwrap_or_else(today)),
        Command::Count(asked) => count::count(studio, &asked, today()),
        Command::Blurb(asked) => blurb::blurb(studio, &asked, today()),
        Command::Need(asked) => need::need(studio, &asked, today()),
        Command::Completions { shell } => completions::completions(shell, Arguments::command()),
        Command::Manual => manual::manual(Arguments::command()),
    };
    match outcome {
        Ok(Outcome::Done) => ExitCode::SUCCESS,
        Ok(Outcome::Errors) => ExitCode::from(1),
        Err(Failure(why)) => {
            terminal::complain(&why);
            ExitCode::from(2)
        }
    }
}

fn today() -> Date {
    Date::from(jiff::ZonedDateTime::now().date())
}

fn date(text: &str) -> Result<Date, String> {
    Date::parse(text).ok_or_else(|| "write year, month and day: 2026-11-25".to_owned())
}
