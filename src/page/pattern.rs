//! A pattern's page.

use super::buy::{self, YarnTable};
use super::cautions::{self, CautionView};
use super::other_yarns::{self, OtherYarn};
use super::testers::{self, TesterView};
use super::view::{Band, Both, Head, Line, Link, Picture, ProjectItem, SizeRow, SizeTable};
use super::{AbbreviationView, Item, Shown, fit, held, lists, page_path, project, rows, words};
use crate::entry::value::{Map, Stage, Wearer, Web, Words};
use crate::entry::{Consumed, Entry, Key, Kind, Pattern, Reference, Sale};
use crate::measure::{FabricLength, Needle, NeedleSize, Run, System, Value, YarnLength};
use crate::reckon::{self, Basis, LineNeeds, Purchase};
use crate::standards::needles;
use schemars::JsonSchema;
use serde::Serialize;

/// What `pattern.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PatternContext {
    /// The page's head.
    pub head: Head,
    /// The pattern.
    pub pattern: PatternView,
    /// The pattern's text as HTML.
    pub body: String,
}

/// A pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct PatternView {
    /// What it is called.
    pub title: String,
    /// One sentence about it; may be empty.
    pub summary: String,
    /// Garment, number of sizes and month of publication: `Pullover · nine sizes · March 2026`.
    pub kicker: String,
    /// Whether it can no longer be had.
    pub retired: bool,
    /// Its picture.
    pub picture: Option<Picture>,
    /// The names of its sizes; empty for one size.
    pub sizes: Vec<String>,
    /// The facts a knitter decides by, in order.
    pub facts: Vec<Fact>,
    /// The techniques a knitter will meet.
    pub techniques: Vec<Item<Link>>,
    /// How it is made, in working order.
    pub construction: Vec<String>,
    /// To-fit and finished measurements for each size.
    pub size_table: SizeTable,
    /// Where names of fits and standard sizes come from; may be empty.
    pub credit: String,
    /// How many centimetres an inch of fabric counts here: `2.5`.
    pub inch: String,
    /// The yarns to buy.
    pub bands: Vec<Band>,
    /// Length, mass and unrounded skeins of each yarn for each size, and of all together.
    pub yarn_tables: Vec<YarnTable>,
    /// What is added before whole skeins are bought: `10%`.
    pub margin: String,
    /// What the lengths rest on, in a sentence or two; may be empty.
    pub basis: String,
    /// What testers used who let it be shown, by size; never their names.
    pub testers: Vec<TesterView>,
    /// Other yarns of the studio that may do, the nearest first.
    pub other_yarns: Vec<OtherYarn>,
    /// What may hurt whoever wears it.
    pub cautions: Vec<CautionView>,
    /// What else it takes.
    pub notions: Vec<String>,
    /// The abbreviations of its rows and charts, by their letters.
    pub abbreviations: Vec<AbbreviationView>,
    /// Where it can be had.
    pub sold_at: Vec<SaleView>,
    /// Corrections, the latest first.
    pub errata: Vec<ErratumView>,
    /// Whose ideas it builds on.
    pub after: Vec<Line>,
    /// The public projects made from it.
    pub made: Vec<Item<ProjectItem>>,
    /// Where else it is mentioned.
    pub mentioned: Vec<Line>,
}

/// One fact of a pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Fact {
    /// What it is: `Gauge`.
    pub label: String,
    /// The fact, in parts that are joined by a comma.
    pub parts: Vec<Both>,
}

/// One place that sells a pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SaleView {
    /// The shop.
    pub place: Item<Link>,
    /// The pattern's page there.
    pub url: Option<String>,
    /// What it costs: `£7.00`.
    pub price: Option<String>,
    /// The same for machines.
    pub offer: Option<Offer>,
}

/// A price as schema.org has it.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct Offer {
    /// The amount: `7.00`.
    pub price: String,
    /// The currency (ISO 4217): `GBP`.
    pub currency: String,
}

