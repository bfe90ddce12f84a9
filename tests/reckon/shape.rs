//! Areas of pieces and stitches of triangles.

use super::{fabric, square_inches};
use ballband::measure::{Area, FabricLength};
use ballband::reckon::shape::{Shape, triangle_stitches};
use proptest::prelude::*;

#[test]
fn straight_pieces() {
    // Lindy's Knits and Laces: a back of 20 × 28 in, a sleeve from 8 to 15 in over 18 in.
    let back = Shape::Rectangle { width: fabric("20 in"), height: fabric("28 in") };
    assert_eq!(back.area(), Some(square_inches(560)));
    let sleeve = Shape::Trapezium { top: fabric("15 in"), bottom: fabric("8 in"), height: fabric("18 in") };
    assert_eq!(sleeve.area(), Some(square_inches(207)));
    // Kephren Knitting Studio: 2 in more on a body of 40 in.
    let more = Shape::Tube { girth: fabric("40 in"), length: fabric("2 in") };
    assert_eq!(more.area(), Some(square_inches(80)));
    let shawl = Shape::Triangle { edge: fabric("60 in"), depth: fabric("30 in") };
    assert_eq!(shawl.area(), Some(square_inches(900)));
    let pointed = Shape::Trapezium { top: fabric("60 in"), bottom: fabric("0 in"), height: fabric("30 in") };
    assert_eq!(pointed.area(), shawl.area());
}

/// A circle of 2 m has π m²: 3.14159265358979 × 10¹² µm², right to 10⁻⁹.
#[test]
fn a_circle() {
    let area = Shape::Circle { diameter: fabric("2 m") }.area().unwrap().square_micrometres();
    assert!((area - 3_141_592_653_590).abs() < 1000, "{area}");
    assert!(area > 3_141_592_653_590, "the fraction is too large, as its comment says");
}

#[test]
fn what_is_no_piece_has_no_area() {
    let (no, one) = (fabric("-1 cm"), fabric("1 cm"));
    let most = FabricLength::from_nanometres(i64::MAX);
    for shape in [
        Shape::Rectangle { width: no, height: no },
        Shape::Trapezium { top: no, bottom: fabric("2 cm"), height: one },
        Shape::Trapezium { top: most, bottom: most, height: one },
        Shape::Tube { girth: most, length: most },
        Shape::Triangle { edge: one, depth: no },
        Shape::Circle { diameter: no },
        Shape::Circle { diameter: most },
    ] {
        assert_eq!(shape.area(), None, "{shape:?}");
    }
    assert_eq!(Shape::Circle { diameter: FabricLength::ZERO }.area(), Some(Area::ZERO));
}

#[test]
fn stitches_of_triangles() {
    // Madorville: 7, 7, 11, 11, … over N rows is N² + 5N.
    for rows in (2..200).step_by(2) {
        assert_eq!(triangle_stitches(14, 8, rows / 2), Some(rows * rows + 5 * rows), "{rows}");
    }
    // Cromulent Knitter: 8, 8, 16, 16, … to 64, 64 is 576.
    assert_eq!(triangle_stitches(16, 16, 8), Some(576));
    assert_eq!(triangle_stitches(5, 4, 0), Some(0));
    assert_eq!(triangle_stitches(3, -1, 4), Some(6));
    assert_eq!(triangle_stitches(3, -1, 5), None);
    assert_eq!(triangle_stitches(-1, 2, 3), None);
    assert_eq!(triangle_stitches(1, 2, -1), None);
    assert_eq!(triangle_stitches(i64::MAX, 0, 2), None);
    assert_eq!(triangle_stitches(i64::MAX, i64::MAX, i64::MAX), None);
}

proptest! {
    #[test]
    fn a_triangle_is_the_sum_of_its_rows(first in 0..500_i64, more in 0..20_i64, rows in 0..500_i64) {
        let sum: i64 = (0..rows).map(|row| first + row * more).sum();
        prop_assert_eq!(triangle_stitches(first, more, rows), Some(sum));
    }
}
