//! From light to answers: what a station gives, where its light goes, what each viewing spot gets of it,
//! and what meters read.

mod aimed;
pub mod ask;
mod band;
mod beyond;
pub mod compare;
mod day;
pub mod evening;
mod expect;
mod extent;
mod fate;
pub mod findings;
mod glint;
mod hidden;
mod landing;
mod mean;
mod meant;
mod meter;
mod obstruction;
mod on_target;
mod open_ground;
mod phone;
mod piece;
mod pitch;
mod reading;
pub mod sight;
mod slack;
mod spot;

pub use aimed::{Aimed, aimed};
pub use band::{Banded, Scale};
pub use beyond::Beyond;
pub use expect::lux_to_expect;
pub use extent::Extent;
pub use fate::Fate;
pub use hidden::{HiddenReading, read_hidden};
pub use landing::{Landing, RASTER, Touch, leave};
pub use meter::{MeterReading, MeterShare, read_meter, read_meters};
pub use obstruction::Taken;
pub use on_target::OnTarget;
pub use open_ground::{Direct, Heavenly, LocalTime, MoonReading, OpenGround};
pub use phone::{PhoneCheck, PhonePlace};
pub use reading::{StationReading, read_all, read_station, sighting, sightings};
pub use sight::{Figures, Limits, Place, Sight, Sighting, Weights, Word};
pub use slack::Slack;
pub use spot::{SpotReading, eye};
