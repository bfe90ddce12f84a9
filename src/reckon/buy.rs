//! Yarn to buy: whole skeins from needs and put-up.

use super::needs::{Basis, LineNeeds, Need, Told, needs};
use crate::entry::{Held, Pattern, Yarn, YarnUse};
use crate::measure::rounding::divide_up;
use crate::measure::{Count, Mass, Percent, PutUp, YarnLength};

/// How many skeins to buy.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Skeins {
    /// Whole skeins.
    pub whole: i64,
    /// The same before it is made whole, in thousandths, rounded up: it never says less than is needed.
    pub exact: Count,
}

/// Returns the skeins to buy: ⌈needs × (1 + margin) ÷ length of one⌉, worked in whole micrometres, so that an exact fit
/// is not rounded up. Nothing if one skein has no length or the numbers are beyond all measure.
///
/// Whole skeins are bought, so it rounds up always; common practice, though one shop was seen to round up only from
/// three tenths.
pub fn skeins(needs: YarnLength, margin: Percent, put_up: PutUp) -> Option<Skeins> {
    skeins_beside(needs, margin, put_up, YarnLength::ZERO)
}

/// Returns the skeins to buy beside what is at hand: as [`skeins`], of needs × (1 + margin) − what is there; none where
/// that is enough.
pub fn skeins_beside(needs: YarnLength, margin: Percent, put_up: PutUp, at_hand: YarnLength) -> Option<Skeins> {
    let (numerator, denominator) = margin.on_top()?;
    let there = i128::from(at_hand.micrometres()).checked_mul(i128::from(denominator))?;
    let wanted = i128::from(needs.micrometres()).checked_mul(i128::from(numerator))?.checked_sub(there)?;
    // Needs below nothing are a mistake; more at hand than needed is none.
    let wanted = if at_hand.is_zero() { wanted } else { wanted.max(0) };
    let one = i128::from(put_up.length.micrometres()).checked_mul(i128::from(denominator))?;
    if one <= 0 || wanted < 0 {
        return None;
    }
    let whole = i64::try_from(divide_up(wanted, one)?).ok()?;
    let exact = i64::try_from(divide_up(wanted.checked_mul(1000)?, one)?).ok()?;
    Some(Skeins { whole, exact: Count::from_thousandths(exact) })
}

/// What one yarn of a pattern takes in one size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Requirement {
    /// The length, without margin.
    pub length: YarnLength,
    /// What the length rests on; the least sure of its parts.
    pub basis: Basis,
    /// The same as mass, where the put-up is known.
    pub mass: Option<Mass>,
    /// The skeins to buy, margin included, where the put-up is known.
    pub skeins: Option<Skeins>,
}

/// What is bought as one: a yarn of a pattern in one shade, whatever it is used for.
#[derive(Clone, Debug)]
pub struct Purchase<'a> {
    /// The lines of the pattern that take it, those of yarns held with another included.
    pub uses: Vec<&'a YarnUse>,
    /// The lines that it is held with; none where it is knitted by itself.
    pub held_with: Vec<&'a YarnUse>,
    /// What it takes for each size; nothing for a size that does not use it, or where any of it is not known.
    pub sizes: Vec<Option<Requirement>>,
    /// The sizes, counted from 0, of which it cannot be told whether and how much they take.
    pub unknown: Vec<usize>,
    /// How the yarn is sold, where that is known.
    pub put_up: Option<PutUp>,
    /// Whether it is known for a size at least: the pattern says it, or it can be worked out.
    pub is_known: bool,
}

/// How yarn is bought.
#[derive(Clone, Copy, Debug)]
pub struct Terms {
    /// What is added to needs.
    pub margin: Percent,
    /// Another yarn instead of the pattern's, as it is sold. What is held with the pattern's stays as it is.
    pub with: Option<PutUp>,
    /// How many strands of it are held, where not as many as the pattern says. Each strand is as long as one of the pattern's.
    pub strands: Option<u32>,
}

impl Terms {
    /// Returns the terms of buying what the pattern names.
    pub fn of(margin: Percent) -> Self {
        Self { margin, with: None, strands: None }
    }
}

