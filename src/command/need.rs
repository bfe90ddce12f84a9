//! `need`: prints the yarn to buy for a pattern, and which size to make.

use super::proof::Format;
use super::terminal;
use super::written::in_a_sentence;
use super::{Failure, Outcome, studio};
use crate::catalogue::{Catalogue, View};
use crate::entry::field::Field;
use crate::entry::value::{Date, Margin};
use crate::entry::{Entry, Key, Kind, Pattern, Reference, Yarn, YarnUse};
use crate::finding::{any_error, nearest};
use crate::measure::{Amount, Count, FabricLength, Inch, Misread, Percent, PutUp, YarnLength};
use crate::reckon::fit::{NoFit, Wanted, fit};
use crate::reckon::{Purchase, Terms, purchases, skeins_beside};
use crate::render::need::{Instead, Needed};
use clap::Args;
use std::path::Path;

/// What the help of the command ends with.
pub const EXAMPLES: &str = "Examples:
  ballband need saltmarsh-yoke
  ballband need saltmarsh-yoke --size M --with \"210 yd / 100 g\" --margin 15%
  ballband need saltmarsh-yoke --chest 104cm --gauge 21";

/// What is asked.
#[derive(Debug, Args)]
pub struct Asked {
    /// The pattern's key: the name of its file.
    pattern: String,
    /// Only this size.
    #[arg(long)]
    size: Option<String>,
    /// Another yarn instead: how it is sold, or `yarn:KEY` for one of the studio's.
    #[arg(long, value_name = "PUT-UP")]
    with: Option<String>,
    /// How many strands are held together.
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(1..=20))]
    strands: Option<u32>,
    /// What is added before whole skeins are counted; the pattern's or the studio's if not given.
    #[arg(long, value_parser = margin)]
    margin: Option<Margin>,
    /// Subtract what the studio has at hand of each shade.
    #[arg(long)]
    on_hand: bool,
    /// Which size to make for this chest or bust.
    #[arg(long, value_name = "LENGTH", conflicts_with = "body")]
    chest: Option<String>,
    /// Which size to make for another measurement: `head=56cm`.
    #[arg(long, value_name = "NAME=LENGTH")]
    body: Option<String>,
    /// How much wider than the body it is to be; what the pattern gives if not given.
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    ease: Option<String>,
    /// Your own stitches, over the stretch that the pattern's gauge is measured over.
    #[arg(long, value_name = "STITCHES", value_parser = quantity(Count::parse))]
    gauge: Option<Count>,
    /// For people, or as JSON.
    #[arg(long, value_enum, default_value_t = Format::Text)]
    format: Format,
}

fn quantity<T>(parse: fn(&str) -> Result<T, Misread>) -> impl Fn(&str) -> Result<T, String> + Clone {
    move |text| parse(text).map_err(|misread| in_a_sentence(&misread))
}

fn margin(text: &str) -> Result<Margin, String> {
    let share = quantity(Percent::parse)(text)?;
    Margin::new(share).ok_or_else(|| format!("write {}", Margin::WHAT))
}

/// Prints what is asked of a pattern.
pub fn need(named: Option<&Path>, asked: &Asked, today: Date) -> Result<Outcome, Failure> {
    let disk = studio::find(named)?;
    let joined = crate::join(&disk, View::of_readers(today))
        .map_err(|error| format!("cannot read the studio in `{}`: {error}", disk.root().display()))?;
    let catalogue = &joined.catalogue;
    let (entry, pattern) = find_pattern(catalogue, &asked.pattern)?;
    let sizes = sizes(pattern, asked.size.as_deref())?;
    let instead = instead(catalogue, asked.with.as_deref())?;
    let with = instead.as_ref().map(|instead| instead.put_up);
    let margin = asked.margin.map_or_else(|| catalogue.studio.margin(pattern), Margin::share);
    let terms = Terms { margin, with, strands: asked.strands };
    let mut bought = purchases(pattern, terms, |line| own_yarn(catalogue, line));
    let at_hand = bought.iter_mut().map(|purchase| {
        let there = if asked.on_hand && with.is_none() { at_hand(catalogue, purchase) } else { None };
        there.inspect(|there| subtract(purchase, margin, *there))
    });
    let at_hand = at_hand.collect();
    let mut needed = Needed {
        catalogue,
        entry,
        pattern,
        margin,
        purchases: bought,
        sizes,
        strands: asked.strands,
        instead,
        at_hand,
    };
    let fitted = match measured(asked, pattern, catalogue.studio.settings().inch)? {
        Some((name, body, ease)) => {
            let wanted = Wanted { measurement: &name, body, ease, stitches: asked.gauge };
            let fitted = fit(pattern, wanted).map_err(|why| no_fit(why, &name))?;
            // Whoever asks which size to make wants the yarn for that one, unless she names another.
            if asked.size.is_none() {
                needed.sizes = vec![fitted.best];
            }
            needed.fit_to_text(&name, body, &fitted, asked.gauge)
        }
        None if asked.gauge.is_some() || asked.ease.is_some() => {
            return Err(Failure(
                "which size to make takes a body: add `--chest 104cm` or `--body head=56cm`".to_owned(),
            ));
        }
        None => String::new(),
    };
    if any_error(&joined.findings) {
        terminal::complain("the studio has errors, so a figure may be missing or wrong; `ballband proof` tells them");
    }
    match asked.format {
        Format::Json => terminal::say(&needed.to_json()),
        Format::Text => terminal::say(&format!("{fitted}{}", needed.to_text())),
    }
    Ok(Outcome::Done)
}

