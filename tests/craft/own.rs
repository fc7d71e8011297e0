//! Entries of an own catalogue, made of what people know.

use gauzelight::{
    craft::{
        Measured,
        own::{ClothColour, ClothKind, LightSource, OwnCloth, OwnProjector},
    },
    frames::Shelf,
    light::{Night, luma},
    scene::{Band, Catalogue, Colour, Fabric, FabricKind, OwnCatalogue, Source, Yard},
    units::Length,
};
use glam::Vec3;
use std::path::Path;

fn length(text: &str) -> Length {
    Length::parse(text).unwrap()
}

fn mini() -> OwnProjector {
    OwnProjector {
        name: "mine".to_owned(),
        box_lumens: 7500.0,
        pixels: (854, 480),
        picture: Some(Measured { width: length("40 in"), at: length("5 ft") }),
        nearest: Some(length("4 ft")),
        light: LightSource::Led,
    }
}

#[test]
fn a_projector_by_its_box_and_a_tape() {
    let entry = mini().entry(&Catalogue::builtin()).unwrap();
    assert!((entry.throw_ratio.0 - 1.5).abs() < 1e-12);
    assert_eq!(entry.lumens, Band { low: 60.0, typical: 100.0, high: 150.0 });
    assert_eq!((entry.source, entry.pixels, entry.nearest.0.m), (Source::Measured, (854, 480), 1.2192));
    for part in ["Measured: throw ratio 1.5 (40 in wide at 5 ft), sharp from 4 ft", "7500 lm on the box", "Guessed"] {
        assert!(entry.note.contains(part), "{}", entry.note);
    }
    let guessed = entry.note.split("Guessed").nth(1).unwrap();
    assert!(guessed.contains("lm in truth") && guessed.contains("contrast") && !guessed.contains("ratio"), "{guessed}");

    let box_only = OwnProjector { picture: None, nearest: None, ..mini() }.entry(&Catalogue::builtin()).unwrap();
    assert_eq!((box_only.source, box_only.throw_ratio.0), (Source::Invented, 1.4));
    assert!(!box_only.note.contains("Measured") && box_only.note.contains("throw ratio, nearest distance"));
}

#[test]
fn box_pixels_and_light_choose_the_class() {
    let class = |box_lumens, pixels, light| {
        let note = OwnProjector { box_lumens, pixels, light, ..mini() }.entry(&Catalogue::builtin()).unwrap().note;
        note.split('“').nth(1).unwrap().split('”').next().unwrap().to_owned()
    };
    assert_eq!(class(20_000.0, (800, 480), LightSource::Led), "mini LED");
    assert_eq!(class(300.0, (854, 480), LightSource::Led), "12 V pocket");
    assert_eq!(class(12_000.0, (1920, 1080), LightSource::Led), "big LED");
    assert_eq!(class(2500.0, (1024, 768), LightSource::Lamp), "used lamp projector");
    assert_eq!(class(3200.0, (1280, 800), LightSource::Lamp), "used lamp projector, wide");
    let lamp = OwnProjector { box_lumens: 2000.0, light: LightSource::Lamp, ..mini() };
    let lumens = lamp.entry(&Catalogue::builtin()).unwrap().lumens;
    assert!(lumens.high <= 2000.0 + 1e-9, "no box claims less than it gives: {lumens:?}");
}

/// Common practice, no source: a bargain LED projector gives a small fraction of what its box claims; a used lamp projector, whose
/// box told the truth when it was new, does not.
#[test]
fn bargain_lumens_are_a_small_fraction_of_the_claim() {
    let catalogue = Catalogue::builtin();
    let share = |claimed: f64, pixels: (u32, u32), light: LightSource| {
        let own = OwnProjector { box_lumens: claimed, pixels, light, ..mini() };
        own.entry(&catalogue).unwrap().lumens.high / claimed
    };
    for (claimed, pixels) in
        [(4000.0, (800, 480)), (7500.0, (854, 480)), (9000.0, (1280, 720)), (15_000.0, (1920, 1080))]
    {
        let led = share(claimed, pixels, LightSource::Led);
        assert!(led < 0.15, "{led} of {claimed}");
    }
    assert!(share(2500.0, (1024, 768), LightSource::Lamp) > 0.3);
}

