//! The kinds of findings.

/// How grave a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// The site can be made, but something is probably not as meant.
    Warning,
    /// The site is not made until it is mended.
    Error,
}

impl Severity {
    /// Returns the word that is printed.
    pub fn word(self) -> &'static str {
        match self {
            Self::Warning => "warning",
            Self::Error => "error",
        }
    }
}

/// One kind of mistake, explained once, beside the code that finds it.
#[derive(Debug)]
pub struct Code {
    /// The name after the mistake: `unknown-key`.
    pub name: &'static str,
    /// How grave it is.
    pub severity: Severity,
    /// What is reported, in a sentence.
    pub what: &'static str,
    /// Why it matters.
    pub why: &'static str,
    /// An example that is reported.
    pub bad: &'static str,
    /// The same, mended.
    pub good: &'static str,
}
