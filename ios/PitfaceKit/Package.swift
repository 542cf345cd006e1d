// swift-tools-version:6.0
import PackageDescription

// On Linux the core is the library of this machine, beside its header; for Apple's devices it is the XCFramework of `ios/tools/xcframework`.
// `Generated` is filled by `ios/tools/bindings` and `ios/tools/xcframework`, and never committed.
#if os(Linux)
  let library: Target = .target(name: "PitfaceCoreFFI", path: "Generated/PitfaceCoreFFI")
  let folder = Context.packageDirectory + "/Generated/lib"
  // Debian's Observation names a symbol that only its own runtime has.
  let linked: [LinkerSetting] = [
    .unsafeFlags([
      "-L", folder, "-lpitface_bindings", "-Xlinker", "-rpath", "-Xlinker", folder, "-Xlinker", "--allow-shlib-undefined",
    ])
  ]
#else
  let library: Target = .binaryTarget(name: "PitfaceCoreFFI", path: "Generated/PitfaceCoreFFI.xcframework")
  let linked: [LinkerSetting] = []
#endif

let package = Package(
  name: "PitfaceKit",
  platforms: [.iOS(.v17)],
  products: [.library(name: "PitfaceKit", targets: ["PitfaceKit"])],
  targets: [
    library,
    .target(name: "PitfaceCore", dependencies: ["PitfaceCoreFFI"], path: "Generated/PitfaceCore", linkerSettings: linked),
    .target(name: "PitfaceKit", dependencies: ["PitfaceCore"]),
    .testTarget(name: "PitfaceKitTests", dependencies: ["PitfaceKit"]),
  ],
  swiftLanguageModes: [.v6]
)
