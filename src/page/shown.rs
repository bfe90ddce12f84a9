//! What all page builders share: the catalogue, addresses, pictures, and how quantities are worded.

use super::item::Items;
use super::view::{Amount, Band, Both, Link, Picture};
use super::{Addresses, Item, words};
use crate::catalogue::{Catalogue, PictureFile};
use crate::entry::heading::Wording;
use crate::entry::{Entry, Note, Reference, Yarn};
use crate::measure::{FabricLength, Mass, PutUp, System, YarnLength};
use crate::reckon;
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// The width and height of each picture of the studio that can be shown, in pixels, and the widths it is made in.
pub type PictureSizes = BTreeMap<PictureFile, Vec<(u32, u32)>>;

/// What page builders share. It borrows everything and changes nothing.
#[derive(Debug)]
pub struct Shown<'a> {
    /// The joined entries.
    pub catalogue: &'a Catalogue,
    /// The site's addresses.
    pub addresses: Addresses,
    /// The pictures.
    pub pictures: &'a PictureSizes,
    /// The system that comes first.
    pub system: System,
    /// Links and lines of lists that many pages share.
    pub(super) items: Items,
    /// The public notes in their order, once it was asked for.
    notes: OnceLock<Vec<(&'a Entry, &'a Note)>>,
}

impl<'a> Shown<'a> {
    /// Returns what builders share for a whole site.
    pub fn new(catalogue: &'a Catalogue, pictures: &'a PictureSizes) -> Self {
        Self { items: Items::of(catalogue.entries.len()), ..Self::for_one(catalogue, pictures) }
    }

    /// Returns what builders share for a single page, so that all it depends on is asked for while it is built.
    pub fn for_one(catalogue: &'a Catalogue, pictures: &'a PictureSizes) -> Self {
        Self {
            catalogue,
            addresses: Addresses::of(&catalogue.studio),
            pictures,
            system: catalogue.studio.units.unwrap_or_default(),
            items: Items::of(0),
            notes: OnceLock::new(),
        }
    }

    /// Returns a link to an entry; plain words if it has no public page, nothing if there is no such entry.
    pub fn link(&self, id: &Reference) -> Option<Item<Link>> {
        Some(self.own_link(self.catalogue.entry(id)?))
    }

    /// Returns a link to an entry that readers may know of, and nothing for any other: what front matter refers to was
    /// not written for readers, so not even its title is shown before its time.
    pub fn public_link(&self, id: &Reference) -> Option<Item<Link>> {
        self.link(id).filter(|link| link.url.is_some())
    }

    /// Returns an entry's lead picture.
    pub fn picture(&self, entry: &Entry) -> Option<Picture> {
        match &entry.common.picture {
            Some(address) => self.picture_of(address, entry.common.alt.as_deref().unwrap_or_default()),
            None => None,
        }
    }

    /// Returns a picture of the studio by the address a writer gave, with its description.
    pub fn picture_of(&self, address: &str, alt: &str) -> Option<Picture> {
        let file = PictureFile::of(address)?;
        let sizes = self.pictures.get(&file)?;
        let (width, height) = *sizes.last()?;
        let middle = sizes.get(sizes.len() / 2).or(sizes.last())?.0;
        let set = |extension: &str| {
            let one =
                |(width, _): &(u32, u32)| format!("{} {width}w", self.addresses.local(&file.made(*width, extension)));
            sizes.iter().map(one).collect::<Vec<_>>().join(", ")
        };
        Some(Picture {
            src: self.addresses.local(&file.made(middle, "jpg")),
            webp: set("webp"),
            jpeg: set("jpg"),
            width,
            height,
            alt: alt.to_owned(),
        })
    }

    /// Returns an entry's summary, or the beginning of its text, or nothing.
    pub fn summary(&self, entry: &Entry) -> String {
        if let Some(summary) = &entry.common.summary {
            return summary.clone();
        }
        words::opening(&self.worded(&entry.prose.opening), 160)
    }

    /// Returns words with the titles of the entries among them: as in any text, a title is told also of what has no page.
    pub fn worded(&self, wording: &[Wording]) -> String {
        let mut all = String::new();
        for part in wording {
            match part {
                Wording::Words(words) => all.push_str(words),
                Wording::Title(id) => all.push_str(self.catalogue.entry(id).map_or("", |entry| &entry.common.title)),
            }
        }
        all
    }

