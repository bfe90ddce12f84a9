//! The drawing of a project's progress.

use ballband::render::chart::{Point, chart};

fn points(of: &[(i64, i64)]) -> Vec<Point> {
    of.iter().map(|(days, percent)| Point { days: *days, percent: *percent }).collect()
}

/// The field goes from 52 to 350 and from 152 up to 12: half of the days is at 201, and 25% at 117.
#[test]
fn points_stand_where_their_day_and_percent_are() {
    let svg = chart(&points(&[(0, 0), (5, 25), (10, 100)]), "Progress", "Words.", "1 May", "11 May");
    assert!(svg.contains("d=\"M52 152L201 117L350 12\""), "{svg}");
    assert_eq!(svg.matches("<circle").count(), 3);
    assert!(svg.contains(">1 May</text>") && svg.contains(">11 May</text>"));
}

/// What stands in a title is no markup, and a reader who cannot see has both title and words (WAI-ARIA 1.2, role `img`).
#[test]
fn it_has_a_name_and_says_what_it_shows() {
    let svg = chart(&points(&[(0, 0), (1, 5)]), "Progress of <A & B>", "From \"0%\".", "1 <May", "2 May");
    assert!(
        svg.starts_with(
            "<svg class=\"chart\" role=\"img\" aria-labelledby=\"leaflet-chart-title leaflet-chart-words\""
        )
    );
    assert!(svg.contains("<title id=\"leaflet-chart-title\">Progress of &lt;A &amp; B&gt;</title>"), "{svg}");
    assert!(svg.contains("<desc id=\"leaflet-chart-words\">") && svg.contains("1 &lt;May"), "{svg}");
    assert!(!svg.contains("style=") && !svg.contains('#'), "its colours are the style sheet's");
}

#[test]
fn odd_points_stay_within_the_field() {
    assert_eq!(chart(&points(&[(0, 10)]), "", "", "", ""), "");
    let svg = chart(&points(&[(0, -20), (0, 900)]), "", "", "", "");
    assert!(svg.contains("d=\"M52 152L52 12\""), "{svg}");
    let svg = chart(&points(&[(i64::MIN, i64::MIN), (i64::MAX, i64::MAX)]), "", "", "", "");
    assert!(svg.contains("M52 152L"), "{svg}");
}
