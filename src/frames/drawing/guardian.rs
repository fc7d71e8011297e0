//! The guardian by the gate: a carved figure in a patterned mantle, its eyes opening, a lantern held at its chest.

use glam::{Vec2, Vec3, vec2, vec3};
use tiny_skia::Pixmap;

use super::canvas::Canvas;
use super::carving::{Carving, Lamp};
use super::curve::Curve;
use super::field::Field;
use super::guardian_face as face;
use super::guardian_hands as hands;
use super::lantern;
use super::noise;
use super::tone::{bump, ramp};

pub(super) const SIZE: (u32, u32) = (720, 1280);
/// The axis the figure is mirrored about.
pub(super) const AXIS: f32 = 360.0;

const LIME: Vec3 = Vec3::new(0.86, 0.72, 0.54);
const FLESH: Vec3 = Vec3::new(0.93, 0.80, 0.64);
const OCHRE: Vec3 = Vec3::new(0.88, 0.66, 0.42);
const PINE: Vec3 = Vec3::new(0.13, 0.36, 0.31);
const SAGE: Vec3 = Vec3::new(0.56, 0.74, 0.58);
const GILT: Vec3 = Vec3::new(1.0, 0.74, 0.32);

/// The figure, full size, on black.
pub fn draw() -> Pixmap {
    let parts = Parts::new();
    let carving = Carving::new(parts.heights());
    let lamps = [
        // The moon, the lantern at the chest, and a little sky from the other side.
        Lamp { at: vec3(-900.0, -1100.0, 1500.0), colour: vec3(0.96, 0.98, 1.02) * 1.38, reach: 9000.0 },
        Lamp { at: vec3(AXIS, lantern::FLAME.y, 330.0), colour: vec3(1.0, 0.55, 0.19) * 5.2, reach: 125.0 },
        Lamp { at: vec3(1500.0, 300.0, 500.0), colour: vec3(0.30, 0.36, 0.50) * 0.9, reach: 9000.0 },
    ];
    let mut canvas = Canvas::new(SIZE);
    canvas.rework(|at, _| {
        let edge = parts.body.at(at);
        if edge <= 0.0 {
            return Vec3::ZERO;
        }
        let (colour, gloss) = parts.paint_smoothly(at);
        let (matt, sheen) = carving.light(at, &lamps);
        let lit = colour * (matt + vec3(0.035, 0.04, 0.055)) + sheen * gloss;
        exposed(lit) * ramp(0.0, 5.0, edge) * ramp(1262.0, 1170.0, at.y)
    });
    face::open_eyes(&mut canvas);
    lantern::draw(&mut canvas);
    canvas.finish()
}

/// Light brought within what a projector can show, the brightest parts least changed in hue.
fn exposed(light: Vec3) -> Vec3 {
    light / (0.86 + 0.26 * light.max_element())
}

/// A point mirrored onto the right half, with the axis at zero.
fn folded(at: Vec2) -> Vec2 {
    vec2((at.x - AXIS).abs(), at.y)
}

/// How far from the axis the mantle's front edge falls at a height.
fn opening(y: f32) -> f32 {
    14.0 + 138.0 * ramp(330.0, 900.0, y) + 26.0 * ramp(850.0, 1250.0, y)
}

/// Half the width of the whole figure at a height.
fn half_width(y: f32) -> f32 {
    let shoulders = 132.0 + 140.0 * ramp(300.0, 520.0, y);
    shoulders - 26.0 * bump((y - 900.0) / 190.0) + 22.0 * ramp(1000.0, 1250.0, y)
}

/// The masks and curves the figure is put together from.
struct Parts {
    /// How far inside the figure.
    body: Field,
    hood: Field,
    mantle: Field,
    /// The band along the mantle's edge, and the marks cut into it.
    band: Field,
    marks: Field,
    face: Field,
    rim: Field,
    cuffs: Field,
}