    /// Returns a length of yarn in both systems.
    pub fn length(&self, length: YarnLength) -> Both {
        self.both(|system| unbroken(length.show(system)))
    }

    /// Returns a mass in both systems.
    pub fn mass(&self, mass: Mass) -> Both {
        self.both(|system| unbroken(mass.show(system)))
    }

    /// Returns a put-up in both systems.
    pub fn put_up(&self, put_up: PutUp) -> Both {
        self.both(|system| put_up.show(system))
    }

    /// Returns a range of lengths of yarn in both systems.
    pub fn length_range(&self, lengths: &[YarnLength]) -> Option<Both> {
        let (low, high) = (*lengths.iter().min()?, *lengths.iter().max()?);
        Some(self.both(|system| unbroken(words::range(&low.show(system), &high.show(system)))))
    }

    /// Returns a range of measurements in both systems.
    pub fn fabric_range(&self, lengths: &[FabricLength]) -> Option<Both> {
        let (low, high) = (*lengths.iter().min()?, *lengths.iter().max()?);
        let inch = self.catalogue.studio.settings().inch;
        Some(self.both(|system| unbroken(words::range(&low.show(system, inch), &high.show(system, inch)))))
    }

    /// Words a quantity in both systems, the studio's first.
    pub fn both(&self, show: impl Fn(System) -> String) -> Both {
        Both { first: show(self.system), second: show(self.system.other()) }
    }

    /// Returns the progress of a project in whole percent, rounded down: a thing is not done before it is.
    pub fn progress_of(&self, id: &Reference) -> Option<i64> {
        reckon::progress(self.catalogue, id).map(|progress| progress.hundredths() / 100)
    }

    /// Returns the public notes, the latest first, those of one day by key backwards.
    pub fn latest_notes(&self) -> &[(&'a Entry, &'a Note)] {
        let catalogue = self.catalogue;
        let notes = catalogue.notes();
        self.notes.get_or_init(|| {
            let mut notes: Vec<_> = notes.collect();
            notes.sort_by(|a, b| b.1.date.cmp(&a.1.date).then_with(|| b.0.id.cmp(&a.0.id)));
            notes
        })
    }

    /// Returns where a note stands among [`Self::latest_notes`].
    pub fn place_of_note(&self, entry: &Entry, note: &Note) -> Option<usize> {
        let order = |known: &(&Entry, &Note)| note.date.cmp(&known.1.date).then_with(|| entry.id.cmp(&known.0.id));
        self.latest_notes().binary_search_by(order).ok()
    }

    /// Returns a link to a yarn; plain words where it is not known or not public.
    pub fn yarn_link(&self, id: Option<&Reference>) -> Item<Link> {
        let unnamed = || Item::from(Link { title: "A yarn not named".to_owned(), url: None });
        id.and_then(|id| self.public_link(id)).unwrap_or_else(unnamed)
    }

    /// Returns a yarn's band without any amount.
    pub fn band(&self, id: Option<&Reference>, shade: Option<&str>) -> Band {
        let yarn: Option<&Yarn> = id.and_then(|id| self.catalogue.public_yarn(id));
        // The shade of a yarn that readers may not know of would tell which it is.
        let shade = shade.filter(|_| id.is_none() || yarn.is_some());
        Band {
            yarn: self.yarn_link(id),
            shade: shade.map(words::sentence),
            colour: yarn.zip(shade).and_then(|(yarn, shade)| yarn.shades.get(shade)).map(ToString::to_string),
            maker: yarn.and_then(|yarn| yarn.maker.as_ref()).and_then(|maker| self.public_link(&maker.reference())),
            weight: yarn.and_then(|yarn| yarn.weight.as_ref()).map(|weight| weight.words.clone()),
            put_up: yarn.and_then(|yarn| yarn.put_up).map(|put_up| self.put_up(put_up)),
            role: String::new(),
            amount: Amount::default(),
            small: Both::default(),
            sizes: Vec::new(),
            unknown: String::new(),
        }
    }
}

/// Joins a quantity's number and its unit so that no line ends between them.
fn unbroken(mut text: String) -> String {
    if let Some(at) = text.rfind(' ') {
        text.replace_range(at..=at, "\u{a0}");
    }
    text
}
