//! What a sound yard has more of than the window or some patience takes.

use gauzelight::{
    geometry::{self, ENOUGH},
    light::{MOST_STANDING, MOST_TRIANGLES},
    scene::{Fault, Loaded, Yard},
};
use std::collections::HashSet;

/// Triangles that a driver lets the window have which binds 128 MiB, as software drivers do: 64 bytes each.
const WINDOW_TRIANGLES: usize = (128 << 20) / 64;

/// Stations from which on the commands take their time: what is judged grows faster than their number (measured on two cores: 31 s for
/// 1,000).
const MANY_STATIONS: usize = 1000;

/// Warns of it.
pub fn look(loaded: &mut Loaded) {
    let stations = loaded.yard.stations.len();
    if stations > MANY_STATIONS {
        let fault = Fault::warning(format!("{stations} stations; judging them takes half a minute or more"));
        loaded.warn("stations", fault.remedy("keep what stands far apart in yards of its own"));
    }
    let much = Much::of(&loaded.yard);
    let remedy = "hide or leave out some, or make the ground smaller";
    let why = if much.held > ENOUGH {
        format!("more than {ENOUGH} triangles, most of them here; no command takes more than {MOST_TRIANGLES}")
    } else if much.held > MOST_TRIANGLES {
        format!("{} triangles, most of them here; no command takes more than {MOST_TRIANGLES}", much.held)
    } else if much.standing > MOST_STANDING {
        format!(
            "{} triangles with every form counted, most of them here; no command takes more than {MOST_STANDING}",
            much.standing
        )
    } else if much.standing > MOST_TRIANGLES {
        format!(
            "{} triangles, most of them here; the window takes {MOST_TRIANGLES} and leaves out forms of which more than four are alike",
            much.standing
        )
    } else if much.standing > WINDOW_TRIANGLES {
        format!(
            "{} triangles, most of them here; on some computers the window takes no more than {WINDOW_TRIANGLES}",
            much.standing
        )
    } else {
        return;
    };
    loaded.warn(much.most_of, Fault::warning(why).remedy(remedy));
}

/// How many triangles a yard is made of.
struct Much {
    /// Those of a crowd once, as the commands hold them.
    held: usize,
    /// Those of a crowd for each of it, as the window has them.
    standing: usize,
    /// The list that has most of them.
    most_of: &'static str,
}

impl Much {
    fn of(yard: &Yard) -> Self {
        let built = geometry::build(yard);
        let houses: HashSet<&str> = yard.houses.iter().map(|house| house.name.0.as_str()).collect();
        let forms: HashSet<&str> = yard.forms.iter().map(|form| form.name().0.as_str()).collect();
        let mut counts = [("houses", 0), ("forms", 0), ("ground", 0)];
        for solid in &built.solids {
            let name = built.names[solid.owner as usize].as_str();
            let list = if houses.contains(name) {
                0
            } else if forms.contains(name) {
                1
            } else {
                2
            };
            counts[list].1 += solid.mesh.triangles.len();
        }
        counts[1].1 += built.crowds.iter().map(|crowd| crowd.members.len() * crowd.mesh.triangles.len()).sum::<usize>();
        let most_of = counts.into_iter().max_by_key(|(_, count)| *count).map_or("ground", |(list, _)| list);
        Self { held: built.triangles(), standing: built.standing(), most_of }
    }
}
