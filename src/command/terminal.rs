//! The terminal: what is printed where, and whether in colour.

use crate::finding::{Finding, Severity, Style, to_text};
use crate::source::Texts;
use crate::write::{Progress, Stage};
use std::io::{self, IsTerminal, Write};
use std::sync::Mutex;
use std::time::{Duration, Instant};

/// How long a make may take before it says what it is doing.
const PATIENCE: Duration = Duration::from_secs(1);

/// How often it says so.
const PACE: Duration = Duration::from_millis(100);

/// Prints a text to standard output; nothing can be done about a pipe that is gone.
pub fn say(text: &str) {
    let _ = io::stdout().lock().write_all(text.as_bytes());
}

/// Prints what is to be read beside a command's own output.
pub fn tell(text: &str) {
    let _ = io::stderr().lock().write_all(text.as_bytes());
}

/// Prints why a command could not be done.
pub fn complain(why: &str) {
    let _ = writeln!(io::stderr().lock(), "ballband: {why}");
}

/// Prints findings where a person reads them beside what the command itself prints.
pub fn findings(findings: &[Finding], texts: &Texts) {
    let text = to_text(findings, texts, style(io::stderr().is_terminal()));
    let _ = io::stderr().lock().write_all(text.as_bytes());
}

/// Returns colour for a terminal, unless `NO_COLOR` asks for none.
pub fn style(terminal: bool) -> Style {
    let wanted = std::env::var_os("NO_COLOR").is_none_or(|value| value.is_empty());
    if terminal && wanted { Style::Colour } else { Style::Plain }
}

/// Returns how many errors and warnings there are, in words: `2 errors, 1 warning`.
pub fn count(findings: &[Finding]) -> String {
    let errors = findings.iter().filter(|finding| finding.severity == Severity::Error).count();
    let warnings = findings.len() - errors;
    let words = |count: usize, one: &str| format!("{count} {one}{}", if count == 1 { "" } else { "s" });
    match (errors, warnings) {
        (0, 0) => "no findings".to_owned(),
        (_, 0) => words(errors, "error"),
        (0, _) => words(warnings, "warning"),
        _ => format!("{}, {}", words(errors, "error"), words(warnings, "warning")),
    }
}

/// Says on a terminal what is being done, once it takes over a second.
#[derive(Debug)]
pub struct Ticker {
    begun: Instant,
    terminal: bool,
    last: Mutex<Option<Instant>>,
}

impl Ticker {
    /// Returns a ticker that begins now.
    pub fn new() -> Self {
        Self { begun: Instant::now(), terminal: io::stderr().is_terminal(), last: Mutex::new(None) }
    }

    /// Returns how long it has been, in seconds to the tenth.
    pub fn seconds(&self) -> String {
        format!("{:.1} s", self.begun.elapsed().as_secs_f64())
    }

    /// Says how far things have come, if it is time to.
    pub fn tick(&self, progress: Progress) {
        if !self.terminal || self.begun.elapsed() < PATIENCE {
            return;
        }
        let Ok(mut last) = self.last.lock() else { return };
        if last.is_some_and(|last| last.elapsed() < PACE) {
            return;
        }
        *last = Some(Instant::now());
        let doing = match progress.stage {
            Stage::Comparing => "comparing".to_owned(),
            Stage::Writing => format!("writing {} of {}", progress.done, progress.total),
            Stage::Placing => "moving into place".to_owned(),
            Stage::Removing => "removing what is gone".to_owned(),
        };
        let _ = write!(io::stderr().lock(), "\r\x1b[K{doing}");
    }

    /// Takes back what it said.
    pub fn clear(&self) {
        let said = self.last.lock().is_ok_and(|last| last.is_some());
        if said {
            let _ = write!(io::stderr().lock(), "\r\x1b[K");
        }
    }
}
