//! Lamps, moon and sky: lumens in all directions, a direction from afar, and a dome.

use crate::lab::{DARK, Lab, close, v};
use gauzelight::{
    light::{Source, luma},
    scene::Catalogue,
};
use glam::Vec3;
use std::f64::consts::PI;

fn lamp(place: &str) -> String {
    format!(r#"{DARK} lamps: [(name: "lamp", {place})],"#)
}

/// Light that arrives on the inner faces of a box around a lamp, lm.
fn caught(lab: &Lab, middle: Vec3, half: f32) -> f64 {
    const CELLS: u32 = 48;
    let cell = 2.0 * half / CELLS as f32;
    let mut sum = 0.0;
    for (out, right, up) in [(Vec3::X, Vec3::Y, Vec3::Z), (Vec3::Y, Vec3::Z, Vec3::X), (Vec3::Z, Vec3::X, Vec3::Y)] {
        for side in [1.0, -1.0] {
            for k in 0..CELLS * CELLS {
                let along = |i: u32| (i as f32 + 0.5) * cell - half;
                let point = middle + side * half * out + along(k % CELLS) * right + along(k / CELLS) * up;
                sum += lab.lx(point, -side * out) * f64::from(cell * cell);
            }
        }
    }
    sum
}

#[test]
fn a_globe_gives_the_same_all_around() {
    let lab = Lab::new(&lamp(r#"kind: "globe", at: (0, 10, 0)"#));
    for (distance, toward) in [(1.0, Vec3::X), (2.0, Vec3::NEG_Y), (5.0, v(0.6, 0.0, -0.8)), (8.0, v(0.0, 0.8, 0.6))] {
        let point = v(0.0, 10.0, 0.0) + distance * toward;
        let wanted = 1000.0 / (4.0 * PI * f64::from(distance * distance));
        close(lab.lx(point, -toward), wanted, 1e-4);
        let aside = toward.any_orthonormal_vector();
        close(lab.lx(point, (-toward + aside).normalize()), wanted / 2_f64.sqrt(), 1e-4);
        assert_eq!(lab.lx(point, toward), 0.0, "the side turned away is dark");
    }
}

/// So many lamps that they stand in a tree: each gives what it gives alone, to the bit; where that is less than 5e-4 lx it
/// may give nothing.
#[test]
fn many_lamps_give_what_each_gives_alone() {
    const LAMPS: usize = 90;
    let one = |i: usize| {
        let kind = ["globe", "hooded", "beam"][i % 3];
        let (x, y, z) = ((i * 37 % 90) as f32 - 45.0, 10.0 + (i % 7) as f32, (i * 53 % 90) as f32 - 45.0);
        // From a spark to a flood.
        let lumens = 10_f32.powi(i as i32 % 5 - 1);
        format!(
            r#"(name: "lamp {i}", kind: "{kind}", at: ({x}, {y}, {z}), lumens: {lumens}, turn_deg: {}),"#,
            i * 29 % 360
        )
    };
    let lab = |lamps: &str| Lab::new(&format!("{DARK} lamps: [{lamps}],"));
    let all = lab(&(0..LAMPS).map(one).collect::<String>());
    let places: Vec<Vec3> =
        (0..40).map(|k| v((k * 17 % 60) as f32 - 30.0, 8.0 + (k % 5) as f32, (k * 23 % 60) as f32 - 30.0)).collect();
    let (mut lit, mut dark) = (0, 0);
    for i in 0..LAMPS {
        let alone = lab(&one(i));
        for &point in &places {
            let of_all = all.night.illuminance(point, Vec3::Y).lx[i];
            let by_itself = alone.night.illuminance(point, Vec3::Y).lx[0];
            let too_dim = luma(by_itself) < 5e-4 && of_all == Vec3::ZERO;
            assert!(of_all == by_itself || too_dim, "lamp {i} at {point}: {of_all}, alone {by_itself}");
            *if luma(of_all) > 0.0 { &mut lit } else { &mut dark } += 1;
        }
    }
    assert!(lit > 300 && dark > 300, "{lit} {dark}");
}

/// Whatever the shape of its light, a closed box around a lamp gets all of it.
#[test]
fn every_lumen_of_a_lamp_lands() {
    let at = "at: (0, 10, 0)";
    let lamps = [
        format!(r#"kind: "globe", {at}"#),
        format!(r#"kind: "hooded", {at}"#),
        format!(r#"kind: "beam", {at}, turn_deg: 30, tilt_deg: 20"#),
        format!(r#"kind: "window", {at}, size: (0.6, 0.4), turn_deg: 10"#),
        r#"kind: "globe", at: (-1, 10, 0), to: (1, 10.2, 0.3), bulbs: 20"#.to_owned(),
    ];
    for place in lamps {
        let lab = Lab::new(&lamp(&place));
        let caught = caught(&lab, v(0.1, 10.2, 0.1), 2.5);
        assert!((caught - 1000.0).abs() < 3.0, "{place}: {caught} lm");
    }
}

#[test]
fn lamps_face_where_they_are_turned() {
    let lab = Lab::new(&lamp(r#"kind: "beam", at: (0, 10, 0), turn_deg: 90, tilt_deg: 30"#));
    let axis = v(30_f32.to_radians().cos(), -0.5, 0.0);
    let at = |toward: Vec3| lab.lx(v(0.0, 10.0, 0.0) + 3.0 * toward, -toward);
    let aside = axis * 25_f32.to_radians().cos() + Vec3::Z * 25_f32.to_radians().sin();
    close(at(aside) / at(axis), 0.5, 0.02);
    assert_eq!(at(-axis), 0.0);
    let hooded = Lab::new(&lamp(r#"kind: "hooded", at: (0, 10, 0), turn_deg: 90"#));
    assert_eq!(hooded.lx(v(0.0, 12.0, 0.0), Vec3::NEG_Y), 0.0, "nothing above a hood");
    assert!(hooded.lx(v(0.0, 8.0, 0.0), Vec3::Y) > 1000.0 / (4.0 * PI * 4.0));
}

/// Light of a street lamp of 4000 lm on a post on an upright plane that faces it, at the height of an eye, so far along the ground, lx.
fn upright(kind: &str, post: f64, away: f32) -> f64 {
    let lab = Lab::new(&lamp(&format!(r#"kind: "{kind}", at: (0, {post}, 0), lumens: 4000"#)));
    lab.lx(v(away, 1.6, 0.0), Vec3::NEG_X)
}

/// By hand from the printed tables: `4 I sin γ / d²` with I in cd per 1000 lm, straight lines between the angles.
#[test]
fn street_lamps_reach_as_far_as_their_optics_say() {
    for (kind, at_5_m, at_6_m) in [
        ("street lamp, LED", 0.435, 0.752),
        ("street lamp, cut-off", 0.738, 0.942),
        ("street lamp, semi-cut-off", 1.560, 1.701),
        ("street lamp, globe", 0.762, 0.741),
        ("street lamp, sodium", 0.738, 0.942),
    ] {
        close(upright(kind, 5.0, 20.0), at_5_m, 0.01);
        close(upright(kind, 6.0, 20.0), at_6_m, 0.01);
        let range = match kind {
            "street lamp, semi-cut-off" => 1.0..1.9,
            "street lamp, globe" => 0.7..0.8,
            _ => 0.3..1.0,
        };
        for post in [5.0, 5.5, 6.0] {
            assert!(range.contains(&upright(kind, post, 20.0)), "{kind} at {post} m: {}", upright(kind, post, 20.0));
        }
    }
}

/// The printed tables are cd for 1000 lm: what is thrown straight down is what they say.
#[test]
fn a_table_of_candela_is_read_as_it_stands() {
    let catalogue = Catalogue::builtin();
    for (kind, candela) in
        [("street lamp, LED", 165.0), ("street lamp, cut-off", 149.0), ("street lamp, semi-cut-off", 110.0)]
    {
        assert!(catalogue.lamp_kinds.iter().any(|known| known.name.0 == kind), "{kind}");
        let lab = Lab::new(&lamp(&format!(r#"kind: "{kind}", at: (0, 15, 0), lumens: 1000"#)));
        close(lab.lx(v(0.0, 10.0, 0.0), Vec3::Y), candela / 25.0, 0.003);
        close(lab.lx(v(0.5, 10.0, 0.0), Vec3::Y), candela * 5.0 / 25.25_f64.powf(1.5), 0.003);
        let caught = caught(&lab, v(0.1, 15.2, 0.1), 2.5);
        assert!((caught - 1000.0).abs() < 3.0, "{kind}: {caught} lm");
    }
}

#[test]
fn a_lamp_that_is_off_gives_nothing() {
    let lab = Lab::new(&lamp(r#"kind: "globe", at: (0, 10, 0), on: false"#));
    assert_eq!(lab.lx(v(0.0, 9.0, 0.0), Vec3::Y), 0.0);
}

/// `L = Φ / (π A)` of a lit window from everywhere before it, and its lumens from its own word.
#[test]
fn a_lit_window_is_as_bright_as_its_lumens_say() {
    let lab = Lab::new(&lamp(r#"kind: "window", at: (0, 10, 0), size: (1.2, 1), lumens: 40"#));
    for eye in [v(0.0, 10.0, 4.0), v(3.0, 11.0, 2.0)] {
        close(lab.seen(eye, v(0.2, 10.1, 0.01)), 40.0 / (PI * 1.2), 1e-3);
    }
    close(lab.lx(v(0.0, 10.0, 6.0), Vec3::NEG_Z), 40.0 / PI / 36.0, 0.02);
}

fn moonlit(height: f64, bearing: f64) -> Lab {
    Lab::new(&format!(
        r#"evening: (sky_lx: 0, moon: (lx: 0.2, bearing_deg: {bearing}, height_deg: {height})),
        ground: (surface: "grey", width: 20, depth: 20),
        walls: [(name: "wall", at: (0, 0, 0), width: 2, height: 2)],"#
    ))
}

/// The moon's illuminance is that of level ground, so that a plane square to it gets `E / sin h`.
#[test]
fn moonlight_by_height_and_bearing() {
    for height in [5.0, 30.0, 60.0, 90.0] {
        let lab = moonlit(height, 0.0);
        close(lab.lx(v(5.0, 0.0, 5.0), Vec3::Y), 0.2, 1e-5);
        let (sin, cos) = f64::to_radians(height).sin_cos();
        close(lab.lx(v(5.0, 0.5, 5.0), v(0.0, sin as f32, cos as f32)), 0.2 / sin, 1e-5);
        close(lab.seen(v(5.0, 2.0, 5.5), v(5.0, 0.0, 5.0)), 0.5 * 0.2 / PI, 1e-5);
    }
    // From the street at bearing 0, from the right at 90.
    for (bearing, lit) in [(0.0, Vec3::Z), (90.0, Vec3::X), (180.0, Vec3::NEG_Z), (-90.0, Vec3::NEG_X)] {
        let lab = moonlit(30.0, bearing);
        close(lab.lx(v(5.0, 1.0, 5.0), lit), 0.2 / 30_f64.to_radians().tan(), 1e-5);
        assert_eq!(lab.lx(v(5.0, 1.0, 5.0), -lit), 0.0);
    }
    let lab = moonlit(45.0, 0.0);
    assert_eq!(lab.lx(v(0.0, 0.0, -1.0), Vec3::Y), 0.0, "the shadow of the wall");
    close(lab.lx(v(0.0, 0.0, -2.5), Vec3::Y), 0.2, 1e-5);
}

const HOUSE: &str = r#"
    evening: (sky_lx: 2), ground: (surface: "grey", width: 60, depth: 60),
    houses: [(name: "house", at: (0, 0, 0), width: 6, depth: 5, height: 3, surface: "grey", openings: [
        Window(name: "window", left: 2.4, sill: 1, width: 1.2, height: 1, room: (depth: 3.5)),
    ])],"#;

/// A free half of the dome is a half whichever way the wall faces: no ray may lie on the horizon and count for nothing.
const SAMPLING: f64 = 0.005;

#[test]
fn the_sky_over_ground_wall_and_room() {
    let lab = Lab::new(HOUSE);
    close(lab.lx(v(0.0, 0.0, 25.0), Vec3::Y), 2.0, 1e-5);
    for facing in [Vec3::Z, Vec3::X, Vec3::NEG_X, v(0.6, 0.0, 0.8), v(-0.8, 0.0, 0.6)] {
        close(lab.lx(v(0.0, 2.0, 25.0), facing), 1.0, SAMPLING);
    }
    assert_eq!(lab.lx(v(0.0, 2.0, 25.0), Vec3::NEG_Y), 0.0, "no sky below the horizon");
    assert!(lab.lx(v(1.0, 1.5, -3.0), Vec3::Z) < 0.05 * 2.0, "a room has what comes by its window");
    assert_eq!(lab.lx(v(1.0, 1.5, -3.0), Vec3::NEG_Z), 0.0);
    // What an eye sees rests on the values at the corners of the mesh.
    close(lab.seen(v(0.0, 1.6, 27.0), v(0.0, 0.0, 25.0)), 0.5 * 2.0 / PI, 1e-4);
    close(lab.seen(v(0.0, 5.0, 27.0), v(0.0, 50.0, 25.0)), 2.0 / PI, 1e-5);
    let wall = lab.seen(v(-2.0, 1.6, 6.0), v(-2.0, 1.2, 0.0));
    let free = 0.5 * 1.0 / PI;
    assert!(wall < free * (1.0 + SAMPLING) && wall > 0.8 * free, "the eaves take a little: {wall} of {free}");
}

#[test]
fn light_is_told_apart_by_its_source() {
    let lab = Lab::new(
        r#"evening: (sky_lx: 2, moon: (lx: 0.2, bearing_deg: 0, height_deg: 45)),
        ground: (surface: "grey", width: 60, depth: 60),
        lamps: [(name: "porch", kind: "globe", at: (0, 2, 0))],
        stations: [(
            name: "station", projector: "16:9", at: (0, 3, 0), aim: (0.1, 0, 0), content: (picture: "white"),
        )],"#,
    );
    let shares = lab.night.illuminance(Vec3::ZERO, Vec3::Y);
    let of = |name: &str| {
        let index = lab.night.sources.iter().position(|source| source.name() == name).expect("it is a source");
        f64::from(luma(shares.lx[index]))
    };
    assert_eq!(lab.night.sources[0], Source::Station(0, "station".to_owned()));
    close(of("sky"), 2.0, 1e-5);
    close(of("moon"), 0.2, 1e-5);
    close(of("porch"), 1000.0 / (16.0 * PI), 1e-5);
    close(of("station"), crate::lab::square_lx(16.0 / 9.0, 3.0), 0.01);
    close(f64::from(luma(shares.total())), of("sky") + of("moon") + of("porch") + of("station"), 1e-6);
}

/// A rail's corners lie behind the fence's boards; what of it shows between them stands in the open all the same.
#[test]
fn no_rail_of_a_fence_is_black() {
    let fence = r#"evening: (sky_lx: 2), things: [Fence(name: "fence", from: (-3, 0, 0), to: (3, 0, 0))],"#;
    let lab = Lab::new(fence);
    let owner = lab.night.place("fence").expect("it stands").owner;
    let mut seen = 0;
    for (index, solid) in (0..).zip(lab.night.solids.iter()).filter(|(_, solid)| solid.owner == owner) {
        let [a, b, c] = solid.corners;
        let normal = (b - a).cross(c - a).normalize();
        if normal.y > -0.5 {
            seen += 1;
            let sky = lab.night.corner_sky(index);
            assert!(sky.iter().all(|share| *share > 0), "{:?} towards {normal}: {sky:?}", solid.corners);
        }
    }
    assert!(seen > 500, "{seen}");
}
