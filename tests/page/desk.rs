//! The desk: what it tells, and that nothing of it is in any site.

use crate::support::{TODAY, day, studio};
use ballband::catalogue::{Eyes, View};
use ballband::page::Shown;
use ballband::page::desk::DeskContext;
use ballband::render::desk::context;
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

/// Two hats in S take 600 m of reed, and 200 m are there. A cowl by somebody else takes some mud, and nobody knows how much.
#[test]
fn several_projects_that_want_one_yarn_are_added_up() {
    let hat_of = |title: &str| format!("---\ntitle: {title}\npattern: reed-hat\nsize: S\n---\n");
    let cowl = "---\ntitle: Cowl\npattern: { title: Plain Cowl }\nyarn: [ { yarn: heron, shade: mud } ]\n---\n";
    let (context, page) = desk(&[
        ("yarns.yaml", YARNS),
        ("patterns/reed-hat.md", &hat()),
        ("projects/one.md", &hat_of("One")),
        ("projects/two.md", &hat_of("Two")),
        ("projects/cowl.md", cowl),
    ]);
    let line = |shade: &str| context.yarn.iter().find(|line| line.shade.as_deref() == Some(shade)).unwrap();
    let (reed, mud) = (line("Reed"), line("Mud"));
    assert_eq!(reed.wanted.as_ref().unwrap().first, "600\u{a0}m");
    assert_eq!((reed.in_words.first.as_str(), reed.wants.len()), ("short by 400\u{a0}m", 2));
    assert_eq!((mud.state, mud.wants[0].untold), ("unknown", "how much is not known: no pattern of yours says it"));
    assert!(page.contains("no pattern of yours says it"));
}

/// The colours changed about: chalk in the place of reed, which takes 300 m in S, and reed in that of chalk, 400 m.
#[test]
fn a_colour_that_is_named_says_which_yarn_takes_whose_place() {
    let project = "---\ntitle: Mine\npattern: reed-hat\nsize: S\nyarn: [ { colour: cc, yarn: heron, shade: reed }, { colour: MC, yarn: heron, shade: chalk } ]\n---\n";
    let (context, _) = desk(&[("yarns.yaml", YARNS), ("patterns/reed-hat.md", &hat()), ("projects/mine.md", project)]);
    let needs: Vec<_> = context.needles[0].yarns.iter().map(|yarn| yarn.need.as_ref().unwrap().first.clone()).collect();
    assert_eq!(needs, ["400\u{a0}m", "300\u{a0}m"]);
}

