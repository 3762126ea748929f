package org.framewright.ui;

import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.stage.Screen;
import javafx.stage.Stage;
import org.framewright.ui.settings.Preferences;

/** The place of a window, kept between runs under names that begin with the window's. */
record WindowPlace(Preferences preferences, String window) {
  /** How wide the scene was, in pixels of the interface. */
  double width(double usual) {
    return preferences.number(key("width"), usual);
  }

  /** How high the scene was, in pixels of the interface. */
  double height(double usual) {
    return preferences.number(key("height"), usual);
  }

  /** The window goes where it was, as far as the displays still show that place. */
  void find(Stage stage, Scene scene) {
    var x = preferences.number(key("x"), Double.NaN);
    var y = preferences.number(key("y"), Double.NaN);
    if (!Double.isNaN(x) && !Double.isNaN(y)) {
      var kept = new Rectangle2D(x, y, scene.getWidth(), scene.getHeight());
      var displays = Screen.getScreens().stream().map(Screen::getVisualBounds).toList();
      var place = Displays.onto(displays, kept);
      stage.setX(place.getMinX());
      stage.setY(place.getMinY());
      if (place.getWidth() < kept.getWidth() || place.getHeight() < kept.getHeight()) {
        stage.setWidth(place.getWidth());
        stage.setHeight(place.getHeight());
      }
    }
    stage.setMaximized(preferences.number(key("maximised"), 0) == 1);
  }

  /** Keeps where the window is; one that fills its display leaves the place of before. */
  void keep(Stage stage, Scene scene) {
    preferences.put(key("maximised"), stage.isMaximized() ? 1 : 0);
    if (!stage.isMaximized() && !stage.isFullScreen()) {
      preferences.put(key("width"), scene.getWidth());
      preferences.put(key("height"), scene.getHeight());
      preferences.put(key("x"), stage.getX());
      preferences.put(key("y"), stage.getY());
    }
  }

  private String key(String what) {
    return window + "." + what;
  }
}
