//! Headers of every answer.

use hyper::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, HeaderMap, HeaderName, HeaderValue, REFERRER_POLICY,
    X_CONTENT_TYPE_OPTIONS, X_FRAME_OPTIONS,
};

/// What a page may load. Style attributes are allowed because a yarn's shade and a bar's length stand in one;
/// style elements and scripts in a page are not. A script of `application/ld+json` is data and is not run.
const CONTENT: &str = "default-src 'self'; img-src 'self' data: https:; style-src 'self'; \
    style-src-attr 'unsafe-inline'; object-src 'none'; media-src 'none'; frame-src 'none'; frame-ancestors 'none'; \
    base-uri 'none'; form-action 'self'";

const RESOURCE: HeaderName = HeaderName::from_static("cross-origin-resource-policy");

/// Adds them.
pub(super) fn add(headers: &mut HeaderMap) {
    headers.insert(X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff"));
    headers.insert(X_FRAME_OPTIONS, HeaderValue::from_static("DENY"));
    headers.insert(CONTENT_SECURITY_POLICY, HeaderValue::from_static(CONTENT));
    headers.insert(REFERRER_POLICY, HeaderValue::from_static("no-referrer"));
    headers.insert(RESOURCE, HeaderValue::from_static("same-origin"));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("no-cache"));
}
