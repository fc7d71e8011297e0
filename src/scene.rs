//! The document a person writes and saves: one file a noun; the catalogue; load, save, validate.
//!
//! Plain data only: no picture, triangle or table lives here, and nothing here computes light.
//! Lengths are metres inside, angles degrees as written; positions have x to the right along the house front
//! as seen from the street, y up and z from the house towards the street.

#[macro_use]
mod noun;
mod check;
mod document;
mod entries;
mod fault;
mod field;
mod file;
mod item;
mod read;
mod report;
mod save;
mod stock;
mod syntax;
mod tape;
mod tree;
mod value;
mod write;

mod area;
mod arrangement;
mod cable;
mod calendar;
mod catalogue;
mod climate;
mod cloth;
mod evening;
mod film;
mod form;
mod gamma;
mod gauge;
mod goods;
mod habits;
mod house;
mod ip;
mod keystone;
mod lamp;
mod limit;
mod load;
mod meter;
mod mirror;
mod opening;
mod own;
mod owned;
mod plant;
mod plausible;
mod shelter;
mod spot;
mod station;
mod supply;
mod thing;
mod when;
mod yard;

pub use area::{Area, Ground, UsedBy};
pub use arrangement::Arrangement;
pub use cable::{Cable, MadeFor};
pub use calendar::{Clock, Date, Zone};
pub use catalogue::{Catalogue, Fabric, FabricKind, LampKind, ProjectorClass, Source, SpreadKind, Surface};
pub use climate::Climate;
pub use cloth::Cloth;
pub use evening::{Evening, GroundState, Moon};
pub use fault::{Fault, Faults, Severity};
pub use field::{Field, Parts, Sort};
pub use file::Loaded;
pub use film::RearFilm;
pub use form::{Bag, Figure, Form, Globe, Gourd, Turned};
pub use gamma::Gamma;
pub use gauge::Gauge;
pub use goods::{Goods, GoodsKind, Sold};
pub use habits::{Body, Idle, Wakes, YesNo};
pub use house::{Gable, Hip, House, Ridge, Roof, SlopedRoof, Wall};
pub use ip::IpCode;
pub use item::{EntryFault, Item};
pub use keystone::Keystone;
pub use lamp::Lamp;
pub use limit::{Limit, limits};
pub use load::{Fed, Load, LoadFrom, LoadKind};
pub use meter::{Meter, MeterKind};
pub use mirror::FoldMirror;
pub use opening::{Door, Glazing, Opening, Room, RoomLamp, Side, Window};
pub use own::OwnCatalogue;
pub use owned::Owned;
pub use plant::{Hedge, Plant, Tree};
pub use save::{SaveError, Saved};
pub use shelter::{BoxColour, BoxWall, BoxWindow, Fan, PaneKind, Shelter};
pub use spot::Spot;
pub use station::{Aim, Content, Mount, Pose, Stance, Station};
pub use supply::{Battery, Mains, Supply, SupplyKind, TwelveVolt};
pub use tape::Tape;
pub use thing::{Bench, Block, Fence, Pergola, Porch, Post, Steps, Thing};
pub use value::{
    Angle, Band, Colour, Count, FARTHEST_M, Fraction, Fullness, Latitude, Longitude, Name, Place, Point, Positive, Ref,
    Size, Targets, TurnedPoint, Uv,
};
pub use when::When;
pub use yard::{Around, Setting, Units, Yard};
