//! `manual`: prints the manual as a page for `man`.

use super::{Failure, Outcome, STATUS, terminal};
use clap_mangen::Man;
use std::io;

/// Prints the page, made of the command's own definition.
pub fn manual(command: clap::Command) -> Result<Outcome, Failure> {
    terminal::say(&page(command)?);
    Ok(Outcome::Done)
}

/// Returns the whole manual as one page: what stands for all commands, then each with its options and examples.
fn page(command: clap::Command) -> io::Result<String> {
    let mut command = command.disable_help_subcommand(true);
    command.build();
    let mut page = Vec::new();
    let whole = Man::new(command.clone());
    whole.render_title(&mut page)?;
    whole.render_name_section(&mut page)?;
    whole.render_synopsis_section(&mut page)?;
    whole.render_options_section(&mut page)?;
    let mut page = String::from_utf8_lossy(&page).into_owned();
    page.push_str(".SH COMMANDS\n");
    for one in command.get_subcommands().filter(|one| !one.is_hide_set()) {
        section(one, one.get_name(), &mut page)?;
    }
    let status = STATUS.trim_start_matches("Exit status: ");
    page.push_str(&format!(".SH \"EXIT STATUS\"\n{status}\n"));
    Ok(page)
}

/// Adds what the page says of one command, and of those below it.
fn section(one: &clap::Command, name: &str, page: &mut String) -> io::Result<()> {
    // What every command takes stands at the head of the page.
    let own = one.clone().mut_args(|arg| {
        let everywhere = arg.is_global_set() || arg.get_id() == "help";
        if everywhere { arg.hide(true) } else { arg }
    });
    let takes_any = own.get_arguments().any(|arg| !arg.is_hide_set());
    let man = Man::new(own);
    let mut text = Vec::new();
    man.render_synopsis_section(&mut text)?;
    man.render_description_section(&mut text)?;
    if takes_any {
        man.render_options_section(&mut text)?;
    }
    man.render_extra_section(&mut text)?;
    // A command is a part of a section, so what would be sections of a page of its own are paragraphs here.
    let text = String::from_utf8_lossy(&text).into_owned();
    let lines = text.lines().map(|line| if line.starts_with(".SH ") { ".PP" } else { line });
    let lines: String = lines.flat_map(|line| [line, "\n"]).collect();
    page.push_str(&format!(".SS {name}\n{lines}"));
    for below in one.get_subcommands().filter(|below| !below.is_hide_set()) {
        section(below, &format!("{name} {}", below.get_name()), page)?;
    }
    Ok(())
}
