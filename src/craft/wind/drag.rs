//! How much of a wind's pressure a cloth takes, by how solid it is.

use crate::{
    craft::shelter::draught,
    scene::{Band, Catalogue, Cloth, Fabric, FabricKind, Yard},
};

/// Pull of a solid flat cloth over pressure times area: from memory of the literature on flat panels.
pub const SOLID: f64 = 1.2;

/// From this solidity on no relief by holes is promised: a fibre screen of high solidity can drag more than a plate.
const NO_RELIEF: f64 = 0.6;

/// Pull over pressure times the whole area of a cloth: published rules do not agree, so a band.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drag {
    /// The least of the rules.
    pub low: f64,
    /// Typical: the rule of AS/NZS 1170.2 on a solid cloth.
    pub typical: f64,
    /// The most of the rules.
    pub high: f64,
}

impl Drag {
    /// Of a cloth of this solidity, 0 to 1: AS/NZS 1170.2 ([`kept_share`]), ASCE 7-16 table 29.4-2 for flat members and a
    /// screen by its loss ([`draught::screen`]); never more than a solid cloth, and no less from a solidity of 0.6 on.
    pub fn of(solidity: f64) -> Self {
        if solidity > NO_RELIEF {
            return Self { low: SOLID, typical: SOLID, high: SOLID };
        }
        let kept = SOLID * kept_share(solidity);
        let rules = [kept, members(solidity), screen(solidity)].map(|rule| rule.min(SOLID));
        let least = rules.iter().copied().fold(f64::MAX, f64::min);
        let most = rules.iter().copied().fold(0.0, f64::max);
        Self { low: least, typical: kept.min(SOLID), high: most }
    }
}

/// Share of a solid panel's load that a porous one keeps: `Kp = 1 − (1 − δ)²` with the solidity δ (AS/NZS 1170.2, from memory).
pub fn kept_share(solidity: f64) -> f64 {
    1.0 - (1.0 - solidity).powi(2)
}

/// Open signs of flat members: force coefficient 2.0, 1.8 or 1.6 on the solid part of the area (ASCE 7-16, table 29.4-2).
fn members(solidity: f64) -> f64 {
    let coefficient = match solidity {
        s if s < 0.1 => 2.0,
        s if s < 0.3 => 1.8,
        _ => 1.6,
    };
    coefficient * solidity
}

/// A screen that stands free in the wind, which slows down before it: `K / (1 + K/4)²` (Taylor 1944, from memory).
fn screen(solidity: f64) -> f64 {
    let loss = draught::screen(solidity);
    loss / (1.0 + 0.25 * loss).powi(2)
}

/// Share of a fabric that is hole, 0 to 1: (1 − γ)² of a net, what goes straight through of a cloth, none of a film. Light is
/// taken for air here, as openness is what both have of a weave in common.
pub fn openness(fabric: &Fabric) -> Band {
    match fabric.kind {
        FabricKind::Net { thread, .. } => {
            let open = |thread: f64| (1.0 - thread).powi(2);
            Band { low: open(thread.high), typical: open(thread.typical), high: open(thread.low) }
        }
        FabricKind::Cloth { through, .. } => through,
        FabricKind::Film { .. } => Band::exact(0.0),
    }
}

/// Solidity of a hanging cloth with all of its layers, 0 to 1: holes must meet holes, and folds lie one behind another, so
/// that openness falls with the power of its fullness. A fabric that nothing is known of is solid.
pub fn solidity(yard: &Yard, catalogue: &Catalogue, cloth: &Cloth) -> Band {
    let layers = std::iter::once(&cloth.fabric).chain(&cloth.behind);
    let open = layers.map(|name| yard.fabric(catalogue, &name.0).map_or(Band::exact(0.0), openness));
    let all = open.fold(Band::exact(1.0), |all, one| Band {
        low: all.low * one.low,
        typical: all.typical * one.typical,
        high: all.high * one.high,
    });
    let solid = |open: f64| 1.0 - open.powf(cloth.fullness.0);
    Band { low: solid(all.high), typical: solid(all.typical), high: solid(all.low) }
}
