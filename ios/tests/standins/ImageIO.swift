// Stand-in for ImageIO and the one name of CoreGraphics in use, from their public documentation. Left out: everything but reading a small picture.
@_exported import Foundation
@_exported import Security

public typealias CFURL = NSURL
public final class CGImage: @unchecked Sendable {}
public final class CGImageSource {}

public let kCGImageSourceCreateThumbnailFromImageAlways = "always"
public let kCGImageSourceCreateThumbnailWithTransform = "transform"
public let kCGImageSourceThumbnailMaxPixelSize = "size"

public func CGImageSourceCreateWithURL(_ url: CFURL, _ options: CFDictionary?) -> CGImageSource? { nil }
public func CGImageSourceCreateThumbnailAtIndex(_ source: CGImageSource, _ index: Int, _ options: CFDictionary?) -> CGImage? { nil }
