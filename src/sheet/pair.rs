//! Titles with lines under them, in two columns that are filled evenly.

use super::{
    Weight,
    draw::Sketch,
    flow::{BODY, Column, Flow, line},
};

/// Share of the width that a column takes, and where the second begins.
const COLUMN: (f64, f64) = (0.485, 0.515);

/// A title or a line, as laid out for one column.
struct Piece {
    column: Column,
    /// What it says where it is a title, which the end of a column may not part from what it is the title of.
    title: Option<String>,
}

/// Lays out sections one after the other, each a title with its lines.
pub(super) fn sections<'a>(flow: &mut Flow, sections: impl Iterator<Item = (&'a str, &'a [String])>) {
    let mut pieces: Vec<Piece> = Vec::new();
    for (title, lines) in sections {
        pieces.push(headed(flow, title));
        pieces.extend(lines.iter().map(|says| Piece { column: dotted(flow, says), title: None }));
    }
    pieces.reverse();
    let mut title = String::new();
    while !pieces.is_empty() {
        let tallest = pieces.iter().map(|piece| piece.column.y).fold(0.0, f64::max);
        flow.need((tallest + 2.0 * line(BODY)).min(0.5 * flow.whole()));
        let all: f64 = pieces.iter().map(|piece| piece.column.y).sum();
        let left = filled(flow, 0.0, &mut pieces, (0.5 * all + 0.5 * tallest).min(flow.room()), &mut title);
        let right = filled(flow, COLUMN.1, &mut pieces, flow.room(), &mut title);
        flow.block(vec![left, right]);
        if pieces.last().is_some_and(|next| next.title.is_none()) {
            // What goes on over the page has its title again.
            pieces.push(headed(flow, &title));
        }
    }
}

/// A title.
fn headed(flow: &Flow, title: &str) -> Piece {
    let mut column = flow.column(0.0, COLUMN.0);
    column.gap(3.0);
    column.text(title, 10.0, Weight::Bold);
    Piece { column, title: Some(title.to_owned()) }
}

/// A line with a dot before it.
fn dotted(flow: &Flow, says: &str) -> Column {
    let mut column = flow.column(0.0, COLUMN.0);
    column.indented(says, BODY, Weight::Regular, 10.0);
    let dot = [column.x + 4.0, 0.62 * line(BODY)];
    column.sketch.area(&Sketch::ring(dot, 1.4), 0.0);
    column.gap(1.5);
    column
}

/// A column from the last pieces of a list backwards, as tall as is allowed, but of one piece at least.
fn filled(flow: &Flow, from: f64, pieces: &mut Vec<Piece>, tall: f64, title: &mut String) -> Column {
    let mut column = flow.column(from, COLUMN.0);
    let by = from * flow.width();
    let mut after_title = true;
    while let Some(piece) = pieces.pop() {
        let next = if piece.title.is_some() { pieces.last().map_or(0.0, |next| next.column.y) } else { 0.0 };
        if !after_title && column.y + piece.column.y + next > tall {
            pieces.push(piece);
            break;
        }
        after_title = piece.title.is_some();
        if let Some(says) = piece.title {
            *title = says;
        }
        let mut sketch = piece.column.sketch;
        sketch.shift([by, column.y]);
        column.sketch.extend(sketch);
        column.y += piece.column.y;
    }
    column
}
