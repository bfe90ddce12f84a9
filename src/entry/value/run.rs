//! Size runs, and what YAML makes of one that stands without quotes.

use super::quantity::{FABRIC_UNITS, FIGURE, YARN_UNITS, note_misread};
use crate::entry::field::{Field, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes, Yaml};
use crate::finding::{Code, Severity};
use crate::measure::yaml_pieces::{quoted, run_from_list_item, run_from_pieces};
use crate::measure::{Count, FabricLength, Run, SizeNames, YarnLength, read_run};

/// A size run that YAML took for something else.
pub static RUN_TAKEN_APART: Code = Code {
    name: "run-taken-apart",
    severity: Severity::Error,
    what: "A size run stands without quotes where YAML takes its commas or its dash for its own.",
    why: "Values would be lost without a word.",
    bad: "yarn: [ { yarn: heron-dk, needs: 820 (905, 990) m } ]",
    good: "yarn: [ { yarn: heron-dk, needs: '820 (905, 990) m' } ]",
};

/// Returns advice if the entries of a map are the pieces of a size run that YAML cut at its commas.
pub fn broken_run(entries: &[(String, Yaml)]) -> Option<String> {
    entries.iter().enumerate().find_map(|(at, (key, value))| {
        let first = value.scalar().filter(|text| text.contains(['(', '[']))?;
        let rest =
            entries.iter().skip(at + 1).take_while(|(_, value)| *value == Yaml::Null).map(|(key, _)| key.as_str());
        let pieces: Vec<&str> = std::iter::once(first).chain(rest).collect();
        Some(advice(key, &run_from_pieces(&pieces)?))
    })
}

fn advice(key: &str, run: &str) -> String {
    format!("put the run in quotes: `{key}: {}`", quoted(run))
}

/// Returns the text of a run, or notes what stands there instead.
fn run_text<'a>(node: &Node<'a>, what: &str, notes: &mut Notes<'_>) -> Option<&'a str> {
    let key = node.trail.key();
    if let Yaml::List(items) = node.value {
        let texts: Option<Vec<&str>> = items.iter().map(Yaml::scalar).collect();
        let run = texts.and_then(|texts| match *texts.as_slice() {
            [only] => run_from_list_item(only),
            _ => run_from_pieces(&texts),
        });
        if let Some(run) = run {
            notes.value(
                &RUN_TAKEN_APART,
                node,
                format!("YAML has made a list of the size run of `{key}`"),
                Some(advice(key, &run)),
            );
            return None;
        }
    }
    let text = node.value.scalar();
    if text.is_none() {
        wrong_type(node, what, notes);
    }
    text
}

/// Returns the schema of a run whose unit holds one of these characters; with no value but dashes and zeros it needs none.
fn run_of(units: &str, example: &str, what: &str) -> Schema {
    let run = Schema::of(&["string"], example).pattern(&format!("[{units}]|^[^1-9¼½¾⅓⅔⅛⅜⅝⅞]*$"), what);
    run.or_zero().saying("One value for each size, or one for every size; a dash where there is none.")
}

macro_rules! run_field {
    ($type:ty, $what:literal, $schema:expr) => {
        impl Field for Run<$type> {
            const WHAT: &'static str = $what;

            fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
                let text = run_text(node, Self::WHAT, notes)?;
                read_run(text, notes.settings.runs, notes.settings.inch)
                    .map_err(|misread| note_misread(&misread, node, notes))
                    .ok()
            }

            fn schema(_: &mut Definitions) -> Schema {
                let schema: fn(&str) -> Schema = $schema;
                schema(Self::WHAT)
            }
        }
    };
}

run_field!(YarnLength, "a length of yarn for each size, like `820 (905, 990) m`", |what| {
    run_of(YARN_UNITS, "820 (905, 990) m", what).saying("In m or yd.")
});
run_field!(FabricLength, "a measurement for each size, like `84 (94, 104) cm`", |what| {
    run_of(FABRIC_UNITS, "84 (94, 104) cm", what).saying("In mm, cm, m or in.")
});
run_field!(Count, "a number for each size, like `1 (1, 2)`", |what| {
    let run = Schema::of(&["number", "string"], "1 (1, 2)").with("minimum", 0);
    run.pattern(&format!("{FIGURE}|[-–—−‐‑]"), what).saying("One value for each size, or one for every size.")
});

impl Field for SizeNames {
    const WHAT: &'static str = "the names of the sizes, like `XS (S, M, L)`";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        let text = run_text(node, Self::WHAT, notes)?;
        Self::parse(text, notes.settings.runs).map_err(|misread| note_misread(&misread, node, notes)).ok()
    }

    fn schema(_: &mut Definitions) -> Schema {
        Schema::of(&["string", "number", "boolean"], "XS (S, M, L)").with("minLength", 1).else_write(Self::WHAT)
    }
}
