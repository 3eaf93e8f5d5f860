package tabor.build;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.emit.engrave.Engraver;
import tabor.emit.engrave.Engraving;
import tabor.emit.engrave.Look;
import tabor.emit.font.OpenFont;
import tabor.emit.grid.Grid;
import tabor.groove.Lesson;
import tabor.notation.Bar;
import tabor.notation.Speller;
import tabor.resolve.Options;
import tabor.rhythm.Time;
import tabor.testing.MixedMeters;

/** Meters in turn: grid, page and practice page have the same bars, each as long as it is. */
class MixedMetersProperties {
  private static final Pattern DATA =
      Pattern.compile("<script[^>]*id=\"?Data\"?[^>]*>(.*?)</script>", Pattern.DOTALL);

  @Provide
  Arbitrary<MixedMeters> files() {
    return MixedMeters.any();
  }

  private static Lesson lesson(MixedMeters file) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("lesson.tabor"), file.text(), Options.NONE);
    Assume.that(!compiled.hasErrors());
    return compiled.lesson();
  }

  @Property(tries = 60)
  void theGridCountsTheBeatsOfEveryBar(@ForAll("files") MixedMeters file) {
    int wanted = file.pickup().sign() > 0 ? 1 : 0;
    for (int bar = 1; bar <= file.bars(); bar++) {
      wanted += file.beats(bar);
    }
    int counted = 0;
    for (String line : Grid.bars(lesson(file).grooves().get(0)).lines().toList()) {
      Matcher heading = Pattern.compile("(pickup|bars?\\s[\\d.-]+)(.*)").matcher(line);
      if (heading.matches()) {
        for (String count : heading.group(2).split("[\\s|]+", -1)) {
          counted += count.matches("\\d+") ? 1 : 0;
        }
      }
    }
    assertThat(counted).isEqualTo(wanted);
  }

  @Property(tries = 60)
  void thePageShowsEveryBarAsLongAsItIs(@ForAll("files") MixedMeters file) {
    var score = Speller.spell(lesson(file).grooves().get(0));
    int first = file.pickup().sign() > 0 ? 0 : 1;
    assertThat(score.bars()).hasSize(file.bars() + 1 - first);
    for (Bar bar : score.bars()) {
      Time length = bar.number() == 0 ? file.pickup() : file.length(bar.number());
      assertThat(bar.length()).isEqualTo(length);
    }
    Engraving engraving = Engraver.engrave(score, Look.FULL, OpenFont.get());
    TreeMap<Integer, Time> last = new TreeMap<>();
    for (Engraving.StaffSystem system : engraving.systems()) {
      system.moments().forEach(moment -> last.merge(moment.bar(), moment.at(), Time::max));
    }
    last.forEach((bar, at) -> assertThat(at).isLessThan(file.length(bar)));
  }

  @Property(tries = 40)
  void thePracticePagePutsItsBarlinesThere(@ForAll("files") MixedMeters file) {
    byte[] html = Form.HTML.outputs(lesson(file), BuildOptions.ALL).get(0).bytes().get();
    Matcher data = DATA.matcher(new String(html, StandardCharsets.UTF_8));
    assertThat(data.find()).isTrue();
    JsonObject json = JsonParser.parseString(data.group(1)).getAsJsonObject();
    JsonObject part = json.getAsJsonArray("parts").get(0).getAsJsonObject();
    JsonArray bars = part.getAsJsonArray("bars");
    assertThat(bars).hasSize(file.bars() + 1);
    for (int bar = 0; bar <= file.bars(); bar++) {
      Time line = file.lengthOf(bar);
      assertThat(bars.get(bar).getAsDouble())
          .isEqualTo((double) line.num() / line.den(), within(1e-6));
    }
    // The count-in is one bar of the first meter, up to the pickup.
    int take = part.getAsJsonArray("legs").get(0).getAsJsonObject().get("take").getAsInt();
    JsonArray countIn =
        json.getAsJsonArray("takes").get(take).getAsJsonObject().getAsJsonArray("countIn");
    Time left = file.length(0).minus(file.pickup());
    assertThat(countIn.get(0).getAsJsonArray().get(0).getAsDouble())
        .isEqualTo(-(double) left.num() / left.den(), within(1e-6));
    // Its clicks begin a bar, at level 2, at every barline and nowhere else.
    JsonArray clicks =
        json.getAsJsonArray("takes").get(take).getAsJsonObject().getAsJsonArray("clicks");
    List<Double> first =
        clicks.asList().stream()
            .map(tick -> tick.getAsJsonArray())
            .filter(tick -> tick.get(1).getAsInt() % 4 == 2)
            .map(tick -> tick.get(0).getAsDouble())
            .toList();
    assertThat(first).hasSize(file.bars());
    for (int bar = 1; bar <= file.bars(); bar++) {
      Time line = file.pickup().plus(file.lengthOf(bar - 1));
      assertThat(first.get(bar - 1)).isEqualTo((double) line.num() / line.den(), within(1e-6));
    }
  }
}
