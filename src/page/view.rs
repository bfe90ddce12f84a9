//! The small things that many pages show.

use super::Item;
use schemars::JsonSchema;
use serde::Serialize;

/// A quantity in both systems, the studio's first.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Both {
    /// In the studio's own system, with its unit: `990 m`.
    pub first: String,
    /// In the other system: `1,083 yd`. Empty where the quantity has only one form.
    pub second: String,
}

impl Both {
    /// Returns what stands in a table where a size has no value.
    pub fn none() -> Self {
        Self { first: "–".to_owned(), second: "–".to_owned() }
    }
}

/// A link to an entry, or only its words if it has no public page.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Link {
    /// The words to show.
    pub title: String,
    /// The address, from the root of the host; absent for plain words.
    pub url: Option<String>,
}

/// A picture in all its sizes.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Picture {
    /// The address of a middle size, as JPEG.
    pub src: String,
    /// All sizes as WebP, for `srcset`.
    pub webp: String,
    /// All sizes as JPEG, for `srcset`.
    pub jpeg: String,
    /// The width of the largest in pixels.
    pub width: u32,
    /// The height of the largest in pixels.
    pub height: u32,
    /// What it shows.
    pub alt: String,
}

/// What stands in the head of every page.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct Head {
    /// The page's title, without the site's.
    pub title: String,
    /// One sentence for search and previews; may be empty.
    pub summary: String,
    /// The address from the root of the host.
    pub url: String,
    /// The whole address.
    pub canonical: String,
    /// Which part of the site the page is in: `patterns`, `on-the-needles`, `finished`, `journal`, `yarns` or empty.
    pub part: String,
    /// What Open Graph calls it: `website` or `article`.
    pub og_type: String,
    /// The whole address of a picture that stands for the page.
    pub image: Option<String>,
    /// What that picture shows.
    pub image_alt: Option<String>,
    /// The day of publication as RFC 3339 has it, for an article.
    pub published: Option<String>,
    /// Whether search engines are asked to leave the page out.
    pub unlisted: bool,
    /// The page's facts for machines (JSON-LD, schema.org), safe to stand in a script element; empty if none.
    pub json_ld: String,
}

/// What every template knows of the site, under the name `site`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Site {
    /// The site's name.
    pub title: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// The whole address, without a slash at the end.
    pub address: String,
    /// The folder of the host the site is in: empty, or `/folder`.
    pub base: String,
    /// Who designs and writes; may be empty.
    pub designer: String,
    /// The language tag.
    pub language: String,
    /// The parts of the site that have anything in them, for navigation.
    pub parts: Vec<Part>,
    /// The plain pages, by title.
    pub pages: Vec<Link>,
    /// The address of the style sheet, with a mark that changes when it does.
    pub style: String,
}

/// One part of the site.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Part {
    /// Its name, as `head.part` has it.
    pub name: String,
    /// What the link to it says.
    pub title: String,
    /// Its address.
    pub url: String,
}

/// One line of a list: a thing, and a few words beside it.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Line {
    /// The thing.
    pub link: Item<Link>,
    /// Words beside it; may be empty.
    pub words: String,
    /// Whether she earns by the link or was paid for it.
    pub sponsored: bool,
}

/// Lines under a heading.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Group {
    /// The heading.
    pub title: String,
    /// An id for it, unique on the page.
    pub id: String,
    /// The lines.
    pub lines: Vec<Line>,
}

/// A pattern in a list.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PatternItem {
    /// The pattern.
    pub link: Item<Link>,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// What it is: `Pullover`; may be empty.
    pub garment: String,
    /// Its sizes in words: `nine sizes`.
    pub sizes: String,
    /// Its yarn in words: `DK, 930 to 1,740 m`; may be empty.
    pub yarn: Both,
    /// Month and year of publication; may be empty.
    pub published: String,
    /// Whether it can no longer be had.
    pub retired: bool,
    /// Its picture.
    pub picture: Option<Picture>,
}

