package tabor.emit.musicxml;

import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Elements with indentation, through StAX. */
final class XmlBuilder {
  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter out;
  private int depth;

  /** A whole document. */
  XmlBuilder() {
    this(0);
    try {
      out.writeStartDocument("UTF-8", "1.0");
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
  }

  /** What stands in a document inside some open elements, for {@link #take}. */
  XmlBuilder(int depth) {
    this.depth = depth;
    try {
      out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
  }

  /** How many elements are open. */
  int depth() {
    return depth;
  }

  /** Opens an element; attributes are names and values by turns. */
  void open(String name, String... attributes) {
    try {
      indent();
      out.writeStartElement(name);
      attributes(attributes);
      depth++;
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
  }

  /** Closes the element that was opened last. */
  void close() {
    try {
      depth--;
      indent();
      out.writeEndElement();
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
  }

  /** An element with nothing but text. */
  void leaf(String name, String content, String... attributes) {
    try {
      indent();
      out.writeStartElement(name);
      attributes(attributes);
      out.writeCharacters(content);
      out.writeEndElement();
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
  }

  /** An element with nothing in it. */
  void empty(String name, String... attributes) {
    try {
      indent();
      out.writeEmptyElement(name);
      attributes(attributes);
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
  }

  /** What was written since the last time, in UTF-8; what is open stays open. */
  byte[] take() {
    try {
      // The bracket of a start tag is written with what follows.
      out.writeCharacters("");
      out.flush();
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
    byte[] bytes = text.toString().getBytes(StandardCharsets.UTF_8);
    text.getBuffer().setLength(0);
    return bytes;
  }

  /** The end of the document, with what was written since the last {@link #take}. */
  byte[] finish() {
    try {
      out.writeEndDocument();
      out.close();
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
    text.append('\n');
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }

  private void attributes(String... attributes) throws XMLStreamException {
    for (int i = 0; i < attributes.length; i += 2) {
      out.writeAttribute(attributes[i], attributes[i + 1]);
    }
  }

  private void indent() throws XMLStreamException {
    out.writeCharacters("\n" + "  ".repeat(depth));
  }

  private static IllegalStateException impossible(XMLStreamException e) {
    return new IllegalStateException("a string cannot be written to", e);
  }
}
