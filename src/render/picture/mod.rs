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

mod error;
mod pixels;
mod source;
mod variant;

pub use error::PictureError;
pub use source::{Facts, Source, check_whole, other_colours};
pub use variant::{Format, Variant, digest, variants};

use fast_image_resize::Resizer;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder};
use pixels::{Pixels, jpeg, webp};
use source::{damage, decoder, sniff, turned, whole};

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
