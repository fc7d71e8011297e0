//! What is spent and what is owned.

use super::entry::priced;
use super::known::Known;
use super::range::{unless, within};
use crate::scene::{Fault, Faults, Goods, GoodsKind, Owned};

pub(super) fn check(known: &Known<'_>, faults: &mut Faults) {
    faults.in_each("goods", &known.yard.goods, |faults, entry| goods(entry, faults));
    faults.in_each("owned", &known.yard.owned, |faults, entry| owned(known, entry, faults));
}

fn goods(goods: &Goods, faults: &mut Faults) {
    priced(Some(goods.price), faults);
    if let Some(mm2) = goods.mm2 {
        within(faults, "mm2", mm2.0, 0.05..=200.0, "from 0.05 to 200 mm²");
    }
    let (is_cable, is_lead) = (goods.kind == GoodsKind::Cable, goods.kind == GoodsKind::MainsLead);
    let what = "only a cable or a lead has a conductor";
    unless(is_cable || is_lead || goods.mm2.is_none(), faults, "mm2", what, "leave it out, or write kind: Cable");
    let what = "only a lead has a length of its own";
    unless(is_lead || goods.length.is_none(), faults, "length", what, "leave it out, or write kind: MainsLead");
    let what = "only a socket block has ways";
    let is_block = goods.kind == GoodsKind::SocketBlock;
    unless(is_block || goods.ways.is_none(), faults, "ways", what, "leave it out, or write kind: SocketBlock");
    let what = "this cable has no conductor";
    unless(!is_cable || goods.mm2.is_some(), faults, "mm2", what, "write mm2: …, its cross-section");
}

fn owned(known: &Known<'_>, owned: &Owned, faults: &mut Faults) {
    let (yard, catalogue) = (known.yard, known.catalogue);
    let projectors = yard.all_projectors(catalogue).map(|entry| entry.name.0.as_str());
    let fabrics = yard.all_fabrics(catalogue).map(|entry| entry.name.0.as_str());
    let goods = yard.all_goods(catalogue).map(|entry| entry.name.0.as_str());
    let names: Vec<&str> = projectors.chain(fabrics).chain(goods).collect();
    let what = &owned.what.0;
    if !names.contains(&what.as_str()) && !known.unread.contains(&what.as_str()) {
        let fault = Fault::new(format!("no projector class, fabric or goods is called “{what}”"));
        let fault = fault.remedy("name one of the catalogue or of this yard").nearest_of(what, names);
        faults.push_in("what", fault);
    }
    within(faults, "amount", owned.amount.0, 0.01..=10_000.0, "from 0.01 to 10000");
}
