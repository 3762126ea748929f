package org.framewright.ui.board;

import java.util.List;
import java.util.stream.Collectors;
import org.framewright.base.Durations;
import org.framewright.base.PlainText;
import org.framewright.day.OrderOfWork;
import org.framewright.ui.look.Texts;

/**
 * Two orders of what is left, before a person who decides: the one of now and another one.
 *
 * @param now how much is changed in the order of now, in words
 * @param then and in the other one, with the time that it saves where that is known
 * @param linesNow the order of now
 * @param linesThen the other one; empty where there is none that is better
 * @param reasons how it was found and what is known of the times
 * @param codes the whole list in the other order
 */
record ProposedOrder(
    String now,
    String then,
    List<OrderLine> linesNow,
    List<OrderLine> linesThen,
    String reasons,
    List<String> codes) {
  ProposedOrder {
    linesNow = List.copyOf(linesNow);
    linesThen = List.copyOf(linesThen);
    codes = List.copyOf(codes);
  }

  static ProposedOrder of(OrderOfWork order, Texts texts) {
    var now = texts.get("order.now", texts.say(order.said(order.given())));
    var proposed = texts.say(order.said(order.proposed()));
    return new ProposedOrder(
        order.given().isEmpty() ? texts.get("order.nothingLeft") : now,
        order
            .saves()
            .map(time -> texts.get("order.thenSaves", proposed, texts.say(Durations.said(time))))
            .orElseGet(() -> texts.get("order.then", proposed)),
        lines(order.given(), texts),
        order.isBetter() ? lines(order.proposed(), texts) : List.of(),
        order.given().isEmpty()
            ? ""
            : order.reasons().stream().map(texts::say).collect(Collectors.joining(" ")),
        order.list());
  }

  private static List<OrderLine> lines(List<OrderOfWork.Line> order, Texts texts) {
    return order.stream()
        .map(
            line ->
                new OrderLine(
                    PlainText.line(line.setup().code()),
                    line.setup().title(),
                    line.changes().isEmpty()
                        ? ""
                        : texts.get(
                            "order.change",
                            texts
                                .formats()
                                .list(
                                    line.changes().stream()
                                        .map(change -> texts.say(change.said()))
                                        .toList()))))
        .toList();
  }

  /** Whether there is another order that is better. */
  boolean isBetter() {
    return !linesThen.isEmpty();
  }
}
