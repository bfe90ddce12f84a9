//! What is to be published.

use std::fmt;
use std::sync::Arc;

use super::{Digest, SitePath};

/// Makes one file's bytes, or says in a sentence why it cannot.
pub type Make<'a> = dyn Fn() -> Result<Vec<u8>, String> + Send + Sync + 'a;

/// Makes the parts asked for, in the order asked, or says in a sentence why it cannot.
pub type MakeParts = dyn Fn(&[usize]) -> Result<Vec<Vec<u8>>, String> + Send + Sync;

/// Something to publish.
#[derive(Clone, Debug)]
pub struct SiteFile<'a> {
    /// Where it goes.
    pub path: SitePath,
    /// What it holds.
    pub content: Content<'a>,
}

/// What a file holds, or how to make it.
#[derive(Clone)]
pub enum Content<'a> {
    /// The bytes themselves.
    Bytes(Vec<u8>),
    /// Made when its turn comes, written and let go, so that memory never holds a whole site.
    Derived {
        /// Everything the bytes depend on, for what is costly to make: then it is made only if the file on disk was not
        /// made from the same. None for what is made each time.
        from: Option<Digest>,
        /// Makes the bytes; must give the same bytes each time for one digest.
        make: Arc<Make<'a>>,
    },
    /// As `Derived`, but several files come from one piece of work, such as reading a photo.
    ///
    /// The parts of one batch that are needed are asked for in one call, written, and let go
    /// before the same thread begins another batch. So memory holds at most one batch a thread,
    /// however many photos there are.
    Part {
        /// Everything this part's bytes depend on.
        from: Digest,
        /// The work shared; parts belong together when they hold the same `Arc`.
        batch: Arc<Batch>,
        /// Which part of the batch this file is.
        part: usize,
    },
}

/// One piece of work that several files come from.
pub struct Batch {
    make: Box<MakeParts>,
}

impl Batch {
    /// Wraps the function that does the work.
    ///
    /// It is given the numbers of the parts that are needed and returns as many values.
    pub fn new(make: impl Fn(&[usize]) -> Result<Vec<Vec<u8>>, String> + Send + Sync + 'static) -> Arc<Batch> {
        Arc::new(Batch { make: Box::new(make) })
    }

    /// Makes the parts asked for, in the order asked.
    ///
    /// # Errors
    /// The sentence the function gave, or one that says it returned the wrong number of parts.
    pub fn make(&self, parts: &[usize]) -> Result<Vec<Vec<u8>>, String> {
        let made = (self.make)(parts)?;
        if made.len() == parts.len() {
            Ok(made)
        } else {
            Err(format!("{} parts were asked for and {} were made", parts.len(), made.len()))
        }
    }
}

impl<'a> SiteFile<'a> {
    /// A file of known bytes.
    pub fn new(path: SitePath, bytes: impl Into<Vec<u8>>) -> Self {
        SiteFile { path, content: Content::Bytes(bytes.into()) }
    }

    /// A file that is made only when its digest is new.
    pub fn derived(
        path: SitePath,
        from: Digest,
        make: impl Fn() -> Result<Vec<u8>, String> + Send + Sync + 'a,
    ) -> Self {
        SiteFile { path, content: Content::Derived { from: Some(from), make: Arc::new(make) } }
    }

    /// A file that is made each time, when its turn comes.
    pub fn made(path: SitePath, make: impl Fn() -> Result<Vec<u8>, String> + Send + Sync + 'a) -> Self {
        SiteFile { path, content: Content::Derived { from: None, make: Arc::new(make) } }
    }

    /// A file that is one part of a batch.
    pub fn part(path: SitePath, from: Digest, batch: &Arc<Batch>, part: usize) -> Self {
        SiteFile { path, content: Content::Part { from, batch: Arc::clone(batch), part } }
    }
}

impl Content<'_> {
    /// The digest a costly file is made from; none for any other.
    pub fn from(&self) -> Option<Digest> {
        match self {
            Content::Bytes(_) => None,
            Content::Derived { from, .. } => *from,
            Content::Part { from, .. } => Some(*from),
        }
    }
}

impl fmt::Debug for Content<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Content::Bytes(bytes) => write!(f, "Bytes({} bytes)", bytes.len()),
            Content::Derived { from: Some(from), .. } => write!(f, "Derived({from})"),
            Content::Derived { from: None, .. } => f.write_str("Derived"),
            Content::Part { from, part, .. } => write!(f, "Part({from}, {part})"),
        }
    }
}
