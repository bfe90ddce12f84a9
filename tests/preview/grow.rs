//! A small studio that is edited by chance: everything refers to everything.

use crate::bench::random::Random;

/// How many names of each kind there are; not all of them exist at any time.
const NAMES: usize = 7;

/// Returns the path of a random file and what is written into it, or that it goes.
pub fn edit(random: &mut Random) -> (String, Option<String>) {
    match random.below(40) {
        0 => ("studio.yaml".to_owned(), Some(studio(random))),
        1 => ("themes/leaflet/templates/technique.html".to_owned(), template(random)),
        2 => (
            "themes/leaflet/assets/style.css".to_owned(),
            gone(random, 2).map(|()| format!("p{{margin:{}px}}", random.below(9))),
        ),
        3 | 4 => ("people.yaml".to_owned(), gone(random, 6).map(|()| register(random, "person"))),
        5..=8 => ("yarns.yaml".to_owned(), gone(random, 8).map(|()| register(random, "yarn"))),
        9 => {
            // Rarely one that the register has too, so that an entry stands in two files until one of them goes.
            let key = if random.below(9) == 0 { 0 } else { NAMES };
            (format!("yarns/yarn-{key}.md"), gone(random, 2).map(|()| file(random, "yarn")))
        }
        10 | 11 => (
            format!("techniques/{}.md", name(random, "technique")),
            gone(random, 4).map(|()| file(random, "technique")),
        ),
        12 => (format!("pages/{}.md", name(random, "page")), gone(random, 3).map(|()| file(random, "page"))),
        13..=20 => {
            (format!("patterns/{}.md", name(random, "pattern")), gone(random, 6).map(|()| file(random, "pattern")))
        }
        21..=28 => {
            (format!("projects/{}.md", name(random, "project")), gone(random, 6).map(|()| file(random, "project")))
        }
        _ => {
            (format!("journal/2026-11-{:02}.md", 14 + random.below(14)), gone(random, 5).map(|()| file(random, "note")))
        }
    }
}

/// Returns a whole studio to begin with.
pub fn begin(random: &mut Random) -> Vec<(String, String)> {
    let mut files = vec![("studio.yaml".to_owned(), studio(random))];
    files.extend((0..60).filter_map(|_| match edit(random) {
        (path, Some(text)) => Some((path, text)),
        (_, None) => None,
    }));
    files
}

/// Returns whether a file stays, which it does but for one time in so many.
fn gone(random: &mut Random, times: usize) -> Option<()> {
    (random.below(times) > 0).then_some(())
}

fn name(random: &mut Random, kind: &str) -> String {
    format!("{kind}-{}", random.below(NAMES))
}

fn studio(random: &mut Random) -> String {
    let title = random.one(&["Wrackline", "Wrackline", "Wrackline knits"]);
    let margin = random.one(&["10%", "5%"]);
    let units = random.one(&["metric", "imperial"]);
    let told = random.one(&["", "disclosure: { gifted: a gift }\nvideo: { moment: '?t={seconds}' }\n"]);
    format!("title: {title}\nurl: https://wrackline.example\nunits: {units}\nmargin: {margin}\n{told}")
}

fn template(random: &mut Random) -> Option<String> {
    gone(random, 3)?;
    let text = random.one(&["one", "two", "{{ title }}"]);
    Some(format!("{{% extends \"frame.html\" %}}{{% block main %}}<p>{text}</p>{{% endblock %}}"))
}

fn register(random: &mut Random, kind: &str) -> String {
    let mut text = "spare: { title: Spare }\n".to_owned();
    for at in 0..NAMES {
        if random.below(5) > 0 {
            let body = front(random, kind).replace('\n', "\n  ");
            text += &format!("{kind}-{at}:\n  {}\n", body.trim_end());
        }
    }
    text
}

fn file(random: &mut Random, kind: &str) -> String {
    // A half-typed file now and then.
    match random.below(150) {
        0 => return "---\ntitle: Half\n".to_owned(),
        1 => return "---\ntitle: [\n---\n".to_owned(),
        2 => return format!("---\n{}nonsense: 1\n---\n", front(random, kind)),
        _ => {}
    }
    let mut text = format!("---\n{}---\n", front(random, kind));
    if random.below(8) == 0 {
        text += "\n## 0:00 Hello\n\n## 0:20 On\n";
    }
    if random.below(3) == 0 {
        text += "\n## 1:00 A heading\n";
    }
    for _ in 0..random.below(4) {
        text += &format!("\nSome words about {} and {}.\n", link(random), link(random));
    }
    if random.below(6) == 0 {
        text += &format!("\n```needs\npattern: {}\n```\n", name(random, "pattern"));
    }
    if random.below(6) == 0 {
        let worked = random.one(&["flat", "in the round"]);
        // Now and then a row is too wide.
        let row = if random.below(60) == 0 { "ox.." } else { random.one(&["o.x", "xox", "xxo"]) };
        text += &format!(
            "\n```chart\nname: motif\nworked: {worked}\nkey: {{ o: knit, x: MC, \".\": CC }}\nrows: [{row}, oxo]\n```\n"
        );
        text += "\n```swatch\nchart: motif\nrepeats: 2\n```\n";
    }
    text
}

fn link(random: &mut Random) -> String {
    let kind = random.one(&["pattern", "project", "yarn", "technique", "person"]);
    let name = name(random, kind);
    match random.below(14) {
        12 => title(random),
        13 => "https://elsewhere.example/bare".to_owned(),
        0 => format!("<note:2026-11-{:02}>", 14 + random.below(14)),
        1 => format!("[that]({kind}:{name}#a-heading)"),
        2 => "[elsewhere](https://elsewhere.example)".to_owned(),
        3..=6 => format!("[words]({kind}:{name})"),
        _ => format!("<{kind}:{name}>"),
    }
}

