//! Cloth and film off the roll.

use crate::{
    scene::{Catalogue, Cloth, FabricKind, Opening, RearFilm, Units, Yard},
    units::border,
};
use serde::Serialize;

/// Allowances, m: a hem at each side, a pocket at the top and at the foot, and on each side of a seam. Common practice, no
/// source.
const SIDE: f64 = 0.04;
const POCKET: f64 = 0.1;
const SEAM: f64 = 0.015;
/// What a film is cut over its window on every side, m, and trimmed to. Common practice, no source.
const TRIM: f64 = 0.02;
/// Waste where the width of the roll is not known. Common practice, no source.
const WASTE: f64 = 1.1;
/// Shops cut by that, m: tenths of a metre, quarters of a yard.
const STEP_M: f64 = 0.1;
const STEP_YARD: f64 = 0.9144 / 4.0;

/// One piece, as it is cut.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cut {
    /// Name of the cloth or film that it is for.
    pub of: String,
    /// Its fabric.
    pub fabric: String,
    /// Across when sewn and flat, before it is gathered, m.
    #[serde(serialize_with = "border::lengths")]
    pub width_m: f64,
    /// From top to foot when sewn, m.
    #[serde(serialize_with = "border::lengths")]
    pub height_m: f64,
    /// The same with hems and pockets, as it is cut, m: across, and from top to foot.
    #[serde(serialize_with = "border::lengths")]
    pub cut_width_m: f64,
    /// See `cut_width_m`.
    #[serde(serialize_with = "border::lengths")]
    pub cut_height_m: f64,
    /// Width of the roll, m, where it is known.
    #[serde(serialize_with = "border::lengths")]
    pub roll_m: Option<f64>,
    /// Lengths side by side.
    pub lengths: u32,
    /// Whether the roll lies across, its width from top to foot.
    pub across: bool,
    /// Whether it is a film, which is butted and never hemmed.
    pub is_film: bool,
    /// What is bought off the roll, m, as shops cut it; `None` where its width is not known.
    #[serde(serialize_with = "border::lengths")]
    pub buy_m: Option<f64>,
    /// What is paid for, m².
    #[serde(serialize_with = "border::light")]
    pub area_m2: f64,
}

impl Cut {
    /// Seams between its lengths.
    pub fn seams(&self) -> u32 {
        self.lengths.saturating_sub(1)
    }
}

/// How a piece so wide and high, hems included, m, is cut from a roll, m: lengths side by side, whether the roll lies across,
/// and how much is taken off it. The fewest seams first, then the least cloth.
pub fn cut(width: f64, height: f64, roll: f64) -> (u32, bool, f64) {
    let joined = roll - 2.0 * SEAM;
    let lengths = |wide: f64| if wide <= roll { 1 } else { ((wide - 2.0 * SEAM) / joined.max(0.01)).ceil() as u32 };
    let upright = (lengths(width), false, f64::from(lengths(width)) * height);
    let across = (lengths(height), true, f64::from(lengths(height)) * width);
    let better = across.0 < upright.0 || (across.0 == upright.0 && across.2 < upright.2 - 1e-9);
    if better { across } else { upright }
}

/// Every piece of every cloth and film that is brought out.
pub fn cuts(yard: &Yard, catalogue: &Catalogue) -> Vec<Cut> {
    let cloths = yard.cloths.iter().filter(|cloth| !yard.is_hidden(&cloth.name.0));
    let cloths = cloths.flat_map(|cloth| of_cloth(yard, catalogue, cloth));
    let films = yard.films.iter().filter(|film| !yard.is_hidden(&film.name.0));
    cloths.chain(films.filter_map(|film| of_film(yard, catalogue, film))).collect()
}

fn of_cloth(yard: &Yard, catalogue: &Catalogue, cloth: &Cloth) -> Vec<Cut> {
    let size = [cloth.width.0.m * cloth.fullness.0, cloth.height.0.m];
    let layers = std::iter::once(&cloth.fabric).chain(&cloth.behind);
    layers.map(|fabric| piece(yard, catalogue, (&cloth.name.0, &fabric.0), size, [2.0 * SIDE, 2.0 * POCKET])).collect()
}

fn of_film(yard: &Yard, catalogue: &Catalogue, film: &RearFilm) -> Option<Cut> {
    let size = match (&film.window, &film.size) {
        (Some(window), _) => match yard.item(&window.0)? {
            crate::scene::Item::Opening(_, Opening::Window(window)) => [window.width.0.m, window.height.0.m],
            _ => return None,
        },
        (None, Some((width, height))) => [width.0.m, height.0.m],
        (None, None) => return None,
    };
    Some(piece(yard, catalogue, (&film.name.0, &film.fabric.0), size, [2.0 * TRIM; 2]))
}

fn piece(yard: &Yard, catalogue: &Catalogue, (of, name): (&str, &str), size: [f64; 2], more: [f64; 2]) -> Cut {
    let fabric = yard.fabric(catalogue, name);
    let [cut_width_m, cut_height_m] = [size[0] + more[0], size[1] + more[1]];
    let roll_m = fabric.and_then(|fabric| fabric.roll_width.as_ref()).map(|width| width.0.m);
    let step = if yard.units == Units::Feet { STEP_YARD } else { STEP_M };
    // A film is not sewn: more than one length of it is butted, as a cloth is seamed.
    let (lengths, across, taken) = roll_m.map_or((1, false, cut_height_m), |roll| cut(cut_width_m, cut_height_m, roll));
    let buy_m = roll_m.map(|_| (taken / step - 1e-6).ceil() * step);
    let area_m2 = roll_m.zip(buy_m).map_or(cut_width_m * cut_height_m * WASTE, |(roll, buy)| roll * buy);
    Cut {
        of: of.to_owned(),
        fabric: name.to_owned(),
        width_m: size[0],
        height_m: size[1],
        cut_width_m,
        cut_height_m,
        roll_m,
        lengths,
        across,
        is_film: fabric.is_some_and(|fabric| matches!(fabric.kind, FabricKind::Film { .. })),
        buy_m,
        area_m2,
    }
}
