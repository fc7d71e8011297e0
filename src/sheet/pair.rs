//! Titles with lines under them, in two columns that are filled evenly.

use super::{
    Weight,
    draw::Sketch,
    flow::{BODY, Column, Flow, HALF, line},
};

/// A title or a line, as laid out for one column.
struct Piece {
    column: Column,
    /// What it says where it is a title, which the end of a column may not part from what it is the title of.
    title: Option<String>,
}

/// What a column is filled with.
pub(super) enum Item {
    /// A title, which stays with what follows it.
    Title(String),
    /// A line with a dot before it.
    Line(String),
    /// A drawing, as wide as a column.
    Drawing(Column),
}

/// Lays out sections one after the other, each a title with its lines.
pub(super) fn sections<'a>(flow: &mut Flow, sections: impl Iterator<Item = (&'a str, &'a [String])>) {
    let pieces = pieces(flow, sections);
    fill(flow, pieces);
}

/// The same under the title of a part of the work, which never stands alone at the foot of a page; nothing where there is no section.
pub(super) fn part<'a>(flow: &mut Flow, name: &str, sections: impl Iterator<Item = (&'a str, &'a [String])>) {
    let pieces = pieces(flow, sections);
    if !pieces.is_empty() {
        flow.part(name, least(&pieces));
        fill(flow, pieces);
    }
}

/// Lays out titles, lines and drawings.
pub(super) fn mixed(flow: &mut Flow, items: Vec<Item>) {
    let pieces = items.into_iter().map(|item| match item {
        Item::Title(says) => headed(flow, &says),
        Item::Line(says) => Piece { column: dotted(flow, &says), title: None },
        Item::Drawing(column) => Piece { column, title: None },
    });
    let pieces = pieces.collect();
    fill(flow, pieces);
}

fn pieces<'a>(flow: &Flow, sections: impl Iterator<Item = (&'a str, &'a [String])>) -> Vec<Piece> {
    let mut pieces: Vec<Piece> = Vec::new();
    for (title, lines) in sections {
        pieces.push(headed(flow, title));
        pieces.extend(lines.iter().map(|says| Piece { column: dotted(flow, says), title: None }));
    }
    pieces
}

/// Room without which pieces are not begun.
fn least(pieces: &[Piece]) -> f64 {
    pieces.iter().map(|piece| piece.column.y).fold(0.0, f64::max) + 2.0 * line(BODY)
}

fn fill(flow: &mut Flow, mut pieces: Vec<Piece>) {
    pieces.reverse();
    let mut title = String::new();
    while !pieces.is_empty() {
        flow.need(least(&pieces).min(0.5 * flow.whole()));
        let tall = even(&pieces).min(flow.room());
        let left = filled(flow, 0.0, &mut pieces, tall, &mut title);
        let right = filled(flow, HALF.1, &mut pieces, flow.room(), &mut title);
        flow.block(vec![left, right]);
        if pieces.last().is_some_and(|next| next.title.is_none()) {
            // What goes on over the page has its title again.
            pieces.push(headed(flow, &title));
        }
    }
}

/// How tall the left column is where both end as evenly as they can; the pieces stand last first.
fn even(pieces: &[Piece]) -> f64 {
    let all: f64 = pieces.iter().map(|piece| piece.column.y).sum();
    let mut left = 0.0;
    let mut best = (all, all);
    for (at, piece) in pieces.iter().enumerate().rev() {
        left += piece.column.y;
        let ends_a_line = piece.title.is_none() || at == 0;
        let taller = f64::max(left, all - left);
        if ends_a_line && taller < best.0 {
            best = (taller, left);
        }
    }
    // A hair more, so that sums in another order come out.
    best.1 + 1e-6
}

/// A title.
fn headed(flow: &Flow, title: &str) -> Piece {
    let mut column = flow.column(0.0, HALF.0);
    column.gap(3.0);
    column.text(title, 10.0, Weight::Bold);
    Piece { column, title: Some(title.to_owned()) }
}

/// A line with a dot before it.
fn dotted(flow: &Flow, says: &str) -> Column {
    let mut column = flow.column(0.0, HALF.0);
    column.indented(says, BODY, Weight::Regular, 10.0);
    let dot = [column.x + 4.0, 0.62 * line(BODY)];
    column.sketch.area(&Sketch::ring(dot, 1.4), 0.0);
    column.gap(1.5);
    column
}

/// A column from the last pieces of a list backwards, as tall as is allowed, but of one piece at least.
fn filled(flow: &Flow, from: f64, pieces: &mut Vec<Piece>, tall: f64, title: &mut String) -> Column {
    let mut column = flow.column(from, HALF.0);
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
