//! Comma-separated values after RFC 4180.

use ballband::standards::table::Table;

fn cells(text: &str) -> Vec<(String, String)> {
    let table = Table::read(text).unwrap();
    table.rows().map(|row| (row.get("a").unwrap().to_owned(), row.get("b").unwrap().to_owned())).collect()
}

#[test]
fn quotes_commas_and_line_ends() {
    let pair = |a: &str, b: &str| (a.to_owned(), b.to_owned());
    assert_eq!(cells("a,b\n1,2\n"), [pair("1", "2")]);
    assert_eq!(cells("a,b\r\n1,2"), [pair("1", "2")]);
    assert_eq!(cells("a,b\n\"x, y\",\"say \"\"so\"\"\"\n"), [pair("x, y", "say \"so\"")]);
    assert_eq!(cells("a,b\n\"two\nlines\",\n"), [pair("two\nlines", "")]);
    assert_eq!(cells("a,b\n\"\",\n,\n"), [pair("", ""), pair("", "")]);
    assert_eq!(cells("a,b\n"), []);
}

#[test]
fn faults_have_a_row() {
    for (text, row, what) in [
        ("a,b\n1\n", 1, "1 fields, but the header has 2"),
        ("a,b\n1,2\n1,2,3\n", 2, "3 fields, but the header has 2"),
        ("a,b\n\"1,2\n", 1, "a quote is not closed"),
        ("a,b\n\"1\"x,2\n", 1, "`x` beside a quote"),
        ("a,b\n1\"x\",2\n", 1, "`\"` beside a quote"),
        ("a,a\n1,2\n", 0, "the column `a` is there twice"),
    ] {
        let bad = Table::read(text).unwrap_err();
        assert_eq!((bad.row, bad.what.as_str()), (row, what), "{text:?}");
    }
    let table = Table::read("a,b\nx,\n").unwrap();
    let row = table.rows().next().unwrap();
    assert_eq!(row.get("c").unwrap_err().to_string(), "row 1: no column `c`");
    assert_eq!(row.whole("a").unwrap_err().to_string(), "row 1: `x` in `a` is not a whole number");
    assert_eq!(row.whole("b"), Ok(None));
    assert_eq!((row.some("a"), row.some("b")), (Ok(Some("x".to_owned())), Ok(None)));
    assert_eq!(row.some("c").unwrap_err().to_string(), "row 1: no column `c`");
    assert_eq!(row.filled("b").unwrap_err().to_string(), "row 1: `b` is empty");
}
