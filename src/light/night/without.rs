//! A night with something see-through thought away.

use super::Night;
use crate::light::{VeilSort, matter};

impl Night {
    /// The same as if the see-through things of a name, by its index, were not there: light and looks pass them whole. What
    /// they shade from the sky stays shaded.
    #[must_use]
    pub fn without(&self, owner: u32) -> Self {
        let mut night = self.clone();
        night.forget();
        let clear = night.optics.len() as u32;
        night.optics.push(matter::clear());
        for veil in night.veils.iter_mut().filter(|veil| veil.owner == owner && veil.sort != VeilSort::Mirror) {
            (veil.sort, veil.optic) = (VeilSort::Cloth, clear);
        }
        night
    }
}
