//! What a thing costs.

use super::misread::{Misread, Problem, trimmed_range};
use super::number::{self, Comma, Scanned};

/// A price, in whole minor units of its currency (pence, cents; whole yen).
///
/// The currency is a three-letter code of ISO 4217 in capitals. Codes are checked for their letters only:
/// the list of currencies changes, and a new one must not break a studio.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Price {
    /// How many minor units.
    pub minor: i64,
    /// The code.
    pub currency: String,
}

/// How many decimals a currency has, after ISO 4217; two for all that are not listed.
#[must_use]
const fn decimals(code: &str) -> u32 {
    match code.as_bytes() {
        b"BIF" | b"CLP" | b"DJF" | b"GNF" | b"ISK" | b"JPY" | b"KMF" | b"KRW" | b"PYG" | b"RWF" | b"UGX" | b"VND"
        | b"VUV" | b"XAF" | b"XOF" | b"XPF" => 0,
        b"BHD" | b"IQD" | b"JOD" | b"KWD" | b"LYD" | b"OMR" | b"TND" => 3,
        _ => 2,
    }
}

impl Price {
    /// Reads `7.00 GBP`, `GBP 7`, `£7` or `6 EUR`.
    ///
    /// `£` is GBP and `€` is EUR; other signs are shared by several currencies.
    ///
    /// # Errors
    /// No number, no code, a shared sign, a price below nothing, more decimals than the currency has.
    pub fn parse(text: &str) -> Result<Self, Misread> {
        let all = trimmed_range(text);
        if all.is_empty() {
            return Err(Misread::new(all, Problem::Empty { example: "7.00 GBP" }));
        }
        let within = number::slice(text, 0..all.end);
        let before = currency(within, all.start)?;
        let start = before.as_ref().map_or(all.start, |(_, end)| number::past_spaces(within, *end));
        let Some(scanned) = number::scan(within, start, Comma::Decimal)? else {
            let written = number::slice(text, start..all.end).to_owned();
            let at = if written.is_empty() { all } else { start..all.end };
            let written = number::slice(text, at.clone()).to_owned();
            return Err(Misread::new(at, Problem::NoNumber { written, example: "7.00 GBP" }));
        };
        let mut end = number::past_spaces(within, scanned.at.end);
        let code = match before {
            Some((code, _)) => code,
            None => {
                let Some((code, after)) = currency(within, end)? else {
                    let written = number::slice(text, all.clone()).to_owned();
                    return Err(Misread::new(all, Problem::NoCurrency { written }));
                };
                end = number::past_spaces(within, after);
                code
            }
        };
        if end < all.end {
            let written = number::slice(text, end..all.end).to_owned();
            return Err(Misread::new(end..all.end, Problem::Leftover { written, example: "7.00 GBP" }));
        }
        let minor = minor(within, &scanned, decimals(&code))?;
        Ok(Self { minor, currency: code })
    }

    /// As pages show it: `£7.00`, `€6.00`, `7.00 CHF`.
    #[must_use]
    pub fn show(&self) -> String {
        let number = self.number();
        let sign = match self.currency.as_str() {
            "GBP" => '£',
            "EUR" => '€',
            _ => return format!("{number} {}", self.currency),
        };
        match number.strip_prefix('-') {
            Some(number) => format!("-{sign}{number}"),
            None => format!("{sign}{number}"),
        }
    }

    /// The amount and the code, to be read again: `7.00 GBP`.
    #[must_use]
    pub fn show_exact(&self) -> String {
        format!("{} {}", self.number(), self.currency)
    }

    /// The amount alone, with all the decimals of the currency: `7.00`.
    #[must_use]
    pub fn number(&self) -> String {
        let decimals = decimals(&self.currency);
        let scale = 10_u64.checked_pow(decimals).unwrap_or(1);
        let sign = if self.minor < 0 { "-" } else { "" };
        let (whole, part) = (self.minor.unsigned_abs() / scale, self.minor.unsigned_abs() % scale);
        if decimals == 0 {
            return format!("{sign}{whole}");
        }
        format!("{sign}{whole}.{part:0width$}", width = decimals as usize)
    }
}

/// The currency at a byte, and where it ends; `None` where a number or nothing stands there.
fn currency(text: &str, at: usize) -> Result<Option<(String, usize)>, Misread> {
    let Some(first) = number::from(text, at).chars().next() else {
        return Ok(None);
    };
    let end = at + first.len_utf8();
    match first {
        '£' => return Ok(Some(("GBP".to_owned(), end))),
        '€' => return Ok(Some(("EUR".to_owned(), end))),
        '$' | '¥' => {
            let number = text.replace(first, "").trim().to_owned();
            let codes: &[&str] = if first == '$' { &["USD", "CAD", "AUD"] } else { &["JPY", "CNY"] };
            return Err(Misread::new(at..end, Problem::SharedSign { sign: first, number, codes }));
        }
        _ => {}
    }
    let Some((word, after)) = number::word(text, at) else {
        return Ok(None);
    };
    if word.len() == 3 && word.bytes().all(|byte| byte.is_ascii_alphabetic()) {
        return Ok(Some((word.to_ascii_uppercase(), after)));
    }
    Err(Misread::new(at..at + word.len(), Problem::NoCurrency { written: word.to_owned() }))
}

fn minor(text: &str, scanned: &Scanned, decimals: u32) -> Result<i64, Misread> {
    let written = || number::slice(text, scanned.at.clone()).to_owned();
    if scanned.number.above < 0 {
        return Err(Misread::new(scanned.at.clone(), Problem::Negative { written: written() }));
    }
    let scale = 10_i64.checked_pow(decimals).unwrap_or(1);
    // A fraction such as ½ is fine as long as it comes out whole.
    let exact = scanned.number.above.checked_mul(i128::from(scale)).map(|above| above % scanned.number.below == 0);
    match (exact, scanned.number.times_near(scale)) {
        (Some(true), Some(minor)) => Ok(minor),
        (Some(false), _) => Err(Misread::new(scanned.at.clone(), Problem::TooFine { written: written(), decimals })),
        _ => Err(Misread::new(scanned.at.clone(), Problem::TooBig { written: written() })),
    }
}
