//! One value for each size.

use super::system::{Inch, System};
use super::value::Value;

/// One value for each size, the smallest first.
///
/// A size may have no value (`–` in the text). A lone value serves every size.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash)]
pub struct SizeRun<T> {
    values: Vec<Option<T>>,
}

impl<T> SizeRun<T> {
    /// A lone value, which serves every size.
    #[must_use]
    pub fn one(value: T) -> Self {
        Self { values: vec![Some(value)] }
    }

    /// A value for each size; `None` for a size that has none.
    #[must_use]
    pub const fn from_values(values: Vec<Option<T>>) -> Self {
        Self { values }
    }

    /// How many values are written; 1 for a lone one.
    #[must_use]
    pub const fn len(&self) -> usize {
        self.values.len()
    }

    /// Whether there is no place at all, which a text that was read never gives.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.values.is_empty()
    }

    /// Whether it is a lone value.
    #[must_use]
    pub const fn is_one(&self) -> bool {
        self.values.len() == 1
    }

    /// Whether it serves a pattern of so many sizes.
    #[must_use]
    pub const fn serves(&self, sizes: usize) -> bool {
        self.is_one() || self.len() == sizes
    }

    /// The value of a size, counted from 0; a lone value serves every size.
    ///
    /// `None` where the size has no value or there is no such size.
    #[must_use]
    pub fn get(&self, size: usize) -> Option<&T> {
        let place = if self.is_one() { 0 } else { size };
        self.values.get(place)?.as_ref()
    }

    /// The places as written, `None` where a size has no value.
    pub fn iter(&self) -> impl DoubleEndedIterator<Item = Option<&T>> + ExactSizeIterator {
        self.values.iter().map(Option::as_ref)
    }

    /// The values that are there.
    pub fn present(&self) -> impl DoubleEndedIterator<Item = &T> {
        self.values.iter().flatten()
    }

    /// The run with every value changed.
    #[must_use]
    pub fn map<U>(&self, change: impl FnMut(&T) -> U) -> SizeRun<U> {
        let mut change = change;
        SizeRun { values: self.values.iter().map(|value| value.as_ref().map(&mut change)).collect() }
    }

    /// The run with every value changed, or `None` as soon as one cannot be.
    #[must_use]
    pub fn try_map<U>(&self, change: impl FnMut(&T) -> Option<U>) -> Option<SizeRun<U>> {
        let mut change = change;
        let values = self.values.iter().map(|value| match value {
            Some(value) => change(value).map(Some),
            None => Some(None),
        });
        Some(SizeRun { values: values.collect::<Option<Vec<_>>>()? })
    }

    /// The run in the trade's brackets, `–` for a size without a value.
    #[must_use]
    pub fn show_with(&self, show: impl FnMut(&T) -> String) -> String {
        let mut show = show;
        let texts = self.values.iter().map(|value| value.as_ref().map_or_else(|| "–".to_owned(), &mut show));
        in_brackets(&texts.collect::<Vec<_>>())
    }
}

impl<T: Value> SizeRun<T> {
    /// As pages show it, the unit once at the end: `84 (94, 104.5) cm`.
    ///
    /// Rounded like single values. There is no comma between thousands, because commas part the sizes.
    #[must_use]
    pub fn show(&self, system: System, inch: Inch) -> String {
        self.with_unit(system, |value| value.page_number(system, inch))
    }

    /// With all the decimals it takes to read the same run again.
    ///
    /// True for runs without a value of nothing: a lone `0` means "not in this size".
    #[must_use]
    pub fn show_exact(&self, system: System, inch: Inch) -> String {
        self.with_unit(system, |value| value.exact_number(system, inch))
    }

    fn with_unit(&self, system: System, show: impl FnMut(&T) -> String) -> String {
        let numbers = self.show_with(show);
        match T::shown_in(system).name {
            "" => numbers,
            "%" => format!("{numbers}%"),
            unit => format!("{numbers} {unit}"),
        }
    }
}

/// The first text, then the others in round brackets.
pub(super) fn in_brackets(texts: &[String]) -> String {
    match texts.split_first() {
        None => String::new(),
        Some((first, [])) => first.clone(),
        Some((first, others)) => format!("{first} ({})", others.join(", ")),
    }
}
