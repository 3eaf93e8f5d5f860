package tabor.lsp;

import java.util.Optional;

/** Notices that the client's process is gone, which then takes the server with it. */
final class ParentWatch {
  private static final long EVERY_MILLIS = 1000;

  private ParentWatch() {}

  /**
   * Watches a process. One that is gone already is gone, as the protocol has it: a client whose
   * process cannot be seen from here, as from another container, says so by giving none.
   */
  static void watch(long pid, Runnable gone) {
    Optional<ProcessHandle> client = ProcessHandle.of(pid);
    if (client.isEmpty() || !client.get().isAlive()) {
      gone.run();
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
