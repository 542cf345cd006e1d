import Foundation
import Observation
import PitfaceCore

/// The app without its window: the screen shown now, and a core that is spoken to on one lane, in order, but for its look at the files,
/// which takes its time aside, and photos.
@MainActor
@Observable
public final class Shell {
  /// The screen; `nil` until the store is open.
  public private(set) var shown: ShownScreen?

  /// What went wrong outside the core, to be said until the next screen.
  public private(set) var failure: Phrase?

  /// The menu of the screen is open.
  public var menu = false

  /// Nothing is being done by the core.
  public var idle: Bool { waiting == 0 }

  /// The window there is now, if any.
  @ObservationIgnored public weak var platform: (any Platform)?

  /// Files of other programs that are being read.
  @ObservationIgnored var reading = 0
  @ObservationIgnored let folders: Folders
  @ObservationIgnored let lanes: Lanes
  @ObservationIgnored private let held = Held()
  @ObservationIgnored private let decode: @Sendable (_ path: String, _ side: Int) -> (any Picture)?
  @ObservationIgnored private var waiting = 0
  @ObservationIgnored private var pendingTap = false
  @ObservationIgnored private var typed: (act: String, text: String)?
  @ObservationIgnored private var pendingPhoto: WantedPhoto?
  /// The latest few photos, so that coming back to a screen shows them at once.
  @ObservationIgnored private let read = NSCache<NSString, AnyObject>()

  /// Opens the notes with `open`, and shows the screen one was at.
  public init(
    _ folders: Folders, _ lanes: Lanes = Lanes(), decode: @escaping @Sendable (String, Int) -> (any Picture)? = { _, _ in nil },
    open: @escaping @Sendable (Folders) throws -> any SessionProtocol
  ) {
    (self.folders, self.lanes, self.decode) = (folders, lanes, decode)
    let held = held
    read.countLimit = 16
    run(lanes.work, { try held.open { try open(folders) }.screen() }) { screen in
      self.show(screen)
      self.check()
    }
  }

  /// What it finds is shown in order with the taps that came meanwhile.
  private func check() {
    let held = held
    run(lanes.aside, { try held.session().check() }) { found in
      if found != nil { self.ask { try $0.screen() } }
    }
  }

  /// How much larger than usual the reader wants letters: drawings heed it.
  public func letters(_ scale: Double) { ask { try $0.letters(scale: scale) } }

  /// The picture of a photo, not much larger than `side` pixels; `nil` where there is none.
  public func photo(_ hash: String, _ side: Int, shown: @escaping @MainActor ((any Picture)?) -> Void) {
    let key = "\(hash) \(side)" as NSString
    if let picture = read.object(forKey: key) as? any Picture { return shown(picture) }
    let (held, decode) = (held, decode)
    run(lanes.pictures, { try held.session().photoPath(photo: hash).flatMap { decode($0, side) } }) { picture in
      if let picture { self.read.setObject(picture, forKey: key) }
      shown(picture)
    }
  }

  /// One tap is answered before the next is taken: a second one meanwhile was meant for a screen that is gone.
  public func does(_ what: ShownDoes) {
    guard !pendingTap else { return }
    switch what {
    case .act(let act):
      guard let line = standing(act) else { return tapped { try $0.tap(act: act) } }
      if typed?.act == act { typed = nil }
      tapped { try $0.type(act: act, text: line) }  // a button with the act of a line enters what stands there
    case .shareField(let field):
      enter()
      let folder = folders.handed.path
      off({ try $0.exportField(field: field, folder: folder) }) { self.platform?.share($0) }
    case .sharePage(let field, let card):
      enter()
      let folder = folders.handed.path
      off({ try $0.exportPage(field: field, card: card, folder: folder) }) { self.platform?.share($0) }
    case .shareBundle(let to, let withPhotos):
      enter()
      pendingTap = true
      let folder = folders.handed.path
      off({ try $0.exportBundle(to: to, withPhotos: withPhotos, folder: folder) }, ended: { self.pendingTap = false }) { ready in
        self.show(ready.screen)
        if let path = ready.path { self.platform?.share(path) }
      }
    case .takePhoto(let field, let pit, let depthMm):
      let wanted = WantedPhoto(field: field, pit: pit, depthMm: depthMm)
      pendingPhoto = wanted
      platform?.takePhoto(wanted)
    case .openFile: platform?.chooseFile()
    case .allowPosition: platform?.allowPosition()
    }
  }

  /// A finger lifted at a place of a drawing, in its points.
  public func touched(_ what: ShownDoes, _ x: Double, _ y: Double) {
    guard case .act(let act) = what else { return does(what) }
    if !pendingTap { tapped { try $0.touch(act: act, x: x, y: y) } }
  }

  /// What stands in the line with this act, if there is such a line.
  private func standing(_ act: String) -> String? {
    for case .typing(_, let value, act, _) in shown?.blocks ?? [] { return typed?.act == act ? typed?.text : value }
    return nil
  }

