//! Nouns and yards for the tests.

use gauzelight::scene::*;
use gauzelight::units::Length;

pub fn m(metres: f64) -> Length {
    Length::metres(metres)
}

pub fn size(metres: f64) -> Size {
    Size::metres(metres)
}

pub fn at(x: f64, y: f64, z: f64) -> Point {
    Point::metres(x, y, z)
}

pub fn empty() -> Yard {
    Yard::named("test")
}

pub fn window(name: &str, side: Side, [left, sill, width, height]: [f64; 4]) -> Window {
    Window {
        name: Name::of(name),
        note: String::new(),
        side,
        left: m(left),
        sill: m(sill),
        width: size(width),
        height: size(height),
        glazing: Glazing::Single,
        screen: None,
        bars: (Count(1), Count(1)),
        bar: size(0.03),
        escape: false,
        room: Room::default(),
    }
}

pub fn door(name: &str, side: Side, left: f64, open: bool) -> Opening {
    Opening::Door(Door {
        name: Name::of(name),
        note: String::new(),
        side,
        left: m(left),
        sill: m(0.0),
        width: size(1.0),
        height: size(2.1),
        open,
        surface: Ref::to("wood, dark"),
        room: Room::default(),
    })
}

pub fn house(name: &str, foot: Point, [width, depth, height]: [f64; 3], roof: Roof, openings: Vec<Opening>) -> House {
    House {
        name: Name::of(name),
        note: String::new(),
        at: foot,
        width: size(width),
        depth: size(depth),
        height: size(height),
        turn_deg: Angle(0.0),
        surface: Ref::to("painted boards, pale"),
        wall: size(0.2),
        roof,
        openings,
    }
}

/// A house with an opening of every kind, rooms that meet at a corner, and neighbours that would overlap.
pub fn cottage(roof: Roof) -> House {
    let openings = vec![
        Opening::Window(window("front left", Side::Front, [0.8, 1.0, 1.2, 1.3])),
        door("front door", Side::Front, 3.0, false),
        Opening::Window(window("front right", Side::Front, [5.4, 1.0, 1.2, 1.3])),
        Opening::Window(window("front far right", Side::Front, [7.0, 1.0, 0.8, 1.3])),
        Opening::Window(window("side", Side::Right, [0.9, 1.1, 1.0, 1.0])),
        Opening::Window(Window { glazing: Glazing::Unglazed, ..window("hatch", Side::Left, [2.0, 1.2, 0.6, 0.6]) }),
        door("back door", Side::Back, 4.0, true),
    ];
    house("cottage", at(0.0, 0.0, -2.0), [8.4, 6.6, 3.0], roof, openings)
}

pub fn gable(ridge: Ridge) -> Roof {
    Roof::Gable(Gable { pitch_deg: Angle(38.0), overhang: size(0.35), ridge, surface: Ref::to("roof tiles, dark") })
}

pub fn hip() -> Roof {
    Roof::Hip(Hip { pitch_deg: Angle(30.0), overhang: size(0.35), surface: Ref::to("roof tiles, dark") })
}

fn sloped() -> SlopedRoof {
    SlopedRoof { pitch_deg: Angle(12.0), overhang: size(0.2), surface: Ref::to("roof tiles, dark") }
}

pub fn all_roofs() -> Vec<Roof> {
    vec![gable(Ridge::Along), gable(Ridge::Across), hip(), Roof::Flat(sloped()), Roof::Shed(sloped()), Roof::Open]
}

/// A dormer with a window in the front slope of the cottage's roof.
pub fn dormer() -> House {
    let openings = vec![Opening::Window(window("owl window", Side::Front, [0.3, 0.5, 0.8, 0.9]))];
    house("dormer", at(0.0, 3.3, -2.4), [1.4, 2.4, 1.6], gable(Ridge::Across), openings)
}

pub fn figure(turn: f64) -> Form {
    Form::Figure(Figure {
        name: Name::of("guardian"),
        note: String::new(),
        at: at(3.0, 0.0, 1.0),
        height: size(1.9),
        turn_deg: Angle(turn),
        surface: Ref::to("white cloth, matt"),
        ballast_kg: 0.0,
    })
}

