//! Which parts of a row are what: label, side, stitch, repeat.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::{Arc, LazyLock, Mutex, PoisonError};
use syntect::parsing::{
    ParseState, Scope, ScopeStackOp, SyntaxDefinition, SyntaxReference, SyntaxSet, SyntaxSetBuilder,
};

/// The syntax of rows.
const SYNTAX: &str = include_str!("rows.sublime-syntax");

/// The classes that parts of rows have on a page: the scopes of the syntax.
pub const CLASSES: [&str; 8] = ["label", "side", "repeat", "number", "stitch", "cable", "count", "marker"];

/// The syntax, read when the first row is shown; nothing if it cannot be read, which a test rules out.
static RULES: LazyLock<Option<Rules>> = LazyLock::new(Rules::load);

struct Rules {
    set: SyntaxSet,
    classes: Vec<(Scope, &'static str)>,
}

impl Rules {
    fn load() -> Option<Self> {
        let mut builder = SyntaxSetBuilder::new();
        builder.add(SyntaxDefinition::load_from_str(SYNTAX, false, None).ok()?);
        let class = |name: &&'static str| Some((Scope::new(name).ok()?, *name));
        Some(Self { set: builder.build(), classes: CLASSES.iter().filter_map(class).collect() })
    }

    fn syntax(&self) -> Option<&SyntaxReference> {
        self.set.find_syntax_by_name("Rows")
    }

    fn class(&self, scope: Scope) -> Option<&'static str> {
        self.classes.iter().find(|(known, _)| *known == scope).map(|(_, class)| *class)
    }
}

/// A part of a row.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Part {
    /// Its bytes.
    pub at: Range<usize>,
    /// What it is: one of [`CLASSES`].
    pub class: &'static str,
}

/// How many rows are remembered, those of a few long patterns.
const MOST: usize = 4096;

/// The rows that were read already: a page is made again for one row that was changed, and a pattern has many alike.
static KNOWN: LazyLock<Mutex<HashMap<String, Arc<[Part]>>>> = LazyLock::new(Mutex::default);

/// Returns the parts of a row, one that holds others before them. A row is one line, also where it goes on below.
pub fn parts(row: &str) -> Arc<[Part]> {
    let known = || KNOWN.lock().unwrap_or_else(PoisonError::into_inner);
    if let Some(parts) = known().get(row) {
        return Arc::clone(parts);
    }
    // Others may read meanwhile.
    let parts: Arc<[Part]> = read(row).into();
    let mut known = known();
    if known.len() >= MOST {
        known.clear();
    }
    known.insert(row.to_owned(), Arc::clone(&parts));
    parts
}

fn read(row: &str) -> Vec<Part> {
    // A line that goes on is read as one; a space is as long as the end of a line.
    let line = row.replace('\n', " ");
    let mut parts: Vec<Part> = Vec::new();
    let mut open: Vec<Option<(usize, &'static str)>> = Vec::new();
    let mut end = |open: Option<(usize, &'static str)>, at: usize| {
        if let Some((start, class)) = open.filter(|(start, _)| *start < at) {
            parts.push(Part { at: start..at, class });
        }
    };
    let Some((rules, syntax)) = RULES.as_ref().and_then(|rules| Some((rules, rules.syntax()?))) else { return parts };
    let Ok(steps) = ParseState::new(syntax).parse_line(&line, &rules.set) else { return parts };
    for (at, step) in steps {
        match step {
            ScopeStackOp::Push(scope) => open.push(rules.class(scope).map(|class| (at, class))),
            ScopeStackOp::Pop(count) => (0..count).for_each(|_| end(open.pop().flatten(), at)),
            ScopeStackOp::Clear(_) | ScopeStackOp::Restore | ScopeStackOp::Noop => {}
        }
    }
    while let Some(last) = open.pop() {
        end(last, line.len());
    }
    parts.sort_by_key(|part| (part.at.start, std::cmp::Reverse(part.at.end)));
    parts
}
