//! The ray trees and the crossings: the same as brute force, watertight, and each cloth crossed once.

use crate::lab::{DARK, Lab, v};
use gauzelight::{
    geometry::{
        self, Sight, Tree,
        crossing::{self, Corners},
    },
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::collections::HashMap;

/// A fixed row of numbers without a pattern: SplitMix64 (Steele, Lea & Flood 2014).
struct Dice(u64);

impl Dice {
    /// From 0 up to 1.
    fn share(&mut self) -> f32 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((z ^ (z >> 31)) >> 40) as f32 / (1u32 << 24) as f32
    }

    /// Within a cube from −1 to 1.
    fn point(&mut self) -> Vec3 {
        Vec3::from_array(std::array::from_fn(|_| 2.0 * self.share() - 1.0))
    }

    fn below(&mut self, count: usize) -> usize {
        ((self.share() * count as f32) as usize).min(count - 1)
    }
}

fn tree_over(soup: &[Corners]) -> Tree {
    let boxes: Vec<_> = soup.iter().map(|[a, b, c]| (a.min(*b).min(*c), a.max(*b).max(*c))).collect();
    Tree::over(&boxes)
}

fn distance(soup: &[Corners], id: u32, sight: Sight) -> f32 {
    crossing::triangle(&soup[id as usize], sight.origin, sight.direction).map_or(f32::INFINITY, |(t, _)| t)
}

/// Triangle soups: none, one, many, tiny ones far apart, huge ones, without area, all in one place, in one plane.
fn soups(dice: &mut Dice) -> Vec<Vec<Corners>> {
    let mut around = |middle: Vec3, size: f32| std::array::from_fn(|_| middle + size * dice.point());
    let one: Corners = around(Vec3::ZERO, 1.0);
    let near: Vec<Corners> = (0..700).map(|i| around(v((i % 9) as f32, (i % 7) as f32, (i % 5) as f32), 0.6)).collect();
    let far: Vec<Corners> = (0..300).map(|i| around(20.0 * (i as f32 * 0.7).sin() * v(1.0, 0.3, -2.0), 0.02)).collect();
    let mut huge: Vec<Corners> = (0..40).map(|_| around(Vec3::ZERO, 1e5)).collect();
    huge.extend(&near[..60]);
    let mut flat = near[..200].to_vec();
    flat.iter_mut().flatten().for_each(|p| p.z = 0.5);
    let mut none = near[..60].to_vec();
    none.extend(near[..60].iter().flat_map(|&[a, b, _]| [[a, a, a], [a, b, a], [a, b, a.lerp(b, 0.5)]]));
    vec![Vec::new(), vec![one], vec![one; 2], vec![one; 300], near, far, huge, flat, none]
}

#[test]
fn trees_find_what_brute_force_finds() {
    let mut dice = Dice(1);
    for soup in soups(&mut dice) {
        for tree in [tree_over(&soup), tree_over(&soup).reordered()] {
            // Items of a reordered tree stand in the order of the first one.
            let plain = tree_over(&soup);
            let is_plain = tree.order() == plain.order();
            let soup: Vec<Corners> =
                if is_plain { soup.clone() } else { plain.order().iter().map(|&i| soup[i as usize]).collect() };
            let (nodes, mut items) = tree.binary();
            items.sort_unstable();
            assert_eq!(items, (0..soup.len() as u32).collect::<Vec<_>>(), "each item once");
            assert!(nodes.iter().all(|node| node.count as usize <= soup.len()));
            for k in 0..2000 {
                let origin = 6.0 * dice.point();
                let direction = match k % 4 {
                    0 => [Vec3::X, Vec3::NEG_Y, Vec3::Z][dice.below(3)],
                    1 if !soup.is_empty() => soup[dice.below(soup.len())][dice.below(3)] - origin,
                    _ => dice.point(),
                };
                let reach = if k % 3 == 0 { 4.0 * dice.share() } else { f32::INFINITY };
                same_as_brute_force(&tree, &soup, Sight { origin, direction, reach });
            }
        }
    }
}

/// Nearer than this to where a ray sets out a tree may look past a thing, m; shadow rays set out ten times as far off.
const TOO_NEAR: f32 = 1e-4;

