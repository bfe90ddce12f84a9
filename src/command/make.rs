//! `make`: writes the site.

use super::terminal::{self, Ticker};
use super::{Failure, Outcome, studio};
use crate::catalogue::View;
use crate::entry::value::Date;
use crate::finding::{any_error, sort};
use crate::render::photos::Photo;
use crate::render::{ToMake, picture};
use crate::source::Files;
use crate::source::disk::Disk;
use crate::write::{Batch, Digest, Report, SiteFile, SitePath, publish};
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

/// Makes the site of a studio as of a day and writes it to a folder.
pub fn make(named: Option<&Path>, to: Option<&Path>, today: Date) -> Result<Outcome, Failure> {
    let ticker = Ticker::new();
    let disk = studio::find(named)?;
    let folder = to.map_or_else(|| disk.root().join("site"), Path::to_path_buf);
    let mut studied = crate::study(&disk, View::of_readers(today))
        .map_err(|error| format!("cannot read the studio in `{}`: {error}", disk.root().display()))?;
    if any_error(&studied.findings) {
        return refuse(&studied.findings, &studied.texts, &folder);
    }
    let sizes = studied.sizes();
    let renderer = studied.renderer(&sizes);
    let files = renderer.files();
    let pages = files.iter().filter(|file| file.path.ends_with(".html")).count();
    let failed = AtomicBool::new(false);
    let files = site_files(files, &studied.photos, &disk, &failed)?;
    let report = publish(&folder, files, &|progress| ticker.tick(progress));
    ticker.clear();
    if failed.into_inner() {
        // Publishing stops at the first page that cannot be made; she is told of them all.
        let faults = crate::faults(&studied);
        studied.findings.extend(faults);
        sort(&mut studied.findings);
        return refuse(&studied.findings, &studied.texts, &folder);
    }
    let report = report?;
    terminal::findings(&studied.findings, &studied.texts);
    terminal::say(&summary(pages, &report, &terminal::count(&studied.findings), &ticker.seconds(), &folder));
    // The process ends here; giving every entry's memory back first would only cost time.
    std::mem::forget(renderer);
    std::mem::forget(studied);
    Ok(Outcome::Done)
}

fn refuse(
    findings: &[crate::finding::Finding],
    texts: &crate::source::Texts,
    folder: &Path,
) -> Result<Outcome, Failure> {
    terminal::findings(findings, texts);
    terminal::say(&format!("{}; `{}` is as it was\n", terminal::count(findings), folder.display()));
    Ok(Outcome::Errors)
}

fn summary(pages: usize, report: &Report, findings: &str, time: &str, folder: &Path) -> String {
    let removed = if report.removed == 0 { String::new() } else { format!(", {} removed", report.removed) };
    let page = if pages == 1 { "page" } else { "pages" };
    format!("{pages} {page} in `{}`: {} changed{removed}; {findings}; {time}\n", folder.display(), report.written)
}

/// Puts pages and photos together as the writing stage takes them.
///
/// Whether a page could not be made is kept in `failed`.
fn site_files<'a>(
    pages: Vec<ToMake<'a>>,
    photos: &[Photo],
    disk: &Disk,
    failed: &'a AtomicBool,
) -> Result<Vec<SiteFile<'a>>, Failure> {
    let mut files = Vec::with_capacity(pages.len() + photos.len() * 6);
    for page in pages {
        let make = move |page: &ToMake<'_>| {
            page.make().map_err(|finding| {
                failed.store(true, Ordering::Relaxed);
                finding.message.clone()
            })
        };
        files.push(SiteFile::made(SitePath::new(&page.path)?, move || make(&page)));
    }
    for photo in photos {
        let (disk, source, variants) = (disk.clone(), photo.file.0.clone(), photo.variants.clone());
        let batch: Arc<Batch> = Batch::new(move |parts| {
            let bytes = disk.read(&source).map_err(|error| format!("`{source}` cannot be read: {error}"))?;
            let wanted: Vec<_> = parts.iter().filter_map(|part| variants.get(*part).copied()).collect();
            picture::make(&bytes, &wanted).map_err(|error| format!("`{source}`: {error}"))
        });
        for (part, variant) in photo.variants.iter().enumerate() {
            let digest = Digest::from(variant.digest(photo.digest));
            files.push(SiteFile::part(SitePath::new(photo.path(variant))?, digest, &batch, part));
        }
    }
    Ok(files)
}
