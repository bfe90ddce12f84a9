//! Conversions against an outside library: pint 0.25.3 (`pint.py` wrote `pint.csv`).

use ballband::measure::{Mass, YarnLength};

const CSV: &str = include_str!("pint.csv");

/// A decimal as a number of units of 10^-30, cut there; far finer than any unit of ours.
fn fine(decimal: &str) -> i128 {
    let (whole, part) = decimal.split_once('.').unwrap_or((decimal, ""));
    let part = format!("{part:0<30}");
    format!("{whole}{}", &part[..30]).parse().unwrap()
}

/// `number` of units of 10^-30, times `unit`, to the nearest whole, halves up. All here are positive.
fn near(fine: i128, unit: i128) -> i64 {
    let scale = 10_i128.pow(30);
    let (whole, part) = (fine / scale, fine % scale);
    // The unit has at most eleven digits, so the part is cut to 24 decimals to fit in 128 bits.
    let part = part / 10_i128.pow(6) * unit;
    let scale = 10_i128.pow(24);
    i64::try_from(whole * unit + (part + scale / 2) / scale).unwrap()
}

#[test]
fn every_row_agrees_to_the_last_unit() {
    let mut rows = 0;
    for line in CSV.lines().skip(1) {
        let cells: Vec<&str> = line.split(',').collect();
        let [value, unit, converted, into] = cells[..] else { panic!("{line}") };
        let ours = |text: &str, unit: &str| match unit {
            "m" | "yd" => YarnLength::parse(&format!("{text} {unit}")).unwrap().micrometres(),
            _ => Mass::parse(&format!("{text} {unit}")).unwrap().nanograms(),
        };
        // What pint says, in our small unit, by arithmetic that is not ours.
        let size = match into {
            "m" => 1_000_000,
            "yd" => 914_400,
            "g" => 1_000_000_000,
            _ => 28_349_523_125,
        };
        assert_eq!(ours(value, unit), near(fine(converted), size), "{line}");
        // And back: its answer, at twelve decimals, is read as the same length or mass.
        let (whole, part) = converted.split_once('.').unwrap_or((converted, ""));
        let short = format!("{whole}.{part:0<12}");
        let short = &short[..whole.len() + 13];
        let back = ours(short, into);
        assert!((back - ours(value, unit)).abs() <= 1, "{line}: {back}");
        rows += 1;
    }
    assert_eq!(rows, 4000);
}
