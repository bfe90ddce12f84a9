//! What helps at the edge of the program: schemas for an editor, completions for a shell, a page for `man`.

use super::{ballband, err, folder, out, tree};
use std::fs;
use std::path::Path;

/// Returns the help of a command, which may stand below another: `["count", "rows"]`.
fn help(command: &[String], here: &Path) -> String {
    let words: Vec<&str> = command.iter().map(String::as_str).chain(["--help"]).collect();
    out(&ballband(&words, here))
}

/// Returns every command that does something, those below others included.
fn commands(above: &[String], here: &Path) -> Vec<Vec<String>> {
    let help = help(above, here);
    let Some((_, list)) = help.split_once("Commands:\n") else { return vec![above.to_vec()] };
    let lines = list.split("\n\n").next().unwrap().lines();
    let names = lines.filter_map(|line| line.strip_prefix("  ")?.split(' ').next());
    let names = names.filter(|name| !name.is_empty() && *name != "help");
    names.flat_map(|name| commands(&[above, &[name.to_owned()]].concat(), here)).collect()
}

/// Returns the long options that a command's help tells of.
fn options(command: &[String], here: &Path) -> Vec<String> {
    let help = help(command, here);
    let words = help.lines().filter_map(|line| line.trim_start().trim_start_matches("-h, ").strip_prefix("--"));
    words.filter_map(|words| words.split(' ').next()).map(|word| format!("--{word}")).collect()
}

#[test]
fn start_lays_out_the_schemas_that_its_files_name() {
    let here = folder("start-schemas");
    assert_eq!(ballband(&["start", "studio"], &here).status.code(), Some(0));
    let mut named = 0;
    for entry in fs::read_dir(here.join("studio")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|end| end == "yaml") {
            let text = fs::read_to_string(&path).unwrap();
            let first = text.lines().next().unwrap();
            let schema = first.strip_prefix("# yaml-language-server: $schema=").unwrap();
            assert!(here.join("studio").join(schema).is_file(), "{}: {first}", path.display());
            let own = format!("{}.schema.json", path.file_stem().unwrap().to_string_lossy());
            assert!(schema.ends_with(&own), "{}: {first}", path.display());
            named += 1;
        }
    }
    assert_eq!(named, 3);
    assert_eq!(tree(&here.join("studio/.schemas")).len(), 15);
}

#[test]
fn proof_writes_the_schemas_anywhere_and_over_its_own() {
    // No studio is needed, and none is read.
    let here = folder("schemas");
    for _ in 0..2 {
        let proof = ballband(&["proof", "--schema", "deep/in"], &here);
        assert_eq!(proof.status.code(), Some(0), "{}", err(&proof));
        assert_eq!(out(&proof), "15 schemas in `deep/in`\n");
    }
    let written = tree(&here);
    let expected = ballband::entry::schema::files();
    assert_eq!(written.len(), expected.len());
    for (name, text) in expected {
        let path = format!("deep/in/{name}");
        assert!(written.contains(&(path.clone(), text.into_bytes())), "{path}");
    }
    let old = here.join("deep/in/studio.schema.json");
    fs::write(&old, "{ \"$comment\": \"Written by ballband long ago.\" }").unwrap();
    assert_eq!(ballband(&["proof", "--schema", "deep/in"], &here).status.code(), Some(0));
    assert_eq!(tree(&here), written);
}

#[test]
fn proof_leaves_a_file_that_is_not_its_own_and_writes_nothing() {
    let here = folder("schemas-not-ours");
    for hers in ["{}", "not JSON", "{ \"$comment\": \"mine\" }"] {
        fs::write(here.join("yarns.schema.json"), hers).unwrap();
        let proof = ballband(&["proof", "--schema", "."], &here);
        assert_eq!(proof.status.code(), Some(2), "{}", out(&proof));
        assert_eq!(err(&proof).lines().count(), 1, "{}", err(&proof));
        assert!(err(&proof).contains("yarns.schema.json` was not written by ballband"), "{}", err(&proof));
        assert_eq!(tree(&here), [("yarns.schema.json".to_owned(), hers.as_bytes().to_vec())]);
    }
}