pub fn bag() -> Form {
    Form::Bag(Bag {
        name: Name::of("bag"),
        note: String::new(),
        at: at(-3.0, 0.0, 2.0),
        width: size(1.0),
        height: size(1.6),
        depth: size(0.8),
        turn_deg: Angle(20.0),
        surface: Ref::to("white cloth, matt"),
        ballast_kg: 0.0,
    })
}

pub fn gourd(name: &str, x: f64) -> Form {
    Form::Gourd(Gourd {
        name: Name::of(name),
        note: String::new(),
        at: at(x, 0.17, -0.6),
        width: size(0.36),
        height: size(0.3),
        ribs: Count(10),
        turn_deg: Angle(0.0),
        surface: Ref::to("gourd skin, pale"),
        ballast_kg: 0.0,
    })
}

pub fn globe(diameter: f64) -> Form {
    Form::Globe(Globe {
        name: Name::of("moon"),
        note: String::new(),
        at: at(0.0, 2.0, 4.0),
        diameter: size(diameter),
        surface: Ref::to("white cloth, matt"),
        ballast_kg: 0.0,
    })
}

pub fn turned(profile: &[(f64, f64)]) -> Form {
    Form::Turned(Turned {
        name: Name::of("urn"),
        note: String::new(),
        at: at(1.0, 0.5, 1.0),
        profile: profile.iter().map(|&(r, h)| TurnedPoint { radius: m(r), height: m(h) }).collect(),
        surface: Ref::to("white cloth, matt"),
        ballast_kg: 0.0,
    })
}

pub fn cloth(turn: f64, tilt: f64) -> Cloth {
    Cloth {
        name: Name::of("net"),
        note: String::new(),
        fabric: Ref::to("tulle"),
        behind: vec![],
        at: at(1.0, 2.4, 3.0),
        width: size(2.0),
        height: size(1.5),
        turn_deg: Angle(turn),
        tilt_deg: Angle(tilt),
        fullness: Fullness(1.0),
        ties: Count(6),
        hem_kg_m: 0.0,
        weight_g_m2: None,
    }
}

pub fn film(window: Option<&str>) -> RearFilm {
    RearFilm {
        name: Name::of("film"),
        note: String::new(),
        fabric: Ref::to("grey film"),
        window: window.map(Ref::to),
        at: window.is_none().then(|| at(0.0, 2.0, 0.0)),
        size: window.is_none().then(|| (size(1.2), size(0.9))),
        turn_deg: Angle(90.0),
    }
}

pub fn mirror(turn: f64, tilt: f64) -> FoldMirror {
    FoldMirror {
        name: Name::of("glass"),
        note: String::new(),
        at: at(0.0, 1.0, 5.0),
        width: size(0.6),
        height: size(0.4),
        turn_deg: Angle(turn),
        tilt_deg: Angle(tilt),
        reflectance: Fraction(0.88),
    }
}

pub fn fence(name: &str, from: Point, to: Point) -> Thing {
    Thing::Fence(Fence {
        name: Name::of(name),
        note: String::new(),
        from,
        to,
        height: size(1.1),
        board: size(0.09),
        gap: m(0.06),
        surface: Ref::to("painted boards, pale"),
    })
}

