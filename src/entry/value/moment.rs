//! How an address leads to a moment of a video.

use super::{VideoTime, Web};
use crate::entry::field::{Field, WRONG_TYPE, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes};

/// Where the seconds go.
const SECONDS: &str = "{seconds}";

/// What is put behind a video's address, with `{seconds}` where the moment goes: `?t={seconds}`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Moment(String);

impl Default for Moment {
    /// Returns the standard way: a temporal fragment of W3C's Media Fragments URI 1.0, section 4.2.1, `#t=760`.
    fn default() -> Self {
        Self(format!("#t={SECONDS}"))
    }
}

impl Moment {
    /// Returns the way, or nothing if the text does not begin with `?`, `&` or `#`, does not hold `{seconds}` once, or
    /// holds what no address may.
    pub fn parse(text: &str) -> Option<Self> {
        let begins = text.starts_with(['?', '&', '#']);
        let (before, after) = text.split_once(SECONDS)?;
        let rest = before.get(1..)?;
        let clean = !rest.contains(['?', '#']) && !after.contains(['?', '#', '{']);
        (begins && clean && Web::parse(&format!("https://host/{rest}0{after}")).is_some())
            .then(|| Self(text.to_owned()))
    }

    /// Returns the address of a moment of a video; what the video's own address has behind `?` and `#` is kept.
    pub fn of(&self, video: &str, time: VideoTime) -> String {
        let told = self.0.replace(SECONDS, &time.seconds.to_string());
        let rest = told.get(1..).unwrap_or_default();
        let (page, fragment) = video.split_once('#').map_or((video, None), |(page, fragment)| (page, Some(fragment)));
        if told.starts_with('#') {
            return match fragment {
                Some(fragment) => format!("{page}#{fragment}&{rest}"),
                None => format!("{page}#{rest}"),
            };
        }
        let sign = if page.contains('?') { '&' } else { '?' };
        let fragment = fragment.map(|fragment| format!("#{fragment}")).unwrap_or_default();
        format!("{page}{sign}{rest}{fragment}")
    }
}

impl Field for Moment {
    const WHAT: &'static str = "what follows a video's address, like `\"?t={seconds}\"`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let Some(text) = node.value.scalar() else {
            wrong_type(node, Self::WHAT, notes);
            return None;
        };
        let moment = Self::parse(text);
        if moment.is_none() {
            let help = "begin it with `?`, `&` or `#`, put `{seconds}` once where the moment goes, and all in quotes";
            let message = format!("`{text}` does not lead to a moment of a video");
            notes.value(&WRONG_TYPE, node, message, Some(help.to_owned()));
        }
        moment
    }

    fn schema(_: &mut Definitions) -> Schema {
        let way = "^[?&#][^?# \"<>\\\\^`|]*\\{seconds\\}[^?# \"<>\\\\^`|]*$";
        Schema::of(&["string"], "'?t={seconds}'").pattern(way, Self::WHAT)
    }
}
