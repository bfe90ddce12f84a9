//! Colours that rows name: the trade's short words, and a pattern's own names.

use super::chart::draft;
use ballband::measure::RunStyle;
use ballband::notation::chart::{Draft, build};
use ballband::notation::compare::{Unlike, Words, compare};
use ballband::notation::rows::{Counts, Doing, Lexicon, Written, follow, read, read_items};

/// A pattern in Teal (CC), Sea Glass, Rose and Row (colours) with labels of their own; MC's shade is chalk.
fn lexicon() -> Lexicon {
    let mut lexicon = Lexicon::default();
    for (name, label) in [("MC", "MC"), ("CC", "CC"), ("chalk", "MC"), ("Teal", "CC")] {
        lexicon.name_colour(name, label);
    }
    for name in ["Sea Glass", "Sea", "Rose", "Row", "Knit"] {
        lexicon.name_colour(name, name);
    }
    lexicon
}

fn written(text: &str) -> Written {
    read(text, &lexicon(), RunStyle::default())
}

/// Each of these is 20 stitches worked as they are, in colours that are named in many ways (common practice).
#[test]
fn stitches_may_have_their_colours() {
    for row in [
        "K20 MC",
        "K10 MC, k10 CC",
        "*K1 A, k3 B; rep from * to end",
        "*K1 H, k3 G; rep from * to end",
        "K2 CC5, k18 CC12",
        "K10 in Teal, k10 in Sea Glass",
        "K10 teal, k10 sea glass",
        "K10 with chalk, k to end with Rose",
        "K10 in Row, k10 in Knit",
        "With Teal, k20",
        "Using Sea Glass, k to end",
        "With CC, *k1, p1; rep from * to end",
        "With Teal, k10, with Rose, k10",
        "MC: k10, CC: k10",
        "K to last 4 sts in Teal, k4 in Rose",
        "*With Teal, k1, with Rose, k1; rep from * to end",
        "[K1 Teal, k1 Rose] 10 times",
        "[K1, p1] 5 times in Teal, [k1, p1] 5 times in Rose",
        "Knit in Teal",
        "Knit with Sea Glass",
        "Purl in colour A",
        "K10, join Teal, k10",
        "K10 (MC), k10 (in Teal)",
        "K10 (MC), k10 (colour Teal)",
        "(MC) k10, (Teal) k10",
        "*K3A, k1C; rep from * to end",
        "*K3MC, p1CC2; rep from * to end",
        "Using colour Teal only, k20",
        "Knit (colour A)",
        "With MC, k10, drop MC, with Teal, k10",
        "K10, break MC and join CC, k10",
        "*1 MC, 3 CC; rep from * to end",
        "K10 MC, 4 CC, 6 in Rose",
        "With MC and CC held together, k20",
        "With MC and Rose, k20",
        "[K1, p1] in Teal 5 times, k10",
        "(K1, p1) in MC to end",
        "K10 in the main colour, k10 contrast colour",
        "With main color, k20",
    ] {
        for label in ["Row 1: ", ""] {
            let text = format!("Cast on 20 sts.\n{label}{row}. [20 sts]\nRow 2: K20.");
            let written = written(&text);
            for statement in &written.statements {
                assert_eq!(statement.trouble, None, "{text}");
            }
            assert!(matches!(written.statements[1].doing, Doing::Row { .. }), "{text}: {:#?}", written.statements[1]);
            assert_eq!(follow(&[written], 1).told, [], "{text}");
        }
    }
}

#[test]
fn sentences_of_rows_may_have_colours() {
    let doing = |text: &str| written(text).statements[0].doing.clone();
    for (text, rows) in [
        ("Knit 4 rows in Teal.", 4),
        ("Knit 4 rows in teal and 2 rows in Rose.", 0),
        ("With Teal, knit 1 rnd.", 1),
        ("With MC, knit 2 rounds.", 2),
        ("Using A, purl 3 rows.", 3),
        ("Knit 2 rows in CC1.", 2),
        ("Purl 2 rows with sea glass.", 2),
        ("In Row, knit 2 rows.", 2),
    ] {
        let rows = (rows > 0).then_some(rows);
        assert_eq!(doing(text), Doing::Plain { rows }, "{text}");
    }
    assert_eq!(doing("With Teal, bind off all sts."), Doing::BindOff);
    assert!(matches!(doing("With Teal, cast on 20 sts."), Doing::CastOn(_)));
    assert!(matches!(doing("With CC, repeat rows 1-4 twice more."), Doing::Repeat(_)));
    for text in ["With Teal and the smaller needle.", "Break Teal.", "Join Rose.", "With MC, join in the round."] {
        assert_eq!(doing(text), Doing::Aside, "{text}");
    }
    // Nobody knows what these work.
    for text in ["Knit 4 rows in Mauve.", "Knit 4 rows in moth stripes."] {
        assert_eq!(doing(text), Doing::Unsaid, "{text}");
    }
}

