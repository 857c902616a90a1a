package org.brewchem.checks.reliability;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.brewchem.checks.frozen.FrozenDigits;
import org.brewchem.checks.frozen.FrozenFigure;
import org.brewchem.checks.frozen.FrozenRoom;

/**
 * Whether the library gives the same bits under another compiler, in another locale, on another
 * Java: all frozen figures, written with seventeen digits by a process of its own.
 *
 * <p>Run by hand, DEVELOPERS.md says how; it prints a table. The build runs the settings that take
 * seconds.
 */
public final class Determinism {

  private static final String OTHER_PLACE =
      "-Duser.language=tr -Duser.country=TR -Duser.timezone=Pacific/Chatham"
          + " -Dfile.encoding=ISO-8859-1 -Dstdout.encoding=US-ASCII";

  private static final int MINUTES = 20;

  /**
   * A way to run a Java process.
   *
   * @param name what is different
   * @param options the options of the process, separated by blanks
   */
  public record Setting(String name, String options) {}

  /** The settings that take seconds. */
  public static final List<Setting> QUICK =
      List.of(
          new Setting(
              "first compiler only, Turkish, time zone of the Chatham Islands, Latin-1",
              "-XX:TieredStopAtLevel=1 " + OTHER_PLACE),
          new Setting(
              "no vector instructions, Arabic digits",
              "-XX:UseAVX=0 -XX:-UseFMA -Duser.language=ar -Duser.country=EG"
                  + " -Duser.extensions=u-nu-arab"));

  /** Those that take minutes, or another Java. */
  public static final List<Setting> SLOW =
      List.of(
          new Setting("no compiler", "-Xint"),
          new Setting("German", "-Duser.language=de -Duser.country=DE -Duser.timezone=UTC"));

  /** Exponential and logarithm of the C library's kind, as on other processors. */
  public static final Setting OTHER_FUNCTIONS =
      new Setting(
          "other exp, log and pow",
          "-XX:+UnlockDiagnosticVMOptions -XX:-UseLibmIntrinsic"
              + " -XX:DisableIntrinsic=_dexp,_dlog,_dlog10,_dpow");

  /**
   * How two sets of digits differ.
   *
   * @param figures how many there are
   * @param different how many have other bits
   * @param largest the largest relative difference of a value or an uncertainty, by rooms that have
   *     one
   * @param onlyOnce figures that one of the two sets has alone, such as a dose of a plan that was
   *     chosen otherwise, by rooms that have one
   */
  public record Difference(
      int figures, int different, Map<String, Double> largest, Map<String, Integer> onlyOnce) {

    /** Checks nothing and copies the maps. */
    public Difference {
      largest = Collections.unmodifiableMap(new LinkedHashMap<>(largest));
      onlyOnce = Collections.unmodifiableMap(new LinkedHashMap<>(onlyOnce));
    }

    @Override
    public String toString() {
      return different == 0 && onlyOnce.isEmpty()
          ? figures + " figures, the same bits"
          : different
              + " of "
              + figures
              + " figures differ, at most by "
              + largest.entrySet().stream()
                  .map(
                      room ->
                          String.format(Locale.ROOT, "%.0e in %s", room.getValue(), room.getKey()))
                  .collect(Collectors.joining(", "))
              + onlyOnce.entrySet().stream()
                  .map(
                      room ->
                          "; " + room.getValue() + " in one of the two alone, in " + room.getKey())
                  .collect(Collectors.joining());
    }
  }

  private Determinism() {}

