//! What is wrong, where, and what to do.
//!
//! The writer's mistakes are values, never errors that stop a run: every stage returns its best result and a list of
//! [`Finding`]s. A stage words its own findings, beside the [`Code`] that explains them at length; how they are printed
//! is decided here alone.

mod code;
mod json;
mod near;
mod text;

pub use code::{Code, Severity};
pub use json::to_json;
pub use near::nearest;
pub use text::{Style, to_text};

use crate::source::Place;

/// One thing that is wrong or does not agree.
#[derive(Clone, Debug)]
pub struct Finding {
    /// Which mistake it is.
    pub code: &'static Code,
    /// How grave it is in this studio.
    pub severity: Severity,
    /// The smallest guilty text.
    pub at: Place,
    /// One short phrase that stands alone: lower case, no full stop, names in backticks.
    pub message: String,
    /// What to do, where there is something to advise.
    pub help: Option<String>,
    /// The other place, when two disagree, and what it is.
    pub also: Option<(Place, String)>,
}

impl Finding {
    /// Returns a finding with its code's own severity and no advice yet.
    pub fn new(code: &'static Code, at: Place, message: impl Into<String>) -> Self {
        Self { code, severity: code.severity, at, message: message.into(), help: None, also: None }
    }

    /// Adds what to do.
    #[must_use]
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(help.into());
        self
    }

    /// Adds advice if there is any.
    #[must_use]
    pub fn maybe_help(mut self, help: Option<String>) -> Self {
        self.help = help.or(self.help);
        self
    }

    /// Adds the other place of two that disagree.
    #[must_use]
    pub fn also(mut self, place: Place, what: impl Into<String>) -> Self {
        self.also = Some((place, what.into()));
        self
    }
}

/// Sorts findings by file, then place, then code, so that a run's output never depends on the order of work.
pub fn sort(findings: &mut [Finding]) {
    findings.sort_by(|a, b| {
        (&a.at.file, a.at.span.start, a.code.name, &a.message).cmp(&(
            &b.at.file,
            b.at.span.start,
            b.code.name,
            &b.message,
        ))
    });
}

/// Returns whether any finding is an error, which keeps a site from being made.
pub fn any_error(findings: &[Finding]) -> bool {
    findings.iter().any(|finding| finding.severity == Severity::Error)
}
