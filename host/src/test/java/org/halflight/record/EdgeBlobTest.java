package org.halflight.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.halflight.fixtures.Seed;
import org.halflight.signal.Channel;
import org.halflight.signal.Edge;
import org.junit.jupiter.api.Test;

class EdgeBlobTest {
  @Test
  void bytesAreThoseOfTheDescription() {
    List<Edge> edges =
        List.of(
            new Edge(Channel.CENTRE_LOW, true, 1000),
            new Edge(Channel.RELEASE, false, 1064),
            new Edge(Channel.CENTRE_HIGH, true, 1063));
    // Worked out by hand from docs/record.md: form 1; step 0, channel 0 up; step 64 is zigzag 128,
    // varint 80 01, channel 6 down; step -1 is zigzag 1, channel 1 up.
    assertThat(HexFormat.of().formatHex(EdgeBlob.of(edges, edges.get(0).ticks())))
        .isEqualTo("01" + "0001" + "80010c" + "0103");
    assertThat(EdgeBlob.read(EdgeBlob.of(edges, edges.get(0).ticks()), 1000)).contains(edges);
  }

  @Test
  void everyEdgeComesBack(@Seed long seed) {
    Random random = new Random(seed);
    for (int round = 0; round < 2000; round++) {
      List<Edge> edges = new ArrayList<>();
      long ticks = random.nextLong() >>> (1 + random.nextInt(63));
      for (int i = random.nextInt(40); i >= 0; i--) {
        Channel channel = Channel.ofCode(random.nextInt(Channel.values().length)).orElseThrow();
        edges.add(new Edge(channel, random.nextBoolean(), ticks));
        ticks += (random.nextLong() >>> (8 + random.nextInt(56))) - random.nextInt(3);
      }
      byte[] blob = EdgeBlob.of(edges, edges.get(0).ticks());
      assertThat(EdgeBlob.read(blob, edges.get(0).ticks())).contains(edges);
      // Whatever is cut off, nothing is made up: fewer edges, or none.
      byte[] cut = Arrays.copyOf(blob, random.nextInt(blob.length));
      EdgeBlob.read(cut, edges.get(0).ticks())
          .ifPresent(fewer -> assertThat(edges).startsWith(fewer.toArray(new Edge[0])));
    }
  }

  @Test
  void refusesBytesThatAreNoEdges() {
    for (String bytes :
        List.of("", "01", "0201", "020001", "010010", "01ff", "01ffffffffffffffffffffff01")) {
      assertThat(EdgeBlob.read(HexFormat.of().parseHex(bytes), 0)).as(bytes).isEmpty();
    }
  }
}
