//! Size runs found in the midst of words; the notations are those that houses print (the sources of the standards).

use ballband::measure::{Bracket, RunStyle, runs_in, runs_in_prose};

/// Returns the values of each run that is found, and the whole of it.
fn found(text: &str, sizes: usize) -> Vec<(&str, Vec<&str>)> {
    let runs = runs_in(text, sizes, RunStyle::default());
    runs.iter().map(|run| (&text[run.at.clone()], run.values.iter().map(|at| &text[at.clone()]).collect())).collect()
}

#[test]
fn a_run_in_a_sentence_is_found_with_the_place_of_every_value() {
    assert_eq!(found("Knit 20 (22, 24) cm, then rib.", 3), [("20 (22, 24)", vec!["20", "22", "24"])]);
    assert_eq!(found("on 184 (206,\n228) stitches", 3), [("184 (206,\n228)", vec!["184", "206", "228"])]);
    assert_eq!(found("k4 [5:6:6:5], p2tog", 5), [("4 [5:6:6:5]", vec!["4", "5", "6", "6", "5"])]);
    assert_eq!(found("12,5 (13; 13,5) cm", 3), [("12,5 (13; 13,5)", vec!["12,5", "13", "13,5"])]);
    assert_eq!(found("34 (37¼, 41)\" wide", 3), [("34 (37¼, 41)", vec!["34", "37¼", "41"])]);
    assert_eq!(found("1½ (2) in and 10 (12) sts", 2), [("1½ (2)", vec!["1½", "2"]), ("10 (12)", vec!["10", "12"])]);
    assert_eq!(found("p0 (0, 1)", 3), [("0 (0, 1)", vec!["0", "0", "1"])]);
    assert_eq!(found("work – (–, 4) times", 3), [("– (–, 4)", vec!["–", "–", "4"])]);
}

#[test]
fn brackets_of_many_sizes_are_one_run() {
    assert_eq!(found("20 (22, 24)[26, 28] cm", 5), [("20 (22, 24)[26, 28]", vec!["20", "22", "24", "26", "28"])]);
    assert_eq!(found("84 (94, 104) (114, 124){134}", 6)[0].1, ["84", "94", "104", "114", "124", "134"]);
    // A bracket behind a run that is whole without it is something else.
    assert_eq!(found("20 (22, 24) (8)", 3), [("20 (22, 24)", vec!["20", "22", "24"])]);
}

#[test]
fn what_is_no_run_of_so_many_sizes_is_left_alone() {
    for (text, sizes) in [
        ("20 (22, 24) cm", 4),
        ("20 (22, 24) cm", 1),
        ("[K2, p1] 4 times", 2),
        ("(see page 3)", 2),
        ("four (five, six)", 3),
        ("20 (22, about 24)", 3),
        ("on 1/2/3", 3),
        ("20 (22, 24", 3),
        ("(22, 24)", 2),
        ("20 (22,, 24)", 3),
        ("–", 2),
        ("", 2),
    ] {
        assert_eq!(found(text, sizes), [], "{text}");
    }
    let round = RunStyle { sizes_in: Some(Bracket::Round) };
    assert_eq!(runs_in("20 [22, 24] and 20 (22, 24)", 3, round).len(), 1);
}

#[test]
fn in_prose_years_pages_and_needles_are_no_sizes() {
    let of = |text: &str| runs_in_prose(text, 2, RunStyle::default()).len();
    for text in ["In 2026 (27) I moved.", "since 1998 (2001)", "a needle of US 7 (8)", "see page 12 (13)"] {
        assert_eq!(of(text), 0, "{text}");
    }
    for text in ["Knit 20 (22) cm.", "There are 2000 (2100) sts.", "Buy 3 (4) skeins.", "6 (–) repeats"] {
        assert_eq!(of(text), 1, "{text}");
    }
}

#[test]
fn many_brackets_in_a_row_are_read_in_their_own_length() {
    let text = "1(1)".to_owned() + &"(1)".repeat(40_000);
    let began = std::time::Instant::now();
    assert_eq!(runs_in(&text, 3, RunStyle::default()).len(), 1);
    assert!(began.elapsed() < std::time::Duration::from_secs(5));
}

/// "Every 8th (7th, 6th) round" is how shaping is written for several sizes (common practice).
#[test]
fn ordinal_numbers_are_a_run_with_their_endings() {
    assert_eq!(found("every 8th (7th, 6th) rnd", 3), [("8th (7th, 6th)", vec!["8th", "7th", "6th"])]);
    assert_eq!(
        found("every 1st (2nd, 3rd) [4TH] row", 4),
        [("1st (2nd, 3rd) [4TH]", vec!["1st", "2nd", "3rd", "4TH"])]
    );
    assert_eq!(found("every 8th (7th) rnd 5 (6) times", 2).len(), 2);
    assert_eq!(found("every 8th (–, 6th) rnd", 3), [("8th (–, 6th)", vec!["8th", "–", "6th"])]);
    // Stitches behind a number end no ordinal, and letters of another word do not either.
    for text in ["8sts (7sts, 6sts)", "8then (7, 6)", "th (7th, 6th)"] {
        assert_eq!(found(text, 3), [], "{text}");
    }
    assert_eq!(found("for 1 st (2, 3) rows", 3), []);
    assert_eq!(runs_in_prose("every 8th (7th) round", 2, RunStyle::default()).len(), 1);
    assert_eq!(runs_in_prose("the 3rd (40th) time", 2, RunStyle::default()).len(), 0);
}

/// What a bracket of numbers is, for rows and for prose alike.
#[test]
fn a_bracket_of_numbers_holds_nothing_else() {
    use ballband::measure::numbers_in_brackets;
    for (text, length) in [
        ("(56, 64)", Some(8)),
        ("  [5:6:6] sts", Some(9)),
        ("{–}", Some(5)),
        ("(4½, 5)", Some(8)),
        ("(9.5)", Some(5)),
        ("(7 , -)", Some(7)),
        ("(k2, p2)", None),
        ("(56, 64", None),
        ("(56, 64]", None),
        ("( , )", None),
        ("()", None),
        ("56 (64)", None),
        ("(3 times)", None),
        ("(3) times", Some(3)),
        ("", None),
    ] {
        assert_eq!(numbers_in_brackets(text), length, "{text}");
    }
}
