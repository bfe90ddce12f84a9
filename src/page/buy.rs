//! The yarn a pattern has one buy: as ball bands, and in figures.

use super::pattern::{size_labels, table_sizes};
use super::view::{Amount, Band, BandSize, Both, SizeRow, SizeTable};
use super::{Shown, words};
use crate::entry::{Pattern, YarnUse};
use crate::measure::{Count, Mass, Percent, YarnLength};
use crate::reckon::{self, LineNeeds, Purchase, Requirement, Terms};
use schemars::JsonSchema;
use serde::Serialize;

/// The figures of one yarn, or of all.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct YarnTable {
    /// Which yarn: `MC, Heron DK`, or `All yarns`.
    pub title: String,
    /// The figures for each size.
    pub table: SizeTable,
}

/// Returns the ball bands of what a pattern has one buy.
pub fn bands(shown: &Shown<'_>, pattern: &Pattern, purchases: &[Purchase<'_>]) -> Vec<Band> {
    purchases.iter().map(|purchase| band(shown, pattern, purchase)).collect()
}

/// Returns what a pattern has one buy, from what readers may know of its yarns.
pub fn purchases<'a>(shown: &Shown<'_>, pattern: &'a Pattern) -> Vec<Purchase<'a>> {
    let yarn = |one: &'a YarnUse| shown.catalogue.public_yarn(&one.yarn.as_ref()?.reference());
    reckon::purchases(pattern, Terms::of(shown.margin(pattern)), yarn)
}

impl Shown<'_> {
    /// Returns what each line of a pattern takes, from what readers may know of its yarns.
    pub fn needs(&self, pattern: &Pattern) -> Vec<LineNeeds> {
        reckon::needs(pattern, |one| self.catalogue.public_yarn(&one.yarn.as_ref()?.reference()))
    }

    /// Returns the margin of a pattern: its own, or else the studio's.
    pub fn margin(&self, pattern: &Pattern) -> Percent {
        self.catalogue.studio.margin(pattern)
    }
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

fn band(shown: &Shown<'_>, pattern: &Pattern, purchase: &Purchase<'_>) -> Band {
    let known: Vec<Requirement> = purchase.sizes.iter().copied().flatten().collect();
    let lengths: Vec<YarnLength> = known.iter().map(|one| one.length).collect();
    let whole: Option<Vec<i64>> = known.iter().map(|one| one.skeins.map(|skeins| skeins.whole)).collect();
    let bounds = whole.as_ref().and_then(|all| Some((*all.iter().min()?, *all.iter().max()?)));
    let length = shown.length_range(&lengths).unwrap_or_default();
    let unknown = match (known.is_empty(), bounds) {
        (true, _) => "How much it takes is not known yet.",
        (false, None) => "How it is sold is not known, so skeins cannot be told.",
        (false, Some(_)) => "",
    };
    let mut roles: Vec<String> = purchase.uses.iter().map(|one| role(one)).filter(|role| !role.is_empty()).collect();
    roles.extend(held_with(shown, purchase));
    let first = purchase.uses.first();
    let yarn = first.and_then(|one| shown.catalogue.public_yarn(&one.yarn.as_ref()?.reference()));
    if yarn.is_some_and(|yarn| yarn.discontinued == Some(true)) {
        roles.push("no longer made".to_owned());
    }
    let id = first.and_then(|one| one.yarn.as_ref()).map(|yarn| yarn.reference());
    Band {
        role: roles.join(", "),
        amount: match bounds {
            None => Amount::of(&length.first),
            Some((low, high)) if low == high => skeins_amount(high),
            Some((low, high)) => Amount { figure: format!("{low} to {high}"), ..skeins_amount(high) },
        },
        small: if bounds.is_some() { length } else { Both { first: length.second.clone(), second: String::new() } },
        sizes: if known.is_empty() { Vec::new() } else { band_sizes(shown, pattern, purchase) },
        unknown: unknown.to_owned(),
        ..shown.band(id.as_ref(), first.and_then(|one| one.shade.as_deref()))
    }
}

/// Returns what a yarn is held with, in words; nothing for one that is knitted by itself.
fn held_with(shown: &Shown<'_>, purchase: &Purchase<'_>) -> Option<String> {
    let name = |line: &&YarnUse| {
        let link = line.yarn.as_ref().and_then(|yarn| shown.public_link(&yarn.reference()));
        words::with_colour(link.map(|link| link.title.clone()), line.colour.as_deref())
    };
    let mut names: Vec<String> = purchase.held_with.iter().map(name).collect();
    names.dedup();
    (!names.is_empty()).then(|| format!("held with {}", words::list(&names)))
}

fn skeins_amount(count: i64) -> Amount {
    Amount { figure: count.to_string(), unit: if count == 1 { "skein" } else { "skeins" }.to_owned() }
}

fn band_sizes(shown: &Shown<'_>, pattern: &Pattern, purchase: &Purchase<'_>) -> Vec<BandSize> {
    let one = |(at, (size, requirement)): (usize, (String, &Option<Requirement>))| match requirement {
        None => {
            let figure = if purchase.unknown.contains(&at) { "not known" } else { "none" };
            BandSize { amount: Amount { figure: figure.to_owned(), unit: String::new() }, small: Both::default(), size }
        }
        Some(one) => {
            let length = shown.length(one.length);
            let (amount, small) = match one.skeins {
                Some(skeins) => (skeins_amount(skeins.whole), length),
                None => (Amount::of(&length.first), Both { first: length.second, second: String::new() }),
            };
            BandSize { amount, small, size }
        }
    };
    size_labels(pattern).into_iter().zip(&purchase.sizes).enumerate().map(one).collect()
}

