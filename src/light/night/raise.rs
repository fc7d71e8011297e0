//! A yard's surfaces into the night: opaque triangles and see-through things, each over its tree.

use super::{Night, NightFault, SNOW, SolidLight};
use crate::{
    geometry::{Built, Outline, Tree, VeilKind, crossing},
    light::{
        Optic, Rgb, VeilLight, VeilSort, bounds,
        matter::{self, End},
    },
    scene::{Catalogue, GroundState, Yard},
};
use std::{ops::Range, sync::Arc};

impl Night {
    pub(super) fn raise_solids(&mut self, yard: &Yard, catalogue: &Catalogue, built: &Built) -> Result<(), NightFault> {
        let mut solids: Vec<SolidLight> = Vec::new();
        for solid in &built.solids {
            let (dry, wet, doubt) = match solid.reflectance {
                Some(value) => (Rgb::splat(value), 1.0, 0.2),
                None => {
                    let surface = yard.surface(catalogue, &solid.surface).ok_or_else(|| NightFault::Unknown {
                        user: built.names[solid.owner as usize].clone(),
                        name: solid.surface.clone(),
                    })?;
                    (surface.reflectance.rgb(), surface.wet as f32, surface.doubt as f32)
                }
            };
            for triangle in &solid.mesh.triangles {
                let corners = triangle.map(|i| solid.mesh.points[i as usize]);
                let level = bounds::normal(&corners).y > 0.7 && !solid.indoors;
                let reflectance = match yard.evening.ground {
                    GroundState::Wet if level => wet * dry,
                    GroundState::Snow if level => Rgb::splat(SNOW),
                    _ => dry,
                };
                solids.push(SolidLight { corners, reflectance, doubt, owner: solid.owner });
            }
        }
        let tree = Tree::of_fours(&solids.iter().map(|s| bounds::of(&s.corners)).collect::<Vec<_>>());
        self.solids = Arc::new(tree.order().iter().map(|&i| solids[i as usize].clone()).collect());
        let four = |leaf: Range<usize>| crossing::Four::of(self.solids[leaf].iter().map(|solid| &solid.corners));
        self.fours = Arc::new(tree.leaves().map(four).collect());
        self.solid_tree = Arc::new(tree.reordered());
        Ok(())
    }

    pub(super) fn hang_veils(&mut self, yard: &Yard, catalogue: &Catalogue, built: &Built) -> Result<(), NightFault> {
        let mut known: Vec<(VeilKind, u32)> = Vec::new();
        for veil in &built.veils {
            let sort = match veil.kind {
                VeilKind::Cloth(_) => VeilSort::Cloth,
                VeilKind::Film(_) => VeilSort::Film,
                VeilKind::Pane(..) => VeilSort::Pane,
                VeilKind::Crown { .. } => VeilSort::Crown,
            };
            let optic = match known.iter().find(|(kind, _)| woven_alike(yard, kind, &veil.kind)) {
                Some((_, optic)) => *optic,
                None => {
                    self.optics.push(optic(yard, catalogue, &veil.kind)?);
                    known.push((veil.kind.clone(), self.optics.len() as u32 - 1));
                    self.optics.len() as u32 - 1
                }
            };
            self.veils.push(VeilLight { outline: veil.outline, sort, optic, owner: veil.owner, mirror: 0.0 });
        }
        for (mirror, (owner, quad)) in yard.mirrors.iter().zip(&built.mirrors) {
            let stands = !yard.is_hidden(&mirror.name.0);
            self.mirrors.push(stands.then_some(self.veils.len() as u32));
            if !stands {
                continue;
            }
            self.veils.push(VeilLight {
                outline: Outline::Flat(*quad),
                sort: VeilSort::Mirror,
                optic: 0,
                owner: *owner,
                mirror: mirror.reflectance.0 as f32,
            });
        }
        // A mirror names table 0 without reading it; the shader wants one to be there.
        if self.optics.is_empty() {
            self.optics.push(matter::crown(1.0, Rgb::ZERO));
        }
        self.grow_veil_tree();
        Ok(())
    }

    /// Grows the tree over the see-through things where they now hang.
    pub(super) fn grow_veil_tree(&mut self) {
        let boxes: Vec<_> = self.veils.iter().map(|v| crossing::outline_box(&v.outline)).collect();
        self.veil_tree = Arc::new(Tree::over(&boxes));
    }
}

/// Whether two see-through things have the same tables: cloths of one fabric share them.
fn woven_alike(yard: &Yard, a: &VeilKind, b: &VeilKind) -> bool {
    match (a, b) {
        (VeilKind::Cloth(a), VeilKind::Cloth(b)) => {
            let woven = |i: usize| (&yard.cloths[i].fabric, &yard.cloths[i].behind, &yard.cloths[i].fullness);
            woven(*a) == woven(*b)
        }
        (VeilKind::Film(a), VeilKind::Film(b)) => yard.films[*a].fabric == yard.films[*b].fabric,
        _ => a == b,
    }
}

/// The tables of a see-through thing.
pub(super) fn optic(yard: &Yard, catalogue: &Catalogue, kind: &VeilKind) -> Result<Optic, NightFault> {
    let [low, typical, high] = [End::Low, End::Typical, End::High].map(|end| optic_at(yard, catalogue, kind, end));
    Ok(typical?.between(&low?, &high?))
}

/// The same at one end of its fabric's bands.
fn optic_at(yard: &Yard, catalogue: &Catalogue, kind: &VeilKind, end: End) -> Result<Optic, NightFault> {
    Ok(match kind {
        VeilKind::Cloth(i) => matter::cloth(yard, catalogue, &yard.cloths[*i], end)?,
        VeilKind::Film(i) => {
            let name = &yard.films[*i].fabric.0;
            let entry = yard
                .fabric(catalogue, name)
                .ok_or_else(|| NightFault::Unknown { user: yard.films[*i].name.0.clone(), name: name.clone() })?;
            matter::fabric(entry, end)?
        }
        VeilKind::Pane(glazing, screen) => matter::pane(yard, catalogue, *glazing, screen.as_deref())?,
        VeilKind::Crown { gap, surface } => {
            let leaves = yard
                .surface(catalogue, surface)
                .ok_or_else(|| NightFault::Unknown { user: "a plant".to_owned(), name: surface.clone() })?;
            matter::crown(*gap, leaves.reflectance.rgb())
        }
    })
}
