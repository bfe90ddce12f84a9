//! Gifts: no two alike in one household, and no name of theirs in what readers see.
//!
//! A finding is for the designer's eyes, so what is private may be looked at.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::yaml::Step;
use crate::entry::{Entry, Kind, MadeFor, Placing, Project, Reference};
use crate::finding::{Code, Finding, Severity};
use crate::reckon::gift::are_alike;
use crate::source::Place;
use pulldown_cmark::{Event, LinkType, Parser, Tag, TagEnd};
use std::collections::BTreeSet;
use std::ops::Range;

/// Two gifts that nothing sets apart.
pub static GIFTS_ALIKE: Code = Code {
    name: "gifts-alike",
    severity: Severity::Warning,
    what: "Two things for one household, or one person, are of the same design in the same variant.",
    why: "Those who live together would each have what the other has.",
    bad: "two hats for one household, neither with a `variant`",
    good: "variant: { brim: rolled }",
};

/// The name of whoever a thing is for, in a text for readers.
pub static GIFT_NAMED: Code = Code {
    name: "gift-named",
    severity: Severity::Warning,
    what: "A text for readers holds the name of a person or household that a project in it is made for.",
    why: "`made for` is private; the name would be on the site all the same.",
    bad: "The blue one is for Carys Ollerton.",
    good: "The blue one is for a friend with a boat.",
};

/// Finds a gift that an earlier one is like, and names of gifts in what readers see.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    if let Some(project) = entry.project() {
        findings.extend(alike(catalogue, entry, project, placing));
    }
    // What is held back until a day comes out as it stands; what is not ready may still be put otherwise.
    if entry.common.ready != Some(false) {
        named(catalogue, entry, placing, findings);
    }
}

fn alike(catalogue: &Catalogue, entry: &Entry, project: &Project, placing: &Placing<'_>) -> Option<Finding> {
    project.made_for.for_desk().as_ref()?;
    let before = |one: &Entry, project: &Project| (project.started.is_none(), project.started, one.id.clone());
    let here = before(entry, project);
    let others = catalogue.of_kind(Kind::Project).iter().filter_map(|other| Some((other, other.project()?)));
    let (other, _) = others
        .filter(|(other, data)| other.id != entry.id && before(other, data) < here && are_alike(project, data))
        .max_by_key(|(other, data)| before(other, data))?;
    let message = format!("nothing sets this apart from `{}`, for the same household or person", other.common.title);
    Some(
        Finding::new(&GIFTS_ALIKE, entry.origin.field(&["made for"], placing), message)
            .help("make it in another way and say so under `variant`, or look for a slip in who it is for")
            .also(other.origin.field(&["made for"], placing), "the earlier one"),
    )
}

/// Finds names of those whom the projects in a text are for, each once.
fn named(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let public = entry.mentions.iter().filter(|mention| !mention.private && mention.to.kind == Kind::Project);
    let projects: BTreeSet<&Reference> = public.map(|mention| &mention.to).chain([&entry.id]).collect();
    let mut words: Option<Words> = None;
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    for id in projects.into_iter().filter(|id| id.kind == Kind::Project) {
        let Some(other) = catalogue.entry(id) else { continue };
        let Some(made_for) = other.project().and_then(|project| project.made_for.for_desk().as_ref()) else { continue };
        for name in names(made_for) {
            if !seen.insert(name) {
                continue;
            }
            let words = words.get_or_insert_with(|| Words::of(entry));
            let found = words.find(name).map(|span| Place { file: entry.origin.file.clone(), span });
            let place = found.or_else(|| in_front(entry, name, placing));
            findings.extend(place.map(|place| {
                Finding::new(
                    &GIFT_NAMED,
                    place,
                    format!("`{name}`, for whom `{}` is made, is named here", other.common.title),
                )
                .help("put it in other words; readers see this text, and not `made for`")
                .also(other.origin.field(&["made for"], placing), "where it is private")
            }));
        }
    }
}

fn names(made_for: &MadeFor) -> impl Iterator<Item = &str> {
    [made_for.who.as_deref(), made_for.household.as_deref()].into_iter().flatten().map(str::trim)
}

/// Returns the place of a public key whose words hold a name.
fn in_front(entry: &Entry, name: &str, placing: &Placing<'_>) -> Option<Place> {
    let common = &entry.common;
    let changes = entry.project().and_then(|project| project.changes.as_deref());
    let texts = [
        ("title", Some(common.title.as_str())),
        ("summary", common.summary.as_deref()),
        ("alt", common.alt.as_deref()),
        ("changes", changes),
    ];
    let key = texts.into_iter().find(|(_, text)| text.is_some_and(|text| find(text, name).is_some()))?.0;
    let way: Vec<Step> = place::way(&[key]);
    Some(entry.origin.value(&way, placing))
}

/// The words of a text that readers see, and where each stretch of them stands in the file.
struct Words {
    text: String,
    /// Where a stretch begins in the words and in the file.
    stretches: Vec<(usize, usize)>,
}

impl Words {
    fn of(entry: &Entry) -> Self {
        let mut words = Self { text: String::new(), stretches: Vec::new() };
        let start = entry.prose.start();
        let mut address = false;
        for (event, range) in Parser::new_ext(entry.prose.source(), crate::entry::prose::options()).into_offset_iter() {
            match event {
                // Its words are an address, for which a title is shown.
                Event::Start(Tag::Link { link_type: LinkType::Autolink, .. }) => address = true,
                Event::End(TagEnd::Link) => address = false,
                Event::Text(text) if !address => words.add(&text, start + range.start),
                Event::Code(text) => words.add(&text, start + range.start + 1),
                Event::SoftBreak | Event::HardBreak => words.add(" ", start + range.start),
                Event::Start(Tag::Paragraph | Tag::Heading { .. } | Tag::Item | Tag::TableCell) => {
                    words.text.push('\n')
                }
                _ => {}
            }
        }
        words
    }

    fn add(&mut self, text: &str, at: usize) {
        self.stretches.push((self.text.len(), at));
        self.text.push_str(text);
    }

    /// Returns where a name stands in the file.
    fn find(&self, name: &str) -> Option<Range<usize>> {
        let found = find(&self.text, name)?;
        let place = |at: usize| {
            let before = self.stretches.partition_point(|(start, _)| *start <= at).checked_sub(1)?;
            let (start, in_file) = self.stretches.get(before)?;
            Some(in_file + (at - start))
        };
        let last = place(found.end.checked_sub(1)?)?;
        Some(place(found.start)?..last + 1)
    }
}

/// Returns where a text holds a name that is no part of a longer word.
///
/// A name of one word must be written as it is, since `mill` is a word too; of several, large and small letters are alike,
/// and a hyphen is as good as a space, since a household is mostly written like a key.
fn find(text: &str, name: &str) -> Option<Range<usize>> {
    let is_one = !name.contains([' ', '-']);
    let spaced =
        |text: &str| text.chars().map(|c| if c == '-' { ' ' } else { c.to_ascii_lowercase() }).collect::<String>();
    // Both changes leave every byte where it was.
    let (text, name) = if is_one { (text.to_owned(), name.to_owned()) } else { (spaced(text), spaced(name)) };
    let is_edge = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
    text.match_indices(&name).find_map(|(start, found)| {
        let end = start + found.len();
        let before = text.get(..start)?.chars().next_back();
        let after = text.get(end..)?.chars().next();
        (!found.is_empty() && is_edge(before) && is_edge(after)).then_some(start..end)
    })
}
