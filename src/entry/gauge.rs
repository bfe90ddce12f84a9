//! The gauge a fabric is knitted to.

use super::field::record;
use crate::measure::{Count, FabricLength, Needle};

record! {
    /// Stitches and rows over a stretch of fabric.
    pub struct Gauge: "a gauge" {
        /// Stitches across the stretch.
        "stitches" => stitches: Count,
        /// Rows or rounds up the stretch.
        "rows" => rows: Option<Count>,
        /// How long the stretch is; the trade's 10 cm (4 in) if it is not given.
        "over" => over: Option<FabricLength>,
        /// The stitch it is measured in.
        "in" => stitch: Option<String> = "stockinette",
        /// The needle it was knitted on.
        "needle" => needle: Option<Needle>,
    }
}

impl Gauge {
    /// Returns the stretch it is measured over: 10 cm if it is not given.
    pub fn stretch(&self) -> FabricLength {
        self.over.unwrap_or(FabricLength::TEN_CENTIMETRES)
    }
}
