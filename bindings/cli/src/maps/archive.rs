//! Files zipped together, in memory.

use chrono::{DateTime, Utc};
use miniz_oxide::deflate::compress_to_vec;
use rawzip::time::UtcDateTime;
use rawzip::{CompressionMethod, Error, ZipArchiveWriter};
use std::io::Write as _;

/// How hard a file is packed, 0 to 10: more gains little and takes long.
const EFFORT: u8 = 6;

/// The files in one archive, in their order, each changed at this time.
///
/// # Errors
/// A name that no archive can hold.
pub fn zipped(files: &[(&str, &[u8])], at: DateTime<Utc>) -> Result<Vec<u8>, Error> {
    let mut bytes = Vec::new();
    let mut archive = ZipArchiveWriter::new(&mut bytes);
    for (name, content) in files {
        let file = archive.new_file(name).last_modified(UtcDateTime::from_unix(at.timestamp()));
        let (mut entry, config) = file.compression_method(CompressionMethod::DEFLATE).start()?;
        // The plain content gives size and checksum; what is written is packed.
        let mut writer = config.wrap(std::io::sink());
        writer.write_all(content)?;
        let (_, descriptor) = writer.finish()?;
        entry.write_all(&compress_to_vec(content, EFFORT))?;
        entry.finish(descriptor)?;
    }
    archive.finish()?;
    Ok(bytes)
}