/// One correction.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct ErratumView {
    /// Its day in words.
    pub date: String,
    /// Its day as ISO 8601 has it.
    pub iso_date: String,
    /// What was wrong and what is right.
    pub text: String,
}

/// Returns the context of a pattern's page, its text still to be filled in.
pub fn context(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern) -> PatternContext {
    let needs = shown.needs(pattern);
    let view = view(shown, entry, pattern, &needs);
    let head = Head {
        json_ld: super::json_ld::pattern(shown, entry, pattern, &needs),
        published: pattern.published.map(|date| date.moment()),
        ..shown.head(
            &entry.common.title,
            &shown.summary(entry),
            &page_path(&entry.id),
            "patterns",
            "article",
            view.picture.as_ref(),
        )
    };
    PatternContext { head, pattern: view, body: String::new() }
}

fn view(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern, needs: &[LineNeeds]) -> PatternView {
    let purchases = buy::purchases(shown, pattern);
    let fit = fit::fit(shown, pattern);
    PatternView {
        title: entry.common.title.clone(),
        summary: entry.common.summary.clone().unwrap_or_default(),
        kicker: kicker(pattern),
        retired: pattern.stage() == Stage::Retired,
        picture: shown.picture(entry),
        sizes: size_labels(pattern),
        facts: facts_with(shown, pattern, needs, fit.fact),
        techniques: techniques(shown, pattern),
        construction: pattern.construction.clone(),
        size_table: sizes_with(shown, pattern, fit.rows),
        credit: fit.credit,
        inch: shown.catalogue.studio.settings().inch.show(),
        bands: buy::bands(shown, pattern, &purchases),
        yarn_tables: buy::tables(shown, pattern, &purchases, needs),
        margin: shown.margin(pattern).show(),
        basis: basis(shown, pattern, &purchases),
        testers: testers::testers(shown, pattern),
        other_yarns: other_yarns::other_yarns(shown, pattern, &purchases),
        cautions: cautions::cautions(pattern),
        notions: pattern.notions.clone(),
        abbreviations: rows::abbreviations(entry, pattern),
        sold_at: sales(shown, pattern),
        errata: errata(shown, pattern),
        after: pattern
            .after
            .iter()
            .filter_map(|after| {
                Some(Line { link: source(shown, &after.source)?, words: after.what.clone(), sponsored: false })
            })
            .collect(),
        made: project::linked_by(shown, &entry.id, "pattern"),
        mentioned: lists::mentions(shown, &entry.id, |link| {
            !(link.from.kind == Kind::Project && link.is_via("pattern"))
        }),
    }
}

