// For a build with Gradle and the Android SDK. Not built by the tests here: those use pom.xml, with the same sources.
pluginManagement {
    repositories {
        google()
        mavenCentral()
        gradlePluginPortal()
    }
}
dependencyResolutionManagement {
    repositories {
        google()
        mavenCentral()
    }
}
rootProject.name = "pitface"
