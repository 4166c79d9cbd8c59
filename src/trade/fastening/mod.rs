//! What is loose, what does its spec card say, which wrench, in which order, is it plausible?
