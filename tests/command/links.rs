//! `proof --links` against a host of this machine that answers in every way there is.

use super::{ballband, err, folder, out, small_studio};
use std::collections::BTreeMap;
use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::net::{TcpListener, TcpStream};
use std::process::Output;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex};
use std::time::Duration;

/// What a host was asked, and how many asked it at once at most.
#[derive(Default)]
struct Asked {
    lines: Mutex<Vec<String>>,
    now: AtomicUsize,
    most: AtomicUsize,
}

impl Asked {
    fn times(&self, line: &str) -> usize {
        self.lines.lock().unwrap().iter().filter(|known| *known == line).count()
    }
}

/// Begins a host and returns its port.
fn host() -> (u16, Arc<Asked>) {
    let listener = TcpListener::bind("127.0.0.1:0").unwrap();
    let port = listener.local_addr().unwrap().port();
    let asked = Arc::new(Asked::default());
    let theirs = Arc::clone(&asked);
    std::thread::spawn(move || {
        for stream in listener.incoming().flatten() {
            let asked = Arc::clone(&theirs);
            std::thread::spawn(move || answer(stream, &asked));
        }
    });
    (port, asked)
}

fn answer(mut stream: TcpStream, asked: &Asked) {
    let mut lines = BufReader::new(stream.try_clone().unwrap()).lines();
    let Some(Ok(first)) = lines.next() else { return };
    while lines.next().is_some_and(|line| line.is_ok_and(|line| !line.is_empty())) {}
    let line = first.trim_end_matches(" HTTP/1.1").to_owned();
    asked.lines.lock().unwrap().push(line.clone());
    let now = asked.now.fetch_add(1, Ordering::SeqCst) + 1;
    asked.most.fetch_max(now, Ordering::SeqCst);
    let (method, path) = line.split_once(' ').unwrap();
    let onward = |to: &str| format!("301 Moved Permanently\r\nLocation: {to}");
    let status = match (method, path) {
        (_, "/ok" | "/ok?with=query") => "200 OK".to_owned(),
        (_, "/moved") => onward("/ok"),
        (_, "/round") => onward("/round"),
        ("HEAD", "/no-heads") => "405 Method Not Allowed".to_owned(),
        ("GET", "/no-heads") => "200 OK".to_owned(),
        (_, "/people-only") => "403 Forbidden".to_owned(),
        (_, "/broken") => "500 Internal Server Error".to_owned(),
        (_, "/hang") => {
            std::thread::sleep(Duration::from_secs(30));
            return;
        }
        _ => "404 Not Found".to_owned(),
    };
    // Long enough for a second question to come in meanwhile, if one were put.
    std::thread::sleep(Duration::from_millis(60));
    asked.now.fetch_sub(1, Ordering::SeqCst);
    let _ = write!(stream, "HTTP/1.1 {status}\r\nContent-Length: 0\r\nConnection: close\r\n\r\n");
}

/// Returns each dead address with its message, and where it was found.
fn dead(output: &Output, base: &str) -> BTreeMap<String, (String, String)> {
    let mut all = BTreeMap::new();
    for line in out(output).lines() {
        let finding: serde_json::Value = serde_json::from_str(line).unwrap();
        assert_eq!(
            (finding["code"].as_str(), finding["severity"].as_str()),
            (Some("link-dead"), Some("warning")),
            "{line}"
        );
        assert!(!finding["help"].as_str().unwrap().is_empty());
        let message = finding["message"].as_str().unwrap().replace(base, "");
        let (path, words) = message.trim_start_matches('`').split_once("` ").unwrap();
        let at = format!("{}:{}", finding["file"].as_str().unwrap(), finding["line"]);
        all.insert(path.to_owned(), (words.to_owned(), at));
    }
    all
}

