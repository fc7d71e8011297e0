//! Reports of faults stay short and harmless, whatever stands in a file.

use super::{GOOD, RICH, survives};
use gauzelight::scene::{Catalogue, Faults, Yard};
use std::fmt::Write as _;

fn faults_of(text: &str) -> Faults {
    match Yard::parse(text, "yard.ron", &Catalogue::builtin()) {
        Ok(loaded) => loaded.warnings,
        Err(faults) => faults,
    }
}

/// Both reports of a text, which must be ones that a terminal can take.
fn reports(text: &str) -> (String, String) {
    let faults = faults_of(text);
    survives::told(&faults);
    (faults.pretty(false, 110), faults.plain())
}

#[test]
fn a_long_line_is_shown_in_part_around_the_fault() {
    // As a program might write it: 70 kB on one line, one word of it wrong, at its end.
    let mut spots = String::new();
    for number in 0..2000 {
        let _ = write!(spots, "(name: \"gate {number}\", at: (0, {}, 6)), ", f64::from(number) / 1000.0);
    }
    let text = format!("Yard(name: \"long\", spots: [{spots}], ground: (surface: \"lwan\"))");
    let (pretty, plain) = reports(&text);
    let column = text.find("\"lwan\"").unwrap() + 1;
    assert!(plain.starts_with(&format!("yard.ron:1:{column}: error: ground.surface: ")), "{plain}");
    assert!(pretty.contains(&format!("[yard.ron:1:{column}]")), "{pretty}");
    assert!(pretty.contains("…") && pretty.contains("surface: \"lwan\"") && pretty.contains("did you mean “lawn”?"));
    assert!(pretty.lines().all(|line| line.chars().count() < 200), "{pretty}");
    // In its middle, with all parts of the mark under it.
    let (pretty, _) = reports(&text.replace("gate 1000", "gate 999"));
    let middle = pretty.lines().find(|line| line.contains("│ …")).unwrap();
    assert!(pretty.contains("──┬──") && middle.ends_with('…'), "{pretty}");
}

#[test]
fn long_lines_beside_it_and_a_long_value_are_cut_too() {
    let long = "x".repeat(100_000);
    let text = format!("// {long}\nYard(name: \"{long}\"\n, spots: 3) // {long}");
    let (pretty, plain) = reports(&text);
    assert!(pretty.contains("[yard.ron:2:12]") && pretty.contains("this name is too long"), "{pretty}");
    assert!(pretty.len() + plain.len() < 6000, "{}", pretty.len() + plain.len());
    let (_, plain) = reports(&GOOD.replace("\"owl_glide\"", &format!("\"{long}.png\"")));
    assert!(plain.len() < 1000, "{plain}");
}

#[test]
fn after_two_dozen_faults_comes_a_count() {
    let mut spots = String::new();
    (0..500).for_each(|_| spots += "(name: \"\", at: 1),\n");
    let (pretty, plain) = reports(&format!("Yard(name: \"many\", spots: [{spots}])"));
    assert_eq!(pretty.matches("yard.ron:").count(), 24);
    assert!(pretty.trim_end().ends_with(" faults more"), "{}", &pretty[pretty.len() - 200..]);
    assert_eq!(plain.lines().count(), 201);
}

#[test]
fn a_terminal_is_not_told_what_stands_in_a_file() {
    // An escape that clears the screen, a mark that turns the line round, a bell, a line break.
    for evil in ["\u{1b}[2J", "\u{202e}nwal", "\u{7}", "a\nb", "\u{9b}31m", "\u{85}"] {
        for text in [
            GOOD.replace("\"owl_glide\"", &format!("\"{evil}\"")),
            GOOD.replacen("name: \"", &format!("name: \"{evil}"), 1),
            format!("Yard(name: \"x\", {evil}: 1)"),
            format!("{evil}Yard(name: \"x\")"),
        ] {
            reports(&text);
        }
    }
    let faults = Yard::parse("3", "\u{1b}[2J.ron", &Catalogue::builtin()).unwrap_err();
    survives::told(&faults);
}

#[test]
fn a_number_out_of_range_is_told_in_a_few_digits() {
    let (mut tried, mut long) = (0, std::collections::BTreeSet::new());
    let ends: Vec<usize> = RICH.match_indices(|c: char| c.is_ascii_digit()).map(|(at, _)| at).collect();
    for at in ends {
        let begins = at == 0 || !RICH[..at].ends_with(|c: char| c.is_alphanumeric() || c == '.');
        if !begins {
            continue;
        }
        let len = RICH[at..].find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(0);
        for number in ["1e300", "-1e300", "1e-300", "123456789012345678901234567890123456789012345"] {
            let faults = faults_of(&format!("{}{number}{}", &RICH[..at], &RICH[at + len..]));
            survives::told(&faults);
            for fault in faults.iter() {
                let mut digits = fault.what.split(|c: char| !c.is_ascii_digit());
                // What stands in the file is quoted as it is, up to 60 letters.
                if digits.any(|run| run.len() > 45) {
                    long.insert(fault.to_string());
                }
            }
            tried += 1;
        }
    }
    assert!(long.is_empty() && tried > 500, "{tried}: {long:#?}");
}

#[test]
fn a_zone_hides_no_latitude() {
    let when = "when: (date: \"2026-12-21\", clock: \"18:30\", latitude_deg: 95, longitude_deg: 213, zone: \"Berlni\")";
    let plain = faults_of(&format!("Yard(name: \"x\", evening: ({when}))")).plain();
    for part in
        ["latitude_deg: 95 is out of range", "longitude_deg: 213 is out of range", "no time zone is called “Berlni”"]
    {
        assert!(plain.contains(part), "{plain}");
    }
}
