//! A season: from when on every station is seen well enough, night by night.

use crate::judge::evening::{Run, Season, SeasonNight};
use svg::{
    Document,
    node::element::{Circle, Group, Line, Polygon, Polyline, Rectangle, Text},
};

/// Size of the whole, and its margins left, right, above and below, in units of the picture.
const SIZE: [f64; 2] = [1000.0, 600.0];
const MARGIN: [f64; 4] = [76.0, 210.0, 54.0, 62.0];
/// A season of no more nights has a dot for each.
const FEW: usize = 21;
/// Height of a line of text.
const LINE: f64 = 15.0;
/// How the stations' lines are broken, one after the other.
const DASHES: [&str; 6] = ["none", "9 4", "2 3", "12 3 2 3", "5 5", "16 4"];

/// Where days and clock times lie.
struct Axes {
    nights: usize,
    low: f64,
    high: f64,
}

impl Axes {
    fn of(season: &Season) -> Self {
        let each = season.nights.iter().flat_map(|night| {
            let [from, until] = [night.hours.from, night.hours.until].map(|hour| hour.minutes);
            let sunset = night.hours.sunset.map(|sunset| sunset.minutes);
            let starts = night.starts.iter().filter_map(|start| start.run.map(|run| run.from.minutes));
            [from, until].into_iter().chain(sunset).chain(starts)
        });
        let (low, high) = each.fold((u16::MAX, 0), |(low, high), at| (low.min(at), high.max(at)));
        let hour = |minutes: f64| minutes / 60.0;
        let (low, high) = (hour(f64::from(low.min(high))).floor() * 60.0, hour(f64::from(high)).ceil() * 60.0);
        Self { nights: season.nights.len(), low, high }
    }

    /// A night by its index; halves lie between two.
    fn x(&self, night: f64) -> f64 {
        MARGIN[0] + (night + 0.5) / self.nights.max(1) as f64 * (SIZE[0] - MARGIN[0] - MARGIN[1])
    }

    /// A clock time by its minutes since the midnight before; later is higher.
    fn y(&self, minutes: f64) -> f64 {
        let share = (minutes - self.low) / (self.high - self.low).max(60.0);
        SIZE[1] - MARGIN[3] - share * (SIZE[1] - MARGIN[2] - MARGIN[3])
    }

    fn right(&self) -> f64 {
        SIZE[0] - MARGIN[1]
    }
}

/// The plot of a season: dates along x, clock times of `zone` along y, sunset, the visitors' hours, and a line for each station.
pub fn season(season: &Season, yard: &str, spot: &str, zone: &str) -> String {
    let axes = Axes::of(season);
    let wanted = season.wanted.name();
    let mut drawn = Document::new()
        .set("viewBox", (0.0, 0.0, SIZE[0], SIZE[1]))
        .set("font-family", "sans-serif")
        .set("font-size", 12)
        .add(Rectangle::new().set("width", SIZE[0]).set("height", SIZE[1]).set("fill", "white"))
        .add(visitors(season, &axes))
        .add(grid(season, &axes, zone))
        .add(text(MARGIN[0], 22.0, "start", &format!("{yard}, seen from {spot}")).set("font-size", 16))
        .add(text(MARGIN[0], 41.0, "start", &format!("from when on each station is at least {wanted}")));
    let mut labels = Vec::new();
    let sunset: Vec<(f64, f64)> = points(season, |night| night.hours.sunset.map(|hour| hour.minutes), &axes);
    labels.extend(sunset.last().map(|(_, y)| Label { at: *y, says: "sunset".to_owned(), of: None }));
    if sunset.len() > 1 {
        drawn = drawn.add(path(&sunset).set("stroke", "#777").set("stroke-width", 1));
    }
    for (index, station) in season.stations.iter().enumerate() {
        let run = |night: &SeasonNight| night.starts.get(index).and_then(|start| start.run);
        drawn = drawn.add(line(season, run, index, &axes));
        let last = season.nights.iter().rev().find_map(run);
        let (at, says) = match last {
            Some(run) => (axes.y(f64::from(run.from.minutes)), station.clone()),
            None => (axes.y(axes.high), format!("{station}: never")),
        };
        labels.push(Label { at, says, of: Some(index) });
    }
    let hours = season.nights.first().map(|night| (night.hours.from, night.hours.until));
    if let Some((from, until)) = hours {
        let at = axes.y(0.5 * (f64::from(from.minutes) + f64::from(until.minutes)));
        labels.push(Label { at, says: format!("visitors {from} to {until}"), of: None });
    }
    drawn = drawn.add(beside(labels, &axes));
    let foot = format!("a hollow dot: not {wanted} until the visitors have gone; a gap: never while they are there");
    drawn.add(text(MARGIN[0], SIZE[1] - 8.0, "start", &foot).set("font-size", 11)).to_string()
}

/// The visitors' hours as a band.
fn visitors(season: &Season, axes: &Axes) -> Polygon {
    let edge = |pick: fn(&SeasonNight) -> u16| {
        let nights = season.nights.iter().enumerate();
        nights.flat_map(move |(at, night)| {
            let y = axes.y(f64::from(pick(night)));
            [-0.5, 0.5].map(|half| format!("{:.1},{y:.1}", axes.x(at as f64 + half)))
        })
    };
    let mut points: Vec<String> = edge(|night| night.hours.from.minutes).collect();
    let until: Vec<String> = edge(|night| night.hours.until.minutes).collect();
    points.extend(until.into_iter().rev());
    Polygon::new().set("points", points.join(" ")).set("fill", "#e8e8e8").set("stroke", "none")
}

