//! The phone check, as text and as columns of a table.

use super::lit;
use gauzelight::{
    judge::PhoneCheck,
    units::{LUX_PER_FOOT_CANDLE, border::sent_light, two_digits},
};
use std::fmt::Write as _;

/// What to expect, place by place, their mean, and the lumens that follow from it.
pub fn text(page: &mut String, check: &PhoneCheck, feet: bool) -> std::fmt::Result {
    if check.on_target == 0 {
        return writeln!(page, "  phone check        none of its nine places lands on the target");
    }
    let nine = if check.on_target == 9 { "nine places" } else { "the places that land" };
    writeln!(page, "  phone check        {}, mean of {nine} in white, less the lens covered", lit(check.mean, feet))?;
    writeln!(page, "    row by row       {} lx", rows(check, 1.0))?;
    if feet {
        writeln!(page, "                     {} fc", rows(check, LUX_PER_FOOT_CANDLE))?;
    }
    match check.lumens_per_lx {
        Some(area) => {
            write!(page, "    lumens           that mean in lx × {} m²", two_digits(area))?;
            if feet {
                // As many square feet in a square metre as lux in a foot-candle.
                write!(page, ", in fc × {} ft²", two_digits(area * LUX_PER_FOOT_CANDLE))?;
            }
            writeln!(page)
        }
        None => Ok(()),
    }
}

/// The nine values row by row, lx over `unit`.
fn rows(check: &PhoneCheck, unit: f64) -> String {
    let values: Vec<String> = check
        .places
        .iter()
        .map(|place| place.lx.map_or_else(|| "–".to_owned(), |lx| two_digits(lx.typical / unit)))
        .collect();
    values.chunks(3).map(|row| row.join("  ")).collect::<Vec<_>>().join(" | ")
}

/// Names of the columns.
pub const COLUMNS: &str = "phone_check_lx_low,phone_check_lx,phone_check_lx_high,phone_check_1_lx,phone_check_2_lx,phone_check_3_lx,\
                           phone_check_4_lx,phone_check_5_lx,phone_check_6_lx,phone_check_7_lx,phone_check_8_lx,phone_check_9_lx,\
                           lumens_per_phone_check_lx";

/// Their values; empty where a place misses.
pub fn columns(check: &PhoneCheck) -> String {
    let number = |value: f64| sent_light(value).to_string();
    let mean =
        [check.mean.low, check.mean.typical, check.mean.high].map(|value| Some(value).filter(|_| check.on_target > 0));
    let nine = (0..9).map(|i| check.places.get(i).and_then(|place| place.lx).map(|lx| lx.typical));
    let all = mean.into_iter().chain(nine).chain([check.lumens_per_lx]);
    all.map(|value| value.map_or_else(String::new, number)).collect::<Vec<_>>().join(",")
}
