//! Every problem, one row each: the text, the guilty part, the code, the advice.

use ballband::measure::{
    Amount, Count, FabricLength, Inch, Mass, Misread, Needle, Percent, Price, PutUp, RunStyle, SizeNames, YarnLength,
    read_run,
};

type Row = (&'static str, &'static str, &'static str, &'static str);

fn check<T: std::fmt::Debug>(rows: &[Row], read: impl Fn(&str) -> Result<T, Misread>) {
    for (text, guilty, code, help) in rows {
        let misread = read(text).expect_err(text);
        let found = (&text[misread.at.clone()], misread.problem.code(), misread.help());
        assert_eq!(found, (*guilty, *code, (*help).to_owned()), "{text}");
        let words = misread.to_string();
        assert!(!words.ends_with('.'), "{words}");
        assert!(words.starts_with(|c: char| !c.is_uppercase()), "{words}");
    }
}

#[test]
fn in_a_length_of_yarn() {
    check(
        &[
            ("", "", "empty", "write it like `820 m`"),
            ("   ", "", "empty", "write it like `820 m`"),
            ("820", "820", "no-unit", "write `820 m` or `820 yd`"),
            ("lots", "lots", "no-number", "write it like `820 m`"),
            ("820 g", "g", "unknown-unit", "write `820 m` or `820 yd`"),
            ("820 metros", "metros", "unknown-unit", "write `820 m` or `820 yd`"),
            ("1,270 m", "1,270", "ambiguous-comma", "write `1270` for the whole number or `1.270` for the decimal"),
            (
                "1,270,500 m",
                "1,270,500",
                "ambiguous-comma",
                "write whole numbers without a separator, and decimals with a point",
            ),
            (
                "1.270,5 m",
                "1.270,5",
                "ambiguous-comma",
                "write whole numbers without a separator, and decimals with a point",
            ),
            ("1 270 m", "1 270", "two-numbers", "write `1, 270` for two values or `1270` for one"),
            ("-5 m", "-5", "negative", "write `5`; this cannot be less than nothing"),
            (
                "800-900 m",
                "800-900",
                "a-range",
                "write one number, such as its middle, `850`, or its larger end, `900`; a range cannot be worked with",
            ),
            ("900-800 m", "900-800", "a-range", "write one number; a range cannot be worked with"),
            (
                "800 to 905 m",
                "800 to 905",
                "a-range",
                "write one number, such as its middle, `852.5`, or its larger end, `905`; a range cannot be worked with",
            ),
            (
                "800–900 m",
                "800–900",
                "a-range",
                "write one number, such as its middle, `850`, or its larger end, `900`; a range cannot be worked with",
            ),
            ("820 m or so", "or so", "leftover", "write it like `820 m`"),
            ("820 m !", "!", "leftover", "write it like `820 m`"),
            (
                "9999999999999999999 m",
                "9999999999999999999",
                "too-big",
                "write a number of at most nine digits and nine decimals",
            ),
            (
                "99999999999999 m",
                "99999999999999",
                "too-big",
                "write a number of at most nine digits and nine decimals",
            ),
            ("1⁄0 m", "1⁄0", "zero-below", "write a fraction such as `1/2`, or a decimal such as `0.5`"),
        ],
        YarnLength::parse,
    );
    assert_eq!(YarnLength::parse("820").unwrap_err().to_string(), "`820` has no unit");
}

