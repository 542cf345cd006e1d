/// How wide the platform sets letters.
public protocol Measure: Sendable {
  /// Of text on one line; points.
  func width(_ text: String, _ style: Style) -> Double
}

/// How much room words take. Lines are broken here and set as they are, so what is reckoned is what is shown.
public struct Letters: Sendable {
  let measure: any Measure
  /// How much larger than usual the reader wants letters.
  public let scale: Double

  public init(_ measure: any Measure, scale: Double) { (self.measure, self.scale) = (measure, scale) }

  /// As large as the reader wants it: what is large already grows by less.
  func scaled(_ style: Style) -> Style { style * (1 + (scale - 1) * min(1, 17 / style.size)) }

  /// The widest of some words, each by itself.
  func widest(_ words: [String], _ style: Style) -> Double {
    let style = scaled(style)
    return words.map { measure.width($0, style).rounded(.up) }.max() ?? 0
  }

  /// Larger letters shrink until no word is wider than the room: words are not parted.
  func fit(_ text: [String], _ style: Style, _ room: Double) -> Double {
    let words = Self.words(text)
    return Self.smaller.first { widest(words, style * $0) <= room } ?? Self.smaller.last!
  }

  static let smaller = [1, 0.9, 0.8, 0.7, 0.6, 0.5, 0.4, 0.33]

  static func words(_ texts: [String]) -> [String] { texts.flatMap { $0.split(whereSeparator: { $0 == " " || $0 == "\n" }).map(String.init) } }

  /// Broken between words; a word that no size makes fit, between letters.
  func lines(_ text: String, _ style: Style, _ room: Double) -> [String] {
    let style = scaled(style)
    func fits(_ line: String) -> Bool { measure.width(line, style).rounded(.up) <= room }
    var lines: [String] = []
    for paragraph in text.split(separator: "\n", omittingEmptySubsequences: false) {
      var line = ""
      for word in paragraph.split(separator: " ") {
        let longer = line.isEmpty ? String(word) : line + " " + word
        if fits(longer) {
          line = longer
          continue
        }
        if !line.isEmpty { lines.append(line) }
        line = ""
        for letter in word {
          if !line.isEmpty && !fits(line + String(letter)) {
            lines.append(line)
            line = ""
          }
          line.append(letter)
        }
      }
      lines.append(line)
    }
    return lines
  }

  /// Words in a room, as high as they are; of `fitted` ones the letters shrink rather than part a word.
  func set(
    _ text: String, _ style: Style, _ room: Double, _ tint: Tint = .ink, centred: Bool = false, fitted: Bool = true
  ) -> Words {
    let own = fitted ? style * fit([text], style, room) : style
    return Words(text: text, lines: lines(text, own, room), style: scaled(own), tint: tint, centred: centred)
  }
}

/// Words as they are set.
public struct Words: Equatable, Sendable {
  public let text: String
  public let lines: [String]
  /// Letters as they are set, the reader's wish included.
  public let style: Style
  public let tint: Tint
  public let centred: Bool
  /// What is too long is cut: the title alone.
  public var cut = false

  public var height: Double { Double(lines.count) * style.line.rounded(.up) }
}
