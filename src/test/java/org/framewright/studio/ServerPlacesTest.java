package org.framewright.studio;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.OperatingSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which PostgreSQL of this computer is taken for a trial, and as whom it is run. */
class ServerPlacesTest {
  @TempDir private Path folder;

  private Path programs(String place, String... names) throws Exception {
    var bin = Files.createDirectories(folder.resolve(place));
    for (var name : names) {
      assertThat(Files.createFile(bin.resolve(name)).toFile().setExecutable(true)).isTrue();
    }
    return bin;
  }

  private ServerPlaces places(Path... path) {
    return new ServerPlaces(List.of(path), List.of(new ServerPlaces.Versions(folder, "pg")));
  }

  @Test
  void thePathComesFirstThenTheNewestVersionByItsNumber() throws Exception {
    var nine = programs("pg9/bin", "initdb", "pg_ctl");
    var eighteen = programs("pg18/bin", "initdb.exe", "pg_ctl.exe");
    var own = programs("own", "initdb", "pg_ctl");
    programs("pg-other/bin", "initdb", "pg_ctl");
    assertThat(places(own).withPrograms()).containsExactly(own, eighteen, nine);
  }

  @Test
  void aFolderWithoutBothProgramsIsNone() throws Exception {
    programs("pg17/bin", "initdb");
    var client = programs("client", "pg_ctl");
    assertThat(places(client).withPrograms()).isEmpty();
  }

  @Test
  void theFirstThatIsNewEnoughIsTaken() throws Exception {
    var own = programs("own", "initdb", "pg_ctl");
    var seventeen = programs("pg17/bin", "initdb", "pg_ctl");
    assertThat(ServerPrograms.find(places(own), bin -> bin.equals(own) ? 14 : 17))
        .isEqualTo(new ServerPrograms(seventeen, 17));
    assertThat(ServerPrograms.find(places(own), _ -> 15)).isEqualTo(new ServerPrograms(own, 15));
  }

  @Test
  void whereAllAreTooOldTheNewestIsNamed() throws Exception {
    var own = programs("own", "initdb", "pg_ctl");
    assertThatThrownBy(() -> ServerPrograms.find(places(own), _ -> 14))
        .isInstanceOf(StoreException.class)
        .hasMessageContaining("this computer has PostgreSQL 14 only")
        .hasMessageContaining(own.toString());
  }

  @Test
  void whereNoneIsInstalledItSaysWhereItLookedAndWhatToDo() {
    assertThatThrownBy(() -> ServerPrograms.find(places(), _ -> 0))
        .isInstanceOfSatisfying(
            StoreException.class,
            e -> {
              assertThat(e.problem().what())
                  .isEqualTo("no PostgreSQL is installed on this computer");
              assertThat(e.problem().where())
                  .isEqualTo("PATH, " + folder + File.separator + "pg*" + File.separator + "bin");
              assertThat(e.problem().remedy()).startsWith("Install PostgreSQL 15 or newer");
            });
  }

  @Test
  void whatDoesNotRunHasNoVersion() throws Exception {
    var own = programs("own", "initdb", "pg_ctl");
    assertThatThrownBy(() -> ServerPrograms.find(new ServerPlaces(List.of(own), List.of())))
        .hasMessageContaining("no PostgreSQL is installed");
    assertThat(ServerPrograms.version("initdb (PostgreSQL) 15.18 (Debian 15.18-0+deb12u1)"))
        .isEqualTo(15);
    assertThat(ServerPrograms.version("initdb (PostgreSQL) 19beta1")).isEqualTo(19);
    assertThat(ServerPrograms.version("command not found")).isZero();
  }

  @Test
  void eachSystemHasItsUsualPlaces() {
    assertThat(ServerPlaces.of(OperatingSystem.LINUX, Map.of()).said())
        .isEqualTo(
            "PATH, /usr/lib/postgresql/*/bin, /usr/pgsql-*/bin".replace("/", File.separator));
    assertThat(ServerPlaces.of(OperatingSystem.MACOS, Map.of()).usual())
        .hasSize(3)
        .contains(new ServerPlaces.Versions(Path.of("/opt/homebrew/opt"), "postgresql@"));
    var windows =
        ServerPlaces.of(OperatingSystem.WINDOWS, Map.of("ProgramFiles", folder.toString()));
    assertThat(windows.usual())
        .containsExactly(new ServerPlaces.Versions(folder.resolve("PostgreSQL"), ""));
    assertThat(ServerPlaces.of(OperatingSystem.WINDOWS, Map.of()).usual()).isEmpty();
  }

  @Test
  void aFolderOfThePathThatIsRelativeIsNotLookedInto() {
    var path = String.join(File.pathSeparator, "bin", "", ".", folder.toString());
    assertThat(ServerPlaces.of(OperatingSystem.LINUX, Map.of("PATH", path)).path())
        .containsExactly(folder);
  }

  @Test
  void whoeverIsNotRootRunsTheServerAsHimself() throws Exception {
    assertThat(ServerAccount.of(false, _ -> true, name -> Optional.of(Path.of(name))))
        .isEqualTo(new ServerAccount(Optional.empty(), List.of()));
  }

  @Test
  void rootIsGivenUpByWhatIsThere() throws Exception {
    assertThat(ServerAccount.of(true, _ -> true, name -> Optional.of(Path.of(name))))
        .isEqualTo(
            new ServerAccount(Optional.of("postgres"), List.of("runuser", "-u", "postgres", "--")));
    assertThat(
            ServerAccount.of(
                true,
                "nobody"::equals,
                name -> Optional.of(Path.of(name)).filter(_ -> name.equals("setpriv"))))
        .isEqualTo(
            new ServerAccount(
                Optional.of("nobody"), List.of("setpriv", "--reuid=nobody", "--clear-groups")));
  }

  @Test
  void rootThatCanNotBeGivenUpIsToldSo() {
    assertThatThrownBy(() -> ServerAccount.of(true, _ -> true, _ -> Optional.empty()))
        .hasMessageContaining("PostgreSQL does not run as root");
    assertThatThrownBy(() -> ServerAccount.of(true, _ -> false, name -> Optional.of(Path.of(name))))
        .isInstanceOfSatisfying(
            StoreException.class,
            e -> assertThat(e.problem().remedy()).isEqualTo("Run this as another user."));
  }
}
