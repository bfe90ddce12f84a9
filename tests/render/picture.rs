//! Photos: what is made of them, and what never comes through.

use ballband::render::picture::{
    Facts, Format, PictureError, Source, Variant, digest, make, make_one, other_colours, variants,
};
use image::codecs::jpeg::JpegEncoder;
use image::{DynamicImage, ImageEncoder, ImageFormat, Rgb, RgbImage, Rgba, RgbaImage};
use proptest::prelude::*;

/// A picture whose corners differ, with enough in it to tell a turn from a flip.
fn scene(width: u32, height: u32) -> RgbImage {
    RgbImage::from_fn(width, height, |x, y| {
        let wave = ((x * 7 + y * 3) % 32) as u8;
        match (x < width / 2, y < height / 2) {
            (true, true) => Rgb([200, 40 + wave, 40]),
            (false, true) => Rgb([40, 180, 60 + wave]),
            (true, false) => Rgb([50 + wave, 60, 190]),
            (false, false) => Rgb([220, 210, 60 + wave]),
        }
    })
}

fn as_jpeg(image: &RgbImage) -> Vec<u8> {
    let mut out = Vec::new();
    JpegEncoder::new_with_quality(&mut out, 95).encode_image(image).unwrap();
    out
}

fn encoded(image: &DynamicImage, format: ImageFormat) -> Vec<u8> {
    let mut out = std::io::Cursor::new(Vec::new());
    image.write_to(&mut out, format).unwrap();
    out.into_inner()
}

fn as_png(image: &RgbImage) -> Vec<u8> {
    encoded(&DynamicImage::ImageRgb8(image.clone()), ImageFormat::Png)
}

/// One entry of a TIFF directory, big-endian.
fn entry(tag: u16, kind: u16, count: u32, value: [u8; 4]) -> Vec<u8> {
    let mut out = Vec::new();
    out.extend(tag.to_be_bytes());
    out.extend(kind.to_be_bytes());
    out.extend(count.to_be_bytes());
    out.extend(value);
    out
}

/// An Exif block (TIFF, big-endian) with an orientation, a camera's name and a place.
fn exif(orientation: u8) -> Vec<u8> {
    let mut tiff = b"MM\0\x2A\0\0\0\x08".to_vec();
    // The first directory has 3 entries and ends at 8 + 2 + 36 + 4 = 50; the place follows.
    tiff.extend(3u16.to_be_bytes());
    tiff.extend(entry(0x010F, 2, 4, *b"Cam\0"));
    tiff.extend(entry(0x0112, 3, 1, [0, orientation, 0, 0]));
    tiff.extend(entry(0x8825, 4, 1, 50u32.to_be_bytes()));
    tiff.extend(0u32.to_be_bytes());
    // The place: 2 entries, ends at 50 + 2 + 24 + 4 = 80; the degrees follow.
    tiff.extend(2u16.to_be_bytes());
    tiff.extend(entry(0x0001, 2, 2, *b"N\0\0\0"));
    tiff.extend(entry(0x0002, 5, 3, 80u32.to_be_bytes()));
    tiff.extend(0u32.to_be_bytes());
    for number in [57u32, 1, 29, 1, 1234, 100] {
        tiff.extend(number.to_be_bytes());
    }
    tiff
}

/// A JPEG with segments put after its first marker.
fn with_segments(jpeg: &[u8], segments: &[(u8, Vec<u8>)]) -> Vec<u8> {
    let mut out = jpeg[..2].to_vec();
    for (marker, body) in segments {
        out.extend([0xFF, *marker]);
        out.extend((body.len() as u16 + 2).to_be_bytes());
        out.extend(body);
    }
    out.extend(&jpeg[2..]);
    out
}

fn with_exif(jpeg: &[u8], orientation: u8) -> Vec<u8> {
    let body = [b"Exif\0\0".to_vec(), exif(orientation)].concat();
    with_segments(jpeg, &[(0xE1, body)])
}

