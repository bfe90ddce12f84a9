//! What is to be done, decided from values alone.

use std::collections::{BTreeMap, BTreeSet, HashMap, HashSet};
use std::fmt;
use std::ops::Bound;
use std::path::Path;

use super::path::{folded, folders_of, folders_of_all};
use super::{Manifest, SitePath};

/// What stands in the folder now.
#[derive(Clone, Debug, Default)]
pub struct Existing {
    /// The list an earlier make left; it is what tells our files from hers.
    pub manifest: Manifest,
    /// What is at the paths that are wanted or were made, and at their folders; what is not there
    /// is not here. Where a folder stands at a wanted path, everything in it too.
    pub found: BTreeMap<String, Found>,
    /// Whether this disk takes `About` and `about` for one name, as many do.
    pub folds: bool,
}

/// What stands at one path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// A file that holds what is wanted there.
    Same,
    /// Any other file.
    Differs,
    /// A folder.
    Folder,
    /// A link or whatever else is neither; never ours.
    Other,
}

/// What is to be done. Numbers point into the paths that were planned for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Plan {
    /// The files to write.
    pub write: Vec<usize>,
    /// Those of them at whose path a file of ours stands until it is replaced, so that one that comes out the same need not
    /// be. Where the old file is cleared first it must be, even by the same bytes.
    pub replace: BTreeSet<usize>,
    /// The files that are as they should be.
    pub keep: Vec<usize>,
    /// Our old files, to be removed once the new ones are in place.
    pub remove: Vec<SitePath>,
    /// Our old files that stand in the way of new ones, to be removed before.
    pub clear: Vec<SitePath>,
    /// Folders to try to remove before the new files are put in place, innermost first.
    pub clear_folders: Vec<String>,
    /// Folders to make, outermost first, but for those that are moved whole and what is in them.
    pub folders: Vec<String>,
    /// Folders where nothing is yet, of those in each other the outermost: made aside with all that is in them and moved whole.
    pub whole: BTreeSet<String>,
    /// Folders to try to remove at the end, innermost first; one that is not empty stays.
    pub emptied: Vec<String>,
}

impl Plan {
    /// Whether no file and no folder changes.
    pub fn is_empty(&self) -> bool {
        self.write.is_empty()
            && self.remove.is_empty()
            && self.clear.is_empty()
            && self.clear_folders.is_empty()
            && self.folders.is_empty()
            && self.whole.is_empty()
            && self.emptied.is_empty()
    }

    /// Whether a file or folder lies in a folder that is moved whole.
    pub fn goes_along(&self, path: &str) -> bool {
        folders_of(path).any(|folder| self.whole.contains(folder))
    }
}

/// Why nothing may be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// Two files are to have one path.
    Twice(SitePath),
    /// Two paths differ in capitals only, so that some hosts and computers keep but one of them.
    Twins(String, String),
    /// A path is to be a file and a folder at once.
    FileAndFolder(SitePath),
    /// A file stands there that no make wrote.
    HerFile(String),
    /// A folder that no make wrote, or that holds something else, stands where a file must be.
    HerFolder(String),
    /// A link stands there, which is never followed or replaced.
    Link(String),
}

impl Refusal {
    /// The path it is about.
    pub fn path(&self) -> &str {
        match self {
            Refusal::Twice(path) | Refusal::FileAndFolder(path) => path.as_str(),
            Refusal::Twins(path, _) | Refusal::HerFile(path) | Refusal::HerFolder(path) | Refusal::Link(path) => path,
        }
    }

    pub(super) fn describe(&self, f: &mut fmt::Formatter<'_>, place: &Path) -> fmt::Result {
        let place = place.display();
        match self {
            Refusal::Twice(_) => {
                write!(f, "two pages would both be written to `{place}`: give one of them another name")
            }
            Refusal::Twins(_, other) => write!(
                f,
                "`{place}` and `{other}` differ only in capitals, and many computers and hosts take them for one: give one of them another name"
            ),
            Refusal::FileAndFolder(_) => {
                write!(f, "`{place}` would have to be a file and a folder at once: give one of them another name")
            }
            Refusal::HerFile(_) => write!(
                f,
                "`{place}` is a file that ballband did not make, and a page would replace it; nothing was touched: move it away or give the page another name"
            ),
            Refusal::HerFolder(_) => write!(
                f,
                "`{place}` is in the way of a page, and ballband did not make it; nothing was touched: move it away or give the page another name"
            ),
            Refusal::Link(_) => write!(
                f,
                "`{place}` is a link, which ballband neither follows nor replaces inside a site; nothing was touched: move it away"
            ),
        }
    }
}

