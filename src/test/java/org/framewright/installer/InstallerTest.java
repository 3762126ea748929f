package org.framewright.installer;

import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.Opcode;
import java.lang.constant.ClassDesc;
import java.lang.constant.MethodTypeDesc;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import java.util.List;
import java.util.TreeSet;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import org.framewright.base.OperatingSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The steps of the installer that need no tool. */
class InstallerTest {
  private static final Instant TIME = Instant.parse("2026-11-25T00:00:00Z");

  @TempDir private Path folder;

  private Release release(String version) {
    return new Release(folder.resolve("built"), Path.of(""), folder.resolve("out"), version, TIME);
  }

  private Path file(String path, String text) throws IOException {
    var file = folder.resolve(path);
    Files.createDirectories(file.getParent());
    return Files.writeString(file, text);
  }

  private static String mode(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }

  private static void assumePosix() {
    assumeTrue(OperatingSystem.current() != OperatingSystem.WINDOWS, "modes are those of Unix");
  }

  /** Debian policy, 5.6.12: a tilde sorts before the end of a part; RPM does the same. */
  @Test
  void whatLeadsToAVersionIsOlderThanIt() {
    assertThat(release("0.1.0-SNAPSHOT").ordered()).isEqualTo("0.1.0~snapshot");
    assertThat(release("0.1.0").ordered()).isEqualTo("0.1.0");
    assertThat(release("0.1.0-SNAPSHOT").numbers()).isEqualTo("0.1.0");
  }

  @Test
  void allFilesGetOneTimeAndTheModesOfAnOpenProgram() throws IOException {
    assumePosix();
    var secret = file("home/lib/a.jar", "a");
    Files.setPosixFilePermissions(secret, PosixFilePermissions.fromString("rw-------"));
    var program = file("home/bin/framewright", "#!/bin/sh");
    Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwx------"));
    Files.setPosixFilePermissions(
        program.getParent(), PosixFilePermissions.fromString("rwxrwxrwx"));
    var link = Files.createSymbolicLink(folder.resolve("home/link"), Path.of("lib/a.jar"));

    Stamp.put(folder.resolve("home"), TIME);

    assertThat(mode(secret)).isEqualTo("rw-r--r--");
    assertThat(mode(program)).isEqualTo("rwxr-xr-x");
    assertThat(mode(program.getParent())).isEqualTo("rwxr-xr-x");
    for (var path : List.of(secret, program, program.getParent(), folder.resolve("home"), link)) {
      assertThat(Files.getLastModifiedTime(path, LinkOption.NOFOLLOW_LINKS).toInstant())
          .as(path.toString())
          .isEqualTo(TIME);
    }
  }

  @Test
  void aCopyKeepsTimesAndLinksAndLeavesOutWhatIsNotWanted() throws IOException {
    assumePosix();
    var jar = file("home/lib/a.jar", "a");
    file("home/man/man1/framewright.1", ".TH");
    Files.createSymbolicLink(folder.resolve("home/link"), Path.of("lib/a.jar"));
    Stamp.put(folder.resolve("home"), TIME);

    Folders.copy(folder.resolve("home"), folder.resolve("to"), Home::withoutSystemPlaces);

    assertThat(Files.getLastModifiedTime(folder.resolve("to/lib/a.jar")))
        .isEqualTo(Files.getLastModifiedTime(jar));
    assertThat(Files.readSymbolicLink(folder.resolve("to/link"))).isEqualTo(Path.of("lib/a.jar"));
    assertThat(Files.exists(folder.resolve("to/man"))).isFalse();
  }

  @Test
  void whatLaysAFolderAnewRemovesLinksAndNotWhereTheyLead() throws IOException {
    assumePosix();
    var kept = file("elsewhere/kept.txt", "kept");
    file("out/old.txt", "old");
    Files.createSymbolicLink(folder.resolve("out/link"), folder.resolve("elsewhere"));

    var out = Folders.empty(folder.resolve("out"));

    try (var files = Files.list(out)) {
      assertThat(files.toList()).isEmpty();
    }
    assertThat(Files.readString(kept)).isEqualTo("kept");
  }

  private JsonNode component(BillOfMaterials bill, int number) throws IOException {
    return new JsonMapper().readTree(bill.file().toFile()).get("components").get(number);
  }

