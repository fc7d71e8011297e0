//! Stations that are seen from the far side of what they light: films, and sheets in windows.

use super::{Case, remedy::Proposal};
use crate::{
    edit::Edit,
    geometry::{Outline, Quad},
    judge::{Landing, Landings, Sight, StationReading, spot},
    light::{Beam, VeilLight, VeilSort},
    scene::{Band, FabricKind, Item, Opening, RearFilm, Ref, Spot, Station, Window},
};
use glam::Vec3;
use std::borrow::Cow;

/// A station, and an eye on the far side of what it lights.
pub(super) struct Rear<'a> {
    pub station: &'a Station,
    pub reading: &'a StationReading,
    /// Name of what it lights; of several targets each has its own.
    pub target: &'a str,
    pub beam: &'a Beam,
    pub veil: &'a VeilLight,
    pub quad: Quad,
    pub spot: &'a Spot,
    pub eye: Vec3,
    pub sight: &'a Sight,
}

impl Rear<'_> {
    /// Where the raster lands.
    pub fn landings<'b>(&self, case: &'b Case) -> Cow<'b, Landings> {
        match case.targets_of(&self.station.name.0) {
            // So it was followed already.
            [one] if case.night.place(one).is_some_and(|place| place.owner == self.veil.owner) => {
                Cow::Borrowed(case.landings(self.beam.station as usize))
            }
            _ => Cow::Owned(Landings::of(case.night, self.beam, &[self.veil.owner])),
        }
    }
}

/// Every lit station with each of its targets that lets light out on the far side, but for nets, and every spot that sees it from there.
pub(super) fn each<'a>(case: &'a Case<'a>) -> Vec<Rear<'a>> {
    let mut list = Vec::new();
    for (index, station, reading) in case.lit() {
        let night = case.night;
        let Some(beam) = case.beam(index) else { continue };
        for one in &reading.targets {
            let target = one.target.as_str();
            let veil = night.veils.iter().find(|v| night.names[v.owner as usize] == target);
            let Some(veil) = veil.filter(|v| matches!(v.sort, VeilSort::Film | VeilSort::Cloth)) else { continue };
            let Outline::Flat(quad) = veil.outline else { continue };
            let of_it = |landing: &Landing| landing.target.filter(|touch| touch.owner == veil.owner);
            let Some(touch) = case.landings(index).cells.iter().find_map(of_it) else { continue };
            if veil.sort == VeilSort::Cloth && is_net(case, target) {
                continue;
            }
            for (spot, seen) in case.yard.spots.iter().zip(&one.spots) {
                let eye = spot::eye(spot);
                let lit_side = (eye - touch.point).dot(touch.normal) > 0.0;
                if let Some(sight) = seen.sight.as_ref().filter(|_| !lit_side && seen.in_sight > 0.5) {
                    list.push(Rear { station, reading, target, beam, veil, quad, spot, eye, sight });
                }
            }
        }
    }
    list
}

/// The one that a finding is about.
pub(super) fn of<'a>(case: &'a Case<'a>, station: &str, from: Option<&str>) -> Option<Rear<'a>> {
    each(case).into_iter().find(|one| one.station.name.0 == station && from.is_none_or(|from| one.spot.name.0 == from))
}

/// Whether a hanging cloth is made of nets alone.
fn is_net(case: &Case, name: &str) -> bool {
    let Some(cloth) = case.yard.cloths.iter().find(|cloth| cloth.name.0 == name) else { return false };
    let net = |fabric: &Ref| {
        let fabric = case.yard.fabric(case.catalogue, &fabric.0);
        fabric.is_some_and(|fabric| matches!(fabric.kind, FabricKind::Net { .. }))
    };
    std::iter::once(&cloth.fabric).chain(&cloth.behind).all(net)
}

/// What a film or a single cloth of this name lets straight through.
pub(super) fn through(case: &Case, target: &str) -> Option<Band> {
    let film = film(case, target).map(|film| &film.fabric);
    let cloth = case.yard.cloths.iter().find(|cloth| cloth.name.0 == target && cloth.behind.is_empty());
    let name = film.or(cloth.map(|cloth| &cloth.fabric))?;
    match &case.yard.fabric(case.catalogue, &name.0)?.kind {
        FabricKind::Cloth { through, .. } | FabricKind::Film { through, .. } => Some(*through),
        FabricKind::Net { .. } => None,
    }
}

/// The film of this name.
pub(super) fn film<'a>(case: &Case<'a>, name: &str) -> Option<&'a RearFilm> {
    case.yard.films.iter().find(|film| film.name.0 == name)
}

/// The window of this name, with the wall or house that it is in.
pub(super) fn window<'a>(case: &Case<'a>, name: &str) -> Option<(&'a str, &'a Window)> {
    let houses = case.yard.houses.iter().map(|house| (house.name.0.as_str(), &house.openings));
    let walls = case.yard.walls.iter().map(|wall| (wall.name.0.as_str(), &wall.openings));
    houses.chain(walls).find_map(|(host, openings)| {
        openings.iter().find_map(|opening| match opening {
            Opening::Window(window) if window.name.0 == name => Some((host, window)),
            _ => None,
        })
    })
}

/// The windows whose films a station lights from behind, each once, with what they are in.
pub(super) fn windows<'a>(case: &Case<'a>, station: &str) -> Vec<(&'a str, &'a Window)> {
    let mut list: Vec<(&str, &Window)> = Vec::new();
    for target in case.targets_of(station) {
        let name = film(case, target).and_then(|film| film.window.as_ref());
        let found = name.and_then(|name| window(case, &name.0));
        list.extend(found.filter(|(_, new)| list.iter().all(|(_, old)| old.name != new.name)));
    }
    list
}

/// Several edits as one proposal; none of none.
pub(super) fn together(says: String, mut edits: Vec<Edit>) -> Vec<Proposal> {
    let edit = match edits.len() {
        0 => return Vec::new(),
        1 => edits.remove(0),
        _ => Edit::All(edits),
    };
    vec![Proposal { says, edit }]
}

/// Other films of the catalogue that let less straight through, the densest first; the same for a cloth of one layer.
pub(super) fn denser(case: &Case, target: &str) -> Vec<Proposal> {
    let Some(now) = through(case, target) else { return Vec::new() };
    let film = film(case, target);
    let cloth = case.yard.cloths.iter().find(|cloth| cloth.name.0 == target);
    let mut others: Vec<(&str, f64)> = Vec::new();
    for fabric in case.yard.all_fabrics(case.catalogue) {
        match &fabric.kind {
            FabricKind::Film { through, .. } if film.is_some() => others.push((&fabric.name.0, through.typical)),
            // Black cloth shows no picture either.
            FabricKind::Cloth { through, diffuse, .. } if film.is_none() && diffuse.typical > 0.1 => {
                others.push((&fabric.name.0, through.typical));
            }
            _ => {}
        }
    }
    others.retain(|(_, through)| *through < now.typical);
    others.sort_by(|a, b| a.1.total_cmp(&b.1));
    let proposal = |(name, _): &(&str, f64)| {
        let item = match (film, cloth) {
            (Some(film), _) => Item::Film(RearFilm { fabric: Ref::to(name), ..film.clone() }),
            (_, Some(cloth)) => Item::Cloth(crate::scene::Cloth { fabric: Ref::to(name), ..cloth.clone() }),
            _ => return None,
        };
        Some(Proposal { says: format!("Make “{target}” of {name}"), edit: Edit::Change(item) })
    };
    others.iter().filter_map(proposal).take(4).collect()
}
