//! Yarn at hand against what planned work needs, short ones first.

use super::super::view::{Both, Link};
use super::super::{Item, Shown, words};
use crate::measure::YarnLength;
use crate::reckon::desk::{Comparison, Stock, Untold, stock};
use serde::Serialize;

/// One yarn in one shade.
#[derive(Clone, Debug, Serialize)]
pub struct YarnLine {
    /// The yarn.
    pub yarn: Item<Link>,
    /// Its shade; absent where it is not chosen yet.
    pub shade: Option<String>,
    /// The shade's colour, where it is known.
    pub colour: Option<String>,
    /// What is at hand; absent where it cannot be told.
    pub at_hand: Option<Both>,
    /// What is wanted altogether, as far as it is known; absent where nothing is.
    pub wanted: Option<Both>,
    /// Whether more is wanted of which it cannot be told how much.
    pub is_more: bool,
    /// What wants it.
    pub wants: Vec<WantLine>,
    /// `short`, `bare`, `unknown`, `enough` or `free`.
    pub state: &'static str,
    /// The same in words: `short by 120 m`.
    pub in_words: Both,
    /// Whole skeins to buy, margin included; absent where there is nothing to buy or it cannot be told.
    pub skeins: Option<String>,
}

/// One thing that wants a yarn.
#[derive(Clone, Debug, Serialize)]
pub struct WantLine {
    /// The thing.
    pub link: Item<Link>,
    /// What it still takes; absent where it cannot be told.
    pub length: Option<Both>,
    /// Why it cannot be told; empty where it can.
    pub untold: &'static str,
}

/// Returns yarn at hand and wanted.
pub fn yarn(shown: &Shown<'_>) -> Vec<YarnLine> {
    stock(shown.catalogue).iter().map(|one| line(shown, one)).collect()
}

fn line(shown: &Shown<'_>, stock: &Stock) -> YarnLine {
    let length = |length: YarnLength| shown.length(length);
    let band = shown.band(stock.yarn.as_ref(), stock.shade.as_deref());
    let plain = |words: &str| Both { first: words.to_owned(), second: String::new() };
    let (state, in_words) = match stock.comparison {
        Comparison::Short(by) => {
            let by = length(by);
            ("short", Both { first: format!("short by {}", by.first), second: by.second })
        }
        Comparison::Bare => ("bare", plain("enough, without the margin")),
        Comparison::Unknown => ("unknown", plain(unknown(stock))),
        Comparison::Enough => ("enough", plain("enough")),
        Comparison::Free => ("free", plain("nothing planned")),
    };
    YarnLine {
        yarn: band.yarn,
        shade: band.shade,
        colour: band.colour,
        at_hand: stock.at_hand.map(length),
        wanted: (!stock.wanted.is_zero() || stock.wants.iter().all(|want| want.length.is_some()))
            .then(|| length(stock.wanted)),
        is_more: stock.wants.iter().any(|want| want.length.is_none()),
        wants: stock
            .wants
            .iter()
            .filter_map(|want| {
                let (length, untold) = (want.length.map(length), want.untold.map(untold_in_words).unwrap_or_default());
                Some(WantLine { link: shown.link(&want.of)?, length, untold })
            })
            .collect(),
        state,
        in_words,
        skeins: stock
            .skeins
            .and_then(|skeins| usize::try_from(skeins).ok())
            .filter(|skeins| *skeins > 0)
            .map(|skeins| words::counted(skeins, "skein", "skeins")),
    }
}

/// Returns why it cannot be told whether a yarn suffices.
fn unknown(stock: &Stock) -> &'static str {
    match (&stock.yarn, stock.at_hand) {
        (None, _) => "the yarn is not chosen",
        (Some(_), None) if stock.awaits_shade => "the shade is not chosen",
        (Some(_), None) => "how it is sold is not known",
        (Some(_), Some(_)) => "cannot be told",
    }
}

/// Returns in words why it cannot be told what something takes.
pub fn untold_in_words(untold: Untold) -> &'static str {
    match untold {
        Untold::NoPattern => "how much is not known: no pattern of yours says it",
        Untold::NoSize => "how much is not known: no size is chosen",
        Untold::WhichColour => "how much is not known: its `colour` in the pattern is not said",
        Untold::NoNeeds => "how much is not known: the pattern does not say",
        Untold::Used => "how much is left is not known: what was used has no length",
    }
}
