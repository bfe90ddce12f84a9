//! The template engine, with its errors in our own words.

use crate::page::{Context, Site};
use std::ops::Range;

/// Room for a page, in bytes, so that most are written without growing.
const ROOM: usize = 32 * 1024;

/// Makes pages of contexts. It is shared by all threads.
#[derive(Clone, Debug)]
pub struct Engine {
    tera: tera::Tera,
}

/// Why a template failed.
#[derive(Clone, Debug)]
pub struct EngineError {
    /// What is wrong, in the engine's words.
    pub message: String,
    /// The template it is in, where that is known.
    pub template: Option<String>,
    /// The bytes of the template.
    pub span: Option<Range<usize>>,
    /// The line, from one.
    pub line: Option<usize>,
}

impl Engine {
    /// Returns an engine for checked templates.
    pub(super) fn new(tera: &tera::Tera, site: &Site) -> Self {
        let mut tera = tera.clone();
        tera.global_context().insert("site", site);
        Self { tera }
    }

    /// Makes one page.
    ///
    /// # Errors
    /// If the template is missing or uses what its context does not have.
    pub fn page(&self, template: &str, context: &Context) -> Result<Vec<u8>, EngineError> {
        let context = tera::Context::from_serialize(context)?;
        let mut page = Vec::with_capacity(ROOM);
        self.tera.render_to(template, &context, &mut page)?;
        Ok(page)
    }
}

impl From<tera::Error> for EngineError {
    fn from(error: tera::Error) -> Self {
        match error.kind() {
            tera::ErrorKind::SyntaxError(report) | tera::ErrorKind::RenderingError(report) => Self {
                message: report.message().to_owned(),
                template: Some(report.filename().to_owned()),
                span: Some(report.span().range.clone()),
                line: Some(report.span().start_line),
            },
            other => Self { message: other.to_string(), template: None, span: None, line: None },
        }
    }
}
