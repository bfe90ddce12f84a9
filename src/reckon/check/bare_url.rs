//! An address in a text should have words.

use crate::catalogue::Catalogue;
use crate::entry::prose::OutsideLink;
use crate::entry::{Data, Entry, Key, Kind, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::source::Place;
use std::ops::Range;

/// An address that stands in a text without words of its own.
pub static BARE_URL: Code = Code {
    name: "bare-url",
    severity: Severity::Warning,
    what: "A text has a web address without words that say what it is.",
    why: "As plain text it is no link, and read aloud it is a row of signs; a register gives it a name that every page shares.",
    bad: "The wool came from https://example.org/mill.",
    good: "The wool came from [the mill](https://example.org/mill).",
};

/// Finds addresses that are plain text, and links whose words are their address.
pub fn check(catalogue: &Catalogue, entry: &Entry, _: &Placing<'_>, findings: &mut Vec<Finding>) {
    let file = entry.prose.file();
    // Most texts have none, and one look tells.
    let has_address = entry.prose.source().contains("://");
    let plain = entry.prose.plain.iter().filter(|_| has_address).flat_map(|stretch| addresses(file, stretch));
    let is_bare = |link: &&OutsideLink| link.words.trim() == link.url;
    let links = entry.prose.outside.iter().filter(is_bare).map(|link| (link.at.clone(), &*link.url));
    for (at, url) in plain.chain(links) {
        let place = Place { file: entry.origin.file.clone(), span: at };
        let finding = Finding::new(&BARE_URL, place, format!("`{url}` has no words of its own"));
        findings.push(finding.help(help(catalogue, url)));
    }
}

/// Returns the addresses in a stretch of a file, without the stop, the comma or the bracket that ends a sentence behind one.
fn addresses<'a>(file: &'a str, stretch: &Range<usize>) -> impl Iterator<Item = (Range<usize>, &'a str)> {
    let start = stretch.start;
    let plain = file.get(stretch.clone()).unwrap_or_default();
    let begins = plain.match_indices("http").filter(move |(at, _)| {
        let before = plain.get(..*at).and_then(|before| before.chars().next_back());
        before.is_none_or(|c| !c.is_alphanumeric())
    });
    begins.filter_map(move |(at, _)| {
        let rest = plain.get(at..)?;
        let behind = rest.strip_prefix("https://").or_else(|| rest.strip_prefix("http://"))?;
        if !behind.starts_with(char::is_alphanumeric) {
            return None;
        }
        let end = rest.find(|c: char| c.is_whitespace() || matches!(c, '<' | '>' | '"')).unwrap_or(rest.len());
        let url = rest.get(..end)?.trim_end_matches(['.', ',', ';', ':', '!', '?', ')', ']', '\'', '”', '’', '…']);
        Some((start + at..start + at + url.len(), url))
    })
}

fn help(catalogue: &Catalogue, url: &str) -> String {
    let same = |of: &str| of.trim_end_matches('/') == url.trim_end_matches('/');
    let known = catalogue.of_kind(Kind::Person).iter().find(|entry| match &entry.data {
        Data::Person(person) => person.url.as_ref().is_some_and(|known| same(known.as_str())),
        _ => false,
    });
    if let Some(known) = known {
        return format!("write `<{}>`, which has this address", known.id);
    }
    let host =
        url.split_once("://").map_or(url, |(_, rest)| rest).split(['/', '?', '#', ':']).next().unwrap_or_default();
    let host = host.strip_prefix("www.").unwrap_or(host);
    let key = Key::like(host);
    format!(
        "put words to it, `[the words]({url})`; or add it to `people.yaml` and write `<person:{key}>`:\n{key}:\n  title: {host}\n  url: {url}"
    )
}
