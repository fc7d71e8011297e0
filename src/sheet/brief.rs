//! What a yard's plans have to say on its pages: box, power, wind, what to do when, what to be careful of.

use super::{Datum, Digits, Notes, Part};
use crate::{
    craft::{
        cautions::{self, Caution},
        money::Running,
        power::{CablePower, PowerReport},
        running::{self, Moment, Task},
        shelter::{self, Grade},
        wind::WindReport,
    },
    judge::{HiddenReading, read_hidden},
    light::Night,
    scene::{Catalogue, Point, Station, Yard},
    units::{Length, air_flow, two_digits},
};

use glam::DVec3;

/// What is seen of a box or projector by day is worth a line from this share on.
const SEEN: f64 = 0.05;
/// Cautions that are told where the ladder is; all of them stand in full on the cover.
const ON_THE_LADDER: [Caution; 4] = [Caution::OverheadLines, Caution::Ladder, Caution::Roof, Caution::Falls];

/// The notes of the cover, and those of each station in the yard's order: what is done again and again stands on the cover once, with
/// the numbers of the stations that it is for.
pub fn brief(yard: &Yard, catalogue: &Catalogue, night: &Night) -> (Notes, Vec<Notes>) {
    let all = Plans::of(yard, catalogue, night);
    // Nothing is to be done about what is off or put away.
    let works = |station: &Station| station.on && !yard.is_hidden(&station.name.0);
    let pages = yard.stations.iter().map(|station| match works(station) {
        true => all.station(station, None, beware),
        false => Notes::default(),
    });
    let tasks = (1..).zip(&yard.stations).filter(|(_, station)| works(station));
    let tasks = tasks.map(|(number, station)| (number, running::tasks(yard, catalogue, station)));
    (all.cover(&tasks.collect::<Vec<_>>()), pages.collect())
}

/// The notes of each station in the yard's order, with nothing left to a cover.
pub fn brief_in_full(yard: &Yard, catalogue: &Catalogue, night: &Night) -> Vec<Notes> {
    let all = Plans::of(yard, catalogue, night);
    let full = |cautions: &[Caution], part: Part| {
        // Each once, in the first part that it belongs to.
        let here = cautions.iter().filter(|caution| caution.parts().first() == Some(&part));
        here.map(|caution| caution.text().to_owned()).collect()
    };
    let tasks = |station| running::tasks(yard, catalogue, station);
    yard.stations.iter().map(|station| all.station(station, Some(&tasks(station)), full)).collect()
}

struct Plans<'a> {
    yard: &'a Yard,
    catalogue: &'a Catalogue,
    power: PowerReport,
    wind: WindReport,
    hidden: Vec<HiddenReading>,
}

/// Each task once, in order, with the numbers of the stations before it where it is not for all.
fn gathered(tasks: &[(usize, Vec<Task>)]) -> Vec<Task> {
    let mut each: Vec<(&Task, Vec<usize>)> = Vec::new();
    for (number, list) in tasks {
        for task in list {
            match each.iter_mut().find(|(known, _)| *known == task) {
                Some((_, numbers)) => numbers.push(*number),
                None => each.push((task, vec![*number])),
            }
        }
    }
    // What most have to do comes first.
    each.sort_by_key(|(_, numbers)| std::cmp::Reverse(numbers.len()));
    let told = |(task, numbers): (&Task, Vec<usize>)| {
        let list: Vec<String> = numbers.iter().map(usize::to_string).collect();
        let whose = if numbers.len() == tasks.len() { "All".to_owned() } else { list.join(", ") };
        Task { text: format!("{whose}: {}", task.text), ..task.clone() }
    };
    each.into_iter().map(told).collect()
}

/// Adds the tasks of one part, by their moments.
fn add_tasks<'t>(notes: &mut Notes, part: Part, tasks: impl Iterator<Item = &'t Task> + Clone, whose: &str) {
    for moment in Moment::ALL.into_iter().filter(|moment| part_of(*moment) == part) {
        let here = tasks.clone().filter(|task| task.when == moment);
        let lines = here.map(|task| match &task.caution {
            Some(caution) => format!("{}; caution: {caution}", task.text),
            None => task.text.clone(),
        });
        notes.add(part, &format!("{}{whose}", moment.name()), lines.collect());
    }
}

impl<'a> Plans<'a> {
    fn of(yard: &'a Yard, catalogue: &'a Catalogue, night: &Night) -> Self {
        let power = PowerReport::of(yard, catalogue, Running::of(yard, 1));
        let (wind, hidden) = (WindReport::of(yard, catalogue), read_hidden(night, yard, catalogue));
        Self { yard, catalogue, power, wind, hidden }
    }

