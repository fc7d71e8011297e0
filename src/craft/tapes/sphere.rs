//! Three spheres and the two places in which they meet.

use glam::DVec3;

/// Three known points in axes of their own: the first at the origin, the second along the first axis, the third in the
/// plane of the first two.
pub(super) struct Frame {
    origin: DVec3,
    axes: [DVec3; 3],
    /// How far along the second is.
    d: f64,
    /// Where the third is.
    i: f64,
    j: f64,
    longest: f64,
}

impl Frame {
    /// The axes of three points, no two of which are one.
    pub fn of([a, b, c]: [DVec3; 3]) -> Self {
        let (ab, ac) = (b - a, c - a);
        let d = ab.length();
        let e1 = ab / d;
        let i = ac.dot(e1);
        let across = ac - i * e1;
        let j = across.length();
        let e2 = across.normalize_or(e1.any_orthonormal_vector());
        let longest = d.max(ac.length()).max(c.distance(b));
        Self { origin: a, axes: [e1, e2, e1.cross(e2)], d, i, j, longest }
    }

    /// The least height of their triangle over its longest side: 0 on a line.
    pub fn flatness(&self) -> f64 {
        self.d * self.j / (self.longest * self.longest)
    }

    /// The two places so far from the points; else by how much all three lengths would have to grow, or to shrink where that
    /// is negative, to meet in one.
    pub fn meet(&self, [r1, r2, r3]: [f64; 3]) -> Result<[DVec3; 2], f64> {
        let Self { d, i, j, .. } = *self;
        let x = (r1 * r1 - r2 * r2 + d * d) / (2.0 * d);
        let y = (r1 * r1 - r3 * r3 + i * i + j * j - 2.0 * i * x) / (2.0 * j);
        let square = r1 * r1 - x * x - y * y;
        // What lies in the plane of the points meets in one place, to the last digits.
        if square < -1e-13 * r1 * r1 {
            return Err(self.growth([r1, r2, r3], [x, y], square));
        }
        let [e1, e2, e3] = self.axes;
        let (flat, z) = (self.origin + x * e1 + y * e2, square.max(0.0).sqrt());
        Ok([flat + z * e3, flat - z * e3])
    }

    /// With every length longer by `g`, x and y grow by `g` times constants and `z²` is a quadratic in `g`; the root nearest
    /// to 0, growing where that can be.
    fn growth(&self, [r1, r2, r3]: [f64; 3], [x, y]: [f64; 2], square: f64) -> f64 {
        let across = (r1 - r2) / self.d;
        let up = (r1 - r3 - self.i * across) / self.j;
        let a = 1.0 - across * across - up * up;
        let b = 2.0 * (r1 - x * across - y * up);
        // z² = square + b g + a g², with square below 0. One root by the form that loses no digits, the other by their product.
        let root = (b * b - 4.0 * a * square).max(0.0).sqrt();
        let q = -0.5 * (b + root.copysign(b));
        let roots = [q / a, square / q];
        let finite = || roots.into_iter().filter(|root| root.is_finite());
        let least = |one: &f64, other: &f64| one.abs().total_cmp(&other.abs());
        let grown = finite().filter(|root| *root > 0.0).min_by(least);
        grown.or_else(|| finite().min_by(least)).unwrap_or((-square).sqrt())
    }
}