fn holds(bytes: &[u8], what: &[u8]) -> bool {
    bytes.windows(what.len()).any(|part| part == what)
}

fn pixels(bytes: &[u8]) -> RgbImage {
    image::load_from_memory(bytes).unwrap().into_rgb8()
}

/// The mean difference of a channel between two pictures of one size.
fn difference(a: &RgbImage, b: &RgbImage) -> f64 {
    assert_eq!(a.dimensions(), b.dimensions());
    let sum: u64 = a.as_raw().iter().zip(b.as_raw()).map(|(a, b)| u64::from(a.abs_diff(*b))).sum();
    sum as f64 / a.as_raw().len() as f64
}

fn widths(width: u32, height: u32) -> Vec<(u32, u32, Format)> {
    let facts = Facts { width, height, format: Source::Jpeg };
    variants(&facts).into_iter().map(|v| (v.width, v.height, v.format)).collect()
}

#[test]
fn three_widths_in_two_formats_and_none_wider_than_the_photo() {
    use Format::{Jpeg, Webp};
    assert_eq!(
        widths(4000, 3000),
        [
            (480, 360, Webp),
            (480, 360, Jpeg),
            (960, 720, Webp),
            (960, 720, Jpeg),
            (1600, 1200, Webp),
            (1600, 1200, Jpeg)
        ]
    );
    assert_eq!(widths(1600, 1).len(), 6);
    assert_eq!(widths(1599, 1000).len(), 4);
    assert_eq!(widths(480, 481), [(480, 481, Webp), (480, 481, Jpeg)]);
    assert_eq!(widths(479, 10), [(479, 10, Webp), (479, 10, Jpeg)]);
    assert_eq!(widths(1, 1), [(1, 1, Webp), (1, 1, Jpeg)]);
}

#[test]
fn a_height_is_rounded_to_the_nearest_pixel_and_is_never_none() {
    assert_eq!(widths(1000, 701)[0].1, 336); // 336.48
    assert_eq!(widths(1000, 702)[0].1, 337); // 336.96
    assert_eq!(widths(30_000, 1)[0].1, 1);
    // A strip 30,000 high would at 480 pixels be 14,400 high, at 960 more than WebP allows.
    assert_eq!(widths(1000, 30_000), [(480, 14_400, Format::Webp), (480, 14_400, Format::Jpeg)]);
    assert_eq!(widths(100, 30_000)[0], (54, 16_200, Format::Webp));
}

#[test]
fn facts_are_read_for_each_format() {
    let image = scene(60, 40);
    let whole = DynamicImage::ImageRgb8(image.clone());
    for (bytes, format) in [
        (as_jpeg(&image), Source::Jpeg),
        (as_png(&image), Source::Png),
        (encoded(&whole, ImageFormat::WebP), Source::Webp),
    ] {
        let facts = Facts { width: 60, height: 40, format };
        assert_eq!(Facts::read(&bytes), Ok(facts));
        assert_eq!(make(&bytes, &variants(&facts)).unwrap().len(), 2);
    }
}

#[test]
fn what_is_made_is_of_the_size_and_format_asked() {
    let bytes = as_jpeg(&scene(2000, 1500));
    let wanted = variants(&Facts::read(&bytes).unwrap());
    assert_eq!(wanted.len(), 6);
    for (variant, made) in wanted.iter().zip(make(&bytes, &wanted).unwrap()) {
        let format = match variant.format {
            Format::Webp => ImageFormat::WebP,
            Format::Jpeg => ImageFormat::Jpeg,
        };
        assert_eq!(image::guess_format(&made).unwrap(), format);
        let seen = pixels(&made);
        assert_eq!(seen.dimensions(), (variant.width, variant.height));
        let expected = image::imageops::resize(
            &pixels(&bytes),
            variant.width,
            variant.height,
            image::imageops::FilterType::CatmullRom,
        );
        let off = difference(&seen, &expected);
        assert!(off < 6.0, "{variant:?} is off by {off}");
    }
}

