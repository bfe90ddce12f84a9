//! `save STUDIO [TIMES]`: how long it takes from a save until an open page is told, in one process over real files and sockets.
//!
//! It watches and serves the studio as `watch` does, opens a note and a pattern that 60 notes mention, saves each so many
//! times with other words and a title of its own, and measures from before the write until the event has arrived. It prints, for
//! each, the median and the 95th percentile in milliseconds, then the most memory the process held in megabytes. The studio is
//! changed; make a new one.
#![allow(
    clippy::disallowed_methods,
    clippy::print_stdout,
    reason = "a tool for measuring that writes and asks the clock"
)]

use ballband::catalogue::{Eyes, View};
use ballband::entry::value::Date;
use ballband::entry::{Kind, Reference};
use ballband::preview::server::{Hub, Stop, listen, serve};
use ballband::preview::watcher::watch;
use ballband::preview::{Changed, Live};
use ballband::source::disk::Disk;
use std::error::Error;
use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant};

/// How many notes mention the pattern that is saved.
const MENTIONS: usize = 60;

#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> Result<(), Box<dyn Error>> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let (folder, times) = match arguments.as_slice() {
        [folder] => (PathBuf::from(folder), 50),
        [folder, times] => (PathBuf::from(folder), times.parse()?),
        _ => return Err("usage: save STUDIO [TIMES]".into()),
    };
    let today = Date::parse("2026-11-25").ok_or("the day is one")?;
    let view = View { today, eyes: Eyes::Designer };
    let disk = Disk::at(&folder);
    let (note, pattern) = ready(&folder, &disk, view)?;
    let (sender, bursts) = std::sync::mpsc::channel();
    let ours = disk.clone();
    let watching = watch(&folder, move |path| ours.is_ours(path), move |burst| drop(sender.send(burst)))?;
    let hub = Arc::new(Hub::default());
    let live = Arc::new(Live::new(disk.clone(), Arc::clone(&hub), view)?);
    let listener = listen(0)?;
    let port = listener.local_addr()?.port();
    let stop = Stop::default();
    let serving = {
        let (live, stop) = (Arc::clone(&live), stop.clone());
        std::thread::spawn(move || serve(listener, live, hub, &stop))
    };
    let taking = std::thread::spawn(move || {
        for burst in bursts {
            // What cannot be listed is told by nothing arriving.
            let _ = live.change(&Changed::of(&burst, |path| disk.name(path)), view);
        }
    });
    for (what, id) in [("a note".to_owned(), note), (format!("a pattern that {MENTIONS} notes mention"), pattern)] {
        let mut took = saves(&folder, &id, port, times)?;
        took.sort();
        let at = |share: usize| took.get((took.len() * share / 100).min(took.len() - 1)).copied().unwrap_or_default();
        println!("{what}: median {:.1} ms, 95th percentile {:.1} ms of {times} saves", ms(at(50)), ms(at(95)));
    }
    stop.stop();
    drop(watching);
    serving.join().map_err(|_| "the server stopped")??;
    taking.join().map_err(|_| "the saves stopped")?;
    println!("memory {:.1} MB", memory().unwrap_or_default());
    Ok(())
}

fn ms(time: Duration) -> f64 {
    time.as_secs_f64() * 1000.0
}

/// Lets so many notes mention the first pattern, and returns the last note and that pattern.
fn ready(folder: &Path, disk: &Disk, view: View) -> Result<(Reference, Reference), Box<dyn Error>> {
    let joined = ballband::join(disk, view)?;
    let notes = joined.catalogue.of_kind(Kind::Note);
    let pattern = &joined.catalogue.of_kind(Kind::Pattern).first().ok_or("the studio has no pattern")?.id;
    for note in notes.iter().take(MENTIONS) {
        let file = folder.join(note.origin.file.as_str());
        fs::write(&file, format!("{}\nAgain <{pattern}>.\n", fs::read_to_string(&file)?))?;
    }
    Ok((notes.last().ok_or("the studio has no note")?.id.clone(), pattern.clone()))
}

/// Opens an entry's page, then saves the entry again and again and waits until the page is told.
fn saves(folder: &Path, id: &Reference, port: u16, times: usize) -> Result<Vec<Duration>, Box<dyn Error>> {
    let page = format!("/{}/{}/", id.kind.folder(), id.key);
    let mut asked = ask(port, &page)?;
    asked.get_mut().shutdown(std::net::Shutdown::Write)?;
    asked.read_to_end(&mut Vec::new())?;
    let mut events = ask(port, &format!("/desk/events?page={page}"))?;
    wait_for(&mut events, "id:")?;
    let file = folder.join(id.kind.folder()).join(format!("{}.md", id.key));
    let text = fs::read_to_string(&file)?;
    let (_, after_title) = text.split_once("title:").and_then(|(_, rest)| rest.split_once('\n')).ok_or("no title")?;
    let mut took = Vec::with_capacity(times);
    for time in 0..times {
        let saved = format!("---\ntitle: Saved {time}\n{after_title}\nWords of save {time}.\n");
        let begun = Instant::now();
        fs::write(&file, saved)?;
        wait_for(&mut events, "event: page")?;
        took.push(begun.elapsed());
        // The page is looked at, as a browser would, and then there is a pause.
        let mut asked = ask(port, &page)?;
        asked.get_mut().shutdown(std::net::Shutdown::Write)?;
        asked.read_to_end(&mut Vec::new())?;
        std::thread::sleep(Duration::from_millis(60));
    }
    Ok(took)
}

fn ask(port: u16, path: &str) -> Result<BufReader<TcpStream>, Box<dyn Error>> {
    let mut stream = TcpStream::connect(("127.0.0.1", port))?;
    stream.set_read_timeout(Some(Duration::from_secs(20)))?;
    let close = if path.contains('?') { "" } else { "Connection: close\r\n" };
    stream.write_all(format!("GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n{close}\r\n").as_bytes())?;
    Ok(BufReader::new(stream))
}

fn wait_for(events: &mut BufReader<TcpStream>, beginning: &str) -> Result<(), Box<dyn Error>> {
    let mut line = String::new();
    while !line.starts_with(beginning) {
        line.clear();
        if events.read_line(&mut line)? == 0 {
            return Err("the events ended".into());
        }
    }
    Ok(())
}

/// Returns the most memory this process held, in megabytes, where the system tells.
fn memory() -> Option<f64> {
    let status = fs::read_to_string("/proc/self/status").ok()?;
    let line = status.lines().find(|line| line.starts_with("VmHWM:"))?;
    Some(line.split_whitespace().nth(1)?.parse::<f64>().ok()? / 1024.0)
}
