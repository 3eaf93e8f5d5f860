package tabor.speed;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tabor.parse.Reader;
import tabor.source.Passage;
import tabor.testing.Files;

/**
 * What it takes to read a text to trees, in milliseconds of the thread's processor time: a reader
 * that remembers nothing, one that has read the text before, and a text in which every line is
 * broken. Medians; run it several times, and once for each way of doing it that is to be compared.
 */
public final class ReadingSpeed {
  private ReadingSpeed() {}

  /**
   * Measures.
   *
   * @param args bars of the text (10,000 where none is given) and rounds (60)
   */
  public static void main(String[] args) {
    int bars = args.length > 0 ? Integer.parseInt(args[0]) : 10_000;
    int rounds = args.length > 1 ? Integer.parseInt(args[1]) : 60;
    String text = Files.ofBars(bars, 7);
    String broken = text.replaceAll("(?m)$", " ?");
    Reader kept = new Reader();
    System.out.printf("%d lines, first time %.1f ms%n", text.lines().count(), time(text, kept));
    System.out.printf("nothing remembered %.1f%n", median(text, rounds, null));
    System.out.printf("read before        %.1f%n", median(text, rounds, kept));
    System.out.printf("every line broken  %.1f%n", median(broken, Math.max(5, rounds / 6), null));
  }

  private static double median(String text, int rounds, @Nullable Reader kept) {
    List<Double> times = new ArrayList<>();
    for (int i = 0; i < rounds; i++) {
      times.add(time(text, kept == null ? new Reader() : kept));
    }
    Collections.sort(times.subList(rounds / 2, rounds));
    return times.subList(rounds / 2, rounds).get((rounds - rounds / 2) / 2);
  }

  private static double time(String text, Reader reader) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long start = threads.getCurrentThreadCpuTime();
    int lines = 0;
    for (Passage passage : Reader.passages(text)) {
      lines += reader.read(passage).lines().size();
    }
    if (lines == 0) {
      throw new IllegalStateException("nothing was read");
    }
    return (threads.getCurrentThreadCpuTime() - start) / 1e6;
  }
}
