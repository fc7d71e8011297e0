//! Roofs: a slab on the body, and the walls that close its gables.

use super::body::Body;
use super::{centre, hip};
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::bounds::Bounds;
use crate::geometry::shapes::mesh::cut::refine;
use crate::geometry::shapes::mesh::lattice::{self, Lattice};
use crate::geometry::{Built, Mesh};
use crate::scene::{Angle, House, Ridge, Roof};
use glam::{Vec2, Vec3};
use std::f32::consts::FRAC_1_SQRT_2;

/// Thickness of a roof, m.
const THICK: f32 = 0.15;

/// How far the underside of a sloped roof lies below the body's upper edge, m, so that the edge is let into the roof.
const LET_IN: f32 = 0.05;

/// The steepest roof that is built, degrees.
const STEEPEST: f64 = 75.0;

/// What a roof is laid out from, in a frame at the middle of the body whose x runs along the ridge.
pub struct Plan {
    /// Half the body along the ridge.
    pub along: f32,
    /// Half the body across the ridge.
    pub across: f32,
    /// How far the roof reaches beyond the body.
    pub overhang: f32,
    /// Tangent of the slope.
    pub slope: f32,
    /// Height of the body's upper edge.
    pub edge: f32,
    /// Height of the underside over the body's outer faces.
    pub eaves: f32,
    /// Thickness measured upright.
    pub thick: f32,
}

impl Plan {
    fn new(body: &Body, along_front: bool, pitch: Angle, overhang: f32) -> Self {
        let pitch = pitch.0.clamp(0.0, STEEPEST).to_radians() as f32;
        let half = 0.5 * Vec2::new(body.width, body.depth);
        let (along, across) = if along_front { (half.x, half.y) } else { (half.y, half.x) };
        let (edge, eaves, thick) = (body.height, body.height - LET_IN, THICK / pitch.cos());
        Self { along, across, overhang, slope: pitch.tan(), edge, eaves, thick }
    }

    /// A slab whose underside has the height `under` over each place across, with a crease along the middle.
    fn slab(&self, under: impl Fn(f32) -> f32) -> Mesh {
        let reach = Vec3::new(self.along + self.overhang, 0.0, self.across + self.overhang);
        // Laid out as long as it is along the slope, so that lifting it leaves its cells as long as they may be.
        let stretch = self.slope.hypot(1.0);
        let reach = Vec3::new(reach.x, 0.0, reach.z * stretch);
        let bounds = Bounds { lo: -reach, hi: reach.with_y(self.thick) };
        let mut slab = Lattice::new(bounds, [&[], &[], &[0.0]], OUTDOORS).surface();
        for p in &mut slab.points {
            p.z /= stretch;
            p.y += under(p.z);
        }
        refine(slab, OUTDOORS)
    }

    /// The upright walls at both ends of the ridge from the body's edge into the roof. Their upper edge runs in small
    /// steps that stay within the slab, so that all their faces are plain cells.
    fn gables(&self, wall: f32, under: impl Fn(f32) -> f32) -> Mesh {
        let top = |across: f32| under(across) + 0.5 * self.thick;
        let step = OUTDOORS * FRAC_1_SQRT_2;
        // A step no wider than this rises less than the slab is thick.
        let columns =
            lattice::lines(-self.across, self.across, &[0.0], step.min(0.8 * self.thick / self.slope.max(0.1)));
        let tops: Vec<f32> = columns.windows(2).map(|w| top(0.5 * (w[0] + w[1]))).collect();
        let highest = tops.iter().copied().fold(self.edge, f32::max);
        let rows = lattice::lines(self.edge, highest, &tops, step);
        let mut both = Mesh::default();
        for outer in [-self.along, self.along - wall] {
            let depths = lattice::lines(outer, outer + wall, &[], step);
            let cells = Lattice::of([depths, rows.clone(), columns.clone()]);
            both.append(&cells.keep(|p| p.y < top(p.z)).surface());
        }
        both
    }

    /// The upright wall below the high side of a shed roof, between the gables.
    fn head(&self, wall: f32, under: impl Fn(f32) -> f32) -> Mesh {
        let tall = under(self.across) + 0.5 * self.thick - self.edge;
        let (lo, hi) =
            (Vec3::new(wall - self.along, 0.0, self.across - wall), Vec3::new(self.along - wall, tall, self.across));
        let mut mesh = lattice::block(lo, hi, OUTDOORS);
        for p in &mut mesh.points {
            // Its upper edge slopes with the slab.
            p.y = self.edge + p.y / tall * (under(p.z) + 0.5 * self.thick - self.edge);
        }
        refine(mesh, OUTDOORS)
    }
}

/// Builds the roof of a house.
pub fn build(owner: u32, house: &House, body: &Body, frame: &Frame, built: &mut Built) {
    let middle = Frame { at: centre(body), right: Vec3::X, out: Vec3::Z };
    let across = Frame { at: centre(body), right: Vec3::Z, out: Vec3::NEG_X };
    match &house.roof {
        Roof::Open => {}
        Roof::Flat(flat) => {
            let reach =
                Vec3::new(0.5 * body.width, 0.0, 0.5 * body.depth) + flat.overhang.f32() * Vec3::new(1.0, 0.0, 1.0);
            let slab =
                lattice::block(-reach + body.height * Vec3::Y, reach + (body.height + THICK) * Vec3::Y, OUTDOORS);
            built.solid(owner, frame.nest(&middle).place(slab), &flat.surface);
        }
        Roof::Gable(gable) => {
            let along = gable.ridge == Ridge::Along;
            let plan = Plan::new(body, along, gable.pitch_deg, gable.overhang.f32());
            let frame = frame.nest(if along { &middle } else { &across });
            let under = |across: f32| plan.eaves + (plan.across - across.abs()) * plan.slope;
            built.solid(owner, frame.place(plan.slab(under)), &gable.surface);
            built.solid(owner, frame.place(plan.gables(body.wall, under)), &house.surface);
        }
        Roof::Shed(shed) => {
            let plan = Plan::new(body, true, shed.pitch_deg, shed.overhang.f32());
            let frame = frame.nest(&middle);
            let under = |across: f32| plan.eaves + (plan.across + across) * plan.slope;
            built.solid(owner, frame.place(plan.slab(under)), &shed.surface);
            built.solid(owner, frame.place(plan.gables(body.wall, under)), &house.surface);
            built.solid(owner, frame.place(plan.head(body.wall, under)), &house.surface);
        }
        Roof::Hip(roof) => {
            let along = body.width >= body.depth;
            let plan = Plan::new(body, along, roof.pitch_deg, roof.overhang.f32());
            let frame = frame.nest(if along { &middle } else { &across });
            built.solid(owner, frame.place(hip::slab(&plan)), &roof.surface);
        }
    }
}
