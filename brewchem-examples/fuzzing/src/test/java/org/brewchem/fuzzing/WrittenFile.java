package org.brewchem.fuzzing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.brewchem.readers.CsvFile;
import org.brewchem.readers.Fault;
import org.brewchem.readers.FileFaultException;
import org.brewchem.readers.FileFormat;
import org.brewchem.readers.ReadingReport;

/**
 * An input as a file in the format that its first line declares, a letter for each declaration; the
 * rest of the input are the bytes of the file.
 */
final class WrittenFile {

  private static final Map<Integer, UnaryOperator<FileFormat>> DECLARATIONS =
      Map.ofEntries(
          Map.entry((int) ';', f -> f.separator(';')),
          Map.entry((int) 't', f -> f.separator('\t')),
          Map.entry((int) ',', FileFormat::decimalComma),
          Map.entry((int) '.', f -> f.thousands('.')),
          Map.entry((int) '\'', f -> f.thousands('\'')),
          Map.entry((int) '#', f -> f.comments('#')),
          Map.entry((int) '2', f -> f.headingsInLine(2)),
          Map.entry((int) '(', FileFormat::roundBrackets),
          Map.entry((int) 'l', FileFormat::smallLitre),
          Map.entry((int) 'u', FileFormat::unitsUnderHeadings),
          Map.entry((int) 'b', FileFormat::blanksAroundCells),
          Map.entry((int) 'm', f -> f.missing("n.d.", "NA")),
          Map.entry((int) '<', FileFormat::limits),
          Map.entry((int) 'f', FileFormat::textsFound),
          Map.entry((int) 'g', f -> f.headingsIn("de", "fr")),
          Map.entry((int) 's', f -> f.texts("sample")),
          Map.entry((int) 'd', f -> f.dates("date", "d.M.uuuu")),
          Map.entry((int) 'L', f -> f.longFormat("parameter", "value", "unit", "sample")),
          Map.entry((int) '8', f -> f.charset(StandardCharsets.ISO_8859_1)),
          Map.entry((int) 'w', f -> f.charset(StandardCharsets.UTF_16)));

  private final Path path;
  private final FileFormat format;

  private WrittenFile(Path path, FileFormat format) {
    this.path = path;
    this.format = format;
  }

  static WrittenFile of(byte[] input, Path folder) {
    FileFormat format = FileFormat.standard();
    int at = 0;
    while (at < input.length && input[at] != '\n') {
      UnaryOperator<FileFormat> declared = DECLARATIONS.get((int) input[at++]);
      format = declared == null ? format : declared.apply(format);
    }
    Path path = folder.resolve("read.csv");
    try {
      Files.write(path, Arrays.copyOfRange(input, Math.min(at + 1, input.length), input.length));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new WrittenFile(path, format);
  }

  CsvFile file() {
    return CsvFile.of(path).in(format);
  }

  /** What reads or writes a file, of which no fault of the disk is expected. */
  interface WithFile<T> {
    T run() throws IOException;
  }

  static <T> Supplier<T> unchecked(WithFile<T> work) {
    return () -> {
      try {
        return work.run();
      } catch (FileFaultException e) {
        // It lists up to twenty faults; each has to be short, and so its first.
        e.faults().forEach(fault -> Oracle.requireShort(fault.toString()));
        e.advice().forEach(Oracle::requireShort);
        throw new IllegalArgumentException(e.faults().get(0).toString(), e);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
    };
  }

  static void judge(ReadingReport report) {
    for (Fault fault : report.faults()) {
      Oracle.requireShort(fault.toString());
    }
    report.used().forEach(Oracle::requireShort);
    report.ignored().forEach(Oracle::requireShort);
    report.odd().forEach(Oracle::requireShort);
    report.advice().forEach(Oracle::requireShort);
  }
}
