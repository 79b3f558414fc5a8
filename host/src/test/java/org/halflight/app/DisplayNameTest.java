package org.halflight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.ServerSocket;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DisplayNameTest {
  @ParameterizedTest
  @CsvSource({
    ":0,'',0",
    ":99.0,'',99",
    "unix:1,'',1",
    "localhost:10.0,localhost,10",
    "192.0.2.1:2,192.0.2.1,2",
    "host/unix:3,host,3"
  })
  void namesAreReadAsTheSystemWritesThem(String text, String host, int number) {
    assertThat(DisplayName.of(text)).contains(new DisplayName(host, number));
  }

  @ParameterizedTest
  @CsvSource({"wayland-0", "/private/tmp/launch/x:0", ":", ":a", ":123456"})
  void otherNamesAreLeftToTheSystem(String text) {
    assertThat(DisplayName.of(text)).isEmpty();
  }

  @Test
  void aDisplayAnswersWhereSomethingListens() throws Exception {
    int number;
    try (ServerSocket server = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      number = server.getLocalPort() - 6000;
      assertThat(new DisplayName("127.0.0.1", number).answers()).isTrue();
    }
    assertThat(new DisplayName("127.0.0.1", number).answers()).isFalse();
    assertThat(new DisplayName("", 4711).answers()).isFalse();
    assertThat(new DisplayName("", 99999).answers()).isFalse();
  }
}
