//! Scenes in closed form: light and sight through nets, glass and leaves, and by way of mirrors.

use crate::lab::{DARK, GAMMA, Lab, close, mesh, mesh_mean, square_lx, station, v};
use gauzelight::scene::Yard;
use glam::Vec3;
use std::f64::consts::PI;

const WIDE: f64 = 16.0 / 9.0;

/// A grey wall at z = 0 that faces the street.
const WALL: &str = r#"walls: [(name: "wall", at: (0, 8, 0), width: 4, height: 4, surface: "grey")],"#;

/// A station 6 m before the wall.
fn projector() -> String {
    station("16:9", "white", "at: (0, 10, 6), aim: (0, 10, 0)")
}

/// The lens, from where an eye sees what is lit square on.
const LENS: Vec3 = Vec3::new(0.0, 10.0, 6.0);

/// The middle of the picture on the wall.
const MIDDLE: Vec3 = Vec3::new(0.0, 10.0, 0.0);

fn cloth(name: &str, fabric: &str, z: f64, more: &str) -> String {
    format!(r#"(name: "{name}", fabric: "{fabric}", at: (0, 11.5, {z}), width: 3, height: 3, {more})"#)
}

#[test]
fn the_reference_mesh_is_the_published_one() {
    // (0,0), and between (30,0) and (30,45); hemispherical mean.
    close(mesh(GAMMA, 0.0), 0.444_444, 1e-5);
    close(mesh(GAMMA, 30_f64.to_radians()), 0.410_067, 1e-3);
    close(mesh_mean(GAMMA), 0.2977, 3e-4);
}

/// `L = ρ(0)²/ρ̄ · E_net/π + τ² ρ_w E_wall/π`, threads scattering what does not pass between them.
#[test]
fn a_wall_behind_a_net() {
    let lab = Lab::new(&format!("{DARK}{WALL}cloths: [{}],{}", cloth("net", "net", 2.0, ""), projector()));
    let (open, mean) = (mesh(GAMMA, 0.0), mesh_mean(GAMMA));
    let (on_net, on_wall) = (square_lx(WIDE, 4.0), open * square_lx(WIDE, 6.0));
    close(lab.lx(v(0.0, 10.0, 2.0), Vec3::Z), on_net, 1e-4);
    close(lab.lx(MIDDLE, Vec3::Z), on_wall, 1e-4);
    let scattered = (1.0 - open).powi(2) / (1.0 - mean) * on_net / PI;
    close(lab.seen(LENS, MIDDLE), 0.6 * scattered + open * 0.5 * on_wall / PI, 1e-3);
    // From behind the net: what its threads scatter onwards, and nothing beyond.
    close(lab.seen(v(0.5, 10.0, 1.0), v(0.5, 10.0, 2.0)), 0.3 * scattered, 5e-3);
    // No light comes back from the wall: there is no bounce in what is computed here.
    assert_eq!(lab.lx(v(0.0, 10.0, 2.0), Vec3::NEG_Z), 0.0);
}

#[test]
fn two_nets_at_an_angle_multiply() {
    let cloths = [cloth("one", "black net", 2.0, ""), cloth("two", "black net", 3.5, "turn_deg: 30")].join(",");
    let lab = Lab::new(&format!("{DARK}{WALL}cloths: [{cloths}],{}", projector()));
    let through = mesh(GAMMA, 0.0) * mesh(GAMMA, 30_f64.to_radians());
    let on_wall = through * square_lx(WIDE, 6.0);
    close(lab.lx(MIDDLE, Vec3::Z), on_wall, 1e-4);
    close(lab.seen(LENS, MIDDLE), through * 0.5 * on_wall / PI, 2e-4);
    close(lab.lx(v(0.0, 10.0, 3.0), Vec3::Z), mesh(GAMMA, 30_f64.to_radians()) * square_lx(WIDE, 3.0), 1e-4);
}

/// Reflectance and transmittance of one pane of float glass, square on: index 1.52, 0.98 within, by the sum of all
/// reflections between its faces.
fn pane() -> (f64, f64) {
    let (face, within) = ((0.52_f64 / 2.52).powi(2), 0.98);
    let rounds = 1.0 / (1.0 - face * face * within * within);
    let through = (1.0 - face).powi(2) * within * rounds;
    (face * (1.0 + within * through), through)
}

fn window(glazing: &str, films: &str, station: &str) -> Lab {
    Lab::new(&format!(
        r#"{DARK} walls: [(name: "wall", at: (0, 8.5, 0), width: 4, height: 3, surface: "white", openings: [
            Window(
                name: "window", left: 1.4, sill: 1, width: 1.2, height: 1,
                glazing: {glazing}, room: (depth: 3, reflectance: 0),
            ),
        ])], {films} {station}"#
    ))
}

