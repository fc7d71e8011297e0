//! What else sends light to an eye that looks at a figure: lamps, lit windows, neighbouring stations.

use crate::{
    geometry::{Quad, Sight},
    judge::leave,
    light::{EyeRay, Night, VeilSort, luma},
};
use glam::Vec3;

/// Points across and down at which a neighbour's raster is followed, and each way at which a lit window is looked at.
const RASTER: [usize; 2] = [8, 6];
const WINDOW: usize = 4;

/// Of a neighbour's raster, what is darker than this part of its brightest is left out.
const DARK: f32 = 0.02;

/// Light of one source that reaches an eye from one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Part {
    /// Index among the night's sources.
    pub source: u32,
    /// Illuminance at the eye of a plane square to it, lx.
    pub lx: f64,
    /// Unit vector from the eye to it.
    pub toward: Vec3,
}

/// A patch of a surface that a neighbouring station lights.
#[derive(Clone, Copy, Debug)]
pub(in crate::judge) struct Patch {
    source: u32,
    point: Vec3,
    normal: Vec3,
    area: f32,
    see_through: bool,
}

/// What every station but one lights, patch by patch.
pub(in crate::judge) fn neighbours(night: &Night, but: u32) -> Vec<Patch> {
    let [columns, rows] = RASTER;
    let mut patches = Vec::new();
    for (index, beam) in night.beams.iter().enumerate() {
        // Of a station's beams the last has met all of its mirrors.
        let is_last = night.beams.get(index + 1).is_none_or(|next| next.station != beam.station);
        if beam.station == but || !is_last {
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
                point: touch.point,
                normal: touch.normal,
                area: beam.patch(touch.point, touch.normal, columns * rows),
                see_through: touch.veil.is_some(),
            });
        }
    }
    patches
}

/// All that reaches an eye from lamps, lit windows and what neighbouring stations light.
pub(super) fn parts(night: &Night, eye: Vec3, neighbours: &[Patch]) -> Vec<Part> {
    let mut parts = Vec::new();
    for lamp in &night.lamps {
        let (square, toward) = lamp.square(eye);
        let lx = f64::from(luma(square * night.way(eye, lamp.at, [u32::MAX; 2])));
        parts.push(Part { source: lamp.source, lx, toward });
        let window = lamp.behind.and_then(|owner| night.places[owner as usize].face);
        parts.extend(window.and_then(|quad| window_part(night, eye, &quad, lamp.source)));
    }
    parts.extend(neighbours.iter().filter_map(|patch| patch_part(night, eye, patch)));
    parts.retain(|part| part.lx > 0.0);
    parts
}

/// What a room's lamp sends to an eye by way of all that it lights behind its window.
fn window_part(night: &Night, eye: Vec3, quad: &Quad, source: u32) -> Option<Part> {
    let (mut lx, mut sum) = (0.0, Vec3::ZERO);
    for i in 0..WINDOW * WINDOW {
        let inside = |k: usize| (k as f32 + 0.5) / WINDOW as f32;
        let way = quad.point(inside(i % WINDOW), inside(i / WINDOW)) - eye;
        let along = way.normalize_or_zero();
        let open =
            quad.area() / (WINDOW * WINDOW) as f32 * quad.normal().dot(along).abs() / way.length_squared().max(1e-4);
        let light = open * luma(night.surfaces_of(EyeRay { from: eye, along, width: 0.0 }, source));
        lx += f64::from(light);
        sum += light * along;
    }
    (lx > 0.0).then(|| Part { source, lx, toward: sum.normalize_or_zero() })
}

fn patch_part(night: &Night, eye: Vec3, patch: &Patch) -> Option<Part> {
    let way = patch.point - eye;
    let along = way.normalize_or_zero();
    let steep = patch.normal.dot(along);
    if !patch.see_through && steep > 0.0 {
        return None;
    }
    let side = if steep > 0.0 { -patch.normal } else { patch.normal };
    if night.blocked(Sight::between(eye, patch.point + 4e-3 * side)) {
        return None;
    }
    let open = patch.area * steep.abs() / way.length_squared().max(1e-4);
    let ray = EyeRay { from: eye, along, width: open.sqrt() };
    Some(Part {
        source: patch.source,
        lx: f64::from(open * luma(night.luminance_of(ray, patch.source))),
        toward: along,
    })
}
