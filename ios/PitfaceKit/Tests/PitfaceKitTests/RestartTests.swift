import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// Wherever in the app its process is ended, it comes back to the same place, with all that was noted.
@MainActor @Suite final class RestartTests {
  private var phone: Phone!
  private var kinds: Set<ScreenKind> = []
  private var been: Set<String> = []
  private var field: String?
  private var ends = 0

  private func comesBack() async throws {
    let before = try phone.shown
    let held = if let field { try await phone.notes(field) } else { Json?.none }
    try await phone.restarts()
    let after = try phone.shown
    #expect(phone.shell.failure == nil)
    #expect(after.everything == before.everything, "\(before.kind) \(before.title)")
    if let field { #expect(try await phone.notes(field) == held, "every record") }
    ends += 1
    kinds.insert(after.kind)
  }

  /// Every kind of place that leads from here and was not seen yet, and `deep` further from there.
  private func around(_ deep: Int) async throws {
    let start = try phone.shown
    for (_, does) in start.tappable where does.act.hasPrefix("{\"go\":") && does != start.back?.does {
      let name = does.act.replacing(/[0-9a-f]{8}-[0-9a-f-]{27}|[0-9a-f]{32,}/, with: "#").replacing(/\d+/, with: "0")
      guard been.insert(name).inserted else { continue }
      try await phone.act(does.act)
      try await comesBack()
      if deep > 1 { try await around(deep - 1) }
      try await phone.back()
      // Back from a question about a pit leads past the others; then the walk from here is over.
      if try phone.shown.title != start.title || phone.shown.kind != start.kind { return }
    }
  }

  @Test func everyKindOfScreenIsComeBackToWithNothingLost() async throws {
    phone = try await Phone(chosen: false)
    try await comesBack()
    try await phone.tap("English")
    try await comesBack()
    try await around(2)
    try await phone.toTheFields()
    try await phone.takesIn("lapwing_ground")
    field = try phone.shown.field
    try await comesBack()
    try await around(3)
    try await phone.toTheFields()
    try await phone.tap("Lapwing Ground")
    try await aPit()
    try await behindTheMachine()
    try await withANeighbour()
    print("restart: ended and begun \(ends) times through Swift, at \(kinds.count) kinds of screen")
    let all: Set<ScreenKind> = [
      .welcome, .fields, .field, .startPit, .knifeWalk, .nextLook, .layers, .roll, .call, .machine, .pass, .afterDig, .show, .photos, .handOver, .partners,
      .versions, .own, .onPlan, .deleting,
    ]
    #expect(all.subtracting(kinds) == [], "every kind of screen")
  }

  private func aPit() async throws {
    try await phone.to("start_pit")
    for words in ["Wheeling", "Moist", "Slips in", "Crumbs", "Same as above", "Hard push", "Flat plates", "Same as above"] {
      try await phone.tap(words)
      if words != "Slips in" { try await comesBack() }
      if words == "Wheeling" { try await around(1) }
    }
    for _ in 0..<2 where try phone.shown.kind == .knifeWalk { try await phone.tap("Bottom of hole") }
    while try phone.shown.kind == .nextLook || phone.shown.kind == .roll {
      try await comesBack()
      try await phone.tap(try phone.shown.tools.last!.label)
    }
    try await comesBack()
    let about = try #require(try phone.shown.tappable.map(\.does.act).joined().firstMatch(of: /"pit":"([^"]+)"/)).1
    for place in ["photos", "layers"] {
      try await phone.act("{\"go\":{\"\(place)\":{\"field\":\"\(field!)\",\"pit\":\"\(about)\"}}}")
      try await comesBack()
    }
  }

  private func behindTheMachine() async throws {
    try await phone.toTheFields()
    try await phone.tap("Lapwing Ground")
    try await phone.to("pass")
    try await comesBack()
    try await phone.tap(try #require(try phone.shown.rows.first { $0.title.lowercased().contains("headland") }).title)
    try await comesBack()
    try await phone.to("in_hole")
    try await comesBack()
  }

  /// What the same field became on somebody else's phone comes back, and differs from what it is here.
  private func withANeighbour() async throws {
    let field = field!
    let nora = try await Phone()
    try await nora.believes(try await phone.handsOver())
    try await nora.sets(field, "texture", "Heavy")
    try await phone.sets(field, "texture", "Light")
    try await phone.believes(try await nora.handsOver())
    try await phone.act(try #require(try phone.shown.tappable.first { $0.does.act.contains("{\"go\":{\"versions\"") }).does.act)
    try await comesBack()
  }
}
