import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// Two walkers: bundles leave by the share sheet and come by being opened.
@MainActor @Suite struct SharingTests {
  @Test func twoPhonesEndAlikeAndWhatDiffersIsSettledOnce() async throws {
    let (anna, nora) = (try await Phone(), try await Phone("de"))
    try await anna.takesIn("long_sedge")
    let field = try #require(try anna.shown.field)
    let sent = try await anna.handsOver()
    try await nora.opens(sent)
    #expect(try nora.shown.kind == .partners, "a stranger waits until the signs are compared")
    try await nora.act(try #require(try nora.shown.rows.first { $0.does.act.contains("partner") }).does.act)
    try await nora.act(
      try #require(try nora.shown.tappable.last { $0.label.hasPrefix("Gleich") || $0.label.hasPrefix("Dasselbe") || $0.does.act.contains("accept") }).does.act)
    #expect(try nora.shown.saved)
    try await nora.act("{\"go\":{\"detail\":{\"field\":\"\(field)\",\"detail\":\"texture\"}}}")
    try await nora.act(try #require(try nora.shown.tappable.last { $0.does.act.contains("{\"answer\":2}") }).does.act)
    try await anna.sets(field, "texture", "Light")
    try await nora.toTheFields()
    try await nora.to("partners")
    try await nora.act(try #require(try nora.shown.tappable.first { if case .shareBundle = $0.does { true } else { false } }).does, sharing: true)
    try await anna.believes(URL(fileURLWithPath: try #require(nora.shared.last)))
    try await anna.act(try #require(try anna.shown.tappable.first { $0.does.act.contains("{\"go\":{\"versions\"") }).does.act)
    #expect(try anna.shown.kind == .versions)
    try await anna.tap("Light")
    try await nora.opens(try await anna.handsOver())
    #expect(try await anna.notes(field) == nora.notes(field), "both hold the same")
    #expect(try await nora.notes(field)["field"]?.text("texture") == "light")
  }

  /// The command line stands for every other session over the same core; the Kotlin one reads and writes the same files.
  @Test(.enabled(if: program != nil, "no pitface beside the library")) func theCommandLineTakesWhatAPhoneHandsOverAndHandsItBack() async throws {
    let phone = try await Phone()
    try await phone.takesIn("long_sedge")
    let field = try #require(try phone.shown.field)
    let folder = try made("exchange")
    let (store, back) = (folder.appending(path: "other.pitface").path, folder.appending(path: "back.pitb"))
    let sent = try await phone.handsOver().path
    let first = try Json(try run("--json", "take-in", store, sent))
    let signs = try #require(first.written().firstMatch(of: /[0-9a-f]{4}(?:[ -][0-9a-f]{4}){4}/)?.0, "\(first.written())")
    _ = try run("--json", "take-in", store, sent, "--accept", String(signs))
    let noted = try run("write", store, "--out", folder.path)
    let written = try #require(try FileManager.default.contentsOfDirectory(atPath: folder.path).first { $0.hasSuffix(".notes.json") }, "\(noted)")
    #expect(try await phone.notes(field) == Json(file: folder.appending(path: written)), "the other side holds the same")
    _ = try run("hand-over", store, "--out", back.path, "--holder", "Nora")
    try await phone.opens(back)
    #expect(try phone.shown.kind == .partners && !phone.shown.told.isEmpty)
    #expect(try await phone.notes(field) == Json(file: folder.appending(path: written)), "nothing came back changed")
  }

  @Test func aDamagedFileIsToldAndChangesNothing() async throws {
    let (phone, nora) = (try await Phone(), try await Phone())
    try await nora.takesIn("long_sedge")
    let file = try await nora.handsOver()
    var bytes = try Data(contentsOf: file)
    bytes[bytes.count / 2] ^= 1
    try bytes.write(to: file)
    try await phone.opens(file)
    #expect(try phone.shown.told == "Not taken in: the file was damaged on its way. Have it sent again.")
    #expect(try phone.shown.kind == .fields)
  }

  @Test func nothingToHandOverOpensNoSheet() async throws {
    let phone = try await Phone()
    try await phone.to("partners")
    try await phone.tap("Hand over everything")
    #expect(phone.shared == [])
    #expect(try phone.shown.told == "There is nothing to hand over that is not there yet.")
  }
}

/// The command line beside the library, where it was put.
private var program: URL? {
  let built = repository.appending(path: "ios/PitfaceKit/Generated/lib/pitface")
  return FileManager.default.isExecutableFile(atPath: built.path) ? built : nil
}

private func run(_ arguments: String...) throws -> String {
  let (process, out, err) = (Process(), Pipe(), Pipe())
  (process.executableURL, process.arguments, process.standardOutput, process.standardError) = (program, arguments, out, err)
  try process.run()
  let said = String(decoding: out.fileHandleForReading.readDataToEndOfFile(), as: UTF8.self)
  process.waitUntilExit()
  guard process.terminationStatus < 2 else {
    throw Missing("\(arguments): \(said) \(String(decoding: err.fileHandleForReading.readDataToEndOfFile(), as: UTF8.self))")
  }
  return said
}

extension Phone {
  func act(_ what: ShownDoes, sharing: Bool) async throws {
    shell.does(what)
    try await settle()
  }
}
