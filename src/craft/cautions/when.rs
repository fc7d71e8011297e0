//! When a caution applies.

use super::Caution;
use crate::{
    craft::{
        is_outdoors,
        power::{feeds, is_indoors},
    },
    scene::{
        Catalogue, Cloth, FabricKind, Fed, Form, Mount, ProjectorClass, Station, Supply, SupplyKind, UsedBy, Yard,
        limits,
    },
};

/// What to be careful of at one station, the gravest first.
pub fn of_station(yard: &Yard, catalogue: &Catalogue, station: &Station) -> Vec<Caution> {
    let above = |name: &str| yard.limit(catalogue, name).is_some_and(|limit| station.at.0[1].m > limit.value);
    let hangs = matches!(station.mount, Mount::Wall | Mount::Hung | Mount::Tree);
    let outdoors = is_outdoors(yard, station);
    let class = yard.projector(catalogue, &station.projector.0);
    let hot = class.is_some_and(has_a_lamp);
    let film = yard.films.iter().find(|film| station.lights(&film.name.0));
    let cloth = yard.cloths.iter().find(|cloth| station.lights(&cloth.name.0));
    let supply = feeds(yard, &station.name.0);
    let ladder = outdoors && above(limits::LADDER);
    let cloth_brings = |caution| cloth.is_some_and(|cloth| hung_brings(yard, catalogue, cloth, caution));
    let applies = |caution: Caution| match caution {
        Caution::Ladder | Caution::OverheadLines => ladder || cloth_brings(caution),
        Caution::Roof => ladder && on_a_roof(yard, station),
        Caution::Falls => (hangs && above(limits::ABOVE_HEADS)) || cloth_brings(caution),
        Caution::RulesOfThumb => outdoors && (hangs || station.mount == Mount::Stand || cloth.is_some()),
        Caution::MainsOutdoors | Caution::Joints => outdoors,
        // Where no supply is drawn, one is still to be bought.
        Caution::Unfused => supply.map_or(outdoors && class.is_some_and(runs_off_12_v), has_no_fuse),
        Caution::Batteries => supply.is_some_and(is_battery),
        Caution::HotLamp => hot,
        // One outdoors that has no box yet is still to get one.
        Caution::HotBox => outdoors || station.shelter.is_some(),
        Caution::FlameRetardant => cloth.is_some_and(|cloth| {
            let layers = std::iter::once(&cloth.fabric).chain(&cloth.behind);
            layers
                .into_iter()
                .any(|name| yard.fabric(catalogue, &name.0).is_none_or(|fabric| fabric.flame_retardant != Some(true)))
        }),
        Caution::Unattended => hot || !outdoors,
        Caution::EscapeWays => film.is_some_and(|film| film.window.is_some()),
        Caution::GuysInTheDark => outdoors && matches!(station.mount, Mount::Ground | Mount::Stand),
        // Indoors people stand nearest to it.
        Caution::Eyes => true,
        Caution::Sun => outdoors || !station.mirrors.is_empty(),
        Caution::Candles | Caution::Kerb | Caution::LooseNet => false,
    };
    Caution::ALL.iter().copied().filter(|caution| applies(*caution)).collect()
}

/// What to be careful of in a yard as a whole, the gravest first: what holds for any of its stations, and for what else is in it.
pub fn of_yard(yard: &Yard, catalogue: &Catalogue) -> Vec<Caution> {
    let shown = |name: &str| !yard.is_hidden(name);
    let stations = yard.stations.iter().filter(|station| station.on && shown(&station.name.0));
    let met: Vec<Caution> = stations.flat_map(|station| of_station(yard, catalogue, station)).collect();
    let cloths = || yard.cloths.iter().filter(|cloth| shown(&cloth.name.0));
    let is_net =
        |name: &str| yard.fabric(catalogue, name).is_some_and(|fabric| matches!(fabric.kind, FabricKind::Net { .. }));
    let forms = || yard.forms.iter().filter(|form| shown(&form.name().0));
    let supplies = || yard.supplies.iter().filter(|supply| shown(&supply.name.0));
    let drives = yard.spots.iter().any(|spot| spot.drives && shown(&spot.name.0));
    let applies = |caution: Caution| match caution {
        Caution::Candles => forms().any(|form| matches!(form, Form::Gourd(_))),
        Caution::Kerb => drives || (!yard.stations.is_empty() && has_a_street(yard)),
        Caution::LooseNet => {
            cloths().any(|cloth| std::iter::once(&cloth.fabric).chain(&cloth.behind).any(|name| is_net(&name.0)))
        }
        Caution::Ladder | Caution::OverheadLines | Caution::Falls => {
            cloths().any(|cloth| hung_brings(yard, catalogue, cloth, caution))
        }
        Caution::Unfused => supplies().any(has_no_fuse),
        Caution::Batteries => supplies().any(is_battery),
        Caution::RulesOfThumb | Caution::GuysInTheDark => cloths().next().is_some() || forms().next().is_some(),
        _ => false,
    };
    Caution::ALL.iter().copied().filter(|caution| met.contains(caution) || applies(*caution)).collect()
}

/// Whether a cloth hangs so high that it is put up from a ladder, under lines perhaps, or that it hangs above heads.
fn hung_brings(yard: &Yard, catalogue: &Catalogue, cloth: &Cloth, caution: Caution) -> bool {
    let above = |name: &str| yard.limit(catalogue, name).is_some_and(|limit| cloth.at.0[1].m > limit.value);
    match caution {
        Caution::Ladder => above(limits::LADDER),
        Caution::OverheadLines => above(limits::LADDER) && !is_indoors(yard, cloth.at.vec3().as_dvec3()),
        Caution::Falls => above(limits::ABOVE_HEADS),
        _ => false,
    }
}

/// Whether a class has a lamp that is changed, and so one that is hot.
fn has_a_lamp(class: &ProjectorClass) -> bool {
    class.lamp_hours.is_some()
}

/// Whether a class runs off 12 V, or off what a 12 V adapter gives.
fn runs_off_12_v(class: &ProjectorClass) -> bool {
    class.volts != Fed::Mains
}

/// Whether a supply of low voltage has no fuse at its output.
fn has_no_fuse(supply: &Supply) -> bool {
    !supply.kind.is_mains() && supply.kind.fuse_a().is_none()
}

fn is_battery(supply: &Supply) -> bool {
    matches!(supply.kind, SupplyKind::Battery(_))
}

/// Whether a station is as high as the eaves of a house and over it.
fn on_a_roof(yard: &Yard, station: &Station) -> bool {
    let at = station.at.vec3();
    yard.houses.iter().any(|house| {
        let foot = house.at.vec3();
        let beside = (at - foot).with_y(0.0).length() - house.width.f32().max(house.depth.f32());
        beside < 0.0 && at.y > foot.y + house.height.f32()
    })
}

/// Whether cars use any of its areas.
fn has_a_street(yard: &Yard) -> bool {
    yard.areas.iter().any(|area| area.used_by == UsedBy::Cars && !yard.is_hidden(&area.name.0))
}
