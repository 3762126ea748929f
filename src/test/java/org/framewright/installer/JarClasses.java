package org.framewright.installer;

import java.io.IOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassHierarchyResolver;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collections;
import java.util.function.UnaryOperator;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;

/** Writes the classes of a jar anew. */
final class JarClasses {
  private JarClasses() {}

  /** Replaces the jar. Entries keep their order and their times; other files stay as they are. */
  static void rewrite(Path jar, UnaryOperator<byte[]> change) throws IOException {
    var rewritten = jar.resolveSibling(jar.getFileName() + ".rewritten");
    try (var in = new JarFile(jar.toFile());
        var out = new JarOutputStream(Files.newOutputStream(rewritten))) {
      for (var entry : Collections.list(in.entries())) {
        var bytes = in.getInputStream(entry).readAllBytes();
        var copy = new JarEntry(entry.getName());
        copy.setTimeLocal(entry.getTimeLocal());
        out.putNextEntry(copy);
        out.write(isOrdinaryClass(entry.getName()) ? change.apply(bytes) : bytes);
        out.closeEntry();
      }
    }
    Files.move(rewritten, jar, StandardCopyOption.REPLACE_EXISTING);
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
