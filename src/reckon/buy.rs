//! Yarn to buy: whole skeins from needs and put-up.

use crate::entry::{Pattern, Yarn, YarnUse};
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
    let (numerator, denominator) = margin.on_top()?;
    let wanted = i128::from(needs.micrometres()).checked_mul(i128::from(numerator))?;
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
    /// The same as mass, where the put-up is known.
    pub mass: Option<Mass>,
    /// The skeins to buy, margin included, where the put-up is known.
    pub skeins: Option<Skeins>,
}

/// What is bought as one: a yarn of a pattern in one shade, whatever it is used for.
#[derive(Clone, Debug)]
pub struct Purchase<'a> {
    /// The lines of the pattern that take it.
    pub uses: Vec<&'a YarnUse>,
    /// What it takes for each size; nothing for a size that does not use it, or where any of it is not known.
    pub sizes: Vec<Option<Requirement>>,
}

impl Purchase<'_> {
    /// Returns whether the pattern says how much it takes.
    pub fn is_known(&self) -> bool {
        self.uses.iter().all(|one| one.needs.is_some())
    }
}

/// Returns what a pattern has one buy, in the order of its lines. Lines of the same yarn and shade are one purchase: their
/// lengths are added before whole skeins are counted. A yarn that `yarn` does not give has no put-up.
pub fn purchases<'a, 'y>(
    pattern: &'a Pattern,
    margin: Percent,
    yarn: impl Fn(&'a YarnUse) -> Option<&'y Yarn>,
) -> Vec<Purchase<'a>> {
    let mut purchases: Vec<Purchase<'a>> = Vec::new();
    for one in &pattern.yarn {
        match purchases.iter_mut().find(|purchase| purchase.uses.first().is_some_and(|first| same_skeins(first, one))) {
            Some(purchase) => purchase.uses.push(one),
            None => purchases.push(Purchase { uses: vec![one], sizes: Vec::new() }),
        }
    }
    for purchase in &mut purchases {
        let put_up = purchase.uses.first().and_then(|first| yarn(first)).and_then(|yarn| yarn.put_up);
        let lengths = (0..pattern.size_count()).map(|size| sum(&purchase.uses, size));
        purchase.sizes = lengths.map(|length| Some(requirement(length?, put_up, margin))).collect();
    }
    purchases
}

/// Returns whether two lines of a pattern take the same yarn in the same shade. Without a shade they may be two colours.
fn same_skeins(one: &YarnUse, other: &YarnUse) -> bool {
    let yarn = |line: &YarnUse| line.yarn.as_ref().map(|yarn| yarn.key.clone());
    yarn(one).is_some() && yarn(one) == yarn(other) && one.shade.is_some() && one.shade == other.shade
}

/// Returns the length that several lines take together in one size; nothing where none uses any or one is not known.
fn sum(uses: &[&YarnUse], size: usize) -> Option<YarnLength> {
    if uses.is_empty() || uses.iter().any(|one| one.needs.is_none()) {
        return None;
    }
    let mut lengths = uses.iter().filter_map(|one| one.needs.as_ref()?.values.get(size)).copied();
    let first = lengths.next()?;
    lengths.try_fold(first, |sum, length| sum.checked_add(length))
}

fn requirement(length: YarnLength, put_up: Option<PutUp>, margin: Percent) -> Requirement {
    Requirement {
        length,
        mass: put_up.and_then(|put_up| put_up.mass_of(length)),
        skeins: put_up.and_then(|put_up| skeins(length, margin, put_up)),
    }
}

/// Returns the length of all yarns together for each size of a pattern; nothing where any part of it is not known.
pub fn total(pattern: &Pattern) -> Vec<Option<YarnLength>> {
    let uses: Vec<&YarnUse> = pattern.yarn.iter().collect();
    (0..pattern.size_count()).map(|size| sum(&uses, size)).collect()
}
