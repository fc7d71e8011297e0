//! Windows and doors against the walls that they are cut into.

use super::known::Known;
use super::range::unless;
use crate::scene::{FabricKind, Faults, Opening, Side};
use crate::units::{Length, decimals};

/// Sizes in inches may add up to a hair more than the wall.
const SLACK: f64 = 1e-6;

/// More panes than this are a lattice that no light model here resolves.
const MOST_PANES: u32 = 40;

/// An opening as a rectangle on its wall, m.
struct Cut {
    side: Side,
    from: [f64; 2],
    to: [f64; 2],
}

impl Cut {
    fn meets(&self, other: &Self) -> bool {
        let shared = |axis: usize| self.to[axis].min(other.to[axis]) - self.from[axis].max(other.from[axis]);
        self.side == other.side && shared(0) > SLACK && shared(1) > SLACK
    }
}

/// What is wrong with an opening by itself.
pub(super) fn check(known: &Known<'_>, opening: &Opening, faults: &mut Faults) {
    match opening {
        Opening::Door(door) => {
            known.surface("surface", &door.surface, faults);
        }
        Opening::Window(window) => {
            if let Some(screen) = &window.screen
                && let Some(fabric) = known.fabric("screen", screen, faults)
            {
                let is_net = matches!(fabric.kind, FabricKind::Net { .. });
                let what = format!("“{}” is no net", screen.0);
                unless(is_net, faults, "screen", what, "an insect screen is a fabric of kind Net");
            }
            let (across, up) = (window.bars.0.0, window.bars.1.0);
            let few = across <= MOST_PANES && up <= MOST_PANES;
            unless(
                few,
                faults,
                "bars",
                format!("{across} by {up} panes are too many"),
                format!("at most {MOST_PANES} each way"),
            );
            let leaves_glass = |panes: u32, clear: f64| f64::from(panes - 1) * window.bar.0.m < clear;
            let fits = leaves_glass(across.max(1), window.width.0.m) && leaves_glass(up.max(1), window.height.0.m);
            unless(
                fits || !few,
                faults,
                "bar",
                "glazing bars this wide leave no glass",
                "fewer panes or narrower bars",
            );
        }
    }
}

/// What is wrong with openings as parts of their walls; `wall_of` gives the side that one is on, and its width.
pub(super) fn fit(
    openings: &[Opening],
    wall_height: f64,
    faults: &mut Faults,
    wall_of: impl Fn(&Opening) -> (Side, f64),
) {
    let mut cuts: Vec<Cut> = Vec::new();
    faults.in_each("openings", openings, |faults, opening| {
        let (left, sill, width, height) = extent(opening);
        let (side, wall_width) = wall_of(opening);
        let cut = Cut { side, from: [left.m, sill.m], to: [left.m + width, sill.m + height] };
        let starts_right = left.m >= 0.0 && sill.m >= 0.0;
        unless(left.m >= 0.0, faults, "left", format!("{left} lies outside the wall"), "from 0, the wall's left end");
        unless(sill.m >= 0.0, faults, "sill", format!("{sill} lies outside the wall"), "from 0, the wall's foot");
        if starts_right {
            let [right, top] = cut.to;
            let [right_m, wide, top_m, high] = [right, wall_width, top, wall_height].map(|m| decimals(m, 3));
            let what = format!("this opening ends {right_m} m from the left end of a wall {wide} m wide");
            unless(right <= wall_width + SLACK, faults, "left", what, "move it left or make it narrower");
            let what = format!("this opening ends {top_m} m up a wall {high} m high");
            unless(top <= wall_height + SLACK, faults, "sill", what, "lower its sill or make it less high");
        }
        if let Some(index) = cuts.iter().position(|other| cut.meets(other)) {
            let what = format!("this opening overlaps “{}” on the same wall", openings[index].name().0);
            unless(false, faults, "left", what, "keep openings apart");
        }
        cuts.push(cut);
    });
}

fn extent(opening: &Opening) -> (&Length, &Length, f64, f64) {
    match opening {
        Opening::Window(window) => (&window.left, &window.sill, window.width.0.m, window.height.0.m),
        Opening::Door(door) => (&door.left, &door.sill, door.width.0.m, door.height.0.m),
    }
}
