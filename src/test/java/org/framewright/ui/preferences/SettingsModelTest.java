package org.framewright.ui.preferences;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.framewright.base.Problem;
import org.framewright.day.DayHours;
import org.framewright.day.DayHours.Break;
import org.framewright.handoff.metadata.DataMining;
import org.framewright.handoff.metadata.Studio;
import org.framewright.ui.look.Texts;
import org.framewright.ui.look.Theme;
import org.framewright.ui.settings.ComputerName;
import org.framewright.ui.settings.DefaultPlace;
import org.framewright.ui.settings.MiningSetting;
import org.framewright.ui.settings.Preferences;
import org.framewright.ui.settings.StudioDetail;
import org.framewright.ui.settings.TextSetting;
import org.framewright.ui.settings.WorkingHours;
import org.framewright.ui.task.Tasks;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SettingsModelTest {
  @TempDir private Path folder;
  private final List<String> answers = new ArrayList<>();
  private final List<String> called = new ArrayList<>();
  private final FakeLooks looks = new FakeLooks();
  private Preferences preferences;
  private SettingsModel model;

  private static final class FakeLooks implements Looks {
    private Theme theme = Theme.NEUTRAL;
    private double scale = 1;

    @Override
    public Theme theme() {
      return theme;
    }

    @Override
    public void take(Theme next) {
      theme = next;
    }

    @Override
    public double scale() {
      return scale;
    }

    @Override
    public void take(double next) {
      scale = Math.clamp(next, 0.8, 2);
    }
  }

  @BeforeEach
  void open() {
    preferences = read();
    model = model();
  }

  private Preferences read() {
    return Preferences.read(
        folder.resolve("preferences.json"),
        Runnable::run,
        failure -> {
          throw new AssertionError(failure);
        });
  }

  private SettingsModel model() {
    return new SettingsModel(
        preferences,
        Tasks.immediate(),
        Texts.in(Locale.ENGLISH),
        ZoneOffset.UTC,
        looks,
        answer -> answers.add(answer.text()),
        called::add);
  }

  private static void write(Entry entry, String text) {
    entry.text().set(text);
    entry.commit();
  }

  private static String problem(Entry entry) {
    return entry.problem().get().map(Problem::sentences).orElse("");
  }

  @Test
  void whatIsWrittenIsKeptAtOnceAndAnswered() {
    write(model.studio(StudioDetail.CREDIT), "  Ines Vander / Nova  ");
    assertThat(StudioDetail.CREDIT.kept(read()).value()).isEqualTo("Ines Vander / Nova");
    assertThat(answers).containsExactly("Credit line is now Ines Vander / Nova.");
  }

  @Test
  void leavingAFieldAsItWasIsNoChange() {
    write(model.studio(StudioDetail.STUDIO), "Nova");
    answers.clear();
    model.entries().toList().forEach(Entry::commit);
    assertThat(answers).isEmpty();
  }

  @Test
  void changesAreUndoneAndDoneAgainTheLastFirst() {
    write(model.studio(StudioDetail.STUDIO), "Nova");
    write(model.studio(StudioDetail.STUDIO), "Nova Studio");
    model.take(Theme.SUNLIGHT);
    model.undo();
    assertThat(looks.theme()).isEqualTo(Theme.NEUTRAL);
    model.undo();
    assertThat(model.studio(StudioDetail.STUDIO).text().get()).isEqualTo("Nova");
    model.redo();
    model.undo();
    model.undo();
    model.undo();
    assertThat(StudioDetail.STUDIO.kept(read()).value()).isEmpty();
    model.redo();
    model.redo();
    model.redo();
    assertThat(StudioDetail.STUDIO.kept(read()).value()).isEqualTo("Nova Studio");
    assertThat(model.theme().get()).isEqualTo(Theme.SUNLIGHT);
    assertThat(answers).last().isEqualTo("Look is changed again.");
  }

  @Test
  void aLineThatDoesNotHoldIsToldAndTheLastOneHolds() {
    var notice = model.studio(StudioDetail.COPYRIGHT);
    write(notice, "© 2026 Ines Vander");
    write(notice, "x".repeat(TextSetting.LONGEST + 1));
    assertThat(problem(notice)).isEqualTo("This has 1,001 characters. Take at most 1,000.");
    assertThat(StudioDetail.COPYRIGHT.kept(read()).value()).isEqualTo("© 2026 Ines Vander");
    write(notice, "a\u202Eb");
    assertThat(problem(notice)).contains("cannot be shown");
    write(notice, "© 2026 Ines Vander");
    assertThat(problem(notice)).isEmpty();
  }

  @Test
  void aPlaceIsTakenOnlyIfItIsThere() throws IOException {
    var jobs = model.place(DefaultPlace.JOBS);
    write(jobs, "shoots");
    assertThat(problem(jobs)).contains("not the whole path");
    write(jobs, folder.resolve("gone").toString());
    assertThat(problem(jobs)).startsWith("There is no such folder");
    assertThat(DefaultPlace.JOBS.kept(read())).isEmpty();
    var shoots = Files.createDirectory(folder.resolve("shoots"));
    write(jobs, shoots.toString());
    assertThat(problem(jobs)).isEmpty();
    assertThat(DefaultPlace.JOBS.kept(read())).contains(shoots);
    write(jobs, "");
    assertThat(DefaultPlace.JOBS.kept(read())).isEmpty();
    assertThat(answers).last().isEqualTo("New jobs is empty now.");
  }

  @Test
  void hoursHoldTogether() {
    var hours = model.hours();
    write(hours.from(), "19");
    assertThat(problem(hours.until())).startsWith("The day ends before it begins");
    assertThat(WorkingHours.kept(read(), ZoneOffset.UTC).value().from())
        .isEqualTo(LocalTime.of(9, 0));
    write(hours.until(), "23.30");
    assertThat(hours.entries().map(SettingsModelTest::problem)).containsOnly("");
    assertThat(WorkingHours.kept(read(), ZoneOffset.UTC).value())
        .isEqualTo(
            new DayHours(
                LocalTime.of(19, 0),
                LocalTime.of(23, 30),
                List.of(new Break(LocalTime.of(13, 0), LocalTime.of(14, 0))),
                ZoneOffset.UTC));
    model.undo();
    assertThat(hours.from().text().get()).isEqualTo("09:00");
  }

  @Test
  void breaksAreWrittenAsABeginAndALength() {
    var pauses = model.hours().breaks();
    write(pauses.get(0).begin(), "12:30");
    pauses.get(1).begin().text().set("16h");
    write(pauses.get(1).minutes(), "15");
    assertThat(WorkingHours.kept(read(), ZoneOffset.UTC).value().breaks())
        .containsExactly(
            new Break(LocalTime.of(12, 30), LocalTime.of(13, 30)),
            new Break(LocalTime.of(16, 0), LocalTime.of(16, 15)));
    pauses.get(0).begin().text().set("");
    write(pauses.get(0).minutes(), "");
    assertThat(WorkingHours.kept(read(), ZoneOffset.UTC).value().breaks()).hasSize(1);
    assertThat(pauses.get(0).begin().text().get()).isEqualTo("16:00");
  }

  @ParameterizedTest
  @CsvSource({
    "24:00, 60, is not a time of day",
    "one, 60, is not a time of day",
    "13:60, 60, is not a time of day",
    "13:00, 0, is not a length in minutes",
    "13:00, an hour, is not a length in minutes",
    "13:00, '', is not a length in minutes",
    "23:30, 45, goes on past midnight",
    "17:00, 20, begins during another",
  })
  void aBreakThatDoesNotHoldIsTold(String begin, String minutes, String wrong) {
    var second = model.hours().breaks().get(1);
    second.begin().text().set("17:10");
    write(second.minutes(), "5");
    var first = model.hours().breaks().get(0);
    first.begin().text().set(begin);
    write(first.minutes(), minutes);
    assertThat(model.hours().entries().map(SettingsModelTest::problem))
        .anySatisfy(told -> assertThat(told).contains(wrong));
    assertThat(WorkingHours.kept(read(), ZoneOffset.UTC).value().breaks().getFirst().from())
        .isEqualTo(LocalTime.of(13, 0));
  }

  @Test
  void breaksThatTakeTheWholeDayAreTold() {
    var first = model.hours().breaks().get(0);
    first.begin().text().set("9");
    write(first.minutes(), "540");
    assertThat(problem(first.minutes())).startsWith("The breaks leave no time to work");
  }

  @Test
  void theSizeGoesAsFarAsItCanAndNoFurther() {
    for (var i = 0; i < 15; i++) {
      model.takeScale(model.scale().get() + Looks.STEP);
    }
    assertThat(model.scale().get()).isEqualTo(2);
    assertThat(answers).hasSize(10).last().isEqualTo("Size is now 200%.");
  }

  @Test
  void theComputersNameIsToldToTheJob() {
    write(model.computer(), "Cart 1");
    write(model.computer(), "x".repeat(ComputerName.LONGEST + 1));
    model.undo();
    assertThat(called).containsExactly("Cart 1", "");
  }

  @Test
  void badValuesInTheFileAreToldAndLeftAloneUntilSomebodySetsThem() throws IOException {
    var file = folder.resolve("preferences.json");
    var written =
        """
        {"hours": "25:00-18:00", "studio.credit": 7, "computer.name": "a\\nb", "place.jobs": "here",
         "of.a.newer.version": {"a": [1, 2]}}\
        """;
    Files.writeString(file, written);
    preferences = read();
    model = model();
    assertThat(model.problems()).hasSize(4);
    assertThat(model.hours().from().text().get()).isEqualTo("09:00");
    model.entries().toList().forEach(Entry::commit);
    assertThat(file).hasContent(written);
    assertThat(model.problems()).hasSize(4);
    write(model.hours().until(), "17");
    write(model.studio(StudioDetail.CREDIT), "Nova");
    assertThat(model.problems()).hasSize(2);
    assertThat(read().get("hours")).contains("09:00-17:00");
    assertThat(Files.readString(file)).contains("of.a.newer.version", "[ 1, 2 ]");
  }

  @Test
  void anAddressThatIsNoneIsToldAtOnceAndNotKept() {
    write(model.studio(StudioDetail.MAIL), "ines at nova");
    write(model.studio(StudioDetail.STATEMENT), "nova.example/terms");
    write(model.studio(StudioDetail.COPYRIGHT), "(c) {day.year Nova");
    assertThat(model.problems())
        .extracting(Problem::what)
        .containsExactly(
            "it is no mail address",
            "{day.year Nova does not name a field",
            "it is no address that begins with https:// or http://");
    assertThat(StudioDetail.MAIL.kept(read()).value()).isEmpty();
    write(model.studio(StudioDetail.MAIL), "ines@nova.example");
    assertThat(StudioDetail.MAIL.kept(read()).value()).isEqualTo("ines@nova.example");
  }

  @Test
  void whatAHandOffSaysOfTheStudioIsWhatIsSetHere() {
    for (var detail : StudioDetail.values()) {
      var text =
          switch (detail) {
            case MAIL -> "ines@nova.example";
            case WEBSITE, STATEMENT -> "https://nova.example/";
            case LOGO -> Path.of("nova.png").toAbsolutePath().toString();
            default -> "Nova " + detail;
          };
      write(model.studio(detail), text);
    }
    model.takeMining(Optional.of(DataMining.SEARCH_ONLY));
    assertThat(model.problems()).isEmpty();
    assertThat(StudioDetail.studio(read()))
        .isEqualTo(Studio.read(folder.resolve("preferences.json")));
    assertThat(StudioDetail.studio(read()).toString())
        .contains("Nova OWNER", "Nova POSITION", "search-only", "https://nova.example/");
  }

  @Test
  void whatTheMinersAreToldIsUndone() {
    model.takeMining(Optional.of(DataMining.PROHIBITED));
    assertThat(MiningSetting.kept(read())).contains(DataMining.PROHIBITED);
    model.undo();
    assertThat(model.mining().get()).isEmpty();
    assertThat(read().get("studio.mining")).isEmpty();
    model.redo();
    assertThat(model.mining().get()).contains(DataMining.PROHIBITED);
  }

  @Test
  void aFieldOfAConventionIsOfferedWhatTheStudioIsCalled() {
    write(model.studio(StudioDetail.PHOTOGRAPHER), "Ines Vander");
    write(model.studio(StudioDetail.TERMS), "Web, two years");
    var offered =
        Map.of(
            "photographer", "Ines Vander",
            "usage", "Web, two years",
            "Usage_Terms", "Web, two years");
    offered.forEach(
        (field, text) ->
            assertThat(StudioDetail.firstValue(preferences, field)).as(field).contains(text));
    assertThat(StudioDetail.firstValue(preferences, "client")).isEmpty();
    assertThat(StudioDetail.firstValue(preferences, "studio")).isEmpty();
  }
}
