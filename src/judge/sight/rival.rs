//! What neighbouring stations light, and the strongest of what competes with a figure.

use super::{
    Weights,
    bright::{Beside, Piece, ray},
};
use crate::{
    geometry::{Quad, Sight},
    judge::{Touch, leave},
    light::{Beam, EyeRay, Night, VeilSort, luma},
};
use glam::Vec3;

/// Points across and down at which a neighbour's raster is followed.
const RASTER: [usize; 2] = [16, 9];

/// Of a neighbour's raster, what is darker than this part of its brightest is left out.
const DARK: f32 = 0.02;

/// A patch of a surface that a neighbouring station lights.
#[derive(Clone, Copy, Debug)]
pub(super) struct Patch {
    source: u32,
    quad: Quad,
    /// Towards the light.
    normal: Vec3,
    see_through: bool,
}

/// What the stations light that `counts` picks, patch by patch.
pub(super) fn patches(night: &Night, counts: impl Fn(u32) -> bool) -> Vec<Patch> {
    let [columns, rows] = RASTER;
    let mut patches = Vec::new();
    for (index, beam) in night.beams.iter().enumerate() {
        // Of a station's beams the last has met all of its mirrors.
        let is_last = night.beams.get(index + 1).is_none_or(|next| next.station != beam.station);
        if !counts(beam.station) || !is_last {
            continue;
        }
        let coarse = (beam.texels_across() / columns as f32).max(1.0).log2();
        for i in 0..columns * rows {
            let uv = [((i % columns) as f32 + 0.5) / columns as f32, ((i / columns) as f32 + 0.5) / rows as f32];
            if luma(beam.picture(uv[0], uv[1], coarse)) <= DARK * beam.frame.peak {
                continue;
            }
            let Some((from, along)) = leave(night, beam, uv) else { continue };
            let stays = |sort: VeilSort| !matches!(sort, VeilSort::Pane | VeilSort::Mirror);
            let touches = night.touches(Sight::endless(from, along));
            let Some(touch) = touches.iter().find(|t| t.veil.is_none_or(|v| stays(night.veils[v as usize].sort)))
            else {
                continue;
            };
            patches.push(Patch {
                source: beam.station,
                quad: lies(beam, touch),
                normal: touch.normal,
                see_through: touch.veil.is_some(),
            });
        }
    }
    patches
}

/// A cell of the raster as it lies where it lands: its steps over the raster, along the light onto the surface.
fn lies(beam: &Beam, touch: &Touch) -> Quad {
    let way = touch.point - beam.lens.at;
    let depth = way.dot(beam.lens.forward).max(1e-3);
    let along = way / depth;
    let steep = touch.normal.dot(along);
    let steep = steep.abs().max(1e-2).copysign(steep);
    let onto = |step: Vec3| depth * (step - along * (step.dot(touch.normal) / steep));
    let u = onto(beam.lens.w1 / RASTER[0] as f32 * beam.lens.right);
    let v = onto(beam.lens.h1 / RASTER[1] as f32 * beam.lens.up);
    Quad { corner: touch.point - 0.5 * (u + v), u, v }
}

impl Patch {
    /// What an eye sees of it, and by which ray.
    pub fn seen(&self, night: &Night, eye: Vec3) -> Option<(Piece, EyeRay)> {
        let point = self.quad.middle();
        let steep = self.normal.dot(point - eye);
        if !self.see_through && steep > 0.0 {
            return None;
        }
        let side = if steep > 0.0 { -self.normal } else { self.normal };
        let (ray, open) = ray(eye, &self.quad);
        if night.blocked(Sight::between(eye, point + 4e-3 * side)) {
            return None;
        }
        let lx = f64::from(open * luma(night.surfaces_of(ray, self.source)));
        (lx > 0.0).then_some((Piece { source: self.source, quad: self.quad, lx }, ray))
    }
}

/// Light from beside, by source.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Rivals(Vec<Beside>);

/// The strongest rival under some weights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Strongest {
    pub source: u32,
    pub lx: f64,
    pub degrees: f64,
    /// Its light less what its angle takes, lx.
    pub counted: f64,
}

impl Rivals {
    /// From what each source does, by its index.
    pub fn of(sources: Vec<Beside>) -> Self {
        Self(sources)
    }

    /// The same with what one source does.
    pub fn with(&mut self, source: u32, does: Beside) {
        self.0[source as usize] = does;
    }

    /// The strongest under weights, where any shines.
    pub fn strongest(&self, weights: &Weights) -> Option<Strongest> {
        let each = self.0.iter().enumerate().filter(|(_, beside)| beside.counted > 0.0).map(|(source, beside)| {
            let weight = weights.of(source);
            Strongest {
                source: source as u32,
                lx: weight * beside.lx,
                counted: weight * beside.counted,
                degrees: beside.turned / beside.counted,
            }
        });
        each.filter(|rival| rival.counted > 0.0).max_by(|a, b| a.counted.total_cmp(&b.counted))
    }
}
