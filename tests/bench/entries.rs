//! The text of one entry of each kind: front matter as a designer would fill it in, and prose below.

use super::kinds::{Kind, Kinds, day, garment, key, reference, title};
use super::prose;
use super::random::Random;

/// How many bytes an entry aims at; the last paragraph takes it to 3,000 on average.
const BYTES: usize = 2600;

/// The shades that every yarn has, so that any of them can be asked for.
const SHADES: [(&str, &str); 4] =
    [("reedbed", "#6b7f4c"), ("chalk", "#f3efe4"), ("mud", "#6d5f50"), ("estuary", "#2f4a55")];

/// The finished chest of each size, in centimetres, and the length of yarn for it, in metres.
const CHESTS: [usize; 9] = [84, 94, 104, 115, 125, 135, 145, 155, 165];
const LENGTHS: [usize; 9] = [820, 905, 990, 1085, 1175, 1270, 1365, 1455, 1550];

/// Writes an entry.
pub fn entry(kind: Kind, number: usize, kinds: &Kinds, random: &mut Random) -> String {
    let mut front = format!("title: {}\nsummary: {}\n", title(kind, number), prose::sentence(random));
    front += &match kind {
        Kind::Pattern => pattern(number, kinds, random),
        Kind::Project => project(number, kinds, random),
        Kind::Note => note(number, kinds, random),
        Kind::Yarn => yarn(kinds, random),
        Kind::Person => person(number),
        Kind::Technique | Kind::Page => String::new(),
    };
    // A third of a pattern is front matter, as in the studios we know, and less of the others.
    let mentions: &[Kind] = match kind {
        Kind::Pattern => &[Kind::Technique, Kind::Yarn, Kind::Pattern],
        Kind::Project => &[Kind::Pattern, Kind::Technique],
        Kind::Note => &[Kind::Project, Kind::Pattern, Kind::Yarn, Kind::Person],
        Kind::Yarn => &[Kind::Pattern, Kind::Person],
        Kind::Person => &[Kind::Yarn, Kind::Note],
        Kind::Technique => &[Kind::Pattern, Kind::Technique],
        Kind::Page => &[Kind::Pattern, Kind::Person, Kind::Note],
    };
    let links: Vec<String> = mentions.iter().filter_map(|kind| kinds.link(random, *kind)).collect();
    let length = BYTES.saturating_sub(front.len() + 300);
    let mut body = prose::body(random, &links, length);
    if kind == Kind::Note {
        body = chapters(random) + &body;
    }
    if kind == Kind::Pattern {
        body = format!("Cast on {} stitches and join.\n\n{body}", run(&CHESTS.map(|chest| chest * 2)));
    }
    format!("---\n{front}---\n\n{body}")
}

/// Writes a size run: `84 (94, 104)`.
fn run(values: &[usize]) -> String {
    match values {
        [] => String::new(),
        [one] => one.to_string(),
        [first, rest @ ..] => {
            format!("{first} ({})", rest.iter().map(usize::to_string).collect::<Vec<_>>().join(", "))
        }
    }
}

fn pattern(number: usize, kinds: &Kinds, random: &mut Random) -> String {
    let mut front = format!(
        "garment: {}\nwearer: women\nlevel: {}\nstage: published\npublished: {}\n\
         construction: [top-down, in the round]\n\
         gauge: {{ stitches: 22, rows: 30, over: 10 cm, in: stockinette, needle: 4 mm }}\n\
         needles: [4 mm circular 80 cm, 3.5 mm circular 80 cm, 4 mm dpns]\n\
         sizes: XS (S, M, L, XL, 2XL, 3XL, 4XL, 5XL)\n\
         to fit:\n  chest: {} cm\nfinished:\n  chest: {} cm\n  length: 56 (57, 58, 60, 61, 62, 63, 64, 65) cm\n",
        garment(number).to_lowercase(),
        random.one(&["easy", "intermediate", "complex"]),
        day(number),
        run(&CHESTS.map(|chest| chest - 8)),
        run(&CHESTS),
    );
    if let (Some(main), Some(second)) = (kinds.any(random, Kind::Yarn), kinds.any(random, Kind::Yarn)) {
        let more = random.below(60);
        front += &format!(
            "yarn:\n  - {{ colour: MC, yarn: {}, shade: {}, needs: \"{} m\" }}\n  - {{ colour: CC, yarn: {}, shade: {}, needs: \"{} m\" }}\n",
            key(Kind::Yarn, main),
            shade(random),
            run(&LENGTHS.map(|length| length + more)),
            key(Kind::Yarn, second),
            shade(random),
            run(&LENGTHS.map(|length| length / 8 + more)),
        );
    }
    front += "notions: [4 stitch markers, waste yarn, tapestry needle]\n";
    let techniques: Vec<String> = (0..2)
        .filter_map(|_| kinds.any(random, Kind::Technique))
        .map(|technique| key(Kind::Technique, technique))
        .collect();
    match techniques.as_slice() {
        [one, other] if one != other => front += &format!("techniques: [{one}, {other}]\n"),
        [one, ..] => front += &format!("techniques: [{one}]\n"),
        [] => {}
    }
    if let Some(place) = kinds.any(random, Kind::Person) {
        front += &format!(
            "sold at:\n  - {{ place: {}, url: \"https://example.org/{}\", price: 6.50 GBP }}\n",
            key(Kind::Person, place),
            key(Kind::Pattern, number),
        );
    }
    front + &format!("sample: {{ size: M, used: {} g }}\n", 440 + random.below(40))
}

