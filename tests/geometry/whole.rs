//! A whole yard: names, counts, edges, and the same every time.

use super::yards::*;
use gauzelight::geometry::{ENOUGH, Outline, build};
use gauzelight::scene::{Count, Fence, Point, Roof, Steps, Thing, Yard};
use glam::Vec3;

#[test]
fn of_far_too_much_enough_is_built_to_tell() {
    // Half a million triangles each.
    let vast = |i: usize| house(&format!("house {i}"), Point::default(), [100.0, 100.0, 20.0], Roof::Open, Vec::new());
    let one = build(&Yard { houses: vec![vast(0)], ..empty() }).triangles();
    let count = 2 * ENOUGH / one;
    let much = build(&Yard { houses: (0..count).map(vast).collect(), ..empty() }).triangles();
    assert!(much > ENOUGH && much < ENOUGH + 2 * one, "{much} of {}", count * one);
}

#[test]
fn a_typical_yard_has_as_many_triangles_as_it_should() {
    let built = build(&typical());
    let triangles: usize = built.solids.iter().map(|s| s.mesh.triangles.len()).sum();
    assert!((20_000..120_000).contains(&triangles), "{triangles}");
}

#[test]
fn every_name_is_entered_once_and_everything_has_an_owner() {
    let yard = typical();
    let built = build(&yard);
    assert_eq!(built.names.len(), built.places.len());
    let mut names = built.names.clone();
    names.sort();
    names.dedup();
    assert_eq!(names.len(), built.names.len());
    for name in ["cottage", "front door", "owl window", "wall window", "path", "hedge", "net", "film", "glass", "moon"]
    {
        let place = built.place(name).expect(name);
        assert_eq!(built.names[place.owner as usize], name);
    }
    let owners = built.solids.iter().map(|s| s.owner).chain(built.veils.iter().map(|v| v.owner));
    assert!(owners.chain(built.chambers.iter().map(|c| c.owner)).all(|o| (o as usize) < built.names.len()));
    assert!(built.solids.iter().all(|s| s.surface.is_empty() == s.reflectance.is_some()));
}

#[test]
fn two_builds_are_equal() {
    assert_eq!(build(&typical()), build(&typical()));
}

#[test]
fn no_edge_is_too_long() {
    let built = build(&typical());
    for solid in &built.solids {
        let name = &built.names[solid.owner as usize];
        let longest = solid.mesh.longest_edge();
        let limit = match name.as_str() {
            // Lines up to a metre apart far from everything, and the diagonals between them.
            "ground" | "street" | "path" => 1.42,
            _ if solid.indoors => 0.501,
            _ => 0.2505,
        };
        assert!(longest <= limit, "{name}: {longest}");
        assert!(solid.mesh.points.iter().all(|p| p.is_finite()));
    }
}

#[test]
fn the_ground_covers_its_extent_and_looks_up() {
    let built = build(&typical());
    let ground = built.solids.last().expect("there is ground");
    assert!((ground.mesh.area() - 44.0 * 44.0).abs() < 0.5);
    let up = |[a, b, c]: [Vec3; 3]| (b - a).cross(c - a).normalize_or_zero().y > 0.999;
    assert!(ground.mesh.corners().all(up));
}

#[test]
fn things_are_closed() {
    let built = build(&Yard { things: things(), ..empty() });
    for solid in &built.solids[..built.solids.len() - 1] {
        assert!(solid.mesh.is_closed() && solid.mesh.volume() > 0.0, "{}", built.names[solid.owner as usize]);
    }
    // 1 + 2 + 3 blocks of a step each.
    let steps = &built.solids[1].mesh;
    assert!((steps.volume() - 6.0 * 1.6 * 0.17 * 0.28).abs() < 1e-3);
}

#[test]
fn a_fence_turns_its_boards_to_the_right_hand_side() {
    let mesh = |from, to| build(&Yard { things: vec![fence("f", from, to)], ..empty() }).solids[0].mesh.clone();
    let right = mesh(at(-2.0, 0.0, 0.0), at(2.0, 0.0, 0.0));
    assert!(right.points.iter().all(|p| p.z < 1e-5));
    let sloping = mesh(at(0.0, 0.0, 0.0), at(0.0, 1.0, -4.0));
    assert!(sloping.points.iter().all(|p| p.x < 1e-5 && p.y > -1e-4));
    assert!(sloping.points.iter().any(|p| p.y > 2.09));
}

#[test]
fn plants_are_crowns_and_trunks() {
    let built = build(&Yard { plants: plants(), ..empty() });
    assert!(built.solids[0].mesh.is_closed());
    match built.veils[0].outline {
        Outline::Crate { middle, half, turn } => {
            assert!(middle.distance(Vec3::new(7.0, 0.95, -1.5)) < 1e-5);
            assert!(half.distance(Vec3::new(2.0, 1.05, 0.35)) < 1e-5);
            assert_eq!(turn, [1.0, 0.0]);
        }
        other => panic!("{other:?} is no hedge"),
    }
    match built.veils[1].outline {
        Outline::Egg { middle, radii } => {
            assert!(middle.distance(Vec3::new(-8.0, 4.6, 1.0)) < 1e-5);
            assert!(radii.distance(Vec3::new(2.2, 2.4, 2.2)) < 1e-5);
        }
        other => panic!("{other:?} is no crown"),
    }
}

#[test]
fn extremes_end() {
    let mut yard = Yard { things: things(), forms: vec![globe(500.0), globe(1e-6)], ..empty() };
    for thing in &mut yard.things {
        match thing {
            Thing::Steps(Steps { count, width, .. }) => (*count, *width) = (Count(10_000), size(500.0)),
            Thing::Pergola(pergola) => pergola.rafters = Count(10_000),
            Thing::Block(block) => (block.width, block.height, block.depth) = (size(500.0), size(500.0), size(1e-9)),
            _ => {}
        }
    }
    yard.things.push(Thing::Fence(Fence {
        name: gauzelight::scene::Name::of("long fence"),
        note: String::new(),
        from: at(-500.0, 0.0, 0.0),
        to: at(500.0, 0.0, 0.0),
        height: size(1.0),
        board: size(1e-3),
        gap: m(1e-3),
        surface: gauzelight::scene::Ref::to("wood, dark"),
    }));
    yard.things.push(fence("no fence", at(1.0, 0.0, 1.0), at(1.0, 0.0, 1.0)));
    let built = build(&yard);
    assert!(built.solids.iter().all(|s| s.mesh.points.iter().all(|p| p.is_finite())));
}
