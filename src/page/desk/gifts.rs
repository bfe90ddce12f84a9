//! Gifts: who in which household has which design in which variant, two alike marked, and what a household has not had.

use super::super::view::Link;
use super::super::{Item, Shown, words};
use super::Day;
use crate::reckon::desk::{Design, Gift, Household};
use serde::Serialize;

/// Those who live together, and what was made for them.
#[derive(Clone, Debug, Serialize)]
pub struct HouseholdView {
    /// What the household is called.
    pub name: String,
    /// How many of its things are alike, in words; empty where none are.
    pub alike: String,
    /// What was or is being made for them.
    pub gifts: Vec<GiftLine>,
    /// The published designs that none of them has had.
    pub not_had: Vec<Item<Link>>,
}

/// One gift.
#[derive(Clone, Debug, Serialize)]
pub struct GiftLine {
    /// For whom; may be empty.
    pub who: String,
    /// The project.
    pub link: Item<Link>,
    /// The design.
    pub design: Option<Item<Link>>,
    /// What sets it apart, as she wrote it: `brim: folded, crown: open`; may be empty.
    pub variant: String,
    /// The size; absent where it is not said.
    pub size: Option<String>,
    /// Its shades, in the order of its yarns.
    pub shades: Vec<String>,
    /// Where it stands: `finished`, `on the needles`.
    pub state: &'static str,
    /// The day it was finished.
    pub finished: Option<Day>,
    /// The day it must be there.
    pub by: Option<Day>,
    /// Whether another in the household is of the same design in the same variant.
    pub is_alike: bool,
}

/// Returns the gifts by household.
pub fn households(shown: &Shown<'_>) -> Vec<HouseholdView> {
    crate::reckon::desk::households(shown.catalogue).iter().map(|household| view(shown, household)).collect()
}

fn view(shown: &Shown<'_>, household: &Household<'_>) -> HouseholdView {
    let name = match (household.name, household.is_named) {
        // A household is mostly written like a key.
        (Some(name), true) => words::sentence(&name.replace('-', " ")),
        (Some(name), false) => format!("{name}, no household said"),
        (None, _) => "Nobody named".to_owned(),
    };
    HouseholdView {
        name,
        alike: match household.gifts.iter().filter(|gift| gift.is_alike).count() {
            0 => String::new(),
            count => format!("{} alike", words::number(count)),
        },
        gifts: household.gifts.iter().map(|gift| line(shown, gift)).collect(),
        not_had: household.not_had.iter().map(|entry| shown.own_link(entry)).collect(),
    }
}

fn line(shown: &Shown<'_>, gift: &Gift<'_>) -> GiftLine {
    let variant = gift.project.variant.for_desk();
    let finished = gift.project.finished_by(shown.catalogue.view.today);
    GiftLine {
        who: gift.made_for.who.clone().unwrap_or_default(),
        link: shown.own_link(gift.entry),
        design: match &gift.design {
            Design::Own(id) => shown.link(id),
            Design::Other(title) => Some(super::no_link(title)),
            Design::None => None,
        },
        variant: variant.0.iter().map(|(name, value)| format!("{name}: {value}")).collect::<Vec<_>>().join(", "),
        size: gift.project.size.clone(),
        shades: gift.project.yarn.iter().filter_map(|yarn| yarn.shade.as_deref().map(words::sentence)).collect(),
        state: if finished.is_some() { "finished" } else { "on the needles" },
        finished: finished.map(Day::from),
        by: gift.made_for.by.map(Day::from),
        is_alike: gift.is_alike,
    }
}
