//! Can they see it: what must hold whatever the limits are, and what practice says.

use crate::lab::{DARK, Lab, close, station, v};
use gauzelight::{
    judge::{Limits, Sight, Sighting, Weights, Word, sight::Question, sightings},
    light::{EyeRay, luma},
    scene::{Angle, Count, Moon},
};

/// A window with a rear film behind it in a front wall, lit from inside, seen from a path.
pub fn window(lamps: &str) -> Lab {
    Lab::new(&format!(
        r#"evening: (sky_lx: 0.3), ground: (surface: "lawn, winter", width: 24, depth: 24),
        walls: [(name: "front", at: (0, 0, 0), width: 9, height: 3, openings: [
            Window(name: "window", left: 3.9, sill: 1, width: 1.2, height: 1, room: (depth: 3, reflectance: 0.3)),
        ])],
        spots: [(name: "path", at: (0, 0, 7), look: "window")],
        films: [(name: "film", fabric: "rear film, grey", window: "window")],
        lamps: [{lamps}], {}"#,
        station("mini LED", "middle", r#"at: (0, 1.5, -2.2), mount: Shelf, aim: "film""#)
    ))
}

/// A grey wall with a figure thrown onto it, seen from before it.
fn wall(place: &str, spots: &str, more: &str) -> Lab {
    Lab::new(&format!(
        r#"ground: (surface: "grey", width: 20, depth: 20),
        walls: [(name: "wall", at: (0, 0, 0), width: 6, height: 4, surface: "grey")],
        spots: [{spots}], {more} {}"#,
        station("16:9", "middle", &format!(r#"aim: (0, 1.6, 0), target: "wall", {place}"#))
    ))
}

const BEFORE: &str = r#"(name: "before", at: (0, 0, 9), look: "wall")"#;
const NEAR: &str = "at: (0, 1.6, 3)";

fn seen(lab: &Lab) -> Sight {
    lab.reading().spots[0].sight.clone().expect("it is in sight")
}

fn taken(lab: &Lab) -> (Sighting, Limits) {
    let all = sightings(&lab.night, &lab.yard, &lab.catalogue, 0).expect("there is a station");
    (all[0].clone(), Limits::of(&lab.yard, &lab.catalogue))
}

/// Every answer of one is at least as good as the other's.
#[track_caller]
fn no_worse(better: &Sight, worse: &Sight) {
    assert!(better.word >= worse.word && better.least >= worse.least && better.most >= worse.most);
    for (a, b) in better.answers.iter().zip(&worse.answers) {
        let value = |answer: &gauzelight::judge::sight::Answer| answer.value.map_or(f64::INFINITY, |v| v.typical);
        assert!(value(a) >= value(b) * (1.0 - 1e-6), "{:?}: {} and {}", a.question, value(a), value(b));
    }
}

fn source(lab: &Lab, name: &str) -> usize {
    lab.night.sources.iter().position(|source| source.name() == name).expect("it shines")
}

#[test]
fn light_by_source_is_all_the_light() {
    let lab = Lab::new(&format!(
        r#"evening: (sky_lx: 0.5, moon: (lx: 0.1, bearing_deg: 40, height_deg: 30)),
        ground: (surface: "grey", width: 20, depth: 20),
        walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3, openings: [
            Window(name: "window", left: 0.5, sill: 1, width: 1, height: 1, room: (lamp: (lumens: 100, on: true))),
        ])],
        plants: [Hedge(name: "hedge", from: (-3, 0, -1), to: (-1.5, 0, 2), height: 2)],
        cloths: [(name: "net", fabric: "white tulle", at: (1, 2.5, 1), width: 1.5, height: 2)],
        mirrors: [(name: "mirror", at: (-1, 0.5, 2), width: 0.8, height: 0.8)],
        lamps: [(name: "lamp", kind: "porch lamp", at: (1.5, 2.5, 2))], {}"#,
        station("mini LED", "corners", "at: (0, 0.5, 4), aim: (-0.5, 1.5, 0)")
    ));
    let (night, from) = (&lab.night, v(0.5, 1.6, 6.0));
    let mut bodies = 0;
    for i in 0..4000 {
        let part = |step: f64| ((f64::from(i) + 0.5) * step).fract() as f32 - 0.5;
        let along = v(1.2 * part(0.819_172_5), 0.9 * part(0.671_043_6), -1.0).normalize();
        // Every twentieth ray goes to the lamp.
        let along = if i % 20 == 0 { (v(1.5, 2.5, 2.0) - from).normalize() } else { along };
        let ray = EyeRay { from, along, width: 1e-3 };
        let parts = night.luminance_by_source(ray);
        let all = f64::from(luma(night.luminance(ray)));
        let sum: f64 = parts.iter().map(|part| f64::from(*part)).sum();
        assert!((sum - all).abs() <= 1e-5 * all + 1e-9, "{sum} is not {all}");
        for (index, part) in parts.iter().enumerate() {
            let alone = luma(night.luminance_of(ray, index as u32));
            assert!((alone - part).abs() <= 1e-5 * part + 1e-9, "{}: {part}", night.sources[index].name());
        }
        let surfaces: f32 = night.surfaces_by_source(ray).iter().sum();
        bodies += usize::from(f64::from(surfaces) < 0.5 * all);
    }
    assert!((200..1000).contains(&bodies), "{bodies} rays met a lamp");
}

/// A porch lamp beside a lit window takes from it; the nearer the more.
#[test]
fn a_porch_lamp_beside_a_window() {
    let dark = seen(&window(""));
    assert!(dark.word >= Word::Clear, "{}: {}", dark.phrase(), dark.reason);
    let mut last: Option<Sight> = None;
    for x in [4.0, 3.0, 2.0, 1.5, 1.0] {
        let lit = seen(&window(&format!(r#"(name: "porch", kind: "porch lamp", at: ({x}, 2.1, 0.25))"#)));
        assert!(lit.word <= dark.word && lit.least <= dark.least);
        if x <= 1.5 {
            assert!(lit.word < dark.word, "{x} m: {}, {}", lit.phrase(), lit.reason);
            assert!(lit.reason.contains(" as much as “porch”") && lit.reason.contains("° beside it"), "{}", lit.reason);
        }
        assert!(last.is_none_or(|farther| farther.word >= lit.word));
        last = Some(lit);
    }
}

#[test]
fn brighter_larger_and_nearer_is_never_worse() {
    let lamp = r#"evening: (sky_lx: 0.3), lamps: [(name: "lamp", kind: "porch lamp", at: (2.5, 2, 0.3))],"#;
    let ladder = |labs: Vec<Sight>| {
        labs.windows(2).for_each(|pair| no_worse(&pair[1], &pair[0]));
        assert!(labs[0].word < labs[labs.len() - 1].word, "{} to {}", labs[0].phrase(), labs[labs.len() - 1].phrase());
    };
    let brighter = [1, 4, 16, 64, 256, 1024, 4096];
    ladder(brighter.map(|lm| seen(&wall(&format!("{NEAR}, lumens: {lm}"), BEFORE, lamp))).to_vec());
    // Twice as wide by four times the lumens is as bright.
    let larger = [0.25, 0.5, 1.0, 2.0, 4.0];
    let one = |k: f64| format!("at: (0, 1.6, {k}), lumens: {}", 40.0 * k * k);
    // The lamp lights it unevenly, so only the words are held.
    let all = larger.map(|k| seen(&wall(&one(k), BEFORE, lamp)));
    assert!(all.windows(2).all(|pair| pair[1].word >= pair[0].word && pair[1].figure_lx.low > pair[0].figure_lx.low));
    let spot = |z: f64| format!(r#"(name: "spot", at: (0, 0, {z}), look: "wall")"#);
    let from = |z: f64| seen(&wall(&format!("{NEAR}, lumens: 40"), &spot(z), "evening: (sky_lx: 0.3),"));
    let all: Vec<Sight> = [450.0, 200.0, 90.0, 20.0, 9.0, 4.5].map(from).to_vec();
    assert!(
        all.windows(2).all(|pair| pair[1].word >= pair[0].word),
        "{:?}",
        all.iter().map(Sight::phrase).collect::<Vec<_>>()
    );
    assert!(all[0].stroke_arcmin < 5.0 && all[5].stroke_arcmin > 200.0);
}

#[test]
fn more_sky_and_older_eyes_never_see_better() {
    let lab = wall(NEAR, BEFORE, "evening: (sky_lx: 1),");
    let ((sighting, limits), sky) = (taken(&lab), source(&lab, "sky"));
    let under = |weight: f64| sighting.under(&Weights::default().with(sky, weight), &limits).expect("it is in sight");
    let weights = [0.001, 0.1, 1.0, 10.0, 100.0, 1000.0, 10_000.0];
    let all = weights.map(under);
    all.windows(2).for_each(|pair| no_worse(&pair[0], &pair[1]));
    assert_eq!((all[0].word, all[6].word), (Word::Strong, Word::Lost));

    let aged = |age: u32| {
        let lamp = r#"evening: (sky_lx: 0.3), lamps: [(name: "lamp", kind: "porch lamp", at: (1.6, 2, 0.3))],"#;
        let mut lab = wall(&format!("{NEAR}, lumens: 60"), BEFORE, lamp);
        lab.yard.spots[0].age = Count(age);
        seen(&lab)
    };
    let all = [8, 25, 40, 60, 75, 90].map(aged);
    all.windows(2).for_each(|pair| no_worse(&pair[0], &pair[1]));
    assert!(all[5].veil > 1.5 * all[1].veil);
}

/// Other weights of the same sighting are the sighting of another yard.
#[test]
fn weights_are_another_evening() {
    let lamp = r#"(name: "porch", kind: "porch lamp", at: (1.2, 2.1, 0.25))"#;
    let lit = window(lamp);
    let (sighting, limits) = taken(&lit);
    let weights = Weights::default().with(source(&lit, "porch"), 0.0).with(source(&lit, "sky"), 4.0);
    let weighed = sighting.under(&weights, &limits).expect("it is in sight");
    let mut other = window("");
    other.night.set_sky(1.2);
    let built = seen(&other);
    assert_eq!((weighed.word, weighed.least, weighed.most), (built.word, built.least, built.most));
    close(weighed.adaptation, built.adaptation, 1e-4);
    close(weighed.mean.typical, built.mean.typical, 1e-4);
    close(weighed.ground.high, built.ground.high, 1e-4);
    close(weighed.peak.low, built.peak.low, 1e-4);
    for (a, b) in weighed.answers.iter().zip(&built.answers) {
        assert_eq!(a.value.is_some(), b.value.is_some());
        if let (Some(a), Some(b)) = (a.value, b.value) {
            close(a.low, b.low, 1e-4);
            close(a.typical, b.typical, 1e-4);
        }
    }
    let off = sighting.under(&weights.with(0, 0.0), &limits).expect("it is in sight");
    assert_eq!((off.word, off.figure_lx.high), (Word::Lost, 0.0));
}

/// The moon goes on, and only its light is traced anew.
#[test]
fn the_disc_may_move() {
    let moonlit = |bearing: f64, height: f64| {
        let mut lab = wall(NEAR, BEFORE, "evening: (sky_lx: 0.3),");
        let moon = Moon { lx: 0.2, bearing_deg: Angle(bearing), height_deg: Angle(height) };
        let before = lab.yard.clone();
        lab.yard.evening.moon = (height > 0.0).then_some(moon);
        lab.night.follow(&before, &lab.yard, &lab.catalogue, &lab.pictures).expect("it can be lit");
        lab
    };
    let (no_moon, early, late) = (moonlit(0.0, 0.0), moonlit(-60.0, 20.0), moonlit(160.0, 35.0));
    for (from, to) in [(&no_moon, &early), (&early, &late), (&late, &no_moon), (&no_moon, &no_moon)] {
        let (sighting, limits) = taken(from);
        let moved = sighting.with_disc(&to.night).under(&Weights::default(), &limits).expect("it is in sight");
        let built = seen(to);
        close(moved.adaptation, built.adaptation, 1e-5);
        close(moved.veil, built.veil, 1e-5);
        close(moved.ground.typical, built.ground.typical, 1e-5);
        assert_eq!(moved.word, built.word);
    }
    // Low over the wall it shines into the eye.
    assert!(seen(&late).veil > 0.0 && seen(&early).veil == 0.0);
}

/// Nothing behind the viewer counts that lights nothing in sight.
#[test]
fn a_lamp_behind_the_viewer_does_nothing() {
    let spot = r#"spots: [(name: "before", at: (0, 8.4, 8), look: "wall")], walls: [(name: "wall", at: (0, 8, 0), width: 4, height: 4, surface: "grey")],"#;
    let lab = |lamp: &str| {
        let place = "at: (0, 10, 3), aim: (0, 10, 0), target: \"wall\", lumens: 5";
        Lab::edited(&format!("{DARK}{spot} lamps: [{lamp}], {}", station("16:9", "middle", place)), |yard| {
            for kind in &mut yard.lamp_kinds {
                if kind.name.0 == "beam" {
                    kind.spread = gauzelight::scene::SpreadKind::Beam { half_deg: 5.0 };
                }
            }
        })
    };
    let none = seen(&lab(""));
    // Into the back of the head, and past below the wall.
    let behind = lab(r#"(name: "lamp", kind: "beam", at: (0, 14, 12), turn_deg: 180, tilt_deg: 45)"#);
    assert!(behind.lx(v(0.0, 10.0, 8.0), v(0.0, 0.7, 0.7)) > 100.0);
    assert_eq!(seen(&behind), none);
    assert!(none.rival.is_none() && none.veil == 0.0);
    // The same lamp in front does a lot.
    let before = seen(&lab(r#"(name: "lamp", kind: "beam", at: (0, 14, 4), turn_deg: 0, tilt_deg: 45)"#));
    assert!(before.veil > 0.1 && before.word < none.word, "{}: {}", before.phrase(), before.reason);
}

/// The ratios of AVIXA V201.01, published for white to black, are where the words change: white over other light of 1 cd/m².
#[test]
fn words_change_at_the_published_ratios() {
    let lamp = r#"evening: (sky_lx: 0), lamps: [(name: "lamp", kind: "window", at: (0, 1.6, 40), size: (0.1, 0.1), turn_deg: 180, lumens: 20000)],"#;
    let other = 20_000.0 / std::f64::consts::PI / 1600.0;
    // 1000 lm make 444 lx at 3 m.
    let lumens = |ratio: f64| (ratio - 1.0) * other / (1000.0 * 2.25 * (16.0 / 9.0) / 9.0) * 1000.0;
    for (ratio, below, above) in [(7.0, Word::Faint, Word::Clear), (15.0, Word::Clear, Word::Strong)] {
        for (factor, word) in [(0.96, below), (1.04, above)] {
            let sight = seen(&wall(&format!("{NEAR}, lumens: {}", lumens(factor * ratio)), BEFORE, lamp));
            let answer = sight.answer(Question::StandsOut);
            close(answer.value.expect("its ground gives light").typical, factor * ratio, 0.01);
            assert_eq!(answer.word, word, "{ratio} : 1");
        }
    }
}
