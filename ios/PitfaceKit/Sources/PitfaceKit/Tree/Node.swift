import PitfaceCore

/// What a part of a screen is: for its look, its order and the rules that tests hold it to.
public enum Rank: String, Sendable {
  case whole, column, scroller, words, divider, drawing
  case title, back, menu
  case answer, told, caution, question, tile, next, tool, way, unfold, heading, typing, picture, touch, photo, said, settings, leave
}

/// A sign of the shell's own, by its name among the platform's.
public enum Sign: String, Sendable {
  case back = "chevron.left"
  case menu = "ellipsis"
  case leads = "chevron.right"
  case unfolds = "chevron.down"
  case folds = "chevron.up"
}

/// What stands in a node.
public enum Content: Sendable {
  case none
  case words(Words)
  /// A drawing in the colours of the core, on a ground or in one ink.
  case drawing(Drawing, ground: Tint?, ink: Tint?, faint: Bool)
  case sign(Sign, Tint)
  case picture(ShownPicture)
  /// A small picture of the photo with this hash.
  case photo(String)
  case typing(act: String, label: String, value: String, long: Bool)
  /// What is in it may be higher than its place; `name` is new where it begins at the top again.
  case scroll(name: String, height: Double)
}

/// What a tap on a node does.
public enum Deed: Equatable, Sendable {
  case core(ShownDoes)
  /// Of the menu: closes it first.
  case entry(ShownDoes)
  case menu, unfold, settings
}

/// What a screen reader says beside the name.
public enum Trait: Sendable { case button, header, image, selected, live }

/// The edge of a node.
public struct Edge: Equatable, Sendable {
  public let width: Double
  public let tint: Tint
}

/// A part of a screen: where it is in what it lies in, how it looks, what it says and does. Its order is the order of reading.
public struct Node: Identifiable, Sendable {
  public var rank: Rank
  public var place: Place
  public var content: Content = .none
  public var ground: Tint?
  public var edge: Edge?
  public var corner = 0.0
  /// A tick in the upper right corner: the answer given.
  public var ticked = false
  /// A thick stroke along the left: to be heeded.
  public var stroked = false
  /// Its name for a screen reader, which then hears nothing of what is in it.
  public var spoken: String?
  public var traits: [Trait] = []
  public var deed: Deed?
  public var enabled = true
  /// How far it goes along with what scrolls, so that a question stays while its answers do.
  public var sticks = 0.0
  public var children: [Node] = []
  /// Its number among its siblings and those of all above it.
  public var id = ""

  init(_ rank: Rank, _ place: Place, _ content: Content = .none, children: [Node] = []) {
    (self.rank, self.place, self.content, self.children) = (rank, place, content, children)
  }

  /// Words that are heard.
  init(_ rank: Rank, _ words: Words, _ x: Double, _ y: Double, _ width: Double, _ traits: [Trait] = []) {
    self.init(rank, Place(x, y, width, words.height), .words(words))
    spoken = words.text
    self.traits = traits
  }

  /// Something to be tapped.
  func taps(_ deed: Deed, _ spoken: String, enabled: Bool = true, chosen: Bool = false) -> Node {
    var node = self
    (node.deed, node.spoken, node.enabled) = (deed, spoken, enabled)
    node.traits = chosen ? [.button, .selected] : [.button]
    return node
  }

  func looks(_ ground: Tint?, _ edge: Edge? = nil, corner: Double = 0) -> Node {
    var node = self
    (node.ground, node.edge, node.corner) = (ground, edge, corner)
    return node
  }

  func at(_ x: Double, _ y: Double) -> Node {
    var node = self
    (node.place.x, node.place.y) = (x, y)
    return node
  }

  /// With ids from the top, so that a node keeps its own while the screen is of the same kind.
  func named(_ id: String) -> Node {
    var node = self
    node.id = id
    node.children = children.enumerated().map { $1.named("\(id).\($0) \($1.rank.rawValue)") }
    return node
  }
}

/// Nodes under each other.
struct Column {
  let width: Double
  var high = 0.0
  var nodes: [Node] = []

  init(_ width: Double) { self.width = width }

  mutating func add(_ node: Node, above: Double = 0, x: Double = 0) {
    nodes.append(node.at(x, high + above))
    high = nodes.last!.place.bottom
  }

  mutating func gap(_ height: Double) { high += height }

  func node(_ rank: Rank = .column) -> Node { Node(rank, Place(0, 0, width, high), children: nodes) }
}
