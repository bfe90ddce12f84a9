//! What the strands of a pattern come to that are held together.

use super::view::Both;
use super::{Shown, words};
use crate::entry::{Held, Pattern, YarnUse};
use crate::reckon::Strands;
use crate::standards::grist;

/// Returns, for each line of a pattern with several strands, their names and the length per mass of all together, with the
/// weights that has; what readers may not know of is left out. The bands of weights overlap, so all are named.
pub fn together(shown: &Shown<'_>, pattern: &Pattern) -> Vec<Both> {
    let mut all: Vec<Both> = Vec::new();
    for line in &pattern.yarn {
        let one = one(shown, line);
        all.extend(one.filter(|one| !all.contains(one)));
    }
    all
}

fn one(shown: &Shown<'_>, line: &YarnUse) -> Option<Both> {
    if !line.has_several_strands() {
        return None;
    }
    let strands = Strands::of(line, |line| shown.catalogue.public_yarn(&line.yarn.as_ref()?.reference()));
    let name = |line: &YarnUse| {
        let title = shown.public_link(&line.yarn.as_ref()?.reference())?.title.clone();
        let title = words::with_colour(Some(title), line.colour.as_deref());
        Some(match line.strands {
            None | Some(1) => title,
            Some(2) => format!("{title} double"),
            Some(strands) => format!("{} strands of {title}", words::number(usize::try_from(strands).ok()?)),
        })
    };
    let held = line.held_with.iter().map(|Held(held)| name(held));
    let names: Vec<String> = std::iter::once(name(line)).chain(held).collect::<Option<_>>()?;
    let length = strands.grist()?.per_100_g()?;
    let weights: Vec<String> =
        grist::weights(length).iter().map(|weight| format!("{} {}", weight.number, weight.name)).collect();
    let like = if weights.is_empty() { String::new() } else { format!(" (as {})", weights.join(" or ")) };
    let Both { first, second } = shown.length(length);
    Some(Both { first: format!("{}, {first} in 100 g{like}", words::list(&names)), second })
}
