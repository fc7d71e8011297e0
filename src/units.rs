//! Lengths, angles and light: parsing and showing. Conversion between units happens here and nowhere else;
//! inside, the program is metric, in radians, lumens, lux and cd/m².

mod length;

pub use length::{Length, LengthError, Style};
