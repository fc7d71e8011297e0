//! Window glass: one or more panes, with or without an insect screen.

use super::fresnel::plate;
use super::layers::unite;
use super::pile::pile;
use super::{Curve, EnergyError, Net, Pane, Rgb, Sheet};

/// Refractive index of soda-lime float glass.
pub const FLOAT_INDEX: f32 = 1.52;

/// Share that 3 mm of clear float glass passes between its surfaces at normal incidence.
pub const FLOAT_INTERNAL: f32 = 0.98;

/// An insect screen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screen {
    /// Thread-to-pitch ratio γ, 0 to 1.
    pub ratio: f32,
    /// Reflectance of the thread.
    pub reflect: Rgb,
}

/// One glazing unit, from outdoors (front) to indoors (back).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Glazing {
    /// Panes of glass, one behind the other.
    pub panes: u8,
    /// Insect screen on the outdoor side.
    pub screen: Option<Screen>,
    /// Refractive index of the glass.
    pub index: f32,
    /// Share that one pane passes between its surfaces at normal incidence.
    pub internal: f32,
}

impl Glazing {
    /// Panes of 3 mm clear float glass without a screen.
    pub fn clear_float(panes: u8) -> Self {
        Self { panes, screen: None, index: FLOAT_INDEX, internal: FLOAT_INTERNAL }
    }

    /// Tabulates the unit as a whole.
    ///
    /// The panes are composed for each polarisation by itself and only then averaged: after one pane the light is
    /// partly polarised, and a product of unpolarised panes is too dark.
    pub fn pane(&self) -> Result<Pane, EnergyError> {
        let glass = self.glass();
        let Some(screen) = self.screen else { return Ok(glass) };
        let net = Net { ratio: screen.ratio, reflect: screen.reflect, transmit: Rgb::ZERO }.sheet()?;
        Ok(unite(&[&Pane::from(&net), &glass]))
    }

    fn glass(&self) -> Pane {
        let (index, internal) = (f64::from(self.index), f64::from(self.internal));
        let unit = |cos: f64| plate(cos, index, internal).map(|plate| pile(&vec![plate; usize::from(self.panes)]));
        let through = Curve::of(|cos| {
            let [across, along] = unit(cos);
            [0.5 * (across.through[0] + along.through[0]); 3]
        });
        let mirror = Curve::of(|cos| {
            let [across, along] = unit(cos);
            [0.5 * (across.reflect[0] + along.reflect[0]); 3]
        });
        let none = Curve::constant(Rgb::ZERO);
        Pane { sheet: Sheet::even(none.clone(), none, through), mirror: [mirror.clone(), mirror] }
    }
}