/// A yarn without shades is at hand as one amount, and no shade is missing.
#[test]
fn a_yarn_without_shades_needs_none() {
    let yarns = "rope:\n  title: Rope\n  put-up: 100 m / 50 g\n  on hand: 3 skeins\n";
    let cap = "---\ntitle: Cap\nstage: sample\nyarn: [ { yarn: rope, needs: 250 m } ]\n---\n";
    let (context, _) = desk(&[("yarns.yaml", yarns), ("patterns/cap.md", cap)]);
    let line = &context.yarn[0];
    assert_eq!((line.at_hand.as_ref().unwrap().first.as_str(), line.state), ("300\u{a0}m", "enough"));
    let sized = cap.replace("stage: sample\n", "stage: sample\nsizes: S (M)\n").replace("250 m", "'250 (300) m'");
    let (context, _) = desk(&[("yarns.yaml", yarns), ("patterns/cap.md", &sized)]);
    assert_eq!(context.yarn[0].wants[0].untold, "how much is not known: no size is chosen");
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

#[test]
fn what_is_done_stands_beside_what_is_left_with_whose_design_it_is() {
    let project = "---\ntitle: Mine\npattern: { title: Plain Socks, by: otha }\nleft to do: [the toe, { what: the heel, done: 2026-11-20 }]\n---\n";
    let (context, page) = desk(&[("people.yaml", "otha: { title: Otha }\n"), ("projects/mine.md", project)]);
    let line = &context.needles[0];
    assert_eq!(line.left_to_do, ["the toe"]);
    assert_eq!((line.done[0].what.as_str(), line.credit.as_str()), ("the heel", "by Otha"));
    assert!(page.contains("20 November 2026</time>: the heel"), "{page}");
}

/// S takes 300 m of reed and 400 m of chalk: two projects want 600 and 800 m together, of 200 and 600 m at hand.
#[test]
fn projects_that_want_one_yarn_want_it_together() {
    let project = |title: &str| format!("---\ntitle: {title}\npattern: reed-hat\nsize: S\n---\n");
    let (context, _) = desk(&[
        ("yarns.yaml", YARNS),
        ("patterns/reed-hat.md", &hat()),
        ("projects/a.md", &project("First")),
        ("projects/b.md", &project("Second")),
        ("projects/c.md", &project("Third").replace("size: S", "size: S\nfinished: 2026-11-01")),
    ]);
    let line = |shade: &str| context.yarn.iter().find(|line| line.shade.as_deref() == Some(shade)).unwrap();
    let told = |shade: &str| {
        let line = line(shade);
        let of: Vec<&str> = line.wants.iter().map(|want| want.link.title.as_str()).collect();
        (line.wanted.as_ref().unwrap().first.clone(), line.in_words.first.clone(), of.join(", "))
    };
    let wants = |wanted: &str, short: &str| (wanted.to_owned(), short.to_owned(), "First, Second".to_owned());
    assert_eq!(told("Reed"), wants("600\u{a0}m", "short by 400\u{a0}m"));
    assert_eq!(told("Chalk"), wants("800\u{a0}m", "short by 200\u{a0}m"));
}

/// Closed on 20 November: the days are past, and its end is no longer owed.
#[test]
fn a_test_knit_that_is_closed_stands_since_then() {
    let test = "---\ntitle: Fish\nstage: test knit\nsizes: S (M)\ntest knit: { opens: 2026-10-01, closes: 2026-11-20 }\n---\n\nFish.\n";
    let (context, page) = desk(&[("patterns/fish.md", test)]);
    let fish = &context.designs[0].designs[0];
    assert_eq!(fish.stands.as_deref(), Some("test knit closed five days ago"));
    let dates: Vec<&str> = fish.dates.iter().map(|date| date.what.as_str()).collect();
    assert_eq!(dates, ["Test knit opened", "Test knit closed"]);
    assert!(!owed(fish).contains("the end of the test knit"), "{}", owed(fish));
    assert!(page.contains("test knit closed five days ago"));
}

/// Whoever has no household is one by themselves, after the households; two alike of one person are marked, and a thing for
/// nobody named stands before them.
#[test]
fn gifts_without_a_household_stand_by_person() {
    let gift =
        |title: &str, for_whom: &str| format!("---\ntitle: {title}\npattern: reed-hat\nmade for: {for_whom}\n---\n");
    let hat = hat();
    let files = [
        ("projects/a.md", gift("One", "{ who: Zoe, household: mill }")),
        ("projects/b.md", gift("Two", "{ who: Ann }")),
        ("projects/c.md", gift("Three", "{ who: ann }")),
        ("projects/d.md", gift("Four", "{ by: 2026-12-24 }")),
    ];
    let mut all: Vec<(&str, &str)> = files.iter().map(|(path, text)| (*path, text.as_str())).collect();
    all.extend([("yarns.yaml", YARNS), ("patterns/reed-hat.md", &hat)]);
    let (context, _) = desk(&all);
    let told: Vec<(&str, Vec<bool>)> = context
        .households
        .iter()
        .map(|one| (one.name.as_str(), one.gifts.iter().map(|gift| gift.is_alike).collect()))
        .collect();
    let expected = [("Mill", vec![false]), ("Nobody named", vec![false]), ("Ann, no household said", vec![true, true])];
    assert_eq!(told, expected);
    assert_eq!(context.findings.files.iter().map(|file| file.findings[0].code).collect::<Vec<_>>(), ["gifts-alike"]);
}

/// A day planned that has gone by is late, and so is a test knit that is over; what is published is not.
#[test]
fn designs_whose_day_has_gone_by_are_marked() {
    let design = |title: &str, rest: &str| format!("---\ntitle: {title}\n{rest}---\n");
    let (context, page) = desk(&[
        ("patterns/a.md", &design("Planned", "stage: sample\npublished: 2026-11-20\n")),
        (
            "patterns/b.md",
            &design("Tested", "stage: test knit\ntest knit: { opens: 2026-10-01, closes: 2026-10-30 }\n"),
        ),
        ("patterns/c.md", &design("Coming", "stage: sample\npublished: 2026-12-20\n")),
        ("patterns/d.md", &design("Out", "published: 2026-03-14\n")),
    ]);
    let late: Vec<&str> = context
        .designs
        .iter()
        .flat_map(|group| &group.designs)
        .filter(|line| line.is_late)
        .map(|line| line.link.title.as_str())
        .collect();
    assert_eq!(late, ["Planned", "Tested"]);
    assert!(page.contains("two late of four"));
}

/// Two in S, three in M and five in L are wanted, and one is there for each of S and M.
#[test]
fn a_call_tells_how_many_testers_are_still_wanted() {
    let fish = "---\ntitle: Fish\nstage: test knit\nsizes: S (M, L)\ntest knit: { opens: 2026-11-01, closes: 2026-12-31, sizes wanted: '2 (3, 5)' }\ntesters: [ { name: Ann, size: M }, { name: Bo, size: S } ]\n---\n\nFish.\n";
    let (context, _) = desk(&[("patterns/fish.md", fish)]);
    assert!(owed(&context.designs[0].designs[0]).contains("testers: one for S, two for M and five for L"));
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
    for one in ["gauge", "test knit: apply", "testers: one for S,", "what one tester used", "the end of the test knit"]
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
fn the_week_tells_what_is_not_linked_and_gives_a_text_with_links_that_readers_can_follow() {
    let note = "---\ntitle: A week\nwearing: [pattern:reed-hat]\n---\n\nI like the big cowl, and see <technique:rib> and [the mill](https://mill.example/).\n";
    let cowl = "---\ntitle: Big Cowl\npublished: 2026-01-01\n---\n";
    let early = "---\ntitle: Rib\nready: false\n---\n";
    let (context, page) = desk(&[
        ("yarns.yaml", YARNS),
        ("patterns/reed-hat.md", &hat()),
        ("patterns/big-cowl.md", cowl),
        ("techniques/rib.md", early),
        ("journal/2026-11-20.md", note),
    ]);
    let week = context.week.unwrap();
    let unlinked: Vec<&str> = week.unlinked.iter().map(|line| line.reference.as_str()).collect();
    assert_eq!(unlinked, ["<pattern:reed-hat>", "<pattern:big-cowl>"]);
    let text = "I like the big cowl, and see Rib and the mill.\n\nMy patterns\nReed Hat: https://wrackline.example/patterns/reed-hat/\n\nElsewhere\nThe mill: https://mill.example/\n\nThe whole note: https://wrackline.example/journal/2026-11-20/\n";
    let [only] = week.texts.as_slice() else { panic!("{:?}", week.texts) };
    assert_eq!((only.text.as_str(), only.title.as_str()), (text, "video"));
    assert_eq!(only.sizes, [format!("video: {0} bytes, {0} characters of 5,000 bytes", text.len())]);
    assert!(
        page.contains("data-copy=\"text-1\"") && page.contains("<h3 id=\"text-1-title\">Text for video</h3>"),
        "{page}"
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

/// Two hats of one household are told apart by their brims, and a surprise is on the desk alone.
#[test]
fn the_names_and_the_surprise_of_the_demo_are_on_the_desk_alone() {
    let (context, page) = desk_of(&demo());
    assert_eq!(context.findings.total, 0);
    assert!(context.households.iter().all(|household| household.alike.is_empty()));
    let hats = context.households.iter().find(|household| household.name == "Hill farm").unwrap();
    assert_eq!(hats.gifts.len(), 3);
    assert!(context.yarn.iter().any(|line| line.state == "short"));
    assert!(context.needles.iter().any(|line| line.by.is_some() && !line.is_late));
    let studied = ballband::study(&demo(), View::of_readers(day(TODAY))).unwrap();
    let (site, _) = ballband::make(&studied);
    assert!(site.len() > 50);
    for file in &site {
        assert!(!file.path.starts_with("desk"), "{}", file.path);
        let text = String::from_utf8_lossy(&file.bytes);
        for name in ["Varcoe", "Kerensa", "Ollerton", "hill-farm", "Hill farm", "Elowen", "nobody has seen"] {
            assert!(!text.contains(name), "{name} in {}", file.path);
        }
    }
    for name in ["Denzil Varcoe", "Kerensa", "Carys Ollerton", "Hill farm", "Mitts that nobody has seen"] {
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
