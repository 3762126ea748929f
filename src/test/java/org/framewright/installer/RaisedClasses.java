package org.framewright.installer;

import java.io.IOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassFileVersion;
import java.lang.classfile.ClassHierarchyResolver;
import java.lang.classfile.ClassTransform;
import java.lang.classfile.CodeTransform;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Collections;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import java.util.jar.JarOutputStream;

/**
 * Writes the classes of a library in a newer form of class files. Those of Java 5, which some
 * libraries keep to, Java verifies in a way of old that no cache can hold; nothing that they do
 * changes.
 */
final class RaisedClasses {
  static final String NOTE =
      "In packages its class files are written in the form of Java 8 (version 52) with stack maps,"
          + " so that they can be cached; what they do is unchanged.";

  private static final int JAVA_8 = 52;

  private RaisedClasses() {}

  /** Replaces the jar. Entries keep their order and their times. */
  static void raise(Path jar) throws IOException {
    var raised = jar.resolveSibling(jar.getFileName() + ".raised");
    var classes = classFiles();
    try (var in = new JarFile(jar.toFile());
        var out = new JarOutputStream(Files.newOutputStream(raised))) {
      for (var entry : Collections.list(in.entries())) {
        var bytes = in.getInputStream(entry).readAllBytes();
        var copy = new JarEntry(entry.getName());
        copy.setTimeLocal(entry.getTimeLocal());
        out.putNextEntry(copy);
        out.write(isOrdinaryClass(entry.getName()) ? raised(classes, bytes) : bytes);
        out.closeEntry();
      }
    }
    Files.move(raised, jar, StandardCopyOption.REPLACE_EXISTING);
  }

  private static boolean isOrdinaryClass(String name) {
    return name.endsWith(".class")
        && !name.equals("module-info.class")
        && !name.startsWith("META-INF/");
  }

  /** Stack maps need to know what extends what: the library is on this program's class path. */
  private static ClassFile classFiles() {
    var hierarchy =
        ClassHierarchyResolver.ofResourceParsing(RaisedClasses.class.getClassLoader())
            .orElse(ClassHierarchyResolver.defaultResolver());
    return ClassFile.of(
        ClassFile.StackMapsOption.GENERATE_STACK_MAPS,
        ClassFile.ConstantPoolSharingOption.NEW_POOL,
        ClassFile.ClassHierarchyResolverOption.of(hierarchy));
  }

  private static byte[] raised(ClassFile classes, byte[] bytes) {
    var parsed = classes.parse(bytes);
    if (parsed.majorVersion() >= JAVA_8) {
      return bytes;
    }
    var version =
        ClassTransform.transformingMethodBodies(CodeTransform.ACCEPT_ALL)
            .andThen(
                (builder, element) -> {
                  if (element instanceof ClassFileVersion) {
                    builder.withVersion(JAVA_8, 0);
                  } else {
                    builder.with(element);
                  }
                });
    return classes.transformClass(parsed, version);
  }
}
