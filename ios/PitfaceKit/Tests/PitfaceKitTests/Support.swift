import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// The repository, from this very file.
let repository = URL(fileURLWithPath: #filePath).deletingLastPathComponent().appending(path: "../../../..").standardizedFileURL

func demo(_ name: String) -> URL { repository.appending(path: "bindings/cli/demo/\(name).notes.json") }

/// A folder of its own that nothing else has.
func made(_ name: String) throws -> URL {
  let folder = FileManager.default.temporaryDirectory.appending(path: "\(name)-\(UUID().uuidString)")
  try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
  return folder
}

/// Widths of Helvetica, in thousandths of its size: Adobe Core 14 AFM files, Helvetica.afm (public), characters 32 to 126. Letters with marks are as
/// wide as those without; what is not in the table is as wide as its widest digit. Medium and bold letters are taken as 6 in 100 wider.
struct Helvetica: Measure {
  private static let widths: [Double] = [
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584,
    584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278,
    278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500,
    500, 334, 260, 334, 584,
  ]

  func width(_ text: String, _ style: Style) -> Double {
    let sum = text.decomposedStringWithCanonicalMapping.unicodeScalars.reduce(0.0) { sum, letter in
      switch letter.value {
      case 32...126: sum + Self.widths[Int(letter.value) - 32]
      case 0x300...0x36F: sum
      case 0xA0, 0x202F: sum + 278
      default: sum + 611
      }
    }
    return sum / 1000 * style.size * (style.weight == .plain ? 1 : 1.06)
  }
}

/// A phone that notes what it is asked for.
@MainActor
final class Phone: Platform {
  let folders: Folders
  let root: URL
  private(set) var shell: Shell
  var photos: [WantedPhoto] = []
  var shared: [String] = []
  var chosen = 0
  var allowed = 0
  var settings = 0
  var buzzes = 0
  var taps = 0
  var glass = Glass(width: 393, height: 852)
  var around = Around { $0.rawValue }
  var letters = Letters(Helvetica(), scale: 1)
  let language: String

  init(_ language: String = "en", chosen: Bool = true) async throws {
    root = try made("phone")
    self.language = language
    folders = try Folders(support: root.appending(path: "support"), caches: root.appending(path: "caches"))
    shell = Self.opened(folders, language)
    shell.platform = self
    try await settle()
    if chosen { try await tap(language == "de" ? "Deutsch" : "English") }
  }

  static func opened(_ folders: Folders, _ language: String) -> Shell {
    Shell(folders) { try Session.open(folder: $0.notes.path, keyFolder: $0.key.path, languageTag: language, offsetMinutes: 60) }
  }

  func takePhoto(_ wanted: WantedPhoto) { photos.append(wanted) }
  func share(_ path: String) { shared.append(path) }
  func chooseFile() { chosen += 1 }
  func allowPosition() { allowed += 1 }
  func openSettings() { settings += 1 }
  func saved() { buzzes += 1 }

  /// Waits until the core has answered and the screen has it.
  func settle() async throws {
    let until = Date() + 120
    while !shell.idle {
      guard Date() < until else { throw Missing("the core does not answer") }
      try await Task.sleep(for: .milliseconds(1))
    }
  }

  var shown: ShownScreen {
    get throws { try shell.shown ?? { throw Missing("nothing is shown: \(String(describing: shell.failure))") }() }
  }

  var tree: Node {
    around.menu = shell.menu
    around.said = shell.failure
    return letters.whole(shell.shown, glass, around)
  }

  /// Taps the last thing with these words that can be tapped: of the same words, those nearest to the thumb.
  func tap(_ words: String) async throws {
    if tree.named(words) == nil, try shown.menu.contains(where: { $0.label == words }) { shell.menu = true }
    guard let node = tree.named(words) else {
      throw Missing("no \"\(words)\" on \(try shown.title); there is \(tree.all.filter { $0.deed != nil && $0.enabled }.compactMap(\.spoken))")
    }
    try await does(node)
    taps += 1
  }

  func does(_ node: Node) async throws {
    switch node.deed {
    case .core(let what): shell.does(what)
    case .entry(let what):
      shell.menu = false
      shell.does(what)
    case .menu: shell.menu.toggle()
    case .settings: openSettings()
    case .unfold: around.unfolded.toggle()
    case nil: throw Missing("it does nothing")
    }
    try await settle()
  }

  func act(_ act: String) async throws {
    shell.does(.act(act: act))
    try await settle()
  }

  /// What leads from here to a place, by its words; acts are opaque to the app, a test may look into them.
  func to(_ place: String) async throws {
    let here = try shown
    let there = here.tappable.first {
      $0.does != here.back?.does && ($0.does.act.contains("{\"go\":{\"\(place)\"") || $0.does.act.contains("{\"go\":\"\(place)\""))
    }
    try await tap(there?.label ?? { throw Missing("nothing leads to \(place) from \(here.kind)") }())
  }

  func back() async throws {
    shell.back()
    try await settle()
  }

  func toTheFields() async throws { while try shown.kind != .fields { try await back() } }

  /// Opens a notes file and takes it in.
  func takesIn(_ name: String) async throws {
    try await opens(demo(name))
    try await act("\"take_in\"")
  }

  /// A file tapped in another program.
  func opens(_ file: URL, named: String? = nil) async throws {
    shell.takeIn(named ?? file.lastPathComponent) { try FromDisk(file) }
    try await read()
  }

  /// Waits until what another program gives is copied and the core has it.
  func read() async throws {
    let until = Date() + 120
    while shell.reading > 0 && Date() < until { try await Task.sleep(for: .milliseconds(1)) }
    try await settle()
  }

  /// What the store holds of a field, as it would be handed over now.
  func notes(_ field: String) async throws -> Json {
    let folder = try made("held")
    defer { try? FileManager.default.removeItem(at: folder) }
    return try Json(file: URL(fileURLWithPath: try await asks { try $0.exportField(field: field, folder: folder.path) }))
  }

  func asks<T: Sendable>(_ question: @escaping @Sendable (any SessionProtocol) throws -> T) async throws -> T {
    var found: T?
    shell.direct(question) { found = $0 }
    try await settle()
    return try found ?? { throw Missing("the core gave nothing: \(String(describing: shell.failure))") }()
  }

  /// Hands everything over; the file that another program gets.
  func handsOver() async throws -> URL {
    try await toTheFields()
    try await to("partners")
    let before = shared.count
    let hands = try shown.tappable.first { if case .shareBundle = $0.does { true } else { false } }
    shell.does(try hands?.does ?? { throw Missing("nothing hands over on \(try shown.kind)") }())
    try await settle()
    guard shared.count == before + 1 else { throw Missing("nothing was shared: \(try shown.told)") }
    return URL(fileURLWithPath: shared.last!)
  }

  /// Believes whoever handed this over.
  func believes(_ file: URL) async throws {
    try await opens(file)
    for partner in try shown.rows where partner.does.act.contains("{\"go\":{\"partner\"") {
      try await act(partner.does.act)
      if let accepts = try shown.next, accepts.does.act.contains("accept") { try await act(accepts.does.act) }
      try await toTheFields()
      try await to("partners")
    }
  }

  /// A detail of a field, by the place of its answer.
  func sets(_ field: String, _ detail: String, _ answer: Int) async throws {
    try await act("{\"go\":{\"detail\":{\"field\":\"\(field)\",\"detail\":\"\(detail)\"}}}")
    let there = try shown.tappable.last { $0.does.act.contains("{\"answer\":\(answer)}") }
    try await act(there?.does.act ?? { throw Missing("no answer \(answer) on \(try shown.tappable)") }())
  }

  /// The process ends and another begins.
  func restarts() async throws {
    let until = Date() + 20
    repeat {
      shell.close()
      try await settle()
      shell = Self.opened(folders, language)
      shell.platform = self
      try await settle()
    } while shell.failure == .openElsewhere && Date() < until
  }
}

struct Missing: Error, CustomStringConvertible {
  let description: String
  init(_ description: String) { self.description = description }
}

/// A file of another program, from this disk.
final class FromDisk: Source, @unchecked Sendable {
  private let handle: FileHandle
  init(_ file: URL) throws { handle = try FileHandle(forReadingFrom: file) }
  func next() throws -> Data? {
    let piece = try handle.read(upToCount: 1 << 16)
    return piece?.isEmpty == false ? piece : nil
  }
  func close() { try? handle.close() }
}

extension String {
  /// Without regard to the kind of a space.
  var plain: String { String(map { $0.isWhitespace || $0 == "\u{a0}" || $0 == "\u{202f}" ? " " : $0 }) }
}

extension Node {
  /// In the order in which a screen reader meets them.
  var all: [Node] { [self] + children.flatMap(\.all) }

  /// By its name, or by the first of the words on it.
  func named(_ words: String) -> Node? {
    let words = words.plain
    return all.last { $0.deed != nil && $0.enabled && $0.rank != .touch && ($0.spoken?.plain == words || $0.label?.plain == words) }
  }

  var label: String? {
    all.dropFirst().lazy.compactMap { node -> String? in if case .words(let words) = node.content { words.text } else { nil } }.first
  }
}

let everyKind: Set<ScreenKind> = [
  .welcome, .fields, .field, .startPit, .knifeWalk, .nextLook, .layers, .roll, .call, .machine, .pass, .afterDig, .show, .photos, .handOver, .partners,
  .versions,
  .own, .onPlan, .deleting,
]

extension ShownDoes {
  var act: String { if case .act(let act) = self { act } else { "" } }
}

extension ShownScreen {
  var questions: [(text: String, answers: [ShownButton])] {
    blocks.compactMap { if case .question(let text, _, let answers) = $0 { (text, answers) } else { nil } }
  }
  var rows: [ShownRow] { blocks.flatMap { if case .ways(_, let rows) = $0 { rows } else { [ShownRow]() } } }
  var buttons: [ShownButton] { menu + questions.flatMap(\.answers) + [back, next].compactMap { $0 } + tools }
  var tappable: [(label: String, does: ShownDoes)] { buttons.filter(\.enabled).map { ($0.label, $0.does) } + rows.map { ($0.title, $0.does) } }
  var undo: ShownButton? { tools.first { $0.does.act == "\"undo\"" } }
  var pictures: [ShownPicture] { [picture].compactMap { $0 } + blocks.compactMap { if case .picture(let picture) = $0 { picture } else { nil } } }

  /// The field that something on it is of.
  var field: String? {
    tappable.lazy.compactMap { _, does -> String? in
      if case .shareField(let field) = does { return field }
      return does.act.firstMatch(of: /"field":"([^"]+)"/).map { String($0.1) }
    }.first
  }

  /// All that stands on it, to be compared.
  var everything: String {
    "\(kind)\n\(title)\n\(answer as Any)\n\(picture as Any)\n\(blocks)\n\(caution)\n\(next?.label ?? "")\n\(tools.map(\.label))\n\(more)\n\(back?.label ?? "")"
  }
}
