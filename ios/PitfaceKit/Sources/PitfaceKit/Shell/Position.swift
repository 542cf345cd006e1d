/// What the phone says about reading the position.
public enum Permission: Sendable {
  /// Nobody was asked yet.
  case unasked
  case allowed
  /// Only the phone's settings can allow it.
  case refused
}

/// The receiver of positions, as the platform has it.
@MainActor
public protocol Receiver: AnyObject {
  var permission: Permission { get }
  /// Asks the person; tells by `PositionGate.changed`.
  func ask()
  func start()
  func stop()
}

/// The receiver is on while a screen wants positions and is in sight, and off otherwise.
@MainActor
public final class PositionGate {
  private let shell: Shell
  private let receiver: any Receiver
  private var asking = false
  private var running = false

  public var wanted = false { didSet { if wanted != oldValue { turn() } } }
  public var inSight = false { didSet { if inSight != oldValue { turn() } } }

  public init(_ shell: Shell, _ receiver: any Receiver) { (self.shell, self.receiver) = (shell, receiver) }

  /// Asks for the permission; where it was refused before, says so: there the phone asks nobody a second time.
  public func allow() {
    switch receiver.permission {
    case .unasked:
      asking = true
      receiver.ask()
    case .allowed: turn()
    case .refused: shell.positionRefused(.positionRefused)
    }
  }

  /// The permission is another now, by an answer or in the settings.
  public func changed() {
    let answered = asking && receiver.permission != .unasked
    if answered { asking = false }
    if answered && receiver.permission == .refused { shell.positionRefused() } else { turn() }
  }

  private func turn() {
    let seen = wanted && inSight
    // The screen then says why it is of use, and has a button to allow it.
    if seen && receiver.permission != .allowed { shell.positionRefused() }
    let on = seen && receiver.permission == .allowed
    guard on != running else { return }
    running = on
    if on { receiver.start() } else { receiver.stop() }
  }
}
