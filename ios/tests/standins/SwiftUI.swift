// Stand-in for SwiftUI, from its public documentation (iOS 17). It has the names and forms that the app uses and no more: views are not laid out or drawn.
// Left out: the many overloads, availability, opaque layouts; where the real form is generic over shapes or styles, only what is passed is taken.
@_exported import Foundation
import Observation
@_exported import UIKit

@MainActor @preconcurrency public protocol View {
  associatedtype Body: View
  @ViewBuilder var body: Body { get }
}
extension Never: View { public var body: Never { return fatalError() } }
public protocol Primitive: View where Body == Never {}
extension Primitive { public var body: Never { return fatalError() } }

@resultBuilder public struct ViewBuilder {
  public static func buildBlock() -> EmptyView { EmptyView() }
  public static func buildBlock<each V: View>(_ views: repeat each V) -> TupleView<(repeat each V)> { TupleView() }
  public static func buildExpression<V: View>(_ view: V) -> V { view }
  public static func buildIf<V: View>(_ view: V?) -> V? { view }
  public static func buildEither<One: View, Other: View>(first: One) -> Either<One, Other> { Either() }
  public static func buildEither<One: View, Other: View>(second: Other) -> Either<One, Other> { Either() }
}
public struct TupleView<T>: Primitive { nonisolated public init() {} }
public struct Either<One: View, Other: View>: Primitive { nonisolated public init() {} }
extension Optional: View where Wrapped: View { public var body: Never { return fatalError() } }
public struct EmptyView: Primitive { nonisolated public init() {} }
public struct Modified: Primitive {}

@MainActor @preconcurrency public protocol App {
  associatedtype Body: Scene
  @SceneBuilder var body: Body { get }
  init()
}
extension App { public static func main() {} }
@MainActor @preconcurrency public protocol Scene {}
@resultBuilder public struct SceneBuilder { public static func buildBlock<S: Scene>(_ scene: S) -> S { scene } }
public struct WindowGroup<Content: View>: Scene { public init(@ViewBuilder content: () -> Content) {} }
extension Scene {
  public func onChange<V: Equatable>(of value: V, initial: Bool = false, _ action: @escaping (V, V) -> Void) -> some Scene { self }
  public func onChange<V: Equatable>(of value: V, initial: Bool = false, _ action: @escaping () -> Void) -> some Scene { self }
}
public enum ScenePhase: Equatable, Sendable { case background, inactive, active }

@MainActor @propertyWrapper public struct State<Value> {
  public init(wrappedValue: Value) { self.wrappedValue = wrappedValue }
  public var wrappedValue: Value {
    nonmutating set {}
    get { fatalError() }
  }
  public var projectedValue: Binding<Value> { fatalError() }
}
extension State where Value: ExpressibleByNilLiteral { public init() { self.init(wrappedValue: nil) } }
@MainActor @propertyWrapper @dynamicMemberLookup public struct Bindable<Value: AnyObject> {
  public init(wrappedValue: Value) { self.wrappedValue = wrappedValue }
  public var wrappedValue: Value
  public var projectedValue: Bindable<Value> { self }
  public subscript<T>(dynamicMember path: ReferenceWritableKeyPath<Value, T>) -> Binding<T> { fatalError() }
}
@MainActor @propertyWrapper public struct Binding<Value> {
  public init(get: @escaping @MainActor () -> Value, set: @escaping @MainActor (Value) -> Void) {}
  public var wrappedValue: Value {
    nonmutating set {}
    get { fatalError() }
  }
  public var projectedValue: Binding<Value> { self }
}
@MainActor @propertyWrapper public struct Environment<Value> {
  public init(_ path: KeyPath<EnvironmentValues, Value>) {}
  public var wrappedValue: Value { fatalError() }
}
@MainActor @propertyWrapper public struct ScaledMetric<Value: BinaryFloatingPoint> {
  public init(wrappedValue: Value, relativeTo style: Font.TextStyle) { self.wrappedValue = wrappedValue }
  public let wrappedValue: Value
}
public struct EnvironmentValues {
  public var scenePhase: ScenePhase { fatalError() }
  public var colorScheme: ColorScheme { fatalError() }
  public var displayScale: CGFloat { fatalError() }
  public var locale: Locale {
    get { fatalError() }
    set {}
  }
}
public enum ColorScheme: Sendable { case light, dark }

