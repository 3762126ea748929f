package org.framewright.installer;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.CodeElement;
import java.lang.classfile.MethodModel;
import java.lang.classfile.instruction.InvokeDynamicInstruction;
import java.lang.classfile.instruction.InvokeInstruction;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is written out says the same as what Java makes: the same classes, with and without. */
class DirectCallsTest {
  /** A component of each type. */
  @SuppressWarnings("ArrayRecordComponent") // An array is equal to itself only, written out too.
  record Every(
      boolean flag,
      byte small,
      char letter,
      short few,
      int some,
      long many,
      float rough,
      double fine,
      String text,
      int[] array,
      List<?> list) {}

  record Nothing() {}

  sealed interface Shape {
    /** A switch in an interface. */
    default String named() {
      return switch (this) {
        case Dot _ -> "dot";
        case Line line when line.length() > 10 -> "long line";
        case Line line when line.length() < 0 -> "no line";
        case Line _ -> "line";
        case Several(Shape first, Line second) -> first.named() + " and " + second.named();
        case Several several -> "several, first " + several.first().named();
      };
    }
  }

  record Dot() implements Shape {}

  record Line(int length) implements Shape {}

  record Several(Shape first, Shape second) implements Shape {}

  /** Makes values and asks what is compared: the same code in both worlds. */
  static final class Asked implements Function<String, String> {
    private static final float[] FLOATS = {
      0f, -0f, 1f, Float.NaN, Float.intBitsToFloat(0x7fc00001)
    };

    private static List<Record> records() {
      int[] array = {1};
      var records = new ArrayList<Record>();
      for (float rough : FLOATS) {
        for (int i = -1; i < 2; i++) {
          records.add(
              new Every(
                  i == 0,
                  (byte) i,
                  (char) i,
                  (short) i,
                  i,
                  (long) i << 40,
                  rough,
                  -rough,
                  i == 0 ? null : "text" + i,
                  i == 1 ? array : null,
                  List.of(i)));
        }
      }
      records.add(new Every(true, (byte) 0, 'a', (short) 0, 0, 0, 0, 0, null, null, null));
      records.add(new Every(false, (byte) 0, 'a', (short) 0, 0, 0, 0, 0, null, null, null));
      records.add(new Every(true, (byte) 0, 'a', (short) 0, 0, 1L << 32, 0, 0, null, null, null));
      records.add(new Nothing());
      records.add(new Nothing());
      return records;
    }

    private static String chosen(Object value) {
      return switch (value) {
        case null -> "null";
        case String text when text.isEmpty() -> "empty";
        case String _ -> "text";
        case Integer number when number > 5 -> "large";
        case int[] numbers -> "numbers " + numbers.length;
        case Shape shape -> shape.named();
        default -> "other";
      };
    }

    private static List<List<String>> sorted() {
      var words = List.of("pear", "fig", "apple", "date", "Fig", "plum", "", "kiwi");
      return Stream.<Comparator<String>>of(
              Comparator.comparing((String word) -> word.toLowerCase(Locale.ROOT)),
              Comparator.comparing(word -> word, String.CASE_INSENSITIVE_ORDER),
              Comparator.comparingInt(String::length).thenComparing(word -> word),
              Comparator.comparingLong(String::length)
                  .thenComparing(Comparator.<String>naturalOrder().reversed()),
              Comparator.comparingDouble((String word) -> 1.0 / word.length())
                  .thenComparing(word -> word, Comparator.reverseOrder()),
              Comparator.comparingInt((String word) -> word.length() % 2)
                  .thenComparingInt((String word) -> -word.length())
                  .thenComparingLong((String word) -> word.hashCode()),
              Comparator.comparingInt((String word) -> word.length() % 3)
                  .thenComparingDouble((String word) -> 1.0 / word.hashCode()))
          .map(order -> words.stream().sorted(order).toList())
          .toList();
    }

