//! A disk in memory that can fail, or die, at any operation.

use std::collections::BTreeMap;
use std::io::{self, ErrorKind};
use std::path::PathBuf;
use std::sync::Mutex;

use ballband::write::{Disk, Held, Kind};

#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Node {
    File(Vec<u8>),
    Folder,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    Never,
    /// The operation of this number is half done, and nothing works from then on.
    Dies(usize),
    /// The operation of this number is half done for want of space; later ones work.
    Fails(usize),
    /// From the operation of this number on there is no space to write, but all else works.
    Full(usize),
}

/// Folders and files by path; the site's folder itself is there once `root` is set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct State {
    pub root: bool,
    /// From the path as the disk looks it up to its spelling and what it is.
    nodes: BTreeMap<String, (String, Node)>,
    /// Whether capitals and small letters are taken for one, as on many computers.
    folds: bool,
}

pub struct MemoryDisk {
    state: Mutex<(State, usize)>,
    when: When,
}

fn gone() -> io::Error {
    io::Error::other("the process has died")
}

impl State {
    pub fn new(folds: bool) -> State {
        State { root: false, nodes: BTreeMap::new(), folds }
    }

    fn key(&self, path: &str) -> String {
        if self.folds { path.to_lowercase() } else { path.to_owned() }
    }

    pub fn get(&self, path: &str) -> Option<&Node> {
        self.nodes.get(&self.key(path)).map(|(_, node)| node)
    }

    pub fn put(&mut self, path: &str, node: Node) {
        // As on a disk that folds capitals, a name that is there keeps its spelling.
        let key = self.key(path);
        let spelt = self.nodes.get(&key).map_or(path.to_owned(), |(spelt, _)| spelt.clone());
        self.nodes.insert(key, (spelt, node));
    }

    /// Puts a file and the folders it lies in, as the designer might.
    pub fn by_hand(&mut self, path: &str, text: &str) {
        self.root = true;
        for (at, _) in path.match_indices('/') {
            self.put(&path[..at], Node::Folder);
        }
        self.put(path, Node::File(text.into()));
    }

    /// Everything there but our records, by the spelling the disk shows.
    pub fn site(&self) -> BTreeMap<&str, &Node> {
        self.all().into_iter().filter(|(path, _)| !path.starts_with(".ballband")).collect()
    }

    pub fn all(&self) -> BTreeMap<&str, &Node> {
        self.nodes.values().map(|(path, node)| (path.as_str(), node)).collect()
    }

    fn inside<'a>(&'a self, folder: &str) -> impl Iterator<Item = (&'a str, &'a Node)> {
        let start = if folder.is_empty() { String::new() } else { self.key(folder) + "/" };
        self.nodes.iter().filter_map(move |(key, (spelt, node))| {
            let name = key.strip_prefix(&start)?;
            (!name.contains('/')).then(|| (&spelt[spelt.len() - name.len()..], node))
        })
    }

    fn folder_of_is_there(&self, path: &str) -> io::Result<()> {
        let there = match path.rsplit_once('/') {
            None => self.root,
            Some((folder, _)) => self.get(folder) == Some(&Node::Folder),
        };
        if there { Ok(()) } else { Err(ErrorKind::NotFound.into()) }
    }

    fn file(&self, path: &str) -> io::Result<&Vec<u8>> {
        match self.get(path) {
            Some(Node::File(bytes)) => Ok(bytes),
            Some(_) => Err(ErrorKind::IsADirectory.into()),
            None => Err(ErrorKind::NotFound.into()),
        }
    }

    fn move_folder(&mut self, from: &str, to: &str) -> io::Result<()> {
        // As on Unix: an empty folder is replaced, and nothing else.
        match self.get(to) {
            None => {}
            Some(Node::Folder) if self.inside(to).next().is_none() => {}
            Some(Node::Folder) => return Err(ErrorKind::DirectoryNotEmpty.into()),
            Some(Node::File(_)) => return Err(ErrorKind::NotADirectory.into()),
        }
        let below = self.key(from) + "/";
        let inside: Vec<(String, Node)> = self
            .nodes
            .iter()
            .filter(|(key, _)| key.starts_with(&below))
            .map(|(_, (spelt, node))| (spelt[from.len()..].to_owned(), node.clone()))
            .collect();
        self.nodes.retain(|key, _| !key.starts_with(&below));
        self.take(from);
        self.put(to, Node::Folder);
        for (rest, node) in inside {
            self.put(&format!("{to}{rest}"), node);
        }
        Ok(())
    }

    fn take(&mut self, path: &str) {
        let key = self.key(path);
        self.nodes.remove(&key);
    }
}

fn kind(node: &Node) -> Kind {
    match node {
        Node::File(bytes) => Kind::File(bytes.len() as u64),
        Node::Folder => Kind::Folder,
    }
}

impl MemoryDisk {
    pub fn new(state: State, when: When) -> MemoryDisk {
        MemoryDisk { state: Mutex::new((state, 0)), when }
    }

    pub fn into_state(self) -> State {
        self.state.into_inner().unwrap().0
    }

