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
    try await nora.believes(sent)
    try await nora.sets(field, "texture", 2)
    try await anna.sets(field, "texture", 1)
    try await anna.believes(try await nora.handsOver())
    try await anna.act(try #require(try anna.shown.tappable.first { $0.does.act.contains("{\"go\":{\"versions\"") }).does.act)
    #expect(try anna.shown.kind == .versions)
    try await anna.tap("Light")
    try await nora.opens(try await anna.handsOver())
    #expect(try await anna.notes(field) == nora.notes(field), "both hold the same")
    #expect(try await nora.notes(field)["field"]?.text("texture") == "light")
  }

  /// The other phone is one over Kotlin's session, on a Java beside this test (`Exchange.kt`). Both change one value and add a pit, one of them with a photo.
  @Test(.enabled(if: exchange != nil, "no phone over Kotlin's session beside this")) func aPhoneOverKotlinsSessionAndThisOneEndAlike() async throws {
    let folder = try #require(exchange)
    let phone = try await Phone()
    try await phone.believes(try await arrived(folder.appending(path: "kotlin-1.pitb")))
    try await phone.toTheFields()
    try await phone.tap("Long Sedge")
    let field = try #require(try phone.shown.field)
    let pits = try await phone.notes(field).list("pits").count
    try await phone.to("start_pit")
    for words in ["Wheeling", "Moist", "Slips in", "Crumbs"] { try await phone.tap(words) }
    try await phone.sets(field, "texture", 2)
    let part = folder.appending(path: "swift.part")
    try FileManager.default.copyItem(at: try await phone.handsOver(), to: part)
    try FileManager.default.moveItem(at: part, to: folder.appending(path: "swift.pitb"))
    try await phone.opens(try await arrived(folder.appending(path: "kotlin-2.pitb")))
    let (ours, theirs) = (try await phone.notes(field), try Json(file: folder.appending(path: "kotlin.notes.json")))
    #expect(ours == theirs, "both hold the same")
    #expect(ours["field"]?.text("texture") == "light" && ours.list("pits").count == pits + 2, "settled there, and each has the other's pit")
    let photo = try #require(ours.list("pits").flatMap { $0.list("photos") }.first?.text("sha256"))
    let path = try #require(try await phone.asks { try $0.photoPath(photo: photo) })
    let (came, sent) = (try Data(contentsOf: URL(fileURLWithPath: path)), try Data(contentsOf: folder.appending(path: "photo.jpg")))
    #expect(came == sent)
    print("exchange: a phone over Kotlin's session and one over Swift's end alike, \(ours.list("pits").count) pits and a photo")
  }

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

/// Where the phone over Kotlin's session leaves its files.
private let exchange = ProcessInfo.processInfo.environment["PITFACE_EXCHANGE"].flatMap { $0.isEmpty ? nil : URL(fileURLWithPath: $0) }

private func arrived(_ file: URL) async throws -> URL {
  let until = Date() + 300
  while !FileManager.default.fileExists(atPath: file.path) {
    guard Date() < until else { throw Missing("\(file.lastPathComponent) never came") }
    try await Task.sleep(for: .milliseconds(20))
  }
  return file
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
