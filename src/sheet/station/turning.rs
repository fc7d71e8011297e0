//! How the projector is turned, set and told which way its picture stands.

use super::{Page, boxed};
use crate::{
    scene::Pose,
    sheet::{
        digits::{degrees, turned},
        flow::Flow,
        pose::PoseSheet,
    },
};

/// A tilt as it is printed.
pub(super) fn tilt(deg: f64) -> String {
    turned(deg, ["down", "up"], "level")
}

/// A pan as it is printed, and what it is taken from: the way in from the street, or for what looks out the way out.
fn pan(deg: f64) -> (String, &'static str) {
    if deg.abs() <= 90.0 {
        return (turned(deg, ["left", "right"], ""), "of straight in from the street");
    }
    let out = (deg + 360.0).rem_euclid(360.0) - 180.0;
    (turned(out, ["left", "right"], ""), "of straight out to the street")
}

/// Six boxes in a row, and three more for each mirror.
pub(super) fn boxes(flow: &mut Flow, page: &Page) {
    let (pose, digits) = (&page.worked.pose, page.digits);
    let text = |says: &str| says.to_owned();
    let off = || text("–");
    let turn = pose.turn;
    let square = page.landed().and_then(|landed| landed.off_square_deg);
    let square = square.map_or_else(String::new, |deg| format!("; meets its target {} off square", degrees(deg)));
    let lies = match pose.lies {
        Pose::Table => "on its feet",
        Pose::Upright => "on its side, the right side down as it looks",
        Pose::Ceiling => "upside down",
    };
    let roll = turn.map_or_else(off, |turn| turned(turn.roll_deg, ["counter-clockwise", "clockwise"], ""));
    let depth = page.worked.aimed.as_ref().map_or(0.0, |aimed| aimed.depth_m);
    let size = (depth > 0.0 && pose.throw_ratio > 0.0).then(|| {
        let wide = depth / pose.throw_ratio;
        let tall = wide * f64::from(pose.pixels[1]) / f64::from(pose.pixels[0].max(1));
        let [depth, wide, tall] = [depth, wide, tall].map(|m| digits.length(m));
        format!("{wide} × {tall} square to the light at {depth}")
    });
    let zoom = match pose.zoom {
        Some([wide, tele]) => format!("zoom of {wide:.2} to {tele:.2}"),
        None => text("fixed"),
    };
    boxed(
        flow,
        &[
            [
                text("Tilt, a phone's level along its body"),
                turn.map_or_else(off, |turn| tilt(turn.tilt_deg)),
                text("the way the light goes"),
            ],
            [
                text("Pan"),
                turn.map_or_else(off, |turn| pan(turn.pan_deg).0),
                format!("{}{square}", turn.map_or("", |turn| pan(turn.pan_deg).1)),
            ],
            [text("Lies, and rolled beyond that as it looks"), roll, text(lies)],
            [
                format!("Throw ratio, {zoom}"),
                format!("{:.3}", pose.throw_ratio),
                format!(
                    "{}{} × {} pixels{}",
                    size.map_or_else(String::new, |size| format!("{size}; ")),
                    pose.pixels[0],
                    pose.pixels[1],
                    shift(pose)
                ),
            ],
            [
                text("Focus, along its axis"),
                pose.focus.map_or_else(off, |m| digits.length(m)),
                format!("sharp from {} on", digits.length(pose.nearest)),
            ],
            [text("Picture"), text(sent(pose)), told(pose)],
        ],
    );
    for mirror in &pose.mirrors {
        let place = page.by_lines(mirror.at);
        boxed(
            flow,
            &[
                [format!("Mirror “{}”, its middle", mirror.name), text("set first"), place],
                [text("Mirror, tilt of its face"), tilt(mirror.tilt_deg), text("a level on its silvered side")],
                [text("Mirror, pan of its face"), pan(mirror.pan_deg).0, text(pan(mirror.pan_deg).1)],
            ],
        );
    }
    if page.worked.aimed.as_ref().is_some_and(|aimed| !aimed.reads_right) {
        flow.list(&[text("From most viewing spots this picture reads the wrong way round: mirror it, or leave it if that does no harm.")]);
    }
}

fn sent(pose: &PoseSheet) -> &'static str {
    if pose.mirrored { "mirrored" } else { "not mirrored" }
}

/// What the projector and its player are told.
fn told(pose: &PoseSheet) -> String {
    let mut list = Vec::new();
    list.push(if pose.mirrored { "sent left for right" } else { "sent as drawn" });
    if pose.lies == Pose::Ceiling {
        list.push("menu: ceiling");
    }
    let keystone = [(pose.keystone.vertical_deg.0, "up", "down"), (pose.keystone.horizontal_deg.0, "right", "left")];
    let keystone: Vec<String> = keystone
        .into_iter()
        .filter(|(angle, ..)| *angle != 0.0)
        .map(|(angle, one, other)| {
            format!("menu: keystone for {}° {}", angle.abs(), if angle > 0.0 { one } else { other })
        })
        .collect();
    list.extend(keystone.iter().map(String::as_str));
    if pose.upright {
        list.push("file stands upright in the frame");
    }
    list.join("; ")
}

fn shift(pose: &PoseSheet) -> String {
    let [x, y] = pose.shift;
    if x == 0.0 && y == 0.0 {
        return String::new();
    }
    format!("; lens shift {x:.3} widths right, {y:.3} heights up")
}
