// Stand-in for Security, from its public documentation. Left out: everything but generic passwords.
@_exported import Foundation

public typealias CFString = String
public typealias CFTypeRef = AnyObject
public typealias CFDictionary = NSDictionary
public typealias OSStatus = Int32

public let kSecClass = "class"
public let kSecClassGenericPassword = "genp"
public let kSecAttrService = "svce"
public let kSecAttrAccount = "acct"
public let kSecAttrAccessible = "pdmn"
public let kSecAttrAccessibleAfterFirstUnlockThisDeviceOnly = "cku"
public let kSecUseDataProtectionKeychain = "nleg"
public let kSecReturnData = "r_Data"
public let kSecMatchLimit = "m_Limit"
public let kSecMatchLimitOne = "m_LimitOne"
public let kSecValueData = "v_Data"
public let errSecSuccess: OSStatus = 0
public let errSecItemNotFound: OSStatus = -25300

public func SecItemCopyMatching(_ query: CFDictionary, _ result: UnsafeMutablePointer<CFTypeRef?>?) -> OSStatus { errSecItemNotFound }
public func SecItemAdd(_ attributes: CFDictionary, _ result: UnsafeMutablePointer<CFTypeRef?>?) -> OSStatus { errSecSuccess }
@discardableResult public func SecItemDelete(_ query: CFDictionary) -> OSStatus { errSecSuccess }
