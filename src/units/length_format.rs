//! Lengths as text, to the digit that a tape shows.

use super::Style;

/// The finest mark on a tape: this many to the inch.
const MARKS: f64 = 16.0;

/// Rounded to whole millimetres, and free of a negative zero.
pub(super) fn to_millimetre(m: f64) -> f64 {
    (m * 1000.0).round() / 1000.0 + 0.0
}

/// The value in a notation, rounded to its digit; `letters` writes `6ft 3in` in place of `6' 3"`.
pub(super) fn format(m: f64, style: Style, letters: bool) -> String {
    let count = style.count(m);
    match style {
        Style::Bare => trimmed(m, 3),
        Style::Metres => trimmed(count, 3) + " m",
        Style::Centimetres => trimmed(count, 1) + " cm",
        Style::Millimetres => trimmed(count, 0) + " mm",
        Style::Feet => trimmed(count, 2) + " ft",
        Style::Inches => {
            let (sign, sixteenths) = in_sixteenths(m);
            format!("{sign}{} in", mixed_number(sixteenths))
        }
        Style::FeetInches => {
            let (sign, sixteenths) = in_sixteenths(m);
            let (feet, rest) = (sixteenths / 192, mixed_number(sixteenths % 192));
            if letters { format!("{sign}{feet}ft {rest}in") } else { format!("{sign}{feet}' {rest}\"") }
        }
    }
}

/// The value as [`format()`] gives it, but for less than a foot, which has no feet to show: `-2 3/4"`.
pub(super) fn shown(m: f64, style: Style) -> String {
    match (style, in_sixteenths(m)) {
        (Style::FeetInches, (sign, sixteenths @ 0..192)) => format!("{sign}{}\"", mixed_number(sixteenths)),
        _ => format(m, style, false),
    }
}

/// The value in a notation with as many digits as it takes.
pub(super) fn exact(m: f64, style: Style) -> String {
    let count = style.count(m);
    match style {
        Style::Bare => m.to_string(),
        Style::Metres => format!("{count} m"),
        Style::Centimetres => format!("{count} cm"),
        Style::Millimetres => format!("{count} mm"),
        Style::Feet => format!("{count} ft"),
        Style::Inches => format!("{count} in"),
        Style::FeetInches => {
            let (sign, inches) = (if m < 0.0 { "-" } else { "" }, count.abs());
            let feet = (inches / 12.0).floor();
            format!("{sign}{feet}' {}\"", inches - feet * 12.0)
        }
    }
}

fn trimmed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    if text == "-0" { "0".to_owned() } else { text.to_owned() }
}

fn in_sixteenths(m: f64) -> (&'static str, u64) {
    // A cast of a float saturates, so that even an absurd length prints something.
    let sixteenths = (Style::Inches.count(m.abs()) * MARKS).round() as u64;
    (if m < 0.0 && sixteenths > 0 { "-" } else { "" }, sixteenths)
}

/// `40 1/2` from 648 sixteenths.
fn mixed_number(sixteenths: u64) -> String {
    let (whole, mut over, mut under) = (sixteenths / 16, sixteenths % 16, 16);
    while over > 0 && over % 2 == 0 {
        (over, under) = (over / 2, under / 2);
    }
    match (whole, over) {
        (whole, 0) => whole.to_string(),
        (0, over) => format!("{over}/{under}"),
        (whole, over) => format!("{whole} {over}/{under}"),
    }
}
