import Foundation
import ImageIO
import PitfaceKit
import UIKit

/// A photo, upright, and read no larger than needed.
final class Decoded: Picture {
  let image: CGImage

  private init(_ image: CGImage) { self.image = image }

  /// `nil` where it is no picture. A photo is seldom longer than twice its short side.
  @Sendable static func read(_ path: String, _ side: Int) -> (any Picture)? {
    let options: [CFString: Any] = [
      kCGImageSourceCreateThumbnailFromImageAlways: true, kCGImageSourceCreateThumbnailWithTransform: true, kCGImageSourceThumbnailMaxPixelSize: side * 2,
    ]
    guard let source = CGImageSourceCreateWithURL(URL(fileURLWithPath: path) as CFURL, nil) else { return nil }
    return CGImageSourceCreateThumbnailAtIndex(source, 0, options as CFDictionary).map(Decoded.init)
  }
}

/// How wide the phone's own face sets letters.
struct FontMeasure: Measure {
  func width(_ text: String, _ style: Style) -> Double {
    let font = UIFont.systemFont(ofSize: style.size, weight: style.weight.ofUIKit)
    return (text as NSString).size(withAttributes: [.font: font]).width
  }
}

extension Style.Weight {
  fileprivate var ofUIKit: UIFont.Weight {
    switch self {
    case .plain: .regular
    case .medium: .medium
    case .bold: .bold
    }
  }
}
