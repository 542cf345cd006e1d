import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// The app as a whole: shell, core and store, driven by what stands on the screen; and what the phone itself does or refuses.
@MainActor @Suite struct FlowTests {
  private func inAField() async throws -> Phone {
    let phone = try await Phone()
    try await phone.takesIn("long_sedge")
    return phone
  }

  /// The kind of place is answered; then the hole is to be dug.
  private func begin(_ phone: Phone) async throws {
    try await phone.to("start_pit")
    try await phone.act(try phone.shown.questions[0].answers[0].does.act)
  }

  private func asking(_ phone: Phone, _ wanted: (ShownDoes) -> Bool) throws -> ShownDoes {
    try #require(try phone.shown.tappable.first { wanted($0.does) }).does
  }

  @Test func theFirstStartAsksForTheLanguageAndNothingElse() async throws {
    let phone = try await Phone("de", chosen: false)
    #expect(try phone.shown.kind == .welcome)
    try await phone.tap("Deutsch")
    #expect(try phone.shown.language == "de" && phone.allowed == 0)
    try await phone.back()
    #expect(try phone.shown.kind == .fields, "the topmost screen stays: no app here closes itself")
  }

  @Test func aNotesFileIsShownBeforeAnythingOfItIsTakenIn() async throws {
    let phone = try await Phone()
    try await phone.opens(demo("long_sedge"))
    #expect(try phone.shown.everything.contains("Long Sedge"))
    try await phone.back()
    #expect(try phone.shown.kind == .fields && !phone.shown.everything.contains("Long Sedge"))
  }

  @Test func aFileThatIsNoneIsToldAndOneThatCannotBeReadIsSaid() async throws {
    let phone = try await Phone()
    let none = try made("none").appending(path: "none.notes.json")
    try Data("nothing of the kind".utf8).write(to: none)
    try await phone.opens(none)
    #expect(try phone.shown.kind == .fields && phone.shown.told != "")
    phone.shell.takeIn("gone") { throw CocoaError(.fileNoSuchFile) }
    try await phone.read()
    while phone.shell.failure == nil { try await Task.sleep(for: .milliseconds(1)) }
    #expect(phone.shell.failure == .cannotReadFile)
    #expect(phone.tree.all.contains { $0.rank == .said && $0.spoken == "cannot_read_file" })
    #expect(try FileManager.default.contentsOfDirectory(atPath: phone.folders.handed.path) == [])
  }

  /// Another program that never sends a byte, and one that never ends: taps are answered meanwhile, and after a while it is said.
  @Test(arguments: [false, true]) func aStreamWithoutEndHoldsUpNothing(gives: Bool) async throws {
    let phone = try await Phone()
    var limits = Limits()
    (limits.stalled, limits.longest, limits.largestBytes) = (0.2, 0.5, 1 << 20)
    let endless = Endless(gives: gives)
    phone.shell.takeIn("endless", limits) { endless }
    if !gives {
      try await phone.to("partners")
      #expect(try phone.shown.kind == .partners, "taps are answered")
    }
    let until = Date() + 20
    while phone.shell.failure == nil && Date() < until { try await Task.sleep(for: .milliseconds(2)) }
    #expect(phone.shell.failure == .cannotReadFile)
    endless.close()
  }

  @Test func aPathInANameLeadsNowhere() async throws {
    let phone = try await Phone()
    try await phone.opens(demo("long_sedge"), named: "../../support/Pitface/notes/place.json")
    #expect(try phone.shown.everything.contains("Long Sedge"), "read under its last name")
    #expect(try FileManager.default.contentsOfDirectory(atPath: phone.folders.handed.path) == [])
  }

  @Test func thePositionIsAskedForByItsButtonAndShowsOnceItIsAllowed() async throws {
    let phone = try await inAField()
    let receiver = FakeReceiver()
    let gate = PositionGate(phone.shell, receiver)
    gate.inSight = true
    try await begin(phone)
    gate.wanted = try phone.shown.wantsPosition
    try await phone.settle()
    #expect(gate.wanted && receiver.asked == 0 && !receiver.on, "not asked without being told why")
    phone.shell.does(try asking(phone) { $0 == .allowPosition })
    #expect(phone.allowed == 1)
    gate.allow()
    #expect(receiver.asked == 1)
    receiver.permission = .allowed
    gate.changed()
    #expect(receiver.on)
    let without = try phone.shown.everything
    for second in 0..<3 {
      phone.shell.fix(longitudeDeg: 3, latitudeDeg: 54, accuracyM: 4, satelliteTimeMs: 1_760_000_000_000 + Int64(second) * 1000)
    }
    try await phone.settle()
    #expect(try phone.shown.everything != without, "a fix shows")
    gate.inSight = false
    #expect(!receiver.on, "off while nobody looks")
  }

