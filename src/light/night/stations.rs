//! Stations into beams.

use super::{Night, NightFault};
use crate::{
    frames::{Frame, Response, Shelf, Transfer},
    geometry::{Outline, Quad},
    light::{
        Beam, Drawing, Relay,
        beam::evenness,
        keystone::{Raster, bent, corrected},
        lens::{Lens, Stand, mirror_point, picture_map},
    },
    scene::{Band, Catalogue, Gamma, Mount, Station, Yard},
};
use glam::{Vec2, Vec3};
use std::sync::Arc;

impl Night {
    /// Places one station anew, as the yard now says; nothing else changes.
    pub fn set_station(
        &mut self,
        yard: &Yard,
        catalogue: &Catalogue,
        shelf: &Shelf,
        index: usize,
    ) -> Result<(), NightFault> {
        let before: Vec<Beam> = self.beams.iter().filter(|beam| beam.station == index as u32).cloned().collect();
        self.beams.retain(|beam| beam.station != index as u32);
        self.place_station(yard, catalogue, shelf, (index, &before))
    }

    /// The same of one that throws nothing yet; `before` are beams that may have thrown its picture.
    pub(super) fn place_station(
        &mut self,
        yard: &Yard,
        catalogue: &Catalogue,
        shelf: &Shelf,
        (index, before): (usize, &[Beam]),
    ) -> Result<(), NightFault> {
        self.ask_anew(index as u32);
        let station = &yard.stations[index];
        if station.on && !yard.is_hidden(&station.name.0) {
            let beams = self.station_beams(yard, catalogue, shelf, (index as u32, before))?;
            self.beams.extend(beams);
            // Sums keep one order whatever was moved last.
            self.beams.sort_by_key(|beam| (beam.station, beam.relays.len()));
        }
        Ok(())
    }

    /// Whether the picture of a station that is on could not be had, so that a test card stands in for it.
    pub fn lacks_picture(&self, index: usize) -> bool {
        self.beams.iter().any(|beam| beam.station as usize == index && beam.frame.stand_in)
    }

    fn station_beams(
        &self,
        yard: &Yard,
        catalogue: &Catalogue,
        shelf: &Shelf,
        (index, before): (u32, &[Beam]),
    ) -> Result<Vec<Beam>, NightFault> {
        let station = &yard.stations[index as usize];
        let unknown = |name: &str| NightFault::Unknown { user: station.name.0.clone(), name: name.to_owned() };
        let class = yard.projector(catalogue, &station.projector.0).ok_or_else(|| unknown(&station.projector.0))?;
        let (w1, h1, [right, up]) = station.raster(class);
        let (w1, h1, shift) = (w1 as f32, h1 as f32, Vec2::new(right as f32, up as f32));
        // The check of a yard refuses what cannot be corrected.
        let corrected = corrected(Raster { pose: station.pose, w1, h1, shift }, &station.keystone).unwrap_or_default();
        let mirrors = station
            .mirrors
            .iter()
            .take(2)
            // The light goes straight on past a mirror that is put away.
            .filter(|name| !yard.is_hidden(&name.0))
            .map(|name| {
                let at = yard.mirrors.iter().position(|m| m.name.0 == name.0).ok_or_else(|| unknown(&name.0))?;
                let veil = self.mirrors[at].ok_or_else(|| unknown(&name.0))?;
                let Outline::Flat(quad) = self.veils[veil as usize].outline else { return Err(unknown(&name.0)) };
                Ok((veil, quad))
            })
            .collect::<Result<Vec<(u32, Quad)>, _>>()?;
        let mut aim = self.aim(&station.aim).ok_or_else(|| unknown(&station.name.0))?;
        for (_, quad) in mirrors.iter().rev() {
            aim = mirror_point(aim, quad.corner, quad.normal());
        }
        let middle = bent(corrected.inverse(), [0.5, 0.5]);
        let stand = Stand { at: station.at.vec3(), aim, middle, pose: station.pose, roll: station.roll_deg.radians() };
        let lens = Lens::aimed(stand, w1, h1, shift);
        let depth = (aim - lens.at).dot(lens.forward).max(0.05);
        let picture = &station.content.picture;
        let response = response(yard, catalogue, station).ok_or_else(|| unknown(&station.projector.0))?;
        let frame = shelf.frame(picture, response).ok_or_else(|| unknown(picture))?;
        let (even, droop) = evenness(class.corner.typical as f32);
        let map = picture_map(station.pose, &station.content, corrected.as_mat3());
        let mut direct = Beam {
            station: index,
            lens,
            relays: Vec::new(),
            power: lumens(yard, catalogue, station).map_or(0.0, |band| band.typical) as f32 / (w1 * h1),
            black: 0.0,
            even,
            droop,
            aperture: class.aperture.f32(),
            focus: station.focus.as_ref().map_or(depth, |f| f.f32()).max(class.nearest.f32()),
            pixel: 1.0 / class.pixels.0.max(1) as f32,
            grain: 1.0,
            drawing: self.drawing(before, &frame, map),
            frame,
            map,
            corrected: corrected.as_mat3(),
        };
        let mean = direct.frame.mean * direct.picture_share();
        direct.black = black_level(class.on_off_contrast.0, class.checker_contrast.0, mean);
        direct.grain = (direct.texels_across() / class.pixels.0 as f32).max(1.0);
        let mut beams = vec![direct];
        for (veil, quad) in mirrors {
            let mut next = beams[beams.len() - 1].clone();
            next.relays.insert(0, Relay { veil, lens: next.lens.at });
            next.lens = next.lens.mirrored(quad.corner, quad.normal());
            next.power *= self.veils[veil as usize].mirror;
            beams.push(next);
        }
        Ok(beams)
    }

