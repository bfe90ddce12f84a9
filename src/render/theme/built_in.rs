//! The theme that is part of the program.

/// A theme as it stands in the program: names and contents.
#[derive(Clone, Copy, Debug)]
pub struct BuiltIn {
    /// The theme's name.
    pub name: &'static str,
    /// Templates by name.
    pub templates: &'static [(&'static str, &'static str)],
    /// Assets by their path in the site.
    pub assets: &'static [(&'static str, &'static [u8])],
}

macro_rules! built_in {
    ($theme:literal, templates: [$($template:literal),* $(,)?], assets: [$($asset:literal),* $(,)?]) => {
        BuiltIn {
            name: $theme,
            templates: &[$( ($template, include_str!(concat!("../../../themes/", $theme, "/templates/", $template))), )*],
            assets: &[$( ($asset, include_bytes!(concat!("../../../themes/", $theme, "/assets/", $asset))), )*],
        }
    };
}

/// The built-in theme. A test compares these lists with the folder.
pub static BUILT_IN: BuiltIn = built_in!(
    "leaflet",
    templates: [
        "block.html", "figures.html", "finished.html", "frame.html", "home.html", "journal.html", "missing.html", "needles.html", "note.html", "on-the-way.html", "page.html",
        "parts.html", "pattern.html", "patterns.html", "people.html", "person.html", "project.html", "rows.html", "technique.html", "techniques.html",
        "test-knit.html", "text.html", "yarn.html",
        "yarns.html",
    ],
    assets: ["style.css", "icon.svg", "fonts/OFL.txt", "fonts/atkinson-hyperlegible-next-400.woff2", "fonts/atkinson-hyperlegible-next-700.woff2"]
);
