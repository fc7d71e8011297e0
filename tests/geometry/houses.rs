//! Houses: openings really cut, rooms behind them, and nothing that leaks.

use super::probe::Probe;
use super::yards::*;
use gauzelight::geometry::{Built, build};
use gauzelight::scene::{Angle, House, Name, Opening, Ridge, Roof, Side, Wall, Yard};
use glam::{Vec2, Vec3};

fn of(houses: Vec<House>) -> Built {
    build(&Yard { houses, ..empty() })
}

/// The outward direction of a wall, and area of all triangles of the first solid in its plane.
fn area_in_plane(built: &Built, out: Vec3, distance: f32) -> f32 {
    let in_plane = |t: &[Vec3; 3]| {
        let normal = (t[1] - t[0]).cross(t[2] - t[0]).normalize_or_zero();
        normal.dot(out) > 0.999 && t.iter().all(|p| (p.dot(out) - distance).abs() < 1e-3)
    };
    let mesh = &built.solids[0].mesh;
    mesh.corners().filter(in_plane).map(|[a, b, c]| 0.5 * (b - a).cross(c - a).length()).sum()
}

#[test]
fn openings_are_cut_out_of_every_wall() {
    let built = of(vec![cottage(gable(Ridge::Along))]);
    // A door keeps a threshold of 2 cm.
    let door = 1.0 * 2.08;
    let front = 8.4 * 3.0 - 1.2 * 1.3 - door - 1.2 * 1.3 - 0.8 * 1.3;
    assert!((area_in_plane(&built, Vec3::Z, -2.0) - front).abs() < 1e-2);
    assert!((area_in_plane(&built, Vec3::NEG_Z, 8.6) - (8.4 * 3.0 - door)).abs() < 1e-2);
    assert!((area_in_plane(&built, Vec3::X, 4.2) - (6.6 * 3.0 - 1.0)).abs() < 1e-2);
    assert!((area_in_plane(&built, Vec3::NEG_X, 4.2) - (6.6 * 3.0 - 0.36)).abs() < 1e-2);
}

#[test]
fn a_ray_through_a_window_reaches_the_far_wall_of_its_room() {
    for turn in [0.0, 90.0, 37.0] {
        let mut cottage = cottage(gable(Ridge::Along));
        cottage.turn_deg = Angle(turn);
        let built = of(vec![cottage]);
        let probe = Probe::new(&built);
        for (name, depth) in [("front left", 3.0), ("side", 1.3), ("hatch", 2.4)] {
            let face = built.place(name).and_then(|p| p.face).expect("a window has a face");
            let met = probe.first(face.middle() + face.normal(), -face.normal()).expect("it ends somewhere");
            let solid = &built.solids[met.solid];
            assert_eq!(built.names[solid.owner as usize], name);
            assert!(solid.indoors && solid.reflectance == Some(0.5) && met.front);
            // From a metre before the glass: the rest of the wall, and the room.
            let beyond = met.t - 1.0 - 0.16;
            assert!(beyond <= 3.001 && beyond > depth - 1e-3, "{name} at {turn}: {beyond}");
        }
    }
}

#[test]
fn rooms_do_not_meet() {
    let built = of(vec![cottage(hip())]);
    let boxes: Vec<(Vec3, Vec3)> = built.chambers.iter().map(|c| (c.middle - c.half, c.middle + c.half)).collect();
    assert_eq!(boxes.len(), 6);
    for (i, a) in boxes.iter().enumerate() {
        assert!((a.1 - a.0).min_element() > 0.2, "{a:?}");
        for b in &boxes[i + 1..] {
            let apart = (b.0 - a.1).max(a.0 - b.1).max_element();
            assert!(apart > 0.01, "{a:?} {b:?}");
        }
    }
}

/// Rays of many directions through everything within `reach` of `middle`: whatever is met first must be met on its
/// front, as the back of a closed body can only be seen by somebody who slipped in through a crack.
fn assert_tight(built: &Built, middle: Vec3, reach: f32) {
    let probe = Probe::new(built);
    let mut met_any = 0;
    for i in 0..2000 {
        // Evenly spread directions and offsets by additive recurrence.
        let r = |k: f64| ((i as f64 + 0.5) * k).fract() as f32;
        let (z, angle) = (2.0 * r(0.819_172_513_4) - 1.0, std::f32::consts::TAU * r(0.671_043_606_7));
        let along = Vec3::new((1.0 - z * z).sqrt() * angle.cos(), z, (1.0 - z * z).sqrt() * angle.sin());
        let side = along.any_orthonormal_pair();
        let offset = Vec2::new(r(0.549_700_477_9), r(0.754_877_666_2)) * 2.0 - 1.0;
        let through = middle + reach * (offset.x * side.0 + offset.y * side.1);
        let from = through - 30.0 * along;
        if from.y < 0.01 {
            continue;
        }
        if let Some(met) = probe.first(from, along) {
            met_any += 1;
            let at = from + met.t * along;
            assert!(
                met.front,
                "slipped in at {at} along {along}: {:?}",
                built.names[built.solids[met.solid].owner as usize]
            );
        }
    }
    assert!(met_any > 500);
}

#[test]
fn nothing_leaks_under_any_roof() {
    for roof in all_roofs() {
        let mut house = cottage(roof);
        house.turn_deg = Angle(11.0);
        assert_tight(&of(vec![house]), Vec3::new(0.0, 2.0, -5.0), 6.0);
    }
}

