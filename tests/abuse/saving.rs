//! Saving loses nothing, and saving twice changes nothing.

use super::RICH;
use gauzelight::scene::{
    Angle, Band, Catalogue, Cloth, Colour, Count, Fullness, Loaded, Name, Point, Ref, SaveError, Size, Source, Surface,
    Yard,
};
use gauzelight::units::{Length, Style};
use proptest::prelude::*;
use std::fs;

fn load(text: &str) -> Loaded {
    Yard::parse(text, "yard.ron", &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{faults}\n{text}"))
}

#[test]
fn a_rich_yard_is_the_same_after_saving_and_saving_twice_changes_no_byte() {
    let first = load(RICH);
    assert!(first.warnings.is_empty(), "{}", first.warnings);
    let text = first.yard.to_text();
    let second = load(&text);
    assert_eq!(first.yard, second.yard);
    assert_eq!(text, second.yard.to_text());
    assert!(first.comments && !second.comments);
}

#[test]
fn what_is_saved_is_ron_by_another_reader_too() {
    let text = load(RICH).yard.to_text();
    ron::from_str::<serde::de::IgnoredAny>(&text).unwrap();
}

#[test]
fn a_field_at_its_default_is_left_out_and_the_format_is_not() {
    assert_eq!(Yard::named("bare").to_text(), "Yard(\n    format: 1,\n    name: \"bare\",\n)\n");
}

#[test]
fn lengths_keep_the_notation_they_were_read_in() {
    let text = load(RICH).yard.to_text();
    for part in
        ["height: \"10' 6\\\"\"", "left: \"40 1/2 in\"", "width: \"200 ft\"", "depth: 60", "aperture: \"1 1/2 in\""]
    {
        assert!(text.contains(part), "{part} is missing in\n{text}");
    }
}

#[test]
fn a_file_with_comments_is_kept_once_before_it_is_written_over() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("yard.ron");
    let catalogue = Catalogue::builtin();
    fs::write(&path, RICH).unwrap();
    let yard = Yard::open(&path, &catalogue).unwrap().yard;

    let saved = yard.save(&path).unwrap();
    let kept = saved.kept.clone().unwrap();
    assert_eq!(fs::read_to_string(&kept).unwrap(), RICH);
    assert!(saved.message().unwrap().contains("yard.ron.bak"));
    assert_eq!(fs::read_to_string(&path).unwrap(), yard.to_text());

    assert_eq!(yard.save(&path).unwrap().kept, None);
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);

    fs::write(&path, "// mine\n(name: \"x\")").unwrap();
    assert!(yard.save(&path).unwrap().kept.unwrap().ends_with("yard.ron.bak2"));
    assert_eq!(fs::read_to_string(&kept).unwrap(), RICH);
}

#[test]
fn a_file_that_is_no_yard_is_kept_too() {
    let folder = tempfile::tempdir().unwrap();
    for (name, bytes) in [("broken.ron", &b"(name: "[..]), ("binary.ron", &[0xff, 0xfe, 0x00][..])] {
        let path = folder.path().join(name);
        fs::write(&path, bytes).unwrap();
        let kept = Yard::named("new").save(&path).unwrap().kept.unwrap();
        assert_eq!(fs::read(kept).unwrap(), bytes);
    }
}

#[test]
fn a_failed_save_leaves_everything_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("yard.ron");
    let yard = Yard::named("first");
    yard.save(&path).unwrap();
    let before = fs::read(&path).unwrap();

    let mut unreadable = yard.clone();
    unreadable.evening.sky_lx = f64::NAN;
    assert!(matches!(unreadable.save(&path), Err(SaveError::Unreadable(..))));
    assert_eq!(fs::read(&path).unwrap(), before);

    let nowhere = folder.path().join("no such folder").join("yard.ron");
    let error = yard.save(&nowhere).unwrap_err();
    assert!(matches!(error, SaveError::NotWritten(..)) && error.to_string().contains("no such folder"));

    // A folder of that name cannot be replaced by a file; nothing is left lying beside it.
    let taken = folder.path().join("taken");
    fs::create_dir(&taken).unwrap();
    assert!(yard.save(&taken).is_err());
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 2);
}

fn any_length() -> impl Strategy<Value = Length> {
    let styles = [
        Style::Bare,
        Style::Metres,
        Style::Centimetres,
        Style::Millimetres,
        Style::Feet,
        Style::Inches,
        Style::FeetInches,
    ];
    let style = prop::sample::select(styles.to_vec());
    (0.001..499.0f64, style).prop_map(|(m, style)| Length { m, style, text: String::new() })
}

fn any_name() -> impl Strategy<Value = String> {
    "\\PC{1,40}".prop_filter("a name", |name| name.trim() == name && !name.chars().any(char::is_control))
}

prop_compose! {
    fn any_cloth()(
        name in any_name(),
        note in "(?s).{0,60}",
        at in [any_length(), any_length(), any_length()],
        (width, height) in (any_length(), any_length()),
        (turn, tilt) in (-360.0..360.0f64, -90.0..90.0f64),
        fullness in 1.0..4.0f64,
        (ties, hem) in (1..500u32, 0.0..50.0f64),
    ) -> Cloth {
        Cloth {
            name: Name::of(&name),
            note,
            fabric: Ref::to("white tulle"),
            behind: Vec::new(),
            at: Point(at),
            width: Size(width),
            height: Size(height),
            turn_deg: Angle(turn),
            tilt_deg: Angle(tilt),
            fullness: Fullness(fullness),
            ties: Count(ties),
            hem_kg_m: hem,
            weight_g_m2: None,
        }
    }
}

prop_compose! {
    fn any_surface()(name in any_name(), note in "\\PC{0,80}", rgb in [0.0..=1.0f64, 0.0..=1.0, 0.0..=1.0]) -> Surface {
        Surface {
            name: Name::of(&name),
            note,
            source: Source::Measured,
            reflectance: Colour(rgb),
            wet: rgb[0],
            doubt: rgb[1],
        }
    }
}

proptest! {
    #[test]
    fn any_values_come_back(name in any_name(), cloth in any_cloth(), surface in any_surface(), sky in 0.0..120_000.0f64) {
        let mut made = Yard { cloths: vec![cloth], surfaces: vec![surface], ..Yard::named(&name) };
        made.evening.sky_lx = sky;
        prop_assume!(made.cloths[0].name != made.name);
        let text = made.to_text();
        let first = load(&text).yard;
        prop_assert_eq!(&first.name, &made.name);
        prop_assert_eq!(&first.surfaces, &made.surfaces);
        prop_assert_eq!(&first.cloths[0].note, &made.cloths[0].note);
        prop_assert_eq!(first.evening.sky_lx, sky);
        for (read, made) in first.cloths[0].at.0.iter().zip(&made.cloths[0].at.0) {
            prop_assert!((read.m - made.m).abs() < 1e-9);
        }
        prop_assert_eq!(first.to_text(), text);
        prop_assert_eq!(load(&first.to_text()).yard, first);
    }

    #[test]
    fn any_band_comes_back(mut parts in [0.0..1e6f64, 0.0..1e6, 0.0..1e6]) {
        parts.sort_by(f64::total_cmp);
        let [low, typical, high] = parts;
        let mut yard = load(RICH).yard;
        let band = Band { low: low + 1.0, typical: typical + 1.0, high: (high + 1.0).min(1e6) };
        yard.lamp_kinds[0].lumens = Some(band);
        prop_assume!(band.typical <= band.high);
        prop_assert_eq!(load(&yard.to_text()).yard, yard);
    }
}
