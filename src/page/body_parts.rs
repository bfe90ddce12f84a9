//! The usual sizes of heads, hands and feet that a pattern's sizes are for.

use super::fit::FitView;
use super::view::{Both, SizeRow};
use crate::entry::Pattern;
use crate::entry::value::Wearer;
use crate::measure::{FabricLength, Run};
use crate::standards::feet::Foot;
use crate::standards::provenance::Provenance;
use crate::standards::{CREDIT, feet, hands, heads};

/// The scheme of heads and hands, as a reader may be told of it: the council's own could not be read (`SOURCES.md`).
const GUIDE: &str = "a maker's guide that follows the Craft Yarn Council (www.YarnStandards.com)";

/// The groups of the table of feet, with what a cell calls them.
const GROUPS: [(&str, &str); 3] = [("Child", "children"), ("Woman", "women"), ("Man", "men")];

/// What a size is called, and whether that was read or remembered.
type Named = (String, Provenance);

/// Adds a row for the head, the hand and the foot that a pattern is to fit, each with where the sizes come from.
///
/// A table that measures hats, mittens or socks is never asked: what is to be fitted is the body.
pub fn add(pattern: &Pattern, view: &mut FitView) {
    let of = |names: [&str; 2]| names.into_iter().find_map(|name| pattern.to_fit.get(name));
    let plain = |size: &str| size.split(" (").next().unwrap_or(size).to_owned();
    if let Some(run) = of(["head", "head circumference"]) {
        let size = |head| heads::nearest(head).map(|row| (plain(&row.size), row.provenance));
        add_row(pattern, view, ["Usual head size", "Head sizes", GUIDE], run, size);
    }
    if let Some(run) = of(["hand", "hand circumference"]) {
        let size = |hand| hands::nearest(hand).map(|row| (plain(&row.size), row.provenance));
        add_row(pattern, view, ["Usual hand size", "Hand sizes", GUIDE], run, size);
    }
    // Shoes go by length; the girth is only asked where there is none.
    let length = pattern.to_fit.get("foot length").map(|run| (run, Foot::Length));
    if let Some((run, what)) = length.or_else(|| Some((of(["foot", "foot circumference"])?, Foot::Girth))) {
        let source = CREDIT.trim_start_matches("Source: ");
        let size = |foot| shoe(pattern.wearer, what, foot);
        add_row(pattern, view, ["US shoe size", "Shoe sizes", source], run, size);
    }
}

/// Adds one row, if any of its sizes is known.
fn add_row(
    pattern: &Pattern,
    view: &mut FitView,
    [label, what, source]: [&str; 3],
    run: &Run<FabricLength>,
    size_of: impl Fn(FabricLength) -> Option<Named>,
) {
    let named: Vec<Option<Named>> = (0..pattern.size_count()).map(|size| size_of(*run.values.get(size)?)).collect();
    if named.iter().all(Option::is_none) {
        return;
    }
    let memory = named.iter().flatten().any(|(_, provenance)| *provenance == Provenance::Memory);
    let first = |named: Option<Named>| named.map_or_else(|| "–".to_owned(), |(size, _)| size);
    let cells = named.into_iter().map(|named| Both { first: first(named), second: String::new() }).collect();
    view.rows.push(SizeRow { label: label.to_owned(), cells, units: Both::default() });
    let memory = if memory { ", from memory and to be checked" } else { "" };
    let space = if view.credit.is_empty() { "" } else { " " };
    view.credit.push_str(&format!("{space}{what}: {source}{memory}."));
}

/// Returns the shoe size of a foot: of the wearer's group, or of each group that has such feet.
fn shoe(wearer: Option<Wearer>, what: Foot, foot: FabricLength) -> Option<Named> {
    let only = wearer.map(|wearer| match wearer {
        Wearer::Women => "Woman",
        Wearer::Men => "Man",
        Wearer::Youth | Wearer::Child | Wearer::Baby => "Child",
    });
    let mut sizes = Vec::new();
    let mut provenance = Provenance::Read;
    for (group, called) in GROUPS.into_iter().filter(|(group, _)| only.is_none_or(|only| only == *group)) {
        let Some(row) = feet::nearest(group, what, foot) else { continue };
        let Some(shoe) = &row.us_shoe else { continue };
        provenance = provenance.max(row.provenance);
        let shoe = shoe.replace('-', "–");
        sizes.push(if only.is_some() { shoe } else { format!("{called} {shoe}") });
    }
    (!sizes.is_empty()).then(|| (sizes.join(", "), provenance))
}