#[test]
fn every_address_is_asked_and_the_dead_ones_are_told_at_their_places() {
    let (port, asked) = host();
    let free = TcpListener::bind("127.0.0.1:0").unwrap();
    let refused = free.local_addr().unwrap().port();
    drop(free);
    let here = folder("links");
    small_studio(&here);
    let base = format!("http://127.0.0.1:{port}");
    let register = format!(
        "ok: {{ title: Ok, url: \"{base}/ok\" }}\ngone:\n  title: Gone\n  url: {base}/gone\nhang: {{ title: Hang, url: \"{base}/hang\" }}\nmail: {{ title: Mail, url: \"mailto:nobody@example.org\" }}\n"
    );
    fs::write(here.join("people.yaml"), register).unwrap();
    let text = format!(
        "---\ntitle: About\n---\n\n[a]({base}/ok#part) [b]({base}/moved) [c]({base}/no-heads) [d]({base}/ok?with=query)\n[e]({base}/people-only)\n[f]({base}/round)\n[g]({base}/broken)\n[h](http://127.0.0.1:{refused}/)\n[i]({base}/gone#here)\n"
    );
    fs::write(here.join("pages/about.md"), text).unwrap();

    let plain = ballband(&["proof", "--format", "json"], &here);
    assert_eq!((out(&plain).as_str(), asked.lines.lock().unwrap().len()), ("", 0), "nothing is asked unless told to");
    assert!(!here.join(".answers").exists());

    let proof = ballband(&["proof", "--links", "--format", "json"], &here);
    assert_eq!(proof.status.code(), Some(0), "{}", err(&proof));
    let told = dead(&proof, &base);
    let of = |path: &str| told.get(path).map(|(words, at)| (words.as_str(), at.as_str()));
    assert_eq!(of("/gone"), Some(("answers 404 Not Found", "people.yaml:4")));
    assert_eq!(of("/gone#here"), Some(("answers 404 Not Found", "pages/about.md:10")));
    assert_eq!(of("/hang"), Some(("does not answer within 10 seconds", "people.yaml:5")));
    assert_eq!(of("/people-only"), Some(("answers 403 Forbidden", "pages/about.md:6")));
    assert_eq!(of("/round"), Some(("leads on more than 5 times", "pages/about.md:7")));
    assert_eq!(of("/broken"), Some(("answers 500 Internal Server Error", "pages/about.md:8")));
    let refusal = told.get(&format!("http://127.0.0.1:{refused}/")).unwrap();
    assert!(refusal.0.starts_with("cannot be reached: ") && refusal.1 == "pages/about.md:9", "{refusal:?}");
    assert_eq!(told.len(), 7, "{told:?}");
    assert_eq!((asked.times("HEAD /ok"), asked.times("HEAD /gone")), (2, 1), "once for itself and once from `/moved`");
    assert_eq!(
        (asked.times("HEAD /no-heads"), asked.times("GET /no-heads"), asked.times("GET /people-only")),
        (1, 1, 1)
    );
    // The one that hangs is still held by the host when the next is asked.
    assert!(asked.most.load(Ordering::SeqCst) <= 2, "a host is asked one thing at a time");

    // What was there is believed for a week; what was not is asked again.
    let people =
        "gone: { title: Gone, url: \"BASE/gone\" }\nok: { title: Ok, url: \"BASE/ok\" }\n".replace("BASE", &base);
    fs::write(here.join("people.yaml"), people).unwrap();
    fs::write(here.join("pages/about.md"), "---\ntitle: About\n---\n").unwrap();
    let again = ballband(&["proof", "--links", "--format", "json"], &here);
    assert_eq!(dead(&again, &base).into_keys().collect::<Vec<_>>(), ["/gone"]);
    assert_eq!((asked.times("HEAD /ok"), asked.times("HEAD /gone")), (2, 2));
    let kept: serde_json::Value = serde_json::from_slice(&fs::read(here.join(".answers/links.json")).unwrap()).unwrap();
    assert_eq!(kept.as_object().unwrap().keys().collect::<Vec<_>>(), [&format!("{base}/ok")], "others are forgotten");

    // An old answer counts for nothing, and neither does a spoilt file.
    for text in [format!("{{ \"{base}/ok\": \"2020-01-01\" }}"), "{".to_owned()] {
        let before = asked.times("HEAD /ok");
        fs::write(here.join(".answers/links.json"), text).unwrap();
        ballband(&["proof", "--links"], &here);
        assert_eq!(asked.times("HEAD /ok"), before + 1);
    }
}

/// Three addresses of a host that takes no calls: a machine without a network would say it of every link.
#[test]
fn where_nothing_can_be_reached_the_links_are_not_blamed() {
    let free = TcpListener::bind("127.0.0.1:0").unwrap();
    let port = free.local_addr().unwrap().port();
    drop(free);
    let here = folder("offline");
    small_studio(&here);
    let links = ["a", "b", "c"].map(|path| format!("[{path}](http://127.0.0.1:{port}/{path})\n"));
    fs::write(here.join("pages/about.md"), format!("---\ntitle: About\n---\n\n{}", links.concat())).unwrap();
    let proof = ballband(&["proof", "--links"], &here);
    assert_eq!((proof.status.code(), out(&proof).as_str()), (Some(0), "1 entry read: no findings\n"));
    assert!(err(&proof).contains("none of 3 addresses can be reached"), "{}", err(&proof));
    assert!(!here.join(".answers").exists());
}
