//! What it costs, in whatever money the catalogue's prices are.

use crate::{judge::Banded, scene::Band};

/// So many of what costs this, and what comes on top of it.
pub(super) fn cost(price: Band, times: f64, more: f64) -> Banded {
    let [low, typical, high] = [price.low, price.typical, price.high].map(|one| one * times + more);
    Banded { low, typical, high }
}
