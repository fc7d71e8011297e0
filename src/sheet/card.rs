//! The alignment card: a frame to throw on the first night, in the projector's own pixels.
//!
//! Where the target's edges and the figure's ends lie in the raster is the landing turned about: each is projected into the very
//! lens that throws. A person turns and shifts the projector until the card's outline lies on the target's.

use super::{
    Weight, font,
    landing::figure_ends,
    pose::level,
    preview::{polygon, text_path},
};
use crate::{
    geometry::Quad,
    judge::aimed,
    light::{Beam, Night},
    scene::{Catalogue, Pose, Yard},
};
use glam::{Mat3, Vec3};
use image::RgbaImage;
use tiny_skia::{Color, FillRule, Paint, Pixmap, Stroke, StrokeDash, Transform};

/// Spokes of the focus star.
const SPOKES: u32 = 18;

/// The card of the station at an index of the yard's list; `None` for a station that is off, and for one without pixels.
pub fn alignment_card(yard: &Yard, catalogue: &Catalogue, night: &Night, index: usize) -> Option<RgbaImage> {
    let station = yard.stations.get(index)?;
    let class = yard.projector(catalogue, &station.projector.0)?;
    let beam = night.beams.iter().rfind(|beam| beam.station == index as u32)?;
    let (width, height) = class.pixels;
    let mut map = Pixmap::new(width, height)?;
    map.fill(Color::BLACK);
    // A projector under a ceiling is told so and turns what it is sent: what is sent stands on its feet.
    let turned = station.pose == Pose::Ceiling;
    let mut card = Card { map, size: [f64::from(width), f64::from(height)], turned, corrected: beam.corrected };
    card.frame();
    card.star();
    for target in aimed(night, yard, index).map(|aimed| aimed.targets).unwrap_or_default() {
        card.target(night, beam, target);
    }
    card.figure(beam);
    card.words(beam, &station.name.0, station.content.mirrored);
    RgbaImage::from_raw(width, height, card.map.take())
}

struct Card {
    map: Pixmap,
    size: [f64; 2],
    turned: bool,
    /// Takes the raster to the picture that a digital correction bends.
    corrected: Mat3,
}

impl Card {
    /// The pixel of a place of the raster.
    fn at(&self, [u, v]: [f32; 2]) -> [f64; 2] {
        let sent = self.corrected * Vec3::new(u, v, 1.0);
        let [u, v] = (sent.truncate() / sent.z).to_array();
        let (u, v) = if self.turned { (1.0 - u, 1.0 - v) } else { (u, v) };
        [f64::from(u) * self.size[0], f64::from(v) * self.size[1]]
    }

    /// A length as a share of the lesser side.
    fn long(&self, share: f64) -> f64 {
        share * self.size[0].min(self.size[1])
    }

    fn line(&mut self, points: &[[f64; 2]], width: f64, dash: Option<f64>) {
        let Some(path) = polygon(points, false) else { return };
        let dash = dash.and_then(|on| StrokeDash::new(vec![on as f32, on as f32], 0.0));
        let stroke = Stroke { width: width as f32, dash, ..Stroke::default() };
        self.map.stroke_path(&path, &white(), &stroke, Transform::identity(), None);
    }

    fn area(&mut self, points: &[[f64; 2]]) {
        if let Some(path) = polygon(points, true) {
            self.map.fill_path(&path, &white(), FillRule::Winding, Transform::identity(), None);
        }
    }

    /// Edge, corner marks, and the cross in the middle.
    fn frame(&mut self) {
        let [w, h] = self.size;
        let (fine, bold, arm) = (1.0_f64.max(self.long(0.002)), self.long(0.012), self.long(0.12));
        let edge = [[0.5, 0.5], [w - 0.5, 0.5], [w - 0.5, h - 0.5], [0.5, h - 0.5], [0.5, 0.5]];
        self.line(&edge, 1.0, None);
        let inset = 0.5 * bold;
        for (x, way_x) in [(inset, 1.0), (w - inset, -1.0)] {
            for (y, way_y) in [(inset, 1.0), (h - inset, -1.0)] {
                self.line(&[[x + way_x * arm, y], [x, y], [x, y + way_y * arm]], bold, None);
            }
        }
        self.line(&[[0.0, 0.5 * h], [w, 0.5 * h]], fine, None);
        self.line(&[[0.5 * w, 0.0], [0.5 * w, h]], fine, None);
    }

    /// A star whose spokes part as far in as it is sharp (after a star of W. Siemens's works; from memory).
    fn star(&mut self) {
        let (radius, [x, y]) = (self.long(0.16), self.size.map(|side| 0.5 * side));
        let on = |spoke: f64| {
            let (sin, cos) = (spoke * std::f64::consts::TAU / f64::from(2 * SPOKES)).sin_cos();
            [x + radius * cos, y + radius * sin]
        };
        for spoke in 0..SPOKES {
            let first = f64::from(2 * spoke);
            self.area(&[[x, y], on(first), on(first + 1.0)]);
        }
    }

