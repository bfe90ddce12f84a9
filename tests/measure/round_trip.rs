//! What is shown exactly is read again as the same.

use ballband::measure::{
    Amount, Count, FabricLength, Inch, Mass, Needle, NeedleSize, Percent, Price, PutUp, RunStyle, SizeNames, SizeRun,
    System, Value, YarnLength, read_run,
};
use proptest::prelude::*;

fn system() -> impl Strategy<Value = System> {
    prop_oneof![Just(System::Metric), Just(System::Imperial)]
}

fn inch() -> impl Strategy<Value = Inch> {
    prop_oneof![Just(Inch::TRADE), Just(Inch::EXACT)]
}

/// Values for a run: the first always there, so that the run is not all dashes.
fn values(least: i64) -> impl Strategy<Value = Vec<Option<i64>>> {
    let one = prop_oneof![4 => (least..1_000_000_000_000).prop_map(Some), 1 => Just(None)];
    proptest::collection::vec(one, 1..20).prop_map(|mut values| {
        if let Some(first) = values.first_mut() {
            *first = Some(first.unwrap_or(7_000_000));
        }
        // A lone 0 would mean "not in this size".
        values.iter_mut().flatten().for_each(|value| *value += i64::from(*value == 0));
        values
    })
}

fn run<T: Value + PartialEq + std::fmt::Debug>(values: &[Option<i64>], system: System, inch: Inch) {
    let run = SizeRun::from_values(values.iter().map(|value| value.map(T::from_small)).collect());
    let text = run.show_exact(system, inch);
    let read = read_run::<T>(&text, RunStyle::default(), inch).expect(&text);
    assert_eq!(read.values, run, "{text}");
    assert_eq!(read.values.len(), values.len());
    assert_eq!(SizeRun::parse(&text, RunStyle::default(), inch), Ok(run));
}

proptest! {
    #[test]
    fn lengths_of_yarn(micrometres in 0..=i64::MAX, system in system()) {
        let length = YarnLength::from_micrometres(micrometres);
        prop_assert_eq!(YarnLength::parse(&length.show_exact(system)), Ok(length));
    }

    #[test]
    fn masses(nanograms in 0..=i64::MAX, system in system()) {
        let mass = Mass::from_nanograms(nanograms);
        prop_assert_eq!(Mass::parse(&mass.show_exact(system)), Ok(mass));
    }

    #[test]
    fn lengths_of_fabric(nanometres: i64, system in system(), inch in inch()) {
        let length = FabricLength::from_nanometres(nanometres);
        prop_assert_eq!(FabricLength::parse(&length.show_exact(system, inch), inch), Ok(length));
        prop_assert_eq!(FabricLength::parse(&length.show_mm(), inch), Ok(length));
    }

    #[test]
    fn shares_and_counts(number in 0..=i64::MAX) {
        let share = Percent::from_hundredths(-number);
        prop_assert_eq!(Percent::parse(&share.show()), Ok(share));
        let count = Count::from_thousandths(number);
        prop_assert_eq!(Count::parse(&count.show()), Ok(count));
    }

    #[test]
    fn put_ups_and_amounts(length in 1..=i64::MAX, mass in 1..=i64::MAX, system in system()) {
        let put_up = PutUp { length: YarnLength::from_micrometres(length), mass: Mass::from_nanograms(mass) };
        prop_assert_eq!(PutUp::parse(&put_up.show_exact(system)), Ok(put_up));
        for amount in [
            Amount::Length(put_up.length),
            Amount::Mass(put_up.mass),
            Amount::Skeins(Count::from_thousandths(length)),
        ] {
            prop_assert_eq!(Amount::parse(&amount.show_exact(system)), Ok(amount));
        }
    }

    #[test]
    fn prices(minor in 0..=i64::MAX, currency in "[A-Z]{3}") {
        let price = Price { minor, currency };
        prop_assert_eq!(Price::parse(&price.show_exact()), Ok(price.clone()));
        prop_assert_eq!(Price::parse(&price.show()), Ok(price));
    }

    #[test]
    fn needles(
        diameter in 1_i64..5_000_000_000,
        length in proptest::option::of(50_000_000_i64..10_000_000_000),
        words in prop_oneof![Just(""), Just("circular"), Just("dpns"), Just("fixed circular")],
        kind in 0..3,
        system in system(),
        inch in inch(),
    ) {
        let size = match kind {
            0 => NeedleSize::Metric(FabricLength::from_nanometres(diameter)),
            1 => NeedleSize::Us(format!("{}.5", diameter % 50)),
            _ => NeedleSize::Uk("0".repeat(usize::try_from(diameter % 4).unwrap() + 1)),
        };
        prop_assert_eq!(NeedleSize::parse(&size.show()), Ok(size.clone()));
        let circular = length.map(FabricLength::from_nanometres);
        let needle = Needle { size, circular, words: words.to_owned() };
        prop_assert_eq!(Needle::parse(&needle.show_exact(system, inch), inch), Ok(needle));
    }

    #[test]
    fn size_runs(values in values(0), system in system(), inch in inch()) {
        run::<YarnLength>(&values, system, inch);
        run::<Mass>(&values, system, inch);
        run::<FabricLength>(&values, system, inch);
        run::<Count>(&values, system, inch);
        run::<Percent>(&values, system, inch);
    }

    #[test]
    fn runs_with_ease_below_nothing(values in values(-1_000_000_000), system in system(), inch in inch()) {
        run::<FabricLength>(&values, system, inch);
    }

    #[test]
    fn a_run_in_any_brackets_has_as_many_values(
        first in 1..1000_u32,
        groups in proptest::collection::vec(proptest::collection::vec(1..1000_u32, 1..6), 0..5),
        kind in 0..3_usize,
    ) {
        let (open, close) = [('(', ')'), ('[', ']'), ('{', '}')][kind];
        let mut text = first.to_string();
        let mut all = vec![first];
        for group in &groups {
            let inside: Vec<String> = group.iter().map(ToString::to_string).collect();
            text.push_str(&format!(" {open}{}{close}", inside.join(", ")));
            all.extend(group);
        }
        let read = read_run::<Count>(&text, RunStyle::default(), Inch::TRADE).unwrap();
        let found: Vec<i64> = read.values.present().filter_map(|count| count.whole()).collect();
        let all: Vec<i64> = all.into_iter().map(i64::from).collect();
        prop_assert_eq!(found, all);
    }

    #[test]
    fn names_of_sizes(labels in proptest::collection::hash_set("[A-Z][a-z]{2,6}( [0-9]{1,2})?", 1..12)) {
        let labels: Vec<String> = labels.into_iter().collect();
        let text = match labels.split_first() {
            Some((first, [])) => first.clone(),
            Some((first, others)) => format!("{first} ({})", others.join(", ")),
            None => String::new(),
        };
        let names = SizeNames::parse(&text, RunStyle::default()).unwrap();
        prop_assert_eq!(names.labels(), labels);
        prop_assert_eq!(names.show(), text);
    }
}
