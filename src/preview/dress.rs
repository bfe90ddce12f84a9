//! What the preview puts round a page when it is sent, so that no template can leave it out and no made site has it.

use crate::finding::{Finding, Severity};
use crate::source::{Position, Texts};
use pulldown_cmark_escape::escape_html;

/// The preview's own files, by path.
pub const ASSETS: [(&str, &[u8]); 2] = [
    ("desk/live.js", include_bytes!("../../themes/desk/live.js")),
    ("desk/live.css", include_bytes!("../../themes/desk/live.css")),
];

/// The path of the sheet that marks links to what readers cannot see.
pub const HIDDEN: &str = "desk/hidden.css";

/// What is put round one page.
#[derive(Clone, Debug, Default)]
pub struct Dress {
    /// Why readers cannot see the page as it is here; in words.
    pub ribbon: Option<String>,
    /// The strip, as HTML.
    pub strip: String,
    /// The last event before the page was made.
    pub seen: String,
}

impl Dress {
    /// Puts it round a page.
    pub fn put_on(&self, page: &[u8]) -> Vec<u8> {
        let head = "<link rel=\"stylesheet\" href=\"/desk/live.css\">\n<link rel=\"stylesheet\" href=\"/desk/hidden.css\">\n\
                    <script src=\"/desk/live.js\" defer></script>\n";
        let mut body = format!("\n<div id=\"ballband-live\" data-seen=\"{}\">\n", self.seen);
        if let Some(ribbon) = &self.ribbon {
            body.push_str("<p id=\"ballband-ribbon\" role=\"note\">");
            let _ = escape_html(&mut body, ribbon);
            body.push_str("</p>\n");
        }
        body.push_str("<div id=\"ballband-strip\" role=\"status\">");
        body.push_str(&self.strip);
        body.push_str("</div>\n</div>");
        let page = String::from_utf8_lossy(page);
        let mut out = String::with_capacity(page.len() + head.len() + body.len());
        // A template of her own may have neither head nor body; then what is put on stands before all else.
        let (before, rest) = page.split_once("</head>").map_or(("", &*page), |(before, rest)| (before, rest));
        out.push_str(before);
        out.push_str(head);
        if !before.is_empty() {
            out.push_str("</head>");
        }
        let opened = rest.find("<body").and_then(|at| Some(at + rest.get(at..)?.find('>')? + 1)).unwrap_or(0);
        let (opening, rest) = rest.split_at_checked(opened).unwrap_or(("", rest));
        out.push_str(opening);
        out.push_str(&body);
        out.push_str(rest);
        out.into_bytes()
    }
}

/// Returns the strip: the way to the desk, how much is wrong, and one error with its place.
pub fn strip(findings: &[Finding], first: Option<&Finding>, texts: &Texts, is_any_old: bool) -> String {
    let mut html = String::from("<p><a href=\"/desk/\">Desk</a>");
    let count = |severity: Severity| findings.iter().filter(|finding| finding.severity == severity).count();
    let (errors, warnings) = (count(Severity::Error), count(Severity::Warning));
    for (count, one) in [(errors, "error"), (warnings, "warning")] {
        if count > 0 {
            html.push_str(&format!(" · <b class=\"{one}\">{count} {one}{}</b>", if count == 1 { "" } else { "s" }));
        }
    }
    html.push_str("</p>");
    if let Some(first) = first {
        html.push_str("<p class=\"error\">");
        let _ = escape_html(&mut html, &in_words(first, texts));
        html.push_str("</p>");
    }
    if is_any_old {
        html.push_str("<p>What a file with a mistake says is shown as it was before.</p>");
    }
    html
}

/// Returns a finding in one sentence, with its file and line.
pub fn in_words(finding: &Finding, texts: &Texts) -> String {
    let line = Position::of(texts.of(&finding.at.file), finding.at.span.start).line;
    let help = finding.help.as_ref().map(|help| format!("; {help}")).unwrap_or_default();
    format!("{}, line {line}: {}{help}", finding.at.file, finding.message)
}

/// Returns the sheet that marks links to pages that readers cannot see.
pub fn hidden(addresses: impl Iterator<Item = String>) -> String {
    let mut css = String::new();
    for address in addresses.filter(|address| !address.contains(['"', '\\', '\n'])) {
        css.push_str(&format!("main:not(#desk) a[href=\"{address}\"]::after{{content:\"\\a0(not on the site)\";display:inline-block;font-size:.8em}}\n"));
    }
    css
}

/// Returns a page that tells why another cannot be made.
pub fn cannot(finding: &Finding) -> Vec<u8> {
    let mut html = String::from(
        "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>Not made</title>\n</head>\n<body>\n<main>\n<h1>This page cannot be made</h1>\n<p>",
    );
    let _ = escape_html(&mut html, &finding.message);
    html.push_str("</p>\n</main>\n</body>\n</html>\n");
    html.into_bytes()
}
