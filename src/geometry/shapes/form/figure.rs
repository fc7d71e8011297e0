//! Standing, robed figures.

use crate::geometry::Built;
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::cut::refine;
use crate::geometry::shapes::mesh::loft::{closed, ring};
use crate::scene::Figure;
use glam::Vec3;

/// Points around and rings from hem to crown.
const AROUND: u32 = 72;
const RINGS: u32 = 90;

/// Where the face is, as a share of the height.
const FACE: f32 = 0.86;

/// The figure as a stack of ellipses, in shares of its height: how high, half as wide, half as deep, how far forward.
const BODY: [[f32; 4]; 17] = [
    [0.00, 0.158, 0.132, 0.000],
    [0.02, 0.165, 0.140, 0.000],
    [0.12, 0.150, 0.126, 0.000],
    [0.30, 0.132, 0.106, 0.000],
    [0.46, 0.122, 0.092, 0.000],
    [0.54, 0.114, 0.084, 0.000],
    [0.62, 0.122, 0.088, 0.002],
    [0.69, 0.136, 0.089, 0.002],
    [0.735, 0.140, 0.080, 0.000],
    [0.765, 0.122, 0.068, -0.002],
    [0.785, 0.078, 0.056, -0.002],
    [0.800, 0.052, 0.052, 0.002],
    [0.820, 0.052, 0.060, 0.008],
    [0.850, 0.062, 0.072, 0.008],
    [0.890, 0.069, 0.078, 0.004],
    [0.950, 0.061, 0.068, 0.000],
    [1.000, 0.000, 0.000, 0.000],
];

/// Folds of the robe around the hem, how deep they are there, and the height at which they have run out.
const FOLDS: f32 = 11.0;
const FOLD_DEPTH: f32 = 0.035;
const FOLDS_END: f32 = 0.54;

/// Builds a figure: mantle, shoulders and head as one closed surface.
pub fn build(figure: &Figure, built: &mut Built) {
    let frame = Frame::turned(figure.at.vec3(), figure.turn_deg);
    let height = figure.height.f32();
    let owner = built.enter(&figure.name, frame.point(FACE * height * Vec3::Y), None);
    let rings: Vec<Vec<Vec3>> = (0..RINGS)
        .map(|i| {
            let share = i as f32 / RINGS as f32;
            let [wide, deep, forward] = section(share);
            let depth = FOLD_DEPTH * (1.0 - share / FOLDS_END).max(0.0);
            ring(AROUND, |angle| {
                let fold = 1.0 + depth * (FOLDS * angle).cos();
                height * Vec3::new(fold * wide * angle.sin(), share, fold * deep * angle.cos() + forward)
            })
        })
        .collect();
    let body = closed(&rings, Vec3::ZERO, height * Vec3::Y);
    built.solid(owner, refine(frame.place(body), OUTDOORS), &figure.surface);
}

/// The ellipse at a height: between two rows of the table along a curve that never swings beyond them, and under the
/// crown round as a ball is.
fn section(share: f32) -> [f32; 3] {
    let row = BODY.partition_point(|r| r[0] <= share).clamp(1, BODY.len() - 1);
    let (low, high) = (BODY[row - 1], BODY[row]);
    let t = (share - low[0]) / (high[0] - low[0]);
    if row == BODY.len() - 1 {
        let round = (1.0 - t * t).sqrt();
        return [low[1] * round, low[2] * round, low[3] * round];
    }
    std::array::from_fn(|i| {
        let value = |r: usize| BODY[r][i + 1];
        let slope = |r: usize| monotone_slope(r, &value);
        let span = high[0] - low[0];
        let (t2, t3) = (t * t, t * t * t);
        value(row - 1) * (2.0 * t3 - 3.0 * t2 + 1.0)
            + span * slope(row - 1) * (t3 - 2.0 * t2 + t)
            + value(row) * (3.0 * t2 - 2.0 * t3)
            + span * slope(row) * (t3 - t2)
    })
}

/// Slope of the curve at a row: the harmonic mean of the slopes on both sides, level at every turning point
/// (Fritsch and Butland 1984), so that the curve rises and falls only where the table does.
fn monotone_slope(row: usize, value: &impl Fn(usize) -> f32) -> f32 {
    if row == 0 || row + 1 == BODY.len() {
        return 0.0;
    }
    let step = |r: usize| (value(r + 1) - value(r)) / (BODY[r + 1][0] - BODY[r][0]);
    let (below, above) = (step(row - 1), step(row));
    if below * above <= 0.0 { 0.0 } else { 2.0 * below * above / (below + above) }
}