/// Checks that the wanted paths can all stand in one folder.
///
/// # Errors
/// [`Refusal::Twice`], [`Refusal::Twins`] or [`Refusal::FileAndFolder`], for files and for the
/// folders they lie in.
pub(super) fn check(wanted: &[SitePath]) -> Result<(), Refusal> {
    let mut files = HashSet::with_capacity(wanted.len());
    // From the path as a host that folds capitals sees it, to the spelling seen first.
    let mut spelling: HashMap<String, &str> = HashMap::with_capacity(wanted.len() * 2);
    for path in wanted {
        if !files.insert(path.as_str()) {
            return Err(Refusal::Twice(path.clone()));
        }
    }
    for path in wanted {
        if let Some(first) = spelling.insert(folded(path.as_str()), path.as_str()) {
            return Err(Refusal::Twins(path.to_string(), first.to_owned()));
        }
    }
    for folder in folders_of_all(wanted) {
        if let Some(path) = files.get(folder).and_then(|p| wanted.iter().find(|w| w.as_str() == *p)) {
            return Err(Refusal::FileAndFolder(path.clone()));
        }
        if let Some(first) = spelling.insert(folded(folder), folder).filter(|first| *first != folder) {
            return Err(Refusal::Twins(folder.to_owned(), first.to_owned()));
        }
    }
    Ok(())
}

/// Decides what is to be done so that the folder holds just the wanted files, and hers.
///
/// Where it says to write, it is a new path, or a file of ours, or something of ours is cleared
/// first. What it says to remove is on the list of an earlier make.
///
/// # Errors
/// [`Refusal`] if two wanted paths cannot stand together, or something of hers is in the way.
pub fn plan(existing: &Existing, wanted: &[SitePath]) -> Result<Plan, Refusal> {
    check(wanted)?;
    decide(existing, wanted)
}

