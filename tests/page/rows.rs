//! What a page says of written rows: stitches, abbreviations, sizes.

use crate::render::rows::text_of;
use crate::support::{page, site};
use std::collections::BTreeSet;

/// Returns the page of a pattern with these keys and this text.
fn pattern(keys: &str, text: &str) -> String {
    let file = format!("---\ntitle: Hat\npublished: 2026-03-14\n{keys}---\n\n{text}\n");
    let made = site(&[("patterns/hat.md", &file)]);
    page(&made, "patterns/hat/index.html").to_owned()
}

/// Returns the stitches that stand beside the lines of rows, an empty text where none do.
fn beside(html: &str) -> Vec<String> {
    let lines = html
        .split("<div class=\"block rows\">")
        .skip(1)
        .flat_map(|block| block.split("</div>").next().unwrap().split("<li").skip(1));
    let count = |line: &str| {
        line.split_once("<span class=\"after\">").map(|(_, count)| without_tags(count.split("</li>").next().unwrap()))
    };
    lines.map(|line| count(line).unwrap_or_default()).collect()
}

fn without_tags(html: &str) -> String {
    html.split('<').map(|piece| piece.split_once('>').map_or(piece, |(_, text)| text)).collect()
}

/// Returns the short forms, how they are said and what they mean, of the page's list.
fn listed(html: &str) -> Vec<(String, String, String)> {
    let list = html.split("<dl class=\"shorts\">").nth(1).map(|rest| rest.split("</dl>").next().unwrap()).unwrap_or("");
    let inside = |of: &str, tag: &str| {
        of.split(&format!("<{tag}>")).nth(1).unwrap().split(&format!("</{tag}>")).next().unwrap().to_owned()
    };
    let one = |of: &str| {
        let (short, meaning) = (inside(of, "dt"), inside(of, "dd"));
        match short.split_once("</span><span class=\"aside\">") {
            Some((short, said)) => (without_tags(short), without_tags(said), meaning),
            None => (short.clone(), short, meaning),
        }
    };
    list.split("<div>").skip(1).map(one).collect()
}

fn shorts(html: &str) -> Vec<String> {
    listed(html).into_iter().map(|(short, ..)| short).collect()
}

/// The row of five sizes that a page prints with its counts, 63 [71:77:85:91] (ejheywood.wixsite.com/instarsia; redone by hand:
/// 4+1+6×(8+1)+4, 5+1+6×(9+1)+5, 6+1+8×(7+1)+6, 6+1+8×(8+1)+6, 5+1+10×(7+1)+5).
#[test]
fn the_stitches_behind_a_row_of_five_sizes_are_those_that_were_printed() {
    let html = pattern(
        "sizes: S (M, L, XL, 2XL)\n",
        "```rows\nCast on 70 [78:86:94:102] sts.\nRow 1: P4 [5:6:6:5], p2tog, (p8 [9:7:8:7], p2tog) 6 [6:8:8:10] times, p4 [5:6:6:5].\n```",
    );
    assert_eq!(beside(&html), ["", "63 (71, 77, 85, 91) sts"]);
    assert!(
        html.contains("<span class=\"after\"><span class=\"run\"><span class=\"c1\">63</span> (<span class=\"c2\">71</span>, <span class=\"c3\">77</span>, <span class=\"c4\">85</span>, <span class=\"c5\">91</span>)</span> sts</span>"),
        "{html}"
    );
    // What she wrote stays as she wrote it, each value marked by its size.
    assert!(
        html.contains("<span class=\"run\"><span class=\"c1\">8</span> [<span class=\"c2\">9</span>:<span class=\"c3\">7</span>:<span class=\"c4\">8</span>:<span class=\"c5\">7</span>]</span>"),
        "{html}"
    );
}

#[test]
fn stitches_are_told_where_they_change_and_the_row_does_not_say_it() {
    let rows = "Cast on 96 sts.\nRnd 1: *K2, p2; rep from * around.\nRnd 2: Knit.\nCrown:\nRnd 1: *K6, k2tog; rep from * around. [84 sts]\nRnd 2: *K5, k2tog; rep from * around.\nRnd 3: Knit.\nWork some lace.\nRnd 4: *K1, p1; rep from * around.\nNext rnd: Knit to end. [12 sts]\nRnd 5: *K2tog; rep from * around.\nRnd 6: K5, sk2p, k2tog. [3 sts]\nRnd 7: Sk2p.\n";
    let html = pattern("", &format!("```rows\n{rows}```"));
    assert_eq!(beside(&html), ["", "", "", "", "72 sts", "", "", "", "", "6 sts", "", "1 st"]);
}

