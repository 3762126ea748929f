package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import com.ibm.icu.text.MessagePattern;
import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.ConditionalExpressionTree;
import com.sun.source.tree.ExpressionTree;
import com.sun.source.tree.IdentifierTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.SwitchExpressionTree;
import com.sun.source.tree.Tree;
import com.sun.source.tree.VariableTree;
import com.sun.source.tree.YieldTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javax.lang.model.element.Modifier;
import javax.tools.ToolProvider;
import org.framewright.base.ByteSizes;
import org.framewright.base.Problem;
import org.framewright.base.Text;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the core says is said in each language of the app. */
class CoreTextsTest {
  /** Every room but those of the two faces. */
  private static final List<String> ROOMS =
      List.of(
          "base",
          "copies",
          "day",
          "frames",
          "handoff",
          "job",
          "mhl",
          "naming",
          "ready",
          "renaming",
          "report",
          "share",
          "shotlist",
          "studio");

  /** Rooms in which no problem is put together from pieces that nobody could translate. */
  private static final Set<String> WHOLE =
      Set.of(
          "base",
          "frames",
          "handoff",
          "job",
          "naming",
          "ready",
          "renaming",
          "report",
          "share",
          "shotlist",
          "studio");

  private static final Pattern LETTERS = Pattern.compile("\\p{L}{2}");
  private static final Pattern CLOSE = Pattern.compile("[\\p{L}\\p{N}}»)][:;!?](?=\\s|$)");

  /** Finds the texts of problems, and those that are put together. */
  private static final class Scan extends TreePathScanner<Void, Set<String>> {
    private final Set<String> pieces = new TreeSet<>();

    /** What is made a text by its name alone, so that nobody knows which. */
    private final Set<String> unseen = new TreeSet<>();

    private final Map<String, String> constants = new HashMap<>();

    /** A remedy that several problems share. */
    @Override
    public Void visitVariable(VariableTree variable, Set<String> found) {
      var words = variable.getInitializer() == null ? null : words(variable.getInitializer());
      if (words != null && variable.getModifiers().getFlags().contains(Modifier.STATIC)) {
        constants.put(variable.getName().toString(), words);
      }
      return super.visitVariable(variable, found);
    }

    @Override
    public Void visitCompilationUnit(CompilationUnitTree unit, Set<String> found) {
      constants.clear();
      return super.visitCompilationUnit(unit, found);
    }

    @Override
    public Void visitNewClass(NewClassTree made, Set<String> found) {
      var arguments = made.getArguments();
      if (made.getIdentifier().toString().equals("Problem") && arguments.size() > 1) {
        add(arguments.getFirst(), found);
        add(arguments.getLast(), found);
      }
      return super.visitNewClass(made, found);
    }

    @Override
    public Void visitMethodInvocation(MethodInvocationTree call, Set<String> found) {
      switch (call.getMethodSelect().toString()) {
        case "Text.of" -> {
          var first = call.getArguments().getFirst();
          add(first, found);
          if (first instanceof IdentifierTree name && !constants.containsKey("" + name)) {
            unseen.add(call.toString());
          }
        }
        case "Text.counted" -> add(call.getArguments().get(1), found);
        default -> {}
      }
      return super.visitMethodInvocation(call, found);
    }

    private void add(ExpressionTree text, Set<String> found) {
      var words = text instanceof IdentifierTree name ? constants.get("" + name) : words(text);
      if (words != null) {
        found.add(words);
        return;
      }
      switch (text) {
        case ParenthesizedTree inner -> add(inner.getExpression(), found);
        case ConditionalExpressionTree choice -> {
          add(choice.getTrueExpression(), found);
          add(choice.getFalseExpression(), found);
        }
        case SwitchExpressionTree choice -> {
          for (var one : choice.getCases()) {
            if (one.getBody() instanceof YieldTree yields) {
              add(yields.getValue(), found);
            } else if (one.getBody() instanceof ExpressionTree value) {
              add(value, found);
            }
          }
        }
        default -> {
          if (text.getKind() == Tree.Kind.PLUS) {
            pieces.add(text.toString());
          }
        }
      }
    }

