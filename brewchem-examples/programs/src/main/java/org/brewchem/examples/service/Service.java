package org.brewchem.examples.service;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.lang.System.Logger;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * A web service on the server of the JDK: {@code POST /water} takes a water report, {@code POST
 * /beer-dose} a beer, an acid and a target, both as JSON. It answers this machine only, without
 * encryption or log-in: who offers it to others puts it behind a server that has both.
 *
 * <p>The library holds no state and its values are immutable, so that any number of threads may
 * compute. The pool is as wide as the processors, because computing waits for nothing. Thread-safe.
 */
public final class Service implements AutoCloseable {

  /** What answers a request; a {@link RequestException} refuses it. */
  @FunctionalInterface
  interface Endpoint {
    Map<String, Object> answer(Fields request);
  }

  private static final int USUAL_PORT = 8080;
  private static final int LARGEST_BODY = 16 * 1024;

  /** A body that is too large is read so far, so that its sender gets to read the answer. */
  private static final int MOST_DISCARDED = 1024 * 1024;

  private static final int MOST_CONNECTIONS_WAITING = 1000;
  private static final int MOST_REQUESTS_WAITING = 1000;
  private static final long MOST_WAITED_AT_STOP_MILLISECONDS = 10_000;
  private static final int OK = 200;
  private static final int OWN_ERROR = 500;

  private static final Logger LOG = System.getLogger(Service.class.getName());

  private final ObjectMapper json = new ObjectMapper();
  private final Map<String, Endpoint> endpoints;
  private final HttpServer server;
  private final ThreadPoolExecutor pool;
  private final AtomicInteger running = new AtomicInteger();
  private final AtomicBoolean stopping = new AtomicBoolean();

  private Service(int port, Map<String, Endpoint> endpoints) throws IOException {
    this.endpoints = endpoints;
    int threads = Runtime.getRuntime().availableProcessors();
    pool =
        new ThreadPoolExecutor(
            threads, threads, 0, TimeUnit.SECONDS, new ArrayBlockingQueue<>(MOST_REQUESTS_WAITING));
    server =
        HttpServer.create(
            new InetSocketAddress(InetAddress.getLoopbackAddress(), port),
            MOST_CONNECTIONS_WAITING);
    server.setExecutor(pool);
    server.createContext("/", this::handle);
  }

  /**
   * Starts the service until the process is ended.
   *
   * @param arguments the port, else 8080
   * @throws IOException if the port cannot be taken
   */
  public static void main(String[] arguments) throws IOException {
    Service service = start(arguments.length > 0 ? Integer.parseInt(arguments[0]) : USUAL_PORT);
    Runtime.getRuntime().addShutdownHook(new Thread(service::close));
    System.out.println("POST to http://localhost:" + service.port() + "/water or /beer-dose");
  }

  /**
   * Starts the service.
   *
   * @param port the port, 0 for any that is free
   * @return the service, to be closed
   * @throws IOException if the port cannot be taken
   */
  public static Service start(int port) throws IOException {
    return start(
        port, Map.of("/water", WaterEndpoint::answer, "/beer-dose", BeerDoseEndpoint::answer));
  }

  static Service start(int port, Map<String, Endpoint> endpoints) throws IOException {
    configureServer();
    Service service = new Service(port, Map.copyOf(endpoints));
    service.server.start();
    return service;
  }

  /**
   * Sets what the server of the JDK reads when its classes are loaded, once for the process: no
   * waiting for packets to fill, an end to requests that come in slowly, and room for connections
   * between two requests, beyond which a server closes each after its answer. Where a server was
   * made in the process before, the settings come too late.
   */
  private static void configureServer() {
    Map.of(
            "sun.net.httpserver.nodelay", "true",
            "sun.net.httpserver.maxReqTime", "10",
            "sun.net.httpserver.maxRspTime", "10",
            "sun.net.httpserver.maxIdleConnections", "1000")
        .forEach(
            (name, value) -> {
              if (System.getProperty(name) == null) {
                System.setProperty(name, value);
              }
            });
  }

  /**
   * Returns where the service listens.
   *
   * @return the port
   */
  public int port() {
    return server.getAddress().getPort();
  }

  /** Stops: requests that are being answered get their answer, later ones a 503. */
  @Override
  public void close() {
    if (stopping.getAndSet(true)) {
      return;
    }
    long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(MOST_WAITED_AT_STOP_MILLISECONDS);
    try {
      while (running.get() > 0 && System.nanoTime() < end) {
        Thread.sleep(5);
      }
      server.stop(0);
      pool.shutdown();
      if (!pool.awaitTermination(1, TimeUnit.SECONDS)) {
        pool.shutdownNow();
      }
    } catch (InterruptedException interrupted) {
      server.stop(0);
      pool.shutdownNow();
      Thread.currentThread().interrupt();
    }
  }

  private void handle(HttpExchange exchange) throws IOException {
    running.incrementAndGet();
    try {
      answer(exchange);
    } finally {
      exchange.close();
      running.decrementAndGet();
    }
  }

  /** An error of its own is told by a number; what it was stands in the log. */
  private void answer(HttpExchange exchange) throws IOException {
    try {
      send(exchange, OK, endpoint(exchange).answer(Fields.of(body(exchange))));
    } catch (RequestException refusal) {
      send(exchange, refusal.status(), refusal.body());
    } catch (RuntimeException | Error fault) {
      String number = UUID.randomUUID().toString();
      LOG.log(Logger.Level.ERROR, "error " + number, fault);
      send(
          exchange,
          OWN_ERROR,
          Map.of("error", Map.of("message", "an error of the service itself", "number", number)));
    }
  }

  private Endpoint endpoint(HttpExchange exchange) {
    if (stopping.get()) {
      throw RequestException.of(RequestException.UNAVAILABLE, "the service is being stopped");
    }
    Endpoint endpoint = endpoints.get(exchange.getRequestURI().getPath());
    if (endpoint == null) {
      throw RequestException.of(
          RequestException.NOT_FOUND, "there is no such path; there are " + paths());
    }
    if (!exchange.getRequestMethod().equals("POST")) {
      exchange.getResponseHeaders().set("Allow", "POST");
      throw RequestException.of(RequestException.METHOD_NOT_ALLOWED, "POST is the only method");
    }
    return endpoint;
  }

  private String paths() {
    return String.join(", ", endpoints.keySet().stream().sorted().toList());
  }

  private static byte[] body(HttpExchange exchange) throws IOException {
    InputStream in = exchange.getRequestBody();
    byte[] body = in.readNBytes(LARGEST_BODY + 1);
    if (body.length > LARGEST_BODY) {
      in.readNBytes(MOST_DISCARDED);
      exchange.getResponseHeaders().set("Connection", "close");
      throw RequestException.of(
          RequestException.TOO_LARGE, "the body is too large; " + LARGEST_BODY + " bytes go");
    }
    return body;
  }

  private void send(HttpExchange exchange, int status, Map<String, Object> answer)
      throws IOException {
    byte[] body = json.writeValueAsBytes(answer);
    exchange.getResponseHeaders().set("Content-Type", "application/json");
    boolean head = exchange.getRequestMethod().equals("HEAD");
    exchange.sendResponseHeaders(status, head ? -1 : body.length);
    if (!head) {
      exchange.getResponseBody().write(body);
    }
  }
}
