//! What a field may name, and what it is called.

use crate::viewer::cards::Shown;
use gauzelight::scene::{FabricKind, Field, Item, Sort};
use std::path::Path;

/// The names that a field may give, where they are known.
pub fn known(shown: &Shown, item: Option<&Item>, field: &str) -> Option<Vec<String>> {
    let (yard, catalogue) = (shown.studio.yard(), &shown.studio.catalogue);
    let fabrics = |fits: &dyn Fn(&FabricKind) -> bool| -> Vec<String> {
        yard.all_fabrics(catalogue).filter(|entry| fits(&entry.kind)).map(|entry| entry.name.0.clone()).collect()
    };
    let of_kind = |word: &'static str| yard.items().filter(move |item| item.word() == word);
    let names = |items: &mut dyn Iterator<Item = Item>| items.map(|item| item.name().to_owned()).collect();
    let film = |kind: &FabricKind| matches!(kind, FabricKind::Film { .. });
    Some(match field {
        // A film is stretched in a window, a cloth is hung, a screen is a net.
        "screen" => fabrics(&|kind| matches!(kind, FabricKind::Net { .. })),
        "fabric" if matches!(item, Some(Item::Film(_))) => fabrics(&film),
        "fabric" | "behind" => fabrics(&|kind| !film(kind)),
        "surface" => both(yard.surfaces.iter().map(|e| &e.name.0), catalogue.surfaces.iter().map(|e| &e.name.0)),
        "projector" => yard.all_projectors(catalogue).map(|entry| entry.name.0.clone()).collect(),
        "kind" if matches!(item, Some(Item::Lamp(_))) => {
            both(yard.lamp_kinds.iter().map(|e| &e.name.0), catalogue.lamp_kinds.iter().map(|e| &e.name.0))
        }
        "window" => names(&mut of_kind("window")),
        "mirrors" => names(&mut of_kind("fold mirror")),
        "target" => names(&mut yard.items().filter(Item::takes_light)),
        "aim" | "look" => names(&mut yard.items().filter(Item::can_be_aimed_at)),
        "from" | "to" if matches!(item, Some(Item::Cable(_))) => {
            let ends = ["supply", "cable", "station", "lamp"];
            let mut fits =
                yard.items().filter(|one| ends.contains(&one.word()) && item.is_none_or(|i| one.name() != i.name()));
            names(&mut fits)
        }
        "content.picture" => {
            let mut list = catalogue.pictures.clone();
            list.extend(shown.studio.papers.folder().map(pictures_in).unwrap_or_default());
            list
        }
        _ => return None,
    })
}

/// Names of two lists, the first before the second of the same name.
fn both<'a>(own: impl Iterator<Item = &'a String>, shared: impl Iterator<Item = &'a String>) -> Vec<String> {
    let mut list: Vec<String> = own.cloned().collect();
    let more: Vec<String> = shared.filter(|name| !list.contains(name)).cloned().collect();
    list.extend(more);
    list
}

/// Pictures that lie in a folder.
fn pictures_in(folder: &Path) -> Vec<String> {
    let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    let is_picture = |path: &Path| {
        let ending = path.extension().and_then(|ending| ending.to_str()).unwrap_or_default().to_lowercase();
        ["png", "jpg", "jpeg", "webp", "gif", "exr"].contains(&ending.as_str())
    };
    let files = std::fs::read_dir(folder).into_iter().flatten().flatten().map(|entry| entry.path());
    let names = files.filter(|path| is_picture(path)).filter_map(|path| Some(path.file_name()?.to_str()?.to_owned()));
    let mut list: Vec<String> = names.collect();
    list.sort();
    list
}

/// What a field is called on a card, where its name in a file is not a person's word for it.
const SAID: &[(&str, &str)] = &[
    ("at", "position"),
    ("lumens", "light, lm"),
    ("throw_ratio", "throw ratio"),
    ("shift", "lens shift"),
    ("gamma", "gamma of its picture"),
    ("box_window", "box window passes"),
    ("hours", "hours run"),
    ("bar", "width of a bar"),
    ("bars", "panes across, up"),
    ("eye", "height of the eyes"),
    ("look", "looks at"),
    ("behind", "layers behind"),
    ("stance", "drawn"),
    ("content", "what it throws"),
    ("when", "by date and place"),
    ("sky_lx", "sky, lx"),
    ("lx", "light, lx"),
    ("visitors", "visitors from, until"),
    ("season", "first, last day"),
    ("run", "depth of a step"),
    ("rise", "height of a step"),
    ("ip", "IP code"),
    ("gauge", "conductor"),
    ("via", "by way of"),
    ("loads", "player, fan, lamp"),
    ("tariff", "price of a kWh"),
    ("shelter", "weather box"),
    ("free_faces", "faces free in the air"),
    ("flow_m3_h", "air in the free, m³/h"),
    ("pressure_pa", "pressure it holds, Pa"),
    ("watts", "power, W"),
    ("inlet_cm2", "inlet, cm²"),
    ("outlet_cm2", "outlet, cm²"),
    ("openings_down", "openings under hoods"),
    ("also_w", "other heat inside, W"),
];

/// What a field is called on a card: `turn_deg` is “turn, °”; of one within a noun, what it is called there.
pub fn said(field: &str) -> String {
    let own = field.rsplit('.').next().unwrap_or(field);
    if let Some((_, said)) = SAID.iter().find(|(name, _)| *name == own) {
        return (*said).to_owned();
    }
    match own.strip_suffix("_deg") {
        Some(angle) => format!("{}, °", angle.replace('_', " ")),
        None => own.replace('_', " "),
    }
}

/// What a field means, and how it is typed.
pub fn tip(field: &Field) -> String {
    let how = match field.sort {
        Sort::Length | Sort::Lengths(_) => "\nm, cm, ft or in: 1.9 m, 6' 3 1/2\"; +4 in adds",
        Sort::Group => "\nAs it stands in a yard's file",
        _ => "",
    };
    format!("{}{how}", field.meaning)
}
