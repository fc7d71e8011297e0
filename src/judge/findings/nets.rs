//! Two nets in one line draw moving bands.
//!
//! The bands depend on the pitch of both, and the catalogue knows of a net only the thread over the pitch: so the distance
//! between them alone is judged.

use super::{Case, Finding, Level, Matter, moves, remedy::Proposal};
use crate::{
    edit::Edit,
    geometry::{Outline, Quad, Sight},
    judge::eye,
    light::VeilSort,
    scene::{Cloth, FabricKind, Item, Spot, limits},
};
use glam::Vec3;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let bound = case.limit(limits::NETS);
    let mut list = Vec::new();
    let cloths = || case.yard.cloths.iter().filter(|cloth| !case.yard.is_hidden(&cloth.name.0));
    for cloth in cloths().filter(|cloth| nets(case, cloth) > 1) {
        let gap = moves::length(case, 0.0);
        let says = format!(
            "Two nets of “{}” hang {gap} apart: if their meshes are near alike, bands swim over it",
            cloth.name.0
        );
        let apart = moves::length(case, bound.value);
        let does = format!("Hang them {apart} apart as two cloths, or take one away");
        let finding = Finding::new(Matter::Nets, Level::Check, &cloth.name.0, None).doing(does);
        list.push(finding.against(0.0, &bound, says).unsure(true));
    }
    for near in cloths().filter(|cloth| nets(case, cloth) > 0) {
        let mut met: Vec<(&Spot, &Cloth, f64)> = Vec::new();
        for spot in &case.yard.spots {
            let behind = cloths().filter(|far| far.name.0 != near.name.0 && nets(case, far) > 0);
            met.extend(behind.filter_map(|far| Some((spot, far, gap(case, eye(spot), near, far)?))));
        }
        let Some((spot, far, gap)) = met.into_iter().min_by(|a, b| a.2.total_cmp(&b.2)) else { continue };
        if gap < bound.value {
            let says = format!(
                "From “{}” the net “{}” hangs {} before “{}”: if their meshes are near alike, bands swim over them",
                spot.name.0,
                near.name.0,
                moves::length(case, gap),
                far.name.0,
            );
            let does = format!("Hang them {} apart, or take one away", moves::length(case, bound.value));
            let finding = Finding::new(Matter::Nets, Level::Check, &near.name.0, Some(&spot.name.0)).doing(does);
            list.push(finding.against(gap, &bound, says).unsure(true));
        }
    }
    list
}

fn is_net(case: &Case, fabric: &str) -> bool {
    matches!(case.yard.fabric(case.catalogue, fabric).map(|f| &f.kind), Some(FabricKind::Net { .. }))
}

/// How many layers of a cloth are nets.
fn nets(case: &Case, cloth: &Cloth) -> usize {
    cloth.behind.iter().chain([&cloth.fabric]).filter(|fabric| is_net(case, &fabric.0)).count()
}

/// How far a cloth hangs behind another as an eye looks through both, m; `None` where it does not.
fn gap(case: &Case, eye: Vec3, near: &Cloth, far: &Cloth) -> Option<f64> {
    let far = face(case, &far.name.0)?;
    let near = case.night.place(&near.name.0)?.owner;
    let mut least: Option<f32> = None;
    for i in 0..9_u8 {
        let at = far.point(f32::from(i % 3).mul_add(0.4, 0.1), f32::from(i / 3).mul_add(0.4, 0.1));
        let along = (at - eye).normalize_or_zero();
        let distance = (at - eye).length();
        let touches = case.night.touches(Sight { reach: distance, ..Sight::endless(eye, along) });
        let met = touches.iter().find(|touch| touch.owner == near);
        let behind = met.map(|touch| distance - (touch.point - eye).length()).filter(|behind| *behind > 0.0);
        // Nothing opaque in between.
        if let Some(behind) = behind.filter(|_| !case.night.blocked(Sight::between(eye, at))) {
            least = Some(least.map_or(behind, |least| least.min(behind)));
        }
    }
    least.map(f64::from)
}

/// The flat face of a cloth.
fn face(case: &Case, name: &str) -> Option<Quad> {
    let owner = case.night.place(name)?.owner;
    let veil = case.night.veils.iter().find(|veil| veil.owner == owner && veil.sort == VeilSort::Cloth)?;
    match veil.outline {
        Outline::Flat(quad) => Some(quad),
        _ => None,
    }
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    let Some(cloth) = case.yard.cloths.iter().find(|cloth| cloth.name.0 == finding.of) else { return Vec::new() };
    let name = &cloth.name.0;
    if !finding.places.is_empty() {
        let edit = Edit::Hide(name.clone(), true);
        return vec![Proposal { says: format!("Take “{name}” away"), edit }];
    }
    let last = cloth.behind.iter().rposition(|fabric| is_net(case, &fabric.0));
    let taken = last.map(|last| {
        let mut single = cloth.clone();
        let fabric = single.behind.remove(last);
        let says = format!("Take the {} out of “{name}”", fabric.0);
        Proposal { says, edit: Edit::Change(Item::Cloth(single)) }
    });
    taken.into_iter().collect()
}
