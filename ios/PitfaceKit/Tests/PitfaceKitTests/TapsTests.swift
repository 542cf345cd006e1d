import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// How many taps the work takes, each by the words that stand on the glass: the same ways as on Android.
@MainActor @Suite struct TapsTests {
  @Test func aWholePitOfThreeLayersTakesAtMost25Taps() async throws {
    let phone = try await Phone()
    try await phone.takesIn("long_sedge")
    phone.taps = 0
    try await phone.to("start_pit")
    let sameAbove = "Same as above"
    for words in ["Wheeling", "Moist", "Slips in", "Crumbs", sameAbove, sameAbove, sameAbove, "Hard push", "Flat plates", sameAbove] {
      try await phone.tap(words)
    }
    for words in ["Firm push", "Rounded lumps", sameAbove, sameAbove, sameAbove, "Bottom of hole"] { try await phone.tap(words) }
    let seen = [
      "0–20": ["Slips in", "Go right through", "Many", "Earthy", "Falls apart", "None"],
      "20–30": ["Hard push", "Turned sideways", "Cut off", "None", "No smell", "Falls apart"],
      "30–50": ["Firm push", "Go right through", "Some", "Earthy", "Falls apart", "None"],
    ]
    while try phone.shown.kind == .nextLook {
      let asked = try phone.shown.answer!.text.plain
      let answers = try #require(seen.first { asked.hasPrefix($0.key) }?.value, "\(asked)")
      try await phone.tap(try #require(answers.first { phone.tree.named($0) != nil }, "\(asked)"))
      try #require(phone.taps < 50, "the asking does not end")
    }
    #expect(try phone.shown.kind == .roll)
    try await phone.tap("Cracks into short lengths. Soil from 35 cm")
    try await phone.tap("Crumbles. Soil from the surface")
    #expect(try phone.shown.kind == .call)
    #expect(phone.taps <= 25)
    let pit = try #require(try await phone.notes(phone.shown.field!).list("pits").last)
    #expect(pit.list("walk").count == 10 && pit.list("rolls").count == 2, "steps and rolls in the store")
    #expect(Set(pit.list("walk").compactMap { $0.text("comes_away") }) == ["crumbs", "flat_plates", "rounded_lumps"])
    print("taps: pit \(phone.taps) through Swift (\"\(try phone.shown.answer!.text.plain)\")")
  }

  @Test func eightReadingsBehindTheMachineTakeAtMostTwelveTaps() async throws {
    let phone = try await Phone()
    try await phone.takesIn("lapwing_ground")
    try await phone.to("pass")
    try await phone.tap(try #require(try phone.shown.rows.first { $0.title.lowercased().contains("headland") }).title)
    phone.taps = 0
    let before = try await readings(phone)
    try await phone.to("in_hole")
    #expect(try phone.shown.kind == .afterDig)
    let firm = [33, 33, 30, 26, 25, 29, 33, 34]
    for depth in firm { try await read(depth, phone) }
    #expect(phone.taps <= 12)
    let looked = ["Open to the surface, straight sides", "Not smeared", "Small", "None left", "Go right through"]
    while phone.tree.named("Not looked") != nil {
      try await phone.tap(try #require(looked.first { phone.tree.named($0) != nil }, "\(phone.tree.all.compactMap(\.spoken))"))
      try #require(phone.taps < 50, "the asking does not end")
    }
    #expect(phone.taps <= 12 + 1, "one of them to begin the hole")
    #expect(try await readings(phone).subtracting(before) == [firm.map { $0 * 10 }], "all eight are in the store")
    print("taps: after-dig \(phone.taps) through Swift, of them 1 to begin the hole")
  }

  private func readings(_ phone: Phone) async throws -> Set<[Int]> {
    Set(try await phone.notes(phone.shown.field!).list("passes").flatMap { $0.list("after_digs") }.map { $0.list("firm_mm").compactMap(\.int) })
  }

  /// A depth is one of the numbers offered; where it is not, they are moved until it is.
  private func read(_ depth: Int, _ phone: Phone) async throws {
    while phone.tree.named("\(depth)") == nil {
      let least = phone.tree.all.filter { $0.deed != nil }.compactMap { Int($0.label ?? "") }.min()
      try await phone.tap(try #require(least) > depth ? "Shallower" : "Deeper")
    }
    try await phone.tap("\(depth)")
  }
}
