//! `watch`: shows the site and the desk on this machine, and again at each save.

use super::interrupt::on_interrupt;
use super::{Failure, Outcome, browser, studio, terminal, today};
use crate::catalogue::{Eyes, View};
use crate::preview::server::{Hub, Stop, listen, serve};
use crate::preview::watcher::{Burst, watch as watch_folder};
use crate::preview::{Changed, Live, Update};
use crate::source::disk::Disk;
use clap::Args;
use std::path::Path;
use std::sync::Arc;

/// How watching is done.
#[derive(Debug, Args)]
pub struct Watched {
    /// The port to begin with; the next free one is taken.
    #[arg(long, value_name = "N", default_value_t = 7410)]
    port: u16,
    /// Open the site in the browser.
    #[arg(long)]
    open: bool,
}

/// Serves a studio until it is told to stop.
pub fn watch(named: Option<&Path>, how: &Watched) -> Result<Outcome, Failure> {
    let disk = studio::find(named)?;
    let root = disk.root().to_owned();
    let listener = listen(how.port).map_err(|error| {
        format!("port {} and the next ones cannot be used ({error}); name another with `--port`", how.port)
    })?;
    let port = listener.local_addr()?.port();
    if how.port != 0 && port != how.port {
        terminal::say(&format!(
            "port {} is in use by another program, perhaps another `watch`; here it is {port}\n",
            how.port
        ));
    }
    let hub = Arc::new(Hub::default());
    let cannot_read = |error| format!("cannot read the studio in `{}`: {error}", root.display());
    // The folder is watched before it is read, so that nothing saved meanwhile is missed.
    let (saved, bursts) = std::sync::mpsc::channel();
    let ours = {
        let disk = disk.clone();
        move |path: &Path| disk.is_ours(path)
    };
    let watching = watch_folder(&root, ours, move |burst| {
        let _ = saved.send(burst);
    })
    .map_err(cannot_read)?;
    let live = Arc::new(Live::new(disk.clone(), Arc::clone(&hub), view()).map_err(cannot_read)?);
    let address = format!("http://127.0.0.1:{port}{}", live.home());
    terminal::say(&format!("{}: {}\n", root.display(), terminal::count(&live.findings())));
    terminal::say(&format!(
        "the site is at {address}\nthe desk is at http://127.0.0.1:{port}/desk/\nstop with Ctrl-C\n"
    ));
    let stop = Stop::default();
    on_interrupt({
        let stop = stop.clone();
        move || stop.stop()
    })?;
    let taken = {
        let live = Arc::clone(&live);
        std::thread::Builder::new().name("saves".to_owned()).spawn(move || {
            for burst in bursts {
                take(&live, &disk, &burst);
            }
        })?
    };
    if how.open
        && let Err(why) = browser::open(&address)
    {
        terminal::complain(&why);
    }
    let served = serve(listener, live, hub, &stop);
    // The watcher holds the other end of the saves; without it their thread comes to its end.
    drop(watching);
    let _ = taken.join();
    served?;
    Ok(Outcome::Done)
}

/// How many errors of what was saved are told; the desk has them all.
const ERRORS: usize = 3;

fn view() -> View {
    View { today: today(), eyes: Eyes::Designer }
}

/// Takes in what was saved and says how things stand.
fn take(live: &Live<Disk>, disk: &Disk, burst: &Burst) {
    let changed = Changed::of(burst, |path| disk.name(path));
    match live.change(&changed, view()) {
        Ok(Update::Nothing) => {}
        Ok(_) => {
            let what = match &changed {
                Changed::Files(paths) if paths.len() == 1 => paths.iter().map(ToString::to_string).collect(),
                Changed::Files(paths) => format!("{} files", paths.len()),
                Changed::Anything => "everything".to_owned(),
            };
            terminal::say(&format!("read {what}: {} in all\n", terminal::count(&live.findings())));
            if let Changed::Files(paths) = &changed {
                live.errors_in(paths, ERRORS).iter().for_each(|error| terminal::say(&format!("  {error}\n")));
            }
        }
        Err(error) => terminal::complain(&format!("the studio cannot be read, so the pages stay as they are: {error}")),
    }
}
