//! The light of a station: one beam straight from the lens, and one more for each mirror it may have met.

use super::{Drawing, Lens, Night, Rgb, SKIN, VeilSort};
use crate::frames::Frame;
use glam::{Mat3, Vec2, Vec3};
use std::sync::Arc;

/// A mirror on the way of a beam, and the lens (real or mirrored) that the light comes from there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Relay {
    /// Index of the mirror among the night's veils.
    pub veil: u32,
    /// Where the light comes from as seen from this mirror.
    pub lens: Vec3,
}

/// One way on which a station's light spreads.
#[derive(Clone, Debug)]
pub struct Beam {
    /// Index of the station in the yard.
    pub station: u32,
    /// The lens as the lit points see it.
    pub lens: Lens,
    /// Mirrors, the one that the lit points see first.
    pub relays: Vec<Relay>,
    /// Lumens over the picture's area at unit depth, times the reflectance of the mirrors: lx at depth 1.
    pub power: f32,
    /// What a black pixel gives, as a share of white.
    pub black: f32,
    /// Evenness at the centre, so that the mean of nine points is 1.
    pub even: f32,
    /// Fall of evenness from the centre to a corner.
    pub droop: f32,
    /// Diameter of the lens opening, m.
    pub aperture: f32,
    /// Depth that is in focus, m.
    pub focus: f32,
    /// Width of one of the projector's own pixels over that of the raster.
    pub pixel: f32,
    /// Texels of the picture to one of the projector's own pixels, at least 1: finer detail is not thrown.
    pub grain: f32,
    /// The picture.
    pub frame: Arc<Frame>,
    /// What it has of the cells of the raster.
    pub drawing: Arc<Drawing>,
    /// Rows that take `(u, v, 1)` of the raster to the picture's own coordinates, projectively.
    pub map: [Vec3; 3],
    /// Takes `(u, v, 1)` of the raster to that of the whole picture as its digital keystone bends it; mostly the identity.
    pub corrected: Mat3,
}

/// The mean over the nine points of ISO/IEC 21118 of (distance from the centre over distance of a corner)²:
/// 0 once, 2/9 four times, 4/9 four times.
const NINE_POINT: f32 = (4.0 * 2.0 / 9.0 + 4.0 * 4.0 / 9.0) / 9.0;

/// Evenness at the centre for a ratio of corner to centre, and the fall towards the corners.
pub(super) fn evenness(corner: f32) -> (f32, f32) {
    let droop = 1.0 - corner;
    (1.0 / (1.0 - droop * NINE_POINT), droop)
}

impl Beam {
    /// The raster's own evenness at `(u, v)`, nine-point mean 1.
    #[inline]
    pub fn evenness(&self, u: f32, v: f32) -> f32 {
        let (x, y) = (2.0 * u - 1.0, 2.0 * v - 1.0);
        self.even * (1.0 - self.droop * 0.5 * (x * x + y * y))
    }

    /// The picture at `(u, v)` of the raster, black outside its box; `level` of the pyramid.
    #[inline]
    pub fn picture(&self, u: f32, v: f32, level: f32) -> Rgb {
        self.picture_at([u, v]).map_or(Rgb::ZERO, |[s, t]| self.frame.sample(s, t, level))
    }

    /// The picture's own coordinates, 0 to 1 each way, of a place in the raster; `None` outside its box.
    #[inline]
    pub fn picture_at(&self, [u, v]: [f32; 2]) -> Option<[f32; 2]> {
        let raster = Vec3::new(u, v, 1.0);
        let bend = self.map[2].dot(raster);
        let (s, t) = (self.map[0].dot(raster) / bend, self.map[1].dot(raster) / bend);
        ((0.0..=1.0).contains(&s) && (0.0..=1.0).contains(&t)).then_some([s, t])
    }

    /// Whether a place of the raster is figure as drawn.
    pub fn is_figure(&self, uv: [f32; 2]) -> bool {
        self.picture_at(uv).is_some_and(|[s, t]| self.frame.is_figure(s, t))
    }

    /// Level of the picture's pyramid for a blur of `across` metres at depth `depth`.
    #[inline]
    pub fn level(&self, across: f32, depth: f32) -> f32 {
        let columns = self.texels_across();
        (across * columns / (self.lens.w1 * depth)).max(self.grain).log2()
    }

    /// Texels of the picture over the width of the raster, as close as they lie in its middle: picture widths to a raster's width
    /// are `∂(s/q)/∂u = (s' q − s q') / q²`.
    #[inline]
    pub fn texels_across(&self) -> f32 {
        let finest = &self.frame.levels[0];
        let [s, t, q] = self.map.map(|row| row.dot(Vec3::new(0.5, 0.5, 1.0)));
        let widths = |row: Vec3, at: f32| ((row.x * q - at * self.map[2].x) / (q * q)).abs();
        widths(self.map[0], s) * finest.width as f32 + widths(self.map[1], t) * finest.height as f32
    }

