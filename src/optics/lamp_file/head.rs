//! What stands in a photometric file before its candela, and these.

use super::{
    Goniometer, LampFile, LampFileFault,
    angles::between,
    numbers::{Number, Numbers},
};

/// Most angles of one kind, and most values.
const MOST_ANGLES: usize = 10_000;
const MOST_VALUES: usize = 1_000_000;

/// The editions after 1995 say other things where the earlier had a factor of ballast and bulb together.
const LATER: [&str; 2] = ["LM-63-2002", "LM-63-2019"];

/// Reads the lines of a file.
pub fn read(lines: &[&str]) -> Result<LampFile, LampFileFault> {
    let (tilt_line, tilt) = tilt(lines)?;
    let title = lines[0].to_ascii_uppercase();
    let is_later = LATER.iter().any(|edition| title.contains(edition));
    let mut numbers = Numbers::after(lines, tilt_line + 1);
    let tilted = if tilt == "INCLUDE" { upright(&mut numbers)? } else { 1.0 };
    let bulbs = numbers.next("the number of bulbs")?.count("bulbs", 10_000)?;
    let each = numbers.next("the lumens of a bulb")?;
    let bulbs_lm = match each.value {
        -1.0 => None,
        _ => Some(each.positive("the lumens of a bulb")? * bulbs as f64),
    };
    let multiplier = numbers.next("the factor on candela")?.positive("the factor on candela")?;
    let verticals = numbers.next("the number of vertical angles")?;
    let laterals = numbers.next("the number of lateral angles")?;
    let counts = [verticals.count("vertical angles", MOST_ANGLES)?, laterals.count("lateral angles", MOST_ANGLES)?];
    if counts[0] * counts[1] > MOST_VALUES {
        let what = format!("{} by {} angles are too many", counts[0], counts[1]);
        return Err(laterals.fault(what, format!("at most {MOST_VALUES} values")));
    }
    let goniometer = match numbers.next("the photometric type")?.one_of("the photometric type", &[1, 2, 3])? {
        1 => Goniometer::C,
        2 => Goniometer::B,
        _ => Goniometer::A,
    };
    let unit = match numbers.next("the unit")?.one_of("the unit (1 feet, 2 metres)", &[1, 2])? {
        1 => 0.3048,
        _ => 1.0,
    };
    let mut opening_m = [0.0; 3];
    for side in &mut opening_m {
        *side = numbers.next("a size of the opening")?.value * unit;
    }
    let ballast = numbers.next("the ballast factor")?.positive("the ballast factor")?;
    let spare = numbers.next("the number after the ballast factor")?;
    let with_bulb = if is_later { 1.0 } else { spare.positive("the factor of ballast and bulb")? };
    numbers.next("the watts")?.positive("the power")?;
    let factor = multiplier * ballast * with_bulb * tilted;

    let vertical = ascending(&mut numbers, counts[0], "a vertical angle")?;
    let lateral = ascending(&mut numbers, counts[1], "a lateral angle")?;
    check_ends(goniometer, &vertical, &lateral)?;
    let mut candela = Vec::with_capacity(counts[1]);
    for _ in 0..counts[1] {
        let mut row = Vec::with_capacity(counts[0]);
        for _ in 0..counts[0] {
            let number = numbers.next("a candela value")?;
            let value = number.positive("this candela value")? * factor;
            if !value.is_finite() {
                return Err(
                    number.fault("this candela value times its factors is beyond all bounds", "check the factors")
                );
            }
            row.push(value);
        }
        candela.push(row);
    }
    numbers.end()?;
    let values = |list: Vec<Number>| list.into_iter().map(|number| number.value).collect();
    let file = LampFile {
        goniometer,
        vertical_deg: values(vertical),
        lateral_deg: values(lateral),
        candela,
        opening_m,
        bulbs_lm,
    };
    let lumens = file.lumens();
    if lumens > 0.0 && lumens <= MOST_LUMENS {
        return Ok(file);
    }
    let what = format!("this lamp gives {lumens:.0} lm");
    Err(verticals.fault(what, format!("more than 0 and at most {MOST_LUMENS} lm; check candela and factors")))
}

/// No lamp gives more, lm.
const MOST_LUMENS: f64 = 1e6;

