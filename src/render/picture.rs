//! Photos: from the bytes the designer gave to the smaller ones the site shows.
//!
//! Everything is made anew from pixels, so nothing of the camera's notes (place, time, owner, a
//! preview of what was cut off) can come through. A photo turned in its notes is turned for good,
//! after it was made smaller, which is six times less work.
//!
//! Sizes are changed on the stored values, not on light. Working on light takes wider numbers and
//! twice the time, and what it gains shows only in textures of single pixels; everything a reader
//! compares a photo with is resized as we do. The filter is Catmull-Rom: sharper ones draw pale
//! edges round dark stitches.
//!
//! A colour profile is not applied and is dropped with the other notes, so every output is read
//! as sRGB. For a photo already in sRGB, or without a profile, that is exact. One in a wider space
//! comes out a little duller; [`other_colours`] lets the caller say so.

use std::fmt;
use std::io::Cursor;

use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageReader, RgbImage, RgbaImage};
use xxhash_rust::xxh3::xxh3_128;

/// Changes whenever the same source would give other bytes, so that old results are not kept.
const RECIPE: u32 = 1;
/// The widths a photo is made in, in pixels, for a phone, a column and a large screen.
const WIDTHS: [u32; 3] = [480, 960, 1600];
const JPEG_QUALITY: u8 = 80;
const WEBP_QUALITY: f32 = 78.0;
/// How hard the WebP encoder tries, of 0 to 6.
const WEBP_METHOD: i32 = 4;
/// The longest side of a source, in pixels.
const LONGEST_SIDE: u32 = 30_000;
/// The largest source, in pixels: a little over what phones make, and 360 MB once read.
const MOST_PIXELS: u64 = 120_000_000;
/// The longest side a WebP file can have, in pixels.
const WEBP_SIDE: u32 = 16_383;

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

/// The formats made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Format {
    /// WebP, lossy; transparency is kept.
    Webp,
    /// JPEG; what was transparent becomes white.
    Jpeg,
}

impl Format {
    /// The usual ending of a file's name, without the dot.
    pub fn extension(self) -> &'static str {
        match self {
            Format::Webp => "webp",
            Format::Jpeg => "jpg",
        }
    }
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

/// One of the pictures made from a photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Variant {
    /// Pixels across.
    pub width: u32,
    /// Pixels down, in the photo's proportion, to the nearest pixel and at least one.
    pub height: u32,
    /// Its format.
    pub format: Format,
}

/// Why a photo cannot be used.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PictureError {
    /// It is none of the formats understood; holds the name of what it is, if that is plain.
    Format(Option<&'static str>),
    /// It has more pixels than can be read in reasonable memory.
    TooLarge {
        /// Pixels across, as stored.
        width: u32,
        /// Pixels down, as stored.
        height: u32,
    },
    /// It ends before the picture does.
    Cut,
    /// It cannot be read; holds what the reader said.
    Damaged(String),
    /// What was asked for cannot be made of it; holds why.
    Variant(String),
}

impl fmt::Display for PictureError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PictureError::Format(None) => {
                f.write_str("this is not a photo ballband can read: JPEG, PNG and WebP are understood")
            }
            PictureError::Format(Some(name)) => {
                write!(f, "this is {name}: JPEG, PNG and WebP are understood")
            }
            PictureError::TooLarge { width, height } => write!(
                f,
                "the photo is {width} by {height} pixels, more than the {} million pixels or {LONGEST_SIDE} on a side that can be read: save a smaller one",
                MOST_PIXELS / 1_000_000
            ),
            PictureError::Cut => f.write_str("the file ends before the picture does: copy or save it again"),
            PictureError::Damaged(why) => {
                write!(f, "the file is damaged ({why}): copy or save it again")
            }
            PictureError::Variant(why) => f.write_str(why),
        }
    }
}

impl std::error::Error for PictureError {}

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

impl Variant {
    /// The digest of everything this picture's bytes depend on.
    ///
    /// Takes the [`digest`] of the source, so that a source is read through but once.
    pub fn digest(&self, source: u128) -> u128 {
        let mut all = Vec::with_capacity(32);
        all.extend_from_slice(&source.to_le_bytes());
        for number in [RECIPE, self.width, self.height, self.format as u32] {
            all.extend_from_slice(&number.to_le_bytes());
        }
        xxh3_128(&all)
    }
}

/// The digest of a source's bytes (XXH3, 128 bits; tells changes, is no defence).
pub fn digest(bytes: &[u8]) -> u128 {
    xxh3_128(bytes)
}

