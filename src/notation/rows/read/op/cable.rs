//! Cables that go by their numbers: `2/2 LC`, `2/1/2 RPC`.

use super::super::cursor::Cursor;

/// Reads the two or three numbers of a cable and its name: `2/2 LC`, `2/1/2 RPC`.
pub(super) fn cable(cursor: &mut Cursor<'_>) -> Option<i64> {
    let before = cursor.at;
    let crossed = cable_here(cursor);
    if crossed.is_none() {
        cursor.at = before;
    }
    crossed
}

fn cable_here(cursor: &mut Cursor<'_>) -> Option<i64> {
    let mut sum = 0;
    let mut parts = 0;
    loop {
        let rest = cursor.rest();
        let digits = rest.bytes().take_while(u8::is_ascii_digit).count();
        if digits == 0 || digits > 2 {
            return None;
        }
        sum += rest.get(..digits)?.parse::<i64>().ok()?;
        parts += 1;
        cursor.at += digits;
        if cursor.peek() != Some('/') {
            break;
        }
        cursor.at += 1;
    }
    if parts < 2 {
        return None;
    }
    cursor.any(&["lc", "rc", "lpc", "rpc", "lt", "rt", "lpt", "rpt"]).then_some(sum)
}
