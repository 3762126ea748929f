package org.framewright.studio;

import java.net.URI;
import java.net.URISyntaxException;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Properties;
import java.util.SequencedMap;
import java.util.Set;
import java.util.stream.Collectors;
import org.framewright.base.Text;

/**
 * Where a store is, as a person writes it: {@code
 * postgresql://USER@HOST[:PORT]/DATABASE[?sslmode=MODE]} (PostgreSQL manual, section 34.1.1.2).
 * There is never a password in it.
 *
 * @param port from 1 to 65535
 * @param options of the connection: {@code sslmode}, {@code sslrootcert}, {@code sslcert}, {@code
 *     sslkey}
 */
public record StoreAddress(
    String user, String host, int port, String database, SequencedMap<String, String> options) {
  private static final int USUAL_PORT = 5432;
  private static final String MODE = "sslmode";
  private static final Set<String> OPTIONS = Set.of(MODE, "sslrootcert", "sslcert", "sslkey");
  private static final Set<String> MODES =
      Set.of("disable", "allow", "prefer", "require", "verify-ca", "verify-full");
  private static final Set<String> HERE = Set.of("localhost", "127.0.0.1", "[::1]");
  private static final Text FORM =
      Text.of("Write postgresql://USER@HOST/DATABASE?sslmode=verify-full");

  public StoreAddress {
    options = Collections.unmodifiableSequencedMap(new LinkedHashMap<>(options));
  }

  /**
   * Reads an address.
   *
   * @throws StoreException if it is none, or has a password in it
   */
  public static StoreAddress parse(String text) throws StoreException {
    URI uri;
    try {
      uri = new URI(text.startsWith("jdbc:") ? text.substring("jdbc:".length()) : text);
    } catch (URISyntaxException e) {
      throw none();
    }
    if (!Set.of("postgresql", "postgres").contains(String.valueOf(uri.getScheme()))
        || uri.getHost() == null
        || uri.getRawPath() == null
        || uri.getRawPath().length() < 2
        || uri.getRawPath().indexOf('/', 1) > 0) {
      throw none();
    }
    var user = uri.getUserInfo() == null ? "" : uri.getUserInfo();
    var options = options(uri.getRawQuery());
    if (user.contains(":") || options.containsKey("password")) {
      throw new StoreException(
          Text.of("the address of a store has no password in it"),
          "",
          Text.of(
              "Leave it out; it is asked for, or taken from the variable {0}. Change it if others"
                  + " may have seen it.",
              StudioSettings.PASSWORD));
    }
    var named = options.remove("user");
    user = named != null ? named : user;
    if (user.isBlank()) {
      throw none();
    }
    for (var option : options.keySet()) {
      if (!OPTIONS.contains(option)) {
        throw new StoreException(
            Text.of("the address of a store has no option {0}", option),
            "",
            Text.of("It may have {0}.", String.join(", ", OPTIONS.stream().sorted().toList())));
      }
    }
    var mode = options.get(MODE);
    if (mode != null && !MODES.contains(mode)) {
      throw new StoreException(
          Text.of("{0} is no sslmode", mode),
          "",
          Text.of("Take verify-full, which checks the certificate and whose it is."));
    }
    return new StoreAddress(
        user,
        uri.getHost(),
        uri.getPort() < 1 ? USUAL_PORT : uri.getPort(),
        uri.getPath().substring(1),
        options);
  }

  private static StoreException none() {
    return new StoreException(Text.of("this is no address of a store"), "", FORM);
  }

  private static LinkedHashMap<String, String> options(String query) {
    var options = new LinkedHashMap<String, String>();
    if (query != null) {
      Arrays.stream(query.split("&"))
          .map(option -> option.split("=", 2))
          .forEach(
              option ->
                  options.put(decoded(option[0]), option.length > 1 ? decoded(option[1]) : ""));
    }
    return options;
  }

  private static String decoded(String text) {
    return URLDecoder.decode(text, StandardCharsets.UTF_8);
  }

  /** Whether the server is this computer. */
  private boolean isHere() {
    return HERE.contains(host);
  }

  /** For the driver; what is not said of TLS is as safe as can be, but on this computer. */
  Properties properties() {
    var properties = new Properties();
    properties.setProperty("user", user);
    properties.setProperty(MODE, isHere() ? "prefer" : "verify-full");
    options.forEach(properties::setProperty);
    properties.setProperty("ApplicationName", "Framewright");
    properties.setProperty("connectTimeout", "5");
    properties.setProperty("loginTimeout", "8");
    properties.setProperty("socketTimeout", "30");
    properties.setProperty("tcpKeepAlive", "true");
    return properties;
  }

  String jdbc() {
    return "jdbc:postgresql://" + host + ":" + port + "/" + encoded(database);
  }

  /** As a person writes it. */
  public String url() {
    return "postgresql://"
        + encoded(user)
        + "@"
        + host
        + (port == USUAL_PORT ? "" : ":" + port)
        + "/"
        + encoded(database)
        + (options.isEmpty()
            ? ""
            : options.entrySet().stream()
                .map(StoreAddress::option)
                .collect(Collectors.joining("&", "?", "")));
  }

  private static String option(Map.Entry<String, String> option) {
    return option.getKey() + "=" + encoded(option.getValue()).replace("%2F", "/");
  }

  private static String encoded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
  }

  @Override
  public String toString() {
    return host + ":" + port + "/" + database;
  }
}
