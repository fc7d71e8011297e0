//! The lit lens of a station can be seen from where people watch, though they do not stand in its beam.

use super::{
    Case, Finding, Level, Matter, dazzle,
    people::{self, Glimpse},
    remedy::{Attempt, Proposal},
};
use crate::{
    edit::{Edit, free_name},
    scene::{Angle, Block, Item, Name, Point, Ref, Size, Station, Thing, limits},
};

/// A board before a lens: its width and how far before the lens it stands, m.
const BOARD_M: [f32; 2] = [0.2, 0.4];
/// How far it stands above the line of sight, m.
const ABOVE_M: f32 = 0.12;

pub(super) fn look(case: &Case) -> Vec<Finding> {
    let (bound, dazzle) = (case.limit(limits::LENS_BESIDE), case.limit(limits::DAZZLE));
    let mut list = Vec::new();
    for (index, station, beams) in people::shining(case) {
        let [_, high] = people::doubt(case, index);
        for spot in people::on_foot(case) {
            // What dazzles is told as that.
            let told = |seen: &Glimpse| seen.lx * high > dazzle.value;
            let seen =
                people::seen_from(case, &beams, spot).filter(|seen| !told(seen) && seen.beside_deg < bound.value);
            let Some(seen) = seen else { continue };
            let (of, from) = (&station.name.0, &spot.name.0);
            let eye = if seen.child { "a child's eye at" } else { "" };
            let says = format!(
                "The lit lens of “{of}” is in sight from {eye}{}“{from}”, {:.0}° beside the middle of its beam",
                if seen.child { " " } else { "" },
                seen.beside_deg
            );
            list.push(Finding::new(Matter::LensSeen, Level::Check, of, Some(from)).against(
                seen.beside_deg,
                &bound,
                says,
            ));
        }
    }
    list
}

pub(super) fn propose(case: &Case, finding: &Finding) -> Vec<Attempt> {
    let Some((_, station, beams)) = people::shining(case).find(|(_, s, _)| s.name.0 == finding.of) else {
        return Vec::new();
    };
    let spot = people::on_foot(case).find(|spot| Some(spot.name.0.as_str()) == finding.from());
    let seen = spot.and_then(|spot| people::seen_from(case, &beams, spot));
    let board = seen.and_then(|seen| board(case, station, &seen));
    let mut list: Vec<Attempt> = board.map(Attempt::from).into_iter().collect();
    list.extend(dazzle::out_of_the_beam(case, station));
    list
}

/// A low board between the lens and the eye.
fn board(case: &Case, station: &Station, seen: &Glimpse) -> Option<Proposal> {
    let lens = station.at.vec3();
    let way = seen.eye - lens;
    let far = way.with_y(0.0).length();
    let [width, before] = BOARD_M;
    let at = lens + way * (before / far.max(0.1));
    let height = at.y + ABOVE_M;
    if far < 2.0 * before || !(0.1..1.2).contains(&height) {
        return None;
    }
    let cm = |m: f32| (f64::from(m) * 100.0).round() / 100.0;
    let block = Block {
        name: Name::of(&free_name(case.yard, "board")),
        note: String::new(),
        at: Point::metres(cm(at.x), 0.0, cm(at.z)),
        width: Size::metres(cm(width)),
        height: Size::metres(cm(height)),
        depth: Size::metres(0.02),
        turn_deg: Angle(f64::from(way.x.atan2(way.z).to_degrees()).round()),
        surface: Ref::to("wood, dark"),
    };
    let says = format!("Stand a board before “{}”, between its lens and the eye, out of its beam", station.name.0);
    Some(Proposal { says, edit: Edit::Add(Item::Thing(Thing::Block(block))) })
}
