import SwiftUI
import UIKit

/// The phone's camera, for one picture.
struct CameraView: UIViewControllerRepresentable {
  let taken: (UIImage?) -> Void

  @MainActor static var isThere: Bool { UIImagePickerController.isSourceTypeAvailable(.camera) }

  func makeUIViewController(context: Context) -> UIImagePickerController {
    let camera = UIImagePickerController()
    camera.sourceType = .camera
    camera.delegate = context.coordinator
    return camera
  }

  func updateUIViewController(_ camera: UIImagePickerController, context: Context) {}

  func makeCoordinator() -> Coordinator { Coordinator(taken) }

  @MainActor
  final class Coordinator: NSObject, UIImagePickerControllerDelegate, UINavigationControllerDelegate {
    private let taken: (UIImage?) -> Void

    init(_ taken: @escaping (UIImage?) -> Void) { self.taken = taken }

    func imagePickerController(_ picker: UIImagePickerController, didFinishPickingMediaWithInfo info: [UIImagePickerController.InfoKey: Any]) {
      taken(info[.originalImage] as? UIImage)
    }

    func imagePickerControllerDidCancel(_ picker: UIImagePickerController) { taken(nil) }
  }
}

/// Programs and people to hand a file to.
struct ShareView: UIViewControllerRepresentable {
  let file: URL

  func makeUIViewController(context: Context) -> UIActivityViewController { UIActivityViewController(activityItems: [file], applicationActivities: nil) }

  func updateUIViewController(_ sheet: UIActivityViewController, context: Context) {}
}
