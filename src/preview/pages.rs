//! The pages of a studio in memory: each is made when it is asked for, and again only when what it shows has changed.

use super::{Kept, Update};
use crate::catalogue::{CallState, Question, View, Visibility, recorded};
use crate::entry::Data;
use crate::entry::value::Choice;
use crate::finding::{Finding, Severity};
use crate::page::{self, Page, Shown, Site, call_path, page_path};
use crate::render::picture::Variant;
use crate::render::theme::{Engine, Marks};
use crate::render::{Renderer, ToMake, calendar, desk, photos::Photo};
use crate::source::{FilePath, Files};
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::io;
use std::sync::Arc;
use xxhash_rust::xxh3::xxh3_128;

/// A studio and the pages made of it so far.
#[derive(Debug)]
pub struct Preview {
    /// The studio as it was last read.
    pub kept: Kept,
    site: Site,
    engine: Engine,
    dress: Dress,
    made: BTreeMap<String, Made>,
    /// Why pages could not be made again, by file.
    faults: BTreeMap<String, Finding>,
    work: Work,
    /// The digest of the desk's page as it was last made.
    desk: Option<u128>,
    /// The files that were saved last.
    saved: BTreeSet<FilePath>,
}

/// How much was done since the preview began.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Work {
    /// How often what a page shows was worked out.
    pub worked_out: usize,
    /// How often a page was filled.
    pub filled: usize,
    /// How often the theme, or what every page knows of the site, changed, so that all pages had to be filled again.
    pub dressed: usize,
}

/// What every page has beside what it shows itself: numbers that go up when it changes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Dress {
    /// Templates, and what they know of the whole site.
    form: u64,
    /// The style sheet.
    style: u64,
}

/// A file of the site as it was last made.
#[derive(Debug)]
struct Made {
    bytes: Arc<[u8]>,
    /// The digest of what it shows.
    shows: u128,
    dress: Dress,
    asked: BTreeSet<Question>,
    /// Whether anything it asked about has changed since.
    stale: bool,
}

/// A file's bytes, and the digest of what it shows.
type Fresh = (Arc<[u8]>, u128);

/// What a reader sees of a file, but for its style: two are equal if she would see no difference.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    shows: u128,
    form: u64,
}

impl Preview {
    /// Reads a studio and makes nothing yet.
    ///
    /// # Errors
    /// If the studio's files cannot be listed.
    pub fn new(files: &dyn Files, view: View) -> io::Result<Self> {
        let kept = Kept::load(files, view)?;
        let site = page::site(&Shown::for_one(&kept.catalogue, &kept.sizes));
        let engine = kept.theme.engine(&site);
        let (dress, work) = (Dress::default(), Work::default());
        let mut preview = Self {
            kept,
            site,
            engine,
            dress,
            made: BTreeMap::new(),
            faults: BTreeMap::new(),
            work,
            desk: None,
            saved: BTreeSet::new(),
        };
        if preview.kept.theme.has_own_templates() {
            preview.try_templates();
        }
        Ok(preview)
    }

    /// Takes in files that changed; no page is made again before it is asked for.
    ///
    /// # Errors
    /// If the studio's files cannot be listed; everything stays as it was.
    pub fn update(&mut self, files: &dyn Files, changed: &BTreeSet<FilePath>, view: View) -> io::Result<Update> {
        let before = self.kept.theme.marks();
        let update = self.kept.update(files, changed, view)?;
        for made in self.made.values_mut() {
            made.stale |= match &update {
                Update::Nothing => false,
                Update::Some(change) => made.asked.iter().any(|question| question.is_touched(change)),
                Update::All => true,
            };
        }
        if update != Update::Nothing {
            self.saved.clone_from(changed);
            self.dress_again(before);
            if before.templates != self.kept.theme.marks().templates {
                self.try_templates();
            }
            // What could not be made is tried again, or a fault would be told of that is mended.
            for file in self.faults.keys().cloned().collect::<Vec<_>>() {
                let _ = self.file(&file);
            }
        }
        Ok(update)
    }