#[test]
fn every_orientation_gives_the_same_picture() {
    let upright = scene(600, 400);
    let expected = make(&as_jpeg(&upright), &variants(&Facts::read(&as_jpeg(&upright)).unwrap()));
    let expected: Vec<RgbImage> = expected.unwrap().iter().map(|made| pixels(made)).collect();
    let whole = DynamicImage::ImageRgb8(upright);
    // For each value of the Exif tag, the picture as a camera would store it (Exif 2.32, 4.6.4).
    let stored = [
        (1, whole.clone()),
        (2, whole.fliph()),
        (3, whole.rotate180()),
        (4, whole.flipv()),
        (5, whole.rotate90().fliph()),
        (6, whole.rotate270()),
        (7, whole.rotate270().fliph()),
        (8, whole.rotate90()),
    ];
    for (orientation, stored) in stored {
        let bytes = with_exif(&as_jpeg(&stored.into_rgb8()), orientation);
        let facts = Facts::read(&bytes).unwrap();
        assert_eq!((facts.width, facts.height), (600, 400), "orientation {orientation}");
        let made = make(&bytes, &variants(&facts)).unwrap();
        for (made, expected) in made.iter().zip(&expected) {
            let off = difference(&pixels(made), expected);
            assert!(off < 4.0, "orientation {orientation} is off by {off}");
        }
    }
}

#[test]
fn a_wrong_turn_would_be_seen_by_the_test_above() {
    let upright = scene(600, 400);
    let turned = DynamicImage::ImageRgb8(upright.clone()).rotate180().into_rgb8();
    assert!(difference(&upright, &turned) > 40.0);
}

#[test]
fn nothing_of_the_cameras_notes_comes_through() {
    let xmp = b"http://ns.adobe.com/xap/1.0/\0<x:xmpmeta>at home</x:xmpmeta>".to_vec();
    let icc = [b"ICC_PROFILE\0\x01\x01".to_vec(), vec![7; 200]].concat();
    let iptc = b"Photoshop 3.0\x008BIM\x04\x04\0\0\0\0\0\x08by-line ".to_vec();
    let plain = as_jpeg(&scene(500, 300));
    let bytes = with_segments(
        &with_exif(&plain, 1),
        &[(0xE1, xmp), (0xE2, icc), (0xED, iptc), (0xFE, b"taken at home".to_vec())],
    );
    let facts = Facts::read(&bytes).unwrap();
    let made = make(&bytes, &variants(&facts)).unwrap();
    assert_eq!(made.len(), 2);
    for made in &made {
        for word in [
            &b"Exif"[..],
            b"EXIF",
            b"MM\0\x2A",
            b"II\x2A\0",
            b"GPS",
            b"Cam\0",
            b"xmpmeta",
            b"XMP ",
            b"ICC_PROFILE",
            b"ICCP",
            b"Photoshop",
            b"8BIM",
            b"at home",
        ] {
            assert!(holds(&bytes, word) || word.len() < 7, "the source has no {word:?}");
            assert!(!holds(made, word), "{:?} came through", String::from_utf8_lossy(word));
        }
        // The same pixels without notes give the same bytes, so there is nothing else either.
        assert!(make(&plain, &variants(&facts)).unwrap().contains(made));
    }
}

#[test]
fn a_profile_that_is_not_srgb_is_noticed() {
    let plain = as_jpeg(&scene(40, 30));
    let with = |name: &[u8]| {
        // A profile is at least 128 bytes of header; its name comes after.
        let body = [b"ICC_PROFILE\0\x01\x01", &[0; 128][..], name].concat();
        with_segments(&plain, &[(0xE2, body)])
    };
    assert!(!other_colours(&plain));
    assert!(!other_colours(b"no photo"));
    assert!(!other_colours(&with(b"sRGB IEC61966-2.1")));
    assert!(!other_colours(&with(b"\0s\0R\0G\0B\0 \0b")));
    assert!(other_colours(&with(b"\0D\0i\0s\0p\0l\0a\0y\0 \0P\x003")));
}

