//! What a knitter must buy, and what was used. The sums are worked by hand beside each.

use crate::support::{page, site};

const YARNS: &str = "heron-dk:\n  title: Heron DK\n  weight: DK\n  put-up: 225 m / 100 g\nunknown:\n  title: A leftover\nhundred:\n  title: Hundred\n  put-up: 200 yd / 100 g\n";

fn text(html: &str) -> String {
    let mut out = String::new();
    let mut inside = false;
    for c in html.chars() {
        match c {
            '<' => inside = true,
            '>' => {
                inside = false;
                out.push(' ');
            }
            _ if !inside => out.push(c),
            _ => {}
        }
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// 820 m × 1.1 ÷ 225 m = 4.0089, so 5 skeins; 990 × 1.1 ÷ 225 = 4.84, so 5; 1550 × 1.1 ÷ 225 = 7.578, so 8.
#[test]
fn skeins_are_whole_with_the_margin_and_stand_beside_the_exact_number() {
    let pattern = "---\ntitle: Yoke\npublished: 2026-03-14\nsizes: XS (M, 5XL)\nyarn: [ { colour: MC, yarn: heron-dk, needs: '820 (990, 1550) m' } ]\n---\n";
    let site = site(&[("yarns.yaml", YARNS), ("patterns/yoke.md", pattern)]);
    let words = text(page(&site, "patterns/yoke/index.html"));
    for expected in
        ["5 to 8 skeins", "820 to 1,550 m", "4.01", "4.84", "7.58", "Skeins to buy", "897", "1,083", "1,695"]
    {
        assert!(words.contains(expected), "{expected}: {words}");
    }
}

/// 1,000 yd at 200 yd a skein is 5 skeins and not 6, and 1,000.1 yd is 6.
#[test]
fn an_exact_fit_is_not_rounded_up() {
    let pattern = "---\ntitle: Yoke\npublished: 2026-03-14\nsizes: S (M)\nyarn: [ { yarn: hundred, needs: '1000 (1000.1) yd' } ]\n---\n";
    let studio = "title: W\nurl: https://example.org\nmargin: 0%\n";
    let site = site(&[("studio.yaml", studio), ("yarns.yaml", YARNS), ("patterns/yoke.md", pattern)]);
    assert!(text(page(&site, "patterns/yoke/index.html")).contains("5 to 6 skeins"));
}

#[test]
fn a_yarn_sold_in_an_unknown_way_gives_lengths_and_says_so() {
    let pattern = "---\ntitle: Yoke\npublished: 2026-03-14\nyarn: [ { yarn: unknown, needs: 300 m }, { colour: CC, shade: moss } ]\n---\n";
    let site = site(&[("yarns.yaml", YARNS), ("patterns/yoke.md", pattern)]);
    let words = text(page(&site, "patterns/yoke/index.html"));
    assert!(words.contains("300 m"), "{words}");
    assert!(words.contains("How it is sold is not known, so skeins cannot be told."), "{words}");
    assert!(words.contains("How much it takes is not known yet."), "{words}");
}

/// 450 m of each: 2 skeins of 225 m without margin, and 450 m of 400 m to 50 g; 1/225 + 1/800 is 1/175.6.
#[test]
fn a_yarn_held_with_another_is_a_line_of_its_own_to_buy() {
    let mist = "mist:\n  title: Mist\n  weight: Lace\n  put-up: 400 m / 50 g\n";
    let line = "{ colour: MC, yarn: heron-dk, needs: 450 m, held with: mist }";
    let pattern =
        format!("---\ntitle: Yoke\npublished: 2026-03-14\nmargin: 0%\nyarn: [ {line} ]\n---\n\n```needs\n```\n");
    let site = site(&[("yarns.yaml", &format!("{YARNS}{mist}")), ("patterns/yoke.md", &pattern)]);
    let words = text(page(&site, "patterns/yoke/index.html"));
    // In the yarn to buy, in its figures, and in those of the block.
    assert_eq!(words.matches("held with Heron DK (MC)").count(), 3, "{words}");
    for expected in ["DK and Lace, 900 m", "Heron DK (MC) and Mist, 176 m in 100 g (as 4 Medium)", "2 skeins 450 m"] {
        assert!(words.contains(expected), "{expected}: {words}");
    }
    assert!(text(page(&site, "yarns/mist/index.html")).contains("Yoke"));
    let json: serde_json::Value = serde_json::from_str(page(&site, "catalogue.json")).unwrap();
    let yarns = &json["patterns"][0]["yarns"];
    assert_eq!((&yarns[1]["yarn"], &yarns[1]["held_with"]), (&"Mist".into(), &"Heron DK".into()));
    assert_eq!((&yarns[1]["metres"][0], yarns[0].get("held_with")), (&450.into(), None));
}

/// A yarn that readers may not know of is not named, neither as what is held nor as what it is held with.
#[test]
fn a_hidden_yarn_is_not_told_by_what_it_is_held_with() {
    let yarns = format!("{YARNS}mist: {{ title: Mist, put-up: 400 m / 50 g, ready: false }}\n");
    let pattern = "---\ntitle: Yoke\npublished: 2026-03-14\nyarn:\n  - { yarn: heron-dk, needs: 450 m, held with: { yarn: mist, shade: fog } }\n  - { yarn: mist, needs: 45 m, held with: heron-dk }\n---\n";
    let site = site(&[("yarns.yaml", &yarns), ("patterns/yoke.md", pattern)]);
    let html = page(&site, "patterns/yoke/index.html");
    assert!(!html.contains("Mist") && !html.contains("fog"), "{html}");
    assert!(html.contains("held with a yarn not named"), "{html}");
    assert!(!page(&site, "catalogue.json").contains("Mist"));
}

/// 4.5 skeins of 225 m / 100 g are 1,012.5 m and 450 g; 452 g are 1,017 m; 1010 m are 448.9 g; 1100 yd are 1,005.84 m.
#[test]
fn what_was_used_is_shown_as_length_and_as_mass() {
    for (used, length, mass) in [
        ("4.5 skeins", "1,013 m", "450 g"),
        ("452 g", "1,017 m", "452 g"),
        ("1010 m", "1,010 m", "449 g"),
        ("1100 yd", "1,006 m", "447 g"),
    ] {
        let project =
            format!("---\ntitle: Ferry\nfinished: 2026-11-18\nyarn: [ {{ yarn: heron-dk, used: {used} }} ]\n---\n");
        let site = site(&[("yarns.yaml", YARNS), ("projects/ferry.md", &project)]);
        let words = text(page(&site, "projects/ferry/index.html"));
        assert!(words.contains(length) && words.contains(mass), "{used}: {words}");
    }
}

/// 2026: 450 g + 225 m (100 g) = 550 g and 1,012.5 + 225 = 1,237.5 m, shown as 1,238 m; one thing's yarn is not known.
#[test]
fn finished_things_are_summed_by_year() {
    let one = "---\ntitle: One\nfinished: 2026-11-18\nyarn: [ { yarn: heron-dk, used: 4.5 skeins } ]\n---\n";
    let two = "---\ntitle: Two\nfinished: 2026-01-02\nyarn: [ { yarn: heron-dk, used: 225 m }, { yarn: unknown, used: 1 ball } ]\n---\n";
    let old = "---\ntitle: Old\nfinished: 2025-05-01\nyarn: [ { yarn: heron-dk, used: 100 g } ]\n---\n";
    let later = "---\ntitle: Later\nstarted: 2026-10-01\nfinished: 2026-12-18\n---\n";
    let site = site(&[
        ("yarns.yaml", YARNS),
        ("projects/one.md", one),
        ("projects/two.md", two),
        ("projects/old.md", old),
        ("projects/later.md", later),
    ]);
    let words = text(page(&site, "finished/index.html"));
    for expected in ["two things", "1,238 m", "550 g", "225 m", "100 g", "one thing"] {
        assert!(words.contains(expected), "{expected}: {words}");
    }
    assert!(!words.contains("Later"), "finished after the day the site is made for");
    assert!(text(page(&site, "on-the-needles/index.html")).contains("Later"));
}

#[test]
fn both_systems_are_shown_the_studios_first() {
    let pattern = "---\ntitle: Yoke\npublished: 2026-03-14\nsizes: S (M)\nneedles: [US 6 circular 32 in]\nfinished:\n  chest: 60 (70) in\nyarn: [ { yarn: heron-dk, needs: '1000 (1100) yd' } ]\n---\n";
    for (units, first, second) in
        [("metric", "150 to 175 cm", "60 to 70 in"), ("imperial", "60 to 70 in", "150 to 175 cm")]
    {
        let studio = format!("title: W\nurl: https://example.org\nunits: {units}\n");
        let site = site(&[("studio.yaml", &studio), ("yarns.yaml", YARNS), ("patterns/yoke.md", pattern)]);
        let words = text(page(&site, "patterns/yoke/index.html"));
        let (one, two) = (
            words.find(first).unwrap_or_else(|| panic!("{first}: {words}")),
            words.find(second).unwrap_or_else(|| panic!("{second}: {words}")),
        );
        assert!(one < two, "{units}");
        assert!(words.contains("4 mm") && words.contains("US 6") && words.contains("914"), "{words}");
    }
}

/// 91 m + 5 m of one yarn and shade are 96 m: with a tenth to spare 1.056 skeins of 100 m, so 2 and not 2 + 1.
#[test]
fn lines_of_one_yarn_and_shade_are_bought_together() {
    let yarns = "wool:\n  title: Wool\n  put-up: 100 m / 50 g\n  shades: { moss: \"#5d6a3a\", fog: \"#b9b7b0\" }\n";
    let pattern = "---\ntitle: Hat\npublished: 2026-03-14\nyarn:\n  - { colour: MC, yarn: wool, shade: moss, needs: 91 m }\n  - { colour: CC, yarn: wool, shade: moss, needs: 5 m }\n---\n";
    let site_of = |pattern: &str| site(&[("yarns.yaml", yarns), ("patterns/hat.md", pattern)]);
    let words = text(page(&site_of(pattern), "patterns/hat/index.html"));
    assert!(words.contains("main colour (MC), contrast colour (CC)") && words.contains("2 skeins"), "{words}");
    assert!(words.contains("1.06") && !words.contains("1 skein "), "{words}");
    let apart = pattern.replacen("shade: moss, needs: 5 m", "shade: fog, needs: 5 m", 1);
    let words = text(page(&site_of(&apart), "patterns/hat/index.html"));
    assert!(words.contains("2 skeins") && words.contains("1 skein"), "{words}");
}

/// 91 m with a tenth to spare is 100.1 m: 1.001 skeins of 100 m. It must not read as one.
#[test]
fn more_than_a_skein_never_shows_as_one() {
    let yarns = "wool:\n  title: Wool\n  put-up: 100 m / 50 g\n";
    let pattern = "---\ntitle: Hat\npublished: 2026-03-14\nyarn: [ { yarn: wool, needs: 91 m } ]\n---\n";
    let site = site(&[("yarns.yaml", yarns), ("patterns/hat.md", pattern)]);
    assert!(text(page(&site, "patterns/hat/index.html")).contains("1.01"));
}

/// What she printed is shown as she wrote it: the put-up of a small ball, and both halves of a run.
#[test]
fn what_she_wrote_is_not_rounded_away() {
    let yarns = "wool:\n  title: Wool\n  put-up: 22.5 m / 12.5 g\n";
    let pattern = "---\ntitle: Hat\npublished: 2026-03-14\nsizes: S (M)\nneedles: [US 17]\nfinished:\n  chest: 34 (36) in / 86 (91) cm\nyarn: [ { yarn: wool, needs: 91 m } ]\n---\n";
    let site = site(&[("yarns.yaml", yarns), ("patterns/hat.md", pattern)]);
    let words = text(page(&site, "patterns/hat/index.html"));
    assert!(words.contains("22.5 m / 12.5 g"), "{words}");
    assert!(words.contains("86 91"), "{words}");
    assert!(words.contains("US 17 12 to 12.75 mm"), "{words}");
}
