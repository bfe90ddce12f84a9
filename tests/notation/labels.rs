//! Labels of rows and names of parts, as houses write them.

use super::blocks::{end, told};
use super::named::last;
use super::written;
use ballband::notation::rows::{Doing, Label};

pub fn label(row: &str) -> Label {
    match written(row).statements.remove(0).doing {
        Doing::Row { label: Some(label), .. } => label,
        other => panic!("{row}: {other:?}"),
    }
}

#[test]
fn the_next_rows_are_so_many() {
    // 40 - 4, 44 - 5, 48 - 6 in rows that each take one.
    let some = "Cast on 40 (44, 48) sts.\nNext 4 (5, 6) rows: K2tog, k to end.";
    assert_eq!(end(&[some], 3), [Some(36), Some(39), Some(42)]);
    let noted = format!("{some} (1 st dec'd)\nRepeat last 4 rows once more. [32 (35, 38) sts]");
    assert_eq!(end(&[&noted], 3), [Some(32), Some(35), Some(38)]);
    assert_eq!(
        end(&[&some.replace("4 (5, 6)", "3").replace("end.", "end. (3 sts dec'd)")], 3),
        [Some(37), Some(41), Some(45)]
    );
    assert_eq!(told(&[&some.replace("end.", "end. (2 sts dec'd)")], 3).len(), 1);
    // Shoulders, said once or twice: 40 - 2 × 6.
    for row in ["BO 6 sts, work to end.", "BO 6 sts at beg of row, k to end.", "BO 6 sts at beg of next 2 rows."] {
        assert_eq!(end(&[&format!("Cast on 40 sts.\nNext 2 rows: {row} [28 sts]")], 1), [Some(28)], "{row}");
    }
    assert_eq!(end(&["Cast on 40 sts.\nFoll 3 rnds: Inc 1 st at each end."], 1), [Some(46)]);
    // Eight in each or in all?
    assert_eq!(last("Cast on 40 sts.\nNext 4 rows: Knit, increasing 8 sts evenly.", 1), [None]);
    // Too many to work.
    let begun = std::time::Instant::now();
    let many = (0..40).map(|_| "Next 99999 rows: K2tog, yo, k to end.\n").collect::<String>();
    told(&[&format!("Cast on 40 sts.\n{many}")], 1);
    assert!(begun.elapsed().as_secs() < 5, "{:?}", begun.elapsed());
    let short = written("Next 4 (5) rows: K.").numbers;
    assert_eq!(short.iter().map(|number| number.values.len()).collect::<Vec<_>>(), [2]);
}

#[test]
fn labels_may_be_short_or_end_with_a_dash() {
    for (row, numbers) in [
        ("R1: K2.", vec![1]),
        ("R 12 (RS): K2.", vec![12]),
        ("Row1: K2.", vec![1]),
        ("R1-R4: K2.", vec![1, 2, 3, 4]),
        ("Row 1 - K2.", vec![1]),
        ("Row 1 – K2, *p2; rep from * to end.", vec![1]),
        ("Rows 1 - 4: K2.", vec![1, 2, 3, 4]),
        ("Rows 1 - 4 — K2.", vec![1, 2, 3, 4]),
        ("Rnds 1 and 3 (RS) - K2.", vec![1, 3]),
        ("Short row 3 (WS) - P2, turn.", vec![3]),
    ] {
        assert_eq!(label(row).numbers, numbers, "{row}");
        assert_eq!(written(row).statements[0].trouble, None, "{row}");
    }
    let text =
        "Cast on 40 sts.\nR1 - K2tog, k to end.\nR 2: As R1.\nRepeat R1-2 twice more. [34 sts]\nR3: Rep R2. [33 sts]";
    assert_eq!(end(&[text], 1), [Some(33)]);
    // A dash elsewhere is none of a label.
    for row in ["K1 - k2.", "Rib 2 - k2.", "Repeat row 1 - 3 times more.", "Row by row - knit."] {
        let doing = written(row).statements.remove(0).doing;
        assert!(!matches!(doing, Doing::Row { label: Some(_), .. }), "{row}: {doing:?}");
    }
}

#[test]
fn a_heading_may_have_a_number_or_brackets() {
    for heading in [
        "Sleeves (make 2)",
        "Sleeve 1",
        "Part 1 – Cuff",
        "Part 2, body",
        "Sleeves 1 and 2",
        "Section 3 (RS facing)",
        "Front & back",
        "Body (all sizes)",
    ] {
        let text = format!("Cast on 20 sts.\nRow 1: Knit.\n{heading}:\nRow 1: K2tog, k to end. [19 sts]");
        assert_eq!(end(&[&text], 1), [Some(19)], "{heading}");
        assert!(matches!(written(&text).statements[2].doing, Doing::Heading { chart: false, .. }), "{heading}");
    }
    for line in [
        "K2, p2:",
        "Row 1:",
        "Front (k2, p2):",
        "Work 4 rows as foll:",
        "Cast on 40 sts as follows:",
        "K2tog 3:",
        "Size 4:",
    ] {
        let doing = written(line).statements.first().map(|statement| statement.doing.clone());
        assert!(!matches!(doing, Some(Doing::Heading { .. })), "{line}: {doing:?}");
    }
}

/// Between a dash and a colon stand sides and names of rows; what is worked there is no label.
#[test]
fn what_is_worked_behind_a_dash_is_no_label() {
    let side = label("Row 3 - WS: purl.");
    assert_eq!((side.numbers, side.side), (vec![3], Some(ballband::notation::rows::Side::Wrong)));
    assert_eq!(label("Row 5 - Dec row: k2tog, k to end.").at.len(), "Row 5 - Dec row".len());
    assert_eq!(label("Row 1 - Bind off: purl.").at.len(), "Row 1".len());
    // What cannot be read there is told of, and not swallowed with the label.
    for text in ["Row 1 (RS) - Dec each side: k to end.", "Row 1 - Bind off: purl."] {
        assert!(written(text).statements.iter().any(|statement| statement.trouble.is_some()), "{text}");
    }
}

#[test]
fn every_row_is_nobody_knows_how_many() {
    for words in ["Every row", "Each rnd", "All rows", "Every RS row"] {
        assert_eq!(label(&format!("{words}: K.")).rows, None, "{words}");
        let text = format!("Cast on 40 sts.\n{words}: K2tog, k to end.\nNext row: K39.");
        assert_eq!(told(&[&text], 1).len(), 1, "{words}");
        // 40 - 10 is believed, and a plain row changes nothing however often it is worked.
        let known = format!("Cast on 40 sts.\n{words}: K2tog, k to end. [30 sts]\nNext row: K30.");
        assert_eq!(end(&[&known], 1), [Some(30)], "{words}");
        assert_eq!(end(&[&format!("Cast on 40 sts.\n{words}: Knit.\nNext row: K40.")], 1), [Some(40)], "{words}");
    }
}
