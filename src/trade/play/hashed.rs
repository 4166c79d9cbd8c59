//! Digests of what has doubles in it, by their bits: for telling two versions of an entry apart.

use core::hash::{Hash, Hasher};

use super::budget::{Budget, Component};
use super::conformity::{Comparison, Judged};

impl Hash for Component {
    fn hash<H: Hasher>(&self, state: &mut H) {
        let Self { source, u, dof } = self;
        (source, u, dof.map(f64::to_bits)).hash(state);
    }
}

impl Hash for Budget {
    fn hash<H: Hasher>(&self, state: &mut H) {
        let Self {
            components,
            u_c,
            dof_eff,
            expanded95,
            g,
        } = self;
        (
            components,
            u_c,
            dof_eff.map(f64::to_bits),
            expanded95,
            g.to_bits(),
        )
            .hash(state);
    }
}

impl Hash for Comparison {
    fn hash<H: Hasher>(&self, state: &mut H) {
        let Self {
            play,
            limit,
            u,
            dof,
            g,
            cycles,
            beyond_rig,
            conformance,
        } = self;
        (
            play,
            limit,
            u,
            dof.map(f64::to_bits),
            g.to_bits(),
            cycles,
            beyond_rig,
            conformance.to_bits(),
        )
            .hash(state);
    }
}

impl Hash for Judged {
    fn hash<H: Hasher>(&self, state: &mut H) {
        let Self {
            result,
            conformance,
        } = self;
        (result, conformance.to_bits()).hash(state);
    }
}
