//! What meters read, as text and as CSV.

use super::lit;
use gauzelight::{
    judge::MeterReading,
    units::{border::sent_light, two_digits},
};
use std::fmt::Write as _;

/// As a page of text, after the stations.
pub fn text(meters: &[MeterReading], feet: bool) -> String {
    let mut page = String::new();
    for meter in meters {
        // Writing to a string cannot fail.
        let _ = one(&mut page, meter, feet);
    }
    page
}

fn one(page: &mut String, m: &MeterReading, feet: bool) -> std::fmt::Result {
    let kind = if m.neighbour_window { "meter in a neighbour’s window" } else { "meter" };
    writeln!(page, "{}, {kind}", m.meter)?;
    if m.lx.typical <= 0.0 {
        return writeln!(page, "  on it              no light\n");
    }
    writeln!(page, "  on it              {}", lit(m.lx, feet))?;
    writeln!(
        page,
        "  by stations        {} % of it, {}",
        two_digits(100.0 * m.stations_share),
        lit(m.stations_lx, feet)
    )?;
    for share in &m.sources {
        writeln!(page, "    by               {}: {}", share.source, lit(share.lx, feet))?;
    }
    writeln!(page)
}

/// As a table, a line for each meter and source.
pub fn csv(meters: &[MeterReading]) -> String {
    let mut table = String::from(
        "meter,neighbour_window,lx_low,lx,lx_high,stations_lx_low,stations_lx,stations_lx_high,stations_share,source,\
         source_is_station,source_lx_low,source_lx,source_lx_high\n",
    );
    let quoted = |text: &str| format!("\"{}\"", text.replace('"', "\"\""));
    let three =
        |b: gauzelight::judge::Banded| [b.low, b.typical, b.high].map(|value| sent_light(value).to_string()).join(",");
    for m in meters {
        let meter = format!(
            "{},{},{},{},{}",
            quoted(&m.meter),
            m.neighbour_window,
            three(m.lx),
            three(m.stations_lx),
            sent_light(m.stations_share)
        );
        if m.sources.is_empty() {
            let _ = writeln!(table, "{meter}{}", ",".repeat(5));
        }
        for share in &m.sources {
            let _ = writeln!(table, "{meter},{},{},{}", quoted(&share.source), share.is_station, three(share.lx));
        }
    }
    table
}
