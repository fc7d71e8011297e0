//! Where a ray crosses things.

use super::{Outline, Quad};
use glam::{Vec3, Vec4};

/// A triangle's three corners, counter-clockwise as seen from outside.
pub type Corners = [Vec3; 3];

/// A ray made ready to meet triangles.
///
/// Watertight after Woop, Benthin & Wald 2013 (J. Comput. Graph. Tech. 2(1)): each corner is sheared by itself onto a plane
/// across the ray, the same for every triangle that has it, and the three areas seen there are differences of two products,
/// whose sign rounding can turn to zero but never about. A ray on an edge or through a corner meets all that share it.
#[derive(Clone, Copy, Debug)]
pub struct Shear {
    origin: Vec3,
    /// The axis that the ray runs along most: it becomes the third.
    axis: Axis,
    /// What to take off the other two for each unit of the third.
    lean: [f32; 2],
    /// One over the direction's part along the third.
    per_length: f32,
}

#[derive(Clone, Copy, Debug)]
enum Axis {
    X,
    Y,
    Z,
}

impl Shear {
    /// Makes a ray ready.
    #[inline]
    pub fn of(origin: Vec3, direction: Vec3) -> Self {
        let size = direction.abs();
        let axis = if size.x >= size.y && size.x >= size.z {
            Axis::X
        } else if size.y >= size.z {
            Axis::Y
        } else {
            Axis::Z
        };
        let along = axis.turned(direction);
        Self { origin, axis, lean: [along.x / along.z, along.y / along.z], per_length: 1.0 / along.z }
    }

    #[inline]
    fn flat(&self, corner: Vec3) -> Vec3 {
        let p = self.axis.turned(corner - self.origin);
        Vec3::new(p.x - self.lean[0] * p.z, p.y - self.lean[1] * p.z, p.z)
    }

    /// Where the ray (t > 0) meets a triangle: t and the weights of the three corners.
    #[inline]
    pub fn triangle(&self, corners: &Corners) -> Option<(f32, [f32; 3])> {
        let (a, b, c) = (self.flat(corners[0]), self.flat(corners[1]), self.flat(corners[2]));
        let u = c.x * b.y - c.y * b.x;
        let v = a.x * c.y - a.y * c.x;
        let w = b.x * a.y - b.y * a.x;
        if (u < 0.0 || v < 0.0 || w < 0.0) && (u > 0.0 || v > 0.0 || w > 0.0) {
            return None;
        }
        let sum = u + v + w;
        if sum == 0.0 {
            return None;
        }
        let t = (u * a.z + v * b.z + w * c.z) / sum * self.per_length;
        (t > 0.0 && t.is_finite()).then(|| (t, [u / sum, v / sum, w / sum]))
    }
}

/// Up to four triangles side by side, each of their corners' coordinates together.
#[derive(Clone, Debug)]
pub struct Four([[Vec4; 3]; 3]);

impl Four {
    /// Of the first four; a place without a triangle is never met.
    pub fn of<'a>(triangles: impl IntoIterator<Item = &'a Corners>) -> Self {
        let mut four = Self([[Vec4::NAN; 3]; 3]);
        for (lane, triangle) in triangles.into_iter().take(4).enumerate() {
            for (corner, point) in triangle.iter().enumerate() {
                (0..3).for_each(|axis| four.0[corner][axis][lane] = point[axis]);
            }
        }
        four
    }
}

impl Shear {
    /// Where the ray (t > 0) meets each of four triangles, infinite for a miss: to the bit what [`Shear::triangle`] says of each.
    #[inline]
    pub fn four(&self, four: &Four) -> Vec4 {
        let [x, y, z] = self.axis.order();
        let flat = |corner: &[Vec4; 3]| {
            let along = corner[z] - self.origin[z];
            (
                corner[x] - self.origin[x] - self.lean[0] * along,
                corner[y] - self.origin[y] - self.lean[1] * along,
                along,
            )
        };
        let (a, b, c) = (flat(&four.0[0]), flat(&four.0[1]), flat(&four.0[2]));
        let u = c.0 * b.1 - c.1 * b.0;
        let v = a.0 * c.1 - a.1 * c.0;
        let w = b.0 * a.1 - b.1 * a.0;
        let least = u.min(v).min(w);
        let most = u.max(v).max(w);
        let beside = least.cmplt(Vec4::ZERO) & most.cmpgt(Vec4::ZERO);
        let sum = u + v + w;
        let t = (u * a.2 + v * b.2 + w * c.2) / sum * self.per_length;
        let met = t.cmpgt(Vec4::ZERO) & t.cmplt(Vec4::INFINITY) & sum.cmpne(Vec4::ZERO) & !beside;
        Vec4::select(met, t, Vec4::INFINITY)
    }
}

