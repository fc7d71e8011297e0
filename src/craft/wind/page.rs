//! The wind's part of a sheet, as text.

use super::{Beaufort, ClothWind, MountWind, PLUMB_DEG, STILL_AIR_M_S, StandWind, WindReport, safe_side};
use crate::{
    craft::cautions::Caution,
    units::{Length, Style, force, mass, two_digits, wind},
};
use std::fmt::Write as _;

impl WindReport {
    /// A page of text, lengths in this style.
    pub fn page(&self, style: Style) -> String {
        let feet = style.is_feet();
        let mut page = format!(
            "In a gust of {}: {} Pa, as comes in a mean wind of Beaufort {}, {}\n",
            wind(self.gust_m_s, feet),
            two_digits(self.pressure_pa),
            self.mean.0,
            self.mean.name()
        );
        // Writing to a string cannot fail.
        for cloth in &self.cloths {
            let _ = writeln!(page, "\n{}", cloth.cloth);
            for line in cloth.lines(feet, self.rules.tie_bears_n) {
                let _ = writeln!(page, "  {line}");
            }
        }
        for one in &self.standing {
            let _ = writeln!(page, "\n{}", one.name);
            for line in one.lines(style) {
                let _ = writeln!(page, "  {line}");
            }
        }
        for mount in &self.mounted {
            let _ = writeln!(page, "\n{}\n  {}", mount.station, mount.line(style));
        }
        let _ = writeln!(page, "\n{}", Caution::RulesOfThumb.text());
        page
    }
}

/// A cloth that hangs farther from plumb flies, degrees.
const FLIES_DEG: f64 = 45.0;

/// When something comes down, in a sentence's end.
fn down(m_s: f64, feet: bool) -> String {
    let m_s = safe_side(m_s);
    let step = Beaufort::of_gust(m_s);
    format!(
        "gusts of {} are forecast (a mean wind of Beaufort {}, {}: {})",
        wind(m_s, feet),
        step.0,
        step.name(),
        step.sign()
    )
}

impl ClothWind {
    /// What is done about it on the day, and when it comes down.
    pub fn in_short(&self, feet: bool) -> String {
        format!(
            "{} ties, and guys at 45° to {} stakes; take it down when {}",
            self.ties,
            self.stakes,
            down(self.down_m_s, feet)
        )
    }

    /// What there is to say of it, a sentence a line.
    pub fn lines(&self, feet: bool, tie_bears_n: f64) -> Vec<String> {
        let [low, typical, high] = self.load_n;
        let ties = match self.ties_needed {
            Some(needed) if needed > self.ties => format!(": tie it in at least {needed} places"),
            Some(_) => String::new(),
            None => ": too much for any number of ties; take it down before".to_owned(),
        };
        let rules = if high - low > 0.05 * typical {
            format!(" (rules differ: {} to {})", force(low, feet), force(high, feet))
        } else {
            String::new()
        };
        let mut lines = vec![
            format!(
                "pulls with {} in all{rules}, its weave {} % closed",
                force(typical, feet),
                two_digits(100.0 * self.solidity[1]),
            ),
            format!(
                "up to {} at the worst of {} ties, of which one is taken to hold {}{ties}",
                force(self.tie_n, feet),
                self.ties,
                force(tie_bears_n, feet),
            ),
            format!(
                "a line that carries it alone is pulled with {}; guys at 45° want {} stakes of 30 cm in firm lawn, three \
                 times as many in wet or loose earth",
                force(self.line_n, feet),
                self.stakes
            ),
            format!("take it down when {}", down(self.down_m_s, feet)),
        ];
        let breeze = wind(STILL_AIR_M_S, feet);
        lines.push(if self.swing_deg > FLIES_DEG {
            format!("free at its foot it flies in a breeze of {breeze}, more than {FLIES_DEG}° off plumb")
        } else {
            format!("free at its foot it hangs {}° off plumb in a breeze of {breeze}", two_digits(self.swing_deg))
        });
        if self.swing_deg > PLUMB_DEG {
            let per = if feet { Style::Feet.metres(1.0) } else { 1.0 };
            lines.push(format!(
                "for less than {PLUMB_DEG}° put {} into each {} of its hem, or tie its lower corners",
                mass(self.hem_needed_kg_m * per, feet),
                if feet { "foot" } else { "metre" },
            ));
        }
        lines
    }
}

impl StandWind {
    /// What there is to say of it, a sentence a line.
    pub fn lines(&self, style: Style) -> Vec<String> {
        let feet = style.is_feet();
        let lever = Length::metres((self.lever_m * 100.0).round() / 100.0).show(style);
        let what = if self.is_station { "stand and projector are" } else { "it is" };
        let mut lines = vec![format!(
            "the gust pulls with {} at {lever} above its foot; it holds {} times against that; {what} taken to weigh {}",
            force(self.load_n, feet),
            if self.holds.is_finite() { two_digits(self.holds) } else { "any number of".to_owned() },
            mass(self.own_kg, feet),
        )];
        if self.holds < self.should {
            lines.push(format!(
                "put {} on its foot, which has {}, or make up the rest by guys and stakes",
                mass(self.ballast_needed_kg, feet),
                mass(self.ballast_kg, feet),
            ));
        }
        lines.push(format!("take it in when {}", down(self.down_m_s, feet)));
        lines
    }
}

impl MountWind {
    /// What there is to say of it.
    pub fn line(&self, style: Style) -> String {
        let feet = style.is_feet();
        let second = match (self.above_heads, self.second_tie) {
            (false, _) => "no higher than a door, so that one mount is enough".to_owned(),
            (true, true) => {
                format!("above heads: see that its second tie is rated for {}", force(self.second_tie_n, feet))
            }
            (true, false) => format!(
                "above heads: give it a second tie of its own, rated for {}, to something other than its mount",
                force(self.second_tie_n, feet)
            ),
        };
        format!("pulls on its mount with {}; {second}", force(self.pull_n, feet))
    }
}
