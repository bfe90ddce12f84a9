//! `make`: writes the site.

use super::terminal::{self, Ticker};
use super::{Failure, Outcome, studio};
use crate::entry::value::Date;
use crate::finding::{any_error, sort};
use crate::render::photos::Photo;
use crate::render::{Rendered, picture};
use crate::source::Files;
use crate::source::disk::Disk;
use crate::write::{Batch, Digest, Report, SiteFile, SitePath, publish};
use std::path::Path;
use std::sync::Arc;

/// Makes the site of a studio as of a day and writes it to a folder.
pub fn make(named: Option<&Path>, to: Option<&Path>, today: Date) -> Result<Outcome, Failure> {
    let ticker = Ticker::new();
    let disk = studio::find(named)?;
    let folder = to.map_or_else(|| disk.root().join("site"), Path::to_path_buf);
    let mut studied = crate::study(&disk, today)
        .map_err(|error| format!("cannot read the studio in `{}`: {error}", disk.root().display()))?;
    if any_error(&studied.findings) {
        return refuse(&studied.findings, &studied.texts, &folder);
    }
    let (rendered, faults) = crate::make(&studied);
    let pages = rendered.iter().filter(|file| file.path.ends_with(".html")).count();
    studied.findings.extend(faults);
    sort(&mut studied.findings);
    if any_error(&studied.findings) {
        return refuse(&studied.findings, &studied.texts, &folder);
    }
    let files = site_files(rendered, &studied.photos, &disk)?;
    let report = publish(&folder, files, &|progress| ticker.tick(progress));
    ticker.clear();
    let report = report?;
    terminal::findings(&studied.findings, &studied.texts);
    terminal::say(&summary(pages, &report, &terminal::count(&studied.findings), &ticker.seconds(), &folder));
    // The process ends here; giving every entry's memory back first would only cost time.
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
fn site_files(rendered: Vec<Rendered>, photos: &[Photo], disk: &Disk) -> Result<Vec<SiteFile>, Failure> {
    let mut files = Vec::with_capacity(rendered.len() + photos.len() * 6);
    for file in rendered {
        files.push(SiteFile::new(SitePath::new(&file.path)?, file.bytes));
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
