//! The one drawing that all writers take: pages of ink, in points of 1/72 in from the left upper corner.

use super::{Digits, font, scale::Scale};
use std::sync::Arc;

/// Which face.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Weight {
    /// For reading.
    #[default]
    Regular,
    /// For finding.
    Bold,
}

/// A picture as a JPEG file (ITU-T T.81) of three channels.
#[derive(Clone, Debug, PartialEq)]
pub struct Picture {
    /// Pixels across and down.
    pub size: [u32; 2],
    /// The file.
    pub jpeg: Vec<u8>,
}

/// One thing on paper. Greys run from 0, black, to 1, paper.
#[derive(Clone, Debug, PartialEq)]
pub enum Ink {
    /// A line of text.
    Text {
        /// Where its base line begins.
        at: [f64; 2],
        /// Height of the type.
        size: f64,
        /// Which face.
        weight: Weight,
        /// Its grey.
        grey: f64,
        /// Whether it runs upwards.
        upwards: bool,
        /// What it says; every character is in the font.
        says: String,
    },
    /// A line through points.
    Line {
        /// The points.
        points: Vec<[f64; 2]>,
        /// How wide.
        width: f64,
        /// Its grey.
        grey: f64,
        /// Lengths of dash and gap; nothing for a whole line.
        dash: Option<[f64; 2]>,
    },
    /// A filled polygon.
    Area {
        /// Its corners.
        points: Vec<[f64; 2]>,
        /// Its grey.
        grey: f64,
    },
    /// A picture.
    Picture {
        /// Its left upper corner.
        at: [f64; 2],
        /// How large.
        size: [f64; 2],
        /// The picture.
        picture: Arc<Picture>,
    },
}

/// A page.
#[derive(Clone, Debug, PartialEq)]
pub struct Page {
    /// Width and height, points.
    pub size: [f64; 2],
    /// What it is about: the yard, or a station.
    pub title: String,
    /// What is on it, the first lowest.
    pub ink: Vec<Ink>,
}

/// Where a text stands against its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stand {
    Start,
    Middle,
    End,
}

/// Ink for one place, gathered before it is known where on the page that is.
#[derive(Clone, Debug, Default)]
pub(super) struct Sketch {
    pub ink: Vec<Ink>,
    pub lost: Vec<char>,
}

impl Sketch {
    pub fn text(&mut self, at: [f64; 2], size: f64, weight: Weight, stand: Stand, says: &str) {
        self.grey_text(at, size, weight, stand, 0.0, says);
    }

    pub fn grey_text(&mut self, at: [f64; 2], size: f64, weight: Weight, stand: Stand, grey: f64, says: &str) {
        let says = font::kept(says, &mut self.lost);
        if says.trim().is_empty() {
            return;
        }
        let back = font::width(&says, size, weight)
            * match stand {
                Stand::Start => 0.0,
                Stand::Middle => 0.5,
                Stand::End => 1.0,
            };
        self.ink.push(Ink::Text { at: [at[0] - back, at[1]], size, weight, grey, upwards: false, says });
    }

    /// Text that runs upwards, its middle at a point.
    pub fn upwards(&mut self, at: [f64; 2], size: f64, weight: Weight, says: &str) {
        let says = font::kept(says, &mut self.lost);
        let half = 0.5 * font::width(&says, size, weight);
        self.ink.push(Ink::Text { at: [at[0], at[1] + half], size, weight, grey: 0.0, upwards: true, says });
    }

    pub fn line(&mut self, points: &[[f64; 2]], width: f64, grey: f64) {
        self.ink.push(Ink::Line { points: points.to_vec(), width, grey, dash: None });
    }

    pub fn dashed(&mut self, points: &[[f64; 2]], width: f64, grey: f64, dash: [f64; 2]) {
        self.ink.push(Ink::Line { points: points.to_vec(), width, grey, dash: Some(dash) });
    }

    pub fn area(&mut self, points: &[[f64; 2]], grey: f64) {
        self.ink.push(Ink::Area { points: points.to_vec(), grey });
    }

    pub fn outline(&mut self, points: &[[f64; 2]], width: f64, grey: f64) {
        let mut closed = points.to_vec();
        // Past the first corner, so that the last joins as the others do.
        closed.extend(points.iter().take(2));
        self.line(&closed, width, grey);
    }

    pub fn rectangle([x, y]: [f64; 2], [w, h]: [f64; 2]) -> [[f64; 2]; 4] {
        [[x, y], [x + w, y], [x + w, y + h], [x, y + h]]
    }

