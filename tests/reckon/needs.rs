//! Needs worked out from what was weighed, against the same sums done by hand and by the published methods.

use super::{fabric, grams, yarn};
use crate::support::read;
use ballband::entry::{Key, Kind, Pattern, Reference};
use ballband::measure::{Count, YarnLength};
use ballband::reckon::fit::{NoFit, Wanted, fit};
use ballband::reckon::{Basis, Terms, Told, needs, purchases, skeins_beside};
use ballband::{Studied, measure::Percent};

const YARN: &str = "wool:\n  title: Wool\n  put-up: 200 m / 100 g\n";

/// Reads a studio of one yarn of 200 m to 100 g and one pattern with these keys; anything wrong fails the test.
fn studio(keys: &str) -> Studied {
    studio_that_finds(keys, &[])
}

/// As [`studio`], with the findings there must be.
fn studio_that_finds(keys: &str, codes: &[&str]) -> Studied {
    let text = format!("---\ntitle: Jumper\nstage: sample\n{keys}---\n");
    let studied = read(&[("yarns.yaml", YARN), ("patterns/jumper.md", &text)]);
    let told: Vec<&str> = studied.findings.iter().map(|finding| finding.code.name).collect();
    assert_eq!(told, codes);
    studied
}

fn pattern(studied: &Studied) -> &Pattern {
    let id = Reference { kind: Kind::Pattern, key: Key::new("jumper").expect("a key") };
    studied.catalogue.pattern(&id).expect("the pattern")
}

/// Returns what each line takes, in whole metres, with what that rests on.
fn told(studied: &Studied) -> Vec<Vec<Option<(i64, Basis)>>> {
    let yarn = |line: &ballband::entry::YarnUse| studied.catalogue.yarn(&line.yarn.as_ref()?.reference());
    let metres = |told: &Told| told.need().map(|need| (need.length.micrometres() / 1_000_000, need.basis));
    needs(pattern(studied), yarn).iter().map(|line| line.iter().map(metres).collect()).collect()
}

#[test]
fn a_sample_serves_its_own_size_and_others_by_their_fabric() {
    // 412 g at 2 m to the gram are 824 m. Tubes of 100 x 60, 110 x 60 and 90 x 60 cm: area follows the girth alone.
    let studied = studio(
        "sizes: S (M, L)\nfinished:\n  chest: 90 (100, 110) cm\n  length: 60 cm\npieces: [ { shape: tube, girth: chest, length: length } ]\n\
         yarn: [ { yarn: wool } ]\nsample: { size: M, used: 412 g }\n",
    );
    // 741.6 and 906.4 are rounded up to the whole metre: what is stated must suffice.
    assert_eq!(told(&studied), [[Some((742, Basis::Area)), Some((824, Basis::Weighed)), Some((907, Basis::Area))]]);
}

#[test]
fn the_published_sum_by_area_comes_out() {
    // Colourful Designs: 728 and 1,000 sq in, 250 yd of the main colour and 90 of the second become 343 and 124.
    let studied = studio(
        "sizes: S (L)\npieces:\n  - { shape: rectangle, width: '28 (40) in', length: '26 (25) in' }\n\
         yarn: [ { yarn: wool, colour: MC }, { yarn: wool, colour: CC } ]\nsample: { size: S, used: { MC: 250 yd, CC: 90 yd } }\n",
    );
    let all = told(&studied);
    let yards = |line: usize| {
        let (metres, basis) = all[line][1].expect("the size can be told");
        assert_eq!(basis, Basis::Area);
        // A whole metre more than the exact length at most.
        metres * 10_000 / 9_144
    };
    assert!((343..=345).contains(&yards(0)), "{}", yards(0));
    assert!((123..=125).contains(&yards(1)), "{}", yards(1));
}