#[test]
fn a_jpeg_made_has_no_segments_but_those_that_draw_it() {
    let bytes = with_exif(&as_jpeg(&scene(500, 300)), 6);
    let facts = Facts::read(&bytes).unwrap();
    let wanted = Variant { format: Format::Jpeg, ..variants(&facts)[0] };
    let made = make_one(&bytes, wanted).unwrap();
    let mut at = 2;
    let mut markers = Vec::new();
    while made[at + 1] != 0xDA {
        markers.push(made[at + 1]);
        at += 2 + usize::from(u16::from_be_bytes([made[at + 2], made[at + 3]]));
    }
    // JFIF's own header, tables, and the frame.
    let allowed = [0xE0, 0xDB, 0xC0, 0xC2, 0xC4, 0xDD];
    assert!(markers.iter().all(|marker| allowed.contains(marker)), "{markers:02X?}");
    assert_eq!(markers.iter().filter(|marker| **marker == 0xE0).count(), 1);
}

/// Clear on the left, half clear in the middle, red on the right.
fn clear_png() -> Vec<u8> {
    let image = RgbaImage::from_fn(300, 100, |x, _| match x / 100 {
        0 => Rgba([0, 0, 0, 0]),
        1 => Rgba([255, 0, 0, 128]),
        _ => Rgba([255, 0, 0, 255]),
    });
    encoded(&DynamicImage::ImageRgba8(image), ImageFormat::Png)
}

fn near(seen: &[u8], expected: &[u8]) -> bool {
    seen.iter().zip(expected).all(|(a, b)| a.abs_diff(*b) <= 12)
}

#[test]
fn what_is_clear_is_white_in_jpeg_and_clear_in_webp() {
    let bytes = clear_png();
    let wanted = variants(&Facts::read(&bytes).unwrap());
    let made = make(&bytes, &wanted).unwrap();
    for (variant, made) in wanted.iter().zip(&made) {
        let seen = image::load_from_memory(made).unwrap();
        match variant.format {
            Format::Jpeg => {
                let seen = seen.into_rgb8();
                assert!(near(&seen.get_pixel(50, 50).0, &[255, 255, 255]));
                assert!(near(&seen.get_pixel(150, 50).0, &[255, 127, 127]));
                assert!(near(&seen.get_pixel(250, 50).0, &[255, 0, 0]));
            }
            Format::Webp => {
                assert!(seen.color().has_alpha());
                let seen = seen.into_rgba8();
                assert_eq!(seen.get_pixel(50, 50).0[3], 0);
                assert!(near(&seen.get_pixel(150, 50).0, &[255, 0, 0, 128]));
                assert!(near(&seen.get_pixel(250, 50).0, &[255, 0, 0, 255]));
            }
        }
    }
}

#[test]
fn a_png_whose_transparency_is_not_used_is_made_as_any_other() {
    let image = scene(200, 100);
    let clear = DynamicImage::ImageRgb8(image.clone()).into_rgba8();
    let clear = encoded(&DynamicImage::ImageRgba8(clear), ImageFormat::Png);
    let wanted = variants(&Facts::read(&clear).unwrap());
    assert_eq!(make(&clear, &wanted), make(&as_png(&image), &wanted));
}

