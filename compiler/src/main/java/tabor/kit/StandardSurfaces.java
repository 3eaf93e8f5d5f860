package tabor.kit;

import static tabor.kit.Surface.Head.DIAMOND;
import static tabor.kit.Surface.Head.NORMAL;
import static tabor.kit.Surface.Head.TRIANGLE;
import static tabor.kit.Surface.Head.X;
import static tabor.kit.SurfaceFacts.Trait.CHOKES;
import static tabor.kit.SurfaceFacts.Trait.CYMBAL;
import static tabor.kit.SurfaceFacts.Trait.HAND_LIES;
import static tabor.kit.SurfaceFacts.Trait.HIHAT;
import static tabor.kit.SurfaceFacts.Trait.KEEPS_TIME;
import static tabor.kit.SurfaceFacts.Trait.RIMSHOT;
import static tabor.kit.SurfaceFacts.Trait.RINGS;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tabor.kit.Surface.Sort;
import tabor.kit.SurfaceFacts.HiHat;
import tabor.kit.SurfaceFacts.Trait;

/**
 * The standard surfaces, one row each: everything that is known of them.
 *
 * <p>Keys: General MIDI System Level 1 (MMA 0007 / RP-003), table 3; the half-open hi-hat and the
 * foot splash have no key of their own and take the open hi-hat's. Staff places and note heads:
 * Norman Weinberg, "Guidelines for Drumset Notation", Percussive Notes, June 1994, as read off in
 * secondary sources; second crash, splash and china from memory. Sounds: the list of standard
 * sounds of MusicXML 4.0. Where things stand, what stands in for what, and other words of the
 * trade: common practice, no source, and from memory. docs/surfaces.md says the same to users;
 * tests compare the two.
 */
final class StandardSurfaces {
  private static final Position SNARE = new Position(38, -8, 65);
  private static final Position STAND = new Position(55, -45, 85);

  /** The pedal, which stands apart from the cymbals above it only in height. */
  private static final Position PEDAL = new Position(60, -35, 10);

  private static final Position RIDE = new Position(75, 38, 95);

  /** Without a second rack tom the ride comes into the gap. */
  private static final SurfaceFacts.Gap RIDE_CLOSE =
      new SurfaceFacts.Gap("tom2", new Position(68, 24, 88));

  private static final String HIHAT_SOUND = "metal.hi-hat";

