//! Which leads a way of the mains takes. Low-voltage wire is never among them: a lead for the mains comes with its plug and its
//! socket, made for outdoors.

use super::{What, line::is_sold};
use crate::scene::{Catalogue, Goods, GoodsKind, Yard};

/// A conductor this much thinner than asked for counts as it: nominal cross-sections are rounded.
pub(super) const ALL_BUT: f64 = 0.98;

/// The leads, end to end, that reach so far, m, each of at least so much conductor, mm²: the shortest that reaches by itself, else as
/// many of the longest as it takes and the shortest that reaches the rest.
pub(super) fn leads(yard: &Yard, catalogue: &Catalogue, mm2: f64, metres: f64) -> Vec<What> {
    let long = |lead: &Goods| lead.length.as_ref().map_or(0.0, |length| length.0.m);
    let thick = |lead: &Goods| lead.mm2.map_or(0.0, |mm2| mm2.0);
    let sold = yard.all_goods(catalogue).filter(|goods| goods.kind == GoodsKind::MainsLead && is_sold(yard, goods));
    let mut fit: Vec<&Goods> = sold.filter(|lead| long(lead) > 0.0 && thick(lead) >= ALL_BUT * mm2).collect();
    fit.sort_by(|a, b| long(a).total_cmp(&long(b)).then(thick(a).total_cmp(&thick(b))));
    let Some(longest) = fit.last().map(|lead| long(lead)) else {
        return vec![What::Unsold(GoodsKind::MainsLead, mm2, metres)];
    };
    // A millimetre less is no reason for another lead.
    let reaching = |rest: f64| fit.iter().find(|lead| long(lead) >= rest - 1e-3);
    let whole = (0..).take_while(|n| metres - f64::from(*n) * longest > longest + 1e-3).count();
    let lasts = reaching(metres - whole as f64 * longest);
    let first = std::iter::repeat_n(reaching(longest), whole);
    first.chain([lasts]).flatten().map(|lead| What::Named(lead.name.0.clone())).collect()
}
