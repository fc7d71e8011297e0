//! The agreement with the core is worth something only if it breaks: each kind of table, changed by 1 %, must turn it red.

use super::{Exposer, Headless, Order, Which};
use crate::command::{Stage, from_spot};
use gauzelight::{
    light::{Rgb, luma},
    picture::{Camera, Still},
};
use glam::{Vec3, Vec4};
use std::path::Path;

const SIZE: (u32, u32) = (192, 108);
const ROW: usize = 128;
/// Rows of an optic's block.
const BLOCK: usize = 15;

/// Rows that hold one kind of table.
const KINDS: [(&str, &[usize]); 7] = [
    ("reflection", &[0, 5]),
    ("diffuse transmission", &[1, 6]),
    ("shape of reflection", &[2, 7]),
    ("shape of transmission", &[3, 8]),
    ("straight through", &[10]),
    ("arrival on a film", &[11]),
    ("gain of a film", &[12, 13]),
];

/// The agreement's own measure: the 99.9th percentile of differences, relative to a pixel's luminance or, where that is more, to
/// 1e-4 of a white of 8 cd/m².
fn percentile(one: &Still, other: &Still) -> f32 {
    let pairs = one.luminance.iter().zip(&other.luminance);
    let mut list: Vec<f32> =
        pairs.map(|(a, b): (&Rgb, &Rgb)| (*a - *b).abs().max_element() / luma(*a).max(8e-4)).collect();
    list.sort_by(f32::total_cmp);
    list[(list.len() as f32 * 0.999) as usize]
}

fn take(device: &Headless, exposer: &mut Exposer, camera: Camera) -> Still {
    let mut encoder = device.device.create_command_encoder(&Default::default());
    exposer.record(&Order::whole(camera, SIZE), Which::Fine, &mut encoder);
    device.queue.submit([encoder.finish()]);
    device.read(exposer).unwrap()
}

#[test]
fn one_per_cent_of_any_table_shows() {
    let device = match Headless::open() {
        Ok(device) => device,
        Err(why) => {
            assert!(std::env::var_os("CI").is_none(), "{why}");
            eprintln!("SKIPPED, for want of a graphics driver: {why}");
            return;
        }
    };
    let mut worst = [0f32; KINDS.len() + 1];
    for yard in ["one_window.ron", "fabric_row.ron", "crossing.ron"] {
        let stage = Stage::open(Path::new(yard), Default::default()).unwrap();
        let night = stage.night().unwrap();
        let mut exposer = Exposer::new(&device.device, &device.queue, &night);
        let cameras = [
            from_spot(&night, &stage.yard.spots[0], 0.6),
            // Close behind the cloths and through the window, where light that comes through is most of the picture.
            Camera::looking(Vec3::new(0.2, 1.6, 2.0), Vec3::new(0.0, 1.4, -1.0), 1.0),
            Camera::looking(Vec3::new(-0.6, 1.5, 0.4), Vec3::new(0.2, 1.4, 3.0), 1.2),
        ];
        for camera in cameras {
            let right = take(&device, &mut exposer, camera);
            let spreads = exposer.scene.spread_base as usize;
            let tables = exposer.scene.tables.clone();
            for (kind, worst) in worst.iter_mut().enumerate() {
                let changed: Vec<Vec4> = tables
                    .iter()
                    .enumerate()
                    .map(|(i, value)| {
                        let mine = match KINDS.get(kind) {
                            Some((_, rows)) => i < spreads && rows.contains(&(i / ROW % BLOCK)),
                            None => i >= spreads,
                        };
                        if mine { *value * 1.01 } else { *value }
                    })
                    .collect();
                device.queue.write_buffer(&exposer.tables, 0, bytemuck::cast_slice(&changed));
                *worst = worst.max(percentile(&right, &take(&device, &mut exposer, camera)));
            }
            device.queue.write_buffer(&exposer.tables, 0, bytemuck::cast_slice(&tables));
        }
    }
    let names = KINDS.iter().map(|(name, _)| *name).chain(["spread of lamps"]);
    for (name, worst) in names.zip(worst) {
        eprintln!("{name}: 99.9th percentile {worst:.4}");
        assert!(worst > 2e-4, "{name}: a change of 1 % stays unseen ({worst})");
    }
}
