package tabor.words;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.MissingResourceException;
import java.util.Properties;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import tabor.kit.Limb;
import tabor.kit.Surface;
import tabor.kit.SurfaceFacts.HiHat;
import tabor.lists.Lists;
import tabor.rhythm.Feel;
import tabor.rhythm.Meter;
import tabor.rhythm.Meters;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;
import tabor.source.ResourceText;

/** The fixed words of printed outputs in one language. */
public final class Words {
  private static final Map<Language, Words> ALL = all();

  /** From here on patterns find their parts in digits. */
  static final int DIGITS = 5;

  private final Language language;
  private final Map<String, WordPattern> patterns = new ConcurrentHashMap<>();

  /** Loaded when somebody asks: reading a lesson does not. */
  private volatile @Nullable Properties bundle;

  private Words(Language language) {
    this.language = language;
  }

  private static Map<Language, Words> all() {
    Map<Language, Words> all = new EnumMap<>(Language.class);
    for (Language language : Language.values()) {
      all.put(language, new Words(language));
    }
    return all;
  }

  /** How a surface is spoken of. */
  public enum Form {
    /** As the subject of a sentence: {@code the snare}. */
    THE,
    /** Where something goes: {@code to the snare}. */
    TO,
    /** Where something was: {@code from the snare}. */
    FROM,
    /** Where something is played: {@code on the snare}. */
    ON
  }

  /** The words of a language. */
  public static Words of(Language language) {
    return java.util.Objects.requireNonNull(ALL.get(language));
  }

  /** English, the language of everything that is not printed. */
  public static Words english() {
    return of(Language.EN);
  }

  /** Which language it is. */
  public Language language() {
    return language;
  }

  /**
   * A phrase.
   *
   * <p>In patterns {@code {5}} to {@code {9}} are the parts 0 to 4 in plain digits: within a choice
   * of plural forms there is no other way to write a number without marks between its thousands.
   *
   * @param key of the bundles; what a language lacks is English
   * @param parts what goes into the places of its pattern: numbers for plural forms, texts
   * @throws MissingResourceException for a key that there is not
   */
  public String text(String key, Object... parts) {
    if (parts.length == 0) {
      return pattern(key);
    }
    WordPattern phrase =
        patterns.computeIfAbsent(key, k -> new WordPattern(pattern(k), language.locale()));
    String plain = phrase.plain(parts);
    if (plain != null) {
      return plain;
    }
    Object[] all = new Object[DIGITS + parts.length];
    for (int i = 0; i < parts.length; i++) {
      all[i] = parts[i];
      all[DIGITS + i] = String.valueOf(parts[i]);
    }
    return phrase.format(all);
  }

  private String pattern(String key) {
    String found = bundle().getProperty(key);
    if (found == null) {
      throw new MissingResourceException("no words for " + key, Words.class.getName(), key);
    }
    return found;
  }

  private Properties bundle() {
    Properties found = bundle;
    if (found == null) {
      found = load(language);
      bundle = found;
    }
    return found;
  }

  /** English is the file without a language, from which the others take what they lack. */
  private static Properties load(Language language) {
    return language == Language.EN
        ? properties("words.properties", null)
        : properties("words_" + language.word() + ".properties", english().bundle());
  }

