//! 01: type A, type B, combining, coverage factors, conformity, global risks.

use hubslate::trade::play::risk::Inspection;
use hubslate::trade::play::uncertainty::{
    Combined, Contribution, Guarded, arcsine, combine, conforms_above, conforms_below,
    conforms_between, guarded, rectangle, resolution, t_one_sided, t_two_sided, triangle, type_a,
};
use serde_json::{Value, json};

use crate::rows::Row;

pub fn computed(row: &Row) -> Option<Value> {
    let (family, name) = row
        .quantity()
        .split_once('.')
        .unwrap_or((row.quantity(), ""));
    let number = match (family, name) {
        ("type_a", _) => of_series(row, name)?,
        ("rect", "u") => rectangle(half_width(row)),
        ("tri", "u") => triangle(half_width(row)),
        ("resolution", "u") => resolution(row.number("step")),
        ("h1", "t99") => t_two_sided(row.number("p"), row.dof()),
        ("h1", _) => Gauge::of(row).value(name)?,
        ("welch", "uc") => listed(row).u,
        ("welch", "nu_eff") => listed(row).dof?,
        ("t_quantile", _) => t_two_sided(row.number("p_two_sided"), row.dof()),
        ("pc", _) => probability(row, name)?,
        ("risk", "consumer_global") => inspection(row).consumer_risk(),
        ("risk", "producer_global") => inspection(row).producer_risk(),
        ("decision", "one_sided_upper") => return Some(decision(row)),
        _ => return None,
    };
    Some(json!(number))
}

/// 14: series of which mean and standard deviation are certified.
pub fn certified(row: &Row) -> Option<Value> {
    let readings = match row.has("readings") {
        true => row.numbers("readings"),
        false => {
            let pair = row.numbers("pair");
            let pairs = row.number("pairs") as usize;
            let first = [row.number("first")];
            let rest = pair.iter().copied().cycle().take(2 * pairs);
            first.into_iter().chain(rest).collect()
        }
    };
    let series = type_a(&readings).unwrap();
    Some(json!({ "mean": series.mean, "s": series.s }))
}

fn of_series(row: &Row, name: &str) -> Option<f64> {
    let series = type_a(&row.numbers("readings")).unwrap();
    match name {
        "mean" => Some(series.mean),
        "s" => Some(series.s),
        "u" => Some(series.u),
        _ => None,
    }
}

fn half_width(row: &Row) -> f64 {
    (row.number("upper") - row.number("lower")) / 2.0
}

fn listed(row: &Row) -> Combined {
    let parts: Vec<_> = row
        .numbers("u")
        .into_iter()
        .zip(row.numbers("dof"))
        .map(|(u, dof)| part(u, dof))
        .collect();
    combine(&parts)
}

fn part(u: f64, dof: f64) -> Contribution {
    Contribution { u, dof: Some(dof) }
}

fn probability(row: &Row, name: &str) -> Option<f64> {
    let n = |input| row.number(input);
    Some(match name {
        "z_one_sided" => t_one_sided(n("pc"), None),
        "upper" => conforms_below(n("y"), n("u"), n("upper")),
        "lower" => conforms_above(n("y"), n("u"), n("lower")),
        "two_sided" => conforms_between(n("y"), n("u"), n("lower"), n("upper")),
        "prior" => conforms_between(n("prior_mean"), n("prior_sd"), n("lower"), n("upper")),
        _ => return None,
    })
}

fn inspection(row: &Row) -> Inspection {
    let n = |input| row.number(input);
    Inspection {
        mean: n("prior_mean"),
        sd: n("prior_sd"),
        u: n("u_meas"),
        tolerance: (n("lower"), n("upper")),
        accepted: (n("accept_lower"), n("accept_upper")),
    }
}

fn decision(row: &Row) -> Value {
    let n = |input| row.number(input);
    json!(
        match guarded(n("y"), n("u"), n("upper"), n("guard_factor")) {
            Guarded::ProvenIn => "accept",
            Guarded::ProvenOut => "reject",
            Guarded::InNotProven | Guarded::OutNotProven => "indeterminate",
        }
    )
}

/// GUM H.1, the end gauge: its model stands here, its parts come from the app.
struct Gauge {
    comparator: Combined,
    u_theta: f64,
    u_d_theta: f64,
    by_d_alpha: f64,
    by_d_theta: f64,
    total: Combined,
    second_order: f64,
}

impl Gauge {
    fn of(row: &Row) -> Self {
        let n = |input| row.number(input);
        let comparator = combine(&[
            part(n("u_rep_nm"), n("dof_rep")),
            part(n("u_cmp_rand_nm"), n("dof_cmp_rand")),
            part(n("u_cmp_sys_nm"), n("dof_cmp_sys")),
        ]);
        let known = |u| Contribution { u, dof: None };
        let cycle = arcsine(n("theta_cycle_amplitude_arcsine"));
        let u_theta = combine(&[known(n("u_theta_mean")), known(cycle)]).u;
        let u_d_alpha = rectangle(n("d_alpha_half_width"));
        let u_d_theta = rectangle(n("d_theta_half_width"));
        let by_d_alpha = (n("l_s_nm") * n("theta") * u_d_alpha).abs();
        let by_d_theta = n("l_s_nm") * n("alpha_s") * u_d_theta;
        let total = combine(&[
            part(n("u_ls_nm"), n("dof_ls")),
            comparator,
            part(by_d_alpha, n("dof_d_alpha")),
            part(by_d_theta, n("dof_d_theta")),
        ]);
        let u_alpha = rectangle(n("alpha_s_half_width"));
        let second_order = combine(&[
            known(n("l_s_nm") * u_d_alpha * u_theta),
            known(n("l_s_nm") * u_alpha * u_d_theta),
        ])
        .u;
        Self {
            comparator,
            u_theta,
            u_d_theta,
            by_d_alpha,
            by_d_theta,
            total,
            second_order,
        }
    }

    fn value(&self, name: &str) -> Option<f64> {
        Some(match name {
            "u_d" => self.comparator.u,
            "dof_d" => self.comparator.dof?,
            "u_theta" => self.u_theta,
            "u_d_theta" => self.u_d_theta,
            "contribution_d_alpha" => self.by_d_alpha,
            "contribution_d_theta" => self.by_d_theta,
            "uc" => self.total.u,
            "uc_squared" => self.total.u.powi(2),
            "nu_eff" => self.total.dof?,
            // The example truncates the degrees of freedom, as its table has whole ones.
            "U99" => t_two_sided(0.99, self.total.dof.map(f64::floor)) * self.total.u,
            "uc_with_second_order" => self.total.u.hypot(self.second_order),
            _ => return None,
        })
    }
}