  /**
   * Computes all frozen figures in a process of its own and compares them with those of this one.
   *
   * @param java the folder of the Java to run
   * @param setting how to run it
   * @return how they differ
   * @throws IOException if the process cannot be run or fails
   * @throws InterruptedException if the wait for it is interrupted
   */
  public static Difference of(Path java, Setting setting) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("digits");
    List<String> command = new ArrayList<>(List.of(java.resolve("bin/java").toString()));
    command.addAll(List.of(setting.options().split(" ")));
    command.addAll(
        List.of(
            "-cp",
            System.getProperty("java.class.path"),
            FrozenDigits.class.getName(),
            folder.toString()));
    command.removeIf(String::isEmpty);
    Path log = folder.resolve("log");
    Process process =
        new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile()).start();
    if (!process.waitFor(MINUTES, TimeUnit.MINUTES) || process.exitValue() != 0) {
      process.destroyForcibly();
      throw new IOException(setting.name() + " failed: " + Files.readString(log));
    }
    int figures = 0;
    int different = 0;
    Map<String, Double> largest = new LinkedHashMap<>();
    Map<String, Integer> onlyOnce = new LinkedHashMap<>();
    for (FrozenRoom room : FrozenDigits.rooms()) {
      Path file = folder.resolve(room.fileName());
      Map<String, FrozenFigure> there = figures(Files.readAllLines(file));
      Map<String, FrozenFigure> here =
          figures(FrozenRoom.fileText(room.computed()).lines().toList());
      Set<String> all = new LinkedHashSet<>(here.keySet());
      all.addAll(there.keySet());
      figures += here.size();
      for (String key : all) {
        FrozenFigure one = here.get(key);
        FrozenFigure other = there.get(key);
        if (one == null || other == null) {
          onlyOnce.merge(room.name(), 1, Integer::sum);
        } else if (!one.equals(other)) {
          different++;
          largest.merge(room.name(), apart(one, other), Math::max);
        }
      }
      Files.delete(file);
    }
    Files.delete(log);
    Files.delete(folder);
    return new Difference(figures, different, largest, onlyOnce);
  }

  private static Map<String, FrozenFigure> figures(List<String> lines) {
    Map<String, FrozenFigure> figures = new LinkedHashMap<>();
    for (String line : lines) {
      if (!line.startsWith("#") && !line.startsWith("input,")) {
        String[] fields = line.split(",", -1);
        FrozenFigure figure =
            new FrozenFigure(fields[0], fields[1], fields[2], fields[3], fields[4]);
        if (figures.put(figure.key(), figure) != null) {
          throw new IllegalStateException(figure.key() + " stands twice");
        }
      }
    }
    return figures;
  }

  private static double apart(FrozenFigure one, FrozenFigure other) {
    return Math.max(
        apart(one.number(), other.number()), apart(one.uncertainty(), other.uncertainty()));
  }

  private static double apart(OptionalDouble one, OptionalDouble other) {
    if (one.isEmpty() || other.isEmpty()) {
      return one.equals(other) ? 0 : Double.POSITIVE_INFINITY;
    }
    double size = Math.max(Math.abs(one.getAsDouble()), Math.abs(other.getAsDouble()));
    return size == 0 ? 0 : Math.abs(one.getAsDouble() - other.getAsDouble()) / size;
  }

  /**
   * Prints how the figures differ, a line a setting.
   *
   * @param args the folders of other Javas to run as well
   * @throws IOException if a process fails
   * @throws InterruptedException if a wait is interrupted
   */
  public static void main(String[] args) throws IOException, InterruptedException {
    Path own = Path.of(System.getProperty("java.home"));
    List<Setting> all = new ArrayList<>(QUICK);
    all.addAll(SLOW);
    all.add(OTHER_FUNCTIONS);
    System.out.println("| Java | setting | against this one |");
    System.out.println("|---|---|---|");
    for (Setting setting : all) {
      print(own, setting);
    }
    for (String other : args) {
      print(Path.of(other), new Setting("as it comes", ""));
    }
  }

  private static void print(Path java, Setting setting) throws IOException, InterruptedException {
    String version =
        Files.readAllLines(java.resolve("release")).stream()
            .filter(line -> line.startsWith("JAVA_VERSION="))
            .map(line -> line.substring(13).replace("\"", ""))
            .findFirst()
            .orElse(java.toString());
    System.out.println("| " + version + " | " + setting.name() + " | " + of(java, setting) + " |");
  }
}
