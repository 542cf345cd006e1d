#!/usr/bin/env python3
"""merge_manifest.py OUT: the app's manifest with its package and what the libraries' manifests need.

Stops when a library declares something that tools/manifest-of-libraries.xml does not list, or when the merged manifest
asks for the network."""
import glob
import re
import sys
import xml.etree.ElementTree as ElementTree

NAME = '{http://schemas.android.com/apk/res/android}name'
PACKAGE = 'org.pitface.app'
DECLARING = {'uses-permission', 'permission', 'activity', 'service', 'receiver', 'provider', 'uses-library', 'meta-data'}
# Receivers of the profile installer (of use to a shop's installer only) and the activities of libraries for tests.
LEFT_OUT = {'androidx.profileinstaller.ProfileInstallReceiver'}


def names(path):
    tree = ElementTree.parse(path)
    return {element.get(NAME) for element in tree.iter() if element.tag in DECLARING}


ours = open('src/main/AndroidManifest.xml', encoding='utf-8').read()
libraries = open('tools/manifest-of-libraries.xml', encoding='utf-8').read()
above, inside = (re.search(rf'<{part}>(.*?)</{part}>', libraries, re.S).group(1) for part in ('above', 'inside'))
merged = ours.replace('<manifest ', f'<manifest package="{PACKAGE}" ', 1)
merged = merged.replace('<application', above.strip() + '\n    <application', 1)
merged = merged.replace('</application>', inside.strip() + '\n    </application>', 1).replace('${applicationId}', PACKAGE)
with open(sys.argv[1], 'w', encoding='utf-8') as out:
    out.write(merged)

listed = names(sys.argv[1])
missing = {
    (path.split('/')[2], name)
    for path in glob.glob('target/aars/*/AndroidManifest.xml')
    for name in names(path)
    if name and name.replace('${applicationId}', PACKAGE) not in listed | LEFT_OUT
}
if missing:
    sys.exit(f'declared by a library, not in tools/manifest-of-libraries.xml: {sorted(missing)}')
network = {name for name in listed if name and ('INTERNET' in name or 'NETWORK' in name or 'WIFI' in name)}
if network:
    sys.exit(f'the app must not use the network: {sorted(network)}')