impl Parts {
    fn new() -> Self {
        let inside = |curve: &Curve| Field::inside(SIZE, curve);
        let outline = Curve::mirrored(
            AXIS,
            &[
                [360.0, 34.0],
                [424.0, 54.0],
                [474.0, 112.0],
                [492.0, 200.0],
                [488.0, 290.0],
                [516.0, 346.0],
                [592.0, 400.0],
                [634.0, 500.0],
                [630.0, 700.0],
                [606.0, 900.0],
                [626.0, 1100.0],
                [648.0, 1262.0],
                [360.0, 1270.0],
            ],
        );
        let hood = Curve::mirrored(
            AXIS,
            &[
                [360.0, 34.0],
                [424.0, 54.0],
                [474.0, 112.0],
                [492.0, 200.0],
                [482.0, 300.0],
                [440.0, 372.0],
                [360.0, 404.0],
            ],
        );
        let mantle = Field::new(SIZE, |at| {
            let place = folded(at);
            ramp(-1.0, 1.0, place.x - opening(place.y)) * ramp(250.0, 258.0, at.y)
        });
        let band = Field::new(SIZE, |at| {
            let place = folded(at);
            let off = place.x - opening(place.y);
            ramp(0.0, 2.0, off) * ramp(36.0, 34.0, off) * ramp(372.0, 376.0, at.y)
        });
        Self {
            body: inside(&outline).depth(),
            hood: inside(&hood),
            mantle,
            band,
            marks: marks(),
            face: inside(&face::outline(1.0)),
            rim: Field::along(SIZE, &face::outline(1.13), 24.0),
            cuffs: hands::sleeves(SIZE),
        }
    }

    /// The whole figure's heights.
    fn heights(&self) -> Field {
        let hood = self.hood.clone().bulge(120.0).map(|bulge| bulge * 105.0);
        let rim = self.rim.clone().bulge(12.0).map(|bulge| bulge * 15.0);
        let mantle = self.mantle.clone().blurred(3.0);
        let sleeves = self.cuffs.clone().bulge(58.0).map(|bulge| bulge * 62.0).blurred(2.0);
        let grooves = self.marks.clone().blurred(1.4);
        Field::new(SIZE, |at| {
            let place = folded(at);
            let round = (place.x / half_width(at.y)).min(1.0);
            let trunk = 150.0 * (1.0 - round * round * 0.96).sqrt() * ramp(250.0, 430.0, at.y);
            let on = mantle.at(at);
            let band = self.band.at(at);
            let cloth = self.folds(place, on) + 17.0 * on;
            let plumes = plumes(at).height * on * (1.0 - band);
            let worked = 7.0 * band - 6.5 * grooves.at(at) * band + plumes;
            let sleeve = sleeves.at(at);
            let covered = ramp(0.0, 6.0, sleeve);
            let arm = sleeve + hands::sleeve_folds(place) + 0.7 * plumes;
            let body = trunk + (cloth + worked) * (1.0 - covered) + arm * covered;
            let head = hood.at(at) + rim.at(at) + 60.0 + plumes_of_hood(at).height * (1.0 - self.rim.at(at));
            let face = face::height(at, self.face.at(at));
            let carved = head + (face - head) * self.face.at(at);
            let shaped = if hood.at(at) > 0.0 { body.max(carved) } else { body };
            shaped.max(hands::height(at)) + tooling(at)
        })
        .blurred(1.0)
    }

    /// The fall of the cloth: long soft folds that deepen and widen towards the hem.
    fn folds(&self, place: Vec2, mantle: f32) -> f32 {
        let drift = 22.0 * (noise::smooth(place / vec2(150.0, 260.0), 40) - 0.5);
        let outer = (place.x - opening(place.y)) / (half_width(place.y) - opening(place.y)).max(40.0);
        let deep = ramp(400.0, 900.0, place.y);
        let heavy = 13.0 * deep * (outer * 17.0 + drift * 0.16).sin().max(-0.6);
        let fine = 8.0 * ramp(690.0, 900.0, place.y) * ((place.x + drift) * 0.145).cos();
        fine + (heavy - fine) * mantle
    }

    /// The paint averaged over the texel, since feathers end in hard edges.
    fn paint_smoothly(&self, at: Vec2) -> (Vec3, f32) {
        let corners = [vec2(-0.25, -0.25), vec2(0.25, -0.25), vec2(-0.25, 0.25), vec2(0.25, 0.25)];
        corners.iter().fold((Vec3::ZERO, 0.0), |(colour, gloss), corner| {
            let part = self.paint(at + *corner);
            (colour + part.0 * 0.25, gloss + part.1 * 0.25)
        })
    }

