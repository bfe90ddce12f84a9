//! The studio's own file.

use super::common::Anything;
use super::disclosure::Disclosure;
use super::field::{Field, record, wrong_type};
use super::outlet::Outlet;
use super::pattern::Pattern;
use super::schema::{Definitions, Schema};
use super::value::{AfterBindingOff, Carry, Map, Margin, Moment, Private, SiteAddress, Verdict, VideoTime, Web};
use super::yaml::{Node, Notes};
use crate::measure::{Bracket, Inch, Percent, RunStyle, System};

record! {
    /// The studio: whose it is, where it is published and how it writes numbers.
    pub struct Studio: "a studio" {
        /// The site's name.
        "title" => title: String = "Wrackline",
        /// One sentence about the site.
        "summary" => summary: Option<String> = "Knitting patterns and a weekly note.",
        /// The site's address on the web.
        "url" => url: SiteAddress,
        /// Who designs and writes.
        "designer" => designer: Option<String> = "Hedda Sandling",
        /// The language of the texts, as a tag: `en-GB`.
        "language" => language: Option<String> = "en-GB",
        /// Which system comes first: `metric` or `imperial`.
        "units" => units: Option<System>,
        /// What is added to needs before whole skeins are bought.
        "margin" => margin: Option<Margin>,
        /// How many centimetres an inch of fabric has: the trade's 2.5, or 2.54.
        "inch" => inch: Option<Inch>,
        /// Which brackets hold sizes: `round` or `square`; any of them if it is not given.
        "sizes in" => sizes_in: Option<Bracket>,
        /// Whether the stitch on the right needle after binding off is the first of the next ones: `counted`, or `not counted`.
        "stitch after binding off" => after_binding_off: Option<AfterBindingOff>,
        /// How far a yarn may be carried behind the others before it is told of; 2.5 cm if it is not given.
        "float" => float: Option<Carry>,
        /// The theme; `leaflet` if it is not given.
        "theme" => theme: Option<String> = "leaflet",
        /// Checks that are not made or weigh otherwise, by the name of what they find.
        "checks" => checks: Map<Verdict> = "{ needs-area: off }",
        /// What readers are told beside a thing, by how she came by it, where the usual words will not do.
        "disclosure" => disclosure: Option<Disclosure> = "{ gifted: 'Ad: given to me by the maker' }",
        /// How videos are published.
        "video" => video: Option<VideoSettings> = "{ url: 'https://example.org/videos', limit: 5000 }",
        /// The places that the text about a note is pasted into, each with how much it takes.
        "outlets" => outlets: Map<Outlet> = "{ video: { limit: 5000, counted in: bytes } }",
        /// Anything that must never reach the site.
        "private" => private: Option<Private<Anything>>,
    }
}

record! {
    /// How videos are published.
    pub struct VideoSettings: "video settings" {
        /// The page of all videos.
        "url" => url: Option<Web> = "https://example.org/videos",
        /// The most bytes the text under a video may have, where `outlets` says nothing.
        "limit" => limit: Option<u32> = "5000",
        /// What is put behind a video's address to lead to a moment of it.
        "moment" => moment: Option<Moment>,
    }
}

/// How a studio writes numbers: what is needed to read its entries.
#[derive(Clone, Copy, Debug, Default)]
pub struct Settings {
    /// The inch of fabric.
    pub inch: Inch,
    /// Which brackets hold sizes.
    pub runs: RunStyle,
}

impl Studio {
    /// Returns a studio to go on reading with where `studio.yaml` is missing or wrong; nothing is published under it.
    pub fn stand_in() -> Self {
        Self {
            title: "Untitled".to_owned(),
            summary: None,
            url: SiteAddress::stand_in(),
            designer: None,
            language: None,
            units: None,
            margin: None,
            inch: None,
            sizes_in: None,
            after_binding_off: None,
            float: None,
            theme: None,
            checks: Map::default(),
            disclosure: None,
            video: None,
            outlets: Map::default(),
            private: None,
        }
    }

    /// Returns what reading entries needs of the studio.
    pub fn settings(&self) -> Settings {
        Settings { inch: self.inch.unwrap_or_default(), runs: RunStyle { sizes_in: self.sizes_in } }
    }

    /// Returns the site's address without a slash at the end.
    pub fn address(&self) -> &str {
        self.url.as_str()
    }

    /// Returns the folder of the host that the site is in: empty, or beginning with `/` and not ending with one.
    pub fn base(&self) -> &str {
        let after_scheme = self.address().split_once("://").map_or("", |(_, rest)| rest);
        after_scheme.find('/').and_then(|at| after_scheme.get(at..)).unwrap_or("")
    }

    /// Returns the margin of a pattern: its own, or else the studio's, or else the usual one.
    pub fn margin(&self, pattern: &Pattern) -> Percent {
        pattern.margin.or(self.margin).unwrap_or(Margin::USUAL).share()
    }

    /// Returns the address of a moment of a video: of W3C's media fragments, unless she says how her host has it.
    pub fn moment(&self, video: &Web, time: VideoTime) -> String {
        let standard = Moment::default();
        let own = self.video.as_ref().and_then(|video| video.moment.as_ref());
        own.unwrap_or(&standard).of(video.as_str(), time)
    }

    /// Returns the language tag.
    pub fn language(&self) -> &str {
        self.language.as_deref().unwrap_or("en")
    }

    /// Returns the name of the theme.
    pub fn theme(&self) -> &str {
        self.theme.as_deref().unwrap_or("leaflet")
    }
}

impl Field for System {
    const WHAT: &'static str = "`metric` or `imperial`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value.scalar() {
            Some("metric") => Some(Self::Metric),
            Some("imperial") => Some(Self::Imperial),
            _ => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
        }
    }

    fn schema(_: &mut Definitions) -> Schema {
        Schema::words(&[
            ("metric", "centimetres, metres and grams first"),
            ("imperial", "inches, yards and ounces first"),
        ])
    }
}

impl Field for Bracket {
    const WHAT: &'static str = "`round` or `square`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        match node.value.scalar() {
            Some("round") => Some(Self::Round),
            Some("square") => Some(Self::Square),
            _ => {
                wrong_type(node, Self::WHAT, notes);
                None
            }
        }
    }

    fn schema(_: &mut Definitions) -> Schema {
        Schema::words(&[("round", "S (M, L)"), ("square", "S [M, L]")])
    }
}