    /// A picture in its raster: what threw it the same way has it made.
    fn drawing(&self, before: &[Beam], frame: &Arc<Frame>, map: [Vec3; 3]) -> Arc<Drawing> {
        let known =
            before.iter().chain(&self.beams).map(|beam| &beam.drawing).find(|drawing| drawing.is_of(frame, map));
        known.map_or_else(|| Arc::new(Drawing::of(Arc::clone(frame), map)), Arc::clone)
    }
}

/// Whether two stations throw the same light: they differ at most in note, mount, box, loads and what holds them.
pub fn throws_alike(a: &Station, b: &Station) -> bool {
    let bare = |station: &Station| Station {
        note: String::new(),
        mount: Mount::Stand,
        loads: Vec::new(),
        shelter: None,
        second_tie: false,
        ballast_kg: 0.0,
        ..station.clone()
    };
    a == b || bare(a) == bare(b)
}

/// What a black pixel gives over white: `k + g m` with `k = 1 / on-off contrast` and `g = 2 (1 / checkerboard − k)`, as
/// half of a checkerboard is white and stray light grows with the mean `m` of the picture.
fn black_level(on_off: f64, checker: f64, mean: f32) -> f32 {
    let k = 1.0 / on_off;
    let g = (2.0 * (1.0 / checker - k)).max(0.0);
    (k + g * f64::from(mean)).clamp(0.0, 1.0) as f32
}

/// How a station's projector answers a picture, by its class or its own word, at typical values; `None` without a class.
pub fn response(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Option<Response> {
    let class = yard.projector(catalogue, &station.projector.0)?;
    let transfer = match station.gamma.unwrap_or(class.gamma) {
        Gamma::Power(band) => Transfer::Power(band.typical as f32),
        Gamma::Srgb => Transfer::Srgb,
    };
    Some(Response { transfer, colour_light: class.colour_light.typical as f32 })
}

/// Real white lumens that leave a station's box, with their band: by its class or its own word, less what age and the
/// window of the box take.
pub fn lumens(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Option<Band> {
    let class = yard.projector(catalogue, &station.projector.0)?;
    let new = station.lumens.unwrap_or(class.lumens);
    let aged = |left: f64| left.powf(station.hours / 1000.0) * station.box_window.0;
    let left = class.left_after_1000_h;
    Some(Band {
        low: new.low * aged(left.low),
        typical: new.typical * aged(left.typical),
        high: new.high * aged(left.high),
    })
}
