import PitfaceCore

let edge = 12.0
let gap = 8.0

extension Letters {
  /// What was told of the last tap, what to heed, the next step, the tools; always in sight.
  func foot(_ shown: ShownScreen, _ width: Double, _ height: Double, _ standing: Standing) -> Node {
    var foot = Column(width)
    let read = read(shown, width)
    // Very large letters of what is only read do not push away what is tapped.
    if standing.read && !read.nodes.isEmpty { foot.add(scroller("read", read, min(read.high, height * 0.2))) }
    if let next = shown.next { foot.add(self.next(next, width, standing.low)) }
    if !shown.tools.isEmpty { foot.add(tools(shown.tools, shown.leftHanded, width, standing.low)) }
    return foot.node()
  }

  /// What was told of the last tap, and what to heed.
  func read(_ shown: ShownScreen, _ width: Double) -> Column {
    var read = Column(width)
    if !shown.told.isEmpty { read.add(told(shown.told, width)) }
    if !shown.caution.isEmpty && shown.caution != shown.told { read.add(caution(shown.caution, width)) }
    return read
  }

  private func told(_ text: String, _ width: Double) -> Node {
    let words = Node(.told, set(text, .bodySmall, width - edge * 2), edge, 4, width - edge * 2, [.live])
    return Node(.column, Place(0, 0, width, words.place.bottom + 4), children: [words]).looks(.quiet)
  }

  /// A thick stroke before it tells it from all other lines.
  private func caution(_ text: String, _ width: Double) -> Node {
    let words = set(text, .bodyMedium, width - edge * 2 - 12)
    var node = Node(
      .caution, Place(edge, 4, width - edge * 2, words.height), children: [Node(.words, Place(12, 0, width - edge * 2 - 12, words.height), .words(words))])
    (node.spoken, node.stroked) = (text, true)
    return Node(.column, Place(0, 0, width, words.height + 8), children: [node])
  }

  /// The one thing worth doing now: filled and wide.
  func next(_ next: ShownButton, _ width: Double, _ low: Bool = false) -> Node {
    let (ground, ink): (Tint, Tint) = next.enabled ? (.next, .nextInk) : (.ground, .off)
    let drawn = next.drawing == nil ? 0 : 24 + gap
    let room = width - edge * 4 - drawn
    let whole = fit([next.label, next.note], .titleMedium, room)
    // Where room is scarce, letters that the reader wants large come down to their usual size before they take a second line.
    let usual = low ? Self.smaller.filter { 1 / scale <= $0 && $0 <= whole } : []
    let fit = usual.first { lines(next.label, .titleMedium * $0, room).count == 1 } ?? usual.last ?? whole
    var parts = Column(room)
    for (text, style) in [(next.label, Style.titleMedium), (next.note, .labelMedium)] where !text.isEmpty {
      let words = set(text, style * fit, room, ink, centred: true, fitted: false)
      parts.add(Node(.words, Place(0, 0, room, words.height), .words(words)))
    }
    let height = max(56, parts.high + 12)
    var children = [parts.node().at(edge + drawn, (height - parts.high) / 2)]
    if let drawing = next.drawing {
      let high = 24 * drawing.height / drawing.width
      children.append(Node(.drawing, Place(edge, (height - high) / 2, 24, high), .drawing(drawing, ground: ground, ink: ink, faint: false)))
    }
    let node = Node(.next, Place(edge, 4, width - edge * 2, height), children: children)
      .taps(.core(next.does), next.named, enabled: next.enabled).looks(ground, corner: 28)
    return Node(.column, Place(0, 0, width, height + 8), children: [node])
  }

  /// Most tools in one line.
  private static let abreast = 5

  /// Heard in their own order, seen from the side of the thumb on.
  private func tools(_ tools: [ShownButton], _ leftHanded: Bool, _ width: Double, _ low: Bool) -> Node {
    let words = Self.words(tools.map(\.label))
    let most = (1...Self.abreast).last { widest(words, .labelSmall * 0.5) + 6 <= (width - edge) / Double($0) } ?? 1
    let lines = (tools.count + most - 1) / most
    let abreast = (tools.count + lines - 1) / lines
    let each = ((width - edge) / Double(abreast)).rounded(.down)
    let fit = fit(words, .labelSmall, each - 6)
    let small = Style.labelSmall * fit
    // A long note, and any where room is scarce, is left to whoever hears the tool and to what is told once it was tapped.
    let noted = !low && tools.allSatisfy { widest(Self.words([$0.note]), small) <= each - 6 && self.lines($0.note, small, each - 6).count <= 2 }
    var rows = Column(width)
    rows.add(divider(width))
    for first in stride(from: 0, to: tools.count, by: abreast) {
      let row = tools[first..<min(first + abreast, tools.count)].map { tool($0, each, small, noted: noted, low) }
      let high = row.map(\.place.height).max()!
      let placed = row.enumerated().map { index, tool in
        var tool = tool.at(edge / 2 + each * Double(leftHanded ? row.count - 1 - index : index), 0)
        let down = (high - tool.place.height) / 2
        tool.place.height = high
        tool.children = tool.children.map { $0.at($0.place.x, $0.place.y + down) }
        return tool
      }
      rows.add(Node(.column, Place(0, 0, width, high), children: placed))
    }
    return rows.node()
  }

  /// An icon over its word.
  private func tool(_ tool: ShownButton, _ width: Double, _ style: Style, noted: Bool, _ low: Bool) -> Node {
    let (ground, ink): (Tint, Tint) = (tool.chosen ? .chosen : .ground, tool.enabled ? .ink : .off)
    let room = width - 6
    var parts = Column(room)
    if let drawing = tool.drawing {
      let wide = low ? 20.0 : 24
      parts.add(
        Node(.drawing, Place(0, 0, wide, wide * drawing.height / drawing.width), .drawing(drawing, ground: ground, ink: ink, faint: false)),
        x: (room - wide) / 2)
      parts.gap(2)
    }
    for text in [tool.label, noted ? tool.note : ""] where !text.isEmpty {
      let words = set(text, style, room, ink, centred: true, fitted: false)
      parts.add(Node(.words, Place(0, 0, room, words.height), .words(words)))
    }
    let height = max(low ? 48 : 64, parts.high + (low ? 4 : 8))
    return Node(.tool, Place(0, 0, width, height), children: [parts.node().at(3, (height - parts.high) / 2)])
      .taps(.core(tool.does), tool.named, enabled: tool.enabled, chosen: tool.chosen).looks(ground, corner: 12)
  }

  func divider(_ width: Double) -> Node { Node(.divider, Place(0, 0, width, 1)).looks(.faintEdge) }

  /// Of a height, with whatever is in it behind that.
  func scroller(_ name: String, _ column: Column, _ height: Double) -> Node {
    Node(.scroller, Place(0, 0, column.width, height), .scroll(name: name, height: column.high), children: column.nodes)
  }
}
