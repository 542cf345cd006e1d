import PitfaceCore

/// How close the answers of a screen stand: share of their drawings and letters, room around and between them, least height, room between questions.
struct Packing: Equatable, Sendable {
  let drawn, letters, above, beside, gap, least, between: Double

  init(_ drawn: Double, _ letters: Double, _ above: Double, _ beside: Double, _ gap: Double, _ least: Double, _ between: Double = 10) {
    (self.drawn, self.letters, self.above, self.beside, self.gap, self.least, self.between) = (drawn, letters, above, beside, gap, least, between)
  }

  /// From the roomiest on; the first in which all answers are in sight is taken.
  static let all = [
    Packing(1, 1, 6, 8, 8, 64), Packing(0.8, 1, 4, 6, 8, 60), Packing(0.62, 1, 4, 6, 6, 56), Packing(0.62, 0.9, 3, 4, 6, 56),
    Packing(0.5, 0.8, 2, 4, 5, 52), Packing(0.35, 0.75, 2, 4, 4, 48, 6), Packing(0, 0.75, 2, 4, 4, 48, 4),
  ]
}

/// Answers side by side: how many in a row, how wide each, how high each row, by how much letters shrink.
struct Grid {
  let columns: Int
  let each: Double
  let letters: Double
  let heights: [Double]
  let packing: Packing

  var height: Double { heights.reduce(0, +) + packing.gap * Double(max(0, heights.count - 1)) }
}

private let between = 3.0

/// What a finger needs on this phone, after Apple's Human Interface Guidelines.
private let leastTouch = 44.0

extension ShownButton {
  var named: String { spoken.isEmpty ? [label, note].filter { !$0.isEmpty }.joined(separator: " ") : spoken }
  fileprivate var style: Style { strong ? .titleMedium : .labelLarge }

  fileprivate func drawn(_ room: Double, _ packing: Packing) -> Place? {
    guard let drawing, packing.drawn > 0 else { return nil }
    let wide = min(room, drawing.width * packing.drawn)
    return Place(0, 0, wide, wide * drawing.height / drawing.width)
  }
}

extension Letters {
  /// The largest number of columns, up to the one asked for, in which no word is wider than its tile.
  func grid(_ answers: [ShownButton], _ asked: Int, _ width: Double, _ packing: Packing) -> Grid {
    let words = Self.words(answers.flatMap { [$0.label, $0.note] })
    let from = letters(packing)
    func wide(_ letters: Double) -> Double {
      max(widest(words, .labelLarge * letters), answers.map { widest(Self.words([$0.label]), $0.style * letters) }.max() ?? 0) + packing.beside * 2 + 2
    }
    func each(_ columns: Int) -> Double { ((width - packing.gap * Double(columns - 1)) / Double(columns)).rounded(.down) }
    let fitting = stride(from: asked, through: 2, by: -1).first { max(wide(from), leastTouch) <= each($0) } ?? 1
    let rows = (answers.count + fitting - 1) / fitting
    let columns = fitting < asked && rows > 0 ? (answers.count + rows - 1) / rows : fitting  // where it is fewer, no answer stays alone
    let letters = ([from] + Self.smaller.filter { $0 < from }).first { wide($0) <= each(columns) } ?? Self.smaller.last!
    let heights = stride(from: 0, to: answers.count, by: columns).map { first in
      answers[first..<min(first + columns, answers.count)].map { tile($0, each(columns), letters, packing).place.height }.max()!
    }
    return Grid(columns: columns, each: each(columns), letters: letters, heights: heights, packing: packing)
  }

  /// Letters that the reader wants large may come down to their usual size before an answer goes out of sight.
  func letters(_ packing: Packing) -> Double { min(max(packing.letters, 1 / scale), 1) }

  /// Answers in rows, as they were reckoned.
  func tiles(_ answers: [ShownButton], _ grid: Grid) -> [Node] {
    answers.enumerated().map { index, answer in
      let (row, column) = (index / grid.columns, index % grid.columns)
      let y = grid.heights.prefix(row).reduce(0, +) + grid.packing.gap * Double(row)
      let x = (grid.each + grid.packing.gap) * Double(column)
      return tile(answer, grid.each, grid.letters, grid.packing, high: grid.heights[row]).at(x, y)
    }
  }

  /// An answer. One not given is an outlined tile; the one given is tinted, with a thick edge and a tick; one that is off has no edge, and says why.
  private func tile(_ answer: ShownButton, _ width: Double, _ letters: Double, _ packing: Packing, high: Double? = nil) -> Node {
    let (ground, ink, edge): (Tint, Tint, Edge?) =
      switch (answer.enabled, answer.chosen) {
      case (false, _): (.ground, .off, nil)
      case (true, true): (.chosen, .chosenInk, Edge(width: 3, tint: .ink))
      case (true, false): (.ground, .ink, Edge(width: 1.5, tint: .edge))
      }
    let room = width - packing.beside * 2
    var parts = Column(room)
    if let place = answer.drawn(room, packing), let drawing = answer.drawing {
      parts.add(Node(.drawing, place, .drawing(drawing, ground: ground, ink: nil, faint: !answer.enabled)), x: (room - place.width) / 2)
      parts.gap(between)
    }
    let label = set(answer.label, answer.style * letters, room, ink, centred: true, fitted: false)
    parts.add(Node(.words, Place(0, 0, room, label.height), .words(label)))
    if !answer.note.isEmpty {
      let note = set(answer.note, .labelMedium * letters, room, ink, centred: true, fitted: false)
      parts.add(Node(.words, Place(0, 0, room, note.height), .words(note)), above: between)
    }
    let least = max(answer.strong ? packing.least + 8 : packing.least, parts.high + packing.above * 2 + 1)
    let height = high ?? least
    var node = Node(.tile, Place(0, 0, width, height), children: [parts.node().at(packing.beside, (height - parts.high) / 2)])
      .taps(.core(answer.does), answer.named, enabled: answer.enabled, chosen: answer.chosen).looks(ground, edge, corner: 12)
    node.ticked = answer.chosen
    return node
  }
}
