//! What a night was asked before, by ray and source: a night that differs from it by some lights asks for those alone.

use super::EyeRay;
use std::{
    collections::HashMap,
    sync::{Arc, Mutex, PoisonError},
};

/// Shelves that are locked apart, so that threads seldom wait for each other.
const SHELVES: usize = 64;

/// Rays that a shelf holds at most.
const MOST: usize = 4096;

/// What all shelves together may take, bytes; and what a ray takes besides four for each source.
const ROOM: usize = 50 << 20;
const RAY: usize = 110;

/// The bits of a ray: the eye, the way and the width; and whether the bright bodies of lamps are seen.
type Key = ([u32; 7], bool);

/// Luminance by source along the rays that a night was asked for first, cd/m²; what is asked once it is full is not kept.
#[derive(Debug)]
pub struct Memory {
    shelves: Vec<Mutex<HashMap<Key, Arc<[f32]>>>>,
    /// Rays to a shelf.
    most: usize,
}

impl Memory {
    /// For a night of so many sources.
    pub(super) fn empty(sources: usize) -> Self {
        let most = (ROOM / SHELVES / (RAY + size_of::<f32>() * sources)).clamp(1, MOST);
        Self { shelves: (0..SHELVES).map(|_| Mutex::default()).collect(), most }
    }

    /// What came along a ray, where it was asked for.
    pub(super) fn recall(&self, ray: EyeRay, bodies: bool) -> Option<Arc<[f32]>> {
        let key = key(ray, bodies);
        self.shelf(&key).lock().unwrap_or_else(PoisonError::into_inner).get(&key).cloned()
    }

    /// Remembers what came along a ray, where there is room.
    pub(super) fn keep(&self, ray: EyeRay, bodies: bool, lights: &[f32]) {
        let key = key(ray, bodies);
        let mut shelf = self.shelf(&key).lock().unwrap_or_else(PoisonError::into_inner);
        if shelf.len() < self.most {
            shelf.insert(key, Arc::from(lights));
        }
    }

    fn shelf(&self, (bits, _): &Key) -> &Mutex<HashMap<Key, Arc<[f32]>>> {
        let mixed = bits.iter().fold(0_u32, |mixed, bits| (mixed ^ bits).wrapping_mul(0x9E37_79B1));
        &self.shelves[(mixed >> 16) as usize % SHELVES]
    }
}

fn key(EyeRay { from, along, width }: EyeRay, bodies: bool) -> Key {
    ([from.x, from.y, from.z, along.x, along.y, along.z, width].map(f32::to_bits), bodies)
}

#[cfg(test)]
mod tests {
    use super::*;
    use glam::Vec3;

    #[test]
    fn many_sources_take_no_more_room() {
        for sources in [1, 20, 1000, 1_000_000] {
            let memory = Memory::empty(sources);
            assert!(memory.most >= 1 && memory.most <= MOST);
            let room = SHELVES * memory.most * (RAY + 4 * sources);
            assert!(room <= ROOM || memory.most == 1, "{sources} sources: {room}");
        }
    }

    #[test]
    fn a_full_memory_keeps_what_it_has_and_takes_no_more() {
        let memory = Memory::empty(20);
        let ray = |i: usize| EyeRay { from: Vec3::new(i as f32, 0.5, 0.0), along: Vec3::NEG_Z, width: 0.0 };
        let asked = 2 * SHELVES * MOST;
        (0..asked).for_each(|i| memory.keep(ray(i), true, &[i as f32]));
        let held: Vec<usize> = memory.shelves.iter().map(|shelf| shelf.lock().unwrap().len()).collect();
        assert!(held.iter().all(|held| *held <= MOST), "{held:?}");
        let recalled = (0..asked).filter(|i| memory.recall(ray(*i), true).is_some_and(|light| light[0] == *i as f32));
        assert_eq!(recalled.count(), held.iter().sum::<usize>());
        assert!(memory.recall(ray(0), true).is_some(), "what was asked first is kept");
    }
}
