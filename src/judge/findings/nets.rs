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
use std::collections::HashMap;

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
    let nets: Vec<&Cloth> = cloths().filter(|cloth| nets(case, cloth) > 0).collect();
    for (near, nearest) in nets.iter().zip(nearest(case, &nets)) {
        let Some(Behind { spot, far, gap }) = nearest.filter(|behind| behind.gap < bound.value) else { continue };
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
    list
}

/// The net behind another that hangs nearest to it on any line of sight.
struct Behind<'a> {
    spot: &'a Spot,
    far: &'a Cloth,
    /// Along that line, m.
    gap: f64,
}

/// For each net what hangs nearest behind it as the spots see it: of each net behind, some places are looked at.
fn nearest<'a>(case: &Case<'a>, nets: &[&'a Cloth]) -> Vec<Option<Behind<'a>>> {
    let numbers: HashMap<u32, usize> = nets
        .iter()
        .enumerate()
        .filter_map(|(index, net)| Some((case.night.names.number(&net.name.0)?, index)))
        .collect();
    let mut all: Vec<Option<Behind>> = nets.iter().map(|_| None).collect();
    let faces: Vec<(&Cloth, Quad)> = nets.iter().filter_map(|net| Some((*net, face(case, &net.name.0)?))).collect();
    for spot in &case.yard.spots {
        let eye = eye(spot);
        for (far, face) in &faces {
            for i in 0..9_u8 {
                let at = face.point(f32::from(i % 3).mul_add(0.4, 0.1), f32::from(i / 3).mul_add(0.4, 0.1));
                // Nothing opaque in between.
                if case.night.blocked(Sight::between(eye, at)) {
                    continue;
                }
                let (distance, along) = ((at - eye).length(), (at - eye).normalize_or_zero());
                for touch in case.night.touches(Sight { reach: distance, ..Sight::endless(eye, along) }) {
                    let gap = f64::from(distance - (touch.point - eye).length());
                    let near = numbers.get(&touch.owner).filter(|near| nets[**near].name != far.name && gap > 0.0);
                    let Some(near) = near.map(|near| &mut all[*near]) else { continue };
                    if near.as_ref().is_none_or(|known| gap < known.gap) {
                        *near = Some(Behind { spot, far, gap });
                    }
                }
            }
        }
    }
    all
}

fn is_net(case: &Case, fabric: &str) -> bool {
    matches!(case.yard.fabric(case.catalogue, fabric).map(|f| &f.kind), Some(FabricKind::Net { .. }))
}

/// How many layers of a cloth are nets.
fn nets(case: &Case, cloth: &Cloth) -> usize {
    cloth.behind.iter().chain([&cloth.fabric]).filter(|fabric| is_net(case, &fabric.0)).count()
}

/// The flat face of a cloth.
fn face(case: &Case, name: &str) -> Option<Quad> {
    let owner = case.night.names.number(name)?;
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
