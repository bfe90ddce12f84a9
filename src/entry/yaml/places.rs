//! Where the keys and values of a YAML text stand.

use super::{On, Step, Steps};
use saphyr_parser::{Event, Marker, Parser, Span};
use std::collections::HashMap;
use std::ops::Range;

/// The byte ranges of every key and value of one YAML document, and of keys that stand twice.
///
/// Where two equal keys stand in one map, the first one's place is kept for both.
#[derive(Clone, Debug, Default)]
pub struct Places {
    spans: HashMap<Steps, Spans>,
    /// Keys written twice in one map: the second one's range, the first one's, and the key.
    pub twice: Vec<(Range<usize>, Range<usize>, String)>,
}

#[derive(Clone, Debug, Default)]
struct Spans {
    key: Range<usize>,
    value: Range<usize>,
}

impl Places {
    /// Reads the places of a text; what stands behind a mistake of syntax has none.
    pub fn of(text: &str) -> Self {
        let mut walk =
            Walk { text, offsets: char_offsets(text), events: Parser::new_from_str(text), places: Self::default() };
        while let Some((event, span)) = walk.next() {
            if matches!(event, Event::StreamStart | Event::DocumentStart(_)) {
                continue;
            }
            walk.value(event, span, &mut Vec::new(), 0..0);
            break;
        }
        walk.places
    }

    /// Returns the range of a key or value, or that of the nearest thing around it that has a place.
    pub fn find(&self, steps: &[Step], on: On) -> Range<usize> {
        let written = self.as_written(steps);
        let mut steps = written.as_slice();
        let mut on = on;
        loop {
            if let Some(spans) = self.spans.get(steps) {
                let wanted = if on == On::Key && !spans.key.is_empty() { &spans.key } else { &spans.value };
                return if wanted.is_empty() { spans.key.clone() } else { wanted.clone() };
            }
            let Some((_, rest)) = steps.split_last() else { return 0..0 };
            steps = rest;
            on = On::Key;
        }
    }

    /// Returns a way without the items that are not written: a single value stands for a list of one.
    fn as_written(&self, steps: &[Step]) -> Vec<Step> {
        let mut way = Vec::with_capacity(steps.len());
        for step in steps {
            way.push(step.clone());
            if *step == Step::Item(0) && !self.spans.contains_key(way.as_slice()) {
                way.pop();
            }
        }
        way
    }
}

/// Returns the byte offset of each character, or nothing where they are the same.
fn char_offsets(text: &str) -> Option<Vec<usize>> {
    (!text.is_ascii()).then(|| text.char_indices().map(|(at, _)| at).collect())
}

struct Walk<'a> {
    text: &'a str,
    offsets: Option<Vec<usize>>,
    events: Parser<'a, saphyr_parser::StrInput<'a>>,
    places: Places,
}

impl<'a> Walk<'a> {
    fn next(&mut self) -> Option<(Event<'a>, Span)> {
        self.events.next_event()?.ok()
    }

    fn byte(&self, marker: Marker) -> usize {
        match &self.offsets {
            Some(offsets) => offsets.get(marker.index()).copied().unwrap_or(self.text.len()),
            None => marker.index().min(self.text.len()),
        }
    }

    fn range(&self, span: Span) -> Range<usize> {
        self.byte(span.start)..self.byte(span.end)
    }

    /// Notes the place of one value and everything in it; returns where it ends.
    fn value(&mut self, event: Event<'a>, span: Span, way: &mut Vec<Step>, key: Range<usize>) -> Range<usize> {
        let mut range = self.range(span);
        match event {
            Event::MappingStart(..) => {
                let mut seen: HashMap<String, Range<usize>> = HashMap::new();
                while let Some((event, span)) = self.next() {
                    if event == Event::MappingEnd {
                        break;
                    }
                    let name = match &event {
                        Event::Scalar(name, ..) => name.to_string(),
                        _ => String::new(),
                    };
                    let key = self.range(span);
                    if !matches!(event, Event::Scalar(..) | Event::Alias(_)) {
                        self.value(event, span, &mut vec![Step::Key(Box::from("?"))], 0..0);
                    }
                    let Some((event, span)) = self.next() else { break };
                    let first = seen.get(&name).cloned();
                    way.push(Step::Key(name.clone().into_boxed_str()));
                    let inner = self.value(event, span, way, key.clone());
                    way.pop();
                    range.end = range.end.max(inner.end).max(key.end);
                    match first {
                        Some(first) => self.places.twice.push((key, first, name)),
                        None => {
                            seen.insert(name, key);
                        }
                    }
                }
            }
            Event::SequenceStart(..) => {
                let mut index = 0;
                while let Some((event, span)) = self.next() {
                    if event == Event::SequenceEnd {
                        break;
                    }
                    way.push(Step::Item(index));
                    let inner = self.value(event, span, way, 0..0);
                    way.pop();
                    range.end = range.end.max(inner.end);
                    index += 1;
                }
            }
            _ => {}
        }
        let trimmed = self.text.get(range.clone()).map_or(0, |text| text.trim_end().len());
        range.end = range.start + trimmed;
        self.places.spans.entry(way.clone().into_boxed_slice()).or_insert(Spans { key, value: range.clone() });
        range
    }
}
