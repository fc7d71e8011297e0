//! Reads a PDF file back: every piece of text with its box, from the page's operators, the fonts' widths and their maps to Unicode
//! (ISO 32000-1, 9.4, 9.7 and 9.10).

use lopdf::{Dictionary, Document, Object, content::Content};
use std::collections::BTreeMap;

/// A piece of text as it stands on a page.
#[derive(Clone, Debug)]
pub struct Run {
    pub says: String,
    pub size: f64,
    /// Left, lower, right and upper edge, points from the left lower corner.
    pub edges: [f64; 4],
}

/// A page.
#[derive(Debug)]
pub struct Leaf {
    pub size: [f64; 2],
    pub runs: Vec<Run>,
}

impl Leaf {
    /// All of its text in the order in which it was set.
    pub fn text(&self) -> String {
        self.runs.iter().map(|run| run.says.as_str()).collect::<Vec<_>>().join(" ")
    }
}

struct Font {
    widths: BTreeMap<u16, f64>,
    letters: BTreeMap<u16, String>,
}

/// Part of the type's size that letters reach above and below their base line: what this font's capitals and tails take.
const ABOVE: f64 = 0.72;
const BELOW: f64 = 0.24;

pub fn leaves(file: &[u8]) -> Vec<Leaf> {
    let document = Document::load_mem(file).unwrap();
    document.page_iter().map(|id| leaf(&document, id)).collect()
}

fn number(object: &Object) -> f64 {
    match object {
        Object::Integer(value) => *value as f64,
        other => f64::from(other.as_float().unwrap()),
    }
}

type Matrix = [f64; 6];

const WHOLE: Matrix = [1.0, 0.0, 0.0, 1.0, 0.0, 0.0];

/// First `inner`, then `outer` (ISO 32000-1, 8.3.4).
fn times(outer: Matrix, inner: Matrix) -> Matrix {
    let [a, b, c, d, e, f] = outer;
    let [g, h, i, j, k, l] = inner;
    [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f]
}

fn leaf(document: &Document, id: lopdf::ObjectId) -> Leaf {
    let page = document.get_dictionary(id).unwrap();
    let media: Vec<f64> = page.get(b"MediaBox").unwrap().as_array().unwrap().iter().map(number).collect();
    let fonts: BTreeMap<Vec<u8>, Font> = document
        .get_page_fonts(id)
        .unwrap()
        .into_iter()
        .map(|(name, font)| (name, self::font(document, font)))
        .collect();
    let content = Content::decode(&document.get_page_content(id).unwrap()).unwrap();
    let mut runs = Vec::new();
    let (mut face, mut size) = (Vec::new(), 0.0);
    // Where the page's own units lie, what was put aside of that, and where the next glyph stands in the text's own.
    let (mut page_from, mut aside, mut page_from_text) = (WHOLE, Vec::new(), WHOLE);
    for operation in &content.operations {
        let numbers = || -> Matrix { std::array::from_fn(|i| number(&operation.operands[i])) };
        match operation.operator.as_str() {
            "q" => aside.push(page_from),
            "Q" => page_from = aside.pop().unwrap(),
            "cm" => page_from = times(page_from, numbers()),
            "Tf" => {
                face = operation.operands[0].as_name().unwrap().to_vec();
                size = number(&operation.operands[1]);
            }
            "Tm" => page_from_text = numbers(),
            "Tj" | "TJ" => {
                let font = &fonts[&face];
                let parts = match &operation.operands[0] {
                    Object::Array(parts) => parts.clone(),
                    other => vec![other.clone()],
                };
                let (mut says, mut wide) = (String::new(), 0.0);
                for part in &parts {
                    let Ok(codes) = part.as_str() else {
                        wide -= number(part) / 1000.0 * size;
                        continue;
                    };
                    for pair in codes.chunks(2) {
                        let glyph = u16::from_be_bytes([pair[0], pair[1]]);
                        says += &font.letters[&glyph];
                        wide += font.widths[&glyph] / 1000.0 * size;
                    }
                }
                let m = times(page_from, page_from_text);
                let place = |x: f64, y: f64| [m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5]];
                let [a, b] = [place(0.0, -BELOW * size), place(wide, ABOVE * size)];
                let edges = [a[0].min(b[0]), a[1].min(b[1]), a[0].max(b[0]), a[1].max(b[1])];
                runs.push(Run { says, size, edges });
            }
            "Td" | "TD" | "T*" | "'" | "\"" | "Tc" | "Tw" | "Tz" | "Ts" => panic!("{} is not read", operation.operator),
            // Text that a clip or a form could hide is none that this reader would vouch for.
            "W" | "W*" => panic!("a clip"),
            _ => {}
        }
    }
    Leaf { size: [media[2], media[3]], runs }
}

fn font(document: &Document, font: &Dictionary) -> Font {
    let follow = |object: &Object| document.dereference(object).unwrap().1.clone();
    let inner = follow(&follow(font.get(b"DescendantFonts").unwrap()).as_array().unwrap()[0]);
    let inner = inner.as_dict().unwrap().clone();
    let about = follow(inner.get(b"FontDescriptor").unwrap());
    let file = follow(about.as_dict().unwrap().get(b"FontFile2").unwrap());
    assert!(file.as_stream().unwrap().decompressed_content().unwrap().len() > 5000, "the font is not inside");
    let mut widths = BTreeMap::new();
    let list = follow(inner.get(b"W").unwrap());
    let mut list = list.as_array().unwrap().iter();
    // Either a first glyph and the widths from there on, or a first, a last and the one width of all (9.7.4.3).
    while let Some(first) = list.next() {
        let first = number(first) as u16;
        match list.next().unwrap() {
            Object::Array(each) => widths.extend((first..).zip(each.iter().map(number))),
            last => {
                let width = number(list.next().unwrap());
                widths.extend((first..=number(last) as u16).map(|glyph| (glyph, width)));
            }
        }
    }
    let map = follow(font.get(b"ToUnicode").unwrap());
    let map = String::from_utf8(map.as_stream().unwrap().decompressed_content().unwrap()).unwrap();
    Font { widths, letters: letters(&map) }
}

/// The text of every glyph, by the lines of a map that writes each on its own or a range on one (9.10.3).
fn letters(map: &str) -> BTreeMap<u16, String> {
    let units = |hex: &str| -> Vec<u16> {
        (0..hex.len() / 4).map(|i| u16::from_str_radix(&hex[4 * i..4 * i + 4], 16).unwrap()).collect()
    };
    let (mut letters, mut in_list) = (BTreeMap::new(), false);
    for line in map.lines() {
        in_list =
            (in_list || line.ends_with("beginbfchar") || line.ends_with("beginbfrange")) && !line.starts_with("end");
        let parts: Vec<&str> = line.split(['<', '>']).map(str::trim).filter(|part| !part.is_empty()).collect();
        match parts[..] {
            [glyph, text] if in_list => {
                letters.insert(units(glyph)[0], String::from_utf16(&units(text)).unwrap());
            }
            [first, last, text] if in_list => {
                for (step, glyph) in (units(first)[0]..=units(last)[0]).enumerate() {
                    let mut text = units(text);
                    *text.last_mut().unwrap() += step as u16;
                    letters.insert(glyph, String::from_utf16(&text).unwrap());
                }
            }
            _ => {}
        }
    }
    letters
}
