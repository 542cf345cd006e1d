import Foundation

/// JSON with its numbers as they were written and its keys in order: the core says a number back as it stood.
indirect enum Json: Equatable {
  case null
  case bool(Bool)
  case number(String)
  case string(String)
  case array([Json])
  case object([(key: String, value: Json)])

  static func == (one: Json, other: Json) -> Bool { one.written(sorted: true) == other.written(sorted: true) }

  init(_ text: String) throws {
    var reader = Reader(Array(text.utf8))
    self = try reader.value()
  }

  init(file: URL) throws { try self.init(String(contentsOf: file, encoding: .utf8)) }

  subscript(key: String) -> Json? {
    if case .object(let all) = self { all.first { $0.key == key }?.value } else { nil }
  }

  var list: [Json] { if case .array(let all) = self { all } else { [] } }
  var text: String? { if case .string(let text) = self { text } else { nil } }
  var keys: [(key: String, value: Json)] { if case .object(let all) = self { all } else { [] } }
  var int: Int? { if case .number(let text) = self { Int(text) } else { nil } }

  func list(_ key: String) -> [Json] { self[key]?.list ?? [] }
  func text(_ key: String) -> String? { self[key]?.text }

  /// With another value at a JSON pointer (RFC 6901); without any, taken out.
  func with(_ pointer: some Collection<Substring>, _ value: Json?) -> Json {
    guard let key = pointer.first else { return value ?? .null }
    let rest = pointer.dropFirst()
    switch self {
    case .array(var all):
      guard let at = Int(key) else { return self }
      if rest.isEmpty && value == nil { all.remove(at: at) } else { all[at] = all[at].with(rest, value) }
      return .array(all)
    case .object(var all):
      let at = all.firstIndex { $0.key == key }
      if rest.isEmpty {
        if let at { if let value { all[at].value = value } else { all.remove(at: at) } } else if let value { all.append((String(key), value)) }
      } else if let at {
        all[at].value = all[at].value.with(rest, value)
      }
      return .object(all)
    default: return self
    }
  }

  func written(sorted: Bool = false) -> String {
    switch self {
    case .null: "null"
    case .bool(let value): "\(value)"
    case .number(let text): text
    case .string(let text): Self.quoted(text)
    case .array(let all): "[" + all.map { $0.written(sorted: sorted) }.joined(separator: ",") + "]"
    case .object(let all):
      "{" + (sorted ? all.sorted { $0.key < $1.key } : all).map { "\(Self.quoted($0.key)):\($0.value.written(sorted: sorted))" }.joined(separator: ",") + "}"
    }
  }

  private static func quoted(_ text: String) -> String {
    let data = try! JSONSerialization.data(withJSONObject: [text], options: .withoutEscapingSlashes)
    return String(String(decoding: data, as: UTF8.self).dropFirst().dropLast())
  }

  struct Wrong: Error {}

  private struct Reader {
    let bytes: [UInt8]
    var at = 0

    init(_ bytes: [UInt8]) { self.bytes = bytes }

    mutating func next() throws -> UInt8 {
      while at < bytes.count, [9, 10, 13, 32].contains(bytes[at]) { at += 1 }
      guard at < bytes.count else { throw Wrong() }
      return bytes[at]
    }

    mutating func string() throws -> String {
      let start = at
      at += 1
      while at < bytes.count, bytes[at] != 34 { at += bytes[at] == 92 ? 2 : 1 }
      at += 1
      return try JSONDecoder().decode([String].self, from: Data([91] + bytes[start..<at] + [93]))[0]
    }

    mutating func value() throws -> Json {
      switch try next() {
      case 34: return .string(try string())
      case 91:
        at += 1
        var all: [Json] = []
        while try next() != 93 {
          all.append(try value())
          if try next() == 44 { at += 1 }
        }
        at += 1
        return .array(all)
      case 123:
        at += 1
        var all: [(key: String, value: Json)] = []
        while try next() != 125 {
          let key = try string()
          guard try next() == 58 else { throw Wrong() }
          at += 1
          all.append((key, try value()))
          if try next() == 44 { at += 1 }
        }
        at += 1
        return .object(all)
      default:
        let start = at
        while at < bytes.count, ![9, 10, 13, 32, 44, 93, 125].contains(bytes[at]) { at += 1 }
        switch String(decoding: bytes[start..<at], as: UTF8.self) {
        case "null": return .null
        case "true": return .bool(true)
        case "false": return .bool(false)
        case let number: return .number(number)
        }
      }
    }
  }
}
