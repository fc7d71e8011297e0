//! The projective map that fits marks best; the one file that knows the linear algebra crate.

use super::Mark;
use glam::{DMat3, DVec2, DVec3};
use nalgebra::{Cholesky, SMatrix, SVector};

/// Steps after which a map that still gets better is taken as it is.
const MOST_STEPS: usize = 200;

type Eight = SVector<f64, 8>;
type Normal = SMatrix<f64, 8, 8>;

/// The map from the wall, m, to the photo, px, with the least sum of squared misses on the photo; scaled so that its
/// third row is 1 at the middle of the marks. None where there is none that has all marks before the camera.
///
/// Both sides are first moved and scaled to be small round the origin, without which the equations lose half their digits
/// (R. Hartley, "In defense of the eight-point algorithm", IEEE PAMI 19, 1997). The start is the linear solution
/// with the last number 1 (rows `[x y 1 0 0 0 −xu −yu | u]`, `[0 0 0 x y 1 −xv −yv | v]`), the rest Levenberg's and
/// Marquardt's damped least squares.
pub(super) fn photo_from_wall(marks: &[Mark]) -> Option<DMat3> {
    let small_from_wall = small(marks.iter().map(|mark| mark.wall));
    let small_from_photo = small(marks.iter().map(|mark| mark.photo));
    let pairs: Vec<(DVec2, DVec2)> = marks
        .iter()
        .map(|mark| (small_from_wall.transform_point2(mark.wall), small_from_photo.transform_point2(mark.photo)))
        .collect();

    let (mut normal, mut right) = (Normal::zeros(), Eight::zeros());
    for (from, to) in &pairs {
        for (row, value) in rows(*from, *to, 1.0).into_iter().zip(to.to_array()) {
            normal += row * row.transpose();
            right += row * value;
        }
    }
    let mut numbers = Cholesky::new(normal)?.solve(&right);
    let mut cost = misses(&numbers, &pairs)?;
    let mut damping = 1e-9;
    for _ in 0..MOST_STEPS {
        let (mut normal, mut right) = (Normal::zeros(), Eight::zeros());
        for (from, to) in &pairs {
            let (found, w) = apply(&numbers, *from)?;
            for (row, miss) in rows(*from, found, w).into_iter().zip((*to - found).to_array()) {
                normal += row * row.transpose();
                right += row * miss;
            }
        }
        for at in 0..8 {
            normal[(at, at)] *= 1.0 + damping;
        }
        let step = Cholesky::new(normal)?.solve(&right);
        match misses(&(numbers + step), &pairs) {
            Some(less) if less < cost => {
                let settled = cost - less <= 1e-14 * cost;
                (numbers, cost, damping) = (numbers + step, less, damping * 0.1);
                if settled {
                    break;
                }
            }
            _ if step.norm() <= 1e-13 * numbers.norm() || damping > 1e9 => break,
            _ => damping *= 10.0,
        }
    }
    let small_photo_from_small_wall = map(&numbers);
    let found = small_from_photo.inverse() * small_photo_from_small_wall * small_from_wall;
    found.is_finite().then_some(found)
}

/// The sum of the squared misses on the photo, px²; none where a mark would lie behind the camera.
pub(super) fn squared_misses(photo_from_wall: DMat3, marks: &[Mark]) -> Option<f64> {
    marks.iter().map(|mark| Some(super::project(photo_from_wall, mark.wall)?.distance_squared(mark.photo))).sum()
}

/// The move and the scale that take places to a mean of zero and a mean distance of √2 from it.
fn small(places: impl Iterator<Item = DVec2> + Clone) -> DMat3 {
    let count = places.clone().count() as f64;
    let middle = places.clone().sum::<DVec2>() / count;
    let reach = places.map(|place| place.distance(middle)).sum::<f64>() / count;
    let scale = std::f64::consts::SQRT_2 / reach;
    DMat3::from_scale(DVec2::splat(scale)) * DMat3::from_translation(-middle)
}

/// The eight numbers, row by row, and the ninth, which is 1.
fn map(numbers: &Eight) -> DMat3 {
    let row = |at: usize| DVec3::new(numbers[at], numbers[at + 1], numbers[at + 2]);
    DMat3::from_cols(row(0), row(3), DVec3::new(numbers[6], numbers[7], 1.0)).transpose()
}

/// Where the map takes a place, and its third row there; none where that is not positive.
fn apply(numbers: &Eight, from: DVec2) -> Option<(DVec2, f64)> {
    let DVec3 { x, y, z } = map(numbers) * from.extend(1.0);
    (z > 0.0).then(|| (DVec2::new(x, y) / z, z))
}

/// What a small change of each number does to both coordinates of a place that now comes to `to` with a third row of `w`.
fn rows(from: DVec2, to: DVec2, w: f64) -> [Eight; 2] {
    let DVec2 { x, y } = from;
    [
        Eight::from([x, y, 1.0, 0.0, 0.0, 0.0, -x * to.x, -y * to.x]) / w,
        Eight::from([0.0, 0.0, 0.0, x, y, 1.0, -x * to.y, -y * to.y]) / w,
    ]
}

/// The sum of the squared misses; none where a place would lie behind the camera.
fn misses(numbers: &Eight, pairs: &[(DVec2, DVec2)]) -> Option<f64> {
    pairs.iter().map(|(from, to)| apply(numbers, *from).map(|(found, _)| found.distance_squared(*to))).sum()
}
