//! By lamplight.

use super::Light;
use crate::judge::findings::{Case, Finding, remedy::Proposal};

pub(in crate::judge::findings) fn look(case: &Case) -> Vec<Finding> {
    super::look(case, Light::Lamplight)
}

pub(in crate::judge::findings) fn propose(case: &Case, finding: &Finding) -> Vec<Proposal> {
    super::propose(case, finding)
}