public protocol ShapeStyle: Sendable {}
public struct Color: ShapeStyle, Primitive, Hashable {
  public enum RGBColorSpace: Sendable { case sRGB }
  nonisolated public init(_ space: RGBColorSpace, red: Double, green: Double, blue: Double, opacity: Double) {}
}
public struct Font: Hashable, Sendable {
  public enum TextStyle: Sendable { case body }
  public struct Weight: Hashable, Sendable {
    public static let regular = Weight()
    public static let medium = Weight()
    public static let bold = Weight()
  }
  public static func system(size: CGFloat, weight: Weight = .regular) -> Font { Font() }
}
public struct Alignment: Sendable {
  public static let center = Alignment()
  public static let top = Alignment()
  public static let bottom = Alignment()
  public static let topLeading = Alignment()
  public static let bottomTrailing = Alignment()
}
public struct HorizontalAlignment: Sendable {
  public static let center = HorizontalAlignment()
  public static let leading = HorizontalAlignment()
}
public struct UnitPoint: Sendable { public static let topLeading = UnitPoint() }
public enum Axis { case horizontal, vertical }
public struct Edge {
  public struct Set: OptionSet, Sendable {
    public let rawValue: Int8
    public init(rawValue: Int8) { self.rawValue = rawValue }
    public static let all = Set(rawValue: 15)
  }
}

public struct Path: Sendable {
  public init(_ callback: (inout Path) -> Void) {}
  public mutating func move(to end: CGPoint) {}
  public mutating func addLine(to end: CGPoint) {}
  public mutating func addLines(_ lines: [CGPoint]) {}
  public mutating func addRect(_ rect: CGRect) {}
  public mutating func addEllipse(in rect: CGRect) {}
  public mutating func closeSubpath() {}
}
public struct StrokeStyle: Sendable { public init(lineWidth: CGFloat = 1, lineCap: CGLineCap = .butt, lineJoin: CGLineJoin = .miter) {} }
public enum CGLineCap: Sendable { case butt, round }
public enum CGLineJoin: Sendable { case miter, round }
public struct GraphicsContext {
  public struct Shading: Sendable { public static func color(_ color: Color) -> Shading { Shading() } }
  public struct ResolvedText {
    public func measure(in size: CGSize) -> CGSize { size }
    public func firstBaseline(in size: CGSize) -> CGFloat { 0 }
  }
  public mutating func translateBy(x: CGFloat, y: CGFloat) {}
  public mutating func scaleBy(x: CGFloat, y: CGFloat) {}
  public func fill(_ path: Path, with shading: Shading) {}
  public func stroke(_ path: Path, with shading: Shading, style: StrokeStyle) {}
  public func resolve(_ text: Text) -> ResolvedText { ResolvedText() }
  public func draw(_ text: ResolvedText, at point: CGPoint, anchor: UnitPoint) {}
}
public struct Canvas: Primitive { public init(renderer: @escaping (inout GraphicsContext, CGSize) -> Void) {} }

public struct Text: Primitive {
  nonisolated public init(verbatim: String) {}
  nonisolated public func font(_ font: Font?) -> Text { self }
  nonisolated public func foregroundStyle(_ style: Color) -> Text { self }
}
public struct Image: Primitive {
  public init(systemName: String) {}
  public init(decorative: CGImage, scale: CGFloat) {}
  public func resizable() -> Image { self }
}
public struct Button<Label: View>: Primitive {
  public init(action: @escaping @MainActor () -> Void, @ViewBuilder label: () -> Label) {}
}
extension Button where Label == Text { public init(_ title: String, action: @escaping @MainActor () -> Void) {} }
public struct TextField: Primitive { public init(_ title: String, text: Binding<String>, axis: Axis) {} }
public struct ZStack<Content: View>: Primitive { public init(alignment: Alignment = .center, @ViewBuilder content: () -> Content) {} }
public struct VStack<Content: View>: Primitive {
  public init(alignment: HorizontalAlignment = .center, spacing: CGFloat? = nil, @ViewBuilder content: () -> Content) {}
}
public struct HStack<Content: View>: Primitive { public init(spacing: CGFloat? = nil, @ViewBuilder content: () -> Content) {} }
public struct ScrollView<Content: View>: Primitive { public init(@ViewBuilder content: () -> Content) {} }
public struct ForEach<Data: RandomAccessCollection, ID: Hashable, Content: View>: Primitive {
  public init(_ data: Data, id: KeyPath<Data.Element, ID>, @ViewBuilder content: @escaping (Data.Element) -> Content) {}
}
public struct GeometryReader<Content: View>: Primitive { public init(@ViewBuilder content: @escaping (GeometryProxy) -> Content) {} }
public struct GeometryProxy: Sendable {
  public var size: CGSize { .zero }
  public func frame(in space: ScrollSpace) -> CGRect { .zero }
}
public struct ScrollSpace: Sendable { public static let scrollView = ScrollSpace() }
public struct RoundedRectangle: Primitive {
  public init(cornerRadius: CGFloat) {}
  public func fill(_ style: Color) -> some View { self }
  public func strokeBorder(_ style: Color, lineWidth: CGFloat) -> some View { self }
}
public struct Rectangle: Primitive { nonisolated public init() {} }

