//! The shares of a yarn's fibres must be the whole.

use crate::entry::{Data, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use crate::measure::Percent;

/// Shares that are not the whole.
pub static FIBRE_SHARE: Code = Code {
    name: "fibre-share",
    severity: Severity::Warning,
    what: "The shares of a yarn's fibres do not add up to 100 %.",
    why: "One of them is mistyped or missing, and a reader may not bear the fibre that is.",
    bad: "fibre: 75% wool, 20% nylon",
    good: "fibre: 75% wool, 25% nylon",
};

/// Finds yarns whose fibres are not the whole; a yarn that gives no shares is not asked.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Yarn(yarn) = &entry.data else { return };
    let Some(shares) = yarn.fibre.as_deref().and_then(shares) else { return };
    let Some(sum) = Percent::sum(shares) else { return };
    if sum.hundredths() == 10_000 {
        return;
    }
    let message = format!("the fibres add up to {}", sum.show());
    let finding = Finding::new(&FIBRE_SHARE, entry.origin.field(&["fibre"], placing), message);
    findings.push(finding.help("look for a share that is mistyped or missing"));
}

/// Returns the numbers that stand before a percent sign; nothing where there is none or one cannot be read.
fn shares(text: &str) -> Option<Vec<Percent>> {
    let parts: Vec<&str> = text.split('%').collect();
    let (_, before) = parts.split_last()?;
    if before.is_empty() {
        return None;
    }
    let number = |part: &&str| {
        let part = part.trim_end();
        let is_figure = |c: char| c.is_ascii_digit() || c == '.';
        let digits = part.chars().rev().take_while(|c| is_figure(*c)).count();
        // Every figure is one byte.
        let figures = part.get(part.len().checked_sub(digits)?..)?;
        Percent::parse(&format!("{figures}%")).ok()
    };
    before.iter().map(number).collect()
}
