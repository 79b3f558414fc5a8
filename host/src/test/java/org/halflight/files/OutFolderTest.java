package org.halflight.files;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.halflight.trouble.Trouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OutFolderTest {
  @TempDir private Path temporary;

  @Test
  void chosenFolderIsRememberedForItsSortAlone() throws Exception {
    Path mine = Files.createDirectory(temporary.resolve("mine"));
    Path usual = temporary.resolve("data/tables");
    OutFolder.choose(temporary, "pages", mine);
    assertThat(OutFolder.of(temporary, "pages", usual).ready()).isEqualTo(mine);
    assertThat(OutFolder.of(temporary, "tables", usual).ready()).isEqualTo(usual).isDirectory();
  }

  @Test
  void folderThatVanishedIsSaidAndNotMadeAgain() throws Exception {
    Path mine = Files.createDirectory(temporary.resolve("mine"));
    OutFolder chosen = OutFolder.choose(temporary, "pages", mine);
    Files.delete(mine);
    assertThatThrownBy(chosen::ready)
        .isInstanceOf(Trouble.class)
        .hasMessage("The folder " + mine + " is gone. Press Choose where, then save again.");
    assertThat(mine).doesNotExist();
  }

  @Test
  void folderThatCannotBeMadeIsSaid() throws Exception {
    Path file = Files.writeString(temporary.resolve("file"), "mine");
    assertThatThrownBy(() -> OutFolder.of(temporary, "pages", file.resolve("pages")).ready())
        .isInstanceOf(Trouble.class)
        .hasMessageContaining("cannot be made");
    assertThatThrownBy(() -> OutFolder.choose(temporary, "pages", file))
        .isInstanceOf(Trouble.class);
    assertThat(SettingsFile.read(temporary)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"a:b.pdf", "what?.pdf", "a*b", "a|b", "con.pdf", "LPT1", "end.", "end "})
  void nameThatWindowsRefusesIsRefused(String name) {
    assertThatThrownBy(() -> FileNames.check(name))
        .isInstanceOf(Trouble.class)
        .hasMessageStartingWith(name + " is no file name on every system.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"my-rig.profile", "Rig 2 (old).profile", "constant.pdf", "Käthe.pdf"})
  void plainNamesAreTaken(String name) {
    assertThatCode(() -> FileNames.check(name)).doesNotThrowAnyException();
  }
}