/// One of everything that is built of boxes.
pub fn things() -> Vec<Thing> {
    let (note, surface) = (String::new(), Ref::to("wood, dark"));
    vec![
        Thing::Block(Block {
            name: Name::of("chimney"),
            note: note.clone(),
            at: at(2.0, 4.0, -5.0),
            width: size(0.6),
            height: size(2.2),
            depth: size(0.6),
            turn_deg: Angle(90.0),
            surface: surface.clone(),
        }),
        Thing::Steps(Steps {
            name: Name::of("steps"),
            note: note.clone(),
            at: at(-0.7, 0.0, -0.2),
            width: size(1.6),
            count: Count(3),
            rise: size(0.17),
            run: size(0.28),
            turn_deg: Angle(0.0),
            surface: surface.clone(),
        }),
        Thing::Post(Post {
            name: Name::of("gate post"),
            note: note.clone(),
            at: at(1.5, 0.0, 4.0),
            height: size(1.4),
            width: size(0.1),
            surface: surface.clone(),
        }),
        Thing::Pergola(Pergola {
            name: Name::of("pergola"),
            note: note.clone(),
            at: at(7.0, 0.0, 0.5),
            width: size(3.0),
            depth: size(2.2),
            height: size(2.4),
            post: size(0.1),
            rafters: Count(6),
            turn_deg: Angle(15.0),
            surface: surface.clone(),
        }),
        Thing::Porch(Porch {
            name: Name::of("porch"),
            note: note.clone(),
            at: at(-0.7, 0.0, -2.0),
            width: size(2.4),
            depth: size(1.4),
            deck: size(0.3),
            height: size(2.6),
            post: size(0.12),
            turn_deg: Angle(0.0),
            surface: surface.clone(),
        }),
        Thing::Bench(Bench {
            name: Name::of("bench"),
            note,
            at: at(-5.0, 0.0, -1.0),
            width: size(1.4),
            turn_deg: Angle(-30.0),
            surface,
        }),
    ]
}

pub fn plants() -> Vec<Plant> {
    vec![
        Plant::Hedge(Hedge {
            name: Name::of("hedge"),
            note: String::new(),
            from: at(5.0, 0.0, -1.5),
            to: at(9.0, 0.0, -1.5),
            height: size(2.0),
            depth: size(0.7),
            gap: Fraction(0.02),
            surface: Ref::to("leaves, evergreen"),
        }),
        Plant::Tree(Tree {
            name: Name::of("tree"),
            note: String::new(),
            at: at(-8.0, 0.0, 1.0),
            height: size(7.0),
            crown: size(2.2),
            clear: size(2.2),
            trunk: size(0.16),
            gap: Fraction(0.3),
            surface: Ref::to("leaves, evergreen"),
        }),
    ]
}

/// A yard such as people have.
pub fn typical() -> Yard {
    let shed_wall = Wall {
        name: Name::of("garden wall"),
        note: String::new(),
        at: at(-7.0, 0.0, -4.0),
        width: size(3.0),
        height: size(2.4),
        turn_deg: Angle(0.0),
        surface: Ref::to("painted boards, pale"),
        thickness: size(0.2),
        openings: vec![Opening::Window(window("wall window", Side::Front, [1.0, 1.0, 0.8, 0.8]))],
    };
    let area = |name: &str, x: (f64, f64), z: (f64, f64)| Area {
        name: Name::of(name),
        note: String::new(),
        surface: Ref::to("asphalt"),
        x: (m(x.0), m(x.1)),
        z: (m(z.0), m(z.1)),
        rise: size(0.02),
        used_by: UsedBy::Walkers,
    };
    let mut things = things();
    things.push(fence("fence left", at(-9.0, 0.0, 4.5), at(-1.0, 0.0, 4.5)));
    things.push(fence("fence right", at(1.0, 0.0, 4.5), at(9.0, 0.0, 4.5)));
    Yard {
        areas: vec![area("street", (-22.0, 22.0), (6.0, 12.0)), area("path", (-1.4, 0.0), (-0.5, 6.0))],
        houses: vec![
            cottage(gable(Ridge::Along)),
            dormer(),
            house("shed", at(6.5, 0.0, -5.0), [3.0, 2.4, 2.2], Roof::Shed(sloped()), vec![]),
        ],
        walls: vec![shed_wall],
        things,
        plants: plants(),
        cloths: vec![cloth(0.0, 0.0)],
        films: vec![film(Some("owl window"))],
        forms: vec![figure(0.0), gourd("left gourd", -1.2), gourd("right gourd", -0.2), globe(0.5)],
        mirrors: vec![mirror(0.0, 0.0)],
        ..empty()
    }
}