@MainActor @preconcurrency public protocol ViewModifier {
  typealias Content = Modified
  associatedtype Body: View
  @ViewBuilder func body(content: Content) -> Body
}
public protocol VisualEffect: Sendable {}
public struct SomeEffect: VisualEffect {}
extension VisualEffect { public func offset(x: CGFloat = 0, y: CGFloat = 0) -> some VisualEffect { self } }

@MainActor @preconcurrency public protocol Gesture<Value> { associatedtype Value }
public struct Ended<Value>: Gesture {}
extension Gesture {
  public func onChanged(_ action: @escaping (Value) -> Void) -> Ended<Value> { Ended() }
  public func onEnded(_ action: @escaping (Value) -> Void) -> Ended<Value> { Ended() }
}
public struct DragGesture: Gesture {
  public struct Value: Sendable {
    public let startLocation = CGPoint.zero
    public let location = CGPoint.zero
    public let translation = CGSize.zero
  }
  public init(minimumDistance: CGFloat = 10) {}
}
public struct SpatialTapGesture: Gesture {
  public struct Value: Sendable { public let location = CGPoint.zero }
  public init() {}
}
public struct MagnifyGesture: Gesture {
  public struct Value: Sendable {
    public let startLocation = CGPoint.zero
    public let magnification: CGFloat = 1
  }
  public init() {}
}
public struct GestureMask: OptionSet, Sendable {
  public let rawValue: UInt32
  public init(rawValue: UInt32) { self.rawValue = rawValue }
  public static let subviews = GestureMask(rawValue: 2)
  public static let all = GestureMask(rawValue: 3)
}

public struct AccessibilityTraits: SetAlgebra, OptionSet, Sendable {
  public let rawValue: Int
  public init(rawValue: Int) { self.rawValue = rawValue }
  public static let isButton = AccessibilityTraits(rawValue: 1)
  public static let isHeader = AccessibilityTraits(rawValue: 2)
  public static let isImage = AccessibilityTraits(rawValue: 4)
  public static let isSelected = AccessibilityTraits(rawValue: 8)
  public static let updatesFrequently = AccessibilityTraits(rawValue: 16)
}
public enum AccessibilityChildBehavior { case ignore, contain }
public enum AccessibilityActionKind { case escape }
public enum AccessibilityNotification {
  public struct Announcement {
    public init(_ text: String) {}
    public func post() {}
  }
}
public struct SensoryFeedback: Sendable { public static let success = SensoryFeedback() }
public enum ScrollBounceBehavior { case basedOnSize }
public struct PlainButtonStyle { public init() {} }
extension PlainButtonStyle { public static var plain: PlainButtonStyle { PlainButtonStyle() } }
public struct TextInputAutocapitalization: Sendable { public static var sentences: TextInputAutocapitalization { TextInputAutocapitalization() } }
public struct SubmitLabel: Sendable {
  public static let done = SubmitLabel()
  public static let `return` = SubmitLabel()
}
public enum TruncationMode { case tail }
public struct UTType: Sendable { public static let item = UTType() }

