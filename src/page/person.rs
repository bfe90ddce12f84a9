//! A person's page: a maker, mill, shop, event or other designer.

use super::view::{Band, Head, Line, Picture};
use super::{Shown, disclosure, lists, page_path, words, yarn};
use crate::entry::{Entry, Person};
use schemars::JsonSchema;
use serde::Serialize;

/// What `person.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PersonContext {
    /// The page's head.
    pub head: Head,
    /// The person.
    pub person: PersonView,
    /// The person's text as HTML.
    pub body: String,
}

/// A maker, mill, shop, event or other designer.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PersonView {
    /// Their name.
    pub title: String,
    /// One sentence about them; may be empty.
    pub summary: String,
    /// What they are: `Mill, shop`; may be empty.
    pub kicker: String,
    /// Their picture.
    pub picture: Option<Picture>,
    /// Their own site.
    pub url: Option<String>,
    /// The same without scheme and closing slash, to show; may be empty.
    pub url_words: String,
    /// What is told beside that link, where she earns by it or was paid for it; may be empty.
    pub told: String,
    /// Whether she earns by that link or was paid for it, so that it is to have `rel="sponsored"`.
    pub sponsored: bool,
    /// The yarns they make.
    pub yarns: Vec<Band>,
    /// Where else they are mentioned.
    pub mentioned: Vec<Line>,
}

/// Returns the context of a person's page, its text still to be filled in.
pub fn context(shown: &Shown<'_>, entry: &Entry, person: &Person) -> PersonContext {
    let picture = shown.picture(entry);
    let links = shown.catalogue.linked_from(&entry.id).iter().filter(|link| link.is_via("maker"));
    let made = links.filter_map(|link| {
        let entry = shown.catalogue.public_entry(&link.from)?;
        Some((entry, entry.yarn()?))
    });
    let told = disclosure::of_site(shown.catalogue, &entry.id);
    let view = PersonView {
        title: entry.common.title.clone(),
        summary: entry.common.summary.clone().unwrap_or_default(),
        kicker: words::sentence(&person.is.join(", ")),
        picture: picture.clone(),
        url: person.url.as_ref().map(|url| url.as_str().to_owned()),
        url_words: person.url.as_ref().map(|url| plain_address(url.as_str())).unwrap_or_default(),
        told: told.words,
        sponsored: told.sponsored,
        yarns: made.map(|(entry, one)| yarn::list_band(shown, entry, one)).collect(),
        mentioned: lists::mentions(shown, &entry.id, |link| !link.is_via("maker")),
    };
    let head =
        shown.head(&entry.common.title, &shown.summary(entry), &page_path(&entry.id), "", "website", picture.as_ref());
    PersonContext { head, person: view, body: String::new() }
}

fn plain_address(url: &str) -> String {
    url.trim_start_matches("https://")
        .trim_start_matches("http://")
        .trim_start_matches("mailto:")
        .trim_end_matches('/')
        .to_owned()
}
