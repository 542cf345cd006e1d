import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// Screens of every kind as trees, on every glass, at every size of letters, in both languages and for either hand, held to what Android's are held to
/// as far as a tree can say.
@MainActor @Suite(.serialized) struct SweepTests {
  /// Points without the system's bars, of the smallest phone with the system asked for (375 by 667) to a tablet, and the smallest that Android's are held to.
  private static let glasses = [(360, 592), (375, 647), (375, 728), (393, 759), (430, 839), (640, 312), (734, 372), (800, 1232), (1180, 760)]
  private static let sizes = [1, 1.15, 1.3, 2, 3.1]

  @Test(arguments: ["en", "de"]) func everyKindOfScreenHoldsWhatIsOfRankInSight(language: String) async throws {
    let screens = try await Self.fullest(language)
    var (looks, faults) = (0, [String: String]())
    for one in screens {
      for (index, (width, height)) in Self.glasses.enumerated() {
        let glass = Glass(width: Double(width), height: Double(height))
        for (turn, scale) in Self.sizes.enumerated() {
          // Each hand at every glass and every size of letters, by turns.
          let shown = one.held(left: (index + turn) % 2 == (language == "en" ? 0 : 1))
          let tree = Letters(Helvetica(), scale: scale).whole(shown, glass, Around { $0.rawValue })
          looks += 1
          for fault in Rules(shown, tree, glass, scale).faults { faults["\(shown.kind): \(fault)"] = "\(width)x\(height) at \(scale)" }
        }
      }
    }
    print("sweep: \(screens.count) screens of \(Set(screens.map(\.kind)).count) kinds in \(looks) looks in \(language), \(faults.count) kinds of fault")
    #expect(faults.sorted { $0.key < $1.key }.prefix(12).map { "\($0.key) (\($0.value))" } == [])
  }

  /// A tree with something wrong is found out: else the sweep could not fail.
  @Test func theRulesFindWhatIsWrong() async throws {
    let shown = try #require(try await Self.fullest("en").first { $0.kind == .knifeWalk })
    let glass = Glass(width: 393, height: 780)
    let tree = Letters(Helvetica(), scale: 1).whole(shown, glass, Around { $0.rawValue })
    #expect(Rules(shown, tree, glass, 1).faults == [])
    func broken(_ breaks: (inout Node) -> Void) -> [String] {
      func all(_ node: Node) -> Node {
        var node = node
        breaks(&node)
        node.children = node.children.map(all)
        return node
      }
      return Rules(shown, all(tree), glass, 1).faults
    }
    #expect(!broken { if $0.deed != nil { $0.spoken = "" } }.isEmpty, "no name")
    #expect(!broken { if $0.rank == .tile { $0.id = "tile" } }.isEmpty, "one identifier for several")
    #expect(!broken { if $0.rank == .tile { $0.place.width = 30 } }.isEmpty, "too small")
    #expect(!broken { if $0.rank == .tile { $0.place.y += 900 } }.isEmpty, "out of sight")
    #expect(!broken { if $0.rank == .tool { $0.place.x = 0 } }.isEmpty, "over each other")
    #expect(!broken { $0.children.removeAll { $0.rank == .answer } }.isEmpty, "no answer")
    #expect(!broken { $0.children.reverse() }.isEmpty, "read in another order")
  }

  @Test func aTapOnWhatIsFoldedUnfoldsIt() async throws {
    let shown = try #require(try await Self.fullest("en").first { !$0.more.isEmpty })
    var around = Around { $0.rawValue }
    let letters = Letters(Helvetica(), scale: 1)
    func said() -> [String] { letters.whole(shown, Glass(width: 393, height: 780), around).all.compactMap(\.spoken) }
    let last = try #require(shown.more.last?.lines.last)
    #expect(!said().contains(last))
    around.unfolded = true
    #expect(said().contains(last))
  }

  private static var known: [String: [ShownScreen]] = [:]