    private static String words(Tree tree) {
      return switch (tree) {
        case LiteralTree literal when literal.getValue() instanceof String text -> text;
        case BinaryTree sum when sum.getKind() == Tree.Kind.PLUS -> {
          var left = words(sum.getLeftOperand());
          var right = words(sum.getRightOperand());
          yield left == null || right == null ? null : left + right;
        }
        default -> null;
      };
    }
  }

  private static Scan scan(List<String> rooms, Set<String> found) throws IOException {
    var sources = new ArrayList<Path>();
    for (var room : rooms) {
      try (var files = Files.walk(Path.of("src/main/java/org/framewright", room))) {
        files.filter(file -> file.toString().endsWith(".java")).forEach(sources::add);
      }
    }
    var compiler = ToolProvider.getSystemJavaCompiler();
    var scan = new Scan();
    try (var files = compiler.getStandardFileManager(null, Locale.ROOT, StandardCharsets.UTF_8)) {
      var task =
          (JavacTask)
              compiler.getTask(
                  null,
                  files,
                  _ -> {},
                  List.of("-proc:none"),
                  null,
                  files.getJavaFileObjectsFromPaths(sources));
      for (var unit : task.parse()) {
        scan.scan(unit, found);
      }
    }
    return scan;
  }

  private static Properties bundle(String language) throws IOException {
    var all = new Properties();
    var name = "/org/framewright/core_" + language + ".properties";
    try (var in =
        new InputStreamReader(Texts.class.getResourceAsStream(name), StandardCharsets.UTF_8)) {
      all.load(in);
    }
    return all;
  }

  @Tag("slow")
  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void everyTextOfAProblemIsTranslated(String language) throws IOException {
    var found = new TreeSet<String>();
    scan(ROOMS, found);
    found.removeIf(text -> !LETTERS.matcher(text).find());
    assertThat(found).hasSizeGreaterThan(150);
    found.removeAll(bundle(language).stringPropertyNames());
    assertThat(found).isEmpty();
  }

  @Test
  @Tag("slow")
  void noProblemOfARoomThatIsTranslatedIsPutTogether() throws IOException {
    assertThat(scan(List.copyOf(WHOLE), new TreeSet<>()).pieces).isEmpty();
  }