    /// How many operations that change the disk were asked for.
    pub fn operations(&self) -> usize {
        self.state.lock().unwrap().1
    }

    fn asked<T>(&self, ask: impl FnOnce(&State) -> io::Result<T>) -> io::Result<T> {
        let guard = self.state.lock().unwrap();
        match self.when {
            When::Dies(last) if guard.1 > last => Err(gone()),
            _ => ask(&guard.0),
        }
    }

    /// Runs a change, or does it by half, or not at all.
    fn change(
        &self,
        writes: bool,
        half: impl FnOnce(&mut State),
        all: impl FnOnce(&mut State) -> io::Result<()>,
    ) -> io::Result<()> {
        let mut guard = self.state.lock().unwrap();
        let number = guard.1;
        guard.1 += 1;
        match self.when {
            When::Dies(last) if number > last => Err(gone()),
            When::Dies(last) if number == last => {
                half(&mut guard.0);
                Err(gone())
            }
            When::Fails(which) if number == which => {
                half(&mut guard.0);
                Err(ErrorKind::StorageFull.into())
            }
            When::Full(first) if writes && number >= first => {
                half(&mut guard.0);
                Err(ErrorKind::StorageFull.into())
            }
            _ => all(&mut guard.0),
        }
    }
}

impl Disk for MemoryDisk {
    fn place(&self, path: &str) -> PathBuf {
        PathBuf::from("site").join(path)
    }

    fn root(&self) -> io::Result<Option<Kind>> {
        self.asked(|state| Ok(state.root.then_some(Kind::Folder)))
    }

    fn make_root(&self) -> io::Result<()> {
        self.change(
            true,
            |_| {},
            |state| {
                state.root = true;
                Ok(())
            },
        )
    }

    fn look(&self, path: &str) -> io::Result<Option<Kind>> {
        self.asked(|state| Ok(state.get(path).map(kind)))
    }

    fn list(&self, folder: &str) -> io::Result<Vec<(String, Kind)>> {
        self.asked(|state| Ok(state.inside(folder).map(|(name, node)| (name.to_owned(), kind(node))).collect()))
    }

    fn read(&self, path: &str) -> io::Result<Vec<u8>> {
        self.asked(|state| state.file(path).cloned())
    }

    fn same(&self, path: &str, bytes: &[u8]) -> io::Result<bool> {
        self.asked(|state| Ok(state.file(path)? == bytes))
    }

    fn write(&self, path: &str, bytes: &[u8]) -> io::Result<()> {
        let half = bytes.get(..bytes.len() / 2).unwrap_or_default().to_vec();
        self.change(
            true,
            |state| {
                if state.folder_of_is_there(path).is_ok() {
                    state.put(path, Node::File(half));
                }
            },
            |state| {
                state.folder_of_is_there(path)?;
                if state.get(path).is_some() {
                    return Err(ErrorKind::AlreadyExists.into());
                }
                state.put(path, Node::File(bytes.to_vec()));
                Ok(())
            },
        )
    }

    fn rename(&self, from: &str, to: &str) -> io::Result<()> {
        self.change(
            false,
            |_| {},
            |state| {
                state.folder_of_is_there(to)?;
                if state.get(from) == Some(&Node::Folder) {
                    return state.move_folder(from, to);
                }
                let bytes = state.file(from)?.clone();
                if matches!(state.get(to), Some(Node::Folder)) {
                    return Err(ErrorKind::IsADirectory.into());
                }
                state.take(from);
                state.put(to, Node::File(bytes));
                Ok(())
            },
        )
    }

    fn make_folder(&self, path: &str) -> io::Result<()> {
        self.change(
            true,
            |_| {},
            |state| {
                state.folder_of_is_there(path)?;
                match state.get(path) {
                    None => {
                        state.put(path, Node::Folder);
                        Ok(())
                    }
                    Some(Node::Folder) if state.folds => Ok(()),
                    Some(_) => Err(ErrorKind::AlreadyExists.into()),
                }
            },
        )
    }

    fn remove_file(&self, path: &str) -> io::Result<()> {
        self.change(
            false,
            |_| {},
            |state| {
                state.file(path)?;
                state.take(path);
                Ok(())
            },
        )
    }

    fn remove_folder(&self, path: &str) -> io::Result<()> {
        self.change(
            false,
            |_| {},
            |state| {
                if state.get(path) != Some(&Node::Folder) {
                    return Err(ErrorKind::NotFound.into());
                }
                if state.inside(path).next().is_some() {
                    return Err(ErrorKind::DirectoryNotEmpty.into());
                }
                state.take(path);
                Ok(())
            },
        )
    }

    fn lock(&self, path: &str) -> io::Result<Option<Box<dyn Held>>> {
        self.change(
            true,
            |_| {},
            |state| {
                state.folder_of_is_there(path)?;
                if state.get(path).is_none() {
                    state.put(path, Node::File(Vec::new()));
                }
                Ok(())
            },
        )?;
        Ok(Some(Box::new(())))
    }
}
