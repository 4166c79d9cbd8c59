//! Kinds of wheel end, and the procedure of each as a list of named steps.
