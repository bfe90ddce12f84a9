//! The words a studio tells its readers by how the designer came by things.

use super::field::record;
use super::value::How;

record! {
    /// What readers are told beside a thing, by how she came by it.
    pub struct Disclosure: "a disclosure" {
        /// Of what is her own.
        "own" => own: Option<String> = "my own shop",
        /// Of what she bought.
        "bought" => bought: Option<String> = "bought by me",
        /// Of what she was given.
        "gifted" => gifted: Option<String> = "'Ad: given to me by the maker'",
        /// Of what she was lent.
        "loaned" => loaned: Option<String> = "'Ad: lent to me by the maker'",
        /// Of links by which she earns.
        "affiliate" => affiliate: Option<String> = "'Ad: I earn if you buy through this link'",
        /// Of what she was paid to mention.
        "paid" => paid: Option<String> = "'Ad: I was paid to mention this'",
        /// Of what her friends make or sell.
        "friend" => friend: Option<String> = "from friends of mine",
    }
}

impl Disclosure {
    /// Returns the studio's own words for a way she came by things, if it has any.
    pub fn words(&self, how: How) -> Option<&str> {
        let words = match how {
            How::Own => &self.own,
            How::Bought => &self.bought,
            How::Gifted => &self.gifted,
            How::Loaned => &self.loaned,
            How::Affiliate => &self.affiliate,
            How::Paid => &self.paid,
            How::Friend => &self.friend,
        };
        words.as_deref()
    }
}
