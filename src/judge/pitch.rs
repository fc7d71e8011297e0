//! How coarse a projector's own pixels lie on a target.

use super::{
    Touch,
    extent::{Plane, cell},
    piece::Piece,
};
use crate::light::Beam;
use glam::Vec3;

/// Cosine of the light's slant from which a place of a form is taken for its outline, where pixels have no end: 80°.
const GRAZING: f32 = 0.173_648;

/// Native pixels to the metre on the targets, along the way in which they are coarser: where the middle of the picture lands, on a
/// form the median over the light that lands (its middle may be an outline); and where they are coarsest.
pub(super) fn pitch(beam: &Beam, pixels: (u32, u32), plane: &Plane, middle: &Touch, pieces: &[Piece]) -> [f64; 2] {
    let to_the_metre = |point: Vec3, normal: Vec3| {
        let [across, down] = beam.stretch(point, normal).map(|reach| f64::from(reach.length()));
        (f64::from(pixels.0) / across).min(f64::from(pixels.1) / down)
    };
    let worst = |piece: &Piece| {
        let touch = &piece.touch;
        if piece.whole && plane.flat {
            let corners = cell(piece.uv).into_iter().filter_map(|uv| plane.met(beam, uv));
            return corners.map(|point| to_the_metre(point, touch.normal)).fold(f64::INFINITY, f64::min);
        }
        if touch.normal.dot(-touch.along) < GRAZING { f64::INFINITY } else { to_the_metre(touch.point, touch.normal) }
    };
    let middle = if plane.flat {
        to_the_metre(middle.point, middle.normal)
    } else {
        let mut all: Vec<(f64, f64)> =
            pieces.iter().map(|p| (to_the_metre(p.touch.point, p.touch.normal), p.lands())).collect();
        all.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut left = 0.5 * all.iter().map(|(_, light)| light).sum::<f64>();
        let half = all.iter().find(|(_, light)| {
            left -= light;
            left <= 0.0
        });
        half.map_or_else(|| to_the_metre(middle.point, middle.normal), |(value, _)| *value)
    };
    [middle, pieces.iter().map(worst).fold(middle, f64::min)]
}