#[test]
fn a_folder_for_schemas_that_cannot_be_made_is_one_clear_sentence() {
    let here = folder("schemas-nowhere");
    fs::write(here.join("letter.txt"), "dear").unwrap();
    for nowhere in ["letter.txt", "letter.txt/below"] {
        let proof = ballband(&["proof", "--schema", nowhere], &here);
        assert_eq!(proof.status.code(), Some(2), "{}", out(&proof));
        assert_eq!(err(&proof).lines().count(), 1, "{}", err(&proof));
        assert!(err(&proof).contains(&format!("cannot make the folder `{nowhere}`")), "{}", err(&proof));
    }
    assert_eq!(tree(&here), [("letter.txt".to_owned(), b"dear".to_vec())]);
    assert_eq!(ballband(&["proof", "--schema", "a", "--format", "json"], &here).status.code(), Some(2));
}

#[test]
fn every_shell_completes_every_command_and_option() {
    let here = folder("completions");
    let commands = commands(&[], &here);
    assert!(commands.len() >= 6, "{commands:?}");
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let printed = ballband(&["completions", shell], &here);
        assert_eq!(printed.status.code(), Some(0), "{}", err(&printed));
        let script = out(&printed);
        for command in &commands {
            assert!(command.iter().all(|word| script.contains(word.as_str())), "{shell}: {command:?}");
            for option in options(command, &here) {
                // fish names a long option without its dashes.
                assert!(script.contains(option.trim_start_matches('-')), "{shell}: {command:?} {option}");
            }
        }
    }
    let other = ballband(&["completions", "csh"], &here);
    assert_eq!(other.status.code(), Some(2));
    assert!(err(&other).contains("fish"), "{}", err(&other));
}

/// The script must be one that the shell itself reads.
#[cfg(unix)]
#[test]
fn bash_reads_its_script_and_completes() {
    let here = folder("bash");
    fs::write(here.join("script"), out(&ballband(&["completions", "bash"], &here))).unwrap();
    let ask = "source ./script && COMP_WORDS=(ballband proof --sch) COMP_CWORD=2 && \
               _ballband ballband --sch proof && echo \"${COMPREPLY[@]}\"";
    let bash = std::process::Command::new("bash").args(["-c", ask]).current_dir(&here).output().unwrap();
    assert_eq!(out(&bash), "--schema\n", "{}", err(&bash));
}

#[test]
fn the_manual_tells_of_every_command_and_option() {
    let here = folder("manual");
    let printed = ballband(&["manual"], &here);
    assert_eq!(printed.status.code(), Some(0), "{}", err(&printed));
    let page = out(&printed);
    assert!(page.contains(".TH ballband 1"), "{page}");
    for part in ["NAME", "SYNOPSIS", "OPTIONS", "COMMANDS", "\"EXIT STATUS\""] {
        assert_eq!(page.lines().filter(|line| *line == format!(".SH {part}")).count(), 1, "{part}");
    }
    // The page has what roff makes of a dash.
    let plain = page.replace("\\-", "-");
    for command in commands(&[], &here) {
        let (name, told) = (command.join(" "), options(&command, &here));
        let section = plain.split(&format!("\n.SS {name}\n")).nth(1).unwrap_or_else(|| panic!("{name}: {plain}"));
        let section = section.split("\n.SS ").next().unwrap();
        assert!(section.contains("Example"), "{name}");
        assert!(told.contains(&"--help".to_owned()), "{name}: {told:?}");
        for option in told {
            let everywhere = option == "--studio" || option == "--help";
            let where_it_stands = if everywhere { plain.as_str() } else { section };
            assert!(where_it_stands.contains(&option), "{name} {option}");
        }
    }
    // Every request is one of the few that `man` knows; nothing of the text has become one.
    for line in page.lines().filter(|line| line.starts_with('.')) {
        let request = line.split(' ').next().unwrap();
        assert!(
            [".ie", ".el", ".TH", ".SH", ".SS", ".PP", ".TP", ".RS", ".RE", ".IP", ".br"].contains(&request),
            "{line}"
        );
    }
}
