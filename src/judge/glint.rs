//! The faint second picture: what glass throws back of a station's light, and where that lands.

use super::{
    Beyond, Landings, Touch,
    beyond::{Gathered, whole},
    landing::fineness,
    leave,
};
use crate::{
    geometry::{Sight, crossing},
    light::{Beam, Night, SKIN, VeilSort, luma},
};
use glam::Vec3;

/// A ray of the raster that glass has thrown back.
struct Glint {
    /// From the lens, real or mirrored, to the glass, m.
    way: f32,
    /// On the side of the glass where the light is.
    from: Vec3,
    /// Unit vector along the way back.
    along: Vec3,
    /// What is left of the ray: all that it passed on its way to the glass, times what the glass throws back.
    left: f32,
}

/// What the light lands on that the first pane on its way throws back, be that before the target or behind it. Shares are of
/// the whole white raster and have the reflectance of fold mirrors in them; what is thrown back a second time is left out.
pub(super) fn thrown_back(night: &Night, station: u32, landings: &Landings) -> Vec<Beyond> {
    let mut gathered = Gathered::default();
    let beams: Vec<&Beam> = night.beams.iter().filter(|beam| beam.station == station).collect();
    let Some(direct) = beams.first().filter(|_| night.veils.iter().any(|veil| veil.sort == VeilSort::Pane)) else {
        return Vec::new();
    };
    let white = whole(landings);
    for landing in &landings.cells {
        // A ray goes straight from the lens until it meets a fold mirror, and then on as the next beam of its station.
        let met = beams.iter().find_map(|beam| Some((beam, first_pane(night, beam, landing.uv)?)));
        let Some((beam, glint)) = met else { continue };
        let (on, passed) = lands(night, &glint);
        let left = glint.left * passed;
        let share = f64::from(landing.white) / white * f64::from(left * beam.power / direct.power);
        let lx = on.map_or(0.0, |touch| arrives(beam, landing.uv, &glint, &touch) * f64::from(left));
        gathered.land(night, (on, false), share, lx);
    }
    gathered.list()
}

/// Follows a ray to the first glass that it meets on this beam.
fn first_pane(night: &Night, beam: &Beam, uv: [f32; 2]) -> Option<Glint> {
    let (from, along) = leave(night, beam, uv)?;
    let sight = Sight::endless(from, along);
    // Few rays come near glass, and the others need not be followed.
    let mut may_meet = false;
    night.veil_tree.each(sight, |id| may_meet |= night.veils[id as usize].sort == VeilSort::Pane);
    if !may_meet {
        return None;
    }
    let mut left = if beam.relays.is_empty() { 1.0 } else { luma(beam.transmittance(night, from, along)) };
    for touch in night.touches(sight) {
        let veil = &night.veils[touch.veil? as usize];
        if veil.sort == VeilSort::Pane {
            let steep = touch.normal.dot(along);
            let front = crossing::outline_normal(&veil.outline, touch.point).dot(along) < 0.0;
            left *= luma(night.optics[veil.optic as usize].mirror[usize::from(!front)].sample(steep.abs()));
            return (left > 0.0).then_some(Glint {
                way: (touch.point - beam.lens.at).length(),
                from: touch.point + SKIN * touch.normal,
                along: along - 2.0 * steep * touch.normal,
                left,
            });
        }
        left *= touch.through;
        if left == 0.0 {
            return None;
        }
    }
    None
}

/// The nearest thing on the way back that is not glass, and what the glass before it lets through.
fn lands(night: &Night, glint: &Glint) -> (Option<Touch>, f32) {
    let mut passed = 1.0;
    for touch in night.touches(Sight::endless(glint.from, glint.along)) {
        if touch.veil.is_none_or(|veil| night.veils[veil as usize].sort != VeilSort::Pane) {
            return (Some(touch), passed);
        }
        passed *= touch.through;
    }
    (None, passed)
}

/// Illuminance where a ray lands, lx, were nothing lost on its way: as it would be at the mirror image of that place.
fn arrives(beam: &Beam, uv: [f32; 2], glint: &Glint, touch: &Touch) -> f64 {
    let way = glint.way + (touch.point - glint.from).length();
    let image = beam.lens.at + way * beam.lens.direction(uv[0], uv[1]).normalize_or_zero();
    let cos = -touch.normal.dot(glint.along);
    beam.square(image, fineness(beam, (image - beam.lens.at).dot(beam.lens.forward)))
        .map_or(0.0, |(square, _)| f64::from(luma(square) * cos.max(0.0)))
}