  /// What was typed is entered before the tap is answered; where that leads elsewhere, the tap was for a screen that is gone.
  private func tapped(_ question: @escaping @Sendable (any SessionProtocol) throws -> ShownScreen) {
    pendingTap = true
    let (entering, before) = (taken(), shown?.kind)
    off(
      { core in
        guard let entering else { return try question(core) }
        let entered = try core.type(act: entering.act, text: entering.text)
        return entered.kind == before ? try question(core) : entered
      }, ended: { self.pendingTap = false }
    ) { self.show($0) }
  }

  /// What stands in a field now; it is entered later.
  public func typed(_ act: String, _ text: String) { typed = (act, text) }

  /// What was typed is entered.
  public func enter() {
    if let (act, text) = taken() { ask { try $0.type(act: act, text: text) } }
  }

  /// Where one came from. On the topmost screen nothing: the platform lets no app close itself.
  public func back() {
    guard !menu else { return menu = false }
    guard !pendingTap else { return }
    pendingTap = true
    let entering = taken()
    off(
      { core in
        if let entering { _ = try core.type(act: entering.act, text: entering.text) }
        return try core.back()
      }, ended: { self.pendingTap = false }
    ) { if let screen = $0 { self.show(screen) } }
  }

  public func fix(longitudeDeg: Double, latitudeDeg: Double, accuracyM: Double, satelliteTimeMs: Int64) {
    ask {
      try $0.fix(longitudeDeg: longitudeDeg, latitudeDeg: latitudeDeg, accuracyM: accuracyM, satelliteTimeMs: satelliteTimeMs)
    }
  }

  /// There are no positions; `said` is what the platform adds to that.
  public func positionRefused(_ said: Phrase? = nil) {
    off({ try $0.positionRefused() }) {
      self.show($0)
      if let said { self.failure = said }
    }
  }

  /// The camera gave a picture that lies at `path`, or nothing.
  public func photoReturned(_ path: String?) {
    guard let taken = pendingPhoto else { return }
    pendingPhoto = nil
    guard let path else { return }
    ask {
      defer { try? FileManager.default.removeItem(atPath: path) }
      return try $0.photoTaken(field: taken.field, pit: taken.pit, depthMm: taken.depthMm, path: path, mediaType: "image/jpeg")
    }
  }

  /// Takes in a file that is this app's own copy, and removes it.
  func importFile(_ path: String) {
    ask {
      defer { try? FileManager.default.removeItem(atPath: (path as NSString).deletingLastPathComponent) }
      return try $0.importFile(path: path)
    }
  }

  /// Minutes that the clock here is ahead of universal time.
  public func setOffset(minutes: Int) { off({ try $0.setOffset(minutes: Int32(minutes)) }) {} }

  /// Says what the platform could not do.
  public func say(_ phrase: Phrase) { failure = phrase }

  /// Lets go of the notes, once all that was asked is answered.
  public func close() {
    let held = held
    run(lanes.work, { held.close() }) {}
  }

  /// Work on files, in order with what the core is asked.
  func offTheScreen(_ job: @escaping @Sendable () -> Void) { run(lanes.work, job) {} }

  /// The core as it is, for whoever looks at it beside the screen.
  func direct<T: Sendable>(_ question: @escaping @Sendable (any SessionProtocol) throws -> T, answered: @escaping @MainActor (T) -> Void) {
    off(question, answered: answered)
  }

  private func taken() -> (act: String, text: String)? {
    defer { typed = nil }
    return typed
  }

  private func ask(_ question: @escaping @Sendable (any SessionProtocol) throws -> ShownScreen?) {
    off(question) { if let next = $0 { self.show(next) } }
  }

  private func show(_ next: ShownScreen) {
    if next.kind != shown?.kind { menu = false }
    shown = next
    failure = nil
    if next.saved { platform?.saved() }
  }

  private func off<T: Sendable>(
    _ question: @escaping @Sendable (any SessionProtocol) throws -> T, ended: @escaping @MainActor () -> Void = {},
    answered: @escaping @MainActor (T) -> Void
  ) {
    let held = held
    run(lanes.work, { try question(held.session()) }, ended: ended, answered: answered)
  }

  private func run<T: Sendable>(
    _ lane: any Lane, _ question: @escaping @Sendable () throws -> T, ended: @escaping @MainActor () -> Void = {},
    answered: @escaping @MainActor (T) -> Void
  ) {
    waiting += 1
    lane.run {
      let answer = Result { try question() }
      DispatchQueue.main.async {
        MainActor.assumeIsolated {
          ended()
          switch answer {
          case .success(let found): answered(found)
          case .failure(let error): self.failure = Phrase.of(error)
          }
          self.waiting -= 1
        }
      }
    }
  }
}

/// The core once it is open; why it is not, where it could not be opened.
private final class Held: @unchecked Sendable {
  private let lock = NSLock()
  private var opened: Result<any SessionProtocol, any Error>?

  func open(_ open: () throws -> any SessionProtocol) throws -> any SessionProtocol {
    let result = Result(catching: open)
    lock.withLock { opened = result }
    return try result.get()
  }

  func close() { lock.withLock { opened = nil } }

  func session() throws -> any SessionProtocol {
    guard let opened = lock.withLock({ opened }) else { throw PitfaceError.Conflict }
    return try opened.get()
  }
}
