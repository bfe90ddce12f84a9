//! The photo that was given: its format, its size, whether it is whole.

use super::PictureError;
use image::metadata::Orientation;
use image::{ImageDecoder, ImageReader};
use std::io::Cursor;

/// The longest side of a source, in pixels.
pub(super) const LONGEST_SIDE: u32 = 30_000;

/// The largest source, in pixels: a little over what phones make, and 360 MB once read.
pub(super) const MOST_PIXELS: u64 = 120_000_000;

/// The formats understood as a source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Source {
    /// JPEG.
    Jpeg,
    /// PNG; of an animated one, the first picture.
    Png,
    /// WebP; of an animated one, the first picture.
    Webp,
}

/// What is known of a photo from its first bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Facts {
    /// Pixels across, as it is meant to be seen.
    pub width: u32,
    /// Pixels down, as it is meant to be seen.
    pub height: u32,
    /// The format of the source.
    pub format: Source,
}

impl Facts {
    /// Reads a photo's size and format without decoding it.
    ///
    /// # Errors
    /// [`PictureError`] if it is no JPEG, PNG or WebP, is too large, or its first part is damaged.
    pub fn read(bytes: &[u8]) -> Result<Facts, PictureError> {
        let format = sniff(bytes)?;
        let mut decoder = decoder(bytes, format)?;
        let (width, height) = decoder.dimensions();
        let orientation = decoder.orientation().map_err(|error| damage(bytes, format, error))?;
        let (width, height) = turned(orientation, width, height);
        Ok(Facts { width, height, format })
    }
}

/// Whether a photo carries a colour profile other than sRGB, so that its colours will change.
///
/// Goes by the name in the profile, which every maker of sRGB profiles puts there. False for what
/// is no photo.
pub fn other_colours(bytes: &[u8]) -> bool {
    let profile = sniff(bytes)
        .and_then(|format| decoder(bytes, format))
        .ok()
        .and_then(|mut decoder| decoder.icc_profile().ok().flatten());
    // In one byte a letter, or in two as newer profiles have it.
    let names_srgb = |profile: &[u8]| {
        profile.windows(4).any(|part| part == b"sRGB") || profile.windows(7).any(|part| part == b"s\0R\0G\0B")
    };
    profile.is_some_and(|profile| !names_srgb(&profile))
}

/// Tells the format from the first bytes, whatever the file is called.
pub(super) fn sniff(bytes: &[u8]) -> Result<Source, PictureError> {
    if bytes.starts_with(b"\xFF\xD8\xFF") {
        return Ok(Source::Jpeg);
    }
    if bytes.starts_with(b"\x89PNG\r\n\x1A\n") {
        return Ok(Source::Png);
    }
    if bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP".as_slice()) {
        return Ok(Source::Webp);
    }
    let start = bytes.get(..512.min(bytes.len())).unwrap_or_default();
    let holds = |what: &[u8]| start.windows(what.len()).any(|part| part == what);
    Err(match start {
        [] => PictureError::Cut,
        _ if b"\xFF\xD8\xFF".starts_with(start)
            || b"\x89PNG\r\n\x1A\n".starts_with(start)
            || (start.len() < 12 && (b"RIFF".starts_with(start) || start.starts_with(b"RIFF"))) =>
        {
            PictureError::Cut
        }
        _ if start.starts_with(b"GIF8") => PictureError::Format(Some("a GIF")),
        _ if start.starts_with(b"%PDF") => PictureError::Format(Some("a PDF")),
        _ if start.starts_with(b"II*\0") || start.starts_with(b"MM\0*") => {
            PictureError::Format(Some("a TIFF or a camera's raw file"))
        }
        _ if start.get(4..8) == Some(b"ftyp".as_slice()) => {
            PictureError::Format(Some("a HEIC or AVIF photo, or a video"))
        }
        _ if holds(b"<svg") => PictureError::Format(Some("an SVG drawing")),
        _ => PictureError::Format(None),
    })
}

