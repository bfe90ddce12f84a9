//! A studio kept in memory and brought up to date one saved file at a time.

use crate::catalogue::{Catalogue, Change, Names, Question, View, recorded};
use crate::entry::{Entries, Entry, Given, Placing, Reference, Studio};
use crate::finding::{Finding, any_error};
use crate::page::PictureSizes;
use crate::render::Theme;
use crate::render::photos::{self, Photo};
use crate::source::{FilePath, Files, Text, Texts, Unreadable, load, may_hold_entries};
use crate::{catalogue, entry, finding, reckon};
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::io;

/// A studio as it was last read.
///
/// A file that is broken by a new mistake leaves its last good entries in place, so that the pages stay while she types.
#[derive(Debug)]
pub struct Kept {
    /// The texts, to show findings in.
    pub texts: Texts,
    /// The joined entries.
    pub catalogue: Catalogue,
    /// The templates and assets; the last that could be read.
    pub theme: Theme,
    /// The photos that entries show.
    pub photos: Vec<Photo>,
    /// How large each is and in which widths it is made.
    pub sizes: PictureSizes,
    files: BTreeMap<FilePath, File>,
    checked: BTreeMap<Reference, Checked>,
    /// What is wrong in no file of entries.
    loose: Vec<Finding>,
    /// What is wrong with photos.
    spoilt: Vec<Finding>,
    /// Whether an entry stands in two files or a file cannot be read, so that one file alone tells too little.
    tangled: bool,
    /// Whether the studio is from an earlier reading, since its own file has mistakes now.
    is_studio_old: bool,
}

/// What one file gave.
#[derive(Debug, Default)]
struct File {
    names: Names,
    findings: Vec<Finding>,
    /// Whether its entries are from an earlier reading, since the last one had mistakes.
    old: bool,
}

/// What the checks said of an entry, and what they asked to say it.
#[derive(Debug, Default)]
struct Checked {
    findings: Vec<Finding>,
    asked: BTreeSet<Question>,
}

/// What an update did.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Update {
    /// The files hold what they held.
    Nothing,
    /// A few entries changed, or only what is wrong with a file that holds none.
    Some(Change),
    /// Anything may have changed.
    All,
}

impl Kept {
    /// Reads a whole studio.
    ///
    /// # Errors
    /// If the studio's files cannot be listed.
    pub fn load(files: &dyn Files, view: View) -> io::Result<Self> {
        Self::read(files, view, None)
    }

    fn read(files: &dyn Files, view: View, before: Option<&Self>) -> io::Result<Self> {
        let (mut texts, unreadable) = load(files)?;
        let (studio, mut loose) = entry::read_studio(&texts);
        // One that is there and cannot be read is told of as such.
        let own = FilePath::studio();
        if !texts.texts.contains_key(&own) && unreadable.iter().all(|one| *one.file() != own) {
            loose.push(entry::missing_studio());
        }
        let is_studio_old = studio.is_none() && before.is_some();
        let studio = studio.or_else(|| before.map(|before| before.catalogue.studio.clone()));
        let studio = studio.unwrap_or_else(Studio::stand_in);
        let settings = studio.settings();
        let given: Vec<(FilePath, Given)> = texts
            .texts
            .par_iter()
            .map(|(path, text)| (path.clone(), entry::read_file(path, text, &settings)))
            .collect();
        let mut all = Entries { studio: Some(studio), ..Entries::default() };
        let mut kept_files = BTreeMap::new();
        let count = loose.len();
        for (path, mut given) in given {
            let findings = std::mem::take(&mut given.findings);
            let mut old = false;
            if let Some(good) = before.and_then(|before| before.last_good(&path, &findings)) {
                (given, old) = (good, true);
            }
            kept_files.insert(path, File { names: Names::of(&given), findings, old });
            all.take(given, &Placing::new(&texts), &mut loose);
        }
        for file in unreadable.iter().map(Unreadable::file) {
            if let Some(good) = before.and_then(|before| before.good(file)) {
                kept_files.insert(file.clone(), File { names: Names::of(&good), findings: Vec::new(), old: true });
                all.take(good, &Placing::new(&texts), &mut loose);
            }
        }
        let tangled = loose.len() > count || !unreadable.is_empty();
        all.take_unread(&texts, &unreadable, &mut loose);
        let catalogue = Catalogue::of(all, view);
        let (theme, faults) = Theme::load(catalogue.studio.theme(), files, &mut texts);
        let theme = before.filter(|_| any_error(&faults)).map_or(theme, |before| before.theme.clone());
        loose.extend(faults);
        loose.extend(reckon::check_studio(&catalogue, &Placing::new(&texts)));
        let (photos, spoilt) = photos::photos(&catalogue, files);
        let mut kept = Self {
            texts,
            catalogue,
            theme,
            sizes: photos::sizes(&photos),
            photos,
            files: kept_files,
            checked: BTreeMap::new(),
            loose,
            spoilt,
            tangled,
            is_studio_old,
        };
        kept.checked = kept.catalogue.entries.par_iter().map(|entry| (entry.id.clone(), kept.check(entry))).collect();
        Ok(kept)
    }

