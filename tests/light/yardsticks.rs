//! Common practice, no source: what people who hang projectors would say of plain yards. Each yard first proves that it is the one
//! that is meant, to 5 %: how large, how bright, on what ground, drawn how finely, by which lamps.

use gauzelight::{
    frames::{Frame, Shelf},
    judge::{MeterReading, Sight, StationReading, Word, read_meters, read_station, sight::Question},
    light::Night,
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::{collections::BTreeMap, sync::Arc};

/// What is read in a yard with one station and one spot.
struct Seen {
    station: StationReading,
    meters: Vec<MeterReading>,
}

impl Seen {
    fn sight(&self) -> &Sight {
        self.station.spots[0].sight.as_ref().expect("it is in sight")
    }

    /// Height of the figure, m.
    fn tall(&self) -> f64 {
        self.station.figure.height_m
    }

    /// Its mean luminance, cd/m².
    fn mean(&self) -> f64 {
        self.station.spots[0].mean.typical
    }

    /// That over its ground.
    fn ratio(&self) -> f64 {
        self.station.spots[0].figure_to_ground.expect("it has a ground").typical
    }

    /// Its mean stroke, minutes of arc.
    fn stroke(&self) -> f64 {
        self.sight().stroke_arcmin
    }

    /// What a lamp gives at a meter, lx.
    fn lamp_lx(&self, meter: &str) -> f64 {
        let reading = self.meters.iter().find(|one| one.meter == meter).expect("there is such a meter");
        reading.sources.iter().find(|one| one.source == "porch").expect("it is lit").lx.typical
    }
}

/// A premise of a yard.
#[track_caller]
fn is_meant(found: f64, meant: f64) {
    assert!((found / meant - 1.0).abs() < 0.05, "{found} where {meant} is meant");
}

/// A yard under a nearly black sky with one station, seen from a spot; pale things throw back 0.61.
fn seen(from: f64, things: &str, station: &str) -> Seen {
    seen_by("", from, things, station)
}

/// The same by a moon.
fn seen_by(moon: &str, from: f64, things: &str, station: &str) -> Seen {
    let text = format!(
        r#"Yard(name: "yardstick", evening: (sky_lx: 0.001, {moon}), ground: (surface: "lawn, winter", width: 130, depth: 130),
        surfaces: [(name: "pale", reflectance: 0.61)],
        spots: [(name: "path", at: (0, 0, {from}), look: (0, 1.6, 0))], {things}
        stations: [(name: "one", projector: "mini LED", {station})])"#
    );
    let catalogue = Catalogue::builtin();
    let yard = Yard::parse(&text, "yardstick.ron", &catalogue).unwrap_or_else(|faults| panic!("{faults}")).yard;
    let drawn = [("thin rings", rings([245.0, 165.0, 85.0], 12.0)), ("rings", rings([240.0, 160.0, 80.0], 24.0))];
    let drawn = drawn.map(|(name, frame)| (name.to_owned(), Arc::new(frame)));
    let mut shelf = Shelf::from(BTreeMap::from(drawn));
    shelf.fetch_for(&yard);
    let night = Night::build(&yard, &catalogue, &shelf).expect("it can be lit");
    let station = read_station(&night, &yard, &catalogue, 0).expect("there is a station");
    Seen { station, meters: read_meters(&night, &yard, &catalogue) }
}

/// White rings about the middle of a black picture of 960 by 540 texels, by their outer radii; all strokes of one width.
fn rings(radii: [f32; 3], width: f32) -> Frame {
    let lit = |i: usize| {
        let (x, y) = ((i % 960) as f32 + 0.5 - 480.0, (i / 960) as f32 + 0.5 - 270.0);
        radii.iter().any(|radius| (radius - width..*radius).contains(&x.hypot(y)))
    };
    let light = (0..960 * 540).map(|i| if lit(i) { Vec3::ONE } else { Vec3::ZERO }).collect();
    Frame::from_linear(960, 540, light).expect("it is a picture")
}

fn lumens(lm: f64) -> String {
    format!("lumens: (low: {lm}, typical: {lm}, high: {lm})")
}