fn kicker(pattern: &Pattern) -> String {
    let garment = pattern.garment.as_deref().map(words::sentence);
    let published = pattern.published.map(|date| date.month_in_words());
    let parts = [garment, Some(sizes_in_words(pattern)), published];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// Returns how many sizes a pattern has, in words: `nine sizes`.
pub fn sizes_in_words(pattern: &Pattern) -> String {
    words::counted(pattern.size_count(), "size", "sizes")
}

/// Returns the names of a pattern's sizes, empty if it has only one.
pub fn size_labels(pattern: &Pattern) -> Vec<String> {
    match &pattern.sizes {
        Some(names) if names.len() > 1 => (0..names.len())
            .filter_map(|size| names.get(size))
            .map(|name| match names.unit() {
                Some(unit) => format!("{name} {unit}"),
                None => name.to_owned(),
            })
            .collect(),
        _ => Vec::new(),
    }
}

/// Returns the techniques a knitter will meet, as far as readers may know of them.
pub fn techniques(shown: &Shown<'_>, pattern: &Pattern) -> Vec<Item<Link>> {
    pattern.techniques.iter().filter_map(|technique| shown.public_link(&technique.reference())).collect()
}

/// Returns the facts a knitter decides by; `needs` are those of each line.
pub fn facts(shown: &Shown<'_>, pattern: &Pattern, needs: &[LineNeeds]) -> Vec<Fact> {
    facts_with(shown, pattern, needs, fit::fit(shown, pattern).fact)
}

fn facts_with(shown: &Shown<'_>, pattern: &Pattern, needs: &[LineNeeds], fit: Option<Both>) -> Vec<Fact> {
    let mut facts = Vec::new();
    let mut add = |label: String, parts: Vec<Both>| {
        if !parts.is_empty() {
            facts.push(Fact { label, parts });
        }
    };
    add(
        "For".to_owned(),
        pattern
            .wearer
            .map(|wearer| Both { first: words::sentence(wearer_in_words(wearer)), second: String::new() })
            .into_iter()
            .collect(),
    );
    for (name, run) in &pattern.to_fit.0 {
        add(format!("To fit {name}"), fabric_range(shown, run));
    }
    for (name, run) in &pattern.finished.0 {
        add(format!("Finished {name}"), fabric_range(shown, run));
    }
    add("Fit".to_owned(), fit.into_iter().collect());
    add("Yarn".to_owned(), yarn_in_words(shown, pattern, needs).into_iter().collect());
    add("Held together".to_owned(), held::together(shown, pattern));
    for gauge in &pattern.gauge {
        let over = gauge.stretch();
        let rows = gauge.rows.map(|rows| format!(" and {} rows", rows.show())).unwrap_or_default();
        let head = format!("{} sts{rows} to ", gauge.stitches.show());
        let inch = shown.catalogue.studio.settings().inch;
        let mut parts = vec![shown.both(|system| {
            if system == shown.system { format!("{head}{}", over.show(system, inch)) } else { over.show(system, inch) }
        })];
        parts.extend(gauge.stitch.iter().map(|stitch| Both { first: stitch.clone(), second: String::new() }));
        parts.extend(gauge.needle.as_ref().map(|needle| {
            let Both { first, second } = needle_words(shown, needle);
            Both { first: format!("on {first}"), second }
        }));
        add("Gauge".to_owned(), parts);
    }
    add("Needles".to_owned(), pattern.needles.iter().map(|needle| needle_words(shown, needle)).collect());
    if let Some(tested) = &pattern.tested_in {
        add("Test knitted in".to_owned(), vec![Both { first: words::list(tested.labels()), second: String::new() }]);
    }
    if let Some(level) = pattern.level {
        add("Level".to_owned(), vec![Both { first: words::sentence(level.name()), second: String::new() }]);
    }
    facts
}

fn wearer_in_words(wearer: Wearer) -> &'static str {
    match wearer {
        Wearer::Women => "women",
        Wearer::Men => "men",
        Wearer::Youth => "young people",
        Wearer::Child => "children",
        Wearer::Baby => "babies",
    }
}

fn fabric_range(shown: &Shown<'_>, run: &Run<FabricLength>) -> Vec<Both> {
    let lengths: Vec<FabricLength> = run.values.present().copied().collect();
    shown.fabric_range(&lengths).into_iter().collect()
}

/// Returns a pattern's yarn in words: the weights, then the total length over all sizes, of what each line `needs`.
pub fn yarn_in_words(shown: &Shown<'_>, pattern: &Pattern, needs: &[LineNeeds]) -> Option<Both> {
    let mut weights: Vec<String> = Vec::new();
    let all =
        pattern.yarn.iter().flat_map(|line| std::iter::once(line).chain(line.held_with.iter().map(|held| &held.0)));
    for use_of in all {
        let yarn = use_of.yarn.as_ref().and_then(|yarn| shown.catalogue.public_yarn(&yarn.reference()));
        if let Some(weight) =
            yarn.and_then(|yarn| yarn.weight.as_ref()).filter(|weight| !weights.contains(&weight.words))
        {
            weights.push(weight.words.clone());
        }
    }
    let lengths: Vec<YarnLength> = reckon::total_to_buy(pattern, needs).into_iter().flatten().collect();
    let weights = words::list(&weights);
    match (weights.is_empty(), shown.length_range(&lengths)) {
        (true, range) => range,
        (false, Some(range)) => Some(Both { first: format!("{weights}, {}", range.first), second: range.second }),
        (false, None) => Some(Both { first: weights, second: String::new() }),
    }
}

