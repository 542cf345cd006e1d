import Foundation

/// Where the app's files lie. Nothing of it goes into a backup, as on Android: a phone restored from one would write in this one's name.
public struct Folders: Sendable {
  /// The store, its photos and the settings.
  public let notes: URL
  /// The team word, and the key while the Keychain does not have it.
  public let key: URL
  /// Pictures until the core has taken them in.
  public let taken: URL
  /// Files that are handed to other programs or came from them.
  public let handed: URL

  /// Made below two folders of the app, where they are not there.
  public init(support: URL, caches: URL) throws {
    let whole = support.appending(path: "Pitface")
    notes = whole.appending(path: "notes")
    key = whole.appending(path: "key")
    taken = whole.appending(path: "taken")
    handed = caches.appending(path: "handed")
    for folder in [whole, notes, key, taken, handed] { try Self.make(folder) }
  }

  private static func make(_ folder: URL) throws {
    try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
    #if canImport(Darwin)
      // Readable from the first unlocking after a start on, so that a walk goes on while the screen is locked. New files inherit it.
      try FileManager.default.setAttributes(
        [.protectionKey: FileProtectionType.completeUntilFirstUserAuthentication], ofItemAtPath: folder.path)
      var (own, values) = (folder, URLResourceValues())
      values.isExcludedFromBackup = true
      try own.setResourceValues(values)
    #endif
  }

  /// Other programs have read what was handed to them by then, or asked the person again. Seconds.
  static let kept: TimeInterval = 3600

  /// Removes what was handed to other programs, or came from them, an hour ago; and what the camera left before the app was ended.
  public func tidy(now: Date = Date(), camera: Bool) {
    let files = FileManager.default
    for old in (try? files.contentsOfDirectory(at: handed, includingPropertiesForKeys: [.contentModificationDateKey])) ?? [] {
      let changed = try? old.resourceValues(forKeys: [.contentModificationDateKey]).contentModificationDate
      if let changed, changed < now - Self.kept { try? files.removeItem(at: old) }
    }
    guard camera else { return }
    for left in (try? files.contentsOfDirectory(at: taken, includingPropertiesForKeys: nil)) ?? [] { try? files.removeItem(at: left) }
  }
}
