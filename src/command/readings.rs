//! `readings`: what every station gives, and what every meter reads.

pub mod ground;
mod meters;
mod phone;
mod table;

use super::{Failure, hour::Hour, progress::timed, stage::Stage, trust::Trust, which};
use gauzelight::{
    judge::{self, Banded, Beyond, MeterReading, OnTarget, OpenGround, StationReading},
    scene::Units,
    units::{Length, Style, illuminance, two_digits, with_band},
};
use serde::Serialize;
use std::{collections::BTreeMap, fmt::Write as _, path::PathBuf};

/// Options of `readings`.
#[derive(clap::Args)]
pub struct Readings {
    /// Yard to read
    yard: PathBuf,
    #[command(flatten)]
    trust: Trust,
    /// As JSON
    #[arg(long, conflicts_with = "csv")]
    json: bool,
    /// As CSV, a line for each station, target and viewing spot; then, after an empty line, one for each meter and source
    #[arg(long)]
    csv: bool,
    #[command(flatten)]
    hour: Hour,
}

impl Readings {
    /// Prints them.
    pub fn run(&self) -> Result<(), Failure> {
        which::there(&self.yard, &[])?;
        let mut stage = Stage::open(&self.yard, self.trust)?;
        self.hour.set(&mut stage)?;
        let night = stage.night()?;
        let read = || judge::read_all(&night, &stage.yard, &stage.catalogue);
        let mut stations = timed("reading the stations", read);
        let missing = cards(&stage);
        for reading in &mut stations {
            // Of one that is off as well.
            reading.picture_missing = missing.contains_key(reading.station.as_str());
        }
        let meters = judge::read_meters(&night, &stage.yard, &stage.catalogue);
        let open_ground = OpenGround::of(&stage.yard);
        if self.json {
            super::say(serde_json::to_string_pretty(&All { open_ground, stations, meters }).map_err(Failure::said)?);
        } else if self.csv {
            let more = if meters.is_empty() { String::new() } else { format!("\n{}", meters::csv(&meters)) };
            super::say(format!("{}{more}", table::csv(&stations)).trim_end());
        } else {
            let ground = ground::text(&open_ground, stage.yard.units == Units::Feet);
            let page = text(&stations, &meters, stage.yard.units, &missing);
            super::say(format!("{ground}{page}").trim_end());
        }
        Ok(())
    }
}

/// Everything, as JSON has it.
#[derive(Serialize)]
struct All {
    open_ground: OpenGround,
    stations: Vec<StationReading>,
    meters: Vec<MeterReading>,
}

/// Stations whose picture a test card stands in for, each with that picture.
pub fn cards(stage: &Stage) -> BTreeMap<&str, &str> {
    let pictures = stage.yard.stations.iter().map(|s| (s.name.0.as_str(), s.content.picture.as_str()));
    pictures.filter(|(_, picture)| stage.shelf.stand_ins.contains_key(*picture)).collect()
}

/// Readings as a page of text; `cards` as by [`cards`].
pub fn text(
    readings: &[StationReading],
    meters: &[MeterReading],
    units: Units,
    cards: &BTreeMap<&str, &str>,
) -> String {
    if readings.is_empty() && meters.is_empty() {
        return "This yard has no stations and no meters, so nothing more is read.\n".to_owned();
    }
    let mut page = String::new();
    for reading in readings {
        // Writing to a string cannot fail.
        let _ = station(&mut page, reading, units, cards.get(reading.station.as_str()).copied());
    }
    page += &meters::text(meters, units == Units::Feet);
    page
}

