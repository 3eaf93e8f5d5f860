package tabor.emit.musicxml;

import tabor.emit.musicxml.ScoreFile.Instrument;
import tabor.emit.musicxml.ScoreFile.Measure;

/** Writes the tree down, element by element in the order that the schema asks for. */
record XmlWriter(XmlBuilder xml) {
  private static final String PART = "P1";

  static String text(ScoreFile score) {
    XmlBuilder xml = new XmlBuilder();
    new XmlWriter(xml).score(score);
    return xml.finish();
  }

  private void score(ScoreFile score) {
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
    xml.open("part", "id", PART);
    MeasureWriter writer = new MeasureWriter(xml);
    int count = 0;
    for (Measure measure : score.measures()) {
      String number = Integer.toString(++count);
      if (measure.implicit()) {
        xml.open("measure", "number", number, "implicit", "yes");
      } else {
        String shown = Integer.toString(measure.number());
        xml.open("measure", "number", number, "text", shown);
      }
      measure.elements().forEach(writer::element);
      xml.close();
    }
    xml.close();
    xml.close();
  }
}
