//! What single values of front matter are: texts, dates, colours, references and quantities.

mod basic;
mod carry;
mod choice;
mod colour;
mod date;
mod moment;
mod private;
mod quantity;
mod quotation;
mod reference;
mod run;
mod time;
mod web;

pub use basic::Map;
pub use carry::Carry;
pub use choice::{AfterBindingOff, Choice, Counted, Covers, Fabric, Face, How, PieceShape, Stage, Verdict, Wearer};
pub use colour::Colour;
pub use date::Date;
pub use moment::Moment;
pub use private::Private;
pub use quantity::{BAD_QUANTITY, Margin, WEIGHT_UNKNOWN, Weight};
pub use quotation::Quotation;
pub use reference::{AnyRef, BAD_REFERENCE, Ref, Words};
pub use run::{RUN_TAKEN_APART, broken_run};
pub use time::VideoTime;
pub use web::{SiteAddress, Web};

/// The kinds a reference can be wanted of, as types.
pub mod to {
    pub use super::reference::{Pattern, Person, Project, Technique, Yarn};
}
