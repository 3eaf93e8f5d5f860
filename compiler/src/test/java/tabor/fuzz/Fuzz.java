package tabor.fuzz;

import java.util.EnumMap;
import java.util.Map;
import java.util.Random;
import tabor.fuzz.FuzzTexts.Kind;

/**
 * Looks for texts that break Tabor: random files go through every command's work, every output and
 * its readers. Says its seed first; the same seed looks at the same texts in the same order.
 *
 * <pre>tabor.fuzz.Fuzz [--seconds N] [--seed N] [--texts N]</pre>
 *
 * Ends with 1 and a text made as small as it goes if one was found, with 2 if its words make no
 * sense. Memory is checked by giving it little (see docs/testing.md).
 */
public final class Fuzz {
  private static final long DEFAULT_SECONDS = 300;
  private static final long MINIMISING_NANOS = 60_000_000_000L;

  private final long seed;
  private final long seconds;
  private final long most;
  private final Map<Kind, int[]> counts = new EnumMap<>(Kind.class);
  private long slowest;
  private long slowestNumber;

  private Fuzz(long seed, long seconds, long most) {
    this.seed = seed;
    this.seconds = seconds;
    this.most = most;
  }

  /** Runs until the time or the number of texts is over, or a text fails. */
  public static void main(String[] args) {
    long seed = new Random().nextInt(1_000_000_000);
    long seconds = DEFAULT_SECONDS;
    long most = Long.MAX_VALUE;
    for (int i = 0; i < args.length; i += 2) {
      if (i + 1 == args.length || !args[i + 1].matches("-?\\d{1,18}")) {
        usage();
      }
      long value = Long.parseLong(args[i + 1]);
      switch (args[i]) {
        case "--seed" -> seed = value;
        case "--seconds" -> seconds = value;
        case "--texts" -> most = value;
        default -> usage();
      }
    }
    System.exit(new Fuzz(seed, seconds, most).run() ? 0 : 1);
  }

  private static void usage() {
    System.err.println("usage: Fuzz [--seconds N] [--seed N] [--texts N]");
    System.exit(2);
  }

  private boolean run() {
    System.out.println("seed " + seed);
    System.out.flush();
    long start = System.nanoTime();
    Random seeds = new Random(seed);
    long number = 0;
    for (; number < most && System.nanoTime() - start < seconds * 1_000_000_000L; number++) {
      Kind kind = FuzzTexts.kind(number);
      String text = FuzzTexts.text(kind, seeds.nextLong());
      long before = System.nanoTime();
      Throwable failure = failure(kind, text);
      if (failure != null) {
        tell(number, kind, text, failure);
        return false;
      }
      if (System.nanoTime() - before > slowest) {
        slowest = System.nanoTime() - before;
        slowestNumber = number;
      }
    }
    counts.forEach(
        (kind, count) ->
            System.out.println(kind + ": " + count[0] + " texts, " + count[1] + " with outputs"));
    System.out.println(
        "slowest: text " + slowestNumber + " with " + slowest / 1_000_000 + " ms; nothing found");
    return true;
  }

  private Throwable failure(Kind kind, String text) {
    int[] count = counts.computeIfAbsent(kind, k -> new int[2]);
    count[0]++;
    Throwable[] thrown = new Throwable[1];
    try {
      if (FuzzChecks.of(text)) {
        count[1]++;
      }
    } catch (RuntimeException | StackOverflowError | OutOfMemoryError | AssertionError e) {
      thrown[0] = e;
    }
    return thrown[0];
  }

  private void tell(long number, Kind kind, String text, Throwable failure) {
    String same = signature(failure);
    String smallest =
        new Minimiser(
                fewer -> {
                  Throwable other = failure(kind, fewer);
                  return other != null && signature(other).equals(same);
                },
                MINIMISING_NANOS)
            .smallest(text);
    System.out.println("text " + number + " (" + kind + ") of seed " + seed + " fails: " + failure);
    System.out.println("----\n" + smallest + "\n----");
    failure.printStackTrace(System.out);
  }

  /** What failed and where, whatever the text. */
  private static String signature(Throwable failure) {
    String what = failure.getClass().getName();
    if (failure instanceof FuzzChecks.Broken) {
      String message = String.valueOf(failure.getMessage());
      return what + message.replaceAll("[^a-zA-Z ].*", "").strip();
    }
    for (StackTraceElement frame : failure.getStackTrace()) {
      if (frame.getClassName().startsWith("tabor.")) {
        return what + frame.getClassName() + frame.getMethodName();
      }
    }
    return what;
  }
}
