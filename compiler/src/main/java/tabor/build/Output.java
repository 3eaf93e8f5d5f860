package tabor.build;

import java.util.function.Supplier;

/**
 * A file to be.
 *
 * @param name its name, without a folder
 * @param bytes makes its bytes, the same for the same lesson at all times
 */
public record Output(String name, Supplier<byte[]> bytes) {}
