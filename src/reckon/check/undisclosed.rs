//! What an earlier note told readers of a thing, a later one must not keep from them.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::value::{Choice, How};
use crate::entry::{At, Data, Entry, Kind, Placing, Reference};
use crate::finding::{Code, Finding, Severity};
use crate::reckon::last_said;

/// A mention of something that was a gift or the like in an earlier note.
pub static UNDISCLOSED: Code = Code {
    name: "undisclosed",
    severity: Severity::Warning,
    what: "A note mentions something, or leads to its address, that an earlier note says was given, lent, paid for, or comes from friends, and does not say how you came by it.",
    why: "Readers meet the note by itself, and a gift is told at each mention.",
    bad: "links: [ { to: tidewater-mill, how: gifted } ] in note 2, and <person:tidewater-mill> in note 3",
    good: "the same, and links: [ { to: tidewater-mill, how: gifted } ] in note 3 too",
};

/// Something that a note leads to, by a reference or by its address elsewhere.
struct Leads<'a> {
    at: At,
    /// What it leads to; an address may be that of several.
    to: Vec<&'a Reference>,
    by_address: bool,
}

/// Finds what a note mentions without saying how she came by it, where the last note before it that says so tells of a tie.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Note(note) = &entry.data else { return };
    let mut seen: Vec<&Reference> = note.links.iter().map(|known| &known.to.0).collect();
    for leads in leads(catalogue, entry) {
        if leads.to.iter().any(|to| seen.contains(to)) {
            continue;
        }
        seen.extend(leads.to.iter().copied());
        let own = (note.date, &entry.id);
        let last = |to: &'_ &'_ Reference| Some(((*to).clone(), last_said(catalogue, to, Some(own))?));
        let Some((thing, said)) = leads.to.iter().find_map(last) else { continue };
        let before = match said.entry.note().and_then(|note| note.number) {
            Some(number) => format!("note {number}"),
            None => format!("the note `{}`", said.entry.id.key),
        };
        let whose = if leads.by_address { format!("`{thing}` (whose address this is)") } else { format!("`{thing}`") };
        let message = match said.told.how {
            How::Gifted => format!("{whose} was given to you in {before}"),
            How::Loaned => format!("{whose} was lent to you in {before}"),
            How::Affiliate => format!("you earn by {whose}, as {before} says"),
            How::Paid => format!("you were paid to mention {whose} in {before}"),
            How::Friend => format!("{whose} is of friends of yours, as {before} says"),
            How::Own | How::Bought => continue,
        };
        let one = format!("{{ to: \"{thing}\", how: {} }}", said.told.how.word());
        let how = if note.links.is_empty() {
            format!("say here too how you came by it, `links: [ {one} ]`")
        } else {
            format!("say here too how you came by it: add `{one}` under `links`")
        };
        findings.push(
            Finding::new(&UNDISCLOSED, entry.origin.place(&leads.at, placing), message)
                .help(format!("{how}, or `how: bought` or `how: own` if that is so now"))
                .also(said.entry.origin.value(&place::item("links", said.told.at, &["how"]), placing), "said here"),
        );
    }
}

/// Returns what a note leads to: what stands in the text first and in its order, since there she would see it first.
fn leads<'a>(catalogue: &'a Catalogue, entry: &'a Entry) -> Vec<Leads<'a>> {
    let mentions = entry.mentions.iter().filter(|mention| !mention.private && mention.to != entry.id);
    let by_reference =
        mentions.map(|mention| Leads { at: mention.at.clone(), to: vec![&mention.to], by_address: false });
    let by_address = entry.prose.outside.iter().filter_map(|link| {
        let kinds = [Kind::Person, Kind::Pattern].into_iter();
        let all = kinds.flat_map(|kind| catalogue.of_kind(kind)).filter(|known| known.has_address(&link.url));
        let to: Vec<&Reference> = all.map(|known| &known.id).collect();
        (!to.is_empty()).then(|| Leads { at: At::Prose(link.at.clone()), to, by_address: true })
    });
    let mut all: Vec<Leads<'_>> = by_reference.chain(by_address).collect();
    all.sort_by_key(|leads| match &leads.at {
        At::Prose(span) => (0, span.start),
        At::Field(_) => (1, 0),
    });
    all
}
