//! Looking for what is wrong with a power plan.

use super::{
    ampacity::fuse_a,
    choose::{self, thinnest_a},
    conductor::area_mm2,
    draw::Draw,
    net::Net,
    report::{CablePower, Feed, Limits, PowerReport, StationPower, SupplyPower},
    trouble::{Problem, Trouble},
};
use crate::{
    craft::cautions::Caution,
    scene::{Catalogue, MadeFor, SupplyKind, Yard},
    units::{Length, two_digits},
};

/// So many times its rating a breaker stands for the moment of a start: the least at which a type B may trip at once (IEC 60898-1, from
/// memory).
const BREAKER_START: f64 = 3.0;

/// All that is wrong, the gravest first.
pub(super) fn of(
    yard: &Yard,
    catalogue: &Catalogue,
    nets: &[Net],
    report: &PowerReport,
    limits: &Limits,
) -> Vec<Problem> {
    let mut list = Vec::new();
    for (net, supply) in nets.iter().zip(&report.supplies) {
        let cables = report.cables.iter().filter(|cable| cable.supply == supply.supply);
        list.extend(guard(net, supply, cables.clone(), nets, report, limits));
        list.extend(rain(supply, net, limits));
        list.extend(fuse(net, supply, limits));
        list.extend(overload(supply, report, limits));
        list.extend(cables.clone().filter_map(|cable| unfit(yard, net, cable, supply, limits)));
        list.extend(cables.clone().filter_map(|cable| hot(cable, supply, limits)));
        list.extend(cables.filter_map(|cable| drop(cable, supply)));
    }
    for station in &report.stations {
        list.extend(usb(yard, catalogue, station, limits));
        list.extend(volts(yard, catalogue, station, limits));
    }
    list.sort_by_key(|problem| (!problem.grave, problem.trouble));
    list
}

/// Mains that goes outdoors with nothing that trips at what a body feels.
fn guard<'a>(
    net: &Net,
    supply: &SupplyPower,
    mut cables: impl Iterator<Item = &'a CablePower>,
    nets: &[Net],
    report: &PowerReport,
    limits: &Limits,
) -> Option<Problem> {
    let SupplyKind::Mains(outlet) = &net.supply.kind else { return None };
    let plugged = |low: &Net| matches!(&low.supply.kind, SupplyKind::TwelveVolt(one) if one.from.as_ref().is_some_and(|from| from.0 == supply.supply));
    let outdoors = |name: &str| report.supplies.iter().any(|one| one.supply == name && one.outdoors);
    let goes_out = cables.any(|cable| cable.outdoors)
        || (supply.outdoors && supply.running_w > 0.0)
        || nets.iter().any(|low| plugged(low) && outdoors(&low.supply.name.0));
    if outlet.gfci || !goes_out {
        return None;
    }
    let breaker = outlet.breaker_a.0;
    Some(Problem {
        trouble: Trouble::NoGuard,
        of: supply.supply.clone(),
        grave: true,
        number: 1000.0 * breaker,
        limit: limits.guard_ma,
        unit: "mA",
        says: format!(
            "“{}” feeds mains outdoors with no GFCI or RCD: nothing trips before its breaker's {breaker} A",
            supply.supply
        ),
        helps: "have a licensed electrician fit one, or plug in a portable one, and press its test button each season; local codes say what else outdoor mains needs".to_owned(),
    })
}

fn rain(supply: &SupplyPower, net: &Net, limits: &Limits) -> Option<Problem> {
    let water = f64::from(net.supply.ip.against_water());
    if !supply.outdoors || water >= limits.rain {
        return None;
    }
    Some(Problem {
        trouble: Trouble::Rain,
        of: supply.supply.clone(),
        grave: true,
        number: water,
        limit: limits.rain,
        unit: "",
        says: format!(
            "“{}” stands where rain falls, and its housing is {}: the second digit must be {} or more",
            supply.supply, supply.ip, limits.rain
        ),
        helps: format!("bring it indoors, or into a box that is made for rain, IP4{} or better", limits.rain),
    })
}

