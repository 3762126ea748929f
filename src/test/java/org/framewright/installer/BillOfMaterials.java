package org.framewright.installer;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;

/** The list of what the program is made of, in the form of CycloneDX. */
final class BillOfMaterials {
  static final String NAME = "framewright.cdx.json";
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  private BillOfMaterials() {}

  /** Adds the Java in {@code runtime} to the list that the build made of the jars. */
  static void addRuntime(Path home) throws IOException {
    var file = home.resolve(NAME);
    var bill = (ObjectNode) JSON.readTree(file.toFile());
    var release = new Properties();
    try (var lines = Files.newBufferedReader(home.resolve("runtime/release"))) {
      release.load(lines);
    }
    var version = unquoted(release.getProperty("JAVA_RUNTIME_VERSION", ""));
    if (version.isEmpty()) {
      version = unquoted(release.getProperty("JAVA_VERSION"));
    }
    ((ArrayNode) bill.get("components")).add(runtime(version));
    Files.writeString(file, JSON.writeValueAsString(bill) + "\n");
  }

  private static JsonNode runtime(String version) {
    var component =
        JSON.createObjectNode()
            .put("type", "platform")
            .put("bom-ref", "java-runtime")
            .put("publisher", System.getProperty("java.vendor"))
            .put("name", "OpenJDK runtime")
            .put("version", version)
            .put("description", "The Java that the packages bring along, made by jlink");
    component
        .putArray("licenses")
        .addObject()
        .put("expression", "GPL-2.0-only WITH Classpath-exception-2.0");
    return component;
  }

  private static String unquoted(String value) {
    return value.replace("\"", "");
  }
}
