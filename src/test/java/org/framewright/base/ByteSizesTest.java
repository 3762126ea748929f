package org.framewright.base;

import static org.framewright.AssertThat.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sizes as disks are sold: decimal (IEC 80000-13). */
class ByteSizesTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "20GB | 20000000000",
        "20 gb | 20000000000",
        "1.5TB | 1500000000000",
        "1,5 TB | 1500000000000",
        "500 MB | 500000000",
        "1kb | 1000"
      })
  void isReadAsPeopleWriteIt(String text, long bytes) {
    assertThat(ByteSizes.read(text)).hasValue(bytes);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "20", "GB", "0 GB", "0,000 TB", "-1 GB", "1e9 GB", "1234567890 GB"})
  void whatIsNoSizeIsNothing(String text) {
    assertThat(ByteSizes.read(text)).isEmpty();
  }
}
