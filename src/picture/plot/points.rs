//! Labelled points with their bands, as SVG.

mod axis;
mod labels;

pub use axis::Axis;

use axis::Span;
use labels::{Rect, places};
use std::fmt::Write as _;

/// How a point is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Filled.
    Dot,
    /// Larger, with a ring around it: what is there now.
    Ringed,
}

/// A value with its band: low, typical, high.
pub type Bands = [f64; 3];

/// A labelled point.
#[derive(Clone, Debug, PartialEq)]
pub struct Point {
    /// What it is called.
    pub label: String,
    /// Along.
    pub x: Bands,
    /// Upwards.
    pub y: Bands,
    /// How it is drawn.
    pub mark: Mark,
}

/// A plot of labelled points. Where they are many, numbers stand beside them and the names below.
#[derive(Clone, Debug, PartialEq)]
pub struct Points {
    /// Stands above it.
    pub title: String,
    /// A line in small print below the title.
    pub note: String,
    /// Along.
    pub x: Axis,
    /// Upwards.
    pub y: Axis,
    /// What is plotted.
    pub points: Vec<Point>,
}

/// Width of the drawing and the height of its plot, pixels.
const SIZE: (f64, f64) = (960.0, 640.0);
/// The frame of the plot: left, top, right, bottom.
const FRAME: Rect = Rect { left: 78.0, top: 64.0, right: 936.0, bottom: 584.0 };
/// Radius of a point.
const DOT: f64 = 3.5;
/// Letters.
const LETTER: f64 = 12.0;
/// More than this many names would hide each other.
const MOST_NAMES: usize = 30;
/// Columns of names below, and the height of a line.
const COLUMNS: usize = 3;
const LINE: f64 = 16.0;

