//! Writers of plain and small values.

use super::{Whole, Write, Written};
use crate::scene::{
    Aim, Angle, Band, Clock, Colour, Count, Date, Fraction, Fullness, Gamma, Gauge, IpCode, Latitude, Longitude, Name,
    Point, Positive, Ref, Size, Targets, TurnedPoint, Uv, Zone,
};
use crate::units::{Length, Style};
use std::fmt::Write as _;

impl Write for f64 {
    fn write(&self) -> Written {
        Written::Plain(self.to_string())
    }
}

impl Write for u32 {
    fn write(&self) -> Written {
        Written::Plain(self.to_string())
    }
}

impl Write for bool {
    fn write(&self) -> Written {
        Written::Plain(self.to_string())
    }
}

impl Write for String {
    fn write(&self) -> Written {
        Written::Plain(quoted(self))
    }
}

/// Only what is there is written; a field that is not is left out as its default.
impl<T: Write> Write for Option<T> {
    fn write(&self) -> Written {
        self.as_ref().map_or_else(|| Written::word("None"), Write::write)
    }

    fn parts(&self) -> Option<Vec<Whole>> {
        self.as_ref().and_then(Write::parts)
    }
}

impl<T: Write> Write for Vec<T> {
    fn write(&self) -> Written {
        Written::List(self.iter().map(Write::write).collect())
    }
}

impl<A: Write, B: Write> Write for (A, B) {
    fn write(&self) -> Written {
        Written::Tuple(vec![self.0.write(), self.1.write()])
    }
}

impl Write for Length {
    fn write(&self) -> Written {
        if self.style == Style::Bare && self.text.is_empty() {
            return self.m.write();
        }
        Written::Plain(quoted(&self.to_text()))
    }
}

impl Write for Size {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Point {
    fn write(&self) -> Written {
        Written::Tuple(self.0.iter().map(Write::write).collect())
    }
}

impl Write for TurnedPoint {
    fn write(&self) -> Written {
        Written::Tuple(vec![self.radius.write(), self.height.write()])
    }
}

impl Write for Name {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Ref {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Targets {
    fn write(&self) -> Written {
        match self.0.as_slice() {
            [only] => only.write(),
            names => Written::List(names.iter().map(Write::write).collect()),
        }
    }
}

impl Write for Aim {
    fn write(&self) -> Written {
        match self {
            Self::At(point) => point.write(),
            Self::Thing(name) => name.write(),
        }
    }
}

impl Write for Angle {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Latitude {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Longitude {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Fraction {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Positive {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Fullness {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Count {
    fn write(&self) -> Written {
        self.0.write()
    }
}

impl Write for Band {
    fn write(&self) -> Written {
        let Self { low, typical, high } = self;
        if low == typical && typical == high {
            return typical.write();
        }
        Written::fields(vec![("low", low.write()), ("typical", typical.write()), ("high", high.write())])
    }
}

impl Write for Gamma {
    fn write(&self) -> Written {
        match self {
            Self::Power(band) => band.write(),
            Self::Srgb => Written::word("Srgb"),
        }
    }
}

impl Write for Colour {
    fn write(&self) -> Written {
        let [r, g, b] = self.0;
        if r == g && g == b {
            return r.write();
        }
        Written::Tuple(self.0.iter().map(Write::write).collect())
    }
}

impl Write for Uv {
    fn write(&self) -> Written {
        Written::Tuple(self.0.iter().map(Write::write).collect())
    }
}

impl Write for Date {
    fn write(&self) -> Written {
        self.to_string().write()
    }
}

impl Write for Clock {
    fn write(&self) -> Written {
        self.to_string().write()
    }
}

impl Write for Zone {
    fn write(&self) -> Written {
        self.to_string().write()
    }
}

impl Write for Gauge {
    fn write(&self) -> Written {
        self.to_string().write()
    }
}

impl Write for IpCode {
    fn write(&self) -> Written {
        self.to_string().write()
    }
}

/// A text in quotes, with escapes for what could not stand in them.
fn quoted(text: &str) -> String {
    let mut quoted = String::with_capacity(text.len() + 2);
    quoted.push('"');
    for c in text.chars() {
        match c {
            '"' => quoted.push_str("\\\""),
            '\\' => quoted.push_str("\\\\"),
            '\n' => quoted.push_str("\\n"),
            '\t' => quoted.push_str("\\t"),
            '\r' => quoted.push_str("\\r"),
            c if c.is_control() => {
                // Writing to a string cannot fail.
                let _ = write!(quoted, "\\u{{{:x}}}", u32::from(c));
            }
            c => quoted.push(c),
        }
    }
    quoted.push('"');
    quoted
}
