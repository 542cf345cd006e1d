import PitfaceCore

/// A rectangle; points, from the upper left corner of whatever it lies in.
public struct Place: Hashable, Sendable {
  public var x: Double
  public var y: Double
  public var width: Double
  public var height: Double

  public init(_ x: Double, _ y: Double, _ width: Double, _ height: Double) {
    (self.x, self.y, self.width, self.height) = (x, y, width, height)
  }

  public var right: Double { x + width }
  public var bottom: Double { y + height }
  public var centre: Point { Point(x: x + width / 2, y: y + height / 2) }

  public func holds(_ at: Point) -> Bool { x <= at.x && at.x < x + width && y <= at.y && at.y < y + height }

  func moved(_ by: Point) -> Place { Place(x + by.x, y + by.y, width, height) }

  /// At least as wide and as high as `least`, about the same middle.
  func widened(_ least: Double) -> Place {
    let (wide, high) = (max(0, least - width) / 2, max(0, least - height) / 2)
    return Place(x - wide, y - high, width + wide * 2, height + high * 2)
  }
}
