//! The pages as one HTML file: drawn as SVG with real text, its fonts inside; on paper it comes out as the PDF does.

use super::{Ink, Page, Sheet, Weight, font};
use base64::{Engine as _, engine::general_purpose::STANDARD};
use std::fmt::Write as _;
use svg::{
    Document,
    node::element::{Image, Polygon, Polyline, Text},
};

/// What the two faces are called inside the file.
const FAMILY: &str = "sheet";

/// Writes a sheet. `paper` is that of its pages.
pub fn html(sheet: &Sheet, paper: super::Paper) -> String {
    let title = svg::node::Text::new(sheet.title.as_str());
    let mut out = format!(
        "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>{title}</title>\n<style>\n"
    );
    for (data, weight) in [(font::REGULAR, 400), (font::BOLD, 700)] {
        let _ = writeln!(
            out,
            "@font-face {{ font-family: {FAMILY}; font-weight: {weight}; src: url(data:font/ttf;base64,{}) }}",
            STANDARD.encode(data)
        );
    }
    let _ = writeln!(
        out,
        "@page {{ size: {}; margin: 0 }}\nbody {{ margin: 0; background: #ddd }}\nsvg {{ display: block; margin: 12px auto; background: white }}\n\
         text {{ font-kerning: none; font-variant-ligatures: none }}\n\
         @media print {{ body {{ background: none }} svg {{ margin: 0; break-after: page }} }}\n</style>\n</head>\n<body>",
        paper.css()
    );
    for page in &sheet.pages {
        let _ = writeln!(out, "{}", drawn(page));
    }
    out + "</body>\n</html>\n"
}

/// A page as SVG.
fn drawn(page: &Page) -> Document {
    let [w, h] = page.size;
    let mut document = Document::new()
        .set("viewBox", format!("0 0 {w:.3} {h:.3}"))
        .set("width", format!("{w:.3}pt"))
        .set("height", format!("{h:.3}pt"))
        .set("font-family", FAMILY);
    let list = |points: &[[f64; 2]]| points.iter().map(|[x, y]| format!("{x:.2},{y:.2}")).collect::<Vec<_>>().join(" ");
    for ink in &page.ink {
        document = match ink {
            Ink::Text { at, size, weight, grey, upwards, says } => {
                let text = Text::new(says.as_str()).set("font-size", *size).set("fill", colour(*grey));
                let text = if *weight == Weight::Bold { text.set("font-weight", 700) } else { text };
                let [x, y] = at.map(|v| format!("{v:.2}"));
                document.add(if *upwards {
                    text.set("transform", format!("translate({x} {y}) rotate(-90)"))
                } else {
                    text.set("x", x).set("y", y)
                })
            }
            Ink::Line { points, width, grey, dash } => {
                let line = Polyline::new()
                    .set("points", list(points))
                    .set("fill", "none")
                    .set("stroke", colour(*grey))
                    .set("stroke-width", format!("{width:.2}"))
                    .set("stroke-linejoin", "round");
                document.add(match dash {
                    Some([on, off]) => line.set("stroke-dasharray", format!("{on:.2} {off:.2}")),
                    None => line,
                })
            }
            Ink::Area { points, grey } => {
                document.add(Polygon::new().set("points", list(points)).set("fill", colour(*grey)))
            }
            Ink::Picture { at, size, picture } => {
                let data = format!("data:image/jpeg;base64,{}", STANDARD.encode(&picture.jpeg));
                let image = Image::new().set("href", data).set("x", at[0]).set("y", at[1]);
                document.add(image.set("width", size[0]).set("height", size[1]).set("preserveAspectRatio", "none"))
            }
        };
    }
    document
}

/// A grey as CSS has it.
fn colour(grey: f64) -> String {
    let code = (255.0 * grey).round() as u8;
    format!("#{code:02x}{code:02x}{code:02x}")
}