/// Returns one of a few titles, which texts name without a link too.
fn title(random: &mut Random) -> String {
    format!("{} {}", random.one(&["Reed", "Tern", "Samphire", "Groyne"]), random.below(4))
}

/// Returns the keys of an entry, a line each.
fn front(random: &mut Random, kind: &str) -> String {
    let mut text = format!("title: {}\n", title(random));
    let mut put = |line: String| text += &(line + "\n");
    if random.below(8) == 0 {
        put("ready: false".to_owned());
    }
    if random.below(3) == 0 {
        put(format!("summary: A sentence, number {}.", random.below(3)));
    }
    match kind {
        "pattern" => pattern(random, &mut put),
        "project" => project(random, &mut put),
        "note" => {
            if random.below(3) > 0 {
                let progress = 10 * random.below(10);
                put(format!("worked on: [ {{ project: {}, progress: {progress}% }} ]", name(random, "project")));
            }
            if random.below(5) == 0 {
                put(format!("wearing: [pattern:{}]", name(random, "pattern")));
            }
            said(random, &mut put);
        }
        "yarn" => {
            put(format!("weight: {}", random.one(&["DK", "worsted", "fingering"])));
            if random.below(4) > 0 {
                put(format!("put-up: {} m / 100 g", 200 + 5 * random.below(12)));
            }
            if random.below(3) == 0 {
                put(format!("maker: {}", name(random, "person")));
            }
            put("shades: { chalk: \"#f3efe4\", reedbed: \"#6b7f4c\" }".to_owned());
        }
        "person" => put("url: https://somebody.example".to_owned()),
        _ => {}
    }
    text
}

/// What a note says of its video, of how she came by things, and of what others wrote.
fn said(random: &mut Random, put: &mut impl FnMut(String)) {
    if random.below(2) == 0 {
        put(format!("video: {{ url: 'https://v.example/1', length: '{}:30' }}", 1 + random.below(3)));
    }
    if random.below(2) == 0 {
        let hows = ["own", "bought", "gifted", "loaned", "affiliate", "paid", "friend"];
        let (person, yarn) = (name(random, "person"), name(random, "yarn"));
        put(format!(
            "links: [ {{ to: {person}, how: {} }}, {{ to: 'yarn:{yarn}', how: {} }} ]",
            random.one(&hows),
            random.one(&hows)
        ));
    }
    if random.below(6) == 0 {
        put(format!(
            "story: [ {{ leave: 2026-11-{}, credit: a reader, text: '{}' }} ]",
            10 + random.below(9),
            link(random)
        ));
    }
}

fn pattern(random: &mut Random, put: &mut impl FnMut(String)) {
    put(format!("garment: {}", random.one(&["hat", "pullover", "shawl"])));
    match random.below(6) {
        0 => {
            put(format!("stage: {}", random.one(&["sketch", "sample", "test knit", "test knit"])));
            let (opens, closes) = (20 + random.below(9), 15 + random.below(15));
            put(format!("test knit: {{ opens: 2026-11-{opens}, closes: 2026-11-{closes}, sizes wanted: 2 }}"));
        }
        1 => put(format!("published: 2026-12-{:02}", 1 + random.below(20))),
        _ => put(format!("published: 2026-0{}-01", 1 + random.below(9))),
    }
    put("sizes: S (M, L)".to_owned());
    put(format!("finished: {{ chest: \"{} (100, 110) cm\" }}", 88 + random.below(6)));
    put("yarn:".to_owned());
    for _ in 0..1 + random.below(2) {
        let needs = 500 + 10 * random.below(9);
        put(format!(
            "  - {{ colour: {}, yarn: {}, shade: {}, needs: \"{needs} ({}, {}) m\" }}",
            random.one(&["MC", "CC"]),
            name(random, "yarn"),
            random.one(&["chalk", "reedbed"]),
            needs + 60,
            needs + 120
        ));
    }
    if random.below(4) == 0 {
        let share = random.one(&["true", "false"]);
        let yarn = name(random, "yarn");
        put(format!("testers: [ {{ name: Ines, size: M, yarn: {yarn}, used: {{ MC: 500 m }}, share: {share} }} ]"));
    }
    if random.below(3) == 0 {
        put(format!("techniques: [{}]", name(random, "technique")));
    }
    if random.below(4) == 0 {
        put(format!("after: [ {{ what: the motif, source: {} }} ]", name(random, "person")));
    }
}

fn project(random: &mut Random, put: &mut impl FnMut(String)) {
    put(format!("started: 2026-0{}-03", 1 + random.below(9)));
    if random.below(2) == 0 {
        put(format!("finished: 2026-1{}-0{}", random.below(2), 1 + random.below(9)));
    }
    if random.below(4) > 0 {
        put(format!("pattern: {}", name(random, "pattern")));
        put(format!("size: {}", random.one(&["S", "M", "L", "XL"])));
    }
    if random.below(2) == 0 {
        let (house, by) = (random.one(&["mill", "quay"]), 10 + random.below(20));
        put(format!(
            "made for: {{ who: {}, household: {house}, by: 2026-12-{by} }}",
            random.one(&["Reed", "Ann Tern"])
        ));
    }
    match random.below(8) {
        0 => put("reveal: 2026-12-25".to_owned()),
        1 => put("variant: { brim: rolled }".to_owned()),
        2 => put("left to do: [a sleeve, { what: the neck, done: 2026-11-01 }]".to_owned()),
        _ => {}
    }
    put(format!("yarn: [ {{ yarn: {}, shade: chalk, used: {} g }} ]", name(random, "yarn"), 50 + random.below(300)));
}
