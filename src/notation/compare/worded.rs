//! A row in words, written out in the order it is worked.

use super::super::rows::{How, Item, Reading, Until, binds, once};
use super::name::Name;
use super::{MANY, Span, Step, Words};

/// The most stitches that are written out.
const MOST: usize = 20_000;

/// The most things that are looked at for them: repeats may hold what works no stitch.
const MOST_STEPS: usize = 200_000;

/// Returns the stitches of a row on so many; nothing where the words do not tell them. A repeat that does not come out is
/// worked as often as it goes. `apart` says whether the stitch that is on the right needle after binding off is none of
/// those that the next words count.
pub(super) fn steps(words: Words<'_>, stitches: i64, size: usize, apart: bool) -> Option<Vec<Step>> {
    let mut walk = Walk::begin(words, stitches, size, apart);
    walk.items(words.items)?;
    Some(walk.steps)
}

/// Returns how many stitches a row takes that goes no further than it says; nothing for one that goes to its end.
pub(super) fn takes(words: Words<'_>, size: usize, apart: bool) -> Option<i64> {
    let takes = once(words.items, size, Reading::More)?.takes;
    if !apart || binds(words.items) == 0 {
        return Some(takes);
    }
    let mut walk = Walk::begin(words, MANY, size, apart);
    walk.items(words.items)?;
    MANY.checked_sub(walk.left)
}

struct Walk<'a> {
    words: Words<'a>,
    size: usize,
    /// The stitches that are still to be worked.
    left: i64,
    steps: Vec<Step>,
    /// How many things may still be looked at.
    looks: usize,
    /// Whether the stitch left from binding off is none of the next ones.
    apart: bool,
    /// Where the last thing done was binding off.
    bound: Option<Span>,
    /// The colour that what follows is said to be worked in.
    colour: Option<String>,
}

impl<'a> Walk<'a> {
    fn begin(words: Words<'a>, left: i64, size: usize, apart: bool) -> Self {
        Self { words, size, left, steps: Vec::new(), looks: MOST_STEPS, apart, bound: None, colour: None }
    }

    fn items(&mut self, items: &[Item]) -> Option<()> {
        items.iter().try_for_each(|item| self.item(item))
    }

    fn item(&mut self, item: &Item) -> Option<()> {
        self.looks = self.looks.checked_sub(1)?;
        if !matches!(item, Item::Mark { .. } | Item::Colour { .. })
            && let Some(at) = self.bound.take()
            && self.apart
            && !matches!(item, Item::Work { binds: true, .. })
        {
            let step = Step { name: Name::some("stitch left from binding off"), colour: None, at };
            self.push(step, 1, 1)?;
        }
        match item {
            Item::Work { takes, leaves, times, at, binds } => {
                let text = self.words.text.get(at.clone())?;
                if text.to_lowercase().contains("cn") || text.contains("cable needle") {
                    return None;
                }
                if *takes == 0 && *leaves < 0 {
                    return self.pass_over(item, text);
                }
                let times = times.of(self.size);
                self.bound = (*binds && times > 0).then(|| at.clone());
                // "yo twice" and "m2" are so many of one.
                let (leaves, times) = if *takes == 0 { (1, times.checked_mul(*leaves)?) } else { (*leaves, times) };
                let name = self.name(text, *takes, leaves, *binds);
                let step = Step { name, colour: self.colour(text), at: at.clone() };
                self.push(step, *takes, times)
            }
            Item::Into { of, at, .. } => {
                let counts = once(std::slice::from_ref(item), self.size, Reading::More)?;
                let name = Name::into(of.of(self.size), counts.leaves);
                self.push(Step { name, colour: None, at: at.clone() }, counts.takes, 1)
            }
            Item::Hold { number: Some(number), at, .. } => {
                let step = Step { name: Name::of("place", 1, 0), colour: None, at: at.clone() };
                self.push(step, 1, number.of(self.size))
            }
            Item::Mark { .. } => Some(()),
            Item::Colour { label, .. } => {
                self.colour = label.clone().filter(|label| !label.is_empty());
                Some(())
            }
            Item::Repeat { items, how: How::Until(until), .. } => {
                let mut takes = once(items, self.size, Reading::More)?.takes;
                if self.apart {
                    takes = takes.checked_add(binds(items))?;
                }
                let room = self.left.checked_sub(self.last(until)?)?;
                (takes > 0).then_some(())?;
                (0..room / takes).try_for_each(|_| self.items(items))
            }
            Item::Repeat { items, how, .. } => {
                let times = match how {
                    How::Times(number) => number.of(self.size),
                    How::More(number) | How::Again(number) => number.of(self.size).checked_add(1)?,
                    How::Until(_) => return None,
                };
                (0..times).try_for_each(|_| self.items(items))
            }
            Item::Even { until, binds: false, at } => {
                let text = self.words.text.get(at.clone())?.trim_start().to_lowercase();
                let word = text.get(..1).filter(|_| {
                    let word = text.split(|c: char| !c.is_alphabetic()).next();
                    matches!(word, Some("k" | "knit" | "p" | "purl"))
                })?;
                let times = self.left.checked_sub(self.last(until)?)?;
                let name = Name::of(word, 1, 1);
                let colour = self.colour(self.words.text.get(at.clone())?);
                self.push(Step { name, colour, at: at.clone() }, 1, times.max(0))
            }
            _ => None,
        }
    }