/// `L = T G(β) E / π`: gain 0.8, half of it at 35°, Gaussian in the bend between the light's way and the eye's.
#[test]
fn a_pane_over_a_film() {
    let behind = station("16:9", "white", "at: (0, 10, -2.5), aim: \"film\"");
    let film = r#"films: [(name: "film", fabric: "film", window: "window")],"#;
    let (reflected, through) = pane();
    for (glazing, glass) in
        [("Unglazed", 1.0), ("Single", through), ("Double", through * through / (1.0 - reflected.powi(2)))]
    {
        let lab = window(glazing, film, &behind);
        let film = lab.night.place("film").expect("it hangs").middle;
        let arrives = square_lx(WIDE, f64::from(film.z) + 2.5);
        close(lab.lx(film, Vec3::NEG_Z), arrives, 1e-4);
        // Two panes of absorbing glass pass a little less than the plain sum over their unpolarised faces.
        close(lab.seen(film + 3.0 * Vec3::Z, film), glass * 0.8 * arrives / PI, 2e-3);
        if glazing == "Unglazed" {
            let aside = 30_f32.to_radians();
            let gain = 0.8 * (-(30.0_f64 / 35.0).powi(2) * 2_f64.ln()).exp();
            close(lab.seen(film + 3.0 * v(aside.sin(), 0.0, aside.cos()), film), gain * arrives / PI, 1e-3);
        }
    }
}

/// A pane throws back what stands before it, once.
#[test]
fn a_dark_window_mirrors_the_street() {
    let (reflected, _) = pane();
    let lamp = r#"lamps: [(name: "lamp", kind: "window", at: (0, 10, 6), size: (2, 2), turn_deg: 180)],"#;
    let lab = window("Single", lamp, "");
    let bright = 1000.0 / (PI * 4.0);
    close(lab.seen(v(0.0, 10.0, 4.0), MIDDLE), reflected * bright, 1e-3);
}

/// A mirror of half a metre 3 m from the lens, turned so that light along +x goes on along +z.
const MIRROR: &str = r#"(name: "mirror", at: (3, 10, 0), width: 0.5, height: 0.5, turn_deg: -45, reflectance: 0.8)"#;

/// A lens that looks along +x, its picture's middle by way of mirrors at the aim; it faces a wall 6 m off.
fn folded(mirrors: &str, names: &str, aim: &str, more: &str) -> Lab {
    let place = format!("at: (0, 10, 0), aim: {aim}, mirrors: {names}");
    Lab::new(&format!(
        r#"{DARK} walls: [(name: "opposite", at: (6, 8, 0), width: 4, height: 4, turn_deg: -90, surface: "grey")],
        mirrors: [{mirrors}], {more} {}"#,
        station("16:9", "white", &place)
    ))
}