/// A row that is worked again leaves its stitches only the first time (a count behind such a row is read of every time).
#[test]
fn a_row_that_is_worked_again_tells_of_the_first_time() {
    let rows = "Cast on 20 sts.\nRow 1 (RS): K1, m1, k to last st, m1, k1.\nRow 2 (WS): Purl.\nRepeat rows 1-2 4 times more.\n";
    let html = pattern("", &format!("```rows\n{rows}```"));
    assert_eq!(beside(&html), ["", "22 sts the first time", "", "30 sts"]);
    let noted = rows.replace("k1.\n", "k1. (2 sts inc'd)\n");
    let html = pattern("", &format!("```rows\n{noted}```"));
    assert_eq!(beside(&html), ["", "", "", "30 sts"], "the change is said");
    // One that is worked again by its name is no other, and one of the same name before it is left alone.
    let named = "Cast on 40 sts.\nDec rnd: K1, k2tog, k to end.\nDec rnd: K1, k2tog, k to last 3 sts, ssk, k1.\n\
                 Work dec rnd every 4th rnd 3 times more.\nKnit 3 rnds.\n";
    let html = pattern("", &format!("```rows\n{named}```"));
    assert_eq!(beside(&html), ["", "39 sts", "37 sts the first time", "31 sts", ""]);
    // A name with a colon begins another part, whatever words it has.
    let html =
        pattern("", "```rows\nCast on 20 sts.\nRound the ankle:\nRnd 1: Knit.\nBrim, folded:\nRnd 1: Purl.\n```");
    assert_eq!(html.matches("<p class=\"block-title\">").count(), 2, "{html}");
    let html = pattern("", "```rows\nSleeves (make 2):\nCast on 20 sts.\nPart 1 – Cuff:\nR1: Purl.\n```");
    assert!(html.contains("<p class=\"block-title\">Sleeves (make 2):</p>"), "{html}");
    assert!(html.contains("<p class=\"block-title\">Part 1 – Cuff:</p>"), "{html}");
    // Where all are put aside or a title has no colon, nothing is told of stitches.
    let html = pattern(
        "",
        "```rows\nCast on 20 sts.\nRow 1: K2tog, k to end.\nPlace all sts on hold.\nTHUMB GUSSET\nCast on 8 sts.\n```",
    );
    assert_eq!(beside(&html), ["", "19 sts", "", ""]);
    assert!(html.contains("<p class=\"block-title\">THUMB GUSSET</p>"), "{html}");
    // Rows worked between others leave another count each time.
    let between = "Cast on 20 sts.\nRow 1: K1, k2tog, k to end.\nRows 2 and 4: Purl.\nRow 3: K1, k2tog, k to end.\n";
    assert_eq!(beside(&pattern("", &format!("```rows\n{between}```"))), ["", "19 sts", "", "18 sts"]);
}

#[test]
fn the_count_goes_on_from_block_to_block_and_into_lists_and_quotations() {
    let html = pattern(
        "",
        "```rows\nCast on 20 sts.\n```\n\nThen:\n\n```rows\n```\n\n> ```rows\n> Row 1: K2tog, k to end.\n> Row 2: Knit.\n> ```\n\n```rows\nRow 2: K2tog, k to end.\n```",
    );
    assert_eq!(html.matches("<div class=\"block rows\">").count(), 3);
    assert_eq!(html.matches("<pre").count(), 1, "an empty block stands as it is");
    assert_eq!(beside(&html), ["", "19 sts", "", "18 sts"]);
    let html = pattern("", "```rows\nCast on 20 sts.\n```\n\n- Then:\n\n  ```rows\n  Row 1: K2tog, k to end.\n  ```");
    assert_eq!(beside(&html), ["", "19 sts"]);
}