fn same_as_brute_force(tree: &Tree, soup: &[Corners], sight: Sight) {
    let all: Vec<(u32, f32)> = (0..soup.len() as u32).map(|id| (id, distance(soup, id, sight))).collect();
    let met: Vec<(u32, f32)> = all.iter().copied().filter(|(_, t)| *t < sight.reach).collect();
    if met.iter().any(|(_, t)| t * sight.direction.length() < 1.1 * TOO_NEAR) {
        return;
    }
    let best = met.iter().map(|(_, t)| *t).min_by(f32::total_cmp);
    let found = tree.nearest(sight, |id| distance(soup, id, sight));
    assert_eq!(found.is_some(), best.is_some(), "{sight:?}");
    if let (Some((id, t)), Some(best)) = (found, best) {
        assert!(t <= best * (1.0 + 1e-6), "{t} is further than {best}");
        assert_eq!(distance(soup, id, sight), t);
    }
    assert_eq!(tree.any(sight, |id| distance(soup, id, sight)), best.is_some(), "{sight:?}");
    let mut visited = Vec::new();
    tree.each(sight, |id| visited.push(id));
    visited.sort_unstable();
    assert!(visited.windows(2).all(|w| w[0] != w[1]), "nothing is visited twice");
    assert!(met.iter().all(|(id, _)| visited.binary_search(id).is_ok()), "{sight:?}");
}

const BODIES: &str = r#"
    things: [Block(name: "block", at: (0, 10, 0), width: 2, height: 2, depth: 1, turn_deg: 17)],
    forms: [
        Globe(name: "globe", at: (6, 10, 0), diameter: 1.7),
        Figure(name: "figure", at: (10, 10, 0), height: 1.8),
        Gourd(name: "gourd", at: (14, 10, 0), width: 0.6, height: 0.5),
    ],
    houses: [(name: "house", at: (-12, 9, 0), width: 6, depth: 5, height: 3, turn_deg: 31)],"#;

/// A point well within each body.
const INSIDE: [(&str, Vec3); 5] = [
    ("block", v3(0.1, 11.2, 0.1)),
    ("globe", v3(6.1, 10.9, -0.1)),
    ("figure", v3(10.0, 10.9, 0.0)),
    ("gourd", v3(14.05, 10.2, 0.0)),
    ("house", v3(-12.6, 10.4, -2.0)),
];

const fn v3(x: f32, y: f32, z: f32) -> Vec3 {
    Vec3::new(x, y, z)
}

/// The triangles of a body.
fn triangles(lab: &Lab, name: &str) -> Vec<Corners> {
    let owner = lab.night.places.iter().find(|place| lab.night.names[place.owner as usize] == name).map(|p| p.owner);
    lab.night.solids.iter().filter(|solid| Some(solid.owner) == owner).map(|solid| solid.corners).collect()
}

/// A million rays in all leave the inside of closed bodies by their very edges and corners, and none may get out.
#[test]
fn no_ray_leaks_out() {
    const RAYS: u32 = 200_000;
    let lab = Lab::new(&format!("{DARK}{BODIES}"));
    let mut dice = Dice(2);
    for (name, inside) in INSIDE {
        let body = triangles(&lab, name);
        assert!(!body.is_empty(), "{name}");
        for k in 0..RAYS {
            let corners = body[dice.below(body.len())];
            let i = dice.below(3);
            let share = if k % 4 == 0 { 0.0 } else { dice.share() };
            let target = corners[i].lerp(corners[(i + 1) % 3], share);
            let sight = Sight::between(inside + 0.05 * dice.point(), target);
            let hit = lab.night.nearest_solid(Sight { reach: f32::INFINITY, ..sight });
            let t = hit.map_or(f32::INFINITY, |hit| hit.t);
            // Inside a body with hollows an edge may be a rim, beside which the way goes on a little.
            let furthest = if ["block", "globe"].contains(&name) { 1.0 + 1e-4 } else { 1e3 };
            assert!(t <= furthest, "{name}: {t} from {:?} to {target:?}", sight.origin);
        }
    }
}

/// Edges between two triangles that both face an eye, by the bits of their ends.
fn facing_edges(body: &[Corners], eye: Vec3) -> Vec<[Vec3; 2]> {
    let mut edges: HashMap<[[u32; 3]; 2], (u32, bool, [Vec3; 2])> = HashMap::new();
    for &[a, b, c] in body {
        let faces = (b - a).cross(c - a).normalize_or_zero().dot((eye - a).normalize()) > 0.02;
        for [p, q] in [[a, b], [b, c], [c, a]] {
            let mut key = [p, q].map(|end| end.to_array().map(f32::to_bits));
            key.sort_unstable();
            let edge = edges.entry(key).or_insert((0, true, [p, q]));
            (edge.0, edge.1) = (edge.0 + 1, edge.1 && faces);
        }
    }
    let mut found: Vec<_> = edges.into_values().filter(|edge| edge.0 == 2 && edge.1).map(|edge| edge.2).collect();
    found.sort_by(|a, b| a[0].x.total_cmp(&b[0].x).then(a[0].y.total_cmp(&b[0].y)).then(a[0].z.total_cmp(&b[0].z)));
    found
}

