//! Addresses: decoded once, and refused if they hint at anything outside.

use super::refusal::Refusal;
use std::fmt::Write;

/// The longest target, in bytes as sent.
const LONGEST: usize = 2048;

/// Returns the decoded path of a request's target, or why it is refused.
pub(super) fn path(raw: &str) -> Result<String, Refusal> {
    if raw.len() > LONGEST {
        return Err(Refusal { status: 414, why: "the address is too long" });
    }
    if !raw.starts_with('/') {
        return Err(Refusal::bad("the address does not begin with `/`"));
    }
    let path = decode(raw)?;
    if path.contains('\\') {
        return Err(Refusal::bad("the address holds a backslash"));
    }
    if path.chars().any(char::is_control) {
        return Err(Refusal::bad("the address holds a control character"));
    }
    if path.contains("//") {
        return Err(Refusal::bad("the address holds an empty part"));
    }
    if path.split('/').any(|part| part == "." || part == "..") {
        return Err(Refusal::bad("the address holds `.` or `..`"));
    }
    Ok(path)
}

/// Returns the value of a key in a query, as it was sent.
pub(super) fn asked<'a>(query: &'a str, key: &str) -> Option<&'a str> {
    query.split('&').find_map(|pair| pair.split_once('=').filter(|(name, _)| *name == key)).map(|(_, value)| value)
}

/// Returns the text with its percent signs decoded, once.
pub(super) fn decode(raw: &str) -> Result<String, Refusal> {
    let mut bytes = Vec::with_capacity(raw.len());
    let mut rest = raw.bytes();
    while let Some(byte) = rest.next() {
        if byte != b'%' {
            bytes.push(byte);
            continue;
        }
        let digit = |byte: Option<u8>| byte.and_then(|byte| char::from(byte).to_digit(16));
        let (Some(high), Some(low)) = (digit(rest.next()), digit(rest.next())) else {
            return Err(Refusal::bad("the address holds a percent sign without two digits"));
        };
        let byte = u8::try_from(high * 16 + low).unwrap_or_default();
        if matches!(byte, b'.' | b'/' | b'\\') {
            return Err(Refusal::bad("the address holds an encoded dot or slash"));
        }
        bytes.push(byte);
    }
    String::from_utf8(bytes).map_err(|_| Refusal::bad("the address is not UTF-8"))
}

/// Returns a decoded path as it stands in a header, always on this server.
pub(super) fn encode(path: &str) -> String {
    // Two slashes at the front would name another host.
    let mut encoded = String::from("/");
    for byte in path.trim_start_matches(['/', '\\']).bytes() {
        if byte.is_ascii_alphanumeric() || matches!(byte, b'/' | b'-' | b'.' | b'_' | b'~') {
            encoded.push(char::from(byte));
        } else {
            let _ = write!(encoded, "%{byte:02X}");
        }
    }
    encoded
}