#[test]
fn the_list_holds_just_what_is_used_her_own_before_the_trades() {
    let html = pattern(
        "abbreviations:\n  MB: { what: make a bobble of five, uses: 1, makes: 1 }\n  twist 2: { what: \"cross <two>\", uses: 2, makes: 2 }\n",
        "```rows\nCast on 20 sts.\nRow 1 (RS): K2, MB, twist 2, k2tog tbl, m1l, C6F, w&t, k5tog, k to m, yo in next st.\n```\n\nKnit with ssk and 4 mm.",
    );
    let expected = [
        ("C6F", "C 6 F", "hold three in front, knit three, then knit three from the cable needle"),
        ("k", "K", "knit"),
        ("k2tog tbl", "K 2 tog T B L", "knit two together through the back loops"),
        ("k5tog", "K 5 tog", "knit five together"),
        ("m", "M", "marker"),
        ("m1l", "M 1 L", "make one, left-leaning"),
        ("MB", "M B", "make a bobble of five"),
        ("RS", "R S", "right side"),
        ("st, sts", "S T, S T S", "stitch, stitches"),
        ("twist 2", "twist 2", "cross &lt;two&gt;"),
        ("w&amp;t", "W and T", "wrap and turn"),
        ("yo", "Y O", "yarn over"),
    ];
    let listed = listed(&html);
    let listed: Vec<(&str, &str, &str)> = listed.iter().map(|(a, b, c)| (a.as_str(), b.as_str(), c.as_str())).collect();
    assert_eq!(listed, expected);
    assert!(html.contains("<h2 id=\"leaflet-abbreviations\">Abbreviations</h2>"));
    assert!(!pattern("", "No rows, so no k2tog.").contains("leaflet-abbreviations"));
}

/// A chart in words uses abbreviations too, and the list has them. Cables are explained as the table of chart symbols has it.
#[test]
fn charts_in_words_are_explained_too() {
    let html =
        pattern("", "```chart\nworked: in the round\nkey: { \".\": knit, o: yo, \"/\": k2tog }\nrows: [\"o/..\"]\n```");
    assert_eq!(shorts(&html), ["k", "k2tog", "yo"]);
    assert!(html.contains("<abbr class=\"first\" title=\"knit two together\">k2tog<button"), "{html}");

    let table = include_str!("../../src/standards/chart_symbols.csv");
    let mut seen = 0;
    for line in table.lines().filter(|line| line.contains("from the cable needle")) {
        let (name, rest) = line.split_once(',').unwrap();
        let meaning = rest.split('"').nth(1).unwrap();
        let html = pattern("", &format!("```rows\nRow 1: {name}, k1.\n```"));
        let told = listed(&html).into_iter().find(|(short, ..)| short == name).unwrap().2;
        let short = ["one", "two", "three", "four"]
            .iter()
            .enumerate()
            .fold(told, |told, (at, word)| told.replace(word, &(at + 1).to_string()));
        assert_eq!(short.replace("knit ", "k").replace("purl ", "p"), meaning, "{name}");
        seen += 1;
    }
    assert!(seen >= 8, "{seen}");
}

/// One note for each abbreviation, reached by the keyboard once in a block; every other button is for pointers alone.
#[test]
fn every_abbreviation_has_a_note_and_one_stop_of_the_keyboard() {
    let html = pattern("", "```rows\nRow 1: K2, ssk, k2, w&t.\nRow 2: Ssk, K2.\n```\n\n```rows\nRow 3: K1, SSK.\n```");
    let ids: Vec<&str> = html.split(" id=\"").skip(1).map(|rest| rest.split('"').next().unwrap()).collect();
    assert_eq!(ids.iter().collect::<BTreeSet<_>>().len(), ids.len(), "{ids:?}");
    let targets: Vec<&str> =
        html.split("popovertarget=\"").skip(1).map(|rest| rest.split('"').next().unwrap()).collect();
    assert!(targets.len() == 8 && targets.iter().all(|target| ids.contains(target)), "{targets:?}");
    let stops: Vec<&str> = html
        .split("aria-label=\"")
        .skip(1)
        .map(|rest| rest.split('"').next().unwrap())
        .filter(|label| label.contains(": "))
        .collect();
    assert_eq!(
        stops,
        [
            "K: knit",
            "S S K: slip, slip, knit the two together",
            "W and T: wrap and turn",
            "K: knit",
            "S S K: slip, slip, knit the two together"
        ]
    );
    assert_eq!(html.matches("tabindex=\"-1\" aria-hidden=\"true\"></button>").count(), 3);
}

