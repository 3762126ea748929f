package org.framewright;

import java.lang.reflect.InvocationTargetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * Runs the benchmark that is named, {@code mvn -q -Pbench -Dbench=Renaming} for {@code
 * RenamingBenchmark}; without a name it lists them.
 */
final class Benchmarks {
  private static final String SUFFIX = "Benchmark";

  private Benchmarks() {}

  public static void main(String[] args) throws Exception {
    var wanted = args.length == 0 ? "" : args[0];
    var benchmarks = all();
    var found = benchmarks.stream().filter(name -> simple(name).equals(wanted)).findFirst();
    if (found.isEmpty()) {
      System.out.println("Benchmarks: mvn -q -Pbench -Dbench=NAME with a NAME of");
      benchmarks.forEach(name -> System.out.println("  " + simple(name)));
      if (!wanted.isEmpty()) {
        System.exit(2);
      }
      return;
    }
    var rest = Arrays.copyOfRange(args, 1, args.length);
    var main = Class.forName(found.get()).getDeclaredMethod("main", String[].class);
    main.setAccessible(true);
    try {
      main.invoke(null, (Object) rest);
    } catch (InvocationTargetException e) {
      if (e.getCause() instanceof Exception cause) {
        throw cause;
      }
      throw e;
    }
  }

  private static List<String> all() throws Exception {
    var tests = Path.of("src/test/java");
    try (Stream<Path> files = Files.walk(tests)) {
      return files
          .map(file -> tests.relativize(file).toString())
          .filter(file -> file.endsWith(SUFFIX + ".java"))
          .map(file -> file.replace(".java", "").replace('/', '.').replace('\\', '.'))
          .sorted()
          .toList();
    }
  }

  private static String simple(String name) {
    var simple = name.substring(name.lastIndexOf('.') + 1);
    return simple.substring(0, simple.length() - SUFFIX.length());
  }
}
