//! Readings against closed forms; and the same readings every time.

use crate::lab::{DARK, Lab, RATIO, close, mesh, square_lx, station, v};
use gauzelight::{
    judge::{
        StationReading,
        findings::{Case, Matter, judge},
        read_all,
        sight::Question,
    },
    light::Night,
    picture::{Camera, expose},
    scene::{Point, Positive},
};
use std::f64::consts::PI;

const WIDE: f64 = 16.0 / 9.0;

/// White light on a plane square to the axis, 3 m from the lens.
fn white() -> f64 {
    square_lx(WIDE, 3.0)
}

/// A grey wall 4 m wide with an ideal projector 3 m before it; two spots, one before the wall and one to the side.
fn wall(picture: &str, more: &str, fields: &str) -> String {
    format!(
        r#"{DARK} walls: [(name: "wall", at: (0, 8, 0), width: 4, height: 4, surface: "grey")],
        spots: [
            (name: "before", at: (0, 8.4, 8), look: "wall"),
            (name: "aside", at: (5, 8.4, 3), look: "wall"),
        ], {fields} {}"#,
        station("16:9", picture, &format!("at: (0, 10, 3), aim: (0, 10, 0), target: \"wall\", {more}"))
    )
}

#[test]
fn sizes_on_the_target() {
    let reading = Lab::new(&wall("middle", "", "")).reading();
    assert_eq!((reading.station.as_str(), reading.target.as_str(), reading.on), ("station", "wall", true));
    close(reading.throw_m.unwrap(), 3.0, 1e-5);
    close(reading.pixels_per_m, 800.0, 1e-5);
    let sizes = [(&reading.picture, 2.0, 1.125), (&reading.figure, 1.0, 0.5625)];
    for (extent, width, height) in sizes {
        close(extent.width_m, width, 1e-4);
        close(extent.height_m, height, 1e-4);
        close(extent.bottom_m, 10.0 - 0.5 * height, 1e-4);
        close(extent.top_m, 10.0 + 0.5 * height, 1e-4);
    }
    let corners = [(-1.0, 1.0), (1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)];
    for (corner, (x, y)) in reading.corners.iter().zip(corners) {
        let [cx, cy, cz] = corner.expect("it lands on the plane of the wall");
        assert!((cx - x).abs() < 1e-4 && (cy - (10.0 + 0.5625 * y)).abs() < 1e-4 && cz.abs() < 1e-4);
    }
    assert!(reading.misses == 0.0 && reading.figure_misses == 0.0 && reading.passes == 0.0);
    assert!(reading.beyond.is_empty());
}

#[test]
fn a_picture_on_its_side_and_one_of_another_shape() {
    let upright = Lab::new(&wall("white", "pose: Upright", "")).reading();
    close(upright.picture.width_m, 1.125, 1e-3);
    close(upright.picture.height_m, 2.0, 1e-3);
    let square = Lab::edited(&wall("white", "", ""), |yard| yard.projectors[0].pixels = (900, 900)).reading();
    close(square.picture.width_m, 2.0, 2e-3);
    close(square.picture.height_m, 2.0, 2e-3);
}

/// Bands: a station's own light goes with its lumens, other light does not.
#[test]
fn lux_on_the_figure_with_its_band() {
    let lumens = "lumens: (low: 500, typical: 1000, high: 1500)";
    let lamp =
        r#"lamps: [(name: "lamp", kind: "window", at: (0, 10, 20), size: (0.1, 0.1), turn_deg: 180, lumens: 5000)],"#;
    let reading = Lab::new(&wall("middle", lumens, lamp)).reading();
    let all_white = Lab::new(&wall("white", lumens, lamp)).reading();
    // Nearly the same over the figure: 5000 / π cd square on.
    let other = 5000.0 / PI / 400.0;
    close(reading.lumens.low, 500.0, 1e-6);
    close(reading.lumens.high, 1500.0, 1e-6);
    for (band, rest) in [(all_white.mean_on_target_lx, 0.0), (reading.figure_lx, other)] {
        close(band.low, 0.5 * white() + rest, 1e-3);
        close(band.typical, white() + rest, 1e-3);
        close(band.high, 1.5 * white() + rest, 1e-3);
    }
}

