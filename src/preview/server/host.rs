//! Names of this machine, and other sites.
//!
//! A page elsewhere may give its own name this machine's address and so read the preview with the browser of
//! whoever looks at it. The name it was asked under still stands in `Host`, so other names are refused.

use super::refusal::Refusal;
use hyper::header::{HOST, HeaderMap, ORIGIN};

/// Returns whether an authority names this machine, with the served port or none.
pub(super) fn is_here(authority: &str, port: u16) -> bool {
    let (name, given) = match authority.rsplit_once(':') {
        Some((name, given)) if !given.ends_with(']') => (name, Some(given)),
        _ => (authority, None),
    };
    let loopback = name == "127.0.0.1" || name == "[::1]" || name.eq_ignore_ascii_case("localhost");
    loopback && given.is_none_or(|given| given == port.to_string())
}

/// Returns why a request is refused for the host it names.
pub(super) fn check(headers: &HeaderMap, port: u16) -> Result<(), Refusal> {
    let mut named = headers.get_all(HOST).iter();
    let (Some(host), None) = (named.next(), named.next()) else {
        return Err(Refusal::bad("the request must name one host"));
    };
    if host.to_str().is_ok_and(|host| is_here(host, port)) {
        Ok(())
    } else {
        Err(Refusal::forbidden("this server answers to 127.0.0.1 and localhost only, with its own port"))
    }
}

/// Returns why a request is refused that another site's page makes.
pub(super) fn own_site(headers: &HeaderMap, port: u16) -> Result<(), Refusal> {
    let site = headers.get("sec-fetch-site").is_none_or(|site| site == "same-origin" || site == "none");
    let origin = headers.get(ORIGIN).is_none_or(|origin| {
        origin.to_str().ok().and_then(|origin| origin.strip_prefix("http://")).is_some_and(|name| is_here(name, port))
    });
    if site && origin { Ok(()) } else { Err(Refusal::forbidden("events are for the preview's own pages")) }
}
