//! Comments in the HTML that a writer puts into her text.
//!
//! What she hides from the page must not be in its source either, so comments are taken out. One that is not closed in its
//! own piece of HTML cannot be: a blank line ends the piece, and what follows is text of the page. That is a mistake to
//! report.

/// Returns a piece of HTML without its comments, and where one begins that is not closed, in bytes.
///
/// Attributes in quotes and the insides of `script` and `style` hold no comments (HTML Living Standard, tokenization).
pub fn without_comments(html: &str) -> (String, Option<usize>) {
    let mut out = String::with_capacity(html.len());
    let mut rest = html;
    while let Some(at) = rest.find('<') {
        let (before, tag) = rest.split_at(at);
        out.push_str(before);
        if let Some(after) = tag.strip_prefix("<!--") {
            // `<!-->` and `<!--->` are whole comments.
            let whole = after.strip_prefix('>').or_else(|| after.strip_prefix("->"));
            match whole.or_else(|| after.split_once("-->").map(|(_, after)| after)) {
                Some(after) => rest = after,
                None => return (out, Some(html.len() - tag.len())),
            }
            continue;
        }
        let end = end_of_tag(tag);
        let (tag, after) = tag.split_at(end);
        out.push_str(tag);
        rest = after;
        if let Some(closing) = raw_text(tag) {
            let lower = rest.to_ascii_lowercase();
            let (inside, after) = rest.split_at(lower.find(closing).unwrap_or(rest.len()));
            out.push_str(inside);
            rest = after;
        }
    }
    out.push_str(rest);
    (out, None)
}

/// Returns where a tag ends, quotes respected; a lone `<` is a tag of one byte.
fn end_of_tag(tag: &str) -> usize {
    if !tag.as_bytes().get(1).is_some_and(|byte| byte.is_ascii_alphabetic() || matches!(byte, b'/' | b'!' | b'?')) {
        return 1;
    }
    let mut quote = None;
    for (at, byte) in tag.bytes().enumerate() {
        match (quote, byte) {
            (None, b'"' | b'\'') => quote = Some(byte),
            (None, b'>') => return at + 1,
            (Some(open), _) if byte == open => quote = None,
            _ => {}
        }
    }
    // A tag that goes on in another piece, or a quote that is never closed: one byte, so that nothing behind it is missed.
    1
}

/// Returns the closing tag up to which everything after this one is raw text, if it is such a tag.
fn raw_text(tag: &str) -> Option<&'static str> {
    let name: String =
        tag.chars().skip(1).take_while(char::is_ascii_alphabetic).collect::<String>().to_ascii_lowercase();
    match name.as_str() {
        "script" => Some("</script"),
        "style" => Some("</style"),
        _ => None,
    }
}
