//! Every sentence that a person reads, matched exhaustively, one file a phase and language.
