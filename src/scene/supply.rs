//! Where electricity comes from: outlets, 12 V supplies and batteries.

use super::{Fraction, IpCode, Name, Point, Positive, Ref};

noun! {
    /// An outlet of the mains.
    Mains as "mains outlet", all optional {
        /// Volts: 230, or 120 in North America.
        volts: Positive = Positive(230.0),
        /// The breaker before it, A.
        breaker_a: Positive = Positive(16.0),
        /// Whether a GFCI or RCD guards it, one that was tested this year.
        gfci: bool = false,
    }
}

noun! {
    /// A supply of low voltage that is fed by the mains.
    TwelveVolt as "12 V supply" {
        /// Volts.
        volts: Positive = Positive(12.0),
        /// What it can give, W.
        watts: Positive,
        /// The fuse at its output, A.
        fuse_a: Option<Positive> = None,
        /// The mains outlet that it is plugged straight into, where no cable goes to it.
        from: Option<Ref> = None,
    }
}

noun! {
    /// A battery.
    Battery as "battery" {
        /// Volts.
        volts: Positive = Positive(12.0),
        /// What is printed on it, Ah.
        amp_hours: Positive,
        /// Share of that which it may give each night; half for lead, more for lithium: common practice, no source.
        usable: Fraction = Fraction(0.5),
        /// The fuse at its terminal, A.
        fuse_a: Option<Positive> = None,
    }
}

/// What a supply is.
#[derive(Clone, Debug, PartialEq)]
pub enum SupplyKind {
    /// An outlet of the mains.
    Mains(Mains),
    /// A supply of low voltage that is fed by the mains.
    TwelveVolt(TwelveVolt),
    /// A battery.
    Battery(Battery),
}

choice! { SupplyKind as "kind of supply" { Mains(Mains), TwelveVolt(TwelveVolt), Battery(Battery) } }

noun! {
    /// Where electricity comes from.
    Supply as "supply" {
        /// Unique name.
        name: Name,
        /// Anything worth remembering.
        note: String = String::new(),
        /// Where it is.
        at: Point,
        /// What it is.
        kind: SupplyKind,
        /// How well its housing keeps out water: the code printed on it.
        ip: IpCode = IpCode::INDOOR,
    }
}

impl SupplyKind {
    /// Volts that it gives.
    pub fn volts(&self) -> f64 {
        match self {
            Self::Mains(one) => one.volts.0,
            Self::TwelveVolt(one) => one.volts.0,
            Self::Battery(one) => one.volts.0,
        }
    }

    /// The fuse at its output, A; an outlet of the mains has its breaker instead.
    pub fn fuse_a(&self) -> Option<f64> {
        match self {
            Self::Mains(_) => None,
            Self::TwelveVolt(one) => one.fuse_a.map(|fuse| fuse.0),
            Self::Battery(one) => one.fuse_a.map(|fuse| fuse.0),
        }
    }

    /// Whether it is an outlet of the mains.
    pub const fn is_mains(&self) -> bool {
        matches!(self, Self::Mains(_))
    }
}