  /** But in records of which the constructors take the words as they stand, which are read here. */
  @Tag("slow")
  @Test
  void noTextOfARoomThatIsTranslatedIsKnownByANameAlone() throws IOException {
    var rooms = new TreeSet<>(WHOLE);
    rooms.removeAll(Set.of("base", "handoff"));
    assertThat(scan(List.copyOf(rooms), new TreeSet<>()).unseen).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"de", "fr"})
  void aTranslationHasTheValuesOfItsText(String language) throws IOException {
    var all = bundle(language);
    for (var text : all.stringPropertyNames()) {
      var translated = all.getProperty(text);
      assertThat(values(translated)).as(translated).isEqualTo(values(text));
      assertThat(translated).doesNotContain("'").isEqualTo(translated.strip());
      assertThat(CLOSE.matcher(translated).find() && language.equals("fr"))
          .as(translated + ": without the space that the French leave")
          .isFalse();
    }
  }

  private static Set<String> values(String pattern) {
    var values = new TreeSet<String>();
    if (!Pattern.compile("\\{\\d").matcher(pattern).find()) {
      return values;
    }
    var parsed = new MessagePattern(pattern);
    for (int i = 0; i < parsed.countParts(); i++) {
      if (parsed.getPartType(i) == MessagePattern.Part.Type.ARG_NUMBER) {
        values.add(parsed.getSubstring(parsed.getPart(i)));
      }
    }
    return values;
  }

  @Test
  void aProblemIsSaidInTheLanguageOfTheApp() {
    var problem = new Problem("the disk is full", "/shoots/a", "Make room, then do it again.");
    assertThat(Texts.in(Locale.ENGLISH).sentences(problem)).isEqualTo(problem.sentences());
    assertThat(Texts.in(Locale.GERMAN).sentences(problem))
        .isEqualTo(
            "/shoots/a: der Datenträger ist voll. Schaffen Sie Platz, dann tun Sie es noch"
                + " einmal.");
    assertThat(Texts.in(Locale.FRENCH).sentence(problem))
        .isEqualTo("/shoots/a\u202f: le disque est plein");
    var nowhere = new Problem("the disk is full", "");
    assertThat(Texts.in(Locale.GERMAN).sentences(nowhere)).isEqualTo("der Datenträger ist voll");
  }

  @Test
  void aPlaceInAFileIsSaidInTheLanguageOfTheApp() {
    var german = Texts.in(Locale.GERMAN);
    var french = Texts.in(Locale.FRENCH);
    var inLine = new Problem("the disk is full", "a, b.csv, line 1234", "");
    assertThat(german.sentence(inLine)).isEqualTo("a, b.csv, Zeile 1234: der Datenträger ist voll");
    var inColumn = new Problem("the disk is full", "a.yaml, line 3, column 12", "");
    assertThat(french.where(inColumn)).isEqualTo("a.yaml, ligne 3, colonne 12");
    assertThat(Texts.in(Locale.ENGLISH).where(inColumn)).isEqualTo(inColumn.where());
    for (var other : List.of("a, line", "line 3", "a, line 3 and more", "")) {
      assertThat(german.where(new Problem("x", other, ""))).isEqualTo(other);
    }
    assertThat(german.say(inLine.said())).contains("Zeile 1234").contains("ist voll");
    assertThat(inLine.said().english()).isEqualTo(inLine.sentence());
  }

  /** Units of the languages by CLDR: Go and ko in French, a comma before decimals in both. */
  @Test
  void aSizeIsSaidAsTheLanguageWritesIt() {
    var text = Text.of("{0}", ByteSizes.of(5_100_000_000L));
    assertThat(Texts.in(Locale.ENGLISH).say(text)).isEqualTo("5.1 GB").isEqualTo(text.english());
    assertThat(Texts.in(Locale.GERMAN).say(text).replace('\u00a0', ' ')).isEqualTo("5,1 GB");
    assertThat(Texts.in(Locale.FRENCH).say(text).replaceAll("[\u00a0\u202f]", " "))
        .isEqualTo("5,1 Go");
    var small = Text.of("{0}", ByteSizes.of(1_001));
    assertThat(small.english()).isEqualTo("2 kB");
    assertThat(Texts.in(Locale.ENGLISH).say(small)).isEqualTo("2 kB");
    var compared = Text.of("{0}", ByteSizes.inMegabytes(5_080_000_001L));
    assertThat(compared.english()).isEqualTo("5081 MB");
    assertThat(Texts.in(Locale.GERMAN).say(compared).replace('\u00a0', ' ')).isEqualTo("5.081 MB");
  }

  @Test
  void whatStandsInATextIsTranslatedToo() {
    var text = Text.of("this is {0}, and a plain file is needed here", Text.of("a folder"));
    assertThat(Texts.in(Locale.GERMAN).say(text))
        .isEqualTo("das ist ein Ordner, und hier wird eine gewöhnliche Datei gebraucht");
  }

  @Test
  void whatIsNotTranslatedIsSaidInEnglishWithWhatIs() {
    var text = Text.counted("{0} odd: {1}", "{0} odd ones: {1}", 1, Text.of("a folder"));
    assertThat(Texts.in(Locale.GERMAN).say(text)).isEqualTo("1 odd: ein Ordner");
  }
}