/// What is worked goes before a colour of that name: 20 stitches, of which some are worked by words that are colours too.
#[test]
fn a_word_for_a_stitch_is_no_colour() {
    let mut lexicon = lexicon();
    lexicon.add("Rose", Counts::new(1, 3));
    lexicon.add("B", Counts::new(1, 1));
    let ends = |text: &str, after: i64| {
        let text = format!("Cast on 20 sts.\n{text} [{after} sts]");
        let written = read(&text, &lexicon, RunStyle::default());
        assert_eq!(written.statements[1].trouble, None, "{text}");
        assert_eq!(follow(&[written], 1).told, [], "{text}");
    };
    // Rose makes two more each time, unless "in" says that it is the colour.
    ends("Row 1: K9, Rose, k10.", 22);
    ends("Row 1: K9, rose twice, k9.", 24);
    ends("Row 1: K9 in Rose, k11.", 20);
    ends("Row 1: K9, B, k10 A.", 20);
    ends("Row 1: K9 in B, k11.", 20);
    ends("Row 1: K10, knit to end.", 20);
    ends("Knit 1 row.", 20);
    ends("Row 1: *K1, knit 1; rep from * to end.", 20);
    // Without the pattern's colours its names are unread, as before.
    let unread = read("Row 1: K9 in Teal, k11.", &Lexicon::default(), RunStyle::default());
    assert!(unread.statements[0].trouble.is_some());
    let unread = read("Row 1: K9 mc, k11.", &Lexicon::default(), RunStyle::default());
    assert!(unread.statements[0].trouble.is_some());
}

/// Stranded rows of four: two of the main colour, then two of the other, read from the right.
#[test]
fn names_are_held_against_the_key_of_a_chart() {
    let chart = build(&Draft { round: true, ..draft(&[(".", "=MC"), ("#", "=CC")], &["##.."]) }).unwrap();
    let lexicon = lexicon();
    let unlike = |text: &str| {
        let items = read_items(text, &lexicon, RunStyle::default()).unwrap_or_else(|bad| panic!("{text}: {bad:?}"));
        match compare(&chart, 0, Words { items: &items, text, lexicon: &lexicon }, 0) {
            None => None,
            Some(Unlike::Stitch { number, chart, words, .. }) => Some((number, chart.unwrap(), words.unwrap())),
            Some(other) => panic!("{other:?}"),
        }
    };
    for text in [
        "*K2 MC, k2 CC; rep from * around",
        "*K2 chalk, k2 teal; rep from * around",
        "*K2 in Chalk, k2 in Teal; rep from * around",
        "*With MC, k2, with Teal, k2; rep from * around",
        "*K2, k2 in Teal; rep from * around",
        "*[K1] twice in MC, k2 CC; rep from * around",
        "*2 MC, 2 Teal; rep from * around",
        "*K2 in main colour, k2 in contrasting colour; rep from * around",
        "*Join MC, k2, break MC and join CC, k2; rep from * around",
        "*With MC and CC held together, k2, k2; rep from * around",
        // After stitches with colours of their own nobody knows what one without is worked in.
        "With MC, *k2, k2 CC; rep from * around",
        "With CC, [k1] twice in MC, k2, *k2 MC, k2 CC; rep from * around",
    ] {
        assert_eq!(unlike(text), None, "{text}");
    }
    let told = |number, chart: &str, words: &str| Some((number, chart.to_owned(), words.to_owned()));
    assert_eq!(unlike("*K2 teal, k2 MC; rep from * around"), told(1, "k MC", "k CC"));
    assert_eq!(unlike("*K2 MC, k2 in Rose; rep from * around"), told(3, "k CC", "k Rose"));
    assert_eq!(unlike("*2 MC, 1 Teal, 1 MC; rep from * around"), told(4, "k CC", "any stitch MC"));
    assert_eq!(unlike("*Join CC, k2, join MC, k2; rep from * around"), told(1, "k MC", "k CC"));
    assert_eq!(unlike("With Teal, k to end"), told(1, "k MC", "k CC"));
    assert_eq!(unlike("*With MC, k3, with CC, k1; rep from * around"), told(3, "k CC", "k MC"));
    assert_eq!(unlike("*[K1] twice in MC, [k1] twice in Rose; rep from * around"), told(3, "k CC", "k Rose"));
}

