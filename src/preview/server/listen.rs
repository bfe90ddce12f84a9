//! Finding a port.

use std::io;
use std::net::{Ipv4Addr, TcpListener};

/// How many further ports are tried.
const FURTHER: u16 = 20;

/// Returns a listener on 127.0.0.1, on this port or the next free one up to 20 further; port 0 takes any.
///
/// Not on `::1` too: that would be a second socket, whose port another program may hold while the first is
/// free, and some machines have no IPv6. Show the address as `http://127.0.0.1:PORT/`; browsers that try
/// `::1` first for `localhost` go on to 127.0.0.1 at once.
///
/// # Errors
/// What the system said of the last port tried.
pub fn listen(port: u16) -> io::Result<TcpListener> {
    let mut tried = port;
    loop {
        match TcpListener::bind((Ipv4Addr::LOCALHOST, tried)) {
            Ok(listener) => return Ok(listener),
            Err(error) => {
                // Some systems keep ranges of ports for themselves and say that they are not permitted.
                let taken = matches!(error.kind(), io::ErrorKind::AddrInUse | io::ErrorKind::PermissionDenied);
                match tried.checked_add(1) {
                    Some(next) if taken && next - port <= FURTHER => tried = next,
                    _ => return Err(error),
                }
            }
        }
    }
}
