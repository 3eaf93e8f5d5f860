package tabor.kit;

/**
 * Where a surface stands around the seated player.
 *
 * @param distance from the player's middle, in centimetres, 1 to 300
 * @param degrees 0 is straight ahead, positive to the right, -180 to 180
 * @param height above the floor in centimetres, 0 to 250
 */
public record Position(int distance, int degrees, int height) {
  /** Throws {@link IllegalArgumentException} for a number out of range. */
  public Position {
    if (distance < 1
        || distance > 300
        || degrees < -180
        || degrees > 180
        || height < 0
        || height > 250) {
      throw new IllegalArgumentException("position " + distance + " " + degrees + " " + height);
    }
  }
}