/// As [`plan`], for paths that passed [`check`].
pub(super) fn decide(existing: &Existing, wanted: &[SitePath]) -> Result<Plan, Refusal> {
    let made = &existing.manifest.files;
    let found = |path: &str| existing.found.get(path).copied();
    let want: HashSet<&str> = wanted.iter().map(SitePath::as_str).collect();
    let want_folders: BTreeSet<&str> = folders_of_all(wanted).collect();
    let made_folders: BTreeSet<&str> = made.keys().flat_map(SitePath::folders).collect();
    let obsolete: Vec<&SitePath> = made.keys().filter(|o| !want.contains(o.as_str())).collect();

    let twins = Twins::new(existing.folds, &want, &want_folders, &obsolete);
    // Ours, under this spelling or the one it had.
    let ours = |path: &str| made.contains_key(path) || twins.was_spelt_otherwise(path);

    let mut plan = Plan::default();
    // Paths of ours that must go before the new files come.
    let mut in_the_way: HashSet<&str> = HashSet::new();

    for folder in &want_folders {
        match found(folder) {
            // Under its old spelling it is about to be cleared, if that empties it.
            Some(Found::Folder) if twins.was_spelt_otherwise(folder) => {
                plan.folders.push((*folder).to_owned());
            }
            Some(Found::Folder) => {}
            None if plan.goes_along(folder) => {}
            None => {
                plan.whole.insert((*folder).to_owned());
            }
            Some(Found::Same | Found::Differs) if ours(folder) => {
                in_the_way.insert(folder);
                plan.folders.push((*folder).to_owned());
            }
            Some(Found::Same | Found::Differs) => {
                return Err(Refusal::HerFile((*folder).to_owned()));
            }
            Some(Found::Other) => return Err(Refusal::Link((*folder).to_owned())),
        }
    }

    for (number, path) in wanted.iter().enumerate() {
        let path = path.as_str();
        match found(path) {
            None => plan.write.push(number),
            // Our old file under its old spelling, which is about to be cleared.
            Some(Found::Same | Found::Differs) if twins.was_spelt_otherwise(path) => {
                plan.write.push(number);
            }
            Some(Found::Same) => plan.keep.push(number),
            Some(Found::Differs) if ours(path) => {
                plan.write.push(number);
                plan.replace.insert(number);
            }
            Some(Found::Differs) => return Err(Refusal::HerFile(path.to_owned())),
            Some(Found::Other) => return Err(Refusal::Link(path.to_owned())),
            Some(Found::Folder) => {
                if !made_folders.contains(path) {
                    return Err(Refusal::HerFolder(path.to_owned()));
                }
                for (inside, what) in below(&existing.found, path) {
                    let inside_is_ours = match what {
                        Found::Folder => made_folders.contains(inside),
                        Found::Same | Found::Differs => made.contains_key(inside),
                        Found::Other => false,
                    };
                    if !inside_is_ours {
                        return Err(Refusal::HerFolder(inside.to_owned()));
                    }
                    in_the_way.insert(inside);
                }
                in_the_way.insert(path);
                plan.write.push(number);
            }
        }
    }

    let mut emptied: BTreeSet<&str> = BTreeSet::new();
    for old in obsolete {
        let path = old.as_str();
        emptied.extend(old.folders().filter(|folder| !want_folders.contains(folder)));
        if matches!(found(path), Some(Found::Same | Found::Differs)) {
            if in_the_way.contains(path) || twins.replaces(path) {
                plan.clear.push(old.clone());
            } else {
                plan.remove.push(old.clone());
            }
        }
    }
    for folder in emptied.into_iter().rev() {
        if found(folder) == Some(Found::Folder) {
            if in_the_way.contains(folder) || twins.replaces(folder) {
                plan.clear_folders.push(folder.to_owned());
            } else {
                plan.emptied.push(folder.to_owned());
            }
        }
    }
    Ok(plan)
}

/// Everything found inside a folder, at any depth.
fn below<'a>(found: &'a BTreeMap<String, Found>, folder: &str) -> impl Iterator<Item = (&'a str, Found)> {
    let start = format!("{folder}/");
    found
        .range::<str, _>((Bound::Included(start.as_str()), Bound::Unbounded))
        .take_while({
            let start = start.clone();
            move |(path, _)| path.starts_with(&start)
        })
        .map(|(path, what)| (path.as_str(), *what))
}

/// Old paths that come back in another spelling, as when `About.html` becomes `about.html`.
///
/// Where the disk takes both for one, the old path is the new file, and removing it last would
/// remove the new page. On any other disk there are no such twins.
#[derive(Default)]
struct Twins {
    /// What is wanted, files and folders, folded; only those whose old spelling differs.
    replaced: HashSet<String>,
    /// The old spellings.
    old: HashSet<String>,
}

impl Twins {
    fn new(folds: bool, want: &HashSet<&str>, want_folders: &BTreeSet<&str>, obsolete: &[&SitePath]) -> Twins {
        let mut twins = Twins::default();
        if !folds || obsolete.is_empty() {
            return twins;
        }
        let all: HashMap<String, &str> = want.iter().chain(want_folders).map(|path| (folded(path), *path)).collect();
        for old in obsolete {
            for part in old.folders().chain([old.as_str()]) {
                let fold = folded(part);
                if all.get(&fold).is_some_and(|new| *new != part) {
                    twins.replaced.insert(fold);
                    twins.old.insert(part.to_owned());
                }
            }
        }
        twins
    }

    /// Whether a wanted path, or a folder it lies in, was spelt otherwise.
    fn was_spelt_otherwise(&self, wanted: &str) -> bool {
        !self.replaced.is_empty()
            && folders_of(wanted).chain([wanted]).any(|part| self.replaced.contains(&folded(part)))
    }

    /// Whether an old path, or a folder it lies in, comes back in another spelling.
    fn replaces(&self, old: &str) -> bool {
        !self.old.is_empty() && folders_of(old).chain([old]).any(|part| self.old.contains(part))
    }
}