    fn cover(&self, tasks: &[(usize, Vec<Task>)]) -> Notes {
        let mut notes = Notes::default();
        let supplies = self.power.supplies.iter().map(|supply| {
            let fuse = supply.fuse_a.map_or(String::new(), |amps| format!(", fuse {amps} A"));
            let (watts, amps) = (two_digits(supply.running_w), two_digits(supply.running_a));
            let at = self.yard.supplies.iter().find(|one| one.name.0 == supply.supply).map(|one| self.corner(&one.at));
            let at = at.map_or(String::new(), |at| format!("; at {at}"));
            let lasts = supply.lasts_h;
            let lasts = lasts.map_or(String::new(), |h| format!("; lasts {} h{}", two_digits(h), supply.frost()));
            format!("{} ({}, {}{fuse}): {watts} W, {amps} A{lasts}{at}", supply.supply, supply.kind, supply.ip)
        });
        notes.add(Part::Day, "Supplies", supplies.collect());
        notes.add(
            Part::Day,
            "Put right before it is switched on",
            self.power.problems.iter().map(|p| format!("{}. What helps: {}", p.says, p.helps)).collect(),
        );
        let cables = self.power.cables.iter().map(|cable| {
            let (to, way) = (&cable.to, self.way(cable));
            format!("“{}” to {to}{way}", cable.cable)
        });
        notes.add(Part::Day, "Ways of the cables", cables.collect());
        let heat = self.by_station(|station| self.shelter(station));
        notes.add(Part::Day, "Heat and dew in boxes, by the numbers of the stations", heat);
        let cloths = self.wind.cloths.iter().map(|cloth| {
            let lines = cloth.lines(self.yard.units.style().is_feet(), self.wind.rules.tie_bears_n);
            format!("{}: {}", cloth.cloth, lines.join("; "))
        });
        notes.add(Part::Day, "Cloths in the wind", cloths.collect());
        notes.add(Part::Day, "Seen by day", self.by_station(|station| self.seen(station)));
        notes.add(Part::Day, "Open in the power plan", self.power.notes.clone());
        let forms = self.wind.standing.iter().filter(|stand| !stand.is_station);
        let forms = forms.map(|stand| {
            let lines = stand.lines(self.yard.units.style());
            format!("{}: {}", stand.name, lines.join("; "))
        });
        notes.add(Part::Day, "Forms in the wind", forms.collect());
        let cautions = cautions::of_yard(self.yard, self.catalogue);
        let told = gathered(tasks);
        for part in Part::ALL {
            add_tasks(&mut notes, part, told.iter(), ", by the numbers of the stations");
            // Each in full once, in the first part that it belongs to.
            let here = cautions.iter().filter(|caution| caution.parts().first() == Some(&part));
            notes.add(part, "Be careful", here.map(|caution| caution.titled()).collect());
        }
        let energy = &self.power.energy;
        let cost = energy.cost_night.map_or(String::new(), |cost| format!(", {cost:.2} in your money"));
        let line =
            format!("all running {} W: {} kWh a night{cost}", two_digits(energy.watts), two_digits(energy.kwh_night));
        notes.add(Part::EachEvening, "Electricity", vec![line]);
        notes
    }

    /// Of one station: in full, or what its page needs beside the cover.
    fn station(&self, station: &Station, tasks: Option<&[Task]>, beware: fn(&[Caution], Part) -> Vec<String>) -> Notes {
        let in_full = tasks.is_some();
        let mut notes = Notes::default();
        notes.add(Part::Day, "Cable", self.cable(station, in_full));
        notes.add(Part::Day, "Wind", self.wind(station, in_full));
        if in_full {
            notes.add(Part::Day, "Heat and dew in its box", self.shelter(station));
            notes.add(Part::Day, "Seen by day", self.seen(station));
        }
        let cautions = cautions::of_station(self.yard, self.catalogue, station);
        for part in Part::ALL {
            add_tasks(&mut notes, part, tasks.unwrap_or_default().iter(), "");
            notes.add(part, "Be careful", beware(&cautions, part));
        }
        notes
    }

    fn cable(&self, station: &Station, in_full: bool) -> Vec<String> {
        let name = &station.name.0;
        let mut lines = Vec::new();
        for cable in self.power.cables.iter().filter(|cable| cable.to == *name) {
            let length = Length::metres((cable.length_m * 10.0).ceil() / 10.0).show(self.yard.units.style());
            let drawn = self.yard.cables.iter().find(|one| one.name.0 == cable.cable);
            let from = drawn.map_or("", |one| one.from.0.as_str());
            let way = if in_full { self.way(cable) } else { String::new() };
            lines.push(format!(
                "“{}” from {from}: {length} of {}{way}; leave a drip loop below where it goes in",
                cable.cable, cable.gauge,
            ));
            lines.extend(cable.joined());
            lines.extend(cable.gauge_to_buy.as_ref().map(|gauge| format!("too thin: take {gauge}")));
        }
        if let Some(station) = self.power.stations.iter().find(|one| one.station == *name) {
            let fed = station
                .supply
                .as_ref()
                .map_or("fed by nothing that this yard has".to_owned(), |s| format!("fed by {s}"));
            lines.push(format!(
                "draws {} W, {} W while it starts; {fed}",
                two_digits(station.watts),
                two_digits(station.starting_w)
            ));
        }
        lines
    }

