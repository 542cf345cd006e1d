import Foundation
import PitfaceCore
import Testing

/// The published cases of `tests/vectors` on this side of the border: what Rust and Kotlin are held to, word by word and code by code.
@Suite struct VectorsTests {
  private let folder = repository.appending(path: "tests/vectors")

  private func faults(_ told: Json) -> [[String]] { told.list.map { fault in ["at", "wrong", "todo"].map { fault.text($0) ?? "?" } } }

  @Test func everyFaultOfEveryBadFileIsTheSameWordByWord() throws {
    let table = try Json(file: folder.appending(path: "bad_inputs.json"))
    let good = table["good"]!
    #expect(try checkNotes(text: good.written()) == "[]", "the file that the cases break is good")
    let cases = table.list("cases")
    let differ = try cases.filter { faults(try Json(checkNotes(text: broken($0, good)))) != faults($0["faults"]!) }
    print("vectors: \(cases.count - differ.count) of \(cases.count) bad files with the same faults through Swift")
    #expect(differ.compactMap { $0.text("name") } == [] && cases.count >= 45)
  }

  /// The text of a case: its own, or the good file with some values set and some keys removed.
  private func broken(_ one: Json, _ good: Json) -> String {
    if let text = one.text("text") { return text }
    func steps(_ pointer: String) -> [Substring] { pointer.split(separator: "/", omittingEmptySubsequences: false).dropFirst().map { $0 } }
    let set = (one["set"]?.keys ?? []).reduce(good) { $0.with(steps($1.key), $1.value) }
    return one.list("remove").reduce(set) { $0.with(steps($1.text!), nil) }.written()
  }

  /// The golden bundles of every released version, which never change, hold on this side what they hold in Rust.
  @Test func everyGoldenBundleHoldsTheSame() throws {
    let version = folder.appending(path: "bundles/version_1")
    let files = try FileManager.default.contentsOfDirectory(atPath: version.path).filter { $0.hasSuffix(".pitb") }.sorted()
    let differ = try files.filter { file in
      let expected = try Json(file: version.appending(path: file.replacingOccurrences(of: ".pitb", with: ".json"))).list("parts").map(plain)
      return try Json(lookBundle(bytes: Data(contentsOf: version.appending(path: file)))).list("parts") != expected
    }
    print("vectors: \(files.count - differ.count) of \(files.count) golden bundles the same through Swift")
    #expect(differ == [] && files.count >= 9)
  }

  /// Without bits of numbers, which are for readers that take values apart, and with repeated values written out.
  private func plain(_ part: Json) -> Json {
    .object(
      part.keys.filter { $0.key != "doubles" }.map { key, value in
        guard key == "edits" else { return (key, value) }
        let edits = value.list.map { edit in
          guard let head = edit["value"]?.text("head"), let times = edit["value"]?["times"]?.int else { return edit }
          return edit.with(["value"], .string(head + String(repeating: edit["value"]!.text("repeated")!, count: times)))
        }
        return (key, .array(edits))
      })
  }

  @Test func aGoldenBundleWithABitTurnedOverIsRefused() throws {
    let bytes = try Data(contentsOf: folder.appending(path: "bundles/version_1/one_device.pitb"))
    for at in stride(from: 0, to: bytes.count, by: 7) {
      var broken = bytes
      broken[at] ^= 1
      #expect(throws: PitfaceError.self, "byte \(at)") { try lookBundle(bytes: broken) }
    }
  }

  @Test func everyDecisionIsTheSame() throws {
    let cases = try Json(file: folder.appending(path: "decisions.json")).list
    let differ = try cases.filter { one in
      let read = try Json(readField(text: String(contentsOf: folder.appending(path: one.text("file")!), encoding: .utf8)))
      let call = read["zones"]?[one.text("zone")!] ?? read["whole"]!
      return !said(one, call) || !layerFound(one, read)
    }
    print("vectors: \(cases.count - differ.count) of \(cases.count) decisions the same through Swift")
    #expect(differ.compactMap { $0.text("id") } == [] && !cases.isEmpty)
  }

  /// The call of the source, tips within its range, and the caution and follow-up it asks for.
  private func said(_ one: Json, _ call: Json) -> Bool {
    let (within, tip) = (one.list("tip_mm").compactMap(\.int), call.list("tip_mm").compactMap(\.int))
    let tips = within.isEmpty ? tip.isEmpty || call.text("call") == "wait" : tip.count == 2 && within[0] <= tip[0] && tip[1] <= within[1]
    func holds(_ key: String, _ codes: [String]) -> Bool { one.text(key).map(codes.contains) ?? true }
    return call.text("call") == one.text("call") && tips && holds("reason", call.list("reasons").compactMap { $0.text("what") })
      && holds("caution", call.list("cautions").compactMap(\.text)) && holds("follow_up", call.list("follow_up").compactMap(\.text))
  }

  /// The concern is the last pit of each file.
  private func layerFound(_ one: Json, _ read: Json) -> Bool {
    guard let layer = one["layer"], layer != .null else { return true }
    return read.list("pits").last!.list("layers").contains { found in layer.keys.allSatisfy { found[$0.key] == $0.value } }
  }
}
