//! The desk: what it tells, and that nothing of it is in any site.

use crate::support::{TODAY, day, studio};
use ballband::catalogue::{Eyes, View};
use ballband::page::Shown;
use ballband::page::desk::{DeskContext, context};
use ballband::source::Files;
use ballband::source::disk::Disk;
use std::path::Path;

const DESIGNER: Eyes = Eyes::Designer;

/// Returns the desk of a studio, as context and as page.
fn desk_of(files: &dyn Files) -> (DeskContext, String) {
    let studied = ballband::study(files, View { today: day(TODAY), eyes: DESIGNER }).unwrap();
    let sizes = studied.sizes();
    let shown = Shown::for_one(&studied.catalogue, &sizes);
    let context = context(&shown, &studied.findings, &studied.texts);
    let page = ballband::render::desk::page(&context).unwrap();
    (context, page)
}

fn desk(files: &[(&str, &str)]) -> (DeskContext, String) {
    desk_of(&studio(files))
}

fn demo() -> Disk {
    Disk::at(Path::new(env!("CARGO_MANIFEST_DIR")).join("demo-data"))
}

#[test]
fn the_desk_of_the_demo_can_be_looked_at() {
    let (_, page) = desk_of(&demo());
    if let Ok(folder) = std::env::var("BALLBAND_DESK") {
        let folder = Path::new(&folder).join("desk");
        std::fs::create_dir_all(&folder).unwrap();
        std::fs::write(folder.join("index.html"), &page).unwrap();
        for (name, bytes) in ballband::render::desk::assets() {
            std::fs::write(folder.join(name), bytes).unwrap();
        }
    }
    assert!(page.contains("<h1>The desk</h1>"));
}

const YARNS: &str =
    "heron:\n  title: Heron\n  put-up: 200 m / 100 g\n  on hand: { reed: 1 skein, chalk: 3 skeins, mud: 50 g }\n";

/// S takes 300 m of reed and 400 m of chalk.
const HAT: &str = "---\ntitle: Reed Hat\npublished: 2026-03-14\nsizes: S (M)\nyarn:\n  - { colour: MC, yarn: heron, shade: reed, needs: 300 (500) m }\n  - { colour: CC, yarn: heron, shade: chalk, needs: 400 (600) m }\n";

fn hat() -> String {
    let yarn =
        HAT.replace("needs: 300 (500) m", "needs: '300 (500) m'").replace("needs: 400 (600) m", "needs: '400 (600) m'");
    format!("{yarn}---\n")
}

/// Reed: 300 m less 50 g, which are 100 m, is 200 m, and 200 m are at hand: enough, and not with a tenth more, so that
/// 20 m are to buy. Chalk: 400 m of 600. In size M, reed: 500 − 100 − 200 = 200 m short.
#[test]
fn yarn_at_hand_is_set_against_what_is_still_wanted() {
    let studio = "title: W\nurl: https://example.org\nmargin: 10%\n";
    let project = |size: &str| {
        format!(
            "---\ntitle: Mine\npattern: reed-hat\nsize: {size}\nyarn: [ {{ yarn: heron, shade: chalk }}, {{ yarn: heron, shade: reed, used: 50 g }} ]\n---\n"
        )
    };
    let told = |size: &str| {
        let (context, _) = desk(&[
            ("studio.yaml", studio),
            ("yarns.yaml", YARNS),
            ("patterns/reed-hat.md", &hat()),
            ("projects/mine.md", &project(size)),
        ]);
        let line = |line: &ballband::page::desk::YarnLine| {
            let words = [line.shade.clone().unwrap_or_default(), line.state.to_owned(), line.in_words.first.clone()];
            format!("{}|{}", words.join("|"), line.skeins.clone().unwrap_or_default())
        };
        context.yarn.iter().map(line).collect::<Vec<_>>()
    };
    assert_eq!(
        told("S"),
        ["Reed|bare|enough, without the margin|one skein", "Chalk|enough|enough|", "Mud|free|nothing planned|"]
    );
    assert_eq!(told("M")[0], "Reed|short|short by 200\u{a0}m|two skeins");
}

/// 50 g of 200 m / 100 g are 100 m, a third of 300 m.
#[test]
fn yarn_used_stands_beside_what_the_pattern_takes() {
    let project = "---\ntitle: Mine\npattern: reed-hat\nsize: S\nyarn: [ { yarn: heron, shade: reed, used: 50 g } ]\nmade for: { who: Ann, by: 2026-11-20 }\n---\n";
    let (context, page) =
        desk(&[("yarns.yaml", YARNS), ("patterns/reed-hat.md", &hat()), ("projects/mine.md", project)]);
    let line = &context.needles[0];
    assert_eq!((line.yarns[0].part, line.is_late, line.in_words.as_str()), (Some(33), true, "five days late"));
    assert!(page.contains("one late of one"), "{page}");
}

