import Foundation
import Observation
import PitfaceCore
import PitfaceKit
import UIKit

/// The window: the shell, and what only the phone can do for it.
@MainActor
@Observable
final class Window: Platform {
  /// A sheet over the screen.
  enum Sheet: Identifiable {
    case camera
    case share(URL)

    var id: String { if case .share(let file) = self { file.path } else { "camera" } }
  }

  var sheet: Sheet?
  var choosing = false
  var unfolded = false
  /// How often something was saved: each is felt.
  private(set) var buzzes = 0
  let shell: Shell
  @ObservationIgnored private let folders: Folders
  @ObservationIgnored private let gate: PositionGate

  init() {
    let of = { (place: FileManager.SearchPathDirectory) in FileManager.default.urls(for: place, in: .userDomainMask)[0] }
    do { folders = try Folders(support: of(.applicationSupportDirectory), caches: of(.cachesDirectory)) } catch {
      fatalError("the phone gives this app no folder: \(error)")
    }
    let language = Locale.preferredLanguages.first
    let offset = Self.offsetMinutes()
    shell = Shell(folders, decode: Decoded.read) { folders in
      try openKeyed(folders, Keychain()) {
        try Session.open(folder: $0.notes.path, keyFolder: $0.key.path, languageTag: language, offsetMinutes: offset)
      }
    }
    let receiver = LocationReceiver(shell)
    gate = PositionGate(shell, receiver)
    receiver.changed = { [weak gate] in gate?.changed() }
    folders.tidy(camera: true)
    shell.platform = self
  }

  /// Minutes that the clock of this phone is ahead of universal time now.
  private static func offsetMinutes() -> Int32 { Int32(TimeZone.current.secondsFromGMT() / 60) }

  func inSight(_ seen: Bool) {
    gate.inSight = seen
    guard seen else { return shell.enter() }
    folders.tidy(camera: false)
    shell.setOffset(minutes: Int(Self.offsetMinutes()))
  }

  /// What the screen wants of the phone.
  func heeds(_ shown: ShownScreen?) {
    UIApplication.shared.isIdleTimerDisabled = shown?.awake == true
    gate.wanted = shown?.wantsPosition == true
  }

  func takeIn(_ file: URL) { shell.takeIn(file.lastPathComponent) { try FileSource(file) } }

  func does(_ deed: Deed) {
    switch deed {
    case .core(let what): shell.does(what)
    case .entry(let what):
      shell.menu = false
      shell.does(what)
    case .menu: shell.menu.toggle()
    case .unfold: unfolded.toggle()
    case .settings: openSettings()
    }
  }

  func photoTaken(_ image: UIImage?) {
    sheet = nil
    guard let data = image?.jpegData(compressionQuality: 0.9) else { return shell.photoReturned(nil) }
    let file = folders.taken.appending(path: "\(UUID().uuidString).jpg")
    do {
      try data.write(to: file, options: .atomic)
      shell.photoReturned(file.path)
    } catch {
      shell.photoReturned(nil)
      shell.say(.diskFull)
    }
  }

  func takePhoto(_ wanted: WantedPhoto) {
    if CameraView.isThere {
      sheet = .camera
    } else {
      shell.photoReturned(nil)
      shell.say(.noCamera)
    }
  }

  func share(_ path: String) { sheet = .share(URL(fileURLWithPath: path)) }
  func chooseFile() { choosing = true }
  func allowPosition() { gate.allow() }
  func saved() { buzzes += 1 }

  func openSettings() {
    guard let settings = URL(string: UIApplication.openSettingsURLString) else { return shell.say(.noProgram) }
    UIApplication.shared.open(settings)
  }
}

/// What the shell says itself, in the language of the core rather than of the phone.
func words(_ phrase: Phrase, in language: String?) -> String {
  let own = Bundle.main.path(forResource: language, ofType: "lproj").flatMap(Bundle.init(path:)) ?? .main
  return own.localizedString(forKey: phrase.rawValue, value: nil, table: nil)
}