fn needle_words(shown: &Shown<'_>, needle: &Needle) -> Both {
    let inch = shown.catalogue.studio.settings().inch;
    // A size that charts give to several needles is shown with all of them.
    let rows = needles::rows(&needle.size);
    let mm = rows.iter().map(|row| row.metric).collect::<Vec<_>>();
    let mm = match (&needle.size, mm.as_slice()) {
        (NeedleSize::Metric(mm), _) => mm.show_mm(),
        (_, [only]) => only.show_mm(),
        (_, [low, .., high]) => words::range(&low.show_mm(), &high.show_mm()),
        (_, []) => String::new(),
    };
    let us = rows.first().and_then(|row| row.us.as_ref()).map(|us| format!("US {us}")).unwrap_or_default();
    let uk = rows.first().and_then(|row| row.uk.as_ref()).map(|uk| format!("UK {uk}")).unwrap_or_default();
    // Her own way of naming it comes first where it is not the studio's.
    let order = match (&needle.size, shown.system) {
        (NeedleSize::Us(_), _) | (NeedleSize::Metric(_), System::Imperial) => [us, mm, uk],
        (NeedleSize::Uk(_), _) => [uk, mm, us],
        (NeedleSize::Metric(_), System::Metric) => [mm, us, uk],
    };
    let mut names = order.into_iter().filter(|name| !name.is_empty());
    let mut first = names.next().unwrap_or_else(|| needle.size.show());
    let mut second = names.collect::<Vec<_>>().join(", ");
    if !needle.words.is_empty() {
        first = format!("{first} {}", needle.words);
    }
    if let Some(length) = needle.circular {
        first = format!("{first} {}", length.show(shown.system, inch));
        second = format!("{second}, {}", length.show(shown.system.other(), inch)).trim_start_matches(", ").to_owned();
    }
    Both { first, second }
}

/// Returns the table of a pattern's sizes: to fit, finished, and how that sits; and where its standard sizes come from.
pub fn size_table(shown: &Shown<'_>, pattern: &Pattern) -> (SizeTable, String) {
    let fit = fit::fit(shown, pattern);
    (sizes_with(shown, pattern, fit.rows), fit.credit)
}

fn sizes_with(shown: &Shown<'_>, pattern: &Pattern, fit: Vec<SizeRow>) -> SizeTable {
    let rows = |prefix: &'static str, map: &Map<Run<FabricLength>>| -> Vec<SizeRow> {
        map.0.iter().map(|(name, run)| fabric_row(shown, pattern, format!("{prefix} {name}"), run)).collect()
    };
    let mut all = rows("To fit", &pattern.to_fit);
    all.extend(rows("Finished", &pattern.finished));
    all.extend(fit);
    SizeTable { sizes: table_sizes(pattern), rows: all }
}

/// Returns the columns of a table of sizes: a pattern of one size has one, named as it is or not at all.
pub fn table_sizes(pattern: &Pattern) -> Vec<String> {
    let labels = size_labels(pattern);
    if !labels.is_empty() {
        return labels;
    }
    vec![pattern.sizes.as_ref().and_then(|names| names.get(0)).unwrap_or("One size").to_owned()]
}

fn fabric_row(shown: &Shown<'_>, pattern: &Pattern, label: String, run: &Run<FabricLength>) -> SizeRow {
    let inch = shown.catalogue.studio.settings().inch;
    let cells = (0..pattern.size_count())
        .map(|size| match run.values.get(size) {
            // Where she wrote both systems, each is shown as she wrote it.
            Some(length) => shown.both(|system| {
                match &run.other {
                    Some(other) if other.system == system => other.values.get(size).unwrap_or(length),
                    _ => length,
                }
                .page_number(system, inch)
            }),
            None => Both::none(),
        })
        .collect();
    SizeRow { label, cells, units: shown.both(|system| words::unit(system, "cm", "in")) }
}

