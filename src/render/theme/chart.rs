//! The filter `chart`.

use crate::render::chart::{Point, chart as draw};
use tera::{Error, Kwargs, State, TeraResult, Value};

/// Returns a project's progress as a drawing (SVG): `{{ project.progress_by_day | chart }}`.
///
/// # Errors
/// A value that is no progress by day.
pub fn chart(value: &Value, _: Kwargs, _: &State<'_>) -> TeraResult<Value> {
    drawn(value)
        .map(|svg| Value::safe_string(&svg))
        .ok_or_else(|| Error::message("`chart` takes the progress of a project"))
}

fn drawn(value: &Value) -> Option<String> {
    let text = |of: &Value, key: &str| Some(of.get_from_path(key)?.as_str()?.to_owned());
    let number = |of: &Value, key: &str| of.get_from_path(key)?.as_i64();
    let list = value.get_from_path("points")?.as_array()?;
    let points: Option<Vec<Point>> =
        list.iter().map(|one| Some(Point { days: number(one, "days")?, percent: number(one, "percent")? })).collect();
    let day = |one: Option<&Value>| text(one?, "date");
    Some(draw(&points?, &text(value, "title")?, &text(value, "words")?, &day(list.first())?, &day(list.last())?))
}
