//! Small linear systems.

use glam::DVec2;

/// Below this a pivot counts as zero.
const TINY: f64 = 1e-14;

/// Solves `matrix · x = right` for two right-hand sides at once, by elimination with row exchange.
///
/// Light caught between two faces that lose nothing and let nothing out makes the system singular. No light gets in
/// there either, so such an unknown is answered with 0.
pub(super) fn solve(mut matrix: Vec<Vec<f64>>, mut right: Vec<DVec2>) -> Vec<DVec2> {
    let size = matrix.len();
    for column in 0..size {
        let strength = |row: &usize| matrix[*row][column].abs();
        let best = (column..size).max_by(|a, b| strength(a).total_cmp(&strength(b))).unwrap_or(column);
        matrix.swap(column, best);
        right.swap(column, best);
        let (pivot, known) = (matrix[column].clone(), right[column]);
        if pivot[column].abs() < TINY {
            continue;
        }
        for (row, right) in matrix.iter_mut().zip(&mut right).skip(column + 1) {
            let factor = row[column] / pivot[column];
            for (entry, above) in row.iter_mut().zip(&pivot) {
                *entry -= factor * above;
            }
            *right -= factor * known;
        }
    }
    for row in (0..size).rev() {
        let known: DVec2 = (row + 1..size).map(|column| matrix[row][column] * right[column]).sum();
        let pivot = matrix[row][row];
        right[row] = if pivot.abs() < TINY { DVec2::ZERO } else { (right[row] - known) / pivot };
    }
    right
}