    /// Paint and gilding under white light, and how glossy it is.
    fn paint(&self, at: Vec2) -> (Vec3, f32) {
        let grain = noise::smooth(vec2(at.x * 0.20 + 3.0 * noise::smooth(at / 90.0, 2), at.y * 0.012), 4);
        let robe = OCHRE.lerp(LIME, 0.5 * noise::cloudy(at / 70.0, 9)) * (0.84 + 0.2 * grain);
        let hood = self.hood.at(at);
        let plume = if hood > 0.5 { plumes_of_hood(at) } else { plumes(at) };
        let vane = PINE.lerp(SAGE, plume.tip * (0.75 + 0.3 * grain)) * (0.85 + 0.3 * grain);
        let sleeve = self.cuffs.at(at);
        let mut colour = robe.lerp(vane, self.mantle.at(at).max(hood).max(sleeve));
        let band = self.band.at(at) * (1.0 - sleeve);
        let gilt = self.rim.at(at).max(band).max(hands::cuff_band(at) * sleeve);
        colour = colour.lerp(GILT * (0.82 + 0.24 * grain), gilt * 0.94);
        colour = colour.lerp(PINE * 0.6, self.marks.at(at) * band * 0.85);
        let skin = self.face.at(at).max(hands::skin(at));
        colour = colour.lerp(face::paint(at, FLESH * (0.93 + 0.09 * grain)), skin);
        (colour, (0.10 + 0.42 * gilt) * (1.0 - 0.4 * skin))
    }
}

/// Marks along the mantle's band: a row of lozenges with a seed between each and the next.
fn marks() -> Field {
    let mut all = Field::new(SIZE, |_| 0.0);
    for step in 0..27 {
        let y = 398.0 + 31.0 * step as f32;
        for side in [-1.0, 1.0] {
            let centre = vec2(AXIS + side * (opening(y) + 17.5), y);
            let mark = if step % 2 == 0 {
                Curve::closed(&[
                    [0.0, -15.0],
                    [2.4, -8.0],
                    [10.0, 0.0],
                    [2.4, 8.0],
                    [0.0, 15.0],
                    [-2.4, 8.0],
                    [-10.0, 0.0],
                    [-2.4, -8.0],
                ])
            } else {
                Curve::closed(&[[0.0, -5.0], [4.5, 0.0], [0.0, 5.0], [-4.5, 0.0]])
            };
            all.merge(&Field::inside(SIZE, &mark.moved(|at| centre + at)), f32::max);
        }
    }
    all
}

/// A place on a coat of carved feathers.
struct Scale {
    height: f32,
    /// From the feather's root at 0 to its tip at 1.
    tip: f32,
}

/// A coat of feathers in rows, each row half over the next; `across` counts feathers and `down` counts rows.
fn scales(across: f32, down: f32) -> Scale {
    let row = down.floor();
    let local = |row: f32| (across + 0.5 * row.rem_euclid(2.0)).rem_euclid(1.0) - 0.5;
    let within = down - row;
    let upper = local(row);
    let reach = (1.0 - 4.0 * upper * upper).max(0.0).sqrt();
    let (x, along) = if within < reach { (upper, 0.5 + 0.5 * within) } else { (local(row + 1.0), 0.5 * within) };
    let shaft = bump(x / 0.045) * ramp(1.0, 0.85, along);
    let barbs = (70.0 * (along - 0.55 * x.abs())).sin() * ramp(0.02, 0.10, x.abs());
    let rounded = 1.0 - 2.4 * x * x;
    Scale {
        height: 9.0 * along * rounded + 2.2 * shaft + 0.45 * barbs,
        tip: ramp(0.42, 1.0, along) * (0.75 + 0.25 * shaft),
    }
}

/// The mantle's feathers, which widen with the cloth.
fn plumes(at: Vec2) -> Scale {
    let place = folded(at);
    scales(place.x / (27.0 + 0.012 * place.y), (place.y + 0.10 * place.x) / 30.0)
}

/// The hood's feathers, which stand around the face.
fn plumes_of_hood(at: Vec2) -> Scale {
    let out = at - vec2(AXIS, 222.0);
    let around = out.x.atan2(-out.y).abs();
    scales(around * 6.4, (out / vec2(0.80, 1.0)).length() / 25.0)
}

/// The marks of the gouge: shallow facets all over.
fn tooling(at: Vec2) -> f32 {
    1.2 * noise::smooth(vec2(at.x / 11.0, at.y / 24.0), 60) + 0.2 * noise::smooth(at / 3.5, 61)
}
