//! The photos a site shows: which, in what sizes, and how each is made when it is needed.

use super::picture::{Facts, Format, Variant, check_whole, digest, other_colours, variants};
use crate::catalogue::{Catalogue, PictureFile};
use crate::entry::Entry;
use crate::finding::{Code, Finding, Severity};
use crate::page::PictureSizes;
use crate::source::{Files, Place};
use rayon::prelude::*;
use std::collections::BTreeSet;

/// A photo that cannot be read.
pub static PICTURE_UNREADABLE: Code = Code {
    name: "picture-unreadable",
    severity: Severity::Error,
    what: "A photo is damaged, too large, or not of a kind that can be published.",
    why: "Readers would see a hole.",
    bad: "a photo whose copying was cut short",
    good: "the whole photo, as JPEG, PNG or WebP",
};

/// A photo in a wider range of colours than the web's.
pub static PICTURE_COLOURS: Code = Code {
    name: "picture-colours",
    severity: Severity::Warning,
    what: "A photo carries a colour profile other than sRGB, which is not kept.",
    why: "Its colours come out a little duller, and yarn is chosen by them.",
    bad: "a photo in Display P3, as many phones take it",
    good: "the same photo, saved as sRGB",
};

/// One photo of the studio and the pictures to make of it.
#[derive(Clone, Debug)]
pub struct Photo {
    /// The photo.
    pub file: PictureFile,
    /// The digest of its bytes.
    pub digest: u128,
    /// The pictures to make.
    pub variants: Vec<Variant>,
}

impl Photo {
    /// Returns where one of its pictures goes in the site.
    pub fn path(&self, variant: &Variant) -> String {
        self.file.made(variant.width, variant.format.extension())
    }
}

/// Reads the first bytes and the digest of every photo that a public entry shows.
///
/// Photos of entries that are not public are left alone, so that nothing of them reaches the site.
pub fn photos(catalogue: &Catalogue, files: &dyn Files) -> (Vec<Photo>, Vec<Finding>) {
    let mut wanted: BTreeSet<PictureFile> = BTreeSet::new();
    for entry in catalogue.entries.iter().filter(|entry| catalogue.public_entry(&entry.id).is_some()) {
        wanted.extend(of_entry(entry));
    }
    let read: Vec<Result<(Photo, bool), Finding>> =
        wanted.into_par_iter().filter_map(|file| photo(file, files)).collect();
    let mut photos = Vec::new();
    let mut findings = Vec::new();
    for one in read {
        match one {
            Ok((photo, true)) => {
                let finding = Finding::new(
                    &PICTURE_COLOURS,
                    Place::whole(&photo.file.0),
                    "the photo is not in sRGB, and its colours will change a little",
                );
                findings.push(finding.help("save it as sRGB; most programs that export pictures offer it"));
                photos.push(photo);
            }
            Ok((photo, false)) => photos.push(photo),
            Err(finding) => findings.push(finding),
        }
    }
    (photos, findings)
}

/// Returns the photos that an entry shows.
pub fn of_entry(entry: &Entry) -> impl Iterator<Item = PictureFile> {
    let lead = entry.common.picture.as_deref();
    lead.into_iter().chain(entry.prose.pictures.iter().map(|picture| picture.path.as_str())).filter_map(PictureFile::of)
}

/// Reads one photo, and whether its colours will change; one that is missing was found by the catalogue already.
fn photo(file: PictureFile, files: &dyn Files) -> Option<Result<(Photo, bool), Finding>> {
    let bytes = files.read(&file.0).ok()?;
    Some(match Facts::read(&bytes).and_then(|facts| check_whole(&bytes).map(|()| facts)) {
        Ok(facts) => Ok((Photo { digest: digest(&bytes), variants: variants(&facts), file }, other_colours(&bytes))),
        Err(error) => Err(Finding::new(&PICTURE_UNREADABLE, Place::whole(&file.0), error.to_string())),
    })
}

/// Returns the sizes each photo is made in, the smallest first.
pub fn sizes(photos: &[Photo]) -> PictureSizes {
    let of = |photo: &Photo| {
        photo
            .variants
            .iter()
            .filter(|variant| variant.format == Format::Jpeg)
            .map(|variant| (variant.width, variant.height))
            .collect()
    };
    photos.iter().map(|photo| (photo.file.clone(), of(photo))).collect()
}
