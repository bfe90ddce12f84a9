//! What a pattern page says of fit, other yarns and cautions, against the council's tables as reprinted (see the sources
//! of the standards) and sums by hand.

use crate::support::{page, site};

const YARNS: &str = "own:\n  title: Own\n  weight: DK\n  put-up: 200 m / 100 g\nnear:\n  title: Near\n  weight: 3\n  put-up: 190 m / 100 g\n  gauge: { stitches: 21, over: 10 cm }\nfar:\n  title: Far\n  weight: DK\n  put-up: 150 m / 100 g\nheavy:\n  title: Heavy\n  weight: worsted\n  put-up: 200 m / 100 g\ngone:\n  title: Gone\n  weight: DK\n  put-up: 200 m / 100 g\n  discontinued: true\n";

fn pattern(keys: &str) -> Vec<(String, String)> {
    let text = format!("---\ntitle: Jumper\npublished: 2026-01-02\n{keys}---\n\nWords.\n");
    site(&[("yarns.yaml", YARNS), ("patterns/jumper.md", &text)])
}

/// Returns the cells of the table row with this label, without what stands for the other system.
fn cells(html: &str, label: &str) -> Vec<String> {
    let row = html.split("<tr").find(|row| row.contains(label)).unwrap_or_else(|| panic!("no {label} in {html}"));
    let cell = |cell: &str| {
        let first = cell.split_once('>').unwrap().1;
        first
            .split(['<'])
            .find(|text| !text.trim().is_empty() && !text.contains("span"))
            .unwrap_or("")
            .trim()
            .to_owned()
    };
    row.split("<td").skip(1).map(cell).map(|text| text.rsplit('>').next().unwrap().to_owned()).collect()
}

#[test]
fn ease_stands_in_the_table_and_in_words() {
    let site = pattern(
        "wearer: women\nsizes: S (M, 5X)\nto fit:\n  bust: 84 (94, 155) cm\nfinished:\n  bust: 81 (99, 171) cm\n  length: 60 cm\n",
    );
    let html = page(&site, "patterns/jumper/index.html");
    assert_eq!(cells(html, "Ease at the bust"), ["\u{2212}3", "5", "16"]);
    assert_eq!(cells(html, "Standard size"), ["S", "M", "5X"]);
    // Very close is recalled in the table, so the page must say so.
    assert!(html.contains("Very close to oversized fit"), "{html}");
    assert!(html.contains("www.YarnStandards.com, in part from memory and to be checked"), "{html}");
}

#[test]
fn a_fit_that_was_read_is_not_called_a_memory() {
    let site = pattern("wearer: women\nsizes: S (M)\nto fit:\n  bust: 84 (94) cm\nfinished:\n  bust: 90 (100) cm\n");
    let html = page(&site, "patterns/jumper/index.html");
    assert!(html.contains("Classic fit") && html.contains("www.YarnStandards.com."), "{html}");
    assert!(!html.contains("from memory"));
}

#[test]
fn a_pattern_without_a_body_says_nothing_of_fit() {
    let site = pattern("sizes: S (M, L)\ntested in: S (L)\nfinished:\n  width: 40 cm\n");
    let html = page(&site, "patterns/jumper/index.html");
    assert!(!html.contains("Ease at") && !html.contains("YarnStandards"));
    assert!(html.contains("Test knitted in") && html.contains("S and L"), "{html}");
}

#[test]
fn other_yarns_are_of_the_same_weight_and_near_in_length() {
    let site = pattern("sizes: S (M)\nyarn: [ { yarn: own, needs: '950 (1000) m' } ]\n");
    let html = page(&site, "patterns/jumper/index.html");
    let others = html.split("Other yarns that may do").nth(1).unwrap().split("</section>").next().unwrap();
    assert!(others.contains("Near") && !others.contains("Far"), "{others}");
    assert!(!others.contains("Heavy") && !others.contains("Gone"), "{others}");
    assert!(others.contains("5% less length in the same weight; its band says 21 stitches"), "{others}");
    // 1,045 and 1,100 m by 190 m are 5.5 and 5.79.
    assert_eq!(cells(others, "Skeins"), ["6", "6"]);
}

#[test]
fn cautions_stand_on_things_for_children_and_defer_to_local_rules() {
    for (wearer, told) in [("baby", true), ("child", true), ("women", false)] {
        let site = pattern(&format!("wearer: {wearer}\n"));
        let html = page(&site, "patterns/jumper/index.html");
        assert_eq!(html.contains("Before a child wears it"), told, "{wearer}");
        assert_eq!(html.contains("check your own"), told);
        assert_eq!(html.contains("EN 14682"), told);
    }
    let baby = pattern("wearer: baby\n");
    let html = page(&baby, "patterns/jumper/index.html");
    assert!(html.contains("loose blanket") && html.contains("small-parts"), "{html}");
}

#[test]
fn derived_needs_are_shown_with_what_they_rest_on() {
    let site = pattern(
        "sizes: S (M)\nfinished:\n  width: 40 (50) cm\n  length: 100 cm\npieces: [ { shape: rectangle, width: width, length: length } ]\n\
         yarn: [ { yarn: own } ]\nsample: { size: S, used: 100 g }\n",
    );
    let html = page(&site, "patterns/jumper/index.html");
    assert!(html.contains(" size and worked out from the sample by the fabric of each size"), "{html}");
    // 100 g are 200 m; 50 to 40 makes 250 m; a tenth more are 220 and 275 m: 2 skeins each.
    assert_eq!(cells(html, ">Length"), ["200", "250"]);
    assert_eq!(cells(html, "Skeins to buy"), ["2", "2"]);
}

