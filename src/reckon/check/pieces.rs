//! Every side of a piece must be known.

use super::place;
use crate::entry::value::PieceShape;
use crate::entry::{Data, Dimension, Entry, Piece, Placing};
use crate::finding::{Code, Finding, Severity, nearest};

/// A side of a piece that is not there.
pub static PIECES_UNKNOWN: Code = Code {
    name: "pieces-unknown",
    severity: Severity::Warning,
    what: "A side of a piece names a finished measurement that there is not, or a side its shape needs is missing.",
    why: "The fabric of the piece is not known, so no size can be worked out from another.",
    bad: "finished: { chest: 90 (100) cm }\npieces: { shape: tube, girth: bust, length: 40 cm }",
    good: "finished: { chest: 90 (100) cm }\npieces: { shape: tube, girth: chest, length: 40 cm }",
};

/// Finds the sides of a pattern's pieces that are missing or name nothing.
pub fn check(entry: &Entry, placing: &Placing<'_>, findings: &mut Vec<Finding>) {
    let Data::Pattern(pattern) = &entry.data else { return };
    for (at, piece) in pattern.pieces.iter().enumerate() {
        for (name, side) in sides(piece) {
            match side {
                None => {
                    let place = entry.origin.value(&place::item("pieces", at, &[]), placing);
                    let message = format!("piece {} has no `{name}`", at + 1);
                    findings.push(
                        Finding::new(&PIECES_UNKNOWN, place, message)
                            .help(format!("add `{name}:`, a finished measurement's name or a measurement")),
                    );
                }
                Some(Dimension::Finished(of)) if pattern.finished.get(of).is_none() => {
                    let place = entry.origin.value(&place::item("pieces", at, &[name]), placing);
                    let near = nearest(of, pattern.finished.0.iter().map(|(name, _)| name.as_str()));
                    let help = match near {
                        Some(near) => format!("did you mean `{near}`?"),
                        None => format!("add `{of}` under `finished`"),
                    };
                    let message = format!("there is no finished `{of}`");
                    findings.push(Finding::new(&PIECES_UNKNOWN, place, message).help(help));
                }
                Some(_) => {}
            }
        }
    }
}

/// Returns the sides that a piece's shape needs.
fn sides(piece: &Piece) -> Vec<(&'static str, Option<&Dimension>)> {
    let length = ("length", piece.length.as_ref());
    match piece.shape {
        PieceShape::Rectangle => vec![("width", piece.width.as_ref()), length],
        PieceShape::Trapezium => vec![("top", piece.top.as_ref()), ("bottom", piece.bottom.as_ref()), length],
        PieceShape::Tube => vec![("girth", piece.girth.as_ref()), length],
        PieceShape::Triangle => vec![("edge", piece.edge.as_ref()), length],
        PieceShape::Circle => vec![("diameter", piece.diameter.as_ref())],
    }
}
