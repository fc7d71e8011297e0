//! Texts and characters in quotes.

use super::{Fault, Parsed, Parser, Place, Shape};

impl<'t> Parser<'t, '_> {
    /// `"…"` with its escapes resolved.
    pub(super) fn text_in_quotes(&mut self) -> Parsed<String> {
        let opened = self.here();
        self.at += 1;
        let mut text = String::new();
        loop {
            let rest = self.rest();
            let Some(mark) = rest.find(['"', '\\']) else {
                return self
                    .stop(Fault::new("this text is never closed").remedy("close it with a quotation mark"), opened);
            };
            text.push_str(&rest[..mark]);
            self.at += mark;
            if self.take("\"") {
                return Ok(text);
            }
            self.escape(&mut text);
        }
    }

    /// `r"…"` or `r#"…"#`.
    pub(super) fn raw_text(&mut self) -> Parsed<String> {
        let opened = self.here();
        self.at += 1;
        let hashes = self.rest().len() - self.rest().trim_start_matches('#').len();
        self.at += hashes + 1;
        let closing = format!("\"{}", "#".repeat(hashes));
        let Some(end) = self.rest().find(&closing) else {
            return self
                .stop(Fault::new("this raw text is never closed").remedy(format!("close it with {closing}")), opened);
        };
        let text = self.rest()[..end].to_owned();
        self.at += end + closing.len();
        Ok(text)
    }

    pub(super) fn starts_raw_text(&self) -> bool {
        self.rest().strip_prefix('r').is_some_and(|rest| rest.trim_start_matches('#').starts_with('"'))
    }

    /// `'x'`, which no part of a yard is; its reader says so.
    pub(super) fn character(&mut self) -> Parsed<Shape<'t>> {
        let start = self.at;
        self.at += 1;
        let rest = self.rest();
        // An escaped quotation mark does not end it.
        let from = if rest.starts_with('\\') { rest.chars().take(2).map(char::len_utf8).sum() } else { 0 };
        match rest[from..].find(['\'', '\n']).filter(|end| rest[from + end..].starts_with('\'')) {
            Some(end) => {
                self.at += from + end + 1;
                Ok(Shape::Char)
            }
            None => {
                let fault =
                    Fault::new("this single quotation mark is never closed").remedy("text stands in double quotes");
                self.stop(fault, Place { offset: start, len: 1 })
            }
        }
    }

    /// Resolves the escape that stands here; one that is none is reported and kept as it is.
    fn escape(&mut self, text: &mut String) {
        let start = self.at;
        self.at += 1;
        let Some(kind) = self.peek() else { return };
        self.at += kind.len_utf8();
        let resolved = match kind {
            '"' | '\\' | '\'' => Some(kind),
            'n' => Some('\n'),
            't' => Some('\t'),
            'r' => Some('\r'),
            '0' => Some('\0'),
            'x' => self.hex_digits(2),
            'u' => self.braced_hex_digits(),
            _ => None,
        };
        match resolved {
            Some(c) => text.push(c),
            None => {
                let fault = Fault::new("this backslash begins no escape that is known")
                    .remedy("write \\\\ for a backslash itself");
                self.slip(fault, self.since(start));
                text.push_str(&self.text[start..self.at]);
            }
        }
    }

    fn hex_digits(&mut self, count: usize) -> Option<char> {
        let digits = self.rest().get(..count)?;
        let c = char::from_u32(hex(digits)?)?;
        self.at += count;
        Some(c)
    }

    fn braced_hex_digits(&mut self) -> Option<char> {
        let inner = self.rest().strip_prefix('{')?;
        let end = inner.find('}').filter(|end| *end <= 6)?;
        let c = char::from_u32(hex(&inner[..end])?)?;
        self.at += end + 2;
        Some(c)
    }
}

fn hex(digits: &str) -> Option<u32> {
    if digits.is_empty() || !digits.bytes().all(|byte| byte.is_ascii_hexdigit()) {
        return None;
    }
    u32::from_str_radix(digits, 16).ok()
}