/// Returns what a pattern has one buy, in the order of its lines. Lines of the same yarn and shade are one purchase: their
/// lengths are added before whole skeins are counted. A yarn held with another is a purchase too. A yarn that `yarn` does not give has no put-up.
pub fn purchases<'a, 'y>(
    pattern: &'a Pattern,
    terms: Terms,
    yarn: impl Fn(&'a YarnUse) -> Option<&'y Yarn>,
) -> Vec<Purchase<'a>> {
    let mut joined: Vec<(Purchase<'a>, Vec<LineNeeds>)> = Vec::new();
    let mut add = |one: &'a YarnUse, with: Option<&'a YarnUse>, need: LineNeeds| {
        // Where another yarn is taken instead, what is held with it is not that one.
        let alike = |purchase: &Purchase<'a>| terms.with.is_none() || purchase.held_with.is_empty() == with.is_none();
        let same = |purchase: &Purchase<'a>| purchase.uses.first().is_some_and(|first| same_skeins(first, one));
        match joined.iter_mut().find(|(purchase, _)| same(purchase) && alike(purchase)) {
            Some((purchase, needs)) => {
                purchase.uses.push(one);
                purchase.held_with.extend(with);
                needs.push(need);
            }
            None => {
                let (uses, held_with) = (vec![one], with.into_iter().collect());
                let (sizes, unknown) = (Vec::new(), Vec::new());
                joined.push((Purchase { uses, held_with, sizes, unknown, put_up: None, is_known: false }, vec![need]));
            }
        }
    };
    for (one, need) in pattern.yarn.iter().zip(needs(pattern, &yarn)) {
        add(one, None, need.iter().map(|told| told.in_strands(one.strands, terms.strands)).collect());
        for Held(held) in &one.held_with {
            add(held, Some(one), need.iter().map(|told| told.held(one, held, terms.strands)).collect());
        }
    }
    let finish = |(purchase, needs): (Purchase<'a>, Vec<LineNeeds>)| {
        let own = || purchase.uses.first().and_then(|first| yarn(first)).and_then(|yarn| yarn.put_up);
        let put_up = terms.with.filter(|_| purchase.held_with.is_empty()).or_else(own);
        let needed = (0..pattern.size_count()).map(|size| sum(&needs, size));
        let sizes = needed.map(|need| Some(requirement(need?, put_up, terms.margin))).collect();
        let unknown = (0..pattern.size_count())
            .filter(|size| needs.iter().any(|line| line.get(*size) == Some(&Told::Unknown)))
            .collect();
        Purchase {
            sizes,
            unknown,
            put_up,
            is_known: needs.iter().all(|line| line.iter().any(|told| *told != Told::Unknown)),
            ..purchase
        }
    };
    joined.into_iter().map(finish).collect()
}

/// Returns whether two lines of a pattern take the same yarn in the same shade. Without a shade they may be two colours.
fn same_skeins(one: &YarnUse, other: &YarnUse) -> bool {
    let yarn = |line: &YarnUse| line.yarn.as_ref().map(|yarn| yarn.key.clone());
    yarn(one).is_some() && yarn(one) == yarn(other) && one.shade.is_some() && one.shade == other.shade
}

/// Returns what several lines take together in one size; nothing where none uses any or one is not known.
fn sum(needs: &[LineNeeds], size: usize) -> Option<Need> {
    let mut sum: Option<Need> = None;
    for line in needs {
        match (line.get(size)?, sum) {
            (Told::Unknown, _) => return None,
            (Told::NotUsed, _) => {}
            (Told::Takes(need), None) => sum = Some(*need),
            (Told::Takes(need), Some(so_far)) => {
                let length = so_far.length.checked_add(need.length)?;
                sum = Some(Need { length, basis: so_far.basis.max(need.basis) });
            }
        }
    }
    sum
}

fn requirement(Need { length, basis }: Need, put_up: Option<PutUp>, margin: Percent) -> Requirement {
    Requirement {
        length,
        basis,
        mass: put_up.and_then(|put_up| put_up.mass_of(length)),
        skeins: put_up.and_then(|put_up| skeins(length, margin, put_up)),
    }
}

/// Returns what each yarn takes that is held with a line, in the order of the lines; `needs` are those of the lines.
pub fn held_needs(pattern: &Pattern, needs: &[LineNeeds]) -> Vec<LineNeeds> {
    let of_line = |(line, told): (&YarnUse, &LineNeeds)| -> Vec<LineNeeds> {
        let of_one = |Held(held): &Held| told.iter().map(|told| told.held(line, held, None)).collect();
        line.held_with.iter().map(of_one).collect()
    };
    pattern.yarn.iter().zip(needs).flat_map(of_line).collect()
}

/// Returns the length of all yarns to buy for each size of a pattern, those held with a line included; `needs` are those of the
/// lines. Nothing where any part of it is not known.
pub fn total_to_buy(pattern: &Pattern, needs: &[LineNeeds]) -> Vec<Option<YarnLength>> {
    let held = held_needs(pattern, needs);
    if held.is_empty() {
        return total(needs, pattern.size_count());
    }
    total(&[needs, &held].concat(), pattern.size_count())
}

/// Returns the length of all yarns together for each size of a pattern; nothing where any part of it is not known.
pub fn total(needs: &[LineNeeds], sizes: usize) -> Vec<Option<YarnLength>> {
    (0..sizes).map(|size| sum(needs, size).map(|need| need.length)).collect()
}
