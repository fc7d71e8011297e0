//! Where the throws land: the edge of every station's raster, followed from its lens.

use gauzelight::{
    geometry::Sight,
    judge,
    light::{Night, VeilSort},
};
use glam::Vec3;

/// Points along each edge of a raster.
const ALONG: usize = 10;

/// One station's throw.
pub struct Throw {
    /// Index of the station.
    pub station: usize,
    /// The lens, and the mirrors on the way of the picture's middle.
    pub lens: Vec3,
    /// The edge of the raster where it lands, all around; `None` where it lands nowhere.
    pub edge: Vec<Option<Vec3>>,
}

/// Follows the edges of all stations that are on.
pub fn throws(night: &Night) -> Vec<Throw> {
    let mut list: Vec<Throw> = Vec::new();
    for beam in &night.beams {
        let edge = around().map(|uv| {
            let (from, along) = judge::leave(night, beam, uv)?;
            let touches = night.touches(Sight::endless(from, along));
            let lands = |t: &&judge::Touch| t.veil.is_none_or(|v| night.veils[v as usize].sort != VeilSort::Pane);
            touches.iter().find(lands).map(|t| t.point)
        });
        let lens = beam.relays.last().map_or(beam.lens.at, |relay| relay.lens);
        let throw = Throw { station: beam.station as usize, lens, edge: edge.collect() };
        // The beam that has met all mirrors comes last, and is the one that counts.
        match list.last_mut() {
            Some(last) if last.station == throw.station => *last = throw,
            _ => list.push(throw),
        }
    }
    list
}

/// Places around the edge of a raster, clockwise from its left upper corner.
fn around() -> impl Iterator<Item = [f32; 2]> {
    (0..4 * ALONG).map(|i| {
        let (side, t) = (i / ALONG, (i % ALONG) as f32 / ALONG as f32);
        let inside = |v: f32| v.clamp(0.0005, 0.9995);
        match side {
            0 => [inside(t), 0.0005],
            1 => [0.9995, inside(t)],
            2 => [inside(1.0 - t), 0.9995],
            _ => [0.0005, inside(1.0 - t)],
        }
    })
}