#[test]
fn grey_and_sixteen_bit_pictures_are_read() {
    let whole = DynamicImage::ImageRgb8(scene(200, 100));
    for image in [
        DynamicImage::ImageLuma8(whole.to_luma8()),
        DynamicImage::ImageLumaA8(whole.to_luma_alpha8()),
        DynamicImage::ImageRgb16(whole.to_rgb16()),
        DynamicImage::ImageRgba16(whole.to_rgba16()),
    ] {
        let kind = image.color();
        let bytes = encoded(&image, ImageFormat::Png);
        for made in make(&bytes, &variants(&Facts::read(&bytes).unwrap())).unwrap() {
            let off = difference(&pixels(&made), &image.to_rgb8());
            assert!(off < 8.0, "{kind:?} is off by {off}");
        }
    }
    let mut grey = Vec::new();
    JpegEncoder::new(&mut grey).write_image(whole.to_luma8().as_raw(), 200, 100, image::ExtendedColorType::L8).unwrap();
    assert_eq!(make(&grey, &variants(&Facts::read(&grey).unwrap())).unwrap().len(), 2);
}

#[test]
fn the_same_photo_gives_the_same_bytes_whatever_else_is_asked() {
    let bytes = as_jpeg(&scene(1700, 900));
    let wanted = variants(&Facts::read(&bytes).unwrap());
    let together = make(&bytes, &wanted).unwrap();
    assert_eq!(make(&bytes, &wanted).unwrap(), together);
    for (variant, made) in wanted.iter().zip(&together) {
        assert_eq!(&make_one(&bytes, *variant).unwrap(), made, "{variant:?}");
    }
    let backwards: Vec<Variant> = wanted.iter().rev().copied().collect();
    let mut again = make(&bytes, &backwards).unwrap();
    again.reverse();
    assert_eq!(again, together);
}

#[test]
fn a_digest_differs_for_each_variant_and_each_source() {
    let wanted: Vec<Variant> = variants(&Facts { width: 2000, height: 1000, format: Source::Jpeg });
    let mut all: Vec<u128> = wanted.iter().map(|variant| variant.digest(digest(b"one"))).collect();
    all.extend(wanted.iter().map(|variant| variant.digest(digest(b"two"))));
    all.sort_unstable();
    all.dedup();
    assert_eq!(all.len(), 12);
}

/// A PNG that claims a size and holds nothing; the checksums are right.
fn hollow_png(width: u32, height: u32) -> Vec<u8> {
    let mut header = b"IHDR".to_vec();
    header.extend(width.to_be_bytes());
    header.extend(height.to_be_bytes());
    header.extend([8, 6, 0, 0, 0]);
    let mut out = b"\x89PNG\r\n\x1A\n".to_vec();
    for body in [header, b"IDAT".to_vec(), b"IEND".to_vec()] {
        out.extend((body.len() as u32 - 4).to_be_bytes());
        out.extend(&body);
        out.extend(crc(&body).to_be_bytes());
    }
    out
}

/// The checksum of PNG (ISO 3309).
fn crc(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(!0, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| if crc & 1 == 1 { 0xEDB8_8320 ^ (crc >> 1) } else { crc >> 1 })
    })
}

#[test]
fn a_picture_that_claims_to_be_huge_is_refused_before_it_is_read() {
    let error = Facts::read(&hollow_png(60_000, 60_000)).unwrap_err();
    assert_eq!(error, PictureError::TooLarge { width: 60_000, height: 60_000 });
    assert!(error.to_string().contains("60000 by 60000 pixels"), "{error}");
    assert!(matches!(make(&hollow_png(60_000, 60_000), &[]), Err(PictureError::TooLarge { .. })));
    assert!(matches!(Facts::read(&hollow_png(12_001, 10_000)), Err(PictureError::TooLarge { .. })));
    assert!(Facts::read(&hollow_png(12_000, 10_000)).is_ok());
    assert!(matches!(Facts::read(&hollow_png(30_001, 1)), Err(PictureError::TooLarge { .. })));

    // A JPEG's size stands in its frame header, five bytes after the marker.
    let mut jpeg = as_jpeg(&scene(16, 16));
    let frame = jpeg.windows(2).position(|pair| pair == [0xFF, 0xC0]).unwrap();
    jpeg[frame + 5..frame + 9].copy_from_slice(&[0xEA, 0x60, 0xEA, 0x60]);
    let error = Facts::read(&jpeg).unwrap_err();
    assert_eq!(error, PictureError::TooLarge { width: 60_000, height: 60_000 });
}

