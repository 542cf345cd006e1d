import CoreLocation
import PitfaceKit

/// The receiver of positions, while the app is in use.
@MainActor
final class LocationReceiver: NSObject, Receiver, @preconcurrency CLLocationManagerDelegate {
  private let manager = CLLocationManager()
  private let shell: Shell
  var changed: () -> Void = {}

  init(_ shell: Shell) {
    self.shell = shell
    super.init()
    manager.desiredAccuracy = kCLLocationAccuracyBest
    manager.delegate = self
  }

  var permission: Permission {
    switch manager.authorizationStatus {
    case .notDetermined: .unasked
    case .authorizedWhenInUse, .authorizedAlways: .allowed
    default: .refused
    }
  }

  func ask() { manager.requestWhenInUseAuthorization() }

  func start() {
    manager.startUpdatingLocation()
    // A place to within kilometres is of no use for a pit; the phone asks once more, for this screen. Refused, its wide radius is told as it is.
    if manager.accuracyAuthorization == .reducedAccuracy {
      manager.requestTemporaryFullAccuracyAuthorization(withPurposeKey: "Pit") { _ in }
    }
  }

  func stop() { manager.stopUpdatingLocation() }

  func locationManagerDidChangeAuthorization(_ manager: CLLocationManager) { changed() }

  func locationManager(_ manager: CLLocationManager, didUpdateLocations locations: [CLLocation]) {
    for found in locations where found.horizontalAccuracy > 0 {
      let time = Int64(found.timestamp.timeIntervalSince1970 * 1000)
      shell.fix(
        longitudeDeg: found.coordinate.longitude, latitudeDeg: found.coordinate.latitude, accuracyM: found.horizontalAccuracy, satelliteTimeMs: time)
    }
  }

  func locationManager(_ manager: CLLocationManager, didFailWithError error: any Error) {
    if (error as? CLError)?.code == .denied { shell.positionRefused() }
  }
}
