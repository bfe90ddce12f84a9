//! From a request to its answer.

use super::body::Body;
use super::refusal::Refusal;
use super::run::Room;
use super::seats::{Seat, Waits};
use super::{Answer, EVENTS, host, policy, tag, target};
use hyper::body::{Bytes, Incoming};
use hyper::header::{ALLOW, CONTENT_TYPE, ETAG, HeaderMap, HeaderName, HeaderValue, IF_NONE_MATCH, LOCATION};
use hyper::{Method, Request, Response, StatusCode};
use std::sync::Arc;

/// Returns the answer to a request; what is refused is answered too.
pub(super) async fn respond(request: Request<Incoming>, room: Arc<Room>, seat: Arc<Seat>) -> Response<Body> {
    let mut response = match check(&request, room.port) {
        Err(refusal) => refuse(&refusal),
        Ok(path) if path == EVENTS => events(&request, &room, &seat).unwrap_or_else(|refusal| refuse(&refusal)),
        Ok(path) => page(path, request.headers(), &room, &seat).await,
    };
    policy::add(response.headers_mut());
    response
}

fn check(request: &Request<Incoming>, port: u16) -> Result<String, Refusal> {
    host::check(request.headers(), port)?;
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        return Err(Refusal { status: 405, why: "only GET and HEAD are answered" });
    }
    let uri = request.uri();
    if let Some(authority) = uri.authority()
        && (uri.scheme_str() != Some("http") || !host::is_here(authority.as_str(), port))
    {
        return Err(Refusal::bad("the address is of another host"));
    }
    if uri.path_and_query().is_some_and(|whole| whole.as_str().len() > 2048) {
        return Err(Refusal { status: 414, why: "the address is too long" });
    }
    target::path(uri.path())
}

/// Returns a page from memory, or word that the browser has it already.
async fn page(path: String, headers: &HeaderMap, room: &Arc<Room>, seat: &Seat) -> Response<Body> {
    // Made aside: a picture may take a while, and the other pages and events shall not wait for it.
    seat.waits(Waits::Answer);
    let Ok(permit) = Arc::clone(&room.makers).acquire_owned().await else {
        return refuse(&Refusal { status: 503, why: "the preview is ending" });
    };
    let pages = Arc::clone(&room.pages);
    let made = tokio::task::spawn_blocking(move || {
        let answer = pages.answer(&path);
        let tag = (answer.status == 200).then(|| tag::tag(&answer.body));
        drop(permit);
        (answer, tag)
    })
    .await;
    seat.waits(Waits::Client);
    let Ok((answer, tag)) = made else {
        return refuse(&Refusal { status: 500, why: "the page could not be made" });
    };
    let Answer { status, kind, body, location } = answer;
    let known = tag.as_deref().is_some_and(|tag| {
        headers.get_all(IF_NONE_MATCH).iter().any(|asked| asked.to_str().is_ok_and(|asked| tag::matches(asked, tag)))
    });
    let mut response = if known {
        with(304, Bytes::new())
    } else {
        let mut response = with(status, Bytes::from_owner(body));
        put(&mut response, CONTENT_TYPE, kind);
        response
    };
    if let Some(tag) = tag {
        put(&mut response, ETAG, &tag);
    }
    if let Some(location) = location {
        put(&mut response, LOCATION, &target::encode(&location));
    }
    response
}

fn events(request: &Request<Incoming>, room: &Room, seat: &Seat) -> Result<Response<Body>, Refusal> {
    if request.method() != Method::GET {
        return Err(Refusal { status: 405, why: "events are only sent to GET" });
    }
    let headers = request.headers();
    host::own_site(headers, room.port)?;
    let query = request.uri().query().unwrap_or_default();
    // Here a script's encodeURIComponent has encoded slashes and dots as well, or not; both are right.
    let page = target::asked(query, "page").ok_or(Refusal::bad("the events need the page that listens"))?;
    let page = target::path(&page.replace("%2F", "/").replace("%2f", "/"))?;
    let again = headers.get("last-event-id").and_then(|id| id.to_str().ok()).filter(|id| !id.is_empty());
    let seen = again.or_else(|| target::asked(query, "seen"));
    let Some(listener) = room.hub.join(page, seen, room.limits.listeners) else {
        return Err(Refusal { status: 503, why: "too many pages listen already" });
    };
    seat.waits(Waits::Events);
    let mut response = Response::new(Body::events(listener, room.limits.heartbeat));
    put(&mut response, CONTENT_TYPE, "text/event-stream");
    Ok(response)
}

fn refuse(refusal: &Refusal) -> Response<Body> {
    let mut response = with(refusal.status, Bytes::from(format!("{}\n", refusal.why)));
    put(&mut response, CONTENT_TYPE, "text/plain; charset=utf-8");
    if refusal.status == 405 {
        put(&mut response, ALLOW, "GET, HEAD");
    }
    response
}

fn with(status: u16, body: Bytes) -> Response<Body> {
    let mut response = Response::new(Body::Whole(body));
    *response.status_mut() = StatusCode::from_u16(status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR);
    response
}

fn put(response: &mut Response<Body>, name: HeaderName, value: &str) {
    if let Ok(value) = HeaderValue::from_str(value) {
        response.headers_mut().insert(name, value);
    }
}
