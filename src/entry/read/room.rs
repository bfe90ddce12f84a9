//! Which room of the studio a file is in, and files that are in none.

use crate::entry::{Key, Kind};
use crate::finding::{Code, Finding, Severity, nearest};
use crate::source::{FilePath, Place};

/// A text file that belongs to no kind.
pub static STRAY_FILE: Code = Code {
    name: "stray-file",
    severity: Severity::Warning,
    what: "A Markdown or YAML file stands in no kind's folder and is no register.",
    why: "Nothing of it is on the site, which is easily overlooked.",
    bad: "pattern/saltmarsh-yoke.md",
    good: "patterns/saltmarsh-yoke.md",
};

/// A file name or a register's key that cannot be an entry's key.
pub static BAD_KEY: Code = Code {
    name: "bad-key",
    severity: Severity::Error,
    what: "A file name or a key of a register is not lower-case letters, digits and hyphens.",
    why: "It is the entry's address on the web and its name in references.",
    bad: "patterns/Saltmarsh Yoke.md",
    good: "patterns/saltmarsh-yoke.md",
};

/// Which room of the studio a file is in.
pub(super) enum Room {
    Studio,
    Entry(Kind),
    Register(Kind),
    Stray,
}

pub(super) fn room(path: &FilePath) -> Room {
    let yaml = matches!(path.extension().as_str(), "yaml" | "yml");
    let deep = path.as_str().matches('/').count() > 1;
    match (path.folder().and_then(Kind::of_folder), path.folder()) {
        (Some(kind), _) if !yaml && !deep => Room::Entry(kind),
        (None, None) if path.as_str() == "studio.yaml" => Room::Studio,
        (None, None) if yaml => Kind::of_folder(path.stem()).map_or(Room::Stray, Room::Register),
        _ => Room::Stray,
    }
}

pub(super) fn bad_file_name(path: &FilePath) -> Finding {
    let like = Key::like(path.stem());
    let help = if like.is_empty() {
        "name it with lower-case letters, digits and hyphens".to_owned()
    } else {
        format!("name it `{like}.md`")
    };
    Finding::new(&BAD_KEY, Place::whole(path), format!("`{}` cannot be the key of an entry", path.stem())).help(help)
}

/// Returns whether a file in a kind's folder was meant as an entry and saved as something else.
pub(super) fn is_text_of_another_kind(path: &FilePath) -> bool {
    let kind = path.folder().is_some_and(|folder| Kind::of_folder(folder).is_some());
    kind && matches!(path.extension().as_str(), "txt" | "text" | "mdown" | "mkd" | "doc" | "docx" | "odt" | "rtf")
}

pub(super) fn stray(path: &FilePath) -> Finding {
    if is_text_of_another_kind(path) {
        let finding = Finding::new(&STRAY_FILE, Place::whole(path), "the file is not Markdown and is not on the site");
        return finding.help(format!("save it as plain text with the name `{}.md`", Key::like(path.stem())));
    }
    let yaml = matches!(path.extension().as_str(), "yaml" | "yml");
    let name = if yaml { path.stem() } else { path.folder().unwrap_or_default() };
    let near = nearest(name, Kind::ALL.map(Kind::folder));
    let help = match near {
        Some(near) if near == name => format!("entries stand in `{near}` itself, not in folders below it"),
        Some(near) if yaml => format!("did you mean `{near}.yaml` beside `studio.yaml`?"),
        Some(near) => format!("did you mean the folder `{near}`?"),
        None => format!(
            "move it into one of {}, or out of the studio",
            Kind::ALL.map(|kind| format!("`{}`", kind.folder())).join(", ")
        ),
    };
    Finding::new(&STRAY_FILE, Place::whole(path), "the file is in no kind's folder and is not on the site").help(help)
}
