//! Yards for the sheet, with as many stations as wanted, set by chance.

use std::fmt::Write as _;

/// Numbers by chance, the same each time (G. Marsaglia, "Xorshift RNGs", Journal of Statistical Software 8, 2003).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        low + (high - low) * (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }
}

/// A front with a cloth, a wall, a window with its film and a figure, and stations that throw onto them. `name` names each.
pub fn by_chance(count: usize, seed: u64, name: impl Fn(&str, usize) -> String) -> String {
    let mut chance = Chance::new(seed);
    let [house, wall, cloth, window, film, figure, post, spot] =
        ["house", "wall", "cloth", "window", "film", "figure", "post", "spot"].map(|kind| name(kind, 0));
    let mut stations = String::new();
    for index in 0..count {
        let [aside, y, z] = [chance.between(-2.2, 2.2), chance.between(0.2, 2.4), chance.between(4.2, 8.0)];
        let off = [chance.between(-0.3, 0.3), chance.between(-0.3, 0.3)];
        let (target, aim) = match index % 4 {
            0 => (&cloth, [-2.5 + off[0], 1.5 + off[1], 2.0]),
            1 => (&wall, [3.0 + off[0], 1.2 + off[1], 1.6]),
            2 => (&house, [0.2 + off[0], 2.4 + off[1], 0.0]),
            _ => (&figure, [0.0, 1.3 + 0.3 * off[1], 3.0]),
        };
        // As people set them: none throws much farther off square than 45°.
        let x = aim[0] + aside;
        let pose = ["Table", "Upright", "Ceiling"][index % 3];
        let stance = if index % 3 == 1 { "Upright" } else { "Wide" };
        let (roll, ratio, shift) = (chance.between(-8.0, 8.0), chance.between(1.1, 1.9), chance.between(0.0, 0.5));
        let own = name("station", index);
        let _ = writeln!(
            stations,
            "(name: \"{own}\", projector: \"mini LED\", at: ({x:.4}, {y:.4}, {z:.4}), aim: ({:.4}, {:.4}, {:.4}), target: \"{target}\", \
             pose: {pose}, roll_deg: {roll:.3}, throw_ratio: {ratio:.4}, shift: (0, {shift:.3}), \
             content: (picture: \"owl_face\", stance: {stance}, mirrored: {})),",
            aim[0],
            aim[1],
            aim[2],
            index % 5 == 0
        );
    }
    format!(
        r#"Yard(format: 1, name: "{}", ground: (width: 24, depth: 24),
        houses: [(name: "{house}", at: (0, 0, 0), width: 9, depth: 5, height: 3,
            openings: [Window(name: "{window}", left: 2, sill: 1, width: 1.2, height: 1.2)])],
        walls: [(name: "{wall}", at: (3, 0, 1.6), width: 2.6, height: 2.2, turn_deg: -12)],
        things: [Post(name: "{post}", at: (-1.2, 0, 8.6), height: 1.1), Post(name: "{post} two", at: (4.8, 0, 8.9), height: 1.3)],
        spots: [(name: "{spot}", at: (0, 0, 11), look: (0, 1.4, 2))],
        cloths: [(name: "{cloth}", fabric: "white sheer", at: (-2.5, 2.6, 2), width: 2.4, height: 2.2, turn_deg: 9)],
        films: [(name: "{film}", fabric: "rear film, grey", window: "{window}")],
        forms: [Figure(name: "{figure}", at: (0, 0, 3), height: 1.9)],
        stations: [{stations}])"#,
        name("yard", 0)
    )
}

/// A name of 40 letters.
pub fn long(kind: &str, index: usize) -> String {
    let start = format!("{kind} {index:03} of the winter lantern walk WWWWWWWWWWWWWWWWWWWW");
    start.chars().take(40).collect()
}

/// A short name.
pub fn short(kind: &str, index: usize) -> String {
    if kind == "station" { format!("s{index}") } else { kind.to_owned() }
}
