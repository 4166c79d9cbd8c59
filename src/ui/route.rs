//! Hash routes.