/// Returns the figures of each purchase whose needs are known, and of all together if all are; `needs` are those of each
/// line.
pub fn tables(shown: &Shown<'_>, pattern: &Pattern, purchases: &[Purchase<'_>], needs: &[LineNeeds]) -> Vec<YarnTable> {
    let sizes = table_sizes(pattern);
    let mut tables: Vec<YarnTable> = purchases
        .iter()
        .filter(|purchase| purchase.is_known)
        .map(|purchase| table(shown, &sizes, purchase, shown.margin(pattern)))
        .collect();
    if purchases.len() > 1 && purchases.iter().all(|purchase| purchase.is_known) {
        let mut rows = vec![length_row(shown, reckon::total_to_buy(pattern, needs).into_iter())];
        if purchases.iter().flat_map(|purchase| purchase.sizes.iter().flatten()).all(|one| one.mass.is_some()) {
            rows.push(mass_row(shown, (0..pattern.size_count()).map(|size| total_mass(purchases, size))));
            let total = |size: usize| {
                if purchases.iter().any(|one| one.unknown.contains(&size)) {
                    return Both::none();
                }
                let whole =
                    purchases.iter().filter_map(|one| Some(one.sizes.get(size).copied().flatten()?.skeins?.whole));
                let sum = whole.fold(0_i64, i64::saturating_add);
                Both { first: sum.to_string(), second: String::new() }
            };
            let cells = (0..pattern.size_count()).map(total).collect();
            rows.push(SizeRow { label: "Skeins to buy".to_owned(), cells, units: Both::default() });
        }
        tables.push(YarnTable { title: "All yarns".to_owned(), table: SizeTable { sizes, rows } });
    }
    tables
}

fn table(shown: &Shown<'_>, sizes: &[String], purchase: &Purchase<'_>, margin: Percent) -> YarnTable {
    let first = purchase.uses.first();
    let name =
        shown.yarn_link(first.and_then(|one| one.yarn.as_ref()).map(|yarn| yarn.reference()).as_ref()).title.clone();
    let mut title: Vec<String> = purchase.uses.iter().filter_map(|one| one.colour.clone()).collect();
    title.push(name);
    title.extend(held_with(shown, purchase));
    let of = &purchase.sizes;
    let mut rows = vec![length_row(shown, of.iter().map(|one| one.map(|one| one.length)))];
    if of.iter().flatten().all(|one| one.skeins.is_some()) {
        let cell = |count: Option<Count>| {
            count.map_or_else(Both::none, |count| Both { first: count.show_hundredths_up(), second: String::new() })
        };
        let exact = of.iter().map(|one| cell(one.and_then(|one| one.skeins).map(|skeins| skeins.exact)));
        let whole = of.iter().map(|one| cell(one.and_then(|one| Count::from_whole(one.skeins?.whole))));
        let spare = margin.show();
        rows.push(mass_row(shown, of.iter().map(|one| one.and_then(|one| one.mass))));
        rows.push(SizeRow {
            label: format!("Skeins, {spare} to spare"),
            cells: exact.collect(),
            units: Both::default(),
        });
        rows.push(SizeRow { label: "Skeins to buy".to_owned(), cells: whole.collect(), units: Both::default() });
    }
    YarnTable { title: title.join(", "), table: SizeTable { sizes: sizes.to_vec(), rows } }
}

/// Returns the mass of all yarns in one size; nothing for a size that uses none, or of which any is not known.
fn total_mass(purchases: &[Purchase<'_>], size: usize) -> Option<Mass> {
    if purchases.iter().any(|one| one.unknown.contains(&size)) {
        return None;
    }
    let masses: Vec<Mass> = purchases.iter().filter_map(|one| one.sizes.get(size).copied().flatten()?.mass).collect();
    let sum = masses.iter().try_fold(0_i64, |sum, mass| sum.checked_add(mass.nanograms()))?;
    (!masses.is_empty()).then(|| Mass::from_nanograms(sum))
}

fn length_row(shown: &Shown<'_>, lengths: impl Iterator<Item = Option<YarnLength>>) -> SizeRow {
    let cell = |length: Option<YarnLength>| {
        length.map_or_else(Both::none, |length| shown.both(|system| number(length.show(system))))
    };
    SizeRow {
        label: "Length".to_owned(),
        cells: lengths.map(cell).collect(),
        units: shown.both(|system| words::unit(system, "m", "yd")),
    }
}

fn mass_row(shown: &Shown<'_>, masses: impl Iterator<Item = Option<Mass>>) -> SizeRow {
    let cell = |mass: Option<Mass>| mass.map_or_else(Both::none, |mass| shown.both(|system| number(mass.show(system))));
    SizeRow {
        label: "Weight".to_owned(),
        cells: masses.map(cell).collect(),
        units: shown.both(|system| words::unit(system, "g", "oz")),
    }
}

/// Returns a quantity without its unit.
fn number(mut shown: String) -> String {
    shown.truncate(shown.rfind(' ').unwrap_or(shown.len()));
    shown
}
