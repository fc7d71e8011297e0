//! Houses: a body with openings, the rooms behind them, and a roof.

mod body;
mod door;
mod hip;
mod hole;
mod roof;
mod room;
pub mod wall;
mod window;

use super::each;
use super::frame::Frame;
use super::mesh::bounds::Bounds;
use super::mesh::carve::carve;
use crate::geometry::Built;
use crate::scene::{House, Roof};
use body::{Body, Inside};
use glam::{Vec2, Vec3};
use std::ops::Range;

/// How much further than a room's own walls what runs through it is cut away, m; less than any wall around it.
const CLEARANCE: f32 = 0.01;

/// What one house came to.
struct Raised {
    /// Its outdoor solids.
    solids: Range<usize>,
    frame: Frame,
    /// Around these.
    around: Option<Bounds>,
    /// Its rooms, in its own axes, as much larger as what runs through them is cut away; and a box around each.
    rooms: Vec<(Bounds, Option<Bounds>)>,
}

/// Builds all houses. Where one stands in another, as a dormer does in a roof, its rooms are cut out of the other.
pub fn build_all(houses: &[House], built: &mut Built) {
    let raised: Vec<Raised> = each(houses, built, raise);
    for (i, host) in raised.iter().enumerate() {
        let guests = raised.iter().enumerate().filter(|&(j, _)| j != i).map(|(_, guest)| guest);
        for guest in guests {
            for (room, around) in &guest.rooms {
                // Far apart, as nearly all are of many, there is nothing to cut.
                if !host.around.zip(*around).is_some_and(|(host, room)| host.overlaps(&room)) {
                    continue;
                }
                for solid in &mut built.solids[host.solids.clone()] {
                    if !solid.indoors {
                        solid.mesh = carve(&solid.mesh, &guest.frame, room);
                    }
                }
            }
        }
    }
}

fn raise(house: &House, built: &mut Built) -> Raised {
    let frame = Frame::turned(house.at.vec3(), house.turn_deg);
    let body = Body {
        width: house.width.f32(),
        depth: house.depth.f32(),
        height: house.height.f32(),
        wall: house.wall.f32().min(0.3 * house.width.f32()).min(0.3 * house.depth.f32()),
        inside: if house.roof == Roof::Open { Inside::Court } else { Inside::Filled },
    };
    let front = frame.upright(Vec2::new(-0.5 * body.width, 0.0), Vec2::new(0.5 * body.width, body.height), 0.0);
    let owner = built.enter(&house.name, front.middle(), Some(front));
    let first = built.solids.len();
    let rooms = body.build(owner, &frame, &house.openings, &house.surface, built);
    roof::build(owner, house, &body, &frame, built);
    let points = built.solids[first..].iter().flat_map(|solid| solid.mesh.points.iter().copied());
    let around = Bounds::around(points);
    let rooms = rooms.into_iter().map(|room| {
        let room = room.grown(CLEARANCE);
        (room, Bounds::around(room.corners().map(|corner| frame.point(corner))).map(|around| around.grown(CLEARANCE)))
    });
    Raised { solids: first..built.solids.len(), frame, around, rooms: rooms.collect() }
}

/// A point on the body's middle axis, from which roofs are laid out.
fn centre(body: &Body) -> Vec3 {
    Vec3::new(0.0, 0.0, -0.5 * body.depth)
}
