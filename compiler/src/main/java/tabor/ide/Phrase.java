package tabor.ide;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * A statement of the language as an editor explains it.
 *
 * @param keyword the word that tells it
 * @param form how it is written
 * @param meaning what it does, in a sentence
 * @param rooms where it may stand
 */
record Phrase(String keyword, Form form, String meaning, Set<Room> rooms) {
  /** The kinds of passage. */
  enum Room {
    HEADER,
    GROOVE,
    STEP,
    CHART,
    KIT,
    /** A pattern is its heading and nothing else. */
    PATTERN
  }

  private static final Set<Room> ANYWHERE = EnumSet.allOf(Room.class);
  private static final Set<Room> HEADER = EnumSet.of(Room.HEADER);
  private static final Set<Room> SETTING = EnumSet.of(Room.HEADER, Room.GROOVE, Room.STEP);
  private static final Set<Room> TIMED =
      EnumSet.of(Room.HEADER, Room.GROOVE, Room.STEP, Room.CHART);
  private static final Set<Room> MUSIC = EnumSet.of(Room.GROOVE, Room.STEP);
  private static final Set<Room> CHART = EnumSet.of(Room.CHART);
  private static final Set<Room> KIT = EnumSet.of(Room.KIT);

  private static final String AT = " [at PLACES] [in BARS] [where HOW]";

