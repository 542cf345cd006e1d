import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// Wherever in the app its process is ended, it comes back to the same place, with all that was noted.
@MainActor @Suite struct RestartTests {
  @Test func everyKindOfScreenIsComeBackToWithNothingLost() async throws {
    let phone = try await Phone(chosen: false)
    var (ends, kinds) = (0, Set<ScreenKind>())
    var tour: Tour?
    func comesBack() async throws {
      let before = try phone.shown
      let field = tour?.field.first
      let held = if let field { try await phone.notes(field) } else { Json?.none }
      try await phone.restarts()
      let after = try phone.shown
      #expect(phone.shell.failure == nil)
      #expect(after.everything == before.everything, "\(before.kind) \(before.title)")
      if let field { #expect(try await phone.notes(field) == held, "every record") }
      ends += 1
      kinds.insert(after.kind)
    }
    tour = Tour([phone], arrives: comesBack)
    try await tour?.goes()
    print("restart: ended and begun \(ends) times through Swift, at \(kinds.count) kinds of screen")
    #expect(everyKind.subtracting(kinds) == [], "every kind of screen")
  }
}
