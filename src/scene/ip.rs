//! How well a housing keeps out dust and water, by the code that is printed on it (IEC 60529).

use super::Fault;
use std::fmt;

/// A code after IEC 60529, such as IP44.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct IpCode {
    /// Against solid things, 0 to 6; `None` where an X stands for it.
    pub solids: Option<u8>,
    /// Against water, 0 to 9; `None` where an X stands for it.
    pub water: Option<u8>,
}

impl IpCode {
    /// What is made for a dry room.
    pub const INDOOR: Self = Self { solids: Some(2), water: Some(0) };
    /// What is read.
    pub const FORM: &str = "such as \"IP44\", as it is printed on the thing; \"IP20\" for what is made for indoors";

    /// Reads `IP44`, `ip 65`, `IPX4`.
    pub fn parse(text: &str) -> Result<Self, Fault> {
        let compact: String = text.chars().filter(|c| !c.is_whitespace()).collect::<String>().to_uppercase();
        let digit = |c: char, most: u8| match c {
            'X' => Some(None),
            c => c.to_digit(10).map(|d| d as u8).filter(|d| *d <= most).map(Some),
        };
        let code = compact.strip_prefix("IP").and_then(|digits| {
            let mut digits = digits.chars();
            let code = Self { solids: digit(digits.next()?, 6)?, water: digit(digits.next()?, 9)? };
            digits.next().is_none().then_some(code)
        });
        let fault = || {
            let text: String = text.chars().take(40).collect();
            Fault::new(format!("“{text}” is no IP code")).remedy(Self::FORM)
        };
        code.ok_or_else(fault)
    }

    /// How well it keeps out water, 0 to 9; nothing that is not said.
    pub fn against_water(self) -> u8 {
        self.water.unwrap_or(0)
    }
}

impl fmt::Display for IpCode {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let digit = |digit: Option<u8>| digit.map_or_else(|| "X".to_owned(), |digit| digit.to_string());
        write!(f, "IP{}{}", digit(self.solids), digit(self.water))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn codes_are_read_and_written_again() {
        for (text, water, written) in
            [("IP44", 4, "IP44"), ("ip 65", 5, "IP65"), ("IPX4", 4, "IPX4"), ("IP2X", 0, "IP2X")]
        {
            let code = IpCode::parse(text).unwrap();
            assert_eq!((code.against_water(), code.to_string()), (water, written.to_owned()));
        }
        for wrong in ["", "44", "IP", "IP4", "IP444", "IP74", "rain-tight"] {
            assert!(IpCode::parse(wrong).unwrap_err().remedy.contains("IP44"), "{wrong}");
        }
    }
}
