import Foundation

/// Bytes of another program's file, piece by piece; waits for that program.
public protocol Source: AnyObject, Sendable {
  /// The next piece; `nil` at the end.
  func next() throws -> Data?
  /// Lets go of the file; may be called while `next` waits.
  func close()
}

/// How much, and how long, a file of another program may take.
public struct Limits: Sendable {
  /// A season's photos come near this; what is larger was chosen by mistake, and is not to fill the phone.
  public var largestBytes = 4 << 30
  /// A program that sends a file gives something of it within this. Seconds.
  public var stalled: TimeInterval = 30
  /// A file that is not here by then was chosen by mistake, or its program does not mean well. Seconds.
  public var longest: TimeInterval = 600

  public init() {}
}

extension Shell {
  /// Copies a file of another program and gives it to the core under the `name` it came with. It is read on a thread of its own: another
  /// program may let one wait for ever. One that gives nothing for a while, or is not at its end in time, is let go and said to be unreadable.
  public func takeIn(_ name: String, _ limits: Limits = Limits(), from open: @escaping @Sendable () throws -> any Source) {
    Foreign(self, name, limits).start(open)
  }
}

@MainActor
private final class Foreign {
  private let shell: Shell
  private let limits: Limits
  private let folder: URL
  private let copied: Copied
  private let name: String
  private let began = Date()
  private var over = false
  private var before = -1

  init(_ shell: Shell, _ name: String, _ limits: Limits) {
    (self.shell, self.limits) = (shell, limits)
    folder = shell.folders.handed.appending(path: "taken_in-\(UUID().uuidString)")
    // The core knows a file again by this name; a path in it would lead elsewhere.
    let last = (name as NSString).lastPathComponent
    self.name = last.isEmpty || last == ".." || last == "/" ? "file" : last
    copied = Copied(largest: limits.largestBytes)
  }

  func start(_ open: @escaping @Sendable () throws -> any Source) {
    shell.reading += 1
    let (whole, copied, folder) = (folder.appending(path: name), copied, folder)
    Thread.detachNewThread {
      let read = Result {
        try FileManager.default.createDirectory(at: folder, withIntermediateDirectories: true)
        try copied.copy(try open(), to: whole)
      }
      DispatchQueue.main.async { MainActor.assumeIsolated { self.end((try? read.get()) != nil ? whole : nil) } }
    }
    watch()
  }

  private func watch() {
    DispatchQueue.main.asyncAfter(deadline: .now() + limits.stalled) {
      MainActor.assumeIsolated {
        guard !self.over else { return }
        let bytes = self.copied.bytes
        let late = bytes == self.before || Date().timeIntervalSince(self.began) > self.limits.longest
        self.before = bytes
        if late { self.end(nil) } else { self.watch() }
      }
    }
  }

  /// What came is given to the core once; whatever arrives after that is of nobody's concern.
  private func end(_ whole: URL?) {
    guard !over else { return }
    over = true
    shell.reading -= 1
    guard let whole else {
      copied.stop()
      let folder = folder
      shell.offTheScreen { try? FileManager.default.removeItem(at: folder) }
      return shell.say(.cannotReadFile)
    }
    shell.importFile(whole.path)
  }
}

/// How far a copy has come; told to one thread by another.
private final class Copied: @unchecked Sendable {
  private struct TooMuch: Error {}
  private let lock = NSLock()
  private let largest: Int
  private var count = 0
  private var source: (any Source)?
  private var stopped = false

  init(largest: Int) { self.largest = largest }

  var bytes: Int { lock.withLock { count } }

  func stop() {
    let open = lock.withLock { () -> (any Source)? in
      stopped = true
      return source
    }
    // Closing may wait for the other program too.
    if let open { Thread.detachNewThread { open.close() } }
  }

  func copy(_ from: any Source, to whole: URL) throws {
    lock.withLock { source = from }
    defer { from.close() }
    guard FileManager.default.createFile(atPath: whole.path, contents: nil) else { throw CocoaError(.fileWriteUnknown) }
    let out = try FileHandle(forWritingTo: whole)
    defer { try? out.close() }
    while let piece = try from.next() {
      let goesOn = lock.withLock { () -> Bool in
        count += piece.count
        return !stopped && count <= largest
      }
      guard goesOn else { throw TooMuch() }
      try out.write(contentsOf: piece)
    }
  }
}
