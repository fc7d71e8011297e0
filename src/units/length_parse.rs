//! Text to lengths.

use super::Style;

const NOTATIONS: &str = "write a number of metres, or one with its unit such as \"1.9 m\", \"190 cm\", \"1900 mm\", \
                         \"6.25 ft\", \"40 1/2 in\" or \"6ft 3.5in\"";

/// The unit that follows a number.
#[derive(Clone, Copy, PartialEq)]
enum Unit {
    None,
    Plain(Style),
    Feet,
    Inches,
}

/// The value in metres and its notation, or what to write in its place.
pub(super) fn parse(text: &str) -> Result<(f64, Style), String> {
    let text = text.trim();
    if text.is_empty() {
        return Err(NOTATIONS.to_owned());
    }
    let (sign, mut rest) = sign(text);
    let first = quantity(&mut rest)?;
    let first_unit = unit(&mut rest)?;
    let (m, style) = match first_unit {
        Unit::None => (first, Style::Bare),
        Unit::Plain(style) => (style.metres(first), style),
        Unit::Inches => (Style::Inches.metres(first), Style::Inches),
        Unit::Feet if rest.is_empty() => (Style::Feet.metres(first), Style::Feet),
        Unit::Feet => {
            let second = quantity(&mut rest)?;
            if unit(&mut rest)? != Unit::Inches {
                return Err("after feet only inches may follow, such as \"6ft 3.5in\"".to_owned());
            }
            (Style::FeetInches.metres(first * 12.0 + second), Style::FeetInches)
        }
    };
    match (rest.is_empty(), first_unit) {
        (false, Unit::Feet) => Err("nothing after the inches is taken".to_owned()),
        (false, _) => Err(format!("one number with one unit is taken, or feet with inches; {NOTATIONS}")),
        (true, _) if !m.is_finite() => Err(format!("this is too large; {NOTATIONS}")),
        (true, _) => Ok((sign * m, style)),
    }
}

fn sign(text: &str) -> (f64, &str) {
    match text.strip_prefix(['-', '−']) {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, text.strip_prefix('+').unwrap_or(text).trim_start()),
    }
}

/// A decimal, a fraction or a whole number with a fraction, at the head of `rest`, which then starts at what follows.
fn quantity(rest: &mut &str) -> Result<f64, String> {
    let Some(first) = number(rest)? else {
        return match vulgar(rest) {
            Some(part) => Ok(part),
            None => Err(format!("a length must start with a number; {NOTATIONS}")),
        };
    };
    if let Some(under) = rest.strip_prefix('/') {
        *rest = under;
        return over(first, rest);
    }
    let after_first = *rest;
    *rest = rest.trim_start();
    if let Some(part) = vulgar(rest) {
        return Ok(first + part);
    }
    // `40 1/2`: a second number belongs here only if a stroke follows it.
    if let Ok(Some(second)) = number(rest)
        && let Some(under) = rest.strip_prefix('/')
    {
        *rest = under;
        return Ok(first + over(second, rest)?);
    }
    *rest = after_first.trim_start();
    Ok(first)
}

fn over(numerator: f64, rest: &mut &str) -> Result<f64, String> {
    let denominator = number(rest)?.ok_or("a number must follow the stroke of a fraction, such as 1/2")?;
    *rest = rest.trim_start();
    if denominator == 0.0 {
        return Err("a fraction cannot divide by 0".to_owned());
    }
    Ok(numerator / denominator)
}

/// Digits with at most one point; `None` where no digit stands.
fn number(rest: &mut &str) -> Result<Option<f64>, String> {
    let end = rest.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(rest.len());
    let (digits, tail) = rest.split_at(end);
    if digits.is_empty() {
        return Ok(None);
    }
    if let Some(decimals) = tail.strip_prefix(',').filter(|tail| tail.starts_with(|c: char| c.is_ascii_digit())) {
        let decimals: String = decimals.chars().take_while(char::is_ascii_digit).take(12).collect();
        return Err(format!("write the decimal with a point: {digits}.{decimals}"));
    }
    let value = digits.parse::<f64>().map_err(|_| format!("“{digits}” is not a number; {NOTATIONS}"))?;
    *rest = tail;
    Ok(Some(value))
}

/// One of the fractions that have a character of their own.
fn vulgar(rest: &mut &str) -> Option<f64> {
    let first = rest.chars().next()?;
    let part = match first {
        '½' => 0.5,
        '¼' => 0.25,
        '¾' => 0.75,
        _ => return None,
    };
    *rest = rest[first.len_utf8()..].trim_start();
    Some(part)
}

fn unit(rest: &mut &str) -> Result<Unit, String> {
    if let Some(tail) = rest.strip_prefix("''").or_else(|| rest.strip_prefix(['"', '″', '”'])) {
        *rest = tail.trim_start();
        return Ok(Unit::Inches);
    }
    if let Some(tail) = rest.strip_prefix(['\'', '′', '’']) {
        *rest = tail.trim_start();
        return Ok(Unit::Feet);
    }
    let end = rest.find(|c: char| !c.is_alphabetic()).unwrap_or(rest.len());
    let (word, tail) = rest.split_at(end);
    let unit = match word {
        "" => Unit::None,
        "m" | "metre" | "metres" | "meter" | "meters" => Unit::Plain(Style::Metres),
        "cm" => Unit::Plain(Style::Centimetres),
        "mm" => Unit::Plain(Style::Millimetres),
        "ft" | "foot" | "feet" => Unit::Feet,
        "in" | "inch" | "inches" => Unit::Inches,
        _ => {
            let word: String = word.chars().take(20).collect();
            return Err(format!("“{word}” is not a unit that is taken here; use m, cm, mm, ft or in"));
        }
    };
    *rest = tail.trim_start().trim_start_matches('.').trim_start();
    Ok(unit)
}
