//! Pictures that are there and cannot be read.

use super::{run, text, yard};
use std::{fs, io::Cursor};

/// A PNG, whole.
fn png() -> Vec<u8> {
    let mut bytes = Cursor::new(Vec::new());
    image::RgbImage::from_fn(64, 64, |x, y| image::Rgb([x as u8, y as u8, 90]))
        .write_to(&mut bytes, image::ImageFormat::Png)
        .unwrap();
    bytes.into_inner()
}

/// The head of a PNG of so many pixels, and nothing after it; its sum is the CRC-32 of the PNG specification.
fn head(width: u32, height: u32) -> Vec<u8> {
    let chunk = [b"IHDR".as_slice(), &width.to_be_bytes(), &height.to_be_bytes(), &[8, 2, 0, 0, 0]].concat();
    let mut sum = u32::MAX;
    for byte in &chunk {
        sum ^= u32::from(*byte);
        for _ in 0..8 {
            sum = if sum & 1 == 1 { (sum >> 1) ^ 0xEDB8_8320 } else { sum >> 1 };
        }
    }
    [b"\x89PNG\r\n\x1a\n".as_slice(), &13u32.to_be_bytes(), &chunk, &(!sum).to_be_bytes()].concat()
}

#[test]
fn a_picture_that_cannot_be_read_is_a_warning_and_its_numbers_are_a_test_cards() {
    let folder = tempfile::tempdir().unwrap();
    let whole = png();
    let table: [(&str, Vec<u8>); 6] = [
        ("cut.png", whole[..whole.len() / 2].to_vec()),
        ("empty.png", Vec::new()),
        ("old.bmp", b"BM\x3a\0\0\0\0\0\0\0\x36\0\0\0".to_vec()),
        ("scan.tiff", b"II*\0\x08\0\0\0".to_vec()),
        ("vast.png", head(2_000_000_000, 1)),
        ("large.png", head(20_000, 20_000)),
    ];
    for (name, bytes) in table {
        fs::write(folder.path().join(name), bytes).unwrap();
        fs::write(folder.path().join("yard.ron"), yard(name)).unwrap();
        let done = run(folder.path(), &["validate", "yard.ron", "--lines"]);
        let said = text(&done.stderr);
        assert_eq!(done.status.code(), Some(0), "{name}: {said}");
        let head = "yard.ron:3:100: warning: stations[0].content.picture: the picture ";
        assert!(said.starts_with(head) && said.contains("a test card stands in"), "{name}: {said}");
        assert_eq!(said.lines().count(), 1, "{name}: {said}");
        assert!(text(&done.stdout).contains("is sound, with warnings"));
        let read = text(&run(folder.path(), &["readings", "yard.ron"]).stdout);
        let said = format!("“{name}” could not be read; these are the numbers of a test card");
        assert!(read.contains(&said), "{read}");
    }
    fs::write(folder.path().join("good.png"), whole).unwrap();
    fs::write(folder.path().join("yard.ron"), yard("good.png")).unwrap();
    assert_eq!(text(&run(folder.path(), &["validate", "yard.ron"]).stdout), "yard.ron is sound\n");
    assert!(!text(&run(folder.path(), &["readings", "yard.ron"]).stdout).contains("test card"));
    // One that is missing is told once.
    fs::write(folder.path().join("yard.ron"), yard("nowhere.png")).unwrap();
    let said = text(&run(folder.path(), &["validate", "yard.ron", "--lines"]).stderr);
    assert!(said.contains("there is no picture") && said.lines().count() == 1, "{said}");
}
