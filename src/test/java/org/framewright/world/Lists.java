package org.framewright.world;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.framewright.shotlist.Setup;
import org.framewright.shotlist.View;

/** The client's lists: each edition leaves some setups out, adds some and calls some otherwise. */
final class Lists {
  private static final List<String> TITLES =
      List.of("Wool coat", "Felt hat", "Belt", "Scarf", "Ödön’s bag");

  /** The lines of an edition, the same each time. */
  List<Said.Line> edition(int template, int edition) {
    var random = new Random(31L * edition + template);
    var lines = new ArrayList<Said.Line>();
    int last = 4 + random.nextInt(7);
    for (int i = 1; i <= last; i++) {
      if (random.nextInt(10) > 0) {
        lines.add(
            new Said.Line(
                code(template, i),
                TITLES.get((i + random.nextInt(10) / 8) % TITLES.size()) + " " + i,
                views(template, random),
                random.nextInt(3) == 0 ? 1 + random.nextInt(9) : -1));
      }
    }
    return lines.isEmpty() ? edition(template, edition + 1) : lines;
  }

  private static String code(int template, int number) {
    return switch (template) {
      case 0 -> "%03d".formatted(number);
      case 1 -> "RX" + number;
      default -> "%02d".formatted(number);
    };
  }

  private static List<String> views(int template, Random random) {
    var all =
        switch (template) {
          case 0 -> List.of("F", "B", "S", "D");
          case 1 -> List.of("raw", "step", "hero", "bite");
          default -> List.<String>of();
        };
    int count = random.nextInt(4);
    return all.subList(0, Math.min(count, all.size()));
  }

  /** As the client sends it. */
  byte[] csv(List<Said.Line> lines) {
    var text = new StringBuilder("Look;Name;Views;Frames\n");
    for (var line : lines) {
      text.append(line.code())
          .append(';')
          .append(line.title())
          .append(';')
          .append(String.join(", ", line.views()))
          .append(';')
          .append(line.frames() < 0 ? "" : line.frames())
          .append('\n');
    }
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** A setup as the model has it. */
  static Said.Line line(Setup setup) {
    return new Said.Line(
        setup.code(),
        setup.title(),
        setup.views().stream().map(View::code).toList(),
        setup.framesWanted().orElse(-1));
  }
}
