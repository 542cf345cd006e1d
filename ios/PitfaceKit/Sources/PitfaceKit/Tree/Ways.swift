import PitfaceCore

extension Letters {
  /// Rows that lead somewhere.
  func ways(_ title: String, _ rows: [ShownRow], _ width: Double) -> Node {
    var ways = Column(width)
    if !title.isEmpty { ways.add(heading(title, .bodyMedium, width)) }
    for row in rows {
      ways.add(divider(width))
      ways.add(way(.way, row.icon, row.title, row.lines, "", true, .leads, .core(row.does), width))
    }
    ways.add(divider(width))
    return ways.node()
  }

  /// A row: its sign, its name, what stands there now, and at the end what it does.
  func way(
    _ rank: Rank, _ icon: Drawing?, _ title: String, _ lines: [String], _ spoken: String, _ enabled: Bool, _ end: Sign?, _ deed: Deed, _ width: Double
  ) -> Node {
    let ink: Tint = enabled ? .ink : .off
    let (before, after) = (icon == nil ? 0.0 : 28 + edge, end == nil ? 0.0 : 12 + edge)
    let room = width - edge * 2 - before - after
    var parts = Column(room)
    for (text, style) in [(title, Style.titleMedium)] + lines.map({ ($0, Style.bodyMedium) }) where !text.isEmpty {
      let words = set(text, style, room, ink)
      parts.add(Node(.words, Place(0, 0, room, words.height), .words(words)), above: parts.nodes.isEmpty ? 0 : 1)
    }
    let height = max(64, parts.high + 12)
    var children = [parts.node().at(edge + before, (height - parts.high) / 2)]
    if let icon {
      let high = 28 * icon.height / icon.width
      children.append(Node(.drawing, Place(edge, (height - high) / 2, 28, high), .drawing(icon, ground: nil, ink: ink, faint: false)))
    }
    if let end { children.append(Node(.drawing, Place(width - edge - 12, (height - 24) / 2, 12, 24), .sign(end, ink))) }
    return Node(rank, Place(0, 0, width, height), children: children)
      .taps(deed, spoken.isEmpty ? ([title] + lines).filter { !$0.isEmpty }.joined(separator: "\n") : spoken, enabled: enabled).looks(.ground)
  }

  func heading(_ text: String, _ style: Style, _ width: Double) -> Node {
    let words = Node(.heading, set(text, style.bold, width - edge * 2), edge, 6, width - edge * 2, [.header])
    return Node(.column, Place(0, 0, width, words.place.bottom + 2), children: [words])
  }

  /// A sentence of second rank.
  func sentence(_ text: String, _ style: Style, _ width: Double) -> Node {
    let words = Node(.words, set(text, style, width - edge * 2), edge, 2, width - edge * 2)
    return Node(.column, Place(0, 0, width, words.place.bottom + 2), children: [words])
  }

  /// Lines under a heading.
  func lines(_ section: Section, _ style: Style, _ width: Double) -> Node {
    var lines = Column(width)
    if !section.heading.isEmpty { lines.add(heading(section.heading, style, width)) }
    for line in section.lines { lines.add(sentence(line, style, width)) }
    return lines.node()
  }

  /// What is folded, behind a row that unfolds it in place.
  func more(_ shown: ShownScreen, _ unfolded: Bool, _ width: Double) -> Node {
    var more = Column(width)
    more.add(divider(width))
    more.add(way(.unfold, nil, shown.moreLabel, [], "", true, unfolded ? .folds : .unfolds, .unfold, width))
    if unfolded { for section in shown.more { more.add(lines(section, .bodyMedium, width)) } }
    more.gap(gap)
    return more.node()
  }

  /// Small pictures of photos, side by side.
  func photos(_ photos: [ShownThumbnail], _ width: Double) -> Node {
    let abreast = max(1, Int((width - edge) / (104 * scale + gap)))
    let each = ((width - edge * 2 - gap * Double(abreast - 1)) / Double(abreast)).rounded(.down)
    var rows = Column(width)
    for first in stride(from: 0, to: photos.count, by: abreast) {
      let row = photos[first..<min(first + abreast, photos.count)].enumerated().map { index, photo in
        let label = set(photo.label, .labelMedium, each)
        let parts = [
          Node(.drawing, Place(0, 0, each, each * 0.75), .photo(photo.photo)), Node(.words, Place(0, each * 0.75 + 2, each, label.height), .words(label)),
        ]
        return Node(.photo, Place(edge + (each + gap) * Double(index), 0, each, each * 0.75 + label.height + 4), children: parts)
          .taps(.core(photo.does), photo.label).looks(.ground, corner: 8)
      }
      rows.add(Node(.column, Place(0, 0, width, row.map(\.place.height).max()!), children: row), above: rows.nodes.isEmpty ? 0 : gap)
    }
    return rows.node()
  }

  /// Text to be typed, under its name.
  func typing(_ act: String, _ label: String, _ value: String, _ long: Bool, _ width: Double) -> Node {
    let room = width - edge * 2
    let name = set(label, .labelMedium, room)
    let high = scaled(.bodyLarge).line * (long ? 3 : 1) + 28
    var field = Node(.typing, Place(edge, name.height + 2, room, high), .typing(act: act, label: label, value: value, long: long))
    field.spoken = label
    let shown = Node(.words, Place(edge, 0, room, name.height), .words(name))
    return Node(.column, Place(0, 0, width, field.place.bottom), children: [shown, field.looks(.ground, Edge(width: 1.5, tint: .edge), corner: 8)])
  }
}