#[test]
fn a_name_that_two_colours_have_is_neithers() {
    let mut lexicon = Lexicon::default();
    lexicon.name_colour("slate", "MC");
    lexicon.name_colour("slate", "CC");
    let chart = build(&Draft { round: true, ..draft(&[(".", "=MC"), ("#", "=CC")], &["##.."]) }).unwrap();
    let text = "*K2 slate, k2 slate; rep from * around";
    let items = read_items(text, &lexicon, RunStyle::default()).unwrap();
    assert_eq!(compare(&chart, 0, Words { items: &items, text, lexicon: &lexicon }, 0), None);
}

/// A row in two colours of which the other one is only slipped (common practice): the slipped stitch is not in the row's yarn.
#[test]
fn a_slipped_stitch_keeps_the_colour_it_had() {
    let key = [(".", "=CC"), ("v", "sl1 wyib=MC")];
    let chart = build(&draft(&key, &[".v.v"])).unwrap();
    let lexicon = lexicon();
    let unlike = |text: &str| {
        let items = read_items(text, &lexicon, RunStyle::default()).unwrap();
        compare(&chart, 0, Words { items: &items, text, lexicon: &lexicon }, 0).is_some()
    };
    assert!(!unlike("With Teal, *sl 1 wyib, k1; rep from * to end"));
    assert!(unlike("With MC, *sl 1 wyib, k1; rep from * to end"));
}

/// Rows of the examples, whose counts are known, with a colour before them and with one behind every stitch that is counted.
#[test]
fn colours_change_no_count() {
    // Behind a turn the next row is not of all stitches.
    let rows = include_str!("rows.txt").lines().filter(|line| !line.starts_with('#') && !line.contains("turn"));
    let mut seen = 0;
    for line in rows {
        let parts: Vec<&str> = line.split(" | ").collect();
        let [_, row, _, _, tried] = parts[..] else { panic!("{line}") };
        let (before, after) = tried.split_once('>').unwrap();
        let run = |numbers: &str| {
            let (first, rest) = numbers.split_once(';').unwrap_or((numbers, ""));
            if rest.is_empty() { first.to_owned() } else { format!("{first} ({})", rest.replace(';', ", ")) }
        };
        let sizes = before.split(';').count().max(after.split(';').count()).max(3);
        // A number behind a `k` or a `p` and a comma: `k2,` becomes `k2 in Teal,`.
        let mut coloured = String::new();
        for (at, piece) in row.split(',').enumerate() {
            let word = piece.rsplit([' ', '*', '[', '(']).next().unwrap_or_default().to_lowercase();
            let counted = word.strip_prefix(['k', 'p']).is_some_and(|rest| rest.parse::<u32>().is_ok());
            if at > 0 {
                coloured.push(',');
            }
            coloured.push_str(piece);
            if counted && row.split(',').count() > at + 1 {
                coloured.push_str([" in Teal", " MC", " sea glass", " with A"][at % 4]);
                seen += 1;
            }
        }
        for words in [format!("With Teal, {row}"), coloured.clone(), format!("With MC, {coloured}")] {
            let text = format!("Cast on {} sts.\nRow 1: {words}\nRow 2: K{}.", run(before), run(after));
            let written = written(&text);
            for statement in &written.statements {
                assert_eq!(statement.trouble, None, "{text}");
            }
            assert_eq!(follow(&[written], sizes).told, [], "{text}");
        }
    }
    assert!(seen > 20, "{seen}");
}

/// "In next st" and "in back" say where a stitch is worked, whatever yarns are called.
#[test]
fn words_for_a_place_are_no_colours() {
    let mut lexicon = Lexicon::default();
    for name in ["Next", "Back", "Yarn", "The Same"] {
        lexicon.name_colour(name, name);
    }
    // One is taken and three are left, so 22; the slipped stitch is one of the others.
    let text = "Cast on 20 sts.\nRow 1: (K1, yo, k1) in next st, sl 1 with yarn in back, k18. [22 sts]\nRow 2: (K1, yo, k1) all in the same st, k21. [24 sts]";
    let written = read(text, &lexicon, RunStyle::default());
    for statement in &written.statements {
        assert_eq!(statement.trouble, None, "{statement:#?}");
    }
    assert_eq!(follow(&[written], 1).told, []);
}