/// The pictures to make of a photo: three widths in two formats, the smallest first.
///
/// None is wider than the photo, and one narrower than the least width gives just its own. A strip
/// that would be taller than WebP allows, 16,383 pixels, is made narrower.
pub fn variants(facts: &Facts) -> Vec<Variant> {
    let tallest = u64::from(WEBP_SIDE) * u64::from(facts.width) / u64::from(facts.height.max(1));
    let widest = u32::try_from(tallest).unwrap_or(u32::MAX).min(facts.width).max(1);
    let mut widths: Vec<u32> = WIDTHS.into_iter().filter(|width| *width <= widest).collect();
    if widths.is_empty() {
        widths.push(widest);
    }
    widths
        .into_iter()
        .flat_map(|width| {
            let height = in_proportion(width, facts);
            [Format::Webp, Format::Jpeg].map(|format| Variant { width, height, format })
        })
        .collect()
}

fn in_proportion(width: u32, facts: &Facts) -> u32 {
    let whole = u64::from(facts.width.max(1));
    let height = (u64::from(facts.height) * u64::from(width) + whole / 2) / whole;
    u32::try_from(height).unwrap_or(u32::MAX).clamp(1, WEBP_SIDE)
}

/// Makes one picture of a photo.
///
/// # Errors
/// As [`make`].
pub fn make_one(bytes: &[u8], variant: Variant) -> Result<Vec<u8>, PictureError> {
    let made = make(bytes, &[variant])?;
    made.into_iter().next().ok_or_else(|| PictureError::Variant("no picture was made".to_owned()))
}

/// Makes pictures of a photo, decoding it once; in the order asked.
///
/// The bytes of one picture do not depend on which others are asked for, nor on threads. Works on
/// the calling thread alone and holds the decoded photo while it does: 36 MB for 12 megapixels.
///
/// # Errors
/// [`PictureError`] if the photo cannot be read whole, or a variant is larger than the photo.
pub fn make(bytes: &[u8], variants: &[Variant]) -> Result<Vec<Vec<u8>>, PictureError> {
    let format = sniff(bytes)?;
    let mut decoder = decoder(bytes, format)?;
    if !whole(bytes, format) {
        return Err(PictureError::Cut);
    }
    let orientation = decoder.orientation().map_err(|error| damage(bytes, format, error))?;
    let picture = DynamicImage::from_decoder(decoder).map_err(|error| damage(bytes, format, error))?;
    let (width, height) = turned(orientation, picture.width(), picture.height());
    if let Some(variant) =
        variants.iter().find(|v| v.width == 0 || v.height == 0 || v.width > width || v.height > height)
    {
        return Err(PictureError::Variant(format!(
            "a picture of {} by {} pixels cannot be made of one of {width} by {height}",
            variant.width, variant.height
        )));
    }

    let facts = Facts { width, height, format };
    let mut resizer = Resizer::new();
    let base = base(&mut resizer, Pixels::from(picture), orientation, &facts)?;

    let mut sized: Option<((u32, u32), Pixels)> = None;
    let mut made = Vec::with_capacity(variants.len());
    for variant in variants {
        let size = (variant.width, variant.height);
        if sized.as_ref().is_none_or(|(last, _)| *last != size) {
            let (width, height) = turned(orientation, size.0, size.1);
            let small = base.resized(&mut resizer, width, height)?;
            sized = Some((size, small.turned(orientation)?));
        }
        if let Some((_, pixels)) = &sized {
            made.push(match variant.format {
                Format::Jpeg => jpeg(pixels)?,
                Format::Webp => webp(pixels)?,
            });
        }
    }
    Ok(made)
}

/// The photo at the largest width made, from which the smaller ones are made in a third of the
/// time. Always by way of this size, whichever are asked for, so that each has the same bytes.
fn base(
    resizer: &mut Resizer,
    pixels: Pixels,
    orientation: Orientation,
    facts: &Facts,
) -> Result<Pixels, PictureError> {
    let Some(largest) = self::variants(facts).last().copied() else { return Ok(pixels) };
    let (width, height) = turned(orientation, largest.width, largest.height);
    pixels.resized(resizer, width, height)
}

