//! What may hurt whoever wears a thing.

use crate::entry::Pattern;
use crate::entry::value::Wearer;
use crate::standards::cautions::{self, Caution, Hazard};
use crate::standards::provenance::Provenance;
use schemars::JsonSchema;
use serde::Serialize;

/// One caution.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct CautionView {
    /// The caution, in one sentence.
    pub sentence: String,
    /// Where it holds and the rule it comes from: `EU/UK, EN 14682`.
    pub rule: String,
    /// Whether it is from memory, so that it must be checked.
    pub memory: bool,
}

/// Returns the cautions for a pattern by its wearer: all that concern babies, cords and burning for children.
pub fn cautions(pattern: &Pattern) -> Vec<CautionView> {
    match pattern.wearer {
        Some(Wearer::Baby) => cautions::for_baby().map(view).collect(),
        Some(Wearer::Child) => {
            cautions::of(Hazard::Cords).chain(cautions::of(Hazard::Flammability)).map(view).collect()
        }
        Some(Wearer::Women | Wearer::Men | Wearer::Youth) | None => Vec::new(),
    }
}

fn view(caution: &Caution) -> CautionView {
    let parts = [caution.jurisdiction.as_str(), caution.reference.as_str()];
    CautionView {
        sentence: caution.sentence.clone(),
        rule: parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", "),
        memory: caution.provenance == Provenance::Memory,
    }
}
