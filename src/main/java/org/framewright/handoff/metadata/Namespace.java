package org.framewright.handoff.metadata;

/** The namespaces of the properties, with the prefixes that their standards use. */
enum Namespace {
  DC("dc", "http://purl.org/dc/elements/1.1/"),
  XMP("xmp", "http://ns.adobe.com/xap/1.0/"),
  PHOTOSHOP("photoshop", "http://ns.adobe.com/photoshop/1.0/"),
  RIGHTS("xmpRights", "http://ns.adobe.com/xap/1.0/rights/"),
  MEDIA("xmpMM", "http://ns.adobe.com/xap/1.0/mm/"),
  IPTC_CORE("Iptc4xmpCore", "http://iptc.org/std/Iptc4xmpCore/1.0/xmlns/"),
  IPTC_EXT("Iptc4xmpExt", "http://iptc.org/std/Iptc4xmpExt/2008-02-29/"),
  PLUS("plus", "http://ns.useplus.org/ldf/xmp/1.0/"),
  RDF("rdf", "http://www.w3.org/1999/02/22-rdf-syntax-ns#");

  private final String prefix;
  private final String uri;

  Namespace(String prefix, String uri) {
    this.prefix = prefix;
    this.uri = uri;
  }

  String prefix() {
    return prefix;
  }

  String uri() {
    return uri;
  }
}
