//! Asks one address whether it is there.

use std::time::Duration;
use ureq::http::StatusCode;
use ureq::{Agent, Error, Timeout};

/// How long one answer may take, redirections included.
const PATIENCE: Duration = Duration::from_secs(10);

/// How many redirections are followed.
const REDIRECTIONS: u32 = 5;

/// What an address answered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// There is a page, perhaps after redirections.
    There,
    /// There is none, or it is not given: the status.
    Status(StatusCode),
    /// It leads on and on.
    Onward,
    /// No answer came in time.
    Late,
    /// Nobody could be asked: why.
    Unreachable(String),
}

/// Asks addresses.
pub struct Asker(Agent);

impl Asker {
    /// Returns one that trusts the certificates of the web and takes the proxy of the environment.
    pub fn new() -> Self {
        let config = Agent::config_builder()
            .timeout_global(Some(PATIENCE))
            .max_redirects(REDIRECTIONS)
            .max_redirects_will_error(true)
            .http_status_as_error(false)
            .user_agent(concat!("ballband/", env!("CARGO_PKG_VERSION")))
            .build();
        Self(Agent::new_with_config(config))
    }

    /// Asks for the head of a page, or for the page where a host does not give heads.
    pub fn ask(&self, url: &str) -> Answer {
        match answer(self.0.head(url).call()) {
            Answer::Status(StatusCode::METHOD_NOT_ALLOWED | StatusCode::FORBIDDEN | StatusCode::NOT_IMPLEMENTED) => {
                answer(self.0.get(url).call())
            }
            answer => answer,
        }
    }
}

fn answer(got: Result<ureq::http::Response<ureq::Body>, Error>) -> Answer {
    match got {
        Ok(response) if response.status().is_success() => Answer::There,
        Ok(response) => Answer::Status(response.status()),
        Err(Error::TooManyRedirects) => Answer::Onward,
        Err(Error::Timeout(Timeout::Resolve)) => Answer::Unreachable("its host is not found in time".to_owned()),
        Err(Error::Timeout(_)) => Answer::Late,
        Err(Error::HostNotFound) => Answer::Unreachable("there is no such host".to_owned()),
        Err(Error::Io(error)) => Answer::Unreachable(in_plain_words(&error.to_string())),
        Err(error) => Answer::Unreachable(in_plain_words(&error.to_string())),
    }
}

/// Returns why a host could not be asked; the two commonest reasons are worded for programmers where they come from.
fn in_plain_words(why: &str) -> String {
    let known = [("lookup address", "there is no such host"), ("certificate", "its certificate is not one to trust")];
    known.iter().find(|(word, _)| why.contains(word)).map_or(why, |(_, plain)| plain).to_owned()
}

impl Answer {
    /// Returns what to say of an address behind it.
    pub fn message(&self) -> String {
        match self {
            Self::There => "is there".to_owned(),
            Self::Status(status) => {
                let reason = status.canonical_reason().map(|reason| format!(" {reason}")).unwrap_or_default();
                format!("answers {}{reason}", status.as_u16())
            }
            Self::Onward => format!("leads on more than {REDIRECTIONS} times"),
            Self::Late => format!("does not answer within {} seconds", PATIENCE.as_secs()),
            Self::Unreachable(why) => format!("cannot be reached: {why}"),
        }
    }

    /// Returns what to do about it.
    pub fn help(&self) -> &'static str {
        match self {
            Self::There => "",
            Self::Status(StatusCode::NOT_FOUND | StatusCode::GONE) => {
                "look for where the page is now, or take the link out"
            }
            Self::Status(status) if status.is_client_error() => {
                "open it in a browser: some hosts turn programs away and serve people"
            }
            Self::Status(_) | Self::Late => "try again later; if it stays so, look for another address",
            Self::Onward => "open it in a browser, and write the address where you end up",
            Self::Unreachable(_) => {
                "look for a slip in the host's name; without one, open it in a browser, or try again later"
            }
        }
    }
}
