//! `pace`: how long a picture of the live kind takes on whatever graphics card there is.

use super::{Failure, from_spot, stage::Stage, trust::Trust, which};
use crate::viewer::gpu::{Exposer, Headless, Order, Which};
use clap::builder::RangedU64ValueParser;
use gauzelight::{
    light::Night,
    scene::{Name, Yard},
    units::Length,
};
use std::{ops::RangeInclusive, path::PathBuf, time::Instant};

/// Options of `pace`.
#[derive(clap::Args)]
pub struct Pace {
    /// Yard to draw
    #[arg(default_value = "owl_night.ron")]
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// How many stations, as a list; the yard's own are repeated a hand's breadth apart
    #[arg(long, value_delimiter = ',', default_value = "0,1,6,24", value_parser = count(0..=1000))]
    stations: Vec<usize>,
    /// Heights of 16:9 pictures, as a list
    #[arg(long, value_delimiter = ',', default_value = "1080,2160", value_parser = clap::value_parser!(u32).range(16..=4320))]
    heights: Vec<u32>,
    /// Pictures to time of each
    #[arg(long, default_value_t = 30, value_parser = count(1..=10_000))]
    frames: usize,
}

/// Reads a number of things, no more than a machine can have.
fn count(range: RangeInclusive<u64>) -> RangedU64ValueParser<usize> {
    RangedU64ValueParser::new().range(range)
}

impl Pace {
    /// Times them and prints a table.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        let stage = Stage::open(&self.yard, self.trust)?;
        let device = Headless::open().map_err(Failure::said)?;
        super::say(&device.name);
        super::say(format!(
            "{:>9} {:>8} {:>10} {:>12} {:>12}",
            "picture", "stations", "triangles", "ms a frame", "ms above 0"
        ));
        let mut bare = vec![None; self.heights.len()];
        for &count in &self.stations {
            let yard = crowded(&stage.yard, count);
            let night = Night::build(&yard, &stage.catalogue, &stage.shelf).map_err(Failure::said)?;
            let spot = yard.spots.first().ok_or_else(|| Failure::said("the yard has no viewing spot"))?;
            let camera = from_spot(&night, spot, 0.8);
            let mut exposer = Exposer::new(&device.device, &device.queue, &night);
            for (height, bare) in self.heights.iter().zip(&mut bare) {
                let frame = Order::whole(camera, (height * 16 / 9, *height));
                let ms = self.median(&device, &mut exposer, &frame)?;
                if count == 0 {
                    *bare = Some(ms);
                }
                let above = bare.map_or("-".to_owned(), |b: f64| format!("{:.2}", ms - b));
                super::say(format!("{:>8}p {count:>8} {:>10} {ms:>12.2} {above:>12}", height, night.triangles()));
            }
        }
        Ok(())
    }

    fn median(&self, device: &Headless, exposer: &mut Exposer, frame: &Order) -> Result<f64, Failure> {
        let mut times = Vec::new();
        // The first three warm the driver and are not counted.
        for i in 0..self.frames + 3 {
            let begun = Instant::now();
            let mut encoder = device.device.create_command_encoder(&Default::default());
            exposer.record(frame, Which::Fine, &mut encoder);
            device.queue.submit([encoder.finish()]);
            device.wait().map_err(Failure::said)?;
            if i >= 3 {
                times.push(begun.elapsed().as_secs_f64() * 1e3);
            }
        }
        times.sort_by(f64::total_cmp);
        Ok(times[times.len() / 2])
    }
}

/// A yard with so many stations, its own repeated, each a little to the side of the last.
fn crowded(yard: &Yard, count: usize) -> Yard {
    let own = &yard.stations;
    let stations = own.iter().cycle().take(if own.is_empty() { 0 } else { count }).enumerate().map(|(i, station)| {
        let round = (i / own.len()) as f64;
        let mut station = station.clone();
        station.name = Name::of(&format!("{} {round}", station.name.0));
        station.at.0[0] = Length::metres(station.at.0[0].m + 0.1 * round);
        station
    });
    Yard { stations: stations.collect(), ..yard.clone() }
}
