//! Gifts: no two alike in one household, and no name of theirs in what readers see.
//!
//! A finding is for the designer's eyes, so what is private may be looked at.

use crate::catalogue::{Catalogue, Visibility};
use crate::entry::yaml::{On, Step, Steps};
use crate::entry::{Entry, Kind, Placing, Project};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::reckon::gift::{are_alike, plain};
use crate::source::Place;
use std::collections::{BTreeMap, BTreeSet};

/// Two gifts that nothing sets apart.
pub static GIFTS_ALIKE: Code = Code {
    name: "gifts-alike",
    severity: Severity::Warning,
    what: "Two things for one household, or one person, are of the same design in the same variant.",
    why: "Those who live together would each have what the other has.",
    bad: "two hats for one household, neither with a `variant`",
    good: "variant: { brim: rolled }",
};

/// A household that is written nearly like another.
pub static HOUSEHOLD_UNLIKE: Code = Code {
    name: "household-unlike",
    severity: Severity::Warning,
    what: "One gift alone is for a household whose name is nearly that of another.",
    why: "If it is mistyped, gifts of one household are not set beside each other.",
    bad: "household: hil-farm, and hill-farm elsewhere",
    good: "household: hill-farm",
};

/// The name of whoever a thing is for, in a text for readers.
pub static GIFT_NAMED: Code = Code {
    name: "gift-named",
    severity: Severity::Warning,
    what: "A text for readers holds the whole name of a person or household that a project is made for.",
    why: "`made for` is private; the name would be on the site all the same.",
    bad: "The blue one is for Carys Ollerton.",
    good: "The blue one is for a friend with a boat.",
};

/// Finds a gift that an earlier one is like, and names of gifts in what readers see.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    if let Some(project) = entry.project() {
        findings.extend(alike(catalogue, entry, project, placing));
        findings.extend(unlike(catalogue, entry, project, placing));
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

/// Finds a household that no other gift is for and that is nearly written like that of another; of two that each are written
/// once, the later is told of.
fn unlike(catalogue: &Catalogue, entry: &Entry, project: &Project, placing: &Placing<'_>) -> Option<Finding> {
    let household = |project: &Project| project.made_for.for_desk().as_ref().and_then(|it| it.household.clone());
    let own = household(project)?;
    // Each household once: the first gift for it, how that writes it, and how many there are.
    let mut all: BTreeMap<String, (&Entry, String, usize)> = BTreeMap::new();
    for other in catalogue.of_kind(Kind::Project).iter().filter(|other| other.id != entry.id) {
        let Some(name) = other.project().and_then(household) else { continue };
        all.entry(plain(&name)).or_insert((other, name, 0)).2 += 1;
    }
    let here = plain(&own);
    if all.contains_key(&here) {
        return None;
    }
    let near = |is_known: &dyn Fn(&(&Entry, String, usize)) -> bool| {
        nearest(&here, all.iter().filter(|(_, one)| is_known(one)).map(|(name, _)| name.as_str()))
    };
    // One that is written more than once is hardly the slip.
    let near = near(&|(.., count)| *count > 1).or_else(|| near(&|(first, ..)| first.id < entry.id))?;
    let (first, near, _) = all.get(near)?;
    let place = |of: &Entry| of.origin.field(&["made for", "household"], placing);
    Some(
        Finding::new(&HOUSEHOLD_UNLIKE, place(entry), format!("no other gift is for `{own}`"))
            .help(format!("did you mean `{near}`?"))
            .also(place(first), "written so here"),
    )
}

/// Finds the private names of all projects in what readers see of an entry, each once in every text of it.
fn named(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let words = entry.prose.seen.words(entry.prose.file());
    // Why a check is set otherwise is on no page.
    let is_shown =
        |steps: &Steps| !matches!(steps.get(entry.origin.root.len()), Some(Step::Key(key)) if **key == *"checks");
    let fields: Vec<&(Steps, String)> = entry.texts.iter().filter(|(steps, _)| is_shown(steps)).collect();
    let mut texts: Vec<&str> = fields.iter().map(|(_, text)| text.as_str()).collect();
    texts.push(&words.text);
    let mut seen: BTreeSet<(usize, &str)> = BTreeSet::new();
    for (number, named) in catalogue.secrets_in(&texts) {
        if !seen.insert((number, named.title)) || is_public(catalogue, named.title) {
            continue;
        }
        let place = match fields.get(number) {
            Some((steps, _)) => Some(entry.origin.locate(steps, On::Value, Some(&named.at), placing)),
            None => words.place(&named.at).map(|span| Place { file: entry.origin.file.clone(), span }),
        };
        let Some((place, other)) = place.zip(named.entries.first().and_then(|id| catalogue.entry(id))) else {
            continue;
        };
        let message = format!("`{}`, for whom `{}` is made, is named here", named.title, other.common.title);
        findings.push(
            Finding::new(&GIFT_NAMED, place, message)
                .help("put it in other words; readers see this text, and not `made for`")
                .also(other.origin.field(&["made for"], placing), "where it is private"),
        );
    }
}

/// Returns whether readers know of somebody by a name anyway, since a person on the site is called so.
fn is_public(catalogue: &Catalogue, name: &str) -> bool {
    let people = catalogue.of_kind(Kind::Person).iter();
    people
        .filter(|person| catalogue.for_readers(person) == Visibility::Public)
        .any(|person| plain(&person.common.title) == plain(name))
}