/// Light on a wall 8 ft away, by a yard that names the projector.
fn wall_lx(catalogue: &Catalogue, projector: &str, more: &str) -> Vec<f64> {
    let text = format!(
        r#"(name: "x", evening: (sky_lx: 0), walls: [(name: "wall", at: (0, 0, 0), width: 6, height: 4)],
            stations: [(name: "s", projector: "{projector}", at: (0, 1.5, "8 ft"), aim: "wall",
            content: (picture: "owl_wall"), {more})])"#
    );
    let yard = Yard::parse(&text, "x.ron", catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
    let mut shelf = Shelf::beside(Path::new(""));
    shelf.fetch(["owl_wall"]);
    let night = Night::build(&yard, catalogue, &shelf).unwrap();
    let places = (0..40).map(|k| Vec3::new(0.1 * (k % 8) as f32 - 0.4, 1.4 + 0.25 * (k / 8) as f32, 0.01));
    places.map(|at| f64::from(luma(night.illuminance(at, Vec3::Z).total()))).collect()
}

#[test]
fn an_entered_projector_lights_a_wall_as_its_like_does() {
    let own = OwnCatalogue { projectors: vec![mini().entry(&Catalogue::builtin()).unwrap()], ..Default::default() };
    let again = OwnCatalogue::parse(&own.to_text(), "own.ron").unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(own, again);
    let catalogue = Catalogue::builtin().with_own(again);
    let (mine, like) = (wall_lx(&catalogue, "mine", ""), wall_lx(&catalogue, "mini LED", "throw_ratio: 1.5"));
    assert!(mine.iter().filter(|lx| **lx > 1.0).count() > 10, "{mine:?}");
    for (mine, like) in mine.iter().zip(&like) {
        assert!((mine - like).abs() <= 1e-6 * like.abs(), "{mine} is not {like}");
    }
}

#[test]
fn a_senseless_projector_is_refused_with_a_remedy() {
    let catalogue = Catalogue::builtin();
    let picture = |width, at| Some(Measured { width: length(width), at: length(at) });
    let table = [
        (OwnProjector { box_lumens: 0.0, ..mini() }, "from 20 to 100000"),
        (OwnProjector { box_lumens: f64::NAN, ..mini() }, "from 20 to 100000"),
        (OwnProjector { box_lumens: 1e9, ..mini() }, "from 20 to 100000"),
        (OwnProjector { pixels: (0, 480), ..mini() }, "across and then down"),
        (OwnProjector { pixels: (854, 0), ..mini() }, "across and then down"),
        (OwnProjector { pixels: (480, 854), ..mini() }, "across and then down"),
        (OwnProjector { pixels: (u32::MAX, u32::MAX), ..mini() }, "64 million"),
        (OwnProjector { picture: picture("0 m", "5 ft"), ..mini() }, "longer edge"),
        (OwnProjector { picture: picture("40 in", "-5 ft"), ..mini() }, "longer edge"),
        (OwnProjector { picture: picture("1 mm", "5 ft"), ..mini() }, "longer edge"),
        (OwnProjector { nearest: Some(length("0 m")), ..mini() }, "just sharp"),
        (OwnProjector { nearest: Some(length("90 m")), ..mini() }, "just sharp"),
        (OwnProjector { name: String::new(), ..mini() }, "this name is empty"),
        (OwnProjector { name: "a\nb".to_owned(), ..mini() }, "1 to 60 characters"),
    ];
    for (projector, says) in table {
        let error = projector.entry(&catalogue).unwrap_err().to_string();
        assert!(error.contains(says), "{projector:?} said {error}");
    }
    let error = mini().entry(&Catalogue::default()).unwrap_err().to_string();
    assert!(error.contains("the program's own catalogue"), "{error}");
}

fn cloth(kind: ClothKind, colour: ClothColour) -> Fabric {
    let entry = OwnCloth { name: "mine".to_owned(), kind, colour }.entry(&Catalogue::builtin());
    entry.unwrap_or_else(|fault| panic!("{kind:?} {colour:?}: {fault}"))
}