fn station(page: &mut String, r: &StationReading, units: Units, card: Option<&str>) -> std::fmt::Result {
    if !r.on {
        return writeln!(page, "{}\n  off\n", r.station);
    }
    let feet = units == Units::Feet;
    let style = units.style();
    let length = |m: f64| Length::metres(m).show(style);
    let percent = |share: f64| format!("{:.0} %", share * 100.0);
    writeln!(page, "{}", r.station)?;
    if let Some(picture) = card {
        writeln!(page, "  no picture         “{picture}” could not be read; these are the numbers of a test card")?;
    }
    writeln!(page, "  lights             {}", if r.targets.is_empty() { "nothing".to_owned() } else { r.onto() })?;
    writeln!(page, "  light out          {} lm", band(r.lumens))?;
    let Some(throw_m) = r.throw_m else {
        writeln!(page, "  lens to target     –, nothing of its light lands there")?;
        return lands_on(page, &r.beyond, feet, percent).and_then(|()| writeln!(page));
    };
    writeln!(page, "  lens to target     {}", length(throw_m))?;
    let (p, f) = (&r.picture, &r.figure);
    writeln!(page, "  picture            {} wide, {} high", length(p.width_m), length(p.height_m))?;
    if r.misses > 0.005 && r.misses < 1.0 {
        writeln!(page, "  part on target     {} wide, {} high", length(r.lit.width_m), length(r.lit.height_m))?;
    }
    writeln!(
        page,
        "  figure             {} wide, {} high, from {} to {} above ground",
        length(f.width_m),
        length(f.height_m),
        length(f.bottom_m),
        length(f.top_m)
    )?;
    for (name, corner) in ["left upper", "right upper", "left lower", "right lower"].iter().zip(&r.corners) {
        if let Some([x, y, z]) = corner {
            writeln!(page, "  corner {name:<12}x {}  y {}  z {}", length(*x), length(*y), length(*z))?;
        }
    }
    writeln!(page, "  mean on the target {}", lit(r.mean_on_target_lx, feet))?;
    phone::text(page, &r.phone_check, feet)?;
    writeln!(page, "  on the figure      {}", lit(r.figure_lx, feet))?;
    for one in r.targets.iter().filter(|_| r.targets.len() > 1) {
        target(page, one, &length, &percent, feet)?;
    }
    let to_a = |per_m: f64| if feet { Style::Feet.metres(per_m) } else { per_m };
    let unit = if feet { "foot" } else { "metre" };
    let worst = match (r.pixels_per_m - r.least_pixels_per_m) / r.pixels_per_m.max(1e-9) {
        lost if lost > 0.02 => format!(", {:.0} where they are coarsest", to_a(r.least_pixels_per_m)),
        _ => String::new(),
    };
    writeln!(page, "  pixels             {:.0} to the {unit} in the middle{worst}", to_a(r.pixels_per_m))?;
    if let Some(lost) = r.keystone {
        let (pixels, light) = (percent(lost.pixels), percent(lost.light));
        writeln!(page, "  keystone           leaves {pixels} of the pixels black, and loses {light} of white's light")?;
    }
    writeln!(
        page,
        "  misses it          {} of the raster, {} of the figure",
        percent(r.misses),
        percent(r.figure_misses)
    )?;
    if r.passes > 0.005 {
        writeln!(page, "  passes through     {}", percent(r.passes))?;
    }
    lands_on(page, &r.beyond, feet, percent)?;
    if !r.thrown_back.is_empty() {
        // Of so little a whole per cent may be all.
        let percent = |share: f64| format!("{} %", two_digits(share * 100.0));
        writeln!(page, "  reflected          {} of the raster, by the first glass it meets", percent(glass(r)))?;
        lands_on(page, &r.thrown_back, feet, percent)?;
    }
    if !r.reads_right {
        writeln!(page, "  turned round       the picture is mirrored as most spots see it; set or unset “mirrored”")?;
    }
    for s in &r.spots {
        if s.in_sight < OUT_OF_SIGHT {
            writeln!(page, "  from {:<13} out of sight", s.spot)?;
            continue;
        }
        let beside = match s.figure_to_ground {
            Some(ratio) => format!("ground beside it {}, {} : 1", band(s.ground), two_digits(ratio.typical)),
            None => "nothing beside it".to_owned(),
        };
        if let Some(sight) = &s.sight {
            writeln!(page, "  from {:<13} {}: {}", s.spot, sight.phrase(), sight.reason)?;
        }
        let figure = format!("{}, {} cd/m², peak {}", lit(r.figure_lx, feet), band(s.mean), band(s.peak));
        writeln!(page, "    figure           {figure}, {beside}")?;
    }
    writeln!(page)
}

/// One of several targets.
fn target(
    page: &mut String,
    one: &OnTarget,
    length: &dyn Fn(f64) -> String,
    percent: &dyn Fn(f64) -> String,
    feet: bool,
) -> std::fmt::Result {
    let name = format!("on {}", one.target);
    let shares = [percent(one.share), percent(one.figure_share)];
    writeln!(page, "  {name:<19}{} of the raster, {} of the figure", shares[0], shares[1])?;
    writeln!(page, "    mean on it       {}", lit(one.mean_on_target_lx, feet))?;
    let f = &one.figure;
    writeln!(
        page,
        "    figure           {} wide, {} high, from {} to {} above ground",
        length(f.width_m),
        length(f.height_m),
        length(f.bottom_m),
        length(f.top_m)
    )?;
    for spot in one.spots.iter().filter(|spot| spot.in_sight >= OUT_OF_SIGHT) {
        if let Some(sight) = &spot.sight {
            writeln!(page, "    from {:<12}{}, {} cd/m²", spot.spot, sight.phrase(), band(spot.mean))?;
        }
    }
    Ok(())
}

