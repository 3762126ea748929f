package org.framewright.ui.look;

import atlantafx.base.theme.PrimerLight;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javafx.application.Application;
import javafx.application.ColorScheme;
import javafx.scene.Scene;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;

/** The two looks; both are one stylesheet with other values for the same semantic colours. */
public enum Theme {
  /**
   * A neutral grey surround for judging pictures (ISO 3664 asks for a neutral, dim surround of low
   * chroma).
   */
  NEUTRAL,
  /** Black on white, heavy strokes, for daylight on the screen. */
  SUNLIGHT;

  private static final String SHEET =
      Objects.requireNonNull(Theme.class.getResource("/org/framewright/ui/framewright.css"))
          .toExternalForm();

  /** What the toolkit's controls look like before the sheet speaks. */
  private static final String CONTROLS = new PrimerLight().getUserAgentStylesheet();

  private static final List<String> FONTS =
      List.of(
          "NotoSans_400Regular.ttf",
          "NotoSans_700Bold.ttf",
          "SourceCodePro_400Regular.ttf",
          "SourceCodePro_700Bold.ttf");

  static {
    // Asked for by their families afterwards: a font that is used as it was loaded shows boxes for
    // the scripts that it lacks.
    for (var font : FONTS) {
      Font.loadFont(
          Objects.requireNonNull(Theme.class.getResource("/org/framewright/ui/fonts/" + font))
              .toExternalForm(),
          0);
    }
  }

  /** How the names of such themes begin, with or without their inverse. */
  private static final String HIGH_CONTRAST = "HighContrast";

  /** The size that all others are relative to, in pixels, at scale 1. */
  private static final double BASE_PIXELS = 14;

  /** The table's ground in the neutral look, as in the sheet. */
  private static final Color TABLE = Color.web("#4c4c4c");

  /** The key of its name in the texts, and its word in the preferences. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The other one. */
  public Theme other() {
    return this == NEUTRAL ? SUNLIGHT : NEUTRAL;
  }

  /** The look of that word; neutral for a word that is none. */
  public static Theme of(String word) {
    return SUNLIGHT.word().equals(word) ? SUNLIGHT : NEUTRAL;
  }

  /**
   * The one that somebody sees who chose none: with strong contrasts where the system is set to
   * them.
   *
   * @param system what it is set to, by the names that {@link
   *     javafx.application.Platform.Preferences} lists
   */
  public static Theme asked(Map<String, Object> system) {
    boolean onWindows = Boolean.TRUE.equals(system.get("Windows.SPI.HighContrast"));
    boolean onLinux = String.valueOf(system.get("GTK.theme_name")).startsWith(HIGH_CONTRAST);
    return onWindows || onLinux ? SUNLIGHT : NEUTRAL;
  }

  /**
   * Dresses a scene.
   *
   * @param scale of everything, 1 for normal
   */
  public void dress(Scene scene, double scale) {
    dressInPixels(scene, BASE_PIXELS * scale);
  }

  /**
   * Dresses a scene.
   *
   * @param pixels the size of letters that all others are relative to
   */
  public void dressInPixels(Scene scene, double pixels) {
    // What is seen before the first picture of a window is drawn.
    scene.setFill(this == SUNLIGHT ? Color.WHITE : TABLE);
    scene.getPreferences().setColorScheme(this == SUNLIGHT ? ColorScheme.LIGHT : ColorScheme.DARK);
    if (!CONTROLS.equals(Application.getUserAgentStylesheet())) {
      Application.setUserAgentStylesheet(CONTROLS);
    }
    if (!scene.getStylesheets().contains(SHEET)) {
      scene.getStylesheets().add(SHEET);
    }
    var classes = scene.getRoot().getStyleClass();
    classes.removeAll(NEUTRAL.word(), SUNLIGHT.word());
    classes.add(word());
    scene.getRoot().setStyle(String.format(Locale.ROOT, "-fx-font-size: %.2fpx;", pixels));
  }
}