#[test]
fn one_weight_and_the_stitches_of_each_colour_give_nine_sizes_of_two_colours() {
    let studied = studio(
        "sizes: XS (S, M, L, XL, 2XL, 3XL, 4XL, 5XL)\nsample: { size: M, used: 412 g }\nyarn:\n\
         \x20 - { yarn: wool, colour: MC, stitches: '60000 (65000, 70000, 75000, 80000, 85000, 90000, 95000, 100000)' }\n\
         \x20 - { yarn: wool, colour: CC, stitches: '10000 (10500, 12400, 12500, 12600, 13000, 13500, 14000, 14500)' }\n",
    );
    let all = told(&studied);
    assert!(all.iter().flatten().all(Option::is_some) && all[0].len() == 9 && all[1].len() == 9);
    // 412 g over 82,400 stitches are 5 mg each: 350 g and 62 g, 700 m and 124 m.
    assert_eq!(all[0][2], Some((700, Basis::Stitches)));
    assert_eq!(all[1][2], Some((124, Basis::Stitches)));
    assert_eq!(all[0][8], Some((1000, Basis::Stitches)));
    assert_eq!(all[1][0], Some((100, Basis::Stitches)));
}

#[test]
fn a_weighed_swatch_gives_needs_by_stitches_with_its_edges_and_by_area() {
    // Tossing the Stash: 20 x 20 with cast-on and cast-off are 460 stitches; at 2 g, 230 to the gram.
    let studied =
        studio("swatch: { weight: 2 g, stitches: 20, rows: 20 }\nyarn: [ { yarn: wool, stitches: 23000 } ]\n");
    assert_eq!(told(&studied), [[Some((200, Basis::Swatch))]]);
    // Kephren Knitting Studio: 8 x 8 in at 10 g; 80 sq in are 12.5 g, here 25 m.
    let studied = studio(
        "swatch: { weight: 10 g, width: 8 in, length: 8 in }\nyarn: [ { yarn: wool } ]\n\
         pieces: [ { shape: rectangle, width: 40 in, length: 2 in } ]\n",
    );
    assert_eq!(told(&studied), [[Some((25, Basis::Swatch))]]);
}

#[test]
fn what_cannot_be_told_is_not_guessed() {
    // One weight for two colours, and nothing to part it by.
    let two = studio_that_finds(
        "sample: { size: One size, used: 412 g }\nyarn: [ { yarn: wool, colour: MC }, { yarn: wool, colour: CC } ]\n",
        &["needs-unknown"; 2],
    );
    assert_eq!(told(&two), [[None], [None]]);
    // No pieces to scale by: only the size that was knitted.
    let bare = studio_that_finds(
        "sizes: S (M)\nsample: { size: M, used: 100 g }\nyarn: [ { yarn: wool } ]\n",
        &["needs-unknown"],
    );
    assert_eq!(told(&bare), [[None, Some((200, Basis::Weighed))]]);
    let bought = purchases(pattern(&bare), Terms::of(Percent::ZERO), |line| {
        bare.catalogue.yarn(&line.yarn.as_ref()?.reference())
    });
    assert_eq!(bought[0].sizes[0], None);
    assert_eq!(bought[0].sizes[1].and_then(|one| one.skeins).map(|skeins| skeins.whole), Some(1));
}

#[test]
fn stated_needs_stand_before_anything_worked_out() {
    let studied = studio("sample: { size: One size, used: 412 g }\nyarn: [ { yarn: wool, needs: 830 m } ]\n");
    assert_eq!(told(&studied), [[Some((830, Basis::Stated))]]);
}

#[test]
fn strands_multiply_the_length_and_not_the_fabric() {
    // Needs of 400 m with two strands are 200 m of fabric: one strand takes 200 m, three take 600 m.
    let studied = studio("yarn: [ { yarn: wool, needs: 400 m, strands: 2 } ]\n");
    let length = |strands| {
        let terms = Terms { strands, ..Terms::of(Percent::ZERO) };
        purchases(pattern(&studied), terms, |_| None)[0].sizes[0].map(|one| one.length)
    };
    assert_eq!(length(None), Some(yarn("400 m")));
    assert_eq!(length(Some(1)), Some(yarn("200 m")));
    assert_eq!(length(Some(3)), Some(yarn("600 m")));
}

