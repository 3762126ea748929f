package org.framewright.installer;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.framewright.AssertThat.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.framewright.base.Sha256;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The list of what the program is made of, beside the jars that were built. It runs in Maven's
 * phase {@code verify}, when they are there.
 */
class BillOfMaterialsShipped {
  private static final Path SHIPPED =
      Path.of(System.getProperty("framewright.shipped", "target/framewright"));
  private static final Pattern CLASSIFIER = Pattern.compile("classifier=([^&]+)");

  private static String bill() throws IOException {
    assumeTrue(
        Files.exists(SHIPPED.resolve(BillOfMaterials.NAME)),
        "there is no bill of materials, since Maven was offline");
    return Files.readString(SHIPPED.resolve(BillOfMaterials.NAME));
  }

  private static String resource(String name) throws IOException {
    try (var in = BillOfMaterialsShipped.class.getResourceAsStream("/" + name)) {
      return new String(in.readAllBytes(), UTF_8);
    }
  }

  private static String jarOf(JsonNode component) {
    var name = component.get("name").asText() + "-" + component.get("version").asText();
    var classifier = CLASSIFIER.matcher(component.get("purl").asText());
    return name + (classifier.find() ? "-" + classifier.group(1) : "") + ".jar";
  }

  /** Each component's jar, and its SHA-256 as the list has it. */
  private static Map<String, String> listed() throws IOException {
    var listed = new HashMap<String, String>();
    for (var component : new JsonMapper().readTree(bill()).get("components")) {
      for (var hash : component.get("hashes")) {
        if (hash.get("alg").asText().equals("SHA-256")) {
          listed.put(jarOf(component), hash.get("content").asText());
        }
      }
    }
    return listed;
  }

  private static Map<String, String> shipped() throws IOException {
    var shipped = new HashMap<String, String>();
    try (var jars = Files.list(SHIPPED.resolve("lib"))) {
      for (var jar : jars.filter(path -> path.toString().endsWith(".jar")).toList()) {
        shipped.put(jar.getFileName().toString(), Sha256.of(Files.readAllBytes(jar)));
      }
    }
    shipped.keySet().removeIf(jar -> jar.startsWith("framewright-"));
    return shipped;
  }

  /** The schema of CycloneDX 1.6 as its library has it; it names two others. */
  private static Schema schema() throws IOException {
    var schemas = new HashMap<String, String>();
    for (var name : new String[] {"bom-1.6", "spdx", "jsf-0.82"}) {
      var file = name + ".schema.json";
      schemas.put("http://cyclonedx.org/schema/" + file, resource(file));
    }
    return SchemaRegistry.withDefaultDialect(
            SpecificationVersion.DRAFT_7, builder -> builder.schemas(schemas))
        .getSchema(schemas.get("http://cyclonedx.org/schema/bom-1.6.schema.json"));
  }

  @Test
  void isValidByThePublishedSchema() throws IOException {
    assertThat(schema().validate(bill(), InputFormat.JSON)).isEmpty();
    var wrong = bill().replace("\"bomFormat\" : \"CycloneDX\"", "\"bomFormat\" : \"another\"");
    assertThat(schema().validate(wrong, InputFormat.JSON)).isNotEmpty();
  }

  @Test
  void isValidWithWhatPackagesAdd(@TempDir Path folder) throws IOException {
    var bill = new BillOfMaterials(Files.writeString(folder.resolve("bill.json"), bill()));
    bill.addRuntime(Files.writeString(folder.resolve("release"), "JAVA_VERSION=\"25.0.3\"\n"));
    try (var jars = Files.list(SHIPPED.resolve("lib"))) {
      var picocli =
          jars.filter(jar -> jar.getFileName().toString().startsWith("picocli-")).toList();
      bill.changed(picocli.getFirst(), RaisedClasses.NOTE);
    }
    assertThat(schema().validate(Files.readString(bill.file()), InputFormat.JSON)).isEmpty();
  }

  @Test
  void hasEachJarByItsContentAndNoOther() throws IOException {
    assertThat(new TreeSet<>(listed().keySet())).isEqualTo(new TreeSet<>(shipped().keySet()));
    assertThat(listed()).isEqualTo(shipped());
  }

  @Test
  void saysTheLicenceOfEach() throws IOException {
    var silent = new TreeSet<String>();
    for (var component : new JsonMapper().readTree(bill()).get("components")) {
      if (component.path("licenses").isEmpty()) {
        silent.add(jarOf(component));
      }
    }
    assertThat(silent).isEmpty();
  }

  /** Else two builds of one source would differ. */
  @Test
  void hasNoTimeOfItsOwn() throws IOException {
    var metadata = new JsonMapper().readTree(bill()).get("metadata");
    assertThat(metadata.path("timestamp").asText("2026-11-25T00:00:00Z"))
        .isEqualTo("2026-11-25T00:00:00Z");
  }

  @Test
  void everyJarIsInTheListOfLicences() throws IOException {
    var list = Files.readString(SHIPPED.resolve("licences/README.md"));
    var unlisted =
        shipped().keySet().stream()
            .map(jar -> jar.replaceFirst("-[0-9].*", ""))
            .filter(
                name -> !Pattern.compile("\\b" + Pattern.quote(name) + "\\b").matcher(list).find())
            .collect(Collectors.toCollection(TreeSet::new));
    assertThat(unlisted).isEmpty();
  }
}
