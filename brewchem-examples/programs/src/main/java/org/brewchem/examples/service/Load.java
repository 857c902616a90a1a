package org.brewchem.examples.service;

import static org.brewchem.quantity.Quantities.acidity;
import static org.brewchem.quantity.Quantities.gPerL;
import static org.brewchem.quantity.Quantities.massPercent;
import static org.brewchem.quantity.Quantities.mgPerL;
import static org.brewchem.quantity.Quantities.pH;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.brewchem.beer.Beer;
import org.brewchem.figure.Answer;
import org.brewchem.substance.Acid;
import org.brewchem.substance.Reagent;
import org.brewchem.treatment.Dose;
import org.brewchem.water.Water;
import org.brewchem.water.WaterReport;

/**
 * Asks the service by many clients at once and holds every answer against the one that the library
 * gives without it, to the last bit. Waters and beers are invented. One request in ten is bad and
 * wants to be refused by the name of its field.
 */
public final class Load {

  private static final int CLIENTS = 200;
  private static final int USUAL_SECONDS = 60;
  private static final int CASES = 60;
  private static final int BAD_EVERY = 10;
  private static final int OK = 200;
  private static final long SEED = 4183;

  /**
   * What came of it.
   *
   * @param answers how many requests were answered
   * @param wrong answers that differ from the computed ones
   * @param failed requests without an answer
   * @param ownErrors answers of status 500 and more
   * @param median of the milliseconds between request and answer
   * @param p99 the milliseconds within which 99 of 100 are answered
   * @param longest the most milliseconds
   */
  public record Result(
      int answers,
      int wrong,
      int failed,
      int ownErrors,
      double median,
      double p99,
      double longest) {

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%d answers, %d wrong, %d failed, %d errors of the service;"
              + " median %.0f ms, 99 of 100 within %.0f ms, longest %.0f ms",
          answers,
          wrong,
          failed,
          ownErrors,
          median,
          p99,
          longest);
    }
  }

  /** A request, and what its answer is to hold; empty for one that is to be refused. */
  private record Case(String path, String body, Map<String, Answer<?>> expected) {}

  /** What one client saw. */
  private static final class Seen {
    private final List<Double> milliseconds = new ArrayList<>();
    private int wrong;
    private int failed;
    private int ownErrors;
  }

  private final ObjectMapper json = new ObjectMapper();
  private final HttpClient http = HttpClient.newHttpClient();
  private final List<Case> cases = cases();
  private final int port;

  private Load(int port) {
    this.port = port;
  }

  /**
   * Starts a service and asks it.
   *
   * @param arguments for how many seconds, else 60
   * @throws Exception if the service does not start or the clients are interrupted
   */
  public static void main(String[] arguments) throws Exception {
    int seconds = arguments.length > 0 ? Integer.parseInt(arguments[0]) : USUAL_SECONDS;
    try (Service service = Service.start(0)) {
      System.out.println(CLIENTS + " clients, " + seconds + " s: " + of(service.port(), seconds));
    }
  }

  /**
   * Asks a service by 200 clients, each of which waits for its answer before it asks again.
   *
   * @param port where it listens on this machine
   * @param seconds for how long
   * @return what came of it
   * @throws InterruptedException if the clients are interrupted
   * @throws ExecutionException if a client fails for a reason of its own
   */
  public static Result of(int port, int seconds) throws InterruptedException, ExecutionException {
    Load load = new Load(port);
    ExecutorService clients = Executors.newFixedThreadPool(CLIENTS);
    try {
      long end = System.nanoTime() + Duration.ofSeconds(seconds).toNanos();
      List<Future<Seen>> running = new ArrayList<>();
      for (int i = 0; i < CLIENTS; i++) {
        int first = i;
        running.add(clients.submit(() -> load.client(first, end)));
      }
      List<Seen> all = new ArrayList<>();
      for (Future<Seen> one : running) {
        all.add(one.get());
      }
      return result(all);
    } finally {
      clients.shutdownNow();
    }
  }

  private static Result result(List<Seen> all) {
    double[] sorted =
        all.stream()
            .flatMap(seen -> seen.milliseconds.stream())
            .mapToDouble(Double::doubleValue)
            .sorted()
            .toArray();
    int n = sorted.length;
    return new Result(
        n,
        all.stream().mapToInt(seen -> seen.wrong).sum(),
        all.stream().mapToInt(seen -> seen.failed).sum(),
        all.stream().mapToInt(seen -> seen.ownErrors).sum(),
        n == 0 ? 0 : sorted[n / 2],
        n == 0 ? 0 : sorted[(int) (0.99 * (n - 1))],
        n == 0 ? 0 : sorted[n - 1]);
  }

  private Seen client(int first, long end) throws InterruptedException {
    Seen seen = new Seen();
    for (int i = first; System.nanoTime() < end; i++) {
      Case asked = cases.get(i % cases.size());
      HttpRequest request =
          HttpRequest.newBuilder(URI.create("http://localhost:" + port + asked.path()))
              .POST(HttpRequest.BodyPublishers.ofString(asked.body()))
              .build();
      long start = System.nanoTime();
      try {
        HttpResponse<byte[]> response = http.send(request, HttpResponse.BodyHandlers.ofByteArray());
        seen.milliseconds.add((System.nanoTime() - start) / 1e6);
        if (response.statusCode() >= 500) {
          seen.ownErrors++;
        } else if (!isRight(asked, response)) {
          seen.wrong++;
        }
      } catch (IOException noAnswer) {
        seen.failed++;
      }
    }
    return seen;
  }

  private boolean isRight(Case asked, HttpResponse<byte[]> response) throws IOException {
    JsonNode answer = json.readTree(response.body());
    if (asked.expected().isEmpty()) {
      return response.statusCode() == RequestException.BAD_REQUEST
          && answer.at("/error/field").asText().equals("calcium.number");
    }
    Map<String, JsonNode> figures = new LinkedHashMap<>();
    for (String list : List.of("figures", "dose", "after")) {
      answer.path(list).forEach(one -> figures.put(one.path("figure").asText(), one));
    }
    return response.statusCode() == OK
        && asked.expected().entrySet().stream()
            .allMatch(
                one ->
                    figures.containsKey(one.getKey())
                        && isSame(one.getValue(), figures.get(one.getKey())));
  }

  private static boolean isSame(Answer<?> expected, JsonNode found) {
    OptionalDouble u = expected.standardUncertainty();
    return found.path("number").doubleValue() == expected.number()
        && found.has("standardUncertainty") == u.isPresent()
        && found.path("standardUncertainty").doubleValue() == u.orElse(0);
  }

  private static List<Case> cases() {
    Random random = new Random(SEED);
    List<Case> cases = new ArrayList<>();
    for (int i = 0; i < CASES; i++) {
      cases.add(
          i % BAD_EVERY == 0
              ? new Case("/water", "{\"calcium\":{\"number\":-1,\"unit\":\"mg/L\"}}", Map.of())
              : i % 2 == 0 ? water(random) : dose(random));
    }
    return cases;
  }

  private static Case water(Random random) {
    double calcium = 20 + 100 * random.nextDouble();
    double magnesium = 2 + 20 * random.nextDouble();
    double alkalinity = 30 + 200 * random.nextDouble();
    double pH = 7 + random.nextDouble();
    Water water =
        WaterReport.reported()
            .calcium(mgPerL(calcium), mgPerL(2))
            .magnesium(mgPerL(magnesium), mgPerL(1))
            .alkalinityAsCaCO3(mgPerL(alkalinity), mgPerL(3))
            .pH(pH(pH), 0.05)
            .build()
            .water();
    String body =
        "{\"calcium\":"
            + quantity(calcium, "mg/L", 2)
            + ",\"magnesium\":"
            + quantity(magnesium, "mg/L", 1)
            + ",\"alkalinity\":"
            + quantity(alkalinity, "mg/L as CaCO3", 3)
            + ",\"pH\":{\"number\":"
            + pH
            + ",\"standardUncertainty\":0.05}}";
    return new Case(
        "/water",
        body,
        byName(water.residualAlkalinity(), water.totalHardness(), water.alkalinity(), water.pH()));
  }

  private static Case dose(Random random) {
    double read = 4.3 + 0.3 * random.nextDouble();
    double found = 1.6 + 0.4 * random.nextDouble();
    double aim = found + 0.2 + 0.5 * random.nextDouble();
    Beer beer =
        Beer.of(pH(read), acidity(gPerL(found), Acid.LACTIC, pH(8.2)))
            .withStandardUncertaintyOfPH(0.02);
    Dose<Beer> dose =
        Dose.of(beer, Reagent.of(Acid.LACTIC, massPercent(80)))
            .to(acidity(gPerL(aim), Acid.LACTIC, pH(8.2)));
    String unit = "g/L as lactic acid, to pH 8.2";
    String body =
        "{\"beer\":{\"pH\":{\"number\":"
            + read
            + ",\"standardUncertainty\":0.02},\"acidity\":{\"number\":"
            + found
            + ",\"unit\":\""
            + unit
            + "\"}},\"reagent\":{\"acid\":\"lactic acid\",\"massPercent\":80},\"target\":"
            + "{\"acidity\":{\"number\":"
            + aim
            + ",\"unit\":\""
            + unit
            + "\"}},\"volume\":{\"number\":20,\"unit\":\"hL\"}}";
    return new Case(
        "/beer-dose",
        body,
        byName(
            dose.answer(Dose.MASS),
            dose.answer(Dose.VOLUME),
            dose.after().pH(),
            dose.after().titratableAcidity()));
  }

  private static String quantity(double number, String unit, double u) {
    return "{\"number\":"
        + number
        + ",\"unit\":\""
        + unit
        + "\",\"standardUncertainty\":"
        + u
        + "}";
  }

  private static Map<String, Answer<?>> byName(Answer<?>... answers) {
    Map<String, Answer<?>> byName = new LinkedHashMap<>();
    for (Answer<?> answer : answers) {
      byName.put(answer.figure().name(), answer);
    }
    return byName;
  }
}
