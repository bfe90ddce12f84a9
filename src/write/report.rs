//! What is told while a site is published, and after.

use super::SitePath;

/// What a make did to the site's folder.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Report {
    /// How many files were written.
    pub written: usize,
    /// How many were already as they should be, and were left alone.
    pub unchanged: usize,
    /// How many files of an earlier make were removed.
    pub removed: usize,
    /// The files written, in order.
    pub changed: Vec<SitePath>,
    /// The files removed, in order.
    pub gone: Vec<SitePath>,
}

/// How far a make has come; told from any thread, and not always in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// What is being done.
    pub stage: Stage,
    /// How many files of this stage are done; 0 when it begins.
    pub done: usize,
    /// How many files the stage has.
    pub total: usize,
}

/// A part of the work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// The pages are compared with what is in the folder. Told once, as it begins.
    Comparing,
    /// New files are made and written aside; this is where photos take their time. Told for each.
    Writing,
    /// They are moved into place. Told once, as it begins.
    Placing,
    /// Old files are removed. Told once, as it begins.
    Removing,
}
