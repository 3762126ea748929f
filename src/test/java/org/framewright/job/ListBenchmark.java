package org.framewright.job;

import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Map;
import org.framewright.naming.Convention;
import org.framewright.shotlist.ListOptions;
import org.framewright.shotlist.ListReading;

/**
 * What reading and importing a client's list costs: 5,000 and 50,000 lines of 10 columns, each
 * setup tried by the convention, as text and as a workbook; and as a ratio to reading the file's
 * bytes. Prints milliseconds. {@code mvn -Pbench -Dbench=List -Dbench.heap=1g}.
 */
final class ListBenchmark {
  private static final int COLUMNS = 10;

  private ListBenchmark() {}

  public static void main(String[] args) throws Exception {
    var codes =
        ((Convention.Parsed.Sound) Convention.read(Path.of("src/test/resources/lists/codes.yaml")))
            .convention();
    var folder = Files.createTempDirectory("framewright-lists");
    for (int lines : new int[] {5_000, 5_000, 5_000, 50_000}) {
      for (var ending : new String[] {"csv", "xlsx"}) {
        run(codes, Files.createTempDirectory(folder, "job"), lines, ending);
      }
    }
  }

  private static void run(Convention codes, Path folder, int lines, String ending)
      throws Exception {
    var file = folder.resolve("list." + ending);
    if (ending.equals("csv")) {
      Files.write(file, text(lines).getBytes(StandardCharsets.UTF_8));
    } else {
      write(file, lines);
    }
    var values = Map.of("day", "2026-11-23", "client", "NOVA", "title", "lists");
    var job = ((Started.Opened) Job.start(codes, folder, values, Clock.systemUTC())).job();
    var threads = ManagementFactory.getThreadMXBean();
    long begin = System.nanoTime();
    long bytes = Files.readAllBytes(file).length;
    long read = System.nanoTime();
    long cpu = threads.getCurrentThreadCpuTime();
    var reading = (ListReading.Understood) job.readList(file, ListOptions.NONE);
    long understood = System.nanoTime();
    long cpuOfReading = threads.getCurrentThreadCpuTime() - cpu;
    job.importList(reading);
    long imported = System.nanoTime();
    System.out.printf(
        "%,7d lines %-4s %,6d kB: read %,6d ms, of processor %,6d ms (%,.0f times its bytes),"
            + " imported %,6d ms, %,d setups%n",
        lines,
        ending,
        bytes / 1_000,
        (understood - read) / 1_000_000,
        cpuOfReading / 1_000_000,
        (double) (understood - read) / (read - begin),
        (imported - understood) / 1_000_000,
        reading.list().setups().size());
  }

  private static String cell(int line, int column) {
    return switch (column) {
      case 0 -> "KV-" + line;
      case 1 -> "Coat, \"cocoon\" cut, number " + line;
      case 2 -> "F, B, D";
      case 3 -> "" + (1 + line % 9);
      default -> "column " + column + " of line " + line;
    };
  }

  private static final String[] HEADINGS = {
    "Style No.", "Name", "Views", "Frames", "Colour", "Size", "Price", "Season", "Supplier", "Note"
  };

  private static String text(int lines) {
    var text = new StringBuilder(String.join(";", HEADINGS)).append("\r\n");
    for (int i = 1; i <= lines; i++) {
      for (int j = 0; j < COLUMNS; j++) {
        text.append(j == 0 ? "" : ";").append('"');
        text.append(cell(i, j).replace("\"", "\"\"")).append('"');
      }
      text.append("\r\n");
    }
    return text.toString();
  }

  private static void write(Path file, int lines) throws Exception {
    try (var out = Files.newOutputStream(file);
        var workbook = new org.dhatim.fastexcel.Workbook(out, "Bench", null)) {
      var sheet = workbook.newWorksheet("List");
      for (int i = 0; i <= lines; i++) {
        for (int j = 0; j < COLUMNS; j++) {
          sheet.value(i, j, i == 0 ? HEADINGS[j] : cell(i, j));
        }
      }
    }
  }
}