#[test]
fn in_a_run_of_measurements() {
    let read = |text: &str| read_run::<FabricLength>(text, RunStyle::default(), Inch::TRADE);
    check(
        &[
            ("84 (92, 104)", "84 (92, 104)", "no-unit", "write `84 (92, 104) cm` or `84 (92, 104) in`"),
            ("84 (92, 104) m2", "2", "leftover", "write it like `84 cm`"),
            ("84 (92, 104) kg", "kg", "unknown-unit", "write `104 cm` or `104 in`"),
            (
                "84 cm (33 in, 104 cm)",
                "in",
                "mixed-units",
                "write every value in `cm`, or write the run twice with a slash between: `34 (37, 41) in / 85 (93, 102.5) cm`",
            ),
            (
                "84 cm/33 in/94 cm/37 in",
                "in",
                "mixed-units",
                "write every value in `cm`, or write the run twice with a slash between: `34 (37, 41) in / 85 (93, 102.5) cm`",
            ),
            ("84 cm (92, 104)", "92", "unit-on-some", "write `cm` once at the end of the run, or after every value"),
            ("84 cm (92, 104 cm)", "92", "unit-on-some", "write `cm` once at the end of the run, or after every value"),
            ("84 (92, 104 cm", "(", "unclosed", "close `(` with `)` after the last size"),
            ("84 (92, 104] cm", "]", "mismatched", "write `)` instead of `]`"),
            ("84 92, 104) cm", ")", "mismatched", "open a bracket for `)`, or take it out"),
            ("84 (92, [104]) cm", "[", "nested", "write the groups one after another: `84 (92, 100) (108, 116)`"),
            ("84 (, 92) cm", "(,", "empty-place", "write the missing value, or `–` where the size does not have one"),
            ("84 (92, ) cm", ", )", "empty-place", "write the missing value, or `–` where the size does not have one"),
            ("84 () cm", "()", "empty-place", "write the missing value, or `–` where the size does not have one"),
            ("84//104 cm", "//", "empty-place", "write the missing value, or `–` where the size does not have one"),
            (
                "(84, 92) cm",
                "(",
                "no-first",
                "write the smallest size before the bracket: `84 (92, 104)`, or `– (92, 104)` if it has none",
            ),
            ("84, 92, 104 cm", "84, 92, 104 cm", "no-brackets", "write `84 (92, 104) cm`"),
            ("84; 92; 104 cm", "84; 92; 104 cm", "no-brackets", "write `84 (92; 104) cm`"),
            ("84 (94. 104) cm", "94. 104", "dot-for-comma", "write `94, 104`"),
            ("84 (94 104) cm", "94 104", "two-numbers", "write `94, 104` for two values or `94104` for one"),
            (
                "84 (94-104) cm",
                "94-104",
                "a-range",
                "write one number, such as its middle, `99`, or its larger end, `104`; a range cannot be worked with",
            ),
            (
                "76 to 81 (81 to 86) cm",
                "76 to 81",
                "a-range",
                "write one number, such as its middle, `78.5`, or its larger end, `81`; a range cannot be worked with",
            ),
            (
                "12,5 (13, 13,5) cm",
                "12,5",
                "comma-decimal",
                "write `12.5` for one value or `12, 5` for two; where decimals take a comma, separate sizes with `;`",
            ),
            (
                "12 (13, 13,5) cm",
                "13,5",
                "comma-decimal",
                "write `13.5` for one value or `13, 5` for two; where decimals take a comma, separate sizes with `;`",
            ),
            (
                "12,5 (13) cm",
                "12,5",
                "comma-decimal",
                "write `12.5` for one value or `12, 5` for two; where decimals take a comma, separate sizes with `;`",
            ),
            (
                "12,5/13/13,5 cm",
                "12,5",
                "comma-decimal",
                "write `12.5` for one value or `12, 5` for two; where decimals take a comma, separate sizes with `;`",
            ),
            (
                "84 (92; 100, 108) cm",
                ",",
                "mixed-separators",
                "separate all values with `;`; write decimals with a point",
            ),
            (
                "84 (92: 100, 108) cm",
                ",",
                "mixed-separators",
                "separate all values with `:`; write decimals with a point",
            ),
            (
                "84 (92; 100: 108) cm",
                ":",
                "mixed-separators",
                "separate all values with `;`; write decimals with a point",
            ),
            (
                "84/94 1/2/104 cm",
                "1/2",
                "slash-fraction",
                "write the sizes in brackets: `84 (94½, 104)`, or the fraction as `½` or `.5`",
            ),
            (
                "1/2/3 in",
                "1/2",
                "slash-fraction",
                "write the sizes in brackets: `84 (94½, 104)`, or the fraction as `½` or `.5`",
            ),
            (
                "34 (37, 41) / 85 (93, 102.5) cm",
                "/",
                "slash-between-runs",
                "write a unit after each of the two runs: `34 (37, 41) in / 85 (93, 102.5) cm`",
            ),
            ("34 (37, 41) in / 85 (93) cm", "85 (93) cm", "unequal-runs", "give both runs one value for each size"),
            ("34 in / 85 (93) cm", "85 (93) cm", "unequal-runs", "give both runs one value for each size"),
            ("84 (x, 92) cm", "x", "no-number", "write it like `84 cm`"),
            ("84 (92), (100) cm", ",", "leftover", "write it like `84 (92, 100) (108, 116)`"),
            (
                "84 (92) cm (100) cm",
                "cm",
                "unit-on-some",
                "write `cm` once at the end of the run, or after every value",
            ),
            ("84 (92/100) cm", "/", "mixed-separators", "separate all values with `,`; write decimals with a point"),
        ],
        read,
    );
}