impl Axis {
    /// The coordinates as [`Axis::turned`] has them.
    #[inline]
    const fn order(self) -> [usize; 3] {
        match self {
            Self::X => [1, 2, 0],
            Self::Y => [2, 0, 1],
            Self::Z => [0, 1, 2],
        }
    }

    #[inline]
    fn turned(self, p: Vec3) -> Vec3 {
        match self {
            Self::X => Vec3::new(p.y, p.z, p.x),
            Self::Y => Vec3::new(p.z, p.x, p.y),
            Self::Z => p,
        }
    }
}

/// Where the ray `origin + t · direction` (t > 0) meets one triangle: t and the weights of the three corners.
#[inline]
pub fn triangle(corners: &Corners, origin: Vec3, direction: Vec3) -> Option<(f32, [f32; 3])> {
    Shear::of(origin, direction).triangle(corners)
}

/// Where the line meets a parallelogram, edges included: t (of any sign) and the place `(s, t)` along its edges.
#[inline]
pub fn quad(quad: &Quad, origin: Vec3, direction: Vec3) -> Option<(f32, [f32; 2])> {
    let normal = quad.u.cross(quad.v);
    let steep = direction.dot(normal);
    if steep == 0.0 {
        return None;
    }
    let away = origin - quad.corner;
    let turn = away.cross(direction);
    // Cramer's rule on origin + t·direction = corner + s·u + r·v.
    let s = -quad.v.dot(turn) / steep;
    let r = quad.u.dot(turn) / steep;
    let inside = (0.0..=1.0).contains(&s) && (0.0..=1.0).contains(&r);
    inside.then(|| (-away.dot(normal) / steep, [s, r]))
}

/// Where the line enters and leaves an outline; a flat one is crossed once, a body twice or not at all.
#[inline]
pub fn outline(shape: &Outline, origin: Vec3, direction: Vec3) -> [f32; 2] {
    const MISS: [f32; 2] = [f32::INFINITY; 2];
    match shape {
        Outline::Flat(flat) => quad(flat, origin, direction).map_or(MISS, |(t, _)| [t, f32::INFINITY]),
        Outline::Egg { middle, radii } => {
            let o = (origin - *middle) / *radii;
            let d = direction / *radii;
            let (a, b, c) = (d.dot(d), o.dot(d), o.dot(o) - 1.0);
            // The distance of the line from the middle decides better than b² - ac, which cancels.
            let beside = o - d * (b / a);
            let left = 1.0 - beside.dot(beside);
            if left <= 0.0 {
                return MISS;
            }
            let root = (a * left).sqrt();
            let far = if b < 0.0 { root - b } else { -root - b };
            let (t0, t1) = (c / far, far / a);
            [t0.min(t1), t0.max(t1)]
        }
        Outline::Crate { middle, half, turn } => {
            let o = turned_in(origin - *middle, *turn);
            let d = turned_in(direction, *turn);
            let one = (-*half - o) / d;
            let two = (*half - o) / d;
            let enter = one.min(two).max_element();
            let leave = one.max(two).min_element();
            if enter < leave { [enter, leave] } else { MISS }
        }
    }
}

/// Unit normal outwards (to the front, for a flat outline) at a point on it.
#[inline]
pub fn outline_normal(shape: &Outline, point: Vec3) -> Vec3 {
    match shape {
        Outline::Flat(flat) => flat.normal(),
        Outline::Egg { middle, radii } => ((point - *middle) / (*radii * *radii)).normalize_or_zero(),
        Outline::Crate { middle, half, turn } => {
            let p = turned_in(point - *middle, *turn) / *half;
            let a = p.abs();
            let own = if a.x >= a.y && a.x >= a.z {
                Vec3::X * p.x.signum()
            } else if a.y >= a.z {
                Vec3::Y * p.y.signum()
            } else {
                Vec3::Z * p.z.signum()
            };
            turned_out(own, *turn)
        }
    }
}

