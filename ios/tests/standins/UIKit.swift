// Stand-in for UIKit, from its public documentation. Left out: everything but the classes and members that the app names; bridging of Foundation's
// types, and what Darwin's Foundation has beyond Linux's (security-scoped files, file coordination), is declared here too.
@_exported import Foundation
@_exported import ImageIO

@MainActor open class UIResponder: NSObject {}
@MainActor open class UIViewController: UIResponder {}

@MainActor public final class UIApplication: UIResponder {
  public static let shared = UIApplication()
  public static let openSettingsURLString = "app-settings:"
  public var isIdleTimerDisabled = false
  public func open(_ url: URL) {}
}

public final class UIImage: NSObject, @unchecked Sendable {
  public func jpegData(compressionQuality: CGFloat) -> Data? { nil }
}

public final class UIFont: NSObject, @unchecked Sendable {
  public struct Weight: Hashable, Sendable {
    public static let regular = Weight()
    public static let medium = Weight()
    public static let bold = Weight()
  }
  public class func systemFont(ofSize size: CGFloat, weight: Weight) -> UIFont { UIFont() }
}

extension NSAttributedString.Key { public static let font = NSAttributedString.Key("font") }
extension NSString { public func size(withAttributes attributes: [NSAttributedString.Key: Any]? = nil) -> CGSize { .zero } }

@MainActor public protocol UINavigationControllerDelegate: NSObjectProtocol {}
@MainActor public protocol UIImagePickerControllerDelegate: NSObjectProtocol {
  func imagePickerController(_ picker: UIImagePickerController, didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any])
  func imagePickerControllerDidCancel(_ picker: UIImagePickerController)
}

open class UIImagePickerController: UIViewController {
  public enum SourceType: Int, Sendable { case photoLibrary, camera }
  public struct InfoKey: Hashable, Sendable { public static let originalImage = InfoKey() }
  public class func isSourceTypeAvailable(_ type: SourceType) -> Bool { false }
  public var sourceType = SourceType.camera
  public weak var delegate: (any UIImagePickerControllerDelegate & UINavigationControllerDelegate)?
}

open class UIActivityViewController: UIViewController {
  public init(activityItems: [Any], applicationActivities: [Any]?) {}
}

extension URL {
  public func startAccessingSecurityScopedResource() -> Bool { false }
  public func stopAccessingSecurityScopedResource() {}
}

public final class NSFileCoordinator: NSObject {
  public func coordinate(readingItemAt url: URL, error: UnsafeMutablePointer<NSError?>?, byAccessor reader: (URL) -> Void) { reader(url) }
}