  /**
   * The words of a file. Java's own look for bundles goes through all languages of the machine
   * first.
   *
   * @param lacking where what the file lacks is taken from
   */
  static Properties properties(String file, @Nullable Properties lacking) {
    Properties words = new Properties(lacking);
    try {
      words.load(new StringReader(ResourceText.of(Words.class, file)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return words;
  }

  /** The patterns whose keys start so, by what follows in their keys, in alphabetical order. */
  public SortedMap<String, String> starting(String prefix) {
    SortedMap<String, String> found = new TreeMap<>();
    for (String key : bundle().stringPropertyNames()) {
      if (key.startsWith(prefix)) {
        found.put(key.substring(prefix.length()), pattern(key));
      }
    }
    return found;
  }

  private boolean has(String key) {
    return bundle().getProperty(key) != null;
  }

  /** A text with a capital first letter. */
  public static String capital(String text) {
    return text.isEmpty()
        ? text
        : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
  }

  // ---- joining

  /** {@code 1, 2& and 4}. */
  public String and(List<String> items) {
    int last = items.size() - 1;
    return last <= 0
        ? String.join("", items)
        : text(
            "list.and", String.join(text("list.comma"), items.subList(0, last)), items.get(last));
  }

  /** {@code 1, 2, 4}. */
  public String list(List<String> items) {
    return String.join(text("list.comma"), items);
  }

  /** {@code Beat, then Fill}. */
  public String then(List<String> items) {
    return String.join(text("list.then"), items);
  }

  // ---- names

  /** A surface by itself: {@code open hi-hat}. One of the writer's own has its own name. */
  public String surface(Surface surface) {
    String name = SurfaceWords.find(language, surface, "");
    return name == null ? surface.words() : name;
  }

  /** A surface as the row of a table says it: {@code hi-hat open}. */
  public String label(Surface surface) {
    String label = SurfaceWords.find(language, surface, ".label");
    String name = label == null ? SurfaceWords.find(language, surface, "") : label;
    return name == null ? surface.label() : name;
  }

  /** A surface in a sentence, with what stands before it. */
  public String surface(Surface surface, Form form) {
    String ending = "." + form.name().toLowerCase(Locale.ROOT);
    String said = SurfaceWords.find(language, surface, ending);
    return said == null ? text("surface-own" + ending, surface.words()) : said;
  }

  /** A kit; one of the writer's own has its own name. */
  public String kit(String name) {
    String key = "kit." + name;
    return has(key) ? text(key) : name;
  }

  /** {@code right hand}. */
  public String limb(Limb limb) {
    return text("limb." + word(limb));
  }

  /** How the hi-hat is struck: {@code half open}. */
  public String hihat(HiHat hihat) {
    return switch (hihat) {
      case NONE -> "";
      case CLOSED, CHICK -> text("hihat.closed");
      case HALF -> text("hihat.half");
      case OPEN, SPLASH -> text("hihat.open");
    };
  }

  /** {@code right-hand}: the name of an enum constant as keys have it. */
  public static String word(Enum<?> constant) {
    return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  // ---- time

  /** {@code dotted quarter = 60}. */
  public String tempo(Tempo tempo) {
    return text("tempo.is", beat(tempo.beat()), decimal(tempo.perMinute()));
  }

  /** What a tempo counts: {@code dotted quarter}. */
  public String beat(Time beat) {
    boolean dotted = Meter.isDotted(beat);
    Time plain = dotted ? beat.times(Time.of(2, 3)) : beat;
    String key = "value." + plain.den();
    String name = plain.num() == 1 && has(key) ? text(key) : plain.toString();
    return dotted ? text("value.dotted", name) : name;
  }

  /** What a tempo counts, in the plural: {@code dotted quarters}. */
  public String beats(Time beat) {
    boolean dotted = Meter.isDotted(beat);
    Time plain = dotted ? beat.times(Time.of(2, 3)) : beat;
    String key = "values." + plain.den();
    String name = plain.num() == 1 && has(key) ? text(key) : beat(plain);
    return dotted ? text("values.dotted", name) : name;
  }

  /** {@code swing eighths 62%}. */
  public String feel(Feel feel) {
    if (feel.isStraight()) {
      return text("feel.straight");
    }
    boolean triplets = feel.share().equals(Time.of(2, 3));
    String unit = feel.unit() == Feel.Unit.EIGHTHS ? "eighths" : "sixteenths";
    return triplets
        ? text("feel.swing-" + unit + "-triplets")
        : text("feel.swing-" + unit, decimal(feel.share().times(100)));
  }

  /** {@code 4/4 and 3/4 in turn}; of one meter its own words. */
  public String meters(Meters meters) {
    List<String> each = Lists.map(meters.cycle(), this::meter);
    return each.size() == 1 ? each.get(0) : text("meter.in-turn", and(each));
  }

  private String meter(Meter meter) {
    if (!meter.groups().isEmpty()) {
      return text("meter.grouped", meter.signature(), sum(meter.groups()));
    }
    if (meter.beats().equals(Meter.of(meter.count(), meter.unit()).beats())) {
      return meter.signature();
    }
    return text(
        "meter.in",
        meter.signature(),
        meter.isEven()
            ? Integer.toString(meter.beatCount())
            : sum(Lists.map(meter.beats(), beat -> beat.times(meter.unit()))));
  }

  private static String sum(List<?> parts) {
    return String.join("+", Lists.map(parts, String::valueOf));
  }

  /** A number with the decimal sign of the language. */
  public String decimal(Time number) {
    return decimal(number.decimal());
  }

  /** A number that is written with a point, with the decimal sign of the language. */
  public String decimal(String number) {
    return number.replace(".", text("number.point"));
  }
}
