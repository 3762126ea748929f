package org.framewright.day;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The power supplies of Linux, a folder each with a file for each value: charge in µAh, energy in
 * µWh, current in µA, voltage in µV (the kernel's {@code include/linux/power_supply.h}). What a
 * driver does not know has no file; power in µW, the files' names and {@code scope} from memory.
 */
record LinuxPower(Path folder) implements PowerSource {
  private static final int LONGEST = 64;
  private static final int MOST = 64;

  /** Shorter than any reading that is right, longer than any battery lasts. */
  private static final Duration LONGEST_LEFT = Duration.ofDays(7);

  /** One battery; amounts and draw are both of energy, or both of charge. */
  private record Cell(
      OptionalLong now, OptionalLong full, OptionalLong draw, OptionalLong percent) {}

  @Override
  public Optional<Battery> battery() {
    var cells = new ArrayList<Cell>();
    boolean discharging = false;
    try (var supplies = Files.newDirectoryStream(folder)) {
      for (var supply : supplies) {
        // Those of mice and headsets are theirs alone.
        if (cells.size() < MOST
            && text(supply, "type").equals("Battery")
            && !text(supply, "scope").equals("Device")) {
          discharging |= text(supply, "status").equals("Discharging");
          cells.add(cell(supply));
        }
      }
    } catch (IOException | DirectoryIteratorException e) {
      return Optional.empty();
    }
    return discharging ? together(cells) : Optional.empty();
  }

  private static Cell cell(Path supply) {
    var percent = number(supply, "capacity");
    var energy = number(supply, "energy_now");
    if (energy.isPresent()) {
      return new Cell(energy, number(supply, "energy_full"), power(supply), percent);
    }
    var volts = number(supply, "voltage_now");
    return new Cell(
        times(number(supply, "charge_now"), volts),
        times(number(supply, "charge_full"), volts),
        times(magnitude(supply, "current_now"), volts),
        percent);
  }

  private static OptionalLong power(Path supply) {
    var power = magnitude(supply, "power_now");
    return power.isPresent()
        ? power
        : times(magnitude(supply, "current_now"), number(supply, "voltage_now"));
  }

  /** Of µA and µV in µW, of µAh and µV in µWh. */
  private static OptionalLong times(OptionalLong one, OptionalLong volts) {
    return one.isEmpty() || volts.isEmpty()
        ? OptionalLong.empty()
        : OptionalLong.of(Math.round(one.getAsLong() / 1e6 * volts.getAsLong()));
  }

  private static Optional<Battery> together(List<Cell> cells) {
    boolean known =
        cells.stream().allMatch(cell -> cell.now().isPresent() && cell.full().orElse(0) > 0);
    if (!known) {
      return cells.stream()
          .filter(cell -> cell.percent().isPresent())
          .mapToLong(cell -> cell.percent().getAsLong())
          .average()
          .stream()
          .mapToObj(percent -> new Battery(percent(percent), Optional.empty()))
          .findFirst();
    }
    double now = cells.stream().mapToLong(cell -> cell.now().getAsLong()).sum();
    double full = cells.stream().mapToLong(cell -> cell.full().getAsLong()).sum();
    double draw = cells.stream().mapToLong(cell -> cell.draw().orElse(0)).sum();
    double seconds = draw > 0 ? now / draw * 3600 : Double.MAX_VALUE;
    return Optional.of(
        new Battery(
            percent(100 * now / full),
            seconds > LONGEST_LEFT.toSeconds()
                ? Optional.empty()
                : Optional.of(Duration.ofSeconds(Math.round(seconds)))));
  }

  private static int percent(double percent) {
    return Math.clamp(Math.round(percent), 0, 100);
  }

  /** Some drivers give a draw as less than nothing. */
  private static OptionalLong magnitude(Path supply, String name) {
    var number = signed(supply, name);
    return number.isPresent() ? OptionalLong.of(Math.abs(number.getAsLong())) : number;
  }

  private static OptionalLong number(Path supply, String name) {
    var number = signed(supply, name);
    return number.isPresent() && number.getAsLong() >= 0 ? number : OptionalLong.empty();
  }

  private static OptionalLong signed(Path supply, String name) {
    var text = text(supply, name);
    return text.matches("-?\\d{1,15}")
        ? OptionalLong.of(Long.parseLong(text))
        : OptionalLong.empty();
  }

  /** Empty where there is no such file, or the driver does not answer now. */
  private static String text(Path supply, String name) {
    try (var in = Files.newInputStream(supply.resolve(name))) {
      return new String(in.readNBytes(LONGEST), StandardCharsets.UTF_8).strip();
    } catch (IOException e) {
      return "";
    }
  }
}
