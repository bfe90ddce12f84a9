//! Sentences as designers write them (common practice): each comes to the counts said behind it, worked out by hand, and says
//! nothing that cannot be read.

use super::blocks::{end, told};
use super::written;
use ballband::notation::rows::{Doing, Fault};

/// Nothing is unread, and the last count is as expected in each size.
fn comes_to(text: &str, counts: &[i64]) {
    let unread: Vec<_> = written(text).statements.into_iter().filter_map(|statement| statement.trouble).collect();
    assert_eq!(unread, [], "{text}");
    let counts: Vec<_> = counts.iter().copied().map(Some).collect();
    assert_eq!(end(&[text], counts.len()), counts, "{text}");
}

#[test]
fn words_that_lead_to_what_is_worked_are_moved_past() {
    // 90 - 2 * 4 = 82, 100 - 2 * 5 = 90.
    comes_to("CO 90 (100) sts.\nShape armholes: BO 4 (5) sts at beg of next 2 rows.", &[82, 90]);
    comes_to(
        "CO 20 sts.\nStarting at centre of underarm, pick up and knit 4 sts, k to end, pick up and knit 4 sts.",
        &[28],
    );
    comes_to("With smaller dpns and MC, loosely CO 40 (44) sts.", &[40, 44]);
    comes_to("CO 14 sts.\nJoin yarn, pick up and k 2 sts over gap, k14.", &[16]);
    comes_to("CO 40 sts.\nNext row: Working in garter stitch, k2tog, k to end.", &[39]);
    // Edge after edge: 30 + 18 + 12 + 18.
    comes_to(
        "With RS facing and beginning at right shoulder seam, pick up and knit 30 sts across back neck, 18 sts down left front \
         neck, 12 sts across front neck, and 18 sts up right front neck.",
        &[78],
    );
}

/// What begins like an aside and works rows is among the rows that words go back to.
#[test]
fn rows_behind_a_leading_clause_are_rows() {
    // Six rows, one stitch fewer each time: 39 - 3.
    let six = |words: &str| {
        format!("CO 40 sts.\nRow 1: K2tog, k to end.\nRow 2: Purl.\n{words}\nRep last 6 rows 3 times more.")
    };
    for words in [
        "Beg with a knit row, work 4 rows in St st.",
        "Starting with a RS row, knit 4 rows.",
        "Using larger needles, beginning with a purl row, purl 4 rows.",
        "Now purl 4 rows.",
    ] {
        comes_to(&six(words), &[36]);
    }
    // One that shapes is not moved past.
    for words in ["Working one increase at each end, k to end.", "Starting with k2tog, k to end."] {
        let text = format!("CO 40 sts.\n{words}\nRow 2: K40.");
        let read = written(&text);
        assert!(read.statements[1].trouble.is_some() || told(&[&text], 1).len() == 1, "{words}: {read:#?}");
    }
}

#[test]
fn titles_without_a_colon_are_headings() {
    for title in ["THUMB GUSSET", "CUFF", "TOP", "Shape neck", "Eyelet section", "Left Front", "Thumb"] {
        let read = written(&format!("CO 40 sts.\nRow 1: K2tog, k to end.\n{title}\nRow 1: K39."));
        assert!(matches!(read.statements[2].doing, Doing::Heading { chart: false, .. }), "{title}: {read:#?}");
        assert_eq!(told(&[&format!("CO 40 sts.\n{title}\nRow 1: K40.")], 1), [], "{title}");
    }
    // What works stitches is none, and neither is a word that may be one misspelt.
    for row in ["Knit", "Purl", "K2tog", "Yoo", "Kint", "Bind off", "Work even", "Repeat", "Knit to end"] {
        let read = written(&format!("CO 40 sts.\n{row}"));
        assert!(!matches!(read.statements[1].doing, Doing::Heading { .. }), "{row}: {read:#?}");
    }
}

#[test]
fn how_far_it_goes_is_told_in_any_words() {
    for words in [
        "K every rnd until mitten measures 8 (9, 10) cm above thumb.",
        "Knit every rnd until leg measures 15 cm from CO edge.",
        "Work even until front matches back to shoulder, ending at armhole edge.",
        "Work in 1x1 rib for 2 in/5 cm.",
        "Work 5 cm in k1, p1 rib.",
        "Knit 1 rnd, placing second marker after 90 (100, 110) sts to mark side.",
        "Rounds 2-4: Work in k2, p2 rib.",
        "Work in St st until piece measures 15 (15½, 16) in, ending 4 (5, 6) sts before BOR marker on last rnd.",
        "Work in St st until body reaches the desired length.",
    ] {
        comes_to(&format!("CO 40 sts.\nRow 1: Knit.\n{words}"), &[40]);
    }
    // Words among them that change stitches are not swallowed.
    for words in [
        "Work even until all decreases have been worked.",
        "Knit until it measures 10 cm, k2tog, knit to the end of it.",
        "Work until 30 sts have been decreased.",
    ] {
        let text = format!("CO 40 sts.\nRow 1: Knit.\n{words}\nRow 2: K999.");
        let faults: Vec<_> = told(&[&text], 1).into_iter().map(|(_, sizes)| sizes[0].1).collect();
        assert!(!faults.iter().any(|fault| matches!(fault, Fault::Short { had: 40, .. })), "{words}: {faults:?}");
    }
}

