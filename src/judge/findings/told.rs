//! Findings as a short list: a line a matter, what several things have alike told together, and so what one thing has by one
//! cause.

use super::{Finding, Level, Matter};

/// One line of the list: the worst finding of a matter, and the others of it or of its cause.
#[derive(Clone, Debug)]
pub struct Told<'a> {
    /// The worst, which gives the words.
    pub worst: &'a Finding,
    /// What other things have of the same matter, and what the same thing has by the same cause.
    pub others: Vec<&'a Finding>,
}

/// Findings, the worst first, told by matter.
pub fn told(findings: &[Finding]) -> Vec<Told<'_>> {
    let mut lines: Vec<Told<'_>> = Vec::new();
    for finding in findings {
        match lines.iter_mut().find(|line| line.takes(finding)) {
            Some(line) => line.others.push(finding),
            None => lines.push(Told { worst: finding, others: Vec::new() }),
        }
    }
    lines
}

/// The matter that a matter of one thing comes with: what goes past a target lights what is beside it and the sky, and a cloth
/// that stands out by day does so by lamplight.
fn cause(matter: Matter) -> Matter {
    match matter {
        Matter::Spill | Matter::Skyward => Matter::Overspill,
        Matter::ShowsByLamplight => Matter::ShowsByDay,
        other => other,
    }
}

/// Findings, each told by itself.
pub fn each(findings: &[Finding]) -> Vec<Told<'_>> {
    findings.iter().map(|worst| Told { worst, others: Vec::new() }).collect()
}

impl Told<'_> {
    fn takes(&self, finding: &Finding) -> bool {
        let worst = self.worst;
        worst.matter == finding.matter || (worst.of == finding.of && cause(worst.matter) == cause(finding.matter))
    }

    /// All findings that it stands for, the worst first.
    pub fn findings(&self) -> impl Iterator<Item = &Finding> {
        std::iter::once(self.worst).chain(self.others.iter().copied())
    }

    /// It as one line of at most `most` characters: problem, number, where else, what to do. Where that is too long, names
    /// become counts first, then what to do is left out.
    pub fn line(&self, most: usize) -> String {
        let Finding { level, says, does, .. } = self.worst;
        let places: Vec<&str> = self.worst.places.iter().skip(1).map(|place| place.spot.as_str()).collect();
        let (own, alike): (Vec<&Finding>, Vec<&Finding>) =
            self.others.iter().copied().partition(|other| other.of == self.worst.of);
        let mut things: Vec<&str> = Vec::new();
        for other in &alike {
            if !things.contains(&other.of.as_str()) {
                things.push(&other.of);
            }
        }
        let own = own.iter().filter(|other| other.matter != self.worst.matter);
        let own: String = own.map(|other| format!("; also {}", other.matter.name())).collect();
        let sure = if self.worst.unsure { " (may be fine)" } else { "" };
        let head = format!("{:<6} {says}{sure}", level.name());
        let by_name = |word: &str, names: &[&str]| match names {
            [] => String::new(),
            names => {
                format!("; {word} {}", names.iter().map(|name| format!("“{name}”")).collect::<Vec<_>>().join(", "))
            }
        };
        let by_count = |count: usize, from: &str, what: &str, ending: &str| match count {
            0 => String::new(),
            1 => format!("; {from}1 {what}"),
            count => format!("; {from}{count} {what}{ending}"),
        };
        let named = by_name("also from", &places) + &own + &by_name("also", &things);
        let counted =
            by_count(places.len(), "from ", "more place", "s") + &own + &by_count(things.len(), "", "more alike", "");
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
        list.push(format!("       {}; `--all` shows them", parts.join(", ")));
    }
    list
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thing_is_named_once_however_many_findings_it_has() {
        let of = |name| Finding::new(Matter::Ghost, Level::Check, name, None);
        let found = ["worst", "first", "second", "first"].map(of);
        let line = told(&found)[0].line(300);
        assert!(line.contains("; also “first”, “second”. "), "{line}");
    }
}
