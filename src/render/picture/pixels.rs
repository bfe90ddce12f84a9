//! A photo's pixels, made smaller and written as a file.

use super::PictureError;
use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{FilterType, PixelType, ResizeAlg, ResizeOptions, Resizer};
use image::metadata::Orientation;
use image::{DynamicImage, RgbImage, RgbaImage};
use std::fmt;

const JPEG_QUALITY: u8 = 80;

const WEBP_QUALITY: f32 = 78.0;

/// How hard the WebP encoder tries, of 0 to 6.
const WEBP_METHOD: i32 = 4;

/// Decoded pixels, eight bits a channel.
pub(super) enum Pixels {
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
    pub(super) fn resized(&self, resizer: &mut Resizer, width: u32, height: u32) -> Result<Pixels, PictureError> {
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

    pub(super) fn turned(self, orientation: Orientation) -> Result<Pixels, PictureError> {
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

pub(super) fn jpeg(pixels: &Pixels) -> Result<Vec<u8>, PictureError> {
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

pub(super) fn webp(pixels: &Pixels) -> Result<Vec<u8>, PictureError> {
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
