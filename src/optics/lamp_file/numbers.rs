//! The numbers of a photometric file, one after another over any number of lines.

use super::LampFileFault;

/// A number with its place.
#[derive(Clone, Copy, Debug)]
pub struct Number {
    /// Its value; finite.
    pub value: f64,
    line: usize,
    number: usize,
}

impl Number {
    /// A fault at this number.
    pub fn fault(self, what: impl Into<String>, remedy: impl Into<String>) -> LampFileFault {
        LampFileFault { line: self.line, number: Some(self.number), what: what.into(), remedy: remedy.into() }
    }

    /// The number as one of a few whole ones.
    pub fn one_of(self, what: &str, allowed: &[u32]) -> Result<u32, LampFileFault> {
        let fits = allowed.iter().find(|one| f64::from(**one) == self.value);
        fits.copied().ok_or_else(|| {
            let list: Vec<String> = allowed.iter().map(u32::to_string).collect();
            self.fault(format!("{what} is {}", self.value), format!("it is one of {}", list.join(", ")))
        })
    }

    /// The number as a count from 1 to `most`.
    pub fn count(self, what: &str, most: usize) -> Result<usize, LampFileFault> {
        let whole = self.value.fract() == 0.0 && (1.0..=most as f64).contains(&self.value);
        if whole {
            return Ok(self.value as usize);
        }
        Err(self.fault(format!("{} {what}", self.value), format!("a whole number from 1 to {most}")))
    }

    /// The number where it is not negative.
    pub fn positive(self, what: &str) -> Result<f64, LampFileFault> {
        if self.value >= 0.0 {
            return Ok(self.value);
        }
        Err(self.fault(format!("{what} is {}", self.value), "it is 0 or more"))
    }
}

/// Reads numbers apart by blanks, commas and line ends.
pub struct Numbers<'a> {
    words: Box<dyn Iterator<Item = (usize, usize, &'a str)> + 'a>,
    last: usize,
}

impl<'a> Numbers<'a> {
    /// Those of the lines after the first `skip`.
    pub fn after(lines: &'a [&'a str], skip: usize) -> Self {
        let words = lines.iter().enumerate().skip(skip).flat_map(|(line, text)| {
            // 26 ended a text on the systems that the oldest files come from.
            let apart = |c: char| c.is_whitespace() || c == ',' || c == '\u{1a}';
            text.split(apart).filter(|word| !word.is_empty()).enumerate().map(move |(i, word)| (line + 1, i + 1, word))
        });
        Self { words: Box::new(words), last: lines.len() }
    }

    /// The next; `what` is what it should be.
    pub fn next(&mut self, what: &str) -> Result<Number, LampFileFault> {
        let Some((line, number, word)) = self.words.next() else {
            let what = format!("the file ends where {what} should stand");
            let remedy = "a file holds as many values as its counts of angles call for".to_owned();
            return Err(LampFileFault { line: self.last, number: None, what, remedy });
        };
        match word.parse::<f64>() {
            Ok(value) if value.is_finite() => Ok(Number { value, line, number }),
            _ => {
                let word: String = word.chars().take(24).collect();
                let what = format!("“{word}” stands where {what} should");
                Err(LampFileFault { line, number: Some(number), what, remedy: "a finite number in digits".to_owned() })
            }
        }
    }

    /// So many of them.
    pub fn list(&mut self, count: usize, what: &str) -> Result<Vec<Number>, LampFileFault> {
        (0..count).map(|_| self.next(what)).collect()
    }

    /// Reports a number too many. Words after the last number are nobody's.
    pub fn end(mut self) -> Result<(), LampFileFault> {
        match self.words.next() {
            Some((line, number, word)) if word.parse::<f64>().is_ok() => Err(LampFileFault {
                line,
                number: Some(number),
                what: format!("“{word}” is one value more than the angles call for"),
                remedy: "check the two counts of angles".to_owned(),
            }),
            _ => Ok(()),
        }
    }
}
