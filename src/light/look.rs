//! Luminance along a ray: through every fabric and pane in its order, and one reflection.

use super::{
    Night, Rgb, Source, VeilSort,
    arrival::{Sides, View},
    luma,
};
use crate::{
    geometry::{Outline, Quad, Sight, crossing},
    optics::sample_gain,
};
use glam::Vec3;
use std::f32::consts::FRAC_1_PI;

/// A ray from an eye.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EyeRay {
    /// The eye.
    pub from: Vec3,
    /// Unit vector along the ray.
    pub along: Vec3,
    /// Angle that the ray stands for, rad: a pixel of a still. Finer detail is averaged.
    pub width: f32,
}

/// What is asked of a ray.
#[derive(Clone, Copy, Debug)]
struct Asked {
    /// The one source whose light counts; all light where there is none.
    only: Option<u32>,
    /// Whether the bright bodies of lamps are seen.
    bodies: bool,
    /// Illuminance of open level ground by the sky in place of the night's own, lx.
    sky: Option<Rgb>,
    /// The name, by its index, whose see-through things are thought away.
    without: Option<u32>,
}

impl Asked {
    const ALL: Self = Self { only: None, bodies: true, sky: None, without: None };
}

/// Where a ray meets a see-through thing.
#[derive(Clone, Copy, Debug)]
struct Meeting {
    t: f32,
    veil: u32,
}

/// What an eye ray ends on.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// Name of the thing; empty for the sky.
    pub name: String,
    /// Where.
    pub point: Vec3,
    /// Unit normal on the side seen.
    pub normal: Vec3,
    /// Distance from the eye, m.
    pub distance: f32,
    /// Whether it is see-through, so that light on its far side counts as well.
    pub see_through: bool,
}

impl Night {
    /// Luminance along an eye ray, cd/m² per channel.
    ///
    /// `L = [shape(θo) Σ ρ(θi) Ei + exit(θo) Σ τ(θi) Ei] / π + τ_nn(θo) L_behind` at every fabric; `ρ E / π` at the opaque
    /// thing behind; one reflection, at the first pane or mirror that the ray meets.
    pub fn luminance(&self, ray: EyeRay) -> Rgb {
        let mut total = Rgb::ZERO;
        self.each_light(ray, Asked::ALL, |_, light| total += light);
        total
    }

    /// Luminance along an eye ray by the light of one source alone, cd/m² per channel. A station's source is its index.
    pub fn luminance_of(&self, ray: EyeRay, source: u32) -> Rgb {
        let mut total = Rgb::ZERO;
        self.each_light(ray, Asked { only: Some(source), ..Asked::ALL }, |_, light| total += light);
        total
    }

    /// Luminance along an eye ray by each of the night's sources, cd/m²; together they are [`Night::luminance`].
    pub fn luminance_by_source(&self, ray: EyeRay) -> Vec<f32> {
        self.by_source(ray, Asked::ALL)
    }

    /// The same as if the bright bodies of lamps were not there to be seen: what they light alone.
    pub fn surfaces_by_source(&self, ray: EyeRay) -> Vec<f32> {
        self.by_source(ray, Asked { bodies: false, ..Asked::ALL })
    }

    /// The light of one source alone as if the bright bodies of lamps were not there to be seen, cd/m² per channel.
    pub fn surfaces_of(&self, ray: EyeRay, source: u32) -> Rgb {
        let mut total = Rgb::ZERO;
        self.each_light(ray, Asked { only: Some(source), bodies: false, ..Asked::ALL }, |_, light| total += light);
        total
    }

    /// The same as [`Night::surfaces_by_source`] has for that source, cd/m².
    pub fn surface_light_of(&self, ray: EyeRay, source: u32) -> f32 {
        let mut sum = 0.0;
        self.each_light(ray, Asked { only: Some(source), bodies: false, ..Asked::ALL }, |_, light| sum += luma(light));
        sum
    }

    /// Luminance along an eye ray if nothing shone but a sky that gives so much to open level ground, lx per channel: the night's own
    /// does not matter. The see-through things of a name, by its index, may be thought away; what they shade from the sky stays
    /// shaded.
    pub fn under_the_sky(&self, ray: EyeRay, sky: Rgb, without: Option<u32>) -> Rgb {
        let mut total = Rgb::ZERO;
        let asked = Asked { only: Some(self.sky_source), bodies: false, sky: Some(sky), without };
        self.each_light(ray, asked, |_, light| total += light);
        total
    }

    fn by_source(&self, ray: EyeRay, asked: Asked) -> Vec<f32> {
        let mut sums = vec![0.0; self.sources.len()];
        let known = self.memory.as_ref().and_then(|memory| memory.recall(ray, asked.bodies));
        let Some(known) = known else {
            self.each_light(ray, asked, |source, light| sums[source as usize] += luma(light));
            if let Some(memory) = self.memory.as_ref().filter(|_| self.anew.is_empty()) {
                memory.keep(ray, asked.bodies, &sums);
            }
            return sums;
        };
        assert_eq!(known.len(), sums.len(), "a night remembers what it was asked under other sources");
        sums.copy_from_slice(&known);
        for source in &self.anew {
            let mut sum = 0.0;
            self.each_light(ray, Asked { only: Some(*source), ..asked }, |_, light| sum += luma(light));
            sums[*source as usize] = sum;
        }
        sums
    }

