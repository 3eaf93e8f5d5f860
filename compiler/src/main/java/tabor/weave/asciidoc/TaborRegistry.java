package tabor.weave.asciidoc;

import org.asciidoctor.Asciidoctor;
import org.asciidoctor.jruby.extension.spi.ExtensionRegistry;

/** Registers the block wherever AsciidoctorJ finds this library. */
public final class TaborRegistry implements ExtensionRegistry {
  @Override
  public void register(Asciidoctor asciidoctor) {
    asciidoctor.javaExtensionRegistry().block(TaborBlockProcessor.class);
  }
}
