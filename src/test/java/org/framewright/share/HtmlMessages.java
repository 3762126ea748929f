package org.framewright.share;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import nu.validator.client.EmbeddedValidator;
import org.openqa.selenium.remote.RemoteWebDriver;

/** What the Nu Html Checker has to say of a page. */
final class HtmlMessages {
  private HtmlMessages() {}

  static JsonNode of(byte[] html) throws Exception {
    var checker = new EmbeddedValidator();
    checker.setNoLangDetect(true);
    checker.setOutputFormat(EmbeddedValidator.OutputFormat.JSON);
    var copy = Files.createTempFile("page", ".html");
    try {
      Files.write(copy, html);
      return new JsonMapper().readTree(checker.validate(copy)).path("messages");
    } finally {
      Files.delete(copy);
    }
  }

  /** Of the page that a browser shows, with all that was made there. */
  static JsonNode of(RemoteWebDriver browser) throws Exception {
    var made =
        "<!DOCTYPE html>" + browser.executeScript("return document.documentElement.outerHTML");
    return of(made.getBytes(StandardCharsets.UTF_8));
  }
}
