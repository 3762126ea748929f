package org.framewright.studio;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.framewright.base.OperatingSystem;

/**
 * Where the programs of an installed PostgreSQL may be: the folders of the PATH, then the usual
 * ones of packages and installers, in which each version has a folder of its own.
 *
 * @param path folders that may have the programs themselves
 * @param usual looked at after them, in this order
 */
record ServerPlaces(List<Path> path, List<Versions> usual) {
  /**
   * A folder with one folder for each version, such as {@code /usr/lib/postgresql/15/bin}.
   *
   * @param prefix what their names have before the number
   */
  record Versions(Path parent, String prefix) {
    private List<Path> newestFirst() {
      try (var children = Files.list(parent)) {
        return children
            .filter(child -> number(child) > 0)
            .sorted(Comparator.comparingInt(this::number).reversed())
            .map(child -> child.resolve("bin"))
            .toList();
      } catch (IOException e) {
        // Not there, or not to be looked into: nothing is installed there for this user.
        return List.of();
      }
    }

    private int number(Path child) {
      var name = child.getFileName().toString();
      return name.matches(Pattern.quote(prefix) + "[0-9]{1,4}")
          ? Integer.parseInt(name.substring(prefix.length()))
          : 0;
    }

    @Override
    public String toString() {
      return parent + File.separator + prefix + "*" + File.separator + "bin";
    }
  }

  ServerPlaces {
    path = List.copyOf(path);
    usual = List.copyOf(usual);
  }

  /** Those of this computer. */
  static ServerPlaces here() {
    return of(OperatingSystem.current(), System.getenv());
  }

  /**
   * Those of a system.
   *
   * @param environment of which {@code PATH} and, on Windows, {@code ProgramFiles} are looked at
   */
  static ServerPlaces of(OperatingSystem system, Map<String, String> environment) {
    var usual =
        switch (system) {
          case WINDOWS ->
              Stream.ofNullable(environment.get("ProgramFiles"))
                  .map(programs -> new Versions(Path.of(programs, "PostgreSQL"), ""))
                  .toList();
          case MACOS ->
              List.of(
                  new Versions(Path.of("/opt/homebrew/opt"), "postgresql@"),
                  new Versions(Path.of("/usr/local/opt"), "postgresql@"),
                  new Versions(Path.of("/Library/PostgreSQL"), ""));
          case LINUX, OTHER ->
              List.of(
                  new Versions(Path.of("/usr/lib/postgresql"), ""),
                  new Versions(Path.of("/usr"), "pgsql-"));
        };
    return new ServerPlaces(path(environment), usual);
  }

  private static List<Path> path(Map<String, String> environment) {
    var folders = new ArrayList<Path>();
    for (var name : environment.getOrDefault("PATH", "").split(File.pathSeparator, -1)) {
      try {
        // What is relative would depend on the folder that one happens to be in.
        Optional.of(Path.of(name)).filter(Path::isAbsolute).ifPresent(folders::add);
      } catch (InvalidPathException e) {
        // Nothing can be in it.
      }
    }
    return folders;
  }

  /** The folders that have both programs, in the order in which they are to be tried. */
  List<Path> withPrograms() {
    return Stream.concat(
            path.stream(), usual.stream().flatMap(versions -> versions.newestFirst().stream()))
        .filter(folder -> program(folder, "initdb").isPresent())
        .filter(folder -> program(folder, "pg_ctl").isPresent())
        .distinct()
        .toList();
  }

  /** A program of a folder, with the ending of Windows or without. */
  static Optional<Path> program(Path folder, String name) {
    return Stream.of(name, name + ".exe")
        .map(folder::resolve)
        .filter(Files::isRegularFile)
        .filter(Files::isExecutable)
        .findFirst();
  }

  /** As a person reads it. */
  String said() {
    return "PATH" + String.join("", usual.stream().map(versions -> ", " + versions).toList());
  }
}
