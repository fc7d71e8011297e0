//! No text lies over another, and none is cut off: with 24 stations and names of 40 letters, on both papers and in both units.

use super::{
    SETUPS, Stage,
    read::{Leaf, Run, leaves},
    yards::{by_chance, long},
};
use gauzelight::sheet::{Ink, Sheet, Weight, pdf};

/// What printers leave free at an edge, points: a sixth of an inch.
const FREE: f64 = 12.0;
/// Boxes may touch by so much, points.
const TOUCH: f64 = 0.4;
/// The least type that is read on a ladder, points.
const LEAST: f64 = 8.0;

fn faults(leaves: &[Leaf]) -> Vec<String> {
    let mut list = Vec::new();
    for (page, leaf) in leaves.iter().enumerate() {
        let [w, h] = leaf.size;
        for run in &leaf.runs {
            let [left, low, right, high] = run.edges;
            if left < FREE || low < FREE || right > w - FREE || high > h - FREE {
                list.push(format!("page {}: “{}” is cut off", page + 1, run.says));
            }
            if run.size < LEAST - 1e-6 {
                list.push(format!("page {}: “{}” is too small", page + 1, run.says));
            }
        }
        for (index, a) in leaf.runs.iter().enumerate() {
            for b in &leaf.runs[index + 1..] {
                if over(a, b) {
                    list.push(format!("page {}: “{}” over “{}”", page + 1, a.says, b.says));
                }
            }
        }
    }
    list
}

fn over(a: &Run, b: &Run) -> bool {
    let meets = |low: usize, high: usize| a.edges[low].max(b.edges[low]) + TOUCH < a.edges[high].min(b.edges[high]);
    meets(0, 2) && meets(1, 3)
}

#[test]
fn no_text_lies_over_another_and_none_is_cut_off() {
    let stage = Stage::of(&by_chance(24, 11, long));
    for (paper, units) in SETUPS {
        let leaves = leaves(&pdf(&stage.sheet(paper, units)).unwrap());
        let found = faults(&leaves);
        assert!(found.is_empty(), "{paper:?} {units:?}: {} faults: {:#?}", found.len(), &found[..found.len().min(12)]);
        assert!(leaves.len() >= 25, "{} pages", leaves.len());
    }
}

/// A line of text on the second page.
fn planted(sheet: &Sheet, at: [f64; 2], says: &str) -> Sheet {
    let mut sheet = sheet.clone();
    let text = Ink::Text { at, size: 9.0, weight: Weight::Regular, grey: 0.0, upwards: false, says: says.to_owned() };
    sheet.pages[1].ink.push(text);
    sheet
}

#[test]
fn a_planted_overlap_and_a_planted_clip_are_found() {
    let (paper, units) = SETUPS[0];
    let sheet = Stage::of(&by_chance(2, 11, long)).sheet(paper, units);
    assert!(faults(&leaves(&pdf(&sheet).unwrap())).is_empty());
    let [w, h] = sheet.pages[1].size;
    let head = sheet.pages[1].ink.iter().find_map(|ink| match ink {
        Ink::Text { at, .. } => Some(*at),
        _ => None,
    });
    let [x, y] = head.unwrap();
    let found = faults(&leaves(&pdf(&planted(&sheet, [x + 8.0, y], "planted")).unwrap()));
    assert!(
        found.iter().any(|fault| fault.contains("over “planted”") || fault.contains("“planted” over")),
        "{found:?}"
    );
    for at in [[w - 30.0, 0.5 * h], [2.0, 0.5 * h], [0.5 * w, h - 3.0]] {
        let found = faults(&leaves(&pdf(&planted(&sheet, at, "planted")).unwrap()));
        assert!(found.iter().any(|fault| fault.contains("“planted” is cut off")), "{found:?}");
    }
}
