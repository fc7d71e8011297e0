//! Yards with as much of everything as wanted, set out evenly over a large ground.

use std::fmt::Write as _;

/// How much of what.
#[derive(Clone, Copy, Debug)]
pub struct Crowd {
    pub houses: usize,
    pub figures: usize,
    /// Whether no two of these are of a size.
    pub unlike: bool,
    pub trees: usize,
    pub cloths: usize,
    pub lamps: usize,
    /// Bulbs of each lamp; one is no string.
    pub bulbs: usize,
    /// Each throws onto the cloth of its number, where there is one.
    pub stations: usize,
    /// Width and depth of the ground, m.
    pub ground: f64,
}

impl Default for Crowd {
    fn default() -> Self {
        let [houses, figures, trees, cloths, lamps, stations] = [0; 6];
        Self { houses, figures, unlike: false, trees, cloths, lamps, bulbs: 1, stations, ground: 200.0 }
    }
}

/// Where one of so many stands: evenly over the ground, and a kind's own way off.
fn place(index: usize, of: usize, [aside, before]: [f64; 2], ground: f64) -> [f64; 2] {
    let row = (of as f64).sqrt().ceil() as usize;
    let at = |k: usize| ((k as f64 + 0.5) / row as f64 - 0.5) * 0.9 * ground;
    [at(index % row) + aside, at(index / row) + before]
}

/// The text of such a yard.
pub fn yard(crowd: Crowd) -> String {
    let list = |of: usize, off: [f64; 2], one: &dyn Fn(usize, f64, f64) -> String| {
        (0..of).fold(String::new(), |mut text, index| {
            let [x, z] = place(index, of, off, crowd.ground);
            // Writing to a string cannot fail.
            let _ = writeln!(text, "{},", one(index, x, z));
            text
        })
    };
    let houses = list(crowd.houses, [0.0, 0.0], &|i, x, z| {
        let window = format!("Window(name: \"window {i}\", left: 2, sill: 1, width: 1.2, height: 1.2)");
        format!("(name: \"house {i}\", at: ({x:.3}, 0, {z:.3}), width: 7, depth: 5, height: 3, openings: [{window}])")
    });
    let forms = list(crowd.figures, [0.7, 5.1], &|i, x, z| {
        let height = if crowd.unlike { 1.8 - 1e-4 * i as f64 } else { 1.8 };
        format!("Figure(name: \"figure {i}\", at: ({x:.3}, 0, {z:.3}), height: {height:.4})")
    });
    let plants = list(crowd.trees, [1.9, 6.3], &|i, x, z| {
        format!("Tree(name: \"tree {i}\", at: ({x:.3}, 0, {z:.3}), height: 4, crown: 1, clear: 1)")
    });
    let cloths = list(crowd.cloths, [-1.3, 4.7], &|i, x, z| {
        format!("(name: \"cloth {i}\", fabric: \"white tulle\", at: ({x:.3}, 2.6, {z:.3}), width: 1.5, height: 2)")
    });
    let lamps = list(crowd.lamps, [0.3, 7.7], &|i, x, z| match crowd.bulbs {
        0 | 1 => format!("(name: \"lamp {i}\", kind: \"porch lamp\", at: ({x:.3}, 2.2, {z:.3}), lumens: 60)"),
        bulbs => format!(
            "(name: \"lamp {i}\", kind: \"string of lights\", at: ({x:.3}, 2.2, {z:.3}), to: ({:.3}, 2.3, {z:.3}), bulbs: {bulbs}, lumens: 60)",
            x + 4.0
        ),
    });
    let stations = list(crowd.stations, [-1.3, 8.7], &|i, x, z| {
        let target = if i < crowd.cloths { format!("target: \"cloth {i}\", ") } else { String::new() };
        format!(
            "(name: \"station {i}\", projector: \"mini LED\", at: ({x:.3}, 0.6, {z:.3}), aim: ({x:.3}, 1.6, {:.3}), {target}content: (picture: \"owl_face\"))",
            z - 4.0
        )
    });
    format!(
        "Yard(format: 1, name: \"crowd\", ground: (width: {0}, depth: {0}),\n\
         spots: [(name: \"spot\", at: (0, 0, 90), look: (0, 1.4, 0))],\n\
         houses: [{houses}],\nforms: [{forms}],\nplants: [{plants}],\ncloths: [{cloths}],\nlamps: [{lamps}],\nstations: [{stations}])",
        crowd.ground
    )
}
