//! Readers of the small values, each with its range.

use super::basic::{number, out_of_range, tuple, wanted};
use super::{Fields, Read};
use crate::scene::tree::{Node, Shape, clipped};
use crate::scene::{
    Aim, Angle, Band, Colour, Count, Fault, Faults, Fraction, Fullness, Gamma, Latitude, Longitude, Name, Place, Point,
    Positive, Ref, Size, Sort, Targets, TurnedPoint, Uv,
};
use crate::units::Length;

/// The world ends here.
const FARTHEST: f64 = crate::scene::FARTHEST_M;

impl Read for Length {
    const SORT: Sort = Sort::Length;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        match &node.shape {
            Shape::Text(text) => match Self::parse(text) {
                Ok(length) => Some(length),
                Err(error) => {
                    let what = format!("“{}” is not a length", clipped(&error.text));
                    faults.push(Fault::new(what).remedy(error.remedy).at(node.place));
                    None
                }
            },
            Shape::Number(_) | Shape::Word("NaN" | "inf") => f64::read(node, faults).map(Self::metres),
            _ => wanted("a length", "such as 1.9, \"190 cm\" or \"6ft 3in\"", node, faults),
        }
    }
}

/// A length from `least` to `most` metres.
fn length(least: f64, most: f64, allowed: &str, node: &Node<'_>, faults: &mut Faults) -> Option<Length> {
    let length = Length::read(node, faults)?;
    if (least..=most).contains(&length.m) {
        return Some(length);
    }
    faults.push(Fault::new(format!("{length} is out of range")).remedy(allowed).at(node.place));
    None
}

impl Read for Size {
    const SORT: Sort = Sort::Length;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        length(f64::MIN_POSITIVE, FARTHEST, "greater than 0 and at most 500 m", node, faults).map(Self)
    }
}

impl Read for Point {
    const SORT: Sort = Sort::Lengths(3);

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        let nodes: [&Node<'_>; 3] = tuple(node, "a position", "(x, y, z)", faults)?;
        let mut index = 0;
        let [x, y, z] = nodes.map(|node| {
            let coordinate =
                faults.in_item(index, |faults| length(-FARTHEST, FARTHEST, "from -500 to 500 m", node, faults));
            index += 1;
            coordinate
        });
        Some(Self([x?, y?, z?]))
    }
}

impl Read for TurnedPoint {
    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        let (radius, height) = <(Length, Length)>::read(node, faults)?;
        Some(Self { radius, height })
    }
}

impl Read for Name {
    const SORT: Sort = Sort::Text;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        String::read(node, faults).map(|name| Self(name, node.place))
    }

    fn stand_in() -> Option<Self> {
        // Never seen, but it must pass for a name, or it would draw a second fault.
        Some(Self("unnamed".to_owned(), Place::default()))
    }
}

impl Read for Ref {
    const SORT: Sort = Sort::Name;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        String::read(node, faults).map(|name| Self(name, node.place))
    }
}

impl Read for Targets {
    const SORT: Sort = Sort::Names;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        match node.shape {
            Shape::Word("None") => Some(Self::default()),
            Shape::List(_) => Vec::read(node, faults).map(Self),
            _ => Ref::read(node.inside_some(), faults).map(|name| Self(vec![name])),
        }
    }
}

impl Read for Aim {
    const SORT: Sort = Sort::Aim;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        match node.shape {
            Shape::Text(_) => Ref::read(node, faults).map(Self::Thing),
            Shape::Group { title: None, .. } => Point::read(node, faults).map(Self::At),
            _ => wanted("an aim", "the name of a thing in quotes, or a position (x, y, z)", node, faults),
        }
    }
}

impl Read for Angle {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        number(-360.0, 360.0, "degrees from -360 to 360", node, faults).map(Self)
    }
}

impl Read for Latitude {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        number(-Self::MOST, Self::MOST, Self::ALLOWED, node, faults).map(Self)
    }
}

impl Read for Longitude {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        number(-Self::MOST, Self::MOST, Self::ALLOWED, node, faults).map(Self)
    }
}

impl Read for Fraction {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        number(0.0, 1.0, "from 0 to 1", node, faults).map(Self)
    }
}

impl Read for Positive {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        number(f64::MIN_POSITIVE, 1e7, "greater than 0 and at most 10 million", node, faults).map(Self)
    }
}

impl Read for Fullness {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        number(1.0, 4.0, "from 1 (flat) to 4", node, faults).map(Self)
    }
}

impl Read for Count {
    const SORT: Sort = Sort::Number;

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        let value = f64::read(node, faults)?;
        if value.fract() == 0.0 && (1.0..=10_000.0).contains(&value) {
            return Some(Self(value as u32));
        }
        out_of_range("a whole number from 1 to 10000", node, faults)
    }
}

/// One of the three numbers of a band.
struct BandPart(f64);

impl Read for BandPart {
    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        number(0.0, 1e7, "from 0 to 10 million", node, faults).map(Self)
    }
}

impl Read for Band {
    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        match node.shape {
            Shape::Number(_) => BandPart::read(node, faults).map(|part| Self::exact(part.0)),
            Shape::Group { .. } => {
                let mut fields = Fields::open(node, "Band", "band", &["low", "typical", "high"], faults)?;
                let low = fields.required::<BandPart>("low", faults);
                let typical = fields.required::<BandPart>("typical", faults);
                let high = fields.required::<BandPart>("high", faults);
                let band = Self { low: low?.0, typical: typical?.0, high: high?.0 };
                if band.low > band.typical || band.typical > band.high {
                    let fault = Fault::new("the three numbers of this band are out of order");
                    faults.push(fault.remedy("low is at most typical, typical at most high").at(node.head()));
                    return None;
                }
                fields.is_sound().then_some(band)
            }
            _ => wanted("a number or a band", "such as 0.6 or (low: 0.5, typical: 0.6, high: 0.7)", node, faults),
        }
    }
}

impl Read for Gamma {
    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        match node.shape {
            Shape::Word("Srgb") => Some(Self::Srgb),
            Shape::Number(_) | Shape::Group { .. } => Band::read(node, faults).map(Self::Power),
            _ => wanted("a gamma", "such as 2.2, (low: 2, typical: 2.2, high: 2.4) or Srgb", node, faults),
        }
    }
}

impl Read for Colour {
    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        const ALLOWED: &str = "each channel from 0 to 1";
        if matches!(node.shape, Shape::Number(_)) {
            return number(0.0, 1.0, ALLOWED, node, faults).map(Self::grey);
        }
        let nodes: [&Node<'_>; 3] = tuple(node, "a colour", "one number, or (red, green, blue)", faults)?;
        let [r, g, b] = nodes.map(|node| number(0.0, 1.0, ALLOWED, node, faults));
        Some(Self([r?, g?, b?]))
    }
}

impl Read for Uv {
    const SORT: Sort = Sort::Numbers(2);

    fn read(node: &Node<'_>, faults: &mut Faults) -> Option<Self> {
        let nodes: [&Node<'_>; 2] = tuple(node, "a pair of numbers", "(u, v)", faults)?;
        let [u, v] = nodes.map(|node| number(-4.0, 4.0, "each from -4 to 4", node, faults));
        Some(Self([u?, v?]))
    }
}
