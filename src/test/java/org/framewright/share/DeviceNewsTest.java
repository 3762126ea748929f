package org.framewright.share;

import static org.framewright.AssertThat.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

class DeviceNewsTest {
  private static PairedDevice device(String id, boolean connected) {
    return new PairedDevice(id, "Ines' phone", Role.ASSISTANT, connected, Instant.EPOCH);
  }

  @Test
  void aDeviceThatWasNotThereWasPaired() {
    var phone = device("page-00000001", true);
    assertThat(DeviceNews.between(List.of(), List.of(phone)))
        .containsExactly(new DeviceNews.Paired(phone));
  }

  @Test
  void aDeviceThatIsGoneWasUnpaired() {
    var phone = device("page-00000001", true);
    assertThat(DeviceNews.between(List.of(phone), List.of()))
        .containsExactly(new DeviceNews.Unpaired(phone));
  }

  @Test
  void aDeviceComesAndLeaves() {
    var there = device("page-00000001", true);
    var away = device("page-00000001", false);
    assertThat(DeviceNews.between(List.of(away), List.of(there)))
        .containsExactly(new DeviceNews.Came(there));
    assertThat(DeviceNews.between(List.of(there), List.of(away)))
        .containsExactly(new DeviceNews.Left(away));
  }

  @Test
  void whatIsSeenAgainIsNoNews() {
    var before = device("page-00000001", true);
    var now =
        new PairedDevice(
            before.id(), before.name(), before.role(), true, Instant.EPOCH.plusSeconds(5));
    assertThat(DeviceNews.between(List.of(before), List.of(now))).isEmpty();
  }
}
