//! How much sky every place sees, asked for when it is first wanted.

use super::{
    Hit, Night,
    corners::{Corners, Known, Of},
    settle::Differ,
};
use crate::{
    geometry::Outline,
    light::{
        VeilLight, luma,
        sky_grid::{self, SKY_VALUES},
    },
};
use glam::Vec3;
use rayon::prelude::*;
use std::sync::{
    Arc, OnceLock,
    atomic::{AtomicU32, Ordering::Relaxed},
};

/// An answer that is computed when it is first wanted: who asks at the same time computes the very same.
pub(super) struct Late(AtomicU32);

impl Late {
    /// No share of a sky has these bits.
    const UNKNOWN: u32 = u32::MAX;

    const fn unknown() -> Self {
        Self(AtomicU32::new(Self::UNKNOWN))
    }

    fn known(&self) -> Option<u32> {
        Some(self.0.load(Relaxed)).filter(|bits| *bits != Self::UNKNOWN)
    }

    /// As it is, known or not.
    pub fn bits(&self) -> u32 {
        self.0.load(Relaxed)
    }

    pub fn learn(&self, bits: u32) {
        self.0.store(bits, Relaxed);
    }
}

/// The sky that is seen among the things of a night as they stood.
pub(super) struct Skies {
    /// These things; no lights.
    pub stood: Night,
    pub corners: Arc<Corners>,
    /// Of each group of corners of what stands alone its share, as [`Known::bits`].
    pub alone: Vec<Late>,
    /// The same of each member of a crowd, once any is asked for.
    pub crowds: Vec<OnceLock<Box<[Late]>>>,
    /// Of each see-through thing that is flat the bits of the share at every value of its grid, the front's first.
    pub sheets: Vec<Option<Box<[Late]>>>,
    before: Option<Before>,
}

/// What another night knows.
struct Before {
    skies: Arc<Skies>,
    differ: Differ,
    /// Where each see-through thing hung there.
    hung: Vec<Option<u32>>,
}

impl Night {
    /// Share of the sky's light at the corners of an opaque triangle, in steps of 1/65535 so that the shader has the very same.
    pub fn corner_sky(&self, solid: u32) -> [u16; 3] {
        let skies = self.skies.as_deref();
        skies.map_or([0; 3], |skies| skies.corners.of_solid(solid).map(|group| skies.share(group).share))
    }

    /// Share of the sky's light where a ray meets something opaque.
    #[inline]
    pub(in crate::light) fn solid_sky(&self, hit: &Hit) -> f32 {
        let corners = self.corner_sky(hit.solid);
        let share = |i: usize| f32::from(corners[i]) / 65535.0 * hit.weights[i];
        share(0) + share(1) + share(2)
    }

    /// Shares of the sky's light over front and back of a see-through thing, row by row from its corner; `None` of what is not flat.
    pub fn sheet_sky(&self, veil: u32) -> Option<[[f32; SKY_VALUES]; 2]> {
        let skies = self.skies.as_deref()?;
        skies.sheets[veil as usize].as_ref()?;
        let side = |side| std::array::from_fn(|value| skies.on_sheet(veil, side * SKY_VALUES + value));
        Some([0, 1].map(side))
    }

    /// Share of the sky's light on a side of a see-through thing, at `(s, t)` of its edges. A crown stands mostly in the open: what an
    /// unobstructed slope of its normal sees, (1 + n·y) / 2.
    #[inline]
    pub(in crate::light) fn veil_sky(&self, veil: u32, front: bool, place: [f32; 2], normal: Vec3) -> f32 {
        match self.skies.as_deref() {
            Some(skies) if skies.sheets[veil as usize].is_some() => {
                let first = if front { 0 } else { SKY_VALUES };
                sky_grid::between(place, |value| skies.on_sheet(veil, first + value))
            }
            _ => 0.5 + 0.5 * normal.y,
        }
    }

    /// Asks now for what is otherwise computed when it is first wanted: all of the sky, and the trees that the shader walks.
    pub fn gather(&self) {
        self.gather_while(&|| true);
    }

    /// The same as long as it is wanted; whether it was to the end.
    pub fn gather_while(&self, wanted: &(dyn Fn() -> bool + Sync)) -> bool {
        self.skies.iter().for_each(|skies| skies.gather(wanted));
        self.grow_opaque_tree();
        self.veil_tree.grow();
        wanted()
    }
}

impl Skies {
    /// The sky as the things of a night stand.
    pub fn of(night: &Night) -> Self {
        Self::among(night, Arc::new(Corners::of(night)), None)
    }

    /// The same of a night that differs from the one before in what is see-through alone: what is the same in both is asked for
    /// once.
    pub fn after(night: &Night, before: &Arc<Self>) -> Self {
        let (skies, differ) = (Arc::clone(before), Differ::between(&before.stood, night));
        Self::among(night, Arc::clone(&before.corners), Some(Before { skies, differ, hung: before.hangs(night) }))
    }

