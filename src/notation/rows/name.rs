//! The names of rows: `Dec rnd`, `Inc row 1`, `Dec Rnd A`.

/// What a row is called, for words that go back to it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RowName {
    /// As it is written, without sides and other words in brackets.
    pub written: String,
    key: String,
}

/// Words that say which row is meant by where it stands, or how it is worked, and are no part of a name.
const BY_PLACE: &str = " next following foll this that these last previous prev every each all even odd alt alternate other \
    others rem remaining and or to as of in on with using for ";

impl RowName {
    /// Returns the name that the words of a label are; nothing where they are none, as `Next row` and `Row 2` are not.
    pub fn of(words: &str) -> Option<Self> {
        let whole = without_brackets(words);
        // "RS, dec row" is named behind the comma.
        let of_row = |piece: &&str| piece.to_lowercase().split(' ').any(|word| matches!(word, "row" | "rnd" | "round"));
        let written = whole.split(',').find(of_row)?.trim();
        let lower = written.to_lowercase();
        let mut key: Vec<&str> = Vec::new();
        let mut is_named = false;
        let mut is_row = false;
        for word in lower.split(|c: char| !c.is_alphanumeric() && c != '\'').filter(|word| !word.is_empty()) {
            if BY_PLACE.split(' ').any(|known| known == word) {
                return None;
            }
            match word {
                "the" | "rs" | "ws" => continue,
                "rows" | "rnds" | "rounds" => return None,
                "row" | "rnd" | "round" => is_row = true,
                _ => is_named |= word.contains(char::is_alphabetic),
            }
            key.push(meant(word));
        }
        (is_named && is_row).then(|| Self { key: key.join(" "), written: written.to_owned() })
    }

    /// Returns whether it says only that nothing is shaped: `Purl row`, `Rib rnd`.
    pub fn is_plain(&self) -> bool {
        const PLAIN: &str = " row rnd knit k purl p rib ribbing garter stockinette st seed moss plain straight mc cc ";
        self.key.split(' ').all(|word| PLAIN.split(' ').any(|known| known == word))
    }

    /// Returns the name without the number behind it; nothing where none stands there.
    pub fn before_number(&self) -> Option<&str> {
        let (name, number) = self.key.rsplit_once(' ')?;
        number.chars().all(|c| c.is_ascii_digit()).then_some(name)
    }

    /// Returns the name without capitals and with one spelling for each word: by it two names are the same.
    pub fn key(&self) -> &str {
        &self.key
    }
}

/// The one spelling of a word.
fn meant(word: &str) -> &str {
    match word {
        "decr" | "decrease" | "decreasing" | "decreases" => "dec",
        "incr" | "increase" | "increasing" | "increases" => "inc",
        "round" => "rnd",
        "pattern" | "pat" => "patt",
        "beginning" => "beg",
        "centre" => "center",
        "setup" => "set up",
        _ => word,
    }
}

/// A text without what stands in brackets.
fn without_brackets(text: &str) -> String {
    let mut depth = 0_usize;
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '(' | '[' => depth += 1,
            ')' | ']' => depth = depth.saturating_sub(1),
            c if depth == 0 => out.push(c),
            _ => {}
        }
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}