#[test]
fn no_ray_leaks_in() {
    const EYES: u32 = 40;
    const RAYS: u32 = 2000;
    let lab = Lab::new(&format!("{DARK}{BODIES}"));
    let mut dice = Dice(3);
    for (name, inside) in INSIDE {
        let body = triangles(&lab, name);
        for _ in 0..EYES {
            let eye = inside + 12.0 * dice.point().normalize();
            let edges = facing_edges(&body, eye);
            for _ in 0..if edges.is_empty() { 0 } else { RAYS } {
                let [p, q] = edges[dice.below(edges.len())];
                // Beside a corner a ray may pass by rightly, where a third triangle there faces away.
                let target = p.lerp(q, 0.05 + 0.9 * dice.share());
                let hit = lab.night.nearest_solid(Sight::endless(eye, target - eye));
                let t = hit.map_or(f32::INFINITY, |hit| hit.t);
                assert!(t <= 1.0 + 1e-4, "{name}: {t} from {eye:?} to {target:?}");
            }
        }
    }
}

#[test]
fn a_cloth_is_crossed_once() {
    let mut dice = Dice(4);
    for (turn, tilt) in [(0, 0), (45, 0), (-30, 20), (77, -60), (90, 90)] {
        let lab = Lab::new(&format!(
            r#"{DARK} cloths: [(
                name: "cloth", fabric: "net", at: (0.3, 11, 0.2), width: 3, height: 2,
                turn_deg: {turn}, tilt_deg: {tilt},
            )],"#
        ));
        let quad = lab.night.places[0].face.expect("a cloth is flat");
        for k in 0..20_000 {
            let s = 0.001 + 0.998 * dice.share();
            let target = match k % 3 {
                0 => quad.point(s, s),
                1 => quad.point(s, 1.0 - s),
                _ => quad.point(s, 0.001 + 0.998 * dice.share()),
            };
            let from = quad.middle() + 8.0 * dice.point();
            if (from - quad.middle()).dot(quad.normal()).abs() < 0.05 {
                continue;
            }
            let crossed = lab.night.touches(Sight::endless(from, (target - from).normalize()));
            let veils = crossed.iter().filter(|touch| touch.veil.is_some()).count();
            assert_eq!(veils, 1, "from {from:?} to {target:?}");
            let beyond = target + (target - from);
            assert!(lab.night.way(from, beyond, [u32::MAX; 2]).x < 0.9, "its threads take something");
        }
        for beside in [quad.point(-0.001, 0.5), quad.point(0.5, 1.001), quad.point(1.001, 1.001)] {
            let from = beside + 2.0 * quad.normal();
            assert_eq!(lab.night.way(from, beside - quad.normal(), [u32::MAX; 2]), Vec3::ONE);
        }
    }
}

/// The shader walks the binary trees with stacks of 40 places for what is opaque and 24 for what is see-through.
#[test]
fn the_shaders_stacks_are_deep_enough() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes");
    let mut yards = 0;
    for file in std::fs::read_dir(folder).expect("there are scenes").filter_map(Result::ok) {
        let path = file.path();
        if path.extension().is_none_or(|ending| ending != "ron") {
            continue;
        }
        let loaded = Yard::open(&path, &Catalogue::builtin()).unwrap_or_else(|faults| panic!("{faults}"));
        let built = geometry::build(&loaded.yard);
        let soup: Vec<Corners> = built.solids.iter().flat_map(|solid| solid.mesh.corners()).collect();
        let depth = tree_over(&soup).depth();
        assert!((1..=38).contains(&depth), "{}: {depth}", path.display());
        let flats = built.veils.iter().map(|veil| veil.outline);
        let flats = flats.chain(built.mirrors.iter().map(|(_, quad)| geometry::Outline::Flat(*quad)));
        let veils = Tree::over(&flats.map(|outline| crossing::outline_box(&outline)).collect::<Vec<_>>()).depth();
        assert!(veils <= 22, "{}: {veils}", path.display());
        yards += 1;
    }
    assert!(yards >= 3);
}