impl Points {
    /// The drawing.
    pub fn svg(&self) -> String {
        let (across, up) =
            (Span::of(&self.x, self.points.iter().map(|p| p.x)), Span::of(&self.y, self.points.iter().map(|p| p.y)));
        let at_x = |value: f64| FRAME.left + across.share(value) * (FRAME.right - FRAME.left);
        let at_y = |value: f64| FRAME.bottom - up.share(value) * (FRAME.bottom - FRAME.top);
        let numbered = self.points.len() > MOST_NAMES;
        let lines = if numbered { self.points.len().div_ceil(COLUMNS) } else { 0 };
        let height = SIZE.1 + lines as f64 * LINE;
        let mut out = String::new();
        let _ = write!(
            out,
            r##"<svg xmlns="http://www.w3.org/2000/svg" width="{0}" height="{height}" viewBox="0 0 {0} {height}" font-family="sans-serif" font-size="{LETTER}" fill="#000">
<rect width="{0}" height="{height}" fill="#fff"/>
"##,
            SIZE.0
        );
        text(&mut out, FRAME.left, 28.0, "start", r#" font-size="17" font-weight="bold""#, &self.title);
        text(&mut out, FRAME.left, 48.0, "start", "", &self.note);
        self.axes(&mut out, (&across, &at_x), (&up, &at_y));
        // Bands first, so that points and letters stand on them.
        for point in &self.points {
            let ([x0, x, x1], [y0, y, y1]) = (point.x.map(at_x), point.y.map(at_y));
            let _ = writeln!(
                out,
                r##"<path d="M{x0:.1} {y:.1}H{x1:.1}M{x:.1} {y0:.1}V{y1:.1}" stroke="#999" stroke-width="1.2"/>"##
            );
        }
        let spots: Vec<(f64, f64)> = self.points.iter().map(|p| (at_x(p.x[1]), at_y(p.y[1]))).collect();
        let labels: Vec<String> = self
            .points
            .iter()
            .enumerate()
            .map(|(i, p)| if numbered { (i + 1).to_string() } else { p.label.clone() })
            .collect();
        let taken = places(&spots, &labels, FRAME, LETTER);
        for ((x, y), rect) in spots.iter().zip(&taken) {
            let (ax, ay) = rect.nearest(*x, *y);
            if (ax - x).hypot(ay - y) > 3.0 * DOT {
                let _ =
                    writeln!(out, r##"<path d="M{x:.1} {y:.1}L{ax:.1} {ay:.1}" stroke="#000" stroke-width="0.6"/>"##);
            }
        }
        for ((point, (x, y)), (rect, label)) in self.points.iter().zip(&spots).zip(taken.iter().zip(&labels)) {
            let _ = writeln!(out, r#"<circle cx="{x:.1}" cy="{y:.1}" r="{DOT}"/>"#);
            if point.mark == Mark::Ringed {
                let _ = writeln!(
                    out,
                    r##"<circle cx="{x:.1}" cy="{y:.1}" r="{}" fill="none" stroke="#000" stroke-width="1.5"/>"##,
                    2.2 * DOT
                );
            }
            let weight = if point.mark == Mark::Ringed { r#" font-weight="bold""# } else { "" };
            // White behind the letters, so that bands and lines do not run through them.
            let Rect { left, top, right, bottom } = rect;
            let (width, height) = (right - left, bottom - top);
            let _ = writeln!(
                out,
                r##"<rect x="{left:.1}" y="{top:.1}" width="{width:.1}" height="{height:.1}" fill="#fff" fill-opacity="0.8"/>"##
            );
            text(&mut out, left + 2.0, bottom - 4.0, "start", weight, label);
        }
        for (index, point) in self.points.iter().enumerate().filter(|_| numbered) {
            let (column, line) = (index / lines, index % lines);
            let x = FRAME.left + column as f64 * (FRAME.right - FRAME.left) / COLUMNS as f64;
            text(&mut out, x, SIZE.1 + line as f64 * LINE, "start", "", &format!("{}  {}", index + 1, point.label));
        }
        out + "</svg>\n"
    }

    fn axes(
        &self,
        out: &mut String,
        (across, at_x): (&Span, &dyn Fn(f64) -> f64),
        (up, at_y): (&Span, &dyn Fn(f64) -> f64),
    ) {
        let Rect { left, top, right, bottom } = FRAME;
        for (value, name) in across.ticks() {
            let x = at_x(value);
            let _ = writeln!(out, r##"<path d="M{x:.1} {top}V{bottom}" stroke="#ddd"/>"##);
            text(out, x, bottom + 18.0, "middle", "", &name);
        }
        for (value, name) in up.ticks() {
            let y = at_y(value);
            let _ = writeln!(out, r##"<path d="M{left} {y:.1}H{right}" stroke="#ddd"/>"##);
            text(out, left - 8.0, y + 4.0, "end", "", &name);
        }
        let _ = writeln!(
            out,
            r##"<path d="M{left} {top}V{bottom}H{right}" fill="none" stroke="#000" stroke-width="1.2"/>"##
        );
        text(out, 0.5 * (left + right), bottom + 40.0, "middle", "", &self.x.label);
        let middle = 0.5 * (top + bottom);
        text(out, 22.0, middle, "middle", &format!(r#" transform="rotate(-90 22 {middle})""#), &self.y.label);
    }
}

fn text(out: &mut String, x: f64, y: f64, anchor: &str, style: &str, words: &str) {
    let words = words.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    // Writing to a string cannot fail.
    let _ = writeln!(out, r#"<text x="{x:.1}" y="{y:.1}" text-anchor="{anchor}"{style}>{words}</text>"#);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_plot_is_whole_and_says_its_units() {
        let point = |i: usize| Point {
            label: format!("fabric <{i}> & more"),
            x: [0.1, 0.2, 0.3].map(|x| x * (i % 3) as f64),
            y: [0.5, 1.0, 2.0].map(|y| y * (i + 1) as f64),
            mark: if i == 0 { Mark::Ringed } else { Mark::Dot },
        };
        for count in [0, 1, 12, 60] {
            let plot = Points {
                title: "Title".to_owned(),
                note: "Note".to_owned(),
                x: Axis::linear("passes straight through, %"),
                y: Axis::log("luminance, cd/m²"),
                points: (0..count).map(point).collect(),
            };
            let svg = plot.svg();
            assert!(
                svg.starts_with("<svg ") && svg.ends_with("</svg>\n") && !svg.contains("NaN") && !svg.contains("inf")
            );
            assert!(svg.contains("cd/m²") && svg.contains("straight through, %"));
            assert_eq!(svg.matches("r=\"3.5\"").count(), count);
            assert_eq!(svg.matches("&lt;").count(), count);
        }
    }
}