    /// What a cable carries and loses, and the corners of its way.
    fn way(&self, cable: &CablePower) -> String {
        let drawn = self.yard.cables.iter().find(|one| one.name.0 == cable.cable);
        let corners: Vec<String> = drawn.map_or(&[][..], |one| &one.via).iter().map(|at| self.corner(at)).collect();
        let way = if corners.is_empty() { String::new() } else { format!("; by way of {}", corners.join(", then ")) };
        let drop = cable
            .drop_share
            .filter(|share| *share >= 0.001)
            .map_or(String::new(), |share| format!(", {} % of the volts lost", two_digits(100.0 * share)));
        format!(", {} A{drop}{way}", two_digits(cable.amps))
    }

    /// A corner of a cable by the yard's lines.
    fn corner(&self, at: &Point) -> String {
        let at = DVec3::from([0, 1, 2].map(|axis| at.0[axis].m));
        let [along, height, out] = Datum::of(self.yard).coordinates(at).map(|m| Digits(self.yard.units).length(m));
        format!("{along} along, {out} out, {height} up")
    }

    fn shelter(&self, station: &Station) -> Vec<String> {
        let Some(report) = shelter::report(self.yard, self.catalogue, station) else { return Vec::new() };
        let mut lines = Vec::new();
        if let Some(rating) = report.wanted.rating_m3_h.filter(|_| report.fan_left.is_some()) {
            lines.push(format!("a fan of {} with nothing in its way", air_flow(rating)));
        }
        let open = report.verdicts.iter().filter(|verdict| verdict.grade != Grade::Fine);
        lines.extend(open.map(|verdict| format!("{}: {}", verdict.says, verdict.helps)));
        if lines.is_empty() {
            let feet = self.yard.units.style().is_feet();
            let warmest = crate::units::temperature(report.warmest_c.typical, feet);
            lines.push(format!("about {warmest} inside at the warmest hour, which its projector stands"));
        }
        lines
    }

    /// What there is to say of each station that works, each line once with the numbers of those it is for.
    fn by_station(&self, says: impl Fn(&Station) -> Vec<String>) -> Vec<String> {
        let works = |station: &Station| station.on && !self.yard.is_hidden(&station.name.0);
        let mut each: Vec<(String, Vec<String>)> = Vec::new();
        for (number, station) in (1..).zip(&self.yard.stations).filter(|(_, station)| works(station)) {
            for line in says(station) {
                match each.iter_mut().find(|(known, _)| *known == line) {
                    Some((_, numbers)) => numbers.push(number.to_string()),
                    None => each.push((line, vec![number.to_string()])),
                }
            }
        }
        each.into_iter().map(|(line, numbers)| format!("{}: {line}", numbers.join(", "))).collect()
    }

    fn wind(&self, station: &Station, in_full: bool) -> Vec<String> {
        let style = self.yard.units.style();
        let cloths = self.wind.cloths.iter().filter(|cloth| station.lights(&cloth.cloth));
        let cloths = cloths.flat_map(|cloth| {
            let lines = match in_full {
                true => cloth.lines(style.is_feet(), self.wind.rules.tie_bears_n),
                false => vec![cloth.in_short(style.is_feet())],
            };
            lines.into_iter().map(|line| format!("{}: {line}", cloth.cloth))
        });
        let mut lines: Vec<String> = cloths.collect();
        let own = |stand: &&crate::craft::wind::StandWind| stand.is_station && stand.name == station.name.0;
        lines.extend(self.wind.standing.iter().filter(own).flat_map(|stand| stand.lines(style)));
        let hung = self.wind.mounted.iter().filter(|mount| mount.station == station.name.0);
        lines.extend(hung.map(|mount| mount.line(style)));
        lines
    }

    /// From where most of it is seen.
    fn seen(&self, station: &Station) -> Vec<String> {
        let own = self.hidden.iter().filter(|reading| reading.station == station.name.0 && reading.visible > SEEN);
        let most = own.max_by(|a, b| (a.visible * a.across_deg).total_cmp(&(b.visible * b.across_deg)));
        most.map(HiddenReading::says).into_iter().collect()
    }
}

/// The part of the work that a task belongs to.
const fn part_of(moment: Moment) -> Part {
    match moment {
        Moment::Before => Part::Day,
        Moment::FirstNight => Part::FirstNight,
        Moment::EachEvening | Moment::Weekly => Part::EachEvening,
        Moment::TakeDown => Part::TakeDown,
    }
}

/// In short what goes up the ladder, by their names all that the cover has in full; once a page, on the day.
fn beware(cautions: &[Caution], part: Part) -> Vec<String> {
    if part != Part::Day {
        return Vec::new();
    }
    let (full, named): (Vec<&Caution>, Vec<&Caution>) = cautions.iter().partition(|one| ON_THE_LADDER.contains(one));
    let mut lines: Vec<String> =
        full.iter().map(|caution| format!("{}: {}", caution.name(), caution.short())).collect();
    if !named.is_empty() || !full.is_empty() {
        let names: Vec<&str> = cautions.iter().map(|caution| caution.name()).collect();
        lines.push(format!("read on the cover: {}", names.join(", ")));
    }
    lines
}