extension View {
  public func frame(width: CGFloat? = nil, height: CGFloat? = nil, alignment: Alignment = .center) -> some View { self }
  public func frame(maxWidth: CGFloat? = nil, maxHeight: CGFloat? = nil) -> some View { self }
  public func offset(x: CGFloat = 0, y: CGFloat = 0) -> some View { self }
  public func background<B: View>(_ view: B) -> some View { self }
  public func background(_ color: Color, ignoresSafeAreaEdges edges: Edge.Set) -> some View { self }
  public func background(_ color: Color, in shape: RoundedRectangle) -> some View { self }
  public func overlay<B: View>(alignment: Alignment, @ViewBuilder content: () -> B) -> some View { self }
  public func border(_ color: Color) -> some View { self }
  public func opacity(_ opacity: Double) -> some View { self }
  public func padding(_ length: CGFloat) -> some View { self }
  public func clipped() -> some View { self }
  public func contentShape(_ shape: Rectangle) -> some View { self }
  public func scaledToFill() -> some View { self }
  public func scaleEffect(_ scale: CGFloat, anchor: UnitPoint) -> some View { self }
  public func zIndex(_ value: Double) -> some View { self }
  public func id<ID: Hashable>(_ id: ID) -> some View { self }
  public func font(_ font: Font?) -> some View { self }
  public func foregroundStyle(_ style: Color) -> some View { self }
  public func lineLimit(_ number: Int?) -> some View { self }
  public func lineLimit(_ range: ClosedRange<Int>) -> some View { self }
  public func truncationMode(_ mode: TruncationMode) -> some View { self }
  public func fixedSize(horizontal: Bool, vertical: Bool) -> some View { self }
  public func ignoresSafeArea() -> some View { self }
  public func buttonStyle(_ style: PlainButtonStyle) -> some View { self }
  public func disabled(_ disabled: Bool) -> some View { self }
  public func allowsHitTesting(_ enabled: Bool) -> some View { self }
  public func modifier<M: ViewModifier>(_ modifier: M) -> some View { self }
  public func visualEffect<E: VisualEffect>(_ effect: @escaping @Sendable (SomeEffect, GeometryProxy) -> E) -> some View { self }
  public func environment<V>(_ path: WritableKeyPath<EnvironmentValues, V>, _ value: V) -> some View { self }
  public func preferredColorScheme(_ scheme: ColorScheme?) -> some View { self }
  public func scrollBounceBehavior(_ behavior: ScrollBounceBehavior) -> some View { self }
  public func scrollIndicatorsFlash(onAppear: Bool) -> some View { self }
  public func sensoryFeedback<T: Equatable>(_ feedback: SensoryFeedback, trigger: T) -> some View { self }
  public func onChange<V: Equatable>(of value: V, initial: Bool = false, _ action: @escaping (V, V) -> Void) -> some View { self }
  public func onChange<V: Equatable>(of value: V, initial: Bool = false, _ action: @escaping () -> Void) -> some View { self }
  public func onOpenURL(perform action: @escaping (URL) -> Void) -> some View { self }
  public func onSubmit(_ action: @escaping () -> Void) -> some View { self }
  public func submitLabel(_ label: SubmitLabel) -> some View { self }
  public func textInputAutocapitalization(_ way: TextInputAutocapitalization?) -> some View { self }
  public func gesture<G: Gesture>(_ gesture: G, including mask: GestureMask = .all) -> some View { self }
  public func fileImporter(isPresented: Binding<Bool>, allowedContentTypes: [UTType], onCompletion: @escaping (Result<URL, any Error>) -> Void) -> some View {
    self
  }
  public func sheet<Item: Identifiable, C: View>(item: Binding<Item?>, @ViewBuilder content: @escaping (Item) -> C) -> some View { self }
  public func fullScreenCover<Item: Identifiable, C: View>(item: Binding<Item?>, @ViewBuilder content: @escaping (Item) -> C) -> some View { self }
  public func accessibilityElement(children: AccessibilityChildBehavior) -> some View { self }
  public func accessibilityLabel(_ label: String) -> some View { self }
  public func accessibilityIdentifier(_ identifier: String) -> some View { self }
  public func accessibilityAddTraits(_ traits: AccessibilityTraits) -> some View { self }
  public func accessibilitySortPriority(_ priority: Double) -> some View { self }
  public func accessibilityAction(_ kind: AccessibilityActionKind, _ handler: @escaping () -> Void) -> some View { self }
  public func accessibilityChildren<C: View>(@ViewBuilder children: () -> C) -> some View { self }
}

@MainActor @preconcurrency public protocol UIViewControllerRepresentable: View where Body == Never {
  associatedtype Controller: UIViewController
  associatedtype Coordinator = Void
  typealias Context = UIViewControllerRepresentableContext<Self>
  func makeUIViewController(context: Context) -> Controller
  func updateUIViewController(_ controller: Controller, context: Context)
  func makeCoordinator() -> Coordinator
}
extension UIViewControllerRepresentable { public var body: Never { return fatalError() } }
extension UIViewControllerRepresentable where Coordinator == Void { public func makeCoordinator() {} }
@MainActor public struct UIViewControllerRepresentableContext<Representable: UIViewControllerRepresentable> {
  public var coordinator: Representable.Coordinator { fatalError() }
}
