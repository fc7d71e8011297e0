//! Roofs: a slab on the body, and the walls that close its gables.

use super::body::Body;
use super::{centre, hip};
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::bounds::Bounds;
use crate::geometry::shapes::mesh::cut::refine;
use crate::geometry::shapes::mesh::lattice::{Lattice, block};
use crate::geometry::shapes::mesh::prism::prism;
use crate::geometry::{Built, Mesh};
use crate::scene::{Angle, House, Ridge, Roof};
use glam::{Vec2, Vec3};

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
    /// Height of the underside above the body's edge.
    pub eaves: f32,
    /// Thickness measured upright.
    pub thick: f32,
}

impl Plan {
    fn new(body: &Body, along_front: bool, pitch: Angle, overhang: f32) -> Self {
        let pitch = pitch.0.clamp(0.0, STEEPEST).to_radians() as f32;
        let half = 0.5 * Vec2::new(body.width, body.depth);
        let (along, across) = if along_front { (half.x, half.y) } else { (half.y, half.x) };
        let (eaves, thick) = (body.height - LET_IN, THICK / pitch.cos());
        Self { along, across, overhang, slope: pitch.tan(), eaves, thick }
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

    /// An upright wall across the ridge from the body's edge into the roof, its outer face at the end of the body.
    fn gable(&self, wall: f32, top: &[Vec2]) -> Mesh {
        let edge = self.eaves + LET_IN;
        let mut outline = vec![Vec2::new(-self.across, edge), Vec2::new(self.across, edge)];
        outline.extend(top.iter().map(|p| *p + 0.5 * self.thick * Vec2::Y));
        // The outline is drawn along its own z; turned, that runs along the ridge.
        let mesh = prism(&outline, self.along - wall, self.along, OUTDOORS);
        Frame { at: Vec3::ZERO, right: Vec3::NEG_Z, out: Vec3::X }.place(mesh)
    }
}

/// Builds the roof of a house.
pub fn build(owner: u32, house: &House, body: &Body, frame: &Frame, built: &mut Built) {
    let middle = Frame { at: centre(body), right: Vec3::X, out: Vec3::Z };
    let across = Frame { at: centre(body), right: Vec3::Z, out: Vec3::NEG_X };
    match &house.roof {
        Roof::Open => {}
        Roof::Flat(flat) => {
            let reach = Vec3::new(0.5 * body.width, 0.0, 0.5 * body.depth) + flat.overhang.f32() * Vec3::new(1.0, 0.0, 1.0);
            let slab = block(-reach + body.height * Vec3::Y, reach + (body.height + THICK) * Vec3::Y, OUTDOORS);
            built.solid(owner, frame.nest(&middle).place(slab), &flat.surface);
        }
        Roof::Gable(gable) => {
            let along = gable.ridge == Ridge::Along;
            let plan = Plan::new(body, along, gable.pitch_deg, gable.overhang.f32());
            let frame = frame.nest(if along { &middle } else { &across });
            let under = |across: f32| plan.eaves + (plan.across - across.abs()) * plan.slope;
            built.solid(owner, frame.place(plan.slab(under)), &gable.surface);
            let top = [plan.across, 0.0, -plan.across].map(|z| Vec2::new(z, under(z)));
            built.solid(owner, frame.place(both_ends(&plan.gable(body.wall, &top))), &house.surface);
        }
        Roof::Shed(shed) => {
            let plan = Plan::new(body, true, shed.pitch_deg, shed.overhang.f32());
            let frame = frame.nest(&middle);
            let under = |across: f32| plan.eaves + (plan.across + across) * plan.slope;
            built.solid(owner, frame.place(plan.slab(under)), &shed.surface);
            // The gable's outline runs towards the back, so the high side comes last.
            let top = [plan.across, -plan.across].map(|back| Vec2::new(back, under(-back)));
            built.solid(owner, frame.place(both_ends(&plan.gable(body.wall, &top))), &house.surface);
            let reach = plan.along - body.wall;
            let head = under(plan.across - body.wall) + 0.5 * plan.thick;
            let front = block(
                Vec3::new(-reach, body.height, plan.across - body.wall),
                Vec3::new(reach, head, plan.across),
                OUTDOORS,
            );
            built.solid(owner, frame.place(front), &house.surface);
        }
        Roof::Hip(roof) => {
            let along = body.width >= body.depth;
            let plan = Plan::new(body, along, roof.pitch_deg, roof.overhang.f32());
            let frame = frame.nest(if along { &middle } else { &across });
            built.solid(owner, frame.place(hip::slab(&plan)), &roof.surface);
        }
    }
}

/// A gable wall and its counterpart at the other end of the ridge.
fn both_ends(gable: &Mesh) -> Mesh {
    let mut both = gable.clone();
    let mut other = gable.clone();
    for p in &mut other.points {
        p.x = -p.x;
    }
    // A mirrored triangle runs the other way.
    other.triangles.iter_mut().for_each(|t| t.swap(1, 2));
    both.append(&other);
    both
}
