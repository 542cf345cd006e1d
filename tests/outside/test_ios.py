"""What the iOS app says of itself, read with the standard library's property lists and compared with its sources and with Android's app."""

import json
import plistlib
import re
from pathlib import Path

from PIL import Image

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


def called(text, pattern):
    return set(re.findall(pattern, text))


def camel(name):
    head, *rest = name.removeprefix("r#").split("_")
    return head + "".join(part.capitalize() for part in rest)


def test_whatever_the_core_offers_a_shell_both_shells_use():
    """A request, a kind of block or a call of a session that is new in the bindings is met by both shells, or by neither."""
    shown = (ROOT / "bindings/src/shown.rs").read_text()
    kotlin = "".join(path.read_text() for path in sorted((ANDROID / "kotlin").rglob("*.kt")))

    def variants(name):
        return called(re.search(rf"pub enum {name} \{{(.*?)\n\}}", shown, flags=re.S)[1], r"(?m)^    (\w+)(?: \{|\(|,)")

    requests, blocks = variants("ShownDoes"), variants("ShownBlock")
    assert {"Act", "TakePhoto", "ShareBundle", "AllowPosition"} <= requests and {"Question", "Typing", "Photos"} <= blocks
    swift_cases = called(SOURCES, r"case (?:let )?\.(\w+)") | called(SOURCES, r", \.(\w+)[,:]")
    for kind, names in (("ShownDoes", requests), ("ShownBlock", blocks)):
        assert names == called(kotlin, rf"is {kind}\.(\w+)"), kind
        assert {camel(name[0].lower() + name[1:]) for name in names} <= swift_cases, kind

    session = (ROOT / "bindings/src/session.rs").read_text()
    offered = {camel(name) for name in called(session, r"    pub fn ((?:r#)?\w+)\(\s*&self")}
    assert {"tap", "touch", "photoTaken", "importFile"} <= offered
    by_kotlin = {name for name in offered if re.search(rf"(?:session|it|core)\.{name}\(", kotlin)}
    by_swift = {name for name in offered if re.search(rf"(?:session\(\)|\$0|core)\.{name}\(|\)\.{name}\(", SOURCES)}
    assert by_kotlin == by_swift and {"tap", "touch", "back", "check", "exportPage"} <= by_swift


def test_what_a_platform_is_asked_for_is_the_same_on_both():
    asked = re.search(r"interface Platform \{(.*?)\n\}", (ANDROID / "kotlin/org/pitface/state/App.kt").read_text(), flags=re.S)[1]
    own = re.search(r"protocol Platform: AnyObject \{(.*?)\n\}", SOURCES, flags=re.S)[1]
    # No app of this platform closes itself.
    assert called(asked, r"fun (\w+)\(") - {"leave"} == called(own, r"func (\w+)\(")


def test_the_table_of_both_apps_names_every_screen_and_request():
    table = (ROOT / "ios/README.md").read_text().split("## Android beside iOS")[1]
    kinds = re.search(r"pub enum ScreenKind \{(.*?)\n\}", (ROOT / "bindings/src/shown.rs").read_text(), flags=re.S)[1]
    screens = called(kinds, r"(?m)^    (\w+),")
    assert len(screens) == 20 and all(re.search(rf"\b{name}\b", table) for name in screens)
    requests = re.search(r"pub enum ShownDoes \{(.*?)\n\}", (ROOT / "bindings/src/shown.rs").read_text(), flags=re.S)[1]
    assert all(f"`{name}`" in table for name in called(requests, r"(?m)^    (\w+)(?: \{|,)"))
    for name in called(table, r"`(\w+\.(?:kt|swift))`"):
        assert list((ROOT / "android/src").rglob(name)) + list((ROOT / "ios").rglob(name)), f"{name} is not there"


def test_its_sign_is_the_one_of_android_on_the_icon_and_while_it_starts():
    vector = (ANDROID / "res/drawable/app.xml").read_text()
    shapes = re.findall(r'android:(?:fill|stroke)Color="(#\w+)".*?android:pathData="(.*?)"', vector)
    (paper, whole), *sign = shapes
    launch = (IOS / "Assets.xcassets/Launch.imageset/launch.svg").read_text()
    assert [(colour, path) for path, colour in re.findall(r'<path d="(.*?)".*?(?:fill|stroke)="(#\w{6})"', launch)] == sign
    icon = Image.open(IOS / "Assets.xcassets/AppIcon.appiconset/icon.png")
    assert icon.size == (1024, 1024) and icon.mode == "RGB", "as the App Store wants it: without transparency"
    # In the middle of the paper, of each layer and of a stroke, in the units of the 48 by 48 sign.
    expected = {(4, 4): paper, (28, 18): sign[0][0], (24.5, 27): sign[1][0], (28, 38.5): sign[2][0], (28, 23): sign[3][0], (11, 25): sign[4][0]}
    for (x, y), colour in expected.items():
        found = icon.getpixel((round(x * 1024 / 48), round(y * 1024 / 48)))
        assert max(abs(part - int(colour[place : place + 2], 16)) for part, place in zip(found, (1, 3, 5))) <= 2, (x, y, found, colour)


def test_the_launch_screen_names_what_is_there_and_takes_the_ground_of_the_app():
    assert INFO["UILaunchScreen"] == {"UIColorName": "Ground", "UIImageName": "Launch"}
    contents = json.loads((IOS / "Assets.xcassets/Launch.imageset/Contents.json").read_text())
    assert all((IOS / "Assets.xcassets/Launch.imageset" / image["filename"]).is_file() for image in contents["images"])
    colours = json.loads((IOS / "Assets.xcassets/Ground.colorset/Contents.json").read_text())["colors"]
    parts = [[int(one["color"]["components"][part], 16) for part in ("red", "green", "blue")] for one in colours]
    light, black = re.search(r"case \.ground: Colour\(dark \? 0x(\w{6}) : 0x(\w{6})\)", SOURCES).group(2, 1)
    assert parts == [list(bytes.fromhex(light)), list(bytes.fromhex(black))]
    assert "ASSETCATALOG_COMPILER_APPICON_NAME: AppIcon" in (ROOT / "ios/project.yml").read_text()


def test_what_the_phone_calls_its_files_is_said_in_every_language():
    named = {kind["UTTypeDescription"] for kind in INFO["UTExportedTypeDeclarations"]} | {kind["CFBundleTypeName"] for kind in INFO["CFBundleDocumentTypes"]}
    for language in INFO["CFBundleLocalizations"]:
        own = strings(IOS / f"Resources/{language}.lproj/InfoPlist.strings")
        assert named <= set(own) and all(own.values())


def test_whatever_is_shown_has_an_identifier_and_whatever_is_tapped_a_name():
    """That no two parts share one, and that every name is there, is tested over the trees (`SweepTests.swift`)."""
    view = (IOS / "Views/NodeView.swift").read_text()
    assert ".accessibilityIdentifier(node.id)" in view
    for path in sorted(IOS.glob("Views/*.swift")):
        text = path.read_text()
        assert len(re.findall(r"Button \{", text)) <= text.count("accessibilityLabel"), path


def test_nothing_of_the_kit_knows_the_glass_it_is_shown_on():
    for path in (ROOT / "ios/PitfaceKit/Sources").rglob("*.swift"):
        assert not re.search(r"import (SwiftUI|UIKit|CoreLocation)", path.read_text()), path


def test_it_stays_small():
    lines = sum(len(path.read_text().splitlines()) for folder in (ROOT / "ios/PitfaceKit/Sources", IOS) for path in folder.rglob("*.swift"))
    assert lines <= 2500