/// The line of the tilt, from 0, and what it says.
fn tilt(lines: &[&str]) -> Result<(usize, String), LampFileFault> {
    let said = |line: &&str| -> Option<String> {
        // By characters, for a line may hold any.
        let (word, rest) = line.trim().split_once('=')?;
        word.trim().eq_ignore_ascii_case("tilt").then(|| rest.trim().to_owned())
    };
    let found = lines.iter().enumerate().find_map(|(index, line)| Some((index, said(line)?)));
    let fault = |index: usize, what: String, remedy: &str| LampFileFault {
        line: index + 1,
        number: None,
        what,
        remedy: remedy.to_owned(),
    };
    let Some((index, tilt)) = found else {
        let what = "no line begins with TILT=".to_owned();
        return Err(fault(
            lines.len() - 1,
            what,
            "a photometric file by IES LM-63, whose numbers begin after that line",
        ));
    };
    let upper = tilt.to_ascii_uppercase();
    if upper == "NONE" || upper == "INCLUDE" {
        return Ok((index, upper));
    }
    let clipped: String = tilt.chars().take(40).collect();
    let what = format!("the tilt data stand in another file, “{clipped}”");
    Err(fault(index, what, "put them into this file after TILT=INCLUDE, or write TILT=NONE"))
}

/// Reads tilt data: the factor of a lamp that hangs as it was measured. What a lamp loses when it is tilted is not taken.
fn upright(numbers: &mut Numbers<'_>) -> Result<f64, LampFileFault> {
    numbers.next("how the bulb stands in the lamp")?.one_of("how the bulb stands in the lamp", &[1, 2, 3])?;
    let count = numbers.next("the number of tilt angles")?.count("tilt angles", MOST_ANGLES)?;
    let angles = ascending(numbers, count, "a tilt angle")?;
    let mut factors = Vec::with_capacity(count);
    for _ in 0..count {
        factors.push(numbers.next("a tilt factor")?.positive("this tilt factor")?);
    }
    let angles: Vec<f64> = angles.iter().map(|angle| angle.value).collect();
    if count == 1 {
        return Ok(factors[0]);
    }
    Ok(between(&angles, 0.0).map_or(1.0, |(i, t)| factors[i] + (factors[i + 1] - factors[i]) * t))
}

fn ascending(numbers: &mut Numbers<'_>, count: usize, what: &str) -> Result<Vec<Number>, LampFileFault> {
    let list = numbers.list(count, what)?;
    for pair in list.windows(2) {
        if pair[1].value <= pair[0].value {
            let what = format!("{what} of {} comes after {}", pair[1].value, pair[0].value);
            return Err(pair[1].fault(what, "angles ascend"));
        }
    }
    Ok(list)
}

/// Where the lists of angles may begin and end.
fn check_ends(goniometer: Goniometer, vertical: &[Number], lateral: &[Number]) -> Result<(), LampFileFault> {
    let (verticals, laterals): (&[_], &[_]) = match goniometer {
        Goniometer::C => {
            (&[(0.0, 90.0), (90.0, 180.0), (0.0, 180.0)], &[(0.0, 90.0), (0.0, 180.0), (90.0, 270.0), (0.0, 360.0)])
        }
        Goniometer::B | Goniometer::A => (&[(-90.0, 90.0)], &[(0.0, 90.0), (-90.0, 90.0)]),
    };
    let alone = goniometer == Goniometer::C && lateral.len() == 1;
    for (word, list, allowed) in [("vertical", vertical, verticals), ("lateral", lateral, laterals)] {
        let (first, last) = (list[0], list[list.len() - 1]);
        let single = word == "lateral" && alone && first.value == 0.0;
        if single || allowed.contains(&(first.value, last.value)) {
            continue;
        }
        let ranges: Vec<String> = allowed.iter().map(|(from, to)| format!("{from} to {to}")).collect();
        let more = if word == "lateral" && goniometer == Goniometer::C { "0 alone, " } else { "" };
        let what = format!("the {word} angles run from {} to {}", first.value, last.value);
        let remedy = format!("of type {goniometer:?} they run {more}{}", ranges.join(", "));
        return Err(last.fault(what, remedy));
    }
    Ok(())
}