#[test]
fn sizes_in_a_patterns_words_are_marked_and_nothing_else_is() {
    let html = pattern(
        "sizes: S (M, L)\n",
        "## For 1 (2, 3) people\n\nKnit 20 (22,\n24) cm, or *20 (22, 24)[26]* cm; `20 (22, 24)`, [8 (9, 10) more](https://example.org/8(9,10)/).\n\n    20 (22, 24)\n\n```\n20 (22, 24)\n```\n\n| a | b |\n|---|---|\n| 5 (6, 7) | 5 (6) |\n",
    );
    let run = |values: [&str; 3]| {
        let [a, b, c] = values;
        format!(
            "<span class=\"run\"><span class=\"c1\">{a}</span> (<span class=\"c2\">{b}</span>, <span class=\"c3\">{c}</span>)</span>"
        )
    };
    assert!(
        html.contains(&format!(
            "Knit {} cm",
            run(["20", "22", "24"]).replace(", <span class=\"c3\">", ",\n<span class=\"c3\">")
        )),
        "{html}"
    );
    assert!(html.contains(&format!("<em>{}[26]</em>", run(["20", "22", "24"]))), "{html}");
    assert!(
        html.contains(&format!("<h2 id=\"on-for-1-2-3-people\">For {} people</h2>", run(["1", "2", "3"]))),
        "{html}"
    );
    assert!(
        html.contains(&format!("<a href=\"https://example.org/8(9,10)/\">{} more</a>", run(["8", "9", "10"]))),
        "{html}"
    );
    assert!(html.contains(&format!("<td>{}</td><td>5 (6)</td>", run(["5", "6", "7"]))), "{html}");
    assert_eq!(html.matches("class=\"run\"").count(), 5, "{html}");
    assert_eq!(html.matches("<code>20 (22, 24)").count(), 3, "code stays as it is");
    assert!(!pattern("", "Knit 20 (22, 24) cm.").contains("class=\"run\""));
    // The house says which bracket holds sizes.
    let file = "---\ntitle: Hat\npublished: 2026-03-14\nsizes: S [M]\n---\n\n20 (22) and 20 [22]\n";
    let made =
        site(&[("patterns/hat.md", file), ("studio.yaml", "title: W\nurl: https://w.example\nsizes in: square\n")]);
    assert_eq!(page(&made, "patterns/hat/index.html").matches("class=\"run\"").count(), 1);
}

/// A note that quotes a row explains it below it and counts nothing; its feeds have the plain text.
#[test]
fn a_row_in_a_note_is_explained_below_it_and_plain_in_feeds() {
    let note = "---\ntitle: Reeds\ndate: 2026-11-20\n---\n\n```rows\nCast on 9 (10) sts.\nRow 1: K2tog & k7.\n```\n\n```rows\nRow 2: K8.\n```\n\n```text\nk8\n```\n";
    let made = site(&[("journal/2026-11-20.md", note)]);
    let html = page(&made, "journal/2026-11-20/index.html");
    assert_eq!(beside(html), ["", "", ""]);
    assert_eq!(shorts(html), ["st, sts", "k2tog", "k"]);
    assert!(html.contains("id=\"leaflet-block-1-k\"") && html.contains("id=\"leaflet-block-2-k\""), "{html}");
    assert!(html.contains("<pre tabindex=\"0\"><code class=\"language-text\">k8\n</code></pre>"), "{html}");
    assert!(!html.contains("class=\"run\""));
    assert!(text_of(html).contains("Row 1: K2tog & k7."));
    let json: serde_json::Value = serde_json::from_str(page(&made, "feed.json")).unwrap();
    let content = json["items"][0]["content_html"].as_str().unwrap();
    assert!(content.contains("<pre tabindex=\"0\"><code class=\"language-rows\">Cast on 9 (10) sts.\nRow 1: K2tog &amp; k7.\n</code></pre>"), "{content}");
    assert!(!content.contains("button") && !content.contains("abbr"), "{content}");
    assert!(!page(&made, "feed.xml").contains("popover"));
}

/// "Every 8th (7th, 6th) round" differs by size like any other number, in rows and in the text around them.
#[test]
fn every_so_many_rounds_is_marked_by_size() {
    let sentence = "Work dec rnd every 8th (7th, 6th) rnd twice more.";
    let rows = format!(
        "```rows\nCast on 40 sts.\nDec rnd: K2tog, k to end.\n{sentence}\n```\n\nShape every 8th (7th, 6th) rnd."
    );
    let html = pattern("sizes: S (M, L)\n", &rows);
    let run = "<span class=\"c1\">8th</span> (<span class=\"c2\">7th</span>, <span class=\"c3\">6th</span>)</span>";
    assert_eq!(html.matches(run).count(), 2, "{html}");
}