#[test]
fn part_skeins_at_hand_are_taken_off_after_the_margin() {
    let put_up = ballband::measure::PutUp { length: yarn("200 m"), mass: grams("100") };
    let buy = |needs: &str, at_hand: &str| {
        skeins_beside(yarn(needs), Percent::from_hundredths(1000), put_up, yarn(at_hand)).map(|skeins| skeins.whole)
    };
    // 1,000 m and a tenth are 1,100 m; with 124 m at hand 976 m are to buy.
    assert_eq!(buy("1000 m", "124 m"), Some(5));
    assert_eq!(buy("1000 m", "100 m"), Some(5));
    assert_eq!(buy("1000 m", "99 m"), Some(6));
    assert_eq!(buy("1000 m", "2000 m"), Some(0));
    assert_eq!(YarnLength::ZERO, yarn("0 m"));
}

fn sized() -> Studied {
    studio(
        "sizes: S (M, L)\ngauge: { stitches: 22, over: 10 cm }\nto fit:\n  chest: 90 (100, 110) cm\nfinished:\n  chest: 95 (105, 115) cm\n",
    )
}

fn size_for(studied: &Studied, body: &str, ease: Option<&str>, stitches: Option<i64>) -> Result<usize, NoFit> {
    let wanted = Wanted {
        measurement: "chest",
        body: fabric(body),
        ease: ease.map(fabric),
        stitches: stitches.and_then(Count::from_whole),
    };
    fit(pattern(studied), wanted).map(|fitted| fitted.best)
}

#[test]
fn a_size_is_chosen_by_body_ease_and_gauge() {
    let studied = sized();
    assert_eq!(size_for(&studied, "102 cm", None, None), Ok(1));
    // Love of Knitting: 40 in and standard ease is 42 to 44 in; at 2.5 cm that is 105 to 110 cm.
    assert_eq!(size_for(&studied, "40 in", Some("2 in"), None), Ok(1));
    assert_eq!(size_for(&studied, "40 in", Some("4 in"), None), Ok(2), "of two as near the larger");
    // At 21 stitches the 105 cm come out as 110: for a chest of 100 and 5 cm of ease S, at 99.5, is as near as M.
    assert_eq!(size_for(&studied, "100 cm", Some("5 cm"), Some(21)), Ok(1));
    assert_eq!(size_for(&studied, "94 cm", Some("5 cm"), Some(21)), Ok(0));
    assert_eq!(size_for(&studied, "100 cm", Some("5 cm"), Some(20)), Ok(0), "95 cm come out as 104.5");
    assert_eq!(size_for(&studied, "100 cm", None, Some(0)), Err(NoFit::Beyond));
}

#[test]
fn a_measurement_or_gauge_that_is_not_there_is_told() {
    let studied = studio("finished:\n  length: 60 cm\n");
    assert_eq!(size_for(&studied, "100 cm", None, None), Err(NoFit::NotFinished));
    let studied = studio("finished:\n  chest: 60 cm\n");
    assert_eq!(size_for(&studied, "100 cm", None, Some(22)), Err(NoFit::NoGauge));
}

/// Returns what is bought, for each yarn its title, whole metres and skeins of the first size, and what it is held with.
fn bought(studied: &Studied, terms: Terms) -> Vec<(String, i64, Option<i64>, Vec<String>)> {
    let title = |line: &ballband::entry::YarnUse| {
        let id = line.yarn.as_ref().expect("a yarn").reference();
        studied.catalogue.entry(&id).expect("an entry").common.title.clone()
    };
    let yarn = |line: &ballband::entry::YarnUse| studied.catalogue.yarn(&line.yarn.as_ref()?.reference());
    let one = |purchase: &ballband::reckon::Purchase<'_>| {
        let need = purchase.sizes[0].expect("the size is known");
        let held = purchase.held_with.iter().map(|line| title(line)).collect();
        let skeins = need.skeins.map(|skeins| skeins.whole);
        (title(purchase.uses[0]), need.length.micrometres() / 1_000_000, skeins, held)
    };
    purchases(pattern(studied), terms, yarn).iter().map(one).collect()
}

/// As [`studio`], with a second yarn of 400 m to 100 g.
fn studio_of_two(keys: &str) -> Studied {
    let yarns = format!("{YARN}mist:\n  title: Mist\n  put-up: 400 m / 100 g\n  shades: {{ fog: '#cccccc' }}\n");
    let text = format!("---\ntitle: Jumper\nstage: sample\n{keys}---\n");
    let studied = read(&[("yarns.yaml", &yarns), ("patterns/jumper.md", &text)]);
    let told: Vec<String> = studied.findings.iter().map(|finding| finding.message.clone()).collect();
    assert!(told.is_empty(), "{told:?}");
    studied
}

