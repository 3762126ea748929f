package org.framewright.studio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.nio.file.attribute.UserPrincipal;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.framewright.base.Text;

/**
 * As whom the programs of a server are run. They refuse to be root, so root is given up for them.
 *
 * @param user another user than the one who runs this; empty where that one will do
 * @param before what stands before the command line of a program
 */
record ServerAccount(Optional<String> user, List<String> before) {
  private static final List<String> USERS = List.of("postgres", "nobody");
  private static final List<Path> SYSTEM =
      List.of(Path.of("/usr/sbin"), Path.of("/sbin"), Path.of("/usr/bin"), Path.of("/bin"));

  ServerAccount {
    before = List.copyOf(before);
  }

  /**
   * For whoever runs this.
   *
   * @param own a folder that this user just made
   * @throws StoreException if that is root, who can not be given up here
   */
  static ServerAccount of(Path own) throws IOException {
    return of(
        own.getFileSystem().supportedFileAttributeViews().contains("unix")
            && Objects.equals(Files.getAttribute(own, "unix:uid"), 0),
        name -> principal(own, name).isPresent(),
        name ->
            SYSTEM.stream()
                .flatMap(folder -> ServerPlaces.program(folder, name).stream())
                .findFirst());
  }

  static ServerAccount of(
      boolean isRoot, Predicate<String> users, Function<String, Optional<Path>> programs)
      throws StoreException {
    if (!isRoot) {
      return new ServerAccount(Optional.empty(), List.of());
    }
    var user = USERS.stream().filter(users).findFirst();
    return user.flatMap(
            name ->
                Stream.concat(
                        programs.apply("runuser").stream()
                            .map(program -> List.of(program.toString(), "-u", name, "--")),
                        programs.apply("setpriv").stream()
                            .map(
                                program ->
                                    List.of(
                                        program.toString(), "--reuid=" + name, "--clear-groups")))
                    .findFirst())
        .map(before -> new ServerAccount(user, before))
        .orElseThrow(
            () ->
                new StoreException(
                    Text.of("PostgreSQL does not run as root, and root cannot be given up here"),
                    "",
                    Text.of("Run this as another user.")));
  }

  private static Optional<UserPrincipal> principal(Path place, String name) {
    try {
      return Optional.of(
          place.getFileSystem().getUserPrincipalLookupService().lookupPrincipalByName(name));
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /** Gives what lies below a folder of this user to the account, and lets it through the folder. */
  void own(Path folder, List<Path> below) throws IOException {
    if (user.isPresent()) {
      Files.setPosixFilePermissions(folder, PosixFilePermissions.fromString("rwx--x--x"));
      var principal = principal(folder, user.get()).orElseThrow();
      for (var path : below) {
        Files.setOwner(path, principal);
      }
    }
  }
}
