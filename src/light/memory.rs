//! What a night was asked before, by ray and source: a night that differs from it by some lights asks for those alone.

use super::EyeRay;
use std::{
    collections::HashMap,
    sync::{Arc, Mutex, PoisonError},
};

/// Shelves that are locked apart, so that threads seldom wait for each other.
const SHELVES: usize = 64;

/// The bits of a ray: the eye, the way and the width; and whether the bright bodies of lamps are seen.
type Key = ([u32; 7], bool);

/// Luminance by source along the rays that a night was asked for, cd/m².
#[derive(Debug)]
pub struct Memory(Vec<Mutex<HashMap<Key, Arc<[f32]>>>>);

impl Memory {
    pub(super) fn empty() -> Self {
        Self((0..SHELVES).map(|_| Mutex::default()).collect())
    }

    /// What came along a ray, where it was asked for.
    pub(super) fn recall(&self, ray: EyeRay, bodies: bool) -> Option<Arc<[f32]>> {
        let key = key(ray, bodies);
        self.shelf(&key).lock().unwrap_or_else(PoisonError::into_inner).get(&key).cloned()
    }

    /// Remembers what came along a ray.
    pub(super) fn keep(&self, ray: EyeRay, bodies: bool, lights: &[f32]) {
        let key = key(ray, bodies);
        self.shelf(&key).lock().unwrap_or_else(PoisonError::into_inner).insert(key, Arc::from(lights));
    }

    fn shelf(&self, (bits, _): &Key) -> &Mutex<HashMap<Key, Arc<[f32]>>> {
        let mixed = bits.iter().fold(0_u32, |mixed, bits| (mixed ^ bits).wrapping_mul(0x9E37_79B1));
        &self.0[(mixed >> 16) as usize % SHELVES]
    }
}

fn key(EyeRay { from, along, width }: EyeRay, bodies: bool) -> Key {
    ([from.x, from.y, from.z, along.x, along.y, along.z, width].map(f32::to_bits), bodies)
}
