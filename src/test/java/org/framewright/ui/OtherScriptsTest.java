package org.framewright.ui;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.ui.OnInterface.onInterface;
import static org.testfx.util.WaitForAsyncUtils.waitForFxEvents;

import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import javafx.scene.input.KeyCode;
import org.framewright.job.Job;
import org.framewright.job.MarkDetails;
import org.framewright.shotlist.SetupState;
import org.framewright.ui.session.Step;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Titles in Arabic, Hebrew, Thai, Devanagari and in several scripts at once, on every page and in
 * every width: the toolkit's own wrapping of such lines throws or paints them twice.
 */
@Tag("slow")
class OtherScriptsTest {
  private static final List<String> TITLES =
      List.of(
          "معطف طويل من الصوف الأزرق مع حزام جلدي وأزرار معدنية كبيرة (مقاس متوسط) - نسخة"
              + " الاستوديو",
          "מעיל צמר ארוך בצבע כחול עם חגורת עור וכפתורי מתכת גדולים [מידה בינונית], לצילום בסטודיו",
          "Coat معطف طويل KV-12 מעיל ארוך (blue) 3/4 من الصوف, wool מאוד רך، with a belt",
          "เสื้อโค้ทยาวผ้าวูลสีน้ำเงินพร้อมเข็มขัดหนังและกระดุมโลหะขนาดใหญ่สำหรับสตูดิโอ",
          "नीले ऊनी कपड़े का लंबा कोट चमड़े की बेल्ट और बड़े धातु के बटनों के साथ स्टूडियो के लिए");

  @TempDir private Path folder;
  private final Clock clock = Clock.system(ZoneOffset.UTC);
  private OpenApp app;

  @AfterEach
  void closeTheApp() throws Exception {
    app.close();
  }

  @ParameterizedTest
  @ValueSource(strings = {"en-GB", "fr-FR"})
  void eachPageShowsThemInEveryWidth(String language) throws Exception {
    var job = FreshJob.titled(folder, clock, TITLES);
    app =
        OpenApp.open(
            folder.resolve("settings"),
            clock,
            new Answers(folder),
            Locale.forLanguageTag(language),
            1);
    try (var uncaught = new Uncaught()) {
      app.openJob(job);
      for (var i = 1; i <= TITLES.size(); i++) {
        putOnSet(job, "%03d".formatted(i));
        app.await(() -> !app.reads(".set-title").isEmpty());
        for (var width = 730; width <= 990; width += 26) {
          wide(width);
        }
        uncaught.assertNone();
        assertThat(app.reads(".set-title")).isEqualTo(TITLES.get(i - 1));
      }
      app.press(KeyCode.R);
      app.await(() -> app.reads(".dialog-title").contains(TITLES.getFirst()));
      app.press(KeyCode.ESCAPE);
      for (var page :
          List.of(
              KeyCode.F3,
              KeyCode.F4,
              KeyCode.F5,
              KeyCode.F6,
              KeyCode.F7,
              KeyCode.F12,
              KeyCode.F2)) {
        app.press(page);
        wide(730);
        wide(980);
      }
      onInterface(
          () -> {
            app.app().turnClient();
            return job;
          });
      app.await(() -> app.app().clientScene().getWindow().isShowing());
      for (var width = 300; width <= 900; width += 50) {
        var next = width;
        onInterface(
            () -> {
              app.app().clientScene().getWindow().setWidth(next);
              return next;
            });
        waitForFxEvents();
      }
      uncaught.assertNone();
    }
  }

  private void putOnSet(Job job, String code) throws Exception {
    onInterface(
        () -> {
          app.app()
              .session()
              .take(new Step.Ticked(code, SetupState.ON_SET, MarkDetails.NONE), () -> {}, _ -> {});
          return job;
        });
    app.await(
        () ->
            app.app().session().view().get().state().onSet().stream()
                .anyMatch(set -> set.setup().equals(code)));
  }

  private void wide(double width) throws Exception {
    onInterface(
        () -> {
          app.app().stage().setWidth(width);
          return width;
        });
    waitForFxEvents();
  }
}