    /// The outline of a target: its face, or what of it the lens sees.
    fn target(&mut self, night: &Night, beam: &Beam, target: u32) {
        let width = self.long(0.008);
        if let Some(face) = night.places[target as usize].face {
            let ring = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0), (0.0, 0.0)];
            for pair in ring.windows(2) {
                let points = self.along(beam, &face, [pair[0], pair[1]]);
                self.line(&points, width, None);
            }
            // The target's own centre line, from its foot to its top: it is no edge, so that it is thin and broken.
            let points = self.along(beam, &face, [(0.5, 0.0), (0.5, 1.0)]);
            self.line(&points, 0.5 * width, Some(self.long(0.03)));
            return;
        }
        let seen = night
            .corners_of(target)
            .filter_map(|corner| beam.lens.project(corner))
            .map(|(u, v, _)| [u, v])
            .filter(near);
        let mut outline = super::scale::hull(seen.map(|uv| self.at(uv)).collect());
        outline.extend(outline.first().copied());
        self.line(&outline, width, None);
    }

    /// A straight line on a face, in short steps, so that what passes behind the lens is left out and the rest is drawn.
    fn along(&self, beam: &Beam, face: &Quad, [from, to]: [(f32, f32); 2]) -> Vec<[f64; 2]> {
        let on = |t: f32| {
            let at = face.point(from.0 + t * (to.0 - from.0), from.1 + t * (to.1 - from.1));
            beam.lens.project(at).map(|(u, v, _)| [u, v])
        };
        (0..=32).filter_map(|i| on(i as f32 / 32.0)).filter(near).map(|uv| self.at(uv)).collect()
    }

    /// Where head and feet of the figure are: a dashed line across each.
    fn figure(&mut self, beam: &Beam) {
        let (right, _) = level(beam.lens.forward);
        let across = [right.dot(beam.lens.right), -right.dot(beam.lens.up)].map(f64::from);
        let arm = self.long(0.2);
        for end in figure_ends(beam).into_iter().flatten() {
            let [x, y] = self.at(end);
            let [dx, dy] = across.map(|part| arm * part);
            let (width, dash) = (self.long(0.008), self.long(0.02));
            self.line(&[[x - dx, y - dy], [x + dx, y + dy]], width, Some(dash));
        }
    }

    /// The station's name and which way is up. Mirrored where the picture is sent mirrored: so it reads as the picture will.
    fn words(&mut self, beam: &Beam, name: &str, mirrored: bool) {
        let (_, up) = level(beam.lens.forward);
        let half = if self.turned { -1.0 } else { 1.0 };
        let raised = [half * up.dot(beam.lens.right), -half * up.dot(beam.lens.up)];
        // Along the nearer axis of the raster, so that the letters stay crisp.
        let up = if raised[0].abs() > raised[1].abs() {
            Vec3::new(raised[0].signum(), 0.0, 0.0)
        } else {
            Vec3::new(0.0, raised[1].signum(), 0.0)
        };
        let side = if mirrored { -1.0 } else { 1.0 };
        let right = side * Vec3::new(-up.y, up.x, 0.0);
        let [w, h] = self.size.map(|side| side as f32);
        // Room across and up as the words run.
        let (room, tall) = if right.x.abs() > 0.5 { (w, h) } else { (h, w) };
        let name = font::kept(name, &mut Vec::new());
        let size = (0.07 * tall).min(0.08 * room);
        let words = [(name.as_str(), -0.30 * tall, Weight::Bold), ("UP", 0.36 * tall, Weight::Bold)];
        for (says, height, weight) in words {
            let wide = font::width(says, 1.0, weight) as f32;
            let size = size.min(0.9 * room / wide.max(1e-3));
            let Some(path) = text_path(says, size, weight) else { continue };
            let foot = Vec3::new(0.5 * w, 0.5 * h, 0.0) + height * up - 0.5 * wide * size * right;
            let there = Transform::from_row(right.x, right.y, -up.x, -up.y, foot.x, foot.y);
            // On a bar of black, as lines run behind.
            let pad = 0.25 * size;
            let bar = [(-pad, -pad), (wide * size + pad, -pad), (wide * size + pad, 0.95 * size), (-pad, 0.95 * size)];
            let bar =
                bar.map(|(x, y)| (foot + x * right + y * up).to_array()).map(|p| [f64::from(p[0]), f64::from(p[1])]);
            if let Some(bar) = polygon(&bar, true) {
                let mut black = Paint::default();
                black.set_color(Color::BLACK);
                self.map.fill_path(&bar, &black, FillRule::Winding, Transform::identity(), None);
            }
            self.map.fill_path(&path, &white(), FillRule::Winding, there, None);
        }
        let top = Vec3::new(0.5 * w, 0.5 * h, 0.0) + 0.47 * tall * up;
        let arrow = [top, top - 0.04 * tall * up - 0.03 * tall * right, top - 0.04 * tall * up + 0.03 * tall * right];
        self.area(&arrow.map(|p| [f64::from(p.x), f64::from(p.y)]));
    }
}

/// Whether a place is in the raster or near it: far beyond, a line only runs off the frame.
fn near(uv: &[f32; 2]) -> bool {
    uv.iter().all(|at| (-3.0..=4.0).contains(at))
}

fn white() -> Paint<'static> {
    let mut paint = Paint { anti_alias: true, ..Paint::default() };
    paint.set_color(Color::WHITE);
    paint
}

/// A card's file: the station's place in the yard from 0 on, as one counts, and its name.
pub fn card_file(index: usize, station: &str) -> String {
    format!("{} {}.png", index + 1, file_name(station))
}

/// A name with only what every file system takes.
pub fn file_name(name: &str) -> String {
    name.chars().map(|c| if c.is_alphanumeric() || " -_,".contains(c) { c } else { '_' }).collect()
}

#[cfg(test)]
mod tests {
    #[test]
    fn a_name_leads_into_no_other_folder() {
        assert_eq!(super::card_file(0, "../owl: no. 1"), "1 ___owl_ no_ 1.png");
    }
}
