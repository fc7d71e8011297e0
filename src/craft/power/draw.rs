//! What a station draws.

use crate::scene::{Catalogue, Fed, LoadFrom, Station, SupplyKind, Yard};

/// Share that a plug-in adapter or converter hands on: common practice, no source.
pub(super) const ADAPTER: f64 = 0.85;

/// What a fan draws while it starts, in times of what it draws later: common practice, no source.
const FAN_INRUSH: f64 = 2.0;

/// What one device draws at what feeds its station, W.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Device {
    fed: Fed,
    watts: f64,
    starting: f64,
}

/// What a station draws, by what its devices run on.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Draw {
    devices: Vec<Device>,
    /// At the projector's USB outlet, W.
    pub usb_w: f64,
}

impl Draw {
    /// Of a station, switched on.
    pub fn of(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Self {
        let beside = |from| station.loads.iter().filter(move |load| load.from == from);
        let usb_w: f64 = beside(LoadFrom::ProjectorUsb).map(|load| load.watts.0).sum();
        let usb_starting: f64 = beside(LoadFrom::ProjectorUsb).map(|load| load.watts.0 * load.inrush.0).sum();
        let projector = yard.projector(catalogue, &station.projector.0).map(|class| Device {
            fed: class.volts,
            watts: class.watts.0 + usb_w,
            starting: class.watts.0 * class.inrush.0 + usb_starting,
        });
        let others = beside(LoadFrom::Supply).map(|load| Device {
            fed: load.volts,
            watts: load.watts.0,
            starting: load.watts.0 * load.inrush.0,
        });
        // Fans of boxes run on 12 V, and start like any small motor.
        let fan = station.shelter.as_ref().and_then(|shelter| shelter.fan.as_ref()).map(|fan| Device {
            fed: Fed::TwelveVolt,
            watts: fan.watts.0,
            starting: fan.watts.0 * FAN_INRUSH,
        });
        Self { devices: projector.into_iter().chain(others).chain(fan).collect(), usb_w }
    }

    /// What all its devices draw, W, without what adapters lose; running and starting.
    pub fn bare(&self) -> [f64; 2] {
        self.sum(|_| 1.0)
    }

    /// What it draws at a supply, W, running and starting: what runs on other volts draws by way of an adapter.
    pub fn at(&self, supply: &SupplyKind) -> [f64; 2] {
        self.sum(|fed| if fed == own(supply) { 1.0 } else { 1.0 / ADAPTER })
    }

    /// Whether something of it wants the mains that a supply does not give.
    pub fn is_lost_at(&self, supply: &SupplyKind) -> bool {
        !supply.is_mains() && self.devices.iter().any(|device| device.fed == Fed::Mains)
    }

    fn sum(&self, by: impl Fn(Fed) -> f64) -> [f64; 2] {
        self.devices.iter().fold([0.0; 2], |[watts, starting], device| {
            [watts + by(device.fed) * device.watts, starting + by(device.fed) * device.starting]
        })
    }
}

/// What runs on a supply without an adapter.
fn own(supply: &SupplyKind) -> Fed {
    if supply.is_mains() { Fed::Mains } else { Fed::TwelveVolt }
}
