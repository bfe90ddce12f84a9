//! Front matter as values with places.
//!
//! serde_yaml reads the text into [`Yaml`]; [`Node`] walks it and remembers the way, so that a mistake found deep inside
//! can be placed. Places themselves cost a second reading of the text and are worked out only for a file that has a finding.

mod node;
mod notes;
mod places;
mod syntax;
mod tree;

pub use node::{Node, Step, Steps, Trail};
pub use notes::{Note as Noted, Notes, On};
pub use places::Places;
pub use syntax::{SYNTAX, explain};
pub use tree::{Yaml, parse};
