"""What the iOS app says of itself, read with the standard library's property lists and compared with its sources and with Android's app."""

import plistlib
import re
from pathlib import Path

ROOT = Path(__file__).parents[2]
IOS, ANDROID = ROOT / "ios/App", ROOT / "android/src/main"
SOURCES = "".join(path.read_text() for path in sorted((ROOT / "ios").glob("[AP]*/**/*.swift")) if "Generated" not in path.parts)
INFO = plistlib.loads((IOS / "Info.plist").read_bytes())


def strings(path):
    return dict(re.findall(r'^"(.*?)" = "(.*)";$', path.read_text(), flags=re.M))


def of_android(folder):
    rows = re.findall(r'<string name="(\w+)">(.*?)</string>', (ANDROID / f"res/{folder}/strings.xml").read_text())
    return {key: text.replace("\\'", "'") for key, text in rows}


def test_its_own_words_are_those_of_android_in_every_language():
    for language, folder in (("en", "values"), ("de", "values-de")):
        own = strings(IOS / f"Resources/{language}.lproj/Localizable.strings")
        assert own == of_android(folder) and len(own) == 16
    phrases = (ROOT / "ios/PitfaceKit/Sources/PitfaceKit/Shell/Phrase.swift").read_text()
    named = re.findall(r'^  case (\w+)(?: = "(\w+)")?$', phrases, flags=re.M)
    assert {raw or name for name, raw in named} == set(of_android("values"))


def test_its_colours_are_those_of_android():
    names = dict(
        ground="background", ink="onBackground", chosen="secondaryContainer", chosenInk="onSecondaryContainer", next="primary",
        nextInk="onPrimary", quiet="surfaceVariant", off="tertiary", edge="outline", faintEdge="outlineVariant",
    )
    kotlin = (ANDROID / "kotlin/org/pitface/screens/Earth.kt").read_text()
    day, dark = (dict(re.findall(r"(\w+) = Color\(0xFF(\w{6})\)", part)) for part in kotlin.split("EarthInTheDark", 1))
    swift = (ROOT / "ios/PitfaceKit/Sources/PitfaceKit/Tree/Earth.swift").read_text()
    own = {name: (light, black) for name, black, light in re.findall(r"case \.(\w+): Colour\(dark \? 0x(\w{6}) : 0x(\w{6})\)", swift)}
    assert own == {name: (day[theirs], dark[theirs]) for name, theirs in names.items()}


def test_every_permission_it_asks_for_has_its_reason_in_every_language():
    asked = {
        "NSLocationWhenInUseUsageDescription": "requestWhenInUseAuthorization",
        "NSCameraUsageDescription": "UIImagePickerController",
    }
    reasons = {key for key in INFO if key.endswith("UsageDescription")}
    assert reasons == set(asked) and all(call in SOURCES for call in asked.values())
    exact = re.findall(r'withPurposeKey: "(\w+)"', SOURCES)
    assert set(exact) == set(INFO["NSLocationTemporaryUsageDescriptionDictionary"])
    for language in INFO["CFBundleLocalizations"]:
        own = strings(IOS / f"Resources/{language}.lproj/InfoPlist.strings")
        assert all(own[key] for key in reasons | set(exact))
    for unasked in ("PHPhotoLibrary", "AVCaptureDevice", "requestAlwaysAuthorization", "CBCentralManager", "CNContactStore"):
        assert unasked not in SOURCES


def test_it_opens_what_the_core_reads_and_says_whose_types_they_are():
    exported = {kind["UTTypeIdentifier"]: kind for kind in INFO["UTExportedTypeDeclarations"]}
    imported = {kind["UTTypeIdentifier"]: kind for kind in INFO["UTImportedTypeDeclarations"]}
    endings = {end for kind in (exported | imported).values() for end in kind["UTTypeTagSpecification"]["public.filename-extension"]}
    assert endings == {"pitb", "notes.json", "geojson", "kml", "kmz", "gpx", "gpkg"}
    opened = {kind for group in INFO["CFBundleDocumentTypes"] for kind in group["LSItemContentTypes"]}
    assert set(exported) | set(imported) <= opened and "public.zip-archive" in opened
    assert all(kind.startswith("public.") for kind in opened - set(exported) - set(imported))


def test_it_asks_for_no_network_and_tells_nothing_to_anybody():
    rights = plistlib.loads((IOS / "Pitface.entitlements").read_bytes())
    assert rights == {"com.apple.developer.default-data-protection": "NSFileProtectionCompleteUntilFirstUserAuthentication"}
    assert "completeUntilFirstUserAuthentication" in SOURCES
    privacy = plistlib.loads((IOS / "PrivacyInfo.xcprivacy").read_bytes())
    assert privacy["NSPrivacyTracking"] is False and privacy["NSPrivacyTrackingDomains"] == privacy["NSPrivacyCollectedDataTypes"] == []
    # Of the interfaces that want a reason, dates of files alone are read: those of this app's own folder (C617.1).
    assert [kind["NSPrivacyAccessedAPIType"] for kind in privacy["NSPrivacyAccessedAPITypes"]] == ["NSPrivacyAccessedAPICategoryFileTimestamp"]
    assert "contentModificationDateKey" in SOURCES
    for name in ("URLSession", "import Network", "NWConnection", "UserDefaults", "systemUptime", "volumeAvailableCapacity", "WKWebView", "CKContainer"):
        assert name not in SOURCES, name


def test_nothing_of_the_kit_knows_the_glass_it_is_shown_on():
    for path in (ROOT / "ios/PitfaceKit/Sources").rglob("*.swift"):
        assert not re.search(r"import (SwiftUI|UIKit|CoreLocation)", path.read_text()), path


def test_it_stays_small():
    lines = sum(len(path.read_text().splitlines()) for folder in (ROOT / "ios/PitfaceKit/Sources", IOS) for path in folder.rglob("*.swift"))
    assert lines <= 2500
