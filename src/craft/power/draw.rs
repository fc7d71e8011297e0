//! What a station draws.

use crate::scene::{Catalogue, Fed, LoadFrom, Station, SupplyKind, Yard};

/// Share that a plug-in adapter or converter hands on: common practice, no source.
pub(super) const ADAPTER: f64 = 0.85;

/// What a fan draws while it starts, in times of what it draws later: common practice, no source.
const FAN_INRUSH: f64 = 2.0;

/// Volts that [`Fed::TwelveVolt`] runs on.
const TWELVE: f64 = 12.0;

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

    /// How far a supply's volts are off what something of it runs on, as a share of that: all, where it wants the mains and a supply of
    /// low voltage feeds it. Adapters are at hand from the mains to anything, and from low voltage to USB.
    pub fn is_off_at(&self, supply: &SupplyKind) -> f64 {
        let off = |device: &Device| match device.fed {
            _ if supply.is_mains() => 0.0,
            Fed::Mains => 1.0,
            Fed::TwelveVolt => (supply.volts() / TWELVE - 1.0).abs(),
            Fed::Usb => 0.0,
        };
        self.devices.iter().map(off).fold(0.0, f64::max)
    }

    /// Whether something of it wants the mains.
    pub fn wants_mains(&self) -> bool {
        self.devices.iter().any(|device| device.fed == Fed::Mains)
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