/// Returns a pattern by its key, or says which is meant.
pub fn find_pattern<'a>(catalogue: &'a Catalogue, written: &str) -> Result<(&'a Entry, &'a Pattern), Failure> {
    let key = written.strip_prefix("pattern:").unwrap_or(written);
    let of = |key: Key| catalogue.entry(&Reference { kind: Kind::Pattern, key });
    let found = Key::new(key).and_then(of).and_then(|entry| Some((entry, entry.pattern()?)));
    found.ok_or_else(|| {
        let known = catalogue.entries.iter().filter(|entry| entry.id.kind == Kind::Pattern);
        let near = nearest(key, known.map(|entry| entry.id.key.as_str()));
        let help = near.map_or_else(
            || "`ballband proof` tells if a file could not be read".to_owned(),
            |near| format!("did you mean `{near}`?"),
        );
        Failure(format!("there is no pattern `{key}`; {help}"))
    })
}

fn sizes(pattern: &Pattern, asked: Option<&str>) -> Result<Vec<usize>, Failure> {
    let Some(asked) = asked else { return Ok((0..pattern.size_count()).collect()) };
    let names = pattern.sizes.as_ref();
    match names.and_then(|names| names.find(asked)) {
        Some(size) => Ok(vec![size]),
        None => Err(Failure(match names {
            Some(names) => format!("the pattern has no size `{asked}`; its sizes are {}", names.show()),
            None => "the pattern has one size and no names for sizes; leave `--size` out".to_owned(),
        })),
    }
}

fn own_yarn<'a>(catalogue: &'a Catalogue, line: &YarnUse) -> Option<&'a Yarn> {
    catalogue.yarn(&line.yarn.as_ref()?.reference())
}

/// Returns the yarn that is asked for instead of the pattern's.
fn instead(catalogue: &Catalogue, asked: Option<&str>) -> Result<Option<Instead>, Failure> {
    let Some(asked) = asked else { return Ok(None) };
    let Some(key) = asked.strip_prefix("yarn:") else {
        let put_up = PutUp::parse(asked).map_err(|misread| in_a_sentence(&misread))?;
        return Ok(Some(Instead { title: "Another yarn".to_owned(), put_up, gauge: None }));
    };
    let of = |key: Key| catalogue.entry(&Reference { kind: Kind::Yarn, key });
    let found = Key::new(key).and_then(of).and_then(|entry| Some((entry, entry.yarn()?)));
    let Some((entry, yarn)) = found else {
        let known = catalogue.entries.iter().filter(|entry| entry.id.kind == Kind::Yarn);
        let near = nearest(key, known.map(|entry| entry.id.key.as_str()));
        let help = near.map_or_else(String::new, |near| format!("; did you mean `yarn:{near}`?"));
        return Err(Failure(format!("there is no yarn `{key}`{help}")));
    };
    match yarn.put_up {
        Some(put_up) => Ok(Some(Instead { title: entry.common.title.clone(), put_up, gauge: yarn.gauge.clone() })),
        None => Err(Failure(format!("how `{key}` is sold is not known: give it a `put-up`"))),
    }
}

/// Returns the length of what the studio has of a purchase, where its shade and put-up are known.
fn at_hand(catalogue: &Catalogue, purchase: &Purchase<'_>) -> Option<YarnLength> {
    let line = purchase.uses.first()?;
    // The designer asks at her own terminal, so what is private may be looked at.
    let amount: Amount = own_yarn(catalogue, line)?.on_hand.for_desk().of(line.shade.as_deref())?;
    amount.length(purchase.put_up)
}

/// Takes what is at hand off what is to be bought, size by size.
fn subtract(purchase: &mut Purchase<'_>, margin: Percent, at_hand: YarnLength) {
    for need in purchase.sizes.iter_mut().flatten() {
        need.skeins = purchase.put_up.and_then(|put_up| skeins_beside(need.length, margin, put_up, at_hand));
    }
}

/// Returns the measurement of the body that a size is asked for, and the ease wanted.
fn measured(
    asked: &Asked,
    pattern: &Pattern,
    inch: Inch,
) -> Result<Option<(String, FabricLength, Option<FabricLength>)>, Failure> {
    let length = |text: &str| FabricLength::parse(text, inch).map_err(|misread| in_a_sentence(&misread));
    let (name, body) = match (&asked.chest, &asked.body) {
        (Some(chest), _) => {
            let name = ["chest", "bust"].into_iter().find(|name| pattern.finished.get(name).is_some());
            (name.unwrap_or("chest").to_owned(), length(chest)?)
        }
        (None, Some(body)) => {
            let (name, body) = body.split_once('=').ok_or("write `--body NAME=LENGTH`, such as `--body head=56cm`")?;
            (name.trim().to_owned(), length(body)?)
        }
        (None, None) => return Ok(None),
    };
    Ok(Some((name, body, asked.ease.as_deref().map(length).transpose()?)))
}

fn no_fit(why: NoFit, name: &str) -> Failure {
    Failure(match why {
        NoFit::NotFinished => format!("the pattern has no finished `{name}`, so a size for it cannot be told"),
        NoFit::NoGauge => "the pattern states no gauge to compare yours with".to_owned(),
        NoFit::Beyond => format!("no size can be told: the {name} and the gauge must be more than nothing"),
    })
}
