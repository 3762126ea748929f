package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import javafx.geometry.Bounds;
import javafx.scene.Node;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import javafx.scene.paint.Color;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Where the keys go, on every page of the real app. */
@Tag("slow")
class FocusTest {
  private static final List<List<KeyCode>> PAGES =
      List.of(
          List.of(KeyCode.F2),
          List.of(KeyCode.F3),
          List.of(KeyCode.F4),
          List.of(KeyCode.F5),
          List.of(KeyCode.F6),
          List.of(KeyCode.F7),
          List.of(KeyCode.F12),
          List.of(OpenApp.SHORTCUT, KeyCode.COMMA),
          List.of(KeyCode.SHIFT, KeyCode.F4),
          List.of(KeyCode.SHIFT, KeyCode.F2));

  /** More than any page has. */
  private static final int MOST = 80;

  /** The ring around a control. */
  private static final int RING = 6;

  /** What tells a control that has the keys from one that has not, WCAG 2.2, 2.4.13. */
  private static final double CONTRAST = 3;

  /** In pixels: a bar as high as a line of a list. */
  private static final double LARGE_ENOUGH = 100;

  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  @BeforeEach
  void openAJob() throws Exception {
    var job = FreshJob.withFrames(folder, clock, 2);
    job.mark("003", SetupState.ON_SET, MarkDetails.NONE);
    app = OpenApp.open(folder.resolve("settings"), clock, new Answers(folder));
    app.openJob(job);
    app.awaitReading(".set-code", "003");
  }

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  private Node focused() throws Exception {
    return onInterface(() -> app.app().scene().getFocusOwner());
  }

  private void turnTo(List<KeyCode> page) throws Exception {
    app.press(KeyCode.F2);
    app.press(page.toArray(KeyCode[]::new));
    app.await(() -> app.app().scene().getFocusOwner() != null);
    waitForFxEvents();
  }

  /** What Tab leads to, from where a page begins until it is there again. */
  private List<Node> walk(KeyCode... step) throws Exception {
    var met = new ArrayList<Node>();
    var at = focused();
    while (!met.contains(at) && met.size() < MOST) {
      met.add(at);
      app.press(step);
      at = focused();
    }
    assertThat(at).as("Tab leads back to where it began, past " + met).isEqualTo(met.getFirst());
    return met;
  }

  @Test
  void tabLeadsAroundEachPageAndBackAgain() throws Exception {
    for (var page : PAGES) {
      turnTo(page);
      var there = walk(KeyCode.TAB);
      var back = walk(KeyCode.SHIFT, KeyCode.TAB);
      assertThat(back).as(page.toString()).hasSize(there.size());
    }
  }

  @Test
  void tabGoesDownAColumnAndFromLeftToRight() throws Exception {
    var wrong = new ArrayList<String>();
    for (var page : PAGES) {
      turnTo(page);
      var met = walk(KeyCode.TAB);
      int turns = 0;
      for (int i = 0; i < met.size(); i++) {
        var from = bounds(met.get(i));
        var to = bounds(met.get((i + 1) % met.size()));
        boolean back = to.getMaxX() <= from.getMinX() && to.getMinY() < from.getMaxY();
        boolean up =
            to.getMaxY() <= from.getMinY()
                && to.getMinX() < from.getMaxX()
                && from.getMinX() < to.getMaxX();
        if (back || up) {
          turns++;
          wrong.add(page + ": " + met.get(i) + " -> " + met.get((i + 1) % met.size()));
        }
      }
      if (turns == 1) {
        wrong.removeLast();
      }
    }
    assertThat(wrong).isEmpty();
  }

  private Bounds bounds(Node node) throws Exception {
    return onInterface(() -> node.localToScene(node.getLayoutBounds()));
  }

  @Test
  void whatHasTheKeysIsSeen() throws Exception {
    var unseen = new ArrayList<String>();
    for (var page : PAGES) {
      turnTo(page);
      var met = walk(KeyCode.TAB);
      for (var node : met) {
        var with = picture();
        app.press(KeyCode.TAB);
        int seen = seen(node, with, picture());
        if (met.size() > 1 && seen < least(node)) {
          unseen.add(page + ": " + node + " by " + seen + " pixels");
        }
      }
    }
    assertThat(unseen).isEmpty();
  }

  /** As much as a line along the shorter side; of what is large, a part of it says so. */
  private double least(Node node) throws Exception {
    var place = bounds(node);
    return Math.min(LARGE_ENOUGH, 0.7 * Math.min(place.getWidth(), place.getHeight()));
  }

  private WritableImage picture() throws Exception {
    waitForFxEvents();
    return onInterface(() -> app.app().scene().snapshot(null));
  }

  /** How many pixels at a node tell whether it has the keys. */
  private int seen(Node node, WritableImage with, WritableImage without) throws Exception {
    var place = bounds(node);
    int seen = 0;
    for (int y = (int) Math.max(0, place.getMinY() - RING);
        y < Math.min(with.getHeight(), place.getMaxY() + RING);
        y++) {
      for (int x = (int) Math.max(0, place.getMinX() - RING);
          x < Math.min(with.getWidth(), place.getMaxX() + RING);
          x++) {
        var one = luminance(with.getPixelReader().getColor(x, y));
        var other = luminance(without.getPixelReader().getColor(x, y));
        if ((Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05) >= CONTRAST) {
          seen++;
        }
      }
    }
    return seen;
  }

  /** WCAG 2.2, relative luminance. */
  private static double luminance(Color color) {
    return 0.2126 * linear(color.getRed())
        + 0.7152 * linear(color.getGreen())
        + 0.0722 * linear(color.getBlue());
  }

  private static double linear(double channel) {
    return channel <= 0.04045 ? channel / 12.92 : Math.pow((channel + 0.055) / 1.055, 2.4);
  }
}