  private static final List<Row> ROWS =
      List.of(
          row("kick", 36, 'F', 4, NORMAL, Sort.KICK, 70, 12, 10)
              .also("bass", "bass-drum", "bassdrum", "bd", "kd")
              .also("bombo", "grosse-caisse", "grosse-trommel", "basstrommel")
              .letter('k')
              .sound("drum.bass-drum")
              .home(Limb.RIGHT_FOOT),
          row("snare", 38, 'C', 5, NORMAL, Sort.SNARE, SNARE)
              .also("sd", "snare-drum", "sn", "caja", "caisse-claire", "kleine-trommel")
              .letter('s')
              .sound("drum.snare-drum")
              .home(Limb.RIGHT_HAND, Limb.LEFT_HAND)
              .traits(RIMSHOT),
          row("snare.cross", 37, 'C', 5, X, Sort.SNARE, SNARE)
              .also("cross-stick", "sidestick", "side-stick", "rim")
              .letter('n')
              .words("cross-stick")
              .sound("drum.snare-drum")
              .traits(HAND_LIES),
          row("hihat", 42, 'G', 5, X, Sort.STICK_HIHAT, STAND)
              .also(
                  "hh", "hat", "hats", "hi-hat", "hi-hats", "hihats", "closed-hat", "hihat.closed")
              .also("charles", "charley", "charleston")
              .letter('h')
              .words("hi-hat")
              .sound(HIHAT_SOUND)
              .hihat(HiHat.CLOSED, "hihat.open")
              .traits(CYMBAL, HIHAT, CHOKES, KEEPS_TIME),
          row("hihat.open", 46, 'G', 5, X, Sort.STICK_HIHAT, STAND)
              .also("open-hat", "open-hihat")
              .letter('o')
              .words("open hi-hat")
              .label("hi-hat open")
              .sound(HIHAT_SOUND)
              .hihat(HiHat.OPEN, "hihat.open")
              .traits(CYMBAL, HIHAT, RINGS, CHOKES, KEEPS_TIME),
          row("hihat.half", 46, 'G', 5, X, Sort.STICK_HIHAT, STAND)
              .words("half-open hi-hat")
              .label("hi-hat half")
              .sound(HIHAT_SOUND)
              .hihat(HiHat.HALF, "hihat.open")
              .traits(CYMBAL, HIHAT, RINGS, CHOKES, KEEPS_TIME),
          row("hihat.foot", 44, 'D', 4, X, Sort.FOOT_HIHAT, PEDAL)
              .also("pedal", "hihat-foot", "hihat.pedal", "foot-hat")
              .letter('p')
              .words("hi-hat with the foot")
              .label("hi-hat foot")
              .sound(HIHAT_SOUND)
              .home(Limb.LEFT_FOOT)
              .hihat(HiHat.CHICK, "hihat.splash")
              .traits(CYMBAL, HIHAT),
          row("hihat.splash", 46, 'D', 4, X, Sort.FOOT_HIHAT, PEDAL)
              .words("foot splash")
              .sound(HIHAT_SOUND)
              .hihat(HiHat.SPLASH, "hihat.splash")
              .traits(CYMBAL, HIHAT, RINGS),
          row("ride", 51, 'F', 5, X, Sort.CYMBAL, RIDE)
              .also("rd")
              .letter('d')
              .sound("metal.cymbal.ride")
              .gap(RIDE_CLOSE)
              .traits(CYMBAL, RINGS, CHOKES, KEEPS_TIME),
          row("ride.bell", 53, 'F', 5, DIAMOND, Sort.CYMBAL, RIDE)
              .also("bell", "ride-bell")
              .letter('b')
              .words("ride bell")
              .sound("metal.cymbal.ride")
              .standIn("ride", "junior")
              .gap(RIDE_CLOSE)
              .traits(CYMBAL, RINGS, CHOKES, KEEPS_TIME),
          row("crash", 49, 'A', 5, X, Sort.CYMBAL, 75, -28, 110)
              .also("cr", "cc", "cymbal", "crash1", "becken", "platillo", "plato", "cymbale")
              .letter('c')
              .sound("metal.cymbal.crash")
              .standIn("ride", "junior")
              .traits(CYMBAL, RINGS, CHOKES),
          row("crash2", 57, 'B', 5, X, Sort.CYMBAL, 80, 30, 112)
              .words("second crash")
              .sound("metal.cymbal.crash")
              .standIn("crash", "junior")
              .traits(CYMBAL, RINGS, CHOKES),
          row("splash", 55, 'B', 5, DIAMOND, Sort.CYMBAL, 65, 0, 105)
              .sound("metal.cymbal.splash")
              .standIn("crash", "junior")
              .traits(CYMBAL, RINGS, CHOKES),
          row("china", 52, 'C', 6, X, Sort.CYMBAL, 82, 48, 105)
              .sound("metal.cymbal.chinese")
              .standIn("crash", "junior")
              .traits(CYMBAL, RINGS, CHOKES),
          row("cowbell", 56, 'E', 5, TRIANGLE, Sort.BELL, 60, 8, 90)
              .also("cow-bell", "cb", "kuhglocke", "cencerro", "cloche")
              .letter('w')
              .sound("metal.bells.cowbell")
              .standIn("ride.bell", "junior")
              .traits(KEEPS_TIME),
          row("tom1", 50, 'E', 5, NORMAL, Sort.TOM, 62, -14, 80)
              .also("tom", "toms", "rack-tom", "high-tom", "t1")
              .letter('t')
              .words("first tom")
              .sound("drum.tom-tom")
              .traits(RIMSHOT),
          row("tom2", 47, 'D', 5, NORMAL, Sort.TOM, 62, 16, 80)
              .also("mid-tom", "t2")
              .letter('m')
              .words("second tom")
              .sound("drum.tom-tom")
              .standIn("floor", "four-piece", "junior")
              .traits(RIMSHOT),
          row("floor", 43, 'A', 4, NORMAL, Sort.TOM, 55, 55, 65)
              .also("tom3", "t3", "ft", "low-tom", "floor-tom", "floortom")
              .also("standtom", "stand-tom", "tom-basse")
              .letter('f')
              .words("floor tom")
              .sound("drum.tom-tom")
              .traits(RIMSHOT));

