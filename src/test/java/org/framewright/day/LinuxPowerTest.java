package org.framewright.day;

import static org.framewright.AssertThat.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The battery, from a tree as the kernel has it. Units by include/linux/power_supply.h; the
 * fractions are worked by hand.
 */
class LinuxPowerTest {
  @TempDir private Path folder;

  private void supply(String name, String... values) throws IOException {
    var supply = Files.createDirectories(folder.resolve(name));
    for (var value : values) {
      var parts = List.of(value.split("=", -1));
      Files.writeString(supply.resolve(parts.getFirst()), parts.getLast() + "\n");
    }
  }

  private Optional<Battery> battery() {
    return new LinuxPower(folder).battery();
  }

  // 30 Wh of 60 at 12 W: half full, two hours and a half.
  @Test
  void tellsHowFullItIsAndHowLongItLasts() throws IOException {
    supply("AC", "type=Mains", "online=0");
    supply(
        "BAT0",
        "type=Battery",
        "status=Discharging",
        "capacity=50",
        "energy_now=30000000",
        "energy_full=60000000",
        "power_now=12000000");
    assertThat(battery()).contains(new Battery(50, Optional.of(Duration.ofMinutes(150))));
  }

  // 2 Ah of 4 at 1 A, which this driver gives as less than nothing.
  @Test
  void reckonsWithChargeWhereTheDriverKnowsNoEnergy() throws IOException {
    supply(
        "BAT1",
        "type=Battery",
        "status=Discharging",
        "charge_now=2000000",
        "charge_full=4000000",
        "current_now=-1000000",
        "voltage_now=11100000");
    assertThat(battery()).contains(new Battery(50, Optional.of(Duration.ofHours(2))));
  }

  // 10 of 20 Wh and 20 of 20 Wh: three quarters; 30 Wh at 10 W.
  @Test
  void severalAreOneBeforeAPerson() throws IOException {
    supply(
        "BAT0",
        "type=Battery",
        "status=Discharging",
        "energy_now=10000000",
        "energy_full=20000000",
        "power_now=10000000");
    supply(
        "BAT1",
        "type=Battery",
        "status=Not charging",
        "energy_now=20000000",
        "energy_full=20000000",
        "power_now=0");
    assertThat(battery()).contains(new Battery(75, Optional.of(Duration.ofHours(3))));
  }

  @Test
  void saysNothingOnMainsOrWithoutABattery() throws IOException {
    assertThat(battery()).isEmpty();
    assertThat(new LinuxPower(folder.resolve("none")).battery()).isEmpty();
    supply("BAT0", "type=Battery", "status=Charging", "capacity=50");
    assertThat(battery()).isEmpty();
  }

  @Test
  void theBatteryOfAMouseIsNotTheComputers() throws IOException {
    supply("hid-1", "type=Battery", "scope=Device", "status=Discharging", "capacity=5");
    assertThat(battery()).isEmpty();
  }

  @Test
  void saysHowFullItIsWhereTheDrawIsNotKnown() throws IOException {
    supply("BAT0", "type=Battery", "status=Discharging", "capacity=37");
    assertThat(battery()).contains(new Battery(37, Optional.empty()));
    supply("BAT0", "energy_now=1000000", "energy_full=2000000", "power_now=0");
    assertThat(battery()).contains(new Battery(50, Optional.empty()));
  }

  @Test
  void nonsenseIsNoReading() throws IOException {
    supply(
        "BAT0",
        "type=Battery",
        "status=Discharging",
        "capacity=many",
        "energy_now=" + "9".repeat(500),
        "energy_full=0",
        "power_now=12");
    assertThat(battery()).isEmpty();
    supply("BAT0", "capacity=250");
    assertThat(battery()).contains(new Battery(100, Optional.empty()));
  }
}
