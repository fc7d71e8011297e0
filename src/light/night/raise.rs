//! A yard's surfaces into the night: opaque triangles and see-through things, each over its tree.

use super::{
    Night, NightFault, SNOW, SolidLight,
    crowds::{Arranged, Crowds, Member},
};
use crate::{
    geometry::{Built, Mesh, Outline, Tree, VeilKind, crossing},
    light::{
        Optic, Rgb, VeilLight, VeilSort, bounds,
        matter::{self, End},
    },
    scene::{Catalogue, GroundState, Yard},
};
use std::sync::Arc;

/// What an opaque thing is covered with.
struct Covering {
    dry: Rgb,
    /// What is left of its reflectance when it is wet.
    wet: f32,
    doubt: f32,
}

impl Covering {
    /// A surface of the catalogue; `user` is who names it.
    fn of(yard: &Yard, catalogue: &Catalogue, name: &str, user: impl Fn() -> String) -> Result<Self, NightFault> {
        let unknown = || NightFault::Unknown { user: user(), name: name.to_owned() };
        let surface = yard.surface(catalogue, name).ok_or_else(unknown)?;
        Ok(Self { dry: surface.reflectance.rgb(), wet: surface.wet as f32, doubt: surface.doubt as f32 })
    }

    /// The triangles of a thing, by its name's index and whether rain and snow cannot reach it.
    fn over<'a>(
        &'a self,
        yard: &'a Yard,
        mesh: &'a Mesh,
        (owner, indoors): (u32, bool),
    ) -> impl Iterator<Item = SolidLight> + 'a {
        mesh.corners().map(move |corners| {
            let level = bounds::normal(&corners).y > 0.7 && !indoors;
            let reflectance = match yard.evening.ground {
                GroundState::Wet if level => self.wet * self.dry,
                GroundState::Snow if level => Rgb::splat(SNOW),
                _ => self.dry,
            };
            SolidLight { corners, reflectance, doubt: self.doubt, owner }
        })
    }
}

impl Night {
    pub(super) fn raise_solids(&mut self, yard: &Yard, catalogue: &Catalogue, built: &Built) -> Result<(), NightFault> {
        let mut solids: Vec<SolidLight> = Vec::new();
        for solid in &built.solids {
            let name = || built.names[solid.owner as usize].clone();
            let covering = match solid.reflectance {
                Some(value) => Covering { dry: Rgb::splat(value), wet: 1.0, doubt: 0.2 },
                None => Covering::of(yard, catalogue, &solid.surface, name)?,
            };
            solids.extend(covering.over(yard, &solid.mesh, (solid.owner, solid.indoors)));
        }
        let Arranged { solids, tree, fours } = Arranged::of(&solids);
        let mut first = solids.len() as u32;
        (self.solids, self.solid_tree, self.fours) = (solids, tree, fours);
        let (mut bodies, mut members) = (Vec::new(), Vec::new());
        for (body, crowd) in built.crowds.iter().enumerate() {
            let name = || crowd.members.first().map_or_else(String::new, |one| built.names[one.owner as usize].clone());
            let covering = Covering::of(yard, catalogue, &crowd.surface, name)?;
            bodies.push(Arranged::of(&covering.over(yard, &crowd.mesh, (0, false)).collect::<Vec<_>>()));
            for one in &crowd.members {
                members.push(Member { body, owner: one.owner, frame: one.frame, first });
                first += crowd.mesh.triangles.len() as u32;
            }
        }
        self.crowds = Arc::new(Crowds::of(bodies, members));
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