/// A reader that has read the first part and refused a picture that is too large.
pub(super) fn decoder(bytes: &[u8], format: Source) -> Result<impl ImageDecoder, PictureError> {
    let kind = match format {
        Source::Jpeg => image::ImageFormat::Jpeg,
        Source::Png => image::ImageFormat::Png,
        Source::Webp => image::ImageFormat::WebP,
    };
    let mut reader = ImageReader::with_format(Cursor::new(bytes), kind);
    let mut limits = image::Limits::default();
    // At most 8 bytes a pixel, for 16-bit PNG with transparency, and room for the reader's own.
    limits.max_alloc = Some(MOST_PIXELS * 8 + 64 * 1024 * 1024);
    reader.limits(limits);
    let decoder = reader.into_decoder().map_err(|error| damage(bytes, format, error))?;
    let (width, height) = decoder.dimensions();
    let pixels = u64::from(width) * u64::from(height);
    if width > LONGEST_SIDE || height > LONGEST_SIDE || pixels > MOST_PIXELS {
        return Err(PictureError::TooLarge { width, height });
    }
    if pixels == 0 {
        return Err(PictureError::Damaged("it has no pixels".to_owned()));
    }
    Ok(decoder)
}

/// An error of the reader, or that the file was cut short, which explains most of them.
pub(super) fn damage(bytes: &[u8], format: Source, error: image::ImageError) -> PictureError {
    if whole(bytes, format) { PictureError::Damaged(error.to_string()) } else { PictureError::Cut }
}

/// Returns whether a photo is one that can be read and reaches to its own end, without decoding it.
///
/// # Errors
/// [`PictureError`] if it is no photo, or is cut short.
pub fn check_whole(bytes: &[u8]) -> Result<(), PictureError> {
    let format = sniff(bytes)?;
    if whole(bytes, format) { Ok(()) } else { Err(PictureError::Cut) }
}

/// Whether the file reaches to its own end.
///
/// The JPEG reader fills what is missing with grey, which nobody would see before the site is out.
pub(super) fn whole(bytes: &[u8], format: Source) -> bool {
    match format {
        Source::Jpeg => jpeg_is_whole(bytes),
        Source::Png => bytes.windows(4).rev().any(|part| part == b"IEND"),
        Source::Webp => {
            let size = bytes.get(4..8).and_then(|size| size.try_into().ok()).map(u32::from_le_bytes);
            size.is_some_and(|size| bytes.len() as u64 >= u64::from(size) + 8)
        }
    }
}

/// Walks the segments (ITU-T T.81, annex B) to the end-of-image marker.
fn jpeg_is_whole(bytes: &[u8]) -> bool {
    let mut at = 2;
    let mut in_scan = false;
    loop {
        match (bytes.get(at), bytes.get(at + 1)) {
            (Some(0xFF), Some(0xD9)) => return true,
            // A fill byte, or in a scan a stuffed byte or a restart marker.
            (Some(0xFF), Some(0xFF)) => at += 1,
            (Some(0xFF), Some(0x00 | 0xD0..=0xD7)) if in_scan => at += 2,
            (Some(0xFF), Some(marker)) => {
                let (Some(high), Some(low)) = (bytes.get(at + 2), bytes.get(at + 3)) else {
                    return false;
                };
                in_scan = *marker == 0xDA;
                at += 2 + usize::from(u16::from_be_bytes([*high, *low]));
            }
            (Some(_), Some(_)) => at += 1,
            _ => return false,
        }
    }
}

/// Width and height as seen, from those stored; and the other way round, which is the same.
pub(super) fn turned(orientation: Orientation, width: u32, height: u32) -> (u32, u32) {
    match orientation {
        Orientation::Rotate90 | Orientation::Rotate270 | Orientation::Rotate90FlipH | Orientation::Rotate270FlipH => {
            (height, width)
        }
        _ => (width, height),
    }
}
