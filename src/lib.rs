//! A studio's folder of Markdown and YAML becomes a linked site.
//!
//! `source` reads the files, `entry` turns each into typed fields and references, `catalogue` joins them and settles what is
//! public, `reckon` works out what a knitter needs, `page` puts that into contexts, `render` makes pages of them, and
//! `write` brings the folder in line. Each stage knows only those before it; what is wrong is collected as `finding`s
//! all along the way. `command` is the edge that walks these stages for a person at a terminal.
//!
//! [`study`] is the first half of the walk, up to the joined catalogue; [`make`] is the second, up to the files of the
//! site. Neither touches a disk or a clock: both get what they need as arguments.

pub mod catalogue;
pub mod command;
pub mod entry;
pub mod finding;
pub mod measure;
pub mod notation;
pub mod page;
pub mod preview;
pub mod reckon;
pub mod render;
pub mod source;
pub mod standards;
pub mod write;

use catalogue::{Catalogue, View};
use entry::Placing;
use finding::Finding;
use page::{PictureSizes, Shown};
use render::photos::Photo;
use render::{Rendered, Renderer, Theme};
use source::{Files, Texts};
use std::io;

/// A studio read and joined, with all that is wrong in it.
#[derive(Debug)]
pub struct Studied {
    /// The texts, to show findings in.
    pub texts: Texts,
    /// The joined entries; where `studio.yaml` could not be read, under a stand-in for it.
    pub catalogue: Catalogue,
    /// The photos that public entries show.
    pub photos: Vec<Photo>,
    /// The templates and assets.
    pub theme: Theme,
    /// What is wrong, sorted by file and place.
    pub findings: Vec<Finding>,
}

/// A studio's entries read and joined, with what is wrong in them.
#[derive(Debug)]
pub struct Joined {
    /// The texts, to show findings in.
    pub texts: Texts,
    /// The joined entries; where `studio.yaml` could not be read, under a stand-in for it.
    pub catalogue: Catalogue,
    /// What is wrong so far, in no order.
    pub findings: Vec<Finding>,
}

/// Reads and joins a studio's entries as of a day: as far as figures need.
///
/// # Errors
/// If the studio's files cannot be listed; a file that cannot be read is a finding.
pub fn join(files: &dyn Files, view: View) -> io::Result<Joined> {
    let (texts, unreadable) = source::load(files)?;
    let (entries, mut findings) = entry::read(&texts, &unreadable);
    let catalogue = Catalogue::of(entries, view);
    findings.extend(catalogue::check(&catalogue, &Placing::new(&texts)));
    Ok(Joined { texts, catalogue, findings })
}

/// Reads and checks a whole studio as of a day.
///
/// # Errors
/// If the studio's files cannot be listed; a file that cannot be read is a finding.
pub fn study(files: &dyn Files, view: View) -> io::Result<Studied> {
    let Joined { mut texts, catalogue, mut findings } = join(files, view)?;
    findings.extend(reckon::check(&catalogue, &Placing::new(&texts)));
    let (theme, faults) = Theme::load(catalogue.studio.theme(), files, &mut texts);
    findings.extend(faults);
    let (photos, spoilt) = render::photos::photos(&catalogue, files);
    findings.extend(spoilt);
    finding::sort(&mut findings);
    Ok(Studied { texts, catalogue, photos, theme, findings })
}

impl Studied {
    /// Plans the site; `sizes` are those of the studio's photos.
    pub fn renderer<'a>(&'a self, sizes: &'a PictureSizes) -> Renderer<'a> {
        Renderer::new(Shown::new(&self.catalogue, sizes), &self.theme)
    }

    /// Returns how large each photo is and in which widths it is made.
    pub fn sizes(&self) -> PictureSizes {
        render::photos::sizes(&self.photos)
    }
}

/// Makes all files of the site but the photos for the sake of what is wrong with them, and keeps none.
pub fn faults(studied: &Studied) -> Vec<Finding> {
    render::faults(&studied.renderer(&studied.sizes()))
}

/// Makes all files of the site but the photos, and keeps them.
///
/// A page whose template fails is missing and a finding; such a site must not be published.
pub fn make(studied: &Studied) -> (Vec<Rendered>, Vec<Finding>) {
    render::render(&studied.renderer(&studied.sizes()))
}
