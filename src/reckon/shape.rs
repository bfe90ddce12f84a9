//! The area of the shapes that pieces of knitting are, and the stitches of a triangle.

use crate::measure::{Area, FabricLength};

/// π as a fraction: a convergent of its continued fraction, too large by less than 3 × 10⁻¹¹.
const PI: (i64, i64) = (312_689, 99_532);

/// A piece of knitting, laid flat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// A piece with straight sides: a back, a scarf.
    Rectangle {
        /// From side to side.
        width: FabricLength,
        /// From bottom to top.
        height: FabricLength,
    },
    /// A piece that is shaped at both sides: a sleeve. One end may be nothing.
    Trapezium {
        /// The width at the top.
        top: FabricLength,
        /// The width at the bottom.
        bottom: FabricLength,
        /// From bottom to top, square to both; not along the shaped sides.
        height: FabricLength,
    },
    /// A piece in the round that is as wide throughout: a body, a cowl. All of its fabric counts, front and back.
    Tube {
        /// The whole way round.
        girth: FabricLength,
        /// From end to end.
        length: FabricLength,
    },
    /// A triangle by its long edge: a shawl worked from the top down.
    Triangle {
        /// The long edge, from tip to tip.
        edge: FabricLength,
        /// From the middle of the long edge to the point, square to it.
        depth: FabricLength,
    },
    /// A round piece worked from its middle: a doily, a crown laid flat.
    Circle {
        /// From side to side through the middle.
        diameter: FabricLength,
    },
}

impl Shape {
    /// Returns the area, rounded near, once; nothing where a side is below nothing or the area does not fit.
    ///
    /// Width × height; (top + bottom) × height ÷ 2, as Lindy's Knits and Laces works out sleeves; girth × length;
    /// edge × depth ÷ 2; π × diameter² ÷ 4, with π good to 10⁻⁹.
    pub fn area(self) -> Option<Area> {
        match self {
            Self::Rectangle { width, height } => Area::of(width, height),
            Self::Trapezium { top, bottom, height } => {
                if top < FabricLength::ZERO || bottom < FabricLength::ZERO {
                    return None;
                }
                Area::share_of(top.checked_add(bottom)?, height, 1, 2)
            }
            Self::Tube { girth, length } => Area::of(girth, length),
            Self::Triangle { edge, depth } => Area::share_of(edge, depth, 1, 2),
            Self::Circle { diameter } => Area::share_of(diameter, diameter, PI.0, 4 * PI.1),
        }
    }
}

/// Returns the stitches of a triangle in whole stitches: N × (2a + (N − 1) × d) ÷ 2, for `rows` N, the `first` of a
/// stitches and each further one of d `more`, or fewer if d is below nothing. Exact, since one of N and N − 1 is even.
///
/// Where it grows only every second row, count pairs of rows as one: 7, 7, 11, 11, … over N rows is N ÷ 2 pairs, the
/// first of 14 and each further one of 8 more, and comes to N² + 5N, as Madorville published it.
///
/// Nothing where a row would have stitches below nothing, the rows are below nothing, or the sum does not fit.
pub fn triangle_stitches(first: i64, more: i64, rows: i64) -> Option<i64> {
    let (first, more, rows) = (i128::from(first), i128::from(more), i128::from(rows));
    if rows == 0 && first >= 0 {
        return Some(0);
    }
    let last = first + (rows - 1) * more;
    if rows < 0 || first < 0 || last < 0 {
        return None;
    }
    i64::try_from(rows.checked_mul(first + last)? / 2).ok()
}
