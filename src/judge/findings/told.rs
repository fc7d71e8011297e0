//! Findings as a short list: a line a matter, what several things have alike told together.

use super::{Finding, Level};

/// One line of the list: the worst finding of a matter, and the others of it.
#[derive(Clone, Debug)]
pub struct Told<'a> {
    /// The worst, which gives the words.
    pub worst: &'a Finding,
    /// What other things have of the same matter.
    pub others: Vec<&'a Finding>,
}

/// Findings, the worst first, told by matter.
pub fn told(findings: &[Finding]) -> Vec<Told<'_>> {
    let mut lines: Vec<Told<'_>> = Vec::new();
    for finding in findings {
        match lines.iter_mut().find(|line| line.worst.matter == finding.matter) {
            Some(line) => line.others.push(finding),
            None => lines.push(Told { worst: finding, others: Vec::new() }),
        }
    }
    lines
}

/// Findings, each told by itself.
pub fn each(findings: &[Finding]) -> Vec<Told<'_>> {
    findings.iter().map(|worst| Told { worst, others: Vec::new() }).collect()
}

impl Told<'_> {
    /// All findings that it stands for, the worst first.
    pub fn findings(&self) -> impl Iterator<Item = &Finding> {
        std::iter::once(self.worst).chain(self.others.iter().copied())
    }

    /// It as one line of at most `most` characters: problem, number, where else, what to do. Where that is too long, names
    /// become counts first, then what to do is left out.
    pub fn line(&self, most: usize) -> String {
        let Finding { level, says, does, .. } = self.worst;
        let places: Vec<&str> = self.worst.places.iter().skip(1).map(|place| place.spot.as_str()).collect();
        let mut things: Vec<&str> = self.others.iter().map(|other| other.of.as_str()).collect();
        things.dedup();
        let sure = if self.worst.unsure { " (may be fine)" } else { "" };
        let head = format!("{:<6} {says}{sure}", level.name());
        let by_name = |word: &str, names: &[&str]| match names {
            [] => String::new(),
            names => {
                format!("; {word} {}", names.iter().map(|name| format!("“{name}”")).collect::<Vec<_>>().join(", "))
            }
        };
        let by_count = |count: usize, one: &str, more: &str| match count {
            0 => String::new(),
            1 => format!("; {one}"),
            count => format!("; {count} {more}"),
        };
        let named = by_name("also from", &places) + &by_name("also", &things);
        let counted = by_count(places.len(), "from 1 more place", "more places")
            + &by_count(things.len(), "1 more alike", "more alike");
        let ways = [
            format!("{head}{named}. {does}"),
            format!("{head}{counted}. {does}"),
            format!("{head}{named}"),
            format!("{head}{counted}"),
        ];
        let fits = |line: &&String| line.chars().count() <= most;
        ways.iter().find(fits).cloned().unwrap_or_else(|| cut(&head, most))
    }
}

/// The first words of a line, as far as they go.
fn cut(line: &str, most: usize) -> String {
    let kept: String = line.chars().take(most.saturating_sub(1)).collect();
    let end = kept.rfind(' ').unwrap_or(kept.len());
    format!("{}…", &kept[..end])
}

/// Lines for a short list of at most `most`, the last of which says how many were left out, and how to see them.
pub fn short(lines: &[Told<'_>], most: usize, width: usize) -> Vec<String> {
    let shown = if lines.len() > most { most - 1 } else { lines.len() };
    let mut list: Vec<String> = lines[..shown].iter().map(|line| line.line(width)).collect();
    let left = |level| lines[shown..].iter().filter(|line| line.worst.level == level).count();
    let parts: Vec<String> = [(left(Level::Fix), "to fix"), (left(Level::Check), "to check")]
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, what)| format!("{count} more {what}"))
        .collect();
    if !parts.is_empty() {
        list.push(format!("       {}: --all", parts.join(", ")));
    }
    list
}