#[test]
fn brackets_may_hold_words_for_the_knitter() {
    comes_to("CO 9 sts.\nRow 1: K3, yo, k1, yo, k1 (centre st), yo, k1, yo, k3. [13 sts]", &[13]);
    comes_to("CO 18 sts.\nRow 1: Sl1, k to 1 st before gap, ssk (1 st from each side of gap), k to end.", &[17]);
    // A centred triangle: four more each time, wherever the centre is.
    comes_to("CO 13 sts.\nRow 3: K3, yo, k to centre st, yo, k1, yo, k to last 3 sts, yo, k3. (+4 sts)", &[17]);
    comes_to("CO 40 sts.\nRow 1: K2tog, k to end. (-1 st)", &[39]);
    let wrong = told(&["CO 13 sts.\nRow 3: K3, yo, k to last 3 sts, yo, k3. (+4 sts)"], 1);
    assert_eq!(wrong, [("4".to_owned(), vec![(0, Fault::Change { says: 4, is: 2 })])]);
    // Each part has so many, all together do not.
    comes_to("CO 164 sts.\nRow 1: Knit. [82 sts each front and back]", &[164]);
    // Stitches that are misspelt are no aside.
    assert!(written("Row 1: K2, (yoo, k2tgo), k2.").statements[0].trouble.is_some());
}

#[test]
fn a_repeat_may_leave_open_how_often() {
    comes_to("CO 41 sts.\nRow 1: K1, *sl1yo, k1; rep from *.", &[41]);
    // 43 = 1 + 5 * 8 + 2, each repeat of 8 makes 8.
    comes_to("CO 43 sts.\nRow 2: K1, *yo, k2tog tbl, k3, k2tog, yo, k1; rep from *, end k2.", &[43]);
    comes_to("CO 43 (51) sts.\nRow 2: K1, *k6, k2tog; rep from *, ending with k2.", &[38, 45]);
    let left = told(&["CO 44 sts.\nRow 2: K1, *k6, k2tog; rep from *, end k2."], 1);
    assert!(matches!(left[0].1[0], (0, Fault::RepeatLeft { left: 1, of: 8, room: 41 })), "{left:?}");
    comes_to(
        "With dpns, CO 3 sts.\n*K3, slide sts to other end of needle, do not turn; rep from * until cord measures 30 cm.",
        &[3],
    );
    comes_to("CO 3 sts.\nK3tog, fasten off.", &[1]);
}

#[test]
fn bound_off_at_the_beginning_of_row_after_row() {
    // 74 - 4 * 7 - 2 * 8 = 30; 82 - 4 * 7 - 2 * 10 = 34.
    comes_to("CO 74 (82) sts.\nBO 7 sts at beg of next 4 rows, then 8 (10) sts at beg of foll 2 rows.", &[30, 34]);
    // 22 - 7 - 7 - 8: the next row, the second from there, and one more.
    comes_to("CO 22 sts.\nBO 7 sts at beg of next row and foll alt row, then 8 sts at beg of foll alt row.", &[0]);
    comes_to("CO 40 sts.\nBO 3 sts at beg of next and foll 2 alt rows.", &[31]);
    let rows = "CO 40 sts.\nRow 1 (RS): Knit.\nBO 3 sts at beg of next 2 rows, then 2 sts at beg of foll 3 rows.\nNext row (RS): Knit.";
    assert_eq!(told(&[rows], 1), []);
    let side = told(&[&rows.replace("foll 3 rows", "foll 2 rows")], 1);
    assert!(matches!(side[0].1[0].1, Fault::Side { again: false, .. }), "{side:?}");
}

#[test]
fn shaping_at_one_edge_takes_one_at_a_time() {
    // 30 - 4 - 4 = 22, and 31 - 8 = 23.
    let neck = "CO 30 (31) sts.\nDec 1 st at neck edge on every row 4 times, then on every foll alt row 4 times.";
    comes_to(neck, &[22, 23]);
    comes_to("CO 30 sts.\nInc 1 st at beg of every RS row 5 times.", &[35]);
    comes_to("CO 30 sts.\nDec 1 st at armhole edge of next 6 rows.", &[24]);
    comes_to("CO 30 sts.\nDec 1 st at end of next 5 rows.", &[25]);
    comes_to("CO 30 sts.\nDec 1 st at each end of next 6 rows.", &[18]);
    let wrong = told(&[&format!("{neck} [20 (23) sts]")], 2);
    assert_eq!(wrong, [("20 (23)".to_owned(), vec![(0, Fault::Stated { says: 20, is: 22 })])]);
}