fn project(number: usize, kinds: &Kinds, random: &mut Random) -> String {
    let mut front = String::new();
    if let Some(pattern) = kinds.any(random, Kind::Pattern) {
        front += &format!("pattern: {}\nsize: {}\n", key(Kind::Pattern, pattern), random.one(&["S", "M", "L"]));
    }
    front += &format!("started: {}\n", day(number + 40));
    // One in eight is still on the needles.
    if number.is_multiple_of(8) {
        front += "left to do: [the second sleeve, weave in ends]\n";
    } else {
        front += &format!("finished: {}\n", day(number));
    }
    if let Some(yarn) = kinds.any(random, Kind::Yarn) {
        front += &format!(
            "yarn:\n  - {{ yarn: {}, shade: {}, used: {} g }}\n",
            key(Kind::Yarn, yarn),
            shade(random),
            200 + random.below(300),
        );
    }
    front + &format!("changes: {}\n", prose::sentence(random))
}

fn note(number: usize, kinds: &Kinds, random: &mut Random) -> String {
    let mut front =
        format!("date: {}\nvideo: {{ url: \"https://example.org/video/{number}\", length: \"25:12\" }}\n", day(number));
    if let Some(pattern) = kinds.any(random, Kind::Pattern) {
        front += &format!("wearing: [{}]\n", reference(Kind::Pattern, pattern));
    }
    // One that was on the needles that day: each is, for the 40 days up to its own number.
    let project = number.checked_sub(1 + random.below(30));
    if let Some(project) = project.filter(|project| *project < kinds.count(Kind::Project)) {
        let begun_before = project + 40 - number;
        front += &format!(
            "worked on:\n  - {{ project: {}, progress: {}% }}\n",
            key(Kind::Project, project),
            begun_before * 100 / 40
        );
    }
    if let Some(person) = kinds.any(random, Kind::Person) {
        front +=
            &format!("links:\n  - {{ to: {}, how: {} }}\n", key(Kind::Person, person), random.one(&["bought", "own"]));
    }
    front
}

fn yarn(kinds: &Kinds, random: &mut Random) -> String {
    let mut front = String::new();
    if let Some(maker) = kinds.any(random, Kind::Person) {
        front += &format!("maker: {}\n", key(Kind::Person, maker));
    }
    let shades: Vec<String> = SHADES.iter().map(|(name, colour)| format!("{name}: \"{colour}\"")).collect();
    front
        + &format!(
            "weight: DK\nfibre: 75% wool, 25% nylon\nput-up: {} m / 100 g\n\
             gauge: {{ stitches: 22, over: 10 cm, needle: 4 mm }}\nshades: {{ {} }}\ncare: [hand wash, dry flat]\n",
            220 + random.below(20),
            shades.join(", "),
        )
}

fn person(number: usize) -> String {
    format!("is: [maker, mill]\nurl: https://example.org/{}\n", key(Kind::Person, number))
}

/// Writes the chapters of a note's video, each with a paragraph.
fn chapters(random: &mut Random) -> String {
    [("0:00", "Hello"), ("4:20", "On the needles"), ("13:05", "Finished")]
        .map(|(time, what)| format!("## {time} {what}\n\n{}", prose::paragraph(random, None)))
        .concat()
}

fn shade(random: &mut Random) -> &'static str {
    SHADES[random.below(SHADES.len())].0
}
