import Foundation
import PitfaceKit
import Security

/// The key by which other phones tell this one: in the Keychain of this device alone, never in a backup or another device's.
struct Keychain: Secrets {
  struct Unreadable: Error { let status: OSStatus }

  private var item: [CFString: Any] {
    [kSecClass: kSecClassGenericPassword, kSecAttrService: "org.pitface.app", kSecAttrAccount: "key", kSecUseDataProtectionKeychain: true]
  }

  func read() throws -> Data? {
    var found: CFTypeRef?
    let query = item.merging([kSecReturnData: true, kSecMatchLimit: kSecMatchLimitOne]) { $1 }
    let status = SecItemCopyMatching(query as CFDictionary, &found)
    if status == errSecItemNotFound { return nil }
    guard status == errSecSuccess, let data = found as? Data else { throw Unreadable(status: status) }
    return data
  }

  func write(_ secret: Data) -> Bool {
    remove()
    let whole = item.merging([kSecValueData: secret, kSecAttrAccessible: kSecAttrAccessibleAfterFirstUnlockThisDeviceOnly]) { $1 }
    return SecItemAdd(whole as CFDictionary, nil) == errSecSuccess
  }

  func remove() { SecItemDelete(item as CFDictionary) }
}