    /// Calls `take` with a source and what it adds to the luminance along a ray, as often as it adds something.
    #[inline]
    fn each_light(&self, ray: EyeRay, asked: Asked, mut take: impl FnMut(u32, Rgb)) {
        let only = asked.only;
        let sky = asked.sky.unwrap_or(self.sky_lx);
        let counts = |source: u32| only.is_none_or(|only| only == source);
        let mut leg = Some((ray, Rgb::ONE, 0.0));
        let mut may_mirror = true;
        while let Some((ray, weight, before)) = leg.take() {
            let mut weight = weight;
            let sight = Sight::endless(ray.from, ray.along);
            let solid = self.nearest_solid(sight);
            let (glow, glow_t) =
                if asked.bodies { self.nearest_glow(ray.from, ray.along) } else { (None, f32::INFINITY) };
            let end = solid.as_ref().map_or(f32::INFINITY, |hit| hit.t).min(glow_t);
            for meeting in self.meetings(Sight { reach: end, ..sight }) {
                let veil = &self.veils[meeting.veil as usize];
                if asked.without == Some(veil.owner) && veil.sort != VeilSort::Mirror {
                    continue;
                }
                let point = sight.at(meeting.t);
                let normal = crossing::outline_normal(&veil.outline, point);
                let steep = normal.dot(ray.along);
                let (front, cos) = (steep < 0.0, steep.abs());
                let mirrored = ray.along - 2.0 * steep * normal;
                let view = View { footprint: (before + meeting.t) * ray.width, only };
                let reflected = if veil.sort == VeilSort::Mirror {
                    Rgb::splat(if front { veil.mirror } else { 0.0 })
                } else {
                    self.veil_light(meeting.veil, point, normal, front, ray.along, (view, sky), |s, light| {
                        take(s, weight * light);
                    });
                    self.optics[veil.optic as usize].mirror[usize::from(!front)].sample(cos)
                };
                let throws_back = matches!(veil.sort, VeilSort::Mirror | VeilSort::Pane);
                if throws_back && may_mirror {
                    may_mirror = false;
                    if reflected != Rgb::ZERO {
                        let side = if front { normal } else { -normal };
                        let onward = EyeRay { from: point + super::SKIN * side, along: mirrored, width: ray.width };
                        leg = Some((onward, weight * reflected, before + meeting.t));
                    }
                }
                weight *= match veil.sort {
                    VeilSort::Mirror => Rgb::ZERO,
                    _ => self.optics[veil.optic as usize].sheet.through.sample(cos),
                };
                if weight == Rgb::ZERO {
                    break;
                }
            }
            if weight == Rgb::ZERO {
                continue;
            }
            match (glow, solid) {
                (Some(glow), _) if glow_t <= end => {
                    let glow = &self.glows[glow];
                    if counts(glow.source) {
                        take(glow.source, weight * glow.luminance);
                    }
                }
                (_, Some(hit)) => {
                    let normal = hit.normal * -hit.normal.dot(ray.along).signum();
                    let view = View { footprint: (before + hit.t) * ray.width, only };
                    self.solid_light(&hit, sight.at(hit.t), normal, (view, sky), |s, light| take(s, weight * light));
                }
                _ if counts(self.sky_source) => take(self.sky_source, weight * dome(ray.along, sky)),
                _ => {}
            }
        }
    }

    /// Luminance of the open sky: even above the horizon.
    #[inline]
    pub fn dome(&self, along: Vec3) -> Rgb {
        dome(along, self.sky_lx)
    }

    /// Light thrown back by an opaque surface towards anywhere: `ρ E / π`.
    #[inline]
    fn solid_light(
        &self,
        hit: &super::Hit,
        point: Vec3,
        normal: Vec3,
        (view, sky): (View, Rgb),
        mut take: impl FnMut(u32, Rgb),
    ) {
        let solid = self.solid(hit.solid);
        let back = solid.reflectance * FRAC_1_PI;
        if view.counts(self.sky_source) {
            take(self.sky_source, back * sky * self.solid_sky(hit));
        }
        self.arrivals(point, normal, Sides::Near, view, |a| take(a.source, back * a.square * normal.dot(a.toward)));
    }

