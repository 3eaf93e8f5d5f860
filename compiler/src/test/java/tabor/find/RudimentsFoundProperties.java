package tabor.find;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tabor.body.RudimentFinder;
import tabor.compile.Compiled;
import tabor.compile.Compiler;
import tabor.compile.Loader;
import tabor.pattern.PatternPlace;
import tabor.pattern.Rudiments;
import tabor.pattern.Rudiments.Rudiment;
import tabor.resolve.Options;

/** Each of the 40 is found, poured from its name or written out by hand. */
class RudimentsFoundProperties {
  /** Without a rest before and after they are a roll of single strokes. */
  private static final Set<String> ALONE = Set.of("single-stroke-four", "single-stroke-seven");

  @Provide
  Arbitrary<Rudiment> rudiments() {
    return Arbitraries.of(Rudiments.all().values());
  }

  private static List<Found> found(String source, String name) {
    Compiled compiled =
        new Compiler(Loader.NONE).compile(Path.of("test.tabor"), source, Options.NONE);
    assertThat(compiled.hasErrors()).as(source).isFalse();
    Wanted wanted = new Wanted(List.of(name), List.of(), null, null, null, null, List.of());
    return new Finder(wanted).in("test.tabor", compiled.lesson());
  }

  /** Strokes as letters: a place a slot, or a doubled place as two strokes half as long. */
  private static String letters(List<PatternPlace> places, boolean apart) {
    StringBuilder text = new StringBuilder();
    for (PatternPlace place : places) {
      String letter = String.valueOf(place.letter());
      String stroke =
          "'".repeat(place.graceNotes())
              + (place.accent() ? letter.toUpperCase(java.util.Locale.ROOT) : letter);
      text.append(
          !place.diddle()
              ? stroke + (place.buzz() ? "~" : "")
              : apart ? "{" + stroke + letter + "}" : stroke + "/");
    }
    return text.toString();
  }

  @Property(tries = 240)
  void byNameOnSomeDrum(
      @ForAll("rudiments") Rudiment rudiment, @ForAll boolean sixteenths, @ForAll boolean left) {
    if (ALONE.contains(rudiment.name())) {
      return;
    }
    String source =
        "tempo 40\ngroove g\n  hands play "
            + rudiment.name()
            + (left ? " left-lead" : "")
            + " in "
            + (sixteenths ? "sixteenths" : "eighths")
            + "\n";
    assertThat(found(source, RudimentFinder.spoken(rudiment))).as(source).hasSize(1);
  }

  @Property(tries = 240)
  void writtenOutWithWhicheverHandLeads(
      @ForAll("rudiments") Rudiment rudiment, @ForAll boolean left, @ForAll boolean apart) {
    List<PatternPlace> lead = left ? rudiment.leftLead() : rudiment.lead();
    List<PatternPlace> other = left ? rudiment.lead() : rudiment.leftLead();
    String first = letters(lead, apart);
    String second = letters(rudiment.alternates() ? other : lead, apart);
    String bar =
        ALONE.contains(rudiment.name())
            ? first + ":2 . ."
            : first + ":2 " + second + ":2 | " + first + ":2 " + second + ":2";
    String source = "tempo 40\ngroove g\n  hands : " + bar + "\n";
    assertThat(found(source, RudimentFinder.spoken(rudiment))).as(source).hasSize(1);
  }

  @Property(tries = 40)
  void aHandsPartOfSomethingElseIsNotFound(@ForAll("rudiments") Rudiment rudiment) {
    String others =
        Rudiments.all().values().stream()
            .filter(one -> one.lead().size() > 4 && !one.name().contains("roll"))
            .filter(one -> !one.name().equals(rudiment.name()) && !ALONE.contains(one.name()))
            .map(Rudiment::name)
            .limit(6)
            .map(name -> "groove g-" + name + "\n  hands play " + name + " in eighths\n")
            .collect(Collectors.joining());
    assertThat(found("tempo 40\n" + others, RudimentFinder.spoken(rudiment)))
        .as(rudiment.name())
        .isEmpty();
  }
}
