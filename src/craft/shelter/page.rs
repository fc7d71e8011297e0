//! What is known of a box as a page of text.

use super::{ShelterReport, Span, dew};
use crate::units::{Style, air_flow, temperature, two_digits};
use std::fmt::Write as _;

impl ShelterReport {
    /// As a page of text; °F stands beside °C where lengths are read in feet.
    pub fn page(&self, style: Style) -> String {
        let feet = matches!(style, Style::Feet | Style::Inches | Style::FeetInches);
        let degrees = |c: f64| temperature(c, feet);
        let span = |s: Span| format!("{} ({} to {})", degrees(s.typical), degrees(s.low), degrees(s.high));
        let mut page = format!("Weather box of {}\n", self.station);
        let mut line = |what: &str, says: String| {
            // Writing to a string cannot fail.
            let _ = writeln!(page, "  {what:<26}{says}");
        };
        line("heat inside", format!("{} W", two_digits(self.heat_w)));
        line("out by the walls", format!("{} W a kelvin", two_digits(self.walls_w_per_k.typical)));
        line("air through it", air_flow(self.flow_m3_h.typical));
        if let Some(left) = self.fan_left {
            line("left of the fan", format!("{:.0} %", 100.0 * left.typical));
        }
        line("air wanted", air_flow(self.wanted.flow_m3_h));
        if let Some(rating) = self.wanted.rating_m3_h {
            line("fan wanted", format!("{} with nothing in its way", air_flow(rating)));
        }
        line("inside, warmest hour", span(self.warmest_c));
        if let Some(stopped) = self.stopped_c {
            line("inside, fan stopped", span(stopped));
        }
        line("inside, coldest night", span(self.coldest_c));
        line("running in the sun", span(self.sunny_c));
        line("closed in the sun", span(self.closed_c));
        line("projector may run in", format!("{} to {}", degrees(self.runs_c.0), degrees(self.runs_c.1)));
        line(&format!("{}, cold night", dew::name(self.dew.point_c)), degrees(self.dew.point_c));
        if let Some(window) = self.window {
            line("window lets through", two_digits(window.passes));
        }
        for verdict in &self.verdicts {
            let _ = writeln!(page, "{:<6} {}", verdict.grade.name(), verdict.says);
            if !verdict.helps.is_empty() {
                let _ = writeln!(page, "       helps: {}", verdict.helps);
            }
        }
        page
    }
}
