//! The ground: one level sheet, fine near what stands on it.

use super::mesh::bounds::Bounds;
use super::mesh::lattice::{self, Lattice};
use crate::geometry::{Built, Member, Quad};
use crate::scene::{Ground, Name};
use glam::{Vec2, Vec3};

/// What the ground is called; it has no name of its own.
const NAME: &str = "ground";

/// Greatest distance between lines near things and far from them, m.
const NEAR: f32 = 0.25;
const FAR: f32 = 1.0;

/// How far around things the lines are near, m.
const AROUND: f32 = 1.0;

/// How fast the distance between lines grows away from things.
const GROWTH: f32 = 1.25;

/// Most steps from things to the border of the ground.
const MOST_STEPS: f32 = 120.0;

/// Where the lines have to be near.
pub struct Dense {
    lo: Vec2,
    hi: Vec2,
}

impl Dense {
    /// Around all solids so far.
    pub fn around(built: &Built) -> Self {
        let crowds = built.crowds.iter().flat_map(|crowd| {
            let of =
                |member: &Member| -> Vec<Vec3> { crowd.mesh.points.iter().map(|&p| member.frame.point(p)).collect() };
            crowd.members.iter().flat_map(of)
        });
        let points = built.solids.iter().flat_map(|s| s.mesh.points.iter().copied()).chain(crowds);
        let bounds = Bounds::around(points).unwrap_or(Bounds { lo: Vec3::ZERO, hi: Vec3::ZERO }).grown(AROUND);
        Self { lo: Vec2::new(bounds.lo.x, bounds.lo.z), hi: Vec2::new(bounds.hi.x, bounds.hi.z) }
    }
}

/// The lines that ground and areas are cut along.
pub struct Lines {
    /// Values of x.
    pub x: Vec<f32>,
    /// Values of z.
    pub z: Vec<f32>,
}

impl Lines {
    /// Lines over the whole ground.
    pub fn new(ground: &Ground, dense: &Dense) -> Self {
        let (x, z) = (0.5 * ground.width.f32(), 0.5 * ground.depth.f32());
        Self { x: axis(x, dense.lo.x, dense.hi.x), z: axis(z, dense.lo.y, dense.hi.y) }
    }
}

/// Lines from `-half` to `half`, near between `lo` and `hi`.
fn axis(half: f32, lo: f32, hi: f32) -> Vec<f32> {
    let (lo, hi) = (lo.max(-half).min(half), hi.max(-half).min(half));
    let mut all: Vec<f32> = outwards(lo, -half).into_iter().rev().collect();
    if hi > lo {
        all.extend(lattice::lines(lo, hi, &[], NEAR));
    } else {
        all.push(lo);
    }
    all.extend(outwards(hi, half));
    all
}

/// Lines after `from` up to `to`, ever further apart.
fn outwards(from: f32, to: f32) -> Vec<f32> {
    let far = FAR.max((to - from).abs() / MOST_STEPS);
    let (mut all, mut at, mut step) = (Vec::new(), 0.0, NEAR);
    let all_the_way = (to - from).abs();
    while all_the_way - at > 1e-4 {
        step = (step * GROWTH).min(far);
        // What would remain as a sliver is shared with the last two steps.
        let rest = all_the_way - at;
        at += if rest <= step {
            rest
        } else if rest < 2.0 * step {
            0.5 * rest
        } else {
            step
        };
        all.push(from + at * (to - from).signum());
    }
    if let Some(last) = all.last_mut() {
        *last = to;
    }
    all
}

/// Builds the ground.
pub fn build(ground: &Ground, lines: &Lines, built: &mut Built) {
    let (width, depth) = (ground.width.f32(), ground.depth.f32());
    let face = level(Vec2::new(-0.5 * width, -0.5 * depth), Vec2::new(0.5 * width, 0.5 * depth), 0.0);
    let owner = built.enter(&Name::of(NAME), Vec3::ZERO, Some(face));
    let cells = Lattice::of([lines.x.clone(), vec![-1.0, 0.0], lines.z.clone()]);
    built.solid(owner, cells.surface_where(|_, normal| normal.y > 0.5), &ground.surface);
}

/// The level rectangle between two corners given by x and z, its front upwards.
pub fn level(lo: Vec2, hi: Vec2, y: f32) -> Quad {
    Quad { corner: Vec3::new(lo.x, y, hi.y), u: (hi.x - lo.x) * Vec3::X, v: (hi.y - lo.y) * Vec3::NEG_Z }
}

#[cfg(test)]
mod tests {
    use super::axis;

    #[test]
    fn lines_are_near_around_things_and_reach_the_border() {
        let l = axis(22.0, -3.0, 4.0);
        assert_eq!((l[0], l[l.len() - 1]), (-22.0, 22.0));
        for w in l.windows(2) {
            let step = w[1] - w[0];
            assert!(step > 0.05 && step <= 1.001, "{w:?}");
            assert!(w[1] <= -3.0 || w[0] >= 4.0 || step <= 0.2502, "{w:?}");
        }
    }

    #[test]
    fn things_beside_the_ground_do_no_harm() {
        for (lo, hi) in [(30.0, 40.0), (-40.0, -30.0), (-40.0, 40.0), (21.9, 22.1)] {
            let l = axis(22.0, lo, hi);
            assert_eq!((l[0], l[l.len() - 1]), (-22.0, 22.0));
            assert!(l.windows(2).all(|w| w[1] > w[0]), "{lo} {hi}");
        }
    }
}
