//! Lengths, angles and light: parsing and showing. Conversion between units happens here and nowhere else;
//! inside, the program is metric, in radians, lumens, lux and cd/m².

mod air;
pub mod border;
mod force;
mod length;
mod length_format;
mod length_parse;
mod reason;
mod show;
mod text;

pub use air::{M3_H_PER_CFM, air_flow, fahrenheit, rise, temperature};
pub use force::{KILOGRAMS_PER_POUND, M_S_PER_MILE_AN_HOUR, NEWTONS_PER_POUND, force, mass, wind};
pub use length::{Length, LengthError, Style};
pub use reason::reason;
pub use show::{
    LUX_PER_FOOT_CANDLE, NITS_PER_FOOT_LAMBERT, about, candelas, foot_candles, foot_lamberts, illuminance, lux,
    two_digits, with_band,
};
pub use text::{clipped, decimals, is_invisible, is_obeyed, number, printable};
