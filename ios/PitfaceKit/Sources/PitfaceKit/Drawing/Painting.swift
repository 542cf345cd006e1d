import PitfaceCore

/// An opaque colour, sRGB, each part 0 to 255.
public struct Colour: Hashable, Sendable {
  public let red: UInt8
  public let green: UInt8
  public let blue: UInt8

  public init(_ hex: UInt32) { (red, green, blue) = (UInt8(hex >> 16 & 255), UInt8(hex >> 8 & 255), UInt8(hex & 255)) }

  init(_ role: RoleColour) { (red, green, blue) = (role.red, role.green, role.blue) }
}

/// A piece of a path; lengths in points of the drawing.
public enum Path: Equatable, Sendable {
  case rectangle(Place)
  case circle(centre: Point, radius: Double)
  /// From point to point; closed where it is filled.
  case points([Point])
}

/// One thing to be painted, over all before it.
public enum Command: Equatable, Sendable {
  case fill(Path, Colour)
  /// With round ends and joins.
  case stroke(Path, width: Double, Colour)
  /// One line of text on its base line.
  case text(String, at: Point, anchor: Anchor, size: Double, strong: Bool, Colour)
}

/// A drawing as commands, for any painter there is.
public struct Painting: Equatable, Sendable {
  public let width: Double
  public let height: Double
  public let commands: [Command]

  /// Height by width.
  public var proportion: Double { height / width }

  /// In the colours of day or dark; on a `ground` of its own where it stands on something, in one `ink` where it is a sign.
  public init(_ drawing: Drawing, dark: Bool, ground: Colour? = nil, ink: Colour? = nil) {
    (width, height) = (drawing.width, drawing.height)
    let paints = dark ? Paints.inTheDark : Paints.byDay
    func colour(_ role: Role) -> Colour { (Paints.papers.contains(role) ? ground : ink) ?? paints.colour(role) }
    commands = drawing.shapes.map { shape in
      switch shape {
      case .rectangle(let role, let left, let top, let width, let height):
        .fill(.rectangle(Place(left, top, width, height)), colour(role))
      case .circle(let role, let centre, let radius): .fill(.circle(centre: centre, radius: radius), colour(role))
      case .polygon(let role, let points): .fill(.points(points), colour(role))
      case .line(let role, let from, let to): .stroke(.points([from, to]), width: paints.width(role), colour(role))
      case .polyline(let role, let points): .stroke(.points(points), width: paints.width(role), colour(role))
      case .text(let role, let at, let anchor, let size, let strong, let text):
        .text(text, at: at, anchor: anchor, size: size, strong: strong, colour(role))
      }
    }
  }

  /// Without letters that come out smaller than can be read, where a point of the drawing is `factor` points of the screen and letters are
  /// `scale` times their usual size.
  public func legible(factor: Double, scale: Double) -> [Command] {
    commands.filter { command in
      if case .text(_, _, _, let size, _, _) = command { size * factor >= Self.leastLetters * scale } else { true }
    }
  }

  /// Points; a little under nine, which the core may make exactly.
  private static let leastLetters = 8.95
}

/// How roles are painted, as the core says.
private struct Paints: Sendable {
  static let byDay = Paints(.light)
  static let inTheDark = Paints(.dark)

  /// What stands for the paper under a drawing: it takes the ground of what it stands on.
  static let papers: Set<Role> = [.paper, .casing]

  private let roles: [Role: RoleColour]

  init(_ theme: Theme) {
    roles = Dictionary(uniqueKeysWithValues: ((try? colours(theme: theme)) ?? []).map { ($0.role, $0) })
  }

  func colour(_ role: Role) -> Colour { roles[role].map(Colour.init) ?? Colour(0) }
  func width(_ role: Role) -> Double { roles[role]?.strokeWidth ?? 0 }
}
