package org.framewright.ui.look;

import static org.framewright.AssertThat.assertThat;

import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodInvocationTree;
import com.sun.source.tree.NewClassTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.TreePathScanner;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No source of the app has a text for people in itself: each stands in the bundles. */
class TextsInSourcesTest {
  /** Two words, which no key, style or file's name has. */
  private static final Pattern WORDS = Pattern.compile("\\p{L}[,;:.!?]? \\p{L}");

  /** Letters, or signs that are not written so in every language. */
  private static final Pattern SHOWN =
      Pattern.compile("\\p{L}|[:;!?\u201c\u201d\u00ab\u00bb]|\\. ");

  /** What they are given is seen, or heard by who does not see it. */
  private static final Set<String> SHOWING =
      Set.of(
          "setText",
          "setPromptText",
          "setAccessibleText",
          "setAccessibleHelp",
          "setAccessibleRoleDescription",
          "setTitle",
          "setHeaderText",
          "setContentText",
          "appendText",
          "say",
          "apart");

  private static final Set<String> SHOWING_TYPES =
      Set.of(
          "Label",
          "Button",
          "ToggleButton",
          "CheckBox",
          "RadioButton",
          "MenuItem",
          "Menu",
          "Tooltip",
          "Text",
          "TableColumn",
          "WrappedText",
          "Problem");

  /** Whatever is given to these is no text: a key of the bundles, a style, a name to look for. */
  private static final Set<String> NOT_SHOWN =
      Set.of("get", "has", "getResource", "getResourceAsStream", "log");

  /** Literals that look like texts and are none, each with its reason. */
  private static final Map<String, String> ALLOWED =
      Map.of(
          "views", "the id of a field",
          "Hg", "measures a line",
          "\nHg", "measures two lines",
          "never again", "a value in the settings' file",
          "no folder ", "for the log: the app says it from the bundles",
          "a choice is not typed", "for programmers: a converter that only writes",
          "%s and %s share the key %s", "for programmers: two commands of one key",
          "MM", "measures a width",
          "Source Code Pro", "a font");

  /** The paths of marks are letters and numbers: {@code M4 6 H20}. */
  private static final Pattern MARK = Pattern.compile("M\\d[\\dACHLMVZ ]*");

  private static final class Scan extends TreePathScanner<Void, Set<String>> {
    private final CompilationUnitTree unit;

    Scan(CompilationUnitTree unit) {
      this.unit = unit;
    }

    @Override
    public Void visitLiteral(LiteralTree literal, Set<String> found) {
      if (literal.getKind() == Tree.Kind.STRING_LITERAL
          && literal.getValue() instanceof String text
          && isForPeople(text)) {
        found.add(Path.of(unit.getSourceFile().getName()).getFileName() + ": " + text);
      }
      return null;
    }

    private boolean isForPeople(String text) {
      if (ALLOWED.containsKey(text) || MARK.matcher(text).matches()) {
        return false;
      }
      for (var at = getCurrentPath(); at != null; at = at.getParentPath()) {
        switch (at.getLeaf()) {
          case MethodInvocationTree call -> {
            var name = call.getMethodSelect().toString();
            var last = name.substring(name.lastIndexOf('.') + 1);
            if (NOT_SHOWN.contains(last)) {
              return false;
            }
            if (SHOWING.contains(last) || (name.equals("WrappedText.of") && isFirst(call))) {
              return SHOWN.matcher(text).find();
            }
          }
          case NewClassTree made when SHOWING_TYPES.contains(plain(made)) -> {
            return !made.getIdentifier().toString().startsWith("WrappedText")
                && SHOWN.matcher(text).find();
          }
          default -> {}
        }
      }
      return WORDS.matcher(text).find();
    }

    /** What follows are styles. */
    private boolean isFirst(MethodInvocationTree call) {
      var first = call.getArguments().getFirst();
      for (var at : getCurrentPath()) {
        if (at.equals(call)) {
          return false;
        }
        if (at.equals(first)) {
          return true;
        }
      }
      return false;
    }

    private static String plain(NewClassTree made) {
      return made.getIdentifier().toString().replaceAll("<.*", "");
    }
  }

  private static Set<String> textsIn(List<Path> sources) throws IOException {
    var compiler = ToolProvider.getSystemJavaCompiler();
    var found = new TreeSet<String>();
    try (var files = compiler.getStandardFileManager(null, null, null)) {
      var task =
          (JavacTask)
              compiler.getTask(
                  null,
                  files,
                  null,
                  List.of("-proc:none"),
                  null,
                  files.getJavaFileObjectsFromPaths(sources));
      for (var unit : task.parse()) {
        new Scan(unit).scan(unit, found);
      }
    }
    return found;
  }

  @Test
  void noTextStandsOutsideTheBundles() throws IOException {
    List<Path> sources;
    try (var files = Files.walk(Path.of("src/main/java/org/framewright/ui"))) {
      sources = files.filter(file -> file.toString().endsWith(".java")).toList();
    }
    assertThat(sources).hasSizeGreaterThan(100);
    assertThat(textsIn(sources)).isEmpty();
  }

  @Test
  void aTextInASourceIsFound(@TempDir Path folder) throws IOException {
    var source =
        Files.writeString(
            folder.resolve("Page.java"),
            """
            class Page {
              void show(Label label, int n, Texts texts) {
                label.setText("Frames");
                label.setText(n + " of " + n);
                label.setAccessibleText(label.getText() + ": " + n);
                new Tooltip("Again");
                WrappedText.of("Gone", "style-of-it");
                var later = "Plug the drive in";
                label.setText(texts.get("board.title"));
                label.setId("the-title");
                label.setText(n + "/" + n);
              }
            }
            """);
    assertThat(textsIn(List.of(source)))
        .containsExactly(
            "Page.java:  of ",
            "Page.java: : ",
            "Page.java: Again",
            "Page.java: Frames",
            "Page.java: Gone",
            "Page.java: Plug the drive in");
  }
}
