//! What a person sees and touches. No formula and no limit lives here.

pub mod route;
