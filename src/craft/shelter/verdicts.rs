//! What is to be said of a box: each matter one sentence with its number, its limit and what helps.

use super::{Grade, SKY, ShelterReport, Verdict, limit};
use crate::{
    scene::{BoxColour, Catalogue, ProjectorClass, Shelter, Station, Units, Yard, limits},
    units::{Length, air_flow, rise, temperature, two_digits},
};

/// Room wanted on every side of a projector, m: common practice, no source.
const ROOM_M: f64 = 0.03;

/// What verdicts are drawn from.
struct Desk<'a> {
    yard: &'a Yard,
    catalogue: &'a Catalogue,
    station: &'a Station,
    class: &'a ProjectorClass,
    shelter: &'a Shelter,
    report: &'a ShelterReport,
}

/// All of them, the gravest first.
pub(super) fn all(
    yard: &Yard,
    catalogue: &Catalogue,
    station: &Station,
    class: &ProjectorClass,
    shelter: &Shelter,
    report: &ShelterReport,
) -> Vec<Verdict> {
    let desk = Desk { yard, catalogue, station, class, shelter, report };
    let mut list = vec![desk.hot(), desk.sunny(), desk.cold(), desk.start(), desk.air(), desk.fits()];
    list.extend(desk.stopped());
    list.extend(desk.window());
    list.extend([desk.rain(), desk.insects(), desk.cable(), desk.dew()]);
    list.sort_by_key(|verdict| std::cmp::Reverse(verdict.grade));
    list
}

