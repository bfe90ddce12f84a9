//! `proof --links`: asks every address elsewhere whether it is still there.
//!
//! This folder and no other asks other hosts, and only when it is told to.

mod ask;
mod known;

pub use known::Known;

use super::terminal;
use crate::Studied;
use crate::entry::{Address, Entry, Placing};
use crate::finding::{Code, Finding, Severity};
use ask::{Answer, Asker};
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::sync::{Mutex, PoisonError};
use std::thread;

/// An address that no page answers at.
pub static LINK_DEAD: Code = Code {
    name: "link-dead",
    severity: Severity::Warning,
    what: "An address elsewhere does not answer, or answers that there is no page.",
    why: "The reader follows it into nothing.",
    bad: "url: https://example.org/moved-away",
    good: "url: https://example.org/where-it-is-now",
};

/// How many hosts are asked at a time; a host is asked one address after the other.
const AT_ONCE: usize = 4;

/// From how many addresses on it is not chance that none can be reached.
const ENOUGH: usize = 3;

/// Asks the addresses of a studio whose answers are not known, keeps what was answered, and returns what is wrong at each
/// place that has such an address. Of one address with several fragments the page is asked once. Where none of several can be
/// reached, that is said and nothing else: the machine is hardly on the network.
pub fn check(studied: &Studied, mut known: Known) -> Vec<Finding> {
    let all: Vec<(&Entry, &Address)> = studied
        .catalogue
        .entries
        .iter()
        .flat_map(|entry| entry.addresses.iter().map(move |address| (entry, address)))
        .filter(|(_, address)| address.url.starts_with("http"))
        .collect();
    let wanted: BTreeSet<&str> = all.iter().map(|(_, address)| page(&address.url)).collect();
    let unknown: Vec<&str> = wanted.iter().copied().filter(|url| !known.is_good(url)).collect();
    let answers = ask_all(&unknown);
    if answers.len() >= ENOUGH && answers.values().all(|answer| matches!(answer, Answer::Unreachable(_))) {
        let count = answers.len();
        terminal::complain(&format!(
            "none of {count} addresses can be reached, so nothing is said of them; is this machine on the network?"
        ));
        return Vec::new();
    }
    for (url, answer) in &answers {
        if *answer == Answer::There {
            known.keep(url);
        }
    }
    known.write(&wanted).unwrap_or_else(|why| terminal::complain(&why));
    let placing = Placing::new(&studied.texts);
    let dead = |(entry, address): &(&Entry, &Address)| {
        let answer = answers.get(page(&address.url)).filter(|answer| **answer != Answer::There)?;
        let place = entry.origin.place(&address.at, &placing);
        Some(Finding::new(&LINK_DEAD, place, format!("`{}` {}", address.url, answer.message())).help(answer.help()))
    };
    all.iter().filter_map(dead).collect()
}

/// Returns an address without its fragment, which no host is told.
fn page(url: &str) -> &str {
    url.split('#').next().unwrap_or(url)
}

/// Asks several hosts at a time, and each for one address at a time.
fn ask_all(urls: &[&str]) -> BTreeMap<String, Answer> {
    let mut hosts: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for url in urls {
        let host =
            url.split_once("://").map_or(*url, |(_, rest)| rest).split(['/', '?', ':']).next().unwrap_or_default();
        hosts.entry(host).or_default().push(url);
    }
    let asker = Asker::new();
    let workers = hosts.len().min(AT_ONCE);
    let waiting: Mutex<VecDeque<Vec<&str>>> = Mutex::new(hosts.into_values().collect());
    let answers: Mutex<BTreeMap<String, Answer>> = Mutex::default();
    thread::scope(|scope| {
        for _ in 0..workers {
            scope.spawn(|| {
                loop {
                    let next = waiting.lock().unwrap_or_else(PoisonError::into_inner).pop_front();
                    let Some(urls) = next else { break };
                    for url in urls {
                        let answer = asker.ask(url);
                        answers.lock().unwrap_or_else(PoisonError::into_inner).insert(url.to_owned(), answer);
                    }
                }
            });
        }
    });
    answers.into_inner().unwrap_or_else(PoisonError::into_inner)
}
