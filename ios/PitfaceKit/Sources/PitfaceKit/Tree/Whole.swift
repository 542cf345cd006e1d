import PitfaceCore

/// What a screen is laid out on: points, without what the system's bars take.
public struct Glass: Equatable, Sendable {
  public var width: Double
  public var height: Double

  public init(width: Double, height: Double) { (self.width, self.height) = (width, height) }
}

/// What is shown beside the screen of the core.
public struct Around: Sendable {
  public var menu = false
  public var unfolded = false
  /// What the shell itself has to say above a screen.
  public var said: Phrase?
  public var words: @Sendable (Phrase) -> String

  public init(words: @escaping @Sendable (Phrase) -> String) { self.words = words }
}

/// What of a screen stands still. Where there is no room for all of it, what is only read goes along with what scrolls, then all is as low as it can be, then
/// the line under the answer goes along too.
struct Standing {
  var read = true
  var low = false
  var lined = true

  static let all = [Standing(), Standing(read: false), Standing(read: false, low: true), Standing(read: false, low: true, lined: false)]
}

/// From this width on two parts stand side by side.
private let wide = 600.0

/// Under this height the foot may stand under what is said, where the answers need all of the other side.
private let lowest = 420.0

/// What is asked has this height at least, else all scrolls.
private let leastBody = 88.0

/// What is said has this height at least where it scrolls by itself.
private let leastAnswer = 60.0

extension Letters {
  /// The app as it stands: the screen of the core, and above it what the shell says, on no more than half the height.
  public func whole(_ shown: ShownScreen?, _ glass: Glass, _ around: Around) -> Node {
    var whole = Column(glass.width)
    if let said = around.said ?? (shown == nil ? .opening : nil) { whole.add(self.said(said, glass, around)) }
    if let shown { whole.add(screen(shown, Glass(width: glass.width, height: glass.height - whole.high), around)) }
    return Node(.whole, Place(0, 0, glass.width, glass.height), children: whole.nodes).looks(.ground).named(shown.map { "\($0.kind)" } ?? "none")
  }

  private func said(_ phrase: Phrase, _ glass: Glass, _ around: Around) -> Node {
    let room = glass.width - edge * 2
    var said = Column(glass.width)
    said.add(Node(.said, set(around.words(phrase), .bodyLarge, room), 0, 0, room, [.live]), above: edge, x: edge)
    if phrase.leadsToSettings {
      let label = set(around.words(.settings), .titleMedium, room - edge * 2, centred: true)
      let height = max(64, label.height + 32)
      let words = Node(.words, Place(edge, (height - label.height) / 2, room - edge * 2, label.height), .words(label))
      let way = Node(.settings, Place(0, 0, room, height), children: [words]).taps(.settings, label.text).looks(
        .ground, Edge(width: 1, tint: .edge), corner: 10)
      said.add(way, above: gap, x: edge)
    }
    said.gap(edge)
    return scroller("said", said, min(said.high, glass.height / 2))
  }

  /// Any screen of the core, from the top: where one is, what it says, what it shows and asks, what comes next.
  private func screen(_ shown: ShownScreen, _ glass: Glass, _ around: Around) -> Node {
    if around.menu { return menu(shown, glass, around) }
    if shown.kind == .show { return forTheFarmer(shown, glass) }
    return glass.width >= wide || glass.width > glass.height ? sideBySide(shown, glass, around) : oneColumn(shown, glass, around)
  }

  private func oneColumn(_ shown: ShownScreen, _ glass: Glass, _ around: Around) -> Node {
    let (width, height) = (glass.width, glass.height)
    let top = topLine(shown, width, around)
    var chosen: (standing: Standing, column: Column, foot: Node)?
    for standing in Standing.all {
      var column = Column(width)
      column.add(top)
      if let answer = answer(shown, width, height * 0.6, standing) { column.add(answer) }
      let foot = foot(shown, width, height, standing)
      let room = height - column.high - foot.place.height
      guard room >= leastBody else { continue }
      chosen = (standing, column, foot)
      if !crowded(shown, width, room, standing, pictured: true) { break }
    }
    guard case (let standing, var column, let foot)? = chosen else { return scrolledWhole(shown, glass, around) }
    column.add(body(shown, width, height - column.high - foot.place.height, standing, unfolded: around.unfolded))
    column.add(foot)
    return column.node()
  }