/// A project in a list.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ProjectItem {
    /// The project.
    pub link: Item<Link>,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// The craft, if it is not knitting.
    pub craft: Option<String>,
    /// What it is made from.
    pub pattern: Option<Source>,
    /// The size made, in words: `size M`, `one size`.
    pub size: Option<String>,
    /// Its yarns.
    pub yarns: Vec<Item<Link>>,
    /// The length of yarn in it; absent where it is not known.
    pub length: Option<Both>,
    /// When it was begun or finished, in words; may be empty.
    pub when: String,
    /// How much of it is done, in whole percent; absent where no note says it.
    pub progress: Option<i64>,
    /// Its picture.
    pub picture: Option<Picture>,
}

/// What a project is made from.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Source {
    /// The pattern.
    pub link: Item<Link>,
    /// Whether it is the designer's own.
    pub own: bool,
    /// Whose it is, if it is somebody else's and known.
    pub by: Option<Item<Link>>,
}

/// A note in a list.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct NoteItem {
    /// The note.
    pub link: Item<Link>,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// Its number, if it has one.
    pub number: Option<u32>,
    /// Its day in words.
    pub date: String,
    /// Its day as ISO 8601 has it.
    pub iso_date: String,
}

/// A yarn as its ball band, wherever one appears.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Band {
    /// The yarn; plain words where it is not known.
    pub yarn: Item<Link>,
    /// The shade's name.
    pub shade: Option<String>,
    /// The shade's colour, `#rrggbb`, where it is known.
    pub colour: Option<String>,
    /// Who makes it.
    pub maker: Option<Item<Link>>,
    /// Its standard weight: `DK`.
    pub weight: Option<String>,
    /// How it is sold: `225 m / 100 g`.
    pub put_up: Option<Both>,
    /// What it is used for here: `main colour (MC)`; may be empty.
    pub role: String,
    /// How much of it, in large figures: `4 to 8 skeins`; may be empty where it cannot be told.
    pub amount: Amount,
    /// Small print below: `820 to 1,550 m`; may be empty.
    pub small: Both,
    /// The same for each size of a pattern, in the order of its sizes; empty outside patterns and for one size.
    pub sizes: Vec<BandSize>,
    /// Why something cannot be told; may be empty.
    pub unknown: String,
}

/// An amount, its figures apart from its unit so that they can be set large.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct Amount {
    /// The figures: `5`, `4 to 8`; empty where nothing can be told.
    pub figure: String,
    /// The unit: `skeins`; may be empty.
    pub unit: String,
}

impl Amount {
    /// Splits a text at the space before its unit.
    pub fn of(text: &str) -> Self {
        let (figure, unit) = text.rsplit_once([' ', '\u{a0}']).unwrap_or((text, ""));
        Self { figure: figure.to_owned(), unit: unit.to_owned() }
    }
}

/// The amount of a yarn for one size.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct BandSize {
    /// The size's name.
    pub size: String,
    /// How much, in large figures: `5 skeins`.
    pub amount: Amount,
    /// Small print: `990 m`.
    pub small: Both,
}

/// A table of one value for each size.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct SizeTable {
    /// The names of the sizes.
    pub sizes: Vec<String>,
    /// The rows.
    pub rows: Vec<SizeRow>,
}

/// One row of a table of sizes.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SizeRow {
    /// What is measured: `Finished chest`.
    pub label: String,
    /// A value for each size, without its unit; a dash where a size has none.
    pub cells: Cells,
    /// The units of the cells: `cm`, `in`.
    pub units: Both,
}

/// The values of a row in both systems, the studio's first.
#[derive(Clone, Debug, Default, Serialize, JsonSchema)]
pub struct Cells {
    /// In the studio's own system.
    pub first: Vec<String>,
    /// In the other system; empty texts where the row has only one form.
    pub second: Vec<String>,
}

impl FromIterator<Both> for Cells {
    fn from_iter<T: IntoIterator<Item = Both>>(cells: T) -> Self {
        let (first, second) = cells.into_iter().map(|cell| (cell.first, cell.second)).unzip();
        Self { first, second }
    }
}