/// The fuse of a supply of low voltage: there, small enough for every cable, large enough for the load.
fn fuse(net: &Net, supply: &SupplyPower, limits: &Limits) -> Option<Problem> {
    if net.supply.kind.is_mains() {
        return None;
    }
    let cable_a = thinnest_a(net)?;
    let wanted = limits.fuse_over * supply.running_a;
    let buy = match choose::fuse(net, supply.running_w, limits) {
        Some(fuse) => format!("a fuse of {fuse} A within a hand's breadth of its output"),
        None => "thicker cable first, then a fuse that suits the thinnest".to_owned(),
    };
    let name = &supply.supply;
    let can_give = supply.rated_w.map_or(f64::INFINITY, |watts| watts / supply.volts);
    let (grave, number, limit, says) = match supply.fuse_a {
        None => {
            let most = if can_give.is_finite() { format!("up to {can_give:.1} A") } else { "hundreds of A".to_owned() };
            let says = format!("“{name}” has no fuse: a short drives {most} through cable that carries {cable_a} A");
            (can_give > cable_a, 0.0, wanted.max(1.0), says)
        }
        Some(fuse) if fuse > cable_a && can_give > cable_a => {
            let says =
                format!("The fuse of “{name}”, {fuse} A, is larger than its thinnest cable carries, {cable_a} A");
            (true, fuse, cable_a, says)
        }
        Some(fuse) if never_blows(fuse, can_give, limits).is_some() => {
            let most = never_blows(fuse, can_give, limits).unwrap_or(fuse);
            let says = format!("The fuse of “{name}”, {fuse} A, never blows: it gives no more than {can_give:.1} A");
            (false, fuse, most, says)
        }
        Some(fuse) if fuse < supply.running_a => {
            let says = format!("The fuse of “{name}”, {fuse} A, blows: it carries {} A", two_digits(supply.running_a));
            (true, fuse, wanted, says)
        }
        Some(fuse) if fuse < wanted => {
            let says = format!(
                "The fuse of “{name}”, {fuse} A, carries {} A for hours and may blow with age",
                two_digits(supply.running_a)
            );
            (false, fuse, wanted, says)
        }
        Some(_) => return None,
    };
    Some(Problem { trouble: Trouble::Fuse, of: name.clone(), grave, number, limit, unit: "A", says, helps: buy })
}

/// The fuse that would blow at what a supply gives at most, A, where this one is larger.
fn never_blows(fuse: f64, can_give: f64, limits: &Limits) -> Option<f64> {
    let fits = fuse_a(can_give, limits.fuse_over, f64::INFINITY)?;
    (can_give.is_finite() && fuse > fits).then_some(fits)
}

/// A cable that is not made for what it does: wire for low voltage on the mains, a household lead or a thin cord outdoors.
fn unfit(yard: &Yard, net: &Net, cable: &CablePower, supply: &SupplyPower, limits: &Limits) -> Option<Problem> {
    let one = net.lines.iter().map(|line| line.cable).find(|one| one.name.0 == cable.cable)?;
    if !net.supply.kind.is_mains() {
        return None;
    }
    let name = &cable.cable;
    let problem = |trouble, grave, number, limit, unit, says| {
        let helps = "an outdoor cord of 1.5 mm² or 16 AWG; local codes decide".to_owned();
        Some(Problem { trouble, of: name.clone(), grave, number, limit, unit, says, helps })
    };
    let area = area_mm2(one.gauge);
    if one.made_for == MadeFor::LowVoltage && supply.volts > limits.low_wire_v {
        let says = format!("“{name}” is wire for low voltage, and carries the mains, {} V", supply.volts);
        return problem(Trouble::MadeFor, true, supply.volts, limits.low_wire_v, "V", says);
    }
    if one.made_for == MadeFor::Indoors && cable.outdoors_m > limits.indoor_lead_m {
        // To the decimetre; what is shorter is one.
        let length = Length::metres((10.0 * cable.outdoors_m).round().max(1.0) / 10.0).show(yard.units.style());
        let says = format!("“{name}” is a lead for indoors, and {length} of it lies outdoors on the mains");
        return problem(Trouble::IndoorLead, true, cable.outdoors_m, limits.indoor_lead_m, "m", says);
    }
    if cable.outdoors && area < limits.outdoor_mm2 * (1.0 - 1e-9) {
        let says = format!(
            "“{name}”, {}, lies outdoors on the mains: such cords begin at {} mm²",
            one.gauge, limits.outdoor_mm2
        );
        return problem(Trouble::Thin, false, area, limits.outdoor_mm2, "mm²", says);
    }
    None
}

