package org.framewright.handoff.metadata;

import static org.framewright.AssertThat.assertThat;
import static org.framewright.handoff.metadata.Samples.packet;
import static org.framewright.handoff.metadata.Samples.utf8;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tag;
import net.jqwik.api.Tuple;

/** What a merge may do to a packet, whatever is in it. */
@Tag("slow")
class MergeLawsTest {
  private static final List<Name> OWN =
      Arrays.stream(org.framewright.handoff.metadata.Property.values())
          .map(org.framewright.handoff.metadata.Property::path)
          .toList();

  private static final String OURS =
      "xmlns:dc=\"http://purl.org/dc/elements/1.1/\""
          + " xmlns:p=\"http://ns.adobe.com/photoshop/1.0/\""
          + " xmlns:plus=\"http://ns.useplus.org/ldf/xmp/1.0/\"";

  private static final String OTHERS = "xmlns:e=\"urn:e\" xmlns:f=\"urn:f\"";

  private static Arbitrary<String> words() {
    return Arbitraries.of(
        "", "plain", "ä 日本 نور 😀", "5 &lt; 7 &amp; so", "a\n b", "&#13;&#9;", "\"quoted\" 'too'");
  }

  private static Arbitrary<String> foreign() {
    var text = words();
    return Combinators.combine(Arbitraries.integers().between(0, 7), text, text)
        .as(
            (form, one, other) ->
                switch (form) {
                  case 0 -> "<e:a>" + one + "</e:a>";
                  case 1 -> "<e:b><![CDATA[<" + one.replace("]]>", "") + "&]]></e:b>";
                  case 2 ->
                      "<e:c><rdf:Bag><rdf:li>"
                          + one
                          + "</rdf:li><rdf:li>"
                          + other
                          + "</rdf:li></rdf:Bag></e:c>";
                  case 3 -> "<e:d rdf:parseType=\"Resource\"><f:x>" + one + "</f:x><f:y/></e:d>";
                  case 4 ->
                      "<f:g><rdf:Description f:x=\"1\"><dc:creator>"
                          + one
                          + "</dc:creator></rdf:Description></f:g>";
                  case 5 -> "<!-- " + one.replace("-", "") + " -->";
                  case 6 -> "<dc:format xml:lang=\"de\">" + one + "</dc:format>";
                  default -> "<e:r rdf:resource=\"urn:x\"/>";
                });
  }

  private static Arbitrary<String> own() {
    var text = words();
    return Combinators.combine(Arbitraries.integers().between(0, 6), text)
        .as(
            (form, one) ->
                switch (form) {
                  case 0 ->
                      "<dc:creator><rdf:Seq><rdf:li>" + one + "</rdf:li></rdf:Seq></dc:creator>";
                  case 1 ->
                      "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">"
                          + one
                          + "</rdf:li><rdf:li xml:lang=\"fr\">oui</rdf:li></rdf:Alt></dc:title>";
                  case 2 -> "<p:Credit>" + one + "</p:Credit>";
                  case 3 -> "<p:Instructions>" + one + "</p:Instructions>";
                  case 4 -> "<plus:CopyrightOwner><rdf:Seq/></plus:CopyrightOwner>";
                  case 5 ->
                      "<dc:rights><rdf:Alt><rdf:li xml:lang=\"de\">"
                          + one
                          + "</rdf:li></rdf:Alt></dc:rights>";
                  default -> "<dc:subject>" + one + "</dc:subject>";
                });
  }

  @Provide
  Arbitrary<String> packets() {
    var children =
        Arbitraries.oneOf(foreign(), own()).list().ofMaxSize(6).map(all -> String.join("\n ", all));
    var attributes =
        Arbitraries.of(
            "",
            "e:t=\"ä &amp; &#10;\"",
            "p:Credit=\"Agency\" f:u=\"2\"",
            "p:Headline=\"\" p:Instructions=\"old\"");
    var about = Arbitraries.of("rdf:about=\"\"", "rdf:about=\"uuid:7\"", "rdf:nodeID=\"n\"", "");
    var description =
        Combinators.combine(about, attributes, children)
            .as(
                (of, said, inside) ->
                    "<rdf:Description "
                        + of
                        + " "
                        + OURS
                        + " "
                        + OTHERS
                        + " "
                        + said
                        + ">"
                        + inside
                        + "</rdf:Description>");
    var typed = Arbitraries.just("<e:Thing " + OTHERS + " e:a=\"1\"><f:x>2</f:x></e:Thing>");
    return Arbitraries.frequencyOf(Tuple.of(6, description), Tuple.of(1, typed))
        .list()
        .ofMaxSize(3)
        .map(all -> packet(String.join("\n", all)));
  }

  private static byte[] merged(byte[] before, boolean overwrite) {
    return ((Sidecar.Outcome.Made) Sidecar.merged(before, Samples.block(), overwrite)).bytes();
  }

  @Property(tries = 100)
  void nothingForeignIsLostOrChanged(@ForAll("packets") String before, @ForAll boolean overwrite)
      throws Exception {
    assertThat(Samples.foreign(merged(utf8(before), overwrite), OWN))
        .isEqualTo(Samples.foreign(utf8(before), OWN));
  }

  @Property(tries = 100)
  void mergingTwiceIsMergingOnce(@ForAll("packets") String before, @ForAll boolean overwrite) {
    var once = merged(utf8(before), overwrite);
    assertThat(merged(once, overwrite)).isEqualTo(once);
    assertThat(merged(once, false)).isEqualTo(once);
  }

  @Property(tries = 100)
  void eachPropertyIsThereOnceOrAsSomebodyWroteIt(@ForAll("packets") String before)
      throws Exception {
    var merged = Packet.read(merged(utf8(before), true));
    for (var name : OWN) {
      long said =
          merged.descriptions().stream()
              .mapToLong(
                  description ->
                      (description.hasAttributeNS(name.namespace().uri(), name.local()) ? 1 : 0)
                          + Packet.elements(description).stream()
                              .filter(
                                  child ->
                                      name.namespace().uri().equals(child.getNamespaceURI())
                                          && name.local().equals(child.getLocalName()))
                              .count())
              .sum();
      assertThat(said).as(name.local()).isEqualTo(1);
    }
  }
}
