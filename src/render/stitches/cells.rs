//! Cells of a chart as paths: grounds, cables, symbols and marks, of which each kind is one path.
//!
//! All numbers are whole, ten to a pixel, so that the drawing is the same on every machine.

use super::symbols::{self, Part, Point};
use crate::entry::value::Colour;
use crate::notation::chart::Sign;
use crate::reckon::chart::CELL_WIDTH;
use crate::standards::chart_symbols::Cable;
use std::fmt::Write as _;

/// How a sign is painted.
#[derive(Clone, Debug)]
pub struct Look {
    /// What the ground is filled with; none where it is the paper's.
    pub ground: Option<String>,
    /// Whether black stands out better from it than white; none where the ink is the page's own.
    pub black: Option<bool>,
    /// The mark of its colour.
    mark: &'static [Part],
    /// The symbol of its stitch.
    symbol: &'static [Part],
    nothing: bool,
    cable: Option<Cable>,
    cells: i64,
}

/// What grounds are filled with where a colour has a label and its shade is not known, light and dark in turn.
const UNKNOWN: [&str; 6] = ["#f6f1e6", "#5d5548", "#c9bda6", "#2f2b25", "#e3d8c4", "#8c8371"];

impl Look {
    /// Returns how each sign of a key is painted.
    pub fn all(key: &[Sign], colours: &[Option<Colour>]) -> Vec<Self> {
        let labels: Vec<&str> = key.iter().filter_map(|sign| sign.colour.as_deref()).collect();
        let mut each = Vec::new();
        labels.iter().for_each(|label| {
            if !each.contains(label) {
                each.push(*label);
            }
        });
        let one = |(at, sign): (usize, &Sign)| {
            let place = sign.colour.as_deref().and_then(|label| each.iter().position(|known| *known == label));
            let known = colours.get(at).copied().flatten();
            let unknown = || place.and_then(|place| UNKNOWN.get(place % UNKNOWN.len()));
            let ground = known.map(|colour| colour.to_string()).or_else(|| unknown().map(|hex| (*hex).to_owned()));
            Self {
                black: ground.as_deref().and_then(Colour::parse).map(Colour::is_light),
                ground,
                mark: place.map_or(&[], symbols::mark),
                symbol: symbols::stitch(&sign.stitch.name),
                nothing: sign.is_nothing(),
                cable: sign.stitch.cable,
                cells: i64::from(sign.stitch.cells).max(1),
            }
        };
        key.iter().enumerate().map(one).collect()
    }

    /// Returns how wide it is.
    pub fn width(&self) -> i64 {
        self.cells.saturating_mul(CELL_WIDTH)
    }
}

/// Paths that are being drawn, each with its attributes, in the order they lie above each other.
#[derive(Debug)]
pub struct Paint {
    height: i64,
    grounds: Vec<(String, String)>,
    layers: Vec<(String, String)>,
}

/// The layers above the grounds, from below. The classes are the style sheet's; what stands beside them is for where it
/// is not read, as in feeds.
const LAYERS: [&str; 10] = [
    BARE_PAPER,
    "class=\"band\" fill=\"#fff\" stroke=\"#000\" stroke-width=\"14\"",
    "class=\"solid\"",
    "class=\"band\" fill=\"#fff\" stroke=\"#000\" stroke-width=\"14\"",
    "class=\"sign\" fill=\"none\" stroke=\"#000\" stroke-width=\"16\"",
    "class=\"solid\"",
    "class=\"sign black\" fill=\"none\" stroke=\"#000\" stroke-width=\"16\"",
    "class=\"sign white\" fill=\"none\" stroke=\"#fff\" stroke-width=\"16\"",
    "class=\"full black\"",
    "class=\"full white\" fill=\"#fff\"",
];

/// The paper itself.
pub const BARE_PAPER: &str = "class=\"bare\" fill=\"#fff\"";
const BARE: usize = 0;
const BEHIND: usize = 1;
const PURLED: usize = 2;
const FRONT: usize = 3;

impl Paint {
    /// Returns nothing drawn yet, for cells of this height.
    pub fn new(height: i64) -> Self {
        let layers = LAYERS.map(|attributes| (attributes.to_owned(), String::new())).to_vec();
        Self { height, grounds: Vec::new(), layers }
    }

    /// Fills the ground of `times` cells of a sign side by side, the first with its corner at a point.
    pub fn ground(&mut self, look: &Look, (x, y): Point, times: i64) {
        let attributes = match &look.ground {
            _ if look.nothing => "class=\"nothing\" fill=\"#8c8371\"".to_owned(),
            None => return,
            Some(fill) => format!("fill=\"{fill}\""),
        };
        let width = look.width().saturating_mul(times);
        let path = match self.grounds.iter_mut().find(|(known, _)| *known == attributes) {
            Some((_, path)) => path,
            None => {
                self.grounds.push((attributes, String::new()));
                let Some((_, path)) = self.grounds.last_mut() else { return };
                path
            }
        };
        let _ = write!(path, "M{x} {y}h{width}v{}h-{width}z", self.height);
    }

