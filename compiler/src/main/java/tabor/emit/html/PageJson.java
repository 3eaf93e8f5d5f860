package tabor.emit.html;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.TreeSet;
import tabor.emit.html.PlayData.Blow;
import tabor.emit.html.PlayData.Leg;
import tabor.emit.html.PlayData.Part;
import tabor.emit.html.PlayData.Take;
import tabor.emit.html.PlayData.Tick;
import tabor.rhythm.Time;

/**
 * Writes what the script plays as JSON that may stand in a page: every {@code <}, {@code >}, {@code
 * &}, quote and line separator within a text is written as an escape, so that nothing in a title
 * can end the element around it. Places are rounded to nine digits, each from its exact value.
 */
final class PageJson {
  private static final int DIGITS = 9;

  private final StringWriter text = new StringWriter();
  private final JsonWriter json = new JsonWriter(text);

  private PageJson() {
    json.setHtmlSafe(true);
  }

  static String of(PlayData data) {
    PageJson writer = new PageJson();
    try {
      writer.data(data);
      writer.json.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e); // writing to memory does not fail
    }
    return writer.text.toString();
  }

  private void data(PlayData data) throws IOException {
    json.beginObject();
    json.name("takes").beginArray();
    for (Take take : data.takes()) {
      take(take);
    }
    json.endArray().name("figures").beginArray();
    for (Page.Figure figure : data.figures()) {
      json.beginArray();
      picture(figure.score().wide());
      Pictures.Picture narrow = figure.score().narrow();
      if (narrow != null) {
        picture(narrow);
      }
      json.endArray();
    }
    json.endArray().name("parts").beginArray();
    for (Part part : data.parts()) {
      part(part, data.takes());
    }
    json.endArray().endObject();
  }

  private void take(Take take) throws IOException {
    json.beginObject();
    json.name("from").jsonValue(number(take.from()));
    json.name("length").jsonValue(number(take.length()));
    json.name("strokes").beginArray();
    for (Blow blow : take.blows()) {
      json.beginArray().jsonValue(number(blow.at())).value(blow.sound());
      json.value(blow.velocity()).value(blow.limb());
      if (blow.lead() != 0 || blow.damp().sign() > 0) {
        json.jsonValue(Words.decimal(Time.of(blow.lead(), 10_000), 4));
      }
      if (blow.damp().sign() > 0) {
        json.jsonValue(number(blow.damp()));
      }
      json.endArray();
    }
    json.endArray();
    ticks("clicks", take.clicks());
    ticks("counts", take.counts());
    ticks("countIn", take.countIn());
    json.endObject();
  }

  private void ticks(String name, List<Tick> ticks) throws IOException {
    json.name(name).beginArray();
    for (Tick tick : ticks) {
      json.beginArray().jsonValue(number(tick.at())).value(tick.strong() ? 1 : 0).endArray();
    }
    json.endArray();
  }

  private void picture(Pictures.Picture picture) throws IOException {
    json.beginArray();
    for (Pictures.Place place : picture.places()) {
      json.beginArray().jsonValue(number(place.at()));
      for (double length : new double[] {place.x(), place.top(), place.bottom()}) {
        json.value(Math.round(length * 10) / 10.0);
      }
      json.endArray();
    }
    json.endArray();
  }

  private void part(Part part, List<Take> takes) throws IOException {
    json.beginObject();
    json.name("title").value(Markup.clean(part.title()));
    json.name("click").value(part.click());
    TreeSet<Integer> limbs = new TreeSet<>();
    part.first().forEach(leg -> takes.get(leg.take()).blows().forEach(b -> limbs.add(b.limb())));
    json.name("limbs").beginArray();
    for (int limb : limbs) {
      json.value(limb);
    }
    json.endArray();
    legs("legs", part.first());
    if (!part.again().equals(part.first())) {
      legs("again", part.again());
    }
    json.endObject();
  }

  private void legs(String name, List<Leg> legs) throws IOException {
    json.name(name).beginArray();
    for (Leg leg : legs) {
      json.beginObject().name("take").value(leg.take());
      json.name("whole").jsonValue(number(leg.tempo().secondsPerWhole()));
      json.name("tempo").jsonValue(Words.decimal(leg.tempo().perMinute(), 3));
      json.name("unit").value(Words.unit(leg.tempo().beat(), true));
      json.name("times").value(leg.times()).name("figure").value(leg.figure());
      json.name("words").value(Markup.clean(leg.words())).endObject();
    }
    json.endArray();
  }

  private static String number(Time time) {
    return Words.decimal(time, DIGITS);
  }
}
