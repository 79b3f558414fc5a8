package org.halflight.campaign;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The long form. Words: {@code --seed N}, {@code --parts wire,crc}, {@code --size wire=1000},
 * {@code --short} for the sizes of the tests, {@code --table FILE} to write the table of counts,
 * and {@code --again PART:SEED} for one case that broke a law. Ends with 1 where a law was broken.
 */
public final class Campaign {
  static final long SEED = 20261130;

  private static final String LONG = "cases that took longer than 5 s";
  private static final long LONG_MILLIS = 5_000;

  private static final List<Part> PARTS =
      List.of(
          new WirePart(),
          new AlterationsPart(),
          new DeathsPart(),
          new MutationsPart(),
          new KillsPart(),
          new TwoProcessesPart(),
          new LimitPart(),
          new FullDiskPart(),
          new RestoresPart(),
          new ClocksPart(),
          new ManyFiringsPart(),
          new BoardPart());

  private Campaign() {}

  public static void main(String[] words) throws Exception {
    System.exit(run(List.of(words)) ? 0 : 1);
  }

  static List<Part> parts() {
    return PARTS;
  }

  private static boolean run(List<String> words) throws Exception {
    long seed = SEED;
    boolean isShort = false;
    List<String> chosen = new ArrayList<>();
    Map<String, Long> sizes = new LinkedHashMap<>();
    Path table = null;
    for (int i = 0; i < words.size(); i++) {
      switch (words.get(i)) {
        case "--seed" -> seed = Long.parseLong(words.get(++i));
        case "--short" -> isShort = true;
        case "--parts" -> chosen.addAll(List.of(words.get(++i).split(",", -1)));
        case "--table" -> table = Path.of(words.get(++i));
        case "--size" -> {
          String[] size = words.get(++i).split("=", -1);
          sizes.put(size[0], Long.parseLong(size[1]));
        }
        case "--again" -> {
          String[] one = words.get(++i).split(":", -1);
          Tally tally = part(one[0]).again(Long.parseLong(one[1]));
          System.out.print(tally);
          return tally.isGood();
        }
        default -> throw new IllegalArgumentException("not understood: " + words.get(i));
      }
    }
    List<Tally> tallies = new ArrayList<>();
    for (Part part : chosen.isEmpty() ? PARTS : chosen.stream().map(Campaign::part).toList()) {
      long size = sizes.getOrDefault(part.name(), isShort ? part.shortSize() : part.longSize());
      double from = cpuSeconds();
      Tally tally = part.run(seed, size);
      System.out.printf(
          Locale.ROOT,
          "%s: %d %s, seed %d, %.1f s of the processor%n",
          part.name(),
          size,
          part.unit(),
          seed,
          cpuSeconds() - from);
      tally.law(LONG);
      if (tally.longestMillis() > LONG_MILLIS) {
        tally.breaks(LONG, "see above", tally.longestMillis() + " ms");
      }
      System.out.print(tally);
      tallies.add(tally);
      if (table != null) {
        write(table, seed, tallies);
      }
    }
    return tallies.stream().allMatch(Tally::isGood);
  }

  /** Of this process, its own threads for compiling and clearing among them. */
  private static double cpuSeconds() {
    return ((com.sun.management.OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean())
            .getProcessCpuTime()
        / 1e9;
  }

  private static Part part(String name) {
    return PARTS.stream()
        .filter(part -> part.name().equals(name))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("there is no part " + name));
  }

  /** After each part, so that what came before a crash is not lost. */
  private static void write(Path table, long seed, List<Tally> tallies) throws IOException {
    StringBuilder out =
        new StringBuilder(
            "Seed " + seed + ", simulated.\n\n| part | what | number |\n|---|---|---|\n");
    for (Tally tally : tallies) {
      tally.counts().forEach((what, n) -> out.append(row(tally.part(), what, n)));
      tally.broken().forEach((law, n) -> out.append(row(tally.part(), "**" + law + "**", n)));
    }
    Files.writeString(table, out);
  }

  private static String row(String part, String what, long number) {
    return "| " + part + " | " + what + " | " + String.format("%,d", number) + " |\n";
  }
}