  /// The fullest of each kind, as both a tour to every kind and a walk by lot met it.
  private static func fullest(_ language: String) async throws -> [ShownScreen] {
    if known.isEmpty {
      let phones = [try await Phone("en", chosen: false), try await Phone("de", chosen: false)]
      var met: [String: [ShownScreen]] = [:]
      try await Tour(phones) { for phone in phones { met[phone.language, default: []].append(try phone.shown) } }.goes()
      for phone in phones {
        for _ in 0..<2 {
          try await pit(phone, &met[phone.language]!)
          try await phone.toTheFields()
          try await phone.act(try #require(try phone.shown.rows.first { $0.does.act.contains("{\"field\"") }).does.act)
          try await walk(phone, &met[phone.language]!, 90)
        }
      }
      known = met.mapValues { all in Dictionary(grouping: all, by: \.kind).values.map { $0.max { "\($0)".count < "\($1)".count }! } }
    }
    let those = try #require(known[language])
    #expect(Set(those.map(\.kind)) == everyKind)
    return those
  }

  /// A pit of the field one is in, by its first answers.
  private static func pit(_ phone: Phone, _ met: inout [ShownScreen]) async throws {
    try await phone.toTheFields()
    try await phone.act(try #require(try phone.shown.rows.first { $0.does.act.contains("{\"field\"") }).does.act)
    try await phone.to("start_pit")
    for turn in 0..<24 {
      let here = try phone.shown
      met.append(here)
      guard let answers = here.questions.last?.answers.filter({ $0.enabled && !$0.does.act.isEmpty }), !answers.isEmpty else { break }
      try await phone.act(
        turn > 12 && here.kind == .knifeWalk
          ? here.tools.first { $0.does != here.undo?.does && !$0.does.act.isEmpty }!.does.act : answers[turn % answers.count].does.act)
    }
  }

  /// By lot, from a fixed seed, through whatever there is to be tapped.
  private static func walk(_ phone: Phone, _ met: inout [ShownScreen], _ taps: Int) async throws {
    var lot = Lot(5)
    for _ in 0..<taps {
      let here = try phone.shown
      met.append(here)
      let acts = here.tappable.map(\.does).filter {
        !$0.act.isEmpty && $0 != here.undo?.does && $0 != here.back?.does && !$0.act.contains("language") && !$0.act.contains("delet")
      }
      if acts.isEmpty || lot.next() % 9 == 0 { try await phone.back() } else { try await phone.act(acts[Int(lot.next() % UInt64(acts.count))].act) }
    }
  }
}

/// Numbers by lot that are the same every time (Knuth's 64-bit linear congruence, MMIX).
private struct Lot {
  private var state: UInt64
  init(_ seed: UInt64) { state = seed }
  mutating func next() -> UInt64 {
    state = state &* 6_364_136_223_846_793_005 &+ 1_442_695_040_888_963_407
    return state >> 33
  }
}

/// What must hold of a tree.
@MainActor
private struct Rules {
  private let shown: ShownScreen
  private let glass: Glass
  private let scale: Double
  private var placed: [(node: Node, place: Place, seen: Place, above: [String])] = []

  init(_ shown: ShownScreen, _ tree: Node, _ glass: Glass, _ scale: Double) {
    (self.shown, self.glass, self.scale) = (shown, glass, scale)
    add(tree, 0, 0, Place(0, 0, glass.width, glass.height), [])
  }

  private mutating func add(_ node: Node, _ x: Double, _ y: Double, _ window: Place, _ above: [String]) {
    let place = Place(x + node.place.x, y + node.place.y, node.place.width, node.place.height)
    let (left, top) = (max(place.x, window.x), max(place.y, window.y))
    let seen = Place(left, top, max(0, min(place.right, window.right) - left), max(0, min(place.bottom, window.bottom) - top))
    placed.append((node, place, seen, above))
    let inside = if case .scroll = node.content { seen } else { window }
    for child in node.children { add(child, place.x, place.y, inside, above + [node.id]) }
  }

  private func wholly(_ one: (node: Node, place: Place, seen: Place, above: [String])) -> Bool {
    one.seen.height + 1 >= one.place.height && one.seen.width + 1 >= one.place.width
  }

  var faults: [String] { names() + identifiers() + sizes() + inSight() + overlaps() + order() + words() }

  /// Every part has an identifier that no other has.
  private func identifiers() -> [String] {
    Dictionary(grouping: placed.map(\.node.id)) { $0 }.filter { $0.key.isEmpty || $0.value.count > 1 }.map {
      "\($0.value.count) parts are called \"\($0.key)\""
    }
  }

  private func names() -> [String] {
    placed.filter { $0.node.deed != nil && ($0.node.spoken ?? "").trimmingCharacters(in: .whitespaces).isEmpty }.map { "nothing names a \($0.node.rank)" }
  }

  private func sizes() -> [String] {
    placed.filter { $0.node.deed != nil && ![.touch, .leave].contains($0.node.rank) }.compactMap { one in
      let (place, name) = (one.place, one.node.spoken ?? "")
      if place.width < 44 || place.height < 48 { return "\"\(name)\" is \(place.width) by \(place.height)" }
      return place.x < -0.5 || place.right > glass.width + 0.5 ? "\"\(name)\" leaves the screen" : nil
    }
  }

  /// With letters up to 1.3 all of rank is in sight. Else what is of rank is there, be it behind some scrolling.
  private func inSight() -> [String] {
    let sees = scale <= 1.3 && shown.kind != .show
    func missing(_ rank: Rank, _ wanted: [String]) -> [String] {
      let found = placed.filter { $0.node.rank == rank && (!sees || wholly($0)) }.compactMap(\.node.spoken)
      return wanted.filter { !found.contains($0) }.map { "no \(rank) \"\($0)\" in sight" }
    }
    let farmer = shown.kind == .show
    return missing(.answer, [shown.answer?.text].compactMap { $0 }) + missing(.next, [shown.next?.named].compactMap { $0 })
      + (farmer
        ? []
        : missing(.question, shown.questions.map(\.text).filter { !$0.isEmpty })
          + missing(.tile, shown.questions.flatMap(\.answers).map(\.named)) + missing(.tool, shown.tools.map(\.named)))
      + (farmer || shown.caution.isEmpty || shown.caution == shown.told ? [] : placed.contains { $0.node.rank == .caution } ? [] : ["no caution"])
  }

  private func overlaps() -> [String] {
    let taps = placed.filter { $0.node.deed != nil && ![.touch, .leave].contains($0.node.rank) && $0.seen.width > 1 && $0.seen.height > 1 }
    return taps.indices.flatMap { index in
      taps[(index + 1)...].filter { other in
        let (one, two) = (taps[index].seen, other.seen)
        return min(one.right, two.right) - max(one.x, two.x) > 1 && min(one.bottom, two.bottom) - max(one.y, two.y) > 1
      }.map { "\"\(taps[index].node.spoken ?? "")\" lies over \"\($0.node.spoken ?? "")\"" }
    }
  }

  /// A screen reader meets the title, the answer, the questions' answers, the next step and the tools in this order.
  private func order() -> [String] {
    let ranks: [Rank] = [.title, .answer, .tile, .next, .tool]
    let met = placed.compactMap { one in ranks.firstIndex(of: one.node.rank) }
    return met == met.sorted() ? [] : ["read in the order \(met)"]
  }

  /// Words stay inside what they stand on, and no word is parted while its letters are not at their least.
  private func words() -> [String] {
    placed.compactMap { one in
      guard case .words(let words) = one.node.content, !words.cut else { return nil }
      let widest = words.lines.map { Helvetica().width($0, words.style) }.max() ?? 0
      if widest > one.place.width + 1 { return "\"\(words.text)\" is wider than its place" }
      let parted = words.lines.joined(separator: " ").replacing("  ", with: " ") != words.text.replacing("\n", with: " ").replacing("  ", with: " ")
      return parted ? "a word is parted: \(words.lines)" : nil
    }
  }
}

extension ShownScreen {
  /// For the other hand, or this one.
  fileprivate func held(left: Bool) -> ShownScreen {
    ShownScreen(
      kind: kind, title: title, back: back, menu: menu, answer: answer, picture: picture, blocks: blocks, caution: caution, next: next, tools: tools,
      more: more,
      moreLabel: moreLabel, told: told, saved: saved, awake: awake, wantsPosition: wantsPosition, leftHanded: left, light: light, language: language, keys: keys
    )
  }
}