  @Test
  void theJavaInThePackageIsInTheListOfWhatIsDistributed() throws IOException {
    var bill = new BillOfMaterials(file("bill.json", "{\"components\": [{\"name\": \"icu4j\"}]}"));

    bill.addRuntime(file("release", "JAVA_VERSION=\"25.0.3\"\nMODULES=\"java.base\"\n"));

    assertThat(component(bill, 1).get("name").asText()).isEqualTo("OpenJDK runtime");
    assertThat(component(bill, 1).get("version").asText()).isEqualTo("25.0.3");
  }

  @Test
  void aJarThatThePackagesChangeIsListedAsItIsThere() throws IOException {
    var bill =
        new BillOfMaterials(
            file("bill.json", "{\"components\": [{\"name\": \"tool\", \"version\": \"1.0\"}]}"));

    bill.changed(file("tool-1.0.jar", "abc"), "raised");

    assertThat(component(bill, 0).at("/hashes/0/content").asText())
        .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    assertThat(component(bill, 0).at("/pedigree/notes").asText()).isEqualTo("raised");
    assertThatThrownBy(() -> bill.changed(file("other-1.0.jar", ""), "raised"))
        .isInstanceOf(IOException.class);
  }

  /** Java 5 writes version 49. Source: Java Virtual Machine Specification 25, table 4.1-A. */
  @Test
  void classesOfJava5AreWrittenInTheFormOfJava8AndDoTheSame() throws Exception {
    var old =
        ClassFile.of()
            .build(
                ClassDesc.of("Old"),
                type ->
                    type.withVersion(49, 0)
                        .withMethodBody(
                            "larger",
                            MethodTypeDesc.ofDescriptor("(II)I"),
                            ClassFile.ACC_PUBLIC | ClassFile.ACC_STATIC,
                            code ->
                                code.iload(0)
                                    .iload(1)
                                    .ifThenElse(
                                        Opcode.IF_ICMPGT,
                                        yes -> yes.iload(0).ireturn(),
                                        no -> no.iload(1).ireturn())));
    var jar = folder.resolve("old.jar");
    try (var out = new JarOutputStream(Files.newOutputStream(jar))) {
      out.putNextEntry(new JarEntry("Old.class"));
      out.write(old);
      out.putNextEntry(new JarEntry("old.txt"));
      out.write('x');
    }

    RaisedClasses.raise(jar);

    try (var loader = new URLClassLoader(new URL[] {jar.toUri().toURL()}, null);
        var text = loader.getResourceAsStream("old.txt");
        var type = loader.getResourceAsStream("Old.class")) {
      assertThat(text.readAllBytes()).isEqualTo(new byte[] {'x'});
      assertThat(ClassFile.of().parse(type.readAllBytes()).majorVersion()).isEqualTo(52);
      var larger = loader.loadClass("Old").getMethod("larger", int.class, int.class);
      assertThat(larger.invoke(null, 3, 5)).isEqualTo(5);
    }
  }

  @Test
  void aFormatWhoseToolIsAbsentIsLeftOutWithTheReason() throws IOException {
    if (Tool.find("wix", release("0.1.0")).isEmpty()) {
      var outcome = new Msi().make(release("0.1.0"), new Home(folder));
      assertThat(outcome).isEqualTo(new Outcome.LeftOut("there is no wix on the PATH"));
    }
  }

  @Test
  void checksumsAreLinesThatSha256sumReads() throws IOException {
    var one = file("out/b.deb", "abc");
    var two = file("out/a.rpm", "");

    Checksums.write(folder.resolve("out"), List.of(one, two));

    // "abc": FIPS 180-2, B.1; the empty one: RFC 6234's test programs.
    assertThat(Files.readString(folder.resolve("out/SHA256SUMS")))
        .isEqualTo(
            """
            e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855  a.rpm
            ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  b.deb
            """);
  }

  /** macOS and Windows take two names that differ by case for one. */
  @Test
  void noTwoFilesOfOneFolderDifferByCaseAlone() throws IOException {
    for (var tree : List.of("src/main/launch", "src/main/package", "src/main/licences")) {
      try (var paths = Files.walk(Path.of(tree))) {
        var names = paths.map(Path::toString).toList();
        var folded = new TreeSet<>(String.CASE_INSENSITIVE_ORDER);
        folded.addAll(names);
        assertThat(folded).as(tree).hasSize(names.size());
      }
    }
  }

  /**
   * A program that says it opens folders becomes, where a desktop names no other for them, the one
   * that opens every folder: the first by its name.
   */
  @Test
  void theMenuEntryClaimsNoFolders() throws IOException {
    var entry = Files.readString(Path.of("src/main/package/framewright.desktop"));
    assertThat(entry).contains("\nExec=framewright open %f\n").doesNotContain("MimeType");
  }
}
