import com.android.build.api.artifact.SingleArtifact
import javax.xml.parsers.DocumentBuilderFactory

// A build for phones, with Gradle, the Android SDK and NDK, and cargo-ndk. Not built by the tests here: those use pom.xml.
plugins {
    alias(libs.plugins.android.application)
    alias(libs.plugins.kotlin.android)
    alias(libs.plugins.kotlin.compose)
}

val workspace = rootDir.parentFile
val libraries = layout.buildDirectory.dir("core-libraries")
val bindings = layout.buildDirectory.dir("core-bindings")

android {
    namespace = "org.pitface.app"
    compileSdk = 36
    defaultConfig {
        applicationId = "org.pitface.app"
        minSdk = 26
        targetSdk = 36
        versionCode = 1
        versionName = "0.1.0"
        ndk { abiFilters += listOf("arm64-v8a", "armeabi-v7a", "x86_64") }
    }
    buildTypes {
        release {
            isMinifyEnabled = true
            proguardFiles(getDefaultProguardFile("proguard-android.txt"), "proguard-rules.pro")
        }
    }
    buildFeatures { compose = true }
    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }
    sourceSets["main"].java.srcDir(bindings)
    sourceSets["main"].jniLibs.srcDir(libraries)
}

kotlin { jvmToolchain(17) }

dependencies {
    implementation(libs.activity.compose)
    implementation(libs.compose.foundation)
    implementation(libs.compose.material3)
    implementation(libs.compose.ui)
    implementation(libs.core)
    implementation(libs.coroutines)
    implementation(variantOf(libs.jna) { artifactType("aar") })
}

// The core for each kind of processor, its pages aligned to 16 KiB as newer phones want.
val coreLibraries by tasks.registering(Exec::class) {
    workingDir = workspace
    environment("RUSTFLAGS", "-C link-arg=-Wl,-z,max-page-size=16384")
    commandLine(
        "cargo", "ndk", "--platform", "26", "-t", "arm64-v8a", "-t", "armeabi-v7a", "-t", "x86_64",
        "-o", libraries.get().asFile.path, "rustc", "--profile", "shell", "-p", "pitface-bindings",
        // One crate type, or Cargo leaves out the link-time optimisation; tests/bench/library says what the flags do.
        "--lib", "--crate-type", "cdylib", "--", "-C", "link-arg=-Wl,--icf=all", "-C", "link-arg=-Wl,--pack-dyn-relocs=android",
    )
}

// Its Kotlin side, generated from a library of this machine.
val hostLibrary by tasks.registering(Exec::class) {
    workingDir = workspace
    commandLine("cargo", "build", "-p", "pitface-bindings")
}
val coreBindings by tasks.registering(Exec::class) {
    dependsOn(hostLibrary)
    workingDir = workspace
    commandLine(
        "cargo", "run", "-p", "pitface-bindgen", "--", "generate",
        "target/debug/" + System.mapLibraryName("pitface_bindings"), "-l", "kotlin", "--no-format", "-o", bindings.get().asFile.path,
    )
}

tasks.named("preBuild") { dependsOn(coreLibraries, coreBindings) }

// No build asks for the network, whatever a library's manifest merges in (as tools/merge_manifest.py sees to it for the tests).
abstract class NoNetwork : DefaultTask() {
    @get:InputFile abstract val manifest: RegularFileProperty

    @TaskAction fun look() {
        val factory = DocumentBuilderFactory.newInstance().apply { isNamespaceAware = true }
        val document = factory.newDocumentBuilder().parse(manifest.get().asFile)
        val asked = listOf("uses-permission", "uses-permission-sdk-23", "permission").flatMap { tag ->
            val found = document.getElementsByTagName(tag)
            (0 until found.length).map { found.item(it).attributes.getNamedItemNS("http://schemas.android.com/apk/res/android", "name")?.nodeValue.orEmpty() }
        }
        val network = asked.filter { name -> listOf("INTERNET", "NETWORK", "WIFI").any { it in name } }
        if (network.isNotEmpty()) throw GradleException("the app must not use the network: $network")
    }
}

androidComponents {
    onVariants { variant ->
        val name = variant.name.replaceFirstChar(Char::uppercase)
        val look = tasks.register<NoNetwork>("noNetwork$name") { manifest.set(variant.artifacts.get(SingleArtifact.MERGED_MANIFEST)) }
        tasks.matching { it.name == "assemble$name" || it.name == "bundle$name" || it.name == "package$name" }.configureEach { dependsOn(look) }
    }
}
