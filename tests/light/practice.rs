//! Common practice, no source: what people who hang projectors know must come out of the numbers.

use crate::lab::{DARK, Lab, close, square_lx, station, v};
use gauzelight::scene::SpreadKind;
use glam::Vec3;
use std::f64::consts::PI;

const WALL: &str = r#"walls: [(name: "wall", at: (0, 6, 0), width: 8, height: 8, surface: "white")],"#;

/// A projector so far before a wall.
fn onto_wall(distance: f64, more: &str) -> Lab {
    Lab::new(&format!(
        "{DARK}{WALL}{}",
        station("16:9", "white", &format!("at: (0, 10, {distance}), aim: (0, 10, 0), {more}"))
    ))
}

/// A tall figure wants a projector on its side: at 9/16 of the distance it is as tall, and (16/9)² = 3.16 times as
/// bright.
#[test]
fn upright_for_what_is_tall() {
    let lying = onto_wall(4.0, "").reading();
    let upright = onto_wall(4.0 * 9.0 / 16.0, "pose: Upright").reading();
    close(upright.picture.height_m, lying.picture.height_m, 1e-3);
    close(upright.mean_on_target_lx.typical / lying.mean_on_target_lx.typical, 3.1605, 1e-3);
}

#[test]
fn twice_as_wide_a_quarter_as_bright() {
    let (near, far) = (onto_wall(2.0, "").reading(), onto_wall(4.0, "").reading());
    close(far.picture.width_m, 2.0 * near.picture.width_m, 1e-3);
    close(far.mean_on_target_lx.typical, near.mean_on_target_lx.typical / 4.0, 1e-4);
}

/// The second picture on what stands behind a fabric fades as (t / (t + g))² over the gap g, t being the throw.
#[test]
fn a_ghost_fades_with_its_distance() {
    let throw = 3.0;
    let ghost = |gap: f64| {
        let net =
            format!(r#"cloths: [(name: "net", fabric: "white tulle", at: (0, 12, {gap}), width: 4, height: 4)],"#);
        let place = format!("at: (0, 10, {}), aim: \"net\"", throw + gap);
        Lab::new(&format!("{DARK}{WALL}{net}{}", station("16:9", "white", &place))).lx(v(0.0, 10.0, 0.0), Vec3::Z)
    };
    // A tulle with thread over pitch 0.14 is open by 0.86².
    let open = 0.86_f64.powi(2);
    for gap in [0.1, 0.5, 1.0, 3.0] {
        let fade = (throw / (throw + gap)).powi(2);
        close(ghost(gap), open * square_lx(16.0 / 9.0, throw) * fade, 1e-3);
    }
}

/// A 150 lm projector over a whole house front of 12 m by 6 m gives 2 lx, less than the 5 lx that a residential street
/// of class P4 has on average (EN 13201-2).
#[test]
fn a_small_projector_is_lost_on_a_house() {
    let place = "at: (0, 10, 18), aim: (0, 10, 0), lumens: 150";
    let lab = Lab::new(&format!(
        r#"{DARK} walls: [(name: "front", at: (0, 6, 0), width: 14, height: 8, surface: "white")],{}"#,
        station("2:1", "white", place)
    ));
    let reading = lab.reading();
    close(reading.picture.width_m, 12.0, 1e-3);
    close(reading.picture.height_m, 6.0, 0.01);
    assert!(
        reading.mean_on_target_lx.typical > 1.9 && reading.mean_on_target_lx.typical < 2.2,
        "{:?}",
        reading.mean_on_target_lx
    );
}

/// Luminance of a fabric seen from before and from behind, and what it leaves for a wall a metre behind it.
fn on(fabric: &str) -> [f64; 3] {
    let cloth = format!(r#"cloths: [(name: "cloth", fabric: "{fabric}", at: (0, 12, 1), width: 4, height: 4)],"#);
    let black = WALL.replace("white", "black");
    let lab = Lab::new(&format!("{DARK}{black}{cloth}{}", station("16:9", "white", "at: (0, 10, 4), aim: \"cloth\"")));
    let middle = v(0.0, 10.0, 1.0);
    let before = lab.seen(v(0.5, 10.0, 4.0), middle);
    let behind = lab.seen(v(0.5, 10.0, 0.5), middle);
    [before, behind, lab.lx(v(0.0, 10.0, 0.0), Vec3::Z)]
}

#[test]
fn sheer_carries_a_picture_and_tulle_lets_it_go() {
    let ([sheer, sheer_behind, past_sheer], [tulle, tulle_behind, past_tulle]) = (on("white sheer"), on("white tulle"));
    assert!(sheer > 2.0 * tulle, "{sheer} and {tulle} cd/m²");
    assert!(sheer_behind > 4.0 * tulle_behind, "{sheer_behind} and {tulle_behind} cd/m²");
    assert!(past_tulle > 3.0 * past_sheer, "{past_tulle} and {past_sheer} lx");
    let [black, ..] = on("black tulle");
    assert!(black < 0.1 * tulle, "black tulle shows hardly any picture: {black} cd/m²");
}

/// Contrast of a pale thing beside a dark one, both seen through a net.
fn scrim(lamp: &str) -> f64 {
    let lab = Lab::edited(
        &format!(
            r#"{DARK} cloths: [(name: "net", fabric: "white tulle", at: (0, 13, 0), width: 6, height: 6)],
            walls: [
                (name: "pale", at: (-1, 8, -2), width: 2, height: 4, surface: "white"),
                (name: "dark", at: (1, 8, -2), width: 2, height: 4, surface: "black"),
            ],
            lamps: [(name: "lamp", {lamp})],"#
        ),
        |yard| {
            let kind = yard.lamp_kinds.iter_mut().find(|kind| kind.name.0 == "beam").expect("it is in stock");
            kind.spread = SpreadKind::Beam { half_deg: 10.0 };
        },
    );
    let seen = |x: f32| lab.seen(v(0.0, 10.0, 8.0), v(x, 10.0, -2.0));
    let (pale, dark) = (seen(-0.5), seen(0.5));
    (pale - dark) / (pale + dark)
}

/// A net lit steeply from the front hides the dark behind it, and vanishes when what stands behind is lit instead.
#[test]
fn a_net_hides_and_shows() {
    let hidden = scrim(r#"kind: "beam", at: (0, 13.5, 1), turn_deg: 180, tilt_deg: 74"#);
    let shown = scrim(r#"kind: "globe", at: (0, 11, -1)"#);
    assert!(hidden < 0.1, "{hidden}");
    assert!(shown > 0.6, "{shown}");
}

/// A lamp that keeps three quarters in a thousand hours, after 1500 of them and behind a box window of 0.8.
#[test]
fn lamps_fade_and_windows_take_their_share() {
    let lab = Lab::edited(
        &format!(
            "{DARK}{WALL}{}",
            station("16:9", "white", "at: (0, 10, 3), aim: (0, 10, 0), hours: 1500, box_window: 0.8")
        ),
        |yard| yard.projectors[0].left_after_1000_h = gauzelight::scene::Band::exact(0.75),
    );
    let left = 0.75_f64.powf(1.5) * 0.8;
    close(lab.reading().lumens.typical, 1000.0 * left, 1e-6);
    close(lab.seen(v(0.3, 10.0, 2.0), v(0.0, 10.0, 0.0)), square_lx(16.0 / 9.0, 3.0) * left / PI, 1e-4);
}
