import PitfaceCore
import PitfaceKit
import SwiftUI

/// A picture of the core with the photo under it, and what a finger on it does.
struct PictureView: View {
  let picture: ShownPicture
  let node: Node
  let window: Window
  let look: Look
  @State private var zoom = Zoom()
  @State private var before = Zoom()
  @State private var line: Double?
  @State private var held: ShownTouch?

  private var whole: Place { Place(0, 0, node.place.width, node.place.height) }
  private var factor: Double { node.place.width / picture.drawing.width }
  private var drags: Bool { zoom.scale > 1 || picture.touches.contains(where: \.drags) }

  var body: some View {
    ZStack(alignment: .topLeading) {
      if let photo = picture.photo { PhotoView(hash: photo, title: picture.title, side: node.place.width, window: window, look: look, zoom: zoom) }
      PaintingView(painting: Painting(picture.drawing, dark: look.dark), scale: look.scale, zoom: zoom)
      if let line { look.colour(.ink).frame(height: 3).border(look.colour(.ground)).offset(y: line) }
    }
    .clipped().contentShape(Rectangle())
    .gesture(SpatialTapGesture().onEnded { lifted($0.location, met($0.location), far: false) })
    .gesture(drag, including: drags ? .all : .subviews)
    .gesture(pinch, including: picture.zooms ? .all : .subviews)
    .accessibilityElement(children: .contain).accessibilityLabel(node.spoken ?? "").accessibilityAddTraits(.isImage)
    .accessibilityChildren {
      ForEach(Array(picture.touches.enumerated()), id: \.offset) { _, touch in
        Button(touch.label) { window.shell.touched(touch.does, touch.place.centre.x, touch.place.centre.y) }
      }
    }
    .overlay(alignment: picture.stand == .strip ? .bottom : .bottomTrailing) { if picture.zooms && node.place.height > 100 { closer } }
    .onChange(of: picture.title) { zoom = Zoom() }
  }

  private func point(_ at: CGPoint) -> PitfaceCore.Point { Point(x: at.x, y: at.y) }
  private func met(_ at: CGPoint) -> ShownTouch? { picture.met(zoom.onDrawing(point(at), factor), thumb: 48 / (factor * zoom.scale)) }

  private func lifted(_ at: CGPoint, _ held: ShownTouch?, far: Bool) {
    guard let what = picture.does(held: held, far: far) else { return }
    let place = zoom.onDrawing(point(at), factor)
    window.shell.touched(what, place.x, place.y)
  }

  private var drag: some Gesture {
    DragGesture(minimumDistance: 10)
      .onChanged { finger in
        if held == nil { held = met(finger.startLocation) }
        if held?.drags == true {
          line = min(max(finger.location.y, 0), node.place.height)
        } else {
          zoom = before
          zoom.moved(Point(x: finger.translation.width, y: finger.translation.height), in: whole)
        }
      }
      .onEnded { finger in
        lifted(finger.location, held, far: true)
        (line, held, before) = (nil, nil, zoom)
      }
  }

  private var pinch: some Gesture {
    MagnifyGesture()
      .onChanged { fingers in
        zoom = before
        zoom.by(fingers.magnification, about: point(fingers.startLocation), in: whole)
      }
      .onEnded { _ in before = zoom }
  }

  /// Larger and smaller, for one hand.
  private var closer: some View {
    HStack(spacing: 0) {
      ForEach([Phrase.larger, .smaller], id: \.self) { way in
        Button {
          zoom.by(way == .larger ? 1.5 : 2.0 / 3, about: whole.centre, in: whole)
          before = zoom
        } label: {
          Image(systemName: way == .larger ? "plus" : "minus").frame(width: 48, height: 48)
        }
        .accessibilityLabel(words(way, in: window.shell.shown?.language))
      }
    }
    .foregroundStyle(look.colour(.ink)).background(look.colour(.ground), in: RoundedRectangle(cornerRadius: 12))
  }
}

/// The commands of a drawing, painted.
struct PaintingView: View {
  let painting: Painting
  let scale: Double
  var zoom = Zoom()

  var body: some View {
    Canvas { context, size in
      let factor = Double(size.width) / painting.width * zoom.scale
      context.translateBy(x: zoom.corner.x, y: zoom.corner.y)
      context.scaleBy(x: factor, y: factor)
      for command in painting.legible(factor: factor, scale: scale) { paint(command, in: context) }
    }
  }

  private func paint(_ command: Command, in context: GraphicsContext) {
    switch command {
    case .fill(let path, let colour): context.fill(shape(path, closed: true), with: .color(colour.shown))
    case .stroke(let path, let width, let colour):
      context.stroke(shape(path, closed: false), with: .color(colour.shown), style: StrokeStyle(lineWidth: width, lineCap: .round, lineJoin: .round))
    case .text(let text, let at, let anchor, let size, let strong, let colour):
      let letters = context.resolve(Text(verbatim: text).font(.system(size: size, weight: strong ? .bold : .regular)).foregroundStyle(colour.shown))
      let room = letters.measure(in: CGSize(width: CGFloat.infinity, height: .infinity))
      let side: Double =
        switch anchor {
        case .start: 0
        case .middle: Double(room.width) / 2
        case .end: room.width
        }
      context.draw(letters, at: CGPoint(x: at.x - side, y: at.y - letters.firstBaseline(in: room)), anchor: .topLeading)
    }
  }

  private func shape(_ path: PitfaceKit.Path, closed: Bool) -> SwiftUI.Path {
    SwiftUI.Path { shape in
      switch path {
      case .rectangle(let place): shape.addRect(CGRect(x: place.x, y: place.y, width: place.width, height: place.height))
      case .circle(let centre, let radius):
        shape.addEllipse(in: CGRect(x: centre.x - radius, y: centre.y - radius, width: radius * 2, height: radius * 2))
      case .points(let points):
        shape.addLines(points.map { CGPoint(x: $0.x, y: $0.y) })
        if closed { shape.closeSubpath() }
      }
    }
  }
}

/// A photo once it is read; until then, or where it is not on this device, its title.
struct PhotoView: View {
  let hash: String
  let title: String
  let side: Double
  let window: Window
  let look: Look
  var zoom = Zoom()
  @Environment(\.displayScale) private var grain
  @State private var read: Decoded?

  var body: some View {
    ZStack {
      if let read {
        Image(decorative: read.image, scale: 1).resizable().scaledToFill().scaleEffect(zoom.scale, anchor: .topLeading).offset(
          x: zoom.corner.x, y: zoom.corner.y)
      } else {
        look.colour(.quiet)
        Text(verbatim: title).font(.system(size: 14 * look.scale)).foregroundStyle(look.colour(.ink)).padding(8)
      }
    }
    .clipped().onChange(of: hash, initial: true) { window.shell.photo(hash, Int(side * grain)) { read = $0 as? Decoded } }
  }
}
