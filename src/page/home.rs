//! The home page.

use super::view::{Head, Line, NoteItem, PatternItem, ProjectItem};
use super::{Item, Shown, lists, test_knit};
use schemars::JsonSchema;
use serde::Serialize;

/// How many of the newest designs the home page shows.
const DESIGNS: usize = 6;

/// How many things on the needles the home page shows.
const ON_THE_NEEDLES: usize = 4;

/// What `home.html` sees.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct HomeContext {
    /// The page's head.
    pub head: Head,
    /// The latest note.
    pub note: Option<Item<NoteItem>>,
    /// The notes before it, at most three.
    pub earlier: Vec<Item<NoteItem>>,
    /// The newest designs, at most six.
    pub patterns: Vec<Item<PatternItem>>,
    /// What is on the needles, at most four.
    pub projects: Vec<Item<ProjectItem>>,
    /// The open calls for test knitters, the one that closes first above.
    pub calls: Vec<Line>,
}

/// Returns the context of the home page; `notes` are all notes, the latest first.
pub fn context(shown: &Shown<'_>) -> HomeContext {
    let mut notes = shown.latest_notes().iter().map(|(entry, note)| shown.note_item(entry, note));
    let studio = &shown.catalogue.studio;
    let newest = lists::newest_patterns(shown);
    let picture = newest.iter().find_map(|(entry, _)| shown.picture(entry));
    let mut projects = lists::on_the_needles(shown);
    projects.truncate(ON_THE_NEEDLES);
    HomeContext {
        head: shown.head(
            &studio.title,
            studio.summary.as_deref().unwrap_or_default(),
            "",
            "",
            "website",
            picture.as_ref(),
        ),
        note: notes.next(),
        earlier: notes.take(3).collect(),
        patterns: newest.into_iter().take(DESIGNS).map(|(entry, pattern)| shown.pattern_item(entry, pattern)).collect(),
        projects,
        calls: test_knit::open_calls(shown),
    }
}
