//! The power plan as a page for a terminal.

use super::report::{CablePower, Feed, PowerReport, StationPower, SupplyPower};
use crate::units::{Length, Style, two_digits};
use std::fmt::Write as _;

impl PowerReport {
    /// The page, lengths in this notation and beside it in the other.
    pub fn page(&self, style: Style) -> String {
        // Writing to a string cannot fail.
        let mut page = String::new();
        for supply in &self.supplies {
            let _ = writeln!(page, "{}", of_supply(supply));
            let lines = self.cables.iter().filter(|cable| cable.supply == supply.supply);
            for cable in lines {
                let _ = writeln!(page, "    {}", of_cable(cable, supply, style));
            }
        }
        for station in &self.stations {
            let _ = writeln!(page, "{}", of_station(station));
        }
        let energy = &self.energy;
        let running = &energy.running;
        let _ = writeln!(
            page,
            "all: {} W; {} kWh a night of {} h, {} kWh in {} nights",
            two_digits(energy.watts),
            two_digits(energy.kwh_night),
            two_digits(running.hours),
            two_digits(energy.kwh_season),
            running.nights
        );
        if let (Some(night), Some(season)) = (energy.cost_night, energy.cost_season) {
            let _ = writeln!(page, "costs {night:.2} a night, {season:.2} in all, by this yard's tariff");
        }
        for (grave, word) in [(true, "fix"), (false, "check")] {
            for problem in self.problems.iter().filter(|problem| problem.grave == grave) {
                let _ = writeln!(page, "{word:<6} {}", problem.says);
                let _ = writeln!(page, "       helps: {}", problem.helps);
            }
        }
        for note in &self.notes {
            let _ = writeln!(page, "note: {note}");
        }
        for caution in &self.cautions {
            let _ = writeln!(page, "caution: {}", caution.text());
        }
        page
    }
}

fn of_supply(supply: &SupplyPower) -> String {
    let mut line = format!("{} ({}, {} V, {}", supply.supply, supply.kind, supply.volts, supply.ip);
    line += if supply.outdoors { " outdoors)" } else { " indoors)" };
    line += &format!(": {} W, {} A", two_digits(supply.running_w), two_digits(supply.running_a));
    if let (Some(rated), Some(left)) = (supply.rated_w, supply.headroom_w) {
        line += &format!(" of {rated:.0} W; ");
        line += &if left >= 0.0 { format!("{left:.0} W left") } else { format!("{:.0} W too much", -left) };
    }
    line += &format!("; {} W while all start", two_digits(supply.starting_w));
    if let Some(lasts) = supply.lasts_h {
        line += &format!("; lasts {} h{}", two_digits(lasts), supply.frost());
    }
    if let Some(fuse) = supply.fuse_to_buy_a.filter(|fuse| supply.fuse_a != Some(*fuse)) {
        line += &format!("; fuse to buy {fuse} A");
    }
    line + &format!("; an overload is ended by {}", supply.trips)
}

/// Metres and feet side by side, the one that is read first.
fn length(m: f64, style: Style) -> String {
    // Upwards: a cable that is a little too short is no cable.
    let metres = Length::metres((m * 10.0 - 1e-6).ceil() / 10.0).show(Style::Metres);
    let feet = format!("{:.0} ft", (m / 0.3048 - 1e-6).ceil());
    match style {
        Style::Feet | Style::Inches | Style::FeetInches => format!("{feet} ({metres})"),
        _ => format!("{metres} ({feet})"),
    }
}

fn of_cable(cable: &CablePower, supply: &SupplyPower, style: Style) -> String {
    let mut line = format!("{} to {}: {} of {}", cable.cable, cable.to, length(cable.length_m, style), cable.gauge);
    line += &format!(", {} A", two_digits(cable.amps));
    if let Some(most) = cable.ampacity_a {
        line += &format!(" of {most} A");
    }
    line += &match (cable.drop_v, cable.drop_share) {
        (Some(drop), Some(share)) => {
            let usual = two_digits(cable.simple_drop_v);
            let drop = two_digits(drop);
            let usual = if usual == drop { String::new() } else { format!(" (usual figure {usual} V)") };
            format!("; {drop} V lost by its end{usual}, {} %", two_digits(100.0 * share))
        }
        _ => format!("; cannot hand over what is drawn (usual figure {} V lost)", two_digits(cable.simple_drop_v)),
    };
    if let Some(gauge) = &cable.gauge_to_buy {
        line += &format!("; buy {gauge}");
    }
    line += &cable.joined().map_or(String::new(), |joints| format!("; {joints}"));
    line + if cable.outdoors && supply.kind == Feed::Mains { "; mains outdoors" } else { "" }
}

fn of_station(station: &StationPower) -> String {
    let mut line = format!("{}: {} W", station.station, two_digits(station.watts));
    line += &format!(", {} W while it starts", two_digits(station.starting_w));
    line += &match (&station.supply, station.volts) {
        (Some(supply), Some(volts)) => format!(", {} V from {supply}", two_digits(volts)),
        (Some(supply), None) => format!(", from {supply}, which cannot hand it that"),
        (None, _) => ", fed by nothing in this yard".to_owned(),
    };
    line + &format!("; {} kWh in all", two_digits(station.kwh_season))
}
