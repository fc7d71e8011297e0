//! What is made at home before the day: weather boxes, drawn with their sizes and openings, and what cloth and film are cut to.

use super::{
    Subject,
    flow::Flow,
    housing,
    pair::{self, Item},
};
use crate::{craft::shopping::cuts, scene::Yard};

/// Lays it out, station by station, and what hangs unlit after them; nothing where there is nothing to make.
pub(super) fn lay_out(flow: &mut Flow, subject: &Subject) {
    let yard = subject.yard;
    let mut items: Vec<Item> = Vec::new();
    let mut told: Vec<String> = Vec::new();
    for (number, station) in (1..).zip(&yard.stations).filter(|(_, station)| !yard.is_hidden(&station.name.0)) {
        let lit = |name: &&str| station.lights(name) && !told.iter().any(|known| known == name);
        let own: Vec<String> = hung(yard).filter(lit).map(str::to_owned).collect();
        let pieces: Vec<String> = own.iter().flat_map(|name| cut(subject, flow, name)).collect();
        if station.shelter.is_none() && pieces.is_empty() {
            continue;
        }
        items.push(Item::Title(format!("{number} {}", station.name.0)));
        if let Some(shelter) = &station.shelter {
            items.push(Item::Line("Weather box, sizes inside".to_owned()));
            items.push(Item::Drawing(housing::drawing(flow, shelter)));
        }
        items.extend(pieces.into_iter().map(Item::Line));
        told.extend(own);
    }
    for name in hung(yard).filter(|name| !told.iter().any(|known| known == name)) {
        let pieces = cut(subject, flow, name);
        if !pieces.is_empty() {
            items.push(Item::Title(name.to_owned()));
            items.extend(pieces.into_iter().map(Item::Line));
        }
    }
    if !items.is_empty() {
        flow.begin("To make at home", "Before the day: weather boxes and cut cloth, by station.");
        pair::mixed(flow, items);
    }
}

fn hung(yard: &Yard) -> impl Iterator<Item = &str> {
    let cloths = yard.cloths.iter().map(|cloth| &cloth.name);
    let films = yard.films.iter().map(|film| &film.name);
    cloths.chain(films).map(|name| name.0.as_str()).filter(|name| !yard.is_hidden(name))
}

/// What the cloth or film of that name is cut to, layer by layer.
fn cut(subject: &Subject, flow: &Flow, name: &str) -> Vec<String> {
    let Subject { yard, catalogue, .. } = *subject;
    let length = |m: f64| flow.digits().length(m);
    let pieces = cuts(yard, catalogue).into_iter().filter(|cut| cut.of == name);
    let says = pieces.map(|cut| {
        let [wide, tall] = [cut.cut_width_m, cut.cut_height_m].map(length);
        let (trimmed, done) =
            (if cut.is_film { "trimmed to" } else { "hemmed to" }, [cut.width_m, cut.height_m].map(length));
        format!("“{name}”, {}: cut {wide} wide and {tall} high, {trimmed} {} by {}", cut.fabric, done[0], done[1])
    });
    let mut lines: Vec<String> = says.collect();
    let gathered = yard.cloths.iter().find(|cloth| cloth.name.0 == name && cloth.fullness.0 > 1.0);
    if let Some(cloth) = gathered.filter(|_| !lines.is_empty()) {
        lines.push(format!("gathered to {}", length(cloth.width.0.m)));
    }
    lines
}
