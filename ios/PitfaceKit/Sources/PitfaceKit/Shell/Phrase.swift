import PitfaceCore

/// The few things only a shell can say: what went wrong outside the core, and the names of its own signs. Each is named as in
/// `Localizable.strings`, and as on Android, which a test holds for every language.
public enum Phrase: String, CaseIterable, Sendable {
  case opening
  case notThere = "not_there"
  case openElsewhere = "open_elsewhere"
  case diskFull = "disk_full"
  case newerVersion = "newer_version"
  case storageFault = "storage_fault"
  case fault
  case noCamera = "no_camera"
  case noProgram = "no_program"
  case cannotReadFile = "cannot_read_file"
  case noReceiver = "no_receiver"
  case positionRefused = "position_refused"
  case settings
  case menu
  case larger
  case smaller

  /// It can be put right in the phone's settings of the app.
  public var leadsToSettings: Bool { self == .positionRefused }

  /// What to say about a call that failed.
  static func of(_ error: any Error) -> Phrase {
    switch error as? PitfaceError {
    case .NotFound: .notThere
    case .Conflict: .openElsewhere
    case .DiskFull: .diskFull
    case .NewerVersion: .newerVersion
    case .Storage: .storageFault
    case .Invalid, .Internal, nil: .fault
    }
  }
}
