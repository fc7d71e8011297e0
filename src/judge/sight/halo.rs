//! What a figure itself scatters inside an eye over what lies beside it.

use super::sample::Sample;
use crate::light::eye as laws;
use glam::Vec3;

/// A figure's light at an eye, part by part.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Halo {
    age: f64,
    parts: Vec<Part>,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Part {
    /// Unit vector from the eye.
    along: Vec3,
    /// Solid angle, sr.
    open: f64,
    /// Its light at the eye, of a plane square to it, lx.
    lx: f64,
}

impl Halo {
    /// Of a figure's samples, each with its luminance, cd/m², for an eye of this age, years.
    pub fn of<'a>(samples: impl Iterator<Item = (&'a Sample, f64)>, age: f64) -> Self {
        let part = |(sample, light): (&Sample, f64)| Part {
            along: sample.ray.along,
            open: sample.open,
            lx: light * sample.open,
        };
        Self { age, parts: samples.map(part).collect() }
    }

    /// Luminance of the veil that it draws over what is looked at along a ray, cd/m². A part stands for an area: nearer than its own
    /// radius it counts as at that.
    pub fn veil(&self, along: Vec3) -> f64 {
        let each = self.parts.iter().map(|part| {
            let beside = f64::from(along.cross(part.along).length().atan2(along.dot(part.along)));
            let radius = (part.open / std::f64::consts::PI).sqrt();
            laws::veil(beside.max(radius).to_degrees(), self.age) * part.lx * beside.cos().max(0.0)
        });
        each.sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(across: f64, up: f64) -> Vec3 {
        let tangent = |degrees: f64| degrees.to_radians().tan() as f32;
        Vec3::new(tangent(across), tangent(up), -1.0).normalize()
    }

    /// A figure of 1 cd/m², 2° by 2°, in so many parts each way.
    fn figure(each: u16, age: f64) -> Halo {
        let step = 2.0 / f64::from(each);
        let along = |i: u16| -1.0 + (f64::from(i) + 0.5) * step;
        let open = step.to_radians().powi(2);
        let part = |i: u16| Part { along: at(along(i % each), along(i / each)), open, lx: open };
        Halo { age, parts: (0..each * each).map(part).collect() }
    }

    /// By hand, 1° beside at 40 years: 10 + 5.05 (1 + (40/62.5)⁴) + 0.00125 = 15.9 cd/m² for each lx; a disc 2° across of 1 cd/m²
    /// sends 9.57e-4 lx.
    #[test]
    fn a_degree_beside_a_small_figure_it_is_the_law_by_hand() {
        let part = Part { along: at(1.0, 0.0), open: 1e-9, lx: 9.57e-4 };
        let halo = Halo { age: 40.0, parts: vec![part] };
        let found = halo.veil(Vec3::NEG_Z);
        assert!((found / 0.0152 - 1.0).abs() < 0.01, "{found}");
    }

    #[test]
    fn size_distance_and_age_tell() {
        let veil = |beside: f64, age: f64| figure(20, age).veil(at(beside, 0.0));
        assert!(veil(1.5, 40.0) > 2.0 * veil(3.0, 40.0), "it falls with the angle");
        assert!(veil(3.0, 75.0) > 1.3 * veil(3.0, 25.0), "and rises with age");
        let (coarse, fine) = (figure(10, 40.0).veil(at(1.6, 0.0)), veil(1.6, 40.0));
        assert!((coarse / fine - 1.0).abs() < 0.05, "{coarse} in parts, {fine} in finer ones");
    }
}
