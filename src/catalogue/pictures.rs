//! The pictures that entries show.

use crate::entry::Entry;
use crate::entry::Placing;
use crate::finding::{Code, Finding, Severity, nearest};
use crate::source::{FilePath, Place};

/// A picture that is not in the studio.
pub static PICTURE_MISSING: Code = Code {
    name: "picture-missing",
    severity: Severity::Error,
    what: "An entry shows a picture that is not in the studio.",
    why: "Readers would see a hole.",
    bad: "picture: photos/yolk.jpg",
    good: "picture: photos/yoke.jpg",
};

/// The extensions of pictures we can publish.
const EXTENSIONS: [&str; 4] = ["jpg", "jpeg", "png", "webp"];

/// Names a picture of the studio from what a writer wrote: a path from the studio's root, `./` allowed.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct PictureFile(pub FilePath);

impl PictureFile {
    /// Returns the picture an address means, or nothing if it is an address elsewhere.
    pub fn of(address: &str) -> Option<Self> {
        if address.contains("://") || address.starts_with("data:") || address.starts_with("//") {
            return None;
        }
        let path = address.trim_start_matches("./").trim_start_matches('/');
        FilePath::new(path).map(Self)
    }

    /// Returns the path in the site of the picture made in a width: `photos/yoke-960.webp`.
    ///
    /// A picture that is no JPEG keeps its extension in the name, so that `yoke.png` beside `yoke.jpg` is another.
    pub fn made(&self, width: u32, extension: &str) -> String {
        let path = self.0.as_str();
        let name = path.strip_suffix(".jpg").map_or_else(|| path.replace('.', "-"), str::to_owned);
        let folders: Vec<String> = name.split('/').map(crate::entry::slug).collect();
        format!("{}-{width}.{extension}", folders.join("/"))
    }
}

/// Finds the pictures of an entry that are missing or of a kind we cannot publish, and its lead picture if undescribed.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    if let Some(path) = &entry.common.picture {
        let place = entry.origin.field(&["picture"], placing);
        if entry.common.alt.is_none() {
            let finding =
                Finding::new(&crate::entry::prose::NO_DESCRIPTION, place.clone(), "the picture has no description");
            findings.push(finding.help("say under `alt:` what it shows"));
        }
        check_one(path, place, placing, findings);
    }
    for picture in &entry.prose.pictures {
        check_one(
            &picture.path,
            Place { file: entry.origin.file.clone(), span: picture.at.clone() },
            placing,
            findings,
        );
    }
}

fn check_one(address: &str, place: Place, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let elsewhere = address.contains("://") || address.starts_with("data:") || address.starts_with("//");
    if elsewhere {
        return;
    }
    let Some(PictureFile(path)) = PictureFile::of(address) else {
        let finding = Finding::new(&PICTURE_MISSING, place, format!("`{address}` is no picture of the studio"));
        findings.push(finding.help("write the path from the studio's folder: `photos/yoke.jpg`"));
        return;
    };
    if placing.texts().others.binary_search(&path).is_err() {
        let near = nearest(path.as_str(), placing.texts().others.iter().map(FilePath::as_str));
        let help = near.map_or(
            "put the picture there, or write the path from the studio's folder: `photos/yoke.jpg`".to_owned(),
            |near| format!("did you mean `{near}`?"),
        );
        findings.push(Finding::new(&PICTURE_MISSING, place, format!("there is no picture `{path}`")).help(help));
    } else if !EXTENSIONS.contains(&path.extension().as_str()) {
        let finding = Finding::new(&PICTURE_MISSING, place, format!("`{path}` is not a JPEG, PNG or WebP picture"));
        findings.push(finding.help("save it as JPEG, PNG or WebP"));
    }
}