#[test]
fn other_files_are_named_and_the_formats_that_are_read_too() {
    for (bytes, what) in [
        (&b"<?xml version=\"1.0\"?><svg xmlns=\"http://www.w3.org/2000/svg\"/>"[..], "an SVG"),
        (b"GIF89a\x01\0\x01\0", "a GIF"),
        (b"\0\0\0\x18ftypheic\0\0\0\0", "a HEIC"),
        (b"II*\0\x08\0\0\0", "a TIFF"),
        (b"%PDF-1.7", "a PDF"),
        (b"just some words that are no photo", "not a photo"),
    ] {
        for error in [Facts::read(bytes).unwrap_err(), make(bytes, &[]).unwrap_err()] {
            let said = error.to_string();
            assert!(said.contains(what), "{said}");
            assert!(said.contains("JPEG, PNG and WebP are understood"), "{said}");
        }
    }
    assert_eq!(Facts::read(b""), Err(PictureError::Cut));
}

#[test]
fn a_photo_cut_short_anywhere_is_an_error_that_says_so() {
    let image = scene(120, 80);
    let whole = DynamicImage::ImageRgb8(image.clone());
    let progressive = {
        let facts = Facts { width: 120, height: 80, format: Source::Png };
        make(&as_png(&image), &variants(&facts)).unwrap().swap_remove(1)
    };
    for bytes in [
        as_jpeg(&image),
        with_exif(&as_jpeg(&image), 6),
        progressive,
        as_png(&image),
        encoded(&whole, ImageFormat::WebP),
    ] {
        let wanted = [Variant { width: 60, height: 40, format: Format::Jpeg }];
        assert!(make(&bytes, &wanted).is_ok());
        // A PNG is whole without the last checksum.
        let last = if bytes.starts_with(b"\x89PNG") { bytes.len() - 4 } else { bytes.len() };
        for end in 0..last {
            let error = make(&bytes[..end], &wanted).unwrap_err();
            assert_eq!(error, PictureError::Cut, "{end} of {}", bytes.len());
        }
    }
}

#[test]
fn a_jpeg_with_something_after_its_end_is_read() {
    let mut bytes = as_jpeg(&scene(60, 40));
    bytes.extend(b"a short film that the telephone put here");
    assert!(make(&bytes, &variants(&Facts::read(&bytes).unwrap())).is_ok());
}

#[test]
fn a_variant_larger_than_the_photo_or_of_no_size_is_refused() {
    let bytes = as_jpeg(&scene(60, 40));
    for (width, height) in [(61, 40), (60, 41), (0, 10), (10, 0)] {
        let variant = Variant { width, height, format: Format::Webp };
        assert!(matches!(make_one(&bytes, variant), Err(PictureError::Variant(_))));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn no_damage_makes_it_panic(
        which in 0..3usize,
        changes in prop::collection::vec((0..4000usize, any::<u8>()), 1..6),
    ) {
        let image = scene(40, 30);
        let mut bytes = match which {
            0 => with_exif(&as_jpeg(&image), 6),
            1 => as_png(&image),
            _ => encoded(&DynamicImage::ImageRgb8(image), ImageFormat::WebP),
        };
        for (at, value) in changes {
            let at = at % bytes.len();
            bytes[at] = value;
        }
        let wanted = [Variant { width: 20, height: 15, format: Format::Webp }];
        // Some damage cannot be seen, so both are right; what comes must be a picture of the size.
        if let Ok(made) = make(&bytes, &wanted) {
            prop_assert_eq!(pixels(&made[0]).dimensions(), (20, 15));
        }
    }
}