#[test]
fn yarns_held_together_take_as_much_length_and_are_bought_each_by_itself() {
    let studied = studio_of_two("yarn: [ { yarn: wool, needs: 810 m, held with: mist } ]\n");
    let no_margin = Terms::of(Percent::ZERO);
    let wool = |metres, skeins| ("Wool".to_owned(), metres, Some(skeins), Vec::new());
    let mist = |metres, skeins| ("Mist".to_owned(), metres, Some(skeins), vec!["Wool".to_owned()]);
    assert_eq!(bought(&studied, no_margin), [wool(810, 5), mist(810, 3)]);
    // Another yarn is taken instead of the first; what is held with it stays.
    let with = ballband::measure::PutUp::parse("100 m / 50 g").ok();
    assert_eq!(bought(&studied, Terms { with, ..no_margin }), [wool(810, 9), mist(810, 3)]);
    assert_eq!(bought(&studied, Terms { strands: Some(2), ..no_margin }), [wool(1620, 9), mist(1620, 5)]);
    // Needs are of both strands of the first, so that the fabric's strand is half as long.
    let double = studio_of_two("yarn: [ { yarn: wool, strands: 2, needs: 810 m, held with: mist } ]\n");
    assert_eq!(bought(&double, no_margin), [wool(810, 5), mist(405, 2)]);
    let three = studio_of_two("yarn: [ { yarn: wool, needs: 810 m, held with: { yarn: mist, strands: 3 } } ]\n");
    assert_eq!(bought(&three, no_margin), [wool(810, 5), mist(2430, 7)]);
}

#[test]
fn one_shade_held_with_two_colours_is_one_purchase() {
    let studied = studio_of_two(
        "yarn:\n  - { colour: MC, yarn: wool, needs: 300 m, held with: { yarn: mist, shade: fog } }\n  \
         - { colour: CC, yarn: wool, needs: 90 m, held with: { yarn: mist, shade: fog } }\n",
    );
    let all = bought(&studied, Terms::of(Percent::ZERO));
    let held = vec!["Wool".to_owned(), "Wool".to_owned()];
    assert_eq!(all[1], ("Mist".to_owned(), 390, Some(1), held));
    assert_eq!(all.len(), 3);
}

#[test]
fn a_weight_is_of_all_strands_together() {
    // LBHandknits: 400 m and 200 m to 100 g together are 133.3 m to 100 g, so 412 g are 549.3 m of each.
    let one = studio_of_two("yarn: [ { yarn: wool, held with: mist } ]\nsample: { size: One size, used: 412 g }\n");
    assert_eq!(told(&one), [[Some((550, Basis::Weighed))]]);
    let all = bought(&one, Terms::of(Percent::ZERO));
    assert_eq!(all.iter().map(|one| one.1).collect::<Vec<_>>(), [550, 550]);
    // A length is of the yarn it is given for.
    let length = studio_of_two("yarn: [ { yarn: wool, held with: mist } ]\nsample: { size: One size, used: 300 m }\n");
    assert_eq!(told(&length), [[Some((300, Basis::Weighed))]]);
    // Two of 200 m to 100 g and one of 400: 1.25 g to the metre, so 412 g are 329.6 m of fabric, twice that of the first.
    let double = studio_of_two(
        "yarn: [ { yarn: wool, strands: 2, held with: mist } ]\nsample: { size: One size, used: 412 g }\n",
    );
    assert_eq!(told(&double), [[Some((660, Basis::Weighed))]]);
    // A swatch is weighed with all its strands too: 20 of 40 rows and 3 more make 860 stitches, 10 g, and 8,600 are 100 g.
    let swatch = studio_of_two(
        "yarn: [ { yarn: wool, stitches: 8600, held with: mist } ]\nswatch: { weight: 10 g, stitches: 20, rows: 40 }\n",
    );
    assert_eq!(told(&swatch), [[Some((134, Basis::Swatch))]]);
}
