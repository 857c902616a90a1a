package org.brewchem.kernel;

import com.google.gson.Gson;
import java.io.IOException;
import java.io.InputStream;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.brewchem.examples.notebooks.Output;
import org.brewchem.examples.notebooks.Session;
import org.dflib.jjava.jupyter.channels.JupyterConnection;
import org.dflib.jjava.jupyter.kernel.BaseKernel;
import org.dflib.jjava.jupyter.kernel.BaseKernelBuilder;
import org.dflib.jjava.jupyter.kernel.JupyterIO;
import org.dflib.jjava.jupyter.kernel.KernelConnectionProperties;
import org.dflib.jjava.jupyter.kernel.LanguageInfo;
import org.dflib.jjava.jupyter.kernel.ReplacementOptions;
import org.dflib.jjava.jupyter.kernel.comm.CommManager;
import org.dflib.jjava.jupyter.kernel.display.DisplayData;
import org.dflib.jjava.jupyter.kernel.display.Renderer;
import org.dflib.jjava.jupyter.kernel.display.mime.MIMEType;
import org.dflib.jjava.jupyter.kernel.history.HistoryManager;
import org.dflib.jjava.jupyter.kernel.magic.MagicParser;
import org.dflib.jjava.jupyter.kernel.magic.MagicTranspiler;
import org.dflib.jjava.jupyter.kernel.magic.MagicsRegistry;
import org.dflib.jjava.jupyter.kernel.util.StringStyler;
import org.jspecify.annotations.Nullable;

/** Runs the cells of a notebook for Jupyter: Java, after the start-up of the prompt. */
public final class BrewchemKernel extends BaseKernel {

  private static final String SPEC = "spec";

  private final Session session;

  private BrewchemKernel(
      HistoryManager history,
      JupyterIO io,
      CommManager comm,
      Renderer renderer,
      MagicsRegistry magics,
      StringStyler styler) {
    super(
        "brewchem",
        "0.1",
        new LanguageInfo(
            "java",
            Runtime.version().toString(),
            "text/x-java-source",
            ".jshell",
            "java",
            "java",
            "script"),
        List.of(),
        history,
        io,
        comm,
        renderer,
        new MagicParser("^%", "^%%", new MagicTranspiler()),
        magics,
        false,
        styler);
    session = new Session(startUp());
  }

  /** The parts of a kernel that are taken as they come. */
  private static final class Parts extends BaseKernelBuilder<Parts, BrewchemKernel> {

    @Override
    public BrewchemKernel build() {
      return new BrewchemKernel(
          buildHistoryManager(),
          buildJupyterIO(StandardCharsets.UTF_8),
          buildCommManager(),
          buildRenderer(),
          buildMagicsRegistry(),
          buildErrorStyler());
    }
  }

  static BrewchemKernel create() {
    return new Parts().build();
  }

  private static String startUp() {
    try (InputStream in =
        Objects.requireNonNull(BrewchemKernel.class.getResourceAsStream("brewchem.jsh"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  /**
   * Runs a kernel, or writes what Jupyter has to know of it.
   *
   * @param arguments the connection file that Jupyter passes; or {@code spec} and a folder, into
   *     which a {@code kernel.json} goes that names this jar
   * @throws IOException if a file cannot be read or written
   * @throws GeneralSecurityException if Jupyter signs its messages in a way that is not known here
   * @throws URISyntaxException if the path of this jar cannot be told
   */
  public static void main(String[] arguments)
      throws IOException, GeneralSecurityException, URISyntaxException {
    System.setProperty("java.awt.headless", "true");
    if (arguments.length == 2 && arguments[0].equals(SPEC)) {
      Path jar =
          Path.of(BrewchemKernel.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      System.out.println(writeSpec(jar, Path.of(arguments[1])));
      return;
    }
    JupyterConnection connection =
        new JupyterConnection(
            KernelConnectionProperties.parse(Files.readString(Path.of(arguments[0]))));
    create().becomeHandlerForConnection(connection);
    connection.connect();
    connection.waitUntilClose();
  }

  static Path writeSpec(Path jar, Path folder) throws IOException {
    Files.createDirectories(folder);
    String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    Path file = folder.resolve("kernel.json");
    Files.writeString(
        file,
        new Gson()
            .toJson(
                Map.of(
                    "argv",
                    List.of(
                        java,
                        "-XX:TieredStopAtLevel=1",
                        "-jar",
                        jar.toString(),
                        "{connection_file}"),
                    "display_name",
                    "Java (brewchem)",
                    "language",
                    "java")));
    return file;
  }

  /**
   * Runs a cell. What it prints goes to Jupyter as printed, a picture as a picture.
   *
   * @param source the cell
   * @return what it shows, null if that is nothing
   * @throws FailedCellException if it fails
   */
  @Override
  public @Nullable Object evalRaw(String source) {
    DisplayData shown = null;
    for (Output output : session.run(source)) {
      switch (output.kind()) {
        case PRINTED -> System.out.print(output.text());
        case FAILURE -> throw new FailedCellException(output.text());
        case VALUE -> {
          shown = new DisplayData(output.text());
          if (output.png().isPresent()) {
            shown.putData(
                MIMEType.IMAGE_PNG, Base64.getEncoder().encodeToString(output.png().get()));
          }
        }
      }
    }
    return shown;
  }

  /** Thrown when a cell does not compile or throws. */
  static final class FailedCellException extends RuntimeException {

    private static final long serialVersionUID = 1;

    private FailedCellException(String message) {
      super(message);
    }
  }

  /** Says in lines why a cell failed. */
  @Override
  public List<String> formatError(Throwable thrown) {
    return String.valueOf(thrown.getMessage()).lines().toList();
  }

  /** Shows no documentation of a word. */
  @Override
  public DisplayData inspect(String code, int at, boolean extraDetail) {
    return DisplayData.EMPTY;
  }

  /** Completes no words. */
  @Override
  public ReplacementOptions complete(String code, int at) {
    return new ReplacementOptions(List.of(), at, at);
  }

  /** Leaves it to Jupyter whether a cell is complete. */
  @Override
  public String isComplete(String code) {
    return IS_COMPLETE_MAYBE;
  }

  /** Ends the session. */
  @Override
  public void onShutdown(boolean restarting) {
    session.close();
  }
}
