import Foundation
import PitfaceKit
import UIKit

/// A file that another program hands over, read as it comes.
final class FileSource: Source, @unchecked Sendable {
  private let file: URL
  private let opened: Bool
  private let handle: FileHandle

  init(_ file: URL) throws {
    self.file = file
    opened = file.startAccessingSecurityScopedResource()
    do { handle = try Self.read(file) } catch {
      if opened { file.stopAccessingSecurityScopedResource() }
      throw error
    }
  }

  /// Waits until whoever has the file elsewhere has brought it here.
  private static func read(_ file: URL) throws -> FileHandle {
    var (fault, found): (NSError?, Result<FileHandle, any Error>?)
    NSFileCoordinator().coordinate(readingItemAt: file, error: &fault) { there in found = Result { try FileHandle(forReadingFrom: there) } }
    guard let found else { throw fault ?? CocoaError(.fileReadUnknown) }
    return try found.get()
  }

  func next() throws -> Data? {
    let piece = try handle.read(upToCount: 64 * 1024)
    return piece?.isEmpty == false ? piece : nil
  }

  func close() {
    try? handle.close()
    if opened { file.stopAccessingSecurityScopedResource() }
  }
}
