//! Every notation of a size run, one row each.

use ballband::measure::{Bracket, Count, FabricLength, Inch, RunStyle, System, YarnLength, read_run};

/// The values of a run in nanometres as text, `–` for a size without one; a second system after `|`.
fn fabric(text: &str) -> String {
    match read_run::<FabricLength>(text, RunStyle::default(), Inch::TRADE) {
        Ok(run) => {
            let exact = |length: &FabricLength| {
                length.show_exact(System::Metric, Inch::TRADE).trim_end_matches(" cm").to_owned()
            };
            let places = |values: &ballband::measure::SizeRun<FabricLength>| {
                values.iter().map(|value| value.map_or("–".to_owned(), exact)).collect::<Vec<_>>().join(" ")
            };
            match &run.other {
                Some(other) => format!("{} | {}", places(&run.values), places(&other.values)),
                None => places(&run.values),
            }
        }
        Err(misread) => format!("{misread}"),
    }
}

#[test]
fn every_notation_of_a_measurement() {
    // text | values in centimetres
    let rows = [
        ("84 (92, 104) cm", "84 92 104"),
        ("84 (92,104) cm", "84 92 104"),
        ("84(92,104)cm", "84 92 104"),
        ("  84  ( 92 , 104 )  cm  ", "84 92 104"),
        ("84 (94, 104) (114, 124) cm", "84 94 104 114 124"),
        ("84 (94, 104)(114) cm", "84 94 104 114"),
        ("84 [94, 104] cm", "84 94 104"),
        ("84 [94:104:114] cm", "84 94 104 114"),
        ("84 [94 : 104.5 : 114] cm", "84 94 104.5 114"),
        ("84 {94, 104} cm", "84 94 104"),
        ("84 (92, 100)[108, 116]{124} cm", "84 92 100 108 116 124"),
        ("84 (92, 100) 108 (116, 124) cm", "84 92 100 108 116 124"),
        ("84 (92, 100) 108 cm", "84 92 100 108"),
        ("84/94/104 cm", "84 94 104"),
        ("84 / 94 / 104 cm", "84 94 104"),
        ("84/94/104½ cm", "84 94 104.5"),
        ("84/94.5/104 cm", "84 94.5 104"),
        ("84/–/104 cm", "84 – 104"),
        ("84/94 cm", "84 94"),
        ("84 cm/94 cm/104 cm", "84 94 104"),
        ("84 (92; 100) cm", "84 92 100"),
        ("12,5 (13; 13,5) cm", "12.5 13 13.5"),
        ("12,5 cm", "12.5"),
        ("84 cm", "84"),
        ("84 cm (92 cm, 104 cm)", "84 92 104"),
        ("84 cm (92 cm, 104 cm) (114 cm)", "84 92 104 114"),
        ("84 (92, 104 cm)", "84 92 104"),
        ("840 (920, 1040) mm", "84 92 104"),
        ("34 (37¼, 41)\" / 85 (93, 102.5) cm", "85 93.125 102.5 | 85 93 102.5"),
        ("85 (93, 102.5) cm / 34 (37¼, 41)″", "85 93 102.5 | 85 93.125 102.5"),
        ("34/37¼/41 in / 85/93/102.5 cm", "85 93.125 102.5 | 85 93 102.5"),
        ("34\"/85 cm", "85 | 85"),
        ("34 in (37 in) / 85 cm (92.5 cm)", "85 92.5 | 85 92.5"),
        ("34 (37¼, 41) in", "85 93.125 102.5"),
        ("34 (37¼, 41) inches", "85 93.125 102.5"),
        ("34\" (37¼\", 41\")", "85 93.125 102.5"),
        ("½ (1½, 2) in", "1.25 3.75 5"),
        ("1/2 (1 1/2, 1-1/2, 2) in", "1.25 3.75 3.75 5"),
        ("1/2 in", "1.25"),
        ("1 1/2 in", "3.75"),
        ("1-1/2 in", "3.75"),
        ("1½\" (1¾\")", "3.75 4.375"),
        ("– (–, 4, 6) cm", "– – 4 6"),
        ("- (—, 4, 0) cm", "– – 4 –"),
        ("0 (0, 4, 6) cm", "– – 4 6"),
        ("– (–, –)", "– – –"),
        ("–", "–"),
        ("-", "–"),
        ("– cm (84 cm)", "– 84"),
        ("-5 (-5, 0.0, 2.5) cm", "-5 -5 0 2.5"),
    ];
    for (text, values) in rows {
        assert_eq!(fabric(text), values, "{text}");
    }
}

