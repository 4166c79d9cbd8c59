//! Quantities with their units: typed text in, exact factors inside, never a bare number out.
