//! The weather box of a station, drawn from its front and from its side with all its sizes.

use super::{
    Digits, Weight,
    draw::{Sketch, Stand},
    flow::{Column, Flow, SMALL},
    scale::Scale,
};
use crate::scene::{BoxWall, Count, PaneKind, Shelter};

/// Height of the drawing, points.
const DRAWN: f64 = 112.0;
/// Room around each view for its sizes, points.
const ROOM: [f64; 2] = [22.0, 18.0];

/// The drawing with its words, for one of two columns.
pub(super) fn drawing(flow: &Flow, shelter: &Shelter) -> Column {
    let digits = flow.digits();
    let mut column = flow.half();
    let at = [column.x, 2.0];
    column.sketch = views(shelter, digits, at, [column.width, DRAWN]);
    column.gap(DRAWN + 4.0);
    for says in words(shelter, digits) {
        column.text(&says, SMALL, Weight::Regular);
    }
    column.gap(4.0);
    column
}

fn words(shelter: &Shelter, digits: Digits) -> Vec<String> {
    let wall = match shelter.wall {
        BoxWall::Plastic => "plastic",
        BoxWall::Plywood => "plywood, painted",
        BoxWall::Metal => "sheet metal, painted",
    };
    let pane = match shelter.window.pane {
        PaneKind::Glass => "clear glass",
        PaneKind::Acrylic => "clear acrylic",
        PaneKind::Open => "open",
    };
    let mut list = vec![format!("Walls: {wall}, {} thick.", digits.length(shelter.thickness.0.m))];
    let [wide, tall] = [&shelter.window.width, &shelter.window.height].map(|size| digits.length(size.0.m));
    let thick = match shelter.window.pane {
        PaneKind::Open => String::new(),
        _ => format!(", {} thick", digits.length(shelter.window.thickness.0.m)),
    };
    let leans = match shelter.window.tilt_deg.0 {
        deg if deg.abs() < 0.05 => "upright".to_owned(),
        deg => format!("leaning {:.1}°, its top {}", deg.abs(), if deg > 0.0 { "forward" } else { "back" }),
    };
    list.push(format!("Window before the lens: {pane}{thick}, {wide} wide and {tall} high, {leans}."));
    for (name, where_, cm2) in
        [("Air in", "low", shelter.inlet_cm2), ("Air out", "at the top, under an overhanging lid", shelter.outlet_cm2)]
    {
        list.push(match cm2 > 0.0 {
            true => format!("{name}, {where_}: {} in all, as {}.", digits.area(cm2), holes(digits, cm2)),
            false => format!("{name}: nowhere."),
        });
    }
    let before =
        [(shelter.grille, "grilles"), (shelter.mesh, "insect mesh"), (shelter.filter, "a dust filter at the inlet")];
    let before: Vec<&str> = before.into_iter().filter_map(|(there, name)| there.then_some(name)).collect();
    if !before.is_empty() {
        list.push(format!("Before the openings: {}.", before.join(", ")));
    }
    let Count(free) = shelter.free_faces;
    list.push(format!("{free} of its six faces stand free in the air; a hole in its lowest point lets water out."));
    list
}

/// So much opening as round holes that a hole saw makes.
fn holes(digits: Digits, cm2: f64) -> String {
    let count = (cm2 / MOST_CM2).ceil().max(1.0);
    let across = 2.0 * (cm2 * 1e-4 / count / std::f64::consts::PI).sqrt();
    match count as u32 {
        1 => format!("1 hole {} across", digits.length(across)),
        n => format!("{n} holes {} across", digits.length(across)),
    }
}

/// The largest hole that a usual saw makes, cm²: 68 mm across. Common practice, no source.
const MOST_CM2: f64 = 36.3;

/// From before, and from the side with the window to the left.
fn views(shelter: &Shelter, digits: Digits, at: [f64; 2], size: [f64; 2]) -> Sketch {
    let mut sketch = Sketch::default();
    let [wide, tall, deep] = [&shelter.width, &shelter.height, &shelter.depth].map(|size| size.0.m);
    let thick = shelter.thickness.0.m;
    let half = [0.5 * size[0] - ROOM[0] - 4.0, size[1] - ROOM[1] - 12.0];
    let high = [wide.max(deep) + 2.0 * thick, tall + 2.0 * thick];
    let scale = |from: f64| Scale::fitted([0.0, 0.0], high, [from + ROOM[0], at[1] + 2.0], half);
    let pane = [&shelter.window.width, &shelter.window.height].map(|size| size.0.m);
    let slit = 0.12 * tall;
    for (index, across) in [wide, deep].into_iter().enumerate() {
        let scale = scale(at[0] + 0.5 * size[0] * index as f64);
        let aside = 0.5 * (high[0] - across) - thick;
        let corners = |[x0, y0]: [f64; 2], [x1, y1]: [f64; 2]| {
            [[x0, y0], [x1, y0], [x1, y1], [x0, y1]].map(|[x, y]| scale.at([x + aside, y]))
        };
        // Within the walls, and around them.
        let (low, top) = ([thick, thick], [thick + across, thick + tall]);
        sketch.outline(&corners([0.0, 0.0], [across + 2.0 * thick, tall + 2.0 * thick]), 1.2, 0.0);
        let middle = thick + 0.5 * tall;
        if index == 0 {
            let x = thick + 0.5 * across;
            let window =
                corners([x - 0.5 * pane[0], middle - 0.5 * pane[1]], [x + 0.5 * pane[0], middle + 0.5 * pane[1]]);
            sketch.area(&window, 0.85);
            sketch.outline(&window, 0.8, 0.0);
        } else {
            let [a, b] = [middle - 0.5 * pane[1], middle + 0.5 * pane[1]].map(|y| scale.at([aside + 0.5 * thick, y]));
            sketch.line(&[a, b], 3.0, 0.55);
            let back = aside + across + 1.5 * thick;
            for (open, from, to) in
                [(shelter.inlet_cm2 > 0.0, low[1], low[1] + slit), (shelter.outlet_cm2 > 0.0, top[1] - slit, top[1])]
            {
                if open {
                    let [a, b] = [from, to].map(|y| scale.at([back, y]));
                    sketch.line(&[a, b], 3.6, 1.0);
                    sketch.dashed(&[a, b], 1.2, 0.0, [1.5, 1.5]);
                }
            }
        }
        let [left, right, up] = [[low[0], 0.0], [top[0], 0.0], [low[0], top[1]]].map(|[x, y]| scale.at([x + aside, y]));
        let foot = scale.at([0.0, 0.0])[1] + 13.0;
        sketch.dimension([left[0], foot], [right[0], foot], &digits.drawn(across));
        if index == 0 {
            let x = left[0] - 8.0;
            let low = scale.at([0.0, low[1]])[1];
            sketch.dimension([x, low], [x, up[1]], &digits.drawn(tall));
        }
        let name = if index == 0 { "front" } else { "from its side, window left" };
        let middle = 0.5 * (left[0] + right[0]);
        sketch.text([middle, at[1] + size[1] - 1.0], SMALL, Weight::Regular, Stand::Middle, name);
    }
    sketch
}
