//! The body of a house or wall: one lattice with the openings left out.

use super::hole::Hole;
use super::{door, room, window};
use crate::geometry::shapes::OUTDOORS;
use crate::geometry::shapes::frame::Frame;
use crate::geometry::shapes::mesh::bounds::Bounds;
use crate::geometry::shapes::mesh::lattice::Lattice;
use crate::geometry::{Built, Chamber, Mesh};
use crate::scene::{Opening, Ref, Side};
use glam::Vec3;

/// What a body is between its walls.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Inside {
    /// Solid, but for the rooms: nobody can look into the rest, so nothing of it is built, and nothing can leak.
    Filled,
    /// Open to the sky.
    Court,
    /// Nothing: one free-standing wall.
    Sheet,
}

/// A body in its own axes: x along the front from its middle, y from the foot, z out of the front.
#[derive(Clone, Copy, Debug)]
pub struct Body {
    /// Along the front.
    pub width: f32,
    /// From front to back; of a free-standing wall its thickness.
    pub depth: f32,
    /// From foot to eaves.
    pub height: f32,
    /// Thickness of a wall.
    pub wall: f32,
    /// What is between the walls.
    pub inside: Inside,
}

impl Body {
    /// The frame of one wall, at the foot of its left end as seen from outside, and the wall's length.
    pub fn wall_frame(&self, side: Side) -> (Frame, f32) {
        let (x, z) = (0.5 * self.width, -self.depth);
        let frame = |at, right, out| Frame { at, right, out };
        match side {
            Side::Front => (frame(Vec3::new(-x, 0.0, 0.0), Vec3::X, Vec3::Z), self.width),
            Side::Back => (frame(Vec3::new(x, 0.0, z), Vec3::NEG_X, Vec3::NEG_Z), self.width),
            Side::Left => (frame(Vec3::new(-x, 0.0, z), Vec3::Z, Vec3::NEG_X), self.depth),
            Side::Right => (frame(Vec3::new(x, 0.0, 0.0), Vec3::NEG_Z, Vec3::X), self.depth),
        }
    }

    /// Its outer box.
    pub fn outer(&self) -> Bounds {
        let x = 0.5 * self.width;
        Bounds { lo: Vec3::new(-x, 0.0, -self.depth), hi: Vec3::new(x, self.height, 0.0) }
    }

    /// What its walls enclose.
    pub fn inner(&self) -> Bounds {
        let wall = Vec3::new(self.wall, 0.0, self.wall);
        Bounds { lo: self.outer().lo + wall, hi: self.outer().hi - wall }
    }

    /// Builds walls, openings and rooms; the answer is the rooms, in the body's axes.
    pub fn build(
        &self,
        owner: u32,
        frame: &Frame,
        openings: &[Opening],
        surface: &Ref,
        built: &mut Built,
    ) -> Vec<Bounds> {
        let mut holes: Vec<Hole> = openings.iter().map(|o| Hole::new(o, self)).collect();
        room::allot(&mut holes, self);
        built.solid(owner, frame.place(self.masonry(&holes, frame.at.y <= 0.0)), surface);
        let mut rooms = Vec::new();
        for hole in &holes {
            let owner = match hole.opening {
                Opening::Window(w) => window::build(w, hole, self, frame, built),
                Opening::Door(d) => door::build(d, hole, self, frame, built),
            };
            if let (Some(room), Some(chamber)) = (hole.room, hole.chamber) {
                built.solids.push(room::lining(owner, room, hole, &chamber, self, frame));
                rooms.extend([chamber, hole.between(hole.deep, self.wall)]);
            }
            let court = (self.inside == Inside::Court).then(|| self.inner());
            if let Some(space) = hole.chamber.or(court) {
                built.chambers.push(Chamber {
                    owner,
                    middle: frame.point(0.5 * (space.lo + space.hi)),
                    half: 0.5 * (space.hi - space.lo),
                    turn: frame.turn(),
                });
            }
        }
        rooms
    }

    /// The walls with the openings left out; behind a free-standing wall also the case around each room. What stands
    /// on the ground has no underside: nobody sees it, and no light reaches it.
    fn masonry(&self, holes: &[Hole], grounded: bool) -> Mesh {
        let cuts: Vec<Bounds> = holes.iter().filter(|h| h.is_cut()).map(Hole::cut).collect();
        let sheet = self.inside == Inside::Sheet;
        let cases: Vec<Bounds> =
            holes.iter().filter_map(|h| h.chamber).filter(|_| sheet).map(|c| room::case(&c, self)).collect();
        let all = cases.iter().fold(self.outer(), |all, &case| all.with(case));
        let inner = self.inner();
        let mut further: [Vec<f32>; 3] = Default::default();
        let court = (self.inside == Inside::Court).then_some(inner);
        for bounds in cuts.iter().chain(&cases).copied().chain([self.outer()]).chain(court) {
            for (axis, lines) in further.iter_mut().enumerate() {
                lines.extend([bounds.lo[axis], bounds.hi[axis]]);
            }
        }
        Lattice::new(all, further.each_ref().map(Vec::as_slice), OUTDOORS)
            .keep(|p| {
                let wall = self.outer().contains(p) && court.is_none_or(|c| !c.contains(p));
                let case = cases.iter().any(|c| c.contains(p));
                (wall || case) && !cuts.iter().any(|c| c.contains(p))
            })
            .surface_where(|middle, normal| {
                let on_ground = grounded && normal.y < -0.5 && middle.y < 1e-3;
                !on_ground && !holes.iter().any(|h| h.is_mouth(middle))
            })
    }
}