/// The box around an outline: lower and upper corner.
pub fn outline_box(shape: &Outline) -> (Vec3, Vec3) {
    match shape {
        Outline::Flat(flat) => {
            let corners = [flat.point(0.0, 0.0), flat.point(1.0, 0.0), flat.point(0.0, 1.0), flat.point(1.0, 1.0)];
            corners.iter().fold((corners[0], corners[0]), |(min, max), &p| (min.min(p), max.max(p)))
        }
        Outline::Egg { middle, radii } => (*middle - *radii, *middle + *radii),
        Outline::Crate { middle, half, turn } => {
            let [cos, sin] = [turn[0].abs(), turn[1].abs()];
            let reach = Vec3::new(cos * half.x + sin * half.z, half.y, sin * half.x + cos * half.z);
            (*middle - reach, *middle + reach)
        }
    }
}

/// From the yard's axes to those of a body turned about the vertical (counter-clockwise from above).
#[inline]
fn turned_in(v: Vec3, [cos, sin]: [f32; 2]) -> Vec3 {
    Vec3::new(cos * v.x - sin * v.z, v.y, sin * v.x + cos * v.z)
}

/// From a turned body's axes to the yard's.
#[inline]
fn turned_out(v: Vec3, [cos, sin]: [f32; 2]) -> Vec3 {
    Vec3::new(cos * v.x + sin * v.z, v.y, cos * v.z - sin * v.x)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quarter_turn_counter_clockwise_takes_front_to_the_right() {
        let out = turned_out(Vec3::Z, [0.0, 1.0]);
        assert!((out - Vec3::X).length() < 1e-6);
        assert!((turned_in(out, [0.0, 1.0]) - Vec3::Z).length() < 1e-6);
    }

    #[test]
    fn a_quad_is_met_at_its_place_and_not_beside() {
        let flat = Quad { corner: Vec3::new(1.0, 1.0, 2.0), u: Vec3::X * 2.0, v: Vec3::Y };
        let (t, place) = quad(&flat, Vec3::new(1.5, 1.25, 0.0), Vec3::Z * 2.0).unwrap();
        assert!((t - 1.0).abs() < 1e-6 && (place[0] - 0.25).abs() < 1e-6 && (place[1] - 0.25).abs() < 1e-6);
        assert!(quad(&flat, Vec3::new(0.9, 1.25, 0.0), Vec3::Z).is_none());
        assert!((flat.normal() - Vec3::Z).length() < 1e-6);
    }

    #[test]
    fn four_triangles_are_met_as_each_alone() {
        let point = |i: usize| Vec3::new((3.1 * i as f32).sin(), (2.3 * i as f32).cos(), (1.3 * i as f32).sin());
        let mut soup: Vec<Corners> = (0..6).map(|i| [point(3 * i), point(3 * i + 1), point(3 * i + 2)]).collect();
        soup.push([Vec3::ZERO; 3]);
        let mut met = 0;
        for fours in [&soup[..4], &soup[4..], &soup[2..4]] {
            let four = Four::of(fours);
            for step in 0..2000 {
                let from = 3.0 * point(7 * step + 5);
                let shear = Shear::of(from, 0.6 * point(11 * step + 2) - from);
                for (lane, t) in shear.four(&four).to_array().into_iter().enumerate() {
                    let alone = fours.get(lane).and_then(|triangle| shear.triangle(triangle));
                    assert_eq!(alone.map_or(f32::INFINITY, |(t, _)| t), t);
                    met += usize::from(t < f32::INFINITY);
                }
            }
        }
        assert!(met > 100, "{met}");
    }

    #[test]
    fn bodies_are_entered_and_left() {
        let egg = Outline::Egg { middle: Vec3::new(0.0, 1.0, 0.0), radii: Vec3::new(1.0, 2.0, 0.5) };
        let [enter, leave] = outline(&egg, Vec3::new(0.0, 1.0, -3.0), Vec3::Z);
        assert!((enter - 2.5).abs() < 1e-5 && (leave - 3.5).abs() < 1e-5);
        let hedge = Outline::Crate { middle: Vec3::ZERO, half: Vec3::new(2.0, 1.0, 0.5), turn: [0.0, 1.0] };
        let [enter, leave] = outline(&hedge, Vec3::new(-5.0, 0.0, 0.0), Vec3::X);
        assert!((enter - 4.5).abs() < 1e-5 && (leave - 5.5).abs() < 1e-5, "{enter} {leave}");
        assert!((outline_normal(&hedge, Vec3::new(-0.5, 0.0, 0.3)) + Vec3::X).length() < 1e-5);
        assert_eq!(outline(&egg, Vec3::new(3.0, 1.0, -3.0), Vec3::Z)[0], f32::INFINITY);
    }
}
