//! What a station looks like at night from a viewing spot, light enough for paper. One picture serves all stations that it shows.

use super::Picture;
use crate::{
    frames::srgb,
    judge,
    light::{Night, luma},
    picture::{Camera, Develop, Still, expose},
    scene::Yard,
};
use glam::Vec3;
use image::{ExtendedColorType, codecs::jpeg::JpegEncoder};
use std::sync::Arc;

/// Pixels of a picture, and its vertical field of view, rad.
const SIZE: [u32; 2] = [480, 270];
const FIELD: f32 = 34.0 * std::f32::consts::PI / 180.0;
/// The share of pixels that may be brighter than paper.
const BRIGHTEST: f64 = 0.015;
/// The dark is lifted so far, and mid tones by this power: paper is looked at by lamplight, and ink spreads.
const LIFT: f32 = 0.14;
const GAMMA: f32 = 0.75;

/// A picture from a viewing spot.
#[derive(Clone, Debug)]
pub struct View {
    /// Index of the spot in the yard's list.
    pub spot: usize,
    /// The camera that took it.
    pub camera: Camera,
    /// What it took.
    pub picture: Arc<Picture>,
}

impl View {
    /// Where a point shows, in shares of the picture from its left upper corner; `None` where it does not.
    pub fn shows(&self, point: Vec3) -> Option<[f64; 2]> {
        shows(&self.camera, point)
    }
}

fn shows(camera: &Camera, point: Vec3) -> Option<[f64; 2]> {
    let [w, h] = SIZE.map(|pixels| pixels as f32);
    let (x, y) = camera.project(point, w, h)?;
    let at = [f64::from(x / w), f64::from(y / h)];
    at.iter().all(|share| (0.02..=0.98).contains(share)).then_some(at)
}

/// Pictures from the spot at an index of the yard's list, and from the first other spots that show the stations which it does
/// not. `done` hears the share of the work that is finished, from any thread.
pub fn views(night: &Night, yard: &Yard, from: usize, done: impl Fn(f32) + Sync) -> Vec<View> {
    let camera = |spot: &crate::scene::Spot| {
        Camera::looking(judge::eye(spot), night.aim(&spot.look).unwrap_or(Vec3::new(0.0, 2.0, 0.0)), FIELD)
    };
    let cameras: Vec<Camera> = yard.spots.iter().map(camera).collect();
    let mut wanted: Vec<usize> = cameras.get(from).map(|_| from).into_iter().collect();
    for station in &yard.stations {
        let Some(aim) = night.aim(&station.aim) else { continue };
        let shown = |at: &usize| shows(&cameras[*at], aim).is_some();
        if !wanted.iter().any(shown) {
            wanted.extend((0..cameras.len()).find(shown));
        }
    }
    let count = wanted.len() as f32;
    let taken = wanted.into_iter().enumerate();
    taken
        .filter_map(|(number, spot)| {
            let said = |share: f32| done((number as f32 + share) / count);
            let still = expose(night, &cameras[spot], (SIZE[0], SIZE[1]), 1, said);
            Some(View { spot, camera: cameras[spot], picture: Arc::new(printed(&still)?) })
        })
        .collect()
}

/// A still as a file for paper.
fn printed(still: &Still) -> Option<Picture> {
    let mut levels: Vec<f32> = still.luminance.iter().map(|l| luma(*l)).collect();
    levels.sort_by(f32::total_cmp);
    let at = ((levels.len() as f64 * (1.0 - BRIGHTEST)) as usize).min(levels.len().checked_sub(1)?);
    let develop = Develop::White(levels[at].max(1e-4));
    let lifted = |value: f32| LIFT + (1.0 - LIFT) * srgb::from_linear(value).powf(GAMMA);
    let tone = |value: f32| (255.0 * lifted(value)).round().clamp(0.0, 255.0) as u8;
    let codes: Vec<u8> =
        still.luminance.iter().flat_map(|l| develop.linear(*l).to_array()).map(|v| tone(v.clamp(0.0, 1.0))).collect();
    let mut jpeg = Vec::new();
    JpegEncoder::new_with_quality(&mut jpeg, 88)
        .encode(&codes, still.width, still.height, ExtendedColorType::Rgb8)
        .ok()?;
    Some(Picture { size: [still.width, still.height], jpeg })
}