/// The shares of a fabric, by name.
fn shares(fabric: &Fabric) -> Vec<(&'static str, Band)> {
    match fabric.kind {
        FabricKind::Net { reflect, diffuse, .. } => vec![("reflect", reflect), ("diffuse", diffuse)],
        FabricKind::Cloth { through, diffuse, reflect } => {
            vec![("reflect", reflect), ("diffuse", diffuse), ("through", through)]
        }
        FabricKind::Film { .. } => panic!("a film"),
    }
}

#[test]
fn an_entered_white_tulle_is_the_catalogue_s_within_its_band() {
    let mine = cloth(ClothKind::Tulle, ClothColour::White);
    let catalogue = Catalogue::builtin();
    let theirs = catalogue.fabric("white tulle").unwrap();
    for ((name, mine), (_, theirs)) in shares(&mine).into_iter().zip(shares(theirs)) {
        assert_eq!(mine.typical, theirs.typical, "{name}");
        assert!(mine.low < theirs.low && theirs.high <= mine.high, "{name}: {mine:?} is no wider than {theirs:?}");
    }
    assert!(matches!((&mine.kind, &theirs.kind),
        (FabricKind::Net { thread: a, .. }, FabricKind::Net { thread: b, .. }) if a.low < b.low && a.high > b.high));
    assert!(mine.note.contains("Guessed: tulle as the catalogue's “white tulle”"), "{}", mine.note);
}

#[test]
fn every_cloth_keeps_energy_and_comes_back_from_its_file() {
    let tint = ClothColour::Tint(Colour([0.3, 0.05, 0.4]));
    let colours = [ClothColour::White, ClothColour::OffWhite, ClothColour::Grey, ClothColour::Black, tint];
    for kind in ClothKind::ALL {
        let mut last = f64::INFINITY;
        for colour in colours {
            let entry = cloth(kind, colour);
            for part in [|band: Band| band.low, |band: Band| band.typical, |band: Band| band.high] {
                let sum: f64 = shares(&entry).iter().map(|(_, band)| part(*band)).sum();
                assert!((0.0..=1.0 + 1e-9).contains(&sum), "{kind:?} {colour:?}: {sum}");
            }
            assert_ne!(entry.source, Source::Measured);
            let reflected = shares(&entry)[0].1.typical;
            if !matches!(colour, ClothColour::Tint(_)) {
                assert!(reflected <= last, "{kind:?} {colour:?} throws back more than a paler one");
                last = reflected;
            }
            let own = OwnCatalogue { fabrics: vec![entry], ..Default::default() };
            assert_eq!(OwnCatalogue::parse(&own.to_text(), "own.ron").unwrap(), own);
        }
        assert_eq!(cloth(kind, tint).tint, Colour([0.3, 0.05, 0.4]));
    }
}

#[test]
fn a_grey_voile_is_dimmer_and_as_open_as_a_white_one() {
    let [white, grey] = [ClothColour::White, ClothColour::Grey].map(|colour| shares(&cloth(ClothKind::Voile, colour)));
    for (index, factor) in [0.4, 0.4, 1.0].into_iter().enumerate() {
        let (white, grey) = (white[index].1.typical, grey[index].1.typical);
        assert!((grey - factor * white).abs() < 1e-12, "{grey} of {white}");
    }
}

#[test]
fn a_senseless_cloth_is_refused_with_a_remedy() {
    let catalogue = Catalogue::builtin();
    for tint in [[0.0; 3], [1.2, 0.5, 0.5], [-0.1, 0.5, 0.5], [f64::NAN, 0.5, 0.5]] {
        let cloth = OwnCloth { name: "x".to_owned(), kind: ClothKind::Voile, colour: ClothColour::Tint(Colour(tint)) };
        let error = cloth.entry(&catalogue).unwrap_err().to_string();
        assert!(error.contains("from 0 to 1"), "{error}");
    }
    let nameless = OwnCloth { name: " ".to_owned(), kind: ClothKind::Voile, colour: ClothColour::White };
    assert!(nameless.entry(&catalogue).unwrap_err().to_string().contains("this name is empty"));
}
