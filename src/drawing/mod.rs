//! Line drawings as pure geometry; screens and paper use the same ones.