#[test]
fn in_a_run_of_lengths_with_thousands() {
    let read = |text: &str| read_run::<YarnLength>(text, RunStyle::default(), Inch::TRADE);
    let help = "write `1085` without a separator, or `1, 085` for two values";
    check(
        &[
            ("820 (905, 990, 1,085) m", "1,085", "comma-decimal", help),
            ("820 (905,990,1,085) m", "1,085", "comma-decimal", help),
            ("1,085 (1,175, 1,270) m", "1,085", "comma-decimal", help),
            (
                "1,085 (1,175; 1,270) m",
                "1,085",
                "ambiguous-comma",
                "write `1085` for the whole number or `1.085` for the decimal",
            ),
        ],
        read,
    );
    // Without spaces throughout, three-digit sizes are plain.
    let run = read_run::<YarnLength>("820 (905,990,108)m", RunStyle::default(), Inch::TRADE).unwrap();
    assert_eq!(run.values.len(), 4);
}

#[test]
fn in_size_names() {
    check(
        &[
            ("", "", "empty", "write it like `XS (S, M, L)`"),
            ("XS, S, M", "XS, S, M", "no-brackets", "write `XS (S, M)`"),
            ("S/M", "S/M", "label-slash", "write `S (M)` for two sizes, or `S–M` for one"),
            ("S (M/L)", "M/L", "label-slash", "write `M (L)` for two sizes, or `M–L` for one"),
            ("XS (S, xs)", "xs", "repeated-label", "give each size a name of its own"),
            ("2XL (XXL)", "XXL", "repeated-label", "give each size a name of its own"),
            ("XS (S, M", "(", "unclosed", "close `(` with `)` after the last size"),
            ("XS (S,, M)", ",,", "empty-place", "write the missing value, or `–` where the size does not have one"),
            ("XS/", "XS/", "empty-place", "write the missing value, or `–` where the size does not have one"),
            ("XS (S), (M)", ",", "leftover", "write it like `XS (S, M, L)`"),
        ],
        |text| SizeNames::parse(text, RunStyle::default()),
    );
}

