//! A row that joins pieces: all it works are stitches of pieces that are named, others cast on between them, and markers.

use super::super::count::{Needle, Outcome};
use super::super::fault::Fault;
use super::super::statement::Statement;
use super::super::tree::{How, Item, Number, Span};
use super::dashes::skipped;
use super::knitter::{Id, Knitter};
use super::markers::Markers;
use super::pieces::{MOST, Named, names_piece, one, sums};
use super::usual::unfit;

/// Stitches that a row says are those of a piece.
struct Claim {
    says: i64,
    at: Span,
    of: Option<String>,
    /// The pieces that may be meant.
    pieces: Named,
}

impl<'a> Knitter<'a> {
    /// Works a row that joins pieces; nothing where it is no such row, or only of what is on the needle.
    pub(super) fn join(&mut self, id: Id, statement: &'a Statement, items: &[Item]) -> Option<Outcome> {
        let claims = self.claims(items)?;
        let several = claims.iter().filter(|claim| claim.of.is_some()).count() > 1;
        if !several && !items.iter().any(names_piece) {
            return None;
        }
        let needle = self.needle;
        let on_needle = |claim: &Claim| claim.pieces.live.is_some() && claim.pieces.held.is_empty();
        // Where nothing waits, stitches that come out on the needle are those that are there.
        if claims.iter().all(on_needle) || self.comes_near(&claims) {
            return None;
        }
        if claims.iter().all(|claim| !claim.pieces.is_empty())
            && let [own] = claims.iter().filter(|claim| on_needle(claim)).collect::<Vec<_>>().as_slice()
            && own.pieces.live.as_ref().is_some_and(|live| live.copies == 1 && live.stitches != own.says)
        {
            // The stitches on the needle are too many or too few for what is said of them.
            return None;
        }
        let wrong: Vec<(&Claim, i64)> =
            claims.iter().filter_map(|claim| Some((claim, unlike(claim, &claims)?))).collect();
        if !self.held.is_unsaid() {
            for (claim, had) in &wrong {
                let fault = Fault::Held { says: claim.says, had: *had };
                self.tell(id.0, claim.at.clone(), fault);
            }
        }
        for claim in claims.iter().filter(|claim| claim.of.is_none()) {
            self.comes_back(id, &Number { at: claim.at.clone(), ..one(claim.says, 0) }, None);
        }
        let sure = match needle.total {
            Some(total @ 1..) => works_all(total, &claims),
            _ => true,
        };
        let brought = self.brought(items);
        self.markers = Markers::default();
        self.needle = Needle::of(0);
        let mut outcome = self.outcome(statement, &brought);
        self.needle = needle;
        outcome.change = None;
        if !sure {
            // Whether what was on the needle stays there, the words do not tell.
            self.markers.forget();
            outcome.after = Needle::UNKNOWN;
        }
        Some(outcome)
    }

    /// Works a row that may name pieces.
    pub(super) fn outcome_with_pieces(
        &mut self,
        id: Id,
        statement: &'a Statement,
        items: &[Item],
        last: bool,
    ) -> Outcome {
        if let Some(outcome) = self.join(id, statement, items) {
            return outcome;
        }
        let doubtful = items.iter().any(names_piece) && self.is_doubtful(items);
        let named = self.with_pieces(items);
        self.hold(id, items);
        let items = named.as_deref().unwrap_or(items);
        let outcome = if last {
            self.outcome_before_hold(id, statement, items)
        } else {
            self.outcome_from_hold(statement, items)
        };
        if let Some(skipped) = skipped(items, &outcome, self.needle, self.size) {
            return skipped;
        }
        if doubtful && outcome.faults.iter().any(|(fault, _)| unfit(*fault)) {
            self.markers.forget();
            return Outcome::default();
        }
        outcome
    }

    /// Whether pieces have about as many stitches as there are, and none wait: then they are parts of what is on the needle.
    fn comes_near(&self, claims: &[Claim]) -> bool {
        let over = self.needle.total.map(|total| total.abs_diff(together(claims.iter())));
        let least = claims.iter().map(|claim| claim.says.unsigned_abs()).min();
        self.held.is_empty() && over.zip(least).is_some_and(|(over, least)| over < least)
    }