    /// Light that a see-through surface scatters towards an eye that looks along `along`.
    #[inline]
    #[allow(clippy::too_many_arguments, reason = "a place on a surface, and how it is looked at")]
    fn veil_light(
        &self,
        index: u32,
        point: Vec3,
        normal: Vec3,
        front: bool,
        along: Vec3,
        (view, sky): (View, Rgb),
        mut take: impl FnMut(u32, Rgb),
    ) {
        let veil = &self.veils[index as usize];
        let optic = &self.optics[veil.optic as usize];
        let near = if front { normal } else { -normal };
        let (near_face, far_face) = (&optic.sheet.faces[usize::from(!front)], &optic.sheet.faces[usize::from(front)]);
        if !optic.scatters {
            return;
        }
        let cos_out = near.dot(along).abs();
        let back = near_face.reflect_shape.sample(cos_out) * FRAC_1_PI;
        let on = near_face.exit_shape.sample(cos_out) * FRAC_1_PI;
        self.arrivals(point, near, Sides::Both, view, |a| {
            let cos = near.dot(a.toward);
            let scattered = if cos > 0.0 {
                back * near_face.reflect.sample(cos) * a.square * cos
            } else if veil.sort == VeilSort::Film {
                // Half the length of the difference of two unit vectors is the sine of half the angle between them.
                let bend = 0.5 * (a.toward - along).length();
                optic.kappa.sample(-cos) * sample_gain(&optic.gain, bend) * a.square * (-cos * FRAC_1_PI)
            } else {
                on * far_face.diffuse.sample(-cos) * a.square * -cos
            };
            take(a.source, scattered);
        });
        if !view.counts(self.sky_source) {
            return;
        }
        let place = flat_place(&veil.outline, point);
        let falls = |front: bool, normal: Vec3| sky * self.veil_sky(index, front, place, normal);
        // Dome light meets the cloth by its hemispherical means, so that shape × mean is the table itself.
        let by_sky = near_face.reflect.sample(cos_out) * falls(front, near)
            + near_face.exit_shape.sample(cos_out) * optic.diffuse_mean[usize::from(front)] * falls(!front, -near);
        take(self.sky_source, by_sky * FRAC_1_PI);
    }

    /// See-through things on the way, nearest first; ties by their order in the yard.
    fn meetings(&self, sight: Sight) -> Vec<Meeting> {
        let mut met = Vec::new();
        self.veil_tree.each(sight, |veil| {
            for t in crossing::outline(&self.veils[veil as usize].outline, sight.origin, sight.direction) {
                if t > 0.0 && t < sight.reach {
                    met.push(Meeting { t, veil });
                }
            }
        });
        met.sort_unstable_by(|a, b| a.t.total_cmp(&b.t).then(a.veil.cmp(&b.veil)));
        met.truncate(super::MOST_CROSSINGS);
        met
    }

    /// The nearest bright body on a ray; of several at one place the first.
    fn nearest_glow(&self, from: Vec3, along: Vec3) -> (Option<usize>, f32) {
        let mut nearest = (None, f32::INFINITY);
        self.glow_tree.nearest_leaf(Sight::endless(from, along), |leaf, reach| {
            for &glow in self.glow_tree.of_leaf(leaf) {
                let t = self.glows[glow as usize].distance(from, along);
                let first = nearest.0.is_none_or(|held| (glow as usize) < held);
                if t < nearest.1 || (t == nearest.1 && t < f32::INFINITY && first) {
                    nearest = (Some(glow as usize), t);
                }
            }
            reach.min(nearest.1)
        });
        nearest
    }

    /// What an eye ray meets first: with `through` the opaque thing behind all cloth and glass, else whatever comes first.
    pub fn seen(&self, ray: EyeRay, through: bool) -> Seen {
        let sight = Sight::endless(ray.from, ray.along);
        let solid = self.nearest_solid(sight);
        let reach = solid.as_ref().map_or(f32::INFINITY, |hit| hit.t);
        let first = if through {
            None
        } else {
            let is_thing = |m: &&Meeting| self.veils[m.veil as usize].sort != VeilSort::Pane;
            self.meetings(Sight { reach, ..sight }).iter().find(is_thing).copied()
        };
        let (owner, t, normal) = match (first, solid) {
            (Some(m), _) => {
                let veil = &self.veils[m.veil as usize];
                (Some(veil.owner), m.t, crossing::outline_normal(&veil.outline, sight.at(m.t)))
            }
            (None, Some(hit)) => (Some(self.solid(hit.solid).owner), hit.t, hit.normal),
            (None, None) => (None, 1e4, -ray.along),
        };
        Seen {
            name: owner.map(|o| self.names[o as usize].clone()).unwrap_or_default(),
            point: sight.at(t),
            normal: normal * if normal.dot(ray.along) > 0.0 { -1.0 } else { 1.0 },
            distance: t,
            see_through: first.is_some(),
        }
    }

    /// Name of a source.
    pub fn source_name(&self, source: u32) -> &str {
        self.sources.get(source as usize).map_or("", Source::name)
    }
}

/// Luminance of an even sky, above the horizon.
#[inline]
fn dome(along: Vec3, sky: Rgb) -> Rgb {
    if along.y > 0.0 { sky * FRAC_1_PI } else { Rgb::ZERO }
}

/// The place of a point along the edges of a flat outline; anything for a body.
#[inline]
fn flat_place(outline: &Outline, point: Vec3) -> [f32; 2] {
    let Outline::Flat(Quad { corner, u, v }) = outline else { return [0.0; 2] };
    let normal = u.cross(*v);
    let scale = 1.0 / normal.length_squared();
    let away = point - *corner;
    [away.cross(*v).dot(normal) * scale, u.cross(away).dot(normal) * scale]
}
