//! From measurements to stitches and rows, and back.

use super::multiple::{Multiple, Neighbours};
use crate::entry::Gauge;
use crate::measure::rounding::divide_near;
use crate::measure::{Count, FabricLength};

/// How far two statements of one gauge may be apart over 10 cm: half a stitch, in thousandths. Gauges are printed to
/// the whole or half stitch, and a printed 4 in is 10 cm or 10.16 cm.
const HALF_A_STITCH: i128 = 500;

/// So many stitches, or rows, over a stretch of fabric: one direction of a gauge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PerLength {
    /// The stitches across the stretch, or the rows up it.
    pub count: Count,
    /// How long the stretch is.
    pub over: FabricLength,
}

impl PerLength {
    /// The stitches of a gauge.
    pub fn stitches(gauge: &Gauge) -> Self {
        Self { count: gauge.stitches, over: gauge.stretch() }
    }

    /// The rows of a gauge, if it has any.
    pub fn rows(gauge: &Gauge) -> Option<Self> {
        gauge.rows.map(|count| Self { count, over: gauge.stretch() })
    }

    /// Returns the stitches, or rows, of a measurement: measurement × gauge, rounded near to thousandths.
    ///
    /// 36 in at 5 to the inch are 180 (Pink Brutus Knits); 8 in at 6 rows are 48 (Olive Knits). Nothing where the
    /// gauge or the measurement is nothing or below, or the number does not fit.
    pub fn count_for(self, measure: FabricLength) -> Option<Count> {
        let (above, below) = self.exactly(measure)?;
        i64::try_from(divide_near(above, below)?).ok().map(Count::from_thousandths)
    }

    /// Returns the whole counts that fit a multiple on either side of a measurement × gauge.
    ///
    /// The product is not rounded before: 36 in at 5 to the inch with a repeat of 7 lie between 175 and 182. Nothing as
    /// for [`Self::count_for`], and where no count fits the multiple.
    pub fn whole_for(self, measure: FabricLength, multiple: Multiple) -> Option<Neighbours> {
        let (above, below) = self.exactly(measure)?;
        multiple.around_fraction(above, below.checked_mul(1000)?)
    }

    /// Returns the width of so many stitches, or the length of so many rows: count ÷ gauge, rounded near to nanometres.
    ///
    /// Nothing where the gauge is nothing or below, or the length does not fit.
    pub fn length_of(self, count: Count) -> Option<FabricLength> {
        if !self.is_gauge() {
            return None;
        }
        self.over.times_near(count.thousandths(), self.count.thousandths())
    }

    /// Returns how long a finished measurement becomes in a fabric `made` at another gauge than this one, which was
    /// wanted: measurement × wanted ÷ made, rounded near to nanometres. The stitches stay as they are.
    ///
    /// Made at 21 stitches where 22 are wanted, 105 cm become 110 cm. Nothing where a gauge is nothing or below, or the
    /// length does not fit.
    pub fn finished_at(self, made: Self, measure: FabricLength) -> Option<FabricLength> {
        if !self.is_gauge() || !made.is_gauge() {
            return None;
        }
        let product = |one: Count, over: FabricLength| i128::from(one.thousandths()) * i128::from(over.nanometres());
        let above = product(self.count, made.over).checked_mul(i128::from(measure.nanometres()))?;
        let nanometres = divide_near(above, product(made.count, self.over))?;
        i64::try_from(nanometres).ok().map(FabricLength::from_nanometres)
    }

    /// Returns whether two statements are of one gauge: no more than half a stitch apart over 10 cm, as print rounds.
    ///
    /// 22 over 10 cm, 22 over 4 in and 5½ over 1 in agree. Nothing where a gauge is nothing or below, or beyond all
    /// measure.
    pub fn same(self, other: Self) -> Option<bool> {
        if !self.is_gauge() || !other.is_gauge() {
            return None;
        }
        let product = |one: Count, over: FabricLength| i128::from(one.thousandths()) * i128::from(over.nanometres());
        let apart = product(self.count, other.over).abs_diff(product(other.count, self.over));
        let apart = i128::try_from(apart).ok()?.checked_mul(FabricLength::TEN_CENTIMETRES.nanometres().into())?;
        let overs = i128::from(self.over.nanometres()) * i128::from(other.over.nanometres());
        Some(apart <= overs.checked_mul(HALF_A_STITCH)?)
    }

    /// Returns a measurement × gauge as a fraction, in thousandths of a stitch.
    fn exactly(self, measure: FabricLength) -> Option<(i128, i128)> {
        if !self.is_gauge() || measure <= FabricLength::ZERO {
            return None;
        }
        let above = i128::from(self.count.thousandths()) * i128::from(measure.nanometres());
        Some((above, self.over.nanometres().into()))
    }

    fn is_gauge(self) -> bool {
        self.count > Count::ZERO && self.over > FabricLength::ZERO
    }
}
