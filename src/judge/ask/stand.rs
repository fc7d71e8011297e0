//! The little yard: written as a person would write it, so that it is a good page to go on from.

use super::{AskFault, Lumens, Target, choice::Tape, plan::Plan};
use crate::{
    frames::Shelf,
    light::{Night, Source, luma},
    scene::{Catalogue, Units, Yard},
    units::{Length, Style},
};
use glam::{DVec3, Vec3};

/// How far before the target's face the light of the street is read, m: in front of a window's glass and frame.
const BEFORE: f64 = 0.15;

/// Lumens of the lamp that is tried before its light is scaled.
const TRIED_LM: f64 = 1000.0;

/// Where the light of the street is read.
pub(super) fn meter(plan: &Plan<'_>) -> Vec3 {
    DVec3::new(0.0, plan.middle(), BEFORE).as_vec3()
}

/// The yard's text.
pub(super) fn text(plan: &Plan<'_>, catalogue: &Catalogue) -> Result<String, AskFault> {
    let (question, tape) = (plan.question, Tape(plan.question.units));
    let street = question.street;
    let class = plan.means.class.name.0.as_str();
    let lengths = |of: &[f64]| of.iter().map(|m| written(&tape.length(*m))).collect::<Vec<_>>().join(", ");
    let [lens_x, lens_y, _] = plan.lens();
    let [spot_x, spot_z] = plan.spot();
    let size = ground(plan);
    let units = if question.units == Units::Feet { "\n    units: Feet," } else { "" };
    let lamp = match street.lamp_lx() {
        Some(lx) => format!(
            "\n    // As bright as to give the target {lx} lx.\n    lamps: [\n        (name: \"street lamp\", {}),\n    ],",
            lamp(&lengths(&plan.lamp()), lumens(plan, lx, catalogue)?, question.lamp_off)
        ),
        None => String::new(),
    };
    let more = station(plan);
    Ok(format!(
        "// A {target} {wide} wide and {high} high, its lower edge {edge} above the ground, lit from {far} by a projector of the class “{class}”: {street_name}.\n\
         // Change any value and look again; lengths are taken as 1.2 m, 120 cm, 4ft 1 1/2in and the like.\n\
         Yard(\n    format: 1,\n    name: \"Little yard: {target}\",{units}\n    \
         // {street_help}.\n    evening: (sky_lx: {sky}),\n    \
         ground: (surface: \"lawn, winter\", width: {ground_size}, depth: {ground_size}),\n\
         {built}{lamp}\n    spots: [\n        (name: \"in front\", at: ({spot_x}, 0, {spot_z}), look: {look:?}),\n    ],\n    \
         stations: [\n        (\n            name: \"projector\",\n            projector: {class:?},\n            \
         at: ({lens_x}, {lens_y}, {lens_z}),\n{more}        ),\n    ],\n)\n",
        target = question.target.name(),
        wide = question.width,
        high = high(plan),
        edge = question.lower_edge(),
        far = question.distance,
        street_name = street.name(),
        street_help = capital(street.help()),
        sky = street.sky_lx(),
        ground_size = lengths(&[size]),
        built = target(plan),
        look = face(question.target),
        spot_x = lengths(&[spot_x]),
        spot_z = lengths(&[spot_z]),
        lens_x = lengths(&[lens_x]),
        lens_y = lengths(&[lens_y]),
        lens_z = written(&way(plan)),
    ))
}

/// What the light lands on, by its name in the yard.
pub(super) fn face(target: Target) -> &'static str {
    match target {
        Target::Window => "film",
        Target::Cloth | Target::Wall | Target::Form => target.name(),
    }
}

/// The target with what is around it.
fn target(plan: &Plan<'_>) -> String {
    let (question, tape) = (plan.question, Tape(plan.question.units));
    let length = |m: f64| written(&tape.length(m));
    let wide = written(&question.width);
    let width = question.width.m;
    let (height, base) = (plan.height, plan.base);
    let (high, edge) = (written(&high(plan)), written(&question.lower_edge()));
    let margin = tape.round(1.2, 4.0);
    let fabric = plan.fabric.map_or("", |fabric| fabric.name.0.as_str());
    match question.target {
        Target::Window => format!(
            "    // The film hangs 7 cm behind the wall's outer face, so that it stands at z = 0.\n    walls: [\n        (\n            \
             name: \"house front\",\n            at: (0, 0, \"7 cm\"),\n            width: {},\n            height: {},\n            \
             openings: [\n                Window(\n                    name: \"window\",\n                    left: {},\n                    \
             sill: {edge},\n                    width: {wide},\n                    height: {high},\n                    \
             room: (depth: {}, reflectance: 0.3),\n                ),\n            ],\n        ),\n    ],\n    films: [\n        \
             (name: \"film\", fabric: {fabric:?}, window: \"window\"),\n    ],",
            length(width + 2.0 * margin),
            length(base + height + tape.round(0.6, 2.0)),
            length(margin),
            length((question.distance.m + tape.round(0.6, 2.0)).max(tape.round(2.0, 6.5))),
        ),
        Target::Cloth => format!(
            "    // What stands behind a cloth shows through it, and light that passes the cloth lands there.\n    plants: [\n        \
             Hedge(name: \"hedge\", from: ({left}, 0, {back}), to: ({right}, 0, {back}), height: {}),\n    ],\n    cloths: [\n        \
             (name: \"cloth\", fabric: {fabric:?}, at: (0, {}, 0), width: {wide}, height: {high}),\n    ],",
            length(base + height + tape.round(0.6, 2.0)),
            length(base + height),
            left = length(-0.5 * width - margin),
            right = length(0.5 * width + margin),
            back = length(tape.round(-1.5, -5.0)),
        ),
        Target::Wall => format!(
            "    walls: [\n        (name: \"wall\", at: (0, 0, 0), width: {wide}, height: {}),\n    ],",
            length(base + height),
        ),
        Target::Form => format!(
            "    forms: [\n        Bag(name: \"form\", at: (0, {edge}, {}), width: {wide}, height: {high}, depth: {}),\n    ],",
            length(-0.5 * depth(plan)),
            length(depth(plan)),
        ),
    }
}