/// Everything that lights the figure counts, the sky too: half of its 200 lx on a wall in the open.
#[test]
fn lux_on_the_figure_has_the_sky_in_it() {
    let lab = Lab::new(&wall("middle", "", "").replace("sky_lx: 0", "sky_lx: 200"));
    close(lab.lx(v(0.0, 10.0, 0.0), glam::Vec3::Z), white() + 100.0, 0.01);
    close(lab.reading().figure_lx.typical, white() + 100.0, 0.02);
}

#[test]
fn luminance_from_the_spots() {
    let reading = Lab::new(&wall("middle", "", "")).reading();
    let wanted = 0.5 * white() / PI;
    for (spot, distance) in reading.spots.iter().zip([8.0, 34_f64.sqrt()]) {
        close(spot.distance_m.expect("there is a figure"), distance, 5e-3);
        close(spot.mean.typical, wanted, 1e-3);
        close(spot.peak.typical, wanted, 1e-3);
        close(spot.in_sight, 1.0, 1e-9);
        assert!(spot.ground.typical < 1e-3 * wanted);
    }
}

/// A surface says how well its reflectance is known, here to a tenth; it and the lumens are at their worst at once.
#[test]
fn a_surface_answers_for_its_own_doubt() {
    let lumens = "lumens: (low: 500, typical: 1000, high: 1500)";
    let mean = Lab::new(&wall("middle", lumens, "")).reading().spots[0].mean;
    close(mean.low / mean.typical, 0.5 * 0.9, 1e-3);
    close(mean.high / mean.typical, 1.5 * 1.1, 1e-3);
}

/// The figure stands in its grey box as the contrast says; a lamp on both takes from it.
#[test]
fn figure_to_ground() {
    let ratio = |fields: &str| {
        let lab = Lab::edited(&wall("middle", "", fields), |yard| {
            let class = &mut yard.projectors[0];
            (class.on_off_contrast, class.checker_contrast) = (Positive(100.0), Positive(100.0));
        });
        let spots = lab.reading().spots;
        spots[0].figure_to_ground.expect("its ground is grey")
    };
    // On-off and checkerboard contrast alike: k = 1/100 and g = 1/50 less 1/50.
    close(ratio("").typical, 100.0, 2e-3);
    let lamp =
        r#"lamps: [(name: "lamp", kind: "window", at: (0, 10, 20), size: (0.1, 0.1), turn_deg: 180, lumens: 5000)],"#;
    let other = 5000.0 / PI / 400.0;
    close(ratio(lamp).typical, (white() + other) / (0.01 * white() + other), 2e-3);
}

/// No number stands for what is not there: no light beside the figure, no figure on the target, no figure in sight.
#[test]
fn what_is_not_there_is_not_read() {
    let all_white = Lab::new(&wall("white", "", "")).reading();
    let spot = &all_white.spots[0];
    assert!(spot.mean.typical > 0.0 && spot.ground.typical == 0.0 && spot.figure_to_ground.is_none());
    let none = Lab::new(&wall("black", "", "")).reading();
    assert!(none.spots.iter().all(|s| s.distance_m.is_none() && s.figure_to_ground.is_none() && s.in_sight == 0.0));
    let behind = wall("middle", "", "").replace("at: (0, 8.4, 8)", "at: (0, 8.4, -8)");
    let hidden = &Lab::new(&behind).reading().spots[0];
    assert!(hidden.distance_m.is_some() && hidden.figure_to_ground.is_none() && hidden.in_sight == 0.0);
    let json = serde_json::to_value(&none).expect("readings can be written");
    assert!(json["spots"][0]["figure_to_ground"].is_null() && json["spots"][0]["distance_m"].is_null());
}

