//! Good answers of the last week, so that no host is asked for the same page every day.

use crate::entry::value::Date;
use serde_json::{Map, Value};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

/// The folder in the studio; hidden, so that nothing in it is read as an entry or watched.
const FOLDER: &str = ".answers";

/// The file in it: a map from address to the day it was last there.
const FILE: &str = "links.json";

/// For how many days a good answer is good.
const DAYS: i64 = 7;

/// The addresses that were there on a day of the last week. One that was not is asked again each time.
#[derive(Debug)]
pub struct Known {
    folder: PathBuf,
    today: Date,
    good: BTreeMap<String, Date>,
}

impl Known {
    /// Reads what a studio keeps; a file that is missing or spoilt is as good as none.
    pub fn load(studio: &Path, today: Date) -> Self {
        let folder = studio.join(FOLDER);
        let kept: Map<String, Value> =
            fs::read(folder.join(FILE)).ok().and_then(|bytes| serde_json::from_slice(&bytes).ok()).unwrap_or_default();
        let day = |(url, day): (String, Value)| Some((url, Date::parse(day.as_str()?)?));
        let is_fresh = |day: Date| (0..DAYS).contains(&day.days_to(today));
        let good = kept.into_iter().filter_map(day).filter(|(_, day)| is_fresh(*day)).collect();
        Self { folder, today, good }
    }

    /// Returns whether an address was there lately.
    pub fn is_good(&self, url: &str) -> bool {
        self.good.contains_key(url)
    }

    /// Takes in that an address is there today.
    pub fn keep(&mut self, url: &str) {
        self.good.insert(url.to_owned(), self.today);
    }

    /// Writes what is known of the addresses that the studio still has.
    pub fn write(&self, wanted: &BTreeSet<&str>) -> Result<(), String> {
        let good = self.good.iter().filter(|(url, _)| wanted.contains(url.as_str()));
        let kept: Map<String, Value> = good.map(|(url, day)| (url.clone(), Value::from(day.to_string()))).collect();
        let text = serde_json::to_string_pretty(&kept).map_err(|error| error.to_string())? + "\n";
        let file = self.folder.join(FILE);
        fs::create_dir_all(&self.folder).and_then(|()| fs::write(&file, text)).map_err(|error| {
            format!("cannot keep the answers in `{}`: {error}; the next proof asks again", file.display())
        })
    }
}
