package org.framewright.installer;

import java.io.IOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassFileVersion;
import java.lang.classfile.ClassTransform;
import java.lang.classfile.CodeTransform;
import java.nio.file.Path;

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

  /** Replaces the jar. */
  static void raise(Path jar) throws IOException {
    var classes =
        JarClasses.classFiles(
            ClassFile.StackMapsOption.GENERATE_STACK_MAPS,
            ClassFile.ConstantPoolSharingOption.NEW_POOL);
    JarClasses.rewrite(jar, bytes -> raised(classes, bytes));
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
