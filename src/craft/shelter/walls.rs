//! What the walls of a box let out, and what the sun puts into them.

use super::ease::Ease;
use crate::scene::{BoxColour, BoxWall, PaneKind, Shelter};

/// Resistance from the air inside to a wall, m² K/W (ISO 6946, heat that flows sideways; from memory).
const INSIDE: f64 = 0.13;
/// Resistance from a wall to the air outside, m² K/W: in wind 0.04, in still air 0.13 as inside (ISO 6946; from memory); what
/// lies between is counted.
const OUTSIDE: [f64; 3] = [0.04, 0.07, 0.13];
/// The sun on a face square to it, W/m²: a low one in winter, a clear day, and the most that solar cells are rated by.
/// Common practice, no source.
const SUN: [f64; 3] = [500.0, 800.0, 1000.0];
/// Share of the sun's heat that a clear pane lets in; invented, typical.
const PANE_PASSES: f64 = 0.85;
/// Mean shadow of a convex body over all directions: a quarter of its surface (Cauchy).
const SHADOW: f64 = 0.25;

/// What a wall conducts, W/(m K): hard PVC 0.16 and steel 45 to 50 by tables of building materials; for other plastics and
/// plywood from memory (ISO 10456).
const fn conductivity(wall: BoxWall) -> f64 {
    match wall {
        BoxWall::Plastic => 0.2,
        BoxWall::Plywood => 0.13,
        BoxWall::Metal => 50.0,
    }
}

/// What a pane conducts, W/(m K), from memory (ISO 10456); `None` where there is none.
const fn pane_conductivity(pane: PaneKind) -> Option<f64> {
    match pane {
        PaneKind::Glass => Some(1.0),
        PaneKind::Acrylic => Some(0.2),
        PaneKind::Open => None,
    }
}

/// Share of the sun that a colour takes up: from memory of handbook tables of paints.
const fn absorbs(colour: BoxColour) -> [f64; 3] {
    match colour {
        BoxColour::White => [0.2, 0.25, 0.35],
        BoxColour::Grey => [0.5, 0.65, 0.75],
        BoxColour::Dark => [0.85, 0.9, 0.95],
    }
}

/// Surface through which heat gets out, m².
pub(super) fn free_area(shelter: &Shelter) -> f64 {
    let thick = 2.0 * shelter.thickness.0.m;
    let [w, h, d] = [&shelter.width, &shelter.height, &shelter.depth].map(|size| size.0.m + thick);
    2.0 * (w * h + w * d + h * d) * f64::from(shelter.free_faces.0.clamp(1, 6)) / 6.0
}

/// Thermal transmittance of the walls, W/(m² K): `1 / (Rsi + d/λ + Rse)`.
pub fn transmittance(shelter: &Shelter, ease: Ease) -> f64 {
    through(shelter.thickness.0.m / conductivity(shelter.wall), ease)
}

/// The same of a sheet that resists so much itself, m² K/W.
fn through(resists: f64, ease: Ease) -> f64 {
    1.0 / (INSIDE + resists + ease.of(OUTSIDE))
}

/// What of the fall from the air inside to that outside lies between the air inside and the inner face, where that gets coldest: of its walls
/// or its pane.
pub(super) fn coldest_face(shelter: &Shelter, ease: Ease) -> f64 {
    let window = &shelter.window;
    let pane =
        pane_conductivity(window.pane).map_or(0.0, |conductivity| through(window.thickness.0.m / conductivity, ease));
    INSIDE * transmittance(shelter, ease).max(pane)
}

/// Heat through all free walls for each kelvin, W/K.
pub fn loss(shelter: &Shelter, ease: Ease) -> f64 {
    transmittance(shelter, ease) * free_area(shelter)
}

/// Heat that a day's sun brings in, W: what the walls take up, `α G`, less what they give back outside at once, which leaves
/// `U Rse α G` (the sol-air temperature of handbooks); and what shines in by the pane.
pub fn sun(shelter: &Shelter, ease: Ease) -> f64 {
    let window = &shelter.window;
    let pane = if window.pane == PaneKind::Open { 0.0 } else { window.width.0.m * window.height.0.m };
    let light = ease.of(SUN) * SHADOW;
    let walls = (free_area(shelter) - pane).max(0.0);
    let share = transmittance(shelter, ease) * ease.of(OUTSIDE) * ease.of(absorbs(shelter.colour));
    light * (walls * share + pane * PANE_PASSES)
}