  /// Letters so large, or a screen so low, that what stands above and below leaves nothing between: all of it scrolls.
  private func scrolledWhole(_ shown: ShownScreen, _ glass: Glass, _ around: Around) -> Node {
    var column = Column(glass.width)
    column.add(topLine(shown, glass.width, around))
    if let said = shown.answer { column.add(headline(said, glass.width, low: true)) }
    var body = body(shown, glass.width, 0, Standing(), unfolded: around.unfolded, pictured: false)
    if case .scroll(_, let high) = body.content { body.place.height = high }
    column.add(body)
    column.add(foot(shown, glass.width, .infinity, Standing()))
    return scroller("whole \(shown.kind) \(shown.title)", column, glass.height)
  }

  /// Where one is, on one line always: the way back, the title, the menu of rare things.
  private func topLine(_ shown: ShownScreen, _ width: Double, _ around: Around) -> Node {
    var words = set(shown.title, .titleSmall, .infinity, fitted: false)
    words.cut = true
    let height = max(48, words.height)
    var children: [Node] = []
    if let back = shown.back {
      let deed: Deed = around.menu ? .menu : .core(back.does)
      children.append(Node(.back, Place(0, (height - 48) / 2, 48, 48), .sign(.back, .ink)).taps(deed, back.label))
    }
    let (from, to) = (shown.back == nil ? edge : 48, shown.menu.isEmpty ? edge : 48)
    children.append(Node(.title, words, from, (height - words.height) / 2, width - from - to, [.header]))
    if !shown.menu.isEmpty {
      children.append(Node(.menu, Place(width - 48, (height - 48) / 2, 48, 48), .sign(.menu, .ink)).taps(.menu, around.words(.menu)))
    }
    return Node(.column, Place(0, 0, width, height), children: children)
  }

  /// The answer stays; only where it is very high does it scroll by itself.
  private func answer(_ shown: ShownScreen, _ width: Double, _ most: Double, _ standing: Standing) -> Node? {
    shown.answer.map { said in
      var column = Column(width)
      column.add(headline(said, width, low: standing.low, lined: standing.lined))
      return column.high <= most ? column.node() : scroller("answer", column, most)
    }
  }

  /// What the screen says, in the largest letters in which it takes two lines, or three of smaller ones.
  private func headline(_ said: ShownHeadline, _ width: Double, low: Bool = false, lined: Bool = true, large: Bool = false) -> Node {
    let sign = said.sign == nil ? 0 : 40 + gap
    let room = width - edge * 2 - sign
    var parts = Column(room)
    parts.add(Node(.answer, set(said.text, display(said.text, room, low, large), room), 0, 0, room, [.header]))
    if lined && !said.line.isEmpty { parts.add(Node(.words, set(said.line, large ? .headlineMedium : .bodyMedium, room), 0, 0, room), above: 2) }
    let drawn = said.sign.map { Node(.drawing, Place(edge, 0, 40, 40 * $0.height / $0.width), .drawing($0, ground: nil, ink: nil, faint: false)) }
    let height = max(parts.high, drawn?.place.height ?? 0)
    let signs = drawn.map { [$0.at(edge, (height - $0.place.height) / 2)] } ?? []
    return Node(.column, Place(0, 0, width, height + 6), children: signs + [parts.node().at(edge + sign, (height - parts.high) / 2)])
  }

  private func display(_ text: String, _ room: Double, _ low: Bool, _ large: Bool) -> Style {
    let sizes: [Style] =
      switch (large, low) {
      case (true, _): [.displayLarge, .displayMedium]
      // Letters that the reader wants large come down to their usual size before the answer goes out of sight.
      case (false, true): [.headlineMedium, .headlineSmall, .titleLarge] + Self.smaller.filter { $0 >= 1 / scale }.map { .titleMedium * $0 }
      case (false, false): [.displaySmall, .headlineMedium, .headlineSmall, .titleLarge]
      }
    let whole = sizes.filter { widest(Self.words([text]), $0) <= room }
    func within(_ most: Int) -> Style? { whole.first { lines(text, $0, room).count <= most } }
    return within(2) ?? within(3) ?? sizes.last!
  }