    /// Illuminance at `point` of a plane square to the light there, lx, were nothing in the way; and the direction to the
    /// lens. `footprint` is the width that an eye's pixel covers there, m.
    ///
    /// `E = Φ · U · c / (w1 h1 z²) · |n·l| / cos α`, of which `|n·l|` is the receiver's.
    #[inline]
    pub fn square(&self, point: Vec3, footprint: f32) -> Option<(Rgb, Vec3)> {
        let (u, v, depth) = self.lens.project(point)?;
        let (white, toward) = self.white(point)?;
        let blur = self.blur_at(depth);
        let picture = self.picture(u, v, self.level(blur.max(footprint), depth));
        let content = Rgb::splat(self.black) + (1.0 - self.black) * picture;
        Some((white * content, toward))
    }

    /// The same for a white picture.
    #[inline]
    pub fn white(&self, point: Vec3) -> Option<(f32, Vec3)> {
        let (u, v, depth) = self.lens.project(point)?;
        if !((0.0..=1.0).contains(&u) && (0.0..=1.0).contains(&v)) {
            return None;
        }
        let way = self.lens.at - point;
        let distance = way.length();
        // 1 / cos α = distance / depth.
        Some((self.power * self.evenness(u, v) * distance / (depth * depth * depth), way / distance))
    }

    /// Area that the `cells`th part of the raster covers where it lands at a point of a surface with this unit normal, m²:
    /// `w1 h1 z² cos α / |n·l|` over the cells.
    pub fn patch(&self, point: Vec3, normal: Vec3, cells: usize) -> f32 {
        let way = self.lens.at - point;
        let depth = -way.dot(self.lens.forward);
        let toward = way.normalize_or_zero();
        let steep = normal.dot(toward).abs().max(1e-3);
        self.lens.w1 * self.lens.h1 * depth * depth * -toward.dot(self.lens.forward) / (steep * cells as f32)
    }

    /// How far the raster's width (to the right) and its height (downwards) reach on a surface with this unit normal at the scale that
    /// they have at a point of it, m: `z (e − d (e·n)/(d·n))` for the ray `d` of depth 1 to that point and the step `e` over the raster.
    pub fn stretch(&self, point: Vec3, normal: Vec3) -> [Vec3; 2] {
        let way = point - self.lens.at;
        let depth = way.dot(self.lens.forward).max(1e-6);
        let along = way / depth;
        let steep = normal.dot(along);
        let steep = steep.abs().max(1e-3).copysign(steep);
        let reach = |step: Vec3| depth * (step - along * (step.dot(normal) / steep));
        [reach(self.lens.w1 * self.lens.right), reach(-self.lens.h1 * self.lens.up)]
    }

    /// Mean width of the figure's strokes as they are drawn, over the width of the raster: neither pixels nor focus are asked. 0 where
    /// the picture is black.
    pub fn stroke(&self) -> f32 {
        let aspect = self.lens.h1 / self.lens.w1;
        let square_on = self.texel().map(|[u, v]| Vec2::new(u, v * aspect));
        self.frame.outline.map_or(0.0, |outline| outline.stroke(square_on[0], square_on[1]))
    }

    /// How far a texel of the picture reaches over the raster, across and down, in the middle of the figure.
    pub fn texel(&self) -> [[f32; 2]; 2] {
        self.texel_at(self.frame.figure.map_or(Vec2::splat(0.5), |figure| figure.centre()))
    }

    /// The same at a place of the picture.
    pub fn texel_at(&self, middle: Vec2) -> [[f32; 2]; 2] {
        let (width, height) = self.frame.size();
        let half = [Vec2::new(0.5 / width as f32, 0.0), Vec2::new(0.0, 0.5 / height as f32)];
        half.map(|half| {
            let [from, to] = [middle - half, middle + half].map(|st| self.raster_of(st.into()).unwrap_or_default());
            [0, 1].map(|axis| to[axis] - from[axis])
        })
    }

    /// Depth of a point along the lens axis, m; at least a millimetre.
    #[inline]
    pub fn depth(&self, point: Vec3) -> f32 {
        (point - self.lens.at).dot(self.lens.forward).max(1e-3)
    }

    /// Width of the blur that the focus leaves at a depth, m: `D |z − zf| / zf`.
    #[inline]
    pub fn blur_at(&self, depth: f32) -> f32 {
        self.aperture * (depth - self.focus).abs() / self.focus
    }

    /// The same at a point, over the width of the raster there.
    pub fn blur(&self, point: Vec3) -> f32 {
        let depth = self.depth(point);
        self.blur_at(depth) / (self.lens.w1 * depth)
    }

    /// Transmittance from a point to the real lens by way of the mirrors; 0 where a mirror is missed.
    /// `side` is the unit normal of the surface on the side where the light is.
    #[inline]
    pub fn transmittance(&self, night: &Night, point: Vec3, side: Vec3) -> Rgb {
        let mut from = point + SKIN * side;
        let mut towards = self.lens.at;
        let mut through = Rgb::ONE;
        let mut skip = [u32::MAX; 2];
        for relay in &self.relays {
            let mirror = &night.veils[relay.veil as usize];
            let Some(on) = mirror.facing_point(from, towards) else { return Rgb::ZERO };
            if mirror.behind(relay.lens) {
                return Rgb::ZERO;
            }
            debug_assert_eq!(mirror.sort, VeilSort::Mirror);
            through *= night.way(from, on, [skip[0], relay.veil]);
            if through == Rgb::ZERO {
                return Rgb::ZERO;
            }
            (from, towards) = (on, relay.lens);
            skip = [relay.veil, u32::MAX];
        }
        through * night.way(from, towards, skip)
    }
}
