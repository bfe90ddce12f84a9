//! How far a yarn may be carried behind the others.

use super::quantity::{FABRIC_UNITS, FIGURE};
use crate::entry::field::{Field, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};
use crate::measure::FabricLength;

/// The longest float that a studio lets stand: a length of fabric, or a number of stitches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carry {
    /// A length, whatever the gauge.
    Length(FabricLength),
    /// So many stitches.
    Stitches(u32),
}

impl Carry {
    /// 2.5 cm, an inch: beyond it a finger catches in the strand (common practice).
    pub const USUAL: Self = Self::Length(FabricLength::from_nanometres(25_000_000));
}

impl Field for Carry {
    const WHAT: &'static str = "a length like `2.5 cm`, or a number of stitches";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let Some(text) = node.value.scalar() else {
            wrong_type(node, Self::WHAT, notes);
            return None;
        };
        if let Ok(stitches) = text.trim().parse() {
            return Some(Self::Stitches(stitches));
        }
        FabricLength::read(node, notes).map(Self::Length)
    }

    fn schema(_: &mut Definitions) -> Schema {
        let pattern = format!("^\\s*\\+?[0-9]+\\s*$|{FIGURE}[\\s\\S]*[{FABRIC_UNITS}]");
        let carry = Schema::of(&["integer", "string"], "2.5 cm").with("minimum", 0).with("maximum", u32::MAX);
        carry.pattern(&pattern, Self::WHAT)
    }
}
