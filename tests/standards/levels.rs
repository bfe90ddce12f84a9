//! Project levels.

use ballband::standards::levels::{CSV, Level, all, read};

#[test]
fn the_table_as_a_whole() {
    let rows = read(CSV).unwrap();
    assert_eq!(rows, all());
    assert_eq!(rows.len(), super::lines(CSV));
    assert_eq!(rows.iter().map(|row| row.level).collect::<Vec<_>>(), Level::ALL);
    for (index, row) in rows.iter().enumerate() {
        super::check_sources(row.provenance, &row.sources);
        assert_eq!(row.number as usize, index + 1);
        assert!(row.meaning.ends_with('.'));
        assert_eq!(row.level.meaning(), row.meaning);
    }
}

#[test]
fn words_for_levels() {
    for (word, level) in [
        ("basic", Level::Basic),
        ("Easy", Level::Easy),
        (" intermediate ", Level::Intermediate),
        ("complex", Level::Complex),
        ("beginner", Level::Basic),
        ("Experienced", Level::Complex),
    ] {
        assert_eq!(Level::parse(word), Ok(level), "{word}");
    }
    let slip = Level::parse("intermedate").unwrap_err();
    assert_eq!(slip.to_string(), "`intermedate` is not a project level");
    assert_eq!(slip.help(), "write `intermediate`");
    assert_eq!(Level::parse("hard").unwrap_err().help(), "write `basic`, `easy`, `intermediate` or `complex`");
}
