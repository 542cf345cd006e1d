import Foundation
import PitfaceCore

/// What a photo is to be taken of; given back as it came.
public struct WantedPhoto: Equatable, Sendable {
  public let field: String
  public let pit: String
  /// Depth on the face its middle shows, millimetres.
  public let depthMm: UInt32?
}

/// What only the platform can do.
@MainActor
public protocol Platform: AnyObject {
  /// Opens the camera; tells by `Shell.photoReturned`.
  func takePhoto(_ wanted: WantedPhoto)
  /// Hands a file to another program or person.
  func share(_ path: String)
  /// Lets a file be chosen; tells by `Shell.takeIn`.
  func chooseFile()
  /// Asks for the permission to read the position.
  func allowPosition()
  /// The phone's own settings of this app.
  func openSettings()
  /// A short buzz: what was tapped is on the disk.
  func saved()
}

/// The picture of a photo, as the platform holds it.
public protocol Picture: AnyObject, Sendable {}

/// Where jobs are done one after the other.
public protocol Lane: Sendable {
  func run(_ job: @escaping @Sendable () -> Void)
}

extension DispatchQueue: Lane {
  public func run(_ job: @escaping @Sendable () -> Void) { async(execute: job) }
}

/// The lanes of an app: the core in order, the long look at its files, photos, and files of other programs.
public struct Lanes: Sendable {
  public var work: any Lane = DispatchQueue(label: "core", qos: .userInitiated)
  public var aside: any Lane = DispatchQueue(label: "check", qos: .utility)
  public var pictures: any Lane = DispatchQueue(label: "pictures", qos: .utility)

  public init() {}
}
