//! A theme: templates and assets, ours and what a studio puts in their place.

mod built_in;
mod cells;
mod chart;
mod engine;

pub use built_in::{BUILT_IN, BuiltIn};
pub use engine::{Engine, EngineError};

use crate::finding::{Code, Finding, Severity, nearest};
use crate::page::{Page, Site};
use crate::source::{FilePath, Files, Place, Texts};
use std::collections::BTreeMap;
use xxhash_rust::xxh3::{Xxh3, xxh3_64};

/// A theme that is neither built in nor a folder of the studio.
pub static UNKNOWN_THEME: Code = Code {
    name: "unknown-theme",
    severity: Severity::Error,
    what: "The studio's theme is neither built in nor a folder below `themes`.",
    why: "There would be no templates to make pages with.",
    bad: "theme: leaflat",
    good: "theme: leaflet",
};

/// A template that cannot be read or fails while a page is made.
pub static TEMPLATE_FAULT: Code = Code {
    name: "template-fault",
    severity: Severity::Error,
    what: "A template cannot be read, or fails while it makes a page.",
    why: "The page cannot be made.",
    bad: "{{ pattern.tilte }}",
    good: "{{ pattern.title }}",
};

/// Templates and assets by name. The studio's own files stand before the built-in ones of the same name.
#[derive(Clone, Debug)]
pub struct Theme {
    name: String,
    templates: BTreeMap<String, String>,
    assets: BTreeMap<String, Vec<u8>>,
    /// The templates that are the studio's own.
    own: Vec<String>,
    tera: tera::Tera,
}

/// Digests of a theme.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Marks {
    /// That of all templates.
    pub templates: u64,
    /// That of the style sheet.
    pub style: u64,
}

impl Theme {
    /// Loads a theme: the built-in one with what the studio has in `themes/NAME/` put over it.
    ///
    /// The texts of the studio's own templates are kept among `texts`, so that findings can show them.
    pub fn load(name: &str, files: &dyn Files, texts: &mut Texts) -> (Self, Vec<Finding>) {
        let mut theme = Self {
            name: name.to_owned(),
            templates: BTreeMap::new(),
            assets: BTreeMap::new(),
            own: Vec::new(),
            tera: tera::Tera::default(),
        };
        for template in BUILT_IN.templates {
            theme.templates.insert(template.0.to_owned(), template.1.to_owned());
        }
        for asset in BUILT_IN.assets {
            theme.assets.insert(asset.0.to_owned(), asset.1.to_vec());
        }
        let mut findings = Vec::new();
        let found = theme.put_over(files, texts, &mut findings);
        if !found && name != BUILT_IN.name {
            findings.push(unknown(name, texts));
        }
        let sources: Vec<(&str, &str)> =
            theme.templates.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
        let mut tera = tera::Tera::default();
        tera.register_filter("cells", cells::cells);
        tera.register_filter("chart", chart::chart);
        match tera.add_raw_templates(sources) {
            Ok(()) => theme.tera = tera,
            Err(error) => findings.push(theme.fault(&EngineError::from(error), None)),
        }
        (theme, findings)
    }

    /// Takes the studio's own files of the theme; returns whether there are any.
    fn put_over(&mut self, files: &dyn Files, texts: &mut Texts, findings: &mut Vec<Finding>) -> bool {
        let (templates, assets) = (format!("themes/{}/templates/", self.name), format!("themes/{}/assets/", self.name));
        let mut found = false;
        let paths: Vec<FilePath> = texts
            .others
            .iter()
            .filter(|path| path.as_str().starts_with(&templates) || path.as_str().starts_with(&assets))
            .cloned()
            .collect();
        for path in paths {
            found = true;
            let bytes = match files.read(&path) {
                Ok(bytes) => bytes,
                Err(error) => {
                    findings.push(Finding::new(
                        &TEMPLATE_FAULT,
                        Place::whole(&path),
                        format!("the file cannot be read: {error}"),
                    ));
                    continue;
                }
            };
            if let Some(name) = path.as_str().strip_prefix(&templates) {
                match String::from_utf8(bytes) {
                    Ok(text) => {
                        texts.only_shown.insert(path.clone(), text.clone());
                        self.own.push(name.to_owned());
                        self.templates.insert(name.to_owned(), text);
                    }
                    Err(_) => findings.push(
                        Finding::new(&TEMPLATE_FAULT, Place::whole(&path), "the template is not UTF-8")
                            .help("save it as UTF-8"),
                    ),
                }
            } else if let Some(name) = path.as_str().strip_prefix(&assets) {
                self.assets.insert(name.to_owned(), bytes);
            }
        }
        found
    }

