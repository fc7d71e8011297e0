//! The weather that a season brings: what boxes, cables and ties are made for.

use crate::units::Length;

noun! {
    /// The weather to be ready for.
    Climate as "climate", all optional {
        /// Coldest night, °C.
        coldest_c: f64 = -10.0,
        /// Warmest hour in which something runs, °C.
        warmest_c: f64 = 15.0,
        /// Strongest gust that anything is left up in, m/s.
        gust_m_s: f64 = 13.0,
        /// Height above the sea.
        above_sea: Length = Length::metres(0.0),
    }
}
