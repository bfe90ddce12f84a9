//! How long a yarn is for its mass.

use super::rounding;
use super::{Mass, Percent, PutUp, YarnLength};

/// A million metres, in micrometres.
const MILLION_METRES: i128 = 1_000_000_000_000;

/// Length per mass: how fine a yarn is, however it is put up.
///
/// Kept upside down, as the mass of a million metres in whole nanograms, because strands held together add their
/// masses for the same length: a sum of strands is then a plain sum and exact, and only the way in and the way out
/// round. A yarn of 30,000 m to 100 g is still right to one part in 10¹²; the heaviest that fits is 9 kg to the
/// metre. It is never nothing. For one yarn alone [`PutUp::length_of`] rounds once instead of twice.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Grist(i64);

impl Grist {
    /// The grist of a yarn as it is sold: length ÷ mass.
    ///
    /// `None` where a part is nothing or below, or the yarn is too heavy or too fine to keep.
    #[must_use]
    pub fn of(put_up: PutUp) -> Option<Self> {
        if put_up.length <= YarnLength::ZERO || put_up.mass <= Mass::ZERO {
            return None;
        }
        let heavy = i128::from(put_up.mass.nanograms()).checked_mul(MILLION_METRES)?;
        Self::kept(rounding::divide_near(heavy, put_up.length.micrometres().into())?)
    }

    /// The grist of several strands held together: 1 ÷ G = Σ 1 ÷ Gᵢ.
    ///
    /// Grams per metre are added: 400 m and 200 m to 100 g together are 133.3 m to 100 g. Exact for the grists given.
    /// `None` for no strand at all and where the sum does not fit. Method: LBHandknits, unlike yarns held together.
    #[must_use]
    pub fn together(strands: impl IntoIterator<Item = Self>) -> Option<Self> {
        Self::kept(strands.into_iter().map(|strand| i128::from(strand.0)).sum())
    }

    /// The grist of so many strands of this yarn held together: G ÷ n, exact.
    ///
    /// 400 m to 100 g doubled is 200 m to 100 g (Susanna Winter). `None` for no strand and where it does not fit.
    #[must_use]
    pub fn held(self, strands: u32) -> Option<Self> {
        Self::kept(i128::from(self.0) * i128::from(strands))
    }

    /// The length in 100 g, rounded near; `None` where it does not fit.
    #[must_use]
    pub fn per_100_g(self) -> Option<YarnLength> {
        self.length_of(Mass::from_grams(100)?)
    }

    /// The length of so much yarn, rounded near; `None` where it does not fit.
    #[must_use]
    pub fn length_of(self, mass: Mass) -> Option<YarnLength> {
        let long = i128::from(mass.nanograms()).checked_mul(MILLION_METRES)?;
        let micrometres = rounding::divide_near(long, self.0.into())?;
        i64::try_from(micrometres).ok().map(YarnLength::from_micrometres)
    }

    /// The mass of so long a yarn, rounded near; `None` where it does not fit.
    #[must_use]
    pub fn mass_of(self, length: YarnLength) -> Option<Mass> {
        let heavy = i128::from(length.micrometres()) * i128::from(self.0);
        let nanograms = rounding::divide_near(heavy, MILLION_METRES)?;
        i64::try_from(nanograms).ok().map(Mass::from_nanograms)
    }

    /// How far another yarn's length per mass is from this one's: G(other) ÷ G(self) − 1, rounded near.
    ///
    /// Above nothing where the other is finer, with more length in the same mass. `None` where it does not fit.
    #[must_use]
    pub fn apart(self, other: Self) -> Option<Percent> {
        let finer = i128::from(self.0) - i128::from(other.0);
        let hundredths = rounding::divide_near(finer * 10_000, other.0.into())?;
        i64::try_from(hundredths).ok().map(Percent::from_hundredths)
    }

    fn kept(nanograms: i128) -> Option<Self> {
        i64::try_from(nanograms).ok().filter(|nanograms| *nanograms > 0).map(Self)
    }
}
