//! `proof`: prints every finding.

use super::terminal;
use super::{Failure, Outcome, links, studio};
use crate::catalogue::View;
use crate::entry::value::Date;
use crate::finding::{any_error, sort, to_json, to_text};
use clap::ValueEnum;
use std::io::{self, IsTerminal};
use std::path::Path;

/// How findings are printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// For people.
    Text,
    /// As JSON; `proof` prints an object a line, each a finding.
    Json,
}

/// Reads the whole studio and prints what is wrong, templates included; with the day on which addresses elsewhere are asked,
/// if they are.
pub fn proof(named: Option<&Path>, format: Format, today: Date, asked: Option<Date>) -> Result<Outcome, Failure> {
    let disk = studio::find(named)?;
    let mut studied = crate::study(&disk, View::of_readers(today))
        .map_err(|error| format!("cannot read the studio in `{}`: {error}", disk.root().display()))?;
    if !any_error(&studied.findings) {
        let faults = crate::faults(&studied);
        studied.findings.extend(faults);
    }
    if let Some(day) = asked {
        let known = links::Known::load(disk.root(), day);
        studied.findings.extend(links::check(&studied, known));
    }
    sort(&mut studied.findings);
    match format {
        Format::Json => terminal::say(&to_json(&studied.findings, &studied.texts)),
        Format::Text => {
            let style = terminal::style(io::stdout().is_terminal());
            terminal::say(&to_text(&studied.findings, &studied.texts, style));
            let entries = studied.catalogue.entries.len();
            let noun = if entries == 1 { "entry" } else { "entries" };
            terminal::say(&format!("{entries} {noun} read: {}\n", terminal::count(&studied.findings)));
        }
    }
    Ok(if any_error(&studied.findings) { Outcome::Errors } else { Outcome::Done })
}
