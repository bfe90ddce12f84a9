//! A colour as the web writes it.

use crate::entry::field::{Field, WRONG_TYPE, wrong_type};
use crate::entry::schema::{Definitions, Schema};
use crate::entry::yaml::{Node, Notes, Yaml};
use std::fmt;

/// A colour of the sRGB space, written `#rrggbb` (CSS Color Module Level 4, hexadecimal notation).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Colour {
    rgb: [u8; 3],
}

impl Colour {
    /// Returns the colour of `#rrggbb` or `#rgb`.
    pub fn parse(text: &str) -> Option<Self> {
        let digits: Option<Vec<u8>> =
            text.strip_prefix('#')?.chars().map(|c| c.to_digit(16).and_then(|d| u8::try_from(d).ok())).collect();
        let rgb = match *digits?.as_slice() {
            [r, g, b] => [r * 17, g * 17, b * 17],
            [r1, r2, g1, g2, b1, b2] => [r1 * 16 + r2, g1 * 16 + g2, b1 * 16 + b2],
            _ => return None,
        };
        Some(Self { rgb })
    }

    /// Returns whether black stands out from it better than white does.
    ///
    /// By the relative luminance of WCAG 2.2: the contrast with either is the same at about 0.179, where both are 4.6:1.
    pub fn is_light(self) -> bool {
        // The gamma curve is taken as a plain square, in whole numbers: it parts light from dark at nearly the same shades.
        let [r, g, b] = self.rgb.map(|part| u32::from(part).pow(2));
        r * 2126 + g * 7152 + b * 722 > 1790 * 255 * 255
    }
}

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [r, g, b] = self.rgb;
        write!(f, "#{r:02x}{g:02x}{b:02x}")
    }
}

impl Field for Colour {
    const WHAT: &'static str = "a colour like \"#6b7f4c\"";

    fn read(node: &Node<'_>, notes: &mut Notes<'_>) -> Option<Self> {
        if *node.value == Yaml::Null {
            let message = format!("`{}` has no colour", node.trail.key());
            notes.key(
                &WRONG_TYPE,
                node,
                message,
                Some("put the colour in quotes, \"#6b7f4c\": without them YAML takes `#` for a comment".to_owned()),
            );
            return None;
        }
        let colour = node.value.scalar().and_then(Self::parse);
        if colour.is_none() {
            wrong_type(node, Self::WHAT, notes);
        }
        colour
    }

    fn schema(_: &mut Definitions) -> Schema {
        Schema::of(&["string"], "\"#6b7f4c\"").pattern("^#([0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})$", Self::WHAT)
    }
}
