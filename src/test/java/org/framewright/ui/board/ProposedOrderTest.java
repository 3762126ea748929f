package org.framewright.ui.board;

import static org.framewright.AssertThat.assertThat;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import org.framewright.Templates;
import org.framewright.day.DayHours;
import org.framewright.day.OrderOfWork;
import org.framewright.job.Job;
import org.framewright.job.Started;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.ShotList;
import org.framewright.ui.look.Texts;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ProposedOrderTest {
  @TempDir private Path folder;
  private Job job;

  @BeforeEach
  void startAJob() throws Exception {
    job =
        ((Started.Opened)
                Job.start(
                    Templates.fashionDays(),
                    folder,
                    Map.of("day", "2026-11-02", "client", "KVO", "title", "look book"),
                    Clock.fixed(Instant.parse("2026-11-02T09:00:00Z"), ZoneOffset.UTC)))
            .job();
  }

  private static Setup worn(String code, String model) {
    return new Setup(
        code,
        "Coat " + code,
        List.of(),
        OptionalInt.empty(),
        new TreeMap<>(Map.of("Model", model)));
  }

  private ProposedOrder order(Locale language) throws Exception {
    var hours = DayHours.usual(ZoneOffset.UTC);
    return ProposedOrder.of(
        OrderOfWork.of(job, job.scan(), job.state(), hours, Set.of()), Texts.in(language));
  }

  @Test
  void bothOrdersStandThereWithWhatIsChanged() throws Exception {
    job.importList(
        new ShotList(List.of(worn("001", "Mira"), worn("002", "Jonna"), worn("003", "Mira"))));
    var order = order(Locale.ENGLISH);
    assertThat(order.isBetter()).isTrue();
    assertThat(order.now()).isEqualTo("Now: 2 changes of model");
    assertThat(order.then()).isEqualTo("Proposed: 1 change of model");
    assertThat(order.linesThen())
        .containsExactly(
            new OrderLine("001", "Coat 001", ""),
            new OrderLine("003", "Coat 003", ""),
            new OrderLine("002", "Coat 002", "change: model"));
    assertThat(order.linesNow()).extracting(OrderLine::code).containsExactly("001", "002", "003");
    assertThat(order.codes()).containsExactly("001", "003", "002");
    assertThat(order(Locale.GERMAN).now()).isEqualTo("Jetzt: 2 Wechsel des Models");
    assertThat(order(Locale.FRENCH).linesThen().getLast().changes()).endsWith("mannequin");
  }

  @Test
  void whereNoneIsBetterTheOrderOfNowStandsAlone() throws Exception {
    job.importList(new ShotList(List.of(worn("001", "Mira"), worn("002", "Mira"))));
    var order = order(Locale.ENGLISH);
    assertThat(order.isBetter()).isFalse();
    assertThat(order.now()).isEqualTo("Now: no change");
    assertThat(order.reasons()).startsWith("No other order has less to be changed.");
  }

  @Test
  void whereNothingIsLeftThatIsSaid() throws Exception {
    assertThat(order(Locale.ENGLISH).now()).isEqualTo("Nothing is left to shoot.");
    assertThat(order(Locale.ENGLISH).reasons()).isEmpty();
  }
}
