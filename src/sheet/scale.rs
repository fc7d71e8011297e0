//! A drawing's scale: metres on paper, at a round ratio that fits its frame.

use super::Digits;
use crate::scene::Units;

/// Metres in a foot.
const FOOT_M: f64 = 0.3048;
/// Points to a metre at 1 : 1.
const POINTS: f64 = 72.0 / 0.0254;
/// The ratios that a drawing may have; a larger one is a whole multiple of 100.
const ROUND: [f64; 17] =
    [5.0, 8.0, 10.0, 12.5, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 60.0, 75.0, 100.0, 125.0, 150.0, 200.0, 250.0];

/// From a plane in metres, up positive, to a frame on paper.
#[derive(Clone, Copy, Debug)]
pub(super) struct Scale {
    /// 1 to so much.
    pub ratio: f64,
    origin: [f64; 2],
    middle: [f64; 2],
}

impl Scale {
    /// Such that the box from `low` to `high`, m, fits a frame at `at` of `size` points, in its middle.
    pub fn fitted(low: [f64; 2], high: [f64; 2], at: [f64; 2], size: [f64; 2]) -> Self {
        let wanted = [0, 1].map(|i| (high[i] - low[i]).max(0.05) * POINTS / size[i]);
        let wanted = wanted[0].max(wanted[1]);
        let ratio = ROUND.into_iter().find(|r| *r >= wanted).unwrap_or_else(|| (wanted / 100.0).ceil() * 100.0);
        let middle = [0, 1].map(|i| 0.5 * (low[i] + high[i]));
        Self { ratio, origin: [0, 1].map(|i| at[i] + 0.5 * size[i]), middle }
    }

    /// A point of the plane on paper.
    pub fn at(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let per_metre = POINTS / self.ratio;
        [self.origin[0] + (x - self.middle[0]) * per_metre, self.origin[1] - (y - self.middle[1]) * per_metre]
    }

    /// A round length, m, that is drawn as a bar, at most so many points long, and how long that is.
    pub fn bar(&self, digits: Digits, most: f64) -> (f64, f64) {
        let per_metre = POINTS / self.ratio;
        let (unit, steps): (f64, &[f64]) = match digits.0 {
            Units::Metric => (1.0, &[0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0]),
            Units::Feet => (FOOT_M, &[0.25, 0.5, 1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0]),
        };
        let fits = steps.iter().map(|step| step * unit).filter(|m| m * per_metre <= most);
        let m = fits.fold(steps[0] * unit, f64::max);
        (m, m * per_metre)
    }

    /// As people write it: `1 : 50`.
    pub fn says(&self) -> String {
        format!("scale 1 : {}", self.ratio)
    }
}

/// The box around points, grown by a share and at least by `least`; `None` around nothing.
pub(super) fn around(points: &[[f64; 2]], share: f64, least: f64) -> Option<([f64; 2], [f64; 2])> {
    let first = *points.first()?;
    let (mut low, mut high) = (first, first);
    for point in points {
        for i in 0..2 {
            low[i] = low[i].min(point[i]);
            high[i] = high[i].max(point[i]);
        }
    }
    let grown = [0, 1].map(|i| (share * (high[i] - low[i])).max(least));
    Some(([low[0] - grown[0], low[1] - grown[1]], [high[0] + grown[0], high[1] + grown[1]]))
}

/// The part of a line within a box, points (Liang and Barsky, "A new concept and method for line clipping", ACM Transactions on
/// Graphics 3, 1984; from memory).
pub(super) fn clipped(a: [f64; 2], b: [f64; 2], at: [f64; 2], size: [f64; 2]) -> Option<[[f64; 2]; 2]> {
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for i in 0..2 {
        let way = b[i] - a[i];
        for (step, room) in [(-way, a[i] - at[i]), (way, at[i] + size[i] - a[i])] {
            if step == 0.0 {
                if room < 0.0 {
                    return None;
                }
            } else if step < 0.0 {
                enter = enter.max(room / step);
            } else {
                leave = leave.min(room / step);
            }
        }
    }
    let on = |t: f64| [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])];
    (enter <= leave).then(|| [on(enter), on(leave)])
}

/// A polygon within a box, points (Sutherland and Hodgman, "Reentrant polygon clipping", Communications of the ACM 17, 1974; from
/// memory).
pub(super) fn within(polygon: &[[f64; 2]], at: [f64; 2], size: [f64; 2]) -> Vec<[f64; 2]> {
    let mut list = polygon.to_vec();
    for (axis, limit, sign) in
        [(0, at[0], 1.0), (0, at[0] + size[0], -1.0), (1, at[1], 1.0), (1, at[1] + size[1], -1.0)]
    {
        let inside = |p: &[f64; 2]| sign * (p[axis] - limit) >= 0.0;
        let mut next = Vec::new();
        for (i, here) in list.iter().enumerate() {
            let before = list[(i + list.len() - 1) % list.len()];
            if inside(here) != inside(&before) {
                let t = (limit - before[axis]) / (here[axis] - before[axis]);
                next.push([before[0] + t * (here[0] - before[0]), before[1] + t * (here[1] - before[1])]);
            }
            if inside(here) {
                next.push(*here);
            }
        }
        list = next;
    }
    list
}

/// The smallest convex polygon around points (A. M. Andrew, "Another efficient algorithm for convex hulls in two dimensions",
/// Information Processing Letters 9, 1979; from memory).
pub(super) fn hull(mut points: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    points.sort_by(|a, b| a[0].total_cmp(&b[0]).then(a[1].total_cmp(&b[1])));
    points.dedup();
    if points.len() < 3 {
        return points;
    }
    let half = |points: &mut dyn Iterator<Item = [f64; 2]>| {
        let mut chain: Vec<[f64; 2]> = Vec::new();
        for point in points {
            while let [.., a, b] = chain.as_slice() {
                if (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0]) > 0.0 {
                    break;
                }
                chain.pop();
            }
            chain.push(point);
        }
        chain.pop();
        chain
    };
    let mut whole = half(&mut points.iter().copied());
    whole.extend(half(&mut points.iter().rev().copied()));
    whole
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_metre_is_as_long_as_the_scale_says() {
        let scale = Scale::fitted([0.0, 0.0], [2.0, 1.0], [0.0, 0.0], [200.0, 200.0]);
        assert_eq!(scale.ratio, 30.0);
        let (a, b) = (scale.at([0.0, 0.0]), scale.at([1.0, 0.0]));
        assert!((b[0] - a[0] - 1000.0 / 30.0 / 25.4 * 72.0).abs() < 1e-9);
    }

    #[test]
    fn lines_and_polygons_end_at_their_frame_and_a_hull_is_around_all() {
        assert_eq!(clipped([-1.0, 0.5], [2.0, 0.5], [0.0, 0.0], [1.0, 1.0]), Some([[0.0, 0.5], [1.0, 0.5]]));
        assert_eq!(clipped([-1.0, 2.0], [2.0, 2.0], [0.0, 0.0], [1.0, 1.0]), None);
        let cut = within(&[[-1.0, -1.0], [2.0, -1.0], [2.0, 2.0], [-1.0, 2.0]], [0.0, 0.0], [1.0, 1.0]);
        assert!(cut.iter().flatten().all(|v| (0.0..=1.0).contains(v)) && cut.len() == 4, "{cut:?}");
        assert_eq!(hull(vec![[0.0, 0.0], [1.0, 0.0], [0.4, 0.4], [1.0, 1.0], [0.0, 1.0]]).len(), 4);
    }
}