#[test]
fn counts_need_no_unit_but_may_have_one() {
    let rows = [
        ("84 (92, 100, 108) sts", "84 (92, 100, 108)"),
        ("1 (1, 2, 2, 0)", "1 (1, 2, 2, –)"),
        ("– (–, 4, 6) times", "– (–, 4, 6)"),
        ("0 (0, 4, 6) times", "– (–, 4, 6)"),
        ("12 rows", "12"),
        ("12", "12"),
        ("0", "–"),
        ("12/14/16", "12 (14, 16)"),
        ("2/4/6", "2 (4, 6)"),
    ];
    for (text, shown) in rows {
        let run = read_run::<Count>(text, RunStyle::default(), Inch::TRADE).unwrap();
        assert_eq!(run.values.show(System::Metric, Inch::TRADE), shown, "{text}");
    }
}

#[test]
fn the_designs_own_needs() {
    let text = "820 (905, 990, 1085, 1175, 1270, 1365, 1455, 1550) m";
    let run = read_run::<YarnLength>(text, RunStyle::default(), Inch::TRADE).unwrap();
    assert_eq!(run.values.len(), 9);
    assert_eq!(run.system, Some(System::Metric));
    assert_eq!(run.values.get(3).copied(), YarnLength::from_metres(1085));
    let places: Vec<&str> = run.ranges.iter().map(|at| &text[at.clone()]).collect();
    assert_eq!(places, ["820", "905", "990", "1085", "1175", "1270", "1365", "1455", "1550"]);
}

#[test]
fn every_value_keeps_its_place_in_both_systems() {
    let text = "34 (37¼, 41)\" / 85 (93, 102.5) cm";
    let run = read_run::<FabricLength>(text, RunStyle::default(), Inch::TRADE).unwrap();
    assert_eq!(run.system, Some(System::Imperial));
    let places: Vec<&str> = run.ranges.iter().map(|at| &text[at.clone()]).collect();
    assert_eq!(places, ["34", "37¼", "41"]);
    let other = run.other.as_ref().unwrap();
    let places: Vec<&str> = other.ranges.iter().map(|at| &text[at.clone()]).collect();
    assert_eq!(places, ["85", "93", "102.5"]);
    assert_eq!(other.system, System::Metric);
    // 37¼ in is 93.125 cm at the trade's inch: a quarter of a centimetre of slack accepts 93, none does not.
    assert_eq!(run.apart(2_500_000), Vec::<usize>::new());
    assert_eq!(run.apart(0), vec![1]);
}

#[test]
fn the_house_says_which_bracket_holds_sizes() {
    let read = |text, sizes_in| {
        read_run::<Count>(text, RunStyle { sizes_in }, Inch::TRADE)
            .map(|run| run.values.len())
            .map_err(|misread| (misread.problem.code(), misread.at))
    };
    assert_eq!(read("84 (92, 104)", Some(Bracket::Round)), Ok(3));
    assert_eq!(read("84 [92, 104]", Some(Bracket::Square)), Ok(3));
    assert_eq!(read("84 (92, 104) {112}", Some(Bracket::Round)), Ok(4));
    assert_eq!(read("84 (92, 104) [3]", None), Ok(4));
    assert_eq!(read("84 (92, 104) [3]", Some(Bracket::Round)), Err(("house-bracket", 13..14)));
    assert_eq!(read("84 [92, 104]", Some(Bracket::Round)), Err(("house-bracket", 3..4)));
    assert_eq!(read("84 (92, 104)", Some(Bracket::Square)), Err(("house-bracket", 3..4)));
}