  private StandardSurfaces() {}

  /** All of them by name, in kit order. */
  static Map<String, Surface> byName() {
    Map<String, Surface> found = new LinkedHashMap<>();
    ROWS.forEach(row -> found.put(row.name, row.surface()));
    return found;
  }

  /** The letters that name some of them in the parts of a limb. */
  static Map<Character, String> letters() {
    Map<Character, String> found = new LinkedHashMap<>();
    for (Row row : ROWS) {
      if (row.letter != 0) {
        found.put(row.letter, row.name);
      }
    }
    return found;
  }

  /** Names of those that a built-in kit lacks. */
  static Set<String> lackedBy(String kit) {
    Set<String> found = new LinkedHashSet<>();
    for (Row row : ROWS) {
      if (row.lackedBy.contains(kit)) {
        found.add(row.name);
      }
    }
    return found;
  }

  /** Other words of the trade, with the name of the surface that each means. */
  static Map<String, String> alsoCalled() {
    Map<String, String> found = new HashMap<>();
    ROWS.forEach(row -> row.also.forEach(word -> found.put(word, row.name)));
    return found;
  }

  private static Row row(
      String name,
      int key,
      char step,
      int octave,
      Surface.Head head,
      Sort sort,
      int distance,
      int degrees,
      int height) {
    return row(name, key, step, octave, head, sort, new Position(distance, degrees, height));
  }

  private static Row row(
      String name,
      int key,
      char step,
      int octave,
      Surface.Head head,
      Sort sort,
      Position position) {
    return new Row(name, key, new StaffPlace(step, octave), head, sort, position);
  }

  /** One row of the table, as far as it has been read. */
  private static final class Row {
    private final String name;
    private final int key;
    private final StaffPlace place;
    private final Surface.Head head;
    private final Sort sort;
    private final Position position;
    private char letter;
    private Set<Trait> traits = EnumSet.noneOf(Trait.class);
    private Set<Limb> homeOf = EnumSet.noneOf(Limb.class);
    private HiHat hihat = HiHat.NONE;
    private String words;
    private @Nullable String label;
    private @Nullable String sound;
    private @Nullable String opened;
    private @Nullable String standIn;
    private Set<String> lackedBy = Set.of();
    private List<String> also = List.of();
    private SurfaceFacts.@Nullable Gap gap;

    Row(String name, int key, StaffPlace place, Surface.Head head, Sort sort, Position position) {
      this.name = name;
      this.key = key;
      this.place = place;
      this.head = head;
      this.sort = sort;
      this.position = position;
      this.words = name;
    }

    Row letter(char one) {
      letter = one;
      return this;
    }

    Row words(String said) {
      words = said;
      return this;
    }

    Row label(String shown) {
      label = shown;
      return this;
    }

    Row sound(String word) {
      sound = word;
      return this;
    }

    Row hihat(HiHat state, String open) {
      hihat = state;
      opened = open;
      return this;
    }

    /** What is struck instead in the built-in kits that lack it. */
    Row standIn(String other, String... kits) {
      standIn = other;
      lackedBy = Set.of(kits);
      return this;
    }

    /** Other words of the trade for it. */
    Row also(String... others) {
      List<String> all = new ArrayList<>(also);
      all.addAll(List.of(others));
      also = List.copyOf(all);
      return this;
    }

    Row home(Limb first, Limb... rest) {
      homeOf = EnumSet.of(first, rest);
      return this;
    }

    Row gap(SurfaceFacts.Gap closer) {
      gap = closer;
      return this;
    }

    Row traits(Trait first, Trait... rest) {
      traits = EnumSet.of(first, rest);
      return this;
    }

    Surface surface() {
      SurfaceFacts facts =
          new SurfaceFacts(
              sort,
              traits,
              hihat,
              words,
              label == null ? words : label,
              sound,
              opened,
              standIn,
              homeOf,
              position,
              gap);
      return new Surface(name, key, place, head, facts);
    }
  }
}