/// A fold mirror 2 m before the lens, aslant by 45°, that is narrower than the picture: by closed form what passes it goes straight on
/// and lands behind.
#[test]
fn light_that_misses_a_mirror_lands_behind_it() {
    let folded = |behind: &str| {
        let place = r#"at: (0, 10, 3), aim: (3, 10, 1), target: "wall", mirrors: ["mirror"]"#;
        let text = format!(
            r#"{DARK} walls: [(name: "wall", at: (3, 8, 1), width: 6, height: 4, turn_deg: 270, surface: "grey")],
            mirrors: [(name: "mirror", at: (0, 10, 1), width: 0.6, height: 3, turn_deg: 45)],
            {behind} {}"#,
            station("16:9", "white", place)
        );
        Lab::new(&text).reading()
    };
    let half = 0.3 * 0.5_f64.sqrt();
    let past = 1.0 - (half / (2.0 - half) + half / (2.0 + half)) * RATIO;
    let reading = folded("");
    close(reading.misses, past, 2e-3);
    assert_eq!(reading.beyond[0].thing, "out of the yard");
    close(reading.beyond[0].share, past, 2e-3);
    let reading = folded(r#"things: [Block(name: "shed", at: (0, 6, -2), width: 8, height: 8, depth: 1)],"#);
    close(reading.misses, past, 2e-3);
    assert_eq!(reading.beyond.len(), 1);
    assert_eq!(reading.beyond[0].thing, "shed");
    close(reading.beyond[0].share, past, 2e-3);
    close(reading.beyond[0].peak_lx, square_lx(WIDE, 4.5), 1e-3);
}

/// A second narrow mirror 1 m after a first one that is wide: what passes it goes on as the first one sent it. Something opaque before
/// the first has what it stops.
#[test]
fn light_that_misses_a_second_mirror_goes_on_from_the_first() {
    let folded = |more: &str, mirrors: &str| {
        let place = format!(r#"at: (0, 10, 3), aim: (1, 10, 5), target: "wall", mirrors: [{mirrors}]"#);
        let text = format!(
            r#"{DARK} walls: [(name: "wall", at: (1, 8, 5), width: 6, height: 4, turn_deg: 180, surface: "grey")],
            mirrors: [
                (name: "first", at: (0, 10, 1), width: 3, height: 3, turn_deg: 45, reflectance: 0.9),
                (name: "second", at: (1, 10, 1), width: 0.6, height: 3, turn_deg: 315),
            ], {more} {}"#,
            station("16:9", "white", &place)
        );
        Lab::new(&text).reading()
    };
    let half = 0.3 * 0.5_f64.sqrt();
    let past = 1.0 - (half / (3.0 - half) + half / (3.0 + half)) * RATIO;
    // 5.5 m of way to its front.
    let shed = r#"things: [Block(name: "shed", at: (4, 6, 1), width: 1, height: 8, depth: 12)],"#;
    let reading = folded(shed, r#""first", "second""#);
    close(reading.misses, past, 2e-3);
    assert_eq!(reading.beyond.len(), 1, "{:?}", reading.beyond);
    assert_eq!(reading.beyond[0].thing, "shed");
    close(reading.beyond[0].share, 0.9 * past, 2e-3);
    close(reading.beyond[0].peak_lx, 0.9 * square_lx(WIDE, 5.5), 1e-3);
    // Half of the light is stopped before the first.
    let post = shed
        .replace("things: [", r#"things: [Block(name: "post", at: (0.3, 6, 2), width: 0.6, height: 8, depth: 0.1),"#);
    let reading = folded(&post, r#""first", "second""#);
    let stopped = reading.beyond.iter().find(|beyond| beyond.thing == "post").expect("it stops light");
    close(stopped.share, 0.5, 0.02);
}

/// Cloth ends no ray: of two nets beside the target each has what it takes, and what stands behind them has the rest.
#[test]
fn nets_beside_the_target_let_the_rest_pass() {
    let text = format!(
        r#"{DARK} walls: [(name: "wall", at: (-4, 8, 0), width: 8, height: 4, surface: "grey")],
        cloths: [
            (name: "first", at: (0, 12, -1), width: 8, height: 4, fabric: "net"),
            (name: "second", at: (0, 12, -2), width: 8, height: 4, fabric: "black net"),
        ],
        things: [Block(name: "shed", at: (0, 6, -4), width: 8, height: 8, depth: 1)], {}"#,
        station("16:9", "white", "at: (0, 10, 3), aim: (0, 10, 0), target: \"wall\", throw_ratio: 8")
    );
    let lab = Lab::new(&text);
    let (reading, open) = (lab.reading(), mesh(crate::lab::GAMMA, 0.0));
    let share =
        |name: &str| reading.beyond.iter().find(|beyond| beyond.thing == name).map_or(0.0, |beyond| beyond.share);
    close(share("first"), 0.5 * (1.0 - open), 3e-3);
    close(share("second"), 0.5 * open * (1.0 - open), 3e-3);
    close(share("shed"), 0.5 * open * open, 3e-3);
    close(reading.misses, 0.5, 1e-4);
    // Nor are they meant to be lit, as the target is listed.
    let found = judge(&Case::of(&lab.yard, &lab.catalogue, &lab.night));
    let misses = found.iter().find(|finding| finding.matter == Matter::Overspill).expect("it is told");
    assert_eq!(misses.says, "50 % of the figure of “station” misses “wall”");
}

/// The brightest tenth is that of all light: a lamp beside the wall makes its own part of the figure the brightest.
#[test]
fn the_brightest_tenth_is_bright_by_all_light() {
    let lamp = r#"lamps: [(name: "lamp", kind: "globe", at: (1.2, 10, 0.5), lumens: 3000)],"#;
    let spot = &Lab::new(&wall("middle", "", lamp)).reading().spots[0];
    let sight = spot.sight.as_ref().expect("it is in sight");
    let stands_out = sight.answer(Question::StandsOut).value.expect("there is a ground").typical;
    let tenth = stands_out * (spot.ground.typical + sight.veil) - sight.veil;
    let (mean, peak) = (spot.mean.typical, spot.peak.typical);
    assert!(tenth > 1.1 * mean && tenth <= 1.001 * peak, "{tenth} of {mean} and {peak}");
}

/// A hedge of which little comes through hides nothing that is bright.
#[test]
fn what_a_hedge_lets_through_is_seen() {
    let text = wall(
        "middle",
        "",
        r#"plants: [Hedge(name: "hedge", from: (-10, 8, 5), to: (10, 8, 5), height: 4, depth: 0.5, gap: 0.02)],"#,
    );
    let spot = &Lab::new(&text).reading().spots[0];
    close(spot.in_sight, 0.02, 1e-3);
    assert!(spot.sight.is_some() && spot.mean.typical > 0.01 * white() * 0.5 / PI, "{}", spot.mean.typical);
}

/// Light past a mirror that lands on a target has missed it: it is no edge, and no picture either.
#[test]
fn light_past_a_mirror_is_lost_even_on_a_target() {
    let place = r#"at: (0, 10, 3), aim: (3, 10, 1), target: ["wall", "net"], mirrors: ["mirror"]"#;
    let text = format!(
        r#"{DARK} walls: [(name: "wall", at: (3, 8, 1), width: 6, height: 4, turn_deg: 270, surface: "grey")],
        cloths: [(name: "net", at: (0, 12, -1), width: 6, height: 4, fabric: "screen")],
        mirrors: [(name: "mirror", at: (0, 10, 1), width: 0.6, height: 3, turn_deg: 45)],
        spots: [(name: "before", at: (-4, 8.4, 4), look: "wall")], {}"#,
        station("16:9", "white", place)
    );
    let lab = Lab::new(&text);
    let reading = lab.reading();
    let half = 0.3 * 0.5_f64.sqrt();
    let past = 1.0 - (half / (2.0 - half) + half / (2.0 + half)) * RATIO;
    close(reading.misses, past, 2e-3);
    assert_eq!(reading.beyond[0].thing, "net");
    close(reading.beyond[0].share, past, 2e-3);
    let found = judge(&Case::of(&lab.yard, &lab.catalogue, &lab.night));
    let misses = found.iter().find(|finding| finding.matter == Matter::Overspill).expect("it is told");
    assert!(misses.says.starts_with("68 % of the figure"), "{}", misses.says);
}

/// A net that is hung before a wall takes of the wall's light what does not pass it straight.
#[test]
fn a_net_before_the_target_has_what_it_takes() {
    let net = |target: &str| {
        let text = format!(
            r#"{DARK} walls: [(name: "wall", at: (0, 8, 0), width: 4, height: 4, surface: "grey")],
            cloths: [(name: "net", at: (0, 12, 1), width: 4, height: 4, fabric: "net")], {}"#,
            station("16:9", "white", &format!("at: (0, 10, 3), aim: (0, 10, 0), target: \"{target}\""))
        );
        Lab::new(&text).reading()
    };
    let (before, on) = (net("wall"), net("net"));
    assert!(on.passes > 0.3 && on.passes < 0.5, "{}", on.passes);
    assert_eq!(before.misses, 0.0);
    assert_eq!(before.beyond.len(), 1);
    assert_eq!(before.beyond[0].thing, "net");
    close(before.beyond[0].share, 1.0 - on.passes, 1e-4);
    close(before.beyond[0].peak_lx, square_lx(WIDE, 2.0), 1e-3);
    close(before.mean_on_target_lx.typical, white() * on.passes, 0.01);
}

#[test]
fn light_that_misses() {
    let aside = wall("middle", "", "").replace("at: (0, 10, 3), aim: (0, 10, 0)", "at: (2, 10, 3), aim: (2, 10, 0)");
    let reading = Lab::new(&aside).reading();
    close(reading.misses, 0.5, 1e-4);
    close(reading.figure_misses, 0.5, 1e-3);
    assert_eq!(reading.beyond.len(), 1);
    assert_eq!(reading.beyond[0].thing, "out of the yard");
    close(reading.beyond[0].share, 0.5, 1e-4);
    let hedge = r#"things: [Block(name: "shed", at: (5, 6, -2), width: 6, height: 8, depth: 1)],"#;
    let reading = Lab::new(&aside.replace("spots:", &format!("{hedge} spots:"))).reading();
    assert_eq!(reading.beyond[0].thing, "shed");
    close(reading.beyond[0].share, 0.5, 1e-4);
    // Its front stands 4.5 m from the lens; the figure reaches beyond the wall and lands there.
    close(reading.beyond[0].peak_lx, square_lx(WIDE, 4.5), 1e-3);
}

#[test]
fn light_that_passes_a_net() {
    let lab = Lab::new(&format!(
        r#"{DARK} walls: [(name: "wall", at: (0, 8, 0), width: 4, height: 4, surface: "grey")],
        cloths: [(name: "net", fabric: "net", at: (0, 12, 2), width: 4, height: 4)],
        spots: [(name: "before", at: (0, 8.4, 9), look: "net")],{}"#,
        station("16:9", "white", "at: (0, 10, 10), aim: \"net\", throw_ratio: 8")
    ));
    let reading = lab.reading();
    let open = mesh(crate::lab::GAMMA, 0.0);
    close(reading.passes, open, 2e-3);
    assert_eq!(reading.beyond[0].thing, "wall");
    close(reading.beyond[0].share, open, 2e-3);
    let on_wall = open * 1000.0 * WIDE * 64.0 / 100.0;
    close(reading.beyond[0].peak_lx, on_wall, 2e-3);
    close(reading.beyond[0].peak_luminance.expect("it is matt"), 0.5 * on_wall / PI, 2e-3);
}

#[test]
fn a_station_that_is_off() {
    let lab = Lab::new(&wall("middle", "on: false", ""));
    let reading = lab.reading();
    assert!(!reading.on && reading.spots.is_empty() && reading.beyond.is_empty());
    assert_eq!((reading.mean_on_target_lx.typical, reading.throw_m), (0.0, None));
    close(reading.lumens.typical, 1000.0, 1e-6);
    assert_eq!(lab.lx(v(0.0, 10.0, 0.0), glam::Vec3::Z), 0.0);
}

/// A yard with something of everything that is computed in parallel or interpolated.
fn lively() -> Lab {
    Lab::new(
        r#"evening: (sky_lx: 0.5, moon: (lx: 0.1, bearing_deg: 40, height_deg: 30)),
        ground: (surface: "grey", width: 20, depth: 20),
        walls: [(name: "wall", at: (0, 0, 0), width: 4, height: 3, surface: "grey")],
        plants: [Hedge(name: "hedge", from: (-3, 0, -1), to: (-1.5, 0, 2), height: 2)],
        cloths: [(name: "net", fabric: "white tulle", at: (1, 2.5, 1), width: 1.5, height: 2)],
        lamps: [(name: "lamp", kind: "globe", at: (3, 2.5, 3), lumens: 100)],
        spots: [(name: "path", at: (0, 0, 7), look: "wall")],
        stations: [
            (
                name: "one", projector: "mini LED", at: (0, 0.5, 4), aim: (-0.5, 1.5, 0), target: "wall",
                content: (picture: "corners"),
            ),
            (name: "two", projector: "12 V pocket", at: (1.2, 0.4, 3.5), aim: "net", content: (picture: "middle")),
        ],"#,
    )
}

fn readings(lab: &Lab) -> Vec<StationReading> {
    read_all(&lab.night, &lab.yard, &lab.catalogue)
}

#[test]
fn the_same_yard_gives_the_same_bits() {
    let (one, other) = (lively(), lively());
    assert_eq!(readings(&one), readings(&other));
    let camera = Camera::looking(v(0.5, 1.6, 7.0), v(0.0, 1.3, 0.0), 0.7);
    let still = |lab: &Lab| expose(&lab.night, &camera, (96, 64), 2, |_| ());
    assert_eq!(still(&one), still(&other));
    assert!(still(&one).luminance.iter().all(|light| light.is_finite() && light.min_element() >= 0.0));
}

#[test]
fn a_station_that_is_moved_is_as_if_built_there() {
    let mut moved = lively();
    moved.yard.stations[0].at = Point::metres(-0.8, 0.7, 3.2);
    moved.yard.stations[1].on = false;
    for station in [1, 0] {
        moved.night.set_station(&moved.yard, &moved.catalogue, &moved.pictures, station).expect("it can be lit");
    }
    let fresh = Night::build(&moved.yard, &moved.catalogue, &moved.pictures).expect("it can be lit");
    assert_eq!(readings(&moved), read_all(&fresh, &moved.yard, &moved.catalogue));
    assert_ne!(readings(&moved), readings(&lively()));
    moved.yard.stations = lively().yard.stations;
    for station in [0, 1] {
        moved.night.set_station(&moved.yard, &moved.catalogue, &moved.pictures, station).expect("it can be lit");
    }
    assert_eq!(readings(&moved), readings(&lively()));
}

#[test]
fn light_with_nothing_behind_is_the_sky_s_and_a_cloth_before_the_target_has_what_it_takes() {
    let lab = Lab::new(&format!(
        r#"{DARK} cloths: [
            (name: "net", fabric: "net", at: (0, 12, 2), width: 4, height: 4),
            (name: "before it", fabric: "black net", at: (0, 12, 5), width: 4, height: 4),
        ],
        spots: [(name: "before", at: (0, 8.4, 12), look: "net")],{}"#,
        station("16:9", "white", "at: (0, 10, 10), aim: \"net\", throw_ratio: 8")
    ));
    let reading = lab.reading();
    let open = mesh(crate::lab::GAMMA, 0.0);
    assert_eq!(reading.beyond.len(), 2, "{:?}", reading.beyond);
    assert_eq!(reading.beyond[0].thing, "before it");
    close(reading.beyond[0].share, 1.0 - open, 3e-3);
    assert_eq!(reading.beyond[1].thing, "out of the yard");
    close(reading.beyond[1].share, open * open, 3e-3);
}
