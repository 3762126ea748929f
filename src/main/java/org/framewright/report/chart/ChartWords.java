package org.framewright.report.chart;

import java.time.Duration;
import java.time.LocalTime;
import org.framewright.base.Text;

/** How a language says what stands in a chart. */
public interface ChartWords {
  /** A text. */
  String say(Text text);

  /** A count. */
  String number(long count);

  /** A number with one decimal at most. */
  String oneDecimal(double value);

  /** A time of day. */
  String time(LocalTime at);

  /** Working time, to the minute. */
  String minutes(Duration time);
}
