//! The preview as the server sees it: answers from memory, and open pages told what changed.

use super::dress::{self, Dress};
use super::server::{Answer, Event, EventKind, Hub, Pages};
use super::watcher::Burst;
use super::{Look, Preview, Update};
use crate::catalogue::View;
use crate::finding::{Finding, Severity};
use crate::render::desk;
use crate::render::picture::{self, Format, Variant};
use crate::source::{FilePath, Files};
use std::collections::{BTreeSet, HashMap};
use std::io;
use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

/// Where the desk is.
const DESK: &str = "/desk/";

/// Where the designer's own calendar is.
const DESK_CALENDAR: &str = "desk/calendar.ics";

/// What changed in the studio's folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Changed {
    /// These files.
    Files(BTreeSet<FilePath>),
    /// Perhaps anything.
    Anything,
}

impl Changed {
    /// Returns what a burst of the watcher means, with the names that its paths have in the studio.
    pub fn of(burst: &Burst, name: impl Fn(&Path) -> Option<FilePath>) -> Self {
        match burst.paths.iter().map(|path| name(path)).collect::<Option<_>>() {
            Some(paths) if !burst.all => Self::Files(paths),
            _ => Self::Anything,
        }
    }
}

/// A studio's preview, shared by the server and the watcher.
pub struct Live<F> {
    files: F,
    hub: Arc<Hub>,
    preview: Mutex<Preview>,
    /// Pictures made so far, by their digest.
    pictures: Mutex<HashMap<u128, Arc<[u8]>>>,
}

impl<F: Files + Send + 'static> Live<F> {
    /// Reads a studio.
    ///
    /// # Errors
    /// If the studio's files cannot be listed.
    pub fn new(files: F, hub: Arc<Hub>, view: View) -> io::Result<Self> {
        let preview = Mutex::new(Preview::new(&files, view)?);
        Ok(Self { files, hub, preview, pictures: Mutex::new(HashMap::new()) })
    }

    /// Takes in what changed and tells the open pages that show something else now.
    ///
    /// # Errors
    /// If the studio's files cannot be listed; the pages stay as they were.
    pub fn change(&self, changed: &Changed, view: View) -> io::Result<Update> {
        let mut preview = self.preview();
        let (style, strip) = (preview.style(), self.strip(&preview));
        let open: Vec<_> = self.hub.listeners().into_iter().map(|page| (self.seen(&preview, &page), page)).collect();
        let update = match changed {
            Changed::Files(paths) => preview.update(&self.files, paths, view)?,
            Changed::Anything => preview.update(&self.files, &BTreeSet::from([FilePath::studio()]), view)?,
        };
        if update == Update::Nothing {
            return Ok(update);
        }
        for (before, page) in open {
            let is_another = if page == DESK {
                preview.desk().is_ok_and(|(_, is_another)| is_another)
            } else {
                // One that cannot be made is told of on the strip.
                self.file_of(&preview, &page).map(|file| preview.file(&file));
                self.seen(&preview, &page) != before
            };
            if is_another {
                self.hub.tell(Some(&page), &Event { kind: EventKind::Page, data: String::new() });
            }
        }
        let (new_style, new_strip) = (preview.style(), self.strip(&preview));
        for (kind, old, new) in [(EventKind::Style, style, new_style), (EventKind::Strip, strip, new_strip)] {
            if old != new {
                self.hub.tell(None, &Event { kind, data: new });
            }
        }
        Ok(update)
    }

    /// Returns what is seen of an open page: the page as it was last made, and its ribbon.
    fn seen(&self, preview: &Preview, page: &str) -> Option<(Option<Look>, Option<String>)> {
        let file = self.file_of(preview, page)?;
        Some((preview.look(&file), preview.ribbon(&file)))
    }

    /// Returns all that is wrong.
    pub fn findings(&self) -> Vec<Finding> {
        self.preview().findings()
    }

    /// Returns the first errors in some files, each with its line, in words.
    pub fn errors_in(&self, files: &BTreeSet<FilePath>, most: usize) -> Vec<String> {
        let preview = self.preview();
        let findings = preview.findings();
        let errors = findings.iter().filter(|one| one.severity == Severity::Error && files.contains(&one.at.file));
        errors.take(most).map(|error| dress::in_words(error, &preview.kept.texts)).collect()
    }

    /// Returns the address of the first page, from the root of the host.
    pub fn home(&self) -> String {
        home(&self.preview())
    }

    fn strip(&self, preview: &Preview) -> String {
        let findings = preview.findings();
        let first = preview.first_error(&findings);
        dress::strip(&findings, first, &preview.kept.texts, preview.kept.is_any_old())
    }

    /// Returns the file of the site that a path asks for, or nothing outside the site's folder of the host.
    fn file_of(&self, preview: &Preview, path: &str) -> Option<String> {
        let base = preview.kept.catalogue.studio.base();
        let file = path.strip_prefix(base)?.strip_prefix('/')?;
        Some(if file.is_empty() || file.ends_with('/') { format!("{file}index.html") } else { file.to_owned() })
    }

    fn preview(&self) -> MutexGuard<'_, Preview> {
        // A page that stopped inside left its own making undone, and nothing else.
        self.preview.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn own(&self, path: &str) -> Option<Answer> {
        let path = path.strip_prefix('/')?;
        if path == dress::HIDDEN {
            let css = dress::hidden(self.preview().hidden().into_iter());
            return Some(found(path, Arc::from(css.into_bytes())));
        }
        if path == "desk" {
            return Some(Answer { location: Some(DESK.to_owned()), ..status(301) });
        }
        if path == "desk/" {
            return Some(self.desk());
        }
        if path == DESK_CALENDAR {
            return self.preview().desk_calendar().map(|bytes| found(path, Arc::from(bytes)));
        }
        let of_desk = desk::assets().into_iter().find(|(asset, _)| path.strip_prefix("desk/") == Some(asset));
        let (_, bytes) = of_desk.or_else(|| dress::ASSETS.into_iter().find(|(asset, _)| *asset == path))?;
        Some(found(path, Arc::from(bytes)))
    }

    fn desk(&self) -> Answer {
        let seen = self.hub.now();
        match self.preview().desk() {
            Ok((html, _)) => {
                let dress = Dress { seen, ..Dress::default() };
                found("index.html", Arc::from(dress.put_on(html.as_bytes())))
            }
            Err(why) => Answer { body: Arc::from(format!("{why}\n").into_bytes()), ..status(500) },
        }
    }

    /// Makes a picture, once; it takes long enough that nothing else may wait for it.
    fn picture(&self, file: &FilePath, digest: u128, variant: Variant) -> Option<Arc<[u8]>> {
        let key = variant.digest(digest);
        let known = |made: MutexGuard<'_, HashMap<u128, Arc<[u8]>>>| made.get(&key).cloned();
        if let Some(made) = known(self.pictures.lock().unwrap_or_else(PoisonError::into_inner)) {
            return Some(made);
        }
        let bytes = self.files.read(file).ok()?;
        let made: Arc<[u8]> = Arc::from(picture::make_one(&bytes, variant).ok()?);
        self.pictures.lock().unwrap_or_else(PoisonError::into_inner).insert(key, Arc::clone(&made));
        Some(made)
    }

    fn dressed(&self, preview: &Preview, file: &str, page: &[u8], seen: String) -> Arc<[u8]> {
        let dress = Dress { ribbon: preview.ribbon(file), strip: self.strip(preview), seen };
        Arc::from(dress.put_on(page))
    }
}

