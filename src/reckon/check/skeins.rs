//! The skeins a pattern prints must be enough, and not one too many.

use super::place;
use crate::catalogue::Catalogue;
use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::{Count, PutUp, YarnLength};
use crate::reckon::skeins;

/// Fewer skeins than a size takes.
pub static SKEINS_SHORT: Code = Code {
    name: "skeins-short",
    severity: Severity::Warning,
    what: "The skeins that are printed hold less than a size takes.",
    why: "Somebody buys what the pattern says and runs out.",
    bad: "yarn: { yarn: heron-dk, needs: 820 (905) m, skeins: 4 (4) }",
    good: "yarn: { yarn: heron-dk, needs: 820 (905) m, skeins: 4 (5) }",
};

/// More skeins than a size takes.
pub static SKEINS_OVER: Code = Code {
    name: "skeins-over",
    severity: Severity::Warning,
    what: "One skein fewer than printed would hold what a size takes, margin and all.",
    why: "Somebody pays for a skein she has no use for.",
    bad: "yarn: { yarn: heron-dk, needs: 600 (905) m, skeins: 5 (5) }",
    good: "yarn: { yarn: heron-dk, needs: 600 (905) m, skeins: 3 (5) }",
};

/// Sets the printed skeins of each line against its needs.
pub fn check(catalogue: &Catalogue, entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    if pattern.yarn.iter().all(|line| line.skeins.is_none()) {
        return;
    }
    let margin = catalogue.studio.margin(pattern);
    let Some(needs) = place::needs(catalogue, pattern) else { return };
    for (at, (line, told)) in pattern.yarn.iter().zip(&needs).enumerate() {
        let put_up = place::yarn(catalogue, line).and_then(|yarn| yarn.put_up);
        let (Some(printed), Some(put_up)) = (&line.skeins, put_up) else { continue };
        let those = |wrong: &dyn Fn(Count, YarnLength) -> Option<bool>| -> Vec<usize> {
            let is_wrong = |size: usize| {
                let need = told.get(size)?.need()?;
                wrong(*printed.values.get(size)?, need.length)
            };
            (0..told.len()).filter(|size| is_wrong(*size) == Some(true)).collect()
        };
        let short = those(&|printed, need| is_short(printed, need, put_up));
        let over = those(&|printed, need| {
            let whole = skeins(need, margin, put_up)?.whole;
            Some(Count::from_whole(whole.checked_add(1)?)? <= printed)
        });
        let mut tell = |code: &'static Code, of: &[usize], what: &str, help: String| {
            let Some(first) = of.first() else { return };
            let way = place::item("yarn", at, &["skeins"]);
            let one = |size: &usize| {
                let printed = printed.values.get(*size)?.show();
                Some(format!("{printed}{}", place::in_sizes(pattern, &[*size])))
            };
            let those: Vec<String> = of.iter().filter_map(one).collect();
            let message = format!("the skeins of {} are {what}: {}", place::line(pattern, at), those.join(", "));
            findings.push(
                Finding::new(code, place::value(entry, &way, printed, *first, placing), message)
                    .help(help)
                    .also(entry.origin.value(&place::item("yarn", at, &["needs"]), placing), "what it takes"),
            );
        };
        let right = |of: &[usize]| {
            let one = |size: &usize| {
                let whole = skeins(told.get(*size)?.need()?.length, margin, put_up)?.whole;
                Some(format!("{whole}{}", place::in_sizes(pattern, &[*size])))
            };
            let all: Vec<String> = of.iter().filter_map(one).collect();
            format!("with a margin of {} it takes {}", margin.show(), all.join(", "))
        };
        tell(&SKEINS_SHORT, &short, "too few", right(&short));
        tell(&SKEINS_OVER, &over, "one or more too many", right(&over));
    }
}

fn is_short(printed: Count, need: YarnLength, put_up: PutUp) -> Option<bool> {
    Some(put_up.length_of_skeins(printed)? < need)
}
