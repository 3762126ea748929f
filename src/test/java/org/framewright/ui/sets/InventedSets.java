package org.framewright.ui.sets;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.framewright.base.Text;
import org.framewright.studio.Overview;
import org.framewright.studio.SetNow;
import org.framewright.studio.SetRow;

/** Invented sets of an invented studio, as a store tells of them. */
public final class InventedSets {
  private InventedSets() {}

  /** What the store calls the job of that name. */
  public static UUID id(String name) {
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
  }

  /** One of each kind, at a time. */
  public static Overview of(Instant now) {
    return new Overview(
        List.of(
            new One(now, "2026-11-23_KVO_winter-coats", "Studio 3")
                .on("018", "Cape, double-faced wool", 4)
                .done(17, 32, 11)
                .waiting(47, "016", "017")
                .row(),
            new One(now, "2026-11-23_NOVA_evening", "Gallery")
                .on("006", "Gown with a train, sequins", 21)
                .done(5, 18, 4)
                .urgent(Text.of("the frames still planned do not fit on the disk"))
                .troubles(
                    Text.counted(
                        "{0} frame belongs to no setup yet",
                        "{0} frames belong to no setup yet", 3),
                    Text.of("{0} has no frame of the view {1}", "005", "back"))
                .waiting(12, "005")
                .row(),
            new One(now, "2026-11-23_ILMA_knitwear", "Daylight")
                .on("031", "Rollneck, ribbed", 2)
                .done(30, 44, 30)
                .pickups(2)
                .row(),
            new One(now, "2026-11-22_KVO_shoes", "Table 1")
                .on("112", "Ankle boot, heel 60", 8)
                .done(111, 160, 104)
                .late()
                .row(),
            new One(now, "2026-11-23_AUREL_bags", "Table 2")
                .on("009", "Tote, vegetable-tanned leather", 1)
                .done(8, 24, 8)
                .troubles(
                    Text.counted(
                        "{0} frame is on one disk only", "{0} frames are on one disk only", 24))
                .row(),
            new One(now, "2026-11-23_SOREN_denim", "Loft")
                .on("021", "Straight jeans, raw", 95)
                .done(20, 28, 19)
                .silent(38)
                .row(),
            new One(now, "2026-11-23_MIRE_jewellery", "Table 3")
                .on("002", "Ring, hammered silver", 6)
                .done(1, 12, 1)
                .early()
                .row(),
            new One(now, "2026-11-21_NOVA_lookbook", "Daylight").done(36, 36, 36).row(),
            untold(now, "2026-11-23_TANA_swimwear")));
  }

  private static SetRow untold(Instant now, String name) {
    return new SetRow(
        id(name),
        name,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        0,
        Optional.empty(),
        now);
  }

  /** A set in which nothing needs a person, but for what is said of it. */
  static final class One {
    private final Instant now;
    private final String name;
    private final String station;
    private Optional<SetNow.OnSetNow> onSet = Optional.empty();
    private int done;
    private int planned;
    private int signedOff;
    private int pickups;
    private List<String> waiting = List.of();
    private Optional<Instant> since = Optional.empty();
    private boolean early;
    private boolean late;
    private List<Text> urgent = List.of();
    private List<Text> troubles = List.of();
    private Instant told;
    private long behind;

    One(Instant now, String name, String station) {
      this.now = now;
      this.name = name;
      this.station = station;
      this.told = now.minusSeconds(20);
    }

    One on(String setup, String title, int minutes) {
      onSet =
          Optional.of(new SetNow.OnSetNow(setup, title, now.minus(Duration.ofMinutes(minutes))));
      return this;
    }

    One done(int some, int of, int agreed) {
      done = some;
      planned = of;
      signedOff = agreed;
      return this;
    }

    One waiting(int minutes, String... codes) {
      waiting = List.of(codes);
      since = Optional.of(now.minus(Duration.ofMinutes(minutes)));
      return this;
    }

    One pickups(int number) {
      pickups = number;
      return this;
    }

    One early() {
      early = true;
      return this;
    }

    One late() {
      late = true;
      return this;
    }

    One urgent(Text... matters) {
      urgent = List.of(matters);
      return this;
    }

    One troubles(Text... matters) {
      troubles = List.of(matters);
      return this;
    }

    One silent(int minutes) {
      told = now.minus(Duration.ofMinutes(minutes));
      behind = 7;
      return this;
    }

    SetRow row() {
      int left = planned - done;
      boolean forecast = left > 0 && !early;
      var finish = now.plus(Duration.ofMinutes(7L * left));
      return new SetRow(
          id(name),
          name,
          Optional.of(
              new SetNow(
                  now,
                  onSet,
                  planned,
                  done,
                  signedOff,
                  pickups,
                  waiting,
                  since,
                  done * 12,
                  early ? Optional.empty() : Optional.of(Duration.ofMinutes(7)),
                  forecast ? Optional.of(finish) : Optional.empty(),
                  forecast
                      ? Optional.of(now.plus(Duration.ofMinutes(6L * left)))
                      : Optional.empty(),
                  forecast
                      ? Optional.of(now.plus(Duration.ofMinutes(9L * left)))
                      : Optional.empty(),
                  late,
                  urgent,
                  troubles)),
          Optional.of(station),
          Optional.of(told),
          behind,
          Optional.of(told),
          now);
    }
  }
}
