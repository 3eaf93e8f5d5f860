package tabor.lsp;

import java.util.Optional;

/** Notices that the client's process is gone, which then takes the server with it. */
final class ParentWatch {
  private static final long EVERY_MILLIS = 2000;

  private ParentWatch() {}

  /**
   * Watches a process. One that cannot be seen from here at the start, as from another container,
   * is not watched.
   */
  static void watch(long pid, Runnable gone) {
    Optional<ProcessHandle> client = ProcessHandle.of(pid);
    if (client.isEmpty() || !client.get().isAlive()) {
      return;
    }
    Thread thread =
        new Thread(
            () -> {
              try {
                while (client.get().isAlive()) {
                  Thread.sleep(EVERY_MILLIS);
                }
                gone.run();
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            },
            "tabor-parent-watch");
    thread.setDaemon(true);
    thread.start();
  }
}
