//! The last stage: the finished pages, put into the site's folder.
//!
//! `plan` decides, from values alone, what is written, kept and removed. `apply` is the only part
//! that touches the disk. This folder uses nothing else of the crate, so that what may delete a
//! file can be read on its own.
//!
//! What is promised, whenever the process is stopped:
//!
//! - every page in the folder is whole, the old one or the new one;
//! - a file that an earlier make did not write is neither changed nor removed;
//! - the next make puts right whatever was left.
//!
//! The promise is about the process, not the power: nothing waits for the platters, because ten
//! thousand waits cost minutes. After a power cut the next make compares every byte and mends it.

pub mod apply;
mod content;
mod digest;
mod disk;
mod manifest;
mod path;
mod plan;
mod report;
mod trouble;

pub use apply::{publish, publish_on};
pub use content::{Batch, Content, Make, MakeParts, SiteFile};
pub use digest::{BadDigest, Digest};
pub use disk::{Disk, Held, Kind};
pub use manifest::{Made, Manifest, Unreadable};
pub use path::{BadPath, SitePath};
pub use plan::{Existing, Found, Plan, Refusal, plan};
pub use report::{Progress, Report, Stage};
pub use trouble::{Doing, Left, Trouble};

/// The folder inside the site that holds our own records.
pub const RECORDS: &str = ".ballband";
/// The list of what a make wrote, inside the site.
pub const MANIFEST: &str = ".ballband/made.json";
/// Where new files wait until all of them are written.
pub const ASIDE: &str = ".ballband/aside";
/// The file a running make holds; always empty.
pub const LOCK: &str = ".ballband/lock";
