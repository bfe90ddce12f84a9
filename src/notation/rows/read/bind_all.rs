//! All stitches are bound off, or all but the last: `BO all sts but do not fasten off last st: 1 st`.

use super::super::statement::Doing;
use super::super::tree::{Item, Number, Until};
use super::cursor::Cursor;
use super::plain::tokens;
use crate::measure::SizeRun;

/// Moves past what is said of binding all off. "BO all sts but do not fasten off last st: 1 st" leaves one.
pub(super) fn bind_all(cursor: &mut Cursor<'_>, start: usize) -> Doing {
    let body = cursor.at;
    cursor.skip_sentence();
    let at = start..cursor.at;
    let words = cursor.text.get(body..cursor.at).unwrap_or_default().to_lowercase();
    let said: Vec<&str> = tokens(&words).collect();
    let one = said.windows(2).any(|pair| matches!(pair, ["last" | "final" | "1" | "one", "st" | "stitch"]));
    let live = ["not fasten", "n't fasten", "n’t fasten", "without fastening"].iter().any(|word| words.contains(word));
    if !live && words.contains("fasten off") {
        return Doing::BindOff;
    }
    let stays = live || ["but", "except", "leav", "rem", "keep"].iter().any(|word| words.contains(word));
    if !(one && stays) {
        let some = said.iter().any(|word| matches!(*word, "but" | "except" | "last" | "first" | "centre" | "center"));
        return if some { Doing::Unsaid } else { Doing::BindOff };
    }
    // A count behind a colon is read as any other.
    if let Some(colon) = words.rfind(':') {
        cursor.at = body + colon + 1;
    }
    let last = Number { values: SizeRun::one(1), at: at.end..at.end };
    let bound = Item::Even { until: Until::Last(last), binds: true, at: at.clone() };
    let rest = Item::Even { until: Until::End, binds: false, at };
    Doing::Row { label: None, items: vec![bound, rest] }
}
