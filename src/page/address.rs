//! Where pages are.

use crate::entry::{Kind, Reference, Studio};

/// Returns the folder of an entry's page in the site: `patterns/saltmarsh-yoke/`. Plain pages stand at the root.
pub fn page_path(id: &Reference) -> String {
    match id.kind {
        Kind::Page => [id.key.as_str(), "/"].concat(),
        kind => [kind.folder(), "/", id.key.as_str(), "/"].concat(),
    }
}

/// Turns paths in the site into addresses.
#[derive(Clone, Debug)]
pub struct Addresses {
    base: String,
    whole: String,
}

impl Addresses {
    /// Returns the addresses of a studio's site.
    pub fn of(studio: &Studio) -> Self {
        Self { base: studio.base().to_owned(), whole: studio.address().to_owned() }
    }

    /// Returns a path's address from the root of the host: `/patterns/saltmarsh-yoke/`.
    pub fn local(&self, path: &str) -> String {
        [&self.base, "/", path].concat()
    }

    /// Returns a path's whole address: `https://example.org/patterns/saltmarsh-yoke/`.
    pub fn whole(&self, path: &str) -> String {
        [&self.whole, "/", path].concat()
    }
}
