//! No text is ever a panic, and every fault stands inside its text.

use ballband::measure::{
    Amount, Bracket, Count, FabricLength, Inch, Mass, Misread, Needle, NeedleSize, Percent, Price, PutUp, RunStyle,
    SizeNames, System, YarnLength, read_run, yaml_pieces,
};
use proptest::prelude::*;

fn sound<T>(text: &str, read: Result<T, Misread>) {
    if let Err(misread) = read {
        assert!(text.get(misread.at.clone()).is_some(), "{text:?}: {misread:?}");
        assert!(!misread.to_string().is_empty());
        assert!(!misread.help().is_empty());
        assert!(!misread.problem.code().is_empty());
    }
}

fn read_everything(text: &str) {
    sound(text, YarnLength::parse(text));
    sound(text, Mass::parse(text));
    sound(text, FabricLength::parse(text, Inch::TRADE));
    sound(text, Percent::parse(text));
    sound(text, Count::parse(text));
    sound(text, PutUp::parse(text));
    sound(text, Amount::parse(text));
    sound(text, Needle::parse(text, Inch::EXACT));
    sound(text, NeedleSize::parse(text));
    sound(text, Price::parse(text));
    sound(text, Inch::parse(text));
    let _ = System::of(text);
    for sizes_in in [None, Some(Bracket::Round), Some(Bracket::Square)] {
        let style = RunStyle { sizes_in };
        sound(text, SizeNames::parse(text, style));
        sound(text, read_run::<Count>(text, style, Inch::TRADE));
        sound(text, read_run::<YarnLength>(text, style, Inch::TRADE));
        let run = read_run::<FabricLength>(text, style, Inch::TRADE);
        if let Ok(run) = &run {
            assert_eq!(run.ranges.len(), run.values.len());
            assert!(run.ranges.iter().all(|at| text.get(at.clone()).is_some_and(|place| !place.is_empty())));
        }
        sound(text, run);
    }
    let pieces: Vec<&str> = text.split(',').collect();
    let _ = yaml_pieces::run_from_pieces(&pieces);
    let _ = yaml_pieces::run_from_list_item(text);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1000))]

    #[test]
    fn on_any_text(text in "\\PC{0,40}") {
        read_everything(&text);
    }

    #[test]
    fn on_text_that_looks_like_a_run(text in "[0-9 ,;:./()\\[\\]{}½¼⁄–—−\\-\"″cminydgozsk%£$UKS]{0,30}") {
        read_everything(&text);
    }

    #[test]
    fn on_any_bytes_at_all(text in any::<String>()) {
        read_everything(&text);
    }
}
