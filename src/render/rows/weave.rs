//! Puts elements into a text without changing it.

use pulldown_cmark_escape::escape_html;
use std::ops::Range;

/// An element that is to stand round a stretch of a text.
#[derive(Clone, Debug)]
pub struct Element {
    /// The bytes it stands round.
    pub at: Range<usize>,
    /// Its start tag.
    pub open: String,
    /// Its end tag, and what stands before it.
    pub close: String,
}

impl Element {
    /// Returns a `span` of a class.
    pub fn span(at: Range<usize>, class: &str) -> Self {
        Self { at, open: format!("<span class=\"{class}\">"), close: "</span>".to_owned() }
    }
}

/// Returns a text as HTML with elements in it, one that holds others given first where both are of the same stretch.
///
/// One that would end beyond the element it begins in ends with that.
pub fn weave(text: &str, mut elements: Vec<Element>) -> String {
    elements.sort_by_key(|element| (element.at.start, std::cmp::Reverse(element.at.end)));
    let mut out = String::with_capacity(text.len() * 4);
    let mut open: Vec<(usize, String)> = Vec::new();
    let mut done = 0;
    for Element { at, open: start, close } in elements {
        while let Some((end, close)) = open.pop_if(|(end, _)| *end <= at.start) {
            words(&mut out, text, &mut done, end);
            out.push_str(&close);
        }
        words(&mut out, text, &mut done, at.start);
        out.push_str(&start);
        let end = open.last().map_or(at.end, |(end, _)| at.end.min(*end));
        open.push((end, close));
    }
    while let Some((end, close)) = open.pop() {
        words(&mut out, text, &mut done, end);
        out.push_str(&close);
    }
    words(&mut out, text, &mut done, text.len());
    out
}

/// Writes the text up to a byte.
fn words(out: &mut String, text: &str, done: &mut usize, to: usize) {
    // Writing to a text cannot fail.
    let _ = escape_html(&mut *out, text.get(*done..to).unwrap_or_default());
    *done = to.max(*done);
}
