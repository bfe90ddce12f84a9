//! A pattern's page.

use super::view::{Band, BandSize, Both, Head, Line, Link, Picture, ProjectItem, SizeRow, SizeTable};
use super::{Shown, lists, page_path, project, words};
use crate::entry::value::{Map, Stage, Wearer, Words};
use crate::entry::{Entry, Kind, Pattern, Reference, YarnUse};
use crate::measure::{Count, FabricLength, Mass, Needle, NeedleSize, Run, System, Value, YarnLength};
use crate::reckon::{self, Requirement};
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
    pub techniques: Vec<Link>,
    /// How it is made, in working order.
    pub construction: Vec<String>,
    /// To-fit and finished measurements for each size.
    pub size_table: SizeTable,
    /// How many centimetres an inch of fabric counts here: `2.5`.
    pub inch: String,
    /// The yarns to buy.
    pub bands: Vec<Band>,
    /// Length, mass and unrounded skeins of each yarn for each size, and of all together.
    pub yarn_tables: Vec<YarnTable>,
    /// What is added before whole skeins are bought: `10%`.
    pub margin: String,
    /// What the stated lengths rest on, in a sentence; may be empty.
    pub basis: String,
    /// What else it takes.
    pub notions: Vec<String>,
    /// Where it can be had.
    pub sold_at: Vec<SaleView>,
    /// Corrections, the latest first.
    pub errata: Vec<ErratumView>,
    /// Whose ideas it builds on.
    pub after: Vec<Line>,
    /// The public projects made from it.
    pub made: Vec<ProjectItem>,
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

/// The figures of one yarn, or of all.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct YarnTable {
    /// Which yarn: `MC, Heron DK`, or `All yarns`.
    pub title: String,
    /// The figures for each size.
    pub table: SizeTable,
}

