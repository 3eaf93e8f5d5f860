package tabor.body;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.List;
import tabor.body.Loop.Hit;

/**
 * Tells what is played against the time from what is played instead of it. Time that only pauses
 * still holds its hand; where it stops, the hand is free.
 */
final class Against {
  /** However slow the time is, so many beats are no pause any more. */
  private static final int MOST_BEATS = 2;

  private final Loop loop;
  private final TimeRows rows;
  private final List<Hit> time;
  private final BitSet instead = new BitSet();
  private long usual;
  private boolean even;

  Against(Loop loop, TimeRows rows, List<Hit> time) {
    this.loop = loop;
    this.rows = rows;
    this.time = time;
    usualGap();
    fills();
  }

  private long gap(int index) {
    return loop.from(time.get(index).at(), time.get((index + 1) % time.size()).at());
  }

  private void usualGap() {
    List<Long> gaps = new ArrayList<>();
    for (int i = 0; i < time.size(); i++) {
      gaps.add(gap(i));
    }
    Collections.sort(gaps);
    usual = gaps.isEmpty() ? 0 : gaps.get((gaps.size() - 1) / 2);
    int equal = 0;
    for (long gap : gaps) {
      equal += TimeRows.same(gap, usual) ? 1 : 0;
    }
    even = gaps.size() > 2 && equal * 3 >= gaps.size() * 2;
  }

  /** The number of the last stroke of the time at or before a place, round the loop. */
  private int before(long at) {
    int low = 0;
    int high = time.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (time.get(middle).at() <= at) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low == 0 ? time.size() - 1 : low - 1;
  }

  private boolean pauses(int index) {
    Hit from = time.get(index);
    Hit to = time.get((index + 1) % time.size());
    long beat = loop.beat(from.beat());
    long most = beat;
    if (rows.isSteady(from) && rows.isSteady(to)) {
      most = Math.max(most, Math.min(usual, MOST_BEATS * beat));
    }
    return gap(index) <= most + TimeRows.CLOSE;
  }

  /**
   * A short fill: even time leaves out a place of its own, and from that place on two strokes or
   * more come at twice its pace, so the hand has gone along.
   */
  private void fills() {
    if (!even) {
      return;
    }
    for (int i = 0; i < time.size(); i++) {
      if (gap(i) < 2 * usual - TimeRows.CLOSE || !pauses(i)) {
        continue;
      }
      long from = time.get(i).at() + usual - TimeRows.CLOSE;
      long end = time.get(i).at() + gap(i) - TimeRows.CLOSE;
      List<Hit> here = new ArrayList<>();
      List<Long> places = new ArrayList<>();
      // The time may leave out the first place of the loop, after its last stroke.
      for (int j = time.get(i).number() + 1; at(j) < end; j++) {
        Hit hit = loop.hits.get(j % loop.hits.size());
        long at = at(j);
        if (at >= from && !rows.time.get(hit.number())) {
          here.add(hit);
          places.add(at);
        }
      }
      boolean onPlace = !here.isEmpty() && places.get(0) <= from + 2 * TimeRows.CLOSE;
      if (onPlace
          && here.size() > 1
          && places.get(1) - places.get(0) <= usual / 2 + TimeRows.CLOSE) {
        here.forEach(hit -> instead.set(hit.number()));
      }
    }
  }

  /** The place of a stroke by its number, counted on into the next time round. */
  private long at(int number) {
    int count = loop.hits.size();
    return loop.hits.get(number % count).at() + number / count * loop.length;
  }

  /** True if the time holds its hand at this stroke. */
  boolean isAgainst(Hit hit) {
    if (time.isEmpty() || instead.get(hit.number())) {
      return false;
    }
    int before = before(hit.at());
    if (time.get(before).at() == hit.at()) {
      return true;
    }
    return pauses(before);
  }

  /** True if the time around this stroke is written for the left hand. */
  boolean timeIsLeft(Hit hit) {
    int before = before(hit.at());
    Hit from = time.get(before);
    Hit to = time.get((before + 1) % time.size());
    boolean left = isLeft(from) || (from.at() != hit.at() && isLeft(to));
    return left && !isRight(from) && !(from.at() != hit.at() && isRight(to));
  }

  private static boolean isLeft(Hit hit) {
    return !hit.isOpen() && !hit.given();
  }

  private static boolean isRight(Hit hit) {
    return !hit.isOpen() && hit.given();
  }
}