    /// A ring, as a polygon fine enough for paper.
    pub fn ring([x, y]: [f64; 2], radius: f64) -> Vec<[f64; 2]> {
        (0..24)
            .map(|i| (f64::from(i) * std::f64::consts::TAU / 24.0).sin_cos())
            .map(|(sin, cos)| [x + radius * cos, y + radius * sin])
            .collect()
    }

    /// A number in a ring: white on black, so that it is found on any ground.
    pub fn numbered(&mut self, at: [f64; 2], says: &str) {
        let size = 8.0;
        let radius = (0.5 * font::width(says, size, Weight::Bold) + 2.2).max(5.6);
        self.area(&Self::ring(at, radius), 0.0);
        self.grey_text([at[0], at[1] + 0.36 * size], size, Weight::Bold, Stand::Middle, 1.0, says);
    }

    /// A sign in a black box: what a mark is called, found on any ground.
    pub fn tagged(&mut self, at: [f64; 2], says: &str) {
        let [wide, tall] = Self::tag(says);
        self.area(&Self::rectangle([at[0] - 0.5 * wide, at[1] - 0.5 * tall], [wide, tall]), 0.0);
        self.grey_text([at[0], at[1] + 2.9], 8.0, Weight::Bold, Stand::Middle, 1.0, says);
    }

    /// Width and height of such a box.
    pub fn tag(says: &str) -> [f64; 2] {
        [font::width(says, 8.0, Weight::Bold) + 5.0, 10.5]
    }

    /// The bar of a scale, its left end at a point.
    pub fn bar(&mut self, scale: &Scale, digits: Digits, [x, y]: [f64; 2]) {
        let (m, long) = scale.bar(digits, 60.0);
        let says = digits.bar(m);
        let wide = long + font::width(&says, 8.0, Weight::Regular) + 9.0;
        self.area(&Self::rectangle([x - 2.0, y - 7.0], [wide + 4.0, 11.0]), 1.0);
        for (from, to, grey) in [(0.0, 0.5, 0.0), (0.5, 1.0, 1.0)] {
            let half = Self::rectangle([x + from * long, y - 3.0], [(to - from) * long, 3.0]);
            self.area(&half, grey);
            self.outline(&half, 0.5, 0.0);
        }
        self.text([x + long + 4.0, y], 8.0, Weight::Regular, Stand::Start, &says);
    }

    /// A dimension line between two points, its arrows drawn and its length in the middle, beside the line.
    pub fn dimension(&mut self, a: [f64; 2], b: [f64; 2], says: &str) {
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let length = dx.hypot(dy);
        if length < 1e-6 {
            return;
        }
        self.line(&[a, b], 0.5, 0.0);
        let (ux, uy) = (dx / length, dy / length);
        let arm = 4.0_f64.min(0.3 * length);
        for (end, way) in [(a, 1.0), (b, -1.0)] {
            let back = [end[0] + way * arm * ux, end[1] + way * arm * uy];
            let side = 0.33 * arm;
            self.area(
                &[end, [back[0] - side * uy, back[1] + side * ux], [back[0] + side * uy, back[1] - side * ux]],
                0.0,
            );
        }
        let middle = [0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])];
        if dx.abs() >= dy.abs() {
            let wide = font::width(says, 8.0, Weight::Regular) + 3.0;
            self.area(&Self::rectangle([middle[0] - 0.5 * wide, middle[1] - 9.5], [wide, 8.5]), 1.0);
            self.text([middle[0], middle[1] - 2.5], 8.0, Weight::Regular, Stand::Middle, says);
        } else {
            let tall = font::width(says, 8.0, Weight::Regular) + 3.0;
            self.area(&Self::rectangle([middle[0] - 9.5, middle[1] - 0.5 * tall], [8.5, tall]), 1.0);
            self.upwards([middle[0] - 2.5, middle[1]], 8.0, Weight::Regular, says);
        }
    }

    /// Moves all of it to the right and down.
    pub fn shift(&mut self, by: [f64; 2]) {
        let go = |at: &mut [f64; 2]| *at = [at[0] + by[0], at[1] + by[1]];
        for ink in &mut self.ink {
            match ink {
                Ink::Text { at, .. } | Ink::Picture { at, .. } => go(at),
                Ink::Line { points, .. } | Ink::Area { points, .. } => points.iter_mut().for_each(go),
            }
        }
    }

    pub fn extend(&mut self, other: Self) {
        self.ink.extend(other.ink);
        self.lost.extend(other.lost);
    }
}
