mod ease;
mod evidence;
mod gauge;
mod multiple;
mod needs;
mod progress;
mod shape;
mod shaping;
mod skeins;
mod spread;
mod worked_examples;

use ballband::measure::{Area, Count, FabricLength, Inch, Mass, YarnLength};

fn fabric(text: &str) -> FabricLength {
    FabricLength::parse(text, Inch::TRADE).unwrap()
}

fn grams(text: &str) -> Mass {
    Mass::parse(&format!("{text} g")).unwrap()
}

fn yarn(text: &str) -> YarnLength {
    YarnLength::parse(text).unwrap()
}

fn count(text: &str) -> Count {
    Count::parse(text).unwrap()
}

/// So many square inches of 2.5 cm.
fn square_inches(number: i64) -> Area {
    Area::from_square_micrometres(number * 625_000_000)
}
