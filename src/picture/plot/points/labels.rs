//! Places for labels where none hides another or a point.

/// A box, pixels; y runs down.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Rect {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Rect {
    /// Whether two boxes overlap.
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }

    fn holds(&self, other: &Self) -> bool {
        self.left <= other.left && self.right >= other.right && self.top <= other.top && self.bottom >= other.bottom
    }

    /// Its place nearest to a point.
    pub fn nearest(&self, x: f64, y: f64) -> (f64, f64) {
        (x.clamp(self.left, self.right), y.clamp(self.top, self.bottom))
    }
}

/// Width of a letter over its height: the widest that names come to in usual faces.
const WIDE: f64 = 0.62;
/// Half of what a point takes.
const POINT: f64 = 5.0;
/// Directions tried around a point, the right first.
const WAYS: usize = 16;
/// How much farther it is tried each time, and how often: across the whole plot.
const FARTHER: f64 = 5.0;
const ROUNDS: usize = 220;

/// A box for each label beside its point, as near as there is room within the frame; only where the whole frame is full do two
/// of them overlap.
pub(super) fn places(points: &[(f64, f64)], labels: &[String], frame: Rect, letter: f64) -> Vec<Rect> {
    let dots: Vec<Rect> = points
        .iter()
        .map(|(x, y)| Rect { left: x - POINT, right: x + POINT, top: y - POINT, bottom: y + POINT })
        .collect();
    let mut taken: Vec<Rect> = Vec::with_capacity(labels.len());
    for ((x, y), label) in points.iter().zip(labels) {
        let (width, height) = (label.chars().count() as f64 * WIDE * letter + 4.0, letter + 3.0);
        let around = |round: usize, way: usize| {
            // Right, left, then between.
            let turn = [0, 8, 4, 12, 2, 14, 6, 10, 1, 15, 7, 9, 3, 13, 5, 11][way];
            let (sin, cos) = (turn as f64 / WAYS as f64 * std::f64::consts::TAU).sin_cos();
            let far = POINT + 1.0 + round as f64 * FARTHER;
            let (cx, cy) = (x + cos * (far + 0.5 * width), y - sin * (far + 0.5 * height));
            Rect { left: cx - 0.5 * width, right: cx + 0.5 * width, top: cy - 0.5 * height, bottom: cy + 0.5 * height }
        };
        let free = |rect: &Rect| {
            frame.holds(rect) && !taken.iter().any(|t| t.meets(rect)) && !dots.iter().any(|dot| dot.meets(rect))
        };
        let tried = (0..ROUNDS).flat_map(|round| (0..WAYS).map(move |way| (round, way)));
        let found = tried.map(|(round, way)| around(round, way)).find(free);
        taken.push(found.unwrap_or_else(|| around(0, 0)));
    }
    taken
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_do_not_overlap() {
        let frame = Rect { left: 78.0, top: 64.0, right: 936.0, bottom: 584.0 };
        let label = |i: usize| format!("a fabric's long name, {i}");
        // All in one corner, all in a heap, all in a row.
        let heaps: [&dyn Fn(usize) -> (f64, f64); 3] = [
            &|i| (80.0 + (i % 3) as f64, 582.0 - (i / 3) as f64),
            &|i| (500.0 + 30.0 * (i as f64 * 2.4).sin(), 300.0 + 20.0 * (i as f64 * 1.7).cos()),
            &|i| (100.0 + 4.0 * i as f64, 70.0),
        ];
        for heap in heaps {
            for (count, short) in [(30, false), (200, true)] {
                let points: Vec<(f64, f64)> = (0..count).map(heap).collect();
                let points: Vec<(f64, f64)> = points.into_iter().map(|(x, y)| (x.min(930.0), y)).collect();
                let labels: Vec<String> = (0..count).map(|i| if short { i.to_string() } else { label(i) }).collect();
                let rects = places(&points, &labels, frame, 12.0);
                for (i, a) in rects.iter().enumerate() {
                    assert!(frame.holds(a), "{a:?}");
                    assert!(rects[..i].iter().all(|b| !a.meets(b)), "{i} of {count}");
                }
            }
        }
    }
}