/// Returns what the lengths to buy rest on, in a sentence or two; nothing where none is known.
pub fn basis(shown: &Shown<'_>, pattern: &Pattern, purchases: &[Purchase<'_>]) -> String {
    let mut all: Vec<Basis> =
        purchases.iter().flat_map(|purchase| &purchase.sizes).flatten().map(|one| one.basis).collect();
    all.sort_unstable();
    all.dedup();
    let rests: Vec<String> = all.into_iter().map(|basis| basis_in_words(basis).to_owned()).collect();
    let mut sentences = Vec::new();
    if !rests.is_empty() {
        sentences.push(format!("Lengths are {}.", words::list(&rests)));
    }
    if let Some(sample) = &pattern.sample {
        sentences.push(match &sample.used {
            Some(used) => format!("The sample, in {}, took {}.", sample.size, used_in_words(shown, used)),
            None => format!("The sample is in {}.", sample.size),
        });
    }
    sentences.join(" ")
}

/// Returns what a length of yarn rests on, in words that follow "lengths are".
pub fn basis_in_words(basis: Basis) -> &'static str {
    match basis {
        Basis::Weighed => "weighed in the sample's size",
        Basis::Stated => "as stated by the designer",
        Basis::Stitches => "worked out from the sample by the stitches of each size and colour",
        Basis::Area => "worked out from the sample by the fabric of each size",
        Basis::Swatch => "worked out from a weighed swatch",
    }
}

fn used_in_words(shown: &Shown<'_>, used: &Consumed) -> String {
    match used {
        Consumed::All(all) => all.show(shown.system),
        Consumed::ByColour(colours) => {
            let each = colours.0.iter().map(|(colour, used)| format!("{} of {colour}", used.show(shown.system)));
            words::list(&each.collect::<Vec<_>>())
        }
    }
}

fn errata(shown: &Shown<'_>, pattern: &Pattern) -> Vec<ErratumView> {
    let mut errata: Vec<_> =
        pattern.errata.iter().filter(|erratum| erratum.date <= shown.catalogue.view.today).collect();
    errata.sort_by_key(|erratum| std::cmp::Reverse(erratum.date));
    errata
        .into_iter()
        .map(|erratum| ErratumView {
            date: erratum.date.in_words(),
            iso_date: erratum.date.to_string(),
            text: erratum.text.clone(),
        })
        .collect()
}

/// Returns where a pattern can be had, as far as readers may know; nowhere once it is retired.
pub fn sales(shown: &Shown<'_>, pattern: &Pattern) -> Vec<SaleView> {
    if pattern.stage() == Stage::Retired {
        return Vec::new();
    }
    let sale = |sale: &Sale| {
        Some(SaleView {
            place: shown.public_link(&sale.place.reference())?,
            url: sale.url.as_ref().map(|url| url.as_str().to_owned()),
            price: sale.price.as_ref().map(|price| price.show()),
            offer: sale.price.as_ref().map(|price| Offer { price: price.number(), currency: price.currency.clone() }),
        })
    };
    pattern.sold_at.iter().filter_map(sale).collect()
}

/// Returns the entry whose idea something is; nothing where plain words say it.
pub fn source_entry(shown: &Shown<'_>, source: &Words) -> Option<Reference> {
    match source {
        Words::Reference(id) => Some(id.clone()),
        Words::Plain(text) => {
            let person = Key::new(text).map(|key| Reference { kind: Kind::Person, key });
            person.filter(|id| shown.catalogue.entry(id).is_some())
        }
    }
}

/// Returns the address of a page that stands in the place of a source.
pub fn source_address(source: &Words) -> Option<Web> {
    match source {
        Words::Plain(text) if text.starts_with("http") => Web::parse(text),
        _ => None,
    }
}

/// Returns whose idea something is: a link where it is an entry or an address, else words; nothing for an entry that
/// readers may not know of.
fn source(shown: &Shown<'_>, source: &Words) -> Option<Item<Link>> {
    if let Some(id) = source_entry(shown, source) {
        return shown.public_link(&id);
    }
    let Words::Plain(text) = source else { return None };
    let url = source_address(source).map(|address| address.as_str().to_owned());
    Some(Item::from(Link { title: text.clone(), url }))
}
