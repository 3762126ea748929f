package org.framewright.share;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.framewright.base.Text;
import org.framewright.studio.Overview;
import org.framewright.studio.SetNow;
import org.framewright.studio.SetRow;

/** Invented sets of a studio, and the page of them on the loopback address. */
final class PlayedSets implements AutoCloseable {
  private static final List<String> TITLES =
      List.of("Évasé skirt", "معطف صوفي طويل", "Wool coat, lined", "羊毛のコート", "Leather belt");

  final LiveSets live;
  private final Path settings;
  ShareServer server;

  PlayedSets(Path settings, Overview first) throws IOException {
    this.settings = settings;
    live = new LiveSets("store.example:5432/studio", first);
    server = ShareServer.start(live, options(0));
  }

  private ShareOptions options(int port) {
    return new ShareOptions(
        Optional.of(InetAddress.ofLiteral("127.0.0.1")), port, Optional.empty(), settings);
  }

  /** As after a crash of the program. */
  void restart() throws IOException {
    int port = server.address().getPort();
    server.close();
    server = ShareServer.start(live, options(port));
  }

  Phone paired(Role role) throws Exception {
    var phone = new Phone(server.address());
    phone.pair(server.invite(role), "Ada's laptop");
    return phone;
  }

  /** So many sets, of which some need a person, each for another reason. */
  static Overview sets(int count, Instant now) {
    var rows = new ArrayList<SetRow>();
    for (int i = 1; i <= count; i++) {
      rows.add(set(i, i % 20, now));
    }
    return new Overview(rows);
  }

  /** A set of which so many of 24 setups are done. */
  static SetRow set(int number, int done, Instant now) {
    var name = String.format(Locale.ROOT, "2026-11-23_KVO_Set-%02d", number);
    var told = now.minus(number % 7 == 6 ? Duration.ofMinutes(20) : Duration.ofSeconds(20));
    boolean isTooEarly = number % 5 == 3;
    var set =
        new SetNow(
            now,
            number % 6 == 5
                ? Optional.empty()
                : Optional.of(
                    new SetNow.OnSetNow(
                        String.format(Locale.ROOT, "%03d", done + 1),
                        TITLES.get(number % TITLES.size()),
                        now.minusSeconds(60L * number))),
            24,
            done,
            done / 2,
            number % 11 == 4 ? 2 : 0,
            number % 8 == 2 ? List.of("004", "007") : List.of(),
            number % 8 == 2 ? Optional.of(now.minusSeconds(1800)) : Optional.empty(),
            done * 10,
            isTooEarly ? Optional.empty() : Optional.of(Duration.ofMinutes(6)),
            isTooEarly ? Optional.empty() : Optional.of(now.plus(Duration.ofHours(2))),
            isTooEarly ? Optional.empty() : Optional.of(now.plus(Duration.ofMinutes(90))),
            isTooEarly ? Optional.empty() : Optional.of(now.plus(Duration.ofMinutes(150))),
            number % 13 == 9,
            number % 17 == 1
                ? List.of(Text.of("the frames still planned do not fit on the disk"))
                : List.of(),
            number % 9 == 7
                ? List.of(Text.of("{0} has no frame of the view {1}", "001", "back"))
                : List.of());
    return row(name, Optional.of(set), told, now);
  }

  static SetRow row(String name, Optional<SetNow> set, Instant told, Instant asked) {
    return new SetRow(
        UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)),
        name,
        set,
        set.map(_ -> "desk-1a2b"),
        set.map(_ -> told),
        0,
        Optional.of(told),
        asked);
  }

  @Override
  public void close() {
    server.close();
  }
}
