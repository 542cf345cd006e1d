#!/bin/bash
# Resources without the Android Gradle plugin: those of the app and of every AAR by aapt2, R classes for each package,
# and the manifest as it is after merging (ours, plus tools/manifest-of-libraries.xml).
set -euo pipefail
cd "$(dirname "$0")/.."
out=target/res
mkdir -p $out/compiled target/generated-r target/generated-bindings target/test-classes/com/android/tools
framework=$out/framework.zip
if [ ! -e $framework ]; then
  rm -rf $out/framework && mkdir $out/framework
  unzip -qo "$(cat target/android-all.txt)" resources.arsc AndroidManifest.xml -d $out/framework
  (cd $out/framework && zip -q -X -0 ../framework.part AndroidManifest.xml resources.arsc && mv ../framework.part ../framework.zip)
fi
python3 tools/merge_manifest.py $out/AndroidManifest.xml
packages=() compiled=()
for library in target/aars/*/; do
  archive=$out/compiled/$(basename "$library").zip
  if [ -s "$library/R.txt" ]; then
    packages+=("$(sed -n 's/.*package="\([^"]*\)".*/\1/p' "$library/AndroidManifest.xml" | head -1)")
  fi
  [ -n "$(find "$library/res" -type f -print -quit 2>/dev/null)" ] || continue
  [ -e "$archive" ] || { aapt2 compile --dir "$library/res" -o "$archive.part" && mv "$archive.part" "$archive"; }
  compiled+=("$archive")
done
for archive in $out/compiled/*.zip; do
  [ -d "target/aars/$(basename "$archive" .zip)" ] || rm "$archive"
done
aapt2 compile --dir src/main/res -o $out/app.flat.zip
rm -rf target/generated-r/*
extra=$(IFS=:; echo "${packages[*]}")
# A chunk type newer than Debian's aapt2 is skipped by it without harm; the line about it is left out.
aapt2 link -o $out/app.ap_ -I $framework --manifest $out/AndroidManifest.xml --java target/generated-r --extra-packages "$extra" \
  --warn-manifest-validation --auto-add-overlay --min-sdk-version 26 --target-sdk-version 34 --version-code 1 --version-name 0.1.0 \
  --no-version-vectors "${compiled[@]}" -R $out/app.flat.zip 2>&1 | { grep -v "LoadedArsc.cpp.*Unknown chunk type '200'" || true; } >&2
cat > target/test-classes/com/android/tools/test_config.properties <<P
android_custom_package=org.pitface.app
android_merged_manifest=$PWD/$out/AndroidManifest.xml
android_resource_apk=$PWD/$out/app.ap_
P
