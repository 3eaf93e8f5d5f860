package tabor.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class AllCoresTest {
  /** The last thing is not done before somebody has the first result. */
  @Test
  @Timeout(30)
  void resultsAreTakenAsTheyComeInOrder() {
    CountDownLatch taken = new CountDownLatch(1);
    List<Integer> results = new ArrayList<>();
    AllCores.each(
        List.of(1, 2, 3),
        thing -> thing == 3 ? 3 + waited(taken) : thing,
        new Progress(
            Io.of(
                InputStream.nullInputStream(),
                OutputStream.nullOutputStream(),
                OutputStream.nullOutputStream(),
                false,
                false,
                Map.of())),
        String::valueOf,
        result -> {
          results.add(result);
          taken.countDown();
        });
    assertThat(results).containsExactly(1, 2, 3);
  }

  /** 0 once the latch is open. */
  private static int waited(CountDownLatch latch) {
    try {
      return latch.await(20, TimeUnit.SECONDS) ? 0 : 100;
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
