//! The one place that appends: stamps, encodes, stores, folds.