    /// Draws what stands on the ground of one sign: its cable, its symbol and the mark of its colour.
    pub fn sign(&mut self, look: &Look, at: Point) {
        if let Some(cable) = &look.cable {
            self.cable(cable, look, at);
        }
        let side = self.height.min(CELL_WIDTH);
        let (middle_x, middle_y) = (at.0.saturating_add(look.width() / 2), at.1.saturating_add(self.height / 2));
        let (line, full) = match look.black {
            None => (4, 5),
            Some(true) => (6, 8),
            Some(false) => (7, 9),
        };
        self.parts(look.symbol, (middle_x - side / 2, middle_y - side / 2), side, line, full);
        // Beside a symbol the mark stands small in a corner.
        if look.symbol.is_empty() && look.cable.is_none() {
            self.parts(look.mark, (middle_x - side / 2, middle_y - side / 2), side, line, full);
        } else {
            let small = side * 9 / 20;
            self.parts(look.mark, (at.0, at.1.saturating_add(self.height).saturating_sub(small)), small, line, full);
        }
    }

    fn parts(&mut self, parts: &[Part], corner: Point, side: i64, line: usize, full: usize) {
        let place = |(x, y): Point| (corner.0 + x * side / 200, corner.1 + y * side / 200);
        for part in parts {
            match part {
                Part::Line(points) => self.line(line, points.iter().copied().map(place), false),
                Part::Area(points) => self.line(full, points.iter().copied().map(place), true),
                Part::Ring(middle, radius) => self.circle(line, place(*middle), radius * side / 200),
                Part::Disc(middle, radius) => self.circle(full, place(*middle), radius * side / 200),
            }
        }
    }

    fn line(&mut self, layer: usize, points: impl IntoIterator<Item = Point>, closed: bool) {
        let Some((_, path)) = self.layers.get_mut(layer) else { return };
        for (at, (x, y)) in points.into_iter().enumerate() {
            let _ = write!(path, "{}{x} {y}", if at == 0 { 'M' } else { 'L' });
        }
        if closed {
            path.push('z');
        }
    }

    fn circle(&mut self, layer: usize, (x, y): Point, radius: i64) {
        let Some((_, path)) = self.layers.get_mut(layer) else { return };
        let across = radius * 2;
        let _ =
            write!(path, "M{} {y}a{radius} {radius} 0 1 0 {across} 0a{radius} {radius} 0 1 0-{across} 0z", x - radius);
    }

    /// Draws two bands that cross: that in front leans as the stitches in front move.
    fn cable(&mut self, cable: &Cable, look: &Look, (x, y): Point) {
        // A little inside the cells, so that neighbouring cables stay apart.
        const EDGE: i64 = 12;
        let (width, wide) = (look.width(), |stitches: u32| i64::from(stitches).saturating_mul(CELL_WIDTH));
        let (over, under) = (wide(cable.over), wide(cable.under));
        let (top, bottom) = (y + EDGE, y + self.height - EDGE);
        // From the foot to the head of each band; leaning right unless mirrored.
        let band = |foot: i64, head: i64, broad: i64| {
            [(foot + EDGE, bottom), (foot + broad - EDGE, bottom), (head + broad - EDGE, top), (head + EDGE, top)]
        };
        let mirror = |points: [Point; 4]| points.map(|(px, py)| (x + if cable.left { width - px } else { px }, py));
        if look.ground.is_none() {
            // The lines between its cells are hidden, those round it are not.
            let (right, foot) = (x + width - EDGE, y + self.height - EDGE);
            self.line(BARE, [(x + EDGE, y + EDGE), (right, y + EDGE), (right, foot), (x + EDGE, foot)], true);
        }
        let behind = mirror(band(width - under, 0, under));
        self.line(if cable.purled && cable.middle == 0 { PURLED } else { BEHIND }, behind, true);
        if cable.middle > 0 {
            let between = mirror(band(over, under, wide(cable.middle)));
            self.line(if cable.purled { PURLED } else { BEHIND }, between, true);
        }
        self.line(FRONT, mirror(band(0, width - over, over)), true);
    }

    /// Returns the grounds as elements.
    pub fn grounds(&self) -> String {
        elements(&self.grounds)
    }

    /// Returns what stands on them as elements.
    pub fn signs(&self) -> String {
        elements(&self.layers)
    }
}

fn elements(paths: &[(String, String)]) -> String {
    let mut out = String::new();
    for (attributes, path) in paths.iter().filter(|(_, path)| !path.is_empty()) {
        let _ = write!(out, "<path {attributes} d=\"{path}\"/>");
    }
    out
}