/// Tells the format from the first bytes, whatever the file is called.
fn sniff(bytes: &[u8]) -> Result<Source, PictureError> {
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
fn decoder(bytes: &[u8], format: Source) -> Result<impl ImageDecoder, PictureError> {
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
fn damage(bytes: &[u8], format: Source, error: image::ImageError) -> PictureError {
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
fn whole(bytes: &[u8], format: Source) -> bool {
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
fn turned(orientation: Orientation, width: u32, height: u32) -> (u32, u32) {
    match orientation {
        Orientation::Rotate90 | Orientation::Rotate270 | Orientation::Rotate90FlipH | Orientation::Rotate270FlipH => {
            (height, width)
        }
        _ => (width, height),
    }
}

/// Decoded pixels, eight bits a channel.
enum Pixels {
    Opaque(RgbImage),
    /// With transparency that is used.
    Clear(RgbaImage),
}

impl From<DynamicImage> for Pixels {
    fn from(picture: DynamicImage) -> Pixels {
        if !picture.color().has_alpha() {
            return Pixels::Opaque(picture.into_rgb8());
        }
        let clear = picture.into_rgba8();
        if clear.pixels().all(|pixel| pixel.0[3] == u8::MAX) {
            Pixels::Opaque(DynamicImage::ImageRgba8(clear).into_rgb8())
        } else {
            Pixels::Clear(clear)
        }
    }
}

impl Pixels {
    fn resized(&self, resizer: &mut Resizer, width: u32, height: u32) -> Result<Pixels, PictureError> {
        let failed = |error: &dyn fmt::Display| PictureError::Variant(error.to_string());
        let (from, kind) = match self {
            Pixels::Opaque(image) => {
                (ImageRef::new(image.width(), image.height(), image.as_raw(), PixelType::U8x3), PixelType::U8x3)
            }
            Pixels::Clear(image) => {
                (ImageRef::new(image.width(), image.height(), image.as_raw(), PixelType::U8x4), PixelType::U8x4)
            }
        };
        let from = from.map_err(|error| failed(&error))?;
        let mut to = Image::new(width, height, kind);
        let options = ResizeOptions::new().resize_alg(ResizeAlg::Convolution(FilterType::CatmullRom));
        resizer.resize(&from, &mut to, &options).map_err(|error| failed(&error))?;
        let short = || failed(&"the resized picture has the wrong length");
        let raw = to.into_vec();
        Ok(match self {
            Pixels::Opaque(_) => Pixels::Opaque(RgbImage::from_raw(width, height, raw).ok_or_else(short)?),
            Pixels::Clear(_) => Pixels::Clear(RgbaImage::from_raw(width, height, raw).ok_or_else(short)?),
        })
    }

    fn turned(self, orientation: Orientation) -> Result<Pixels, PictureError> {
        let mut picture = match self {
            Pixels::Opaque(image) => DynamicImage::ImageRgb8(image),
            Pixels::Clear(image) => DynamicImage::ImageRgba8(image),
        };
        picture.apply_orientation(orientation);
        match picture {
            DynamicImage::ImageRgb8(image) => Ok(Pixels::Opaque(image)),
            DynamicImage::ImageRgba8(image) => Ok(Pixels::Clear(image)),
            _ => Err(PictureError::Variant("turning changed the kind of pixel".to_owned())),
        }
    }
}

fn jpeg(pixels: &Pixels) -> Result<Vec<u8>, PictureError> {
    let over_white;
    let image = match pixels {
        Pixels::Opaque(image) => image,
        Pixels::Clear(image) => {
            over_white = on_white(image);
            &over_white
        }
    };
    let side = |side: u32| u16::try_from(side).map_err(|_| PictureError::Variant("too large for JPEG".to_owned()));
    let (width, height) = (side(image.width())?, side(image.height())?);
    let mut out = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut out, JPEG_QUALITY);
    encoder.set_progressive(true);
    encoder.set_optimized_huffman_tables(true);
    encoder
        .encode(image.as_raw(), width, height, jpeg_encoder::ColorType::Rgb)
        .map_err(|error| PictureError::Variant(error.to_string()))?;
    Ok(out)
}

fn on_white(image: &RgbaImage) -> RgbImage {
    let mut white = RgbImage::new(image.width(), image.height());
    for (to, from) in white.pixels_mut().zip(image.pixels()) {
        let [red, green, blue, alpha] = from.0;
        let mix = |value: u8| {
            let (value, alpha) = (u32::from(value), u32::from(alpha));
            // Never over 255, as the two weights add up to 255.
            ((value * alpha + 255 * (255 - alpha) + 127) / 255) as u8
        };
        to.0 = [mix(red), mix(green), mix(blue)];
    }
    white
}

fn webp(pixels: &Pixels) -> Result<Vec<u8>, PictureError> {
    let refused = || PictureError::Variant("the WebP encoder refused the picture".to_owned());
    let mut config = webp::WebPConfig::new().map_err(|()| refused())?;
    config.quality = WEBP_QUALITY;
    config.method = WEBP_METHOD;
    let encoder = match pixels {
        Pixels::Opaque(image) => webp::Encoder::from_rgb(image.as_raw(), image.width(), image.height()),
        Pixels::Clear(image) => webp::Encoder::from_rgba(image.as_raw(), image.width(), image.height()),
    };
    encoder
        .encode_advanced(&config)
        .map(|memory| memory.to_vec())
        .map_err(|error| PictureError::Variant(format!("the WebP encoder refused the picture ({error:?})")))
}
