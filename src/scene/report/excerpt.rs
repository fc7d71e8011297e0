//! What a report shows of a file: the line of a fault with those beside it, each no longer than a person reads.

use crate::scene::Place;
use crate::units::printable;
use miette::{MietteError, MietteSpanContents, SourceCode, SourceSpan, SpanContents};

/// Characters of a line that are shown.
const WINDOW: usize = 160;

/// Of these before the place, where the line is longer.
const BEFORE: usize = 60;

/// Three lines at most, none long, nothing in them that a terminal would obey, and where in them the fault stands.
#[derive(Debug)]
pub(super) struct Excerpt {
    text: String,
    file_name: String,
    /// The first line, counted from 0.
    first_line: usize,
    /// Where the fault stands in the file, line and column counted from 0.
    at: (usize, usize),
    /// Where it stands in the excerpt, bytes.
    span: SourceSpan,
}

impl Excerpt {
    /// The part of a text around a place, whose line and column are counted from 1.
    pub fn of(text: &str, place: Place, (line, column): (usize, usize), file_name: &str) -> Self {
        let offset = floor(text, place.offset);
        let start = text[..offset].rfind('\n').map_or(0, |newline| newline + 1);
        let end = text[offset..].find('\n').map_or(text.len(), |newline| offset + newline);
        let last = floor(text, offset.saturating_add(place.len)).clamp(offset, end);
        let mut shown = String::new();
        let mut first_line = line - 1;
        if start > 0 {
            let above = &text[..start - 1];
            shown += &clipped(&above[above.rfind('\n').map_or(0, |newline| newline + 1)..]);
            shown.push('\n');
            first_line -= 1;
        }
        // The line itself: a window about the place.
        let from = back(&text[start..offset], BEFORE) + start;
        let from = if text[start..end].chars().nth(WINDOW).is_none() { start } else { from };
        let until = ahead(&text[from..end], WINDOW) + from;
        let last = last.min(until);
        let cut = |is_cut: bool| if is_cut { "…" } else { "" };
        shown += cut(from > start);
        shown += &plain(&text[from..offset]);
        let begins = shown.len();
        shown += &plain(&text[offset..last]);
        let span = SourceSpan::from((begins, shown.len() - begins));
        shown += &plain(text[last..until].trim_end_matches('\r'));
        shown += cut(until < end);
        if end < text.len() {
            shown.push('\n');
            shown += &clipped(text[end + 1..].split('\n').next().unwrap_or_default());
        }
        Self { text: shown, file_name: file_name.to_owned(), first_line, at: (line - 1, column - 1), span }
    }

    /// Where the fault stands in the excerpt.
    pub fn span(&self) -> SourceSpan {
        self.span
    }
}

impl SourceCode for Excerpt {
    /// All of it where lines around the span are asked for; without such, where the span itself begins.
    fn read_span<'a>(
        &'a self,
        span: &SourceSpan,
        before: usize,
        after: usize,
    ) -> Result<Box<dyn SpanContents<'a> + 'a>, MietteError> {
        let (name, bytes) = (self.file_name.clone(), self.text.as_bytes());
        Ok(Box::new(if (before, after) == (0, 0) {
            let part = bytes.get(span.offset()..span.offset() + span.len()).ok_or(MietteError::OutOfBounds)?;
            MietteSpanContents::new_named(name, part, *span, self.at.0, self.at.1, 1)
        } else {
            let (all, lines) = (SourceSpan::from((0, bytes.len())), self.text.lines().count());
            MietteSpanContents::new_named(name, bytes, all, self.first_line, 0, lines)
        }))
    }
}

/// The place in a text at or before this one that parts two characters.
fn floor(text: &str, at: usize) -> usize {
    let mut at = at.min(text.len());
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// Where the last so many characters of a text begin.
fn back(text: &str, count: usize) -> usize {
    text.char_indices().rev().take(count).last().map_or(text.len(), |(at, _)| at)
}

/// Where the first so many characters of a text end.
fn ahead(text: &str, count: usize) -> usize {
    text.char_indices().nth(count).map_or(text.len(), |(at, _)| at)
}

/// The head of a line.
fn clipped(line: &str) -> String {
    let end = ahead(line, WINDOW);
    plain(line[..end].trim_end_matches('\r')) + if end < line.len() { "…" } else { "" }
}

/// A part of a line with nothing in it that a terminal would obey.
fn plain(part: &str) -> String {
    printable(&part.replace('\t', "    "))
}
