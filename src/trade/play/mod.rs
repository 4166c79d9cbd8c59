//! How far does this bearing move, how sure is that, and is it within its own limit?
