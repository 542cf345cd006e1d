import PitfaceCore
import PitfaceKit
import SwiftUI

extension Colour {
  var shown: Color { Color(.sRGB, red: Double(red) / 255, green: Double(green) / 255, blue: Double(blue) / 255, opacity: 1) }
}

/// The app as it stands, laid out by the kit on whatever glass there is, with what the phone lays over it.
struct WholeView: View {
  @Bindable var window: Window
  @Environment(\.colorScheme) private var scheme
  @ScaledMetric(relativeTo: .body) private var letter = 17.0

  private var shown: ShownScreen? { window.shell.shown }

  private var around: Around {
    let language = shown?.language
    var around = Around { words($0, in: language) }
    (around.menu, around.unfolded, around.said) = (window.shell.menu, window.unfolded, window.shell.failure)
    return around
  }

  var body: some View {
    GeometryReader { room in
      let letters = Letters(FontMeasure(), scale: letter / 17)
      let glass = Glass(width: room.size.width, height: room.size.height)
      NodeView(node: letters.whole(shown, glass, around), window: window, look: Look(dark: scheme == .dark, scale: letters.scale))
    }
    .background(Tint.ground.colour(dark: scheme == .dark).shown, ignoresSafeAreaEdges: .all)
    .preferredColorScheme(preferred)
    .environment(\.locale, Locale(identifier: shown?.language ?? Locale.current.identifier))
    .sensoryFeedback(.success, trigger: window.buzzes)
    .onChange(of: letter, initial: true) { window.shell.letters(letter / 17) }
    .onChange(of: shown, initial: true) { before, next in
      window.heeds(next)
      if before?.kind != next?.kind { window.unfolded = false }
      if let told = next?.told, !told.isEmpty, told != before?.told { AccessibilityNotification.Announcement(told).post() }
    }
    .accessibilityAction(.escape) { window.shell.back() }
    .gesture(backSwipe)
    .fileImporter(isPresented: $window.choosing, allowedContentTypes: [.item]) { if let file = try? $0.get() { window.takeIn(file) } }
    .fullScreenCover(item: camera) { _ in CameraView(taken: window.photoTaken).ignoresSafeArea() }
    .sheet(item: share) { if case .share(let file) = $0 { ShareView(file: file) } }
  }

  private var preferred: ColorScheme? {
    switch shown?.light {
    case .day: .light
    case .dark: .dark
    case .phone, nil: nil
    }
  }

  /// From the edge inwards, as everywhere on this phone.
  private var backSwipe: some Gesture {
    DragGesture(minimumDistance: 40).onEnded { if $0.startLocation.x < 24 && $0.translation.width > 60 { window.shell.back() } }
  }

  private var camera: Binding<Window.Sheet?> {
    Binding(get: { if case .camera = window.sheet { window.sheet } else { nil } }, set: { if $0 == nil { window.photoTaken(nil) } })
  }

  private var share: Binding<Window.Sheet?> {
    Binding(get: { if case .share = window.sheet { window.sheet } else { nil } }, set: { window.sheet = $0 })
  }
}
