//! What YAML makes of a run without quotes.

use ballband::measure::yaml_pieces::{quoted, run_from_list_item, run_from_pieces};

#[test]
fn pieces_are_put_together() {
    let rows: &[(&[&str], Option<&str>)] = &[
        (&["84 (94", "104) cm"], Some("84 (94, 104) cm")),
        (&["84 (94", " 104 ", "114) cm"], Some("84 (94, 104, 114) cm")),
        (&["84 (94", "104) (114", "124) cm", "length"], Some("84 (94, 104) (114, 124) cm")),
        (&["84 (94", "104) cm", "a (b) c"], Some("84 (94, 104) cm")),
        (&["84 (94", "104"], None),
        (&["84 cm", "length"], None),
        (&["84)", "(92"], None),
        (&[], None),
    ];
    for (pieces, run) in rows {
        assert_eq!(run_from_pieces(pieces).as_deref(), *run, "{pieces:?}");
    }
}

#[test]
fn a_dash_that_made_a_list_is_put_back() {
    assert_eq!(run_from_list_item("(84, 92) cm").as_deref(), Some("– (84, 92) cm"));
    assert_eq!(run_from_list_item("[84:92] cm").as_deref(), Some("– [84:92] cm"));
    assert_eq!(run_from_list_item("weave in ends"), None);
    assert_eq!(run_from_list_item("(84, 92"), None);
}

#[test]
fn advice_is_quoted_for_yaml() {
    assert_eq!(quoted("84 (94, 104) cm"), "'84 (94, 104) cm'");
    assert_eq!(quoted("34 (37)\""), "'34 (37)\"'");
    assert_eq!(quoted("it's \"so\""), "\"it's \\\"so\\\"\"");
}
