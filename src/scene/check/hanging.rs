//! Hanging cloths and rear films.

use super::known::Known;
use super::range::{above_ground, unless, within};
use crate::scene::{Cloth, FabricKind, Fault, Faults, RearFilm, Ref};

/// More layers than this pass nothing on.
const MOST_LAYERS: usize = 8;

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_each("cloths", &known.yard.cloths, |faults, noun| cloth(known, noun, faults));
    let mut filled: Vec<&Ref> = Vec::new();
    faults.in_field("films", |faults| {
        for (index, noun) in known.yard.films.iter().enumerate() {
            faults.in_item(index, |faults| film(known, noun, &filled, faults));
            filled.extend(&noun.window);
        }
    });
}

fn cloth(known: &Known<'_>, cloth: &Cloth, faults: &mut Faults) {
    no_film(known, "fabric", &cloth.fabric, faults);
    let layers = 1 + cloth.behind.len();
    let what = format!("{layers} layers of fabric");
    unless(layers <= MOST_LAYERS, faults, "behind", what, format!("at most {MOST_LAYERS} in all"));
    for (index, layer) in cloth.behind.iter().enumerate().take(MOST_LAYERS) {
        no_film(known, &format!("behind[{index}]"), layer, faults);
    }
    within(faults, "tilt_deg", cloth.tilt_deg.0, -90.0..=90.0, "from -90 to 90 degrees");
    within(faults, "ties", f64::from(cloth.ties.0), 1.0..=500.0, "from 1 to 500");
    within(faults, "hem_kg_m", cloth.hem_kg_m, 0.0..=50.0, "from 0 to 50 kg a metre");
    if let Some(weight) = cloth.weight_g_m2 {
        within(faults, "weight_g_m2", weight.0, 1.0..=10_000.0, "from 1 to 10000 g a square metre");
    }
    // At the middle of the top edge; a cloth that leans reaches less far down.
    let lowest = cloth.at.0[1].m - cloth.height.0.m * cloth.tilt_deg.0.to_radians().cos();
    above_ground(faults, "at", lowest, "the lower edge of this cloth", "hang it higher, or make it less high");
}

fn no_film(known: &Known<'_>, field: &str, name: &Ref, faults: &mut Faults) {
    if let Some(fabric) = known.fabric(field, name, faults) {
        let is_film = matches!(fabric.kind, FabricKind::Film { .. });
        let what = format!("“{}” is a film, not a hanging fabric", name.0);
        unless(!is_film, faults, field, what, "list it under films, or choose a fabric of kind Net or Cloth");
    }
}

fn film(known: &Known<'_>, film: &RearFilm, filled: &[&Ref], faults: &mut Faults) {
    if let Some(fabric) = known.fabric("fabric", &film.fabric, faults) {
        let is_film = matches!(fabric.kind, FabricKind::Film { .. });
        let what = format!("“{}” is no film", film.fabric.0);
        unless(is_film, faults, "fabric", what, "choose a fabric of kind Film, or list this under cloths");
    }
    let either = "write window, or at and size";
    match (&film.window, film.at.is_some(), film.size.is_some()) {
        (Some(window), at, size) => {
            known.window("window", window, faults);
            unless(!at && !size, faults, "window", "this film fills a window and has a place of its own", either);
            let free = !filled.contains(&window);
            unless(free, faults, "window", format!("“{}” holds a film already", window.0), "one film fills a window");
        }
        (None, false, false) => faults.push(Fault::new("this rear film has no place").remedy(either)),
        (None, false, true) => faults.push(Fault::new("this rear film has a size but no place").remedy(either)),
        (None, true, false) => faults.push(Fault::new("this rear film has a place but no size").remedy(either)),
        (None, true, true) => {}
    }
}