    /// Makes every page once and keeps none, to learn at once which of them the templates cannot make.
    fn try_templates(&mut self) {
        let shown = Shown::new(&self.kept.catalogue, &self.kept.sizes);
        let renderer = Renderer::new(shown, &self.kept.theme);
        let faulty = |page: ToMake<'_>| page.make().err().map(|fault| (page.path.clone(), *fault));
        self.faults = renderer.files().into_par_iter().filter_map(faulty).collect();
    }

    /// Makes the engine anew if the theme, or what every page knows of the site, has changed.
    fn dress_again(&mut self, before: Marks) {
        let site = page::site(&Shown::for_one(&self.kept.catalogue, &self.kept.sizes));
        let now = self.kept.theme.marks();
        let (form, style) = (before.templates != now.templates || site != self.site, before.style != now.style);
        if form || style {
            self.dress = Dress { form: self.dress.form + u64::from(form), style: self.dress.style + u64::from(style) };
            self.engine = self.kept.theme.engine(&site);
            self.site = site;
            self.work.dressed += 1;
        }
    }

    /// Returns a file of the site that is no photo, made now if it must be; nothing if the site has none of this name.
    ///
    /// # Errors
    /// A page that cannot be made and never could.
    pub fn file(&mut self, file: &str) -> Result<Option<Arc<[u8]>>, Box<Finding>> {
        let old = self.made.remove(file);
        if let Some(made) = old.as_ref().filter(|made| !made.stale && made.dress == self.dress) {
            let bytes = Arc::clone(&made.bytes);
            self.made.extend(old.map(|made| (file.to_owned(), made)));
            return Ok(Some(bytes));
        }
        let (made, asked) = recorded(|| self.make(file, old.as_ref()));
        let fault = match made {
            Ok(fresh) => {
                self.faults.remove(file);
                let Some((bytes, shows)) = fresh else { return Ok(None) };
                let made = Made { bytes: Arc::clone(&bytes), shows, dress: self.dress, asked, stale: false };
                self.made.insert(file.to_owned(), made);
                return Ok(Some(bytes));
            }
            Err(fault) => fault,
        };
        self.faults.insert(file.to_owned(), (*fault).clone());
        // The last good page stays, in the dress that it was made in.
        let Some(old) = old else { return Err(fault) };
        let bytes = Arc::clone(&old.bytes);
        self.made.insert(file.to_owned(), Made { stale: true, ..old });
        Ok(Some(bytes))
    }

    fn make(&mut self, file: &str, old: Option<&Made>) -> Result<Option<Fresh>, Box<Finding>> {
        let shown = Shown::for_one(&self.kept.catalogue, &self.kept.sizes);
        let renderer = Renderer::with(shown, &self.kept.theme, &self.engine);
        let Some(page) = renderer.page_at(file) else {
            return Ok(renderer.other(file).map(|bytes| {
                let shows = xxh3_128(&bytes);
                (Arc::from(bytes), shows)
            }));
        };
        self.work.worked_out += 1;
        let context = renderer.context(&page)?;
        // A context holds texts, numbers and lists; there is nothing in it that JSON could not say.
        let shows = xxh3_128(&serde_json::to_vec(&context).unwrap_or_default());
        if let Some(old) = old.filter(|old| old.shows == shows && old.dress == self.dress) {
            return Ok(Some((Arc::clone(&old.bytes), shows)));
        }
        self.work.filled += 1;
        Ok(Some((Arc::from(renderer.fill(&page, &context)?), shows)))
    }

    /// Returns the photo and which of its pictures a file of the site is.
    pub fn photo(&self, file: &str) -> Option<(&Photo, Variant)> {
        let of = |photo: &'_ Photo| photo.variants.iter().copied().find(|variant| photo.path(variant) == file);
        self.kept.photos.iter().find_map(|photo| Some((photo, of(photo)?)))
    }

    /// Returns every file of the site but photos, whether made yet or not.
    pub fn names(&self) -> Vec<String> {
        let shown = Shown::for_one(&self.kept.catalogue, &self.kept.sizes);
        Renderer::with(shown, &self.kept.theme, &self.engine).files().into_iter().map(|file| file.path).collect()
    }

    /// Returns what a reader saw of a file when it was last made.
    pub fn look(&self, file: &str) -> Option<Look> {
        self.made.get(file).map(|made| Look { shows: made.shows, form: made.dress.form })
    }

