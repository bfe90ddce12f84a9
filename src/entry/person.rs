//! The kinds with few keys of their own: techniques, people and pages.

use super::field::record;
use super::value::Web;

record! {
    /// A how-to; its text says all.
    pub struct Technique: "a technique" {}
}

record! {
    /// A maker, mill, shop, event or other designer.
    pub struct Person: "a person" {
        /// Their own site.
        "url" => url: Option<Web> = "https://example.org/mill",
        /// What they are: mill, shop, designer.
        "is" => is: Vec<String> = "[maker, mill]",
    }
}

record! {
    /// A plain page.
    pub struct Page: "a page" {}
}