    /// Returns the engine that makes pages of contexts, with what every template knows of the site.
    pub fn engine(&self, site: &Site) -> Engine {
        Engine::new(&self.tera, &Site { style: self.style(site), ..site.clone() })
    }

    /// Returns the address of the style sheet. A changed sheet has another, so that no reader is left with an old one.
    pub fn style(&self, site: &Site) -> String {
        match self.assets.get("style.css") {
            Some(sheet) => format!("{}?{:08x}", site.style, xxh3_64(sheet) as u32),
            None => site.style.clone(),
        }
    }

    /// Returns digests by which another state of the theme is known.
    pub fn marks(&self) -> Marks {
        let mut templates = Xxh3::new();
        for text in self.templates.iter().flat_map(|(name, text)| [name, text]) {
            templates.update(&text.len().to_le_bytes());
            templates.update(text.as_bytes());
        }
        let style = self.assets.get("style.css").map_or(0, |sheet| xxh3_64(sheet));
        Marks { templates: templates.digest(), style }
    }

    /// Returns whether the studio has templates of its own.
    pub fn has_own_templates(&self) -> bool {
        !self.own.is_empty()
    }

    /// Returns the theme's assets, each with its path in the site.
    pub fn assets(&self) -> impl Iterator<Item = (&str, &[u8])> {
        self.assets.iter().map(|(path, bytes)| (path.as_str(), bytes.as_slice()))
    }

    /// Returns the finding for a template that failed while a page was made.
    pub fn explain(&self, error: &EngineError, page: &Page) -> Finding {
        self.fault(error, Some(page))
    }

    fn fault(&self, error: &EngineError, page: Option<&Page>) -> Finding {
        let template = error.template.as_deref().or(page.map(|page| page.template)).unwrap_or("theme");
        let whose = page.map(|page| match page.entry() {
            Some(entry) => format!(", while making the page of `{entry}`"),
            None => format!(", while making `{}`", page.file),
        });
        let file = FilePath::new(&format!("themes/{}/templates/{template}", self.name));
        let span = error.span.clone().unwrap_or(0..0);
        let line = error.line.map(|line| format!(" line {line}")).unwrap_or_default();
        let built_in = if self.own.iter().any(|own| own == template) { "" } else { " (built in)" };
        let message = format!("template `{template}`{built_in}{line}: {}{}", error.message, whose.unwrap_or_default());
        let place = file.map_or_else(|| Place::whole(&FilePath::studio()), |file| Place { file, span });
        Finding::new(&TEMPLATE_FAULT, place, message).help("what a template may use is listed in the theme's reference")
    }
}

fn unknown(name: &str, texts: &Texts) -> Finding {
    let folders: Vec<&str> =
        texts.others.iter().filter_map(|path| path.as_str().strip_prefix("themes/")?.split('/').next()).collect();
    let near = nearest(name, folders.into_iter().chain([BUILT_IN.name]));
    let help = near.map_or_else(
        || format!("write `{}`, or put a template or an asset into `themes/{name}/`", BUILT_IN.name),
        |near| format!("did you mean `{near}`?"),
    );
    let file = FilePath::studio();
    let text = texts.of(&file);
    let span = text.find("theme:").map_or(0..0, |start| {
        start..start + text.get(start..).and_then(|rest| rest.lines().next()).map_or(6, str::len)
    });
    Finding::new(&UNKNOWN_THEME, Place { file, span }, format!("there is no theme `{name}`")).help(help)
}
