//! What the sky gives on an evening: by plain numbers, or by date and place, where sky, sun and moon follow from the clock.
//!
//! A yard's own lamps are not in it; the glow over the town around it is, by the yard's setting, where the evening has a date.

pub mod course;
pub mod daylight;
pub mod moon;
pub mod season;
pub mod sun;
pub mod town;

pub use course::{Moment, course, span};
pub use moon::MoonPlace;
pub use sun::{SunPlace, crossing};

use super::LEAST_LX;
use crate::scene::{Setting, When, Yard};
use glam::{DVec3, Vec3};
use jiff::Timestamp;

/// What shines as a disc.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Body {
    /// The sun.
    Sun,
    /// The moon.
    Moon,
}

/// Sun or moon as a direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disc {
    /// Which of them.
    pub body: Body,
    /// Bearing from the street side, degrees: 0 stands over the street (z), 90 to the right (x).
    pub bearing_deg: f64,
    /// Height above the horizon, degrees; above 0.
    pub height_deg: f64,
    /// Illuminance of open level ground by the disc alone, lx.
    pub lx: f64,
}

impl Disc {
    /// Unit vector towards it, in the yard's axes.
    pub fn toward(&self) -> Vec3 {
        let (bearing, height) = (self.bearing_deg.to_radians(), self.height_deg.to_radians());
        DVec3::new(bearing.sin() * height.cos(), height.sin(), bearing.cos() * height.cos()).as_vec3()
    }

    /// Illuminance of a plane square to it, lx.
    pub fn square_lx(&self) -> f64 {
        self.lx / self.height_deg.to_radians().sin()
    }
}

/// The light that comes from above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ambient {
    /// Illuminance of open level ground by the dome of the sky alone, lx: twilight, the stars or the glow of towns, and what air and
    /// cloud scatter of sun and moon.
    pub sky_lx: f64,
    /// What of that the glow of towns adds to twilight and stars, lx; 0 on an evening by plain numbers.
    pub town_lx: f64,
    /// The brighter of sun and moon, where one stands above the horizon and casts a shadow.
    pub disc: Option<Disc>,
    /// Where the sun stands; `None` on an evening by plain numbers.
    pub sun: Option<SunPlace>,
    /// Where the moon stands; `None` on an evening by plain numbers.
    pub moon: Option<MoonPlace>,
    /// Illuminance of open level ground by the moon in all, straight and scattered, lx; 0 on an evening by plain numbers.
    pub moon_lx: f64,
}

impl Ambient {
    /// Illuminance of open level ground in all, lx.
    pub fn level_lx(&self) -> f64 {
        self.sky_lx + self.disc.map_or(0.0, |disc| disc.lx)
    }

    /// The light of a yard's evening as it is set.
    pub fn of(yard: &Yard) -> Self {
        let evening = &yard.evening;
        if let Some(when) = &evening.when {
            return Self::at(when, yard.setting, when.now());
        }
        let disc = evening.moon.as_ref().map(|moon| Disc {
            body: Body::Moon,
            bearing_deg: moon.bearing_deg.0,
            height_deg: moon.height_deg.0,
            lx: moon.lx,
        });
        Self { sky_lx: evening.sky_lx, town_lx: 0.0, disc, sun: None, moon: None, moon_lx: 0.0 }
    }

    /// The light at a place at an instant, which need not be on its date.
    ///
    /// On level ground `max((1 − 0.75 N^3.4) max(sun, stars), town) + (1 − 0.75 N^3.4) moon` under cloud of share N; sun, stars and moon
    /// by a clear sky. The brightness of a town's sky has the stars in it: it is the least that a night falls to. What sun and moon give in all is split alike: so much comes straight as the clear air of its height lets through, less what is
    /// behind cloud, and the rest by the sky. Nothing is lost between the two.
    pub fn at(when: &When, setting: Setting, instant: Timestamp) -> Self {
        let cloud = when.cloud.0;
        let sun = sun::place(when, instant);
        let moon = moon::place(when, instant, &sun);
        let clear_sun_lx = daylight::clear_sun_lx(sun.height_deg);
        let clear_moon_lx = daylight::full_moon_lx(moon.height_deg)
            * daylight::phase_share(moon.phase_angle_deg)
            * daylight::nearness(moon.parallax_deg);
        let straight = |body, compass_deg: f64, seen_height_deg: f64, clear_lx: f64| Disc {
            body,
            bearing_deg: when.faces_deg.0 - compass_deg,
            height_deg: seen_height_deg,
            lx: daylight::straight_share(seen_height_deg) * clear_lx * (1.0 - cloud),
        };
        let discs = [
            straight(Body::Sun, sun.bearing_deg, sun.seen_height_deg, clear_sun_lx),
            straight(Body::Moon, moon.bearing_deg, moon.seen_height_deg, clear_moon_lx),
        ];
        let seen = discs
            .into_iter()
            .filter(|disc| disc.height_deg > 0.0 && disc.lx > 0.0 && disc.square_lx() >= f64::from(LEAST_LX));
        let disc = seen.max_by(|a, b| a.lx.total_cmp(&b.lx));
        let left = daylight::left_by_cloud(cloud);
        let moon_lx = left * clear_moon_lx;
        let natural_lx = left * clear_sun_lx.max(daylight::STARS_LX);
        let town_lx = (town::glow_lx(setting, cloud) - natural_lx).max(0.0);
        let all = natural_lx + town_lx + moon_lx;
        let sky_lx = all - disc.map_or(0.0, |disc| disc.lx);
        Self { sky_lx, town_lx, disc, sun: Some(sun), moon: Some(moon), moon_lx }
    }
}