    /// Reads again the files that changed, and what depends on more than one file only where it must.
    ///
    /// # Errors
    /// If the studio's files cannot be listed; what was kept stays.
    pub fn update(&mut self, files: &dyn Files, changed: &BTreeSet<FilePath>, view: View) -> io::Result<Update> {
        let plain = |path: &FilePath| may_hold_entries(path) && *path != FilePath::studio();
        if self.tangled || view != self.catalogue.view || !changed.iter().all(plain) {
            return self.again(files, view);
        }
        let mut change = Change::default();
        let (mut is_another, mut pictures) = (false, false);
        for path in changed {
            let text = match files.read(path) {
                Ok(bytes) => Text::of(bytes).ok(),
                Err(error) if error.kind() == io::ErrorKind::NotFound => {
                    if let Some(file) = self.files.remove(path) {
                        self.texts.texts.remove(path);
                        is_another = true;
                        pictures |= self.put(&file.names, Given::default(), &mut change);
                    }
                    continue;
                }
                Err(_) => None,
            };
            let Some(text) = text else { return self.again(files, view) };
            if self.texts.texts.get(path) == Some(&text) {
                continue;
            }
            let mut given = entry::read_file(path, &text, &self.catalogue.studio.settings());
            let file = self.files.entry(path.clone()).or_default();
            let here = |id: &Reference| self.catalogue.entry(id).is_none_or(|known| known.origin.file == *path);
            if !given.entries.iter().all(|entry| here(&entry.id)) {
                return self.again(files, view);
            }
            self.texts.texts.insert(path.clone(), text);
            is_another = true;
            file.findings = std::mem::take(&mut given.findings);
            file.old = any_error(&file.findings) && !file.names.read.is_empty();
            if file.old {
                change.entries.extend(file.names.read.iter().cloned());
                continue;
            }
            let before = std::mem::replace(&mut file.names, Names::of(&given));
            pictures |= self.put(&before, given, &mut change);
        }
        if !is_another {
            return Ok(Update::Nothing);
        }
        self.check_again(&change);
        if pictures {
            (self.photos, self.spoilt) = photos::photos(&self.catalogue, files);
            self.sizes = photos::sizes(&self.photos);
            return Ok(Update::All);
        }
        Ok(Update::Some(change))
    }

    /// Returns all that is wrong, sorted by file and place.
    pub fn findings(&self) -> Vec<Finding> {
        let of_files = self.files.values().flat_map(|file| &file.findings);
        let of_entries = self.checked.values().flat_map(|checked| &checked.findings);
        let mut all: Vec<Finding> =
            self.loose.iter().chain(&self.spoilt).chain(of_files).chain(of_entries).cloned().collect();
        finding::sort(&mut all);
        all
    }

    /// Returns whether an entry is shown as it was, since the file it stands in has mistakes now.
    fn is_old(&self, entry: &Entry) -> bool {
        self.files.get(&entry.origin.file).is_some_and(|file| file.old)
    }

    /// Returns whether anything is shown as it was before a mistake.
    pub fn is_any_old(&self) -> bool {
        self.is_studio_old || self.files.values().any(|file| file.old)
    }

    fn again(&mut self, files: &dyn Files, view: View) -> io::Result<Update> {
        *self = Self::read(files, view, Some(self))?;
        Ok(Update::All)
    }

    /// Returns what a file gave when it was last without mistakes, if it has some now.
    fn last_good(&self, path: &FilePath, findings: &[Finding]) -> Option<Given> {
        self.good(path).filter(|_| any_error(findings))
    }

    /// Returns what a file gave when it was last without mistakes; nothing if that was no entry.
    fn good(&self, path: &FilePath) -> Option<Given> {
        let names = &self.files.get(path)?.names;
        let entries: Vec<Entry> = names.read.iter().filter_map(|id| self.catalogue.entry(id)).cloned().collect();
        (!entries.is_empty()).then(|| Given { entries, ..Given::default() })
    }

    /// Puts what a file gives now in the place of what it gave; returns whether other photos are shown than before.
    fn put(&mut self, before: &Names, now: Given, change: &mut Change) -> bool {
        let shown =
            |entries: &mut dyn Iterator<Item = &Entry>| -> BTreeSet<_> { entries.flat_map(photos::of_entry).collect() };
        let old = shown(&mut before.read.iter().filter_map(|id| self.catalogue.entry(id)));
        let new = shown(&mut now.entries.iter());
        self.catalogue.put(before, now, change);
        old != new
    }

    /// Checks the entries that changed and those whose checks asked about anything that did.
    fn check_again(&mut self, change: &Change) {
        let touched = |checked: &Checked| checked.asked.iter().any(|question| question.is_touched(change));
        let mut again: BTreeSet<&Reference> =
            self.checked.par_iter().filter(|(_, checked)| touched(checked)).map(|(id, _)| id).collect();
        again.extend(&change.entries);
        // What is asked is recorded thread by thread, and each entry is checked on one.
        let checked: Vec<_> = again
            .into_par_iter()
            .map(|id| (id.clone(), self.catalogue.entry(id).map(|entry| self.check(entry))))
            .collect();
        for (id, checked) in checked {
            match checked {
                Some(checked) => self.checked.insert(id, checked),
                None => self.checked.remove(&id),
            };
        }
    }

    /// Runs the checks of one entry. One that is shown as it was is left alone: its places are no longer those of the text.
    fn check(&self, entry: &Entry) -> Checked {
        if self.is_old(entry) {
            return Checked::default();
        }
        let placing = Placing::new(&self.texts);
        let (findings, asked) = recorded(|| {
            let mut findings = catalogue::check_one(&self.catalogue, entry, &placing);
            findings.extend(reckon::check_one(&self.catalogue, entry, &placing));
            findings
        });
        Checked { findings, asked }
    }
}
