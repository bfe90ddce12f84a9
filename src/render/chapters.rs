//! The chapters of a video as a file for players: WebVTT (W3C).

use crate::entry::value::VideoTime;
use crate::page::Cue;

/// Returns chapters as WebVTT: a cue each, which ends where the next begins.
///
/// `&`, `<` and `>` in a title are escaped, so that neither a tag nor the arrow of a time can be read in it.
pub fn to_vtt(cues: &[Cue]) -> String {
    let mut out = String::from("WEBVTT\n");
    for cue in cues {
        let title = cue.title.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
        let title: Vec<&str> = title.split_whitespace().collect();
        out.push_str(&format!("\n{} --> {}\n{}\n", stamp(cue.from), stamp(cue.to), title.join(" ")));
    }
    out
}

/// Returns a time as WebVTT has it: hours of two digits or more, and thousandths.
fn stamp(time: VideoTime) -> String {
    let seconds = time.seconds;
    format!("{:02}:{:02}:{:02}.000", seconds / 3600, seconds / 60 % 60, seconds % 60)
}