    /// The colour of a stitch: the one that its own words name, or that of what it stands among.
    fn colour(&mut self, text: &str) -> Option<String> {
        let Some(named) = self.words.lexicon.colours_behind(text).into_iter().next() else {
            // A stitch that is only slipped keeps the colour it had.
            let slipped = text.trim_start().get(..2).is_some_and(|word| word.eq_ignore_ascii_case("sl"));
            return self.colour.clone().filter(|_| !slipped);
        };
        // Among stitches that name theirs, what one without is worked in nobody knows.
        self.colour = self.colour.take().filter(|colour| *colour == named.label);
        Some(named.label).filter(|label| !label.is_empty())
    }

    fn last(&self, until: &Until) -> Option<i64> {
        match until {
            Until::End => Some(0),
            Until::Last(number) => Some(number.of(self.size)),
            Until::Marker(_) | Until::There(_) => None,
        }
    }

    fn push(&mut self, step: Step, takes: i64, times: i64) -> Option<()> {
        let many = usize::try_from(times).ok()?;
        if self.steps.len().checked_add(many)? > MOST {
            return None;
        }
        self.left = self.left.checked_sub(takes.checked_mul(times)?)?;
        self.steps.extend(std::iter::repeat_n(step, many));
        Some(())
    }

    /// A slipped stitch is passed over what came after it: the three steps are one decrease.
    fn pass_over(&mut self, item: &Item, text: &str) -> Option<()> {
        let Item::Work { leaves, at, .. } = item else { return None };
        let over = usize::try_from(leaves.checked_neg()?).ok()?;
        let worked = self.steps.pop()?;
        let start = self.steps.len().checked_sub(over)?;
        let slipped = self.steps.split_off(start);
        let is_slip = |step: &Step| step.name.show().starts_with("sl");
        let first = slipped.first().filter(|_| slipped.iter().all(is_slip))?;
        let word = match (over, worked.name.show()) {
            (1, "k") => "skp".to_owned(),
            (1, "k2tog") => "sk2p".to_owned(),
            (2, "k") => "s2kp2".to_owned(),
            (_, other) => format!("{over} slipped, {other}, {}", text.trim()),
        };
        let takes = i64::try_from(over).ok()?.checked_add(if worked.name.show() == "k2tog" { 2 } else { 1 })?;
        let at = first.at.start..at.end;
        self.steps.push(Step { name: Name::of(&word, takes, 1), colour: worked.colour, at });
        Some(())
    }

    fn name(&self, text: &str, takes: i64, leaves: i64, binds: bool) -> Name {
        if let Some((length, _)) = self.words.lexicon.own_at(text) {
            return Name::own(text.get(..length).unwrap_or(text), takes, leaves);
        }
        let lower = text.trim().to_lowercase();
        let has = |words: &[&str]| words.iter().any(|word| lower.contains(word));
        let letters: String = lower.chars().take_while(|c| c.is_alphabetic()).collect();
        if binds {
            return Name::of("bo 1", takes, leaves);
        }
        if matches!(letters.as_str(), "co" | "cast") && takes == 0 {
            return Name::of("co 1", takes, leaves);
        }
        if lower.starts_with(|c: char| c.is_ascii_digit()) && !lower.contains('/') {
            // "3 CC" says how many and in which colour.
            return Name::some("any stitch");
        }
        if lower.starts_with(|c: char| c.is_ascii_digit()) {
            let cable: Vec<&str> = lower.split_whitespace().take(2).collect();
            return Name::of(cable.join(" ").trim_end_matches([',', ';', '.']), takes, leaves);
        }
        let plain = match letters.as_str() {
            "k" | "knit" => Some("k"),
            "p" | "purl" => Some("p"),
            "sl" | "slip" => Some("sl1"),
            _ => None,
        };
        let together = leaves == 1 && takes > 1;
        match plain {
            Some(letter @ ("k" | "p")) if together => Name::of(&format!("{letter}{takes}tog"), takes, leaves),
            Some(letter @ ("k" | "p")) if (takes, leaves) == (1, 1) => {
                let how = if has(&["tbl", "through"]) {
                    "1 tbl"
                } else if has(&["wrapping"]) {
                    "1 wrapping twice"
                } else {
                    ""
                };
                Name::of(&format!("{letter}{how}"), 1, 1)
            }
            Some("sl1") if (takes, leaves) == (1, 1) && !lower.starts_with("sl1yo") => {
                let how = if has(&["kwise", "knitwise", "as if to knit"]) {
                    " kwise"
                } else if has(&["wyif", "wyf", "in front"]) {
                    " wyif"
                } else if has(&["wyib", "wyb", "in back"]) {
                    " wyib"
                } else {
                    ""
                };
                Name::of(&format!("sl1{how}"), 1, 1)
            }
            _ => {
                // The word alone, without its number of times and what stands behind it.
                let word =
                    lower.split(|c: char| !c.is_alphanumeric() && c != '&' && c != '-').next().unwrap_or_default();
                // "yo2" is two of them, and "m3" three.
                let many = takes == 0 && word.trim_start_matches(letters.as_str()).parse::<u32>().is_ok();
                match letters.as_str() {
                    "yo" if many => Name::of("yo", 0, 1),
                    "m" if many => Name::of("m1", 0, 1),
                    _ => Name::of(word, takes, leaves),
                }
            }
        }
    }
}