/// Less of a figure than this is not in sight.
const OUT_OF_SIGHT: f64 = 0.02;
/// Less of the light than this on a thing is not worth a line, unless it lights that thing to at least so many lx.
const LEAST_SHARE: f64 = 0.005;
const LEAST_LX: f64 = 0.01;

/// The four that get most of a list.
fn lands_on(page: &mut String, list: &[Beyond], feet: bool, percent: impl Fn(f64) -> String) -> std::fmt::Result {
    for b in list.iter().filter(|b| b.share >= LEAST_SHARE || b.peak_lx >= LEAST_LX).take(4) {
        match b.owner {
            Some(_) => write!(page, "    lands on         {}: {} of the raster", b.thing, percent(b.share))?,
            None => write!(page, "    leaves the yard  {} of the raster", percent(b.share))?,
        }
        if b.peak_lx > 0.0 {
            let lx = illuminance(b.peak_lx, b.peak_lx, b.peak_lx, feet).join(", ");
            write!(page, ", up to {lx}")?;
        }
        if let Some(luminance) = b.peak_luminance {
            write!(page, ", {} cd/m²", two_digits(luminance))?;
        }
        writeln!(page)?;
    }
    Ok(())
}

/// All that glass throws back, as a share of the raster.
fn glass(reading: &StationReading) -> f64 {
    reading.thrown_back.iter().map(|b| b.share).sum()
}

fn lit(lx: Banded, feet: bool) -> String {
    illuminance(lx.low, lx.typical, lx.high, feet).join(", ")
}

fn band(value: Banded) -> String {
    with_band(value.low, value.typical, value.high, "").trim_end().to_owned()
}

pub(super) fn quoted(text: &str) -> String {
    format!("\"{}\"", text.replace('"', "\"\""))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::path::Path;

    fn read() -> Vec<StationReading> {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenes/one_window.ron");
        let stage = Stage::open(&file, Trust::default()).unwrap_or_else(|_| panic!("{} can be read", file.display()));
        let night = stage.night().unwrap_or_else(|_| panic!("it can be lit"));
        judge::read_all(&night, &stage.yard, &stage.catalogue)
    }

    /// The numbers of a line.
    fn row_of(line: &str) -> Vec<f64> {
        line.split_whitespace().filter_map(|word| word.parse().ok()).collect()
    }

    #[test]
    fn a_page_says_what_is_there_and_no_more() {
        let mut readings = read();
        let metric = text(&readings, &[], Units::Metric, &BTreeMap::new());
        assert!(metric.contains("  reflected          ") && !metric.contains(" fc"), "{metric}");
        assert!(metric.contains(" to the metre in the middle"), "{metric}");
        let feet = text(&readings, &[], Units::Feet, &BTreeMap::new());
        assert!(feet.contains(") fc\n") && feet.contains(" to the foot in the middle"), "{feet}");
        assert!(!feet.contains("metre") && feet.contains(" m², in fc × "), "{feet}");
        let row = |ending: &str| feet.lines().find(|line| line.contains(" | ") && line.ends_with(ending)).map(row_of);
        let (lx, fc) = (row(" lx").unwrap_or_default(), row(" fc").unwrap_or_default());
        assert_eq!((lx.len(), fc.len()), (9, 9), "{feet}");
        // Each to two digits.
        assert!(lx.iter().zip(&fc).all(|(lx, fc)| (lx / fc / 10.764 - 1.0).abs() < 0.11), "{lx:?} {fc:?}");
        for reading in &mut readings {
            reading.thrown_back.clear();
            reading.spots.iter_mut().for_each(|spot| spot.figure_to_ground = None);
        }
        let bare = text(&readings, &[], Units::Metric, &BTreeMap::new());
        assert!(bare.contains(", nothing beside it\n") && !bare.contains("  reflected") && !bare.contains(" : 1"));
    }

    #[test]
    fn every_line_of_the_table_has_all_columns() {
        let mut readings = read();
        readings.push(StationReading { targets: Vec::new(), ..readings[0].clone() });
        let two = [readings[0].targets[0].clone(), OnTarget { spots: Vec::new(), ..readings[0].targets[0].clone() }];
        readings.push(StationReading { targets: two.to_vec(), ..readings[0].clone() });
        readings[0].targets[0].spots[0].figure_to_ground = None;
        let table = table::csv(&readings);
        assert!(table.lines().count() > 2 && !table.contains("inf") && !table.contains("NaN"), "{table}");
        // No name of that yard holds a comma.
        let columns: Vec<usize> = table.lines().map(|line| line.split(',').count()).collect();
        assert!(columns.iter().all(|count| *count == columns[0]), "{columns:?}");
    }
}
