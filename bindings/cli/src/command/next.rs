//! `pitface next`: the question most worth answering in each pit, and whether another pit is worth digging.
