//! A sky as bytes to be kept: what was asked once need not be asked again of the same things.

use super::{
    Night,
    skies::{Late, Skies},
};
use std::hash::{DefaultHasher, Hash as _, Hasher};

/// Changes whenever the sky is asked for in another way, or kept in another form.
const MARK: [u8; 8] = *b"sky   1\n";

/// Stands for everything that a sky depends on. Another compiler may give another: then what was kept is never found again.
pub type SkyKey = [u64; 2];

impl Night {
    /// What stands for everything that its sky depends on; none while it remembers what it saw before a quick change.
    pub fn sky_key(&self) -> Option<SkyKey> {
        let skies = self.skies.as_deref().filter(|_| self.thorough)?;
        Some([1, 2].map(|salt| {
            let mut hasher = DefaultHasher::new();
            (MARK, salt).hash(&mut hasher);
            skies.stood.hash_things(&mut hasher);
            hasher.finish()
        }))
    }

    /// All that is known of its sky by now.
    pub fn sky_bytes(&self) -> Option<Vec<u8>> {
        let (key, skies) = (self.sky_key()?, self.skies.as_deref()?);
        let mut bytes = MARK.to_vec();
        key.iter().for_each(|half| bytes.extend(half.to_le_bytes()));
        for part in skies.known() {
            bytes.extend((part.len() as u32).to_le_bytes());
            part.into_iter().for_each(|bits| bytes.extend(bits.to_le_bytes()));
        }
        bytes.extend(sum(&bytes).to_le_bytes());
        Some(bytes)
    }

    /// Learns a sky from such bytes. `false`, and nothing learned, where they are damaged or of other things.
    pub fn learn_sky(&self, bytes: &[u8]) -> bool {
        let learned = || {
            let (key, skies) = (self.sky_key()?, self.skies.as_deref()?);
            let (body, end) = bytes.split_last_chunk::<8>()?;
            let rest = body.strip_prefix(&MARK)?;
            let (first, rest) = rest.split_first_chunk::<8>()?;
            let (second, rest) = rest.split_first_chunk::<8>()?;
            let same =
                [first, second].map(|half| u64::from_le_bytes(*half)) == key && u64::from_le_bytes(*end) == sum(body);
            let parts = same.then(|| parts(rest))??;
            skies.learn(&parts).then_some(())
        };
        learned().is_some()
    }

    fn hash_things(&self, hasher: &mut DefaultHasher) {
        let mut corners = |all: &[glam::Vec3; 3]| {
            all.iter().for_each(|corner| corner.to_array().map(f32::to_bits).hash(hasher));
        };
        self.solids.iter().for_each(|solid| corners(&solid.corners));
        self.crowds.bodies.iter().flat_map(|body| body.solids.iter()).for_each(|solid| corners(&solid.corners));
        for member in &self.crowds.members {
            let axes = [member.frame.at, member.frame.right, member.frame.out];
            (member.body, axes.map(|axis| axis.to_array().map(f32::to_bits))).hash(hasher);
        }
        for veil in &self.veils {
            format!("{:?} {:?} {}", veil.outline, veil.sort, veil.mirror).hash(hasher);
            let through = &self.optics[veil.optic as usize].sheet.through;
            through.at.iter().for_each(|share| share.to_array().map(f32::to_bits).hash(hasher));
        }
    }
}

/// By which damage shows.
fn sum(bytes: &[u8]) -> u64 {
    let mut hasher = DefaultHasher::new();
    bytes.hash(&mut hasher);
    hasher.finish()
}

/// Lists of words, each after its length.
fn parts(mut rest: &[u8]) -> Option<Vec<Vec<u32>>> {
    let mut parts = Vec::new();
    while !rest.is_empty() {
        let (count, after) = rest.split_first_chunk::<4>()?;
        let bytes = after.get(..4 * u32::from_le_bytes(*count) as usize)?;
        rest = &after[bytes.len()..];
        let (words, _) = bytes.as_chunks::<4>();
        parts.push(words.iter().map(|word| u32::from_le_bytes(*word)).collect());
    }
    Some(parts)
}

impl Skies {
    /// Every answer by its bits: of what stands alone, of each see-through thing, of each member of a crowd; nothing of a member that
    /// was not asked about.
    fn known(&self) -> Vec<Vec<u32>> {
        let sheets = self.sheets.iter().map(|sheet| sheet.as_deref().unwrap_or_default());
        let members = self.crowds.iter().map(|member| member.get().map_or(&[][..], |shares| shares));
        let parts = std::iter::once(self.alone.as_slice()).chain(sheets).chain(members);
        parts.map(|part| part.iter().map(Late::bits).collect()).collect()
    }

    /// Learns such answers; `false`, and nothing learned, where they are not as many.
    fn learn(&self, parts: &[Vec<u32>]) -> bool {
        let Some((alone, rest)) = parts.split_first() else { return false };
        let Some((sheets, members)) = rest.split_at_checked(self.sheets.len()) else { return false };
        let groups = |member: usize| self.corners.of_member(member) as usize;
        let fits = alone.len() == self.alone.len()
            && sheets
                .iter()
                .zip(&self.sheets)
                .all(|(told, sheet)| told.len() == sheet.as_deref().map_or(0, <[_]>::len))
            && members.len() == self.crowds.len()
            && members.iter().enumerate().all(|(at, told)| told.is_empty() || told.len() == groups(at));
        if !fits {
            return false;
        }
        let learn = |lates: &[Late], told: &[u32]| lates.iter().zip(told).for_each(|(late, bits)| late.learn(*bits));
        learn(&self.alone, alone);
        self.sheets
            .iter()
            .flatten()
            .zip(sheets.iter().filter(|told| !told.is_empty()))
            .for_each(|(s, told)| learn(s, told));
        for (at, told) in members.iter().enumerate().filter(|(_, told)| !told.is_empty()) {
            learn(self.member(at), told);
        }
        true
    }
}