    @Override
    public String apply(String what) {
      var records = records();
      return switch (what) {
        case "hash codes" ->
            // An array says its own at each run.
            records.stream()
                .filter(one -> !(one instanceof Every every) || every.array() == null)
                .map(one -> String.valueOf(one.hashCode()))
                .toList()
                .toString();
        case "sorted" -> sorted().toString();
        case "equal pairs" ->
            records.stream()
                .flatMap(
                    one -> Stream.concat(records.stream(), Stream.of("", "x")).map(one::equals))
                .toList()
                .toString();
        default ->
            Stream.of(
                    null,
                    "",
                    "x",
                    5,
                    6,
                    7L,
                    new int[3],
                    new Dot(),
                    new Line(11),
                    new Line(-1),
                    new Line(1),
                    new Several(new Dot(), new Line(3)),
                    new Several(new Line(20), new Dot()))
                .map(Asked::chosen)
                .toList()
                .toString();
      };
    }
  }

  @TempDir private Path folder;
  private Path jar;

  @BeforeEach
  void aJarOfTheseClasses() throws IOException {
    jar = folder.resolve("classes.jar");
    try (var out = new JarOutputStream(Files.newOutputStream(jar))) {
      for (var type :
          List.of(
              DirectCallsTest.class,
              Every.class,
              Nothing.class,
              Shape.class,
              Dot.class,
              Line.class,
              Several.class,
              Asked.class)) {
        var name = type.getName().replace('.', '/') + ".class";
        out.putNextEntry(new JarEntry(name));
        try (var bytes = Objects.requireNonNull(type.getClassLoader().getResourceAsStream(name))) {
          bytes.transferTo(out);
        }
      }
    }
    DirectCalls.write(jar);
  }

  @SuppressWarnings("unchecked")
  private String written(String what) throws Exception {
    // Whatever else the class names is found where it was; the types of the jar come from the jar.
    try (var loader =
        new URLClassLoader(new URL[] {jar.toUri().toURL()}, ClassLoader.getPlatformClassLoader())) {
      var made = loader.loadClass(Asked.class.getName()).getDeclaredConstructor();
      made.setAccessible(true);
      return ((Function<String, String>) made.newInstance()).apply(what);
    }
  }

  @Test
  void recordsAreEqualToTheSameOnesAsBefore() throws Exception {
    assertThat(written("equal pairs")).isEqualTo(new Asked().apply("equal pairs"));
  }

  @Test
  void recordsHaveTheHashCodesOfBefore() throws Exception {
    assertThat(written("hash codes")).isEqualTo(new Asked().apply("hash codes"));
  }

  @Test
  void switchesChooseWhatTheyChoseBefore() throws Exception {
    assertThat(written("switches")).isEqualTo(new Asked().apply("switches"));
  }

  @Test
  void whatIsSortedStandsAsBefore() throws Exception {
    assertThat(written("sorted")).isEqualTo(new Asked().apply("sorted"));
  }

  @Test
  void nothingIsLeftThatJavaMakesAtTheFirstUse() throws Exception {
    try (var loader = new URLClassLoader(new URL[] {jar.toUri().toURL()}, null)) {
      for (var type :
          List.of(Every.class, Nothing.class, Shape.class, Several.class, Asked.class)) {
        try (var bytes = loader.getResourceAsStream(type.getName().replace('.', '/') + ".class")) {
          var left = ClassFile.of().parse(bytes.readAllBytes()).methods().stream();
          assertThat(left.flatMap(DirectCallsTest::calls).map(DirectCallsTest::maker))
              .as(type.getName())
              .doesNotContain("equals", "hashCode", "typeSwitch", "Comparator");
        }
      }
    }
  }

  private static Stream<CodeElement> calls(MethodModel method) {
    return method.code().stream().flatMap(code -> code.elementStream());
  }

  private static String maker(CodeElement element) {
    return switch (element) {
      case InvokeDynamicInstruction call -> call.name().stringValue();
      case InvokeInstruction call
          when call.name().stringValue().startsWith("comparing")
              || call.name().stringValue().startsWith("thenComparing") ->
          call.owner().asSymbol().displayName();
      default -> "";
    };
  }
}
