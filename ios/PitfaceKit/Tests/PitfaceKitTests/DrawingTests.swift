import Foundation
import PitfaceCore
import Testing

@testable import PitfaceKit

/// What a finger meets, and the commands of a drawing; that they paint the core's own picture is compared by pixels in `ios/tests/pixels`.
@MainActor @Suite struct DrawingTests {
  private func picture() -> ShownPicture {
    let touch = { (x: Double, y: Double, width: Double, name: String, drags: Bool) in
      ShownTouch(left: x, top: y, width: width, height: 10, label: name, does: .act(act: name), drags: drags)
    }
    return ShownPicture(
      drawing: Drawing(width: 360, height: 200, shapes: []), photo: nil, title: "", description: "", stand: .wide,
      touches: [touch(0, 0, 100, "under", false), touch(50, 0, 100, "over", true)], anywhere: "anywhere", zooms: true)
  }

  @Test func aFingerMeetsTheUppermostPlaceOrTheNearestWithinAThumb() {
    let shown = picture()
    #expect(shown.met(Point(x: 60, y: 5), thumb: 48)?.label == "over")
    #expect(shown.met(Point(x: 10, y: 5), thumb: 48)?.label == "under")
    #expect(shown.met(Point(x: 10, y: 25), thumb: 48)?.label == "under")
    #expect(shown.met(Point(x: 10, y: 80), thumb: 48) == nil)
    #expect(shown.does(held: nil, far: false) == .act(act: "anywhere"))
    #expect(shown.does(held: shown.touches[0], far: true) == nil, "what does not drag does nothing where the finger went far")
    #expect(shown.does(held: shown.touches[1], far: true) == .act(act: "over"))
  }

  @Test func aPictureIsMadeLargerAboutAPointAndNeverLeavesItsPlace() {
    let (size, about) = (Place(0, 0, 360, 200), Point(x: 90, y: 50))
    var zoom = Zoom()
    let before = zoom.onDrawing(about, 1)
    zoom.by(3, about: about, in: size)
    let after = zoom.onDrawing(about, 1)
    #expect(abs(before.x - after.x) < 1e-9 && abs(before.y - after.y) < 1e-9 && zoom.scale == 3)
    zoom.moved(Point(x: 1000, y: -1000), in: size)
    #expect(zoom.corner.x == 0 && zoom.corner.y == 200 * (1 - 3))
    zoom.by(100, about: about, in: size)
    #expect(zoom.scale == 6)
    zoom.by(0.001, about: about, in: size)
    #expect(zoom.scale == 1 && zoom.corner == Point(x: 0, y: 0))
  }

  @Test func lettersTooSmallToReadAreLeftOut() {
    let text = Shape.text(role: .ink, at: Point(x: 0, y: 0), anchor: .start, size: 9, strong: false, text: "5")
    let painting = Painting(Drawing(width: 10, height: 10, shapes: [text]), dark: false)
    #expect(painting.legible(factor: 1, scale: 1).count == 1 && painting.legible(factor: 0.9, scale: 1).isEmpty)
  }

  /// Writes every drawing of a walk as SVG out of its commands, and the acts that lead to them, for the core to write its own beside.
  @Test(.enabled(if: ProcessInfo.processInfo.environment["PITFACE_DRAWINGS"] != nil, "nobody compares the pictures"))
  func everyDrawingIsWritten() async throws {
    let out = URL(fileURLWithPath: ProcessInfo.processInfo.environment["PITFACE_DRAWINGS"]!)
    let phone = try await Phone()
    for name in ["lapwing_ground", "long_sedge", "heron_close"] {
      try await phone.takesIn(name)
      try await phone.toTheFields()
    }
    var (acts, index): ([String], Int) = ([], 0)
    var been: Set<String> = []
    func write() throws {
      for drawing in try drawings(phone.shown) {
        for dark in [false, true] {
          try svg(Painting(drawing, dark: dark)).write(
            to: out.appending(path: "swift-\(index)-\(dark ? "dark" : "light").svg"), atomically: true, encoding: .utf8)
        }
        index += 1
      }
    }
    func around(_ deep: Int) async throws {
      for does in try phone.shown.tappable.map(\.does) where does.act.hasPrefix("{\"go\":") && been.insert(does.act).inserted && acts.count < 60 {
        let here = acts.last
        try await phone.act(does.act)
        acts.append(does.act)
        try write()
        if deep > 1 { try await around(deep - 1) }
        if let here {
          try await phone.act(here)
          acts.append(here)
          try write()
        }
      }
    }
    for row in try phone.shown.rows where row.does.act.contains("{\"field\"") {
      try await phone.act(row.does.act)
      acts.append(row.does.act)
      try write()
      try await around(2)
    }
    try Data(acts.joined(separator: "\n").utf8).write(to: out.appending(path: "acts"))
    phone.shell.close()
    try await phone.settle()
    try FileManager.default.copyItem(at: phone.folders.notes, to: out.appending(path: "notes"))
    try FileManager.default.copyItem(at: phone.folders.key, to: out.appending(path: "key"))
    #expect(index > 60)
  }

  private func drawings(_ shown: ShownScreen) -> [Drawing] {
    shown.pictures.map(\.drawing) + [shown.answer?.sign].compactMap { $0 } + shown.buttons.compactMap(\.drawing) + shown.rows.compactMap(\.icon)
  }

  private func svg(_ painting: Painting) -> String {
    // To a tenth of a point, as the core writes it.
    func of(_ number: Double) -> String { "\((number * 10).rounded() / 10)" }
    func hex(_ colour: Colour) -> String { "rgb(\(colour.red),\(colour.green),\(colour.blue))" }
    func shape(_ path: Path, _ paint: String, closed: Bool) -> String {
      switch path {
      case .rectangle(let place): "<rect x=\"\(of(place.x))\" y=\"\(of(place.y))\" width=\"\(of(place.width))\" height=\"\(of(place.height))\" \(paint)/>"
      case .circle(let centre, let radius): "<circle cx=\"\(of(centre.x))\" cy=\"\(of(centre.y))\" r=\"\(of(radius))\" \(paint)/>"
      case .points(let points): "<poly\(closed ? "gon" : "line") points=\"\(points.map { "\(of($0.x)),\(of($0.y))" }.joined(separator: " "))\" \(paint)/>"
      }
    }
    let all = painting.commands.map { command in
      switch command {
      case .fill(let path, let colour): shape(path, "fill=\"\(hex(colour))\"", closed: true)
      case .stroke(let path, let width, let colour):
        shape(path, "fill=\"none\" stroke=\"\(hex(colour))\" stroke-width=\"\(width)\" stroke-linecap=\"round\" stroke-linejoin=\"round\"", closed: false)
      case .text(let text, let at, let anchor, let size, let strong, let colour):
        "<text x=\"\(of(at.x))\" y=\"\(of(at.y))\" font-family=\"system-ui, sans-serif\" font-size=\"\(size)\" font-weight=\"\(strong ? "bold" : "normal")\" text-anchor=\"\(anchor)\" fill=\"\(hex(colour))\">\(text.replacing("&", with: "&amp;").replacing("<", with: "&lt;"))</text>"
      }
    }
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 \(of(painting.width)) \(of(painting.height))\">\n\(all.joined(separator: "\n"))\n</svg>\n"
  }
}
