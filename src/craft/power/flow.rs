//! Currents and volts in a tree of conductors.
//!
//! A branch of resistance `R`, there and back, that carries `I` ends `R I` lower than it begins (Ohm). What a device draws depends on
//! what it is: a heater takes the current that its watts want at full volts or less, but whatever has a converter inside, as projectors
//! and players do, keeps its watts `P` and takes `I = P / V`, more as the volts sag. So volts and currents are gone over in turn, from the
//! ends to the root and back, until they settle: the higher solution, which a line settles at. A line that would end below half its
//! volts has no such solution: `R P > V² / 4`, where the most that a line can hand over is reached.

/// A conductor of a tree, there and back.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Branch {
    /// The branch that it begins at the end of; the root where `None`. Always one that stands before it.
    pub parent: Option<usize>,
    /// What it resists, there and back, Ω.
    pub ohms: f64,
    /// What is drawn at its end, W at full volts.
    pub watts: f64,
}

/// What a branch carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flow {
    /// Current in it, A.
    pub amps: f64,
    /// Volts at its end.
    pub volts: f64,
}

/// Rounds after which what has not settled never does.
const ROUNDS: usize = 400;

/// As if every device took the current that its watts want at full volts: the usual figure.
pub fn constant_current(volts: f64, tree: &[Branch]) -> Vec<Flow> {
    round(volts, tree, &vec![volts; tree.len()])
}

/// As devices that keep their watts settle; `None` where the line cannot hand over so much.
pub fn constant_power(volts: f64, tree: &[Branch]) -> Option<Vec<Flow>> {
    let mut flows = constant_current(volts, tree);
    for _ in 0..ROUNDS {
        if flows.iter().any(|flow| flow.volts.is_nan() || flow.volts < 0.5 * volts) {
            return None;
        }
        let now: Vec<f64> = flows.iter().map(|flow| flow.volts).collect();
        flows = round(volts, tree, &now);
        if flows.iter().zip(&now).all(|(flow, was)| (flow.volts - was).abs() < 1e-9 * volts) {
            return Some(flows);
        }
    }
    None
}

/// Currents by the volts at each end, from the ends to the root; then volts from the root to the ends.
fn round(volts: f64, tree: &[Branch], at: &[f64]) -> Vec<Flow> {
    let mut flows: Vec<Flow> =
        tree.iter().zip(at).map(|(branch, at)| Flow { amps: branch.watts / at, volts }).collect();
    for (index, branch) in tree.iter().enumerate().rev() {
        if let Some(parent) = branch.parent {
            flows[parent].amps += flows[index].amps;
        }
    }
    for (index, branch) in tree.iter().enumerate() {
        let from = branch.parent.map_or(volts, |parent| flows[parent].volts);
        flows[index].volts = from - branch.ohms * flows[index].amps;
    }
    flows
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_line_is_the_root_of_its_equation() {
        // V² − V₀ V + R P = 0.
        for (volts, ohms, watts) in [(12.0, 0.2, 48.0), (12.0, 0.05, 100.0), (120.0, 0.4, 1500.0)] {
            let flow = constant_power(volts, &[Branch { parent: None, ohms, watts }]).unwrap()[0];
            let root = 0.5 * (volts + (volts * volts - 4.0 * ohms * watts).sqrt());
            assert!((flow.volts - root).abs() < 1e-6, "{} {root}", flow.volts);
            assert!((flow.amps * flow.volts - watts).abs() < 1e-6);
        }
        assert_eq!(constant_power(12.0, &[Branch { parent: None, ohms: 0.76, watts: 48.0 }]), None);
    }

    #[test]
    fn a_chain_obeys_ohm_and_kirchhoff_at_every_joint() {
        let tree = [
            Branch { parent: None, ohms: 0.05, watts: 20.0 },
            Branch { parent: Some(0), ohms: 0.08, watts: 15.0 },
            Branch { parent: Some(1), ohms: 0.1, watts: 5.0 },
            Branch { parent: Some(0), ohms: 0.3, watts: 8.0 },
        ];
        let flows = constant_power(12.0, &tree).unwrap();
        for (index, branch) in tree.iter().enumerate() {
            let from = branch.parent.map_or(12.0, |parent| flows[parent].volts);
            assert!((from - flows[index].volts - branch.ohms * flows[index].amps).abs() < 1e-6);
            let onwards: f64 =
                tree.iter().zip(&flows).filter(|(b, _)| b.parent == Some(index)).map(|(_, f)| f.amps).sum();
            assert!((flows[index].amps - onwards - branch.watts / flows[index].volts).abs() < 1e-6);
        }
        // All that leaves the root is drawn or lost on the way.
        let lost: f64 = tree.iter().zip(&flows).map(|(branch, flow)| branch.ohms * flow.amps * flow.amps).sum();
        let drawn: f64 = tree.iter().map(|branch| branch.watts).sum();
        assert!((12.0 * flows[0].amps - lost - drawn).abs() < 1e-5);
        let simple = constant_current(12.0, &tree);
        assert!(simple.iter().zip(&flows).all(|(simple, flow)| simple.volts > flow.volts));
    }
}
