//! The template engine, with its errors in our own words.

use crate::page::{Context, Site};
use std::ops::Range;

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

    /// Makes one page; `buffer` is room to work in, kept from page to page.
    ///
    /// # Errors
    /// If the template is missing or uses what its context does not have.
    pub fn page(&self, template: &str, context: &Context, buffer: &mut Vec<u8>) -> Result<Vec<u8>, EngineError> {
        let context = tera::Context::from_serialize(context)?;
        buffer.clear();
        self.tera.render_to(template, &context, &mut *buffer)?;
        Ok(buffer.as_slice().to_vec())
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
