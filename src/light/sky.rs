//! The sky: an even dome whose light reaches a surface as far as house and trees leave it open; and the disc of sun or moon.

use super::{Night, Rgb, SKIN};
use crate::geometry::Sight;
use glam::Vec3;
use std::sync::LazyLock;

/// Rays by which a point asks how much sky it sees.
const RAYS: usize = 64;

/// Sun or moon as a direction.
#[derive(Clone, Copy, Debug)]
pub struct DiscLight {
    /// Unit vector to it.
    pub toward: Vec3,
    /// Illuminance of a plane square to it, lx: that of level ground over the sine of its height.
    pub square: Rgb,
    /// Index among the night's sources.
    pub source: u32,
}

/// Directions over the hemisphere about +z whose density goes with the cosine: a Hammersley set.
pub(super) fn cosine_rays() -> &'static [Vec3; RAYS] {
    static DRAWN: LazyLock<[Vec3; RAYS]> = LazyLock::new(|| {
        std::array::from_fn(|i| {
            let across = (i as f32 + 0.5) / RAYS as f32;
            let turn = std::f32::consts::TAU * ((i as u32).reverse_bits() as f32 / 2f32.powi(32) + 0.5 / RAYS as f32);
            let radius = across.sqrt();
            Vec3::new(radius * turn.cos(), radius * turn.sin(), (1.0 - across).sqrt())
        })
    });
    &DRAWN
}

impl Night {
    /// Illuminance by the sky of one side of a surface over that of open level ground: 1 on a roof, a half on a wall in the
    /// open, less where something stands before it. Rays are weighted by what see-through things let straight through.
    pub fn sky_share(&self, point: Vec3, normal: Vec3) -> Rgb {
        let (side, other) = normal.any_orthonormal_pair();
        let start = point + SKIN * normal;
        let mut sum = Rgb::ZERO;
        for ray in cosine_rays() {
            let toward = ray.x * side + ray.y * other + ray.z * normal;
            if toward.y <= 0.0 {
                continue;
            }
            let sight = Sight::endless(start, toward);
            if !self.blocked(sight) {
                sum += self.through(sight, [u32::MAX; 2]);
            }
        }
        sum / RAYS as f32
    }
}
