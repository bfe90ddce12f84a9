//! Size runs as values.

use ballband::measure::{FabricLength, Inch, SizeRun, System, YarnLength};

#[test]
fn a_lone_value_serves_every_size() {
    let run = SizeRun::one(5);
    assert!(run.is_one() && run.serves(9) && run.len() == 1);
    assert_eq!(run.get(0), Some(&5));
    assert_eq!(run.get(8), Some(&5));
}

#[test]
fn a_run_has_a_value_for_each_size_or_none() {
    let run = SizeRun::from_values(vec![Some(1_i32), None, Some(3)]);
    assert_eq!((run.get(0), run.get(1), run.get(2), run.get(3)), (Some(&1), None, Some(&3), None));
    assert!(run.serves(3) && !run.serves(2));
    assert_eq!(run.map(|value| value * 2), SizeRun::from_values(vec![Some(2), None, Some(6)]));
    assert_eq!(run.try_map(|value| value.checked_sub(1)), Some(SizeRun::from_values(vec![Some(0), None, Some(2)])));
    assert_eq!(run.try_map(|value| (*value > 1).then_some(())), None);
    assert_eq!(run.present().copied().collect::<Vec<_>>(), [1, 3]);
    assert_eq!(run.iter().collect::<Vec<_>>(), [Some(&1), None, Some(&3)]);
    assert_eq!(run.show_with(ToString::to_string), "1 (–, 3)");
}

#[test]
fn a_page_shows_the_unit_once() {
    let inches = |quarters: i64| Some(FabricLength::from_nanometres(quarters * 6_250_000));
    let run = SizeRun::from_values(vec![inches(136), inches(149), None]);
    assert_eq!(run.show(System::Imperial, Inch::TRADE), "34 (37¼, –) in");
    assert_eq!(run.show(System::Metric, Inch::TRADE), "85 (93, –) cm");
    let run = SizeRun::from_values(vec![YarnLength::from_metres(990), YarnLength::from_metres(1085)]);
    assert_eq!(run.show(System::Metric, Inch::TRADE), "990 (1085) m");
}

#[test]
fn a_run_without_places_is_harmless() {
    let run = SizeRun::<FabricLength>::from_values(Vec::new());
    assert!(run.is_empty() && !run.is_one());
    assert_eq!(run.get(0), None);
    assert_eq!(run.show_with(|_| String::new()), "");
}
