//! A bird's body: a barrel covered in loose down.

use glam::{Vec2, Vec3};

use super::canvas::Canvas;
use super::curve::Curve;
use super::noise;
use super::plume::Plume;
use super::seed::Seed;
use super::tone::ramp;

const UMBER: Vec3 = Vec3::new(0.17, 0.11, 0.075);

/// A body along a spine, covered in down that lies from the front to the back, the front over the back.
pub(super) struct Barrel<'a> {
    /// From the throat to the tail.
    pub spine: Curve,
    /// Half the body's width a share of the way along the spine.
    pub girth: &'a dyn Fn(f32) -> f32,
    /// The colour at a place across, from -1 to 1 along the spine's left perpendicular, of a lock of down whose
    /// number runs from 0 to 1.
    pub tone: &'a dyn Fn(f32, f32) -> Vec3,
    /// How many hairs.
    pub hairs: usize,
}

impl Barrel<'_> {
    pub fn draw(&self, canvas: &mut Canvas, seed: &mut Seed) {
        let mut roots: Vec<(f32, f32)> = (0..self.hairs).map(|_| (seed.unit(), seed.between(-1.0, 1.0))).collect();
        roots.sort_by(|one, two| two.0.total_cmp(&one.0));
        for (share, across) in &roots {
            let colour = (self.tone)(*across, 0.2) * 0.62;
            let root = self.place(*share, across * 0.93);
            canvas.patch(root, 8.0, &[(0.0, colour, 0.3), (1.0, colour, 0.0)]);
        }
        for (share, across) in roots {
            let (root, side) = (self.place(share, across), self.side(share));
            let lock = noise::cloudy(Vec2::new(across * 5.0, share * 9.0), 8);
            let lie = (-side.perp() + side * across * 0.45).normalize();
            let along = Vec2::from_angle(0.9 * (lock - 0.5)).rotate(lie);
            let length = seed.between(10.0, 24.0);
            let tip = root + along * length + side * (2.5 * seed.bell());
            let colour = (self.tone)(across, lock) * (0.92 + 0.13 * seed.bell());
            canvas.hair([root, root + along * length * 0.5, tip], seed.between(1.1, 2.4), colour, 0.72);
            if seed.unit() < 0.007 && share > 0.16 {
                let drop = Plume::new(root, root + along * 9.0, 2.6);
                drop.draw(canvas, seed, 2.0, &|t, _| colour.lerp(UMBER, ramp(0.1, 0.6, t)));
            }
        }
    }

    fn place(&self, share: f32, across: f32) -> Vec2 {
        self.spine.at(share) + self.side(share) * (across * (self.girth)(share))
    }

    fn side(&self, share: f32) -> Vec2 {
        (self.spine.at(share + 0.02) - self.spine.at(share - 0.02)).normalize_or_zero().perp()
    }
}
