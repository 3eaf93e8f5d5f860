package tabor.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tabor.groove.Caution;
import tabor.kit.Kits;
import tabor.kit.Limb;
import tabor.kit.Surface;

/** The bundles against each other, and against the sources that ask for their keys. */
class WordsTest {
  /** Keys that are put together: what comes before a name that the code works out. */
  private static final List<String> FAMILIES =
      List.of(
          "kit.",
          "surface-own.",
          "limb.",
          "level.",
          "ornament.",
          "by.",
          "value.",
          "values.",
          "feel.swing-",
          "chart.click-",
          "road-map.",
          "hand.",
          "key.",
          "library.",
          "technique.",
          "desk.",
          "keys.",
          "script.");

  private static final Pattern PLACE = Pattern.compile("\\{(\\d)[,}]");

  static Properties bundle(Language language) {
    return load(language == Language.EN ? "words" : "words_" + language.word());
  }

  private static Properties load(String name) {
    Properties properties = new Properties();
    try (InputStream in = Words.class.getResourceAsStream(name + ".properties")) {
      properties.load(
          new InputStreamReader(Objects.requireNonNull(in, name), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
    return properties;
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void noLanguageLacksAWord(Language language) {
    Set<String> own = new TreeSet<>(bundle(language).stringPropertyNames());
    Set<String> english = new TreeSet<>(bundle(Language.EN).stringPropertyNames());
    Set<String> missing = new TreeSet<>(english);
    missing.removeAll(own);
    own.removeAll(english);
    assertThat(missing).as("missing in " + language.word()).isEmpty();
    assertThat(own).as("only in " + language.word()).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(Language.class)
  void patternsTakeTheSameParts(Language language) {
    Properties english = bundle(Language.EN);
    Properties own = bundle(language);
    for (String key : own.stringPropertyNames()) {
      String pattern = own.getProperty(key);
      assertThat(pattern).as(key).isNotEmpty().doesNotContain("'");
      // Both throw for a pattern that is none.
      assertThat(new MessageFormat(pattern, language.locale()).toPattern()).as(key).isNotEmpty();
      if (!key.equals("place.every-nth")) {
        // The ordinal of English is of no use to the others.
        assertThat(parts(pattern)).as(key).isEqualTo(parts(english.getProperty(key)));
      }
    }
  }

  /** The parts that a pattern takes; 5 to 9 are 0 to 4 in digits. */
  private static Set<Integer> parts(String pattern) {
    Set<Integer> parts = new TreeSet<>();
    Matcher matcher = PLACE.matcher(pattern);
    while (matcher.find()) {
      parts.add(Integer.parseInt(matcher.group(1)) % 5);
    }
    return parts;
  }

  @Test
  void everyKeyIsAskedFor() throws IOException {
    String sources;
    try (Stream<Path> files = Files.walk(Path.of("src/main"))) {
      sources =
          files
              .filter(file -> file.toString().matches(".*\\.(java|js|html)"))
              .map(WordsTest::read)
              .collect(Collectors.joining("\n"));
    }
    List<String> unused = new ArrayList<>();
    for (String key : bundle(Language.EN).stringPropertyNames()) {
      String prefix = FAMILIES.stream().filter(key::startsWith).findFirst().orElse("");
      boolean family = !prefix.isEmpty();
      String last = key.substring(prefix.length());
      boolean asked = sources.contains("\"" + last + "\"") || sources.contains("[[" + last + "]]");
      boolean named =
          (family
                  && (names().contains(last.replaceAll("\\.(everywhere|some)$", ""))
                      || last.matches("[0-9]+|(eighths|sixteenths)(-triplets)?|the|to|from|on")))
              || (prefix.equals("kit.") && Kits.NAMES.contains(last));
      if (!asked && !named && !sources.contains("\"" + key + "\"")) {
        unused.add(key);
      }
    }
    assertThat(unused).isEmpty();
  }

  /** What the code works the end of a key out from. */
  private static Set<String> names() {
    Set<String> names = new TreeSet<>(Kits.FIVE_PIECE.surfaceNames());
    for (Enum<?>[] constants :
        new Enum<?>[][] {
          Limb.values(),
          tabor.groove.Level.values(),
          tabor.groove.Ornament.values(),
          tabor.rhythm.NoteValue.values(),
          tabor.groove.Chart.Click.values(),
          tabor.find.Technique.Kind.values()
        }) {
      for (Enum<?> constant : constants) {
        names.add(Words.word(constant));
      }
    }
    return names;
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /** Messages and the page call a thing alike. */
  @Test
  void englishNamesAreThoseOfTheKit() {
    Words english = Words.english();
    for (Surface surface : Kits.FIVE_PIECE.surfaces().values()) {
      assertThat(english.surface(surface)).isEqualTo(surface.words());
      assertThat(english.label(surface)).isEqualTo(surface.label());
    }
    for (Limb limb : Limb.values()) {
      assertThat(english.limb(limb)).isEqualTo(limb.words());
    }
    assertThat(Caution.in(english)).isEqualTo(Caution.WORDS);
  }

  /**
   * Every language but English, which has the names of the kit, has every form of every surface.
   */
  @Test
  void everySurfaceHasAllItsForms() {
    Set<String> expected = new TreeSet<>();
    for (Language language : Language.values()) {
      for (Surface surface : Kits.FIVE_PIECE.surfaces().values()) {
        for (String form : List.of("", ".the", ".to", ".from", ".on")) {
          if (language != Language.EN) {
            expected.add(language.word() + "." + surface.name() + form);
          }
        }
      }
    }
    Properties surfaces = load("surfaces");
    Set<String> said = new TreeSet<>(surfaces.stringPropertyNames());
    said.removeIf(key -> key.endsWith(".label"));
    assertThat(said).isEqualTo(expected);
    assertThat(surfaces.values()).doesNotContain("");
  }

  @ParameterizedTest
  @CsvSource({
    "EN, THE, the open hi-hat",
    "EN, ON, on the open hi-hat",
    "DE, FROM, von der offenen Hi-Hat",
    "FR, TO, au charleston ouvert",
    "ES, ON, en el charles abierto"
  })
  void aSurfaceIsSaidInItsForm(Language language, Words.Form form, String said) {
    Surface open = Kits.FIVE_PIECE.surface("hihat.open");
    assertThat(Words.of(language).surface(open, form)).isEqualTo(said);
  }

  @ParameterizedTest
  @CsvSource({"DE, Hi-Hat offen, Bassdrum", "FR, charleston ouvert, grosse caisse"})
  void aTablePutsThePieceFirstWhereItsLanguageDoes(Language language, String open, String kick) {
    Words words = Words.of(language);
    assertThat(words.label(Kits.FIVE_PIECE.surface("hihat.open"))).isEqualTo(open);
    assertThat(words.label(Kits.FIVE_PIECE.surface("kick"))).isEqualTo(kick);
  }

  @ParameterizedTest
  @CsvSource({
    "EN, some.bars, 0, 0 bars", "EN, some.bars, 1, 1 bar", "EN, some.bars, 2, 2 bars",
    "EN, some.bars, 1024, 1024 bars", "DE, some.bars, 1, 1 Takt", "DE, some.bars, 2, 2 Takte",
    "DE, some.beats, 1, 1 Schlag", "DE, some.beats, 2, 2 Schläge", "FR, some.bars, 1, 1 mesure",
    "FR, some.bars, 2, 2 mesures", "FR, some.times, 2, 2 fois", "ES, some.bars, 1, 1 compás",
    "ES, some.bars, 2, 2 compases", "ES, some.times, 1, 1 vez", "ES, some.times, 2, 2 veces",
    "DE, by.eighths, 1, um eine Achtel", "DE, by.eighths, 3, um 3 Achtel",
  })
  void numbersAgree(Language language, String key, long count, String words) {
    assertThat(Words.of(language).text(key, count)).isEqualTo(words);
  }

  @Test
  void aWordThatALanguageLacksIsEnglish() {
    // The root bundle is English, and the parent of all others.
    assertThat(Words.of(Language.DE).text("page.name")).isEqualTo("Name");
    assertThat(Words.of(Language.FR).language()).isEqualTo(Language.FR);
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> Words.english().text("no.such.key"))
        .isInstanceOf(java.util.MissingResourceException.class);
  }
}
