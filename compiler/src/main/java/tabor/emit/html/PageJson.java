package tabor.emit.html;

import com.google.gson.stream.JsonWriter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tabor.emit.html.PlayData.Blow;
import tabor.emit.html.PlayData.Leg;
import tabor.emit.html.PlayData.Part;
import tabor.emit.html.PlayData.Take;
import tabor.emit.html.PlayData.Tick;
import tabor.kit.Limb;
import tabor.rhythm.Time;
import tabor.timbre.Timbres;
import tabor.words.Words;

/**
 * Writes what the script plays as JSON that may stand in a page: every {@code <}, {@code >}, {@code
 * &}, quote and line separator within a text is written as an escape, so that nothing in a title
 * can end the element around it. Places are rounded to nine digits, each from its exact value.
 */
final class PageJson {
  private static final int DIGITS = 9;
  private static final int PLACE_DIGITS = 5;

  private final StringWriter text = new StringWriter();
  private final JsonWriter json = new JsonWriter(text);

  private final Map<String, Integer> sounds = new LinkedHashMap<>();

  private final Words words;

  private PageJson(Words words) {
    this.words = words;
    json.setHtmlSafe(true);
  }

  static String of(PlayData data, Words words) {
    PageJson writer = new PageJson(words);
    try {
      writer.data(data);
      writer.json.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e); // writing to memory does not fail
    }
    return writer.text.toString();
  }

  private void data(PlayData data) throws IOException {
    for (Take take : data.takes()) {
      take.blows().forEach(blow -> sounds.putIfAbsent(blow.sound(), sounds.size()));
    }
    json.beginObject().name("words").beginObject();
    for (Map.Entry<String, String> word : words.starting("script.").entrySet()) {
      json.name(word.getKey()).value(word.getValue());
    }
    for (Limb limb : Limb.values()) {
      json.name(Words.word(limb)).value(words.limb(limb));
    }
    json.endObject();
    Set<String> heard = new LinkedHashSet<>(List.of(Timbres.CLICK_STRONG, Timbres.CLICK));
    heard.addAll(sounds.keySet());
    json.name("timbres").jsonValue(Timbres.json(heard));
    json.name("sounds").beginArray();
    for (String sound : sounds.keySet()) {
      json.value(sound);
    }
    json.endArray().name("takes").beginArray();
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
      json.beginArray().jsonValue(number(blow.at())).value(sounds.get(blow.sound()));
      json.value(blow.velocity()).value(blow.limb());
      if (blow.lead() != 0 || blow.damp().sign() > 0) {
        json.jsonValue(PageWording.decimal(Time.of(blow.lead(), 10_000), 4));
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
      json.beginArray()
          .jsonValue(number(tick.at()))
          .value(tick.level() + (tick.written() ? 4 : 0))
          .endArray();
    }
    json.endArray();
  }

  /** For each system the height of the bead, and time and place of each moment in turn. */
  private void picture(Pictures.Picture picture) throws IOException {
    json.beginArray();
    for (Pictures.StaffRow row : picture.systems()) {
      json.beginArray().jsonValue(LocalPath.tenths(row.bead() * LocalPath.UNIT)).beginArray();
      for (Pictures.Moment moment : row.moments()) {
        json.jsonValue(PageWording.decimal(moment.at(), PLACE_DIGITS));
        json.jsonValue(LocalPath.tenths(moment.x() * LocalPath.UNIT));
      }
      json.endArray().endArray();
    }
    json.endArray();
  }

  private void part(Part part, List<Take> takes) throws IOException {
    json.beginObject();
    json.name("name").value(Markup.clean(part.name()));
    json.name("title").value(Markup.clean(part.title()));
    json.name("click").value(part.click());
    TreeSet<Integer> limbs = new TreeSet<>();
    part.first().forEach(leg -> takes.get(leg.take()).blows().forEach(b -> limbs.add(b.limb())));
    json.name("limbs").beginArray();
    for (int limb : limbs) {
      json.value(limb);
    }
    json.endArray();
    json.name("bars").beginArray();
    for (Time barline : part.barlines()) {
      json.jsonValue(number(barline));
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
      json.name("tempo").jsonValue(PageWording.decimal(leg.tempo().perMinute(), 3));
      json.name("unit").value(PageWording.units(leg.tempo().beat(), words));
      json.name("times").value(leg.times()).name("figure").value(leg.figure());
      json.name("words").value(Markup.clean(leg.words()));
      json.name("through").value(leg.through());
      if (!leg.mark().isEmpty()) {
        json.name("mark").value(Markup.clean(leg.mark()));
      }
      if (!leg.cue().isEmpty()) {
        json.name("cue").value(Markup.clean(leg.cue()));
      }
      json.endObject();
    }
    json.endArray();
  }

  private static String number(Time time) {
    return PageWording.decimal(time, DIGITS);
  }
}