    /// The sky of a night that was built quickly: what stands where it stood has what it had, though something else may now stand
    /// before that.
    pub fn kept(night: &Night, before: &Self) -> Self {
        before.gather(&|| true);
        let skies = Self::of(night);
        for (key, share) in skies.corners.alone.keys.iter().zip(&skies.alone) {
            let was = before.corners.alike_alone(*key);
            was.into_iter().for_each(|was| share.learn(before.share(was).bits()));
        }
        for (here, there) in skies.corners.alike_members(&before.corners) {
            let was = before.crowds[there].get().into_iter().flat_map(|was| was.iter());
            was.enumerate().for_each(|(group, was)| skies.member(here)[group].learn(was.bits()));
        }
        for (sheet, was) in skies.sheets.iter().zip(before.hangs(night)) {
            let both = sheet.as_ref().zip(was.and_then(|was| before.sheets[was as usize].as_ref()));
            for (late, was) in both.into_iter().flat_map(|(sheet, was)| sheet.iter().zip(was)) {
                was.known().into_iter().for_each(|bits| late.learn(bits));
            }
        }
        skies
    }

    /// Where each see-through thing of another night hangs here.
    fn hangs(&self, night: &Night) -> Vec<Option<u32>> {
        let like = |veil: &VeilLight| {
            let mut here = self.stood.veils.iter();
            here.position(|here| here.outline == veil.outline && here.sort == veil.sort).map(|at| at as u32)
        };
        night.veils.iter().map(like).collect()
    }

    /// Asks for all of it, but for crowds that are too much for the live picture.
    fn gather(&self, wanted: &(dyn Fn() -> bool + Sync)) {
        let crowds = !self.stood.leaves_crowds_out();
        let groups = if crowds { self.corners.count } else { self.alone.len() as u32 };
        (0..groups).into_par_iter().filter(|_| wanted()).for_each(|group| {
            self.share(group);
        });
        let values = self.sheets.iter().enumerate().flat_map(|(veil, sheet)| {
            let values = 0..sheet.as_ref().map_or(0, |sheet| sheet.len());
            values.map(move |value| (veil as u32, value))
        });
        values.collect::<Vec<_>>().into_par_iter().filter(|_| wanted()).for_each(|(veil, value)| {
            self.on_sheet(veil, value);
        });
    }

    fn among(night: &Night, corners: Arc<Corners>, before: Option<Before>) -> Self {
        let sheet = |outline: &Outline| {
            let flat = matches!(outline, Outline::Flat(_));
            flat.then(|| (0..2 * SKY_VALUES).map(|_| Late::unknown()).collect())
        };
        Self {
            stood: night.dark(),
            alone: corners.alone.keys.iter().map(|_| Late::unknown()).collect(),
            crowds: night.crowds.members.iter().map(|_| OnceLock::new()).collect(),
            corners,
            sheets: night.veils.iter().map(|veil| sheet(&veil.outline)).collect(),
            before,
        }
    }

    /// Where the share of a group is kept.
    fn late(&self, group: u32) -> &Late {
        match self.corners.find(group) {
            Of::Alone(group) => &self.alone[group],
            Of::Member(member, group) => &self.member(member)[group],
        }
    }

    /// Where the shares of a member of a crowd are kept.
    pub fn member(&self, member: usize) -> &[Late] {
        let unknown = || (0..self.corners.of_member(member)).map(|_| Late::unknown()).collect();
        self.crowds[member].get_or_init(unknown)
    }

    fn share(&self, group: u32) -> Known {
        let late = self.late(group);
        if let Some(bits) = late.known() {
            return Known::from_bits(bits);
        }
        let there = self.before.as_ref().map(|before| (before, before.skies.late(group)));
        let held = there.and_then(|(before, was)| {
            let known = Known::from_bits(was.known()?);
            before.holds(self, group, known).then_some(known)
        });
        let known = held.unwrap_or_else(|| self.stood.sky_of_corner(&self.corners.members(group)));
        if let Some((before, was)) = there.filter(|(_, was)| held.is_none() && was.known().is_none())
            && before.holds(self, group, known)
        {
            // What is the same there need not be asked there again.
            was.learn(known.bits());
        }
        late.learn(known.bits());
        known
    }

    fn on_sheet(&self, veil: u32, value: usize) -> f32 {
        let Some(late) = self.sheets[veil as usize].as_ref().map(|sheet| &sheet[value]) else { return 0.0 };
        if let Some(bits) = late.known() {
            return f32::from_bits(bits);
        }
        let Outline::Flat(quad) = &self.stood.veils[veil as usize].outline else { return 0.0 };
        let (point, normal) = sky_grid::place(quad, value);
        let there = self.before.as_ref().filter(|before| !before.differ.shows(point, normal));
        let there =
            there.and_then(|before| Some(&before.skies.sheets[before.hung[veil as usize]? as usize].as_ref()?[value]));
        let share = || luma(self.stood.sky_share(point, normal)).to_bits();
        let bits = there.and_then(Late::known).unwrap_or_else(share);
        for late in there.into_iter().chain([late]) {
            late.learn(bits);
        }
        f32::from_bits(bits)
    }
}

impl Before {
    /// Whether what is known of a group is the same here and there.
    fn holds(&self, here: &Skies, group: u32, known: Known) -> bool {
        let (differ, members) = (&self.differ, here.corners.members(group));
        let (beside, normal) = here.stood.asked_of(&members);
        if differ.shows(beside, normal) {
            return false;
        }
        // Opaque things are as they were, and so is the place that is asked.
        !known.dark || here.stood.further(&members, normal).is_none_or(|at| !differ.shows(at, normal))
    }
}
