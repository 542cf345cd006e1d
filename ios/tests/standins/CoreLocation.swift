// Stand-in for CoreLocation, from its public documentation. Left out: regions, headings, visits, background updates, the newer asynchronous updates.
@_exported import Foundation

public enum CLAuthorizationStatus: Int32, Sendable { case notDetermined, restricted, denied, authorizedAlways, authorizedWhenInUse }
public enum CLAccuracyAuthorization: Int, Sendable { case fullAccuracy, reducedAccuracy }
public typealias CLLocationAccuracy = Double
public let kCLLocationAccuracyBest: CLLocationAccuracy = -1

public struct CLLocationCoordinate2D: Sendable {
  public var latitude: Double
  public var longitude: Double
}

public final class CLLocation: NSObject, @unchecked Sendable {
  public let coordinate = CLLocationCoordinate2D(latitude: 0, longitude: 0)
  public let horizontalAccuracy: CLLocationAccuracy = 0
  public let timestamp = Date()
}

public struct CLError: Error {
  public enum Code: Int, Sendable { case locationUnknown, denied, network }
  public let code: Code
}

public protocol CLLocationManagerDelegate: AnyObject {
  func locationManagerDidChangeAuthorization(_ manager: CLLocationManager)
  func locationManager(_ manager: CLLocationManager, didUpdateLocations locations: [CLLocation])
  func locationManager(_ manager: CLLocationManager, didFailWithError error: any Error)
}

public final class CLLocationManager: NSObject {
  public weak var delegate: (any CLLocationManagerDelegate)?
  public var desiredAccuracy: CLLocationAccuracy = 0
  public var authorizationStatus: CLAuthorizationStatus { .notDetermined }
  public var accuracyAuthorization: CLAccuracyAuthorization { .fullAccuracy }
  public func requestWhenInUseAuthorization() {}
  public func requestTemporaryFullAccuracyAuthorization(withPurposeKey key: String, completion: (((any Error)?) -> Void)? = nil) {}
  public func startUpdatingLocation() {}
  public func stopUpdatingLocation() {}
}
