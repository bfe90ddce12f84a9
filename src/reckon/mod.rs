//! Pure arithmetic: what to buy, what was used, how far things have come; and the sums of a technical editor, from
//! measurements to stitches and from a swatch to a garment.
//!
//! Functions take and return typed quantities, never bare floats and never texts for show. Nothing here reads a file,
//! a clock or a page.

mod buy;
pub mod chapters;
pub mod chart;
mod check;
pub mod desk;
pub mod ease;
pub mod evidence;
pub mod fit;
pub mod gauge;
mod gift;
pub mod jot;
pub mod multiple;
mod needs;
mod pace;
mod places;
mod progress;
mod said;
pub mod shape;
pub mod shaping;
pub mod spread;
mod strands;
mod this_year;
mod totals;
mod used;

pub use buy::{Purchase, Requirement, Skeins, Terms, purchases, skeins, skeins_beside, total};
pub use buy::{held_needs, total_to_buy};
pub use check::{Blocks, check, check_one, check_studio, code_of_chapter, row_blocks};
pub use needs::{Basis, LineNeeds, Need, Told, area, needs, sample_size};
pub use pace::{part, per_week, used_in_all, whole_length};
pub use places::places;
pub use progress::{Reached, Telling, ToldBy, WHOLE, history, progress, tellings};
pub use said::{Said, last_said};
pub use strands::Strands;
pub use this_year::{Sum, ThisYear, this_year};
pub use totals::{Year, by_year};
pub use used::{Usage, used};
