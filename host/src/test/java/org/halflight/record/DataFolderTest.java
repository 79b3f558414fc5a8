package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;

class DataFolderTest {
  @Test
  void windowsKeepsItWithTheRoamingData() {
    assertThat(
            DataFolder.of(
                "Windows 11",
                Map.of("APPDATA", "D:\\Profiles\\ann\\AppData\\Roaming"),
                "C:\\Users\\ann"))
        .isEqualTo("D:\\Profiles\\ann\\AppData\\Roaming\\Halflight");
    assertThat(DataFolder.of("Windows 10", Map.of(), "C:\\Users\\ann"))
        .isEqualTo("C:\\Users\\ann\\AppData\\Roaming\\Halflight");
  }

  @Test
  void macKeepsItInTheLibrary() {
    assertThat(DataFolder.of("Mac OS X", Map.of("XDG_DATA_HOME", "/data"), "/Users/ann"))
        .isEqualTo("/Users/ann/Library/Application Support/Halflight");
  }

  @Test
  void elsewhereByTheXdgBaseDirectorySpecification() {
    // XDG Base Directory Specification 0.8: default $HOME/.local/share; relative paths are ignored.
    assertThat(DataFolder.of("Linux", Map.of(), "/home/ann"))
        .isEqualTo("/home/ann/.local/share/halflight");
    assertThat(DataFolder.of("Linux", Map.of("XDG_DATA_HOME", "/data"), "/home/ann"))
        .isEqualTo("/data/halflight");
    assertThat(DataFolder.of("Linux", Map.of("XDG_DATA_HOME", "data"), "/home/ann"))
        .isEqualTo("/home/ann/.local/share/halflight");
    assertThat(DataFolder.of("FreeBSD", Map.of("XDG_DATA_HOME", ""), "/home/ann"))
        .isEqualTo("/home/ann/.local/share/halflight");
  }

  @Test
  void whatMayBeMadeAnewLiesInTheCacheOfEachSystem() {
    assertThat(DataFolder.cache("Windows 11", Map.of("LOCALAPPDATA", "D:\\L"), "C:\\Users\\ann"))
        .isEqualTo("D:\\L\\Halflight");
    assertThat(DataFolder.cache("Windows 11", Map.of(), "C:\\Users\\ann"))
        .isEqualTo("C:\\Users\\ann\\AppData\\Local\\Halflight");
    assertThat(DataFolder.cache("Mac OS X", Map.of(), "/Users/ann"))
        .isEqualTo("/Users/ann/Library/Caches/Halflight");
    // XDG Base Directory Specification 0.8: default $HOME/.cache; relative paths are ignored.
    assertThat(DataFolder.cache("Linux", Map.of(), "/home/ann"))
        .isEqualTo("/home/ann/.cache/halflight");
    assertThat(DataFolder.cache("Linux", Map.of("XDG_CACHE_HOME", "/c"), "/home/ann"))
        .isEqualTo("/c/halflight");
    assertThat(DataFolder.cache("Linux", Map.of("XDG_CACHE_HOME", "c"), "/home/ann"))
        .isEqualTo("/home/ann/.cache/halflight");
  }
}
