//! An address on the web.

use crate::entry::field::{Field, WRONG_TYPE, wrong_type};
use crate::entry::schema::{Definitions, Schema};
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

    /// Returns the address as text.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// The address of the site itself: `https:` or `http:`, a host, and perhaps folders; no query and no fragment.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SiteAddress(Web);

impl SiteAddress {
    /// Returns the address, or nothing if it is none that pages can stand below.
    pub fn parse(text: &str) -> Option<Self> {
        let web = Web::parse(text)?;
        let (scheme, rest) = web.as_str().split_once("://")?;
        let host = rest.split('/').next().unwrap_or_default();
        let clean = matches!(scheme, "https" | "http") && !host.is_empty() && !rest.contains(['?', '#']);
        clean.then_some(Self(web))
    }

    /// Returns an address that leads nowhere (RFC 2606), where one is needed and none is known.
    pub fn stand_in() -> Self {
        Self(Web("https://site.invalid".to_owned()))
    }

    /// Returns the address without a slash at the end.
    pub fn as_str(&self) -> &str {
        self.0.as_str().trim_end_matches('/')
    }
}

impl Field for SiteAddress {
    const WHAT: &'static str = "the address of the site, like `https://example.org`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let web = Web::read(node, notes)?;
        let address = Self::parse(web.as_str());
        if address.is_none() {
            let message = format!("`{}` cannot be the address of a site", web.as_str());
            let help = "write `https://`, the host and perhaps a folder, without `?` or `#`".to_owned();
            notes.value(&WRONG_TYPE, node, message, Some(help));
        }
        address
    }

    fn schema(_: &mut Definitions) -> Schema {
        let address = "^https?://[^/?# \"<>\\\\^`{|}][^?# \"<>\\\\^`{|}]*$";
        Schema::of(&["string"], "https://example.org").pattern(address, Self::WHAT)
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
        if address.is_some() {
            notes.address(text, node);
        } else {
            let help = if text.contains('@') && !text.contains(['/', ' ']) {
                format!("for a letter, write `mailto:{text}`")
            } else if text.contains("://") || text.contains(' ') {
                "an address begins with `https://` and holds no spaces or quotes".to_owned()
            } else {
                format!("write it whole: `https://{text}`")
            };
            notes.value(&WRONG_TYPE, node, format!("`{text}` is not an address"), Some(help));
        }
        address
    }

    fn schema(_: &mut Definitions) -> Schema {
        let address = "^(https://|http://|mailto:)[^ \"<>\\\\^`{|}]+$";
        Schema::of(&["string"], "https://example.org/").pattern(address, Self::WHAT)
    }
}
