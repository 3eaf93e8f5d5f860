package tabor.emit.html;

import java.util.List;
import tabor.rhythm.Tempo;
import tabor.rhythm.Time;

/**
 * What the page's script plays, with exact times; the writer rounds them.
 *
 * @param takes what is played once through, each different one once
 * @param figures the drawings, by their numbers: the script knows where their places stand
 * @param parts one for each section of the page, in its order
 */
record PlayData(List<Take> takes, List<Page.Figure> figures, List<Part> parts) {
  PlayData {
    takes = List.copyOf(takes);
    figures = List.copyOf(figures);
    parts = List.copyOf(parts);
  }

  /**
   * A section once through, a count-in or a rest.
   *
   * @param from where it begins, in whole notes from the start of bar 1: below zero with a pickup
   * @param length in whole notes
   * @param blows what the limbs do, in order of time
   * @param clicks every place where a click may sound: beats and eighths
   * @param counts the beats of a count-in that is itself part of a chart
   * @param countIn one bar of clicks that may be played before it, at places below zero
   */
  record Take(
      Time from,
      Time length,
      List<Blow> blows,
      List<Tick> clicks,
      List<Tick> counts,
      List<Tick> countIn) {
    Take {
      blows = List.copyOf(blows);
      clicks = List.copyOf(clicks);
      counts = List.copyOf(counts);
      countIn = List.copyOf(countIn);
    }
  }

  /**
   * One sound of a limb.
   *
   * @param at whole notes from the start of the take, swing included; of grace notes and bounces
   *     the place of their main stroke
   * @param sound the name of its timbre
   * @param velocity 1 to 127
   * @param limb 0 to 3: right hand, left hand, right foot, left foot
   * @param lead tenths of a millisecond that it sounds before its place, whatever the tempo; below
   *     zero after it
   * @param damp whole notes after which a hand stops it; zero for never
   */
  record Blow(Time at, String sound, int velocity, int limb, long lead, Time damp) {}

  /**
   * A click.
   *
   * @param at whole notes from the start of its take
   * @param level 2 on the first beat of a bar, 1 on another beat, 0 between the beats
   * @param written true if the chart asks for it
   */
  record Tick(Time at, int level, boolean written) {}

  /**
   * A take some times in a row at one tempo.
   *
   * @param take its index
   * @param tempo how fast
   * @param times 1 or more
   * @param figure the drawing that shows it; -1 for a count-in or a rest
   * @param words what is said when it begins
   * @param mark the rehearsal mark that holds; empty for none
   * @param cue the words that stand there; empty for none
   * @param through which time through its line this is, from 1
   */
  record Leg(
      int take,
      Tempo tempo,
      int times,
      int figure,
      String words,
      String mark,
      String cue,
      int through) {
    /** The same once more. */
    Leg again() {
      return new Leg(take, tempo, times + 1, figure, words, mark, cue, through);
    }
  }

  /**
   * A section of the page.
   *
   * @param name its name in the source: what a link calls it
   * @param title what it is called
   * @param click true if its click sounds unless it is switched off
   * @param barlines where bars may be chosen, in whole notes from the start of bar 1, the last one
   *     the end; empty for a chart
   * @param first what is played the first time
   * @param again what is played each time after that, in a loop
   */
  record Part(
      String name,
      String title,
      boolean click,
      List<Time> barlines,
      List<Leg> first,
      List<Leg> again) {
    Part {
      barlines = List.copyOf(barlines);
      first = List.copyOf(first);
      again = List.copyOf(again);
    }

    /** The same by another name. */
    Part named(String other) {
      return new Part(other, title, click, barlines, first, again);
    }
  }
}
