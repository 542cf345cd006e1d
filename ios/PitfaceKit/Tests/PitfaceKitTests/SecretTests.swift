import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// The key lies where the phone keeps secrets, and in no file once it does.
@Suite struct SecretTests {
  private final class Kept: Secrets, @unchecked Sendable {
    var secret: Data?
    var works = true
    func read() throws -> Data? { if works { secret } else { throw Missing("locked") } }
    func write(_ new: Data) -> Bool {
      if works { secret = new }
      return works
    }
    func remove() { secret = nil }
  }

  private func folders() throws -> Folders {
    let root = try made("secret")
    return try Folders(support: root.appending(path: "support"), caches: root.appending(path: "caches"))
  }

  private func file(_ folders: Folders) -> Bool { FileManager.default.fileExists(atPath: folders.key.appending(path: "key").path) }

  /// Opens, and gives the fingerprint that others know this device by.
  private func opened(_ folders: Folders, _ kept: Kept) throws -> Data? {
    let session = try openKeyed(folders, kept) { try Session.open(folder: $0.notes.path, keyFolder: $0.key.path, languageTag: "en", offsetMinutes: 0) }
    _ = try session.screen()
    return kept.secret
  }

  @Test func theKeyGoesFromItsFileAndComesBackForTheNextStart() throws {
    let (folders, kept) = (try folders(), Kept())
    let first = try opened(folders, kept)
    #expect(first?.count == 65 && !file(folders), "in hex, with a line's end")
    #expect(try opened(folders, kept) == first && !file(folders), "the same device as before")
  }

  @Test func notesFromABackupAreAnotherDevice() throws {
    let (folders, kept) = (try folders(), Kept())
    let first = try opened(folders, kept)
    kept.secret = nil
    #expect(try opened(folders, kept) != first)
  }

  @Test func aKeyThatOutlivedItsNotesIsNotUsedAgain() throws {
    let kept = Kept()
    let first = try opened(try folders(), kept)
    #expect(try opened(try folders(), kept) != first)
  }

  @Test func aPhoneThatKeepsNoSecretStillWorksAndOneThatCannotBeAskedMakesNoNewKey() throws {
    let (folders, kept) = (try folders(), Kept())
    kept.works = false
    _ = try opened(folders, kept)
    #expect(file(folders), "then it stays in its folder")
    kept.works = true
    let first = try opened(folders, kept)
    kept.works = false
    #expect(throws: Missing.self) { try opened(folders, kept) }
    kept.works = true
    #expect(try opened(folders, kept) == first)
  }
}
