import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// What a person does besides pits and passes: photos, remarks, deleting, edges out of files, the example, what is handed to people.
@MainActor @Suite struct DoingTests {
  private func inAField(_ name: String = "long_sedge") async throws -> (Phone, String) {
    let phone = try await Phone()
    try await phone.takesIn(name)
    return (phone, try #require(try phone.shown.field))
  }

  /// What leads to a place with this in its act.
  private func leads(_ phone: Phone, _ part: String) async throws {
    let here = try phone.shown
    let way = try #require(here.tappable.last { $0.does.act.contains(part) }, "\(part) on \(here.title): \(here.tappable)")
    try await phone.act(way.does.act)
  }

  /// The smallest head of a JPEG that says how large it is (ITU-T T.81, B.2.2): 1024 high, 768 wide.
  private static let sized = Data([0xFF, 0xD8, 0xFF, 0xC0, 0, 11, 8, 4, 0, 3, 0, 1, 1, 0x11, 0]) + jpeg.dropFirst(2)

  @Test func aPhotoGetsAScaleByTwoTouchesIsSeenSmallAndIsDeletedAndComesBack() async throws {
    let (phone, field) = try await inAField()
    try await phone.to("start_pit")
    for words in ["Headland", "Moist"] { try await phone.tap(words) }
    let pit = try #require(try phone.shown.tappable.map(\.does.act).joined().firstMatch(of: /"pit":"([^"]+)"/)).1
    let photos = "{\"go\":{\"photos\":{\"field\":\"\(field)\",\"pit\":\"\(pit)\"}}}"
    try await phone.takesAPhoto(Self.sized)
    func noted() async throws -> [Json] { try #require(try await phone.notes(field).list("pits").last).list("photos") }
    #expect(try phone.shown.saved)
    #expect(try await noted().count == 1)

    try await phone.act(photos)
    let small = try #require(phone.tree.all.first { $0.rank == .photo && $0.deed != nil })
    #expect(small.spoken?.isEmpty == false, "a screen reader has a name for it")
    try await phone.does(small)
    let hash = try await noted()[0].text("sha256")
    #expect(try phone.shown.picture?.photo == hash)
    try await leads(phone, "photo_scale")
    for (touch, y) in [40.0, 340].enumerated() {
      let act = try #require(try phone.shown.picture?.anywhere)
      #expect(try phone.shown.questions.count == touch, "the second depth can be chosen")
      phone.shell.touched(.act(act: act), 120, y)
      try await phone.settle()
    }
    let marks = try await noted()[0].list("marks")
    // From the left and from above in ten-thousandths of a picture that is shown 360 by 480, then the depth.
    #expect(marks.map { $0.list.map(\.int) } == [[3333, 833, 0], [3333, 7083, 500]])

    try await leads(phone, "\"delete\"")
    #expect(try phone.shown.told == "The photo is deleted." && phone.shown.saved)
    #expect(try await noted() == [])
    try await phone.tap(try #require(try phone.shown.undo).label)
    #expect(try await noted()[0].list("marks") == marks, "back with its scale")
  }

  @Test func aRemarkOfManyLinesIsNotedAndStandsInThePit() async throws {
    let (phone, field) = try await inAField()
    try await phone.to("start_pit")
    for words in ["Headland", "Moist", "Slips in", "Crumbs"] { try await phone.tap(words) }
    try await phone.to("remark")
    let line = phone.tree.all.first { if case .typing(_, _, _, let long) = $0.content { long } else { false } }
    guard case .typing(let act, let label, _, _) = try #require(line).content else { return }
    #expect(line?.spoken == label && !label.isEmpty)
    phone.shell.typed(act, "A drain outlet\nbelow the hedge")
    try await phone.back()
    #expect(try #require(try await phone.notes(field).list("pits").last).text("remark") == "A drain outlet\nbelow the hedge")
  }

  @Test func aFieldIsDeletedOnceItWasAskedAndComesBack() async throws {
    let (phone, field) = try await inAField()
    phone.shell.menu = true
    try await phone.does(try #require(phone.tree.all.first { $0.spoken?.hasPrefix("Delete") == true }))
    #expect(try phone.shown.kind == .deleting && !phone.shown.saved && !phone.shell.menu, "it is asked first")
    try await phone.act(try #require(try phone.shown.next).does.act)
    #expect(try phone.shown.saved && !phone.shown.rows.contains { $0.title == "Long Sedge" })
    try await phone.act("{\"go\":\"went_away\"}")
    try await phone.act(try #require(try phone.shown.rows.first { $0.title.contains("Long Sedge") }).does.act)
    #expect(try await phone.notes(field)["field"]?.text("name") == "Long Sedge")
  }

  /// A square of GeoJSON (RFC 7946, 3.1.6).
  @Test func anEdgeOutOfAFileIsTakenWithATap() async throws {
    let phone = try await Phone()
    try await phone.act("{\"go\":\"start_field\"}")
    guard case .typing(_, _, let act, _)? = try phone.shown.blocks.first(where: { if case .typing = $0 { true } else { false } }) else {
      throw Missing("no name is asked for")
    }
    phone.shell.typed(act, "Curlew Piece")
    phone.shell.enter()
    try await phone.settle()
    try await phone.tap("Edge of the field")
    let field = try #require(try phone.shown.field)
    phone.shell.does(try #require(try phone.shown.tappable.first { $0.does == .openFile }).does)
    #expect(phone.chosen == 1)
    let file = try made("edges").appending(path: "holding.geojson")
    let ring = "[[[2,52],[2.003,52],[2.003,52.002],[2,52.002],[2,52]]]"
    try Data(
      "{\"type\":\"Feature\",\"properties\":{\"name\":\"South\"},\"geometry\":{\"type\":\"Polygon\",\"coordinates\":\(ring)}}".utf8
    ).write(to: file)
    try await phone.opens(file)
    let rows = try phone.shown.rows
    // 0.003° by 0.002° at 52° N is 205.9 m by 222.5 m on WGS 84.
    #expect(rows.map(\.title.plain) == ["South, 4.58 ha"])
    try await phone.act(rows[0].does.act)
    #expect(try phone.shown.saved)
    #expect(try await phone.notes(field)["field"]?.list("outline").count == 4)
  }

  @Test func theExampleIsLookedAtAndNothingOfItIsSaved() async throws {
    let phone = try await Phone()
    let before = try phone.shown.everything
    try await phone.does(try #require(phone.tree.all.first { $0.rank == .way && $0.spoken?.lowercased().contains("example") == true }))
    #expect(try phone.shown.kind == .field && phone.shown.title.lowercased().contains("example"))
    let pit = try #require(try phone.shown.tappable.first { $0.does.act.contains("\"pit\"") })
    try await phone.act(pit.does.act)
    #expect(try !phone.shown.saved && phone.buzzes == 1, "only the language was saved")
    try await phone.toTheFields()
    #expect(try phone.shown.everything == before)
    try await phone.to("partners")
    try await phone.tap("Hand over everything")
    #expect(phone.shared == [], "it is no field of one's own")
  }

  @Test func theSheetAndTheDriversCardAreHandedToPeople() async throws {
    let (phone, _) = try await inAField("lapwing_ground")
    try await phone.to("hand_over")
    let pages = try phone.shown.tappable.filter { if case .sharePage = $0.does { true } else { false } }
    try #require(pages.count == 2)
    for page in pages {
      phone.shell.does(page.does)
      try await phone.settle()
    }
    let files = try phone.shared.map { try String(contentsOfFile: $0, encoding: .utf8) }
    #expect(phone.shared.count == 2 && phone.shared.allSatisfy { $0.hasSuffix(".html") } && Set(files).count == 2)
    #expect(files.allSatisfy { $0.contains("Lapwing Ground") && $0.lowercased().hasPrefix("<!doctype html>") })
  }
}