/// One place that sells a pattern.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct SaleView {
    /// The shop.
    pub place: Link,
    /// The pattern's page there.
    pub url: Option<String>,
    /// What it costs: `£7.00`.
    pub price: Option<String>,
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
    let view = view(shown, entry, pattern);
    let head = Head {
        json_ld: super::json_ld::pattern(shown, entry, pattern),
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

fn view(shown: &Shown<'_>, entry: &Entry, pattern: &Pattern) -> PatternView {
    PatternView {
        title: entry.common.title.clone(),
        summary: entry.common.summary.clone().unwrap_or_default(),
        kicker: kicker(pattern),
        retired: pattern.stage() == Stage::Retired,
        picture: shown.picture(entry),
        sizes: size_labels(pattern),
        facts: facts(shown, pattern),
        techniques: pattern
            .techniques
            .iter()
            .filter_map(|technique| shown.public_link(&technique.reference()))
            .collect(),
        construction: pattern.construction.clone(),
        size_table: size_table(shown, pattern),
        inch: shown.catalogue.studio.settings().inch.show(),
        bands: pattern.yarn.iter().map(|use_of| band(shown, pattern, use_of)).collect(),
        yarn_tables: yarn_tables(shown, pattern),
        margin: shown.catalogue.studio.margin().show(),
        basis: basis(shown, pattern),
        notions: pattern.notions.clone(),
        sold_at: pattern
            .sold_at
            .iter()
            .filter_map(|sale| {
                let place = shown.public_link(&sale.place.reference())?;
                Some(SaleView {
                    place,
                    url: sale.url.as_ref().map(|url| url.as_str().to_owned()),
                    price: sale.price.as_ref().map(|price| price.show()),
                })
            })
            .collect(),
        errata: errata(shown, pattern),
        after: pattern
            .after
            .iter()
            .map(|after| Line { link: source(shown, &after.source), words: after.what.clone() })
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
fn size_labels(pattern: &Pattern) -> Vec<String> {
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

fn facts(shown: &Shown<'_>, pattern: &Pattern) -> Vec<Fact> {
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
    add("Yarn".to_owned(), yarn_in_words(shown, pattern).into_iter().collect());
    if let Some(gauge) = &pattern.gauge {
        let over = gauge.over.unwrap_or(FabricLength::from_nanometres(100_000_000));
        let rows = gauge.rows.map(|rows| format!(" and {} rows", rows.show())).unwrap_or_default();
        let head = format!("{} sts{rows} to ", gauge.stitches.show());
        let inch = shown.catalogue.studio.settings().inch;
        let mut parts = vec![shown.both(|system| {
            if system == shown.system { format!("{head}{}", over.show(system, inch)) } else { over.show(system, inch) }
        })];
        parts.extend(gauge.stitch.iter().map(|stitch| Both { first: stitch.clone(), second: String::new() }));
        add("Gauge".to_owned(), parts);
    }
    add("Needles".to_owned(), pattern.needles.iter().map(|needle| needle_words(shown, needle)).collect());
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

/// Returns a pattern's yarn in words: the weights, then the total length over all sizes.
pub fn yarn_in_words(shown: &Shown<'_>, pattern: &Pattern) -> Option<Both> {
    let mut weights: Vec<String> = Vec::new();
    for use_of in &pattern.yarn {
        let yarn = use_of.yarn.as_ref().and_then(|yarn| shown.catalogue.public_entry(&yarn.reference())?.yarn());
        if let Some(weight) =
            yarn.and_then(|yarn| yarn.weight.as_ref()).filter(|weight| !weights.contains(&weight.words))
        {
            weights.push(weight.words.clone());
        }
    }
    let lengths: Vec<YarnLength> = reckon::total(pattern).into_iter().flatten().collect();
    let weights = words::list(&weights);
    match (weights.is_empty(), shown.length_range(&lengths)) {
        (true, range) => range,
        (false, Some(range)) => Some(Both { first: format!("{weights}, {}", range.first), second: range.second }),
        (false, None) => Some(Both { first: weights, second: String::new() }),
    }
}

fn needle_words(shown: &Shown<'_>, needle: &Needle) -> Both {
    let inch = shown.catalogue.studio.settings().inch;
    let metric = needles::metric(&needle.size);
    let us = match &needle.size {
        NeedleSize::Us(size) => Some(size.clone()),
        _ => metric.and_then(needles::us).map(str::to_owned),
    };
    let size_in = |system: System| match system {
        System::Metric => metric.map(|mm| mm.show_mm()),
        System::Imperial => us.as_ref().map(|us| format!("US {us}")),
    };
    let mut first = size_in(shown.system).unwrap_or_else(|| needle.size.show());
    let mut second = size_in(shown.system.other()).unwrap_or_default();
    if let Some(uk) = metric.and_then(needles::uk) {
        second = if second.is_empty() { format!("UK {uk}") } else { format!("{second}, UK {uk}") };
    }
    if !needle.words.is_empty() {
        first = format!("{first} {}", needle.words);
    }
    if let Some(length) = needle.circular {
        first = format!("{first} {}", length.show(shown.system, inch));
        second = format!("{second}, {}", length.show(shown.system.other(), inch)).trim_start_matches(", ").to_owned();
    }
    Both { first, second }
}

fn size_table(shown: &Shown<'_>, pattern: &Pattern) -> SizeTable {
    let rows = |prefix: &'static str, map: &Map<Run<FabricLength>>| -> Vec<SizeRow> {
        map.0.iter().map(|(name, run)| fabric_row(shown, pattern, format!("{prefix} {name}"), run)).collect()
    };
    let mut all = rows("To fit", &pattern.to_fit);
    all.extend(rows("Finished", &pattern.finished));
    SizeTable { sizes: table_sizes(pattern), rows: all }
}

/// Returns the columns of a table of sizes: a pattern of one size has one, named as it is or not at all.
fn table_sizes(pattern: &Pattern) -> Vec<String> {
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
            Some(length) => shown.both(|system| length.page_number(system, inch)),
            None => no_value(),
        })
        .collect();
    SizeRow { label, cells, units: shown.both(|system| unit_of(system, "cm", "in")) }
}

fn no_value() -> Both {
    Both { first: "–".to_owned(), second: "–".to_owned() }
}

fn unit_of(system: System, metric: &str, imperial: &str) -> String {
    match system {
        System::Metric => metric.to_owned(),
        System::Imperial => imperial.to_owned(),
    }
}

fn requirements(shown: &Shown<'_>, pattern: &Pattern, use_of: &YarnUse) -> Vec<Option<Requirement>> {
    let yarn = use_of.yarn.as_ref().and_then(|yarn| shown.catalogue.yarn(&yarn.reference()));
    reckon::requirements(pattern, use_of, yarn, shown.catalogue.studio.margin())
}

fn role(use_of: &YarnUse) -> String {
    match use_of.colour.as_deref() {
        None => String::new(),
        Some("MC") => "main colour (MC)".to_owned(),
        Some("CC") => "contrast colour (CC)".to_owned(),
        Some(label) => match label.strip_prefix("CC") {
            Some(number) if number.bytes().all(|byte| byte.is_ascii_digit()) => {
                format!("contrast colour {number} ({label})")
            }
            _ => format!("colour {label}"),
        },
    }
}

fn band(shown: &Shown<'_>, pattern: &Pattern, use_of: &YarnUse) -> Band {
    let id = use_of.yarn.as_ref().map(|yarn| yarn.reference());
    let sizes = requirements(shown, pattern, use_of);
    let known: Vec<Requirement> = sizes.iter().copied().flatten().collect();
    let lengths: Vec<YarnLength> = known.iter().map(|one| one.length).collect();
    let whole: Option<Vec<i64>> = known.iter().map(|one| one.skeins.map(|skeins| skeins.whole)).collect();
    let bounds = whole.as_ref().and_then(|all| Some((*all.iter().min()?, *all.iter().max()?)));
    let length = shown.length_range(&lengths).unwrap_or_default();
    let unknown = match (known.is_empty(), bounds) {
        (true, _) => "How much it takes is not known yet.",
        (false, None) => "How it is sold is not known, so skeins cannot be told.",
        (false, Some(_)) => "",
    };
    Band {
        role: role(use_of),
        amount: bounds.map_or_else(
            || length.first.clone(),
            |(low, high)| words::range(&skeins_words(low), &skeins_words(high)).replace(" skein to", " to"),
        ),
        small: if bounds.is_some() { length } else { Both { first: length.second.clone(), second: String::new() } },
        sizes: if pattern.size_count() > 1 && !known.is_empty() {
            band_sizes(shown, pattern, &sizes)
        } else {
            Vec::new()
        },
        unknown: unknown.to_owned(),
        ..shown.band(id.as_ref(), use_of.shade.as_deref())
    }
}

fn skeins_words(count: i64) -> String {
    format!("{count} {}", if count == 1 { "skein" } else { "skeins" })
}

fn band_sizes(shown: &Shown<'_>, pattern: &Pattern, sizes: &[Option<Requirement>]) -> Vec<BandSize> {
    let labels = size_labels(pattern);
    labels
        .into_iter()
        .zip(sizes)
        .map(|(size, requirement)| match requirement {
            None => BandSize {
                amount: "none".to_owned(),
                small: Both { first: format!("for {size}"), second: String::new() },
                size,
            },
            Some(one) => {
                let length = shown.length(one.length);
                match one.skeins {
                    Some(skeins) => BandSize { amount: skeins_words(skeins.whole), small: length, size },
                    None => BandSize {
                        amount: length.first,
                        small: Both { first: length.second, second: String::new() },
                        size,
                    },
                }
            }
        })
        .collect()
}

fn yarn_tables(shown: &Shown<'_>, pattern: &Pattern) -> Vec<YarnTable> {
    let sizes = table_sizes(pattern);
    let mut tables: Vec<YarnTable> = Vec::new();
    let mut all: Vec<Vec<Option<Requirement>>> = Vec::new();
    for use_of in pattern.yarn.iter().filter(|use_of| use_of.needs.is_some()) {
        let each = requirements(shown, pattern, use_of);
        let name = shown.yarn_link(use_of.yarn.as_ref().map(|yarn| yarn.reference()).as_ref()).title;
        let title = use_of.colour.as_ref().map_or_else(|| name.clone(), |colour| format!("{colour}, {name}"));
        let mut rows = vec![length_row(shown, each.iter().map(|one| one.map(|one| one.length)))];
        if each.iter().flatten().all(|one| one.skeins.is_some()) {
            rows.push(mass_row(shown, each.iter().map(|one| one.and_then(|one| one.mass))));
            let show = |count: Option<Count>| {
                count.map_or_else(no_value, |count| Both { first: hundredths(count), second: String::new() })
            };
            let exact =
                each.iter().map(|one| show(one.and_then(|one| one.skeins).map(|skeins| skeins.exact))).collect();
            let whole = each
                .iter()
                .map(|one| show(one.and_then(|one| one.skeins).and_then(|skeins| Count::from_whole(skeins.whole))))
                .collect();
            rows.push(SizeRow { label: "Skeins, unrounded".to_owned(), cells: exact, units: Both::default() });
            rows.push(SizeRow { label: "Skeins to buy".to_owned(), cells: whole, units: Both::default() });
        }
        tables.push(YarnTable { title, table: SizeTable { sizes: sizes.clone(), rows } });
        all.push(each);
    }
    if all.len() > 1 && all.len() == pattern.yarn.len() {
        let mut rows = vec![length_row(shown, reckon::total(pattern).into_iter())];
        if all.iter().flatten().flatten().all(|one| one.mass.is_some()) {
            let sum = |size: usize| {
                all.iter()
                    .filter_map(|each| each.get(size).copied().flatten()?.mass)
                    .map(Mass::nanograms)
                    .fold(0_i64, i64::saturating_add)
            };
            rows.push(mass_row(shown, (0..pattern.size_count()).map(|size| Some(Mass::from_nanograms(sum(size))))));
        }
        tables.push(YarnTable { title: "All yarns".to_owned(), table: SizeTable { sizes, rows } });
    }
    tables
}

/// Returns a count to two decimals, trimmed, halves away from zero.
fn hundredths(count: Count) -> String {
    let near = crate::measure::rounding::divide_near(i128::from(count.thousandths()), 10)
        .and_then(|near| i64::try_from(near).ok());
    near.map_or_else(|| count.show(), |near| Count::from_thousandths(near.saturating_mul(10)).show())
}

fn length_row(shown: &Shown<'_>, lengths: impl Iterator<Item = Option<YarnLength>>) -> SizeRow {
    let cells =
        lengths.map(|length| length.map_or_else(no_value, |length| without_units(shown.length(length)))).collect();
    SizeRow { label: "Length".to_owned(), cells, units: shown.both(|system| unit_of(system, "m", "yd")) }
}

fn mass_row(shown: &Shown<'_>, masses: impl Iterator<Item = Option<Mass>>) -> SizeRow {
    let cells = masses.map(|mass| mass.map_or_else(no_value, |mass| without_units(shown.mass(mass)))).collect();
    SizeRow { label: "Weight".to_owned(), cells, units: shown.both(|system| unit_of(system, "g", "oz")) }
}

fn without_units(both: Both) -> Both {
    let number = |text: String| text.rsplit_once('\u{a0}').map_or(text.clone(), |(number, _)| number.to_owned());
    Both { first: number(both.first), second: number(both.second) }
}

fn basis(shown: &Shown<'_>, pattern: &Pattern) -> String {
    let Some(sample) = &pattern.sample else { return String::new() };
    match sample.used {
        Some(used) => format!(
            "Lengths are as stated by the designer; the sample, in {}, took {}.",
            sample.size,
            used.show(shown.system)
        ),
        None => format!("Lengths are as stated by the designer; the sample is in {}.", sample.size),
    }
}

fn errata(shown: &Shown<'_>, pattern: &Pattern) -> Vec<ErratumView> {
    let mut errata: Vec<_> = pattern.errata.iter().filter(|erratum| erratum.date <= shown.catalogue.today).collect();
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

/// Returns whose idea something is: a link where it is an entry readers may see, else words.
fn source(shown: &Shown<'_>, source: &Words) -> Link {
    match source {
        Words::Reference(id) => shown.public_link(id).unwrap_or_default(),
        Words::Plain(text) => {
            let person = crate::entry::Key::new(text).map(|key| Reference { kind: Kind::Person, key });
            person.and_then(|id| shown.public_link(&id)).unwrap_or_else(|| Link { title: text.clone(), url: None })
        }
    }
}