/// Hours and dates with their lines, and what the axes mean.
fn grid(season: &Season, axes: &Axes, zone: &str) -> Group {
    let mut group = Group::new().set("stroke-width", 0.5);
    let (bottom, top) = (axes.y(axes.low), axes.y(axes.high));
    // At most about 14 hours and 12 dates.
    let step = ((axes.high - axes.low) / 60.0 / 14.0).ceil().max(1.0);
    let hours = (0..).map(|n| axes.low + 60.0 * step * f64::from(n)).take_while(|minutes| *minutes <= axes.high);
    for minutes in hours {
        let y = axes.y(minutes);
        let clock = format!("{:02}:00", (minutes / 60.0) as u32 % 24);
        group = group.add(straight([MARGIN[0], y], [axes.right(), y], "#ccc")).add(text(
            MARGIN[0] - 8.0,
            y + 4.0,
            "end",
            &clock,
        ));
    }
    let apart = [1, 2, 7, 14, 30, 60].into_iter().find(|days| axes.nights / days < 13).unwrap_or(60);
    for (index, night) in season.nights.iter().enumerate().step_by(apart) {
        let (x, date) = (axes.x(index as f64), night.date.to_string());
        // Month and day; the year stands below.
        let day = date.get(5..).unwrap_or_default();
        group = group.add(straight([x, bottom], [x, bottom + 5.0], "black")).add(text(x, bottom + 18.0, "middle", day));
    }
    let year = |night: Option<&SeasonNight>| night.map(|night| night.date.civil().year()).unwrap_or_default();
    let years = [year(season.nights.first()), year(season.nights.last())];
    let years = if years[0] == years[1] { years[0].to_string() } else { format!("{} to {}", years[0], years[1]) };
    let middle = 0.5 * (MARGIN[0] + axes.right());
    let (across, along) = (18.0, 0.5 * (bottom + top));
    group
        .add(straight([MARGIN[0], bottom], [axes.right(), bottom], "black"))
        .add(straight([MARGIN[0], bottom], [MARGIN[0], top], "black"))
        .add(text(middle, bottom + 36.0, "middle", &format!("date (month-day), {years}")))
        .add(
            text(across, along, "middle", &format!("clock time (h:min), {zone}"))
                .set("transform", format!("rotate(-90 {across} {along})")),
        )
}

/// A station's line, broken where there is no start, and its dots.
fn line(season: &Season, run: impl Fn(&SeasonNight) -> Option<Run>, index: usize, axes: &Axes) -> Group {
    let mut group = Group::new().set("stroke", "black").set("stroke-width", 1.4);
    let mut stretch = Vec::new();
    // Some programs take a line of no points for a fault.
    let drawn = |group: Group, points: &[(f64, f64)]| {
        let dash = DASHES[index % DASHES.len()];
        if points.len() < 2 { group } else { group.add(path(points).set("stroke-dasharray", dash)) }
    };
    let each: Vec<Option<Run>> = season.nights.iter().map(run).collect();
    for (at, run) in each.iter().enumerate() {
        let Some(run) = run else {
            group = drawn(group, &std::mem::take(&mut stretch));
            continue;
        };
        let point = (axes.x(at as f64), axes.y(f64::from(run.from.minutes)));
        stretch.push(point);
        // On a line with more dots than these no dash would be left to tell it by; one night alone has no line.
        let is_alone = stretch.len() == 1 && each.get(at + 1).is_none_or(Option::is_none);
        if !run.lasts || is_alone || season.nights.len() <= FEW {
            let fill = if run.lasts { "black" } else { "white" };
            group = group.add(Circle::new().set("cx", point.0).set("cy", point.1).set("r", 2.2).set("fill", fill));
        }
    }
    drawn(group, &stretch)
}

fn points(season: &Season, pick: impl Fn(&SeasonNight) -> Option<u16>, axes: &Axes) -> Vec<(f64, f64)> {
    let nights = season.nights.iter().enumerate();
    nights.filter_map(|(at, night)| Some((axes.x(at as f64), axes.y(f64::from(pick(night)?))))).collect()
}

/// What stands beside the plot.
struct Label {
    at: f64,
    says: String,
    /// The station whose line it names.
    of: Option<usize>,
}

/// The labels at the right, one below the other where they would meet.
fn beside(mut labels: Vec<Label>, axes: &Axes) -> Group {
    labels.sort_by(|a, b| a.at.total_cmp(&b.at));
    // Nothing stands lower than leaves room for all that follow.
    let count = labels.len();
    let mut free = 0.0_f64;
    let mut group = Group::new();
    for (index, label) in labels.into_iter().enumerate() {
        let lowest = axes.y(axes.low) - (count - 1 - index) as f64 * LINE;
        let y = label.at.min(lowest).max(free);
        free = y + LINE;
        let x = axes.right() + 8.0;
        group = group.add(text(x + 34.0, y + 4.0, "start", &label.says));
        if let Some(index) = label.of {
            let key = straight([x, y], [x + 28.0, y], "black").set("stroke-width", 1.4);
            group = group.add(key.set("stroke-dasharray", DASHES[index % DASHES.len()]));
        }
    }
    group
}

fn straight(from: [f64; 2], to: [f64; 2], colour: &str) -> Line {
    let line = Line::new().set("x1", from[0]).set("y1", from[1]).set("x2", to[0]).set("y2", to[1]);
    line.set("stroke", colour)
}

fn path(points: &[(f64, f64)]) -> Polyline {
    let list: Vec<String> = points.iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect();
    Polyline::new().set("points", list.join(" ")).set("fill", "none")
}

fn text(x: f64, y: f64, anchor: &str, says: &str) -> Text {
    Text::new(says).set("x", x).set("y", y).set("text-anchor", anchor).set("stroke", "none").set("fill", "black")
}