/// A picture, an upright one by a projector on its side.
fn content(picture: &str) -> String {
    let pose = if picture == "guardian" { "pose: Upright, " } else { "" };
    format!(r#"{pose}content: (picture: "{picture}")"#)
}

#[track_caller]
fn is(seen: &Seen, word: Word) {
    let sight = seen.sight();
    let answers = sight.answers.map(|a| (a.question, a.value.map(|v| v.typical), a.word));
    assert_eq!(sight.word, word, "{}: {answers:?}", sight.reason);
}

const WALL: &str = r#"walls: [(name: "wall", at: (0, 0, 0), width: 8, height: 4, surface: "pale")],"#;

/// 1.7° tall from 60 m, a mean of 1.9 cd/m² at 15 : 1: as large as a person in the next street but one. Strokes of 2.5′ are those of
/// the rings; pictures of our own have their own.
#[test]
fn a_large_dim_figure_far_away_is_clear() {
    for (picture, lens, lm, moon_lx, stroke) in [
        ("thin rings", 4.888, 59.45, 0.3549, Some(2.5)),
        ("owl_face", 4.99, 150.0, 0.2783, None),
        ("guardian", 3.27, 76.51, 0.2909, None),
    ] {
        // From behind who looks.
        let moon = format!("moon: (lx: {moon_lx}, bearing_deg: 0, height_deg: 30)");
        let station =
            format!(r#"at: (0, 1.6, {lens}), aim: (0, 1.6, 0), target: "wall", {}, {}"#, lumens(lm), content(picture));
        let seen = seen_by(&moon, 60.0, WALL, &station);
        is_meant(2.0 * (0.5 * seen.tall() / 60.0).atan().to_degrees(), 1.7);
        is_meant(seen.mean(), 1.9);
        is_meant(seen.ratio(), 15.0);
        if let Some(stroke) = stroke {
            is_meant(seen.stroke(), stroke);
        }
        is(&seen, Word::Clear);
    }
}

/// 20 cm tall, 300 cd/m², from 40 m: as bright as a screen, and as fine as print across a street. Strokes of 1 cm are those of the rings;
/// pictures of our own are finer still.
#[test]
fn a_small_bright_figure_far_away_is_too_fine() {
    for (picture, lens, lm) in [("rings", 1.601, 130.5), ("owl_face", 1.601, 314.2), ("guardian", 1.05, 160.9)] {
        let station = format!(
            r#"at: (0, 1.6, {lens}), aim: (0, 1.6, 0), target: "wall", throw_ratio: 4, {}, {}"#,
            lumens(lm),
            content(picture)
        );
        let seen = seen(40.0, WALL, &station);
        is_meant(seen.tall(), 0.2);
        is_meant(seen.mean(), 300.0);
        let stroke_m = 40.0 * (seen.stroke() / 60.0).to_radians();
        if picture == "rings" {
            is_meant(stroke_m, 0.01);
        } else {
            assert!(stroke_m < 0.01, "{stroke_m}");
        }
        is(&seen, Word::Faint);
        let sight = seen.sight();
        assert_eq!(sight.answer(Question::FineEnough).word, Word::Faint);
        assert_eq!(sight.answer(Question::LightEnough).word, Word::Strong);
        assert!(sight.reason.starts_with("its strokes are"), "{}", sight.reason);
    }
}

const HEDGE: &str = r#"plants: [Hedge(name: "hedge", from: (-4, 0, -2), to: (4, 0, -2), height: 2.5)],
    cloths: [(name: "net", fabric: "white tulle", at: (0, 2.2, 0), width: 2.2, height: 1.6)],
    meters: [(name: "upright", at: (0, 1.5, 0.05))],"#;
const PORCH: &str = r#"lamps: [(name: "porch", kind: "porch lamp", at: (2.2, 2, 2.6), lumens: 389)],"#;

#[test]
fn tulle_before_a_hedge_is_clear_until_a_lamp_is_lit() {
    let station =
        format!(r#"at: (0, 0.71, 2.2), aim: (0, 1.5, 0), target: "net", {}, {}"#, lumens(100.0), content("owl_face"));
    let dark = seen(12.0, HEDGE, &station);
    is_meant(dark.station.picture.width_m, 1.8);
    is(&dark, Word::Clear);
    let lit = seen(12.0, &format!("{HEDGE}{PORCH}"), &station);
    is_meant(lit.lamp_lx("upright"), 2.0);
    is(&lit, Word::Faint);
}

#[test]
fn a_pale_wall_is_clear_among_weak_lamps() {
    let things = format!(
        r#"{WALL} lamps: [(name: "porch", kind: "porch lamp", at: (5, 2.2, 3), lumens: 330)], meters: [
            (name: "middle", at: (0, 1.6, 0.05)),
            (name: "right edge", at: (1.75, 1.6, 0.05)),
        ],"#
    );
    let station =
        format!(r#"at: (0, 1.6, 4.9), aim: (0, 1.6, 0), target: "wall", {}, {}"#, lumens(100.0), content("owl_face"));
    let seen = seen(12.0, &things, &station);
    is_meant(seen.station.picture.width_m, 3.5);
    let lamp = ["middle", "right edge"].map(|meter| seen.lamp_lx(meter));
    assert!(lamp[0] > 0.3 && lamp[1] > lamp[0] && lamp[1] <= 1.0, "{lamp:?}");
    is(&seen, Word::Clear);
}

#[test]
fn a_bright_projector_on_a_sheet_is_strong() {
    let sheet =
        r#"cloths: [(name: "sheet", fabric: "cotton sheet, white", at: (0, 2.2, 0), width: 2.2, height: 1.6)],"#;
    let station = format!(
        r#"at: (0, 0.71, 2.2), aim: (0, 1.5, 0), target: "sheet", {}, {}"#,
        lumens(2500.0),
        content("owl_face")
    );
    let seen = seen(12.0, sheet, &station);
    is_meant(seen.station.picture.width_m, 1.8);
    is(&seen, Word::Strong);
}