    /// Whether a row works stitches of pieces that may be elsewhere than on the needle: if it does not come out, its words may
    /// mean it otherwise.
    fn is_doubtful(&self, items: &[Item]) -> bool {
        match self.claims(items) {
            Some(claims) if self.comes_near(&claims) => false,
            Some(claims) => claims.iter().any(|claim| claim.pieces.copies() != 1),
            None => self.works_away(items),
        }
    }

    fn works_away(&self, items: &[Item]) -> bool {
        items.iter().any(|item| match item {
            Item::Piece { of, .. } => {
                let pieces = self.named_pieces(of);
                pieces.live.is_none() || pieces.copies() > 1
            }
            Item::Repeat { items, .. } => self.works_away(items),
            _ => false,
        })
    }

    /// The stitches of pieces that a row works; nothing where it works others too, or where their number is not known.
    fn claims(&self, items: &[Item]) -> Option<Vec<Claim>> {
        let mut claims = Vec::new();
        for item in items {
            match item {
                Item::Piece { number, of, at } => {
                    let says = number.as_ref().map(|number| number.of(self.size)).or_else(|| self.stitches_of(of))?;
                    let at = number.as_ref().map_or(at, |number| &number.at).clone();
                    claims.push(Claim { says, at, of: Some(of.clone()), pieces: self.named_pieces(of) });
                }
                Item::FromHold { number, of, .. } => {
                    let pieces = of.as_deref().map(|of| self.named_pieces(of)).unwrap_or_default();
                    let (says, at) = (number.of(self.size), number.at.clone());
                    claims.push(Claim { says, at, of: of.clone(), pieces });
                }
                Item::Work { takes: 0, .. } | Item::Mark { .. } | Item::Colour { .. } => {}
                Item::Repeat { items, how: How::Times(times), .. } => {
                    let times = usize::try_from(times.of(self.size)).ok().filter(|times| *times <= MOST)?;
                    for _ in 0..times {
                        claims.extend(self.claims(items)?);
                    }
                }
                _ => return None,
            }
        }
        Some(claims)
    }

    /// The same row where every piece comes to an empty needle.
    fn brought(&self, items: &[Item]) -> Vec<Item> {
        let comes = |times: Number, at: &Span| Item::Work { takes: 0, leaves: 1, times, binds: false, at: at.clone() };
        let each = items.iter().map(|item| match item {
            Item::Piece { number: Some(number), at, .. } | Item::FromHold { number, at, .. } => {
                comes(number.clone(), at)
            }
            Item::Piece { number: None, of, at } => comes(one(self.stitches_of(of).unwrap_or(0), at.end), at),
            Item::Repeat { items, how, at } => {
                Item::Repeat { items: self.brought(items), how: how.clone(), at: at.clone() }
            }
            other => other.clone(),
        });
        each.collect()
    }
}

/// What all of several claims say.
fn together<'a>(claims: impl Iterator<Item = &'a Claim>) -> i64 {
    claims.fold(0, |sum: i64, claim| sum.saturating_add(claim.says))
}

/// The nearest number of stitches that a claim could be of, where it is none; it may be a part, with others of the same piece.
fn unlike(claim: &Claim, claims: &[Claim]) -> Option<i64> {
    let all = claim.pieces.stitches();
    let parts = together(claims.iter().filter(|other| other.pieces == claim.pieces));
    let sums = if all.len() > MOST { return None } else { sums(&all) };
    if sums.contains(&claim.says) || sums.contains(&parts) {
        return None;
    }
    all.into_iter().min_by_key(|had| had.abs_diff(claim.says))
}

/// Whether the stitches on the needle are certainly among those that are worked.
fn works_all(total: i64, claims: &[Claim]) -> bool {
    let own = |claim: &&Claim| claim.pieces.live.is_some();
    if claims.iter().any(|claim| own(&claim) && claim.pieces.held.is_empty()) {
        return true;
    }
    let mut of_several = claims.iter().filter(own);
    if let Some(first) = of_several.next() {
        let all = first.pieces.stitches().into_iter().fold(0, i64::saturating_add);
        return together(claims.iter().filter(|claim| claim.pieces == first.pieces)) == all;
    }
    // Parts of one piece have names of their own: front and back of a body.
    let parts: Vec<i64> =
        claims.iter().filter(|claim| claim.of.is_some() && claim.pieces.is_empty()).map(|claim| claim.says).collect();
    !parts.is_empty() && parts.len() <= MOST && sums(&parts).contains(&total)
}
