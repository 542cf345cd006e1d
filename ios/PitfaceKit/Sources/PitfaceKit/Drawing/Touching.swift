import PitfaceCore

/// How a picture is looked at: how many times larger than whole, and from where on.
public struct Zoom: Equatable, Sendable {
  public private(set) var scale = 1.0
  /// Where the picture's corner is, in points of its place.
  public private(set) var corner = Point(x: 0, y: 0)

  public init() {}

  private static let largest = 6.0

  /// Larger or smaller about a point of a place of this size, which stays where it is.
  public mutating func by(_ times: Double, about: Point, in size: Place) {
    let next = min(max(scale * times, 1), Self.largest)
    let from = Point(x: (about.x - corner.x) / scale, y: (about.y - corner.y) / scale)
    scale = next
    hold(Point(x: about.x - from.x * next, y: about.y - from.y * next), in: size)
  }

  public mutating func moved(_ by: Point, in size: Place) { hold(Point(x: corner.x + by.x, y: corner.y + by.y), in: size) }

  /// The picture is never drawn away from the edge of its place.
  private mutating func hold(_ wanted: Point, in size: Place) {
    corner = Point(
      x: min(max(wanted.x, size.width * (1 - scale)), 0), y: min(max(wanted.y, size.height * (1 - scale)), 0))
  }

  /// A point of the place, in points of the drawing; `factor` is how many points of the screen one of them is, whole.
  public func onDrawing(_ at: Point, _ factor: Double) -> Point {
    Point(x: (at.x - corner.x) / (factor * scale), y: (at.y - corner.y) / (factor * scale))
  }

  public func onScreen(_ place: Place, _ factor: Double) -> Place {
    let times = factor * scale
    return Place(corner.x + place.x * times, corner.y + place.y * times, place.width * times, place.height * times)
  }
}

extension ShownTouch {
  public var place: Place { Place(left, top, width, height) }
}

extension ShownPicture {
  /// The uppermost place at a point of the drawing; else the nearest whose place, widened to what a `thumb` needs, holds it.
  public func met(_ at: Point, thumb: Double) -> ShownTouch? {
    if let hit = touches.last(where: { $0.place.holds(at) }) { return hit }
    func far(_ touch: ShownTouch) -> Double {
      let (x, y) = (touch.place.centre.x - at.x, touch.place.centre.y - at.y)
      return x * x + y * y
    }
    return touches.filter { $0.place.widened(thumb).holds(at) }.min { far($0) < far($1) }
  }

  /// What a finger does that is lifted at a point, where it was set down on `held` and went `far` or not.
  public func does(held: ShownTouch?, far: Bool) -> ShownDoes? {
    if far { return held?.drags == true ? held?.does : nil }
    return held?.does ?? anywhere.map { .act(act: $0) }
  }
}
