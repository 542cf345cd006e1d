import PitfaceCore
import PitfaceKit
import SwiftUI

/// How everything of a screen is looked at.
struct Look: Equatable {
  let dark: Bool
  let scale: Double

  func colour(_ tint: Tint) -> Color { tint.colour(dark: dark).shown }
}

/// Any part of a screen, at the place the kit gave it. Order and names for VoiceOver come from the tree.
struct NodeView: View {
  let node: Node
  let window: Window
  let look: Look

  var body: some View {
    heard.frame(width: node.place.width, height: node.place.height, alignment: .topLeading).modifier(Sticking(most: node.sticks))
      .offset(x: node.place.x, y: node.place.y).accessibilityIdentifier(node.id)
  }

  @ViewBuilder private var heard: some View {
    switch node.content {
    case .picture(let picture): PictureView(picture: picture, node: node, window: window, look: look)
    case .typing(let act, let label, let value, let long):
      TypingView(act: act, label: label, value: value, long: long, window: window, look: look).background(ground)
    case .scroll(let name, let height):
      ScrollView { children.frame(width: node.place.width, height: height, alignment: .topLeading) }.scrollBounceBehavior(.basedOnSize).scrollIndicatorsFlash(
        onAppear: true
      ).id(name)
    default:
      if let deed = node.deed {
        Button {
          window.does(deed)
        } label: {
          drawn.contentShape(Rectangle())
        }
        .buttonStyle(.plain).disabled(!node.enabled).accessibilityLabel(node.spoken ?? "").accessibilityAddTraits(traits)
      } else if let spoken = node.spoken {
        drawn.accessibilityElement(children: .ignore).accessibilityLabel(spoken).accessibilityAddTraits(traits)
      } else {
        drawn.accessibilityElement(children: .contain)
      }
    }
  }

  private var traits: AccessibilityTraits {
    let known: [Trait: AccessibilityTraits] = [.button: .isButton, .header: .isHeader, .image: .isImage, .selected: .isSelected, .live: .updatesFrequently]
    return AccessibilityTraits(node.traits.compactMap { known[$0] })
  }

  private var drawn: some View {
    ZStack(alignment: .topLeading) {
      ground
      content
      children
      if node.ticked || node.stroked { marks }
    }
    .frame(width: node.place.width, height: node.place.height, alignment: .topLeading)
  }

  private var ground: some View {
    let shape = RoundedRectangle(cornerRadius: min(node.corner, node.place.height / 2))
    return ZStack {
      if let ground = node.ground { shape.fill(look.colour(ground)) }
      if let edge = node.edge { shape.strokeBorder(look.colour(edge.tint), lineWidth: edge.width) }
    }
  }

  private var children: some View {
    ZStack(alignment: .topLeading) {
      ForEach(Array(node.children.enumerated()), id: \.element.id) { index, child in
        NodeView(node: child, window: window, look: look).zIndex(child.sticks > 0 ? 1 : child.rank == .leave ? -1 : 0).accessibilitySortPriority(-Double(index))
      }
    }
  }

  @ViewBuilder private var content: some View {
    switch node.content {
    case .words(let words): set(words)
    case .drawing(let drawing, let ground, let ink, let faint):
      PaintingView(painting: Painting(drawing, dark: look.dark, ground: ground?.colour(dark: look.dark), ink: ink?.colour(dark: look.dark)), scale: look.scale)
        .opacity(faint ? 0.5 : 1)
    case .sign(let sign, let tint):
      Image(systemName: sign.rawValue).font(.system(size: 20, weight: .medium)).foregroundStyle(look.colour(tint))
        .frame(width: node.place.width, height: node.place.height)
    case .photo(let hash): PhotoView(hash: hash, title: "", side: node.place.width, window: window, look: look)
    case .none, .picture, .typing, .scroll: EmptyView()
    }
  }

  private func set(_ words: Words) -> some View {
    VStack(alignment: words.centred ? .center : .leading, spacing: 0) {
      ForEach(Array((words.cut ? [words.text] : words.lines).enumerated()), id: \.offset) { _, line in
        Text(verbatim: line).font(.system(size: words.style.size, weight: words.style.weight.ofSwiftUI)).foregroundStyle(look.colour(words.tint))
          .lineLimit(1).truncationMode(.tail).frame(height: words.style.line.rounded(.up)).fixedSize(horizontal: !words.cut, vertical: false)
      }
    }
    .frame(width: node.place.width, alignment: words.centred ? .top : .topLeading)
  }

  /// The tick of an answer given; the stroke before what is to be heeded.
  private var marks: some View {
    Canvas { context, size in
      let ink = GraphicsContext.Shading.color(look.colour(.ink))
      if node.stroked {
        let bar = SwiftUI.Path { path in
          path.move(to: CGPoint(x: 2, y: 2))
          path.addLine(to: CGPoint(x: 2, y: size.height - 2))
        }
        context.stroke(bar, with: ink, style: StrokeStyle(lineWidth: 4, lineCap: .round))
      }
      if node.ticked {
        let (x, y, unit) = (size.width - 16, 9.0, 3.5)
        let tick = SwiftUI.Path { path in
          path.move(to: CGPoint(x: x, y: y))
          path.addLine(to: CGPoint(x: x + unit, y: y + unit))
          path.addLine(to: CGPoint(x: x + unit * 2.6, y: y - unit))
        }
        context.stroke(tick, with: ink, style: StrokeStyle(lineWidth: 2.5, lineCap: .round))
      }
    }
    .allowsHitTesting(false)
  }
}

/// Goes along with what scrolls, at most this far.
private struct Sticking: ViewModifier {
  let most: Double

  func body(content: Sticking.Content) -> some View {
    let most = most
    return content.visualEffect { view, place in view.offset(y: min(max(0, -place.frame(in: .scrollView).minY), most)) }
  }
}

extension Style.Weight {
  fileprivate var ofSwiftUI: Font.Weight {
    switch self {
    case .plain: .regular
    case .medium: .medium
    case .bold: .bold
    }
  }
}

/// Text to be typed. What is typed is kept at once and entered by leaving or by the next tap, one line of it by the key too.
private struct TypingView: View {
  let act: String
  let label: String
  let value: String
  let long: Bool
  let window: Window
  let look: Look
  @State private var text: String?

  var body: some View {
    TextField("", text: Binding(get: { text ?? value }, set: { enters($0) }), axis: long ? .vertical : .horizontal)
      .lineLimit(long ? 3...3 : 1...1).font(.system(size: 17 * look.scale)).foregroundStyle(look.colour(.ink))
      .textInputAutocapitalization(.sentences).submitLabel(long ? .return : .done).onSubmit { window.shell.enter() }
      .padding(12).accessibilityLabel(label).onChange(of: value) { text = nil }
  }

  private func enters(_ typed: String) {
    text = typed
    window.shell.typed(act, typed)
  }
}