  @Test func refusingEverythingStillGivesACall() async throws {
    let phone = try await inAField()
    let receiver = FakeReceiver()
    let gate = PositionGate(phone.shell, receiver)
    gate.inSight = true
    try await phone.to("start_pit")
    try await phone.tap("Wheeling")
    gate.wanted = true
    gate.allow()
    receiver.permission = .refused
    gate.changed()
    try await phone.settle()
    #expect(phone.shell.failure == nil && !receiver.on, "it is not said twice")
    gate.allow()
    try await phone.settle()
    #expect(phone.shell.failure == .positionRefused && receiver.asked == 1, "the phone asks nobody a second time")
    try await phone.tap("settings")
    #expect(phone.settings == 1, "a way leads to the settings")
    try await phone.to("on_plan")
    try await phone.tap("North")
    try await phone.act(try #require(try phone.shown.next).does.act)
    for words in [
      "Moist", "Slips in", "Crumbs", "Same as above", "Same as above", "Same as above", "Hard push", "Flat plates", "Same as above", "Firm push",
      "Rounded lumps",
    ] {
      try await phone.tap(words)
    }
    for _ in 0..<2 where try phone.shown.kind == .knifeWalk { try await phone.tap("Bottom of hole") }
    while try phone.shown.kind == .nextLook || phone.shown.kind == .roll { try await phone.tap(try phone.shown.tools.last!.label) }
    #expect(try phone.shown.kind == .call && !phone.shown.answer!.text.isEmpty)
    try await phone.to("photos")
    phone.shell.does(try asking(phone) { if case .takePhoto = $0 { true } else { false } })
    phone.shell.photoReturned(nil)
    try await phone.settle()
    let noted = try await phone.notes(try #require(try phone.shown.field)).list("pits").last
    #expect(noted?.list("photos") == [], "no photo is noted")
  }

  @Test func aPhotoIsTakenFeltAndSeen() async throws {
    let phone = try await inAField()
    try await begin(phone)
    try await phone.tap("Moist")
    #expect(try phone.shown.awake, "a face keeps the screen awake")
    let before = phone.buzzes
    phone.shell.does(try asking(phone) { if case .takePhoto = $0 { true } else { false } })
    #expect(phone.photos.count == 1)
    let file = phone.folders.taken.appending(path: "a.jpg")
    try Data([0xFF, 0xD8, 0xFF, 0xDA, 0, 2] + (0..<64).map { UInt8($0) } + [0xFF, 0xD9]).write(to: file)
    phone.shell.photoReturned(file.path)
    try await phone.settle()
    #expect(try phone.shown.saved && phone.buzzes == before + 1)
    #expect(!FileManager.default.fileExists(atPath: file.path), "the picture is the core's now")
    let taken = phone.photos[0]
    try await phone.act("{\"go\":{\"photos\":{\"field\":\"\(taken.field)\",\"pit\":\"\(taken.pit)\"}}}")
    let small = phone.tree.all.contains { if case .photo = $0.content { true } else { false } }
    let large = try phone.shown.pictures.contains { $0.photo != nil }
    #expect(small || large)
  }

  @Test func aFieldIsHandedToAnotherProgram() async throws {
    let phone = try await inAField()
    try await phone.to("hand_over")
    phone.shell.does(try asking(phone) { if case .shareField = $0 { true } else { false } })
    try await phone.settle()
    #expect(try String(contentsOfFile: try #require(phone.shared.first), encoding: .utf8).contains("Long Sedge"))
  }

  @Test func aSecondTapBeforeTheAnswerIsNotTaken() async throws {
    let phone = try await inAField()
    try await begin(phone)
    let moist = try #require(phone.tree.named("Moist"))
    guard case .core(let what) = moist.deed else { throw Missing("no act") }
    phone.shell.does(what)
    phone.shell.does(what)
    try await phone.settle()
    #expect(try phone.shown.kind == .knifeWalk && phone.shell.failure == nil)
  }

  @Test func whatIsTypedIsEnteredByTheNextTap() async throws {
    let phone = try await Phone()
    try await phone.act("{\"go\":{\"setting\":{\"setting\":\"name\"}}}")
    let line = try phone.shown.blocks.first { if case .typing = $0 { true } else { false } }
    guard case .typing(_, _, let act, _) = try #require(line) else { return }
    phone.shell.typed(act, "Nora")
    try await phone.back()
    #expect(try phone.shown.everything.contains("Nora"))
  }

  /// What went wrong outside the core is said, each in its own words.
  @Test func aDiskThatIsFullIsSaidAndOneThatIsBusyToo() async throws {
    let phone = try await Phone()
    let faults: [(PitfaceError, Phrase)] = [
      (.DiskFull, .diskFull), (.Conflict, .openElsewhere), (.NewerVersion, .newerVersion), (.NotFound(what: ""), .notThere),
      (.Storage(reason: ""), .storageFault),
      (.Invalid(what: "", todo: ""), .fault),
    ]
    for (fault, phrase) in faults {
      let shell = Shell(phone.folders) { _ in throw fault }
      while !shell.idle { try await Task.sleep(for: .milliseconds(1)) }
      #expect(shell.failure == phrase && shell.shown == nil)
    }
    let second = Phone.opened(phone.folders, "en")
    while !second.idle { try await Task.sleep(for: .milliseconds(1)) }
    #expect(second.failure == .openElsewhere, "the core itself holds the notes once")
  }

  /// A really full disk, where this machine lets one be mounted: nothing is saved, and it is told on the screen.
  @Test(.enabled(if: ProcessInfo.processInfo.environment["PITFACE_SMALL_DISK"] != nil, "no small disk is mounted"))
  func aTapOnAFullDiskIsToldAndNothingIsLost() async throws {
    let disk = URL(fileURLWithPath: ProcessInfo.processInfo.environment["PITFACE_SMALL_DISK"]!)
    let folders = try Folders(support: disk, caches: try made("caches"))
    let shell = Phone.opened(folders, "en")
    func settle() async throws { while !shell.idle || shell.reading > 0 { try await Task.sleep(for: .milliseconds(1)) } }
    try await settle()
    shell.does(try #require(shell.shown?.tappable.first { $0.label == "English" }).does)
    try await settle()
    let fill = disk.appending(path: "fill")
    try Data().write(to: fill)
    let handle = try FileHandle(forWritingTo: fill)
    while (try? handle.write(contentsOf: Data(count: 4096))) != nil {}
    shell.importFileForTest(demo("long_sedge").path)
    try await settle()
    shell.does(.act(act: "\"take_in\""))
    try await settle()
    #expect(shell.failure != nil || shell.shown?.told.isEmpty == false, "it is said")
    #expect(shell.shown?.saved != true)
    try FileManager.default.removeItem(at: fill)
    shell.does(.act(act: "\"take_in\""))
    try await settle()
    #expect(shell.failure == nil)
  }

  @Test func whatIsNoLongerWantedIsRemoved() async throws {
    let phone = try await Phone()
    let (old, new, left) = (
      phone.folders.handed.appending(path: "old"), phone.folders.handed.appending(path: "new"), phone.folders.taken.appending(path: "a.jpg")
    )
    for file in [old, new, left] { try Data("x".utf8).write(to: file) }
    try FileManager.default.setAttributes([.modificationDate: Date() - 3700], ofItemAtPath: old.path)
    phone.folders.tidy(camera: true)
    let there = [old, new, left].map { FileManager.default.fileExists(atPath: $0.path) }
    #expect(there == [false, true, false])
  }
}

extension Shell {
  fileprivate func importFileForTest(_ path: String) { takeIn((path as NSString).lastPathComponent) { try FromDisk(URL(fileURLWithPath: path)) } }
}

/// A receiver that is told what the phone says.
@MainActor
private final class FakeReceiver: Receiver {
  var permission = Permission.unasked
  var asked = 0
  var on = false
  func ask() { asked += 1 }
  func start() { on = true }
  func stop() { on = false }
}

/// A program that gives nothing, or never stops giving.
private final class Endless: Source, @unchecked Sendable {
  private let gives: Bool
  private let waits = DispatchSemaphore(value: 0)
  init(gives: Bool) { self.gives = gives }
  func next() throws -> Data? {
    if gives { return Data(count: 1 << 16) }
    waits.wait()
    return nil
  }
  func close() { waits.signal() }
}