impl Desk<'_> {
    fn feet(&self) -> bool {
        self.yard.units == Units::Feet
    }

    fn degrees(&self, celsius: f64) -> String {
        temperature(celsius, self.feet())
    }

    fn length(&self, m: f64) -> String {
        Length::metres((m * 1000.0).round() / 1000.0).show(self.yard.units.style())
    }

    fn limit(&self, name: &str) -> f64 {
        limit(self.yard, self.catalogue, name)
    }

    /// How warm it gets, with the range.
    fn about(&self, span: super::Span) -> String {
        format!("about {} ({} to {})", self.degrees(span.typical), self.degrees(span.low), self.degrees(span.high))
    }

    fn hot(&self) -> Verdict {
        let (bears, span) = (self.report.runs_c.1, self.report.warmest_c);
        let grade = match span {
            _ if span.typical > bears => Grade::Fix,
            _ if span.typical > bears - self.limit(limits::BOX_ROOM) || span.high > bears => Grade::Check,
            _ => Grade::Fine,
        };
        let says = format!(
            "Running at the warmest hour, {} outside, it is {} inside; the projector may run in up to {}",
            self.degrees(self.report.outdoors_c.1),
            self.about(span),
            self.degrees(bears)
        );
        Verdict::new(grade, says, self.more_air())
    }

    /// Fans stop, and nobody hears it.
    fn stopped(&self) -> Option<Verdict> {
        let (bears, span) = (self.report.runs_c.1, self.report.stopped_c?);
        let grade = if span.typical > bears { Grade::Check } else { Grade::Fine };
        let says = format!(
            "Should its fan stop at the warmest hour, it is {} inside; the projector may run in up to {}",
            self.about(span),
            self.degrees(bears)
        );
        let helps = format!(
            "a thermal cut-out in the box that ends its power at {}, and a look at the fan each week",
            self.degrees(bears)
        );
        Some(Verdict::new(grade, says, helps))
    }

    fn more_air(&self) -> String {
        let wanted = &self.report.wanted;
        let by = format!(
            "{} through the box keep the rise at {}",
            air_flow(wanted.flow_m3_h),
            rise(wanted.rise_k, self.feet())
        );
        match wanted.rating_m3_h {
            Some(rating) => {
                format!("{by}: a fan rated {} with nothing in its way, or larger openings", air_flow(rating))
            }
            None => format!("{by}: larger openings first, as these let no small fan bring that"),
        }
    }

    fn sunny(&self) -> Verdict {
        let (running, closed) = (self.report.sunny_c, self.report.closed_c);
        let bears = self.report.runs_c.1;
        let grade = if running.typical > bears { Grade::Check } else { Grade::Fine };
        let says = format!(
            "In the sun by day it is {} inside while it runs and {} while it stands closed; the projector may run in up to {}",
            self.about(running),
            self.about(closed),
            self.degrees(bears)
        );
        let helps = match self.shelter.colour {
            BoxColour::White => "run it after sunset only, or shade the box by a board a hand's breadth above it",
            _ => "run it after sunset only, paint the box white, or shade it by a board a hand's breadth above it",
        };
        Verdict::new(grade, says, helps)
    }

    fn cold(&self) -> Verdict {
        let (bears, span) = (self.report.runs_c.0, self.report.coldest_c);
        let grade = if span.low < bears { Grade::Check } else { Grade::Fine };
        let says = format!(
            "Running on the coldest night, {} outside, it is {} inside; the projector may run in from {} on",
            self.degrees(self.report.outdoors_c.0),
            self.about(span),
            self.degrees(bears)
        );
        Verdict::new(
            grade,
            says,
            "a slower fan or one on a thermostat, thicker walls, or a smaller box for cold nights",
        )
    }

    fn start(&self) -> Verdict {
        let bears = self.report.runs_c.0;
        let cold = self.report.outdoors_c.0;
        let grade = if cold < bears { Grade::Check } else { Grade::Fine };
        let says = format!(
            "At a cold start on such a night it has {} all through; the projector may run in from {} on",
            self.degrees(cold),
            self.degrees(bears)
        );
        let helps = "leave it on standby with the fan off, warm the box by a few watts, or carry the projector in and start it warm; \
                     LEDs and mirror chips stand a cold start better than lamps and liquid crystals";
        Verdict::new(grade, says, helps)
    }

    fn air(&self) -> Verdict {
        let (flow, wanted) = (self.report.flow_m3_h, &self.report.wanted);
        let moved = air_flow(flow.typical);
        let needs = format!(
            "{} would keep the rise at {} without the walls",
            air_flow(wanted.flow_m3_h),
            rise(wanted.rise_k, self.feet())
        );
        let enough = flow.typical >= wanted.flow_m3_h
            || self.report.warmest_c.high < self.report.runs_c.1 - self.limit(limits::BOX_ROOM);
        let grade = if enough { Grade::Fine } else { Grade::Check };
        let says = match (&self.shelter.fan, self.report.fan_left) {
            (Some(fan), Some(left)) => format!(
                "Its openings leave about {:.0} % of the fan's {}, so that {moved} go through; {needs}",
                100.0 * left.typical,
                air_flow(fan.flow_m3_h.0)
            ),
            _ if flow.typical <= 0.0 => {
                format!("No air goes through: it has no fan, and not both an inlet and an outlet; {needs}")
            }
            _ => format!("Without a fan {moved} rise through it by themselves; {needs}"),
        };
        Verdict::new(grade, says, self.more_air())
    }

    fn fits(&self) -> Verdict {
        let needs = self.station.body(self.class).map(|m| m + 2.0 * ROOM_M);
        let has = [&self.shelter.width, &self.shelter.height, &self.shelter.depth].map(|size| size.0.m);
        let short = needs.iter().zip(has).any(|(needs, has)| *needs > has + 1e-9);
        let grade = if short { Grade::Check } else { Grade::Fine };
        let by = |[w, h, d]: [f64; 3]| format!("{} × {} × {}", self.length(w), self.length(h), self.length(d));
        let says = format!(
            "Inside it is {} (width, height, depth); the projector with room around it takes {}",
            by(has),
            by(needs)
        );
        Verdict::new(grade, says, "a larger box: air must get round the projector, and hands to its focus")
    }

    fn window(&self) -> Vec<Verdict> {
        let (Some(loss), pane) = (self.report.window, &self.shelter.window) else { return Vec::new() };
        let counted = loss.not_reckoned() <= self.limit(limits::BOX_WINDOW);
        let says = format!(
            "Its window lets {} of the light through when clean, {} at the edge of the picture; the station is set to {}",
            two_digits(loss.passes),
            two_digits(loss.least),
            two_digits(loss.reckoned)
        );
        let helps = format!("set box_window to {}", two_digits(loss.passes));
        let first = Verdict::new(if counted { Grade::Fine } else { Grade::Check }, says, helps);
        let large = pane.width.0.m >= loss.needs_width_m && pane.height.0.m >= loss.needs_height_m;
        let says = format!(
            "Its window is {} × {}; the picture wants {} × {} of it, 5 cm before the lens",
            self.length(pane.width.0.m),
            self.length(pane.height.0.m),
            self.length(loss.needs_width_m),
            self.length(loss.needs_height_m)
        );
        let second = Verdict::new(
            if large { Grade::Fine } else { Grade::Check },
            says,
            "a larger window, or the lens close behind it",
        );
        vec![first, second]
    }

    fn rain(&self) -> Verdict {
        if self.shelter.openings_down {
            return Verdict::new(Grade::Fine, "Its openings lie under hoods".to_owned(), "");
        }
        let says = "Rain comes in by its openings: no hood lies over each".to_owned();
        Verdict::new(
            Grade::Fix,
            says,
            "a hood over each that reaches lower than the opening, and leave the inlet low and the outlet high: air rises from \
             one to the other",
        )
    }

    fn insects(&self) -> Verdict {
        if self.shelter.mesh {
            let says =
                "Mesh keeps insects out; spiders still spin before the window, which is lit and warm: wipe it weekly"
                    .to_owned();
            return Verdict::new(Grade::Fine, says, "");
        }
        let says = "Nothing keeps insects out: light and warmth draw moths, and webs cross the beam before the lens"
            .to_owned();
        Verdict::new(Grade::Check, says, "mesh of 1.5 mm or finer over both openings, which takes some of the air")
    }

    fn cable(&self) -> Verdict {
        if self.shelter.drip_loop {
            return Verdict::new(Grade::Fine, "Its cable comes in at the bottom with a drip loop".to_owned(), "");
        }
        let says = "Water runs in along its cable, which has no drip loop".to_owned();
        Verdict::new(Grade::Fix, says, "bring the cable in at the bottom, with a loop that hangs lower than the hole")
    }

    fn dew(&self) -> Verdict {
        let dew = &self.report.dew;
        let mut says = format!(
            "On such a night a box that is off gets down to {}, {} under the {} of {}; once it runs its coldest inner face is at {}",
            self.degrees(dew.off_c),
            rise(dew.point_c - dew.off_c, self.feet()),
            super::dew::name(dew.point_c),
            self.degrees(dew.point_c),
            self.degrees(dew.running_c)
        );
        if dew.trapped_g > 0.0 {
            says += &format!(
                ", and {} g of water that the evening's air left in the closed box lie on its walls",
                two_digits(dew.trapped_g)
            );
        }
        let wet = dew.point_c > dew.off_c;
        let grade = match (wet, dew.running_c > dew.point_c) {
            (true, false) => Grade::Check,
            _ if dew.trapped_g > 0.5 => Grade::Check,
            _ => Grade::Fine,
        };
        let helps = format!(
            "start it half an hour before the first visitors, or leave {} W on in the box by day; {} K colder than the air is what a clear sky does",
            two_digits(dew.dry_w.max(0.1)),
            SKY
        );
        Verdict::new(grade, says, helps)
    }
}
