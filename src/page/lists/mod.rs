//! The pages that list entries, and lists on other pages.

mod designs;
mod journal;
mod mentions;
mod others;
mod patterns;
mod projects;
mod yarns;

pub use designs::{OnTheWayContext, on_the_way};
pub use journal::{JournalContext, journal};
pub use mentions::mentions;
pub use others::{PeopleContext, TechniquesContext, people, techniques};
pub use patterns::{PatternsContext, newest_patterns, pattern_item, patterns, patterns_that_take};
pub use projects::{FinishedContext, NeedlesContext, finished, needles, on_the_needles};
pub use yarns::{YarnsContext, yarns};

use super::view::{Group, Line};
use crate::entry::{Kind, slug};

/// Returns the plural of a kind, as a heading.
pub fn kind_title(kind: Kind) -> &'static str {
    match kind {
        Kind::Pattern => "Patterns",
        Kind::Project => "Projects",
        Kind::Note => "Notes",
        Kind::Yarn => "Yarns",
        Kind::Technique => "Techniques",
        Kind::Person => "People and places",
        Kind::Page => "Pages",
    }
}

fn group(prefix: &str, title: String, lines: Vec<Line>) -> Group {
    let id = format!("{prefix}-{}", slug(&title));
    Group { title, id, lines }
}
