package org.framewright.installer;

import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;
import org.framewright.base.Sha256;

/**
 * The list of what the program is made of, in the form of CycloneDX: as the build made it of the
 * jars, and then of what packages have besides.
 *
 * @param file the list
 */
record BillOfMaterials(Path file) {
  static final String NAME = "framewright.cdx.json";
  private static final JsonMapper JSON =
      JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

  /** Adds the Java that is described by its file {@code release}. */
  void addRuntime(Path release) throws IOException {
    var described = new Properties();
    try (var lines = Files.newBufferedReader(release)) {
      described.load(lines);
    }
    var bill = read();
    var component =
        components(bill)
            .addObject()
            .put("type", "platform")
            .put("bom-ref", "java-runtime")
            .put("publisher", System.getProperty("java.vendor"))
            .put("name", "OpenJDK runtime")
            .put("version", described.getProperty("JAVA_VERSION").replace("\"", ""))
            .put("description", "The Java that packages bring along, made by jlink");
    component
        .putArray("licenses")
        .addObject()
        .put("expression", "GPL-2.0-only WITH Classpath-exception-2.0");
    write(bill);
  }

  /**
   * Says that a jar in packages is another than its maker's, and which.
   *
   * @throws IOException also if the list has no such jar
   */
  void changed(Path jar, String how) throws IOException {
    var bill = read();
    var name = jar.getFileName().toString();
    for (var component : components(bill)) {
      var maven = component.get("name").asText() + "-" + component.path("version").asText();
      if (name.equals(maven + ".jar")) {
        var changed = (ObjectNode) component;
        changed
            .putArray("hashes")
            .addObject()
            .put("alg", "SHA-256")
            .put("content", Sha256.of(Files.readAllBytes(jar)));
        changed.putObject("pedigree").put("notes", how);
        write(bill);
        return;
      }
    }
    throw new IOException(file + " has no " + name);
  }

  private ObjectNode read() throws IOException {
    return (ObjectNode) JSON.readTree(file.toFile());
  }

  private static ArrayNode components(ObjectNode bill) {
    return (ArrayNode) bill.get("components");
  }

  private void write(ObjectNode bill) throws IOException {
    Files.writeString(file, JSON.writeValueAsString(bill) + "\n");
  }
}