  /// Landscape and tablets: what is said and shown beside what is asked, the latter at the side of the thumb.
  private func sideBySide(_ shown: ShownScreen, _ glass: Glass, _ around: Around) -> Node {
    let (width, height) = (glass.width, glass.height)
    var chosen: (standing: Standing, said: Column, foot: Node, aside: Bool)?
    // Where the foot stands aside, what is asked may have more of the width.
    let ways = height < lowest ? [(false, 0.5), (true, 0.4), (true, 0.5)] : [(false, 0.5)]
    for (standing, (aside, share)) in Standing.all.flatMap({ standing in ways.map { (standing, $0) } }) {
      let part = (width * share).rounded(.down)
      let foot = foot(shown, aside ? part : width - part, height, standing)
      let under = aside ? foot.place.height : 0
      var said = Column(part)
      said.add(topLine(shown, part, around))
      let (most, room) = (height - under - said.high, height - foot.place.height + under)
      guard most >= leastAnswer, room >= leastBody else { continue }
      if let answer = answer(shown, part, most, standing) {
        if chosen != nil && answer.rank == .scroller { continue }
        said.add(answer)
      }
      chosen = (standing, said, foot, aside)
      if !crowded(shown, width - part, room, standing, pictured: false) { break }
    }
    guard case (let standing, var said, let foot, let aside)? = chosen else { return scrolledWhole(shown, glass, around) }
    let (part, under) = (said.width, height - foot.place.height)
    let left = (aside ? under : height) - said.high
    if let picture = shown.picture, left >= leastPicture { said.add(self.picture(picture, part, left)) }
    var asked = Column(width - part)
    asked.add(body(shown, width - part, aside ? height : under, standing, unfolded: around.unfolded, pictured: false))
    if !aside { asked.add(foot) }
    let (here, there) = shown.leftHanded ? (width - part, 0) : (0, part)
    // The foot is heard last, wherever it stands.
    let sides = [said.node().at(here, 0), asked.node().at(there, 0)] + (aside ? [foot.at(here, under)] : [])
    return Node(.column, Place(0, 0, width, height), children: sides)
  }

  /// For the farmer: large letters, nothing to operate; a tap anywhere goes back.
  private func forTheFarmer(_ shown: ShownScreen, _ glass: Glass) -> Node {
    let (width, height) = (glass.width, glass.height)
    var words = Column(width)
    let title = set(shown.title, .headlineMedium, width - edge * 2)
    words.add(Node(.title, title, 0, 0, width - edge * 2, [.header]), above: gap, x: edge)
    if let said = shown.answer { words.add(headline(said, width, large: true), above: gap) }
    func large(_ picture: ShownPicture) -> Node {
      self.picture(picture, width, min(width * picture.drawing.height / picture.drawing.width, height / 2))
    }
    if let picture = shown.picture { words.add(large(picture), above: gap) }
    for block in shown.blocks {
      switch block {
      case .text(let text): words.add(sentence(text, .headlineMedium, width), above: gap)
      case .lines(let section): words.add(lines(section, .headlineMedium, width), above: gap)
      case .picture(let picture): words.add(large(picture), above: gap)
      case .ways(let heading, let rows): words.add(ways(heading, rows, width), above: gap)
      case .photos(let photos): words.add(self.photos(photos, width), above: gap)
      case .question, .typing: break
      }
    }
    let next = shown.next.map { self.next($0, width) }
    var column = Column(width)
    column.add(scroller("show \(shown.title)", words, height - (next?.place.height ?? 0)))
    if let next { column.add(next) }
    guard let back = shown.back else { return column.node() }
    // Under all else, and last for a screen reader.
    let leave = Node(.leave, Place(0, 0, width, height)).taps(.core(back.does), back.label)
    return Node(.column, Place(0, 0, width, height), children: column.nodes + [leave])
  }

  /// Rare things, in place of the screen while the menu is open.
  private func menu(_ shown: ShownScreen, _ glass: Glass, _ around: Around) -> Node {
    var column = Column(glass.width)
    column.add(topLine(shown, glass.width, around))
    var entries = Column(glass.width)
    for entry in shown.menu {
      entries.add(divider(glass.width))
      entries.add(way(.way, entry.drawing, entry.label, [entry.note], entry.spoken, entry.enabled, nil, .entry(entry.does), glass.width))
    }
    entries.add(divider(glass.width))
    column.add(scroller("menu", entries, glass.height - column.high))
    return column.node()
  }
}
