//! What is said to a client whose request is not answered.

/// Why a request is refused.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Refusal {
    /// The status: 400, 403, 405, 414, 500 or 503.
    pub status: u16,
    /// One sentence.
    pub why: &'static str,
}

impl Refusal {
    /// Returns a refusal with 400.
    pub fn bad(why: &'static str) -> Self {
        Self { status: 400, why }
    }

    /// Returns a refusal with 403.
    pub fn forbidden(why: &'static str) -> Self {
        Self { status: 403, why }
    }
}
