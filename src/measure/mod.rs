//! Quantities as the trade writes them: lengths, masses, counts, prices and size runs.
//!
//! Nothing here touches a file, a clock or the rest of the crate. Every quantity is a whole number of
//! a small unit, so that sums are exact; rounding happens only in [`rounding`], by name, and when a
//! written decimal is finer than the unit (then to the nearest unit, halves away from zero).
//! A text that cannot be read with certainty is a [`Misread`] that says where and what to write
//! instead; it is never guessed at.

mod advice;
mod amount;
mod area;
mod brackets;
mod commas;
mod count;
mod fabric_length;
mod grist;
mod in_text;
mod mass;
mod misread;
mod needle;
mod no_brackets;
mod number;
mod ordinal;
mod percent;
mod price;
mod problem;
mod put_up;
pub mod rounding;
pub mod run;
mod scale;
mod shape;
mod size_names;
mod size_run;
mod system;
mod value;
mod words;
pub mod yaml_pieces;
mod yarn_length;

pub use amount::Amount;
pub use area::Area;
pub use brackets::numbers_in_brackets;
pub use count::Count;
pub use fabric_length::FabricLength;
pub use grist::Grist;
pub use in_text::{RunInText, runs_in, runs_in_prose};
pub use mass::Mass;
pub use misread::{Misread, Problem};
pub use needle::{Needle, NeedleSize};
pub use ordinal::{ordinal_ending, without_ordinals};
pub use percent::Percent;
pub use price::Price;
pub use put_up::PutUp;
pub use run::{OtherRun, Run, read_run};
pub use shape::{Bracket, RunStyle};
pub use size_names::SizeNames;
pub use size_run::SizeRun;
pub use system::{Inch, System};
pub use value::{Unit, UnitSize, Value};
pub use yarn_length::YarnLength;