    /// Makes the desk's page as things stand now, and returns it with whether it is another than last time.
    ///
    /// # Errors
    /// A template of the desk that fails, which is a mistake of ours.
    pub fn desk(&mut self) -> Result<(String, bool), String> {
        let shown = Shown::for_one(&self.kept.catalogue, &self.kept.sizes);
        let html = desk::page(&desk::context(&shown, &self.findings(), &self.kept.texts))?;
        let now = Some(xxh3_128(html.as_bytes()));
        let is_another = std::mem::replace(&mut self.desk, now) != now;
        Ok((html, is_another))
    }

    /// Makes the designer's own calendar as things stand now; nothing while there is no day in it.
    pub fn desk_calendar(&self) -> Option<Vec<u8>> {
        let shown = Shown::for_one(&self.kept.catalogue, &self.kept.sizes);
        let name = format!("{}, the desk", self.kept.catalogue.studio.title);
        calendar::calendar(&shown, &name, &page::desk::events(&shown))
    }

    /// Returns in words why readers do not see a page as it is here; nothing where they do.
    pub fn ribbon(&self, file: &str) -> Option<String> {
        let shown = Shown::for_one(&self.kept.catalogue, &self.kept.sizes);
        let page = Page::at(&shown, file)?;
        if let Some(design) = page.call().and_then(|id| self.kept.catalogue.entry(id)) {
            let call = self.kept.catalogue.call(design, design.pattern()?)?;
            let opens = call.says.opens.filter(|_| call.state == CallState::Coming)?;
            return Some(format!("Not on the site before {}", opens.in_words()));
        }
        let entry = self.kept.catalogue.entry(page.entry()?)?;
        let seen = self.kept.catalogue.for_readers(entry);
        if seen == Visibility::Public {
            return None;
        }
        Some(match (&entry.data, entry.seen_from()) {
            _ if entry.common.ready == Some(false) => "Not on the site: it is not ready".to_owned(),
            (Data::Pattern(pattern), _) if seen == Visibility::OnTheWay => {
                format!("Not on the site: a design at the stage {}", pattern.stage().word())
            }
            (_, Some(day)) => format!("Not on the site before {}", day.in_words()),
            (_, None) => "Not on the site: it has no date".to_owned(),
        })
    }

    /// Returns the addresses of pages that only the preview has.
    pub fn hidden(&self) -> Vec<String> {
        let catalogue = &self.kept.catalogue;
        let shown = Shown::for_one(catalogue, &self.kept.sizes);
        let hidden = catalogue.entries.iter().filter(|entry| catalogue.for_readers(entry) != Visibility::Public);
        let calls = catalogue.calls().filter(|(_, _, call)| call.state == CallState::Coming);
        hidden
            .map(|entry| page_path(&entry.id))
            .chain(calls.map(|(entry, _, _)| call_path(entry)))
            .map(|path| shown.addresses.local(&path))
            .collect()
    }

    /// Returns the address of the style sheet as pages have it now.
    pub fn style(&self) -> String {
        self.kept.theme.style(&self.site)
    }

    /// Returns all that is wrong, sorted by file and place; of templates, what
    /// every page met when they last changed, and what pages asked for since have met.
    pub fn findings(&self) -> Vec<Finding> {
        let mut all = self.kept.findings();
        // What one line of a template does to many pages is one mistake.
        let mut faults: BTreeMap<(&FilePath, usize), (&Finding, usize)> = BTreeMap::new();
        for fault in self.faults.values() {
            faults.entry((&fault.at.file, fault.at.span.start)).or_insert((fault, 0)).1 += 1;
        }
        all.extend(faults.into_values().map(|(fault, pages)| match pages {
            1 => fault.clone(),
            _ => Finding { message: format!("{}; {} more pages the same", fault.message, pages - 1), ..fault.clone() },
        }));
        crate::finding::sort(&mut all);
        all
    }

    /// Returns the error to show first, if there is one: in a file that was saved last, or else the first of all.
    pub fn first_error<'f>(&self, findings: &'f [Finding]) -> Option<&'f Finding> {
        let errors = || findings.iter().filter(|finding| finding.severity == Severity::Error);
        errors().find(|finding| self.saved.contains(&finding.at.file)).or_else(|| errors().next())
    }

    /// Returns how much was done so far.
    pub fn work(&self) -> Work {
        self.work
    }
}