  /** Every statement. */
  static final List<Phrase> ALL =
      List.of(
          p(ANYWHERE, "groove", "groove NAME [TEXT]", "Opens a groove: parts written out."),
          p(
              ANYWHERE,
              "step",
              "step NAME [TEXT] [from SECTION]",
              "Opens a step: the section before, or the one named, with changes."),
          p(ANYWHERE, "chart", "chart NAME [TEXT]", "Opens a play-along: sections in a row."),
          p(ANYWHERE, "pattern", "pattern NAME : LETTERS", "A run of places without a rhythm."),
          p(ANYWHERE, "kit", "kit NAME [like KIT]", "Opens a kit of your own."),
          p(HEADER, "title", "title TEXT", "The title on every output."),
          p(HEADER, "by", "by TEXT", "Who made it."),
          p(HEADER, "use", "use FILE", "Brings in the patterns, kits and sections of a file."),
          p(
              EnumSet.of(Room.HEADER, Room.GROOVE),
              "time",
              "time METER [in N]",
              "The meter, and what counts as a beat."),
          p(TIMED, "tempo", "tempo [NOTE =] N", "Beats a minute."),
          p(
              TIMED,
              "feel",
              "feel straight|swing [eighths|sixteenths] [PERCENT] [as triplets]",
              "Where off-beats sound."),
          p(SETTING, "on", "on KIT", "The kit it is played on."),
          p(
              SETTING,
              "levels",
              "levels [ghost N] [plain N] [accent N]",
              "MIDI velocities of the three levels, 1 to 127."),
          p(SETTING, "show", "show counts|sticking|none…", "What is printed beside the notes."),
          p(
              EnumSet.of(Room.HEADER, Room.GROOVE, Room.STEP, Room.KIT),
              "limits",
              "limits [hands N to N] [feet N to N] [doubles N to N] [reach N to N]",
              "What the player can do, comfortable to extreme."),
          p(EnumSet.of(Room.GROOVE, Room.STEP, Room.CHART), "text", "text TEXT", "Prose."),
          p(MUSIC, ":", "PART : BEATS", "A part: a word is a beat, a bar line between bars."),
          p(
              MUSIC,
              "ostinato",
              "ostinato PART : BEATS",
              "A part of whole bars that goes round over the whole section."),
          p(
              MUSIC,
              "play",
              "PART play PATTERN [left-lead] in VALUE",
              "Pours a pattern into a part, one place a note value."),
          p(MUSIC, "next", "next", "Ends a system: the parts below write the bars that follow."),
          p(MUSIC, "bars", "bars N", "How many bars the section has."),
          p(
              EnumSet.of(Room.GROOVE),
              "pickup",
              "pickup N beats|beat",
              "Begins with the last beats of a bar."),
          p(
              MUSIC,
              "plays",
              "LIMB plays SURFACE [ghosted|plain|accented]" + AT,
              "Moves a limb's strokes to a surface."),
          p(
              MUSIC,
              "split",
              "split LIMB [ghosted|plain|accented] between SURFACE and SURFACE [and SURFACE]" + AT,
              "Deals a limb's strokes out over surfaces in turn."),
          p(
              MUSIC,
              "add",
              "add PART [with LIMB] [ghosted|accented] at PLACES [in BARS]",
              "Adds strokes."),
          p(MUSIC, "drop", "drop TARGET" + AT, "Leaves strokes out."),
          p(MUSIC, "accent", "accent TARGET" + AT, "Makes strokes accents."),
          p(MUSIC, "ghost", "ghost TARGET" + AT, "Makes strokes ghosts."),
          p(MUSIC, "plain", "plain TARGET" + AT, "Makes strokes plain."),
          p(MUSIC, "double", "double TARGET" + AT, "Two equal strokes in the place of each."),
          p(MUSIC, "triple", "triple TARGET" + AT, "Three equal strokes in the place of each."),
          p(MUSIC, "flam", "flam TARGET" + AT, "One small stroke before each."),
          p(MUSIC, "drag", "drag TARGET" + AT, "Two small strokes before each."),
          p(MUSIC, "ruff", "ruff TARGET" + AT, "Three small strokes before each."),
          p(MUSIC, "buzz", "buzz TARGET" + AT, "Presses each stroke into a buzz."),
          p(MUSIC, "diddle", "diddle TARGET" + AT, "Two strokes of that limb fill the slot."),
          p(MUSIC, "choke", "choke TARGET" + AT, "Stops the cymbal with the hand."),
          p(MUSIC, "open", "open TARGET" + AT, "Opens the hi-hat."),
          p(MUSIC, "rimshot", "rimshot TARGET" + AT, "Head and rim at once."),
          p(
              MUSIC,
              "follows",
              "SURFACE follows LIMB" + AT,
              "Adds a stroke wherever the limb strikes."),
          p(
              MUSIC,
              "move",
              "move TARGET from COUNT to COUNT [in BARS]",
              "Shifts a stroke in time, in every bar that has it."),
          p(
              MUSIC,
              "shift",
              "shift TARGET later|earlier by N VALUE",
              "Rotates strokes within the section's length."),
          p(MUSIC, "swap", "swap hands", "Right becomes left and left right."),
          p(MUSIC, "only", "only TARGET", "Drops everything else."),
          p(
              MUSIC,
              "take",
              "take TARGET from SECTION" + AT,
              "Puts in the strokes of another section."),
          p(
              MUSIC,
              "fill",
              "fill SECTION in BARS [from COUNT]",
              "From that count on, those bars are the fill's."),
          p(MUSIC, "dynamic", "dynamic LOUDNESS [at COUNT] [in bar N]", "Loudness from there on."),
          p(
              MUSIC,
              "crescendo",
              "crescendo to LOUDNESS from COUNT [in bar N] to COUNT [in bar N]",
              "Grows louder."),
          p(
              MUSIC,
              "diminuendo",
              "diminuendo to LOUDNESS from COUNT [in bar N] to COUNT [in bar N]",
              "Grows softer."),
          p(CHART, "count-in", "count-in N bars|bar", "Clicks before the music."),
          p(CHART, "click", "click on|off|quarters|eighths", "The click from here on."),
          p(
              CHART,
              "play",
              "play SECTION… [N times] [at tempo N]",
              "Plays sections in turn, so many times."),
          p(CHART, "rest", "rest N bars|bar", "Bars of silence."),
          p(
              CHART,
              "climb",
              "climb SECTION from N to N by N every N times|bars",
              "The tempo ladder."),
          p(
              KIT,
              "surface",
              "surface NAME [letter LETTER] [key N] [staff PLACE-ON-STAFF] [head HEAD]",
              "A surface of your own; it needs a MIDI key."),
          p(KIT, "letter", "letter LETTER = SURFACE", "The letter of a surface in limb parts."),
          p(
              KIT,
              "without",
              "without SURFACE [plays SURFACE]",
              "A surface that this kit lacks, and what is struck instead."),
          p(KIT, "left-handed", "left-handed", "Mirrors the player."),
          p(
              KIT,
              "place",
              "place SURFACE N cm N degrees [left|right] [N cm high]",
              "Where a surface stands around the player."));

  private static Phrase p(Set<Room> rooms, String keyword, String form, String meaning) {
    return new Phrase(keyword, Form.of(form), meaning, rooms);
  }
}