fn overload(supply: &SupplyPower, report: &PowerReport, limits: &Limits) -> Option<Problem> {
    let name = &supply.supply;
    let problem = |grave, number, limit, unit, says, helps: &str| {
        Some(Problem {
            trouble: Trouble::Supply,
            of: name.clone(),
            grave,
            number,
            limit,
            unit,
            says,
            helps: helps.to_owned(),
        })
    };
    if let Some(lasts) = supply.lasts_h {
        let night = report.energy.running.hours;
        let frost = supply.frost();
        let says = format!("“{name}” lasts {} h of a night of {} h{frost}", two_digits(lasts), two_digits(night));
        return if lasts < night {
            problem(true, lasts, night, "h", says, "a larger battery, a second one to swap, or fewer things on it")
        } else {
            None
        };
    }
    let rated = supply.rated_w?;
    let most = rated * limits.continuous;
    let at_once = if supply.kind == Feed::Mains { BREAKER_START * rated } else { rated };
    let running = two_digits(supply.running_w);
    if supply.running_w > most {
        let says = if supply.running_w > rated {
            format!("“{name}” has to supply {running} W, more than its {rated:.0} W")
        } else {
            format!("“{name}” supplies {running} W of its {rated:.0} W; {most:.0} W is its limit for hours on end")
        };
        let helps = if supply.kind == Feed::Mains {
            "feed some of it from an outlet on another breaker"
        } else {
            "a larger supply, or another beside it"
        };
        return problem(supply.running_w > rated, supply.running_w, most, "W", says, helps);
    }
    if supply.starting_w > at_once {
        let starting = two_digits(supply.starting_w);
        let says =
            format!("“{name}” has to supply {starting} W at once when power comes back, more than its {at_once:.0} W");
        return problem(false, supply.starting_w, at_once, "W", says, "a larger supply, or switch on one by one");
    }
    None
}

fn hot(cable: &CablePower, supply: &SupplyPower, limits: &Limits) -> Option<Problem> {
    let most = cable.ampacity_a.unwrap_or(0.0) * limits.continuous;
    if cable.amps <= most {
        return None;
    }
    let amps = two_digits(cable.amps);
    let rated = match cable.ampacity_a {
        Some(most) => format!("{most} A, {} A for hours on end", two_digits(most * limits.continuous)),
        None => "a current that no table tells".to_owned(),
    };
    let helps = match &cable.gauge_to_buy {
        Some(gauge) => format!("{gauge} or thicker"),
        None => format!("less on one cable, or another from {}", supply.supply),
    };
    Some(Problem {
        trouble: Trouble::Cable,
        of: cable.cable.clone(),
        grave: cable.amps > cable.ampacity_a.unwrap_or(0.0),
        number: cable.amps,
        limit: most,
        unit: "A",
        says: format!("“{}” carries {amps} A; {} is rated for {rated}", cable.cable, cable.gauge),
        helps,
    })
}

fn drop(cable: &CablePower, supply: &SupplyPower) -> Option<Problem> {
    let simple = cable.simple_drop_v / supply.volts;
    let number = cable.drop_share.unwrap_or(simple);
    if number <= cable.limit && cable.drop_share.is_some() {
        return None;
    }
    let to = &cable.to;
    let (of, limit) = (supply.volts, 100.0 * cable.limit);
    let says = match cable.drop_v {
        Some(drop) => format!(
            "“{to}” gets {} V of the {of} V of “{}”: {} % is lost on the way, {limit:.0} % is the limit",
            two_digits(of - drop),
            supply.supply,
            two_digits(100.0 * number),
        ),
        None => format!(
            "“{}” cannot feed “{to}”: {} of the {of} V would be lost on the way, {} %",
            supply.supply,
            two_digits(cable.simple_drop_v),
            two_digits(100.0 * simple),
        ),
    };
    let helps = match &cable.gauge_to_buy {
        Some(gauge) => format!("{gauge} all the way, instead of {}", cable.gauge),
        None => "a supply nearer to it, or the mains as far as that: no cable on sale is thick enough".to_owned(),
    };
    Some(Problem {
        trouble: Trouble::Drop,
        of: to.clone(),
        grave: cable.drop_share.is_none_or(|share| share > 2.0 * cable.limit),
        number,
        limit: cable.limit,
        unit: "",
        says,
        helps,
    })
}

