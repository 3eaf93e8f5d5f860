package tabor.lsp;

import java.util.concurrent.locks.LockSupport;
import tabor.lsp.Scheduler.Lane;

/** A server as a process of its own, in every lane of which something goes on for ever. */
final class StuckServer {
  private StuckServer() {}

  public static void main(String[] args) {
    Connection connection = new Connection(Log.NONE, "test", ServerMain.PATIENCE);
    for (Lane lane : Lane.values()) {
      connection.session().scheduler().ahead(lane, StuckServer::forEver);
    }
    System.exit(connection.serve(System.in, System.out));
  }

  private static void forEver() {
    while (true) {
      LockSupport.parkNanos(1_000_000); // whoever interrupts it is not heard
    }
  }
}
