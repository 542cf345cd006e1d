import Foundation
import PitfaceCore

@testable import PitfaceKit

/// The smallest that passes for a JPEG: whoever keeps it looks at its first bytes, and nobody here shows it.
let jpeg = Data([0xFF, 0xD8, 0xFF, 0xDA, 0, 2] + (0..<64).map { UInt8($0) } + [0xFF, 0xD9])

/// Every kind of screen there is, by ways that a person goes. The first phone is told in its own words; the others, whose language may be another, tap what
/// stands at the same place.
@MainActor
final class Tour {
  private let phones: [Phone]
  private let arrives: () async throws -> Void
  private(set) var field: [String] = []
  private var been: Set<String> = []

  /// Goes it, and tells of each place.
  init(_ phones: [Phone], arrives: @escaping () async throws -> Void) { (self.phones, self.arrives) = (phones, arrives) }

  private var here: ShownScreen { get throws { try phones[0].shown } }

  /// Does the same on each phone.
  private func each(_ what: (Phone) async throws -> Void) async throws {
    for phone in phones { try await what(phone) }
    let kinds = try Set(phones.map { try $0.shown.kind })
    guard kinds.count == 1 else { throw Missing("the phones went different ways: \(kinds)") }
  }

  private func at(_ place: Int) async throws { try await each { try await $0.act($0.shown.tappable[place].does.act) } }

  private func tap(_ words: String) async throws {
    let there = try here.tappable.lastIndex { $0.label.plain == words && !$0.does.act.isEmpty }
    try await at(there ?? { throw Missing("no \"\(words)\" on \(try here.title); there is \(try here.tappable.map(\.label))") }())
  }

  private func to(_ place: String) async throws {
    let start = try here
    let there = start.tappable.firstIndex {
      $0.does != start.back?.does && ($0.does.act.contains("{\"go\":{\"\(place)\"") || $0.does.act.contains("{\"go\":\"\(place)\""))
    }
    try await at(there ?? { throw Missing("nothing leads to \(place) from \(start.kind)") }())
  }

  private func toTheFields() async throws { try await each { try await $0.toTheFields() } }

  /// Every kind of place that leads from here and was not seen yet, and `deep` further from there.
  private func around(_ deep: Int) async throws {
    let start = try here
    for (place, (_, does)) in start.tappable.enumerated() where does.act.hasPrefix("{\"go\":") && does != start.back?.does {
      let name = does.act.replacing(/[0-9a-f]{8}-[0-9a-f-]{27}|[0-9a-f]{32,}/, with: "#").replacing(/\d+/, with: "0")
      guard been.insert(name).inserted else { continue }
      try await at(place)
      try await arrives()
      if deep > 1 { try await around(deep - 1) }
      try await each { try await $0.back() }
      // Back from a question about a pit leads past the others; then the walk from here is over.
      if try here.title != start.title || here.kind != start.kind { return }
    }
  }

  func goes() async throws {
    try await arrives()
    let welcome = try phones.map { try $0.shown }
    for (phone, screen) in zip(phones, welcome) { try await phone.tap(screen.language == "de" ? "Deutsch" : "English") }
    try await arrives()
    try await around(2)
    try await toTheFields()
    try await each { try await $0.takesIn("lapwing_ground") }
    field = try phones.map { try $0.shown.field! }
    try await arrives()
    try await around(3)
    try await toTheFields()
    try await tap("Lapwing Ground")
    try await aPit()
    try await behindTheMachine()
    try await withANeighbour()
  }

  private func aPit() async throws {
    try await to("start_pit")
    for words in ["Wheeling", "Moist", "Slips in", "Crumbs", "Same as above", "Hard push", "Flat plates", "Same as above"] {
      try await tap(words)
      if words != "Slips in" { try await arrives() }
      if words == "Wheeling" { try await around(1) }
    }
    for _ in 0..<2 where try here.kind == .knifeWalk { try await tap("Bottom of hole") }
    while try here.kind == .nextLook || here.kind == .roll {
      try await arrives()
      let past = try here.tools.last!.does
      try await at(try here.tappable.lastIndex { $0.does == past }!)
    }
    try await arrives()
    for place in ["photos", "layers"] {
      try await each { phone in
        let about = try phone.shown.tappable.map(\.does.act).joined().firstMatch(of: /"field":"([^"]+)","pit":"([^"]+)"/)
        try await phone.act("{\"go\":{\"\(place)\":{\"field\":\"\(about!.1)\",\"pit\":\"\(about!.2)\"}}}")
        if place == "photos" { try await phone.takesAPhoto() }
      }
      try await arrives()
      if place == "photos" { try await around(1) }
    }
  }

  private func behindTheMachine() async throws {
    try await toTheFields()
    try await tap("Lapwing Ground")
    try await to("pass")
    try await arrives()
    let headland = try here.rows.first { $0.title.lowercased().contains("headland") }
    try await at(try here.tappable.lastIndex { $0.does == headland?.does }!)
    try await arrives()
    try await to("in_hole")
    try await arrives()
  }

  /// What the same field became on somebody else's phone comes back, and differs from what it is here.
  private func withANeighbour() async throws {
    for (phone, field) in zip(phones, field) {
      let nora = try await Phone()
      try await nora.believes(try await phone.handsOver())
      try await nora.sets(field, "texture", 2)
      try await phone.sets(field, "texture", 1)
      let sent = try await nora.handsOver()
      try await phone.opens(sent)
    }
    try await arrives()
    try await to("partner")
    try await arrives()
    try await each { try await $0.act($0.shown.next!.does.act) }
    try await to("versions")
    try await arrives()
  }
}

extension Phone {
  /// The camera gives a picture of whatever the screen wants one of.
  func takesAPhoto(_ picture: Data = jpeg) async throws {
    let wanted = try shown.tappable.first { if case .takePhoto = $0.does { true } else { false } }
    shell.does(try wanted?.does ?? { throw Missing("no photo is wanted on \(try shown.kind)") }())
    let file = folders.taken.appending(path: "\(UUID().uuidString).jpg")
    try picture.write(to: file)
    shell.photoReturned(file.path)
    try await settle()
  }
}
