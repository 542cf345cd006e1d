import PitfaceKit
import SwiftUI

@main
struct PitfaceApp: App {
  @State private var window = Window()
  @Environment(\.scenePhase) private var phase

  var body: some Scene {
    WindowGroup { WholeView(window: window).onOpenURL { window.takeIn($0) } }
      .onChange(of: phase, initial: true) { window.inSight(phase != .background) }
  }
}