#[test]
fn light_by_way_of_a_mirror() {
    // What stands behind the mirror, on the straight line from the mirrored lens, never counts.
    let behind = r#"things: [Block(name: "block", at: (3, 9, -1.5), width: 1, height: 2, depth: 0.2)],"#;
    let lab = folded(MIRROR, r#"["mirror"]"#, "(3, 10, 5)", behind);
    close(lab.lx(v(3.0, 10.0, 5.0), Vec3::NEG_Z), 0.8 * square_lx(WIDE, 8.0), 1e-4);
    // The mirror's edges bound the light 0.446 m to the right and 0.667 m up.
    assert!(lab.lx(v(3.44, 10.0, 5.0), Vec3::NEG_Z) > 0.0 && lab.lx(v(3.45, 10.0, 5.0), Vec3::NEG_Z) == 0.0);
    assert!(lab.lx(v(3.0, 10.66, 5.0), Vec3::NEG_Z) > 0.0 && lab.lx(v(3.0, 10.67, 5.0), Vec3::NEG_Z) == 0.0);
    // Light that misses the mirror goes on; behind the mirror is its shadow.
    close(lab.lx(v(6.0, 10.8, 0.0), Vec3::NEG_X), square_lx(WIDE, 6.0), 1e-4);
    assert_eq!(lab.lx(v(6.0, 10.0, 0.0), Vec3::NEG_X), 0.0);
    // Nothing comes out of its back, and the side of a plane that is turned away stays dark.
    assert_eq!(lab.lx(v(3.0, 10.0, -1.2), Vec3::Z), 0.0);
    assert_eq!(lab.lx(v(3.0, 10.0, 5.0), Vec3::Z), 0.0);
    // A cloth between mirror and plane weighs on this leg alone.
    let net = r#"cloths: [(name: "net", fabric: "net", at: (3, 11, 3), width: 2, height: 2)],"#;
    let lab = folded(MIRROR, r#"["mirror"]"#, "(3, 10, 5)", net);
    close(lab.lx(v(3.0, 10.0, 5.0), Vec3::NEG_Z), 0.8 * mesh(GAMMA, 0.0) * square_lx(WIDE, 8.0), 1e-4);
    close(lab.lx(v(3.0, 10.0, 3.0), Vec3::NEG_Z), 0.8 * square_lx(WIDE, 6.0), 1e-4);
}

#[test]
fn a_mirror_with_its_back_to_the_lens_throws_nothing() {
    let turned = MIRROR.replace("turn_deg: -45", "turn_deg: 135");
    let lab = folded(&turned, r#"["mirror"]"#, "(3, 10, 5)", "");
    for point in [v(3.0, 10.0, 5.0), v(3.0, 10.0, 1.2), v(3.0, 10.0, -5.0)] {
        assert_eq!(lab.lx(point, Vec3::NEG_Z) + lab.lx(point, Vec3::Z), 0.0);
    }
}

/// A second mirror at (3, 10, 2) turns the light along +x again, which then meets a plane at x = 6.
#[test]
fn light_by_way_of_two_mirrors() {
    let second = r#"(name: "second", at: (3, 10, 2), width: 0.9, height: 0.9, turn_deg: 135, reflectance: 0.7)"#;
    let names = r#"["mirror", "second"]"#;
    let lab = folded(&format!("{second}, {MIRROR}"), names, "(6, 10, 2)", "");
    let wanted = 0.7 * 0.8 * square_lx(WIDE, 8.0);
    for point in [v(5.9, 10.0, 2.0), v(5.9, 10.4, 2.1)] {
        close(lab.lx(point, Vec3::NEG_X), wanted * (8.0 / 7.9_f64).powi(2), 1e-3);
    }
    let swapped = folded(&format!("{second}, {MIRROR}"), r#"["second", "mirror"]"#, "(6, 10, 2)", "");
    assert_eq!(swapped.lx(v(5.9, 10.0, 2.0), Vec3::NEG_X), 0.0, "the light meets them in their order");
    let standing = r#"things: [Block(name: "block", at: (3, 9, 1), width: 1, height: 2, depth: 0.2)],"#;
    let blocked = folded(&format!("{second}, {MIRROR}"), names, "(6, 10, 2)", standing);
    assert_eq!(blocked.lx(v(5.9, 10.0, 2.0), Vec3::NEG_X), 0.0, "something opaque between the mirrors");
}

/// An eye sees in a mirror what stands before it, times its reflectance, and never what stands behind.
#[test]
fn sight_by_way_of_a_mirror() {
    let lab = Lab::new(&format!(
        r#"{DARK} walls: [(name: "wall", at: (0, 8, 8), width: 4, height: 4, turn_deg: 180, surface: "grey")],
        mirrors: [(name: "mirror", at: (0, 10, 0), width: 1, height: 1, reflectance: 0.9)],
        lamps: [
            (name: "lamp", kind: "globe", at: (0, 13, 5)),
            (name: "behind", kind: "window", at: (0, 10, -1), size: (2, 2)),
        ],"#
    ));
    let wall = lab.seen(v(0.5, 10.0, 4.0), v(1.0, 10.0, 8.0));
    assert!(wall > 0.1);
    close(lab.seen(v(0.0, 10.0, 4.0), v(1.0 / 3.0, 10.0, 0.0)), 0.9 * wall, 1e-4);
    assert_eq!(lab.seen(v(0.0, 10.0, -0.5), MIDDLE), 0.0, "its back is black");
}

#[test]
fn opaque_things_cast_a_shadow() {
    let block = r#"things: [Block(name: "block", at: (0, 9.5, 3), width: 1, height: 1, depth: 0.2)],"#;
    let lab = Lab::new(&format!("{DARK}{WALL}{block}{}", projector()));
    // Its front stands 2.9 m from the lens, so that half a metre casts 1.034 m.
    assert_eq!(lab.lx(MIDDLE, Vec3::Z), 0.0);
    assert_eq!(lab.lx(v(1.03, 10.0, 0.0), Vec3::Z), 0.0);
    close(lab.lx(v(1.04, 10.0, 0.0), Vec3::Z), square_lx(WIDE, 6.0), 1e-4);
}

/// A crown passes its gap: the root of it at each of its two shells.
#[test]
fn leaves_pass_their_gap() {
    let plants = [
        r#"Hedge(name: "hedge", from: (-2, 9, 3), to: (2, 9, 3), height: 3, gap: 0.09)"#,
        r#"Tree(name: "tree", at: (0, 6, 3), height: 5, crown: 1.2, clear: 2, gap: 0.09)"#,
    ];
    for plant in plants {
        // Above the trunk, which ends a third of the way into the crown.
        let lab = Lab::new(&format!("{DARK}{WALL} plants: [{plant}],{}", projector()));
        close(lab.lx(MIDDLE, Vec3::Z), 0.09 * square_lx(WIDE, 6.0), 1e-3);
        close(lab.lx(v(0.0, 10.0, 3.0), Vec3::Z), 0.3 * square_lx(WIDE, 3.0), 1e-3);
        let leaves = lab.seen(LENS, MIDDLE) - 0.09 * 0.5 * 0.09 * square_lx(WIDE, 6.0) / PI;
        assert!(leaves > 0.0, "lit leaves are seen too");
    }
}

/// A black net before a white screen and the same two the other way round are not alike.
#[test]
fn the_order_of_layers_counts() {
    let order = |fabric: &str, behind: &str| {
        let cloth = cloth("cloth", fabric, 2.0, &format!(r#"behind: ["{behind}"]"#));
        let lab = Lab::new(&format!("{DARK}cloths: [{cloth}],{}", projector()));
        lab.seen(LENS, v(0.0, 10.0, 2.0))
    };
    let (net_first, screen_first) = (order("black net", "screen"), order("screen", "black net"));
    // In front, the net takes light on its way in and again on its way out; behind the screen it only swallows.
    close(net_first, mesh(GAMMA, 0.0).powi(2) * screen_first, 2e-3);
}

/// Only the station asked for counts.
#[test]
fn the_light_of_one_station_alone() {
    let two = |yard: &mut Yard| {
        let mut other = yard.stations[0].clone();
        other.name = gauzelight::scene::Name::of("other");
        other.lumens = Some(gauzelight::scene::Band::exact(500.0));
        yard.stations.push(other);
    };
    let lab = Lab::edited(&format!("{DARK}{WALL}{}", projector()), two);
    let ray = gauzelight::light::EyeRay { from: v(1.0, 10.0, 3.0), along: Vec3::NEG_Z, width: 0.0 };
    let of = |station| f64::from(gauzelight::light::luma(lab.night.luminance_of(ray, station)));
    close(of(0), 2.0 * of(1), 1e-5);
    close(lab.seen(ray.from, ray.from + ray.along), of(0) + of(1), 1e-5);
}