#[test]
fn nothing_leaks_around_windows_and_corners() {
    let built = of(vec![cottage(gable(Ridge::Along))]);
    let probe = Probe::new(&built);
    for name in ["front left", "front far right", "side", "front door", "back door", "hatch"] {
        let face = built.place(name).and_then(|p| p.face).expect("an opening has a face");
        for i in 0..400 {
            let (s, t) = ((i % 20) as f32 / 19.0, (i / 20) as f32 / 19.0);
            // A little beyond the clear opening on all sides, from straight before and from the sides.
            let target = face.point(1.2 * s - 0.1, 1.2 * t - 0.1);
            for aside in [-1.5, -0.2, 0.0, 0.3, 1.5] {
                let from = target + 2.0 * face.normal() + aside * face.u.normalize() + 0.3 * aside * Vec3::Y;
                if from.y < 0.01 || target.y < 0.01 {
                    continue;
                }
                let met = probe.first(from, target - from).expect("a house ends every ray");
                assert!(met.front, "{name} at {s} {t} from {aside}");
            }
        }
    }
    // Straight at the four upright edges and under the eaves.
    for x in [-4.2f32, 4.2] {
        for z in [-2.0f32, -8.6] {
            for i in 0..200 {
                let target = Vec3::new(x * 0.9995, 0.015 * i as f32 + 1e-3, (z + 5.3) * 0.9998 - 5.3);
                let from = Vec3::new(2.0 * x, target.y, 2.0 * z + 5.3);
                assert!(probe.first(from, target - from).is_some_and(|m| m.front && m.t <= 1.0001));
            }
        }
    }
}

#[test]
fn a_dormer_has_its_room_to_itself() {
    let built = of(vec![cottage(gable(Ridge::Along)), dormer()]);
    let probe = Probe::new(&built);
    let face = built.place("owl window").and_then(|p| p.face).expect("a window has a face");
    for (s, t) in [(0.5, 0.5), (0.1, 0.1), (0.9, 0.1), (0.5, 0.9)] {
        let met = probe.first(face.point(s, t) - 0.01 * face.normal(), -face.normal()).expect("a room has a wall");
        let solid = &built.solids[met.solid];
        assert!(solid.indoors && met.front, "{s} {t}: {}", built.names[solid.owner as usize]);
        // Depth of the house, less both walls.
        assert!((met.t - (2.4 - 0.2 - 0.05)).abs() < 1e-3, "{}", met.t);
    }
    assert_tight(&built, Vec3::new(0.0, 3.5, -4.0), 3.0);
}

#[test]
fn a_court_is_open_above_and_its_walls_are_closed() {
    let built = of(vec![house("court", at(0.0, 0.1, 0.0), [5.0, 4.0, 2.5], Roof::Open, vec![])]);
    let probe = Probe::new(&built);
    let down = probe.first(Vec3::new(0.0, 9.0, -2.0), Vec3::NEG_Y).expect("there is ground");
    assert!((down.t - 9.0).abs() < 1e-4);
    assert!(built.solids[0].mesh.is_closed());
    assert!((built.solids[0].mesh.volume() - 2.5 * (5.0 * 4.0 - 4.6 * 3.6)).abs() < 1e-2);
}

#[test]
fn bodies_and_roofs_without_openings_are_closed() {
    for roof in all_roofs() {
        let built = of(vec![house("h", at(1.0, 0.1, 0.0), [5.0, 7.0, 2.5], roof, vec![])]);
        for solid in &built.solids[..built.solids.len() - 1] {
            assert!(solid.mesh.is_closed() && solid.mesh.volume() > 0.0);
        }
    }
    let square = of(vec![house("h", at(0.0, 0.0, 0.0), [4.0, 4.0, 2.5], hip(), vec![])]);
    assert!(square.solids[1].mesh.is_closed());
}

#[test]
fn a_window_in_a_free_wall_has_its_room_behind() {
    let wall = Wall {
        name: Name::of("wall"),
        note: String::new(),
        at: at(0.0, 0.0, 0.0),
        width: size(4.0),
        height: size(2.5),
        turn_deg: Angle(0.0),
        surface: gauzelight::scene::Ref::to("painted boards, pale"),
        thickness: size(0.2),
        openings: vec![
            Opening::Window(window("w", Side::Front, [1.0, 1.0, 1.0, 0.8])),
            door("gate", Side::Front, 2.6, true),
        ],
    };
    let built = build(&Yard { walls: vec![wall], ..empty() });
    let probe = Probe::new(&built);
    let met = probe.first(Vec3::new(-0.5, 1.4, 2.0), Vec3::NEG_Z).expect("a room has a wall");
    assert!(built.solids[met.solid].indoors && (met.t - 5.2).abs() < 1e-3);
    assert!(probe.first(Vec3::new(1.1, 1.0, 2.0), Vec3::NEG_Z).is_none(), "the gate stands open");
    assert_tight(&built, Vec3::new(0.0, 1.0, -1.0), 3.0);
}

#[test]
fn openings_beside_their_wall_do_no_harm() {
    let odd = [[-3.0, 1.0, 1.0, 1.0], [5.5, 1.0, 3.0, 1.0], [1.0, -2.0, 1.0, 9.0], [1.2, 1.0, 1e-6, 1e-6]];
    let openings =
        odd.iter().enumerate().map(|(i, &r)| Opening::Window(window(&format!("w{i}"), Side::Left, r))).collect();
    let built = of(vec![house("h", at(0.0, 0.0, 0.0), [6.0, 6.0, 2.5], hip(), openings)]);
    assert_eq!(built.names.len(), 6);
    assert_tight(&built, Vec3::new(0.0, 1.2, -3.0), 4.0);
}
