//! Numbers, and the lengths that stand without their quotes.

use super::{Fault, Parser, Shape, clipped};

impl<'t> Parser<'t, '_> {
    /// Takes all that is written together as one number; whether it is one is for its reader to judge.
    pub(super) fn number(&mut self) -> Shape<'t> {
        let start = self.at;
        // A sign belongs to it at its head and after an exponent's e.
        let mut may_be_signed = true;
        let ends = |c: char| {
            let part = c == '.' || c == '_' || c.is_alphanumeric() || (may_be_signed && matches!(c, '+' | '-'));
            may_be_signed = matches!(c, 'e' | 'E');
            !part
        };
        self.at += self.rest().find(ends).unwrap_or(self.rest().len());
        let digits = &self.text[start..self.at];
        match self.unit_after(digits) {
            Some(length) => {
                let fault = Fault::new(format!("the length {} stands without quotes", clipped(&length)))
                    .remedy(format!("write \"{}\"", clipped(&length).replace('"', "\\\"")));
                self.slip(fault, self.since(start));
                Shape::Text(length)
            }
            None => Shape::Number(digits),
        }
    }

    /// The whole length where a unit follows, with or without a space: `1.9 m`, `6ft 3in`, `6'`.
    fn unit_after(&mut self, digits: &str) -> Option<String> {
        const UNITS: [&str; 5] = ["mm", "cm", "m", "ft", "in"];
        let joined = UNITS.iter().any(|unit| {
            digits.strip_suffix(unit).is_some_and(|number| number.ends_with(|c: char| c.is_ascii_digit() || c == '.'))
        });
        let rest = self.rest();
        let word = rest.trim_start_matches([' ', '\t']);
        let word = &word[..word.find(|c: char| !c.is_alphabetic()).unwrap_or(word.len())];
        let parted = rest.starts_with(['\'', '"', '′', '″']) || UNITS.contains(&word);
        if !joined && !parted {
            return None;
        }
        // Only now, since it would be slow to look so far ahead at every number.
        let line = rest.split(['\n', ',', ')', ']']).next().unwrap_or_default();
        let line = line.split("//").next().unwrap_or_default();
        let tail = line.trim();
        self.at += line.trim_end().len();
        Some(if tail.is_empty() { digits.to_owned() } else { format!("{digits} {tail}") })
    }
}