/// What a projector's USB outlet gives: what its class says, or what a plain one gives.
fn usb(yard: &Yard, catalogue: &Catalogue, station: &StationPower, limits: &Limits) -> Option<Problem> {
    let one = yard.stations.iter().find(|one| one.name.0 == station.station)?;
    let own = yard.projector(catalogue, &one.projector.0).and_then(|class| class.usb_w);
    let limit = own.map_or(limits.usb_w, |watts| watts.0);
    let gives = if own.is_some() { "a projector of its class gives" } else { "most give" };
    (station.usb_w > limit).then(|| Problem {
        trouble: Trouble::Usb,
        of: station.station.clone(),
        grave: false,
        number: station.usb_w,
        limit,
        unit: "W",
        says: format!(
            "The USB outlet of the projector in “{}” is to give {} W; {gives} {limit} W",
            station.station, station.usb_w
        ),
        helps: "a supply of its own for what is plugged in there, or read what the projector's maker says".to_owned(),
    })
}

fn volts(yard: &Yard, catalogue: &Catalogue, station: &StationPower, limits: &Limits) -> Option<Problem> {
    let name = station.supply.as_ref()?;
    let supply = yard.supplies.iter().find(|supply| supply.name.0 == *name)?;
    let one = yard.stations.iter().find(|one| one.name.0 == station.station)?;
    let draw = Draw::of(yard, catalogue, one);
    let (off, gives) = (draw.is_off_at(&supply.kind), supply.kind.volts());
    let (runs_on, helps) = if draw.wants_mains() {
        ("the mains", "feed it from the mains, or use what runs on that")
    } else {
        ("12 V", "a supply of 12 V, or a converter to 12 V behind the fuse")
    };
    (off > limits.volts_off).then(|| Problem {
        trouble: Trouble::Volts,
        of: station.station.clone(),
        grave: true,
        number: off,
        limit: limits.volts_off,
        unit: "",
        says: format!("“{}” runs on {runs_on}, at least in part, and “{name}” gives {gives} V", station.station),
        helps: helps.to_owned(),
    })
}

/// What is not known, or left out.
pub(super) fn notes(
    yard: &Yard,
    supplies: &[SupplyPower],
    cables: &[CablePower],
    stations: &[StationPower],
) -> Vec<String> {
    let mut list = Vec::new();
    if supplies.is_empty() && !stations.is_empty() {
        list.push("this yard has no supply: draw one, then cables from it to the stations".to_owned());
    } else {
        let unfed = stations.iter().filter(|station| station.supply.is_none());
        list.extend(unfed.map(|station| format!("nothing in this yard feeds {}", station.station)));
    }
    for supply in yard.supplies.iter().filter(|supply| !yard.is_hidden(&supply.name.0)) {
        let SupplyKind::TwelveVolt(one) = &supply.kind else { continue };
        let name = &supply.name.0;
        if one.from.is_none() && !cables.iter().any(|cable| cable.to == *name) {
            list.push(format!("nothing in this yard feeds {name}"));
        }
    }
    for cable in yard.cables.iter().filter(|cable| !yard.is_hidden(&cable.name.0)) {
        if !cables.iter().any(|one| one.cable == cable.name.0) {
            list.push(format!("{} leads to no supply, or to nothing in this arrangement", cable.name.0));
        }
    }
    let unknown = yard.lamps.iter().filter(|lamp| lamp.watts.is_none());
    let unknown = unknown.filter(|lamp| cables.iter().any(|cable| cable.to == lamp.name.0));
    list.extend(unknown.map(|lamp| format!("nobody says what {} draws; it is counted as nothing", lamp.name.0)));
    list
}

/// What a person must heed, whatever the numbers say, the gravest first.
pub(super) fn cautions(supplies: &[SupplyPower], cables: &[CablePower]) -> Vec<Caution> {
    let mains = |name: &str| supplies.iter().any(|supply| supply.supply == name && supply.kind == Feed::Mains);
    let outdoors = || cables.iter().filter(|cable| cable.outdoors && mains(&cable.supply));
    let applies = |caution: &Caution| match caution {
        Caution::MainsOutdoors => outdoors().next().is_some(),
        Caution::Joints => outdoors().any(|cable| cable.joints > 0),
        Caution::Unfused => supplies.iter().any(|supply| supply.kind != Feed::Mains && supply.fuse_a.is_none()),
        Caution::Batteries => supplies.iter().any(|supply| supply.kind == Feed::Battery),
        _ => false,
    };
    Caution::ALL.iter().copied().filter(applies).collect()
}