#[test]
fn blocks_put_a_patterns_tables_into_any_text() {
    let pattern = "---\ntitle: Jumper\npublished: 2026-01-02\nsizes: S (M)\nto fit:\n  chest: 90 (100) cm\nfinished:\n  chest: 95 (105) cm\nyarn: [ { yarn: own, needs: '950 (1000) m' } ]\n---\n\n```sizes\n```\n";
    let note =
        "---\ntitle: Note\ndate: 2026-11-20\n---\n\n```needs\npattern: jumper\n```\n\n```sizes\npattern: jumper\n```\n";
    let site = site(&[("yarns.yaml", YARNS), ("patterns/jumper.md", pattern), ("journal/2026-11-20.md", note)]);
    let html = page(&site, "journal/2026-11-20/index.html");
    assert_eq!(cells(html, "Finished chest"), ["95", "105"]);
    assert_eq!(cells(html, "Ease at the chest"), ["5", "5"]);
    // 1,045 and 1,100 m with the tenth to spare.
    assert_eq!(cells(html, "Skeins to buy"), ["6", "6"]);
    assert!(html.contains("Yarn for <a href=\"/patterns/jumper/\">Jumper</a>, 10% to spare"), "{html}");
    let own = page(&site, "patterns/jumper/index.html");
    assert!(own.contains("Sizes of <a href=\"/patterns/jumper/\">"), "{own}");
    assert!(own.contains("/journal/2026-11-20/"), "the note is one of those that mention it");
    let feed = page(&site, "feed.json");
    assert!(
        feed.contains("https://wrackline.example/patterns/jumper/") && !feed.contains("\\\"/patterns/jumper"),
        "{feed}"
    );
}

#[test]
fn a_block_of_a_pattern_that_is_not_public_shows_its_title_alone() {
    let pattern = "---\ntitle: Secret & Sons\nstage: sample\nsizes: S (M)\nyarn: [ { needs: '950 (1000) m' } ]\n---\n";
    let note = "---\ntitle: Note\ndate: 2026-11-20\n---\n\n```needs\npattern: secret\n```\n";
    let site = site(&[("patterns/secret.md", pattern), ("journal/2026-11-20.md", note)]);
    let html = page(&site, "journal/2026-11-20/index.html");
    assert!(html.contains("<p>Secret &amp; Sons</p>") && !html.contains("950"), "{html}");
}

#[test]
fn heads_hands_and_feet_have_their_usual_sizes_with_where_those_come_from() {
    let hat =
        pattern("sizes: A (B, C, D)\nto fit:\n  head: 40 (54, 62.5, 70) cm\nfinished:\n  head: 36 (50, 58, 60) cm\n");
    let html = page(&hat, "patterns/jumper/index.html");
    assert_eq!(cells(html, "Usual head size"), ["Baby", "Adult", "Adult XL", "–"]);
    assert!(html.contains("Head sizes: a maker&#39;s guide that follows the Craft Yarn Council"), "{html}");
    assert!(!html.contains("from memory"), "{html}");

    let mitts = pattern("wearer: women\nsizes: S (M, L)\nto fit:\n  hand: 17 (19, 21) cm\n");
    let html = page(&mitts, "patterns/jumper/index.html");
    assert_eq!(cells(html, "Usual hand size"), ["Woman", "Woman", "Man"]);

    // By the length, since shoes go by it; without a wearer for everybody who has such feet.
    let socks = pattern("sizes: S (M, L)\nto fit:\n  foot: 19.5 (22, 27) cm\n  foot length: 22.5 (25.5, 29) cm\n");
    let html = page(&socks, "patterns/jumper/index.html");
    assert_eq!(cells(html, "US shoe size"), ["women 3–6", "women 6–9, men 8.5–10", "women 8–12, men 12.5–14"]);
    assert!(
        html.contains("Shoe sizes: Craft Yarn Council&#39;s www.YarnStandards.com, from memory and to be checked.")
    );
    let girth = pattern("wearer: men\nsizes: S (M)\nto fit:\n  foot: 20 (23) cm\n");
    assert_eq!(cells(page(&girth, "patterns/jumper/index.html"), "US shoe size"), ["8.5–10", "10.5–12"]);
}

#[test]
fn a_finished_hat_is_not_a_head() {
    let hat = pattern("finished: { head: 50 cm }\n");
    assert!(!page(&hat, "patterns/jumper/index.html").contains("Usual"));
    let giant = pattern("to fit: { head: 90 cm }\n");
    assert!(!page(&giant, "patterns/jumper/index.html").contains("Usual"));
}

/// Wherever the council's sizes are shown, so is where they come from: in a block of a text as on the pattern's page.
#[test]
fn a_block_of_sizes_has_its_credit() {
    let keys = "sizes: S (M)\nto fit:\n  foot length: 23 (25.5) cm\n";
    let text = format!("---\ntitle: Socks\npublished: 2026-01-02\n{keys}---\n\nWords.\n");
    let note = "---\ntitle: Socks again\n---\n\n```sizes\npattern: socks\n```\n\n```needs\npattern: socks\n```\n";
    let site = site(&[("patterns/socks.md", &text), ("journal/2026-01-03.md", note)]);
    let html = page(&site, "journal/2026-01-03/index.html");
    assert_eq!(html.matches("www.YarnStandards.com, from memory and to be checked.").count(), 1, "{html}");
}
