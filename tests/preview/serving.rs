//! A server for a test, and a client that says exactly what it is told to.

use ballband::preview::server::{Answer, Hub, Limits, Pages, Stop, listen, serve_within};
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::sync::Arc;
use std::thread::JoinHandle;
use std::time::Duration;

/// How long anything may take before a test gives up.
pub const DEADLINE: Duration = Duration::from_secs(20);

/// The size of the big picture, in bytes.
pub const BIG: usize = 16 << 20;

struct Studio {
    big: Arc<[u8]>,
}

impl Pages for Studio {
    fn answer(&self, path: &str) -> Answer {
        let html = |status, text: &str, location: Option<&str>| Answer {
            status,
            kind: "text/html; charset=utf-8",
            body: text.as_bytes().into(),
            location: location.map(str::to_owned),
        };
        match path {
            "/" => html(200, "<p>home</p>", None),
            "/größe/" => html(200, "<p>size</p>", None),
            "/größe" => html(301, "", Some("/größe/")),
            "/away" => html(301, "", Some("//elsewhere.example/")),
            "/big.jpg" => Answer { status: 200, kind: "image/jpeg", body: Arc::clone(&self.big), location: None },
            "/slow" => {
                std::thread::sleep(Duration::from_millis(1500));
                html(200, "<p>slow</p>", None)
            }
            "/broken" => panic!("on purpose"),
            _ => html(404, "<p>not here</p>", None),
        }
    }
}

pub struct Served {
    pub port: u16,
    pub hub: Arc<Hub>,
    pub stop: Stop,
    thread: Option<JoinHandle<std::io::Result<()>>>,
}

impl Served {
    pub fn new() -> Self {
        Self::within(Limits::default())
    }

    pub fn within(limits: Limits) -> Self {
        let listener = listen(0).unwrap();
        let port = listener.local_addr().unwrap().port();
        let (hub, stop) = (Arc::new(Hub::default()), Stop::default());
        let (theirs, asked) = (Arc::clone(&hub), stop.clone());
        let pages = Arc::new(Studio { big: vec![7; BIG].into() });
        let thread = std::thread::spawn(move || serve_within(listener, pages, theirs, &asked, limits));
        Self { port, hub, stop, thread: Some(thread) }
    }

    pub fn connect(&self) -> Client {
        let stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        stream.set_read_timeout(Some(DEADLINE)).unwrap();
        Client(BufReader::new(stream))
    }

    /// Asks for a target with GET and this server's own host.
    pub fn get(&self, target: &str) -> Reply {
        self.ask("GET", target, "")
    }

    pub fn ask(&self, method: &str, target: &str, more: &str) -> Reply {
        let mut client = self.connect();
        client.ask(method, target, &format!("Host: 127.0.0.1:{}\r\n{more}", self.port));
        client.reply(method == "HEAD")
    }

    /// Opens a stream of events.
    pub fn events(&self, page: &str, more: &str) -> Client {
        let mut client = self.connect();
        let target = format!("/desk/events?page={page}");
        client.ask("GET", &target, &format!("Host: 127.0.0.1:{}\r\n{more}", self.port));
        assert_eq!(client.head().status, 200);
        client
    }

    pub fn join(mut self) {
        self.thread.take().unwrap().join().unwrap().unwrap();
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        self.stop.stop();
    }
}

pub struct Client(pub BufReader<TcpStream>);

#[derive(Debug)]
pub struct Reply {
    pub status: u16,
    pub headers: Vec<(String, String)>,
    pub body: Vec<u8>,
}

impl Reply {
    pub fn header(&self, name: &str) -> Option<&str> {
        self.headers.iter().find(|(given, _)| given == name).map(|(_, value)| value.as_str())
    }
}

impl Client {
    pub fn ask(&mut self, method: &str, target: &str, headers: &str) {
        // In one piece, or the client's own system would hold back the second one.
        let request = format!("{method} {target} HTTP/1.1\r\n{headers}\r\n");
        self.0.get_mut().write_all(request.as_bytes()).unwrap();
    }

    pub fn line(&mut self) -> String {
        let mut line = String::new();
        self.0.read_line(&mut line).unwrap();
        line.trim_end().to_owned()
    }

    pub fn head(&mut self) -> Reply {
        let status = self.line().split(' ').nth(1).unwrap_or_default().parse().unwrap_or_default();
        let mut headers = Vec::new();
        loop {
            let line = self.line();
            let Some((name, value)) = line.split_once(':') else { break };
            headers.push((name.to_lowercase(), value.trim().to_owned()));
        }
        Reply { status, headers, body: Vec::new() }
    }

    pub fn reply(&mut self, head: bool) -> Reply {
        let mut reply = self.head();
        let length = reply.header("content-length").and_then(|length| length.parse().ok()).unwrap_or(0);
        if !head && reply.status != 304 {
            reply.body.resize(length, 0);
            self.0.read_exact(&mut reply.body).unwrap();
        }
        reply
    }

    /// Reads up to a line that begins so, and returns the rest of it.
    pub fn until(&mut self, begin: &str) -> String {
        loop {
            let mut line = String::new();
            assert_ne!(self.0.read_line(&mut line).unwrap(), 0, "the stream ended before `{begin}`");
            if let Some(rest) = line.strip_prefix(begin) {
                return rest.trim_end().to_owned();
            }
        }
    }

    /// Returns whether the server closes the connection before the deadline.
    pub fn is_closed(&mut self) -> bool {
        let mut rest = Vec::new();
        match self.0.read_to_end(&mut rest) {
            Ok(_) => true,
            Err(error) => !matches!(error.kind(), std::io::ErrorKind::WouldBlock | std::io::ErrorKind::TimedOut),
        }
    }
}

/// Waits until something is so.
pub fn wait(what: &str, mut so: impl FnMut() -> bool) {
    let begun = std::time::Instant::now();
    while !so() {
        assert!(begun.elapsed() < DEADLINE, "waited in vain: {what}");
        std::thread::sleep(Duration::from_millis(2));
    }
}
