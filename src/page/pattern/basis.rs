//! What the yarn of a pattern is worked out from.

use crate::entry::{Consumed, Pattern};
use crate::page::{Shown, words};
use crate::reckon::{Basis, Purchase};

/// Returns what the lengths to buy rest on, in a sentence or two; nothing where none is known.
pub fn basis(shown: &Shown<'_>, pattern: &Pattern, purchases: &[Purchase<'_>]) -> String {
    let mut all: Vec<Basis> =
        purchases.iter().flat_map(|purchase| &purchase.sizes).flatten().map(|one| one.basis).collect();
    all.sort_unstable();
    all.dedup();
    let rests: Vec<String> = all.into_iter().map(|basis| basis_in_words(basis).to_owned()).collect();
    let mut sentences = Vec::new();
    if !rests.is_empty() {
        sentences.push(format!("Lengths are {}.", words::list(&rests)));
    }
    if let Some(sample) = &pattern.sample {
        sentences.push(match &sample.used {
            Some(used) => format!("The sample, in {}, took {}.", sample.size, used_in_words(shown, used)),
            None => format!("The sample is in {}.", sample.size),
        });
    }
    sentences.join(" ")
}

/// Returns what a length of yarn rests on, in words that follow "lengths are".
pub fn basis_in_words(basis: Basis) -> &'static str {
    match basis {
        Basis::Weighed => "weighed in the sample's size",
        Basis::Stated => "as stated by the designer",
        Basis::Stitches => "worked out from the sample by the stitches of each size and colour",
        Basis::Area => "worked out from the sample by the fabric of each size",
        Basis::Swatch => "worked out from a weighed swatch",
    }
}

fn used_in_words(shown: &Shown<'_>, used: &Consumed) -> String {
    match used {
        Consumed::All(all) => all.show(shown.system),
        Consumed::ByColour(colours) => {
            let each = colours.0.iter().map(|(colour, used)| format!("{} of {colour}", used.show(shown.system)));
            words::list(&each.collect::<Vec<_>>())
        }
    }
}
