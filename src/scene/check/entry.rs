//! Entries of the catalogue, the program's and a yard's own: values that no real thing can have.

use super::power;
use super::range::{band_within, unless, within};
use crate::files::leads_out;
use crate::optics;
use crate::scene::{
    Band, Catalogue, Fabric, FabricKind, Fault, Faults, Gamma, LampKind, ProjectorClass, SpreadKind, Surface, Yard,
};
use crate::units::{decimals, number};
use std::{f64::consts::LN_2, path::Path};

/// No frame of a projector has more pixels than this.
const MOST_PIXELS: u64 = 64_000_000;

/// Sums of shares may exceed 1 by rounding.
const SLACK: f64 = 1e-9;

/// A yard's own entries.
pub(super) fn check(yard: &Yard, folder: Option<&Path>, faults: &mut Faults) {
    faults.in_each("surfaces", &yard.surfaces, |faults, entry| surface(entry, faults));
    faults.in_each("fabrics", &yard.fabrics, |faults, entry| fabric(entry, faults));
    faults.in_each("projectors", &yard.projectors, |faults, entry| projector(entry, faults));
    faults.in_each("lamp_kinds", &yard.lamp_kinds, |faults, entry| lamp_kind(entry, folder, faults));
}

impl Catalogue {
    /// What is wrong with the entries of a catalogue.
    pub fn check(&self) -> Faults {
        let yard = Yard {
            surfaces: self.surfaces.clone(),
            fabrics: self.fabrics.clone(),
            projectors: self.projectors.clone(),
            lamp_kinds: self.lamp_kinds.clone(),
            goods: self.goods.clone(),
            ..Yard::named("catalogue")
        };
        yard.check(self, None)
    }
}

fn surface(surface: &Surface, faults: &mut Faults) {
    within(faults, "wet", surface.wet, 0.0..=1.0, "from 0 to 1; water darkens");
    within(faults, "doubt", surface.doubt, 0.0..=1.0, "from 0 to 1; 0.2 means ±20 %");
}

fn fabric(fabric: &Fabric, faults: &mut Faults) {
    let share = |faults: &mut Faults, field: &str, band: Band| {
        band_within(faults, &format!("kind.{field}"), band, 0.0..=1.0, "a share, from 0 to 1");
    };
    priced(fabric.price, faults);
    if let Some(weight) = fabric.weight_g_m2 {
        band_within(faults, "weight_g_m2", weight, 1.0..=5000.0, "from 1 to 5000 g a square metre");
    }
    if let Some(width) = &fabric.roll_width {
        within(faults, "roll_width", width.0.m, 0.05..=30.0, "from 5 cm to 30 m");
    }
    match fabric.kind {
        FabricKind::Net { thread, reflect, diffuse } => {
            band_within(faults, "kind.thread", thread, 0.0..=0.95, "thread width over pitch, from 0 to 0.95");
            share(faults, "reflect", reflect);
            share(faults, "diffuse", diffuse);
            keeps_energy(&[("reflect", reflect), ("diffuse", diffuse)], faults);
        }
        FabricKind::Cloth { through, diffuse, reflect } => {
            share(faults, "through", through);
            share(faults, "diffuse", diffuse);
            share(faults, "reflect", reflect);
            keeps_energy(&[("through", through), ("diffuse", diffuse), ("reflect", reflect)], faults);
        }
        FabricKind::Film { gain, half_gain_deg, through, reflect } => {
            share(faults, "through", through);
            share(faults, "reflect", reflect);
            band_within(faults, "kind.gain", gain, 1e-3..=100.0, "from 0.001 to 100");
            within(faults, "kind.half_gain_deg", half_gain_deg.0, 1.0..=90.0, "from 1 to 90 degrees");
            film_keeps_energy([gain, through, reflect], half_gain_deg.0, faults);
        }
    }
}

