//! The notes file (`.notes.json`): one field written by hand or by another program.
