//! What else shines in sight: areas, each integrated; and the ground that a figure must show on.

use crate::lab::{DARK, Lab, close, station, v};
use gauzelight::{
    judge::{Sight, Word, sight::Question},
    light::{
        EyeRay,
        eye::{Task, threshold, veil},
        luma,
    },
    scene::Positive,
};
use std::f64::consts::PI;

/// A figure on a grey wall high above the ground, seen along its normal; `more` shines or hangs there too.
fn wall(place: &str, more: &str) -> Lab {
    Lab::new(&format!(
        r#"{DARK} walls: [(name: "wall", at: (0, 6, 0), width: 8, height: 8, surface: "grey")],
        spots: [(name: "spot", at: (0, 8.4, 8), look: "wall")], {more} {}"#,
        station("16:9", "middle", &format!(r#"aim: (0, 10, 0), target: "wall", {place}"#))
    ))
}

const NEAR: &str = "at: (0, 10, 3), lumens: 20";

fn seen(lab: &Lab) -> Sight {
    lab.reading().spots[0].sight.clone().expect("it is in sight")
}

fn holds(sight: &Sight) -> Option<f64> {
    sight.answer(Question::HoldsItsOwn).value.map(|value| value.typical)
}

/// A bright square is no point in its middle: its veil is the law's mean over what is seen of it.
#[test]
fn a_bright_square_veils_by_all_of_it() {
    for (x, size) in [(0.9, 1.0), (2.0, 1.0), (4.0, 2.0)] {
        let lamp = format!(
            r#"lamps: [(name: "lamp", kind: "window", at: ({x}, 10, 2), size: ({size}, {size}), lumens: 100)],"#
        );
        let sight = seen(&wall(NEAR, &lamp));
        let luminance = 100.0 / (PI * size * size);
        let (mut sum, steps) = (0.0, 400);
        for i in 0..steps * steps {
            let place = |k: i32| ((f64::from(k) + 0.5) / f64::from(steps) - 0.5) * size;
            let (dx, dy, dz) = (x + place(i % steps), place(i / steps), 6.0);
            let far = (dx * dx + dy * dy + dz * dz).sqrt();
            // The face looks along z; so does the line of sight, turned about.
            let cos = dz / far;
            let lx = luminance * (size / f64::from(steps)).powi(2) * cos / (far * far);
            sum += lx * veil(cos.acos().to_degrees(), 40.0) * cos;
        }
        close(sight.veil, sum, 0.02);
    }
}

/// A room's lamp makes its own film glow: that is the figure's ground, and neither a rival nor a veil from the middle of it.
#[test]
fn a_lit_room_is_the_ground_of_its_own_film() {
    let lab = |lamp: &str| {
        Lab::new(&format!(
            r#"evening: (sky_lx: 0), ground: (surface: "black", width: 1, depth: 1),
            walls: [(name: "front", at: (0, 0, 0), width: 9, height: 3, openings: [
                Window(name: "window", left: 3.9, sill: 1, width: 1.2, height: 1, room: (depth: 3, reflectance: 0.3, {lamp})),
            ])],
            spots: [(name: "path", at: (0, 0, 7), look: "window")],
            films: [(name: "film", fabric: "film", window: "window")], {}"#,
            station("mini LED", "middle", r#"at: (0, 1.5, -2.2), mount: Shelf, aim: "film""#)
        ))
    };
    let (dark, lit) = (seen(&lab("")), seen(&lab("lamp: (lumens: 60, on: true)")));
    assert!(lit.ground.typical > 1.5 * dark.ground.typical);
    // A crack beside the film may shine a little.
    assert!(lit.rival.as_ref().is_none_or(|rival| rival.times < 0.1), "{:?}", lit.rival);
    assert!(lit.veil < 0.02 * lit.ground.typical, "{} on {}", lit.veil, lit.ground.typical);
}

/// What another station lights on the same wall is a rival and veils as it does on another wall just before it; on the figure's own
/// ground it is ground.
#[test]
fn a_neighbour_on_the_same_wall_is_a_rival() {
    let one = |name: &str, place: &str| {
        format!(r#"(name: "{name}", projector: "16:9", content: (picture: "middle"), aim: (0, 10, 0), {place})"#)
    };
    let both = |x: f64, board: &str, z: f64, target: &str| {
        let place = format!(r#"at: ({x}, 10, {}), lumens: 400, target: "{target}""#, z + 1.5);
        let other = one("other", &place).replace("aim: (0, 10, 0)", &format!("aim: ({x}, 10, {z})"));
        seen(&Lab::new(&format!(
            r#"{DARK} walls: [(name: "wall", at: (0, 6, 0), width: 12, height: 8, surface: "grey"){board}],
            spots: [(name: "spot", at: (0, 8.4, 16), look: "wall")],
            stations: [{}, {other}],"#,
            one("station", &format!(r#"{NEAR}, target: "wall""#))
        )))
    };
    let same = both(2.4, "", 0.0, "wall");
    let board = r#", (name: "board", at: (2.4, 8, 0.02), width: 2.4, height: 4, surface: "grey")"#;
    let before = both(2.4, board, 0.02, "board");
    let times = |sight: &Sight| sight.rival.as_ref().expect("it is a rival").times;
    assert!(times(&before) > 1.0);
    close(times(&same), times(&before), 0.05);
    close(same.veil, before.veil, 0.05);
    assert!(both(0.0, "", 0.0, "wall").rival.is_none());
}

/// From 20° beside it on a lamp acts by its veil alone, and nothing steps there.
#[test]
fn a_lamp_far_aside_is_no_rival() {
    let at = |degrees: f64| {
        let x = 6.0 * degrees.to_radians().tan();
        seen(&wall(NEAR, &format!(r#"lamps: [(name: "lamp", kind: "globe", at: ({x}, 10, 2), lumens: 300)],"#)))
    };
    let none = seen(&wall(NEAR, ""));
    let all: Vec<Sight> = [2.0, 5.0, 10.0, 15.0, 18.0, 19.0, 19.9].map(at).to_vec();
    let ratios: Vec<f64> = all.iter().map(|sight| holds(sight).expect("it is a rival")).collect();
    assert!(ratios.windows(2).all(|pair| pair[1] > pair[0]), "{ratios:?}");
    assert!(all.windows(2).all(|pair| pair[1].word >= pair[0].word));
    assert!(all[0].word == Word::Faint && all[6].answer(Question::HoldsItsOwn).word == Word::Strong, "{ratios:?}");
    for degrees in [20.5, 40.0, 70.0] {
        let aside = at(degrees);
        assert!(aside.rival.is_none() && holds(&aside).is_none() && aside.veil > none.veil);
    }
    // What it counts is by the note of its limit.
    let counted = |sight: &Sight, degrees: f64| {
        let share = (1.0 - (degrees / 20.0).powi(4)) / (1.0 + (degrees / 5.0).powi(2));
        let lx = 300.0 / (4.0 * PI) / (6.0 / degrees.to_radians().cos()).powi(2);
        sight.figure_lx.typical / (lx * share)
    };
    close(ratios[1], counted(&all[1], 5.0), 0.01);
    close(ratios[3], counted(&all[3], 15.0), 0.01);
}

/// The threshold is that of the wall right beside the figure, however dark the field around.
#[test]
fn a_figure_shows_on_its_own_ground() {
    let lamp = r#"lamps: [(name: "lamp", kind: "beam", at: (0, 11, 9), turn_deg: 180, lumens: 70)],"#;
    let sight = seen(&wall("at: (0, 10, 3), lumens: 0.3", lamp));
    assert!(sight.ground.typical > 0.02, "{}", sight.ground.typical);
    close(sight.adaptation, sight.ground.typical + sight.veil, 1e-9);
    let task = Task { age: Some(40.0), ..Task::bright(7.45) };
    // All of the station's light is in the figure; the lamp lights figure and ground nearly alike.
    let own = 0.3 * 2.25 * (16.0 / 9.0) / 9.0 * 0.5 / PI;
    let level = sight.answer(Question::LightEnough).value.expect("it has one").typical;
    close(level, own / threshold(sight.adaptation, task), 0.02);
}

/// Where all of the target is lit, what is seen beside it is the ground.
#[test]
fn a_figure_without_a_ground_has_what_is_beside_it() {
    let lab = Lab::new(&format!(
        r#"{DARK} walls: [(name: "wall", at: (0, 6, -3), width: 12, height: 8, surface: "grey")],
        cloths: [(name: "cloth", fabric: "screen", at: (0, 10.4, 0), width: 0.8, height: 0.8)],
        lamps: [(name: "lamp", kind: "globe", at: (0, 14.5, 1), lumens: 300)],
        spots: [(name: "spot", at: (0, 8.4, 8), look: "cloth")], {}"#,
        station("16:9", "white", r#"at: (0, 10, 3), aim: "cloth", lumens: 50"#)
    ));
    let sight = seen(&lab);
    // From just beyond the cloth on each side.
    let beside = [(0.47, 0.0), (-0.47, 0.0), (0.0, 0.47), (0.0, -0.47)];
    let mean = beside.map(|(x, y)| lab.seen(v(0.0, 10.0, 8.0), v(x, 10.0 + y, 0.0))).iter().sum::<f64>() / 4.0;
    assert!(mean > 0.02);
    close(sight.ground.typical, mean, 0.15);
}

/// Means over what is seen are by solid angle: of an oblique picture from near its end, rays from the eye agree.
#[test]
fn means_are_by_solid_angle() {
    let lab = Lab::new(&format!(
        r#"{DARK} walls: [(name: "wall", at: (0, 6, 0), width: 12, height: 8, surface: "grey")],
        spots: [(name: "spot", at: (2.2, 8.4, 1.6), look: "wall")], {}"#,
        station("16:9", "white", r#"at: (-2, 10, 1.8), aim: (0, 10, 0), target: "wall", lumens: 100"#)
    ));
    let (eye, lens) = (v(2.2, 10.0, 1.6), lab.night.beams[0].lens);
    let ahead = (v(0.2, 10.0, 0.0) - eye).normalize();
    let side = ahead.cross(glam::Vec3::Y).normalize();
    let (mut sum, mut open) = (0.0, 0.0);
    for i in 0..900 * 600 {
        let (x, y) = ((i % 900) as f32 / 300.0 - 1.5, (i / 900) as f32 / 300.0 - 1.0);
        let way = ahead + x * side + y * glam::Vec3::Y;
        let along = way.normalize();
        if along.z >= 0.0 {
            continue;
        }
        let point = eye + along * (-eye.z / along.z);
        let Some((u, v, _)) = lens.project(point) else { continue };
        if !(0.0..=1.0).contains(&u) || !(0.0..=1.0).contains(&v) {
            continue;
        }
        let weight = f64::from(way.length().powi(-3)) / (300.0 * 300.0);
        let light = f64::from(luma(lab.night.luminance(EyeRay { from: eye, along, width: 0.0 })));
        (sum, open) = (sum + weight * light, open + weight);
    }
    let sight = seen(&lab);
    close(sight.mean.typical, sum / open, 0.02);
    close(sight.figure_lx.typical, sum, 0.02);
    close(sight.size_arcmin, 2.0 * (open / PI).sqrt().to_degrees() * 60.0, 0.02);
}

/// The ground beside a sharp figure is what the projector calls black, and nothing of the figure's own edge: their ratio is the contrast,
/// but for what the figure's outer cells lose at its edge.
#[test]
fn the_ground_beside_a_sharp_figure_is_black() {
    let station = station("16:9", "middle", &format!(r#"aim: (0, 10, 0), target: "wall", {NEAR}"#));
    let fields = format!(
        r#"{DARK} walls: [(name: "wall", at: (0, 6, 0), width: 8, height: 8, surface: "grey")],
        spots: [(name: "spot", at: (0, 8.4, 8), look: "wall")], {station}"#
    );
    let lab = Lab::edited(&fields, |yard| {
        let projector = yard.projectors.iter_mut().find(|one| one.name.0 == "16:9").unwrap();
        projector.on_off_contrast = Positive(3000.0);
        projector.checker_contrast = Positive(3000.0);
    });
    close(lab.reading().spots[0].figure_to_ground.unwrap().typical, 3000.0, 0.05);
}
