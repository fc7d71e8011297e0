//! Readings in step with the night, and what the pointer rests on.

use super::{Studio, lighting::Lighting};
use gauzelight::{
    judge::{self, StationReading},
    light::{EyeRay, Seen, luma},
    scene::{Catalogue, Yard},
};
use glam::Vec3;
use std::sync::{
    Arc,
    mpsc::{Receiver, TryRecvError, channel},
};

/// Readings of all stations.
#[derive(Default)]
pub struct Readings {
    /// The newest of each station.
    pub all: Vec<StationReading>,
    /// What the held thing's station gave when it was taken hold of.
    pub before: Option<StationReading>,
    /// The change of the light that they are of, and the yard: who watches and from where changes no light.
    of: u64,
    yard: Option<Arc<Yard>>,
    /// The change of the light that one station was last read alone for.
    live: u64,
    awaited: Option<(u64, Arc<Yard>, Receiver<Vec<StationReading>>)>,
}

impl Readings {
    /// Takes readings that have come in, and asks for those of the light as it now is; never waits. While something is
    /// held, its `station` alone is read at once, so that the numbers are those of the picture.
    pub fn keep_step(&mut self, lighting: &Lighting, catalogue: &Catalogue, station: Option<usize>) {
        let now = lighting.revision.light;
        if let Some((of, yard, receiver)) = &self.awaited {
            match receiver.try_recv() {
                Ok(readings) => {
                    (self.all, self.of, self.yard) = (readings, *of, Some(Arc::clone(yard)));
                    self.awaited = None;
                }
                Err(TryRecvError::Empty) => {}
                Err(TryRecvError::Disconnected) => self.awaited = None,
            }
        }
        if let Some(index) = station.filter(|index| *index < self.all.len()) {
            if self.live != now
                && let Some(reading) = judge::read_station(&lighting.night, &lighting.yard, catalogue, index)
                && let Some(old) = self.all.get_mut(index)
            {
                (*old, self.live) = (reading, now);
            }
            return;
        }
        let same = self.of == now && self.yard.as_ref().is_some_and(|yard| Arc::ptr_eq(yard, &lighting.yard));
        if self.awaited.is_none() && !same {
            let (sender, receiver) = channel();
            let (night, yard) = (Arc::clone(&lighting.night), Arc::clone(&lighting.yard));
            let catalogue = catalogue.clone();
            self.awaited = Some((now, Arc::clone(&yard), receiver));
            std::thread::spawn(move || {
                // Nobody listens any more if the window has closed meanwhile.
                let _ = sender.send(judge::read_all(&night, &yard, &catalogue));
            });
        }
    }

    /// Whether work on it is awaited.
    pub fn is_at_work(&self) -> bool {
        self.awaited.is_some()
    }

    /// The change of the light that the newest of them is of.
    #[cfg(test)]
    pub fn newest(&self) -> u64 {
        self.of.max(self.live)
    }

    /// The reading of a station, if it is of the station that now has this index.
    pub fn reading(&self, index: usize, name: &str) -> Option<&StationReading> {
        self.all.get(index).filter(|reading| reading.station == name)
    }
}

/// What the pointer rests on.
#[derive(Clone, Debug)]
pub struct Hover {
    /// What and where.
    pub seen: Seen,
    /// Luminance, cd/m².
    pub luminance: f32,
    /// Illuminance of the side seen, lx; of both sides of something see-through.
    pub illuminance: f32,
    /// Shares of it by source, largest first.
    pub shares: Vec<(String, f32)>,
}

impl Studio {
    /// What a ray of the picture meets, and its light; with `through`, what stands behind cloth and glass.
    pub fn hover(&self, ray: EyeRay, through: bool) -> Hover {
        let night = self.night();
        let seen = night.seen(ray, through);
        let luminance = luma(night.luminance(ray));
        let mut shares: Vec<(String, f32)> = Vec::new();
        let mut illuminance = 0.0;
        if !seen.name.is_empty() {
            let side =
                |normal: Vec3| -> Vec<f32> { night.illuminance(seen.point, normal).lx.into_iter().map(luma).collect() };
            let mut lx = side(seen.normal);
            if seen.see_through {
                // What lights a film from behind has lit it.
                lx.iter_mut().zip(side(-seen.normal)).for_each(|(near, far)| *near += far);
            }
            illuminance = lx.iter().sum();
            let names = (0..lx.len() as u32).map(|i| night.source_name(i).to_owned());
            shares = names.zip(lx.iter().map(|v| v / illuminance.max(1e-9))).filter(|s| s.1 >= 0.005).collect();
            shares.sort_by(|a, b| b.1.total_cmp(&a.1));
        }
        Hover { seen, luminance, illuminance, shares }
    }
}