/// The three values of a band, each with its name.
fn parts(band: Band) -> [(&'static str, f64); 3] {
    [("low", band.low), ("typical", band.typical), ("high", band.high)]
}

/// What is passed on, scattered and thrown back together is at most what came; at either end of the bands too, since
/// readings are computed there.
fn keeps_energy(shares: &[(&str, Band)], faults: &mut Faults) {
    let names: Vec<&str> = shares.iter().map(|(name, _)| *name).collect();
    for (index, (part, _)) in parts(Band::exact(0.0)).into_iter().enumerate() {
        let sum: f64 = shares.iter().map(|(_, band)| parts(*band)[index].1).sum();
        if sum > 1.0 + SLACK {
            let what = format!(
                "{} add up to {} at their {part} values: more light than came",
                names.join(" + "),
                decimals(sum, 3)
            );
            faults.push_in("kind", Fault::new(what).remedy("their sum is at most 1"));
            return;
        }
    }
}

/// Gain and half-gain angle of a film fix what it scatters through; that too must be there to give.
fn film_keeps_energy(bands: [Band; 3], half_gain_deg: f64, faults: &mut Faults) {
    for (index, (part, _)) in parts(bands[0]).into_iter().enumerate() {
        let [gain, through, reflect] = bands.map(|band| parts(band)[index].1);
        if scatters_at_most(gain, half_gain_deg) + through + reflect <= 1.0 {
            continue;
        }
        let grey = |share: f64| optics::Rgb::splat(share as f32);
        let film = optics::Film::from_gain(gain as f32, half_gain_deg as f32, grey(reflect), grey(through));
        if let Err(error @ optics::FilmError::TooBright { .. }) = film {
            let what = format!("at the {part} values {error}");
            faults.push_in("kind", Fault::new(what).remedy("lower the gain, the half-gain angle, reflect or through"));
            return;
        }
    }
}

/// A bound on the share that a film scatters, which spares most films the integral: with cos β sin β < β,
/// `2 ∫ G cos β sin β dβ` is below `2 ∫ G β dβ = G₀ h² / ln 2`, and below `G₀`.
fn scatters_at_most(gain: f64, half_gain_deg: f64) -> f64 {
    gain * (half_gain_deg.to_radians().powi(2) / LN_2).min(1.0)
}

fn projector(class: &ProjectorClass, faults: &mut Faults) {
    for (field, (across, down)) in [("pixels", class.pixels), ("claimed_pixels", class.claimed_pixels)] {
        let count = u64::from(across) * u64::from(down);
        let what = format!("{across} by {down} pixels");
        unless((1..=MOST_PIXELS).contains(&count), faults, field, what, "at least 1 each way, and at most 64 million");
    }
    band_within(faults, "lumens", class.lumens, 0.1..=100_000.0, "from 0.1 to 100000 lm");
    let allowed = "distance over picture width, from 0.1 to 20";
    within(faults, "throw_ratio", class.throw_ratio.0, 0.1..=20.0, allowed);
    if let Some(tele) = class.throw_ratio_tele {
        within(faults, "throw_ratio_tele", tele.0, 0.1..=20.0, allowed);
        let what = "the narrowest throw is wider than the widest";
        unless(tele.0 >= class.throw_ratio.0, faults, "throw_ratio_tele", what, "at least throw_ratio");
    }
    within(faults, "aperture", class.aperture.0.m, 0.0..=1.0, "at most 1 m");
    within(faults, "on_off_contrast", class.on_off_contrast.0, 1.0..=1e7, "at least 1");
    let allowed = "at least 1, and at most on_off_contrast";
    within(faults, "checker_contrast", class.checker_contrast.0, 1.0..=class.on_off_contrast.0.max(1.0), allowed);
    gamma(class.gamma, faults);
    let allowed = "the three full colours as a share of white, from 0.05 to 1";
    band_within(faults, "colour_light", class.colour_light, 0.05..=1.0, allowed);
    band_within(faults, "corner", class.corner, 0.01..=2.0, "from 0.01 to 2");
    band_within(faults, "left_after_1000_h", class.left_after_1000_h, 0.01..=1.0, "from 0.01 to 1");
    priced(class.price, faults);
    if let Some(hours) = class.lamp_hours {
        within(faults, "lamp_hours", hours.0, 10.0..=100_000.0, "from 10 to 100000 hours");
    }
    power::inrush(class.inrush, faults);
    let (coldest, warmest) = class.runs_c;
    within(faults, "runs_c", coldest, -60.0..=60.0, "from -60 to 60 °C");
    within(faults, "runs_c", warmest, -40.0..=100.0, "from -40 to 100 °C");
    let what = format!("it may run from {} to {} °C", number(coldest), number(warmest));
    unless(coldest < warmest, faults, "runs_c", what, "write the colder first, then the warmer");
    within(faults, "cools_s", class.cools_s, 0.0..=3600.0, "from 0 to 3600 s");
    if let Some(watts) = class.usb_w {
        within(faults, "usb_w", watts.0, 0.1..=240.0, "from 0.1 to 240 W");
    }
}

/// A curve from signal to light: displays are set to 1.8 to 2.6.
pub(super) fn gamma(gamma: Gamma, faults: &mut Faults) {
    if let Gamma::Power(band) = gamma {
        band_within(faults, "gamma", band, 1.0..=4.0, "from 1 to 4, mostly 2.2; or Srgb");
    }
}

pub(super) fn priced(price: Option<Band>, faults: &mut Faults) {
    if let Some(price) = price {
        band_within(faults, "price", price, 0.0..=1e6, "from 0 to 1000000");
    }
}

fn lamp_kind(kind: &LampKind, folder: Option<&Path>, faults: &mut Faults) {
    if let Some(lumens) = kind.lumens {
        band_within(faults, "lumens", lumens, 0.01..=1e6, "from 0.01 to 1000000 lm");
    } else if !matches!(kind.spread, SpreadKind::File { .. }) {
        faults.push(
            Fault::new("this kind of lamp has no lumens").remedy("write lumens: …; only a lamp file says them itself"),
        );
    }
    unless(
        kind.light.0.iter().any(|channel| *channel > 0.0),
        faults,
        "light",
        "this lamp has no colour of light",
        "not (0, 0, 0)",
    );
    match &kind.spread {
        SpreadKind::Hooded { half_deg } | SpreadKind::Beam { half_deg } => {
            within(faults, "spread.half_deg", *half_deg, 1.0..=89.0, "from 1 to 89 degrees");
        }
        SpreadKind::Table { cd_per_klm } => lamp_table(cd_per_klm, faults),
        SpreadKind::File { path } => lamp_file(path, folder, faults),
        SpreadKind::Globe | SpreadKind::Window => {}
    }
}

/// Angles so near to each other that samples of the light's table could miss what stands between them are refused, degrees.
const ROWS_APART: f64 = 1.0;

fn lamp_table(rows: &[(f64, f64)], faults: &mut Faults) {
    for (angle, candela) in rows {
        within(faults, "spread.cd_per_klm", *angle, 0.0..=180.0, "an angle from 0 to 180 degrees");
        within(faults, "spread.cd_per_klm", *candela, 0.0..=1e6, "from 0 to 1000000 cd per 1000 lm");
    }
    let rising = rows.windows(2).all(|pair| pair[1].0 - pair[0].0 >= ROWS_APART);
    let what = "the angles of this table do not rise by a degree from pair to pair";
    unless(rising, faults, "spread.cd_per_klm", what, "write them from the least on, a degree apart at least");
    let shines = rows.len() > 1 && rows.iter().any(|(_, candela)| *candela > 0.0);
    let what = "this table has no light in it";
    unless(shines, faults, "spread.cd_per_klm", what, "write two pairs (angle, cd) at least, one of them above 0 cd");
}

/// A missing file keeps nobody from planning: the lamp stays dark.
fn lamp_file(path: &str, folder: Option<&Path>, faults: &mut Faults) {
    if path.trim().is_empty() {
        faults.push_in("spread.path", Fault::new("no lamp file is named").remedy("name a file beside the yard"));
    } else if folder.is_some_and(|folder| !leads_out(path) && !folder.join(path).exists()) {
        let what =
            format!("there is no lamp file “{}”; a lamp of this kind stays dark", crate::scene::tree::clipped(path));
        faults.push_in("spread.path", Fault::warning(what).remedy("put the file beside the yard"));
    }
}