fn gift(who: &str, household: &str, variant: &str) -> String {
    format!(
        "---\ntitle: For {who}\npattern: reed-hat\nvariant: {variant}\nmade for: {{ who: {who}, household: {household} }}\n---\n"
    )
}

#[test]
fn two_alike_in_one_household_are_marked_and_no_others() {
    let files = [
        ("projects/a.md", gift("Ann", "mill", "{ brim: Folded, crown: open }")),
        ("projects/b.md", gift("Ben", "mill", "{ crown: open, brim: folded }")),
        ("projects/c.md", gift("Cat", "mill", "{ brim: rolled, crown: open }")),
        ("projects/d.md", gift("Dan", "quay", "{ brim: folded, crown: open }")),
    ];
    let hat = hat();
    let mut all: Vec<(&str, &str)> = files.iter().map(|(path, text)| (*path, text.as_str())).collect();
    let other = "---\ntitle: Other Hat\npublished: 2026-03-14\n---\n";
    all.extend([("yarns.yaml", YARNS), ("patterns/reed-hat.md", &hat), ("patterns/other.md", other)]);
    let (context, page) = desk(&all);
    let marked: Vec<(&str, bool)> = context
        .households
        .iter()
        .flat_map(|household| household.gifts.iter().map(|gift| (gift.who.as_str(), gift.is_alike)))
        .collect();
    assert_eq!(marked, [("Ann", true), ("Ben", true), ("Cat", false), ("Dan", false)]);
    let not_had = |at: usize| context.households[at].not_had.iter().map(|link| link.title.clone()).collect::<Vec<_>>();
    assert_eq!((not_had(0), not_had(1)), (vec!["Other Hat".to_owned()], vec!["Other Hat".to_owned()]));
    assert_eq!(page.matches("<strong class=\"alike\">alike</strong>").count(), 2);
    assert_eq!(page.matches("<strong class=\"alike\">two alike</strong>").count(), 1);
}

fn owed(design: &ballband::page::desk::DesignLine) -> String {
    let words = design.missing.iter().map(|one| format!("{}{}", one.key.unwrap_or_default(), one.words));
    words.collect::<Vec<_>>().join(", ")
}

#[test]
fn a_design_tells_what_it_owes_and_how_long_it_has_stood() {
    let sketch = "---\ntitle: Kelp\nstage: sketch\ngarment: throw\n---\n";
    let test = "---\ntitle: Fish\nstage: test knit\nsizes: S (M)\ntest knit: { opens: 2026-11-01, closes: 2026-12-31 }\ntesters: [ { name: Ann, size: M } ]\n---\n\nFish.\n";
    let note = "---\ntitle: A week\n---\n\nI drew <pattern:kelp>.\n";
    let (context, _) =
        desk(&[("patterns/kelp.md", sketch), ("patterns/fish.md", test), ("journal/2026-11-15.md", note)]);
    let [sketch, fish] = [&context.designs[0].designs[0], &context.designs[1].designs[0]];
    assert_eq!((sketch.stands.as_deref(), owed(sketch).as_str()), (Some("last told of ten days ago"), "yarn"));
    assert_eq!(fish.stands.as_deref(), Some("test knit opened 24 days ago"));
    let told = owed(fish);
    for one in ["gauge", "test knit: apply", "a tester for size S", "what one tester used", "the end of the test knit"]
    {
        assert!(told.contains(one), "{one}: {told}");
    }
    assert!(!told.contains("test knit: opens") && !told.contains("sizes,"), "{told}");
}

/// From 20 October to 25 November are 36 days, whatever notes tell.
#[test]
fn the_day_written_down_tells_exactly_how_long_a_design_has_stood() {
    let kelp_text = "---\ntitle: Kelp\nstage: swatch\nreached: { sketch: 2026-10-01, swatch: 2026-10-20, sample: 2027-01-10 }\n---\n";
    let ahead_text = "---\ntitle: Ahead\nstage: swatch\nreached: { swatch: 2026-12-01 }\n---\n";
    let note = "---\ntitle: A week\n---\n\nI drew <pattern:kelp> and <pattern:ahead>.\n";
    let (context, page) =
        desk(&[("patterns/kelp.md", kelp_text), ("patterns/ahead.md", ahead_text), ("journal/2026-11-15.md", note)]);
    let [ahead, kelp] = [&context.designs[0].designs[0], &context.designs[0].designs[1]];
    assert_eq!(kelp.stands.as_deref(), Some("at this stage for 36 days"));
    assert_eq!(ahead.stands.as_deref(), Some("last told of ten days ago"), "a day to come tells nothing");
    let dates: Vec<String> = kelp.dates.iter().map(|line| format!("{} {}", line.what, line.day.iso)).collect();
    assert_eq!(dates, ["Sketch 2026-10-01", "Swatch 2026-10-20", "Sample planned 2027-01-10"]);
    assert!(page.contains("<a href=\"calendar.ics\">"));
    let site = crate::support::site(&[
        ("patterns/kelp.md", kelp_text),
        ("patterns/ahead.md", ahead_text),
        ("journal/2026-11-15.md", note),
    ]);
    assert!(site.iter().all(|(_, text)| !text.contains("2027") && !text.contains("20 October")));
}

