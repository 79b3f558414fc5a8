package org.halflight.record;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Brings a record to the newest form, step by step. The version is kept in SQLite's {@code
 * user_version} and set in the transaction of its step, so a file is never between two forms.
 */
final class Migrations {
  /** Marks the file as ours: 'HFLT', in SQLite's {@code application_id}. */
  static final int APPLICATION_ID = 0x48464C54;

  /** The steps of this program: number n brings version n - 1 to version n. */
  static final Migrations OWN =
      new Migrations(
          IntStream.iterate(1, version -> version + 1)
              .mapToObj(version -> version + ".sql")
              .takeWhile(name -> Migrations.class.getResource(name) != null)
              .map(Migrations::resource)
              .toList());

  /** From this version on every row and the form itself bear check sums. */
  static final int SEALED_FROM = 7;

  private final List<String> steps;

  Migrations(List<String> steps) {
    this.steps = List.copyOf(steps);
  }

  /** The newest version that this program knows. */
  int newest() {
    return steps.size();
  }

  /**
   * Takes every step that is missing.
   *
   * @param file the file of the connection; a copy is made beside it before a record is changed
   */
  void bringUp(Connection connection, Path file) throws SQLException {
    int version = version(connection);
    if (version == newest()) {
      return;
    }
    if (version > 0) {
      Backup.write(connection, Backup.freeName(file, "before-version-" + newest()));
    }
    for (int next = version + 1; next <= newest(); next++) {
      migrate(connection, next);
    }
  }

  static int version(Connection connection) throws SQLException {
    return Query.one(connection, "PRAGMA user_version", row -> row.getInt(1));
  }

  private void migrate(Connection connection, int version) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("BEGIN IMMEDIATE");
      try {
        for (String each : statements(steps.get(version - 1))) {
          statement.execute(each);
        }
        int broken =
            Query.list(connection, "PRAGMA foreign_key_check", row -> row.getString(1)).size();
        if (broken > 0) {
          throw new SQLException(broken + " rows point to nothing after step " + version);
        }
        if (version == SEALED_FROM) {
          RowCrc.sealAll(connection);
        }
        if (version >= SEALED_FROM) {
          RowCrc.sealForm(connection);
        }
        statement.execute("PRAGMA user_version = " + version);
        statement.execute("COMMIT");
      } catch (SQLException e) {
        Database.rollBack(connection, e);
        throw e;
      }
    }
  }

  /** The statements of a step: set apart by empty lines, since triggers hold semicolons. */
  private static List<String> statements(String step) {
    return Arrays.stream(step.split("\\R\\s*\\R"))
        .map(
            part ->
                part.lines()
                    .filter(line -> !line.startsWith("--"))
                    .collect(Collectors.joining("\n")))
        .filter(part -> !part.isBlank())
        .toList();
  }

  static String resource(String name) {
    try (InputStream in = Migrations.class.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