/// How high the target is, as it was said.
fn high(plan: &Plan<'_>) -> Length {
    plan.question.height.clone().unwrap_or_else(|| Tape(plan.question.units).length(plan.height))
}

/// Front to back of a form, m.
fn depth(plan: &Plan<'_>) -> f64 {
    0.6 * plan.question.width.m
}

/// The fields of the station after its place.
fn station(plan: &Plan<'_>) -> String {
    let (question, tape) = (plan.question, Tape(plan.question.units));
    let mount = match question.target {
        Target::Window => "Shelf",
        _ if plan.lens()[1] < 0.6 => "Ground",
        _ => "Stand",
    };
    let mut text = format!("            mount: {mount},\n");
    let mut line = |words: String| {
        let comma = if words.starts_with("//") { "" } else { "," };
        text += &format!("            {words}{comma}\n");
    };
    let name = face(question.target);
    match question.target {
        Target::Window | Target::Cloth => line(format!("aim: {name:?}")),
        Target::Wall | Target::Form => {
            line(format!("aim: (0, {}, 0)", written(&tape.length(plan.middle()))));
            line(format!("target: {name:?}"));
        }
    }
    if question.upright {
        line("pose: Upright".to_owned());
    }
    match plan.question.projector.lumens.zip(plan.means.lumens) {
        Some((Lumens::Measured(_), real)) => {
            line("// Measured.".to_owned());
            line(format!("lumens: {}", real.typical));
        }
        Some((said, real)) => {
            let [low, typical, high] = [real.low, real.typical, real.high].map(three_digits);
            line(format!("// {said}: so many in truth, by its class."));
            line(format!("lumens: (low: {low}, typical: {typical}, high: {high})"));
        }
        None => {}
    }
    if (plan.throw - plan.means.class.throw_ratio.0).abs() > 1e-9 {
        line(format!("throw_ratio: {}", (plan.throw * 1e4).round() / 1e4));
    }
    let stance = if question.upright { ", stance: Upright" } else { "" };
    let mirrored = if question.target == Target::Window { ", mirrored: true" } else { "" };
    line(format!("content: (picture: {:?}{stance}{mirrored})", plan.shown()));
    text
}

/// Where the lens is along z, in the notation of whoever said the distance.
fn way(plan: &Plan<'_>) -> Length {
    let said = &plan.question.distance;
    if plan.lens()[2] > 0.0 {
        said.clone()
    } else {
        Length { m: -said.m, style: said.style, text: format!("-{}", said.text) }
    }
}

/// Side of the ground, m: past the projector and the people.
fn ground(plan: &Plan<'_>) -> f64 {
    let tape = Tape(plan.question.units);
    let reach = plan.spot()[1].max(plan.question.distance.m).max(0.5 * plan.question.width.m);
    let step = tape.round(2.0, 6.0);
    ((2.0 * reach + tape.round(6.0, 20.0)) / step).ceil() * step
}

/// The fields of the street lamp after its name.
fn lamp(at: &str, lumens: f64, off: bool) -> String {
    let off = if off { ", on: false" } else { "" };
    format!("kind: \"street lamp, LED\", at: ({at}), lumens: {lumens}{off}")
}

/// What the lamp must give, lm, for the target's face to get `lx` of it: light is linear, so one try is enough.
fn lumens(plan: &Plan<'_>, lx: f64, catalogue: &Catalogue) -> Result<f64, AskFault> {
    let [x, y, z] = plan.lamp();
    let tried = format!(
        "Yard(name: \"lamp\", ground: (width: 1, depth: 1), lamps: [(name: \"street lamp\", {})])",
        lamp(&format!("{x}, {y}, {z}"), TRIED_LM, false)
    );
    let yard = parse(&tried, catalogue)?;
    let night = Night::build(&yard, catalogue, &Shelf::default())?;
    let shares = night.illuminance(meter(plan), Vec3::Z);
    let by_lamp = night.sources.iter().position(|source| matches!(source, Source::Lamp(_)));
    let got = by_lamp.map_or(0.0, |source| f64::from(luma(shares.lx[source])));
    if got > 0.0 { Ok(three_digits(TRIED_LM * lx / got)) } else { Err(AskFault::NoReading) }
}

/// A yard from its text.
pub(super) fn parse(text: &str, catalogue: &Catalogue) -> Result<Yard, AskFault> {
    Yard::parse(text, "little yard", catalogue)
        .map(|loaded| loaded.yard)
        .map_err(|faults| AskFault::Yard(Box::new(faults)))
}

/// A length as a yard file holds it.
fn written(length: &Length) -> String {
    match length.style {
        _ if length.m == 0.0 => "0".to_owned(),
        Style::Bare => length.m.to_string(),
        // Debug puts quotes and escapes as the file wants them.
        _ => format!("{:?}", length.to_text()),
    }
}

/// Rounded to three digits.
fn three_digits(value: f64) -> f64 {
    let scale = 10f64.powi(2 - value.abs().max(1e-9).log10().floor() as i32);
    (value * scale).round() / scale
}

fn capital(text: &str) -> String {
    let mut rest = text.chars();
    rest.next().map_or_else(String::new, |first| first.to_uppercase().chain(rest).collect())
}
