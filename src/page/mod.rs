//! What a template may see, one file a page kind.
//!
//! These are the only types that are serialised for templates. They are plain: texts, numbers, lists; every quantity is
//! already worded in both systems, and everything private or not public is already gone. Nothing here makes HTML.
//! Only [`desk`], which no theme and no site ever sees, shows what is private.
//! The reference page of a theme is generated from the documentation of these types.

mod address;
mod block;
mod body_parts;
mod build;
mod buy;
mod cautions;
pub mod chart;
pub mod desk;
pub mod disclosure;
mod events;
mod fit;
mod held;
mod home;
mod item;
mod json_ld;
mod lists;
mod note;
mod other_yarns;
mod pattern;
mod person;
mod plain;
mod progress;
mod project;
mod rows;
mod shown;
mod test_knit;
mod testers;
mod view;
mod words;
mod yarn;

pub use address::{Addresses, page_path};
pub use block::{BlockContext, context as block_context};
pub use build::{Context, Page, site};
pub use chart::{ChartView, chart_view, swatch_stitches};
pub use events::{Event, events};
pub use home::HomeContext;
pub use item::Item;
pub use lists::{
    FinishedContext, JournalContext, NeedlesContext, OnTheWayContext, PatternsContext, PeopleContext,
    TechniquesContext, YarnsContext,
};
pub use note::{Cue, NoteContext, chapters_path, credit, cues};
pub use pattern::{PatternContext, basis_in_words};
pub use person::PersonContext;
pub use plain::{MissingContext, PlainContext};
pub use progress::{ProgressPoint, ProgressView, ThisYear};
pub use project::ProjectContext;
pub use rows::{
    AbbreviationView, CountedRows, LineCount, RowLine, RowView, RowsContext, RowsPart, RowsView, Use, rows_view,
};
pub use shown::{PictureSizes, Shown};
pub use test_knit::{TestKnitContext, open_path as open_call_path, path as call_path};
pub use view::*;
pub use words::{length_apart, list as list_in_words, sentence, with_colour};
pub use yarn::YarnContext;
