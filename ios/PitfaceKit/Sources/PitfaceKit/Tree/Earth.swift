/// What something is painted in; which colour that is depends on day and dark.
public enum Tint: String, CaseIterable, Sendable {
  case ground, ink
  /// An answer given.
  case chosen, chosenInk
  /// The next step.
  case next, nextInk
  /// What was told, and where a photo is missing.
  case quiet
  /// Words of what is off.
  case off
  /// Edges of answers, and lines between rows.
  case edge, faintEdge

  /// The same as on Android, which a test holds: every text stands at 7 : 1 or more on its ground and every edge at 3 : 1.
  public func colour(dark: Bool) -> Colour {
    switch self {
    case .ground: Colour(dark ? 0x100E0B : 0xFBF8F2)
    case .ink: Colour(dark ? 0xF8F3EA : 0x17110C)
    case .chosen: Colour(dark ? 0x3E3122 : 0xF0E3CC)
    case .chosenInk: Colour(dark ? 0xF8F3EA : 0x17110C)
    case .next: Colour(dark ? 0xE6D2B2 : 0x4A3520)
    case .nextInk: Colour(dark ? 0x1C150D : 0xFFFBF4)
    case .quiet: Colour(dark ? 0x2E2721 : 0xECE0CE)
    case .off: Colour(dark ? 0xA89F92 : 0x5A5046)
    case .edge: Colour(dark ? 0xA89883 : 0x6B5A48)
    case .faintEdge: Colour(dark ? 0x74665A : 0x948370)
    }
  }
}

/// Letters of a size; points.
public struct Style: Hashable, Sendable {
  public enum Weight: Hashable, Sendable { case plain, medium, bold }

  public var size: Double
  public var line: Double
  public var weight: Weight

  init(_ size: Double, _ line: Double, _ weight: Weight = .plain) { (self.size, self.line, self.weight) = (size, line, weight) }

  static func * (style: Style, factor: Double) -> Style { Style(style.size * factor, style.line * factor, style.weight) }

  var bold: Style { Style(size, line, .bold) }

  static let displayLarge = Style(40, 46, .medium)
  static let displayMedium = Style(32, 38, .medium)
  static let displaySmall = Style(28, 34, .medium)
  static let headlineMedium = Style(24, 30, .medium)
  static let headlineSmall = Style(21, 27, .medium)
  static let titleLarge = Style(19, 25, .medium)
  static let titleMedium = Style(17, 22, .medium)
  static let titleSmall = Style(15, 20, .medium)
  static let bodyLarge = Style(17, 23)
  static let bodyMedium = Style(15, 20)
  static let bodySmall = Style(14, 18)
  static let labelLarge = Style(16, 20, .medium)
  static let labelMedium = Style(14, 18)
  static let labelSmall = Style(13, 16)
}
