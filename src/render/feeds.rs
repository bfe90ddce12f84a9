//! The feeds of notes: Atom (RFC 4287) and JSON Feed 1.1.

use super::theme::Engine;
use super::{body, stories};
use crate::entry::value::Date;
use crate::entry::{Entry, Note};
use crate::page::{Shown, credit, page_path};
use atom_syndication::{Content, Entry as AtomEntry, Feed, FixedDateTime, Link, Person, Text};
use pulldown_cmark_escape::escape_html;
use serde_json::{Map, Value, json};

/// How many of the latest notes a feed holds.
const NOTES: usize = 20;

/// Where the Atom feed is.
pub const ATOM: &str = "feed.xml";
/// Where the JSON feed is.
pub const JSON: &str = "feed.json";

/// Returns the notes that feeds hold, the latest first.
fn latest<'s, 'a>(shown: &'s Shown<'a>) -> &'s [(&'a Entry, &'a Note)] {
    let notes = shown.latest_notes();
    notes.get(..NOTES).unwrap_or(notes)
}

/// Returns a note's text with whole addresses, and what others wrote for it. A block that fails is told of where the note's
/// own page is made.
fn text(shown: &Shown<'_>, engine: &Engine, entry: &Entry, note: &Note) -> String {
    let mut text = body(shown, engine, entry, true).unwrap_or_default();
    for (html, story) in stories(shown, engine, entry, true).into_iter().zip(&note.story) {
        text.push_str(&format!("<blockquote>\n{html}</blockquote>\n<p>"));
        // Writing to a text cannot fail.
        let _ = escape_html(&mut text, &credit(story));
        text.push_str("</p>\n");
    }
    text
}

fn moment(date: Option<Date>) -> FixedDateTime {
    // A note without a day is never public; the fallback only keeps the type simple.
    date.and_then(|date| date.moment().parse().ok()).unwrap_or_default()
}

/// Returns the Atom feed.
pub fn atom(shown: &Shown<'_>, engine: &Engine) -> String {
    let notes = latest(shown);
    let studio = &shown.catalogue.studio;
    let home = shown.addresses.whole("");
    let link = |rel: &str, href: String, media: &str| Link {
        rel: rel.to_owned(),
        href,
        mime_type: Some(media.to_owned()),
        ..Link::default()
    };
    let entries = notes
        .iter()
        .map(|(entry, note)| {
            let address = shown.addresses.whole(&page_path(&entry.id));
            let summary = shown.summary(entry);
            AtomEntry {
                title: Text::plain(entry.common.title.clone()),
                id: address.clone(),
                updated: moment(note.date),
                published: Some(moment(note.date)),
                links: vec![link("alternate", address, "text/html")],
                summary: (!summary.is_empty()).then(|| Text::plain(summary)),
                content: Some(Content {
                    content_type: Some("html".to_owned()),
                    value: Some(text(shown, engine, entry, note)),
                    ..Content::default()
                }),
                ..AtomEntry::default()
            }
        })
        .collect();
    let newest = notes.first().and_then(|(_, note)| note.date).or(Some(shown.catalogue.view.today));
    let feed = Feed {
        title: Text::plain(studio.title.clone()),
        subtitle: studio.summary.clone().map(Text::plain),
        id: home.clone(),
        updated: moment(newest),
        authors: vec![Person {
            name: studio.designer.clone().unwrap_or_else(|| studio.title.clone()),
            ..Person::default()
        }],
        links: vec![
            link("self", shown.addresses.whole(ATOM), "application/atom+xml"),
            link("alternate", home, "text/html"),
        ],
        lang: Some(studio.language().to_owned()),
        entries,
        ..Feed::default()
    };
    feed.to_string()
}

/// Returns the JSON feed.
pub fn json(shown: &Shown<'_>, engine: &Engine) -> String {
    let notes = latest(shown);
    let studio = &shown.catalogue.studio;
    let items: Vec<Value> = notes
        .iter()
        .map(|(entry, note)| {
            let address = shown.addresses.whole(&page_path(&entry.id));
            let mut item = Map::new();
            item.insert("id".to_owned(), json!(address));
            item.insert("url".to_owned(), json!(address));
            item.insert("title".to_owned(), json!(entry.common.title));
            item.insert("content_html".to_owned(), json!(text(shown, engine, entry, note)));
            let summary = shown.summary(entry);
            if !summary.is_empty() {
                item.insert("summary".to_owned(), json!(summary));
            }
            if let Some(date) = note.date {
                item.insert("date_published".to_owned(), json!(date.moment()));
            }
            if let Some(picture) = shown.picture(entry) {
                item.insert("image".to_owned(), json!(shown.whole_url(&picture.src)));
            }
            Value::Object(item)
        })
        .collect();
    let mut feed = Map::new();
    feed.insert("version".to_owned(), json!("https://jsonfeed.org/version/1.1"));
    feed.insert("title".to_owned(), json!(studio.title));
    if let Some(summary) = &studio.summary {
        feed.insert("description".to_owned(), json!(summary));
    }
    feed.insert("home_page_url".to_owned(), json!(shown.addresses.whole("")));
    feed.insert("feed_url".to_owned(), json!(shown.addresses.whole(JSON)));
    feed.insert("language".to_owned(), json!(studio.language()));
    if let Some(designer) = &studio.designer {
        feed.insert("authors".to_owned(), json!([{ "name": designer }]));
    }
    feed.insert("items".to_owned(), Value::Array(items));
    pretty(&Value::Object(feed))
}

/// Returns JSON over several lines, ending in a newline.
pub fn pretty(value: &Value) -> String {
    format!("{value:#}\n")
}
