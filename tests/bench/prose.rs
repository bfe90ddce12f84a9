//! Prose of about the right length and make-up: paragraphs, headings, emphasis, a list, a table and links.

use super::random::Random;

const WHO: [&str; 12] = [
    "The second sleeve",
    "The cuff",
    "The hem",
    "A wet afternoon",
    "The first skein",
    "The swatch",
    "The collar",
    "The last ball",
    "The body",
    "The border",
    "A long evening",
    "The ribbing",
];
const DID: [&str; 12] = [
    "took longer than I had thought",
    "went quietly",
    "came out a little wide, and I left it",
    "was worked twice over",
    "grew in its first wash, as it ought",
    "pulled in at the edge",
    "gave no trouble at all",
    "lay flat after a night under towels",
    "wanted a smaller needle",
    "sat better once it was blocked",
    "showed every change of tension",
    "was finished before the kettle",
];
const AND: [&str; 10] = [
    "and I have written down why",
    "which is what the sample was for",
    "so the count at the end of the round is given",
    "though nobody will see it from the road",
    "and that is the whole of the method",
    "because the yarn is spun with a good deal of twist",
    "and the difference is one you can feel with your eyes shut",
    "as it was in the one before",
    "and the next one will be begun from the other end",
    "but *only* if the needles are the same",
];
const HEADINGS: [&str; 8] = [
    "How it is put together",
    "What I would change",
    "Fit",
    "Notes on the yarn",
    "Washing",
    "Counting",
    "Letters",
    "Afterwards",
];
const POINTS: [&str; 6] = [
    "Cast on loosely, over two needles if you have to.",
    "Mark the beginning of the round and the two side seams.",
    "Weigh what is left before you bind off.",
    "Wash the swatch as you mean to wash the thing.",
    "Carry the darker yarn below.",
    "Block to the measurements and not beyond.",
];

/// Writes paragraphs, with headings between them, until the text is about as long as it should be.
///
/// Each link is used once, each in a sentence of its own, in the order given.
pub fn body(random: &mut Random, links: &[String], bytes: usize) -> String {
    let mut text = String::new();
    let mut links = links.iter();
    let mut heading = random.below(HEADINGS.len());
    let mut section = 0;
    while text.len() < bytes {
        if section > 0 {
            text += &format!("## {}\n\n", HEADINGS[heading % HEADINGS.len()]);
            heading += 1;
        }
        for _ in 0..2 {
            text += &paragraph(random, links.next());
        }
        match section {
            1 => text += &list(random),
            2 => text += &table(random),
            _ => {}
        }
        section += 1;
    }
    for link in links {
        text += &paragraph(random, Some(link));
    }
    text
}

/// Writes a paragraph of three or four sentences; a link gets one of its own.
pub fn paragraph(random: &mut Random, link: Option<&String>) -> String {
    let mut sentences = Vec::new();
    for _ in 0..3 + random.below(2) {
        sentences.push(sentence(random));
    }
    if let Some(link) = link {
        sentences.insert(1, format!("More of that is under {link}."));
    }
    format!("{}\n\n", sentences.join("\n"))
}

/// Writes one sentence.
pub fn sentence(random: &mut Random) -> String {
    format!("{} {}, {}.", random.one(&WHO), random.one(&DID), random.one(&AND))
}

fn list(random: &mut Random) -> String {
    let first = random.below(POINTS.len());
    let points: Vec<String> = (0..3).map(|n| format!("- {}\n", POINTS[(first + n) % POINTS.len()])).collect();
    format!("{}\n", points.concat())
}

fn table(random: &mut Random) -> String {
    let mut text = "| part | rounds | grams |\n| --- | ---: | ---: |\n".to_owned();
    for part in ["hem", "body", "yoke"] {
        text += &format!("| {part} | {} | {} |\n", 20 + random.below(90), 30 + random.below(200));
    }
    text + "\n"
}
