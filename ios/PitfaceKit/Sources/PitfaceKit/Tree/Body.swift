import PitfaceCore

private let above = 4.0

/// Letters up to this scale leave every answer in sight.
private let sees = 1.3

/// Share of the width that a strip has at most.
private let strip = 0.3

/// Under this height a picture shows nothing.
let leastPicture = 60.0

/// How the blocks stand: in which order, how many of them up to the last question, how close their answers, and how high what must be in sight is.
struct Plan {
  let blocks: [ShownBlock]
  let asked: Int
  let packing: Packing
  let must: Double
}

extension ShownBlock {
  fileprivate var isQuestion: Bool { if case .question = self { true } else { false } }
  fileprivate var isText: Bool { if case .text = self { true } else { false } }
}

extension Letters {
  /// The roomiest way in which every answer is in sight: first sentences before the questions go behind them, then drawings and letters of the
  /// answers shrink. The picture has already given way.
  func plan(_ blocks: [ShownBlock], _ width: Double, _ room: Double) -> Plan {
    guard let last = blocks.lastIndex(where: \.isQuestion) else { return Plan(blocks: blocks, asked: 0, packing: Packing.all[0], must: 0) }
    func first(_ leads: (Int) -> Bool) -> [ShownBlock] {
      blocks.indices.filter(leads).map { blocks[$0] } + blocks.indices.filter { !leads($0) }.map { blocks[$0] }
    }
    let orders = [first { blocks[$0].isQuestion || $0 < last && blocks[$0].isText }, first { blocks[$0].isQuestion }]
    var plan: Plan?
    for packing in Packing.all {
      for order in orders {
        let asked = order.lastIndex(where: \.isQuestion)! + 1
        let must = order.prefix(asked).reduce(above) { $0 + packing.between + block($1, packing, width).place.height }
        plan = Plan(blocks: order, asked: asked, packing: packing, must: must)
        if must <= room { return plan! }
      }
    }
    return plan!
  }

  /// Not every answer would be in sight; what is only read gives way before the drawings on answers have shrunk to little.
  func crowded(_ shown: ShownScreen, _ width: Double, _ room: Double, _ standing: Standing, pictured: Bool) -> Bool {
    let plan = plan(shown.blocks, pictured && shown.picture?.stand == .strip ? width * (1 - strip) - edge / 2 : width, room)
    return scale <= sees && (plan.must > room || standing.read && plan.packing.drawn < 0.6)
  }

  /// What stands between the answer and the foot.
  func body(_ shown: ShownScreen, _ width: Double, _ height: Double, _ standing: Standing, unfolded: Bool, pictured: Bool = true) -> Node {
    guard pictured, let picture = shown.picture, picture.stand == .strip else {
      return scrolled(shown, pictured ? shown.picture : nil, width, height, standing, unfolded)
    }
    let proportion = picture.drawing.width / picture.drawing.height
    let wide = min(max(height * proportion, 56), width * strip)
    let rest = width - wide - edge / 2
    let (at, beside) = shown.leftHanded ? (rest, 0.0) : (edge / 2, wide + edge / 2)
    let shownThere = self.picture(picture, wide, height).at(at, 0)
    return Node(.column, Place(0, 0, width, height), children: [shownThere, scrolled(shown, nil, rest, height, standing, unfolded).at(beside, 0)])
  }

  private func scrolled(_ shown: ShownScreen, _ picture: ShownPicture?, _ width: Double, _ height: Double, _ standing: Standing, _ unfolded: Bool) -> Node {
    let plan = plan(shown.blocks, width, height)
    var rest = Column(width)
    rest.gap(above)
    func add(_ node: Node) { rest.add(node, above: rest.nodes.isEmpty ? 0 : plan.packing.between) }
    for block in plan.blocks.prefix(plan.asked) { add(self.block(block, plan.packing, width)) }
    if !standing.lined, let line = shown.answer?.line, !line.isEmpty { add(sentence(line, .bodyMedium, width)) }
    if !standing.read { read(shown, width).nodes.forEach(add) }
    for block in plan.blocks.dropFirst(plan.asked) { add(self.block(block, plan.packing, width)) }
    if !shown.more.isEmpty { add(more(shown, unfolded, width)) }
    var all = Column(width)
    if let picture {
      // A picture has what is left over, and a good part of the height is its own, more where nothing is asked, as far as what must be in sight leaves it.
      let whole = width * picture.drawing.height / picture.drawing.width
      let high = min(max(height - rest.high, min(height - plan.must, height * (plan.asked > 0 ? 0.45 : 0.6)), 0), whole)
      if high >= leastPicture { all.add(self.picture(picture, width, high)) }
    }
    let down = all.high
    all.add(rest.node())
    all.nodes[all.nodes.count - 1].children = sticking(rest.nodes, down)
    return scroller("\(shown.kind) \(shown.answer?.text ?? shown.title)", all, height)
  }

  /// A question stays in sight for as long as anything is that answers it.
  private func sticking(_ nodes: [Node], _ down: Double) -> [Node] {
    nodes.map { node in
      guard node.children.first?.rank == .question else { return node }
      var node = node
      let question = node.children[0]
      node.children[0].sticks = max(0, node.place.height - question.place.height)
      return node
    }
  }

  private func block(_ block: ShownBlock, _ packing: Packing, _ width: Double) -> Node {
    switch block {
    case .question(let text, let columns, let answers): asked(text, Int(columns), answers, packing, width)
    case .ways(let heading, let rows): ways(heading, rows, width)
    case .photos(let photos): self.photos(photos, width)
    case .picture(let picture): self.picture(picture, width, (width - edge) * picture.drawing.height / picture.drawing.width)
    case .text(let text): sentence(text, .bodyMedium, width)
    case .lines(let section): lines(section, .bodyMedium, width)
    case .typing(let label, let value, let act, let long): typing(act, label, value, long, width)
    }
  }

  /// A question with its answers.
  private func asked(_ text: String, _ columns: Int, _ answers: [ShownButton], _ packing: Packing, _ width: Double) -> Node {
    let room = width - edge * 2
    let grid = grid(answers, columns, room, packing)
    var asked = Column(width)
    if !text.isEmpty {
      let words = set(text, .titleMedium * letters(packing), room)
      asked.add(Node(.question, words, 0, 0, room, [.header]).looks(.ground), x: edge)
      asked.gap(packing.between * 0.4)
    }
    let tiles = tiles(answers, grid)
    asked.add(Node(.column, Place(0, 0, room, grid.height), children: tiles), x: edge)
    return asked.node()
  }

  /// A picture as large as its place lets it be, whole, in the middle of it; in it, the places that do something.
  func picture(_ shown: ShownPicture, _ width: Double, _ height: Double) -> Node {
    let factor = min(width / shown.drawing.width, height / shown.drawing.height)
    let (wide, high) = (shown.drawing.width * factor, shown.drawing.height * factor)
    let touches = shown.touches.map { touch in
      let place = Zoom().onScreen(touch.place, factor)
      return Node(.touch, place).taps(.core(touch.does), touch.label)
    }
    var node = Node(.picture, Place((width - wide) / 2, 0, wide, high), .picture(shown), children: touches)
    node.spoken = [shown.title, shown.description].filter { !$0.isEmpty }.joined(separator: ". ")
    node.traits = [.image]
    return Node(.column, Place(0, 0, width, height), children: [node])
  }
}