/// So many on the right needle since the cast-off, the stitch left from it among them (common practice).
#[test]
fn stitches_are_worked_until_there_are_so_many() {
    // 60 - 4 - 28 = 28, and the row ends: 4 + 12 + 28 + 16.
    let neck = |words: &str| {
        format!("CO 60 sts.\nRow 1: Cast off 4 sts, k until there are 12 sts{words}, cast off 28 sts, k to end.")
    };
    for words in ["", " on right needle", " on the right-hand needle after BO", " since the cast-off"] {
        comes_to(&neck(words), &[28]);
    }
    // 66 - 8 = 58, of which 12 are worked and 46 wait.
    comes_to(
        "CO 66 sts.\nRow 1 (RS): Cast off 8 sts, knit until there are 12 sts, place rem 46 sts on a holder.",
        &[12],
    );
    let wrong = told(&["CO 66 sts.\nRow 1 (RS): Cast off 8 sts, knit until there are 12 sts, k45."], 1);
    assert_eq!(wrong[0].1, [(0, Fault::LeftOver { left: 1, had: 66 })]);
    // What remains is another matter.
    comes_to("CO 60 sts.\nRow 1: K until 12 sts rem, k2tog 6 times.", &[54]);
}

#[test]
fn so_often_in_all_has_the_rows_as_written_among_them() {
    // Two fewer each time, five times: 60 - 10.
    let rows = "CO 60 sts.\nRow 1: K2tog, k to end.\nRow 2: P2tog, p to end.\n";
    for words in [
        "Work rows 1 and 2 five times in total.",
        "Work these 2 rows 5 times in total.",
        "Rep rows 1-2 a total of 5 times.",
        "Repeat rows 1-2 another 4 times.",
    ] {
        comes_to(&format!("{rows}{words}"), &[50]);
    }
}

/// Rows are numbered on under another heading, and words may go back to those before it.
#[test]
fn rows_go_on_under_another_heading() {
    comes_to(
        "CO 60 sts.\nRnd 1: Knit.\nRnd 2: Purl.\nIncrease section:\nRnd 3: M1, k to end.\nRepeat rnds 1 and 2 twice.",
        &[61],
    );
    comes_to(
        "Rib pattern:\nRow 1: *K2, p2; rep from * to end.\nRow 2: *K2, p2; rep from * to end.\nScarf:\nCO 40 sts.\nRep rows 1-2 9 times.",
        &[40],
    );
    // A part with a row 1 of its own has no others.
    let own = told(
        &["CO 60 sts.\nRnd 1: Knit.\nRnd 2: Purl.\nRnd 3: Knit.\nCrown:\nRnd 1: Knit.\nRepeat rnds 1-3 twice."],
        1,
    );
    assert_eq!(own[0].1, [(0, Fault::NoRow { row: 2 })]);
}

#[test]
fn a_numbered_row_may_be_worked_every_so_often() {
    // 40 - 1, and five times one less.
    let row = "CO 40 sts.\nRow 1: K2tog, k to end.\n";
    comes_to(&format!("{row}Work Row 1 every 4th row 5 more times."), &[34]);
    comes_to(&format!("{row}Rep row 1 every alt row 5 times more."), &[34]);
}

#[test]
fn a_heel_is_worked_over_some_of_the_stitches() {
    // Half of 56 (64) wait for the instep: 28 (32) are worked, and come back.
    let heel = |words: &str| format!("CO 56 (64) sts.\nRnd 1: Knit.\n{words}\nRow 1: *Sl1, k1; rep from * to end.\n");
    for words in [
        "Heel is worked back and forth over the first 28 (32) sts; leave remaining 28 (32) sts on hold for instep.",
        "The heel flap is worked over the next 28 (32) sts.",
        "Working back and forth on these 28 (32) sts only:",
        "Place the last 28 (32) sts on a holder for instep.",
    ] {
        comes_to(&heel(words), &[28, 32]);
        // 28 + 14 + 28 + 14 = 84, 32 + 16 + 32 + 16 = 96.
        comes_to(
            &format!(
                "{}Next rnd: K28 (32), pick up and knit 14 (16) sts along side of heel flap, k28 (32) instep sts, pick up and knit 14 (16) sts.",
                heel(words)
            ),
            &[84, 96],
        );
    }
    // Other stitches come back than wait.
    let wrong = told(
        &[&format!(
            "{}K28, k30 held instep sts.",
            heel("Heel is worked over the first 28 sts; leave remaining 28 sts on hold for instep.")
        )],
        1,
    );
    assert_eq!(wrong, [("30".to_owned(), vec![(0, Fault::Held { says: 30, had: 28 })])]);
    let short = told(&["CO 20 sts.\nThe heel is worked back and forth over the next 28 sts."], 1);
    assert_eq!(short, [("28".to_owned(), vec![(0, Fault::Short { by: 8, had: 20 })])]);
}

#[test]
fn a_count_that_a_sentence_comes_to_is_known() {
    comes_to(
        "CO 32 sts.\nCont to dec in this manner, working 1 fewer st between decs, until 8 sts rem.\nRnd 1: *K2tog; rep from * around.",
        &[4],
    );
    // A garter tab: what is on the needle stays, so only the count behind it tells.
    comes_to(
        "CO 3 sts. Knit 6 rows. Turn work 90 degrees and pick up and knit 3 sts along the edge, then pick up and knit 3 sts from CO edge. [9 sts]\nRow 1: K9.",
        &[9],
    );
}
