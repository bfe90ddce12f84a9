//! Cutting the text to its limit, by whole lines, from the least important end.

use super::part::{Disclosure, Line, Part, PartKind};
use super::{LeftOut, size};
use crate::entry::Outlet;

/// Joins the parts, which stand in the order of the text, and leaves out lines until the text fits. What is disclosed of a thing
/// stays as long as the thing does, and no longer.
pub fn cut(mut parts: Vec<Part>, disclosures: &[Disclosure], outlet: &Outlet) -> (String, Vec<LeftOut>) {
    let limit = usize::try_from(outlet.limit).unwrap_or(usize::MAX);
    let mut left_out: Vec<LeftOut> = Vec::new();
    let mut text = join(&mut parts, disclosures);
    for kind in PartKind::BY_IMPORTANCE.into_iter().rev() {
        let Some(at) = parts.iter().position(|part| part.kind == kind) else { continue };
        let mut gone: Vec<Line> = Vec::new();
        while size(&text, outlet.counted()) > limit {
            let Some(part) = parts.get_mut(at).filter(|part| !part.lines.is_empty()) else { break };
            if kind.is_whole() {
                gone = std::mem::take(&mut part.lines);
            } else {
                gone.splice(0..0, part.lines.pop());
            }
            text = join(&mut parts, disclosures);
        }
        if !gone.is_empty() {
            left_out.push(LeftOut { part: kind, lines: gone.into_iter().map(|line| line.text).collect() });
        }
    }
    (text, left_out)
}

/// Returns the parts as text, what is disclosed among them: a blank line between two, every line ended.
fn join(parts: &mut [Part], disclosures: &[Disclosure]) -> String {
    let told: Vec<Line> = disclosures.iter().filter_map(|one| one.line(parts)).collect();
    if let Some(part) = parts.iter_mut().find(|part| part.kind == PartKind::Disclosures) {
        part.lines = told;
    }
    let mut text = String::new();
    for part in parts.iter().filter(|part| !part.lines.is_empty()) {
        if !text.is_empty() {
            text.push('\n');
        }
        for line in part.kind.heading().into_iter().chain(part.lines.iter().map(|line| line.text.as_str())) {
            text.push_str(line);
            text.push('\n');
        }
    }
    text
}