#[test]
fn in_put_ups_and_amounts() {
    check(
        &[
            ("", "", "empty", "write it like `225 m / 100 g`"),
            ("225 m", "225 m", "no-mass", "write the mass too: `225 m / 100 g`"),
            ("100 g", "100 g", "no-length", "write the length too: `225 m / 100 g`"),
            ("225 / 100 g", "225", "no-unit", "write `225 m` or `225 yd` or `225 g`"),
            ("225 m / 0 g", "0 g", "zero-put-up", "write what one skein holds: `225 m / 100 g`"),
            ("225 m (220 yd) / 100 g", "220 yd", "disagree", "check both against the ball band, or leave one out"),
            ("225 cm / 100 g", "cm", "unknown-unit", "write `225 m` or `225 yd` or `225 g`"),
            ("225 m / 100 g wool", "wool", "leftover", "write it like `225 m / 100 g`"),
            ("per", "per", "no-number", "write it like `225 m / 100 g`"),
            ("225 m / -100 g", "-100", "negative", "write `100`; this cannot be less than nothing"),
            ("225 m × 100 g", "×", "leftover", "write it like `225 m / 100 g`"),
        ],
        PutUp::parse,
    );
    check(
        &[
            ("", "", "empty", "write it like `4.5 skeins`"),
            ("6", "6", "no-unit", "write `6 skeins` or `6 g` or `6 m`"),
            ("6 skiens", "skiens", "unknown-unit", "write `6 skeins` or `6 g` or `6 m`"),
            ("some", "some", "no-number", "write it like `4.5 skeins`"),
            ("4.1234 skeins", "4.1234", "too-fine", "write it with at most 3 decimals"),
            ("1,270 m", "1,270", "ambiguous-comma", "write `1270` for the whole number or `1.270` for the decimal"),
        ],
        Amount::parse,
    );
    check(&[("100", "100", "no-unit", "write `100 g` or `100 oz`")], Mass::parse);
}

#[test]
fn in_needles_prices_and_shares() {
    check(
        &[
            ("", "", "empty", "write it like `4 mm`"),
            ("4", "4", "needle-unit", "write `4 mm`, `US 4` or `UK 4`"),
            ("4 circular 80 cm", "4", "needle-unit", "write `4 mm`, `US 4` or `UK 4`"),
            ("0.4 cm", "cm", "unknown-unit", "write `0.4 mm`"),
            ("circular 4 mm", "circular 4 mm", "no-needle-size", "write `4 mm`, `US 6` or `UK 8`"),
            ("US", "US", "no-needle-size", "write `4 mm`, `US 6` or `UK 8`"),
            ("4 mm 5 mm", "5 mm", "leftover", "write it like `4 mm circular 80 cm`"),
            ("4 mm 80/60 cm x 100 cm", "100 cm", "leftover", "write it like `4 mm circular 80 cm`"),
            ("4 mm 80 cm 60 cm", "60 cm", "leftover", "write it like `4 mm circular 80 cm`"),
            ("0 mm", "0 mm", "no-needle-size", "write `4 mm`, `US 6` or `UK 8`"),
        ],
        |text| Needle::parse(text, Inch::TRADE),
    );
    check(
        &[
            ("", "", "empty", "write it like `7.00 GBP`"),
            ("7.00", "7.00", "no-currency", "write the amount and a three-letter currency code: `7.00 GBP`"),
            ("7 pounds", "pounds", "no-currency", "write the amount and a three-letter currency code: `7.00 GBP`"),
            ("$7", "$", "shared-sign", "write `7 USD` or `7 CAD` or `7 AUD`"),
            ("7.005 GBP", "7.005", "too-fine", "write it with at most 2 decimals"),
            ("7.5 JPY", "7.5", "too-fine", "write it without decimals"),
            ("-7 GBP", "-7", "negative", "write `7`; this cannot be less than nothing"),
            ("GBP", "GBP", "no-number", "write it like `7.00 GBP`"),
            ("7 GBP each", "each", "leftover", "write it like `7.00 GBP`"),
            (
                "99999999999999999 GBP",
                "99999999999999999",
                "too-big",
                "write a number of at most nine digits and nine decimals",
            ),
        ],
        Price::parse,
    );
    check(
        &[
            ("10", "10", "no-unit", "write `10%`"),
            ("0.1", "0.1", "no-unit", "write `10%`"),
            ("33.333%", "33.333", "too-fine", "write it with at most 2 decimals"),
        ],
        Percent::parse,
    );
    check(&[("84 stiches", "stiches", "unknown-unit", "write `84 sts` or `84 rows`")], Count::parse);
    check(&[("3", "3", "not-an-inch", "write `2.5` or `2.54`")], Inch::parse);
}
