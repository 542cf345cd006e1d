import Foundation
import PitfaceCore

/// Where this device keeps a secret that never leaves it.
public protocol Secrets: Sendable {
  /// `nil` where there is none; throws where it cannot be looked up.
  func read() throws -> Data?
  /// Whether it is kept now.
  func write(_ secret: Data) -> Bool
  func remove()
}

/// Opens a session whose key lies with `secrets` and not in a file. The core reads and makes the key as a file of its folder: that file is
/// there while it opens, and goes once the secret is kept. A secret without notes is left over from an app that was removed: with
/// it a new store would write in the name of the old one, so it goes too.
public func openKeyed(
  _ folders: Folders, _ secrets: any Secrets, open: (Folders) throws -> any SessionProtocol
) throws -> any SessionProtocol {
  let file = folders.key.appending(path: "key")
  let files = FileManager.default
  if try files.contentsOfDirectory(atPath: folders.notes.path).isEmpty {
    secrets.remove()
  } else if !files.fileExists(atPath: file.path), let secret = try secrets.read() {
    try secret.write(to: file, options: .atomic)
  }
  let session = try open(folders)
  if let secret = try? Data(contentsOf: file), secrets.write(secret) { try? files.removeItem(at: file) }
  return session
}
