//! Cutting the text to its limit, by whole lines, from the least important end.

use super::part::{Part, PartKind};
use super::{LeftOut, size};
use crate::entry::Outlet;

/// Joins the parts, which stand in the order of the text, and leaves out lines until the text fits.
pub fn cut(mut parts: Vec<Part>, outlet: &Outlet) -> (String, Vec<LeftOut>) {
    let limit = usize::try_from(outlet.limit).unwrap_or(usize::MAX);
    let mut left_out: Vec<LeftOut> = Vec::new();
    let mut text = join(&parts);
    for kind in PartKind::BY_IMPORTANCE.into_iter().rev() {
        let Some(at) = parts.iter().position(|part| part.kind == kind) else { continue };
        let mut gone = Vec::new();
        while size(&text, outlet.counted()) > limit {
            let Some(part) = parts.get_mut(at).filter(|part| !part.lines.is_empty()) else { break };
            if kind.is_whole() {
                gone = std::mem::take(&mut part.lines);
            } else {
                gone.splice(0..0, part.lines.pop());
            }
            text = join(&parts);
        }
        if !gone.is_empty() {
            left_out.push(LeftOut { part: kind, lines: gone });
        }
    }
    (text, left_out)
}

/// Returns the parts as text: a blank line between two, every line ended.
fn join(parts: &[Part]) -> String {
    let mut text = String::new();
    for part in parts.iter().filter(|part| !part.lines.is_empty()) {
        if !text.is_empty() {
            text.push('\n');
        }
        for line in part.kind.heading().into_iter().chain(part.lines.iter().map(String::as_str)) {
            text.push_str(line);
            text.push('\n');
        }
    }
    text
}
