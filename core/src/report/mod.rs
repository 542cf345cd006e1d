//! Room of report.