#[test]
fn a_finding_stands_by_its_file_with_text_reason_and_cure() {
    let note = "---\ntitle: A week\n---\n\nI knitted <pattern:reed-het> & more.\n";
    let (context, page) =
        desk(&[("yarns.yaml", YARNS), ("patterns/reed-hat.md", &hat()), ("journal/2026-11-20.md", note)]);
    let quote = context.findings.files[0].findings[0].quote.as_ref().unwrap();
    assert_eq!((quote.line, quote.column, quote.guilty.as_str()), (5, 11, "<pattern:reed-het>"));
    assert!(page.contains("<mark>&lt;pattern:reed-het&gt;</mark> &amp; more."), "{page}");
    assert!(
        page.contains("Did you mean `pattern:reed-hat`?") && page.contains("The reader would follow it into nothing.")
    );
    assert!(page.contains("<span>one error</span>"), "{page}");
}

#[test]
fn the_week_tells_what_is_not_linked_and_gives_links_that_readers_can_follow() {
    let note = "---\ntitle: A week\nwearing: [pattern:reed-hat]\n---\n\nI like the big cowl, and see <technique:rib> and [the mill](https://mill.example/).\n";
    let cowl = "---\ntitle: Big Cowl\npublished: 2026-01-01\n---\n";
    let early = "---\ntitle: Rib\nready: false\n---\n";
    let (context, _) = desk(&[
        ("yarns.yaml", YARNS),
        ("patterns/reed-hat.md", &hat()),
        ("patterns/big-cowl.md", cowl),
        ("techniques/rib.md", early),
        ("journal/2026-11-20.md", note),
    ]);
    let week = context.week.unwrap();
    let unlinked: Vec<&str> = week.unlinked.iter().map(|line| line.reference.as_str()).collect();
    assert_eq!(unlinked, ["<pattern:reed-hat>", "<pattern:big-cowl>"]);
    assert_eq!(
        week.links,
        "A week: https://wrackline.example/journal/2026-11-20/\nReed Hat: https://wrackline.example/patterns/reed-hat/\nthe mill: https://mill.example/"
    );
}

#[test]
fn an_empty_studio_has_a_friendly_desk() {
    let (context, page) = desk(&[]);
    assert!(context.week.is_none() && context.sections.iter().all(|section| !section.calls));
    for words in [
        "Nothing is wrong.",
        "There is no note yet.",
        "No design yet.",
        "The needles are empty.",
        "No gifts are written down.",
    ] {
        assert!(page.contains(words), "{words}");
    }
}

/// The demo's planted pair: two of one household have the same hat in the same variant.
#[test]
fn the_demo_has_one_pair_alike_and_its_names_are_on_the_desk_alone() {
    let (context, page) = desk_of(&demo());
    assert_eq!(context.findings.total, 0);
    let alike: Vec<&str> = context
        .households
        .iter()
        .flat_map(|household| household.gifts.iter().filter(|gift| gift.is_alike).map(|gift| gift.who.as_str()))
        .collect();
    assert_eq!(alike, ["Denzil Varcoe", "Petrok Varcoe"]);
    assert!(context.yarn.iter().any(|line| line.state == "short"));
    assert!(context.needles.iter().any(|line| line.by.is_some() && !line.is_late));
    let studied = ballband::study(&demo(), View::of_readers(day(TODAY))).unwrap();
    let (site, _) = ballband::make(&studied);
    assert!(site.len() > 50);
    for file in &site {
        assert!(!file.path.starts_with("desk"), "{}", file.path);
        let text = String::from_utf8_lossy(&file.bytes);
        for name in ["Varcoe", "Kerensa", "Ollerton", "hill-farm", "Hill farm"] {
            assert!(!text.contains(name), "{name} in {}", file.path);
        }
    }
    for name in ["Denzil Varcoe", "Kerensa", "Carys Ollerton", "Hill farm"] {
        assert!(page.contains(name), "{name}");
    }
}

/// The page's policy lets no script and no style in that stands in it.
#[test]
fn the_desk_has_no_script_or_style_within() {
    let (_, page) = desk_of(&demo());
    assert!(!page.contains("<style") && !page.contains("onclick") && !page.contains("javascript:"));
    assert_eq!(page.matches("<script").count(), page.matches("<script src=\"desk.js\" defer></script>").count());
}
