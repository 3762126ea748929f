package org.framewright.installer;

import java.io.IOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassHierarchyResolver;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.function.UnaryOperator;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;

/** Writes the classes of a jar anew. */
final class JarClasses {
  private JarClasses() {}

  /**
   * Replaces the jar. Entries keep their order and their times; other files stay as they are.
   *
   * @param added classes of this program that the jar gets as well, with the time of its last entry
   */
  static void rewrite(Path jar, UnaryOperator<byte[]> change, Class<?>... added)
      throws IOException {
    var rewritten = jar.resolveSibling(jar.getFileName() + ".rewritten");
    try (var in = new JarFile(jar.toFile());
        var out = new JarOutputStream(Files.newOutputStream(rewritten))) {
      var time = LocalDateTime.of(1980, 1, 1, 0, 0); // The earliest that a jar can say.
      for (var entry : Collections.list(in.entries())) {
        var bytes = in.getInputStream(entry).readAllBytes();
        var copy = new JarEntry(entry.getName());
        copy.setTimeLocal(entry.getTimeLocal());
        out.putNextEntry(copy);
        out.write(isOrdinaryClass(entry.getName()) ? change.apply(bytes) : bytes);
        out.closeEntry();
        time = entry.getTimeLocal();
      }
      for (var type : added) {
        var entry = new JarEntry(path(type));
        entry.setTimeLocal(time);
        out.putNextEntry(entry);
        out.write(bytes(type));
        out.closeEntry();
      }
    }
    Files.move(rewritten, jar, StandardCopyOption.REPLACE_EXISTING);
  }

  private static String path(Class<?> type) {
    return type.getName().replace('.', '/') + ".class";
  }

  private static byte[] bytes(Class<?> type) throws IOException {
    try (var in = type.getClassLoader().getResourceAsStream(path(type))) {
      return in.readAllBytes();
    }
  }

  private static boolean isOrdinaryClass(String name) {
    return name.endsWith(".class")
        && !name.equals("module-info.class")
        && !name.startsWith("META-INF/");
  }

  /** Stack maps need to know what extends what: the jars are on this program's class path. */
  static ClassFile classFiles(ClassFile.Option... options) {
    var hierarchy =
        ClassHierarchyResolver.ofResourceParsing(JarClasses.class.getClassLoader())
            .orElse(ClassHierarchyResolver.defaultResolver());
    return ClassFile.of(options).withOptions(ClassFile.ClassHierarchyResolverOption.of(hierarchy));
  }
}