impl<F: Files + Send + 'static> Pages for Live<F> {
    fn answer(&self, path: &str) -> Answer {
        if let Some(answer) = self.own(path) {
            return answer;
        }
        // Asked before the page is made, so that whatever is told while it is made reaches it.
        let seen = self.hub.now();
        let mut preview = self.preview();
        let Some(file) = self.file_of(&preview, path) else {
            let home = (path == "/").then(|| home(&preview));
            return Answer { status: if home.is_some() { 301 } else { 404 }, location: home, ..status(404) };
        };
        if let Some((photo, variant)) = preview.photo(&file) {
            let (source, digest) = (photo.file.0.clone(), photo.digest);
            drop(preview);
            return self.picture(&source, digest, variant).map_or_else(|| status(404), |bytes| found(&file, bytes));
        }
        match preview.file(&file) {
            Ok(Some(page)) if file.ends_with(".html") => found(&file, self.dressed(&preview, &file, &page, seen)),
            Ok(Some(bytes)) => found(&file, bytes),
            Ok(None) if !path.ends_with('/') && matches!(preview.file(&format!("{file}/index.html")), Ok(Some(_))) => {
                Answer { location: Some(format!("{path}/")), ..status(301) }
            }
            Ok(None) => {
                let page = preview.file("404.html").ok().flatten().unwrap_or_default();
                Answer { status: 404, ..found("404.html", self.dressed(&preview, &file, &page, seen)) }
            }
            Err(finding) => {
                let page = self.dressed(&preview, &file, &dress::cannot(&finding), seen);
                Answer { status: 500, ..found("index.html", page) }
            }
        }
    }
}

/// Returns the address of the first page, from the root of the host.
fn home(preview: &Preview) -> String {
    format!("{}/", preview.kept.catalogue.studio.base())
}

fn status(status: u16) -> Answer {
    Answer { status, kind: "text/plain; charset=utf-8", body: Arc::from([]), location: None }
}

fn found(file: &str, body: Arc<[u8]>) -> Answer {
    Answer { status: 200, kind: kind(file), body, location: None }
}

/// Returns the content type of a file by its name.
fn kind(file: &str) -> &'static str {
    match file.rsplit_once('.').map(|(_, end)| end) {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("ics") => "text/calendar; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("xml") => "application/xml; charset=utf-8",
        Some("json") => "application/json; charset=utf-8",
        Some("txt") => "text/plain; charset=utf-8",
        Some("vtt") => "text/vtt; charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("woff2") => "font/woff2",
        Some(end) if end == Format::Jpeg.extension() => "image/jpeg",
        Some(end) if end == Format::Webp.extension() => "image/webp",
        _ => "application/octet-stream",
    }
}
