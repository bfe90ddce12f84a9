//! An address on the web.

use crate::entry::field::{Field, WRONG_TYPE, wrong_type};
use crate::entry::yaml::{Node, Notes};

/// An absolute address a reader can follow: `https:`, `http:` or `mailto:`. Nothing else is let through, so that no
/// script can hide in an address.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Web(String);

impl Web {
    /// Returns the address, or nothing if it is none a reader can follow.
    pub fn parse(text: &str) -> Option<Self> {
        let rest = ["https://", "http://", "mailto:"].iter().find_map(|scheme| text.strip_prefix(scheme))?;
        let clean =
            !rest.is_empty() && !text.chars().any(|c| c.is_whitespace() || c.is_control() || "\"<>\\^`{|}".contains(c));
        clean.then(|| Self(text.to_owned()))
    }

    /// Returns an address that leads nowhere (RFC 2606), where one is needed and none is known.
    pub fn stand_in() -> Self {
        Self("https://site.invalid".to_owned())
    }

    /// Returns the address as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl Field for Web {
    const WHAT: &'static str = "an address like `https://example.org/`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let Some(text) = node.value.scalar() else {
            wrong_type(node, Self::WHAT, notes);
            return None;
        };
        let address = Self::parse(text);
        if address.is_none() {
            let help = if text.contains("://") || text.contains(' ') {
                "an address begins with `https://` and holds no spaces or quotes".to_owned()
            } else {
                format!("write it whole: `https://{text}`")
            };
            notes.value(&WRONG_TYPE, node, format!("`{text}` is not an address"), Some(help));
        }
        address
    }
}
