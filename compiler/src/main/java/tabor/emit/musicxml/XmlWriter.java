package tabor.emit.musicxml;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import tabor.cores.SpareCores;
import tabor.emit.musicxml.ScoreFile.Instrument;
import tabor.emit.musicxml.ScoreFile.Measure;
import tabor.lists.Lists;

/** Writes the tree down, element by element in the order that the schema asks for. */
record XmlWriter(XmlBuilder xml) {
  private static final String PART = "P1";

  /** How many measures are written on one thread before another may take some. */
  private static final int AT_ONCE = 64;

  /** The document in UTF-8. */
  static byte[] bytes(ScoreFile score) {
    XmlBuilder xml = new XmlBuilder();
    new XmlWriter(xml).head(score);
    xml.open("part", "id", PART);
    List<byte[]> pieces = new ArrayList<>();
    pieces.add(xml.take());
    int depth = xml.depth();
    List<Measure> all = score.measures();
    pieces.addAll(
        SpareCores.map(
            Lists.numbers((all.size() + AT_ONCE - 1) / AT_ONCE),
            piece -> measures(all, piece * AT_ONCE, depth)));
    xml.close();
    xml.close();
    pieces.add(xml.finish());
    return joined(pieces);
  }

  private static byte[] joined(List<byte[]> pieces) {
    int length = 0;
    for (byte[] piece : pieces) {
      length = Math.addExact(length, piece.length);
    }
    ByteBuffer whole = ByteBuffer.allocate(length);
    pieces.forEach(whole::put);
    return whole.array();
  }

  private static byte[] measures(List<Measure> all, int from, int depth) {
    XmlBuilder xml = new XmlBuilder(depth);
    MeasureWriter writer = new MeasureWriter(xml);
    for (int i = from; i < Math.min(from + AT_ONCE, all.size()); i++) {
      Measure measure = all.get(i);
      String number = Integer.toString(i + 1);
      if (measure.implicit()) {
        xml.open("measure", "number", number, "implicit", "yes");
      } else {
        xml.open("measure", "number", number, "text", Integer.toString(measure.number()));
      }
      measure.elements().forEach(writer::element);
      xml.close();
    }
    return xml.take();
  }

  private void head(ScoreFile score) {
    xml.open("score-partwise", "version", "4.0");
    xml.open("work");
    xml.leaf("work-title", score.title());
    xml.close();
    xml.open("identification");
    String by = score.by();
    if (by != null) {
      xml.leaf("creator", by, "type", "author");
    }
    xml.open("encoding");
    xml.leaf("software", "Tabor");
    xml.close();
    xml.close();
    xml.open("part-list");
    xml.open("score-part", "id", PART);
    xml.leaf("part-name", "Drum kit");
    for (Instrument instrument : score.instruments()) {
      xml.open("score-instrument", "id", instrument.id());
      xml.leaf("instrument-name", instrument.name());
      String sound = instrument.sound();
      if (sound != null) {
        xml.leaf("instrument-sound", sound);
      }
      xml.close();
    }
    for (Instrument instrument : score.instruments()) {
      xml.open("midi-instrument", "id", instrument.id());
      xml.leaf("midi-channel", "10");
      xml.leaf("midi-program", "1");
      xml.leaf("midi-unpitched", Integer.toString(instrument.unpitched()));
      xml.close();
    }
    xml.close();
    xml.close();
  }
}
