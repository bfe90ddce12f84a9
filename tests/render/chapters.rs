//! Chapters: where each leads on the page, and the file for players.

use crate::support::{page, site};

fn note(video: &str, text: &str) -> String {
    format!("---\ntitle: Reeds\nvideo: {video}\n---\n\n{text}")
}

const TEXT: &str =
    "## 0:00 Hello\n\nHello.\n\n## 12:40 Knit & purl --> \\<done>\n\nDone.\n\n## 1:00:00 Letters\n\nNone.\n";

fn made(studio: &str, video: &str) -> Vec<(String, String)> {
    site(&[("studio.yaml", studio), ("journal/2026-11-20.md", &note(video, TEXT))])
}

const PLAIN: &str = "title: W\nurl: https://example.org/site\n";

/// The form is that of WebVTT (W3C, Candidate Recommendation of 4 April 2019, sections 4.1 and 4.2): the signature, a blank line
/// before each cue, hours of two digits, thousandths after a full stop, and `-->`, `&` and `<` not as such in a cue's text.
#[test]
fn the_file_for_players_is_webvtt() {
    let site = made(PLAIN, "{ url: 'https://v.example/12', length: '1:02:30' }");
    let vtt = page(&site, "journal/2026-11-20/chapters.vtt");
    let wanted = "WEBVTT\n\n00:00:00.000 --> 00:12:40.000\nHello\n\n00:12:40.000 --> 01:00:00.000\nKnit &amp; purl --&gt; &lt;done&gt;\n\n01:00:00.000 --> 01:02:30.000\nLetters\n";
    assert_eq!(vtt, wanted);
    assert!(page(&site, "journal/2026-11-20/index.html").contains("href=\"/site/journal/2026-11-20/chapters.vtt\""));
}

/// The end of the last chapter would be a guess, and a player refuses a cue that ends before it begins.
#[test]
fn no_file_is_made_of_chapters_whose_ends_are_not_known() {
    for video in ["{ url: 'https://v.example/12' }", "{ url: 'https://v.example/12', length: '59:00' }"] {
        let site = made(PLAIN, video);
        assert!(site.iter().all(|(path, _)| !path.ends_with(".vtt")), "{video}");
        assert!(!page(&site, "journal/2026-11-20/index.html").contains("chapters.vtt"));
    }
}

/// 12:40 is 760 seconds. `#t=760` is the temporal fragment of Media Fragments URI 1.0 (W3C Recommendation, 25 September
/// 2012, section 4.2.1); the other forms are a studio's own.
#[test]
fn each_chapter_leads_to_its_moment() {
    for (url, moment, wanted) in [
        ("https://v.example/12", "", "https://v.example/12#t=760"),
        ("https://v.example/12#x=1", "", "https://v.example/12#x=1&amp;t=760"),
        ("https://v.example/12", "?t={seconds}", "https://v.example/12?t=760"),
        ("https://v.example/?v=12", "?t={seconds}s", "https://v.example/?v=12&amp;t=760s"),
        ("https://v.example/12#top", "&t={seconds}", "https://v.example/12?t=760#top"),
    ] {
        let own = if moment.is_empty() { String::new() } else { format!("video: {{ moment: '{moment}' }}\n") };
        let site = made(&format!("{PLAIN}{own}"), &format!("{{ url: '{url}' }}"));
        let html = page(&site, "journal/2026-11-20/index.html");
        let listed = format!("<a class=\"time\" href=\"{wanted}\" aria-label=\"Watch from 12:40\">12:40</a>");
        let heading = format!("<a class=\"at\" href=\"{wanted}\">12:40</a>");
        assert!(html.contains(&listed) && html.contains(&heading), "{wanted}: {html}");
        assert!(html.contains("<a href=\"#on-knit-purl-done\">"), "{html}");
    }
}

#[test]
fn without_a_video_a_time_is_only_marked() {
    let site = site(&[("journal/2026-11-20.md", "---\ntitle: Reeds\n---\n\n## 12:40 Finished\n")]);
    let html = page(&site, "journal/2026-11-20/index.html");
    assert!(html.contains("<span class=\"at\">12:40</span> Finished") && !html.contains("Watch from"), "{html}");
}

const TITLED: &str = "## 0:00 <yarn:heron-dk> & *friends*\n\nHello.\n\n## 3:00 <project:plover>\n\nAt it.\n\n## 12:40 [a book](pattern:saltmarsh)\n\nRead.\n\n## <yarn:heron-dk>\n\nAgain.\n\nA\nline\n---\n";

/// What readers are shown for a reference in a heading is the title, everywhere, and for what they cannot see no more than that.
#[test]
fn a_reference_in_a_heading_is_a_title_wherever_the_heading_is_shown() {
    let text = note("{ url: 'https://v.example/12', length: '25:12' }", TITLED);
    let files = [
        ("yarns.yaml", "heron-dk: { title: Heron & Co }\n"),
        ("projects/plover.md", "---\ntitle: The plover *surprise*\nready: false\n---\n"),
        ("patterns/saltmarsh.md", "---\ntitle: Saltmarsh\nstage: sample\n---\n"),
        ("journal/2026-11-20.md", text.as_str()),
    ];
    let made = site(&files);
    let html = page(&made, "journal/2026-11-20/index.html");
    for wanted in [
        "<a href=\"#on-heron-dk-friends\">Heron &amp; Co &amp; friends</a>",
        "<a href=\"#on-plover\">The plover *surprise*</a>",
        "<a href=\"#on-a-book\">a book</a>",
        "<h2 id=\"on-heron-dk-friends\"><a class=\"at\" href=\"https://v.example/12#t=0\">0:00</a> <a href=\"/yarns/heron-dk/\">Heron &amp; Co</a> &amp; <em>friends</em></h2>",
        "<h2 id=\"on-plover\"><a class=\"at\" href=\"https://v.example/12#t=180\">3:00</a> The plover *surprise*</h2>",
        "<h2 id=\"on-heron-dk\"><a href=\"/yarns/heron-dk/\">Heron &amp; Co</a></h2>",
        "<h2 id=\"on-a-line\">A\nline</h2>",
    ] {
        assert!(html.contains(wanted), "{wanted}\n{html}");
    }
    let vtt = page(&made, "journal/2026-11-20/chapters.vtt");
    for wanted in ["\nHeron &amp; Co &amp; friends\n", "00:12:40.000\nThe plover *surprise*\n"] {
        assert!(vtt.contains(wanted), "{wanted}\n{vtt}");
    }
    // The mention of the yarn leads to the heading it stands in.
    let yarn = page(&made, "yarns/heron-dk/index.html");
    assert!(yarn.contains("/journal/2026-11-20/#on-heron-dk-friends"), "{yarn}");
    for (path, text) in &made {
        assert!(!text.contains("project:plover") && !text.contains("yarn:heron-dk"), "{path}");
    }
    let joined =
        ballband::join(&crate::support::studio(&files), crate::support::readers(crate::support::TODAY)).unwrap();
    let sizes = ballband::page::PictureSizes::new();
    let shown = ballband::page::Shown::for_one(&joined.catalogue, &sizes);
    let entry = &joined.catalogue.of_kind(ballband::entry::Kind::Note)[0];
    let outlet = ballband::entry::Outlet { limit: 5000, counted_in: None };
    let text = ballband::render::blurb::blurb(&shown, entry, entry.note().unwrap(), &outlet).text;
    assert!(text.contains("0:00 Heron & Co & friends\n3:00 The plover *surprise*\n12:40 a book\n"), "{text}");
}
