package tabor.emit.musicxml;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Elements with indentation, through StAX. */
final class XmlBuilder {
  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter out;
  private int depth;

  XmlBuilder() {
    try {
      out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
      out.writeStartDocument("UTF-8", "1.0");
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
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

  /** The whole text. */
  String finish() {
    try {
      out.writeEndDocument();
      out.close();
    } catch (XMLStreamException e) {
      throw impossible(e);
    }
    return text.append('\n').toString();
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
