//! Which way round a picture stands where it is seen: a card with a colour in each corner, set up in every way.

use crate::lab::{DARK, Lab, v};
use glam::Vec3;

/// Corners of a picture, as seen: left upper, right upper, left lower, right lower.
type Corners = [&'static str; 4];

const RIGHT_WAY: Corners = ["red", "green", "blue", "white"];
const LEFT_FOR_RIGHT: Corners = ["green", "red", "white", "blue"];

/// How a station is set up before a screen at (0, 10, 0) that is looked at from the street.
#[derive(Clone, Copy, Debug)]
struct Setting {
    /// From behind the screen.
    rear: bool,
    pose: &'static str,
    mirrors: usize,
    /// Whether the picture is sent mirrored.
    mirrored: bool,
}

impl Setting {
    /// The yard; each way of the light is 4.5 m long in all.
    fn lab(self) -> Lab {
        // Everything behind the screen stands as in a looking-glass that lies in it.
        let side = if self.rear { -1.0 } else { 1.0 };
        let place = |x: f64, z: f64| format!("({x}, 10, {})", side * z);
        // The last throws light that comes along −x onto the screen, the first has turned it that way.
        let (last, first) = if self.rear { (45, -135) } else { (135, -45) };
        let mirror = |name: &str, at: String, size: f64, turn: i32| {
            format!(r#"(name: "{name}", at: {at}, width: {size}, height: {size}, turn_deg: {turn}),"#)
        };
        let last = mirror("last", place(0.0, 3.0), 1.1, last);
        let first = mirror("first", place(1.0, 3.0), 0.5, first);
        let (at, mirrors, names) = match self.mirrors {
            0 => (place(0.0, 4.5), String::new(), ""),
            1 => (place(1.5, 3.0), last, r#""last""#),
            _ => (place(1.0, 3.5), last + &first, r#""first", "last""#),
        };
        let stance = if self.pose == "Upright" { "Upright" } else { "Wide" };
        Lab::new(&format!(
            r#"{DARK} cloths: [(name: "screen", fabric: "screen", at: (0, 12, 0), width: 4, height: 4)],
            spots: [(name: "street", at: (0, 8.4, 6), look: "screen")], mirrors: [{mirrors}],
            stations: [(name: "station", projector: "16:9", throw_ratio: 3, at: {at}, aim: "screen", pose: {},
                mirrors: [{names}], content: (picture: "corners", stance: {stance}, mirrored: {}))],"#,
            self.pose, self.mirrored
        ))
    }

    /// Colours near the corners of the picture as they are seen from the street.
    fn seen(self) -> Corners {
        let lab = self.lab();
        // 1.5 m long, and held upright as tall as that.
        let (width, height) = if self.pose == "Upright" { (0.84375, 1.5) } else { (1.5, 0.84375) };
        let eye = v(-3.0, 10.0, 4.0);
        let corner = |x: f32, y: f32| {
            let light = lab.colour(eye, v(0.46 * x * width, 10.0 + 0.46 * y * height, 0.0));
            let peak = light.max_element();
            assert!(peak > 0.1, "{self:?}: no light at a corner of the picture");
            match light.to_array().map(|channel| channel > 0.5 * peak) {
                [true, false, false] => "red",
                [false, true, false] => "green",
                [false, false, true] => "blue",
                [true, true, true] => "white",
                _ => "something else",
            }
        };
        [corner(-1.0, 1.0), corner(1.0, 1.0), corner(-1.0, -1.0), corner(1.0, -1.0)]
    }

    /// A look from behind turns a picture, each mirror turns it, and sending it mirrored does.
    fn is_turned(self) -> bool {
        self.rear ^ (self.mirrors % 2 == 1) ^ self.mirrored
    }
}

fn settings() -> impl Iterator<Item = Setting> {
    (0..36).map(|i| Setting {
        rear: i % 2 == 1,
        mirrored: i / 2 % 2 == 1,
        mirrors: i / 4 % 3,
        pose: ["Table", "Ceiling", "Upright"][i / 12],
    })
}

#[test]
fn a_picture_reads_right_where_it_is_sent_right() {
    for setting in settings() {
        let wanted = if setting.is_turned() { LEFT_FOR_RIGHT } else { RIGHT_WAY };
        assert_eq!(setting.seen(), wanted, "{setting:?}");
    }
}

#[test]
fn the_reading_says_so() {
    for setting in settings() {
        assert_eq!(setting.lab().reading().reads_right, !setting.is_turned(), "{setting:?}");
    }
}

/// The picture's own box is given as it is seen, in whichever way the projector lies.
#[test]
fn a_box_in_the_raster_stands_as_it_is_seen() {
    for pose in ["Table", "Ceiling", "Upright"] {
        let stance = if pose == "Upright" { "Upright" } else { "Wide" };
        let lab = Lab::new(&format!(
            r#"{DARK} walls: [(name: "wall", at: (0, 8, 0), width: 4, height: 4, surface: "white")],
            stations: [(name: "station", projector: "16:9", at: (0, 10, 3), aim: (0, 10, 0), pose: {pose},
                content: (picture: "white", stance: {stance}, from: (0, 0), to: (0.5, 0.25)))],"#
        ));
        let (width, height) = if pose == "Upright" { (1.125, 2.0) } else { (2.0, 1.125) };
        let lx = |x: f32, y: f32| lab.lx(v((x - 0.5) * width, 10.0 + (0.5 - y) * height, 0.0), Vec3::Z);
        assert!(lx(0.02, 0.02) > 100.0 && lx(0.48, 0.23) > 100.0, "{pose}");
        assert!(lx(0.52, 0.1) < 1.0 && lx(0.1, 0.27) < 1.0 && lx(0.9, 0.9) < 1.0, "{pose}");
    }
}
